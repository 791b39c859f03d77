/* report_value.c - bare numbers for scripts. */
#include "cli/report_value.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/stream.h"

#include <math.h>
#include <stdio.h>

/* A result that is there when the one asked for is not. */
static const char *applying(const struct report *report, size_t wanted)
{
    const struct hw_calc *calc = report->question->calc;
    for (size_t i = 0; i < calc->n_results; i++) {
        if (i != wanted && !isnan(report->answer->out[i])) {
            return calc->results[i].name;
        }
    }
    return NULL;
}

void report_value_raised(const struct report *report)
{
    char codes[CODES_MAX];
    notes_codes(report->question->calc, report->answer->notes, notes_possible(report->spread),
                codes);
    if (codes[0] != '\0' && report->row) {
        complain("row %zu: raised: %s", report->row->number, codes);
    } else if (codes[0] != '\0') {
        complain("raised: %s", codes);
    }
}

/* Several results in one line, a '-' for one that does not apply. False where none does. */
static bool print_several(const struct report *report)
{
    bool any = false;
    if (report->answer->status >= 0 && report->question->n_axes == 0) {
        report_value_raised(report);
    }
    for (size_t at = 0; at < report->args->n_only; at++) {
        double value = report->answer->out[report->args->order[at]];
        char text[NUMBER_MAX] = "-";
        if (!isnan(value)) {
            number_digits(text, value, report->args->digits ? report->args->digits : 6);
            any = true;
        }
        (void)printf("%s%s", at == 0 ? "" : "\t", text);
    }
    (void)putchar('\n');
    return any;
}

bool report_value(const struct report *report)
{
    if (report->args->n_only > 1 &&
        (report->answer->status >= 0 || report->row || report->question->n_axes > 0)) {
        return print_several(report);
    }
    const struct hw_calc *calc = report->question->calc;
    size_t wanted = report->args->order[0];
    double value = report->answer->out[wanted];
    if (!isnan(value)) {
        if (report->question->n_axes == 0) {
            report_value_raised(report);
        }
        char text[NUMBER_MAX];
        number_digits(text, value, report->args->digits ? report->args->digits : 6);
        (void)puts(text);
        return true;
    }
    if (report->row || report->question->n_axes > 0) {
        (void)putchar('\n');
        return false;
    }
    if (report->answer->status >= 0) {
        const char *other = applying(report, wanted);
        complain("%s does not apply here%s%s%s", calc->results[wanted].name, other ? "; " : "",
                 other ? other : "", other ? " does" : "");
        return false;
    }
    uint64_t grave = report->answer->notes & hw_notes_grave(calc);
    for (size_t bit = 0; notes_next(calc, grave, &bit); bit++) {
        complain("%s: %s: %s", calc->name, hw_note_at(calc, bit)->code,
                 hw_note_at(calc, bit)->text);
    }
    return false;
}
