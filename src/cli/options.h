/* options.h - options that are no inputs: what each takes, for those who read, tell and complete
 * them. */
#ifndef HW_OPTIONS_H
#define HW_OPTIONS_H
#include "calc/calc.h"

/* What stands after an option. */
enum option_takes {
    TAKES_TEXT, /* anything, or nothing */
    TAKES_WORD, /* one of its words */
    TAKES_FILE,
    TAKES_PLAN,    /* a plan of the program's own, or a file */
    TAKES_RESULTS, /* names of results, parted by commas */
    TAKES_INPUT,   /* the name of an input that is a number */
    TAKES_TARGET   /* RESULT=VALUE */
};

struct general_option {
    const char *name;
    const char *value; /* what to write after it, NULL for a switch */
    const char *help;
    enum option_takes takes;
    const char *const *words; /* of TAKES_WORD; NULL ends the list */
    bool repeats;             /* may be given more than once */
};

/* The words of several options; NULL ends each list. */
extern const char *const separator_words[];
extern const char *const decimal_words[];

/* The number of the option of that name, or of the entry without a name that ends the list. */
size_t options_find(const struct general_option *options, const char *name, size_t n);

/* One option as it stands on the command line. */
struct option_given {
    size_t option;     /* its number */
    const char *value; /* "" for a switch */
};

enum { OPTIONS_MAX = 32 };

/* A command line that is being read. */
struct option_reader {
    const struct hw_calc *command;        /* whose options they are, for messages */
    const struct general_option *options; /* fewer than OPTIONS_MAX; the first takes a value */
    int argc, at;                         /* the word that is read next */
    char **argv;
    bool seen[OPTIONS_MAX];
};

/* Takes the option that stands next, with the word after it where it takes one. False with a
 * message that names the command. */
bool options_take(struct option_reader *reader, struct option_given *given);
#endif
