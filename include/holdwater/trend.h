/* holdwater/trend.h - a record of readings: its slope, how sure that is, how long a level was held.
 *
 * A record is two arrays: when each reading was taken, in days from any moment, and what was read,
 * in any unit. All results are in that unit and in days.
 */
#ifndef HOLDWATER_TREND_H
#define HOLDWATER_TREND_H

#include "holdwater/status.h"

#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

/* How many readings a record may have. */
#define HW_TREND_READINGS_MIN 2
#define HW_TREND_READINGS_MAX 1000

/* Range of the days, on both sides of the moment they are counted from: more than 2700 years. */
#define HW_TREND_DAYS_MIN (-1e6)
#define HW_TREND_DAYS_MAX 1e6

/* Range of readings, limits, floors and ceilings, in any unit. */
#define HW_TREND_VALUE_MIN (-1e12)
#define HW_TREND_VALUE_MAX 1e12

/* Longest time that may be between two readings of a run, in days. */
#define HW_TREND_GAP_MAX 1e6

/* hw_trend_slope - the line through a record that wild readings do not turn.
 *
 * Given
 *   days       of each reading, HW_TREND_DAYS_MIN to HW_TREND_DAYS_MAX, in any order
 *   values     what was read, HW_TREND_VALUE_MIN to HW_TREND_VALUE_MAX
 *   n          readings, HW_TREND_READINGS_MIN to HW_TREND_READINGS_MAX
 * Returned
 *   slope      change a day
 *   intercept  value of the line at day 0
 * Status
 *   HW_STATUS_OK
 *   HW_STATUS_NONE: all readings have one time, or times lie so near that the slope is infinite
 *   HW_STATUS_RANGE
 * Notes
 *  1. slope: the median of the slopes between any two readings of different times; of an even
 *     number the mean of the two in the middle. intercept = median(values) - slope x median(days).
 *  2. Chosen for records of water: it asks for no normal errors, and about 29 readings of 100 can
 *     be wild before it breaks (recalled).
 *  3. A kit's steps make ties: many slopes of 0, and jumps. hw_trend_interval tells what the slope
 *     is worth.
 *  4. Not modelled: what is not a straight line, such as decay; seasons and hours of the day.
 *  5. No reading is stored: the slope of each pair is worked out up to 17 times. 1000 readings take
 *     about a tenth of a second.
 * Source
 *   Theil 1950; Sen 1968, J. Am. Stat. Assoc. 63:1379. The line through the medians as scipy 1.10
 *   has it (theilslopes, method separate; code read).
 */
int hw_trend_slope(const double *days, const double *values, size_t n, double *slope,
                   double *intercept);

/* hw_trend_interval - between which slopes the true one lies, with 95 % confidence.
 *
 * Given
 *   days, values, n   as hw_trend_slope
 * Returned
 *   low, high         change a day
 * Status
 *   As hw_trend_slope.
 * Notes
 *  1. sigma^2 = (n(n - 1)(2n + 5) - sum of k(k - 1)(2k + 5) over the ties of days and of values)
 *     / 18, k readings being a tie. Of the N slopes between readings of different times, sorted and
 *     counted from 0, `low` is number max(round((N - z sigma) / 2) - 1, 0) and `high` number
 *     min(round((N + z sigma) / 2), N - 1); z is 1.959964, a half is rounded to even.
 *  2. Of few readings it says little: of three or four it cannot be wider than the slopes are.
 *  3. Where it holds 0 no trend can be told.
 * Source
 *   Sen 1968, J. Am. Stat. Assoc. 63:1379, equation 2.6; ranks as scipy 1.10 has them (code read).
 */
int hw_trend_interval(const double *days, const double *values, size_t n, double *low,
                      double *high);

/* hw_trend_days_to - days until a line meets a limit, from above or from below.
 *
 * Given
 *   level   of the line now, HW_TREND_VALUE_MIN to HW_TREND_VALUE_MAX
 *   slope   change a day, any finite number
 *   limit   HW_TREND_VALUE_MIN to HW_TREND_VALUE_MAX
 * Returned
 *   days    0 when the level is the limit
 * Status
 *   HW_STATUS_OK
 *   HW_STATUS_NONE: the line is level or leads away from the limit, or the days are beyond
 *   HW_TREND_DAYS_MAX
 *   HW_STATUS_RANGE
 * Notes
 *  1. days = (limit - level) / slope.
 *  2. A line says nothing of what comes long after the readings: do not ask for more than the time
 *     that they span.
 * Source
 *   A straight line.
 */
int hw_trend_days_to(double level, double slope, double limit, double *days);

/* Between what a level is held, and how long may pass between two readings. An edge counts as
 * inside; so does what is a billionth of it outside, which is the noise of reckoning. */
struct hw_trend_window {
    double floor, ceiling; /* floor <= ceiling; -INFINITY, INFINITY: none */
    double gap;            /* days, above 0, at most HW_TREND_GAP_MAX */
};

/* What ended the run before, or kept one from beginning. */
enum hw_trend_break {
    HW_TREND_BREAK_NONE = 0,  /* nothing: the run goes back to the first reading */
    HW_TREND_BREAK_BELOW = 1, /* a reading below the floor */
    HW_TREND_BREAK_ABOVE = 2, /* a reading above the ceiling */
    HW_TREND_BREAK_GAP = 3,   /* too long without a reading */
    HW_TREND_BREAK_UNTOLD = 4 /* a reading of which it cannot be told whether it was inside */
};

/* The unbroken run of readings inside the window that the last reading ends. */
struct hw_trend_run {
    double held;    /* days from its first to the last reading; 0 when that one is not inside */
    double longest; /* days, the longest time between two of its readings */
    size_t from;    /* its first reading; n when the last reading is not inside */
    size_t outside; /* readings outside the window in the whole record */
    size_t untold;  /* readings that may have been inside or outside, in the whole record */
    enum hw_trend_break by; /* what broke the run before it */
};

/* hw_trend_held - for how many unbroken days a level was held, up to the last reading.
 *
 * Given
 *   days, values, n   as hw_trend_slope, but from 1 reading on; each day not before the one before;
 *                     a value of NaN: something was read, and whether it was inside is not known
 *   window            floor, ceiling, and the longest time between readings
 * Returned
 *   run               all of it; with a status below 0 its times are NaN and its numbers 0
 * Status
 *   HW_STATUS_OK
 *   HW_STATUS_RANGE: as said above
 * Notes
 *  1. Counted from the first reading of the run, not from the one before: until a good reading is
 *     there, what the level was is not known.
 *  2. Counted to the last reading, not to now.
 *  3. Across a reading that is not known nothing is held: the run begins after it. For a reading of
 *     which no more is known than that it is below the floor, any value below the floor will do.
 *  4. Not modelled: what happened between two readings.
 * Source
 *   A definition.
 */
int hw_trend_held(const double *days, const double *values, size_t n,
                  const struct hw_trend_window *window, struct hw_trend_run *run);

#ifdef __cplusplus
}
#endif

#endif
