/* csv.h - records and cells in memory: RFC 4180 (quotes, line breaks in quotes, CRLF) and
 * tab-separated values. */
#ifndef HW_CSV_H
#define HW_CSV_H
#include "engine/value.h"

enum { CSV_RECORD_MAX = 1 << 20 }; /* bytes; a longer record ends the run */

enum csv_end {
    CSV_RECORD,   /* a whole record was found */
    CSV_MORE,     /* the text ends before the record does */
    CSV_TOO_LONG, /* the record is longer than CSV_RECORD_MAX */
    CSV_UNCLOSED  /* the file ends inside quotes */
};

/* A record without its line end. */
struct csv_record {
    const char *at;
    size_t n;
    bool quotes; /* there is a quote in it; without one a cell ends at the next separator */
};

/* Where a scan stands within a record that has quotes in it. */
enum csv_place { CSV_CELL_START, CSV_PLAIN, CSV_QUOTED, CSV_AFTER_QUOTE };

/* How far a record was looked through that comes in pieces. Begins as 0 but for the separator. */
struct csv_scan {
    char separator;
    bool quotes;          /* there is a quote in it */
    enum csv_place place; /* at text[done], when there is one */
    size_t done;          /* bytes of the record that need not be looked at again */
};

/* Finds the first record of text[0..n).
 *
 * Given
 *   separator  ',', ';' or '\t'; with '\t' quotes have no meaning
 *   last       true when nothing follows the text: then its end ends the record, too
 * Returned
 *   record     without its line end (LF or CRLF)
 *   used       bytes of the text that are done with
 */
enum csv_end csv_find_record(const char *text, size_t n, char separator, bool last,
                             struct csv_record *record, size_t *used);

/* The same for a text that grows: after CSV_MORE call it with the scan as it is, and with the same
 * text and more behind it. After a record the scan is ready for the next. */
enum csv_end csv_scan_on(struct csv_scan *scan, const char *text, size_t n, bool last,
                         struct csv_record *record, size_t *used);

/* One cell as it stands in its record. */
struct csv_cell {
    struct hw_text raw;  /* every byte between separators */
    struct hw_text text; /* without the quotes around it; doubled quotes are still doubled */
    bool quoted;
    bool broken; /* quotes that do not end where the cell does */
};

/* Takes the first cell off a record. False when there was none left; a record has at least one
 * cell, which may be empty. `at` starts as 0 and is kept by the caller. */
bool csv_next_cell(const struct csv_record *record, char separator, size_t *at,
                   struct csv_cell *cell);

/* Copies a cell's text with doubled quotes made single. Returns its length, which is at most
 * cell->text.n. */
size_t csv_unquote(const struct csv_cell *cell, char *to);

enum { CSV_SWAPPED_MAX = 64 };

/* A cell with commas for points and points for commas, in the room: what was written with a decimal
 * comma is a number then, and with a point is none. One that is longer than the room, and than any
 * number, stays as it is. */
struct hw_text csv_swap_decimals(struct hw_text text, char room[CSV_SWAPPED_MAX]);

/* Writes text as one cell: as it is in TSV, with tabs and line breaks as blanks; in CSV quoted
 * where it must be. `to` has room for 2 * text.n + 2 bytes. Returns the length. */
size_t csv_write_cell(struct hw_text text, char separator, char *to);
#endif
