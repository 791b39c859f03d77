/* report_log.c - one answer as a line of a logbook. */
#include "cli/report_log.h"

#include "cli/clock.h"
#include "cli/column_name.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_cell.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Adds "name=value unit" to a list joined by "; ". */
static void add_entry(char list[CELL_MAX], const char *name, const char *value, const char *unit)
{
    size_t used = strlen(list);
    (void)snprintf(list + used, CELL_MAX - used, "%s%s=%s%s%s", used == 0 ? "" : "; ", name, value,
                   unit[0] == '\0' ? "" : " ", unit);
}

/* The words of a set stand in one cell with others: a plus joins them. */
static void join_by_plus(const struct hw_input *input, char value[WORDS_MAX])
{
    for (char *c = value; input->kind == HW_SET && *c != '\0'; c++) {
        *c = *c == ',' ? '+' : *c;
    }
}

static void list_inputs(const struct report *report, int digits, char list[CELL_MAX])
{
    const struct hw_question *question = report->question;
    list[0] = '\0';
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->from[i] != HW_ABSENT) {
            char value[WORDS_MAX];
            report_cell_input(question, i, digits, value);
            join_by_plus(&question->calc->inputs[i], value);
            if (question->half[i] > 0) {
                char half[NUMBER_MAX];
                size_t used = strlen(value);
                number_digits(half, question->half[i], digits);
                (void)snprintf(value + used, sizeof value - used, "+-%.40s", half);
            }
            add_entry(list, question->calc->inputs[i].name, value, question->calc->inputs[i].unit);
        }
    }
}

/* Adds "NAME_low=value unit; NAME_high=value unit", as far as they can be told. */
static void add_spread(const struct report *report, size_t result, int digits, char list[CELL_MAX])
{
    static const char *const parts[] = {"_low", "_high"};
    const struct hw_result *this = &report->question->calc->results[result];
    for (size_t k = 0; k < 2 && report->spread; k++) {
        double value = k == 0 ? report->spread->low[result] : report->spread->high[result];
        if (!isnan(value)) {
            char name[COLUMN_NAME_MAX];
            char number[NUMBER_MAX];
            (void)snprintf(name, sizeof name, "%s%s", this->name, parts[k]);
            number_digits(number, value, digits);
            add_entry(list, name, number, this->unit);
        }
    }
}

static void list_results(const struct report *report, int digits, char list[CELL_MAX])
{
    const struct hw_calc *calc = report->question->calc;
    list[0] = '\0';
    if (report->answer->status < 0) {
        (void)snprintf(list, CELL_MAX, "status=%s",
                       report->answer->status == -2 ? "withheld" : "refused");
        return;
    }
    for (size_t at = 0; at < calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (report->args->only[i] && !isnan(report->answer->out[i])) {
            char number[NUMBER_MAX];
            number_digits(number, report->answer->out[i], digits);
            add_entry(list, calc->results[i].name, number, calc->results[i].unit);
            add_spread(report, i, digits, list);
        }
    }
}

/* When and where: of the row if it tells, else of the options, else now. */
static void put_when_and_tank(const struct report *report, FILE *out)
{
    char room[CELL_MAX];
    char now[CLOCK_TEXT];
    struct hw_text when = {room, 0};
    if (report->row && report->row->columns->when != NO_COLUMN) {
        when = columns_when(report->row->columns, &report->row->record, room);
    }
    if (when.n > 0) {
        report_cell_own(out, when, ','); /* a time, unless the row could not be asked */
    } else if (report->args->when && when.at) {
        report_cell_text(out, report->args->when, ',');
    } else if (!report->row) { /* a row is no reading of this second */
        clock_now(now);
        report_cell_text(out, now, ',');
    }
    (void)fputc(',', out);
    struct hw_text tank = {room, 0};
    if (report->row && report->row->columns->tank != NO_COLUMN) {
        tank = columns_cell(report->row->columns, &report->row->record, report->row->columns->tank,
                            room, sizeof room);
    }
    if (tank.n > 0) {
        report_cell_own(out, tank, ',');
    } else if (report->args->tank) {
        const char *name = report->args->tank;
        report_cell_own(out, (struct hw_text){name, strlen(name)}, ',');
    }
    (void)fputc(',', out);
}

/* A text of any length within a cell that stands in quotes: quotes in it are doubled, unless they
 * are so already. */
static void put_quoted(struct hw_text text, bool doubled, FILE *out)
{
    for (size_t i = 0; i < text.n; i++) {
        if (text.at[i] == '"' && !doubled) {
            (void)fputc('"', out);
        }
        (void)fputc(text.at[i], out);
    }
}

static void put_cell_quoted(const struct csv_cell *cell, FILE *out)
{
    put_quoted(cell->broken ? cell->raw : cell->text, cell->quoted && !cell->broken, out);
}

/* The cells of a row that could not be asked, with their headers: what was read stays readable.
 * They go out as they are taken off the record, for a remark may be of any length. */
static void put_cells_as_written(const struct row_view *row, FILE *out)
{
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_at = 0;
    struct hw_text first = {row->columns->header.at, row->columns->header.n};
    (void)fputs(report_cell_runs(first) ? "\"'" : "\"", out);
    while (csv_next_cell(&row->columns->header, row->columns->separator, &name_at, &name) &&
           csv_next_cell(&row->record, row->columns->separator, &cell_at, &cell)) {
        (void)fputs(name.raw.at == row->columns->header.at ? "" : "; ", out);
        put_cell_quoted(&name, out);
        (void)fputc('=', out);
        put_cell_quoted(&cell, out);
    }
    if (row->surplus.at) {
        (void)fputs("; surplus=", out);
        put_quoted(row->surplus, false, out);
    }
    (void)fputc('"', out);
}

void report_log(const struct report *report, FILE *out)
{
    const struct hw_calc *calc = report->args->calc;
    int digits = report->args->digits ? report->args->digits : 6;
    char text[CELL_MAX];
    char codes[CODES_MAX];
    put_when_and_tank(report, out);
    report_cell_text(out, calc->name, ',');
    (void)fputc(',', out);
    if (report->row && report->row->problem) {
        put_cells_as_written(report->row, out);
        (void)snprintf(text, sizeof text, "problem=%s", report->row->problem);
        (void)fputc(',', out);
        report_cell_text(out, text, ',');
        (void)fputs(",,\n", out);
        return;
    }
    list_inputs(report, digits, text);
    report_cell_text(out, text, ',');
    (void)fputc(',', out);
    list_results(report, digits, text);
    report_cell_text(out, text, ',');
    (void)fputc(',', out);
    notes_codes(calc, report->answer->notes, notes_possible(report->spread), codes);
    report_cell_text(out, codes, ',');
    (void)fputc(',', out);
    if (report->args->note) {
        const char *note = report->args->note;
        report_cell_own(out, (struct hw_text){note, strlen(note)}, ',');
    }
    (void)fputc('\n', out);
}
