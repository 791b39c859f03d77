/* test_verdict_core.c - what a challenge proved. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/verdict.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static void by_hand(void **state)
{
    (void)state;
    double a = 0;
    double b = 0;
    assert_status(hw_verdict_rate(2, 0.5, 12, 100, &a, &b), HW_STATUS_OK);
    assert_close(a, 3, 0, 1e-15);
    assert_close(b, 300, 0, 1e-15);
    assert_status(hw_verdict_feed_carried(200, 0.45, 0.25, 0, &a, &b), HW_STATUS_OK);
    assert_close(a, 4.83092, 5e-6, 0);
    assert_close(b, 200 / (0.45 * 92) / 4, 0, 1e-15);
    assert_status(hw_verdict_feed_carried(200, 0.45, 1, 3, &a, &b), HW_STATUS_OK);
    assert_close(b, a / (1.072 * 1.072 * 1.072), 0, 1e-14);
    assert_status(hw_verdict_hours(0.5, 0.25, 0.125, 0.125, 2, &a), HW_STATUS_OK);
    assert_close(a, 6, 0, 1e-15);
    assert_status(hw_verdict_hours(0.1, 0.25, 0.125, 0.125, 2, &a), HW_STATUS_OK);
    assert_close(a, 1.5, 0, 1e-15);
}

static void no_answer(void **state)
{
    (void)state;
    double a = 0;
    double b = 0;
    assert_status(hw_verdict_rate(2, 2, 24, 100, &a, &b), HW_STATUS_NONE);
    assert_no_answer(a);
    assert_no_answer(b);
    assert_status(hw_verdict_rate(2, nextafter(2, 0), 24, 100, &a, &b), HW_STATUS_OK);
    assert_status(hw_verdict_rate(2, 2.4, 24, 100, &a, &b), HW_STATUS_NONE);
    assert_status(hw_verdict_hours(0.125, 0.125, 0.125, 0.125, 2, &a), HW_STATUS_NONE);
    assert_no_answer(a);
    assert_status(hw_verdict_hours(0.125, nextafter(0.125, 1), 0.125, 0.125, 2, &a), HW_STATUS_OK);
}

/* Run for the hours it says at that rate, the excess has gone; half the protein, twice the feed;
 * colder is never more. */
static void properties(void **state)
{
    (void)state;
    hw_random_start(20310507);
    for (int i = 0; i < 2000; i++) {
        double start = hw_random_between(1, 10);
        double left = hw_random_between(0, 1);
        double hours = hw_random_between(1, 100);
        double rate = 0;
        double capacity = 0;
        double feed[2];
        double working[2];
        assert_status(hw_verdict_rate(start, left, hours, 75, &rate, &capacity), 0);
        assert_close(capacity / 75 * hours / 24, start - left, 0, 1e-14);
        assert_status(hw_verdict_feed_carried(capacity, 0.6, 0.25, 0, &feed[0], &working[0]), 0);
        assert_status(
            hw_verdict_feed_carried(capacity, 0.3, 0.25, left * 10, &feed[1], &working[1]), 0);
        assert_close(feed[1], 2 * feed[0], 0, 1e-14);
        check(working[1] <= 2 * working[0] * (1 + 1e-14) && working[0] < feed[0]);
        double until = 0;
        assert_status(hw_verdict_hours(start, left + 0.2, 0.125, 0.125, rate, &until), 0);
        assert_close(rate * until / 24, start + left + 0.2 - 0.25, 0, 1e-13);
    }
}

static int call(int which, const double a[], double result[2])
{
    result[0] = result[1] = 1;
    switch (which) {
    case 0:
        return hw_verdict_rate(a[0], a[1], a[2], a[3], &result[0], &result[1]);
    case 1:
        return hw_verdict_feed_carried(a[0], a[1], a[2], a[3], &result[0], &result[1]);
    default:
        return hw_verdict_hours(a[0], a[1], a[2], a[3], a[4], &result[0]);
    }
}

enum { N_MAX = 100 };
static const struct {
    int arguments, results;
    double good[5], lo[5], hi[5];
    int lo_status[5], hi_status[5];
} functions[] = {
    {4, 2, {2, 0.5, 24, 100}, {0, 0, 1, 0.1}, {N_MAX, N_MAX, 336, 1e5}, {-3}, {0, -3}},
    {4, 2, {200, 0.45, 0.25, 2}, {0, 0.03, 0.01, 0}, {2.4e8, 0.9, 1, 40}, {0}, {0}},
    {5, 1, {1, 1, 0.1, 0.1, 2}, {0, 0, 0, 0, 1e-12}, {N_MAX, N_MAX, 5, 5, 2400}, {0}, {0}},
};

static void refused(int f, const double a[])
{
    double result[2];
    assert_status(call(f, a, result), HW_STATUS_RANGE);
    for (int i = 0; i < functions[f].results; i++) {
        assert_no_answer(result[i]);
    }
}

static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 3; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[5];
            double result[2];
            double hi = functions[f].hi[k];
            memcpy(a, functions[f].good, sizeof a);
            a[k] = functions[f].lo[k];
            assert_status(call(f, a, result), functions[f].lo_status[k]);
            a[k] = hi;
            assert_status(call(f, a, result), functions[f].hi_status[k]);
            a[k] = nextafter(functions[f].lo[k], -1);
            refused(f, a);
            a[k] = nextafter(hi, 1e10);
            refused(f, a);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                refused(f, a);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(no_answer),
        cmocka_unit_test(properties),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
