/* trend_ask.h - what `trend` is asked. */
#ifndef HW_TREND_ASK_H
#define HW_TREND_ASK_H
#include "cli/args.h"
#include "cli/reading.h"

/* A value that readings are held against; in the readings' unit once that is known. */
enum { TREND_LIMIT, TREND_FLOOR, TREND_CEILING, TREND_LEVELS };

extern const char *const trend_level_names[TREND_LEVELS];

struct trend_ask {
    const char *rows, *tank, *of, *when; /* NULL: not given, but for rows, which must be */
    enum format format;                  /* text, csv, json or svg */
    struct hw_text level[TREND_LEVELS];  /* as written; at NULL: not given */
    struct hw_question settled;          /* of trend_caption: gap, last */
    char separator;                      /* 0: not given */
    bool decimal_comma;
    struct hw_text when_column, time_column; /* mapped to when; at NULL: none */
    struct hw_text tank_column;              /* mapped to tank; at NULL: none */
    int digits;                              /* 0: not given */
    bool full;
};

/* The inputs of trend_caption. */
enum { TREND_GAP, TREND_LAST, TREND_INPUTS };

/* The command as tables of calculations have it: name, purpose, notes, sources, and those inputs
 * that are read as theirs are. It cannot be asked. */
extern const struct hw_calc trend_caption;

/* Its options, in the order of the help; a NULL name ends the list. */
extern const struct general_option trend_options[];

/* False with a message when they cannot be read, or mean nothing together. */
bool trend_ask_read(int argc, char *argv[], struct trend_ask *ask);
#endif
