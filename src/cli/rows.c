/* rows.c - reads records, asks them in blocks, writes them with what was found. */
#include "cli/rows.h"

#include "cli/columns.h"
#include "cli/input.h"
#include "cli/message.h"
#include "cli/print.h"
#include "cli/report.h"
#include "cli/stream.h"
#include "engine/answer.h"
#include "engine/decimal.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { OUT_SIZE = 1 << 16, PROBLEM_MAX = 64, NOT_ASKED = -1, CODES_KEPT = 32 };

/* A record of the block, and what became of it. */
struct row {
    struct csv_record record;
    size_t number;       /* 1 is the first after the header */
    size_t cells;        /* how many it has */
    size_t keep;         /* bytes of the record that are written, when it has too many cells */
    long place;          /* in the block's columns, or NOT_ASKED */
    const char *problem; /* a code, or NULL */
    const char *problem_input; /* the input that it concerns, or NULL */
};

struct rows {
    const struct args *args;
    const struct hw_calc *calc;
    struct columns columns;
    struct hw_written
        base[HW_INPUTS];         /* options and the tank; what a column feeds is marked as coming */
    struct hw_question constant; /* everything that no column feeds */
    uint32_t grave;              /* notes that leave no answer */
    bool plain;                  /* columns feed only numbers on which nothing else hangs */
    char in_separator, out_separator;

    struct row row[HW_BLOCK];
    size_t n_rows, n_asked;
    struct hw_question question; /* of the row at hand */
    enum hw_from from[HW_INPUTS][HW_BLOCK];
    double in[HW_INPUTS][HW_BLOCK];
    double out[HW_RESULTS][HW_BLOCK];
    uint32_t notes[HW_BLOCK];

    struct {
        bool known;
        uint32_t notes;
        char text[CODES_MAX];
    } codes[CODES_KEPT]; /* how some notes are spelt; most rows have one of a few sets */
    size_t number, bad, withheld, dropped;
    bool stopped;

    char header[CSV_RECORD_MAX];
    struct input input;
    size_t written;
    char text[OUT_SIZE];
};

/* --- Output: a buffer before stdout ------------------------------------------------------------------------------ */

static void flush(struct rows *rows)
{
    stream_write(rows->text, rows->written);
    rows->written = 0;
}

