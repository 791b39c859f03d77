/* change_rounds.h - one row of water changes as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_CHANGE_ROUNDS_H
#define HW_CHANGE_ROUNDS_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/change.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    CHANGE_VOLUME, CHANGE_TAKE, CHANGE_SHARE, CHANGE_METHOD, CHANGE_TIMES, CHANGE_NOW, CHANGE_FRESH,
    CHANGE_KEEP, CHANGE_FLOOR, CHANGE_CEILING, CHANGE_GOAL, CHANGE_STRENGTH, CHANGE_INPUTS
};
/* clang-format on */

/* One row, and what the core says of it; NaN where an input is missing or there is no such
 * level. */
struct change_rounds {
    enum hw_change_method method;
    int rounds;
    double exchanged, water; /* of one round: over the volume, and L */
    double now, fresh;
    double kept; /* share of the old water after one round; NaN when so much cannot be changed */
    double after, lowest;
    double fresh_needed, add,
        liquid; /* mg/L, mg, mL; the latter two when something is to be added */
    double exchange_needed, rounds_needed;
};

struct change_rounds change_rounds(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void change_work(const double in[], struct hw_steps *steps);
#endif
