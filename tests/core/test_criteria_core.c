/* test_criteria_core.c - published fresh-water limits. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/criteria.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const enum hw_criteria_limit criteria[] = {
    HW_CRITERIA_EPA2013_CCC, HW_CRITERIA_EPA2013_CMC_PRESENT, HW_CRITERIA_EPA2013_CMC_ABSENT};
enum { CRITERIA = sizeof criteria / sizeof *criteria };

static double criterion(enum hw_criteria_limit which, double ph, double temp)
{
    double result = 0;
    check(hw_criteria_epa2013(which, ph, temp, &result) >= 0);
    return result;
}

/* The magnitudes the document is quoted by, to two figures; the sheet of reference rows has the
 * tables. */
static void published_magnitudes(void **state)
{
    (void)state;
    assert_close(criterion(HW_CRITERIA_EPA2013_CMC_PRESENT, 7, 20), 17, 0.5, 0);
    assert_close(criterion(HW_CRITERIA_EPA2013_CCC, 7, 20), 1.9, 0.05, 0);
}

static void fall_with_ph_and_with_heat(void **state)
{
    (void)state;
    for (int i = 0; i < CRITERIA; i++) {
        for (int t = 0; t <= 40; t++) {
            for (int p = 50; p < 100; p++) {
                double ph = p / 10.0;
                check(criterion(criteria[i], (p + 1) / 10.0, t) < criterion(criteria[i], ph, t));
                if (t < 40) {
                    check(criterion(criteria[i], ph, t + 1) <= criterion(criteria[i], ph, t));
                }
            }
        }
    }
}

static void chronic_is_flat_below_seven_degrees(void **state)
{
    (void)state;
    assert_close(criterion(HW_CRITERIA_EPA2013_CCC, 7.85, 0),
                 criterion(HW_CRITERIA_EPA2013_CCC, 7.85, 7), 0, 0);
    check(criterion(HW_CRITERIA_EPA2013_CCC, 7.85, 7.01) <
          criterion(HW_CRITERIA_EPA2013_CCC, 7.85, 7));
}

static void salmonids_lower_the_acute_limit_in_the_cold(void **state)
{
    (void)state;
    for (int p = 50; p <= 100; p++) {
        for (int t = 0; t <= 40; t++) {
            double present = criterion(HW_CRITERIA_EPA2013_CMC_PRESENT, p / 10.0, t);
            double absent = criterion(HW_CRITERIA_EPA2013_CMC_ABSENT, p / 10.0, t);
            check(present <= absent * (1 + 1e-15));
            check(criterion(HW_CRITERIA_EPA2013_CCC, p / 10.0, t) < present);
            if (t >= 17) {
                assert_close(present, absent, 0, 1e-15);
            }
        }
    }
    check(criterion(HW_CRITERIA_EPA2013_CMC_PRESENT, 7.4, 5) <
          0.8 * criterion(HW_CRITERIA_EPA2013_CMC_ABSENT, 7.4, 5));
    assert_close(criterion(HW_CRITERIA_EPA2013_CMC_ABSENT, 7.4, 0),
                 criterion(HW_CRITERIA_EPA2013_CMC_ABSENT, 7.4, 9), 0, 0);
}

static void ph_and_back(void **state)
{
    (void)state;
    hw_random_start(20310419);
    for (int i = 0; i < 5000; i++) {
        double ph = hw_random_between(5.05, 9.95);
        double temp = hw_random_between(0, 40);
        double back = 0;
        int status =
            hw_criteria_epa2013_ccc_ph(criterion(HW_CRITERIA_EPA2013_CCC, ph, temp), temp, &back);
        assert_close(back, ph, 1e-11, 0);
        assert_status(status, ph < 6.5 || ph > 9 || temp > 30);
    }
}

static int ph_status(double tan_n, double temp)
{
    double ph = 1;
    int status = hw_criteria_epa2013_ccc_ph(tan_n, temp, &ph);
    if (status < 0) {
        assert_no_answer(ph);
    } else {
        check(isfinite(ph));
    }
    return status;
}

