/* text_part.c - what texts of one answer and of a sweep have in common. */
#include "cli/text_part.h"

#include "cli/print.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

size_t text_columns(const char *name, const char *value)
{
    size_t printed = (size_t)printf("  %-*s %s", TEXT_NAME - 1, name, value);
    size_t column = printed < TEXT_COLUMN ? TEXT_COLUMN : printed + 1;
    print_blanks(column - printed);
    return column;
}

/* "25 C", "25 +- 0.5 C", words. */
static void value_text(const struct hw_question *question, size_t i, char text[ALLOWED_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    char half[AMOUNT_MAX];
    char middle[NUMBER_MAX];
    if (input->words) {
        words_of(input, question->in[i], text, ALLOWED_MAX);
    } else if (question->half[i] > 0) {
        number_digits(middle, question->in[i], 6);
        amount_text(question->half[i], 6, input->unit, half);
        (void)snprintf(text, ALLOWED_MAX, "%.60s +- %.80s", middle, half);
    } else {
        amount_text(question->in[i], 6, input->unit, text);
    }
}

/* The same in the unit that was written, when that is another one; else "". */
static void written_text(const struct hw_question *question, size_t i, char text[ALLOWED_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    const struct hw_unit *written = question->unit[i];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    char middle[NUMBER_MAX];
    char half[NUMBER_MAX] = "";
    text[0] = '\0';
    if (!written || !kept || written == kept) {
        return;
    }
    number_digits(middle, hw_unit_convert(question->in[i], kept, written), 6);
    if (question->half[i] > 0) {
        number_digits(half, hw_unit_convert_step(question->half[i], kept, written), 6);
    }
    (void)snprintf(text, ALLOWED_MAX, "%.40s%s%.40s %s as written", middle,
                   half[0] == '\0' ? "" : " +- ", half, written->name);
}

void text_input(const struct hw_question *question, size_t i)
{
    static const char *const origin[] = {
        [HW_GIVEN] = "",
        [HW_FROM_PRESET] = "assumed",
        [HW_FROM_TANK] = "from the tank's file",
        [HW_FROM_COLUMN] = "",
        [HW_SWEPT] = "swept",
        [HW_SOLVED] = "solved",
    };
    const char *from = origin[question->from[i]];
    char shown[ALLOWED_MAX];
    char written[ALLOWED_MAX];
    value_text(question, i, shown);
    written_text(question, i, written);
    size_t at = (size_t)printf("  %-*s ", TEXT_NAME - 1, question->calc->inputs[i].name);
    at = print_words(shown, at, TEXT_COLUMN, true);
    if (from[0] != '\0' || written[0] != '\0') {
        char both[2 * ALLOWED_MAX];
        bool aligned = at < TEXT_COLUMN;
        print_blanks(aligned ? TEXT_COLUMN - at : 0);
        (void)snprintf(both, sizeof both, "%s%s%s", from,
                       from[0] == '\0' || written[0] == '\0' ? "" : ", ", written);
        (void)print_words(both, aligned ? TEXT_COLUMN : at, TEXT_COLUMN, aligned);
    }
    (void)putchar('\n');
}

const char *text_heading(enum hw_effect effect)
{
    static const char *const heading[] = {
        [HW_STANDING] = "note",     [HW_CAUTION] = "CAUTION",   [HW_STRETCHED] = "CAUTION",
        [HW_REFUSED] = "NO ANSWER", [HW_WITHHELD] = "WITHHELD",
    };
    return heading[effect];
}

void text_note(const struct hw_note *note, const char *mark, const char *where)
{
    char heading[ALLOWED_MAX];
    (void)snprintf(heading, sizeof heading, "%s%s %s%s:", mark, text_heading(note->effect),
                   note->code, where);
    print_blanks(2);
    size_t at = print_words(heading, 2, 4, true);
    (void)print_words(note->text, at, 4, false);
    (void)putchar('\n');
}

void text_sources(const struct hw_calc *calc)
{
    char line[ALLOWED_MAX] = "sources:";
    for (size_t i = 0; calc->sources[i]; i++) {
        size_t used = strlen(line);
        (void)snprintf(line + used, sizeof line - used, " %s", calc->sources[i]);
    }
    print_wrapped(line, 0, 2);
}
