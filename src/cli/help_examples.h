/* help_examples.h - worked calls in the help. */
#ifndef HW_HELP_EXAMPLES_H
#define HW_HELP_EXAMPLES_H
#include "calc/calc.h"

/* A worked call, for the help; rows of one calculation stand together. */
struct example {
    const char *calculation, *question, *command;
};

/* A NULL calculation ends the list. */
extern const struct example examples[];

/* Prints the first examples of a calculation, at most so many; true when there are more. */
bool help_examples(const struct hw_calc *calc, size_t most);
#endif
