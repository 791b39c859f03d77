/* test_ahead_core.c - ammonia ahead: closed forms, what is conserved, ranges. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/ahead.h"

static const struct hw_ahead_tank bare = {.meals = 1, .half = 1, .every = 24};

static struct hw_ahead_outlook level(const struct hw_ahead_tank *tank, double start, double hours)
{
    struct hw_ahead_outlook outlook;
    assert_status(hw_ahead_level(tank, start, hours, &outlook), HW_STATUS_OK);
    return outlook;
}

static double reach(const struct hw_ahead_tank *tank, double start, double limit, double hours)
{
    double hour = -1;
    assert_status(hw_ahead_reach(tank, start, limit, hours, &hour), HW_STATUS_OK);
    return hour;
}

/* Without a filter: now + rise t, and each limit on it. */
static void straight_line(void **state)
{
    (void)state;
    struct hw_ahead_tank tank = bare;
    tank.even = 0.0175;
    struct hw_ahead_outlook o = level(&tank, 0.05, 50.25);
    assert_close(o.then, 0.05 + 0.0175 * 50.25, 0, 1e-13);
    assert_close(o.peak, o.then, 0, 0);
    assert_close(o.peak_hour, 50.25, 0, 0);
    assert_close(o.given, 0.0175 * 50.25, 0, 1e-14);
    assert_close(o.cleared, 0, 1e-14, 0);
    assert_close(reach(&tank, 0.05, 0.5, 50.25), 0.45 / 0.0175, 0, 1e-12);
    assert_close(reach(&tank, 0.5, 0.5, 50.25), 0, 0, 0);
    o = level(&tank, 0.7, 0);
    assert_close(o.then, 0.7, 0, 0);
    assert_close(o.peak_hour, 0, 0, 0);
}

/* A meal without a filter: W (1 - e^(-kt)(1 + kt)), with what is left of the meals before it: one
 * meal a day. */
static void one_meal(void **state)
{
    (void)state;
    struct hw_ahead_tank tank = bare;
    tank.meal = 0.4;
    const double k = 1 / 6.0;
    const double q = exp(-k * 24);
    const double first = 0.4 / (1 - q);
    const double second = k * 24 * 0.4 * q / ((1 - q) * (1 - q));
    for (double t = 0.5; t <= 24; t += 2.35) {
        double out = first * (1 - exp(-k * t) * (1 + k * t)) + second * (1 - exp(-k * t));
        assert_close(level(&tank, 0.1, t).then, 0.1 + out, 0, 1e-9);
        assert_close(level(&tank, 0.1, t).given, out, 0, 1e-12);
    }
    /* of a routine each day gives off what each day is fed, at any number of meals */
    for (int meals = 1; meals <= 24; meals += 1 + meals / 3) {
        tank.meals = meals;
        tank.meal = 0.4 / meals;
        assert_close(level(&tank, 0, 24).then, 0.4, 0, 1e-8);
        assert_close(level(&tank, 0, 240).given, 4, 0, 1e-12);
    }
}

/* Where C is far below half the filter is of first order. */
static void first_order(void **state)
{
    (void)state;
    struct hw_ahead_tank tank = bare;
    tank.half = 5;
    tank.vmax = 1.3;
    tank.even = 1e-8;
    const double k1 = 1.3 / 5;
    for (double t = 1; t < 60; t += 7.3) {
        double want = tank.even / k1 + (2e-7 - tank.even / k1) * exp(-k1 * t);
        assert_close(level(&tank, 2e-7, t).then, want, 0, 3e-7);
    }
}

/* A batch without a load, and with one: the time to a level is known, and the level to a time by
 * Lambert's function, here as the equation it solves. The challenge itself is such a batch. */
static void saturating(void **state)
{
    (void)state;
    hw_random_start(20310611);
    for (int i = 0; i < 300; i++) {
        struct hw_ahead_tank tank = bare;
        double from = hw_random_between(0.5, 8);
        double to = from * hw_random_between(0.02, 0.9);
        double hours = hw_random_between(6, 96);
        tank.half = hw_random_between(0.3, 2);
        assert_status(hw_ahead_vmax(from, to, hours, tank.half, &tank.vmax), HW_STATUS_OK);
        assert_close(level(&tank, from, hours).then, to, 1e-8 * from, 0);
        tank.even = tank.vmax * hw_random_between(0.1, 0.9);
        double t = hw_random_between(1, 200);
        double c = level(&tank, from, t).then;
        double a = tank.even * tank.half;
        double b = tank.even - tank.vmax;
        double rest = 0;
        assert_status(hw_ahead_settles(tank.even, tank.vmax, tank.half, &rest), HW_STATUS_OK);
        if (fabs(c - rest) > 1e-4 * rest) {
            double time =
                (c - from) / b + (tank.half - a / b) / b * log((a + b * c) / (a + b * from));
            assert_close(time, t, 0, 1e-4);
        }
        assert_close(level(&tank, rest, t).then, rest, 0, 1e-12);
        double carried = 0;
        assert_status(hw_ahead_carried(rest, tank.vmax, tank.half, &carried), HW_STATUS_OK);
        assert_close(carried, tank.even, 0, 1e-12);
    }
}

