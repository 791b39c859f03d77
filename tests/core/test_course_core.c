/* test_course_core.c - a course of dye in a tank. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/bath.h"
#include "holdwater/course.h"

/* 3 mg/L and a quarter changed: 3; 2.25 and 5.25; 3.9375 and 6.9375; 5.203125 and 8.203125. */
static void by_hand(void **state)
{
    (void)state;
    static const double befores[] = {0, 2.25, 3.9375, 5.203125};
    static const double afters[] = {3, 5.25, 6.9375, 8.203125};
    double before = 0;
    double after = 0;
    double result = 0;
    for (int dose = 1; dose <= 4; dose++) {
        assert_status(hw_course_level(HW_COURSE_FULL, 3, 0.25, dose, &before, &after), 0);
        assert_close(before, befores[dose - 1], 0, 0);
        assert_close(after, afters[dose - 1], 0, 0);
        assert_status(hw_course_level(HW_COURSE_REPLACE, 3, 0.25, dose, &before, &after), 0);
        assert_close(before, dose == 1 ? 0 : 2.25, 0, 0);
        assert_close(after, 3, 0, 0);
    }
    assert_status(hw_course_ceiling(HW_COURSE_FULL, 3, 0.25, &result), 0);
    assert_close(result, 12, 0, 0);
    assert_status(hw_course_ceiling(HW_COURSE_REPLACE, 3, 0.25, &result), 0);
    assert_close(result, 3, 0, 0);
    assert_status(hw_course_water(75, 0.25, 4, &result), 0);
    assert_close(result, 56.25, 0, 0);
    assert_status(hw_course_water(75, 0.25, 1, &result), 0);
    assert_close(result, 0, 0, 0);
    assert_status(hw_course_amounts(HW_COURSE_FULL, 22.5, 0.25, 4, &before, &after), 0);
    assert_close(before, 22.5, 0, 0);
    assert_close(after, 90, 0, 0);
    assert_status(hw_course_amounts(HW_COURSE_REPLACE, 22.5, 0.25, 4, &before, &after), 0);
    assert_close(before, 5.625, 0, 0);
    assert_close(after, 39.375, 0, 0);
}

static double over(enum hw_course_redose redose, double first, double exchanged, double limit)
{
    double dose = 0;
    int status = hw_course_dose_over(redose, first, exchanged, limit, &dose);
    if (status == HW_STATUS_NONE) {
        assert_no_answer(dose);
        return 0; /* never */
    }
    assert_status(status, HW_STATUS_OK);
    return dose;
}

static void the_dose_that_passes(void **state)
{
    (void)state;
    assert_close(over(HW_COURSE_FULL, 3, 0.25, 5), 2, 0, 0);
    assert_close(over(HW_COURSE_FULL, 1.5, 0.25, 5), 7, 0, 0);
    assert_close(over(HW_COURSE_FULL, 5.1, 1, 5), 1, 0, 0);
    assert_close(over(HW_COURSE_REPLACE, 5.1, 0.25, 5), 1, 0, 0);
    assert_close(over(HW_COURSE_REPLACE, 5, 0.25, 5), 0, 0, 0);
    assert_close(over(HW_COURSE_FULL, 5, 1, 5), 0, 0, 0);
    /* At the limit is not above it: a ceiling of 5, and one dose that comes to 5. */
    assert_close(over(HW_COURSE_FULL, 1.25, 0.25, 5), 0, 0, 0);
    assert_close(over(HW_COURSE_FULL, 1.2, 0.24, 5), 0, 0, 0);
    assert_close(over(HW_COURSE_FULL, 5 / 1.75, 0.25, 5), 3, 0, 0);
    check(1.185 / 0.237 > 5); /* a ceiling of 5 that a quotient rounds up */
    assert_close(over(HW_COURSE_FULL, 1.185, 0.237, 5), 0, 0, 0);
    assert_close(over(HW_COURSE_FULL, nextafter(5, 6), 0.5, 5), 2, 0, 0);
}

/* The dose that is told is the first that a walk through the course finds. */
static void no_earlier_dose_passes(void **state)
{
    (void)state;
    int passed = 0;
    hw_random_start(20310511);
    for (int i = 0; i < 2000; i++) {
        double first = hw_random_between(HW_COURSE_LEVEL_MIN, 6);
        double exchanged = hw_random_between(0.05, HW_COURSE_EXCHANGED_MAX);
        double told = over(HW_COURSE_FULL, first, exchanged, 5);
        double before = 0;
        double after = 0;
        int found = 0;
        for (int dose = 1; dose <= 500 && found == 0; dose++) {
            hw_course_level(HW_COURSE_FULL, first, exchanged, dose, &before, &after);
            found = after > 5 * (1 + 1e-9) ? dose : 0;
        }
        check(told == found);
        passed += found > 1;
    }
    check(passed > 500);
}

