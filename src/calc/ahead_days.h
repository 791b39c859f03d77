/* ahead_days.h - the hours ahead in one tank as the core sees them; shared by the answer and its
 * working. */
#ifndef HW_AHEAD_DAYS_H
#define HW_AHEAD_DAYS_H
#include "calc/long_limit.h"
#include "calc/proven_filter.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/ahead.h"
#include "holdwater/bioload.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    AHEAD_VOLUME, AHEAD_TAN, AHEAD_BASIS, AHEAD_KIT_STEP, AHEAD_FEED, AHEAD_BIOMASS, AHEAD_RISE,
    AHEAD_PROTEIN, AHEAD_MEALS, AHEAD_FACTOR, AHEAD_BASAL, AHEAD_CLEARED_FROM, AHEAD_CLEARED_TO,
    AHEAD_CLEARED_IN, AHEAD_HALF, AHEAD_LEFT, AHEAD_SHARE, AHEAD_EVERY, AHEAD_NEW_TAN, AHEAD_HOURS,
    AHEAD_LIMIT, AHEAD_PH, AHEAD_TEMP, AHEAD_SALINITY, AHEAD_INPUTS
};
/* clang-format on */

/* One row, and what the core says of it. Nitrogen is mg/L as N. */
struct ahead_days {
    double start, hours;
    double production;   /* mg a day */
    double rise_per_day; /* mg/L a day with no filter */
    struct proven_filter filter;
    struct proven_rest rest;
    struct hw_ahead_tank tank;
    struct hw_ahead_outlook outlook;
    struct long_limit published; /* at this pH, temperature and salinity */
    double limit;                /* the one given, else the published one, else NaN */
    double hours_to_limit;       /* NaN without a limit, or when it is not reached */
    double feed_for_limit;       /* g a day; NaN without filter, limit or protein */
    double pk, free_peak;        /* NaN unless pH, temperature and salinity are there */
    bool fit_stretched;          /* the constant was used outside its measurements */
};

struct ahead_days ahead_days(const double in[]);

/* The same, to the last bit, and sooner where the hours ahead are those of another row: in a sweep,
 * a search or a file most often one input changes, and often one that they do not hang on. */
struct ahead_days ahead_days_beside(const double in[], const struct ahead_days *other);

/* Writes the working; the same names and numbers as the answer. */
void ahead_work(const double in[], struct hw_steps *steps);
#endif
