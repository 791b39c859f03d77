/* trend_record.h - what a file's columns are to `trend`, and what it found in them. */
#ifndef HW_TREND_RECORD_H
#define HW_TREND_RECORD_H
#include "cli/columns.h"
#include "cli/trend_ask.h"
#include "cli/when.h"
#include "cli/wording.h"

#include "holdwater/trend.h"

enum { TREND_TRACKS = 64, TREND_TANKS = 8, TREND_NAME = SHOWN_MAX };

/* Rows, or cells, that could not be taken: how many, and the first of them. */
struct trend_passed {
    size_t n, row;
    char shown[SHOWN_MAX];
    const char *why;
};

/* One column of readings, or one value of a logbook: its last reading and the one before. */
struct trend_track {
    char name[TREND_NAME];
    size_t column;
    const struct hw_unit *unit; /* of its readings, NULL: none */
    bool from_header;           /* the unit stands in the header: a bare number has it */
    bool settled;               /* the unit is known */
    bool mixed;                 /* readings differ in their unit */
    bool concentration;         /* by its name: never below 0 */
    size_t n;
    struct timed last, before;
};

struct trend_record {
    const struct trend_ask *ask;
    const char *file;
    struct columns columns;
    bool logbook;
    long calculation, inputs, results; /* columns of a logbook */
    bool like_tank;                    /* a column that is not taken as that of tanks sounds so */
    size_t row;                        /* the row at hand; 1 is the first after the header */

    struct trend_track track[TREND_TRACKS];
    size_t n_tracks;
    bool more_tracks;         /* there are more than have room */
    struct readings readings; /* of the one that --of names */
    struct readings marks;    /* its cells that are no readings, which may end a run all the same */
    struct when newest;       /* how the latest time was written */
    long long above;          /* the time of the row above, where there is any_time */
    bool any_time;

    char tank[TREND_TANKS][TREND_NAME]; /* those of the rows, as shown; a row without one has "" */
    size_t n_tanks;
    size_t of_tank; /* rows that are of the tank asked for */
    struct trend_passed cells, bounds, rows, without;
    size_t unordered;
    bool wrong; /* the file cannot be read on: a message said why */
};

/* Reads the header. False with a message when there is no column of times, or not the one that
 * --of names. `header` stays where it is. */
bool trend_header(struct trend_record *record, struct csv_record header, char separator);

/* True for a first line that is a line of a logbook, written without a header. */
bool trend_is_log_line(const struct csv_record *record);

/* Notes the time of a row whose reading, or what stands for it, is taken. */
void trend_note_time(struct trend_record *record, const struct when *when);

/* Notes that something stands in a row that is no reading of the column asked for: what it says, as
 * far as it can be told. Its time is that of the row, and where that cannot be read, of the one
 * above. */
void trend_mark(struct trend_record *record, const struct csv_record *row, struct timed mark);

/* Reads one record; looks at `wrong` then. */
void trend_row(struct trend_record *record, struct csv_record row);
#endif
