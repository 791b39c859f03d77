/* dose_plan.h - one row of dose as the core sees it; shared by the answer and its working. */
#ifndef HW_DOSE_PLAN_H
#define HW_DOSE_PLAN_H
#include "calc/medicine_kind.h"
#include "calc/product_label.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/dose.h"
#include "holdwater/formalin.h"

#include <stdbool.h>

/* The inputs, in the order of the table. Of formalin the levels stand in another entry when they
 * are microlitres (_UL). */
/* clang-format off */
enum {
    DOSE_VOLUME, DOSE_KIND, DOSE_SALINITY, DOSE_TEMP, DOSE_BIOFILTER, DOSE_FORMALIN_BASIS,
    DOSE_SOURCE, DOSE_NOW, DOSE_NOW_UL, DOSE_TARGET, DOSE_TARGET_UL, DOSE_ADDED_LIQUID,
    DOSE_ADDED_MASS, DOSE_STRENGTH, DOSE_STRENGTH_AS, DOSE_LABEL_LIQUID, DOSE_LABEL_MASS,
    DOSE_LABEL_PER, DOSE_LABEL_RAISES, DOSE_PURITY, DOSE_FLOOR, DOSE_CEILING, DOSE_CEILING_UL,
    DOSE_STEPS, DOSE_DAYS, DOSE_INPUTS
};
/* clang-format on */

enum { DOSE_SOURCE_LIQUID, DOSE_SOURCE_PENTAHYDRATE, DOSE_SOURCE_POWDER };
enum { DOSE_STRENGTH_AS_IS, DOSE_STRENGTH_AS_SALT };

/* One row, and what the core says of it; levels in mg/L of what is active, for formalin
 * formaldehyde. NaN where an input is missing or a result does not apply. */
struct dose_plan {
    enum medicine_kind kind;
    int source, steps;
    bool added; /* poured already */
    struct product_label label;
    double label_strength, label_share; /* mg/mL and a share, as the label counts them */
    double strength, share;             /* mg/mL and per cent of what is active */
    double now, target;
    struct medicine medicine;
    struct medicine_window window;
    double active, liquid, mass, after; /* mg, mL, g, mg/L */
    double step_liquid, step_mass, step_every;
    double solution_ul, solution_mg, formaldehyde, oxygen;
    double share_back; /* per cent of the water */
};

struct dose_plan dose_plan(const double in[]);

/* The notes of the row, as bits. */
uint64_t dose_notes(const struct dose_plan *plan, const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void dose_work(const double in[], struct hw_steps *steps);
#endif
