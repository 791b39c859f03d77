/* test_seawater_core.c - density, heat capacity and ionic strength. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/seawater.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static double density(double salinity, double temp)
{
    double result = 0;
    check(hw_seawater_density_at(temp, salinity, &result) >= 0);
    return result;
}

/* UNESCO 44, page 19 and page 16; its temperatures are on IPTS-68. */
static void published_densities(void **state)
{
    (void)state;
    assert_close(density(0, 5 / 1.00024), 999.96675, 5e-6, 0);
    assert_close(density(0, 25 / 1.00024), 997.04796, 5e-6, 0);
    assert_close(density(35, 5 / 1.00024), 1027.67547, 5e-6, 0);
    assert_close(density(35, 25 / 1.00024), 1023.34306, 5e-6, 0);
    assert_close(density(35, 0), 1028.106331, 5e-7, 0);
}

/* Against the formula of Tanaka et al. 2001, evaluated at these temperatures, to the difference
 * found between the two over 0 to 40 degrees. */
static void pure_water_is_close_to_tanaka(void **state)
{
    (void)state;
    assert_close(density(0, 0), 999.842826, 0.0016, 0);
    assert_close(density(0, 4), 999.974948, 0.0016, 0);
    assert_close(density(0, 15), 999.102572, 0.0016, 0);
    assert_close(density(0, 25), 997.047022, 0.0016, 0);
    assert_close(density(0, 40), 992.215209, 0.0016, 0);
}

static void density_rises_with_salt_and_falls_with_heat(void **state)
{
    (void)state;
    for (int t = -2; t <= 40; t++) {
        for (int s = 0; s < 45; s++) {
            check(density(s + 1, t) > density(s, t) + 0.7);
        }
    }
    /* From salinity 25 up water has its densest point below -1.3 degrees. */
    for (int s = 25; s <= 45; s++) {
        for (int t = -1; t < 40; t++) {
            check(density(s, t + 1) < density(s, t));
        }
    }
}

static double heat_capacity(double salinity, double temp)
{
    double result = 0;
    check(hw_seawater_specific_heat(temp, salinity, &result) >= 0);
    return result;
}

/* UNESCO 44, page 32; its temperatures are on IPTS-68. */
static void published_heat_capacity(void **state)
{
    (void)state;
    assert_close(heat_capacity(40, 40 / 1.00024), 3980.051, 5e-4, 0);
}

static void salt_water_takes_less_heat(void **state)
{
    (void)state;
    for (int t = -2; t <= 40; t++) {
        for (int s = 0; s < 45; s++) {
            double fall = heat_capacity(s, t) - heat_capacity(s + 1, t);
            check(fall > 4 && fall < 9);
        }
    }
}

static void ionic_strengths(void **state)
{
    (void)state;
    double molal = 1;
    assert_status(hw_seawater_ionic_strength(0, &molal), HW_STATUS_OK);
    assert_close(molal, 0, 0, 0);
    assert_status(hw_seawater_ionic_strength(35, &molal), HW_STATUS_OK);
    assert_close(molal, 697.34 / 964.825, 0, 1e-15);
    double before = -1;
    for (int s = 0; s <= 45; s++) {
        assert_status(hw_seawater_ionic_strength(s, &molal), HW_STATUS_OK);
        check(molal > before);
        before = molal;
    }
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_seawater_density_at(-2, 0, &result), HW_STATUS_OK);
    assert_status(hw_seawater_density_at(40, 0, &result), HW_STATUS_OK);
    assert_status(hw_seawater_density_at(40, 42, &result), HW_STATUS_OK);
    assert_status(hw_seawater_density_at(23.85, nextafter(42, 43), &result), HW_STATUS_STRETCHED);
    check(result > 1020 && result < 1040);
    assert_status(hw_seawater_density_at(-2, 45, &result), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_density_at(40, 45, &result), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_specific_heat(0, 0, &result), HW_STATUS_OK);
    assert_status(hw_seawater_specific_heat(35, 40, &result), HW_STATUS_OK);
    assert_status(hw_seawater_specific_heat(23.85, nextafter(40, 41), &result),
                  HW_STATUS_STRETCHED);
    assert_status(hw_seawater_specific_heat(nextafter(0, -1), 33.85, &result), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_specific_heat(nextafter(35, 36), 33.85, &result),
                  HW_STATUS_STRETCHED);
    check(result > 3980 && result < 4020);
    assert_status(hw_seawater_specific_heat(-2, 45, &result), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_specific_heat(40, 45, &result), HW_STATUS_STRETCHED);
    assert_status(hw_seawater_ionic_strength(45, &result), HW_STATUS_OK);
}

static void refused(double salinity, double temp)
{
    double result = 1;
    assert_status(hw_seawater_density_at(temp, salinity, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
    result = 1;
    assert_status(hw_seawater_specific_heat(temp, salinity, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_strength(double salinity)
{
    double result = 1;
    assert_status(hw_seawater_ionic_strength(salinity, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refusals(void **state)
{
    (void)state;
    refused(nextafter(0, -1), 23.85);
    refused(nextafter(45, 46), 23.85);
    refused(33.85, nextafter(-2, -3));
    refused(33.85, nextafter(40, 41));
    no_strength(nextafter(0, -1));
    no_strength(nextafter(45, 46));
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        refused(not_numbers[i], 23.85);
        refused(33.85, not_numbers[i]);
        no_strength(not_numbers[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_densities),
        cmocka_unit_test(pure_water_is_close_to_tanaka),
        cmocka_unit_test(density_rises_with_salt_and_falls_with_heat),
        cmocka_unit_test(published_heat_capacity),
        cmocka_unit_test(salt_water_takes_less_heat),
        cmocka_unit_test(ionic_strengths),
        cmocka_unit_test(ends_of_the_ranges),
        cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
