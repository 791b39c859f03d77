/* test_challenge_core.c - ammonia to prove a filter. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/challenge.h"
#include "holdwater/nitrogen.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
enum { NOT_NUMBERS = sizeof not_numbers / sizeof *not_numbers };

static void molar_masses_are_sums(void **state)
{
    (void)state;
    const double oxygen = 15.999;
    assert_close(HW_MOLAR_AMMONIUM_CHLORIDE, HW_MOLAR_NH4 + 35.45, 0, 1e-15);
    assert_close(HW_MOLAR_AMMONIUM_SULFATE, 2 * HW_MOLAR_NH4 + 32.06 + 4 * oxygen, 0, 1e-15);
    assert_close(HW_MOLAR_NH4OH, HW_MOLAR_NH3 + 2 * HW_MOLAR_H + oxygen, 0, 1e-15);
    assert_close(HW_MOLAR_NITRATE, HW_MOLAR_N + 3 * oxygen, 0, 1e-15);
    assert_close(HW_MOLAR_OXYGEN, 2 * oxygen, 0, 1e-15);
    assert_close(HW_MOLAR_CALCIUM_CARBONATE, 40.078 + 12.011 + 3 * oxygen, 0, 1e-15);
}

/* 3.819 and 4.717 mg of salt to a mg of nitrogen, by weights of another edition (Cl 35.453, S
 * 32.065): 1 in 10 000. */
static void salts(void **state)
{
    (void)state;
    double mass = 0;
    assert_status(hw_challenge_salt_mass(HW_CHALLENGE_AMMONIUM_CHLORIDE, 1, 238.5, &mass), 0);
    assert_close(mass, 0.2385 * 3.818991, 0, 1e-4);
    assert_status(hw_challenge_salt_mass(HW_CHALLENGE_AMMONIUM_SULFATE, 1, 238.5, &mass), 0);
    assert_close(mass, 0.2385 * 4.717011, 0, 1e-4);
    double half = 0;
    assert_status(hw_challenge_salt_mass(HW_CHALLENGE_AMMONIUM_SULFATE, 0.5, 238.5, &half), 0);
    assert_close(half, 2 * mass, 0, 1e-15);
}

static void salt_refusals(void **state)
{
    (void)state;
    double mass = 0;
    const enum hw_challenge_salt salt = HW_CHALLENGE_AMMONIUM_CHLORIDE;
    assert_status(hw_challenge_salt_mass(salt, HW_CHALLENGE_PURITY_SHARE_MIN, 0, &mass), 0);
    assert_status(hw_challenge_salt_mass(salt, HW_CHALLENGE_PURITY_SHARE_MAX,
                                         HW_CHALLENGE_NITROGEN_MAX, &mass),
                  0);
    check(mass > 3.8e6);
    const double bad[][2] = {{nextafter(HW_CHALLENGE_PURITY_SHARE_MIN, 0), 23},
                             {nextafter(HW_CHALLENGE_PURITY_SHARE_MAX, 200), 23},
                             {0.99, nextafter(HW_CHALLENGE_NITROGEN_MIN, -1)},
                             {0.99, nextafter(HW_CHALLENGE_NITROGEN_MAX, 2e9)}};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        mass = 1;
        assert_status(hw_challenge_salt_mass(salt, bad[i][0], bad[i][1], &mass), HW_STATUS_RANGE);
        assert_no_answer(mass);
    }
    for (size_t i = 0; i < NOT_NUMBERS; i++) {
        assert_status(hw_challenge_salt_mass(salt, not_numbers[i], 23, &mass), HW_STATUS_RANGE);
        assert_no_answer(mass);
        assert_status(hw_challenge_salt_mass(salt, 0.99, not_numbers[i], &mass), HW_STATUS_RANGE);
        assert_no_answer(mass);
    }
    mass = 1;
    assert_status(hw_challenge_salt_mass((enum hw_challenge_salt)2, 0.99, 23, &mass),
                  HW_STATUS_CHOICE);
    assert_no_answer(mass);
}

static double density_of(double percent)
{
    double density = 0;
    assert_status(hw_challenge_solution_density(percent, &density), HW_STATUS_OK);
    return density;
}

/* The table's points are in tests/reference/ammonia-solution.csv. Between them: no step, and
 * falling throughout. */
static void density_falls_without_steps(void **state)
{
    (void)state;
    static const double nodes[] = {1, 2, 5, 10, 15, 20, 24, 26, 28};
    for (size_t i = 0; i < sizeof nodes / sizeof *nodes; i++) {
        assert_close(density_of(nextafter(nodes[i], 0)), density_of(nodes[i]), 1e-14, 0);
        assert_close(density_of(nextafter(nodes[i], 99)), density_of(nodes[i]), 1e-14, 0);
    }
    for (double percent = 0.5; percent <= 29.9; percent += 0.05) {
        check(density_of(percent + 0.05) < density_of(percent));
    }
    assert_close(density_of(12.5), (0.9575 + 0.9396) / 2, 1e-15, 0);
    assert_close(density_of(25), 0.9071, 1e-15, 0);
}

