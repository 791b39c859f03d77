/* rows_in.c - takes the cells of a record that feed inputs, and reads them. */
#include "cli/rows_in.h"

#include "cli/rows_out.h"
#include "cli/tank.h"
#include "cli/tank_rows.h"
#include "cli/when.h"

#include <math.h>
#include <string.h>

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

/* The row's own tank; its name is empty where the row has none, its at NULL where it is longer than
 * any name. */
static struct hw_text tank_of(const struct rows *rows, const struct csv_record *record,
                              char room[TANK_NAME_MAX])
{
    struct hw_text tank =
        columns_cell(&rows->columns, record, rows->columns.tank, room, TANK_NAME_MAX);
    return tank.at ? hw_text_trimmed(tank) : tank;
}

/* True when the row names another tank than --tank, whose values would then be taken for it. */
static bool is_other_tank(const struct rows *rows, const struct csv_record *record)
{
    const char *tank = rows->args->tank;
    if (!tank || rows->columns.tank == NO_COLUMN) {
        return false;
    }
    char room[TANK_NAME_MAX];
    struct hw_text own = tank_of(rows, record, room);
    return !own.at || (own.n > 0 && !(own.n == strlen(tank) && memcmp(own.at, tank, own.n) == 0));
}

/* A line of a logbook needs a time: that of the row, or of --when where the row has none. */
static const char *judge_when(const struct rows *rows, const struct csv_record *record)
{
    char room[COLUMNS_WHEN];
    if (rows->args->format != FORMAT_LOG || rows->columns.when == NO_COLUMN) {
        return NULL;
    }
    struct hw_text when = columns_when(&rows->columns, record, room);
    bool fine = when.n == 0 ? when.at && rows->args->when : when_is_iso(when);
    return fine ? NULL : "bad-when";
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
    return problem ? problem : judge_when(rows, &row->record);
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
enum hw_problem rows_find_uncertain(const struct hw_question *question, size_t *which)
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->half[i] > 0) {
            *which = i;
            return HW_PROBLEM_SPREAD;
        }
    }
    return HW_FINE;
}

/* Any question: settled whole, over what options and a tank have written. */
static enum hw_problem ask_whole(struct rows *rows, struct hw_written written[],
                                 const struct hw_text fed[], size_t *which)
{
    const struct hw_calc *calc = rows->calc;
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
        problem = rows_find_uncertain(&rows->question, which);
    }
    for (size_t i = 0; i < calc->n_inputs && problem == HW_FINE; i++) {
        rows->batch.in[i][rows->n_asked] = rows->question.in[i];
        rows->from[i][rows->n_asked] = rows->question.from[i];
        rows->half[i][rows->n_asked] = rows->question.half[i];
    }
    return problem;
}

/* Any question, with what the options give and, where each row has a tank of its own, what the file
 * tells of its water. NULL or a problem's code. */
static const char *ask_with_tank(struct rows *rows, struct row *row, const struct hw_text fed[],
                                 enum hw_problem *problem, size_t *which)
{
    const struct hw_calc *calc = rows->calc;
    struct hw_written written[HW_INPUTS];
    struct hw_text left[HW_INPUTS] = {{NULL, 0}};
    char room[TANK_NAME_MAX];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        written[i] = rows->base[i];
        written[i].from = written[i].text.at ? written[i].from : HW_ABSENT;
    }
    struct tank_take take = {calc, written, left};
    struct hw_text tank = tank_of(rows, &row->record, room);
    const char *code = rows->by_tank && tank.n > 0 ? tank_rows_take(tank, &take) : NULL;
    if (code) {
        return code;
    }
    *problem = ask_whole(rows, written, fed, which);
    size_t conflict = *problem == HW_FINE ? tank_conflict(&rows->question, left) : calc->n_inputs;
    if (conflict < calc->n_inputs) {
        *which = conflict;
        return "tank-tells";
    }
    return NULL;
}

/* In cells that are numbers. */
static void swap_decimals(struct rows *rows, struct hw_text fed[HW_INPUTS])
{
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        if (!rows->calc->inputs[rows->columns.feed[k].input].words && fed[k].at) {
            fed[k] = csv_swap_decimals(fed[k], rows->swapped[k]);
        }
    }
}

static void ask(struct rows *rows, struct row *row, const struct hw_text fed[])
{
    enum hw_problem problem = HW_FINE;
    size_t which = rows->calc->n_inputs;
    if (rows->plain) {
        problem = ask_plain(rows, fed, &which);
    } else {
        row->problem = ask_with_tank(rows, row, fed, &problem, &which);
    }
    if (problem != HW_FINE) {
        bool swapped = rows->args->decimal_comma && problem == HW_PROBLEM_COMMA;
        row->problem = swapped ? "decimal-point" : hw_problem_code(problem);
    }
    if (!row->problem) {
        row->place = (int)rows->n_asked++;
    } else if (which < rows->calc->n_inputs) {
        row->problem_input = rows->calc->inputs[which].name;
    }
}

void rows_take(struct rows *rows, struct csv_record record)
{
    struct hw_text fed[HW_INPUTS] = {{NULL, 0}};
    struct row *row = &rows->row[rows->n_rows++];
    rows->number++;
    *row = (struct row){.record = record, .place = NOT_ASKED};
    row->problem = split(rows, row, fed);
    if (rows->args->decimal_comma) {
        swap_decimals(rows, fed);
    }
    if (!row->problem) {
        ask(rows, row, fed);
    }
    if (rows->n_rows == HW_BLOCK) {
        rows_finish_block(rows);
    }
}
