/* ahead.c - total ammonia ahead: the meals in closed form, the level by steps between what happens.
 */
#include "holdwater/ahead.h"

#include "core/bracket_kernel.h"
#include "core/no_answer.h"
#include "core/range.h"

#include <math.h>
#include <stdbool.h>

/* A load below the filter's highest rate by less than this share of it never rests: quotients
 * round. And a highest level is higher than an earlier one only by more than this share. */
static const double noise = 1e-9;
static const double alike = 1e-12;

static const double k = 1.0 / HW_AHEAD_MEAL_HOURS;

static bool is_nitrogen(double x)
{
    return hw_within(x, HW_AHEAD_NITROGEN_MIN, HW_AHEAD_NITROGEN_MAX);
}

static bool is_filter(double vmax, double half)
{
    return hw_within(vmax, HW_AHEAD_VMAX_MIN, HW_AHEAD_VMAX_MAX) &&
           hw_within(half, HW_AHEAD_HALF_MIN, HW_AHEAD_HALF_MAX);
}

static bool is_level(double x)
{
    return hw_within(x, HW_AHEAD_LEVEL_MIN, HW_AHEAD_LEVEL_MAX);
}

static bool are_meals(int meals)
{
    return meals >= HW_AHEAD_MEALS_MIN && meals <= HW_AHEAD_MEALS_MAX;
}

static bool is_tank(const struct hw_ahead_tank *tank)
{
    return hw_within(tank->even, HW_AHEAD_RATE_MIN, HW_AHEAD_RATE_MAX) &&
           hw_within(tank->meal, HW_AHEAD_MEAL_MIN, HW_AHEAD_MEAL_MAX) && are_meals(tank->meals) &&
           is_filter(tank->vmax, tank->half) &&
           hw_within(tank->share, HW_AHEAD_SHARE_MIN, HW_AHEAD_SHARE_MAX) &&
           hw_within(tank->every, HW_AHEAD_EVERY_MIN, HW_AHEAD_EVERY_MAX) &&
           is_nitrogen(tank->fresh);
}

/* --- Closed forms ----------------------------------------------------------------------------- */

int hw_ahead_vmax(double from, double to, double hours, double half, double *vmax)
{
    *vmax = HW_NO_ANSWER;
    if (!is_nitrogen(from) || !is_nitrogen(to) ||
        !hw_within(hours, HW_AHEAD_CHALLENGE_MIN, HW_AHEAD_CHALLENGE_MAX) ||
        !is_filter(HW_AHEAD_VMAX_MIN, half)) {
        return HW_STATUS_RANGE;
    }
    if (!(to > 0.0 && to < from)) {
        return HW_STATUS_NONE;
    }
    double rate = (from - to + half * log(from / to)) / hours;
    if (rate > HW_AHEAD_VMAX_MAX) {
        return HW_STATUS_NONE;
    }
    *vmax = rate;
    return HW_STATUS_OK;
}

int hw_ahead_settles(double rate, double vmax, double half, double *level)
{
    *level = HW_NO_ANSWER;
    if (!hw_within(rate, HW_AHEAD_RATE_MIN, HW_AHEAD_RATE_MAX) || !is_filter(vmax, half)) {
        return HW_STATUS_RANGE;
    }
    if (!(rate < vmax * (1.0 - noise))) {
        return HW_STATUS_NONE;
    }
    *level = half * rate / (vmax - rate);
    return HW_STATUS_OK;
}

static double taken(double level, double vmax, double half)
{
    return vmax * level / (half + level);
}

int hw_ahead_carried(double level, double vmax, double half, double *rate)
{
    *rate = HW_NO_ANSWER;
    if (!is_level(level) || !is_filter(vmax, half)) {
        return HW_STATUS_RANGE;
    }
    *rate = taken(level, vmax, half);
    return HW_STATUS_OK;
}

int hw_ahead_meals(double rate, int meals, double *even, double *meal)
{
    *even = *meal = HW_NO_ANSWER;
    if (!hw_within(rate, HW_AHEAD_RATE_MIN, HW_AHEAD_RATE_MAX / 24.0) || !are_meals(meals)) {
        return HW_STATUS_RANGE;
    }
    *meal = 24.0 * rate * HW_AHEAD_PROMPT / meals;
    *even = rate * (1.0 - HW_AHEAD_PROMPT);
    return HW_STATUS_OK;
}

/* --- The meals in the fish -------------------------------------------------------------------- */

