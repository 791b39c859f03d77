/* columns.h - what the columns of a file are to a calculation. */
#ifndef HW_COLUMNS_H
#define HW_COLUMNS_H
#include "cli/args.h"
#include "cli/csv.h"

enum { NO_COLUMN = -1, COLUMNS_WHEN = 2 * 80 + 1, COLUMNS_HINT = 160 };

/* A column that feeds an input (the first entry of its name). */
struct feed {
    size_t column;
    size_t input;
    const struct hw_unit *unit; /* carried by the column's name, or NULL */
};

struct columns {
    struct csv_record header;
    char separator;
    size_t n;                    /* columns of the header */
    struct feed feed[HW_INPUTS]; /* by column, ascending */
    size_t n_feed;
    long when, time, tank; /* columns of a log record's time and tank, or NO_COLUMN */
};

/* Reads a header. False with a message when a column feeds an input twice, nothing is fed, a --map
 * names what is not there, or the name of an appended column is taken already. */
bool columns_read(const struct args *args, struct csv_record header, char separator,
                  const char *file, struct columns *columns);

/* The cell of a record in that column, without quotes around it; nothing for NO_COLUMN. Its at is
 * NULL when it does not fit into the room. */
struct hw_text columns_cell(const struct columns *columns, const struct csv_record *record,
                            long column, char *room, size_t size);

/* When a record says it was: its cell, or its date and its time with a T between them. Its at is
 * NULL when that is longer than any time. */
struct hw_text columns_when(const struct columns *columns, const struct csv_record *record,
                            char room[COLUMNS_WHEN]);

/* What to type so that the columns that look like a date and a time tell when: "--map
 * 'Date+Time=when'"; "" where none looks so. */
void columns_hint_when(const struct columns *columns, char text[COLUMNS_HINT]);

/* True when a column feeds the input or another entry of its name. */
bool columns_feed(const struct columns *columns, const struct hw_calc *calc, size_t input);
#endif
