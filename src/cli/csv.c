/* csv.c - finds records and cells. Bytes are never changed where they stand. */
#include "cli/csv.h"

#include <string.h>

static enum csv_place next_place(enum csv_place place, char c, char separator)
{
    if (place == CSV_QUOTED) {
        return c == '"' ? CSV_AFTER_QUOTE : CSV_QUOTED;
    }
    if (c == separator) {
        return CSV_CELL_START;
    }
    if (c == '"' && place == CSV_CELL_START) {
        return CSV_QUOTED;
    }
    if (c == '"' && place == CSV_AFTER_QUOTE) {
        return CSV_QUOTED; /* a doubled quote */
    }
    return CSV_PLAIN;
}

/* Goes on through a record that has quotes in it, to the first line feed outside them, or to n. */
static void go_on_quoted(struct csv_scan *scan, const char *text, size_t n)
{
    size_t i = scan->done;
    enum csv_place place = scan->place;
    while (i < n && (text[i] != '\n' || place == CSV_QUOTED)) {
        place = next_place(place, text[i], scan->separator);
        i++;
    }
    scan->done = i;
    scan->place = place;
}

/* Goes on through a record without quotes, as far as is known: to the line feed, or to n. With a
 * quote before that it is gone through once more from its start, for what the quote means. */
static void go_on(struct csv_scan *scan, const char *text, size_t n)
{
    const char *from = text + scan->done;
    size_t left = n - scan->done;
    const char *feed = memchr(from, '\n', left);
    size_t length = feed ? (size_t)(feed - from) : left;
    scan->quotes = scan->separator != '\t' && memchr(from, '"', length);
    scan->done = scan->quotes ? 0 : scan->done + length;
}

static void set_record(const char *text, size_t n, struct csv_record *record)
{
    record->at = text;
    record->n = n > 0 && text[n - 1] == '\r' ? n - 1 : n;
}

enum csv_end csv_scan_on(struct csv_scan *scan, const char *text, size_t n, bool last,
                         struct csv_record *record, size_t *used)
{
    if (!scan->quotes) {
        go_on(scan, text, n);
    }
    if (scan->quotes) {
        go_on_quoted(scan, text, n);
    }
    size_t end = scan->done;
    if (end > CSV_RECORD_MAX) {
        return CSV_TOO_LONG;
    }
    if (end == n && !last) {
        return CSV_MORE;
    }
    if (scan->place == CSV_QUOTED) {
        return CSV_UNCLOSED;
    }
    set_record(text, end, record);
    record->quotes = scan->quotes;
    *used = end < n ? end + 1 : n;
    *scan = (struct csv_scan){.separator = scan->separator};
    return CSV_RECORD;
}

enum csv_end csv_find_record(const char *text, size_t n, char separator, bool last,
                             struct csv_record *record, size_t *used)
{
    struct csv_scan scan = {.separator = separator};
    return csv_scan_on(&scan, text, n, last, record, used);
}

/* The end of a cell that begins with a quote at `from`. */
static size_t quoted_cell_end(const struct csv_record *record, char separator, size_t from,
                              struct csv_cell *cell)
{
    size_t i = from + 1;
    while (i < record->n) {
        if (record->at[i] != '"') {
            i++;
        } else if (i + 1 < record->n && record->at[i + 1] == '"') {
            i += 2;
        } else {
            break;
        }
    }
    cell->quoted = true;
    cell->text = (struct hw_text){record->at + from + 1, i - from - 1};
    size_t after = i < record->n ? i + 1 : i;
    const char *next = memchr(record->at + after, separator, record->n - after);
    size_t end = next ? (size_t)(next - record->at) : record->n;
    cell->broken = end != after || i == record->n;
    return end;
}

bool csv_next_cell(const struct csv_record *record, char separator, size_t *at,
                   struct csv_cell *cell)
{
    size_t from = *at;
    size_t end = from;
    if (from > record->n) {
        return false;
    }
    cell->quoted = false;
    cell->broken = false;
    if (record->quotes && from < record->n && record->at[from] == '"') {
        end = quoted_cell_end(record, separator, from, cell);
        cell->raw = (struct hw_text){record->at + from, end - from};
    } else {
        while (end < record->n && record->at[end] != separator) {
            end++;
        }
        cell->raw = (struct hw_text){record->at + from, end - from};
        cell->text = cell->raw;
    }
    *at = end + 1;
    return true;
}

size_t csv_unquote(const struct csv_cell *cell, char *to)
{
    size_t n = 0;
    for (size_t i = 0; i < cell->text.n; i++) {
        to[n++] = cell->text.at[i];
        if (cell->quoted && cell->text.at[i] == '"' && i + 1 < cell->text.n &&
            cell->text.at[i + 1] == '"') {
            i++;
        }
    }
    return n;
}

struct hw_text csv_swap_decimals(struct hw_text text, char room[CSV_SWAPPED_MAX])
{
    if (text.n > CSV_SWAPPED_MAX) {
        return text;
    }
    for (size_t i = 0; i < text.n; i++) {
        char c = text.at[i];
        room[i] = (char)(c == ',' ? '.' : c == '.' ? ',' : c);
    }
    return (struct hw_text){room, text.n};
}

static bool must_quote(struct hw_text text, char separator)
{
    return memchr(text.at, separator, text.n) || memchr(text.at, '"', text.n) ||
           memchr(text.at, '\n', text.n) || memchr(text.at, '\r', text.n);
}

size_t csv_write_cell(struct hw_text text, char separator, char *to)
{
    size_t n = 0;
    bool quote = separator != '\t' && must_quote(text, separator);
    if (quote) {
        to[n++] = '"';
    }
    for (size_t i = 0; i < text.n; i++) {
        char c = text.at[i];
        if (separator == '\t' && (c == '\t' || c == '\n' || c == '\r')) {
            c = ' ';
        }
        if (quote && c == '"') {
            to[n++] = '"';
        }
        to[n++] = c;
    }
    if (quote) {
        to[n++] = '"';
    }
    return n;
}
