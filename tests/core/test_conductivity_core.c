/* test_conductivity_core.c - salinity and conductivity, both ways. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/conductivity.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static double salinity_of(double conductivity, double temp)
{
    double result = 0;
    check(hw_conductivity_salinity(conductivity, temp, &result) >= 0);
    return result;
}

static double conductivity_of(double salinity, double temp)
{
    double result = 0;
    check(hw_conductivity_at(temp, salinity, &result) >= 0);
    return result;
}

/* UNESCO 44, page 9 and the table of page 14; 42.914 is Culkin & Smith 1980. */
static void published_values(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_conductivity_salinity_by_ratio(1, 15 / 1.00024, &result), HW_STATUS_OK);
    assert_close(result, 35, 1e-6, 0);
    assert_close(salinity_of(42.914, 15 / 1.00024), 35, 1e-6, 0);
    assert_close(conductivity_of(25, 20 / 1.00024) / 42.914, 0.825481, 1e-6, 0);
    assert_close(conductivity_of(40, 10 / 1.00024) / 42.914, 1.000073, 1e-6, 0);
    assert_close(conductivity_of(35, 25), 53.0710, 5e-5, 0);
}

/* A compensated meter on water of salinity 35 at 15 degrees, and the reading taken for one at
 * 25. */
static void compensation_is_undone(void **state)
{
    (void)state;
    double seen = 0;
    double at_25 = conductivity_of(35, 15) / 0.8;
    assert_status(hw_conductivity_raw(at_25, 0.02, 15, &seen), HW_STATUS_OK);
    assert_close(salinity_of(seen, 15), 35, 1e-9, 0);
    assert_close(salinity_of(at_25, 25), 35.43, 0.005, 0);
    assert_close(salinity_of(conductivity_of(35, 30) / 1.11, 25), 35 - 0.37, 0.005, 0);
    assert_close(salinity_of(53.07, 28), 32.797, 5e-4, 0); /* corrected twice: 2.2 too low */
}

/* Both ways over the whole range; the extension joins at 2 without a step. */
static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (int i = 0; i < 20000; i++) {
        double t = hw_random_between(-2, 40);
        double s = i % 2 ? hw_random_between(0, 45) : hw_random_between(0, 2.1);
        assert_close(salinity_of(conductivity_of(s, t), t), s, 1e-11, 1e-12);
    }
    for (int t = -2; t <= 40; t++) {
        double c = conductivity_of(2, t);
        assert_close(salinity_of(c * (1 - 1e-12), t), salinity_of(c * (1 + 1e-12), t), 1e-10, 0);
    }
}

/* What the brackets rest on: conductivity rises with salinity, from the end of the dip on. */
static void salinity_rises_with_conductivity(void **state)
{
    (void)state;
    for (int t = -2; t <= 40; t++) {
        double before = -1;
        for (int i = 0; i <= 900; i++) {
            double c = conductivity_of(0.05 * i, t);
            check(c > before);
            before = c;
        }
        before = -1;
        for (int i = 1; i <= 2000; i++) {
            double s = salinity_of(0.0021 * i, t);
            check(s > before);
            before = s;
        }
    }
}

/* Just above nothing the published equation is below 0, never by more than 0.0003. */
static void dip_at_nothing(void **state)
{
    (void)state;
    double result = 0;
    double lowest = 0;
    for (int t = -2; t <= 35; t++) {
        assert_close(salinity_of(0, t), 0, 0, 0);
        for (int i = 1; i <= 100; i++) {
            int status = hw_conductivity_salinity(2e-5 * i, t, &result);
            assert_status(status, result < 0 ? HW_STATUS_STRETCHED : HW_STATUS_OK);
            lowest = result < lowest ? result : lowest;
        }
        assert_close(conductivity_of(0, t), 0, 0, 0);
        check(conductivity_of(1e-12, t) > 0.0007 && conductivity_of(1e-12, t) < 0.0025);
    }
    check(lowest < -0.0001 && lowest > -0.0003);
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_conductivity_at(-2, 0, &result), HW_STATUS_OK);
    assert_status(hw_conductivity_at(35, 42, &result), HW_STATUS_OK);
    assert_status(hw_conductivity_at(35, nextafter(42, 43), &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_at(nextafter(35, 36), 33.85, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_at(40, 45, &result), HW_STATUS_STRETCHED);
    check(result < HW_CONDUCTIVITY_MAX && result > 85);
    assert_status(hw_conductivity_salinity(result * 0.9999, 40, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_salinity(100, 40, &result), HW_STATUS_NONE);
    assert_no_answer(result);
    assert_status(hw_conductivity_salinity(100, -2, &result), HW_STATUS_NONE);
    assert_no_answer(result);
    assert_status(hw_conductivity_salinity_by_ratio(0, 23.85, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_salinity_by_ratio(0.5, 23.85, &result), HW_STATUS_OK);
    assert_status(hw_conductivity_salinity_by_ratio(2, 23.85, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_salinity_by_ratio(0.5, 40, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_ratio(100, 40, &result), HW_STATUS_STRETCHED);
    assert_status(hw_conductivity_ratio(100, -2, &result), HW_STATUS_OK);
    assert_status(hw_conductivity_raw(100, 0.03, 40, &result), HW_STATUS_OK);
    assert_close(result, 145, 1e-12, 0);
    assert_status(hw_conductivity_raw(0, 0.01, -2, &result), HW_STATUS_OK);
}

static void refused(double c, double t)
{
    double result = 1;
    assert_status(hw_conductivity_salinity(c, t, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
    result = 1;
    assert_status(hw_conductivity_ratio(c, t, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
    result = 1;
    assert_status(hw_conductivity_raw(c, 0.02, t, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refused_salinity(double s, double t)
{
    double result = 1;
    assert_status(hw_conductivity_at(t, s, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refused_ratio(double ratio, double t)
{
    double result = 1;
    assert_status(hw_conductivity_salinity_by_ratio(ratio, t, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refused_slope(double slope)
{
    double result = 1;
    assert_status(hw_conductivity_raw(33.85, slope, 23.85, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refusals(void **state)
{
    (void)state;
    refused(nextafter(0, -1), 23.85);
    refused(nextafter(100, 101), 23.85);
    refused(33.85, nextafter(-2, -3));
    refused(33.85, nextafter(40, 41));
    refused_salinity(nextafter(0, -1), 23.85);
    refused_salinity(nextafter(45, 46), 23.85);
    refused_salinity(33.85, nextafter(40, 41));
    refused_ratio(nextafter(0, -1), 23.85);
    refused_ratio(nextafter(2, 3), 23.85);
    refused_ratio(0.85, nextafter(-2, -3));
    refused_slope(nextafter(0.01, 0));
    refused_slope(nextafter(0.03, 4));
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        refused(not_numbers[i], 23.85);
        refused(33.85, not_numbers[i]);
        refused_salinity(not_numbers[i], 23.85);
        refused_salinity(33.85, not_numbers[i]);
        refused_ratio(not_numbers[i], 23.85);
        refused_ratio(0.85, not_numbers[i]);
        refused_slope(not_numbers[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_values), cmocka_unit_test(compensation_is_undone),
        cmocka_unit_test(there_and_back),   cmocka_unit_test(salinity_rises_with_conductivity),
        cmocka_unit_test(dip_at_nothing),   cmocka_unit_test(ends_of_the_ranges),
        cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
