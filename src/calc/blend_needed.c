/* blend_needed.c - looks for the smallest change that does it. */
#include "calc/blend_needed.h"

#include "calc/free_ammonia.h"
#include "calc/long_limit.h"
#include "tables.h"

#include <math.h>

/* Free ammonia against the share need not fall all the way: in a sour tank it rises first. So the
 * shares are looked at from all of the water down, in steps, and the first that does not do it
 * bounds the answer from below. Between two of them it can do so unseen only for a step or by a
 * fraction of a per cent; where a limit jumps, at a salinity between the two waters, by more, so
 * that there the steps are finer. */
enum { STEPS = 25, FINE_STEPS = 200 };
static const double close_enough = 1e-9;

double blend_free_allowed(const struct blend_states *s)
{
    return s->free_before * (1 + hw_limits[HW_LIMIT_BLEND_RISE].value / 100);
}

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = NAN;
    hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

/* Of one state of the mixture. No answer is no good. */
static double ratio_at(const struct blend_states *s, const struct hw_blend *blend, double tan,
                       double ph)
{
    double pk = NAN;
    hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, blend->temp, blend->salinity, &pk);
    double free = free_at(ph, pk, tan);
    struct long_limit limit = long_limit(ph, blend->temp, blend->salinity);
    double worst = fmax(tan / limit.total_n, free / blend_free_allowed(s));
    return isnan(free) ? (double)INFINITY : worst;
}

double blend_worst_at(const struct blend_states *s, const double in[], double share)
{
    struct hw_blend b;
    hw_blend_mix(share, in[BLEND_TEMP], in[BLEND_SALINITY], in[BLEND_NEW_TEMP],
                 in[BLEND_NEW_SALINITY], &b);
    double tan = level_of(&b, s->tan_before, s->tan_new);
    double alkalinity = level_of(&b, in[BLEND_ALKALINITY], in[BLEND_NEW_ALKALINITY]);
    double carbon = level_of(&b, s->carbon_before, s->carbon_new);
    double mixed = NAN;
    double aired = NAN;
    if (!(tan > 0)) {
        return 0;
    }
    hw_carbonate_ph(alkalinity, carbon, tan, b.temp, b.salinity, &mixed);
    hw_carbonate_ph_in_air(alkalinity, in[BLEND_AIR_CO2], tan, b.temp, b.salinity, &aired);
    return fmax(ratio_at(s, &b, tan, mixed), ratio_at(s, &b, tan, aired));
}

/* The border between a share that does not do it and one that does: by secants that keep the two
 * ends apart (the Illinois rule), halving every third time and where one end has no number, so that
 * it always ends. What is returned does it. */
static double border(const struct blend_states *s, const double in[], double bad, double good)
{
    double over = blend_worst_at(s, in, bad) - 1;
    double under = blend_worst_at(s, in, good) - 1;
    int side = 0; /* which end moved last: -1 bad, 1 good */
    for (int i = 0; good - bad > close_enough; i++) {
        bool halve = i % 3 == 2 || !isfinite(over);
        double middle = bad + (good - bad) * (halve ? 0.5 : fmin(over / (over - under), 0.99));
        double ratio = blend_worst_at(s, in, middle);
        if (above(ratio, 1)) {
            bad = middle;
            over = ratio - 1;
            under /= side < 0 ? 2 : 1;
            side = -1;
        } else {
            good = middle;
            under = ratio - 1;
            over /= side > 0 ? 2 : 1;
            side = 1;
        }
    }
    return good;
}

static bool lies_between(double x, double a, double b)
{
    return (a < x) != (b < x);
}

static bool has_jump(const double in[])
{
    double a = in[BLEND_SALINITY];
    double b = in[BLEND_NEW_SALINITY];
    return lies_between(hw_limits[HW_LIMIT_FRESH_BELOW].value, a, b) ||
           lies_between(hw_limits[HW_LIMIT_SALT_FROM].value, a, b);
}

static double smallest(const struct blend_states *s, const double in[])
{
    int steps = has_jump(in) ? FINE_STEPS : STEPS;
    double good = 1;
    for (int i = steps - 1; i >= 0; i--) {
        double share = (double)i / steps;
        if (above(blend_worst_at(s, in, share), 1)) {
            return border(s, in, share, good);
        }
        good = share;
    }
    return 0;
}

void blend_find_needed(struct blend_states *s, const double in[])
{
    if (!(s->tan_before > 0) && !(s->tan_new > 0)) {
        return;
    }
    s->settled = !above(blend_worst_at(s, in, 0), 1);
    s->need = BLEND_NEED_NONE;
    if (!above(blend_worst_at(s, in, 1), 1)) {
        s->need = BLEND_NEED_FOUND;
        s->needed = smallest(s, in);
    }
}
