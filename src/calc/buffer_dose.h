/* buffer_dose.h - one dose of buffer as the core sees it; shared by the answer and its working. */
#ifndef HW_BUFFER_DOSE_H
#define HW_BUFFER_DOSE_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/buffer.h"
#include "holdwater/carbonate.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    BUFFER_VOLUME, BUFFER_ALKALINITY, BUFFER_TARGET, BUFFER_REAGENT, BUFFER_PH, BUFFER_TEMP,
    BUFFER_SALINITY, BUFFER_TAN, BUFFER_INPUTS
};
/* clang-format on */

/* Why there is no answer. */
enum buffer_refusal {
    BUFFER_ANSWERED,
    BUFFER_TARGET_BELOW,
    BUFFER_UNSEEN, /* ammonia, and no telling how much of it the dose would free */
    BUFFER_PH_NOT_ALKALINITY,
    BUFFER_OVER_PH,
    BUFFER_OVER_HOUR /* withheld */
};

/* One row; NaN where an input is missing. */
struct buffer_dose {
    enum buffer_refusal refusal;
    enum hw_buffer_source reagent;
    bool states; /* pH, temperature and salinity are all given */
    double mass;
    double carbon_per_eq; /* mol of dissolved carbon that comes with an equivalent */
    double carbon, carbon_after;
    double ph_after, ph_aired;
    double pk; /* of ammonium, for the meter's number */
    double free_before, free_after, free_aired;
    bool over_salt,
        over_fresh; /* one of the three is above the published limit for days that applies */
    bool stretched;
};

struct buffer_dose buffer_dose(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void buffer_work(const double in[], struct hw_steps *steps);
#endif
