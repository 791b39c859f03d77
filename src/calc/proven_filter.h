/* proven_filter.h - a filter that is known from one challenge: where a load rests with it, and what
 * load rests at a limit. */
#ifndef HW_PROVEN_FILTER_H
#define HW_PROVEN_FILTER_H
#include "calc/steps.h"

/* The challenge, mg/L as N and hours; NaN without one. */
struct proven_filter {
    double from, to, hours;
    double half; /* ammonia at which the filter works at half of its rate, mg/L as N */
    double left; /* the share of its rate that is left, 0 to 1 */
    double vmax; /* its rate that is left, mg/L an hour; NaN where nothing was cleared */
};

struct proven_filter proven_filter(const struct proven_filter *challenge);

/* True when a challenge was given in which nothing was cleared. */
bool proves_nothing(const struct proven_filter *filter);

/* Where a load, mg/L an hour, rests: by `half`; the least and the most of that and of both ends of
 * what was read of filters. NaN where it never rests: with `level` all are. */
struct proven_rest {
    double level, low, high;
};

struct proven_rest proven_rest(const struct proven_filter *filter, double rate);

/* The load, mg/L an hour, that rests at a limit. NaN without a filter or a limit. */
double proven_carried(const struct proven_filter *filter, double limit);

/* The same filter, by that of `half` and both ends of what was read of filters by which it carries
 * the least. */
struct proven_filter proven_least(const struct proven_filter *filter, double limit);

/* Steps: `vmax`; `settles` and its two ends by what comes in a day. */
void step_vmax(const struct proven_filter *filter, struct hw_steps *steps);
void step_rest(const struct proven_filter *filter, double rise_per_day, struct hw_steps *steps);
#endif