/* Dye is conserved: what was poured in is in the tank or went out with the changes. Levels stay
 * below the ceiling and agree with the sum of the series. */
static void dye_is_conserved(void **state)
{
    (void)state;
    hw_random_start(20310512);
    for (int i = 0; i < 1000; i++) {
        enum hw_course_redose redose = i % 2 ? HW_COURSE_FULL : HW_COURSE_REPLACE;
        double volume = hw_random_between(5, 400);
        double strength = hw_random_between(1, 50);
        double first = hw_random_between(HW_COURSE_LEVEL_MIN, HW_COURSE_LEVEL_MAX);
        double exchanged = hw_random_between(HW_COURSE_EXCHANGED_MIN, 1);
        int doses = 1 + (int)hw_random_between(0, 30);
        double dye = 0;
        double again = 0;
        double total = 0;
        double water = 0;
        double ceiling = 0;
        double before = 0;
        double after = 0;
        double gone = 0;
        assert_status(hw_bath_dye(volume, strength, first, &dye), 0);
        hw_course_amounts(redose, dye, exchanged, doses, &again, &total);
        hw_course_water(volume, exchanged, doses, &water);
        hw_course_ceiling(redose, first, exchanged, &ceiling);
        for (int dose = 1; dose <= doses; dose++) {
            gone += dose > 1 ? after * exchanged * volume : 0;
            assert_status(hw_course_level(redose, first, exchanged, dose, &before, &after), 0);
            check(after <= ceiling * (1 + 1e-14));
        }
        assert_close(after * volume + gone, total * strength, 0, 1e-12);
        assert_close(water, (doses - 1) * exchanged * volume, 0, 1e-15);
        if (redose == HW_COURSE_FULL) {
            assert_close(after, first * (1 - pow(1 - exchanged, doses)) / exchanged, 0, 1e-12);
        }
    }
}

/* One call of any of them; the first two results, the second a copy of the first where there is but
 * one. */
static int call(int which, int redose, const double a[], double result[2])
{
    enum hw_course_redose kind = (enum hw_course_redose)redose;
    int status = 0;
    result[0] = result[1] = 1;
    switch (which) {
    case 0:
        return hw_course_level(kind, a[0], a[1], (int)a[2], &result[0], &result[1]);
    case 1:
        status = hw_course_ceiling(kind, a[0], a[1], &result[0]);
        break;
    case 2:
        status = hw_course_dose_over(kind, a[0], a[1], a[2], &result[0]);
        break;
    case 3:
        return hw_course_amounts(kind, a[0], a[1], (int)a[2], &result[0], &result[1]);
    default:
        status = hw_course_water(a[0], a[1], (int)a[2], &result[0]);
        break;
    }
    result[1] = result[0];
    return status;
}

enum { FUNCTIONS = 5, WATER = 4 };

#define SHARES HW_COURSE_EXCHANGED_MIN, HW_COURSE_EXCHANGED_MAX

static const struct {
    int arguments;
    double good[3];
    double ends[3][2];
    int whole; /* the argument that is a whole number; -1 */
} functions[FUNCTIONS] = {
    {3,
     {3, 0.25, 4},
     {{HW_COURSE_LEVEL_MIN, HW_COURSE_LEVEL_MAX},
      {SHARES},
      {HW_COURSE_DOSES_MIN, HW_COURSE_DOSES_MAX}},
     2},
    {2, {3, 0.25, 0}, {{HW_COURSE_LEVEL_MIN, HW_COURSE_LEVEL_MAX}, {SHARES}, {0, 0}}, -1},
    {3, {3, 0.25, 2.5}, {{1, HW_COURSE_LEVEL_MAX}, {SHARES}, {HW_COURSE_LIMIT_MIN, 11}}, -1},
    {3,
     {22.5, 0.25, 4},
     {{HW_COURSE_DYE_MIN, HW_COURSE_DYE_MAX}, {SHARES}, {HW_COURSE_DOSES_MIN, HW_COURSE_DOSES_MAX}},
     2},
    {3,
     {75, 0.25, 4},
     {{HW_COURSE_VOLUME_MIN, HW_COURSE_VOLUME_MAX},
      {SHARES},
      {HW_COURSE_DOSES_MIN, HW_COURSE_DOSES_MAX}},
     2},
};

