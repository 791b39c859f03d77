/* change_rounds.c - the reckoning of one row of water changes. */
#include "calc/change_rounds.h"

#include <math.h>

/* What the replacement lacks: it may hold some already. */
static void find_dose(const double in[], struct change_rounds *change)
{
    change->label = (struct product_label){in[CHANGE_LABEL_LIQUID], in[CHANGE_LABEL_MASS],
                                           in[CHANGE_LABEL_PER], in[CHANGE_LABEL_RAISES]};
    double by_label = product_label_strength(&change->label);
    change->strength = isnan(in[CHANGE_STRENGTH]) ? by_label : in[CHANGE_STRENGTH];
    change->share = product_label_share(&change->label);
    if (isnan(in[CHANGE_KEEP])) {
        return;
    }
    hw_change_fresh_needed(change->method, change->exchanged, change->now, in[CHANGE_KEEP],
                           &change->new_needed);
    if (above(change->new_needed, change->new_level)) {
        change->add = (change->new_needed - change->new_level) * change->water;
        change->liquid = change->add / change->strength;
        change->mass = change->add / 1000 / change->share;
    }
}

static void find_goal(const double in[], struct change_rounds *change)
{
    double goal = in[CHANGE_GOAL];
    if (isnan(goal)) {
        return;
    }
    hw_change_exchange_needed(change->method, change->now, change->new_level, goal,
                              &change->exchange_needed);
    if (!change->by_goal) {
        hw_change_rounds_needed(change->method, change->exchanged, change->now, change->new_level,
                                goal, &change->rounds_needed);
    } else if (!isnan(change->exchange_needed)) {
        change->rounds_needed = change->exchange_needed > 0 ? 1 : 0;
        change->after = goal;
    }
}

/* The size of one round; NaN when it hangs on the goal, or was not told. */
static void find_size(const double in[], struct change_rounds *change)
{
    if (!isnan(in[CHANGE_TAKE])) {
        change->exchanged = in[CHANGE_TAKE] / in[CHANGE_VOLUME];
        change->water = in[CHANGE_TAKE];
    } else {
        change->exchanged = in[CHANGE_SHARE] / 100;
        change->water = change->exchanged * in[CHANGE_VOLUME];
        change->by_goal = isnan(change->exchanged);
    }
}

/* The words of `kind` are those of a medicine without formalin. */
static enum medicine_kind kind_of(double word)
{
    static const enum medicine_kind kinds[] = {KIND_IONIC, KIND_AMINE, KIND_CHELATED, KIND_DYE,
                                               KIND_OTHER};
    return isnan(word) ? KIND_UNSAID : kinds[(int)word];
}

static void find_medicine(const double in[], struct change_rounds *change)
{
    bool kept = !isnan(in[CHANGE_KEEP]);
    double highest = fmax(fmax(change->now, change->after), change->new_level);
    change->highest = fmax(highest, in[CHANGE_KEEP]); /* of a number and none, the number */
    change->medicine = (struct medicine){
        .kind = kind_of(in[CHANGE_KIND]),
        .to_pour = kept || above(change->new_level, change->now),
        .biofilter = in[CHANGE_BIOFILTER] == YES,
        .floor = in[CHANGE_FLOOR],
        .ceiling = in[CHANGE_CEILING],
        .salinity = in[CHANGE_SALINITY],
        .temp = NAN,
        .level = in[CHANGE_KEEP],
        .rise_a_day = (kept ? in[CHANGE_KEEP] : change->after) - change->now,
    };
    change->window = medicine_window(&change->medicine);
}

struct change_rounds change_rounds(const double in[])
{
    struct change_rounds change = {
        .method = (enum hw_change_method)in[CHANGE_METHOD],
        .rounds = (int)in[CHANGE_TIMES],
        .now = in[CHANGE_NOW],
        .new_level = in[CHANGE_NEW],
        .kept = (double)NAN,
        .after = (double)NAN,
        .new_needed = (double)NAN,
        .add = (double)NAN,
        .liquid = (double)NAN,
        .mass = (double)NAN,
        .exchange_needed = (double)NAN,
        .rounds_needed = (double)NAN,
    };
    find_size(in, &change);
    hw_change_kept(change.method, change.exchanged, &change.kept);
    hw_change_level(change.method, change.exchanged, change.rounds, change.now, change.new_level,
                    &change.after);
    find_goal(in, &change);
    change.lowest = change.after < change.now ? change.after : change.now;
    find_dose(in, &change);
    find_medicine(in, &change);
    return change;
}
