/* binder_dose.h - one dose of an ammonia binder as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_BINDER_DOSE_H
#define HW_BINDER_DOSE_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/binder.h"

#include <stdbool.h>

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    BINDER_VOLUME, BINDER_TAN, BINDER_BASIS, BINDER_MEDICINE, BINDER_AGENT, BINDER_STRENGTH,
    BINDER_EXCESS, BINDER_LABEL_MASS, BINDER_LABEL_LIQUID, BINDER_LABEL_PER, BINDER_LABEL_BINDS,
    BINDER_HOLD_FROM, BINDER_HOLD_TO, BINDER_INPUTS
};
/* clang-format on */

/* The words of `agent`: those of enum hw_binder, then the label. */
enum { BINDER_BY_LABEL = 3 };

/* One row, and what the core says of it. What does not apply is NaN. */
struct binder_dose {
    bool by_label;
    double total_n; /* ammonia in the water, mg/L as N */
    double level;   /* what is bound of it, in the basis: all, or what one label's dose binds */
    double level_n; /* the same as N */
    double bound;   /* that in all the water, mg of nitrogen */
    double amount;  /* g of powder, or of the label's product */
    double liquid;  /* mL of the label's product */
    double oxygen;  /* mg/L; not known of a product by its label */
    double label_oxygen; /* of a product by its label: what the mildest pure agent takes to bind
                          * all of it, mg/L */
};

/* Why there is no dose. */
struct binder_bans {
    bool copper, dye, oxygen;
};

struct binder_dose binder_dose(const double in[]);
struct binder_bans binder_bans(const struct binder_dose *dose, unsigned medicine);

/* Writes the working; the same names and numbers as the answer. */
void binder_work(const double in[], struct hw_steps *steps);
#endif
