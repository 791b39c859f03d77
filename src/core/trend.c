/* trend.c - Theil's and Sen's slope and its interval, and runs of readings inside a window. */
#include "holdwater/trend.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

/* The quantile of the normal distribution with 2.5 % above it: 1.959964. */
static const double z95 = 1.959963984540054;

static bool in_range(const double *days, const double *values, size_t n, size_t least)
{
    if (n < least || n > HW_TREND_READINGS_MAX) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        if (!hw_within(days[i], HW_TREND_DAYS_MIN, HW_TREND_DAYS_MAX) ||
            !hw_within(values[i], HW_TREND_VALUE_MIN, HW_TREND_VALUE_MAX)) {
            return false;
        }
    }
    return true;
}

/* --- The slopes, in order --------------------------------------------------------------------- */

/* n readings have up to n(n - 1)/2 slopes: too many to keep. The one of a rank is found byte by
 * byte, from the highest, in as many passes: how many of those that begin as it does have each byte
 * next. The bits of doubles are brought into an order that is that of the numbers. */
static uint64_t ordered_bits(double x)
{
    uint64_t bits = 0;
    x += 0.0; /* -0 is 0 */
    memcpy(&bits, &x, sizeof bits);
    return bits >> 63 ? ~bits : bits | UINT64_C(1) << 63;
}

static double from_ordered(uint64_t bits)
{
    double x = 0;
    bits = bits >> 63 ? bits & ~(UINT64_C(1) << 63) : ~bits;
    memcpy(&x, &bits, sizeof x);
    return x;
}

static double slope_between(const double *days, const double *values, size_t i, size_t k)
{
    return (values[i] - values[k]) / (days[i] - days[k]);
}

static size_t count_slopes(const double *days, size_t n)
{
    size_t count = 0;
    for (size_t i = 1; i < n; i++) {
        for (size_t k = 0; k < i; k++) {
            count += days[i] != days[k] ? 1 : 0;
        }
    }
    return count;
}

/* Adds to bin[b] the slopes whose bits above `shift` + 8 are those of `prefix`, and whose next byte
 * is b. */
static void count_bytes(const double *days, const double *values, size_t n, uint64_t prefix,
                        unsigned shift, size_t bin[256])
{
    for (size_t i = 1; i < n; i++) {
        for (size_t k = 0; k < i; k++) {
            if (days[i] == days[k]) {
                continue;
            }
            uint64_t bits = ordered_bits(slope_between(days, values, i, k)) >> shift;
            if (bits >> 8 == prefix) {
                bin[bits & 255]++;
            }
        }
    }
}

/* The slope of a rank, counted from 0; there are more slopes than that. */
static double slope_of_rank(const double *days, const double *values, size_t n, size_t rank)
{
    uint64_t prefix = 0;
    for (unsigned shift = 64; shift > 0;) {
        size_t bin[256] = {0};
        shift -= 8;
        count_bytes(days, values, n, prefix, shift, bin);
        unsigned byte = 0;
        while (rank >= bin[byte]) {
            rank -= bin[byte++];
        }
        prefix = prefix << 8 | byte;
    }
    return from_ordered(prefix);
}

/* --- Medians ---------------------------------------------------------------------------------- */

/* The number of a rank, counted from 0; there are more numbers than that. */
static double number_of_rank(const double *x, size_t n, size_t rank)
{
    size_t i = 0;
    for (;; i++) {
        size_t below = 0;
        size_t same = 0;
        for (size_t k = 0; k < n; k++) {
            below += x[k] < x[i] ? 1 : 0;
            same += x[k] == x[i] ? 1 : 0;
        }
        if (below <= rank && rank < below + same) {
            return x[i];
        }
    }
}

static double median(const double *x, size_t n)
{
    double middle = number_of_rank(x, n, n / 2);
    return n % 2 == 1 ? middle : (number_of_rank(x, n, n / 2 - 1) + middle) / 2;
}

static double median_slope(const double *days, const double *values, size_t n, size_t slopes)
{
    double middle = slope_of_rank(days, values, n, slopes / 2);
    return slopes % 2 == 1 ? middle : (slope_of_rank(days, values, n, slopes / 2 - 1) + middle) / 2;
}

int hw_trend_slope(const double *days, const double *values, size_t n, double *slope,
                   double *intercept)
{
    *slope = *intercept = HW_NO_ANSWER;
    if (!in_range(days, values, n, HW_TREND_READINGS_MIN)) {
        return HW_STATUS_RANGE;
    }
    size_t slopes = count_slopes(days, n);
    double found = slopes > 0 ? median_slope(days, values, n, slopes) : HW_NO_ANSWER;
    double at_0 = median(values, n) - found * median(days, n);
    if (!isfinite(at_0)) { /* nor is it where the slope is not */
        return HW_STATUS_NONE;
    }
    *slope = found;
    *intercept = at_0;
    return HW_STATUS_OK;
}

/* --- The interval ----------------------------------------------------------------------------- */

