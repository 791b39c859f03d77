/* columns.h - what the columns of a file are to a calculation. */
#ifndef HW_COLUMNS_H
#define HW_COLUMNS_H
#include "cli/args.h"
#include "cli/csv.h"

enum { COLUMN_NAME_MAX = 96, NO_COLUMN = -1 };

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
    long when, tank; /* columns of these names, or NO_COLUMN; for log records */
};

/* Writes a name as a column is called: NAME, or NAME_UNIT with the unit spelt for a header. */
void column_name(const char *name, const char *unit, char text[COLUMN_NAME_MAX]);

/* The same with a part of it between: NAME_low_UNIT for "_low". */
void column_part_name(const char *name, const char *part, const char *unit,
                      char text[COLUMN_NAME_MAX]);

/* The input that a column of that name feeds, and the unit that the name carries. False when it is
 * none: case does not count, '-' and '_' are equal. */
bool column_match(const struct hw_calc *calc, struct hw_text name, size_t *input,
                  const struct hw_unit **unit);

/* True when text[0..n) is the word, case and the kind of hyphen aside. */
bool column_folds_to(const char *word, const char *text, size_t n);

/* Reads a header. False with a message when a column feeds an input twice, nothing is fed, a --map
 * names what is not there, or the name of an appended column is taken already. */
bool columns_read(const struct args *args, struct csv_record header, char separator,
                  const char *file, struct columns *columns);

/* True when a column feeds the input or another entry of its name. */
bool columns_feed(const struct columns *columns, const struct hw_calc *calc, size_t input);
#endif
