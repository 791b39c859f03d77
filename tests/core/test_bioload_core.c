/* test_bioload_core.c - ammonia out of food, fish and what is dead. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/bioload.h"

static void by_hand(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_bioload_daily_feed(200, 0.02, &result), 0);
    assert_close(result, 4, 0, 0);
    assert_status(hw_bioload_from_feed(4, 0.45, HW_BIOLOAD_FACTOR, &result), 0);
    assert_close(result, 165.6, 0, 1e-15);
    assert_status(hw_bioload_from_feed(0, 0.45, HW_BIOLOAD_FACTOR, &result), 0);
    assert_close(result, 0, 0, 0);
    assert_status(hw_bioload_starved(200, 2.3, &result), 0);
    assert_close(result, 11.04, 0, 1e-15);
    assert_status(hw_bioload_rise(165.6, 100, &result), 0);
    assert_close(result, 1.656, 0, 1e-15);
    assert_status(hw_bioload_hours(1.656, 0.414, &result), 0);
    assert_close(result, 6, 0, 1e-15);
    assert_status(hw_bioload_change(0.2, 0.8, &result), 0);
    assert_close(result, 0.25, 0, 1e-15);
    assert_status(hw_bioload_change(0, 0.8, &result), 0);
    assert_close(result, 0, 0, 0);
}

/* What rots counts the protein of the food, but never less than that of a fish. */
static void dead_and_rotting(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_bioload_from_dead(1, 0.45, &result), 0);
    assert_close(result, 72, 0, 1e-15);
    assert_status(hw_bioload_from_dead(20, 0.08, &result), 0);
    assert_close(result, 20 * 0.18 * 160, 0, 1e-15);
    assert_status(hw_bioload_from_dead(20, 0.18, &result), 0);
    assert_close(result, 20 * 0.18 * 160, 0, 1e-15);
    assert_status(hw_bioload_from_dead(20, 0.185, &result), 0);
    assert_close(result, 20 * 0.185 * 160, 0, 1e-15);
    assert_status(hw_bioload_from_dead(0, 0.45, &result), 0);
    assert_close(result, 0, 0, 0);
}

/* The design figure is what its four shares make, to its last digit. */
static void design_figure(void **state)
{
    (void)state;
    assert_close(HW_BIOLOAD_FACTOR, HW_BIOLOAD_WHOLE * 0.80 * 0.80 * 0.90, 5e-4, 0);
}

/* Changed by the share that is told, day after day, the level comes to the limit from below and
 * stays there. */
static void change_holds_the_limit(void **state)
{
    (void)state;
    hw_random_start(20310601);
    for (int i = 0; i < 500; i++) {
        double limit = hw_random_between(0.05, 5);
        double rise = limit * hw_random_between(0.02, 1);
        double share = 0;
        double level = 0;
        double highest = 0;
        assert_status(hw_bioload_change(rise, limit, &share), 0);
        for (int day = 0; day < 2000; day++) {
            level = level * (1 - share) + rise;
            highest = level > highest ? level : highest;
        }
        assert_close(level, limit, 0, 1e-9);
        check(highest <= limit * (1 + 1e-9));
    }
}

static void none_and_all(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_bioload_hours(0, 0.5, &result), HW_STATUS_NONE);
    assert_no_answer(result);
    assert_status(hw_bioload_hours(1e-300, 0.5, &result), HW_STATUS_NONE);
    assert_no_answer(result);
    assert_status(hw_bioload_hours(HW_BIOLOAD_RISE_LEAST, HW_BIOLOAD_LIMIT_MAX, &result), 0);
    check(isfinite(result));
    assert_status(hw_bioload_change(0.5, 0.5, &result), 0);
    assert_close(result, 1, 0, 0);
    assert_status(hw_bioload_change(nextafter(0.5, 1), 0.5, &result), 0);
    assert_close(result, 1, 0, 0);
    assert_status(hw_bioload_change(0.5000001, 0.5, &result), HW_STATUS_NONE);
    assert_no_answer(result);
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_bioload_daily_feed(a[0], a[1], result);
    case 1:
        return hw_bioload_from_feed(a[0], a[1], a[2], result);
    case 2:
        return hw_bioload_from_dead(a[0], a[1], result);
    case 3:
        return hw_bioload_starved(a[0], a[1], result);
    case 4:
        return hw_bioload_rise(a[0], a[1], result);
    case 5:
        return hw_bioload_hours(a[0], a[1], result);
    default:
        return hw_bioload_change(a[0], a[1], result);
    }
}

