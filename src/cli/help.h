/* help.h - what is printed when help is asked for. */
#ifndef HW_HELP_H
#define HW_HELP_H
#include "cli/help_examples.h"

/* The map of the job by stage: `holdwater` alone. */
void help_map(void);

/* One calculation on two screens: its first examples, inputs, results. */
void help_calc(const struct hw_calc *calc);

/* The same for a command that is written by hand, by its caption. */
void help_by_hand(const struct hw_calc *caption);

/* All of one input or result, or all examples for "examples"; false where there is no such name. */
bool help_name(const struct hw_calc *calc, const char *name);

/* What is the same for all calculations. */
void help_asking(void);

/* A page of the help that is of no calculation. */
struct help_page {
    const char *name;
    void (*print)(void);
};

/* A NULL name ends the list. */
extern const struct help_page help_pages[];

/* A stage of the job, and the calculations that tell what the keeper must know there. */
struct stage {
    const char *name;
    const char *const *calculations; /* NULL ends the list */
};

/* A NULL name ends the list. */
extern const struct stage stages[];

/* What a calculation says when it is asked with no option at all, in place of what it lacks. */
struct card {
    const char *calculation;
    const char *const *lines; /* NULL ends the list */
};

/* A NULL calculation ends the list. */
extern const struct card cards[];

/* Prints the card of a calculation; false where it has none. */
bool help_card(const struct hw_calc *calc);

/* The calculation of that name, or NULL. */
const struct hw_calc *calc_find(const char *name);
#endif
