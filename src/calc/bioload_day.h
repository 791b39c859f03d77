/* bioload_day.h - a day's load on one tank as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_BIOLOAD_DAY_H
#define HW_BIOLOAD_DAY_H
#include "calc/long_limit.h"
#include "calc/proven_filter.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/bioload.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    BIOLOAD_VOLUME, BIOLOAD_FEED, BIOLOAD_BIOMASS, BIOLOAD_RISE, BIOLOAD_BASIS, BIOLOAD_KIT_STEP,
    BIOLOAD_RATION, BIOLOAD_PROTEIN, BIOLOAD_FACTOR, BIOLOAD_DEAD, BIOLOAD_CAPACITY,
    BIOLOAD_CLEARED_FROM, BIOLOAD_CLEARED_TO, BIOLOAD_CLEARED_IN, BIOLOAD_HALF, BIOLOAD_LEFT,
    BIOLOAD_PH, BIOLOAD_TEMP, BIOLOAD_SALINITY, BIOLOAD_LIMIT, BIOLOAD_INPUTS
};
/* clang-format on */

/* One row, and what the core says of it. */
struct bioload_day {
    bool by_rise;  /* the keeper's own reading stands in for the food */
    double feed;   /* g/d, given or by the ration; NaN by a rise */
    double rise_n; /* the rise given, mg/L/d as N; NaN without one */
    double fed, dead,
        production; /* mg of nitrogen a day: food or the rise given, out of what rots, both */
    double starved; /* mg/d that these fish give off unfed; NaN when their mass is not given */
    double rise;    /* mg/L/d */
    struct proven_filter filter;
    struct proven_rest rest;     /* where the load rests with that filter */
    double left;                 /* capacity that is left, mg/d; NaN without one */
    double share;                /* production in it, per cent; NaN when there is none */
    struct long_limit published; /* at this pH, temperature and salinity */
    double limit;                /* mg/L: the one given, else the published one, else NaN */
    double hours, exchanged;     /* NaN without a limit, or when there is no such number */
    double feed_for_limit;       /* g/d; NaN without filter, limit or protein */
    double alkalinity;           /* meq/L/d */
};

struct bioload_day bioload_day(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void bioload_work(const double in[], struct hw_steps *steps);
#endif
