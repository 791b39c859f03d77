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
/* clang-format off */
enum {
    DOSE_VOLUME, DOSE_KIND, DOSE_FORMALIN_BASIS, DOSE_SOURCE, DOSE_NOW, DOSE_NOW_UL, DOSE_TARGET,
    DOSE_TARGET_UL, DOSE_ADDED_LIQUID, DOSE_ADDED_MASS, DOSE_STRENGTH, DOSE_STRENGTH_AS,
    DOSE_LABEL_DOSE, DOSE_LABEL_PER, DOSE_LABEL_RAISES, DOSE_PURITY, DOSE_FLOOR_ASKED, DOSE_FLOOR,
    DOSE_CEILING_ASKED, DOSE_CEILING, DOSE_CEILING_FORMALIN, DOSE_CEILING_UL, DOSE_STEPS, DOSE_DAYS,
    DOSE_INPUTS
};
/* clang-format on */

/* clang-format off */
enum {
    DOSE_KIND_IONIC, DOSE_KIND_AMINE, DOSE_KIND_CHELATED, DOSE_KIND_DYE, DOSE_KIND_FORMALIN,
    DOSE_KIND_OTHER
};
/* clang-format on */
enum { DOSE_SOURCE_LIQUID, DOSE_SOURCE_PENTAHYDRATE, DOSE_SOURCE_POWDER };
enum { DOSE_STRENGTH_AS_IS, DOSE_STRENGTH_AS_SALT };

enum {
    DOSE_KINDS_OF_COPPER = 1u << DOSE_KIND_IONIC | 1u << DOSE_KIND_AMINE | 1u << DOSE_KIND_CHELATED
};

/* mg in a mL of a product; outside there is no such liquid. */
#define PRODUCT_MIN 1e-3
#define PRODUCT_MAX HW_DOSE_STRENGTH_MAX

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
