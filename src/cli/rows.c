/* rows.c - reads records and asks them, a block at a time. */
#include "cli/rows.h"

#include "cli/message.h"
#include "cli/records.h"
#include "cli/rows_in.h"
#include "cli/rows_line.h"
#include "cli/rows_out.h"
#include "cli/rows_quick.h"
#include "cli/stream.h"
#include "cli/tank.h"
#include "cli/tank_rows.h"
#include "cli/wording.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* --- Records ---------------------------------------------------------------------------------- */

/* Empty lines that something follows are rows without a cell. */
static void take_blank(struct rows *rows, size_t *blank)
{
    for (; *blank > 0 && !rows->stopped; --*blank) {
        rows_take(rows, (struct csv_record){"", 0, false});
    }
}

/* The next record of the input, reading more when it must. Before the text moves the block is
 * finished, as its records stand there. False at the end, or with a message and *fine false. */
static bool next_record(struct rows *rows, struct csv_record *record, size_t *blank, bool *fine)
{
    for (;;) {
        enum record_end end = record_take(&rows->input, rows->in_separator, record);
        if (end == RECORD_FOUND || end == RECORD_NONE) {
            return end == RECORD_FOUND;
        }
        if (end != RECORD_MORE) {
            take_blank(rows, blank);
        }
        rows_finish_block(rows);
        rows_flush(rows);
        stream_flush();
        if (end != RECORD_MORE) {
            record_complain(&rows->input, rows->number + 1, end);
            *fine = false;
            return false;
        }
        rows->quick.end = 0;
        if (rows->stopped || ferror(stdout) || !input_fill(&rows->input)) {
            *fine = !ferror(stdout) && rows->stopped;
            return false;
        }
    }
}

/* --- The run ---------------------------------------------------------------------------------- */

static bool read_header(struct rows *rows)
{
    struct csv_record record;
    rows->in_separator = rows->args->separator;
    if (!record_header(&rows->input, rows->args->decimal_comma, &rows->in_separator, &record)) {
        return false;
    }
    memcpy(rows->header, record.at, record.n);
    record.at = rows->header;
    return columns_read(rows->args, record, rows->in_separator, input_name(&rows->input),
                        &rows->columns);
}

/* True when the input may be written row by row. */
static bool comes_later(const struct rows *rows, size_t input)
{
    return columns_feed(&rows->columns, rows->calc, input) ||
           (rows->by_tank && tank_rows_tell(rows->calc, input));
}

/* True when a condition of another input asks for this one. */
static bool is_asked_for(const struct hw_calc *calc, size_t input)
{
    for (size_t i = input; i < calc->n_inputs; i++) {
        if (calc->inputs[i].when_words != 0 && calc->inputs[i].when_input == (int)input) {
            return true;
        }
    }
    return false;
}

/* True when an input may be left out, and no other of its group is given. */
static bool is_alone_in_group(const struct rows *rows, size_t input)
{
    const struct hw_input *this = &rows->calc->inputs[input];
    for (size_t i = 0; this->group != 0 && i < rows->calc->n_inputs; i++) {
        bool other = rows->calc->inputs[i].group == this->group && i != input;
        if (other && (comes_later(rows, i) || !isnan(rows->constant.in[i]))) {
            return false;
        }
    }
    return this->group == 0 || this->need == HW_OPTIONAL;
}

/* The entry that a column feeds, where it stands on its own in every row: a number that no
 * condition asks for, in force by what no column decides, and alone in its group. Else the number
 * of inputs. */
static size_t stands_alone(const struct rows *rows, size_t input)
{
    const struct hw_calc *calc = rows->calc;
    size_t found = calc->n_inputs;
    for (size_t i = input; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        if (calc->inputs[i].words || is_asked_for(calc, i)) {
            return calc->n_inputs;
        }
        found = hw_input_wanted(calc, i, rows->constant.in) ? i : found;
    }
    bool alone = found < calc->n_inputs && is_alone_in_group(rows, found);
    return alone ? found : calc->n_inputs;
}

/* Where each column stands alone, it feeds the entry of its name that is in force. */
static void find_plain(struct rows *rows)
{
    size_t entry[HW_INPUTS];
    rows->plain = !rows->args->spread && !rows->by_tank;
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        entry[k] = stands_alone(rows, rows->columns.feed[k].input);
        rows->plain = rows->plain && entry[k] < rows->calc->n_inputs;
    }
    for (size_t k = 0; rows->plain && k < rows->columns.n_feed; k++) {
        rows->columns.feed[k].input = entry[k];
    }
}

