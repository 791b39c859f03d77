/* test_trend_core.c - the slope of a record, its interval, and how long a level was held. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/trend.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
enum { NOT_NUMBERS = sizeof not_numbers / sizeof *not_numbers, N = 7 };

static const double days[N] = {0, 1.1, 2.3, 2.9, 4.2, 5.05, 6.15};
static const double values[N] = {0.11, 0.135, 0.152, 0.213, 0.224, 0.271, 0.305};

static void no_line(const double *d, const double *v, size_t n, int status)
{
    double slope = 1;
    double intercept = 1;
    double low = 1;
    double high = 1;
    assert_status(hw_trend_slope(d, v, n, &slope, &intercept), status);
    assert_status(hw_trend_interval(d, v, n, &low, &high), status);
    assert_no_answer(slope);
    assert_no_answer(intercept);
    assert_no_answer(low);
    assert_no_answer(high);
}

/* Every day and every value in turn at both ends of its range, beyond, and no number. */
static void ranges(void **state)
{
    (void)state;
    static const double ends[2][2] = {{HW_TREND_DAYS_MIN, HW_TREND_DAYS_MAX},
                                      {HW_TREND_VALUE_MIN, HW_TREND_VALUE_MAX}};
    double slope = 0;
    double intercept = 0;
    for (size_t k = 0; k < 2 * (size_t)N; k++) {
        double a[2][N];
        memcpy(a[0], days, sizeof days);
        memcpy(a[1], values, sizeof values);
        for (int end = 0; end < 2; end++) {
            a[k % 2][k / 2] = ends[k % 2][end];
            assert_status(hw_trend_slope(a[0], a[1], N, &slope, &intercept), HW_STATUS_OK);
            check(isfinite(slope) && isfinite(intercept));
            a[k % 2][k / 2] = nextafter(ends[k % 2][end], end == 0 ? -1e300 : 1e300);
            no_line(a[0], a[1], N, HW_STATUS_RANGE);
        }
        for (size_t i = 0; i < NOT_NUMBERS; i++) {
            a[k % 2][k / 2] = not_numbers[i];
            no_line(a[0], a[1], N, HW_STATUS_RANGE);
        }
    }
}

static void how_many(void **state)
{
    (void)state;
    static double d[HW_TREND_READINGS_MAX + 1];
    static double v[HW_TREND_READINGS_MAX + 1];
    double slope = 0;
    double intercept = 0;
    for (size_t i = 0; i <= HW_TREND_READINGS_MAX; i++) {
        d[i] = (double)i / 8;
        v[i] = 3.5 - 0.25 * d[i];
    }
    no_line(d, v, 0, HW_STATUS_RANGE);
    no_line(d, v, HW_TREND_READINGS_MIN - 1, HW_STATUS_RANGE);
    no_line(d, v, HW_TREND_READINGS_MAX + 1, HW_STATUS_RANGE);
    assert_status(hw_trend_slope(d, v, HW_TREND_READINGS_MIN, &slope, &intercept), HW_STATUS_OK);
    assert_close(slope, -0.25, 0, 0);
    assert_status(hw_trend_slope(d, v, HW_TREND_READINGS_MAX, &slope, &intercept), HW_STATUS_OK);
    assert_close(slope, -0.25, 0, 0);
    assert_close(intercept, 3.5, 1e-15, 0);
}

/* One time alone; times so near that the slope, or one end of its interval, is beyond all
 * numbers. */
static void no_answer(void **state)
{
    (void)state;
    static const double once[4] = {2.385, 2.385, 2.385, 2.385};
    static const double near[4] = {0, 1e-310, 2e-310, 3e-310};
    static const double far[4] = {1e6, 1e6 - 1e-9, 0, 0};
    static const double wild[4] = {-1e12, 1e12, 0, 0};
    no_line(once, values, 4, HW_STATUS_NONE);
    no_line(near, (const double[4]){0, 1e3, 2e3, 3e3}, 4, HW_STATUS_NONE);
    no_line(near, (const double[4]){0, -1e3, -2e3, -3e3}, 4, HW_STATUS_NONE);
    double slope = 0;
    double intercept = 0;
    assert_status(hw_trend_slope(far, wild, 2, &slope, &intercept), HW_STATUS_OK);
    assert_close(slope, (wild[0] - wild[1]) / (far[0] - far[1]), 0, 1e-15);
    assert_true(isfinite(intercept));
    double low = 0;
    double high = 0; /* one end alone is infinite */
    static const double one[3] = {0, 1e-310, 4};
    assert_status(hw_trend_interval(one, (const double[3]){0, 1e3, 2}, 3, &low, &high),
                  HW_STATUS_NONE);
    assert_no_answer(low);
    assert_no_answer(high);
    assert_status(hw_trend_interval(one, (const double[3]){0, -1e3, 2}, 3, &low, &high),
                  HW_STATUS_NONE);
    assert_no_answer(low);
    assert_no_answer(high);
    assert_status(hw_trend_slope(one, (const double[3]){0, 1e3, 2}, 3, &slope, &intercept),
                  HW_STATUS_OK);
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a;
    double y = *(const double *)b;
    return (x > y) - (x < y);
}