enum { FUNCTIONS = 7 };

#define PROTEIN HW_BIOLOAD_PROTEIN_SHARE_MIN, HW_BIOLOAD_PROTEIN_SHARE_MAX
#define LIMIT   HW_BIOLOAD_LIMIT_MIN, HW_BIOLOAD_LIMIT_MAX
#define BIOMASS HW_BIOLOAD_BIOMASS_MIN, HW_BIOLOAD_BIOMASS_MAX

static const struct {
    int arguments;
    double good[3], ends[3][2];
} functions[FUNCTIONS] = {
    {2,
     {200, 0.02, 0},
     {{BIOMASS}, {HW_BIOLOAD_RATION_SHARE_MIN, HW_BIOLOAD_RATION_SHARE_MAX}, {0, 0}}},
    {3,
     {4, 0.45, 0.092},
     {{HW_BIOLOAD_FEED_MIN, HW_BIOLOAD_FEED_MAX},
      {PROTEIN},
      {HW_BIOLOAD_FACTOR_MIN, HW_BIOLOAD_FACTOR_MAX}}},
    {2, {1, 0.45, 0}, {{HW_BIOLOAD_DEAD_MIN, HW_BIOLOAD_DEAD_MAX}, {PROTEIN}, {0, 0}}},
    {2, {200, 2, 0}, {{BIOMASS}, {HW_BIOLOAD_STARVED_MIN, HW_BIOLOAD_STARVED_MAX}, {0, 0}}},
    {2,
     {165.6, 100, 0},
     {{HW_BIOLOAD_PRODUCTION_MIN, HW_BIOLOAD_PRODUCTION_MAX},
      {HW_BIOLOAD_VOLUME_MIN, HW_BIOLOAD_VOLUME_MAX},
      {0, 0}}},
    {2, {1.656, 0.4, 0}, {{HW_BIOLOAD_RISE_LEAST, HW_BIOLOAD_RISE_MAX}, {LIMIT}, {0, 0}}},
    /* this rise is below the lowest limit, so that both ends of the limit are answered */
    {2, {0.0005, 0.4, 0}, {{HW_BIOLOAD_RISE_MIN, 0.4}, {LIMIT}, {0, 0}}},
};

static void refused(int which, const double a[])
{
    double result = 0;
    assert_status(call(which, a, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
    for (int f = 0; f < FUNCTIONS; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[3];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            for (int end = 0; end < 2; end++) {
                a[k] = functions[f].ends[k][end];
                assert_status(call(f, a, &result), HW_STATUS_OK);
                check(isfinite(result));
                bool inner = (f == 5 && k == 0 && end == 0) || (f == 6 && k == 0 && end == 1);
                a[k] = nextafter(a[k], end ? 1e12 : -1e12);
                if (!inner) {
                    refused(f, a);
                }
            }
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                refused(f, a);
            }
        }
    }
    refused(5, (const double[]){nextafter(HW_BIOLOAD_RISE_MIN, -1), 0.4});
    refused(6, (const double[]){nextafter(HW_BIOLOAD_RISE_MAX, 1e12), 0.4});
}

/* What one function can give, the next takes: the largest load in the least water. */
static void ends_fit_together(void **state)
{
    (void)state;
    double feed = 0;
    double fed = 0;
    double dead = 0;
    double rise = 0;
    assert_status(hw_bioload_daily_feed(HW_BIOLOAD_BIOMASS_MAX, HW_BIOLOAD_RATION_SHARE_MAX, &feed),
                  0);
    assert_status(
        hw_bioload_from_feed(feed, HW_BIOLOAD_PROTEIN_SHARE_MAX, HW_BIOLOAD_FACTOR_MAX, &fed), 0);
    assert_status(hw_bioload_from_dead(HW_BIOLOAD_DEAD_MAX, HW_BIOLOAD_PROTEIN_SHARE_MAX, &dead),
                  0);
    assert_status(hw_bioload_rise(fed + dead, HW_BIOLOAD_VOLUME_MIN, &rise), 0);
    check(rise <= HW_BIOLOAD_RISE_MAX);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),           cmocka_unit_test(dead_and_rotting),
        cmocka_unit_test(design_figure),     cmocka_unit_test(change_holds_the_limit),
        cmocka_unit_test(none_and_all),      cmocka_unit_test(ranges),
        cmocka_unit_test(ends_fit_together),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
