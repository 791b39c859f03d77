/* test_binder_core.c - what binds ammonia in water, and the oxygen that it takes. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/binder.h"
#include "holdwater/challenge.h"
#include "holdwater/nitrogen.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const enum hw_binder all[] = {HW_BINDER_SULFONATE, HW_BINDER_SULFINATE,
                                     HW_BINDER_SULFINATE_DIHYDRATE};

/* The molar masses are the sums of their atoms. */
static void masses(void **state)
{
    (void)state;
    const double carbon = 12.011;
    const double oxygen = HW_MOLAR_OXYGEN / 2;
    const double water = 2 * HW_MOLAR_H + oxygen;
    double sulfinate = 22.990 + carbon + 3 * HW_MOLAR_H + 3 * oxygen + 32.06;
    assert_close(HW_MOLAR_HYDROXYMETHANESULFINATE, sulfinate, 0, 1e-15);
    assert_close(HW_MOLAR_HYDROXYMETHANESULFONATE, sulfinate + oxygen, 0, 1e-15);
    assert_close(HW_MOLAR_HYDROXYMETHANESULFINATE_DIHYDRATE, sulfinate + 2 * water, 0, 1e-15);
}

static void by_hand(void **state)
{
    (void)state;
    double result = 0;
    assert_status(hw_binder_powder(HW_BINDER_SULFONATE, 14.007, 1, 1, &result), HW_STATUS_OK);
    assert_close(result, 0.134081, 0, 1e-15);
    assert_status(hw_binder_powder(HW_BINDER_SULFINATE_DIHYDRATE, 14.007, 2.5, 0.8, &result),
                  HW_STATUS_OK);
    assert_close(result, 0.154112 * 2.5 / 0.8, 0, 1e-15);
    /* A mole of sulfonate takes half a mole of O2, one of sulfinate a whole one. */
    assert_status(hw_binder_oxygen_taken(HW_BINDER_SULFONATE, 134.081, 1, 1000, &result),
                  HW_STATUS_OK);
    assert_close(result, 15.999, 0, 1e-15);
    assert_status(hw_binder_oxygen_taken(HW_BINDER_SULFINATE, 118.082, 0.5, 1000, &result),
                  HW_STATUS_OK);
    assert_close(result, 15.999, 0, 1e-15);
    assert_status(hw_binder_by_label(5, 40, 1, 75, 1.2, &result), HW_STATUS_OK);
    assert_close(result, 11.25, 0, 1e-15);
    assert_status(hw_binder_by_label(5, 40, 1, 40, 1, &result), HW_STATUS_OK);
    assert_close(result, 5, 0, 0);
}

static void unknown_agents(void **state)
{
    (void)state;
    for (int agent = -1; agent <= 3; agent += 4) {
        double result = 1;
        assert_status(hw_binder_ratio((enum hw_binder)agent, &result), HW_STATUS_CHOICE);
        assert_no_answer(result);
        result = 1;
        assert_status(hw_binder_powder((enum hw_binder)agent, (double)NAN, 1, 1, &result),
                      HW_STATUS_CHOICE);
        assert_no_answer(result);
        result = 1;
        assert_status(hw_binder_oxygen_taken((enum hw_binder)agent, (double)NAN, 1, 75, &result),
                      HW_STATUS_CHOICE);
        assert_no_answer(result);
    }
}

/* The oxygen is that of the agent in the powder: purity does not matter, nor the water of crystals;
 * it is 1.142 mg to a mg of nitrogen bound by sulfonate, twice that by sulfinate. */
static void oxygen_goes_with_nitrogen(void **state)
{
    (void)state;
    static const double moles[] = {0.5, 1, 1};
    hw_random_start(20310601);
    for (int i = 0; i < 3000; i++) {
        enum hw_binder agent = all[i % 3];
        double nitrogen = hw_random_between(HW_BINDER_NITROGEN_MIN, 1e4);
        double excess = hw_random_between(HW_BINDER_EXCESS_MIN, HW_BINDER_EXCESS_MAX);
        double purity = hw_random_between(HW_BINDER_PURITY_SHARE_MIN, HW_BINDER_PURITY_SHARE_MAX);
        double volume = hw_random_between(1, 400);
        double mass = 0;
        double oxygen = 0;
        assert_status(hw_binder_powder(agent, nitrogen, excess, purity, &mass), HW_STATUS_OK);
        assert_status(hw_binder_oxygen_taken(agent, mass, purity, volume, &oxygen), HW_STATUS_OK);
        double want = nitrogen / volume * excess * moles[agent] * 31.998 / 14.007;
        assert_close(oxygen, want, 0, 1e-14);
    }
}