static void levels_no_ph_reaches(void **state)
{
    (void)state;
    /* At 20 degrees the two ends of the curve are 0.8876 x 2.126 times its two coefficients. */
    double lowest = 0.8876 * 2.126 * 0.0278;
    double highest = 0.8876 * 2.126 * 1.1994;
    assert_status(ph_status(lowest * (1 - 1e-9), 20), HW_STATUS_NONE);
    assert_status(ph_status(lowest * (1 + 1e-9), 20), HW_STATUS_STRETCHED);
    assert_status(ph_status(highest * (1 - 1e-9), 20), HW_STATUS_STRETCHED);
    assert_status(ph_status(highest * (1 + 1e-9), 20), HW_STATUS_NONE);
    assert_status(ph_status(HW_CRITERIA_EPA2013_TAN_MIN, 20), HW_STATUS_NONE);
    assert_status(ph_status(HW_CRITERIA_EPA2013_TAN_MAX, 20), HW_STATUS_NONE);
    assert_status(ph_status(0.784, 20), HW_STATUS_OK);
    assert_status(ph_status(nextafter(HW_CRITERIA_EPA2013_TAN_MIN, -1), 20), HW_STATUS_RANGE);
    assert_status(ph_status(nextafter(HW_CRITERIA_EPA2013_TAN_MAX, 1e9), 20), HW_STATUS_RANGE);
    assert_status(ph_status(0.784, nextafter(HW_CRITERIA_EPA2013_TEMP_MIN, -1)), HW_STATUS_RANGE);
    assert_status(ph_status(0.784, nextafter(HW_CRITERIA_EPA2013_TEMP_MAX, 99)), HW_STATUS_RANGE);
    assert_status(ph_status(0.784, HW_CRITERIA_EPA2013_TEMP_MIN), HW_STATUS_OK);
    assert_status(ph_status(0.384, HW_CRITERIA_EPA2013_TEMP_MAX), HW_STATUS_STRETCHED);
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        assert_status(ph_status(not_numbers[i], 20), HW_STATUS_RANGE);
        assert_status(ph_status(0.784, not_numbers[i]), HW_STATUS_RANGE);
    }
}

static int status_of(enum hw_criteria_limit which, double ph, double temp)
{
    double result = 1;
    int status = hw_criteria_epa2013(which, ph, temp, &result);
    if (status < 0) {
        assert_no_answer(result);
    } else {
        check(isfinite(result) && result > 0);
    }
    return status;
}

static void statuses(void **state)
{
    (void)state;
    for (int i = 0; i < CRITERIA; i++) {
        enum hw_criteria_limit which = criteria[i];
        assert_status(status_of(which, 6.5, 0), HW_STATUS_OK);
        assert_status(status_of(which, 9, 30), HW_STATUS_OK);
        assert_status(status_of(which, nextafter(6.5, 0), 18.5), HW_STATUS_STRETCHED);
        assert_status(status_of(which, nextafter(9, 99), 18.5), HW_STATUS_STRETCHED);
        assert_status(status_of(which, 7.85, nextafter(30, 99)), HW_STATUS_STRETCHED);
        assert_status(status_of(which, HW_CRITERIA_EPA2013_PH_MIN, 18.5), HW_STATUS_STRETCHED);
        assert_status(status_of(which, HW_CRITERIA_EPA2013_PH_MAX, 18.5), HW_STATUS_STRETCHED);
        assert_status(status_of(which, 7.85, HW_CRITERIA_EPA2013_TEMP_MAX), HW_STATUS_STRETCHED);
        assert_status(status_of(which, nextafter(HW_CRITERIA_EPA2013_PH_MIN, 0), 18.5),
                      HW_STATUS_RANGE);
        assert_status(status_of(which, nextafter(HW_CRITERIA_EPA2013_PH_MAX, 99), 18.5),
                      HW_STATUS_RANGE);
        assert_status(status_of(which, 7.85, nextafter(HW_CRITERIA_EPA2013_TEMP_MIN, -1)),
                      HW_STATUS_RANGE);
        assert_status(status_of(which, 7.85, nextafter(HW_CRITERIA_EPA2013_TEMP_MAX, 99)),
                      HW_STATUS_RANGE);
        for (size_t k = 0; k < sizeof not_numbers / sizeof *not_numbers; k++) {
            assert_status(status_of(which, not_numbers[k], 18.5), HW_STATUS_RANGE);
            assert_status(status_of(which, 7.85, not_numbers[k]), HW_STATUS_RANGE);
        }
    }
    assert_status(status_of((enum hw_criteria_limit)3, 7.85, 18.5), HW_STATUS_CHOICE);
    assert_status(status_of((enum hw_criteria_limit) - 1, 7.85, 18.5), HW_STATUS_CHOICE);
    assert_status(status_of((enum hw_criteria_limit)3, (double)NAN, 18.5), HW_STATUS_CHOICE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(published_magnitudes),
        cmocka_unit_test(fall_with_ph_and_with_heat),
        cmocka_unit_test(chronic_is_flat_below_seven_degrees),
        cmocka_unit_test(salmonids_lower_the_acute_limit_in_the_cold),
        cmocka_unit_test(ph_and_back),
        cmocka_unit_test(levels_no_ph_reaches),
        cmocka_unit_test(statuses),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
