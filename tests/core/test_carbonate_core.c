/* test_carbonate_core.c - pH from alkalinity and dissolved carbon, and back. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/carbonate.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

/* From a reading to carbon and back to the reading; more alkalinity is a higher pH, more carbon a lower one. */
static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310416);
    int answered = 0;
    for (int i = 0; i < 4000; i++) {
        double ph = hw_random_between(6.5, 9);
        double alkalinity = hw_random_between(0.5, 6);
        double tan = hw_random_between(0, 8);
        double temp = hw_random_between(0, 40);
        double salinity = hw_random_between(0, 45);
        double carbon = 0;
        double back = 0;
        double other = 0;
        if (hw_carbonate_carbon(ph, alkalinity, tan, temp, salinity, &carbon) < 0) {
            continue;
        }
        answered++;
        check(hw_carbonate_ph(alkalinity, carbon, tan, temp, salinity, &back) >= 0);
        assert_close(back, ph, 1e-9, 0);
        check(hw_carbonate_ph(alkalinity + 0.1, carbon, tan, temp, salinity, &other) >= 0);
        check(other > back);
        check(hw_carbonate_ph(alkalinity, carbon + 0.1, tan, temp, salinity, &other) >= 0);
        check(other < back);
        check(hw_carbonate_ph_in_air(alkalinity, 420, tan, temp, salinity, &back) >= 0);
        check(hw_carbonate_ph_in_air(alkalinity, 800, tan, temp, salinity, &other) >= 0);
        check(other < back);
        check(hw_carbonate_ph_in_air(alkalinity + 0.1, 420, tan, temp, salinity, &other) >= 0);
        check(other > back);
    }
    check(answered > 3900);
}

static void no_answer(void **state)
{
    (void)state;
    double x = 1;
    assert_status(hw_carbonate_carbon(9.5, 0.1, 0, 25, 34, &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_carbonate_ph(0, 900, 0, 25, 0, &x), HW_STATUS_OK); /* soda water */
    check(x > 3 && x < 4.5);
    assert_status(hw_carbonate_ph(0, 1000, 0, 25, 35, &x), HW_STATUS_NONE); /* below 3 */
    assert_no_answer(x);
    assert_status(hw_carbonate_ph(20, 0, 0, 25, 0, &x), HW_STATUS_NONE); /* lye, above 12 */
    assert_no_answer(x);
    assert_status(hw_carbonate_carbon(8, 2.4, 0, 25, 12, &x), HW_STATUS_STRETCHED);
    assert_status(hw_carbonate_ph(2.4, 2.2, 0, 25, 12, &x), HW_STATUS_STRETCHED);
    assert_status(hw_carbonate_ph_in_air(2.4, 420, 0, 25, 42, &x), HW_STATUS_STRETCHED);
}

/* Water in air has a pH, at all the ends of the ranges. */
static void always_in_air(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 32; corner++) {
        double ph = 0;
        int status = hw_carbonate_ph_in_air(
            corner & 1 ? HW_CARBONATE_ALKALINITY_MAX : HW_CARBONATE_ALKALINITY_MIN,
            corner & 2 ? HW_CARBONATE_AIR_MAX : HW_CARBONATE_AIR_MIN,
            corner & 4 ? HW_CARBONATE_TAN_MAX : HW_CARBONATE_TAN_MIN,
            corner & 8 ? HW_CARBONATE_TEMP_MAX : HW_CARBONATE_TEMP_MIN,
            corner & 16 ? HW_PH_SALINITY_MAX : HW_PH_SALINITY_MIN, &ph);
        check(status >= 0 && ph > 3.5 && ph < 11.5);
    }
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_carbonate_carbon(a[0], a[1], a[2], a[3], a[4], result);
    case 1:
        return hw_carbonate_ph(a[0], a[1], a[2], a[3], a[4], result);
    default:
        return hw_carbonate_ph_in_air(a[0], a[1], a[2], a[3], a[4], result);
    }
}

static const struct {
    double good[5], lo[5], hi[5];
} functions[] = {
    {{8, 2.4, 1, 25, 34}, {5, 0, 0, 0, 0}, {10, 20, 200, 40, 45}},
    {{2.4, 2.2, 1, 25, 34}, {0, 0, 0, 0, 0}, {20, 1000, 200, 40, 45}},
    {{2.4, 420, 1, 25, 34}, {0, 100, 0, 0, 0}, {20, 10000, 200, 40, 45}},
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
    for (int f = 0; f < 3; f++) {
        for (int k = 0; k < 5; k++) {
            double a[5];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            a[k] = functions[f].lo[k];
            check(call(f, a, &result) != HW_STATUS_RANGE);
            a[k] = functions[f].hi[k];
            check(call(f, a, &result) != HW_STATUS_RANGE);
            a[k] = nextafter(functions[f].lo[k], -1);
            refused(f, a);
            a[k] = nextafter(functions[f].hi[k], 1e10);
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
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(no_answer),
        cmocka_unit_test(always_in_air),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
