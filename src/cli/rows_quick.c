/* rows_quick.c - takes plain records without looking at each byte of them. */
#include "cli/rows_quick.h"

#include "cli/rows_out.h"
#include "engine/decimal_quick.h"

void rows_quick_prepare(struct rows *rows)
{
    const struct args *args = rows->args;
    bool other_tanks = args->tank && rows->columns.tank != NO_COLUMN;
    bool times = args->format == FORMAT_LOG && rows->columns.when != NO_COLUMN;
    rows->quick.allowed = rows->plain && !args->decimal_comma && !other_tanks && !times;
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        const struct feed *feed = &rows->columns.feed[k];
        rows->quick.feed[k] =
            (struct quick_feed){.column = feed->column, .to = rows->batch.in[feed->input]};
        hw_number_kept(&rows->calc->inputs[feed->input], feed->unit, &rows->quick.feed[k].kept);
    }
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

/* Brings the marks to the next record. False when its cells do not all end within them. */
static bool find_marks(struct rows *rows)
{
    struct quick *quick = &rows->quick;
    size_t begin = rows->input.begin;
    if (begin >= quick->end) {
        mark_from(rows, begin);
    }
    while (quick->next < quick->n && quick->begin + quick->at[quick->next] < begin) {
        quick->next++; /* another has taken that record */
    }
    if (quick->n - quick->next < rows->columns.n && quick->begin < begin &&
        quick->end < rows->input.end) {
        mark_from(rows, begin);
    }
    return quick->n - quick->next >= rows->columns.n;
}

/* True when the next marks are those of a whole record: separators, and a line feed at the end. */
static inline bool is_whole(const struct rows *rows, const char *window, const uint16_t *end)
{
    const char separator = rows->in_separator;
    size_t last = rows->columns.n - 1;
    for (size_t i = 0; i < last; i++) {
        if (window[end[i]] != separator) {
            return false;
        }
    }
    return window[end[last]] == '\n';
}

/* The number of a cell of n bytes, as it goes into the block. */
static inline bool read_cell(const struct rows *rows, size_t k, const char *end, size_t n,
                             double *value)
{
    const struct quick_feed *quick = &rows->quick.feed[k];
    double x = 0;
    if (!hw_quick_read(end, n, &x)) {
        return false;
    }
    *value = x;
    if (x > quick->kept.above && x <= quick->kept.to) {
        return true;
    }
    const struct feed *feed = &rows->columns.feed[k];
    return hw_number_settle(&rows->calc->inputs[feed->input], x, NULL, feed->unit, value) ==
           HW_FINE;
}

/* Takes the next record. False, and nothing taken, when it is not plain. */
static inline bool take(struct rows *rows)
{
    struct quick *quick = &rows->quick;
    const char *window = rows->input.text + quick->begin;
    const char *begin = rows->input.text + rows->input.begin;
    const uint16_t *end = quick->at + quick->next;
    const size_t place = rows->n_asked;
    const size_t n_feed = rows->columns.n_feed;
    if (!is_whole(rows, window, end)) {
        return false;
    }
    for (size_t k = 0; k < n_feed; k++) {
        size_t column = quick->feed[k].column;
        const char *cell = column == 0 ? begin : window + end[column - 1] + 1;
        const char *cell_end = window + end[column];
        if (!read_cell(rows, k, cell_end, (size_t)(cell_end - cell), &quick->feed[k].to[place])) {
            return false;
        }
    }
    size_t cells = rows->columns.n;
    size_t n = (size_t)(window + end[cells - 1] - begin);
    rows->row[rows->n_rows++] = (struct row){
        .record = {begin, n, false},
        .number = ++rows->number,
        .cells = cells,
        .keep = n,
        .place = (long)place,
        .quick = true,
    };
    rows->n_asked = place + 1;
    rows->input.begin += n + 1;
    quick->next += cells;
    return true;
}

/* Takes records as long as the marks tell where they end. False when one is not plain. */
static bool take_marked(struct rows *rows)
{
    const struct quick *quick = &rows->quick;
    while (quick->n - quick->next >= rows->columns.n) {
        if (!take(rows)) {
            return false;
        }
        if (rows->n_rows == HW_BLOCK) {
            rows_finish_block(rows);
            return !rows->stopped;
        }
    }
    return true;
}

void rows_quick_take(struct rows *rows)
{
    /* A record that was looked at in part is left to whoever did that; and one at the very front of
     * the text, as the bytes before a cell are looked at. */
    bool may =
        rows->quick.allowed && rows->input.scan.done == 0 && rows->input.begin >= HW_QUICK_READ_MAX;
    while (may && !rows->stopped && rows->input.begin < rows->input.end && find_marks(rows) &&
           take_marked(rows)) {
    }
}
