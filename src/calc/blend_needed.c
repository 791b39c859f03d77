/* blend_needed.c - looks for the smallest change that does it. */
#include "calc/blend_needed.h"

#include "calc/long_limit.h"
#include "calc/shared.h"
#include "holdwater/blend.h"
#include "tables.h"

#include <math.h>

/* Free ammonia against the share need not fall all the way: in a sour tank it rises first. So the
 * shares are looked at from all of the water down, in steps, and the first that does not do it
 * bounds the answer from below. Between two of them it can fail to do it unseen only by a fraction
 * of a per cent; where a limit jumps, at a salinity between the two waters, by more, so that there
 * the steps are finer. */
enum { STEPS = 10, FINE_STEPS = 100 };
static const double close_enough = 1e-13;

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = NAN;
    hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

/* The highest pH that the mixture may have. */
static double ph_allowed(double allowed, const struct hw_blend *blend, double tan)
{
    double ph = fmin(HW_PH_MAX, long_limit_ph(tan, blend->temp, blend->salinity));
    if (allowed < tan) {
        double pk = NAN;
        double reached = NAN;
        hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, blend->temp, blend->salinity, &pk);
        hw_ammonia_ph_at(allowed / tan, pk, &reached);
        ph = fmin(ph, reached); /* of no number, where none is allowed, and a number, the number */
        ph = allowed > 0 ? ph : HW_PH_MIN;
    }
    return fmax(HW_PH_MIN, ph);
}

/* How far a change is from doing it: above 0 it does not. No pH is looked for: the mixture is at
 * most at the pH allowed when at that pH it would hold no more carbon than it does, and be in
 * balance with no more carbon dioxide than the air has. Water that cannot have that pH at all is
 * below it. */
static double excess_at(const struct blend_waters *w, double share)
{
    const struct blend_water *tank = &w->tank;
    const struct blend_water *fresh = &w->fresh;
    struct hw_blend b;
    hw_blend_mix(share, tank->temp, tank->salinity, fresh->temp, fresh->salinity, &b);
    double tan = level_of(&b, tank->tan, fresh->tan);
    double alkalinity = level_of(&b, tank->alkalinity, fresh->alkalinity);
    double carbon = level_of(&b, tank->carbon, fresh->carbon);
    double most = NAN;
    double air = NAN;
    if (!(tan > 0)) {
        return -1;
    }
    double ph = ph_allowed(w->free_allowed, &b, tan);
    hw_carbonate_carbon(ph, alkalinity, tan, b.temp, b.salinity, &most);
    if (hw_carbonate_air(ph, alkalinity, tan, b.temp, b.salinity, &air) < 0) {
        return -1;
    }
    return fmax(log(most / carbon), log(air / w->air));
}

bool blend_does_it(const struct blend_waters *w, double share)
{
    return !above(excess_at(w, share), 0);
}

/* The border between a share that does not do it and one that does: by secants that keep the two
 * ends apart (the Illinois rule), halving every eighth time, so that it always ends. What
 * is returned does it. */
static double border(const struct blend_waters *w, double bad, double good)
{
    double over = excess_at(w, bad);
    double under = excess_at(w, good);
    int side = 0; /* which end moved last: -1 bad, 1 good */
    for (int i = 1; good - bad > close_enough && !(side > 0 && under > -close_enough); i++) {
        double step = i % 8 == 0 ? 0.5 : fmin(over / (over - under), 0.99);
        double middle = bad + (good - bad) * step;
        double excess = excess_at(w, middle);
        if (excess > 0) {
            bad = middle;
            over = excess;
            under /= side < 0 ? 2 : 1;
            side = -1;
        } else {
            good = middle;
            under = excess;
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

static bool has_jump(const struct blend_waters *w)
{
    double a = w->tank.salinity;
    double b = w->fresh.salinity;
    return lies_between(hw_limits[HW_LIMIT_FRESH_BELOW].value, a, b) ||
           lies_between(hw_limits[HW_LIMIT_SALT_FROM].value, a, b);
}

double blend_needed(const struct blend_waters *w)
{
    int steps = has_jump(w) ? FINE_STEPS : STEPS;
    double good = 1;
    if (excess_at(w, good) > 0) {
        return (double)NAN;
    }
    for (int i = steps - 1; i >= 0; i--) {
        double share = (double)i / steps;
        if (excess_at(w, share) > 0) {
            return border(w, share, good);
        }
        good = share;
    }
    return 0;
}
