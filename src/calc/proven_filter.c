/* proven_filter.c - a filter that is known from one challenge. */
#include "calc/proven_filter.h"

#include "holdwater/ahead.h"
#include "tables.h"

#include <math.h>

/* What is left of the filter's rate when it works at half of it at `half`. */
static double vmax_by(const struct proven_filter *filter, double half)
{
    double vmax = NAN;
    hw_ahead_vmax(filter->from, filter->to, filter->hours, half, &vmax);
    return vmax * filter->left;
}

struct proven_filter proven_filter(const struct proven_filter *challenge)
{
    struct proven_filter filter = *challenge;
    filter.vmax = vmax_by(&filter, filter.half);
    return filter;
}

bool proves_nothing(const struct proven_filter *filter)
{
    return !isnan(filter->from) && isnan(filter->vmax);
}

static double rest_by(const struct proven_filter *filter, double half, double rate)
{
    double level = NAN;
    hw_ahead_settles(rate, vmax_by(filter, half), half, &level);
    return level;
}

static double at_low_end(void)
{
    return hw_limits[HW_LIMIT_HALF_LOW].value;
}

static double at_high_end(void)
{
    return hw_limits[HW_LIMIT_HALF_HIGH].value;
}

/* The sharper a filter is, the lower is its highest rate by one challenge: where the load rests
 * with the sharp end it does with the blunt one. */
struct proven_rest proven_rest(const struct proven_filter *filter, double rate)
{
    struct proven_rest rest = {rest_by(filter, filter->half, rate), NAN, NAN};
    double sharp = rest_by(filter, at_low_end(), rate);
    double blunt = rest_by(filter, at_high_end(), rate);
    if (isnan(rest.level)) {
        return rest;
    }
    /* of no number and a number fmin takes the number */
    rest.low = fmin(rest.level, fmin(sharp, blunt));
    if (!isnan(sharp)) {
        rest.high = fmax(rest.level, fmax(sharp, blunt));
    }
    return rest;
}

double proven_carried(const struct proven_filter *filter, double limit)
{
    double rate = NAN;
    hw_ahead_carried(limit, filter->vmax, filter->half, &rate);
    return rate;
}

struct proven_filter proven_least(const struct proven_filter *filter, double limit)
{
    const double ends[] = {at_low_end(), at_high_end()};
    struct proven_filter least = *filter;
    for (size_t i = 0; i < sizeof ends / sizeof ends[0]; i++) {
        struct proven_filter by_end = *filter;
        by_end.half = ends[i];
        by_end = proven_filter(&by_end);
        if (proven_carried(&by_end, limit) < proven_carried(&least, limit)) {
            least = by_end;
        }
    }
    return least;
}

void step_vmax(const struct proven_filter *filter, struct hw_steps *steps)
{
    hw_step(steps, "vmax", filter->vmax, "mg/L/h", "saturating-filter",
            "((%.10g - %.10g) + %.10g*log(%.10g/%.10g))/%.10g * %.10g/100", filter->from,
            filter->to, filter->half, filter->from, filter->to, filter->hours, 100 * filter->left);
}

static void step_rest_by(const struct proven_filter *filter, const char *symbol, double value,
                         double half, double rise_per_day, struct hw_steps *steps)
{
    hw_step(steps, symbol, value, "mg/L", "saturating-filter",
            "%.10g * %.10g/24 / (%.10g - %.10g/24)", half, rise_per_day, vmax_by(filter, half),
            rise_per_day);
}

void step_rest(const struct proven_filter *filter, double rise_per_day, struct hw_steps *steps)
{
    struct proven_rest rest = proven_rest(filter, rise_per_day / 24);
    const double halves[] = {filter->half, at_low_end(), at_high_end()};
    if (isnan(rest.level)) {
        return;
    }
    for (size_t i = 0; i < sizeof halves / sizeof halves[0]; i++) {
        double level = rest_by(filter, halves[i], rise_per_day / 24);
        const char *symbol = i == 0               ? "settles"
                             : level == rest.low  ? "settles_low"
                             : level == rest.high ? "settles_high"
                                                  : "settles_between";
        if (!isnan(level)) {
            step_rest_by(filter, symbol, level, halves[i], rise_per_day, steps);
        }
    }
}
