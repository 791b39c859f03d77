/* ahead_days.c - the reckoning of the hours ahead, and its working. */
#include "calc/ahead_days.h"

#include "calc/free_ammonia.h"
#include "holdwater/ammonia.h"
#include "tables.h"

#include <math.h>

static double as_n(const double in[], double amount)
{
    return nitrogen_to_n((enum hw_nitrogen_basis)in[AHEAD_BASIS], amount);
}

static void find_production(const double in[], struct ahead_days *days)
{
    if (!isnan(in[AHEAD_RISE])) {
        days->production = as_n(in, in[AHEAD_RISE]) * in[AHEAD_VOLUME];
    } else if (!isnan(in[AHEAD_BIOMASS])) {
        hw_bioload_starved(in[AHEAD_BIOMASS], in[AHEAD_BASAL], &days->production);
    } else {
        hw_bioload_from_feed(in[AHEAD_FEED], in[AHEAD_PROTEIN] / 100, in[AHEAD_FACTOR],
                             &days->production);
    }
    hw_bioload_rise(days->production, in[AHEAD_VOLUME], &days->rise_per_day);
}

/* A filter that shows less than half a step of the kit may have left as much. */
static void find_filter(const double in[], struct ahead_days *days)
{
    double half_step = in[AHEAD_KIT_STEP] / 2;
    double left_over = in[AHEAD_CLEARED_TO] < half_step ? half_step : in[AHEAD_CLEARED_TO];
    const struct proven_filter challenge = {
        .from = as_n(in, in[AHEAD_CLEARED_FROM]),
        .to = as_n(in, left_over),
        .hours = in[AHEAD_CLEARED_IN],
        .half = in[AHEAD_HALF],
        .left = in[AHEAD_LEFT] / 100,
    };
    days->filter = proven_filter(&challenge);
    days->rest = proven_rest(&days->filter, days->rise_per_day / 24);
}

static void find_tank(const double in[], struct ahead_days *days)
{
    bool filter = !isnan(in[AHEAD_CLEARED_FROM]);
    days->tank = (struct hw_ahead_tank){
        .even = days->rise_per_day / 24,
        .meals = (int)in[AHEAD_MEALS],
        .vmax = filter ? days->filter.vmax : 0,
        .half = in[AHEAD_HALF],
        .share = in[AHEAD_SHARE] / 100,
        .every = in[AHEAD_EVERY],
        .fresh = as_n(in, in[AHEAD_NEW_TAN]),
    };
    if (!isnan(in[AHEAD_FEED])) {
        hw_ahead_meals(days->rise_per_day / 24, days->tank.meals, &days->tank.even,
                       &days->tank.meal);
    }
}

static bool same_tank(const struct hw_ahead_tank *a, const struct hw_ahead_tank *b)
{
    return a->even == b->even && a->meal == b->meal && a->meals == b->meals && a->vmax == b->vmax &&
           a->half == b->half && a->share == b->share && a->every == b->every &&
           a->fresh == b->fresh;
}

/* The hours themselves, unless another row has gone the same way. */
static void find_outlook(struct ahead_days *days, const struct ahead_days *other)
{
    bool same = other && days->start == other->start && days->hours == other->hours &&
                same_tank(&days->tank, &other->tank);
    if (same) {
        days->outlook = other->outlook;
    } else {
        hw_ahead_level(&days->tank, days->start, days->hours, &days->outlook);
    }
    if (same && days->limit == other->limit) {
        days->hours_to_limit = other->hours_to_limit;
    } else if (days->outlook.peak >= days->limit) {
        hw_ahead_reach(&days->tank, days->start, days->limit, days->hours, &days->hours_to_limit);
    }
}

static void find_feed(const double in[], struct ahead_days *days)
{
    double carried = proven_carried(&days->filter, days->limit);
    days->feed_for_limit =
        carried * 24 * in[AHEAD_VOLUME] / (1000 * in[AHEAD_PROTEIN] / 100 * in[AHEAD_FACTOR]);
}

static void find_free(const double in[], struct ahead_days *days)
{
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[AHEAD_TEMP], in[AHEAD_SALINITY],
                               &days->pk);
    days->free_peak = free_at(in[AHEAD_PH], days->pk, days->outlook.peak);
    days->fit_stretched = !isnan(days->free_peak) && status > 0;
}

struct ahead_days ahead_days_beside(const double in[], const struct ahead_days *other)
{
    struct ahead_days days = {.start = as_n(in, in[AHEAD_TAN]),
                              .hours = in[AHEAD_HOURS],
                              .production = NAN,
                              .hours_to_limit = NAN,
                              .pk = NAN};
    find_production(in, &days);
    find_filter(in, &days);
    find_tank(in, &days);
    days.published = long_limit(in[AHEAD_PH], in[AHEAD_TEMP], in[AHEAD_SALINITY]);
    days.limit = isnan(in[AHEAD_LIMIT]) ? days.published.total_n : in[AHEAD_LIMIT];
    find_outlook(&days, other);
    find_feed(in, &days);
    find_free(in, &days);
    return days;
}

struct ahead_days ahead_days(const double in[])
{
    return ahead_days_beside(in, NULL);
}

/* --- Working ---------------------------------------------------------------------------------- */

static void step_as_n(const double in[], const char *symbol, double amount, struct hw_steps *steps)
{
    hw_step(steps, symbol, as_n(in, amount), "mg/L", "iupac-weights", "%.10g * %.10g/%.10g", amount,
            HW_MOLAR_N, basis_molar((enum hw_nitrogen_basis)in[AHEAD_BASIS]));
}

