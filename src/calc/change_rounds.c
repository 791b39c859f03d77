/* change_rounds.c - the reckoning of one row of water changes. */
#include "calc/change_rounds.h"

#include <math.h>

/* A difference of levels smaller than this share of them is no amount to weigh. */
static const double rounding = 1e-9;

/* What the replacement lacks: it may hold some already. */
static void find_dose(const double in[], struct change_rounds *change)
{
    if (isnan(in[KEEP])) {
        return;
    }
    hw_change_fresh_needed(change->method, change->exchanged, change->now, in[KEEP],
                           &change->fresh_needed);
    double lacking = change->fresh_needed - change->fresh;
    if (lacking > rounding * change->fresh_needed) {
        change->add = lacking * change->water;
        change->liquid = change->add / in[STRENGTH];
    }
}

static void find_goal(const double in[], struct change_rounds *change)
{
    if (isnan(in[GOAL])) {
        return;
    }
    hw_change_exchange_needed(change->method, change->now, change->fresh, in[GOAL],
                              &change->exchange_needed);
    hw_change_rounds_needed(change->method, change->exchanged, change->now, change->fresh, in[GOAL],
                            &change->rounds_needed);
}

struct change_rounds change_rounds(const double in[])
{
    struct change_rounds change = {
        .method = (enum hw_change_method)in[METHOD],
        .rounds = (int)in[TIMES],
        .now = in[NOW],
        .fresh = in[FRESH],
        .fresh_needed = (double)NAN,
        .add = (double)NAN,
        .liquid = (double)NAN,
        .exchange_needed = (double)NAN,
        .rounds_needed = (double)NAN,
    };
    change.exchanged = isnan(in[TAKE]) ? in[SHARE] / 100 : in[TAKE] / in[VOLUME];
    change.water = isnan(in[TAKE]) ? change.exchanged * in[VOLUME] : in[TAKE];
    hw_change_kept(change.method, change.exchanged, &change.kept);
    hw_change_level(change.method, change.exchanged, change.rounds, change.now, change.fresh,
                    &change.after);
    change.lowest = change.after < change.now ? change.after : change.now;
    find_dose(in, &change);
    find_goal(in, &change);
    return change;
}
