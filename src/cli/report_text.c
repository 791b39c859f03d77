/* report_text.c - the answer for people: results, inputs as used, cautions, sources. */
#include "cli/message.h"
#include "cli/print.h"
#include "cli/report.h"
#include "cli/syringe.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { NAME_WIDTH = 16 };

size_t report_columns(const char *name, const char *value)
{
    size_t printed = (size_t)printf("  %-*s %s", NAME_WIDTH - 1, name, value);
    size_t column = printed < TEXT_COLUMN ? TEXT_COLUMN : printed + 1;
    print_blanks(column - printed);
    return column;
}

/* A unit for this kind when the one that was written is of the keeper's own system. */
static const struct hw_unit *own_of(const struct hw_unit *unit, enum hw_kind kind)
{
    bool own = unit && (strcmp(unit->name, "gal") == 0 || strcmp(unit->name, "F") == 0);
    bool degrees = own && strcmp(unit->name, "F") == 0 &&
                   (kind == HW_TEMPERATURE || kind == HW_TEMPERATURE_STEP);
    if (degrees) {
        return hw_unit_of(kind, "F");
    }
    return own && unit->kind == kind ? unit : NULL;
}

const struct hw_unit *own_unit(const struct args *args, const struct hw_question *question,
                               enum hw_kind kind)
{
    const struct hw_unit *own = own_of(args->wanted_unit, kind);
    for (size_t i = 0; !own && i < question->calc->n_inputs; i++) {
        own = own_of(question->unit[i], kind);
    }
    return own;
}

static void with_unit(char *text, size_t size, const char *number, const char *unit)
{
    (void)snprintf(text, size, "%s%s%s", number, unit[0] == '\0' ? "" : " ", unit);
}

/* Nobody draws a total over many doses at once: no syringe is named for it. */
static bool is_total(const struct hw_result *result)
{
    const char *end = strrchr(result->name, '_');
    return end && strcmp(end, "_total") == 0;
}

static void print_result(const struct report *report, size_t i)
{
    const struct hw_result *result = &report->question->calc->results[i];
    double value = report->answer->out[i];
    int digits = report->args->digits ? report->args->digits : result->digits;
    char number[NUMBER_MAX];
    char shown[NUMBER_MAX + 16];
    if (isnan(value)) {
        print_wrapped(result->help, report_columns(result->name, "-"), TEXT_COLUMN);
        return;
    }
    number_text(number, value, digits, result->safe);
    with_unit(shown, sizeof shown, number, result->unit);
    size_t column = report_columns(result->name, shown);
    const struct hw_unit *kept = hw_unit_of(result->kind, result->unit);
    const struct hw_unit *own = own_unit(report->args, report->question, result->kind);
    char help[ALLOWED_MAX];
    (void)snprintf(help, sizeof help, "%s", result->help);
    bool liquid = result->kind == HW_VOLUME && strcmp(result->unit, "mL") == 0;
    if (liquid) {
        char drawn[SYRINGE_TEXT] = "";
        if (!is_total(result)) {
            syringe_text(value, result->safe, drawn);
        }
        (void)snprintf(help, sizeof help, "%s%s%s", drawn, drawn[0] == '\0' ? "" : "; ",
                       result->help);
    } else if (kept && own) {
        number_text(number, hw_unit_convert(value, kept, own), digits, result->safe);
        (void)snprintf(help, sizeof help, "%.40s %s; %s", number, own->name, result->help);
    }
    print_wrapped(help, column, TEXT_COLUMN);
    if (report->spread) {
        report_spread(report, i, own);
    }
}

void print_input(const struct hw_question *question, size_t i)
{
    static const char *const origin[] = {
        [HW_GIVEN] = "",
        [HW_FROM_PRESET] = "assumed",
        [HW_FROM_TANK] = "from the tank's file",
        [HW_FROM_COLUMN] = "",
        [HW_SWEPT] = "swept",
        [HW_SOLVED] = "solved",
    };
    const struct hw_input *input = &question->calc->inputs[i];
    char number[NUMBER_MAX];
    char shown[ALLOWED_MAX];
    char remark[ALLOWED_MAX] = "";
    if (input->words) {
        words_of(input, question->in[i], shown, sizeof shown);
    } else {
        number_digits(number, question->in[i], 6);
        if (question->half[i] > 0) {
            char half[NUMBER_MAX];
            number_digits(half, question->half[i], 6);
            (void)snprintf(number + strlen(number), sizeof number - strlen(number), " +- %.40s",
                           half);
        }
        with_unit(shown, sizeof shown, number, input->unit);
    }
    const struct hw_unit *written = question->unit[i];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    if (written && kept && written != kept) {
        char half[NUMBER_MAX] = "";
        number_digits(number, hw_unit_convert(question->in[i], kept, written), 6);
        if (question->half[i] > 0) {
            number_digits(half, hw_unit_convert_step(question->half[i], kept, written), 6);
        }
        (void)snprintf(remark, sizeof remark, "%.40s%s%.40s %s as written", number,
                       half[0] == '\0' ? "" : " +- ", half, written->name);
    }
    const char *from = origin[question->from[i]];
    size_t at = (size_t)printf("  %-*s ", NAME_WIDTH - 1, input->name);
    at = print_words(shown, at, TEXT_COLUMN, true);
    if (from[0] != '\0' || remark[0] != '\0') {
        char both[2 * ALLOWED_MAX];
        bool aligned = at < TEXT_COLUMN;
        print_blanks(aligned ? TEXT_COLUMN - at : 0);
        (void)snprintf(both, sizeof both, "%s%s%s", from,
                       from[0] == '\0' || remark[0] == '\0' ? "" : ", ", remark);
        (void)print_words(both, aligned ? TEXT_COLUMN : at, TEXT_COLUMN, aligned);
    }
    (void)putchar('\n');
}

