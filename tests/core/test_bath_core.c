/* test_bath_core.c - dye in a bath. */
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

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static void by_hand(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_bath_dye(12, 10, 6, &result), HW_STATUS_OK);
    assert_close(result, 7.2, 0, 1e-15);
    assert_status(hw_bath_dye(100, 23.03, 3, &result), HW_STATUS_OK);
    assert_close(result, 13.0265, 5e-5, 0);
    assert_status(hw_bath_dye_at_rate(12, 0.6, &result), HW_STATUS_OK);
    assert_close(result, 7.2, 0, 1e-15);
    assert_status(hw_bath_level(12, 10, 7.2, &result), HW_STATUS_OK);
    assert_close(result, 6, 0, 1e-15);
    assert_status(hw_bath_level(12, 10, 0, &result), HW_STATUS_OK);
    assert_close(result, 0, 0, 0);
}

static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310410);
    for (int i = 0; i < 1000; i++) {
        double volume = hw_random_between(HW_BATH_VOLUME_MIN, 200);
        double strength = hw_random_between(HW_BATH_STRENGTH_MIN, HW_BATH_STRENGTH_MAX);
        double level = hw_random_between(HW_BATH_LEVEL_MIN, HW_BATH_LEVEL_MAX);
        double dye = 0;
        double back = 0;
        assert_status(hw_bath_dye(volume, strength, level, &dye), 0);
        assert_status(hw_bath_level(volume, strength, dye, &back), 0);
        assert_close(back, level, 0, 1e-15);
    }
}

/* The amount for the largest of everything is still an amount whose level can be told. */
static void largest_of_all(void **state)
{
    (void)state;
    double dye = 0;
    double level = 0;
    assert_status(hw_bath_dye(HW_BATH_VOLUME_MAX, HW_BATH_STRENGTH_MIN, HW_BATH_LEVEL_MAX, &dye),
                  0);
    assert_status(hw_bath_level(HW_BATH_VOLUME_MAX, HW_BATH_STRENGTH_MIN, dye, &level), 0);
    assert_close(level, HW_BATH_LEVEL_MAX, 0, 1e-15);
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_bath_dye(a[0], a[1], a[2], result);
    case 1:
        return hw_bath_dye_at_rate(a[0], a[1], result);
    default:
        return hw_bath_level(a[0], a[1], a[2], result);
    }
}

static const struct {
    int arguments;
    double good[3], lo[3], hi[3];
} functions[] = {
    {3,
     {12, 10, 6},
     {HW_BATH_VOLUME_MIN, HW_BATH_STRENGTH_MIN, HW_BATH_LEVEL_MIN},
     {HW_BATH_VOLUME_MAX, HW_BATH_STRENGTH_MAX, HW_BATH_LEVEL_MAX}},
    {2,
     {12, 0.6, 0},
     {HW_BATH_VOLUME_MIN, HW_BATH_RATE_MIN, 0},
     {HW_BATH_VOLUME_MAX, HW_BATH_RATE_MAX, 0}},
    {3,
     {12, 10, 7.2},
     {HW_BATH_VOLUME_MIN, HW_BATH_STRENGTH_MIN, HW_BATH_DYE_MIN},
     {HW_BATH_VOLUME_MAX, HW_BATH_STRENGTH_MAX, HW_BATH_DYE_MAX}},
};

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 3; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[3];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            a[k] = functions[f].lo[k];
            assert_status(call(f, a, &result), HW_STATUS_OK);
            check(isfinite(result));
            a[k] = functions[f].hi[k];
            assert_status(call(f, a, &result), HW_STATUS_OK);
            check(isfinite(result));
            a[k] = nextafter(functions[f].lo[k], -1);
            assert_status(call(f, a, &result), HW_STATUS_RANGE);
            assert_no_answer(result);
            a[k] = nextafter(functions[f].hi[k], 1e9);
            assert_status(call(f, a, &result), HW_STATUS_RANGE);
            assert_no_answer(result);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                assert_status(call(f, a, &result), HW_STATUS_RANGE);
                assert_no_answer(result);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(largest_of_all),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
