/* rows_quick.c - takes plain records without looking at each byte of them. */
#include "cli/rows_quick.h"

#include "cli/rows_out.h"
#include "engine/decimal_column.h"

enum { RUN_MAX = 64 };

void rows_quick_prepare(struct rows *rows)
{
    const struct args *args = rows->args;
    bool other_tanks = args->tank && rows->columns.tank != NO_COLUMN;
    bool times = args->format == FORMAT_LOG && rows->columns.when != NO_COLUMN;
    rows->quick.allowed = rows->plain && !args->decimal_comma && !other_tanks && !times;
    rows->quick.run = 1;
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        const struct feed *feed = &rows->columns.feed[k];
        rows->quick.feed[k] =
            (struct quick_feed){.column = feed->column, .to = rows->batch.in[feed->input]};
        hw_number_kept(&rows->calc->inputs[feed->input], feed->unit, &rows->quick.feed[k].kept);
    }
}

static size_t lesser(size_t a, size_t b)
{
    return a < b ? a : b;
}

static void mark_from(struct rows *rows, size_t begin)
{
    struct quick *quick = &rows->quick;
    size_t n = rows->input.end - begin;
    quick->begin = begin;
    quick->end = begin + (n < MARKS_MAX ? n : MARKS_MAX);
    quick->next = 0;
    quick->n =
        marks_find(rows->input.text + begin, quick->end - begin, rows->in_separator, quick->at);
}

/* How many records, of those tried at once, have marks for all of their cells. */
static size_t count_marked(const struct rows *rows)
{
    const struct quick *quick = &rows->quick;
    size_t marks = quick->n - quick->next - 1;
    bool all = quick->run * rows->columns.n <= marks;
    return all ? quick->run : marks / rows->columns.n;
}

/* Brings the marks to the line feed before the next record. Returns how many records are to be
 * tried. */
static size_t find_marks(struct rows *rows)
{
    struct quick *quick = &rows->quick;
    size_t feed = rows->input.begin - 1;
    if (feed >= quick->end) {
        mark_from(rows, feed);
    }
    while (quick->begin + quick->at[quick->next] < feed) {
        quick->next++; /* another has taken that record */
    }
    if (quick->n - quick->next <= rows->columns.n && quick->begin < feed &&
        quick->end < rows->input.end) {
        mark_from(rows, feed);
    }
    return lesser(count_marked(rows), HW_BLOCK - rows->n_rows);
}

/* What ends the cells of a column. */
static char end_of(const struct rows *rows, size_t column)
{
    return column + 1 < rows->columns.n ? rows->in_separator : '\n';
}

/* Looks at the columns from `column` to before `beyond`, which feed nothing. Returns how many
 * records there are before the first with a cell that ends otherwise. */
static size_t count_ended(const struct rows *rows, size_t column, size_t beyond, const uint16_t *at,
                          size_t n)
{
    const char *window = rows->input.text + rows->quick.begin;
    const size_t cells = rows->columns.n;
    for (; column < beyond && n > 0; column++) {
        const char end = end_of(rows, column);
        const uint16_t *mark = at + column + 1;
        for (size_t row = 0; row < n; row++, mark += cells) {
            if (window[*mark] != end) {
                n = row;
            }
        }
    }
    return n;
}

/* Brings a column of numbers to what the input is. Returns how many there are before the first that
 * is out of range. */
static size_t settle_column(const struct rows *rows, size_t k, double *column, size_t n)
{
    const struct hw_span kept = rows->quick.feed[k].kept;
    const struct feed *feed = &rows->columns.feed[k];
    const struct hw_input *input = &rows->calc->inputs[feed->input];
    for (size_t row = 0; row < n; row++) {
        double x = column[row];
        if (!(x > kept.above && x <= kept.to) &&
            hw_number_settle(input, x, NULL, feed->unit, &column[row]) != HW_FINE) {
            return row;
        }
    }
    return n;
}

/* Reads the cells of one column into the block. Returns how many records there are before the first
 * cell that is no short bare number in range, or ends otherwise. */
static size_t read_column(const struct rows *rows, size_t k, const uint16_t *at, size_t n)
{
    const struct quick_feed *feed = &rows->quick.feed[k];
    const struct hw_cells cells = {
        .text = rows->input.text + rows->quick.begin,
        .at = at + feed->column,
        .stride = rows->columns.n,
        .n = n,
        .end = end_of(rows, feed->column),
    };
    double *to = feed->to + rows->n_asked;
    struct hw_extent extent;
    size_t n_read = hw_column_read(&cells, to, &extent);
    bool kept = extent.least > feed->kept.above && extent.most <= feed->kept.to;
    return kept ? n_read : settle_column(rows, k, to, n_read);
}

/* Reads so many records, one after another, a column at a time, so that what is the same for a
 * column is done once. Returns how many there are before the first that is not plain. */
static size_t read_plain(const struct rows *rows, const uint16_t *at, size_t n)
{
    size_t column = 0;
    for (size_t k = 0; k < rows->columns.n_feed && n > 0; k++) {
        n = count_ended(rows, column, rows->quick.feed[k].column, at, n);
        n = read_column(rows, k, at, n);
        column = rows->quick.feed[k].column + 1;
    }
    return count_ended(rows, column, rows->columns.n, at, n);
}

/* Puts so many records into the block, whose columns have their numbers. */
static void put_records(struct rows *rows, const uint16_t *at, size_t n)
{
    const char *window = rows->input.text + rows->quick.begin;
    const size_t cells = rows->columns.n;
    struct row *row = rows->row + rows->n_rows;
    for (size_t i = 0; i < n; i++, at += cells) {
        size_t length = (size_t)at[cells] - at[0] - 1;
        row[i] = (struct row){
            .record = {window + at[0] + 1, length, false},
            .cells = cells,
            .place = (int)(rows->n_asked + i),
            .quick = true,
        };
    }
    rows->n_rows += n;
    rows->n_asked += n;
    rows->number += n;
    rows->quick.next += n * cells;
    rows->input.begin = rows->quick.begin + *at + 1;
}

/* Takes so many records at most, as long as they are plain. False when one is not: as others are
 * looked at in vain then, few are tried at first. */
static bool take_run(struct rows *rows, size_t most)
{
    struct quick *quick = &rows->quick;
    const uint16_t *at = quick->at + quick->next;
    size_t n = read_plain(rows, at, most);
    if (n > 0) {
        put_records(rows, at, n);
    }
    if (rows->n_rows == HW_BLOCK) {
        rows_finish_block(rows);
    }
    quick->run = n < most ? 1 : lesser(2 * quick->run, RUN_MAX);
    return n == most;
}

/* True at the start of a record that nobody has looked at in part. One at the very front of the
 * text has no line feed before it. */
static bool may_take(const struct rows *rows)
{
    const struct input *input = &rows->input;
    return rows->quick.allowed && !rows->stopped && input->scan.done == 0 && input->begin > 0 &&
           input->begin < input->end && input->text[input->begin - 1] == '\n';
}

void rows_quick_take(struct rows *rows)
{
    while (may_take(rows)) {
        size_t most = find_marks(rows);
        if (most == 0 || !take_run(rows, most)) {
            return;
        }
    }
}
