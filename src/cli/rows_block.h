/* rows_block.h - a block of rows between reading and writing. */
#ifndef HW_ROWS_BLOCK_H
#define HW_ROWS_BLOCK_H
#include "cli/columns.h"
#include "cli/input.h"
#include "cli/marks.h"
#include "cli/notes.h"
#include "cli/report_json.h"
#include "engine/decimal_column.h"

enum { OUT_SIZE = 1 << 18, PROBLEM_MAX = 64, NOT_ASKED = -1, CODES_KEPT = 128, CODES_SHIFT = 57 };

/* Bytes that are copied at once where a row is written in one go: so many behind what is copied are
 * read as well, and written to. */
enum { ROWS_STRIDE = 32, LINES_SPELT = 64 };

/* What is said once for a file. */
enum telling { TELL_SURPLUS, TELL_COMMA, TELL_LINES, TELL_TANK, TELLINGS };

/* A record of the block, and what became of it. */
struct row {
    struct csv_record record;
    size_t cells;              /* how many it has */
    size_t keep;               /* bytes of the record that are written, when it has too many */
    const char *problem;       /* a code, or NULL */
    const char *problem_input; /* the input that it concerns, or NULL */
    int place;                 /* in the block's columns, or NOT_ASKED */
    bool quick;                /* all inputs that have a column are from there */
};

/* How some notes are spelt: the cell between its separators, and the end of a line. */
struct codes {
    uint64_t notes, possible;
    size_t n; /* 0 where nothing is kept yet */
    char text[CODES_MAX + ROWS_STRIDE];
};

/* What a column feeds: where its numbers go, and which of them need no second look. */
struct quick_feed {
    size_t column;
    double *to; /* a column of the block */
    struct hw_span kept;
};

/* For records that are plain: where cells end in a window of the text, text[begin..end). */
struct quick {
    bool allowed;
    struct quick_feed feed[HW_INPUTS]; /* of each feed of the columns */
    size_t begin, end;                 /* empty, 0, when the text was moved */
    size_t n, next;                    /* marks; and the line feed before the record at hand */
    size_t run;                        /* how many records are tried at once */
    uint16_t at[MARKS_MAX];
};

/* For rows that are written in one go. */
struct line {
    bool allowed;
    int digits;
    size_t n;
    const double *from[HW_RESULTS]; /* the columns of the results that are written, in order */
    size_t room;                    /* what a line needs at most beside its record */
    size_t first, n_spelt;          /* the places of the block that are spelt at the moment */
    struct hw_spelt spelt[HW_RESULTS * LINES_SPELT]; /* one result after another */
};

struct rows {
    const struct args *args;
    const struct hw_calc *calc;
    struct columns columns;
    struct hw_written
        base[HW_INPUTS];         /* options and the tank; what a column feeds is marked as coming */
    struct hw_question constant; /* everything that no column feeds */
    uint64_t grave;              /* notes that leave no answer */
    uint64_t tellable;           /* notes that a cell tells */
    bool by_tank;                /* each row has the water of its own tank */
    bool plain;                  /* columns feed only numbers on which nothing else hangs */
    char in_separator, out_separator;

    struct quick quick;
    struct line line;

    struct row row[HW_BLOCK];
    size_t n_rows, n_asked;
    struct hw_question question; /* of the row at hand */
    enum hw_from from[HW_INPUTS][HW_BLOCK];
    struct hw_batch batch;
    double half[HW_INPUTS][HW_BLOCK]; /* filled with --spread alone */

    struct codes codes[CODES_KEPT]; /* most rows have one of a few sets */
    size_t number, bad, withheld, dropped;
    bool stopped, told[TELLINGS];

    char swapped[HW_INPUTS]
                [CSV_SWAPPED_MAX]; /* cells of the row at hand with decimal commas changed */
    char header[CSV_RECORD_MAX];
    struct input input;
    struct json_rows json;
    size_t written;
    char text[OUT_SIZE];
};
#endif