static void put(struct rows *rows, const char *text, size_t n)
{
    if (n > OUT_SIZE - rows->written) {
        flush(rows);
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

static void put_number(struct rows *rows, double value)
{
    if (OUT_SIZE - rows->written < HW_DECIMAL_MAX) {
        flush(rows);
    }
    int digits = rows->args->digits ? rows->args->digits : 6;
    rows->written += hw_decimal_write(rows->text + rows->written, value, digits);
}

/* --- The header -------------------------------------------------------------------------------------------------- */

/* A record in the separator of the output. */
static void put_record(struct rows *rows, const struct csv_record *record, size_t max_cells)
{
    static char room[2 * CSV_RECORD_MAX + 2];
    static char plain[CSV_RECORD_MAX];
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

static bool is_table(const struct rows *rows)
{
    return rows->args->format == FORMAT_CSV || rows->args->format == FORMAT_TSV;
}

static void put_header(struct rows *rows)
{
    if (!is_table(rows)) {
        return;
    }
    if (rows->in_separator == rows->out_separator) {
        put(rows, rows->columns.header.at, rows->columns.header.n);
    } else {
        put_record(rows, &rows->columns.header, rows->columns.n);
    }
    for (size_t i = 0; i < rows->calc->n_results; i++) {
        if (rows->args->only[i]) {
            char name[COLUMN_NAME_MAX];
            column_name(rows->calc->results[i].name, rows->calc->results[i].unit, name);
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

/* --- Rows out ---------------------------------------------------------------------------------------------------- */

static const char *codes_text(struct rows *rows, uint32_t notes)
{
    size_t slot = (notes ^ notes >> 7 ^ notes >> 13) % CODES_KEPT;
    if (!rows->codes[slot].known || rows->codes[slot].notes != notes) {
        raised_codes(rows->calc, notes, rows->codes[slot].text);
        rows->codes[slot].notes = notes;
        rows->codes[slot].known = true;
    }
    return rows->codes[slot].text;
}

/* The code of the note that left no answer, and the word for its kind. */
static void find_refusal(struct rows *rows, struct row *row)
{
    uint32_t notes = rows->notes[row->place];
    for (size_t i = 0; i < rows->calc->n_notes; i++) {
        enum hw_effect effect = rows->calc->notes[i].effect;
        if (((notes >> i) & 1u) != 0 && effect >= HW_REFUSED) {
            row->problem = effect == HW_WITHHELD ? "withheld" : "refused";
            row->problem_input = rows->calc->notes[i].code;
        }
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

static void put_table_row(struct rows *rows, struct row *row)
{
    put_cells(rows, row);
    for (size_t i = 0; i < rows->calc->n_results; i++) {
        if (rows->args->only[i]) {
            put_char(rows, rows->out_separator);
            if (row->place != NOT_ASKED) {
                put_number(rows, rows->out[i][row->place]); /* nothing for NaN */
            }
        }
    }
    put_char(rows, rows->out_separator);
    if (row->place != NOT_ASKED) {
        put_word(rows, codes_text(rows, rows->notes[row->place]));
    }
    put_char(rows, rows->out_separator);
    if (row->problem) {
        put_word(rows, row->problem);
        put_word(rows, row->problem_input ? " " : "");
        put_word(rows, row->problem_input ? row->problem_input : "");
    }
    put_char(rows, '\n');
}

/* The formats that print one answer at a time. */
static void put_report(struct rows *rows, const struct row *row)
{
    char problem[PROBLEM_MAX];
    struct hw_answer answer = {.notes = 0, .status = -1};
    (void)snprintf(problem, sizeof problem, "%s%s%s", row->problem ? row->problem : "",
                   row->problem_input ? " " : "", row->problem_input ? row->problem_input : "");
    struct row_view view = {row->number, &rows->columns, row->record,
                            row->problem ? problem : NULL};
    for (size_t i = 0; i < rows->calc->n_results; i++) {
        answer.out[i] = row->place == NOT_ASKED ? (double)NAN : rows->out[i][row->place];
    }
    rows->question = rows->constant;
    if (row->place != NOT_ASKED) {
        answer.notes = rows->notes[row->place];
        answer.status = hw_notes_status(rows->calc, answer.notes);
        for (size_t i = 0; i < rows->calc->n_inputs; i++) {
            rows->question.in[i] = rows->in[i][row->place];
            rows->question.from[i] = rows->from[i][row->place];
        }
    }
    struct report report = {rows->args, &rows->question, &answer, NULL, &view};
    if (rows->args->format == FORMAT_JSONL) {
        report_json(&report);
    } else if (rows->args->format == FORMAT_LOG) {
        report_log(&report);
    } else {
        rows->bad += report_value(&report) || row->problem ? 0 : 1;
    }
}

/* Counts a row that gives no answer; false when it must not be written. */
static bool allow(struct rows *rows, const struct row *row)
{
    if (!row->problem) {
        return true;
    }
    rows->bad++;
    rows->withheld += strcmp(row->problem, "withheld") == 0 ? 1 : 0;
    if (rows->args->on_bad == BAD_DROP) {
        rows->dropped++;
        return false;
    }
    if (rows->args->on_bad == BAD_STOP) {
        rows->stopped = true;
        flush(rows);
        complain("%s: row %zu: %s%s%s: stopped", input_name(&rows->input), row->number,
                 row->problem, row->problem_input ? " " : "",
                 row->problem_input ? row->problem_input : "");
        return false;
    }
    return true;
}

static void answer_block(struct rows *rows)
{
    const double *in[HW_INPUTS];
    double *out[HW_RESULTS];
    for (size_t i = 0; i < rows->calc->n_inputs; i++) {
        in[i] = rows->in[i];
    }
    for (size_t i = 0; i < rows->calc->n_results; i++) {
        out[i] = rows->out[i];
    }
    memset(rows->notes, 0, sizeof rows->notes);
    struct hw_block block = {rows->n_asked, in, out, rows->notes};
    if (rows->n_asked > 0) {
        hw_block_run(rows->calc, &block);
    }
}

static void finish_block(struct rows *rows)
{
    answer_block(rows);
    for (size_t i = 0; i < rows->n_rows && !rows->stopped; i++) {
        struct row *row = &rows->row[i];
        if (row->place != NOT_ASKED && (rows->notes[row->place] & rows->grave) != 0) {
            find_refusal(rows, row);
        }
        if (!row->problem && is_lossy(rows, &row->record)) {
            row->problem = "tab-or-line-break";
        }
        if (!allow(rows, row)) {
            continue;
        }
        if (is_table(rows)) {
            put_table_row(rows, row);
        } else {
            put_report(rows, row);
        }
    }
    rows->n_rows = rows->n_asked = 0;
}

/* --- Rows in ----------------------------------------------------------------------------------------------------- */

/* The cells that feed inputs, of a record without quotes: one pass over its bytes. */
static void split_plain(const struct rows *rows, struct row *row, struct hw_text fed[HW_INPUTS])
{
    const struct columns *columns = &rows->columns;
    const char separator = rows->in_separator;
    const char *at = row->record.at;
    const char *end = at + row->record.n;
    size_t index = 0;
    size_t next = 0;
    for (;; at++) {
        const char *cell = at;
        while (at < end && *at != separator) {
            at++;
        }
        if (next < columns->n_feed && columns->feed[next].column == index) {
            fed[next++] = (struct hw_text){cell, (size_t)(at - cell)};
        }
        index++;
        if (index == columns->n) {
            row->keep = (size_t)(at - row->record.at);
        }
        if (at == end) {
            break;
        }
    }
    row->cells = index;
}

/* The same of a record with quotes. Says when they are broken. */
static const char *split_quoted(const struct rows *rows, struct row *row,
                                struct hw_text fed[HW_INPUTS])
{
    const struct columns *columns = &rows->columns;
    const char *problem = NULL;
    struct csv_cell cell;
    size_t at = 0;
    size_t next = 0;
    for (row->cells = 0; csv_next_cell(&row->record, rows->in_separator, &at, &cell);
         row->cells++) {
        problem = cell.broken ? "broken-quotes" : problem;
        if (next < columns->n_feed && columns->feed[next].column == row->cells) {
            fed[next++] = cell.text;
        }
        if (row->cells + 1 == columns->n) {
            row->keep = (size_t)(cell.raw.at - row->record.at) + cell.raw.n;
        }
    }
    return problem;
}

static bool is_empty(struct hw_text text)
{
    while (text.n > 0 && (text.at[text.n - 1] == ' ' || text.at[text.n - 1] == '\t')) {
        text.n--;
    }
    return text.n == 0;
}

/* True when the row names another tank than --tank, whose values would then be taken for it. */
static bool is_other_tank(const struct rows *rows, const struct csv_record *record)
{
    struct csv_cell cell;
    size_t at = 0;
    if (!rows->args->tank || rows->columns.tank == NO_COLUMN) {
        return false;
    }
    for (long i = 0; csv_next_cell(record, rows->in_separator, &at, &cell); i++) {
        if (i == rows->columns.tank) {
            return !is_empty(cell.text) &&
                   !(cell.text.n == strlen(rows->args->tank) &&
                     memcmp(cell.text.at, rows->args->tank, cell.text.n) == 0);
        }
    }
    return false;
}

/* Finds the cells that feed inputs. Says what is wrong with the record as such. */
static const char *split(const struct rows *rows, struct row *row, struct hw_text fed[HW_INPUTS])
{
    const char *problem = NULL;
    if (row->record.quotes) {
        problem = split_quoted(rows, row, fed);
    } else {
        split_plain(rows, row, fed);
    }
    if (row->cells != rows->columns.n) {
        return row->cells < rows->columns.n ? "too-few-cells" : "too-many-cells";
    }
    if (!problem && is_other_tank(rows, &row->record)) {
        return "other-tank";
    }
    return problem;
}

/* Numbers on which nothing else hangs: each is read on its own; the rest of the question is the constant one. */
static enum hw_problem ask_plain(struct rows *rows, const struct hw_text fed[], size_t *which)
{
    size_t place = rows->n_asked;
    for (size_t i = 0; i < rows->columns.n_feed; i++) {
        const struct feed *feed = &rows->columns.feed[i];
        const struct hw_input *input = &rows->calc->inputs[feed->input];
        const struct hw_unit *unit = NULL;
        rows->in[feed->input][place] = rows->constant.in[feed->input];
        rows->from[feed->input][place] = rows->constant.from[feed->input];
        *which = feed->input;
        if (!is_empty(fed[i])) {
            rows->from[feed->input][place] = HW_FROM_COLUMN;
            enum hw_problem problem =
                hw_value_read(input, fed[i], feed->unit, &rows->in[feed->input][place], &unit);
            if (problem != HW_FINE) {
                return problem;
            }
        } else if (input->need == HW_REQUIRED && isnan(rows->constant.in[feed->input])) {
            return HW_PROBLEM_MISSING;
        }
    }
    return HW_FINE;
}

/* Any question: settled whole. */
static enum hw_problem ask_whole(struct rows *rows, const struct hw_text fed[], size_t *which)
{
    const struct hw_calc *calc = rows->calc;
    struct hw_written written[HW_INPUTS];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        written[i] = rows->base[i];
        written[i].from = written[i].text.at ? written[i].from : HW_ABSENT;
    }
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        const struct feed *feed = &rows->columns.feed[k];
        for (size_t i = feed->input; i < calc->n_inputs && !is_empty(fed[k]); i++) {
            if (strcmp(calc->inputs[i].name, calc->inputs[feed->input].name) == 0) {
                written[i] = (struct hw_written){fed[k], feed->unit, HW_FROM_COLUMN};
            }
        }
    }
    enum hw_problem problem = hw_question_settle(calc, written, &rows->question, which);
    for (size_t i = 0; i < calc->n_inputs && problem == HW_FINE; i++) {
        rows->in[i][rows->n_asked] = rows->question.in[i];
        rows->from[i][rows->n_asked] = rows->question.from[i];
    }
    return problem;
}

static void take_record(struct rows *rows, struct csv_record record)
{
    struct hw_text fed[HW_INPUTS] = {{NULL, 0}};
    struct row *row = &rows->row[rows->n_rows++];
    size_t which = 0;
    *row = (struct row){.record = record, .number = ++rows->number, .place = NOT_ASKED};
    row->problem = split(rows, row, fed);
    if (!row->problem) {
        enum hw_problem problem =
            rows->plain ? ask_plain(rows, fed, &which) : ask_whole(rows, fed, &which);
        if (problem == HW_FINE) {
            row->place = (long)rows->n_asked++;
        } else {
            row->problem = hw_problem_code(problem);
            row->problem_input = rows->calc->inputs[which].name;
        }
    }
    if (rows->n_rows == HW_BLOCK) {
        finish_block(rows);
    }
}

/* The next record of the input, reading more when it must. Before the text moves the block is finished, as its records
 * stand there. False at the end, or with a message and *fine false. */
static bool next_record(struct rows *rows, struct csv_record *record, bool *fine)
{
    struct input *input = &rows->input;
    for (;;) {
        size_t used = 0;
        enum csv_end end = CSV_MORE;
        if (input->begin < input->end) {
            end = csv_find_record(input->text + input->begin, input->end - input->begin,
                                  rows->in_separator, input->at_end, record, &used);
        } else if (input->at_end) {
            return false;
        }
        if (end == CSV_RECORD) {
            input->begin += used;
            return true;
        }
        finish_block(rows);
        flush(rows);
        stream_flush();
        if (end == CSV_TOO_LONG || end == CSV_UNCLOSED) {
            complain("%s: row %zu: %s: stopped", input_name(input), rows->number + 1,
                     end == CSV_TOO_LONG ? "a record of over 1 MiB"
                                         : "the file ends inside quotes");
            *fine = false;
            return false;
        }
        if (rows->stopped || ferror(stdout) || !input_fill(input)) {
            *fine = !ferror(stdout) && rows->stopped;
            return false;
        }
    }
}

/* --- The run ----------------------------------------------------------------------------------------------------- */

static bool read_header(struct rows *rows)
{
    struct csv_record record;
    bool fine = true;
    while (!rows->input.at_end && rows->input.end < 3) {
        if (!input_fill(&rows->input)) {
            return false;
        }
    }
    input_skip_mark(&rows->input);
    if (!next_record(rows, &record, &fine) || record.n == 0) {
        if (fine) {
            complain("%s has no header: the first line names the columns",
                     input_name(&rows->input));
        }
        return false;
    }
    if (!record.quotes && memchr(record.at, '\r', record.n)) {
        complain("%s has line ends of CR alone: save it with LF or CRLF", input_name(&rows->input));
        return false;
    }
    memcpy(rows->header, record.at, record.n);
    record.at = rows->header;
    return columns_read(rows->args, record, rows->in_separator, input_name(&rows->input),
                        &rows->columns);
}

/* True when an input stands on its own: a number, of no group, without conditions or a namesake. */
static bool stands_alone(const struct hw_calc *calc, size_t input)
{
    const struct hw_input *this = &calc->inputs[input];
    size_t first = hw_input_find(calc, this->name, strlen(this->name));
    return !this->words && this->group == 0 && this->when_input < 0 && first == input;
}

/* Checks once what no column decides, and fills the columns of the block that stay the same. */
static int prepare(struct rows *rows)
{
    const struct hw_calc *calc = rows->calc;
    size_t which = 0;
    rows->plain = true;
    rows->grave = hw_notes_grave(calc);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        rows->base[i] = rows->args->written[i];
        if (columns_feed(&rows->columns, calc, i)) {
            rows->plain = rows->plain && stands_alone(calc, i);
            rows->base[i].from = rows->base[i].text.at ? rows->base[i].from : HW_FROM_COLUMN;
        }
    }
    struct hw_written known[HW_INPUTS];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        known[i] = rows->base[i];
        if (calc->inputs[i].words && columns_feed(&rows->columns, calc, i)) {
            known[i] =
                (struct hw_written){{NULL, 0}, NULL, HW_FROM_COLUMN}; /* a cell may say other */
        }
    }
    enum hw_problem problem = hw_question_settle(calc, known, &rows->constant, &which);
    if (problem != HW_FINE) {
        message_problem(calc, known, &rows->constant, problem, which);
        return problem == HW_PROBLEM_OUT_OF_RANGE ? EXIT_UNANSWERED : EXIT_ASKED_WRONGLY;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        for (size_t row = 0; row < HW_BLOCK; row++) {
            rows->in[i][row] = rows->constant.in[i];
            rows->from[i][row] = rows->constant.from[i];
        }
    }
    return EXIT_ANSWERED;
}

static int status_of(const struct rows *rows, bool fine)
{
    if (rows->bad > 0 && !rows->stopped) {
        complain("%zu of %zu rows had a problem%s", rows->bad, rows->number,
                 rows->dropped > 0 ? " and were dropped" : "");
    }
    if (!fine) {
        return EXIT_ASKED_WRONGLY;
    }
    if (rows->withheld > 0) {
        return EXIT_WITHHELD;
    }
    return rows->bad > 0 ? EXIT_UNANSWERED : EXIT_ANSWERED;
}

int rows_run(const struct args *args)
{
    static struct rows rows;
    struct csv_record record;
    bool fine = true;
    rows.args = args;
    rows.calc = args->calc;
    rows.in_separator = args->tsv ? '\t' : ',';
    rows.out_separator = args->format == FORMAT_TSV ? '\t' : ',';
    if (!input_open(&rows.input, args->rows) || !read_header(&rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    int status = prepare(&rows);
    if (status != EXIT_ANSWERED) {
        return status;
    }
    put_header(&rows);
    while (!rows.stopped && next_record(&rows, &record, &fine)) {
        take_record(&rows, record);
    }
    finish_block(&rows);
    flush(&rows);
    input_close(&rows.input);
    return status_of(&rows, fine);
}