/* Changes and a constant rise: a saw tooth, whose tips come to p T / x + fresh. */
static void saw_tooth(void **state)
{
    (void)state;
    struct hw_ahead_tank tank = bare;
    tank.even = 0.0175;
    tank.share = 0.3;
    tank.every = 36;
    tank.fresh = 0.12;
    double c = 0.05;
    for (int n = 1; n <= 8; n++) {
        double before = c + 0.0175 * 36;
        assert_close(level(&tank, 0.05, 36 * n).then, before, 0, 1e-12); /* not yet changed */
        c = before * 0.7 + 0.3 * 0.12;
        assert_close(level(&tank, 0.05, 36 * n + 1e-6).then, c, 1e-7, 0);
    }
    struct hw_ahead_outlook o = level(&tank, 0.05, 744);
    assert_close(o.peak, 0.0175 * 36 / 0.3 + 0.12, 0, 1e-3);
    assert_close(o.peak_hour, 720, 0, 1e-12);
    tank.share = 0.9;
    assert_close(level(&tank, 0.05, 744).peak, 0.0175 * 36 / 0.9 + 0.12, 0, 1e-12);
    /* of tips that are as high as one another the first counts */
    assert_close(level(&tank, 0.12 + 0.07, 744).peak_hour, 36, 0, 1e-12);
    assert_close(reach(&tank, 0.05, 0.8, 100), 36 + (0.8 - (0.1 * 0.68 + 0.108)) / 0.0175, 0,
                 1e-12);
    /* new water that holds more than the tank lifts it at once */
    tank.fresh = 3;
    assert_close(reach(&tank, 0.05, 2, 100), 36, 0, 0);
    assert_close(level(&tank, 0.05, 36.5).peak, 0.1 * 0.68 + 2.7 + 0.5 * 0.0175, 0, 1e-12);
    tank.even = 0;
    assert_close(level(&tank, 0.05, 36.5).peak_hour, 36, 0, 0);
}

static struct hw_ahead_tank any_tank(void)
{
    struct hw_ahead_tank tank = {
        .even = hw_random_between(0, 0.05),
        .meal = hw_random_between(0, 0.6),
        .meals = (int)hw_random_between(1, 5),
        .vmax = hw_random_between(0, 0.6),
        .half = hw_random_between(0.3, 2),
        .share = hw_random_between(0, 1) < 0.3 ? 0 : hw_random_between(0, 0.9),
        .every = hw_random_between(5, 60),
        .fresh = hw_random_between(0, 0.3),
    };
    return tank;
}

/* When a change of that hour has been made, too. */
static double just_after(double hour, double hours)
{
    return fmin(hour + 1e-9, hours);
}

/* Nitrogen is conserved; the peak is nowhere passed and is met where it is said to be; the limit is
 * not reached before its hour, and is there. */
static void what_must_hold(void **state)
{
    (void)state;
    hw_random_start(20310612);
    int reached = 0;
    for (int i = 0; i < 300; i++) {
        struct hw_ahead_tank tank = any_tank();
        double start = hw_random_between(0, 1);
        double hours = hw_random_between(1, 150);
        struct hw_ahead_outlook o = level(&tank, start, hours);
        assert_close(start + o.given - o.cleared + o.changed, o.then, 1e-8, 1e-8);
        for (int part = 0; part <= 40; part++) {
            check(level(&tank, start, hours * part / 40).then <= o.peak * (1 + 1e-9));
        }
        assert_close(level(&tank, start, just_after(o.peak_hour, hours)).peak, o.peak, 0, 1e-8);
        double limit = hw_random_between(start, 1.2 * o.peak);
        double hour = 0;
        int status = hw_ahead_reach(&tank, start, limit, hours, &hour);
        assert_status(status, o.peak >= limit ? HW_STATUS_OK : HW_STATUS_NONE);
        if (status == HW_STATUS_OK) {
            check(hour <= o.peak_hour * (1 + 1e-9));
            check(level(&tank, start, just_after(hour, hours)).peak >= limit * (1 - 1e-8));
            check(hour < 1e-6 || level(&tank, start, hour * (1 - 1e-7)).peak < limit);
            reached++;
        } else {
            assert_no_answer(hour);
        }
    }
    check(reached > 60);
}

