/* test_chlorine_core.c - bleach into a tank, chlorine out of water. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/chlorine.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static void labels(void **state)
{
    (void)state;
    double strength = 0;
    assert_status(hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_WV, 12.5, (double)NAN, &strength),
                  HW_STATUS_OK);
    assert_close(strength, 125, 0, 1e-15);
    /* 120 g/L at 1.157 is 10.37 % by mass, and 1.05 times that as NaOCl. */
    assert_status(hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_WW, 12 / 1.157, 1.157, &strength),
                  HW_STATUS_OK);
    assert_close(strength, 120, 0, 1e-15);
    assert_status(hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_NAOCL_WW, 12 * 1.05 / 1.157, 1.157,
                                              &strength),
                  HW_STATUS_OK);
    assert_close(strength, 120, 0, 0.0005);
    assert_status(hw_chlorine_bleach_strength((enum hw_chlorine_label)3, 5, 1.1, &strength),
                  HW_STATUS_CHOICE);
    assert_no_answer(strength);
}

static void by_hand(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_chlorine_bleach_amount(100, 200, 50, &result), HW_STATUS_OK);
    assert_close(result, 400, 0, 1e-15);
    assert_status(hw_chlorine_bleach_amount(100, 200, 125, &result), HW_STATUS_OK);
    assert_close(result, 160, 0, 1e-15);
    assert_status(hw_chlorine_contact(200, 30, &result), HW_STATUS_OK);
    assert_close(result, 6000, 0, 0);
    assert_status(hw_chlorine_agent_mass(100, 200, 7, &result), HW_STATUS_OK);
    assert_close(result, 140, 0, 1e-15);
    assert_status(hw_chlorine_agent_mass(100, 200, 7.4, &result), HW_STATUS_OK);
    assert_close(result, 148, 0, 1e-15);
    assert_status(hw_chlorine_nitrogen_freed(3, &result), HW_STATUS_OK);
    assert_close(0.3 * result, 0.177785, 0, 5e-5);
}

static void ratios(void **state)
{
    (void)state;
    double penta = 0;
    double dry = 0;
    double ratio = 0;
    assert_status(hw_chlorine_agent_ratio(HW_CHLORINE_THIOSULFATE_PENTAHYDRATE, &penta),
                  HW_STATUS_OK);
    assert_close(penta, 7.0, 0, 0);
    /* Two mol of thiosulfate to one of chlorine, to tetrathionate. */
    assert_close(penta, 2 * HW_MOLAR_THIOSULFATE_PENTAHYDRATE / HW_MOLAR_CHLORINE, 0, 1e-4);
    assert_status(hw_chlorine_agent_ratio(HW_CHLORINE_THIOSULFATE_ANHYDROUS, &dry), HW_STATUS_OK);
    assert_close(dry, 4.46, 0.005, 0);
    assert_close(dry / HW_MOLAR_THIOSULFATE, penta / HW_MOLAR_THIOSULFATE_PENTAHYDRATE, 0, 1e-15);
    assert_status(hw_chlorine_agent_ratio(HW_CHLORINE_ASCORBIC_ACID, &ratio), HW_STATUS_OK);
    assert_close(ratio, 2.5, 0, 0);
    assert_status(hw_chlorine_agent_ratio((enum hw_chlorine_agent)3, &ratio), HW_STATUS_CHOICE);
    assert_no_answer(ratio);
}

