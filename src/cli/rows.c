/* rows.c - reads records and asks them, a block at a time. */
#include "cli/rows.h"

#include "cli/message.h"
#include "cli/rows_out.h"
#include "cli/stream.h"
#include "cli/tank.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* --- Rows in ---------------------------------------------------------------------------------- */

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

/* Nothing stands in for an empty cell; where it must be filled, a preset does not either. */
static bool is_missed(const struct rows *rows, size_t input)
{
    const struct hw_input *its = &rows->calc->inputs[input];
    bool given = !isnan(rows->constant.in[input]);
    bool preset = rows->constant.from[input] == HW_FROM_PRESET;
    return its->cell_must ? !given || preset : its->need == HW_REQUIRED && !given;
}

/* Numbers on which nothing else hangs: each is read on its own; the rest of the question is the
 * constant one. */
static enum hw_problem ask_plain(struct rows *rows, const struct hw_text fed[], size_t *which)
{
    size_t place = rows->n_asked;
    for (size_t i = 0; i < rows->columns.n_feed; i++) {
        const struct feed *feed = &rows->columns.feed[i];
        const struct hw_input *input = &rows->calc->inputs[feed->input];
        const struct hw_unit *unit = NULL;
        rows->batch.in[feed->input][place] = rows->constant.in[feed->input];
        rows->from[feed->input][place] = rows->constant.from[feed->input];
        *which = feed->input;
        if (!is_empty(fed[i])) {
            rows->from[feed->input][place] = HW_FROM_COLUMN;
            enum hw_problem problem = hw_value_read(input, fed[i], feed->unit,
                                                    &rows->batch.in[feed->input][place], &unit);
            if (problem != HW_FINE) {
                return problem;
            }
        } else if (is_missed(rows, feed->input)) {
            return HW_PROBLEM_MISSING;
        }
    }
    return HW_FINE;
}

/* The first input that carries an uncertainty, which rows take with --spread alone. */
static enum hw_problem find_uncertain(const struct hw_question *question, size_t *which)
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->half[i] > 0) {
            *which = i;
            return HW_PROBLEM_SPREAD;
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
        bool empty = is_empty(fed[k]);
        if (empty && calc->inputs[feed->input].cell_must && !written[feed->input].text.at) {
            *which = feed->input;
            return HW_PROBLEM_MISSING;
        }
        if (empty) {
            continue;
        }
        for (size_t i = feed->input; i < calc->n_inputs; i = hw_input_next(calc, i)) {
            written[i] = (struct hw_written){fed[k], feed->unit, HW_FROM_COLUMN};
        }
    }
    enum hw_problem problem = hw_question_settle(calc, written, &rows->question, which);
    if (problem == HW_FINE && !rows->args->spread) {
        problem = find_uncertain(&rows->question, which);
    }
    for (size_t i = 0; i < calc->n_inputs && problem == HW_FINE; i++) {
        rows->batch.in[i][rows->n_asked] = rows->question.in[i];
        rows->from[i][rows->n_asked] = rows->question.from[i];
        rows->half[i][rows->n_asked] = rows->question.half[i];
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
        rows_finish_block(rows);
    }
}

/* The next record of the input, reading more when it must. Before the text moves the block is
 * finished, as its records stand there. False at the end, or with a message and *fine false. */
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
        rows_finish_block(rows);
        rows_flush(rows);
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

/* --- The run ---------------------------------------------------------------------------------- */

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

/* True when an input stands on its own: a number, of no group, without conditions or a namesake,
 * and no condition asks for it. */
static bool stands_alone(const struct hw_calc *calc, size_t input)
{
    const struct hw_input *this = &calc->inputs[input];
    for (size_t i = input; i < calc->n_inputs; i++) {
        if (calc->inputs[i].when_words != 0 && calc->inputs[i].when_input == (int)input) {
            return false;
        }
    }
    return !this->words && this->group == 0 && this->when_words == 0 &&
           hw_input_first(calc, input) == input;
}

/* Checks once what no column decides, and fills the columns of the block that stay the same. */
static int prepare(struct rows *rows)
{
    const struct hw_calc *calc = rows->calc;
    size_t which = 0;
    rows->plain = !rows->args->spread;
    rows->grave = hw_notes_grave(calc);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        rows->base[i] = rows->args->written[i];
        if (!columns_feed(&rows->columns, calc, i)) {
            tank_mention(rows->args, i);
        } else {
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
    if (problem == HW_FINE && rows->constant.n_axes > 0) {
        complain("--%s is a sweep: rows take one value for each input",
                 calc->inputs[rows->constant.axis[0].input].name);
        return EXIT_ASKED_WRONGLY;
    }
    if (problem == HW_FINE && !rows->args->spread &&
        find_uncertain(&rows->constant, &which) != HW_FINE) {
        complain("--%s carries an uncertainty: add --spread and each result gets its low and high",
                 calc->inputs[which].name);
        return EXIT_ASKED_WRONGLY;
    }
    if (problem != HW_FINE) {
        message_problem(calc, known, &rows->constant, problem, which);
        return hw_problem_of_range(problem) ? EXIT_UNANSWERED : EXIT_ASKED_WRONGLY;
    }
    if (!tank_agrees(rows->args, &rows->constant)) {
        return EXIT_ASKED_WRONGLY;
    }
    hw_batch_fill(&rows->batch, &rows->constant, HW_BLOCK);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        for (size_t row = 0; row < HW_BLOCK; row++) {
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
    rows.told_surplus = false;
    if (!input_open(&rows.input, args->rows) || !stream_apart(rows.input.descriptor) ||
        !read_header(&rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    int status = prepare(&rows);
    if (status != EXIT_ANSWERED) {
        return status;
    }
    rows_put_header(&rows);
    size_t blank = 0; /* empty lines: rows without a cell, unless the file ends with them */
    while (!rows.stopped && next_record(&rows, &record, &fine)) {
        if (record.n == 0 && rows.columns.n > 1) {
            blank++;
            continue;
        }
        for (; blank > 0 && !rows.stopped; blank--) {
            take_record(&rows, (struct csv_record){"", 0, false});
        }
        if (!rows.stopped) {
            take_record(&rows, record);
        }
    }
    rows_finish_block(&rows);
    rows_flush(&rows);
    input_close(&rows.input);
    return status_of(&rows, fine);
}