/* A label made from the chemistry gives what the chemistry gives. */
static void label_and_chemistry(void **state)
{
    (void)state;
    hw_random_start(20310602);
    for (int i = 0; i < 3000; i++) {
        enum hw_binder agent = all[i % 3];
        double per = hw_random_between(1, 400);
        double binds = hw_random_between(0.1, 5);
        double volume = hw_random_between(1, 400);
        double total = hw_random_between(0, 40);
        double dose = 0;
        double mass = 0;
        double amount = 0;
        assert_status(hw_binder_powder(agent, binds * per, 1, 0.7, &dose), HW_STATUS_OK);
        assert_status(hw_binder_powder(agent, total * volume, 1, 0.7, &mass), HW_STATUS_OK);
        assert_status(hw_binder_by_label(dose, per, binds, volume, total, &amount), HW_STATUS_OK);
        assert_close(amount, mass, 0, 1e-14);
    }
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    if (which == 0) {
        return hw_binder_powder(HW_BINDER_SULFINATE, a[0], a[1], a[2], result);
    }
    if (which == 1) {
        return hw_binder_oxygen_taken(HW_BINDER_SULFINATE, a[0], a[1], a[2], result);
    }
    return hw_binder_by_label(a[0], a[1], a[2], a[3], a[4], result);
}

static const struct {
    int arguments;
    double good[5], lo[5], hi[5];
} functions[] = {
    {3,
     {90, 1, 0.99},
     {HW_BINDER_NITROGEN_MIN, HW_BINDER_EXCESS_MIN, HW_BINDER_PURITY_SHARE_MIN},
     {HW_BINDER_NITROGEN_MAX, HW_BINDER_EXCESS_MAX, HW_BINDER_PURITY_SHARE_MAX}},
    {3,
     {0.86, 0.99, 75},
     {HW_BINDER_MASS_MIN, HW_BINDER_PURITY_SHARE_MIN, HW_BINDER_VOLUME_MIN},
     {HW_BINDER_MASS_MAX, HW_BINDER_PURITY_SHARE_MAX, HW_BINDER_VOLUME_MAX}},
    {5,
     {5, 40, 1, 75, 1.2},
     {HW_BINDER_DOSE_MIN, HW_BINDER_PER_MIN, HW_BINDER_BINDS_MIN, HW_BINDER_VOLUME_MIN,
      HW_BINDER_TOTAL_MIN},
     {HW_BINDER_DOSE_MAX, HW_BINDER_PER_MAX, HW_BINDER_BINDS_MAX, HW_BINDER_VOLUME_MAX,
      HW_BINDER_TOTAL_MAX}},
};

static void out(int f, const double a[])
{
    double result = 0;
    assert_status(call(f, a, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void in(int f, const double a[])
{
    double result = 0;
    assert_status(call(f, a, &result), HW_STATUS_OK);
    check(isfinite(result));
}

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 3; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[5];
            memcpy(a, functions[f].good, sizeof a);
            a[k] = functions[f].lo[k];
            in(f, a);
            a[k] = functions[f].hi[k];
            in(f, a);
            a[k] = nextafter(functions[f].lo[k], -1);
            out(f, a);
            a[k] = nextafter(functions[f].hi[k], 1e9);
            out(f, a);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                out(f, a);
            }
        }
    }
}

/* All that hw_binder_powder can ask for, hw_binder_oxygen_taken takes. */
static void masses_within(void **state)
{
    (void)state;
    for (size_t i = 0; i < 3; i++) {
        double mass = 0;
        double oxygen = 0;
        assert_status(hw_binder_powder(all[i], HW_BINDER_NITROGEN_MAX, HW_BINDER_EXCESS_MAX,
                                       HW_BINDER_PURITY_SHARE_MIN, &mass),
                      HW_STATUS_OK);
        assert_status(
            hw_binder_oxygen_taken(all[i], mass, HW_BINDER_PURITY_SHARE_MIN, 1e5, &oxygen),
            HW_STATUS_OK);
        check(oxygen > 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(masses),
        cmocka_unit_test(by_hand),
        cmocka_unit_test(unknown_agents),
        cmocka_unit_test(oxygen_goes_with_nitrogen),
        cmocka_unit_test(label_and_chemistry),
        cmocka_unit_test(ranges),
        cmocka_unit_test(masses_within),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
