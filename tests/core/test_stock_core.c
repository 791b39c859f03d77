/* test_stock_core.c - stock solutions from weighed reagents. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/challenge.h"
#include "holdwater/nitrogen.h"
#include "holdwater/stock.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
enum { NOT_NUMBERS = sizeof not_numbers / sizeof *not_numbers };

static void molar_masses_are_sums(void **state)
{
    (void)state;
    const double water = 2 * HW_MOLAR_H + 15.999;
    assert_close(HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE,
                 HW_MOLAR_COPPER + 32.06 + 4 * 15.999 + 5 * water, 0, 1e-15);
    assert_close(HW_MOLAR_COPPER / HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE, 0.2545, 5e-5, 0);
}

/* A stock of 1 g of copper sulfate in 250 mL, by two recipes: 1.018 mg/mL. */
static void strengths_and_masses(void **state)
{
    (void)state;
    double strength = 0;
    double mass = 0;
    assert_status(hw_stock_strength(0.15, 200, 30, &strength), 0);
    assert_close(strength, 1, 0, 1e-15);
    assert_status(hw_stock_mass(HW_STOCK_COPPER_SULFATE, 1.01802, 250, &mass), 0);
    assert_close(mass, 1, 0, 1e-4);
    assert_status(hw_stock_mass(HW_STOCK_AMMONIUM_SULFATE, 11.5, 400, &mass), 0);
    assert_close(mass, 4.6 * 132.134 / 28.014, 0, 1e-15);
}

/* All of a stock in one dose is the salt that a challenge weighs. */
static void agrees_with_challenge(void **state)
{
    (void)state;
    hw_random_start(20310612);
    for (int i = 0; i < 500; i++) {
        double raises = hw_random_between(0.1, 10);
        double into = hw_random_between(5, 500);
        double make = hw_random_between(10, 1000);
        double strength = 0;
        double mass = 0;
        double weighed = 0;
        assert_status(hw_stock_strength(raises, into, make, &strength), 0);
        assert_status(hw_stock_mass(HW_STOCK_AMMONIUM_CHLORIDE, strength, make, &mass), 0);
        hw_challenge_salt_mass(HW_CHALLENGE_AMMONIUM_CHLORIDE, 1, raises * into, &weighed);
        assert_close(mass, weighed, 0, 1e-14);
        assert_status(hw_stock_mass(HW_STOCK_AMMONIUM_SULFATE, strength, make, &mass), 0);
        hw_challenge_salt_mass(HW_CHALLENGE_AMMONIUM_SULFATE, 1, raises * into, &weighed);
        assert_close(mass, weighed, 0, 1e-14);
    }
}

/* From grams in 100 g of water, or per cent, and the density of the saturated solution; rounded
 * down. */
static void solubilities(void **state)
{
    (void)state;
    double found = 0;
    const double copper = HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE;
    const double wanted[] = {372 / 1.372 * 1.075, 754 / 1.754 * 1.245,
                             171 * 1.195 * copper / (copper - 5 * 18.015)};
    for (int i = 0; i < 3; i++) {
        assert_status(hw_stock_solubility((enum hw_stock_reagent)i, &found), 0);
        assert_close(found, wanted[i], 0, 0.005);
        check(found <= wanted[i]);
    }
    assert_status(hw_stock_solubility((enum hw_stock_reagent)3, &found), HW_STATUS_CHOICE);
    assert_no_answer(found);
}

static void strength_refusals(void **state)
{
    (void)state;
    double out = 0;
    assert_status(hw_stock_strength(HW_STOCK_RAISES_MIN, HW_STOCK_INTO_MIN, HW_STOCK_PER_MAX, &out),
                  0);
    check(out > 0);
    assert_status(hw_stock_strength(HW_STOCK_RAISES_MAX, HW_STOCK_INTO_MAX, HW_STOCK_PER_MIN, &out),
                  0);
    check(out <= HW_STOCK_STRENGTH_MAX);
    const double bad[][3] = {
        {nextafter(HW_STOCK_RAISES_MIN, 0), 75, 1}, {nextafter(HW_STOCK_RAISES_MAX, 2e3), 75, 1},
        {0.5, nextafter(HW_STOCK_INTO_MIN, 0), 1},  {0.5, nextafter(HW_STOCK_INTO_MAX, 2e5), 1},
        {0.5, 75, nextafter(HW_STOCK_PER_MIN, 0)},  {0.5, 75, nextafter(HW_STOCK_PER_MAX, 2e3)},
    };
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        out = 1;
        assert_status(hw_stock_strength(bad[i][0], bad[i][1], bad[i][2], &out), HW_STATUS_RANGE);
        assert_no_answer(out);
    }
    for (size_t i = 0; i < NOT_NUMBERS; i++) {
        for (size_t k = 0; k < 3; k++) {
            double in[] = {0.5, 75, 1};
            in[k] = not_numbers[i];
            assert_status(hw_stock_strength(in[0], in[1], in[2], &out), HW_STATUS_RANGE);
            assert_no_answer(out);
        }
    }
}

static void mass_refusals(void **state)
{
    (void)state;
    double out = 0;
    const enum hw_stock_reagent copper = HW_STOCK_COPPER_SULFATE;
    assert_status(hw_stock_mass(copper, HW_STOCK_STRENGTH_MIN, HW_STOCK_MAKE_MIN, &out), 0);
    assert_close(out, 0, 0, 0);
    assert_status(hw_stock_mass(copper, HW_STOCK_STRENGTH_MAX, HW_STOCK_MAKE_MAX, &out), 0);
    const double bad[][2] = {{nextafter(HW_STOCK_STRENGTH_MIN, -1), 300},
                             {nextafter(HW_STOCK_STRENGTH_MAX, 2e9), 300},
                             {3, nextafter(HW_STOCK_MAKE_MIN, 0)},
                             {3, nextafter(HW_STOCK_MAKE_MAX, 2e5)}};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        out = 1;
        assert_status(hw_stock_mass(copper, bad[i][0], bad[i][1], &out), HW_STATUS_RANGE);
        assert_no_answer(out);
    }
    for (size_t i = 0; i < NOT_NUMBERS; i++) {
        assert_status(hw_stock_mass(copper, not_numbers[i], 300, &out), HW_STATUS_RANGE);
        assert_no_answer(out);
        assert_status(hw_stock_mass(copper, 3, not_numbers[i], &out), HW_STATUS_RANGE);
        assert_no_answer(out);
    }
    out = 1;
    assert_status(hw_stock_mass((enum hw_stock_reagent)3, 3, 300, &out), HW_STATUS_CHOICE);
    assert_no_answer(out);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(molar_masses_are_sums), cmocka_unit_test(strengths_and_masses),
        cmocka_unit_test(agrees_with_challenge), cmocka_unit_test(solubilities),
        cmocka_unit_test(strength_refusals),     cmocka_unit_test(mass_refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
