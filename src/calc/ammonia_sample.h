/* ammonia_sample.h - one ammonia reading as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_AMMONIA_SAMPLE_H
#define HW_AMMONIA_SAMPLE_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/ammonia.h"
#include "holdwater/criteria.h"
#include "holdwater/ph.h"
#include "holdwater/seawater.h"
#include "tables.h"

/* The inputs and the results, in the order of the tables. */
/* clang-format off */
enum {
    AMMONIA_TAN, AMMONIA_BASIS, AMMONIA_DILUTION, AMMONIA_PH, AMMONIA_PH_SCALE, AMMONIA_TEMP,
    AMMONIA_SALINITY, AMMONIA_MODEL_METER, AMMONIA_MODEL_OTHER, AMMONIA_MEDICINE,
    AMMONIA_LONG_LIMIT, AMMONIA_SHORT_LIMIT, AMMONIA_LIMIT_BASIS, AMMONIA_INPUTS
};
enum {
    AMMONIA_FREE, AMMONIA_LONG_RATIO, AMMONIA_SHORT_RATIO, AMMONIA_TAN_LONG, AMMONIA_PH_LONG,
    AMMONIA_FREE_PERCENT, AMMONIA_FREE_NH3, AMMONIA_FREE_FOR_LIMIT, AMMONIA_PKA, AMMONIA_RESULTS
};
/* clang-format on */

/* One row, its words turned into the core's enums, and what the core says of it. */
struct ammonia_sample {
    double total_n; /* total ammonia in the tank, mg N/L */
    double ph, temp, salinity;
    enum hw_nitrogen_basis basis;
    enum hw_ph_scale scale;
    enum hw_ammonia_model model;
    double pk, fraction; /* by the model chosen, on the scale given */
    double free_n;       /* mg N/L */
    double from_meter;   /* what to add to a meter's pH for the scale given */
    double ph_meter;     /* the pH on a meter's scale */
    bool meter_in_range; /* ... where limits are defined */
    double pk_1989, fraction_1989;
    double free_1989; /* mg NH3/L as the salt-water limits count it; NaN where they do not apply */
    bool fit_stretched, criteria_stretched;
};

/* How a sample stands to a limit: times over it, the total (mg N/L) and the pH on the scale given
 * that reach it. */
struct ammonia_standing {
    double ratio, total_n, ph;
};

/* The limits of one averaging time: their keys, the notes that say which was passed. */
struct ammonia_limits {
    int own;
    enum hw_limit_key salt;
    enum hw_criteria_limit fresh;
    enum hw_ammonia_note over_own, over_salt, over_fresh;
};

extern const struct ammonia_limits ammonia_long_limits, ammonia_short_limits;

struct ammonia_sample ammonia_sample(const double in[]);

/* Against a limit of free ammonia, both as N, counted with the constant pk; the pH is on that
 * constant's scale and found when asked for. */
struct ammonia_standing ammonia_against_free(double total_n, double limit_n, double fraction,
                                             double pk, bool find_ph);
struct ammonia_standing ammonia_against_salt(const struct ammonia_sample *s,
                                             enum hw_limit_key limit, bool find_ph);
struct ammonia_standing ammonia_against_fresh(struct ammonia_sample *s,
                                              enum hw_criteria_limit criterion);

/* Which published limits apply to a sample; between the two steps of salinity both do. */
bool ammonia_salt_applies(const struct ammonia_sample *s);
bool ammonia_fresh_applies(const struct ammonia_sample *s);

/* A pH that water can have, or NaN. */
static inline double in_ph_range(double ph)
{
    return ph >= HW_PH_MIN && ph <= HW_PH_MAX ? ph : (double)NAN;
}

/* One question; and the plain ones of a block side by side: see calc.h. */
void ammonia_answer(const double in[], double out[], uint64_t *notes);
bool ammonia_block(const struct hw_block *block);

/* Writes the working; the same names and numbers as the answer. */
void ammonia_work(const double in[], struct hw_steps *steps);
#endif
