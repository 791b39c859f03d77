/* holdwater/ahead.h - total ammonia in the hours to come: a steady routine of food and changes, and
 * one filter that is known from one challenge.
 *
 * Nitrogen is counted as N: total ammonia, mg/L. Rates are mg/L in an hour.
 *
 * The filter takes vmax x C / (half + C) from water that holds C. It is the smallest model that
 * knows that a filter works the slower the less ammonia there is.
 */
#ifndef HOLDWATER_AHEAD_H
#define HOLDWATER_AHEAD_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Total ammonia of a reading, of new water, of a challenge, mg/L; of a level at which it rests; of
 * a limit. */
#define HW_AHEAD_NITROGEN_MIN 0.0
#define HW_AHEAD_NITROGEN_MAX 1e4
#define HW_AHEAD_LEVEL_MIN    0.0
#define HW_AHEAD_LEVEL_MAX    1e12

/* What comes into the water or goes out of it, mg/L an hour; and in one meal, mg/L. */
#define HW_AHEAD_RATE_MIN 0.0
#define HW_AHEAD_RATE_MAX 1e9
#define HW_AHEAD_MEAL_MIN 0.0
#define HW_AHEAD_MEAL_MAX 1e9

/* Ammonia at which the filter works at half of its highest rate, mg/L; that rate, mg/L an hour. */
#define HW_AHEAD_HALF_MIN 0.1
#define HW_AHEAD_HALF_MAX 5.0
#define HW_AHEAD_VMAX_MIN 0.0
#define HW_AHEAD_VMAX_MAX 1e3

/* The hours of a challenge; hours ahead; hours from one change to the next; meals in a day; new
 * water over water in the tank. */
#define HW_AHEAD_CHALLENGE_MIN 1.0
#define HW_AHEAD_CHALLENGE_MAX 336.0
#define HW_AHEAD_HOURS_MIN     0.0
#define HW_AHEAD_HOURS_MAX     744.0
#define HW_AHEAD_EVERY_MIN     1.0
#define HW_AHEAD_EVERY_MAX     1000.0
#define HW_AHEAD_MEALS_MIN     1
#define HW_AHEAD_MEALS_MAX     24
#define HW_AHEAD_SHARE_MIN     0.0
#define HW_AHEAD_SHARE_MAX     1.0

/* The part of a day's ammonia that comes promptly after the meals: 0.30 of the nitrogen eaten, of
 * 0.575 that the design figure 0.092 counts with. The rest comes evenly. */
#define HW_AHEAD_PROMPT (0.30 / 0.575)

/* Hours after a meal at which most ammonia leaves the fish. */
#define HW_AHEAD_MEAL_HOURS 6.0

/* What fish that are not fed give off, mg of nitrogen from a kg in an hour. */
#define HW_AHEAD_BASAL 2.3

/* What goes on in a tank, the same day after day. */
struct hw_ahead_tank {
    double even;  /* ammonia that comes evenly, HW_AHEAD_RATE_MIN to _MAX */
    double meal;  /* ammonia that comes promptly of each meal, HW_AHEAD_MEAL_MIN to _MAX */
    int meals;    /* in a day, at equal times, the first at hour 0; HW_AHEAD_MEALS_MIN to _MAX */
    double vmax;  /* the filter's highest rate, HW_AHEAD_VMAX_MIN (no filter) to _MAX */
    double half;  /* HW_AHEAD_HALF_MIN to _MAX */
    double share; /* of the water, changed at once; HW_AHEAD_SHARE_MIN (never) to _MAX */
    double every; /* hours, the first change after so many; HW_AHEAD_EVERY_MIN to _MAX */
    double fresh; /* ammonia in the new water, HW_AHEAD_NITROGEN_MIN to _MAX */
};

/* What comes of it, mg/L and hours: start + given - cleared + changed = then. */
struct hw_ahead_outlook {
    double then;            /* at the end */
    double peak, peak_hour; /* the highest on the way, and when it is first so high */
    double given;           /* what fish gave off */
    double cleared;         /* what the filter took */
    double changed;         /* what changes brought; below 0: what they took */
};

/* hw_ahead_vmax - the highest rate of a filter, from one challenge without fish.
 *
 * Given
 *   from     total ammonia at the start, mg/L, HW_AHEAD_NITROGEN_MIN to HW_AHEAD_NITROGEN_MAX
 *   to       at the end, the same range, above 0; half a step of the kit where it shows less
 *   hours    between the two, HW_AHEAD_CHALLENGE_MIN to HW_AHEAD_CHALLENGE_MAX
 *   half     HW_AHEAD_HALF_MIN to HW_AHEAD_HALF_MAX
 * Returned
 *   vmax     mg/L an hour
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE; HW_STATUS_NONE: nothing was cleared (to is 0, or not below
 *   from), or by a rate above HW_AHEAD_VMAX_MAX
 * Notes
 *  1. vmax = ((from - to) + half ln(from / to)) / hours: dC/dt = -vmax C / (half + C), integrated.
 *  2. A challenge that was clear before the end has a filter of a higher rate: this is at least.
 *  3. Not modelled: growth of the filter, nitrite, oxygen, temperature.
 * Source
 *   The integrated form of Michaelis and Menten (textbook); half is 0.3 to 2 mg/L in what was read.
 */