/* Where each row has a tank of its own, what its water tells is known row by row. */
static bool prepare_tanks(struct rows *rows)
{
    const struct hw_calc *calc = rows->calc;
    rows->by_tank = rows->args->tanks && !rows->args->tank;
    if (!rows->by_tank) {
        return true;
    }
    if (rows->columns.tank == NO_COLUMN) {
        complain("%s has no column tank: say which with --tank NAME, or --map COLUMN=tank",
                 input_name(&rows->input));
        return false;
    }
    if (!tank_rows_read(rows->args)) {
        return false;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (tank_rows_like(calc, i) && hw_input_first(calc, i) == i && !rows->base[i].text.at &&
            !columns_feed(&rows->columns, calc, i)) {
            char option[OPTION_MAX];
            option_name(calc->inputs[i].name, option);
            complain("the tanks file has a column %s, which may be out of date and is not taken:"
                     " give it in a column of the rows, or write --%s",
                     calc->inputs[i].name, option);
        }
    }
    return true;
}

/* The question as far as no column decides it. */
static int settle_constant(struct rows *rows)
{
    const struct hw_calc *calc = rows->calc;
    size_t which = 0;
    struct hw_written known[HW_INPUTS];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        known[i] = rows->base[i];
        if (calc->inputs[i].words && comes_later(rows, i)) {
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
        rows_find_uncertain(&rows->constant, &which) != HW_FINE) {
        complain("--%s carries an uncertainty: add --spread and each result gets its low and high",
                 calc->inputs[which].name);
        return EXIT_ASKED_WRONGLY;
    }
    if (problem != HW_FINE) {
        message_problem(calc, known, &rows->constant, problem, which);
        return hw_problem_of_range(problem) ? EXIT_UNANSWERED : EXIT_ASKED_WRONGLY;
    }
    return tank_agrees(rows->args, &rows->constant) ? EXIT_ANSWERED : EXIT_ASKED_WRONGLY;
}

/* False with what to type when log lines would have no time. */
static bool has_time(const struct rows *rows)
{
    char hint[COLUMNS_HINT];
    if (rows->args->format != FORMAT_LOG || rows->columns.when != NO_COLUMN || rows->args->when) {
        return true;
    }
    columns_hint_when(&rows->columns, hint);
    complain("a logbook needs a time for each row: %s, or --when TIME for all",
             hint[0] != '\0' ? hint
                             : "a column when, --map COLUMN=when, --map DATE+TIME=when for two");
    return false;
}

/* Checks once what no column decides, and fills the columns of the block that stay the same. */
static int prepare(struct rows *rows)
{
    const struct hw_calc *calc = rows->calc;
    memcpy(rows->base, rows->args->written, sizeof rows->base);
    if (!prepare_tanks(rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    rows->grave = hw_notes_grave(calc);
    rows->tellable = notes_between(calc, HW_CAUTION, HW_WITHHELD);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!comes_later(rows, i)) {
            tank_mention(rows->args, i);
        } else {
            rows->base[i].from = rows->base[i].text.at ? rows->base[i].from : HW_FROM_COLUMN;
        }
    }
    int status = settle_constant(rows);
    if (status != EXIT_ANSWERED) {
        return status;
    }
    if (!has_time(rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    find_plain(rows);
    hw_batch_fill(&rows->batch, &rows->constant, HW_BLOCK);
    for (size_t i = 0; i < calc->n_results; i++) {
        rows->batch.unwanted[i] =
            rows_is_table(rows) && !rows->args->spread && !rows->args->only[i];
    }
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

/* As the file has it, so that a program that took it takes the answer, too. Between tabs and in csv
 * a semicolon stands where numbers have commas. */
static char out_separator(const struct rows *rows)
{
    if (rows->args->format == FORMAT_TSV) {
        return '\t';
    }
    bool commas = rows->in_separator == '\t' && rows->args->decimal_comma;
    return rows->in_separator == ';' || commas ? ';' : ',';
}

/* Takes every record. Empty lines are rows without a cell, unless the file ends with them. */
static void take_rows(struct rows *rows, bool *fine)
{
    struct csv_record record;
    size_t blank = 0;
    rows_quick_take(rows);
    while (!rows->stopped && next_record(rows, &record, &blank, fine)) {
        if (record.n == 0) {
            blank++;
            continue;
        }
        take_blank(rows, &blank);
        if (!rows->stopped) {
            rows_take(rows, record);
        }
        rows_quick_take(rows);
    }
}

int rows_run(const struct args *args)
{
    static struct rows rows;
    bool fine = true;
    rows.args = args;
    rows.calc = args->calc;
    if (!input_open(&rows.input, args->rows) || !stream_apart(rows.input.descriptor) ||
        !read_header(&rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    rows.out_separator = out_separator(&rows);
    int status = prepare(&rows);
    if (status != EXIT_ANSWERED) {
        return status;
    }
    rows_quick_prepare(&rows);
    rows_line_prepare(&rows);
    rows_put_header(&rows);
    take_rows(&rows, &fine);
    rows_finish_block(&rows);
    rows_flush(&rows);
    input_close(&rows.input);
    return status_of(&rows, fine);
}
