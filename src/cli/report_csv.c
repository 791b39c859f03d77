/* report_csv.c - one answer as a row of a table. */
#include "cli/report_csv.h"

#include "cli/column_name.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_cell.h"

#include <math.h>
#include <stdio.h>

/* True for the first entry of a name that is in force, or for the first of all when none is: one
 * column a name. */
static bool has_column(const struct hw_question *question, size_t i)
{
    const struct hw_calc *calc = question->calc;
    size_t chosen = hw_input_first(calc, i);
    for (size_t k = chosen; k < calc->n_inputs; k = hw_input_next(calc, k)) {
        chosen = question->from[k] != HW_ABSENT ? k : chosen;
    }
    return chosen == i;
}

static void put_column(const char *name, const char *part, const char *unit, char separator)
{
    char text[COLUMN_NAME_MAX];
    column_name(name, part, unit, text);
    (void)printf("%s%c", text, separator);
}

/* A number and the separator after it; nothing for NaN. */
static void put_number(double value, int digits, char separator)
{
    char number[NUMBER_MAX] = "";
    if (!isnan(value)) {
        number_digits(number, value, digits);
    }
    (void)printf("%s%c", number, separator);
}

void report_csv_header(const struct report *report, char separator)
{
    const struct hw_calc *calc = report->question->calc;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (has_column(report->question, i)) {
            put_column(calc->inputs[i].name, "", calc->inputs[i].unit, separator);
            if (report->question->half[i] > 0) {
                put_column(calc->inputs[i].name, "_half", calc->inputs[i].unit, separator);
            }
        }
    }
    for (size_t at = 0; at < calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (report->args->only[i]) {
            put_column(calc->results[i].name, "", calc->results[i].unit, separator);
        }
        if (report->args->only[i] && report->spread) {
            put_column(calc->results[i].name, "_low", calc->results[i].unit, separator);
            put_column(calc->results[i].name, "_high", calc->results[i].unit, separator);
        }
    }
    (void)puts("cautions");
}

void report_csv_row(const struct report *report, char separator)
{
    const struct hw_calc *calc = report->question->calc;
    int digits = report->args->digits ? report->args->digits : 6;
    char value[WORDS_MAX];
    char codes[CODES_MAX];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (has_column(report->question, i)) {
            report_cell_input(report->question, i, digits, value);
            report_cell_text(stdout, value, separator);
            (void)putchar(separator);
            if (report->question->half[i] > 0) {
                put_number(report->question->half[i], digits, separator);
            }
        }
    }
    for (size_t at = 0; at < calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (report->args->only[i]) {
            put_number(report->answer->out[i], digits, separator);
        }
        if (report->args->only[i] && report->spread) {
            put_number(report->spread->low[i], digits, separator);
            put_number(report->spread->high[i], digits, separator);
        }
    }
    notes_codes(calc, report->answer->notes, notes_possible(report->spread), codes);
    report_cell_text(stdout, codes, separator);
    (void)putchar('\n');
}

void report_csv(const struct report *report, char separator)
{
    report_csv_header(report, separator);
    report_csv_row(report, separator);
}
