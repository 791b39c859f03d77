/* test_hydrometer_core.c - specific gravity, density and the salinity behind them. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/hydrometer.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const double f60 = 140.0 / 9;

static double read_off(double scale, double water, double expansion, double reading, double temp)
{
    struct hw_hydrometer hydrometer = {scale, water, expansion};
    double density = 0;
    double salinity = 0;
    assert_status(hw_hydrometer_density(&hydrometer, reading, temp, &density), HW_STATUS_OK);
    check(hw_seawater_salinity_by_density(density, temp, &salinity) >= 0);
    return salinity;
}

static double shown(double scale, double water, double salinity)
{
    struct hw_hydrometer hydrometer = {scale, water, HW_HYDROMETER_GLASS};
    double reading = 0;
    check(hw_hydrometer_reading(&hydrometer, salinity, &reading) >= 0);
    return reading;
}

/* One number, three meanings. */
static void reference_decides(void **state)
{
    (void)state;
    assert_close(read_off(25, 25, HW_HYDROMETER_GLASS, 1.0264, 25), 35.04, 0.005, 0);
    assert_close(read_off(f60, f60, HW_HYDROMETER_GLASS, 1.0264, 25), 37.39, 0.005, 0);
    assert_close(read_off(20, 4, HW_HYDROMETER_GLASS, 1.0264, 25), 38.84, 0.005, 0);
}

/* The correction for glass: -0.32 at 25 degrees, -0.42 at 28, on a scale 60F/60F. */
static void glass_grows(void **state)
{
    (void)state;
    assert_close(read_off(f60, f60, HW_HYDROMETER_GLASS, 1.0264, 25) -
                     read_off(f60, f60, 0, 1.0264, 25),
                 -0.32, 0.005, 0);
    assert_close(read_off(f60, f60, HW_HYDROMETER_GLASS, 1.0264, 28) -
                     read_off(f60, f60, 0, 1.0264, 28),
                 -0.42, 0.005, 0);
}

static void readings_of_sea_water(void **state)
{
    (void)state;
    assert_close(shown(f60, f60, 35), 1.02686, 5e-6, 0);
    assert_close(shown(20, 20, 35), 1.02660, 5e-6, 0);
    assert_close(shown(25, 25, 35), 1.02637, 5e-6, 0);
    assert_close(shown(15, 4, 35), 1.02600, 5e-6, 0);
    assert_close(shown(20, 4, 35), 1.02479, 5e-6, 0);
    assert_close(shown(25, 4, 35), 1.02337, 5e-6, 0);
}

static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (int i = 0; i < 20000; i++) {
        double t = hw_random_between(-2, 40);
        double s = hw_random_between(0, 45);
        double density = 0;
        double found = 0;
        check(hw_seawater_density_at(t, s, &density) >= 0);
        int status = hw_seawater_salinity_by_density(density, t, &found);
        assert_status(status, found > 42 ? HW_STATUS_STRETCHED : HW_STATUS_OK);
        assert_close(found, s, 5e-13, 1e-12);
    }
}

/* At its own temperature a hydrometer shows what it should, whatever it is made of. */
static void true_at_its_own_temperature(void **state)
{
    (void)state;
    assert_close(read_off(25, 25, 1e-3, shown(25, 25, 33.85), 25), 33.85, 0, 1e-12);
    assert_close(read_off(20, 4, HW_HYDROMETER_GLASS, shown(20, 4, 11.7), 20), 11.7, 0, 1e-12);
}