const char *note_heading(enum hw_effect effect)
{
    static const char *const heading[] = {
        [HW_STANDING] = "note",     [HW_CAUTION] = "CAUTION",   [HW_STRETCHED] = "CAUTION",
        [HW_REFUSED] = "NO ANSWER", [HW_WITHHELD] = "WITHHELD",
    };
    return heading[effect];
}

void print_note(const struct hw_note *note, const char *mark, const char *where)
{
    char heading[ALLOWED_MAX];
    (void)snprintf(heading, sizeof heading, "%s%s %s%s:", mark, note_heading(note->effect),
                   note->code, where);
    print_blanks(2);
    size_t at = print_words(heading, 2, 4, true);
    (void)print_words(note->text, at, 4, false);
    (void)putchar('\n');
}

/* The notes whose effects lie between two, the gravest first. */
static void print_notes(const struct report *report, enum hw_effect from, enum hw_effect to)
{
    const struct hw_calc *calc = report->question->calc;
    for (int effect = (int)from; effect >= (int)to; effect--) {
        for (size_t i = 0; i < calc->n_notes; i++) {
            if (has_note(report->answer, i) && calc->notes[i].effect == (enum hw_effect)effect) {
                print_note(&calc->notes[i], "", "");
            }
        }
    }
}

/* What a point within the spread would say and the middle does not, the gravest first. */
static void print_possible(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    for (int effect = HW_WITHHELD; effect >= (int)HW_CAUTION; effect--) {
        for (size_t i = 0; i < calc->n_notes; i++) {
            if (((possible_notes(report) >> i) & 1u) != 0 &&
                calc->notes[i].effect == (enum hw_effect)effect) {
                print_note(&calc->notes[i], "POSSIBLE ", "");
            }
        }
    }
}

static void print_steps(const struct hw_steps *steps)
{
    (void)puts("working");
    for (size_t i = 0; i < steps->n; i++) {
        const struct hw_step *step = &steps->step[i];
        char number[NUMBER_MAX];
        int printed = printf("  %s = ", step->symbol);
        print_wrapped(step->expression, (size_t)printed, 6);
        number_digits(number, step->value, 10);
        (void)printf("      = %s%s%s", number, step->unit[0] == '\0' ? "" : " ", step->unit);
        (void)printf(step->source[0] == '\0' ? "\n" : "  [%s]\n", step->source);
    }
}

void print_sources(const struct hw_calc *calc)
{
    char line[ALLOWED_MAX] = "sources:";
    for (size_t i = 0; calc->sources[i]; i++) {
        size_t used = strlen(line);
        (void)snprintf(line + used, sizeof line - used, " %s", calc->sources[i]);
    }
    print_wrapped(line, 0, 2);
}

void report_text(const struct report *report)
{
    const struct hw_question *question = report->question;
    const struct hw_calc *calc = question->calc;
    (void)printf("%s\n", calc->name);
    print_notes(report, HW_WITHHELD, HW_REFUSED); /* why there is no result stands in its place */
    if (report->solved && report->answer->status >= 0) {
        report_solved(report);
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        bool shown = report->answer->status >= 0 && report->args->only[i];
        bool absent = isnan(report->answer->out[i]);
        if (shown && (!absent || report->args->n_only > 0)) {
            print_result(report, i);
        }
    }
    if (report->spread && report->answer->status >= 0) {
        report_advice(report);
    }
    (void)puts("from");
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (question->from[i] != HW_ABSENT) {
            print_input(question, i);
        }
    }
    if (report->steps) {
        print_steps(report->steps);
    }
    (void)puts("cautions");
    print_notes(report, HW_STRETCHED, HW_CAUTION); /* raised before standing */
    print_possible(report);
    print_notes(report, HW_STANDING, HW_STANDING);
    print_sources(calc);
}
