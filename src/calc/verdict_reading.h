/* verdict_reading.h - one reading after a challenge as the core sees it; shared by the answer and
 * its working. */
#ifndef HW_VERDICT_READING_H
#define HW_VERDICT_READING_H
#include "calc/long_limit.h"
#include "calc/proven_filter.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/challenge.h"
#include "holdwater/nitrite.h"
#include "holdwater/verdict.h"

#include <stdbool.h>

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    VERDICT_VOLUME, VERDICT_START_TAN, VERDICT_START_NITRITE, VERDICT_TAN, VERDICT_NITRITE,
    VERDICT_HOURS, VERDICT_BASIS, VERDICT_NITRITE_BASIS, VERDICT_WITHIN, VERDICT_KIT_STEP,
    VERDICT_NITRATE_RISE, VERDICT_PROTEIN, VERDICT_WORKING_SHARE, VERDICT_TEMP, VERDICT_STOCK_TEMP,
    VERDICT_PH, VERDICT_SALINITY, VERDICT_LIMIT, VERDICT_HALF, VERDICT_INPUTS
};
/* clang-format on */

/* The words of `nitrite_basis`. */
enum { VERDICT_NITRITE_AS_N, VERDICT_NITRITE_AS_ION };

/* One row, and what the core says of it. Nitrogen is mg/L as N. */
struct verdict_reading {
    double start_tan, start_nitrite, tan, nitrite;
    double half_tan, half_nitrite; /* half a step of each kit */
    bool tan_clear, nitrite_clear; /* in the kit's own basis */
    double cleared, turned; /* turned: ammonia that was cleared; no more than was cleared in all */
    double rate, capacity;
    double feed, working_feed;   /* NaN unless passed */
    double colder;               /* degrees; 0 when warmer or not known */
    double hours_to_clear;       /* NaN when clear */
    struct proven_filter filter; /* of the ammonia alone, at the temperature of the fish */
    struct long_limit published; /* at that temperature */
    double limit;                /* the one given, else the published one, else NaN */
    double feed_for_limit;       /* NaN unless passed, with a limit, and ammonia fell */
    double nitrate;              /* the rise to expect, mg/L of the ion */
    bool coarse;                 /* half a step is more than harms: nothing can be read */
    bool readable;               /* the start was above half a step */
    bool moved; /* something was cleared: all of the above stands, but for the food */
    bool passed;
};

struct verdict_reading verdict_reading(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void verdict_work(const double in[], struct hw_steps *steps);
#endif
