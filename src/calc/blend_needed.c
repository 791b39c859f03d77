/* blend_needed.c - looks for the smallest change that does it. */
#include "calc/blend_needed.h"

#include "calc/long_limit.h"
#include "calc/shared.h"
#include "core/ammonia_kernel.h"
#include "core/blend_kernel.h"
#include "core/bracket_kernel.h"
#include "tables.h"

#include <math.h>

/* Free ammonia against the share need not fall all the way: in a sour tank it rises first. So the
 * shares are looked at from all of the water down, in steps, and the first that does not do it
 * bounds the answer from below. Between two of them it can fail to do it unseen only by a fraction
 * of a per cent. Where a limit jumps, at a salinity between the two waters, by more: there the
 * steps are finer, around the jump and in the last step. */
enum { STEPS = 10, FINE_STEPS = 100, JUMPS = 2, LOOKS = STEPS + FINE_STEPS / STEPS + 2 * JUMPS };

/* Of numbers, without a call. */
static double smaller(double a, double b)
{
    return a < b ? a : b;
}

/* The highest pH that the mixture may have. */
static double ph_allowed(double allowed, const struct hw_blend *blend, double tan)
{
    double ph = smaller(HW_PH_MAX, long_limit_ph(tan, blend->temp, blend->salinity));
    if (allowed < tan) {
        double pk = hw_khoo1977_pk(blend->temp, blend->salinity);
        ph = smaller(ph, hw_ph_of(allowed / tan, pk));
    }
    return ph > HW_PH_MIN ? ph : HW_PH_MIN;
}

/* How far a mixture is from doing it, by its carbon and by the air: above 0 by either it does not.
 * No pH is looked for: the mixture is at most at the pH allowed when at that pH it would hold no
 * more carbon than it does, and be in balance with no more carbon dioxide than the air has. Water
 * that cannot have that pH at all is below it. */
enum { BY_CARBON, BY_AIR, WAYS };

struct excess {
    double by[WAYS];
};

/* Near ln(a / b) where a is near b, with its sign; from -2 to 2. */
static double apart(double a, double b)
{
    return 2 * (a - b) / (a + b);
}

static struct excess excess_of(const struct blend_waters *w, const struct hw_blend *b,
                               const struct hw_carbonate_water *water)
{
    static const struct excess fine = {{-2, -2}};
    static const struct excess never = {{2, 2}};
    const struct blend_water *tank = &w->tank;
    const struct blend_water *fresh = &w->fresh;
    double tan = hw_blend_level_of(b, tank->tan, fresh->tan);
    double alkalinity = hw_blend_level_of(b, tank->alkalinity, fresh->alkalinity);
    double carbon = hw_blend_level_of(b, tank->carbon, fresh->carbon);
    double most = NAN;
    double air = NAN;
    if (!(tan > 0)) {
        return fine;
    }
    if (!(w->free_allowed > 0)) {
        return never; /* there was none, and there is some, however sour the water is */
    }
    double ph = ph_allowed(w->free_allowed, b, tan);
    if (hw_carbonate_water_read(water, ph, alkalinity, tan, &most, &air) < 0) {
        return fine;
    }
    return (struct excess){{apart(most, carbon), apart(air, w->air)}};
}

static double larger(struct excess excess)
{
    return -smaller(-excess.by[BY_CARBON], -excess.by[BY_AIR]);
}

bool blend_does_it(const struct blend_waters *w, const struct hw_blend *blend,
                   const struct hw_carbonate_water *water)
{
    return !above(larger(excess_of(w, blend, water)), 0);
}

bool blend_is_water(const struct hw_blend *blend, const struct hw_carbonate_water *water)
{
    return water->temp == blend->temp && water->salinity == blend->salinity;
}

const struct hw_carbonate_water *blend_ready(const struct blend_waters *w,
                                             const struct hw_blend *blend,
                                             struct hw_carbonate_water *made)
{
    if (blend_is_water(blend, w->tank.ready)) {
        return w->tank.ready;
    }
    if (blend_is_water(blend, w->fresh.ready)) {
        return w->fresh.ready;
    }
    hw_carbonate_water(blend->temp, blend->salinity, made);
    return made;
}

/* Two waters, what of them does not hang on the share, and the water of the last share tried. */
struct search {
    const struct blend_waters *w;
    struct hw_blend_pair pair;
    struct hw_carbonate_water last;
};

static struct search search_of(const struct blend_waters *w)
{
    const struct hw_carbonate_water *tank = w->tank.ready;
    const struct hw_carbonate_water *fresh = w->fresh.ready;
    struct search search = {
        .w = w,
        .pair = hw_blend_pair_of(tank->temp, tank->salinity, fresh->temp, fresh->salinity),
        .last.temp = NAN,
    };
    return search;
}

/* A share, and how far it is from doing it. */
struct tried {
    double share;
    struct excess over;
};

static bool does_it(const struct tried *tried)
{
    return !(larger(tried->over) > 0);
}

/* The last shares tried, of which the border is foretold. */
enum { TRIES = 4 };

struct tries {
    struct tried at[TRIES]; /* the last first */
    int n;
};

static struct tried try_share(struct search *s, double share)
{
    struct hw_blend b;
    hw_blend_mixed(&s->pair, share, &b);
    struct tried tried = {share, excess_of(s->w, &b, blend_ready(s->w, &b, &s->last))};
    return tried;
}

