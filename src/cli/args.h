/* args.h - the words after the calculation's name. */
#ifndef HW_ARGS_H
#define HW_ARGS_H
#include "engine/question.h"

enum format { FORMAT_TEXT, FORMAT_JSON, FORMAT_VALUE };

/* The words of --format, in the order of enum format; NULL ends the list. */
extern const char *const format_words[];

/* An option that every calculation takes. */
struct general_option {
    const char *name;
    const char *value; /* what to write after it, NULL for a switch */
    const char *help;
};

/* In the order of the help; a NULL name ends the list. */
extern const struct general_option general_options[];

struct args {
    const struct hw_calc *calc;
    struct hw_written written[HW_INPUTS];
    enum format format;
    bool only[HW_RESULTS]; /* all true when --only was not given */
    size_t n_only;         /* 0: not given */
    size_t only_first;     /* the first result named */
    int digits;            /* 0: not given */
    bool work;
};

/* Reads argv[2] onwards. True when all is well; else the message is out. */
bool args_read(int argc, char *argv[], const struct hw_calc *calc, struct args *args);

/* True when help is asked for anywhere among argv[from] onwards. */
bool args_want_help(int argc, char *argv[], int from);
#endif
