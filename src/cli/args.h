/* args.h - what the words after the calculation's name ask for. */
#ifndef HW_ARGS_H
#define HW_ARGS_H
#include "cli/options.h"
#include "engine/question.h"

enum format {
    FORMAT_TEXT,
    FORMAT_CSV,
    FORMAT_TSV,
    FORMAT_JSON,
    FORMAT_JSONL,
    FORMAT_VALUE,
    FORMAT_LOG,
    FORMAT_SVG
};

/* What a picture is drawn for. */
enum page { PAGE_PHONE, PAGE_A4 };

/* What happens to a row that gives no answer. */
enum on_bad { BAD_KEEP, BAD_STOP, BAD_DROP };

enum { MAPS_MAX = 2 * HW_INPUTS, MAPPED_OWN = HW_INPUTS };

/* The words of three options, in the order of their enums; NULL ends the list. */
extern const char *const format_words[];
extern const char *const page_words[];
extern const char *const on_bad_words[];

/* The options that every calculation takes, in the order of the help. */
enum {
    OPTION_FORMAT,
    OPTION_PAGE,
    OPTION_ONLY,
    OPTION_DIGITS,
    OPTION_FULL,
    OPTION_WORK,
    OPTION_TANK,
    OPTION_TANKS,
    OPTION_ROWS,
    OPTION_SEPARATOR,
    OPTION_DECIMAL,
    OPTION_TSV,
    OPTION_MAP,
    OPTION_PREFIX,
    OPTION_ON_BAD,
    OPTION_WHEN,
    OPTION_LOG,
    OPTION_NOTE,
    OPTION_SOLVE,
    OPTION_FOR,
    OPTION_SPREAD,
    OPTION_HELP,
    GENERAL_OPTIONS
};

/* By the numbers above; a NULL name ends the list. */
extern const struct general_option general_options[];

/* --map COLUMN=INPUT: a foreign header that feeds an input, in the unit that INPUT may carry, or
 * MAPPED_OWN, which feeds none. */
struct mapping {
    struct hw_text column;
    size_t input;
    const struct hw_unit *unit;
};

struct args {
    const struct hw_calc *calc;
    struct hw_written written[HW_INPUTS];
    enum format format;
    bool format_given;
    enum page page;
    bool page_given;
    bool only[HW_RESULTS];    /* all true when --only was not given */
    size_t order[HW_RESULTS]; /* all results, those that --only names first, as they were named */
    size_t n_only;            /* 0: not given */
    int digits;               /* 0: not given */
    bool full;                /* text tells details, the long text of its notes and the sources */
    bool work;
    const char *rows;   /* a file's name, "-" for standard input; NULL: one question */
    char separator;     /* of the rows; 0: not given */
    bool decimal_comma; /* of numbers in the rows */
    struct mapping map[MAPS_MAX];
    size_t n_maps;
    struct hw_text when_column, time_column; /* mapped to when; at NULL: none */
    struct hw_text tank_column;              /* mapped to tank; at NULL: none */
    const char *prefix;                      /* of appended columns, "" when not given */
    enum on_bad on_bad;
    const char *when;                       /* for log records; NULL: now */
    const char *log;                        /* the logbook that gets one; NULL: none */
    const char *note;                       /* for log records; NULL: none */
    const char *tank;                       /* a row of the tanks file; NULL: none */
    const char *tanks;                      /* its name; NULL: where it is looked for */
    struct hw_text left_in_tank[HW_INPUTS]; /* cells of that row that name an input and do not feed
                                               it, as they are no facts of the tank's water */
    size_t solve;        /* the first entry of the input that is solved for, or calc->n_inputs */
    size_t wanted;       /* the result it is to reach, or calc->n_results */
    double wanted_value; /* in the result's unit */
    const struct hw_unit *wanted_unit; /* as it was written, or NULL */
    bool spread;                       /* rows take uncertainties */
    bool row_option;                   /* an option was given that only rows have */
};

/* True for a result that texts and pictures tell: not a detail, unless it or all is asked for. */
bool args_tell(const struct args *args, size_t result);
#endif