/* Two labels of one reagent bottle; the molarity that goes with it, 14.5, is to three figures. */
static void two_labels_of_one_bottle(void **state)
{
    (void)state;
    double strength = 0;
    double percent = 56.6 * HW_MOLAR_NH3 / HW_MOLAR_NH4OH;
    assert_close(percent, 27.5, 0.05, 0);
    assert_status(hw_challenge_solution_nitrogen(percent, &strength), HW_STATUS_OK);
    assert_close(strength / HW_MOLAR_N, 14.5, 0.05, 0);
}

static void solution_refusals(void **state)
{
    (void)state;
    double density = 0;
    double strength = 0;
    const double bad[] = {nextafter(HW_CHALLENGE_NH3_PERCENT_MIN, 0),
                          nextafter(HW_CHALLENGE_NH3_PERCENT_MAX, 99), not_numbers[0],
                          not_numbers[1], not_numbers[2]};
    assert_status(hw_challenge_solution_density(HW_CHALLENGE_NH3_PERCENT_MIN, &density),
                  HW_STATUS_OK);
    assert_close(density, 0.9960, 0, 0);
    assert_status(hw_challenge_solution_density(HW_CHALLENGE_NH3_PERCENT_MAX, &density),
                  HW_STATUS_OK);
    assert_close(density, 0.8920, 0, 0);
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        density = strength = 1;
        assert_status(hw_challenge_solution_density(bad[i], &density), HW_STATUS_RANGE);
        assert_no_answer(density);
        assert_status(hw_challenge_solution_nitrogen(bad[i], &strength), HW_STATUS_RANGE);
        assert_no_answer(strength);
    }
}

/* 2 mg/L: 9.14 mg/L of oxygen, 14.29 of CaCO3, 8.85 of nitrate (weights of another edition). */
static void nitrification(void **state)
{
    (void)state;
    double nitrate = 0;
    double oxygen = 0;
    double alkalinity = 0;
    assert_status(
        hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIUM, 2, &nitrate, &oxygen, &alkalinity), 0);
    assert_close(nitrate, 8.85361, 0, 1e-4);
    assert_close(oxygen, 9.13814, 0, 1e-4);
    assert_close(alkalinity, 14.2913, 0, 1e-4);
    double half = 0;
    assert_status(hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIA, 2, &nitrate, &oxygen, &half),
                  0);
    assert_close(half, alkalinity / 2, 0, 1e-15);
    assert_close(oxygen, 9.13814, 0, 1e-4);
    /* Atoms: the oxygen of the nitrate and of the water made is the oxygen taken. NH3 + 2 O2 ->
     * HNO3 + H2O. */
    double moles = 2 / HW_MOLAR_N;
    assert_close(2 + oxygen + moles * 3 * HW_MOLAR_H,
                 nitrate + moles * HW_MOLAR_H + moles * (2 * HW_MOLAR_H + 15.999), 1e-12, 0);
}

static void nitrification_refusals(void **state)
{
    (void)state;
    double out[3];
    assert_status(hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIA, HW_CHALLENGE_NITROGEN_MIN,
                                         &out[0], &out[1], &out[2]),
                  HW_STATUS_OK);
    assert_close(out[0] + out[1] + out[2], 0, 0, 0);
    assert_status(hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIA, HW_CHALLENGE_NITROGEN_MAX,
                                         &out[0], &out[1], &out[2]),
                  HW_STATUS_OK);
    const double bad[] = {nextafter(HW_CHALLENGE_NITROGEN_MIN, -1),
                          nextafter(HW_CHALLENGE_NITROGEN_MAX, 2e9), not_numbers[0], not_numbers[1],
                          not_numbers[2]};
    for (size_t i = 0; i <= sizeof bad / sizeof *bad; i++) {
        bool choice = i == sizeof bad / sizeof *bad;
        out[0] = out[1] = out[2] = 1;
        assert_status(hw_challenge_nitrified(choice ? (enum hw_challenge_source)2
                                                    : HW_CHALLENGE_FROM_AMMONIUM,
                                             choice ? 23 : bad[i], &out[0], &out[1], &out[2]),
                      choice ? HW_STATUS_CHOICE : HW_STATUS_RANGE);
        assert_no_answer(out[0]);
        assert_no_answer(out[1]);
        assert_no_answer(out[2]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(molar_masses_are_sums),
        cmocka_unit_test(salts),
        cmocka_unit_test(salt_refusals),
        cmocka_unit_test(density_falls_without_steps),
        cmocka_unit_test(two_labels_of_one_bottle),
        cmocka_unit_test(solution_refusals),
        cmocka_unit_test(nitrification),
        cmocka_unit_test(nitrification_refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
