/* text_part.c - what texts of one answer and of a sweep have in common. */
#include "cli/text_part.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum { ENTRY_MAX = 2 * ALLOWED_MAX, INDENT = 2, TIED_MAX = 40 };

/* --- Inputs ----------------------------------------------------------------------------------- */

/* "25 C", "25 +- 0.5 C", in the unit given. */
static void value_in(const struct hw_question *question, size_t i, const struct hw_unit *unit,
                     const char *name, char text[ALLOWED_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    bool same = !unit || !kept || unit == kept;
    double value = question->in[i];
    double half = question->half[i];
    char middle[NUMBER_MAX];
    char spread[NUMBER_MAX] = "";
    number_digits(middle, same ? value : hw_unit_convert(value, kept, unit), 6);
    if (half > 0) {
        number_digits(spread, same ? half : hw_unit_convert_step(half, kept, unit), 6);
    }
    (void)snprintf(text, ALLOWED_MAX, "%.60s%s%.40s%s%s", middle, half > 0 ? " +- " : "", spread,
                   name[0] == '\0' ? "" : " ", name);
}

/* "temp 77 F (25 C)": as it was written first. */
static void entry_text(const struct hw_question *question, size_t i, char text[ENTRY_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    const struct hw_unit *written = question->unit[i];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    char shown[ALLOWED_MAX];
    if (input->words) {
        words_of(input, question->in[i], shown, ALLOWED_MAX);
        (void)snprintf(text, ENTRY_MAX, "%s %s", input->name, shown);
    } else if (written && kept && written != kept) {
        char own[ALLOWED_MAX];
        value_in(question, i, written, written->name, own);
        value_in(question, i, kept, input->unit, shown);
        (void)snprintf(text, ENTRY_MAX, "%s %.200s (%.200s)", input->name, own, shown);
    } else {
        value_in(question, i, kept, input->unit, shown);
        (void)snprintf(text, ENTRY_MAX, "%s %s", input->name, shown);
    }
}

/* The first input from `i` on that came from there, or n_inputs. */
static size_t next_from(const struct hw_question *question, enum hw_from from, size_t i)
{
    while (i < question->calc->n_inputs && question->from[i] != from) {
        i++;
    }
    return i;
}

/* A name, its number and its unit stay in one line. */
static void tie(char *entry)
{
    for (char *c = entry; *c != '\0' && strlen(entry) <= TIED_MAX; c++) {
        *c = *c == ' ' ? PRINT_TIE : *c;
    }
}

/* One list: the inputs that came from there. */
static void print_inputs(const struct hw_question *question, enum hw_from from, const char *heading)
{
    char entry[ENTRY_MAX + 1];
    size_t at = 0;
    for (size_t i = next_from(question, from, 0); i < question->calc->n_inputs;) {
        size_t next = next_from(question, from, i + 1);
        entry_text(question, i, entry);
        tie(entry);
        if (next < question->calc->n_inputs) {
            size_t used = strlen(entry);
            (void)snprintf(entry + used, sizeof entry - used, ",");
        }
        at = at == 0 ? print_words(heading, 0, INDENT, true) : at;
        at = print_words(entry, at, INDENT, false);
        i = next;
    }
    if (at > 0) {
        (void)putchar('\n');
    }
}

void text_inputs(const struct hw_question *question, const char *tank)
{
    char from_tank[ALLOWED_MAX];
    char shown[SHOWN_MAX] = "";
    if (tank) {
        (void)show_text((struct hw_text){tank, strlen(tank)}, shown);
    }
    (void)snprintf(from_tank, sizeof from_tank, "from tank %s:", shown);
    print_inputs(question, HW_GIVEN, "given:");
    print_inputs(question, HW_FROM_TANK, from_tank);
    print_inputs(question, HW_FROM_PRESET, "assumed:");
    print_inputs(question, HW_SOLVED, "solved:");
}

/* --- Notes ------------------------------------------------------------------------------------ */

const char *text_heading(enum hw_effect effect)
{
    static const char *const heading[] = {
        [HW_STANDING] = "note",     [HW_CAUTION] = "CAUTION",   [HW_STRETCHED] = "CAUTION",
        [HW_REFUSED] = "NO ANSWER", [HW_WITHHELD] = "WITHHELD",
    };
    return heading[effect];
}

void text_note(const struct hw_note *note, const char *mark, const char *where, bool full)
{
    char heading[ALLOWED_MAX];
    (void)snprintf(heading, sizeof heading, "%s%s %s%s:", mark, text_heading(note->effect),
                   note->code, where);
    size_t at = print_words(heading, 0, INDENT, true);
    (void)print_words(full || !note->brief ? note->text : note->brief, at, INDENT, false);
    (void)putchar('\n');
}

void text_sentence(const struct hw_note *note, char text[SENTENCE_MAX])
{
    if (note->list != HW_LIST_NEVER) {
        (void)snprintf(text, SENTENCE_MAX, "%s", note->brief);
        return;
    }
    char first = note->brief[0];
    first = first >= 'A' && first <= 'Z' ? (char)(first - 'A' + 'a') : first;
    (void)snprintf(text, SENTENCE_MAX, "Never%c%c%s", PRINT_TIE, first, note->brief + 1);
}

/* The sentences of one list behind what stands there; returns the column. */
static size_t print_list(const struct hw_calc *calc, uint64_t notes, enum hw_list list,
                         const char *heading, size_t at)
{
    for (size_t bit = 0; notes_next_on(calc, notes, list, &bit); bit++) {
        at = at == 0 ? print_words(heading, 0, INDENT, true) : at;
        char sentence[SENTENCE_MAX];
        text_sentence(hw_note_at(calc, bit), sentence);
        at = print_words(sentence, at, INDENT, false);
    }
    return at;
}

void text_standing(const struct hw_calc *calc, uint64_t notes, bool full)
{
    static const enum hw_list minded[] = {HW_LIST_SIGN, HW_LIST_MIND, HW_LIST_LAST};
    uint64_t standing = notes & notes_between(calc, HW_STANDING, HW_STANDING);
    if (print_list(calc, standing, HW_LIST_NEVER, "never:", 0) > 0) {
        (void)putchar('\n');
    }
    size_t at = 0;
    for (size_t i = 0; i < sizeof minded / sizeof minded[0]; i++) {
        at = print_list(calc, standing, minded[i], "mind:", at);
    }
    if (at > 0) {
        (void)putchar('\n');
    }
    for (size_t bit = 0; full && notes_next(calc, standing, &bit); bit++) {
        text_note(hw_note_at(calc, bit), "", "", true);
    }
}

void text_sources(const struct hw_calc *calc)
{
    char line[ALLOWED_MAX] = "sources:";
    for (size_t i = 0; calc->sources[i]; i++) {
        size_t used = strlen(line);
        (void)snprintf(line + used, sizeof line - used, " %s", calc->sources[i]);
    }
    print_wrapped(line, 0, INDENT);
}
