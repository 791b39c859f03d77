/* report_text.c - the answer for people: results, inputs as used, cautions, sources. */
#include "cli/report_text.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_solved.h"
#include "cli/report_spread.h"
#include "cli/syringe.h"
#include "cli/text_part.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

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
        print_wrapped(result->help, text_columns(result->name, "-"), TEXT_COLUMN);
        return;
    }
    if (result->kind == HW_YES_NO) {
        (void)snprintf(number, sizeof number, value > 0 ? "yes" : "no");
    } else {
        number_text(number, value, digits, result->safe);
    }
    (void)snprintf(shown, sizeof shown, "%s%s%s", number, result->unit[0] == '\0' ? "" : " ",
                   result->unit);
    size_t column = text_columns(result->name, shown);
    const struct hw_unit *kept = hw_unit_of(result->kind, result->unit);
    const struct hw_unit *own = own_unit(report->args->wanted_unit, report->question, result->kind);
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

/* Notes, the gravest first. */
static void print_notes(const struct report *report, uint64_t notes, const char *mark)
{
    const struct hw_calc *calc = report->question->calc;
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(calc, notes, bits);
    for (size_t i = 0; i < n; i++) {
        text_note(hw_note_at(calc, bits[i]), mark, "");
    }
}

/* Raised before standing; between them what a point within the spread would say and the middle does
 * not. */
static void print_cautions(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    uint64_t notes = report->answer->notes;
    (void)puts("cautions");
    print_notes(report, notes & notes_between(calc, HW_CAUTION, HW_STRETCHED), "");
    print_notes(report, notes_possible(report->spread), "POSSIBLE ");
    print_notes(report, notes & notes_between(calc, HW_STANDING, HW_STANDING), "");
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

void report_text(const struct report *report)
{
    const struct hw_question *question = report->question;
    const struct hw_calc *calc = question->calc;
    (void)printf("%s\n", calc->name);
    /* why there is no result stands in its place */
    print_notes(report, report->answer->notes & hw_notes_grave(calc), "");
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
        report_spread_advice(report);
    }
    (void)puts("from");
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (question->from[i] != HW_ABSENT) {
            text_input(question, i);
        }
    }
    if (report->steps) {
        print_steps(report->steps);
    }
    print_cautions(report);
    text_sources(calc);
}
