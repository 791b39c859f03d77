/* test_oxygen_core.c - oxygen that water holds, and how long it lasts. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/oxygen.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static double saturation(double temp, double salinity, double pressure)
{
    double result = 0;
    check(hw_oxygen_saturation(temp, salinity, pressure, &result) >= 0);
    return result;
}

static void by_hand(void **state)
{
    (void)state;
    double x = 0;
    assert_status(hw_oxygen_pressure(0, &x), HW_STATUS_OK);
    assert_close(x, 1, 0, 0);
    assert_status(hw_oxygen_pressure_share(23.4, 1, &x), HW_STATUS_OK);
    assert_close(x, 1, 0, 4e-16);
    assert_status(hw_oxygen_hours(6.5, 4, 110, 220, 250, &x), HW_STATUS_OK);
    assert_close(x, 5, 0, 1e-15);
    assert_status(hw_oxygen_hours(4, 4, 110, 220, 250, &x), HW_STATUS_OK);
    assert_close(x, 0, 0, 0);
    assert_status(hw_oxygen_hours(1.5, 4, 110, 220, 250, &x), HW_STATUS_OK);
    assert_close(x, 0, 0, 0);
    assert_status(hw_oxygen_hours(nextafter(4, 5), 4, 110, 220, 250, &x), HW_STATUS_OK);
    check(x > 0);
}

/* Warmer, saltier and higher up, water holds less; at 5000 m it holds about what the air there
 * does. */
static void less_when_warm_salt_or_high(void **state)
{
    (void)state;
    hw_random_start(20310309);
    for (int i = 0; i < 5000; i++) {
        double temp = hw_random_between(0, 39.9);
        double salinity = hw_random_between(0, 39.9);
        double altitude = hw_random_between(-500, 4990);
        double low = 0;
        double high = 0;
        assert_status(hw_oxygen_pressure(altitude, &low), 0);
        assert_status(hw_oxygen_pressure(altitude + 10, &high), 0);
        check(high < low);
        double here = saturation(temp, salinity, low);
        check(saturation(temp + 0.1, salinity, low) < here);
        check(saturation(temp, salinity + 0.1, low) < here);
        check(saturation(temp, salinity, high) < here);
        check(here > 1.9 && here < 16);
        double share = 0;
        assert_status(hw_oxygen_pressure_share(temp, low, &share), 0);
        assert_close(here, saturation(temp, salinity, 1) * share, 0, 1e-14);
        check(fabs(share - low) < 0.05);
    }
}

/* The rates that the source's equation gives at sizes of its range; the ends of the range, and
 * that every size uses as much as hw_oxygen_hours takes. */
static void uptake_by_size(void **state)
{
    (void)state;
    double x = 0;
    assert_status(hw_oxygen_uptake(5, &x), HW_STATUS_OK);
    assert_close(x, 423, 0.5, 0);
    assert_status(hw_oxygen_uptake(10, &x), HW_STATUS_OK);
    assert_close(x, 357, 0.5, 0);
    assert_status(hw_oxygen_uptake(50, &x), HW_STATUS_OK);
    assert_close(x, 241, 0.5, 0);
    assert_status(hw_oxygen_uptake(HW_OXYGEN_FISH_FIT_MIN, &x), HW_STATUS_OK);
    assert_status(hw_oxygen_uptake(HW_OXYGEN_FISH_FIT_MAX, &x), HW_STATUS_OK);
    assert_status(hw_oxygen_uptake(nextafter(3.2, 0), &x), HW_STATUS_STRETCHED);
    assert_status(hw_oxygen_uptake(nextafter(165.6, 1e3), &x), HW_STATUS_STRETCHED);
    assert_status(hw_oxygen_uptake(HW_OXYGEN_FISH_MIN, &x), HW_STATUS_STRETCHED);
    check(x <= HW_OXYGEN_UPTAKE_MAX);
    assert_status(hw_oxygen_uptake(HW_OXYGEN_FISH_MAX, &x), HW_STATUS_STRETCHED);
    check(x >= HW_OXYGEN_UPTAKE_MIN);
}

