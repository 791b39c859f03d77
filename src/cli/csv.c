/* csv.c - finds records and cells. Bytes are never changed where they stand. */
#include "cli/csv.h"

#include <string.h>

/* Where a scan stands within a record. */
enum place { CELL_START, PLAIN, QUOTED, AFTER_QUOTE };

static enum place next_place(enum place place, char c, char separator)
{
    if (place == QUOTED) {
        return c == '"' ? AFTER_QUOTE : QUOTED;
    }
    if (c == separator) {
        return CELL_START;
    }
    if (c == '"' && place == CELL_START) {
        return QUOTED;
    }
    if (c == '"' && place == AFTER_QUOTE) {
        return QUOTED; /* a doubled quote */
    }
    return PLAIN;
}

/* The end of a record that has quotes in it: the first line feed outside them, or n. */
static size_t quoted_end(const char *text, size_t n, char separator, bool *open)
{
    enum place place = CELL_START;
    size_t i = 0;
    while (i < n && (text[i] != '\n' || place == QUOTED)) {
        place = next_place(place, text[i], separator);
        i++;
    }
    *open = place == QUOTED;
    return i;
}

static void set_record(const char *text, size_t n, struct csv_record *record)
{
    record->at = text;
    record->n = n > 0 && text[n - 1] == '\r' ? n - 1 : n;
}

enum csv_end csv_find_record(const char *text, size_t n, char separator, bool last,
                             struct csv_record *record, size_t *used)
{
    const char *feed = memchr(text, '\n', n);
    size_t end = feed ? (size_t)(feed - text) : n;
    bool open = false;
    record->quotes = separator != '\t' && memchr(text, '"', end);
    if (record->quotes) {
        end = quoted_end(text, n, separator, &open);
    }
    if (end > CSV_RECORD_MAX) {
        return CSV_TOO_LONG;
    }
    if (end == n && !last) {
        return CSV_MORE;
    }
    if (open) {
        return CSV_UNCLOSED;
    }
    set_record(text, end, record);
    *used = end < n ? end + 1 : n;
    return CSV_RECORD;
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
