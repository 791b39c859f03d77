/* report_record.c - one answer as a row of a table, or as a line of a logbook. */
#include "cli/print.h"
#include "cli/report.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { CELL_MAX = 4000 };

void words_of(const struct hw_input *input, double value, char *text, size_t size)
{
    if (input->kind == HW_CHOICE) {
        (void)snprintf(text, size, "%s", input->words[(size_t)value]);
        return;
    }
    uint32_t bits = (uint32_t)value;
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; input->words[i]; i++) {
        if (((bits >> i) & 1u) != 0 && used < size) {
            int n =
                snprintf(text + used, size - used, "%s%s", used == 0 ? "" : ",", input->words[i]);
            used += (size_t)n;
        }
    }
}

bool has_note(const struct hw_answer *answer, size_t note)
{
    return ((answer->notes >> note) & 1u) != 0;
}

uint64_t possible_notes(const struct report *report)
{
    return report->spread ? report->spread->possible : 0;
}

void raised_codes(const struct hw_calc *calc, uint64_t notes, uint64_t possible,
                  char text[CODES_MAX])
{
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; i < calc->n_notes; i++) {
        bool raised = ((notes >> i) & 1u) != 0 && calc->notes[i].effect != HW_STANDING;
        bool maybe = ((possible >> i) & 1u) != 0;
        if ((raised || maybe) && used < CODES_MAX) {
            int n = snprintf(text + used, CODES_MAX - used, "%s%s%s", used == 0 ? "" : ";",
                             maybe ? "possible:" : "", calc->notes[i].code);
            used += (size_t)n;
        }
    }
}

/* The offset of local time from UTC in minutes, from the two broken-down times: they are less than
 * a day apart. */
static int offset_minutes(const struct tm *local, const struct tm *utc)
{
    int days = local->tm_yday - utc->tm_yday;
    if (local->tm_year != utc->tm_year) {
        days = local->tm_year > utc->tm_year ? 1 : -1;
    }
    return (days * 24 + local->tm_hour - utc->tm_hour) * 60 + local->tm_min - utc->tm_min;
}

void when_now(char text[WHEN_MAX])
{
    time_t now = time(NULL);
    struct tm local;
    struct tm utc;
    if (!localtime_r(&now, &local) || !gmtime_r(&now, &utc)) {
        text[0] = '\0';
        return;
    }
    int offset = offset_minutes(&local, &utc);
    (void)snprintf(text, WHEN_MAX, "%04d-%02d-%02dT%02d:%02d:%02d%c%02d:%02d", local.tm_year + 1900,
                   local.tm_mon + 1, local.tm_mday, local.tm_hour, local.tm_min, local.tm_sec,
                   offset < 0 ? '-' : '+', abs(offset) / 60, abs(offset) % 60);
}

static void put_cell(struct hw_text text, char separator)
{
    char cell[2 * CELL_MAX + 2];
    struct hw_text cut = {text.at, text.n < CELL_MAX ? text.n : CELL_MAX};
    size_t n = csv_write_cell(cut, separator, cell);
    (void)fwrite(cell, 1, n, stdout);
}

static void put_text(const char *text, char separator)
{
    put_cell((struct hw_text){text, strlen(text)}, separator);
}

