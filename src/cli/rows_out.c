/* rows_out.c - answers a block of rows and writes them with what was found. */
#include "cli/rows_out.h"

#include "cli/column_name.h"
#include "cli/report_json.h"
#include "cli/report_log.h"
#include "cli/report_value.h"
#include "cli/rows_line.h"
#include "cli/stream.h"
#include "engine/decimal.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* --- Output: a buffer before stdout ----------------------------------------------------------- */

static void put(struct rows *rows, const char *text, size_t n)
{
    if (n > OUT_SIZE - rows->written) {
        rows_flush(rows);
    }
    if (n > OUT_SIZE) {
        stream_write(text, n);
        return;
    }
    memcpy(rows->text + rows->written, text, n);
    rows->written += n;
}

static void put_char(struct rows *rows, char c)
{
    put(rows, &c, 1);
}

static void put_word(struct rows *rows, const char *word)
{
    put(rows, word, strlen(word));
}

/* A number in the decimals of the rows; in quotes where a comma would end its cell. */
static void put_number(struct rows *rows, double value)
{
    if (OUT_SIZE - rows->written < HW_DECIMAL_MAX + 2) {
        rows_flush(rows);
    }
    int digits = rows->args->digits ? rows->args->digits : 6;
    char *at = rows->text + rows->written;
    size_t n = hw_decimal_write(at, value, digits);
    char *point = rows->args->decimal_comma ? memchr(at, '.', n) : NULL;
    rows->written += n;
    if (!point) {
        return;
    }
    *point = ',';
    if (rows->out_separator == ',') {
        memmove(at + 1, at, n);
        at[0] = at[n + 1] = '"';
        rows->written += 2;
    }
}

/* --- The header ------------------------------------------------------------------------------- */

/* Room for a cell, and for it with its quotes doubled. */
static char plain[CSV_RECORD_MAX + PROBLEM_MAX];
static char room[2 * sizeof plain + 2];

/* A record in the separator of the output. */
static void put_record(struct rows *rows, const struct csv_record *record, size_t max_cells)
{
    struct csv_cell cell;
    size_t at = 0;
    for (size_t i = 0; i < max_cells && csv_next_cell(record, rows->in_separator, &at, &cell);
         i++) {
        if (i > 0) {
            put_char(rows, rows->out_separator);
        }
        struct hw_text text = {plain, csv_unquote(&cell, plain)};
        put(rows, room, csv_write_cell(text, rows->out_separator, room));
    }
}

/* True when TSV cannot hold the record: its tabs and line breaks become blanks. */
static bool is_lossy(const struct rows *rows, const struct csv_record *record)
{
    return rows->out_separator == '\t' && rows->in_separator != '\t' &&
           (memchr(record->at, '\t', record->n) || memchr(record->at, '\n', record->n) ||
            memchr(record->at, '\r', record->n));
}

bool rows_is_table(const struct rows *rows)
{
    return rows->args->format == FORMAT_CSV || rows->args->format == FORMAT_TSV;
}

void rows_put_header(struct rows *rows)
{
    static const char *const parts[] = {"", "_low", "_high"};
    if (!rows_is_table(rows)) {
        return;
    }
    if (rows->in_separator == rows->out_separator) {
        put(rows, rows->columns.header.at, rows->columns.header.n);
    } else {
        put_record(rows, &rows->columns.header, rows->columns.n);
    }
    for (size_t at = 0; at < rows->calc->n_results; at++) {
        size_t i = rows->args->order[at];
        for (size_t k = 0; rows->args->only[i] && k < (rows->args->spread ? 3 : 1); k++) {
            char name[COLUMN_NAME_MAX];
            column_name(rows->calc->results[i].name, parts[k], rows->calc->results[i].unit, name);
            put_char(rows, rows->out_separator);
            put_word(rows, rows->args->prefix);
            put_word(rows, name);
        }
    }
    put_char(rows, rows->out_separator);
    put_word(rows, rows->args->prefix);
    put_word(rows, "cautions");
    put_char(rows, rows->out_separator);
    put_word(rows, rows->args->prefix);
    put_word(rows, "problem\n");
}

/* --- Rows out --------------------------------------------------------------------------------- */

/* 1 is the first row after the header. */
static size_t number_of(const struct rows *rows, const struct row *row)
{
    return rows->number - rows->n_rows + (size_t)(row - rows->row) + 1;
}

/* The code of the note that left no answer, and the word for its kind. Of several it is one of the
 * gravest: a row that is withheld is never called refused. */