/* A filter so quick that long steps would run away still rests where it must. */
static void quick_filters(void **state)
{
    (void)state;
    static const double quick[] = {1, 4, 20, 110, 600, 1000};
    for (size_t i = 0; i < sizeof quick / sizeof quick[0]; i++) {
        struct hw_ahead_tank tank = bare;
        double rest = 0;
        tank.vmax = quick[i];
        tank.half = 0.3;
        tank.even = quick[i] / 3;
        assert_status(hw_ahead_settles(tank.even, tank.vmax, tank.half, &rest), HW_STATUS_OK);
        assert_close(level(&tank, 5, 48).then, rest, 0, 1e-9);
        assert_close(level(&tank, 5, 48).peak, 5, 0, 0);
        tank.even = 0;
        check(level(&tank, 5, 48).then >= 0);
    }
}

static void by_hand(void **state)
{
    (void)state;
    double a = 0;
    double b = 0;
    assert_status(hw_ahead_vmax(2, 0.125, 24, 1, &a), HW_STATUS_OK);
    assert_close(a, (1.875 + log(16)) / 24, 0, 1e-15);
    assert_status(hw_ahead_vmax(2, 0, 24, 1, &a), HW_STATUS_NONE);
    assert_no_answer(a);
    assert_status(hw_ahead_vmax(2, 2, 24, 1, &a), HW_STATUS_NONE);
    assert_status(hw_ahead_vmax(2, 3, 24, 1, &a), HW_STATUS_NONE);
    assert_status(hw_ahead_vmax(1e4, 1, 1, 1, &a), HW_STATUS_NONE);
    assert_no_answer(a);
    assert_status(hw_ahead_settles(0.03, 0.03, 1, &a), HW_STATUS_NONE);
    assert_status(hw_ahead_settles(0.03, 0.03 * (1 + 1e-10), 1, &a), HW_STATUS_NONE);
    assert_no_answer(a);
    assert_status(hw_ahead_settles(0, 0.03, 1, &a), HW_STATUS_OK);
    assert_close(a, 0, 0, 0);
    assert_status(hw_ahead_settles(0.03, 0.12, 0.6, &a), HW_STATUS_OK);
    assert_close(a, 0.2, 0, 1e-15);
    assert_status(hw_ahead_meals(0.023, 2, &a, &b), HW_STATUS_OK);
    assert_close(a, 0.011, 0, 1e-14);
    assert_close(b, 0.144, 0, 1e-14);
}

/* --- Ranges ----------------------------------------------------------------------------------- */

enum { FUNCTIONS = 6, ARGUMENTS = 11 };

static int call(int which, const double a[], double result[])
{
    struct hw_ahead_tank tank = {a[0], a[1], 1, a[2], a[3], a[4], a[5], a[6]};
    struct hw_ahead_outlook outlook;
    int status = 0;
    switch (which) {
    case 0:
        return hw_ahead_vmax(a[0], a[1], a[2], a[3], &result[0]);
    case 1:
        return hw_ahead_settles(a[0], a[1], a[2], &result[0]);
    case 2:
        return hw_ahead_carried(a[0], a[1], a[2], &result[0]);
    case 3:
        return hw_ahead_meals(a[0], 2, &result[0], &result[1]);
    case 4:
        status = hw_ahead_level(&tank, a[7], a[8], &outlook);
        result[0] = outlook.then + outlook.peak + outlook.peak_hour;
        result[1] = outlook.given + outlook.cleared + outlook.changed;
        return status;
    default:
        return hw_ahead_reach(&tank, a[7], a[8], a[9], &result[0]);
    }
}

#define NITROGEN HW_AHEAD_NITROGEN_MIN, HW_AHEAD_NITROGEN_MAX
#define RATE     HW_AHEAD_RATE_MIN, HW_AHEAD_RATE_MAX
#define FILTER                                                                                     \
    {HW_AHEAD_VMAX_MIN, HW_AHEAD_VMAX_MAX},                                                        \
    {                                                                                              \
        HW_AHEAD_HALF_MIN, HW_AHEAD_HALF_MAX                                                       \
    }
