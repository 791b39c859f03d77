/* test_dose_core.c - a medicine brought to a level; formalin in its three bases. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/dose.h"
#include "holdwater/formalin.h"
#include "holdwater/stock.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
enum { NOT_NUMBERS = sizeof not_numbers / sizeof *not_numbers };

/* A function of two or three numbers in one form, to be put through its range. */
typedef int function(const double in[], double *out);

static int active(const double in[], double *out)
{
    return hw_dose_active(in[0], in[1], in[2], out);
}

static int level(const double in[], double *out)
{
    return hw_dose_level(in[0], in[1], in[2], out);
}

static int liquid(const double in[], double *out)
{
    return hw_dose_liquid(in[0], in[1], out);
}

static int liquid_active(const double in[], double *out)
{
    return hw_dose_liquid_active(in[0], in[1], out);
}

static int solid(const double in[], double *out)
{
    return hw_dose_powder(in[0], in[1], out);
}

static int solid_active(const double in[], double *out)
{
    return hw_dose_powder_active(in[0], in[1], out);
}

static int label_share(const double in[], double *out)
{
    return hw_dose_label_share(in[0], in[1], in[2], out);
}

static int copper(const double in[], double *out)
{
    return hw_dose_copper(in[0], out);
}

static int step_level(const double in[], double *out)
{
    return hw_dose_step_level(in[0], in[1], 7, 3, out);
}

static int to_formaldehyde(const double in[], double *out)
{
    return hw_formalin_to_formaldehyde(HW_FORMALIN_SOLUTION_MG, in[0], out);
}

static int from_formaldehyde(const double in[], double *out)
{
    return hw_formalin_from_formaldehyde(HW_FORMALIN_SOLUTION_UL, in[0], out);
}

static int oxygen(const double in[], double *out)
{
    return hw_formalin_oxygen(in[0], out);
}

/* What each takes, an argument that is fine, and both ends. */
static const struct {
    function *of;
    int n;
    double fine[3], lo[3], hi[3];
} taken[] = {
    {active,
     3,
     {75, 0, 0.3},
     {HW_DOSE_VOLUME_MIN, HW_DOSE_LEVEL_MIN, 0},
     {HW_DOSE_VOLUME_MAX, 0.3, HW_DOSE_LEVEL_MAX}},
    {level,
     3,
     {75, 0.1, 23},
     {HW_DOSE_VOLUME_MIN, HW_DOSE_LEVEL_MIN, HW_DOSE_ACTIVE_MIN},
     {HW_DOSE_VOLUME_MAX, HW_DOSE_LEVEL_MAX, HW_DOSE_ACTIVE_MAX}},
    {liquid,
     2,
     {23, 6},
     {HW_DOSE_ACTIVE_MIN, HW_DOSE_STRENGTH_MIN},
     {HW_DOSE_ACTIVE_MAX, HW_DOSE_STRENGTH_MAX}},
    {liquid_active,
     2,
     {3.75, 6},
     {HW_DOSE_LIQUID_MIN, HW_DOSE_STRENGTH_MIN},
     {HW_DOSE_LIQUID_MAX, HW_DOSE_STRENGTH_MAX}},
    {solid,
     2,
     {23, 0.254},
     {HW_DOSE_ACTIVE_MIN, HW_DOSE_ACTIVE_SHARE_MIN},
     {HW_DOSE_ACTIVE_MAX, HW_DOSE_ACTIVE_SHARE_MAX}},
    {solid_active,
     2,
     {0.4, 0.254},
     {HW_DOSE_MASS_MIN, HW_DOSE_ACTIVE_SHARE_MIN},
     {HW_DOSE_MASS_MAX, HW_DOSE_ACTIVE_SHARE_MAX}},
    {label_share,
     3,
     {0.25, 75, 0.4},
     {HW_DOSE_LABEL_RAISES_MIN, HW_DOSE_LABEL_PER_MIN, HW_DOSE_LABEL_MASS_MIN},
     {HW_DOSE_LABEL_RAISES_MAX, HW_DOSE_LABEL_PER_MAX, HW_DOSE_LABEL_MASS_MAX}},
    {copper, 1, {4}, {HW_DOSE_ACTIVE_MIN}, {HW_DOSE_ACTIVE_MAX}},
    {step_level,
     2,
     {0.05, 0.2},
     {HW_DOSE_LEVEL_MIN, HW_DOSE_LEVEL_MIN},
     {HW_DOSE_LEVEL_MAX, HW_DOSE_LEVEL_MAX}},
    {to_formaldehyde, 1, {25}, {HW_FORMALIN_LEVEL_MIN}, {HW_FORMALIN_LEVEL_MAX}},
    {from_formaldehyde, 1, {9.25}, {HW_FORMALIN_LEVEL_MIN}, {HW_FORMALIN_LEVEL_MAX}},
    {oxygen, 1, {25}, {HW_FORMALIN_LEVEL_MIN}, {HW_FORMALIN_LEVEL_MAX}},
};

static void refuses(function *of, const double in[])
{
    double out = 1;
    assert_status(of(in, &out), HW_STATUS_RANGE);
    assert_no_answer(out);
}