static void step_production(const struct ahead_days *days, const double in[],
                            struct hw_steps *steps)
{
    if (!isnan(in[AHEAD_RISE])) {
        hw_step(steps, "production", days->production, "mg/d", "conservation",
                "%.10g * %.10g/%.10g * %.10g", in[AHEAD_RISE], HW_MOLAR_N,
                basis_molar((enum hw_nitrogen_basis)in[AHEAD_BASIS]), in[AHEAD_VOLUME]);
    } else if (!isnan(in[AHEAD_BIOMASS])) {
        hw_step(steps, "production", days->production, "mg/d", "flounder-excretion",
                "%.10g / 1000 * %.10g * 24", in[AHEAD_BIOMASS], in[AHEAD_BASAL]);
    } else {
        hw_step(steps, "production", days->production, "mg/d",
                in[AHEAD_FACTOR] == HW_BIOLOAD_FACTOR ? "feed-nitrogen" : "",
                "1000 * %.10g * %.10g / 100 * %.10g", in[AHEAD_FEED], in[AHEAD_PROTEIN],
                in[AHEAD_FACTOR]);
    }
    hw_step(steps, "rise_per_day", days->rise_per_day, "mg/L/d", "", "%.10g / %.10g",
            days->production, in[AHEAD_VOLUME]);
}

static void step_meals(const struct ahead_days *days, const double in[], struct hw_steps *steps)
{
    if (!isnan(in[AHEAD_FEED])) {
        hw_step(steps, "prompt_of_each_meal", days->tank.meal, "mg/L", "prompt-share",
                "%.10g * 0.30/0.575 / %d", days->rise_per_day, days->tank.meals);
        hw_step(steps, "even", days->tank.even, "mg/L/h", "prompt-share",
                "%.10g/24 * (1 - 0.30/0.575)", days->rise_per_day);
    } else {
        hw_step(steps, "even", days->tank.even, "mg/L/h", "", "%.10g/24", days->rise_per_day);
    }
}

static void step_filter(const struct ahead_days *days, const double in[], struct hw_steps *steps)
{
    if (isnan(in[AHEAD_CLEARED_FROM])) {
        return;
    }
    step_as_n(in, "cleared_from_as_n", in[AHEAD_CLEARED_FROM], steps);
    step_as_n(in, "cleared_to_as_n", fmax(in[AHEAD_CLEARED_TO], in[AHEAD_KIT_STEP] / 2), steps);
    step_vmax(&days->filter, steps);
    step_rest(&days->filter, days->rise_per_day, steps);
}

static void step_limit(const struct ahead_days *days, const double in[], struct hw_steps *steps)
{
    if (isnan(days->limit)) {
        return;
    }
    if (isnan(in[AHEAD_LIMIT])) {
        long_limit_work(&days->published, "limit_used", steps);
    } else {
        hw_step(steps, "limit_used", days->limit, "mg/L", "", "%.10g", in[AHEAD_LIMIT]);
    }
    if (!isnan(days->feed_for_limit)) {
        hw_step(steps, "feed_for_limit", days->feed_for_limit, "g/d", "saturating-filter",
                "%.10g * %.10g / (%.10g + %.10g) * 24 * %.10g / (1000 * %.10g/100 * %.10g)",
                days->filter.vmax, days->limit, days->filter.half, days->limit, in[AHEAD_VOLUME],
                in[AHEAD_PROTEIN], in[AHEAD_FACTOR]);
    }
    if (!isnan(days->hours_to_limit)) {
        hw_step(steps, "hours_to_limit", days->hours_to_limit, "h", "ahead-steps", "%.10g",
                days->hours_to_limit);
    }
}

/* What was found by steps of a few minutes stands as it is; where the nitrogen went adds up. */
static void step_balance(const struct ahead_days *days, const double in[], struct hw_steps *steps)
{
    const struct hw_ahead_outlook *o = &days->outlook;
    double even = days->tank.even * in[AHEAD_HOURS];
    hw_step(steps, "peak", o->peak, "mg/L", "ahead-steps", "%.10g", o->peak);
    if (!isnan(days->free_peak)) {
        step_pk_khoo("pk", days->pk, in[AHEAD_TEMP], in[AHEAD_SALINITY], steps);
        step_free_at("free_peak", days->free_peak, o->peak, days->pk, in[AHEAD_PH], steps);
    }
    hw_step(steps, "given_off", o->given, "mg/L", "conservation", "%.10g * %.10g + %.10g",
            days->tank.even, in[AHEAD_HOURS], o->given - even);
    hw_step(steps, "filter_took", o->cleared, "mg/L", "ahead-steps", "%.10g", o->cleared);
    hw_step(steps, "changes_brought", o->changed, "mg/L", "ahead-steps", "%.10g", o->changed);
    hw_step(steps, "tan_then", o->then, "mg/L", "conservation", "%.10g + %.10g - (%.10g) + (%.10g)",
            days->start, o->given, o->cleared, o->changed);
}

void ahead_work(const double in[], struct hw_steps *steps)
{
    struct ahead_days days = ahead_days(in);
    step_as_n(in, "tan_as_n", in[AHEAD_TAN], steps);
    step_production(&days, in, steps);
    step_meals(&days, in, steps);
    step_filter(&days, in, steps);
    step_limit(&days, in, steps);
    step_balance(&days, in, steps);
}