/* The sum of k(k - 1)(2k + 5) over the ties: of each tie the first one counts it. */
static double ties(const double *x, size_t n)
{
    double sum = 0;
    for (size_t i = 0; i < n; i++) {
        size_t before = 0;
        double k = 0;
        for (size_t j = 0; j < n; j++) {
            before += j < i && x[j] == x[i] ? 1 : 0;
            k += x[j] == x[i] ? 1 : 0;
        }
        sum += before == 0 ? k * (k - 1) * (2 * k + 5) : 0;
    }
    return sum;
}

int hw_trend_interval(const double *days, const double *values, size_t n, double *low, double *high)
{
    *low = *high = HW_NO_ANSWER;
    if (!in_range(days, values, n, HW_TREND_READINGS_MIN)) {
        return HW_STATUS_RANGE;
    }
    size_t slopes = count_slopes(days, n);
    if (slopes == 0) {
        return HW_STATUS_NONE;
    }
    double count = (double)n;
    double sigma =
        sqrt((count * (count - 1) * (2 * count + 5) - ties(days, n) - ties(values, n)) / 18);
    double upper = fmin(rint(((double)slopes + z95 * sigma) / 2), (double)slopes - 1);
    double lower = fmax(rint(((double)slopes - z95 * sigma) / 2) - 1, 0);
    double ends[2] = {slope_of_rank(days, values, n, (size_t)lower),
                      slope_of_rank(days, values, n, (size_t)upper)};
    if (!isfinite(ends[0]) || !isfinite(ends[1])) {
        return HW_STATUS_NONE;
    }
    *low = ends[0];
    *high = ends[1];
    return HW_STATUS_OK;
}

int hw_trend_days_to(double level, double slope, double limit, double *days)
{
    *days = HW_NO_ANSWER;
    if (!hw_within(level, HW_TREND_VALUE_MIN, HW_TREND_VALUE_MAX) ||
        !hw_within(limit, HW_TREND_VALUE_MIN, HW_TREND_VALUE_MAX) || !isfinite(slope)) {
        return HW_STATUS_RANGE;
    }
    double time = level == limit ? 0 : (limit - level) / slope;
    if (!hw_within(time, 0, HW_TREND_DAYS_MAX)) {
        return HW_STATUS_NONE;
    }
    *days = time;
    return HW_STATUS_OK;
}

/* --- Held ------------------------------------------------------------------------------------- */

static bool above(double x, double limit)
{
    return x > limit + 1e-9 * fabs(limit);
}

/* Without a floor or a ceiling the other one alone counts. */
static bool window_in_range(const struct hw_trend_window *window)
{
    return window->floor <= window->ceiling && window->floor < (double)INFINITY &&
           window->ceiling > -(double)INFINITY && window->gap > 0 &&
           window->gap <= HW_TREND_GAP_MAX;
}

static bool ascending(const double *days, size_t n)
{
    for (size_t i = 1; i < n; i++) {
        if (days[i] < days[i - 1]) {
            return false;
        }
    }
    return true;
}

/* As in_range, but a reading may be one that cannot be told. */
static bool held_in_range(const double *days, const double *values, size_t n)
{
    for (size_t i = 0; i < n && n <= HW_TREND_READINGS_MAX; i++) {
        const double value = isnan(values[i]) ? 0 : values[i];
        if (!in_range(days + i, &value, 1, 1)) {
            return false;
        }
    }
    return n >= 1 && n <= HW_TREND_READINGS_MAX;
}

static enum hw_trend_break outside_by(double value, const struct hw_trend_window *window)
{
    if (isnan(value)) {
        return HW_TREND_BREAK_UNTOLD;
    }
    if (above(window->floor, value)) {
        return HW_TREND_BREAK_BELOW;
    }
    return above(value, window->ceiling) ? HW_TREND_BREAK_ABOVE : HW_TREND_BREAK_NONE;
}

int hw_trend_held(const double *days, const double *values, size_t n,
                  const struct hw_trend_window *window, struct hw_trend_run *run)
{
    *run = (struct hw_trend_run){.held = HW_NO_ANSWER, .longest = HW_NO_ANSWER};
    if (!held_in_range(days, values, n) || !window_in_range(window) || !ascending(days, n)) {
        return HW_STATUS_RANGE;
    }
    run->held = run->longest = 0;
    for (size_t i = 0; i < n; i++) {
        enum hw_trend_break by = outside_by(values[i], window);
        double apart = i > 0 ? days[i] - days[i - 1] : 0;
        if (by != HW_TREND_BREAK_NONE) {
            run->outside += by != HW_TREND_BREAK_UNTOLD ? 1 : 0;
            run->untold += by == HW_TREND_BREAK_UNTOLD ? 1 : 0;
            run->by = by;
            run->from = i + 1;
        } else if (above(apart, window->gap) && run->from < i) {
            run->by = HW_TREND_BREAK_GAP;
            run->from = i;
        }
        run->longest = run->from < i ? fmax(run->longest, apart) : 0;
    }
    run->held = run->from < n ? days[n - 1] - days[run->from] : 0;
    return HW_STATUS_OK;
}