static void both_ends_and_no_numbers(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof taken / sizeof *taken; i++) {
        for (int k = 0; k < taken[i].n; k++) {
            double in[3] = {taken[i].fine[0], taken[i].fine[1], taken[i].fine[2]};
            double out = (double)NAN;
            in[k] = taken[i].lo[k];
            assert_status(taken[i].of(in, &out), 0);
            check(isfinite(out));
            in[k] = taken[i].hi[k];
            assert_status(taken[i].of(in, &out), 0);
            check(isfinite(out));
            in[k] = nextafter(taken[i].lo[k], -1e300);
            refuses(taken[i].of, in);
            in[k] = nextafter(taken[i].hi[k], 1e300);
            refuses(taken[i].of, in);
            for (size_t no = 0; no < NOT_NUMBERS; no++) {
                in[k] = not_numbers[no];
                refuses(taken[i].of, in);
            }
        }
    }
}

static void whole_numbers_and_choices(void **state)
{
    (void)state;
    double out = 1;
    static const int bad[][2] = {{0, 0}, {HW_DOSE_STEPS_MAX + 1, 1}, {7, -1}, {7, 8}};
    for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
        assert_status(hw_dose_step_level(0.05, 0.2, bad[i][0], bad[i][1], &out), HW_STATUS_RANGE);
        assert_no_answer(out);
    }
    assert_status(hw_dose_step_level(0.05, 0.2, HW_DOSE_STEPS_MAX, HW_DOSE_STEPS_MAX, &out), 0);
    assert_close(out, 0.2, 0, 1e-15);
    assert_status(hw_dose_step_level(0.05, 0.2, HW_DOSE_STEPS_MIN, 0, &out), 0);
    assert_close(out, 0.05, 0, 0);
    out = 1;
    assert_status(hw_formalin_to_formaldehyde((enum hw_formalin_basis)3, 25, &out),
                  HW_STATUS_CHOICE);
    assert_no_answer(out);
    out = 1;
    assert_status(hw_formalin_from_formaldehyde((enum hw_formalin_basis)3, 25, &out),
                  HW_STATUS_CHOICE);
    assert_no_answer(out);
}

/* The check value of the project: 0.3 mg/L in 75 L by a label of 1 mL in 40 L for 0.15 mg/L. */
static void by_a_label(void **state)
{
    (void)state;
    double strength = 0;
    double mg = 0;
    double ml = 0;
    assert_status(hw_stock_strength(0.15, 40, 1, &strength), 0);
    assert_status(hw_dose_active(75, 0, 0.3, &mg), 0);
    assert_status(hw_dose_liquid(mg, strength, &ml), 0);
    assert_close(strength, 6, 0, 1e-15);
    assert_close(mg, 22.5, 0, 1e-15);
    assert_close(ml, 3.75, 0, 1e-15);
}

/* What is dosed for a target makes the target, as a liquid and as a powder; steps end there and
 * never fall. */
static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310302);
    for (int i = 0; i < 2000; i++) {
        double volume = hw_random_between(2, 900);
        double now = hw_random_between(0, 3);
        double target = now + hw_random_between(0, 20);
        double strength = hw_random_between(0.01, 600);
        double share = hw_random_between(0.01, 1);
        double mg = 0;
        double amount = 0;
        double back = 0;
        assert_status(hw_dose_active(volume, now, target, &mg), 0);
        assert_status(hw_dose_level(volume, now, mg, &back), 0);
        assert_close(back, target, 0, 1e-14);
        assert_status(hw_dose_liquid(mg, strength, &amount), 0);
        assert_status(hw_dose_liquid_active(amount, strength, &back), 0);
        assert_close(back, mg, 0, 1e-14);
        assert_status(hw_dose_powder(mg, share, &amount), 0);
        assert_status(hw_dose_powder_active(amount, share, &back), 0);
        assert_close(back, mg, 0, 1e-14);
        double before = now;
        for (int step = 0; step <= 9; step++) {
            assert_status(hw_dose_step_level(now, target, 9, step, &back), 0);
            check(back >= before);
            before = back;
        }
        assert_close(back, target, 0, 1e-14);
    }
}

static void bases_go_there_and_back(void **state)
{
    (void)state;
    for (int basis = 0; basis < 3; basis++) {
        double formaldehyde = 0;
        double back = 0;
        assert_status(
            hw_formalin_to_formaldehyde((enum hw_formalin_basis)basis, 231.7, &formaldehyde), 0);
        assert_status(
            hw_formalin_from_formaldehyde((enum hw_formalin_basis)basis, formaldehyde, &back), 0);
        assert_close(back, 231.7, 0, 1e-15);
    }
}

/* Copper out of the crystals, and the crystals that a stock is weighed from, agree. */
static void agrees_with_stock(void **state)
{
    (void)state;
    double mg = 0;
    double weighed = 0;
    assert_status(hw_dose_copper(1473.403125, &mg), 0);
    assert_status(hw_stock_mass(HW_STOCK_COPPER_SULFATE, 0.375, 1000, &weighed), 0);
    assert_close(mg, 375, 0, 1e-9);
    assert_close(weighed, 1.473403125, 0, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ends_and_no_numbers),
        cmocka_unit_test(whole_numbers_and_choices),
        cmocka_unit_test(by_a_label),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(bases_go_there_and_back),
        cmocka_unit_test(agrees_with_stock),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
