/* tank_file.h - the tanks file: CSV, a column `tank`, the rest named as inputs. */
#ifndef HW_TANK_FILE_H
#define HW_TANK_FILE_H
#include "cli/args.h"
#include "cli/csv.h"

enum { TANK_NAME_MAX = 256 }; /* bytes; a longer name is none */

/* One file at a time: its text stays in memory, and records point into it. */
struct tank_file {
    const char *name;
    const char *text; /* all of it, at most 1 MiB */
    size_t n;
    struct csv_record header;
    size_t column; /* the one called tank */
};

/* The name of the file in use. */
const char *tank_file_name(const struct args *args);

/* Reads a file of at most 1 MiB and its header. False with a message when it is no tanks file. */
bool tank_file_read(const char *name, struct tank_file *file);

/* The next row of the file; false at its end, or with a message and *fine false. */
bool tank_file_next(const struct tank_file *file, struct csv_record *row, bool *fine);

/* The name of a row's tank, without quotes and the blanks around it; "" when it has none. */
struct hw_text tank_file_tank(const struct tank_file *file, const struct csv_record *row,
                              char room[TANK_NAME_MAX]);

/* What is wrong with a row. */
enum tank_fault {
    TANK_FINE,
    TANK_TWICE, /* two columns feed one input: *which */
    TANK_CELLS, /* another number of cells than the header */
    TANK_QUOTES /* broken quotes */
};

/* Where the cells of a row go: to the inputs that describe the water of the tank, where nothing is
 * written, and, of cells that only have an input's name, into `left`. */
struct tank_take {
    const struct hw_calc *calc;
    struct hw_written *written; /* one for each input */
    struct hw_text *left;       /* one for each input; at NULL: none */
};

/* Takes the cells of a row; empty ones say nothing. */
enum tank_fault tank_file_take(const struct tank_file *file, const struct csv_record *row,
                               const struct tank_take *take, size_t *which);
#endif