static void refused(int which, const double a[])
{
    double result[2];
    assert_status(call(which, HW_COURSE_FULL, a, result), HW_STATUS_RANGE);
    assert_no_answer(result[0]);
    assert_no_answer(result[1]);
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
            double result[2];
            memcpy(a, functions[f].good, sizeof a);
            for (int end = 0; end < 2; end++) {
                a[k] = functions[f].ends[k][end];
                assert_status(call(f, HW_COURSE_FULL, a, result), HW_STATUS_OK);
                check(isfinite(result[0]) && isfinite(result[1]));
            }
            if (k == functions[f].whole) {
                a[k] = 0;
                refused(f, a);
                a[k] = HW_COURSE_DOSES_MAX + 1;
                refused(f, a);
                continue;
            }
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                refused(f, a);
            }
        }
    }
}

static void just_beyond(void **state)
{
    (void)state;
    static const struct {
        int which;
        double a[3];
    } rows[] = {
        {0, {HW_COURSE_LEVEL_MIN, 0.25, 4}},     {0, {HW_COURSE_LEVEL_MAX, 0.25, 4}},
        {0, {3, HW_COURSE_EXCHANGED_MIN, 4}},    {0, {3, HW_COURSE_EXCHANGED_MAX, 4}},
        {1, {HW_COURSE_LEVEL_MIN, 0.25, 0}},     {1, {HW_COURSE_LEVEL_MAX, 0.25, 0}},
        {2, {3, 0.25, HW_COURSE_LIMIT_MIN}},     {2, {3, 0.25, HW_COURSE_LIMIT_MAX}},
        {3, {HW_COURSE_DYE_MIN, 0.25, 4}},       {3, {HW_COURSE_DYE_MAX, 0.25, 4}},
        {4, {HW_COURSE_VOLUME_MIN, 0.25, 4}},    {4, {HW_COURSE_VOLUME_MAX, 0.25, 4}},
        {4, {75, HW_COURSE_EXCHANGED_MIN, 4}},   {4, {75, HW_COURSE_EXCHANGED_MAX, 4}},
        {3, {22.5, HW_COURSE_EXCHANGED_MIN, 4}}, {3, {22.5, HW_COURSE_EXCHANGED_MAX, 4}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const double *good = functions[rows[i].which].good;
        double a[3];
        memcpy(a, rows[i].a, sizeof a);
        for (int k = 0; k < 3; k++) {
            if (a[k] != good[k]) {
                a[k] = nextafter(a[k], i % 2 ? 1e9 : -1e9);
                if (rows[i].which != 2 || k == 2) {
                    refused(rows[i].which, a);
                }
                a[k] = good[k];
            }
        }
    }
}

/* The dose that would pass the highest limit there is may not exist, but the question is a proper
 * one. */
static void highest_limit(void **state)
{
    (void)state;
    double dose = 0;
    assert_status(hw_course_dose_over(HW_COURSE_FULL, HW_COURSE_LEVEL_MAX, HW_COURSE_EXCHANGED_MIN,
                                      HW_COURSE_LIMIT_MAX, &dose),
                  HW_STATUS_OK);
    assert_close(dose, 69, 0, 0); /* 0.99^69 is 0.49984, 0.99^68 is 0.50489 */
    assert_status(hw_course_dose_over(HW_COURSE_FULL, 3, 0.25, HW_COURSE_LIMIT_MAX, &dose),
                  HW_STATUS_NONE);
    assert_no_answer(dose);
}

static void unknown_choice(void **state)
{
    (void)state;
    static const int unknown[] = {-1, 2, 77};
    for (int f = 0; f < WATER; f++) {
        for (size_t i = 0; i < sizeof unknown / sizeof *unknown; i++) {
            double result[2];
            const double bad[3] = {(double)NAN, (double)NAN, 4};
            assert_status(call(f, unknown[i], functions[f].good, result), HW_STATUS_CHOICE);
            assert_no_answer(result[0]);
            assert_no_answer(result[1]);
            assert_status(call(f, unknown[i], bad, result), HW_STATUS_CHOICE);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(the_dose_that_passes),
        cmocka_unit_test(no_earlier_dose_passes),
        cmocka_unit_test(dye_is_conserved),
        cmocka_unit_test(ranges),
        cmocka_unit_test(just_beyond),
        cmocka_unit_test(highest_limit),
        cmocka_unit_test(unknown_choice),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
