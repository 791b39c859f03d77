/* rows_quick.c - takes plain records without looking at each byte of them. */
#include "cli/rows_quick.h"

#include "cli/rows_out.h"
#include "engine/decimal.h"

void rows_quick_prepare(struct rows *rows)
{
    const struct args *args = rows->args;
    bool other_tanks = args->tank && rows->columns.tank != NO_COLUMN;
    bool times = args->format == FORMAT_LOG && rows->columns.when != NO_COLUMN;
    rows->quick.allowed = rows->plain && !args->decimal_comma && !other_tanks && !times;
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        const struct feed *feed = &rows->columns.feed[k];
        hw_number_kept(&rows->calc->inputs[feed->input], feed->unit, &rows->quick.kept[k]);
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
static bool is_whole(const struct rows *rows)
{
    const struct quick *quick = &rows->quick;
    const char *text = rows->input.text + quick->begin;
    const uint16_t *end = quick->at + quick->next;
    size_t last = rows->columns.n - 1;
    int odd = 0;
    for (size_t i = 0; i < last; i++) {
        odd |= text[end[i]] ^ rows->in_separator;
    }
    return (odd | (text[end[last]] ^ '\n')) == 0;
}

/* Reads the cell that ends at `end` into its place in the block. */
static bool read_cell(struct rows *rows, size_t k, size_t begin, size_t end)
{
    const struct feed *feed = &rows->columns.feed[k];
    const struct hw_span *kept = &rows->quick.kept[k];
    double *value = &rows->batch.in[feed->input][rows->n_asked];
    double x = 0;
    rows->from[feed->input][rows->n_asked] = HW_FROM_COLUMN;
    const char *cell = rows->input.text + begin;
    size_t n = end - begin;
    if (end < HW_DECIMAL_BARE || !hw_decimal_read_bare(cell + n, n, &x)) {
        return false;
    }
    if (x > kept->above && x <= kept->to) {
        *value = x;
        return true;
    }
    return hw_number_settle(&rows->calc->inputs[feed->input], x, NULL, feed->unit, value) ==
           HW_FINE;
}

/* Takes the next record. False, and nothing taken, when it is not plain. */
static bool take(struct rows *rows)
{
    struct quick *quick = &rows->quick;
    size_t begin = rows->input.begin;
    const uint16_t *end = quick->at + quick->next;
    if (!is_whole(rows)) {
        return false;
    }
    for (size_t k = 0; k < rows->columns.n_feed; k++) {
        size_t column = rows->columns.feed[k].column;
        size_t from = column == 0 ? begin : quick->begin + end[column - 1] + 1;
        if (!read_cell(rows, k, from, quick->begin + end[column])) {
            return false;
        }
    }
    size_t cells = rows->columns.n;
    size_t n = quick->begin + end[cells - 1] - begin;
    rows->row[rows->n_rows++] = (struct row){
        .record = {rows->input.text + begin, n, false},
        .number = ++rows->number,
        .cells = cells,
        .keep = n,
        .place = (long)rows->n_asked++,
    };
    rows->input.begin = begin + n + 1;
    quick->next += cells;
    return true;
}

void rows_quick_take(struct rows *rows)
{
    /* A record that was looked at in part is left to whoever did that. */
    bool may = rows->quick.allowed && rows->input.scan.done == 0;
    while (may && !rows->stopped && rows->input.begin < rows->input.end && find_marks(rows) &&
           take(rows)) {
        if (rows->n_rows == HW_BLOCK) {
            rows_finish_block(rows);
        }
    }
}