/* Ammonia of meals that is still to come, in the first and in the second step, mg/L. */
struct gut {
    double first, second;
};

/* Some hours later, with no meal between; kept is exp(-k hours). */
static struct gut later(struct gut gut, double hours, double kept)
{
    struct gut then = {gut.first * kept, (gut.second + k * hours * gut.first) * kept};
    return then;
}

/* Just after one of many meals. */
static struct gut fed_for_days(const struct hw_ahead_tank *tank)
{
    double apart = 24.0 / tank->meals;
    double q = exp(-k * apart);
    struct gut gut = {tank->meal / (1.0 - q), k * apart * tank->meal * q / ((1.0 - q) * (1.0 - q))};
    return gut;
}

/* --- Steps ------------------------------------------------------------------------------------ */

/* One moment: what is in the water, what is still in the fish, and how fast the level rises. */
struct moment {
    double hour, level, slope;
    struct gut gut;
};

struct walk {
    const struct hw_ahead_tank *tank;
    struct moment now;
    double steps; /* in an hour */
    double limit; /* to look for; infinite: none */
    double reached;
    double eaten; /* what the meals have brought into the fish */
    struct hw_ahead_outlook outlook;
};

/* Without a filter no step waits for the level of the one before. */
static double slope(const struct hw_ahead_tank *tank, double level, double gut)
{
    double given = tank->even + k * gut;
    return tank->vmax > 0.0 ? given - taken(level, tank->vmax, tank->half) : given;
}

/* The level after a step, by what is in the second step of the fish in its middle and at its end.
 */
static double stepped(const struct hw_ahead_tank *tank, const struct moment *from, double hours,
                      double middle, double end)
{
    double k1 = from->slope;
    double k2 = slope(tank, from->level + hours / 2.0 * k1, middle);
    double k3 = slope(tank, from->level + hours / 2.0 * k2, middle);
    double k4 = slope(tank, from->level + hours * k3, end);
    return from->level + hours / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
}

/* A part of a step. */
static struct moment on_the_way(const struct hw_ahead_tank *tank, const struct moment *from,
                                double hours)
{
    double kept = exp(-k * hours / 2.0);
    struct gut middle = later(from->gut, hours / 2.0, kept);
    struct gut end = later(middle, hours / 2.0, kept);
    double level = stepped(tank, from, hours, middle.second, end.second);
    struct moment then = {from->hour + hours, level, slope(tank, level, end.second), end};
    return then;
}

static double how_steep(const struct moment *moment, double limit)
{
    (void)limit;
    return -moment->slope;
}

static double how_far(const struct moment *moment, double limit)
{
    return moment->level - limit;
}

/* Where in a step a measure comes to zero that is below it at the start and not at the end. */
static struct moment crossing(const struct walk *w, const struct moment *from,
                              const struct moment *to,
                              double (*measure)(const struct moment *moment, double limit))
{
    const double near = 1e-14; /* hours */
    struct moment found = *to;
    struct hw_bracket b = hw_bracket_between(0, measure(from, w->limit), to->hour - from->hour,
                                             measure(to, w->limit), near);
    while (hw_bracket_is_wide(&b)) {
        double at = hw_bracket_cut(&b);
        struct moment then = on_the_way(w->tank, from, at);
        double now = measure(&then, w->limit);
        hw_bracket_take(&b, at, now);
        found = now >= 0 ? then : found;
    }
    return found;
}

/* A highest point, which counts when it is higher than those before. */
static void note_high(struct walk *w, const struct moment *moment)
{
    if (moment->level > w->outlook.peak * (1.0 + alike)) {
        w->outlook.peak = moment->level;
        w->outlook.peak_hour = moment->hour;
    }
    if (isnan(w->reached) && moment->level >= w->limit) {
        w->reached = moment->hour;
    }
}

/* What lies in one step: a highest point, or where it comes to the limit. */
static void look_between(struct walk *w, const struct moment *from, const struct moment *to)
{
    bool over_the_top = from->slope > 0.0 && to->slope < 0.0;
    struct moment top = over_the_top ? crossing(w, from, to, how_steep) : *to;
    if (top.level >= w->limit) {
        w->reached = crossing(w, from, &top, how_far).hour;
    }
    if (over_the_top) {
        note_high(w, &top);
    }
}

