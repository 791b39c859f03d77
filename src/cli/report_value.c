/* report_value.c - one bare number for scripts. */
#include "cli/report_value.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/stream.h"

#include <math.h>
#include <stdio.h>

/* A result that is there when the one asked for is not: of the same kind if there is one. */
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

bool report_value(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    size_t wanted = report->args->n_only > 0 ? report->args->only_first : 0;
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
