/* dose_plan.h - one row of dose as the core sees it; shared by the answer and its working. */
#ifndef HW_DOSE_PLAN_H
#define HW_DOSE_PLAN_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/dose.h"
#include "holdwater/formalin.h"
#include "holdwater/stock.h"

#include <stdbool.h>

/* The inputs, in the order of the table. Of formalin the levels stand in another entry when they
 * are microlitres (_UL); a floor and a ceiling stand in another one when they must be given
 * (_ASKED). */
enum {
    VOLUME,
    KIND,
    FORMALIN_BASIS,
    SOURCE,
    NOW,
    NOW_UL,
    TARGET,
    TARGET_UL,
    ADDED_LIQUID,
    ADDED_MASS,
    STRENGTH,
    STRENGTH_AS,
    LABEL_DOSE,
    LABEL_PER,
    LABEL_RAISES,
    PURITY,
    FLOOR_ASKED,
    FLOOR,
    CEILING_ASKED,
    CEILING,
    CEILING_FORMALIN,
    CEILING_UL,
    STEPS,
    DAYS,
    INPUTS
};

enum { KIND_IONIC, KIND_AMINE, KIND_CHELATED, KIND_DYE, KIND_FORMALIN, KIND_OTHER };
enum { SOURCE_LIQUID, SOURCE_PENTAHYDRATE, SOURCE_POWDER };
enum { STRENGTH_AS_IS, STRENGTH_AS_SALT };

enum { KINDS_OF_COPPER = 1u << KIND_IONIC | 1u << KIND_AMINE | 1u << KIND_CHELATED };

/* mg in a mL of a product; outside there is no such liquid. */
#define PRODUCT_MIN 1e-3
#define PRODUCT_MAX HW_DOSE_STRENGTH_MAX

/* A level counts as beyond a limit when it is so by more than rounding. */
static inline bool level_below(double level, double limit)
{
    return level < limit * (1 - 1e-9);
}

static inline bool level_above(double level, double limit)
{
    return level > limit * (1 + 1e-9);
}

/* One row, and what the core says of it; levels in mg/L of what is active, for formalin
 * formaldehyde. NaN where an input is missing or a result does not apply. */
struct dose_plan {
    int kind, source, steps,
        labels; /* labels: how many of the three inputs of a label were given */
    bool added; /* poured already */
    double label_strength, strength; /* mg/mL, as the label counts it and of what is active */
    double share;                    /* per cent of a powder that is active */
    double now, target, floor, ceiling;
    double usual_ceiling;               /* of this kind; NaN when it has none */
    double active, liquid, mass, after; /* mg, mL, g, mg/L */
    double step_liquid, step_mass, step_every;
    double rise_a_day; /* the most that goes in within 24 hours, mg/L */
    double solution_ul, solution_mg, formaldehyde, oxygen;
    double share_back; /* per cent of the water */
};

struct dose_plan dose_plan(const double in[]);

/* The notes of the row, as bits. */
uint64_t dose_notes(const struct dose_plan *plan, const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void dose_work(const double in[], struct hw_steps *steps);
#endif
