/* change_rounds.c - the reckoning of one row of water changes. */
#include "calc/change_rounds.h"

#include <math.h>

/* What the replacement lacks: it may hold some already. */
static void find_dose(const double in[], struct change_rounds *change)
{
    if (isnan(in[CHANGE_KEEP])) {
        return;
    }
    hw_change_fresh_needed(change->method, change->exchanged, change->now, in[CHANGE_KEEP],
                           &change->fresh_needed);
    if (above(change->fresh_needed, change->fresh)) {
        change->add = (change->fresh_needed - change->fresh) * change->water;
        change->liquid = change->add / in[CHANGE_STRENGTH];
    }
}

static void find_goal(const double in[], struct change_rounds *change)
{
    if (isnan(in[CHANGE_GOAL])) {
        return;
    }
    hw_change_exchange_needed(change->method, change->now, change->fresh, in[CHANGE_GOAL],
                              &change->exchange_needed);
    hw_change_rounds_needed(change->method, change->exchanged, change->now, change->fresh,
                            in[CHANGE_GOAL], &change->rounds_needed);
}

struct change_rounds change_rounds(const double in[])
{
    struct change_rounds change = {
        .method = (enum hw_change_method)in[CHANGE_METHOD],
        .rounds = (int)in[CHANGE_TIMES],
        .now = in[CHANGE_NOW],
        .fresh = in[CHANGE_FRESH],
        .fresh_needed = (double)NAN,
        .add = (double)NAN,
        .liquid = (double)NAN,
        .exchange_needed = (double)NAN,
        .rounds_needed = (double)NAN,
    };
    change.exchanged =
        isnan(in[CHANGE_TAKE]) ? in[CHANGE_SHARE] / 100 : in[CHANGE_TAKE] / in[CHANGE_VOLUME];
    change.water = isnan(in[CHANGE_TAKE]) ? change.exchanged * in[CHANGE_VOLUME] : in[CHANGE_TAKE];
    hw_change_kept(change.method, change.exchanged, &change.kept);
    hw_change_level(change.method, change.exchanged, change.rounds, change.now, change.fresh,
                    &change.after);
    change.lowest = change.after < change.now ? change.after : change.now;
    find_dose(in, &change);
    find_goal(in, &change);
    return change;
}
