/* binder_dose.h - one dose of an ammonia binder as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_BINDER_DOSE_H
#define HW_BINDER_DOSE_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/binder.h"

#include <stdbool.h>

/* The inputs, in the order of the table. */
enum {
    VOLUME,
    TAN,
    BASIS,
    MEDICINE,
    AGENT,
    STRENGTH,
    EXCESS,
    LABEL_DOSE,
    LABEL_LIQUID,
    LABEL_PER,
    LABEL_RAISES,
    HOLD_FROM,
    HOLD_TO,
    INPUTS
};

/* The words of `agent`: those of enum hw_binder, then the label. */
enum { BY_LABEL = 3 };

/* One row, and what the core says of it. What does not apply is NaN. */
struct binder_dose {
    bool by_label;
    double total_n; /* ammonia in the water, mg/L as N */
    double bound;   /* all of it, mg of nitrogen */
    double amount;  /* g of powder, or of the label's product */
    double liquid;  /* mL of the label's product */
    double oxygen;  /* mg/L; not known of a product by its label */
};

struct binder_dose binder_dose(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void binder_work(const double in[], struct hw_steps *steps);
#endif