/* The slopes stored and sorted, which the core does without: the same median, to the bit. A wild
 * reading moves it little; another zero of time moves the line alone. */
static void like_sorting(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (int i = 0; i < 400; i++) {
        double d[30];
        double v[30];
        double slopes[435];
        size_t n = 2 + (size_t)hw_random_between(0, 28);
        size_t count = 0;
        for (size_t k = 0; k < n; k++) {
            d[k] = floor(hw_random_between(-9, 9)) / 2;
            v[k] = i % 2 == 0 ? hw_random_between(-2, 2) : floor(hw_random_between(-2, 2)) / 4;
            for (size_t j = 0; j < k; j++) {
                if (d[j] != d[k]) {
                    slopes[count++] = (v[k] - v[j]) / (d[k] - d[j]);
                }
            }
        }
        double slope = 0;
        double intercept = 0;
        double low = 0;
        double high = 0;
        if (count == 0) {
            no_line(d, v, n, HW_STATUS_NONE);
            continue;
        }
        qsort(slopes, count, sizeof *slopes, by_size);
        assert_status(hw_trend_slope(d, v, n, &slope, &intercept), HW_STATUS_OK);
        assert_close(slope, (slopes[(count - 1) / 2] + slopes[count / 2]) / 2, 0, 0);
        assert_status(hw_trend_interval(d, v, n, &low, &high), HW_STATUS_OK);
        check(low <= slope && slope <= high);
        check(low >= slopes[0] && high <= slopes[count - 1]);
        for (size_t k = 0; k < n; k++) {
            v[k] = -v[k];
        }
        double back = 0;
        assert_status(hw_trend_slope(d, v, n, &back, &intercept), HW_STATUS_OK);
        assert_close(back, -slope, 0, 0);
    }
}

static void limits(void **state)
{
    (void)state;
    double d = 0;
    assert_status(hw_trend_days_to(0.312, 0.034, 0.5, &d), HW_STATUS_OK);
    assert_close(d, 0.188 / 0.034, 0, 1e-15);
    assert_status(hw_trend_days_to(0.5, 0, 0.5, &d), HW_STATUS_OK);
    assert_close(d, 0, 0, 0);
    static const double none[][3] = {
        {0.312, 0, 0.5}, {0.312, -0.034, 0.5}, {0.6, 0.034, 0.5}, {0, 1e-9, 1e4}};
    for (size_t i = 0; i < sizeof none / sizeof *none; i++) {
        d = 1;
        assert_status(hw_trend_days_to(none[i][0], none[i][1], none[i][2], &d), HW_STATUS_NONE);
        assert_no_answer(d);
    }
    for (size_t k = 0; k < 3; k++) {
        double a[3] = {0.312, 0.034, 0.5};
        for (size_t i = 0; i < NOT_NUMBERS; i++) {
            a[k] = not_numbers[i];
            assert_status(hw_trend_days_to(a[0], a[1], a[2], &d), HW_STATUS_RANGE);
            assert_no_answer(d);
        }
        a[k] = k == 1 ? 0.034 : 1.1e12;
        assert_status(hw_trend_days_to(a[0], a[1], a[2], &d),
                      k == 1 ? HW_STATUS_OK : HW_STATUS_RANGE);
    }
}

static void not_held(const double *d, size_t n, struct hw_trend_window window)
{
    struct hw_trend_run run;
    assert_status(hw_trend_held(d, values, n, &window, &run), HW_STATUS_RANGE);
    assert_no_answer(run.held);
    assert_no_answer(run.longest);
    check(run.from == 0 && run.outside == 0 && run.untold == 0 && run.by == HW_TREND_BREAK_NONE);
}