/* An input's value as it stands in a cell: a number in its unit, words, or nothing. */
static void input_cell(const struct hw_question *question, size_t i, int digits,
                       char text[WORDS_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    text[0] = '\0';
    if (question->from[i] == HW_ABSENT) {
        return;
    }
    if (input->words) {
        words_of(input, question->in[i], text, WORDS_MAX);
    } else {
        char number[NUMBER_MAX];
        number_digits(number, question->in[i], digits);
        (void)snprintf(text, WORDS_MAX, "%s", number);
    }
}

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
    column_part_name(name, part, unit, text);
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

void report_table_header(const struct report *report, char separator)
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
    for (size_t i = 0; i < calc->n_results; i++) {
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

void report_table_row(const struct report *report, char separator)
{
    const struct hw_calc *calc = report->question->calc;
    int digits = report->args->digits ? report->args->digits : 6;
    char text[CELL_MAX];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (has_column(report->question, i)) {
            input_cell(report->question, i, digits, text);
            put_text(text, separator);
            (void)putchar(separator);
            if (report->question->half[i] > 0) {
                put_number(report->question->half[i], digits, separator);
            }
        }
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        if (report->args->only[i]) {
            put_number(report->answer->out[i], digits, separator);
        }
        if (report->args->only[i] && report->spread) {
            put_number(report->spread->low[i], digits, separator);
            put_number(report->spread->high[i], digits, separator);
        }
    }
    raised_codes(calc, report->answer->notes, possible_notes(report), text);
    put_text(text, separator);
    (void)putchar('\n');
}

void report_table(const struct report *report, char separator)
{
    report_table_header(report, separator);
    report_table_row(report, separator);
}

/* Adds "name=value unit" to a list joined by "; ". */
static void add_entry(char list[CELL_MAX], const char *name, const char *value, const char *unit)
{
    size_t used = strlen(list);
    (void)snprintf(list + used, CELL_MAX - used, "%s%s=%s%s%s", used == 0 ? "" : "; ", name, value,
                   unit[0] == '\0' ? "" : " ", unit);
}

static void list_inputs(const struct report *report, int digits, char list[CELL_MAX])
{
    const struct hw_question *question = report->question;
    list[0] = '\0';
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->from[i] != HW_ABSENT) {
            char value[WORDS_MAX];
            input_cell(question, i, digits, value);
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
    for (size_t i = 0; i < calc->n_results; i++) {
        if (report->args->only[i] && !isnan(report->answer->out[i])) {
            char number[NUMBER_MAX];
            number_digits(number, report->answer->out[i], digits);
            add_entry(list, calc->results[i].name, number, calc->results[i].unit);
            add_spread(report, i, digits, list);
        }
    }
}

/* The cell of a row in that column, without quotes around it; nothing for NO_COLUMN. */
static struct hw_text row_cell(const struct row_view *row, long column, char *room)
{
    struct csv_cell cell = {.quoted = false};
    size_t at = 0;
    for (long i = 0; csv_next_cell(&row->record, row->columns->separator, &at, &cell); i++) {
        if (i == column && cell.text.n <= CELL_MAX) {
            return (struct hw_text){room, csv_unquote(&cell, room)};
        }
    }
    return (struct hw_text){room, 0};
}

/* When and where: of the row if it tells, else of the options, else now. */
static void put_when_and_tank(const struct report *report)
{
    char room[CELL_MAX];
    char now[WHEN_MAX] = "";
    struct hw_text when = {room, 0};
    if (report->row && report->row->columns->when != NO_COLUMN) {
        when = row_cell(report->row, report->row->columns->when, room);
    }
    if (when.n > 0) {
        put_cell(when, ',');
    } else if (report->args->when) {
        put_text(report->args->when, ',');
    } else {
        when_now(now);
        put_text(now, ',');
    }
    (void)putchar(',');
    struct hw_text tank = {room, 0};
    if (report->row && report->row->columns->tank != NO_COLUMN) {
        tank = row_cell(report->row, report->row->columns->tank, room);
    }
    if (tank.n > 0) {
        put_cell(tank, ',');
    } else if (report->args->tank) {
        put_text(report->args->tank, ',');
    }
    (void)putchar(',');
}

/* The cells of a row that could not be asked, with their headers: what was read stays readable, as
 * far as a cell holds it. */
static void put_cells_as_written(const struct row_view *row)
{
    char list[CELL_MAX] = "";
    char room[2][CELL_MAX];
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_at = 0;
    while (csv_next_cell(&row->columns->header, row->columns->separator, &name_at, &name) &&
           csv_next_cell(&row->record, row->columns->separator, &cell_at, &cell)) {
        if (name.text.n < CELL_MAX && cell.text.n < CELL_MAX) {
            size_t used = strlen(list);
            (void)snprintf(list + used, CELL_MAX - used, "%s%.*s=%.*s", used == 0 ? "" : "; ",
                           (int)csv_unquote(&name, room[0]), room[0],
                           (int)csv_unquote(&cell, room[1]), room[1]);
        }
    }
    put_text(list, ',');
}

void report_log(const struct report *report)
{
    const struct hw_calc *calc = report->args->calc;
    int digits = report->args->digits ? report->args->digits : 6;
    char text[CELL_MAX];
    put_when_and_tank(report);
    put_text(calc->name, ',');
    (void)putchar(',');
    if (report->row && report->row->problem) {
        put_cells_as_written(report->row);
        (void)snprintf(text, sizeof text, "problem=%s", report->row->problem);
        (void)fputs(",,", stdout);
        put_text(text, ',');
        (void)putchar('\n');
        return;
    }
    list_inputs(report, digits, text);
    put_text(text, ',');
    (void)putchar(',');
    list_results(report, digits, text);
    put_text(text, ',');
    (void)putchar(',');
    raised_codes(calc, report->answer->notes, possible_notes(report), text);
    put_text(text, ',');
    (void)putchar('\n');
}