static void find_refusal(struct rows *rows, struct row *row)
{
    uint64_t grave = rows->batch.notes[row->place] & rows->grave;
    uint64_t withheld = grave & notes_between(rows->calc, HW_WITHHELD, HW_WITHHELD);
    uint64_t gravest = withheld != 0 ? withheld : grave;
    for (size_t bit = 0; notes_next(rows->calc, gravest, &bit); bit++) {
        row->problem = withheld != 0 ? "withheld" : "refused";
        row->problem_input = hw_note_at(rows->calc, bit)->code;
    }
}

/* The cells of the record: as they stand, cut or padded to the header. */
static void put_cells(struct rows *rows, struct row *row)
{
    if (rows->in_separator == rows->out_separator) {
        put(rows, row->record.at, row->cells > rows->columns.n ? row->keep : row->record.n);
    } else {
        put_record(rows, &row->record, rows->columns.n);
    }
    for (size_t i = row->cells; i < rows->columns.n; i++) {
        put_char(rows, rows->out_separator);
    }
}

/* The question and the answer of a row; an answer without results where it could not be asked. */
static void view_row(struct rows *rows, const struct row *row, struct hw_answer *answer)
{
    *answer = (struct hw_answer){.notes = 0, .status = -1};
    for (size_t i = 0; i < rows->calc->n_results; i++) {
        answer->out[i] = row->place == NOT_ASKED ? (double)NAN : rows->batch.out[i][row->place];
    }
    rows->question = rows->constant;
    if (row->place != NOT_ASKED) {
        answer->notes = rows->batch.notes[row->place];
        answer->status = hw_notes_status(rows->calc, answer->notes);
        for (size_t i = 0; i < rows->calc->n_inputs; i++) {
            rows->question.in[i] = rows->batch.in[i][row->place];
            rows->question.from[i] = rows->from[i][row->place];
            rows->question.half[i] = rows->args->spread ? rows->half[i][row->place] : 0;
        }
    }
    for (size_t k = 0; row->quick && k < rows->columns.n_feed; k++) {
        rows->question.from[rows->columns.feed[k].input] = HW_FROM_COLUMN;
    }
}

static void put_results(struct rows *rows, const struct row *row, const struct hw_spread *spread)
{
    for (size_t at = 0; at < rows->calc->n_results; at++) {
        size_t i = rows->args->order[at];
        if (rows->args->only[i]) {
            put_char(rows, rows->out_separator);
            if (row->place != NOT_ASKED) {
                put_number(rows, rows->batch.out[i][row->place]); /* nothing for NaN */
            }
        }
        if (rows->args->only[i] && spread) {
            put_char(rows, rows->out_separator);
            put_number(rows, spread->low[i]);
            put_char(rows, rows->out_separator);
            put_number(rows, spread->high[i]);
        }
    }
}

/* What the record has beyond the header, as it stands there. */
static struct hw_text surplus_of(const struct rows *rows, const struct row *row)
{
    struct hw_text none = {NULL, 0};
    if (row->cells <= rows->columns.n) {
        return none;
    }
    return (struct hw_text){row->record.at + row->keep + 1, row->record.n - row->keep - 1};
}

/* The reason code and the input it concerns, or the cells that are too many. */
static void put_problem(struct rows *rows, const struct row *row)
{
    struct hw_text surplus = surplus_of(rows, row);
    if (!row->problem) {
        return;
    }
    if (!surplus.at) {
        put_word(rows, row->problem);
        put_word(rows, row->problem_input ? " " : "");
        put_word(rows, row->problem_input ? row->problem_input : "");
        return;
    }
    size_t n = (size_t)snprintf(plain, sizeof plain, "%s ", row->problem);
    memcpy(plain + n, surplus.at, surplus.n);
    struct hw_text text = {plain, n + surplus.n};
    put(rows, room, csv_write_cell(text, rows->out_separator, room));
}

static void put_table_row(struct rows *rows, struct row *row)
{
    struct hw_spread spread = {.possible = 0};
    put_cells(rows, row);
    if (rows->args->spread) {
        struct hw_answer answer;
        view_row(rows, row, &answer);
        hw_question_spread(&rows->question, &answer, &spread);
    }
    put_results(rows, row, rows->args->spread ? &spread : NULL);
    put_char(rows, rows->out_separator);
    if (row->place != NOT_ASKED) {
        struct hw_text codes = rows_codes(rows, rows->batch.notes[row->place], spread.possible);
        put(rows, codes.at, codes.n);
    }
    put_char(rows, rows->out_separator);
    put_problem(rows, row);
    put_char(rows, '\n');
}