static void windows(void **state)
{
    (void)state;
    const double inf = (double)INFINITY;
    static const double back[3] = {0, 2, 1.9};
    not_held(days, 0, (struct hw_trend_window){0.1, 0.2, 1.5});
    not_held(back, 3, (struct hw_trend_window){0.1, 0.2, 1.5});
    not_held(days, N, (struct hw_trend_window){0.2, 0.1, 1.5});
    not_held(days, N, (struct hw_trend_window){(double)NAN, 0.1, 1.5});
    not_held(days, N, (struct hw_trend_window){0.1, (double)NAN, 1.5});
    not_held(days, N, (struct hw_trend_window){inf, inf, 1.5});
    not_held(days, N, (struct hw_trend_window){-inf, -inf, 1.5});
    not_held(days, N, (struct hw_trend_window){0.1, 0.2, 0});
    not_held(days, N, (struct hw_trend_window){0.1, 0.2, nextafter(HW_TREND_GAP_MAX, 1e9)});
    not_held(days, N, (struct hw_trend_window){0.1, 0.2, (double)NAN});
    struct hw_trend_run run;
    struct hw_trend_window window = {-inf, inf, HW_TREND_GAP_MAX};
    assert_status(hw_trend_held(days, values, N, &window, &run), HW_STATUS_OK);
    assert_close(run.held, 6.15, 0, 0);
    assert_close(run.longest, 1.3, 1e-15, 0);
}

static struct hw_trend_run held(const double *v, size_t n)
{
    static const double at[] = {0, 1, 2, 3, 5, 6, 7};
    const struct hw_trend_window window = {0.15, 0.2, 1.5};
    struct hw_trend_run run;
    assert_status(hw_trend_held(at, v, n, &window, &run), HW_STATUS_OK);
    return run;
}

static void runs(void **state)
{
    (void)state;
    struct hw_trend_run run = held((const double[]){0.15, 0.2, 0.15 * (1 - 1e-10)}, 3);
    assert_close(run.held, 2, 0, 0);
    check(run.from == 0 && run.by == HW_TREND_BREAK_NONE && run.outside == 0);
    run = held((const double[]){0.15, 0.149}, 2);
    assert_close(run.held, 0, 0, 0);
    check(run.from == 2 && run.by == HW_TREND_BREAK_BELOW && run.outside == 1);
    run = held((const double[]){0.21, 0.17, 0.16, 0.17, 0.18, 0.18}, 6);
    assert_close(run.held, 1, 0, 0);
    assert_close(run.longest, 1, 0, 0);
    check(run.from == 4 && run.by == HW_TREND_BREAK_GAP && run.outside == 1);
    /* a gap after a reading outside: that reading broke the run */
    run = held((const double[]){0.17, 0.17, 0.17, 0.25, 0.18}, 5);
    assert_close(run.held, 0, 0, 0);
    assert_close(run.longest, 0, 0, 0);
    check(run.from == 4 && run.by == HW_TREND_BREAK_ABOVE && run.outside == 1);
    run = held((const double[]){0.17}, 1);
    check(run.held == 0 && run.from == 0);
}

/* What may have been outside ends a run as well, and is not counted among those that were. */
static void untold(void **state)
{
    (void)state;
    const double nan = (double)NAN;
    struct hw_trend_run run = held((const double[]){0.17, nan, 0.16, 0.17}, 4);
    assert_close(run.held, 1, 0, 0);
    check(run.from == 2 && run.by == HW_TREND_BREAK_UNTOLD && run.outside == 0 && run.untold == 1);
    run = held((const double[]){0.17, 0.1, nan}, 3);
    assert_close(run.held, 0, 0, 0);
    check(run.from == 3 && run.by == HW_TREND_BREAK_UNTOLD && run.outside == 1 && run.untold == 1);
    run = held((const double[]){nan, 0.1, 0.17}, 3);
    check(run.from == 2 && run.by == HW_TREND_BREAK_BELOW && run.outside == 1 && run.untold == 1);
    run = held((const double[]){nan}, 1);
    check(run.held == 0 && run.from == 1 && run.by == HW_TREND_BREAK_UNTOLD);
    static const double many[HW_TREND_READINGS_MAX + 1];
    const struct hw_trend_window window = {-1, 1, 1};
    assert_status(hw_trend_held(many, many, HW_TREND_READINGS_MAX, &window, &run), HW_STATUS_OK);
    assert_status(hw_trend_held(many, many, HW_TREND_READINGS_MAX + 1, &window, &run),
                  HW_STATUS_RANGE);
    const double beyond[2] = {0, 2 * HW_TREND_VALUE_MAX};
    assert_status(hw_trend_held(days, beyond, 2, &window, &run), HW_STATUS_RANGE);
    const double no_day[2] = {0, nan};
    assert_status(hw_trend_held(no_day, values, 2, &window, &run), HW_STATUS_RANGE);
    const double no_number[2] = {0, (double)INFINITY};
    assert_status(hw_trend_held(days, no_number, 2, &window, &run), HW_STATUS_RANGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ranges),       cmocka_unit_test(how_many), cmocka_unit_test(no_answer),
        cmocka_unit_test(like_sorting), cmocka_unit_test(limits),   cmocka_unit_test(windows),
        cmocka_unit_test(runs),         cmocka_unit_test(untold),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