/* One step, of which half keeps a share of what is in the fish. */
static void step_on(struct walk *w, double step, double kept)
{
    const struct hw_ahead_tank *tank = w->tank;
    struct gut middle = later(w->now.gut, step / 2.0, kept);
    struct gut end = later(middle, step / 2.0, kept);
    double level = stepped(tank, &w->now, step, middle.second, end.second);
    struct moment next = {w->now.hour + step, level, slope(tank, level, end.second), end};
    double given = tank->even + k * (w->now.gut.second + 4.0 * middle.second + end.second) / 6.0;
    w->outlook.cleared += step * given - (level - w->now.level);
    look_between(w, &w->now, &next);
    w->now = next;
}

/* To a later hour, before which neither meal nor change is due: in steps that are the same however
 * far it goes, so that a longer way finds the same highest point to the last bit, and a rest. */
static void walk_to(struct walk *w, double hour)
{
    double from_hour = w->now.hour;
    double step = 1.0 / w->steps;
    double kept = exp(-k * step / 2.0);
    long n = (long)floor((hour - from_hour) * w->steps);
    w->now.slope = slope(w->tank, w->now.level, w->now.gut.second);
    for (long i = 1; i <= n && isnan(w->reached); i++) {
        step_on(w, step, kept);
        w->now.hour = from_hour + (double)i * step;
    }
    double rest = hour - w->now.hour;
    if (rest > 0.0 && isnan(w->reached)) {
        step_on(w, rest, exp(-k * rest / 2.0));
    }
    w->now.hour = hour;
    note_high(w, &w->now);
}

static void change(struct walk *w)
{
    double moved = w->tank->share * (w->tank->fresh - w->now.level);
    w->outlook.changed += moved;
    w->now.level += moved;
    note_high(w, &w->now);
}

/* Eight in an hour are good to 1e-8 where the filter needs hours to halve what it works on; a quick
 * one needs more, and one of which none is known as many as keep the steps from running away. */
static double steps_in_an_hour(const struct hw_ahead_tank *tank)
{
    double quick = tank->vmax / tank->half;
    return fmax(fmin(fmax(8.0, 40.0 * quick), 60.0), quick);
}

static void walk(struct walk *w, double start, double hours)
{
    const struct hw_ahead_tank *tank = w->tank;
    int meals = 1;
    int changes = 1;
    w->now.hour = 0.0;
    w->now.level = start;
    w->now.gut = fed_for_days(tank);
    w->steps = steps_in_an_hour(tank);
    w->reached = HW_NO_ANSWER;
    w->eaten = w->now.gut.first + w->now.gut.second;
    w->outlook = (struct hw_ahead_outlook){.peak = start};
    note_high(w, &w->now);
    while (w->now.hour < hours && isnan(w->reached)) {
        double meal_at = tank->meal > 0.0 ? meals * 24.0 / tank->meals : hours;
        double change_at = tank->share > 0.0 ? changes * tank->every : hours;
        walk_to(w, fmin(fmin(meal_at, change_at), hours));
        if (meal_at == w->now.hour && meal_at < hours) {
            w->now.gut.first += tank->meal;
            w->eaten += tank->meal;
            meals++;
        }
        if (change_at == w->now.hour && change_at < hours) {
            change(w);
            changes++;
        }
    }
    w->outlook.then = w->now.level;
    w->outlook.given = tank->even * hours + w->eaten - w->now.gut.first - w->now.gut.second;
}

static const struct hw_ahead_outlook nothing = {HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
                                                HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER};

int hw_ahead_level(const struct hw_ahead_tank *tank, double start, double hours,
                   struct hw_ahead_outlook *outlook)
{
    struct walk w = {.tank = tank, .limit = (double)INFINITY};
    *outlook = nothing;
    if (!is_tank(tank) || !is_nitrogen(start) ||
        !hw_within(hours, HW_AHEAD_HOURS_MIN, HW_AHEAD_HOURS_MAX)) {
        return HW_STATUS_RANGE;
    }
    walk(&w, start, hours);
    *outlook = w.outlook;
    return HW_STATUS_OK;
}

int hw_ahead_reach(const struct hw_ahead_tank *tank, double start, double limit, double hours,
                   double *hour)
{
    struct walk w = {.tank = tank, .limit = limit};
    *hour = HW_NO_ANSWER;
    if (!is_tank(tank) || !is_nitrogen(start) || !is_level(limit) ||
        !hw_within(hours, HW_AHEAD_HOURS_MIN, HW_AHEAD_HOURS_MAX)) {
        return HW_STATUS_RANGE;
    }
    walk(&w, start, hours);
    *hour = w.reached;
    return isnan(w.reached) ? HW_STATUS_NONE : HW_STATUS_OK;
}
