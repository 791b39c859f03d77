/* test_nitrogen_core.c - the three ways of counting total ammonia. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/nitrogen.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static void molar_masses_are_sums(void **state)
{
    (void)state;
    assert_close(HW_MOLAR_NH3, HW_MOLAR_N + 3 * HW_MOLAR_H, 0, 1e-15);
    assert_close(HW_MOLAR_NH4, HW_MOLAR_N + 4 * HW_MOLAR_H, 0, 1e-15);
}

static void published_factors(void **state)
{
    (void)state;
    double amount = 0;
    assert_status(hw_nitrogen_from_n(HW_NITROGEN_NH3, 1.0, &amount), HW_STATUS_OK);
    assert_close(amount, 1.215892, 5e-7, 0);
    assert_status(hw_nitrogen_from_n(HW_NITROGEN_NH4, 1.0, &amount), HW_STATUS_OK);
    assert_close(amount, 1.287856, 5e-7, 0);
    assert_status(hw_nitrogen_to_n(HW_NITROGEN_NH3, 1.0, &amount), HW_STATUS_OK);
    assert_close(amount, 0.822441, 5e-7, 0);
    assert_status(hw_nitrogen_to_n(HW_NITROGEN_NH4, 1.0, &amount), HW_STATUS_OK);
    assert_close(amount, 0.776484, 5e-7, 0);
    assert_status(hw_nitrogen_to_n(HW_NITROGEN_NH3, 0.233, &amount), HW_STATUS_OK);
    assert_close(amount, 0.191628853267571, 0, 1e-12);
}

static void nitrogen_itself_is_exact(void **state)
{
    (void)state;
    double amount = 0;
    assert_status(hw_nitrogen_to_n(HW_NITROGEN_N, 0.2385, &amount), HW_STATUS_OK);
    assert_close(amount, 0.2385, 0, 0);
    assert_status(hw_nitrogen_from_n(HW_NITROGEN_N, 0.2385, &amount), HW_STATUS_OK);
    assert_close(amount, 0.2385, 0, 0);
}

static void round_trips(void **state)
{
    (void)state;
    hw_random_start(20310417);
    for (int i = 0; i < 1000; i++) {
        for (int basis = HW_NITROGEN_N; basis <= HW_NITROGEN_NH4; basis++) {
            double amount = hw_random_between(0, 50);
            double as_n = 0;
            double back = 0;
            assert_status(hw_nitrogen_to_n((enum hw_nitrogen_basis)basis, amount, &as_n), 0);
            assert_status(hw_nitrogen_from_n((enum hw_nitrogen_basis)basis, as_n, &back), 0);
            assert_close(back, amount, 0, 4.5e-16);
            check(as_n <= amount);
        }
    }
}

static void ends_of_the_range(void **state)
{
    (void)state;
    double result = 0;
    for (int basis = HW_NITROGEN_N; basis <= HW_NITROGEN_NH4; basis++) {
        enum hw_nitrogen_basis b = (enum hw_nitrogen_basis)basis;
        assert_status(hw_nitrogen_to_n(b, HW_NITROGEN_MIN, &result), HW_STATUS_OK);
        assert_close(result, 0, 0, 0);
        assert_status(hw_nitrogen_to_n(b, HW_NITROGEN_MAX, &result), HW_STATUS_OK);
        check(result > 7e5);
        assert_status(hw_nitrogen_from_n(b, HW_NITROGEN_MIN, &result), HW_STATUS_OK);
        assert_close(result, 0, 0, 0);
        assert_status(hw_nitrogen_from_n(b, HW_NITROGEN_MAX, &result), HW_STATUS_OK);
        check(result >= 1e6);
    }
}

static void refused(enum hw_nitrogen_basis basis, double amount, int status)
{
    double result = 1;
    assert_status(hw_nitrogen_to_n(basis, amount, &result), status);
    assert_no_answer(result);
    result = 1;
    assert_status(hw_nitrogen_from_n(basis, amount, &result), status);
    assert_no_answer(result);
}

static void refusals(void **state)
{
    (void)state;
    for (int basis = HW_NITROGEN_N; basis <= HW_NITROGEN_NH4; basis++) {
        enum hw_nitrogen_basis b = (enum hw_nitrogen_basis)basis;
        refused(b, nextafter(HW_NITROGEN_MIN, -1), HW_STATUS_RANGE);
        refused(b, nextafter(HW_NITROGEN_MAX, 1e9), HW_STATUS_RANGE);
        for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
            refused(b, not_numbers[i], HW_STATUS_RANGE);
        }
    }
    refused((enum hw_nitrogen_basis)3, 0.25, HW_STATUS_CHOICE);
    refused((enum hw_nitrogen_basis) - 1, 0.25, HW_STATUS_CHOICE);
    refused((enum hw_nitrogen_basis)3, (double)NAN, HW_STATUS_CHOICE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(molar_masses_are_sums),    cmocka_unit_test(published_factors),
        cmocka_unit_test(nitrogen_itself_is_exact), cmocka_unit_test(round_trips),
        cmocka_unit_test(ends_of_the_range),        cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