#define LEVEL HW_AHEAD_LEVEL_MIN, HW_AHEAD_LEVEL_MAX
#define HOURS HW_AHEAD_HOURS_MIN, HW_AHEAD_HOURS_MAX
#define TANK                                                                                       \
    {RATE}, {HW_AHEAD_MEAL_MIN, HW_AHEAD_MEAL_MAX}, FILTER,                                        \
        {HW_AHEAD_SHARE_MIN, HW_AHEAD_SHARE_MAX}, {HW_AHEAD_EVERY_MIN, HW_AHEAD_EVERY_MAX},        \
        {NITROGEN},                                                                                \
    {                                                                                              \
        NITROGEN                                                                                   \
    }

static const struct {
    int arguments, results;
    double good[ARGUMENTS], ends[ARGUMENTS][2];
} functions[FUNCTIONS] = {
    {4,
     1,
     {2, 0.1, 24, 1},
     {{NITROGEN},
      {NITROGEN},
      {HW_AHEAD_CHALLENGE_MIN, HW_AHEAD_CHALLENGE_MAX},
      {HW_AHEAD_HALF_MIN, HW_AHEAD_HALF_MAX}}},
    {3, 1, {0.03, 0.2, 1}, {{RATE}, FILTER}},
    {3, 1, {0.5, 0.2, 1}, {{LEVEL}, FILTER}},
    {1, 2, {0.03}, {{HW_AHEAD_RATE_MIN, HW_AHEAD_RATE_MAX / 24}}},
    {9, 2, {0.02, 0.1, 0.2, 1, 0.25, 24, 0.1, 0.2, 30}, {TANK, {HOURS}}},
    {10, 1, {0.02, 0.1, 0.2, 1, 0.25, 24, 0.1, 0.2, 0.21, 30}, {TANK, {LEVEL}, {HOURS}}},
};

static void refused(int which, const double a[])
{
    double result[2] = {0, 0};
    assert_status(call(which, a, result), HW_STATUS_RANGE);
    for (int i = 0; i < functions[which].results; i++) {
        assert_no_answer(result[i]);
    }
}

/* Each argument in turn: both ends are in, though there may be no solution, the next number beyond
 * is out, and so is what is no number. */
static void ranges(void **state)
{
    (void)state;
    static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
    for (int f = 0; f < FUNCTIONS; f++) {
        for (int arg = 0; arg < functions[f].arguments; arg++) {
            double a[ARGUMENTS];
            double result[2] = {0, 0};
            memcpy(a, functions[f].good, sizeof a);
            for (int end = 0; end < 2; end++) {
                a[arg] = functions[f].ends[arg][end];
                int status = call(f, a, result);
                check(status == HW_STATUS_OK || status == HW_STATUS_NONE);
                check(isfinite(result[0]) == (status == HW_STATUS_OK));
                a[arg] = nextafter(a[arg], end ? 1e300 : -1e300);
                refused(f, a);
            }
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[arg] = not_numbers[i];
                refused(f, a);
            }
        }
    }
}

static void numbers_of_meals(void **state)
{
    (void)state;
    static const int out[] = {-1, 0, HW_AHEAD_MEALS_MAX + 1};
    double even = 0;
    double meal = 0;
    double hour = 0;
    struct hw_ahead_outlook outlook;
    for (size_t i = 0; i < sizeof out / sizeof *out; i++) {
        struct hw_ahead_tank tank = bare;
        tank.meals = out[i];
        assert_status(hw_ahead_meals(0.03, out[i], &even, &meal), HW_STATUS_RANGE);
        assert_no_answer(even);
        assert_no_answer(meal);
        assert_status(hw_ahead_level(&tank, 0.1, 24, &outlook), HW_STATUS_RANGE);
        assert_no_answer(outlook.then);
        assert_status(hw_ahead_reach(&tank, 0.1, 0.5, 24, &hour), HW_STATUS_RANGE);
        assert_no_answer(hour);
    }
    assert_status(hw_ahead_meals(0.03, HW_AHEAD_MEALS_MAX, &even, &meal), HW_STATUS_OK);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(straight_line), cmocka_unit_test(one_meal),
        cmocka_unit_test(first_order),   cmocka_unit_test(saturating),
        cmocka_unit_test(saw_tooth),     cmocka_unit_test(what_must_hold),
        cmocka_unit_test(quick_filters), cmocka_unit_test(by_hand),
        cmocka_unit_test(ranges),        cmocka_unit_test(numbers_of_meals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