static void keep(struct tries *tries, struct tried tried)
{
    tries->n = tries->n < TRIES ? tries->n + 1 : TRIES;
    for (int i = tries->n - 1; i > 0; i--) {
        tries->at[i] = tries->at[i - 1];
    }
    tries->at[0] = tried;
}

/* The share as a polynomial of one excess, by Neville's rule, where that is 0. */
static double foretold(const struct tries *tries, int way)
{
    double share[TRIES];
    for (int i = 0; i < TRIES; i++) {
        share[i] = tries->at[i].share;
    }
    for (int k = 1; k < tries->n; k++) {
        for (int i = 0; i + k < tries->n; i++) {
            double here = tries->at[i].over.by[way];
            double there = tries->at[i + k].over.by[way];
            share[i] += here * (share[i + 1] - share[i]) / (here - there);
        }
    }
    return share[0];
}

/* Where one excess passes 0 between a share that does not do it and one that does; the share that
 * does not where it does so by the other excess. */
static double passes(const struct tries *tries, const struct tried *bad, const struct tried *good,
                     int way)
{
    double a = bad->over.by[way];
    double b = good->over.by[way];
    if (!(a > 0)) {
        return bad->share;
    }
    double share = foretold(tries, way);
    return share > bad->share && share < good->share
               ? share
               : bad->share + (good->share - bad->share) * a / (a - b);
}

/* At the border as well as can be told: the last digit of a pH moves an excess by as much. */
static bool is_border(const struct tried *tried)
{
    const double of_ph = 4e-15;
    return does_it(tried) && larger(tried->over) >= -of_ph;
}

/* The border between a share that does not do it and one that does, the last two tried. Each excess
 * is smooth, their larger one is not. What is returned does it. */
static double border(struct search *s, struct tries *tries, struct hw_carbonate_water *mixed)
{
    const double close_enough = 1e-14;
    struct tried bad = tries->at[0];
    struct tried good = tries->at[1];
    struct hw_bracket b = hw_bracket_between(bad.share, -larger(bad.over), good.share,
                                             -larger(good.over), close_enough);
    while (hw_bracket_is_wide(&b) && !is_border(&good)) {
        double guess =
            fmax(passes(tries, &bad, &good, BY_CARBON), passes(tries, &bad, &good, BY_AIR));
        struct tried here = try_share(s, hw_bracket_cut_at(&b, guess));
        hw_bracket_take(&b, here.share, -larger(here.over));
        if (does_it(&here)) {
            good = here;
            *mixed = s->last;
        } else {
            bad = here;
        }
        keep(tries, here);
    }
    return good.share;
}

/* --- Where to look ---------------------------------------------------------------------------- */

/* The shares to look at, the largest first. */
struct looks {
    double share[LOOKS];
    int n;
};

static void put_look(struct looks *looks, double share)
{
    int i = looks->n++;
    for (; i > 0 && looks->share[i - 1] < share; i--) {
        looks->share[i] = looks->share[i - 1];
    }
    looks->share[i] = share;
}

/* The fine steps around where the mixture comes to the salinity at which a limit begins or ends. */
static bool put_jump(struct looks *looks, const struct blend_waters *w, enum hw_limit_key limit)
{
    double from = w->tank.ready->salinity;
    double mass_share = (just_below_limit(limit) - from) / (w->fresh.ready->salinity - from);
    if (!(mass_share > 0 && mass_share < 1)) {
        return false;
    }
    double tank = w->tank.ready->density;
    double fresh = w->fresh.ready->density;
    double share = mass_share * tank / (fresh - mass_share * (fresh - tank));
    double step = floor(share * FINE_STEPS);
    put_look(looks, fmin(step + 1, FINE_STEPS) / FINE_STEPS);
    put_look(looks, step / FINE_STEPS);
    return true;
}

static void put_looks(struct looks *looks, const struct blend_waters *w)
{
    for (int i = STEPS; i >= 0; i--) {
        put_look(looks, (double)i / STEPS);
    }
    bool fresh = put_jump(looks, w, HW_LIMIT_FRESH_BELOW);
    bool salt = put_jump(looks, w, HW_LIMIT_SALT_FROM);
    for (int i = 1; (fresh || salt) && i < FINE_STEPS / STEPS; i++) {
        put_look(looks, (double)i / FINE_STEPS);
    }
}

bool blend_is_possible(const struct blend_waters *w)
{
    struct search search = search_of(w);
    const struct tried all = try_share(&search, 1);
    return does_it(&all);
}

double blend_needed(const struct blend_waters *w, bool *settled, struct hw_carbonate_water *mixed)
{
    struct search search = search_of(w);
    struct looks looks = {.n = 0};
    struct tries tries = {.n = 0};
    put_looks(&looks, w);
    *settled = false;
    for (int i = 0; i < looks.n; i++) {
        keep(&tries, try_share(&search, looks.share[i]));
        if (does_it(&tries.at[0])) {
            *mixed = search.last;
            continue;
        }
        if (i == 0) {
            return (double)NAN;
        }
        *settled = looks.share[i] > 0 && !above(larger(try_share(&search, 0).over), 0);
        return border(&search, &tries, mixed);
    }
    *settled = true;
    return 0;
}