/* Half a unit below fresh water is still told; at fresh water it is 0. */
static void below_fresh_water(void **state)
{
    (void)state;
    double fresh = 0;
    double found = 1;
    check(hw_seawater_density_at(23.85, 0, &fresh) == HW_STATUS_OK);
    assert_status(hw_seawater_salinity_by_density(fresh, 23.85, &found), HW_STATUS_OK);
    assert_close(found, 0, 0, 0);
    assert_status(hw_seawater_salinity_by_density(fresh - 0.3, 23.85, &found), HW_STATUS_STRETCHED);
    check(found < -0.35 && found > -0.45);
    assert_status(hw_seawater_salinity_by_density(fresh - 0.4, 23.85, &found), HW_STATUS_NONE);
    assert_no_answer(found);
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    double salt = 0;
    double found = 0;
    assert_status(hw_seawater_density_at(23.85, 45, &salt), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_salinity_by_density(salt, 23.85, &found), HW_STATUS_STRETCHED);
    assert_close(found, 45, 0, 1e-12);
    assert_status(hw_seawater_salinity_by_density(nextafter(salt, 2000), 23.85, &found),
                  HW_STATUS_NONE);
    assert_no_answer(found);
    assert_status(hw_seawater_salinity_by_density(800, -2, &found), HW_STATUS_NONE);
    assert_status(hw_seawater_salinity_by_density(1300, 40, &found), HW_STATUS_NONE);
    struct hw_hydrometer lowest = {0, 40, 0};
    struct hw_hydrometer highest = {40, 0, 1e-3};
    assert_status(hw_hydrometer_density(&lowest, 0.9, -2, &found), HW_STATUS_OK);
    assert_status(hw_hydrometer_density(&highest, 1.2, 40, &found), HW_STATUS_OK);
    assert_status(hw_hydrometer_reading(&highest, 45, &found), HW_STATUS_STRETCHED);
    assert_status(hw_hydrometer_reading(&lowest, 0, &found), HW_STATUS_OK);
}

static void no_density(double scale, double water, double expansion, double reading, double temp)
{
    struct hw_hydrometer hydrometer = {scale, water, expansion};
    double result = 1;
    assert_status(hw_hydrometer_density(&hydrometer, reading, temp, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_reading(double scale, double salinity)
{
    struct hw_hydrometer hydrometer = {scale, 4, 0};
    double result = 1;
    assert_status(hw_hydrometer_reading(&hydrometer, salinity, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_salinity(double density, double temp)
{
    double result = 1;
    assert_status(hw_seawater_salinity_by_density(density, temp, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refusals(void **state)
{
    (void)state;
    no_density(nextafter(0, -1), 25, 0, 1.0264, 23.85);
    no_density(nextafter(40, 41), 25, 0, 1.0264, 23.85);
    no_density(25, nextafter(0, -1), 0, 1.0264, 23.85);
    no_density(25, nextafter(40, 41), 0, 1.0264, 23.85);
    no_density(25, 25, nextafter(0, -1), 1.0264, 23.85);
    no_density(25, 25, nextafter(1e-3, 1), 1.0264, 23.85);
    no_density(25, 25, 0, nextafter(0.9, 0), 23.85);
    no_density(25, 25, 0, nextafter(1.2, 2), 23.85);
    no_density(25, 25, 0, 1.0264, nextafter(-2, -3));
    no_density(25, 25, 0, 1.0264, nextafter(40, 41));
    no_reading(nextafter(40, 41), 33.85);
    no_reading(25, nextafter(45, 46));
    no_reading(25, nextafter(0, -1));
    no_salinity(nextafter(800, 0), 23.85);
    no_salinity(nextafter(1300, 2000), 23.85);
    no_salinity(1023.4, nextafter(40, 41));
    no_salinity(1023.4, nextafter(-2, -3));
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        no_density(not_numbers[i], 25, 0, 1.0264, 23.85);
        no_density(25, not_numbers[i], 0, 1.0264, 23.85);
        no_density(25, 25, not_numbers[i], 1.0264, 23.85);
        no_density(25, 25, 0, not_numbers[i], 23.85);
        no_density(25, 25, 0, 1.0264, not_numbers[i]);
        no_reading(not_numbers[i], 33.85);
        no_reading(25, not_numbers[i]);
        no_salinity(not_numbers[i], 23.85);
        no_salinity(1023.4, not_numbers[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reference_decides),           cmocka_unit_test(glass_grows),
        cmocka_unit_test(readings_of_sea_water),       cmocka_unit_test(there_and_back),
        cmocka_unit_test(true_at_its_own_temperature), cmocka_unit_test(below_fresh_water),
        cmocka_unit_test(ends_of_the_ranges),          cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