int hw_ahead_vmax(double from, double to, double hours, double half, double *vmax);

/* hw_ahead_settles - the total ammonia at which a steady load rests with a filter.
 *
 * Given
 *   rate     mg/L an hour that comes, HW_AHEAD_RATE_MIN to HW_AHEAD_RATE_MAX
 *   vmax     HW_AHEAD_VMAX_MIN to HW_AHEAD_VMAX_MAX
 *   half     HW_AHEAD_HALF_MIN to HW_AHEAD_HALF_MAX
 * Returned
 *   level    mg/L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE; HW_STATUS_NONE: it never rests, for rate is not below vmax by
 *   more than a thousand-millionth of it
 * Notes
 *  1. level = half x rate / (vmax - rate).
 *  2. A mean: with one meal a day it goes up to half again higher.
 * Source
 *   Conservation of nitrogen.
 */
int hw_ahead_settles(double rate, double vmax, double half, double *level);

/* hw_ahead_carried - the steady load that rests at a level: hw_ahead_settles backwards.
 *
 * Given
 *   level      mg/L, HW_AHEAD_LEVEL_MIN to HW_AHEAD_LEVEL_MAX
 *   vmax, half as hw_ahead_settles
 * Returned
 *   rate       mg/L an hour
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. rate = vmax x level / (half + level).
 * Source
 *   Conservation of nitrogen.
 */
int hw_ahead_carried(double level, double vmax, double half, double *rate);

/* hw_ahead_meals - how the ammonia of a day's food comes.
 *
 * Given
 *   rate     mg/L an hour, the mean of the day, HW_AHEAD_RATE_MIN to HW_AHEAD_RATE_MAX / 24
 *   meals    in a day, HW_AHEAD_MEALS_MIN to HW_AHEAD_MEALS_MAX
 * Returned
 *   even     mg/L an hour
 *   meal     mg/L of each meal
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. meal = 24 x rate x HW_AHEAD_PROMPT / meals, even = rate x (1 - HW_AHEAD_PROMPT).
 *  2. Read: gilthead bream gave off 30 % of the nitrogen eaten, flounder 21 to 23 and turbot 20 to
 *     21 % within 24 hours.
 * Source
 *   As told; the split is ours.
 */
int hw_ahead_meals(double rate, int meals, double *even, double *meal);

/* hw_ahead_level - total ammonia some hours ahead, and the highest on the way.
 *
 * Given
 *   tank      what goes on in it
 *   start     total ammonia now, mg/L, HW_AHEAD_NITROGEN_MIN to HW_AHEAD_NITROGEN_MAX
 *   hours     HW_AHEAD_HOURS_MIN to HW_AHEAD_HOURS_MAX
 * Returned
 *   outlook
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. dC/dt = even + k G2 - vmax C / (half + C), k = 1 / HW_AHEAD_MEAL_HOURS. A meal passes two
 *     steps in a row in the fish, dG1/dt = -k G1, dG2/dt = k G1 - k G2, and adds meal to G1. The
 *     routine has gone on for days at hour 0: G1 = meal / (1 - q) and G2 = k T meal q / (1 - q)^2
 *     just after the meal, q = exp(-k T), T = 24 / meals.
 *  2. A change is C + share (fresh - C). One that is due at the last hour itself is not yet made.
 *  3. The meals are exact; C is integrated by equal steps of Runge and Kutta's fourth order from
 *     one meal or change to the next: eight in an hour or more, 40 in the time half / vmax, but 60
 *     in an hour at most, and one in that time where it is shorter still. Good to 1e-8 of the peak
 *     where half / vmax is an hour or more.
 *  4. Not modelled: growth, loss and inhibition of the filter, ammonia that leaves to the air,
 *     nitrite, pH, oxygen.
 * Source
 *   reference rows by an independent integrator; hour of the highest after a meal 3 to 12 in what
 *   was read.
 */
int hw_ahead_level(const struct hw_ahead_tank *tank, double start, double hours,
                   struct hw_ahead_outlook *outlook);

/* hw_ahead_reach - when total ammonia first is at a limit or above it.
 *
 * Given
 *   tank, start, hours   as hw_ahead_level
 *   limit                mg/L, HW_AHEAD_LEVEL_MIN to HW_AHEAD_LEVEL_MAX
 * Returned
 *   hour                 0 to hours
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE; HW_STATUS_NONE: not within these hours
 * Notes
 *  1. As hw_ahead_level.
 * Source
 *   As hw_ahead_level.
 */
int hw_ahead_reach(const struct hw_ahead_tank *tank, double start, double limit, double hours,
                   double *hour);

#ifdef __cplusplus
}
#endif

#endif