/* The formats that print one answer at a time. */
static void put_report(struct rows *rows, const struct row *row)
{
    char problem[PROBLEM_MAX];
    struct hw_answer answer;
    struct hw_spread spread;
    (void)snprintf(problem, sizeof problem, "%s%s%s", row->problem ? row->problem : "",
                   row->problem_input ? " " : "", row->problem_input ? row->problem_input : "");
    struct row_view view = {number_of(rows, row), &rows->columns, row->record,
                            row->problem ? problem : NULL, surplus_of(rows, row)};
    view_row(rows, row, &answer);
    if (rows->args->spread) {
        hw_question_spread(&rows->question, &answer, &spread);
    }
    struct report report = {.args = rows->args,
                            .question = &rows->question,
                            .answer = &answer,
                            .spread = rows->args->spread ? &spread : NULL,
                            .row = &view};
    if (rows->args->format == FORMAT_JSONL) {
        report_json_row(&report, &rows->json);
    } else if (rows->args->format == FORMAT_LOG) {
        report_log(&report, stdout);
    } else {
        rows->bad += report_value(&report) || row->problem ? 0 : 1;
    }
}

static size_t lines_of(const struct csv_record *record)
{
    size_t lines = 1;
    for (size_t i = 0; i < record->n; i++) {
        lines += record->at[i] == '\n' ? 1 : 0;
    }
    return lines;
}

/* Says once for a file what may be wrong with all of it, and what to type. */
static void tell_once(struct rows *rows, const struct row *row, enum telling what)
{
    const char *name = input_name(&rows->input);
    if (rows->told[what]) {
        return;
    }
    rows->told[what] = true;
    rows_flush(rows);
    if (what == TELL_SURPLUS) {
        complain(
            "%s: row %zu has more cells than the header: a decimal comma without quotes makes one",
            name, number_of(rows, row));
    } else if (what == TELL_COMMA) {
        complain("%s: row %zu has a decimal comma: add --decimal comma if they all have", name,
                 number_of(rows, row));
    } else if (what == TELL_TANK) {
        complain("%s: row %zu names a tank that is not in %s", name, number_of(rows, row),
                 rows->args->tanks);
    } else {
        complain("%s: row %zu runs over %zu lines: a quote that opens there takes in the rows after"
                 " it",
                 name, number_of(rows, row), lines_of(&row->record));
    }
}

/* A record whose quotes or cells do not come out may have taken in the lines after it. */
static bool swallows_lines(const struct rows *rows, const struct row *row)
{
    bool off = row->cells != rows->columns.n || strcmp(row->problem, "broken-quotes") == 0;
    return off && row->record.quotes && memchr(row->record.at, '\n', row->record.n);
}

static void tell_of_file(struct rows *rows, const struct row *row)
{
    if (swallows_lines(rows, row)) {
        tell_once(rows, row, TELL_LINES);
    } else if (row->cells > rows->columns.n) {
        tell_once(rows, row, TELL_SURPLUS);
    }
    if (strcmp(row->problem, "unknown-tank") == 0) {
        tell_once(rows, row, TELL_TANK);
    }
    if (rows->in_separator != ',' && strcmp(row->problem, "decimal-comma") == 0) {
        tell_once(rows, row, TELL_COMMA);
    }
}

/* Counts a row that gives no answer; false when it must not be written. */
static bool allow(struct rows *rows, const struct row *row)
{
    if (!row->problem) {
        return true;
    }
    rows->bad++;
    tell_of_file(rows, row);
    rows->withheld += strcmp(row->problem, "withheld") == 0 ? 1 : 0;
    if (rows->args->on_bad == BAD_DROP) {
        rows->dropped++;
        return false;
    }
    if (rows->args->on_bad == BAD_STOP) {
        rows->stopped = true;
        rows_flush(rows);
        complain("%s: row %zu: %s%s%s: stopped", input_name(&rows->input), number_of(rows, row),
                 row->problem, row->problem_input ? " " : "",
                 row->problem_input ? row->problem_input : "");
        return false;
    }
    return true;
}

/* Writes a row as it comes. */
static void put_row(struct rows *rows, struct row *row)
{
    if (row->place != NOT_ASKED && (rows->batch.notes[row->place] & rows->grave) != 0) {
        find_refusal(rows, row);
    }
    if (!row->problem && is_lossy(rows, &row->record)) {
        row->problem = "tab-or-line-break";
    }
    if (!allow(rows, row)) {
        return;
    }
    if (rows_is_table(rows)) {
        put_table_row(rows, row);
    } else {
        put_report(rows, row);
    }
}

void rows_finish_block(struct rows *rows)
{
    hw_batch_run(&rows->batch, rows->n_asked);
    rows->line.n_spelt = 0;
    for (size_t i = 0; i < rows->n_rows && !rows->stopped;) {
        size_t n = rows_line_put(rows, i);
        if (n == 0) {
            put_row(rows, &rows->row[i]);
            n = 1;
        }
        i += n;
    }
    rows->n_rows = rows->n_asked = 0;
}
