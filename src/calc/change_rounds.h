/* change_rounds.h - one row of water changes as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_CHANGE_ROUNDS_H
#define HW_CHANGE_ROUNDS_H
#include "calc/medicine_kind.h"
#include "calc/product_label.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/change.h"

#include <stdbool.h>

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    CHANGE_VOLUME, CHANGE_TAKE, CHANGE_SHARE, CHANGE_METHOD, CHANGE_TIMES, CHANGE_NOW, CHANGE_NEW,
    CHANGE_KEEP, CHANGE_KIND, CHANGE_SALINITY, CHANGE_BIOFILTER, CHANGE_FLOOR, CHANGE_CEILING,
    CHANGE_GOAL, CHANGE_STRENGTH, CHANGE_LABEL_LIQUID, CHANGE_LABEL_MASS, CHANGE_LABEL_PER,
    CHANGE_LABEL_RAISES, CHANGE_INPUTS
};
/* clang-format on */

/* The words of its kind. */
enum {
    CHANGE_KIND_IONIC,
    CHANGE_KIND_AMINE,
    CHANGE_KIND_CHELATED,
    CHANGE_KIND_DYE,
    CHANGE_KIND_OTHER,
    CHANGE_KINDS
};

/* One row, and what the core says of it; NaN where an input is missing or there is no such
 * level. */
struct change_rounds {
    enum hw_change_method method;
    int rounds;
    bool by_goal;            /* no size was given: one change of the size that reaches the goal */
    double exchanged, water; /* of one round: over the volume, and L */
    double now, new_level;
    double kept; /* share of the old water after one round; NaN when so much cannot be changed */
    double after, lowest;
    struct product_label label;
    double strength, share;   /* mg/mL; of a powder, 0 to 1 */
    double new_needed;        /* mg/L */
    double add, liquid, mass; /* mg, mL, g; when something is to be added */
    double exchange_needed, rounds_needed;
    double highest; /* of what the tank holds, comes to or is to keep, and the new water, mg/L */
    struct medicine medicine; /* its level is that to keep */
    struct medicine_window window;
};

struct change_rounds change_rounds(const double in[]);

/* The notes of the row, as bits. */
uint64_t change_notes(const struct change_rounds *change, const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void change_work(const double in[], struct hw_steps *steps);
#endif