/* What is poured in for a level has to come out again for that level. */
static void in_and_out(void **state)
{
    (void)state;
    hw_random_start(20310502);
    for (int i = 0; i < 1000; i++) {
        double volume = hw_random_between(HW_CHLORINE_VOLUME_MIN, 300);
        double percent = hw_random_between(HW_CHLORINE_PERCENT_MIN, HW_CHLORINE_PERCENT_MAX);
        double target = hw_random_between(HW_CHLORINE_TARGET_MIN, HW_CHLORINE_LEVEL_MAX);
        double strength = 0;
        double bleach = 0;
        double mass = 0;
        assert_status(hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_WV, percent, 0, &strength), 0);
        assert_status(hw_chlorine_bleach_amount(volume, target, strength, &bleach), 0);
        assert_status(hw_chlorine_agent_mass(volume, target, 2.5, &mass), 0);
        assert_close(mass, 2.5 * bleach * percent / 100, 0, 1e-14);
    }
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_WV, a[0], a[1], result);
    case 1:
        return hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_WW, a[0], a[1], result);
    case 2:
        return hw_chlorine_bleach_strength(HW_CHLORINE_LABEL_NAOCL_WW, a[0], a[1], result);
    case 3:
        return hw_chlorine_bleach_amount(a[0], a[1], a[2], result);
    case 4:
        return hw_chlorine_contact(a[0], a[1], result);
    case 5:
        return hw_chlorine_agent_mass(a[0], a[1], a[2], result);
    default:
        return hw_chlorine_nitrogen_freed(a[0], result);
    }
}

#define BOTTLE_LO                                                                                  \
    {                                                                                              \
        HW_CHLORINE_PERCENT_MIN, HW_CHLORINE_DENSITY_MIN                                           \
    }
#define BOTTLE_HI                                                                                  \
    {                                                                                              \
        HW_CHLORINE_PERCENT_MAX, HW_CHLORINE_DENSITY_MAX                                           \
    }

static const struct {
    int arguments;
    double good[3], lo[3], hi[3];
} functions[] = {
    {1, {5, 0}, BOTTLE_LO, BOTTLE_HI},
    {2, {5, 1.1}, BOTTLE_LO, BOTTLE_HI},
    {2, {5, 1.1}, BOTTLE_LO, BOTTLE_HI},
    {3,
     {75, 200, 50},
     {HW_CHLORINE_VOLUME_MIN, HW_CHLORINE_TARGET_MIN, HW_CHLORINE_STRENGTH_MIN},
     {HW_CHLORINE_VOLUME_MAX, HW_CHLORINE_LEVEL_MAX, HW_CHLORINE_STRENGTH_MAX}},
    {2,
     {200, 30},
     {HW_CHLORINE_LEVEL_MIN, HW_CHLORINE_MINUTES_MIN},
     {HW_CHLORINE_LEVEL_MAX, HW_CHLORINE_MINUTES_MAX}},
    {3,
     {75, 1.2, 7},
     {HW_CHLORINE_VOLUME_MIN, HW_CHLORINE_LEVEL_MIN, HW_CHLORINE_RATIO_MIN},
     {HW_CHLORINE_VOLUME_MAX, HW_CHLORINE_LEVEL_MAX, HW_CHLORINE_RATIO_MAX}},
    {1, {1.2}, {HW_CHLORINE_LEVEL_MIN}, {HW_CHLORINE_LEVEL_MAX}},
};

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 7; f++) {
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

/* Every bottle that a label can describe is one that can be poured. */
static void strengths_within(void **state)
{
    (void)state;
    for (int corner = 0; corner < 12; corner++) {
        double percent = corner & 1 ? HW_CHLORINE_PERCENT_MAX : HW_CHLORINE_PERCENT_MIN;
        double density = corner & 2 ? HW_CHLORINE_DENSITY_MAX : HW_CHLORINE_DENSITY_MIN;
        double strength = 0;
        double bleach = 0;
        assert_status(hw_chlorine_bleach_strength((enum hw_chlorine_label)(corner / 4), percent,
                                                  density, &strength),
                      0);
        assert_status(hw_chlorine_bleach_amount(75, 200, strength, &bleach), 0);
        check(bleach > 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(labels),     cmocka_unit_test(by_hand), cmocka_unit_test(ratios),
        cmocka_unit_test(in_and_out), cmocka_unit_test(ranges),  cmocka_unit_test(strengths_within),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