/* Run for the hours it says, what is left is the floor; twice the fish, half the time. */
static void hours_use_it_up(void **state)
{
    (void)state;
    hw_random_start(20310310);
    for (int i = 0; i < 2000; i++) {
        double floor = hw_random_between(0, 6);
        double start = floor + hw_random_between(0.01, 6);
        double volume = hw_random_between(0.5, 500);
        double biomass = hw_random_between(5, 2000);
        double uptake = hw_random_between(50, 1000);
        double hours = 0;
        double half = 0;
        assert_status(hw_oxygen_hours(start, floor, volume, biomass, uptake, &hours), 0);
        assert_close(start * volume - hours * uptake * biomass / 1000, floor * volume, 0, 1e-12);
        assert_status(hw_oxygen_hours(start, floor, volume, 2 * biomass, uptake, &half), 0);
        assert_close(2 * half, hours, 0, 1e-15);
    }
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_oxygen_pressure(a[0], result);
    case 1:
        return hw_oxygen_pressure_share(a[0], a[1], result);
    case 2:
        return hw_oxygen_saturation(a[0], a[1], a[2], result);
    case 3:
        return hw_oxygen_uptake(a[0], result);
    default:
        return hw_oxygen_hours(a[0], a[1], a[2], a[3], a[4], result);
    }
}

static const struct {
    int arguments;
    double good[5], lo[5], hi[5];
    int hi_status[5];
    int lo_status;
} functions[] = {
    {1, {300}, {-500}, {5000}, {0}, 0},
    {2, {25, 1}, {0, 0.5}, {40, 1.1}, {0}, 0},
    {3, {25, 34, 1}, {0, 0, 0.5}, {40, 45, 1.1}, {0, 1, 0}, 0},
    {1, {9.4}, {0.01}, {1e5}, {1}, 1},
    {5, {6, 4, 110, 200, 250}, {0, 0, 0.05, 0.01, 10}, {50, 50, 1e5, 1e6, 5000}, {0}, 0},
};

static void refused(int f, const double a[])
{
    double result = 0;
    assert_status(call(f, a, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 5; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[5];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            a[k] = functions[f].lo[k];
            assert_status(call(f, a, &result), functions[f].lo_status);
            check(isfinite(result));
            a[k] = functions[f].hi[k];
            assert_status(call(f, a, &result), functions[f].hi_status[k]);
            check(isfinite(result));
            a[k] = nextafter(functions[f].lo[k], -1e3);
            refused(f, a);
            a[k] = nextafter(functions[f].hi[k], 1e10);
            refused(f, a);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                refused(f, a);
            }
        }
    }
    double result = 0;
    assert_status(hw_oxygen_saturation(25, nextafter(40, 41), 1, &result), HW_STATUS_STRETCHED);
    assert_status(hw_oxygen_saturation(25, 40, 1, &result), HW_STATUS_OK);
}

/* The ends of the altitudes lie within the pressures that the equation takes. */
static void altitudes_fit_the_equation(void **state)
{
    (void)state;
    static const double ends[] = {HW_OXYGEN_ALTITUDE_MIN, HW_OXYGEN_ALTITUDE_MAX};
    for (int i = 0; i < 2; i++) {
        double pressure = 0;
        double result = 0;
        assert_status(hw_oxygen_pressure(ends[i], &pressure), 0);
        assert_status(hw_oxygen_saturation(25, 34, pressure, &result), 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),        cmocka_unit_test(less_when_warm_salt_or_high),
        cmocka_unit_test(uptake_by_size), cmocka_unit_test(hours_use_it_up),
        cmocka_unit_test(ranges),         cmocka_unit_test(altitudes_fit_the_equation),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
