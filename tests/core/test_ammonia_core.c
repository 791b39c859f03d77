/* test_ammonia_core.c - the constants of ammonium and the free share. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "core/ammonia_kernel.h"
#include "holdwater/holdwater.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

/* Every model with every scale it takes. */
static const struct pair {
    enum hw_ammonia_model model;
    enum hw_ph_scale scale;
} pairs[] = {
    {HW_AMMONIA_KHOO1977, HW_PH_METER},         {HW_AMMONIA_EPA1989, HW_PH_METER},
    {HW_AMMONIA_CLEGG1995, HW_PH_NBS_RIGOROUS}, {HW_AMMONIA_CLEGG1995, HW_PH_TOTAL},
    {HW_AMMONIA_CLEGG1995, HW_PH_FREE},         {HW_AMMONIA_CLEGG1995, HW_PH_SWS},
};
enum { PAIRS = sizeof pairs / sizeof *pairs };

static double pk_of(struct pair pair, double temp, double salinity)
{
    double pk = 0;
    check(hw_ammonia_pk(pair.model, pair.scale, temp, salinity, &pk) >= 0);
    return pk;
}

static double fraction_of(struct pair pair, double ph, double temp, double salinity)
{
    double fraction = 0;
    check(hw_ammonia_fraction(pair.model, pair.scale, ph, temp, salinity, &fraction) >= 0);
    return fraction;
}

static void version_and_statuses(void **state)
{
    (void)state;
    check(strcmp(HW_VERSION, "0.1.0") == 0);
    check(HW_STATUS_OK == 0 && HW_STATUS_STRETCHED > 0);
    check(HW_STATUS_RANGE < 0 && HW_STATUS_CHOICE < 0 && HW_STATUS_NONE < 0);
}

static void fresh_water_is_emerson(void **state)
{
    (void)state;
    assert_close(pk_of(pairs[0], 25, 0), 9.246377, 5e-7, 0);
    assert_close(pk_of(pairs[0], 20, 0), 9.402546, 5e-7, 0);
    for (int t = 0; t <= 40; t++) {
        assert_close(pk_of(pairs[0], t, 0), 0.09018 + 2729.92 / (t + 273.15), 1e-12, 0);
    }
}

/* 298 is literal in the formula of 1989: 298.15 would give 0.00486 more. */
static void the_literal_298(void **state)
{
    (void)state;
    double with_298_15 = 9.245 + 0.0415 / 298.15;
    assert_close(with_298_15 - pk_of(pairs[1], 25, 0), 0.00486, 5e-7, 0);
}

static void free_constant_in_pure_water(void **state)
{
    (void)state;
    for (int i = 2; i < PAIRS; i++) {
        assert_close(pk_of(pairs[i], 25, 0), 9.244605, 1e-12, 0);
        assert_close(pk_of(pairs[i], 10, 0), 9.244605 - 2729.33 * (1 / 298.15 - 1 / 283.15), 1e-12,
                     0);
    }
}

/* How the ratio NH3/NH4 of khoo1977 stands to that of clegg1995 on another scale, per cent. */
static double above(int pair, double temp, double salinity)
{
    return 100 *
           (pow(10, pk_of(pairs[pair], temp, salinity) - pk_of(pairs[0], temp, salinity)) - 1);
}

/* Two independent measurements agree; the bounds are those found when the default was chosen. */
static void khoo_agrees_with_clegg_free(void **state)
{
    (void)state;
    for (int t = 0; t <= 40; t++) {
        for (int s = 0; s <= 45; s++) {
            double off = above(4, t, s);
            check(off > -3.75 && off < 0.65);
            if (t >= 15 && t <= 30 && s >= 20 && s <= 40) {
                check(off > -1.05 && off < 0.45);
            }
            if (t >= 15 && t <= 30 && s >= 5 && s <= 15) {
                check(fabs(off) < 0.95);
            }
        }
    }
}

/* Bell and others 2007 say that the expression Khoo and others printed is wrong, and fit their
 * measurements anew; the corrected fit as two ocean models carry it. Ours agrees with it. */
static void khoo_agrees_with_the_new_fit(void **state)
{
    (void)state;
    for (int tenths = 50; tenths <= 400; tenths++) {
        for (int s = 20; s <= 45; s++) {
            double t = tenths / 10.0;
            double bell = 10.0423 - 0.0315536 * t + 0.003071 * s;
            double off = 100 * (pow(10, bell - pk_of(pairs[0], t, s)) - 1);
            check(off > -5.95 && off < 2.35);
            if (t >= 15 && t <= 30 && s <= 40) {
                check(off > 0.45 && off < 2.35);
            }
        }
    }
}

static void khoo_stands_above_the_rigorous_scale(void **state)
{
    (void)state;
    assert_close(above(2, 25, 35), 7.1, 0.05, 0);
    assert_close(above(2, 40, 45), -2.1, 0.05, 0);
    for (int t = 15; t <= 30; t++) {
        for (int s = 5; s <= 15; s++) {
            check(above(2, t, s) > 18.5 && above(2, t, s) < 29.5);
        }
        check(fabs(above(2, t, 0)) < 0.55);
    }
}

/* Put on the total scale by mistake, the default would give about a fifth too little. */
static void why_the_total_scale_is_refused(void **state)
{
    (void)state;
    assert_close(above(3, 25, 35), -22, 0.5, 0);
}

static void a_tenth_of_ph_is_a_quarter(void **state)
{
    (void)state;
    for (int p = 70; p <= 83; p++) {
        double ratio =
            fraction_of(pairs[0], p / 10.0 + 0.1, 25, 34) / fraction_of(pairs[0], p / 10.0, 25, 34);
        check(ratio > 1.225 && ratio < 1.265);
    }
    assert_close(pk_of(pairs[0], 25.5, 34) - pk_of(pairs[0], 24.5, 34), -0.031, 5e-4, 0);
}

static void more_ph_and_heat_more_ammonia(void **state)
{
    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        for (int s = 0; s <= 45; s += 3) {
            for (int t = 0; t <= 40; t += 2) {
                for (int p = 50; p < 100; p += 2) {
                    double here = fraction_of(pairs[i], p / 10.0, t, s);
                    check(fraction_of(pairs[i], (p + 2) / 10.0, t, s) > here);
                    if (t < 40) {
                        check(fraction_of(pairs[i], p / 10.0, t + 2, s) > here);
                    }
                }
            }
        }
    }
}

static void more_salt_less_ammonia(void **state)
{
    (void)state;
    for (int i = 0; i < 2; i++) {
        for (int t = 0; t <= 40; t++) {
            for (int s = 0; s < 45; s++) {
                check(fraction_of(pairs[i], 8.15, t, s + 1) < fraction_of(pairs[i], 8.15, t, s));
            }
        }
    }
}

static void no_jumps(void **state)
{
    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        /* The slope is infinite at salinity 0 for the fourth root of equation 18 (over after one
         * step) and for the root of the ionic strength (15 steps). */
        int first = pairs[i].scale == HW_PH_NBS_RIGOROUS     ? 15
                    : pairs[i].model == HW_AMMONIA_CLEGG1995 ? 1
                                                             : 0;
        for (int t = 0; t <= 40; t += 5) {
            for (int step = first; step < 4500; step++) {
                double s = step * 0.01;
                double next = s + 0.01 > 45 ? 45 : s + 0.01;
                check(fabs(pk_of(pairs[i], t, next) - pk_of(pairs[i], t, s)) < 1e-3);
            }
        }
    }
}

/* A pK moves between scales as a pH does, so the share stays. */
static void scales_agree_on_the_share(void **state)
{
    (void)state;
    hw_random_start(20310422);
    for (int i = 0; i < 4000; i++) {
        double ph = hw_random_between(5.3, 9.7);
        double t = hw_random_between(0, 40);
        double s = hw_random_between(0, 45);
        double on_total = fraction_of(pairs[3], ph, t, s);
        for (int k = 2; k < PAIRS; k++) {
            double there = 0;
            check(hw_ph_convert(ph, HW_PH_TOTAL, pairs[k].scale, t, s, &there) >= 0);
            assert_close(fraction_of(pairs[k], there, t, s), on_total, 0, 1e-13);
        }
        check(on_total > 0 && on_total < 1);
    }
}

static void same_bits_by_way_of_the_constant(void **state)
{
    (void)state;
    hw_random_start(20310423);
    for (int i = 0; i < 4000; i++) {
        struct pair pair = pairs[i % PAIRS];
        double ph = hw_random_between(HW_PH_MIN, HW_PH_MAX);
        double t = hw_random_between(HW_AMMONIA_TEMP_MIN, HW_AMMONIA_TEMP_MAX);
        double s = hw_random_between(HW_AMMONIA_SALINITY_MIN, HW_AMMONIA_SALINITY_MAX);
        double fraction = 0;
        assert_status(hw_ammonia_fraction_at_pk(ph, pk_of(pair, t, s), &fraction), HW_STATUS_OK);
        assert_close(fraction, fraction_of(pair, ph, t, s), 0, 0);
    }
}

static void the_share_and_back(void **state)
{
    (void)state;
    hw_random_start(20310424);
    for (int i = 0; i < 10000; i++) {
        double ph = hw_random_between(HW_PH_MIN, HW_PH_MAX);
        double pk = hw_random_between(8.5, 10.5);
        double fraction = 0;
        double back = 0;
        assert_status(hw_ammonia_fraction_at_pk(ph, pk, &fraction), HW_STATUS_OK);
        assert_status(hw_ammonia_ph_at(fraction, pk, &back), HW_STATUS_OK);
        /* Near 1 the share itself has lost digits of the pH. */
        assert_close(back, ph, 4e-15 + 1e-16 / (1 - fraction), 0);
        assert_close(back, pk - log10(1 / fraction - 1), 2e-14, 0);
    }
    double ph = 0;
    double pk = 9.3497;
    assert_status(hw_ammonia_ph_at(0.5, pk, &ph), HW_STATUS_OK);
    assert_close(ph, pk, 0, 0);
    assert_status(hw_ammonia_ph_at(5e-324, pk, &ph), HW_STATUS_OK);
    assert_close(ph, pk - 323.3062153431158, 1e-12, 0);
    assert_status(hw_ammonia_ph_at(nextafter(1, 0), pk, &ph), HW_STATUS_OK);
    assert_close(ph, pk + 15.954589770191, 1e-12, 0);
    assert_status(hw_ammonia_ph_at(0.0385, HW_AMMONIA_PK_MIN, &ph), HW_STATUS_OK);
    assert_status(hw_ammonia_ph_at(0.0385, HW_AMMONIA_PK_MAX, &ph), HW_STATUS_OK);
}

/* ---------------------------------------------------------------- statuses */

static void status_is(enum hw_ammonia_model model, enum hw_ph_scale scale, double temp,
                      double salinity, int status)
{
    double pk = 1;
    double fraction = 1;
    assert_status(hw_ammonia_pk(model, scale, temp, salinity, &pk), status);
    assert_status(hw_ammonia_fraction(model, scale, 8.15, temp, salinity, &fraction), status);
    if (status < 0) {
        assert_no_answer(pk);
        assert_no_answer(fraction);
    } else {
        check(pk > 8 && pk < 11);
        check(fraction > 0 && fraction < 1);
    }
}

static void models_and_scales_that_go_together(void **state)
{
    (void)state;
    for (int scale = -1; scale <= 5; scale++) {
        int meter = scale == HW_PH_METER ? HW_STATUS_OK : HW_STATUS_CHOICE;
        int other = scale >= 1 && scale <= 4 ? HW_STATUS_OK : HW_STATUS_CHOICE;
        enum hw_ph_scale s = (enum hw_ph_scale)scale;
        status_is(HW_AMMONIA_KHOO1977, s, 23.85, 33.85, meter);
        status_is(HW_AMMONIA_EPA1989, s, 23.85, 33.85, meter);
        status_is(HW_AMMONIA_CLEGG1995, s, 23.85, 33.85, other);
        status_is((enum hw_ammonia_model)3, s, 23.85, 33.85, HW_STATUS_CHOICE);
        status_is((enum hw_ammonia_model) - 1, s, 23.85, 33.85, HW_STATUS_CHOICE);
    }
    status_is(HW_AMMONIA_KHOO1977, HW_PH_TOTAL, (double)NAN, 33.85, HW_STATUS_CHOICE);
}

static void stretched(void **state)
{
    (void)state;
    struct pair khoo = pairs[0];
    status_is(khoo.model, khoo.scale, 0, 0, HW_STATUS_OK);
    status_is(khoo.model, khoo.scale, nextafter(5, 0), 0, HW_STATUS_OK);
    status_is(khoo.model, khoo.scale, nextafter(5, 0), 5e-324, HW_STATUS_STRETCHED);
    status_is(khoo.model, khoo.scale, 5, 33.85, HW_STATUS_OK);
    status_is(khoo.model, khoo.scale, 23.85, 44.55, HW_STATUS_OK);
    status_is(khoo.model, khoo.scale, 23.85, nextafter(44.55, 99), HW_STATUS_STRETCHED);
    status_is(HW_AMMONIA_EPA1989, HW_PH_METER, 0, 40.9, HW_STATUS_OK);
    status_is(HW_AMMONIA_EPA1989, HW_PH_METER, 23.85, nextafter(40.9, 99), HW_STATUS_STRETCHED);
    for (int i = 2; i < PAIRS; i++) {
        struct pair pair = pairs[i];
        int join = pair.scale == HW_PH_NBS_RIGOROUS ? HW_STATUS_STRETCHED : HW_STATUS_OK;
        status_is(pair.model, pair.scale, 0, 3, HW_STATUS_OK);
        status_is(pair.model, pair.scale, 23.85, nextafter(3, 99), join);
        status_is(pair.model, pair.scale, 23.85, nextafter(20, 0), join);
        status_is(pair.model, pair.scale, 23.85, 20, HW_STATUS_OK);
        status_is(pair.model, pair.scale, 40, 40, HW_STATUS_OK);
        status_is(pair.model, pair.scale, 23.85, nextafter(40, 99), HW_STATUS_STRETCHED);
    }
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        for (int corner = 0; corner < 8; corner++) {
            double ph = corner & 1 ? HW_PH_MAX : HW_PH_MIN;
            double t = corner & 2 ? HW_AMMONIA_TEMP_MAX : HW_AMMONIA_TEMP_MIN;
            double s = corner & 4 ? HW_AMMONIA_SALINITY_MAX : HW_AMMONIA_SALINITY_MIN;
            double fraction = fraction_of(pairs[i], ph, t, s);
            check(fraction > 0 && fraction < 1);
        }
    }
    double fraction = 0;
    assert_status(hw_ammonia_fraction_at_pk(HW_PH_MIN, HW_AMMONIA_PK_MAX, &fraction), HW_STATUS_OK);
    assert_close(fraction, 1 / (1 + 1e15), 0, 1e-15);
    assert_status(hw_ammonia_fraction_at_pk(HW_PH_MAX, HW_AMMONIA_PK_MIN, &fraction), HW_STATUS_OK);
    assert_close(fraction, 1 / (1 + 1e-10), 0, 1e-15);
}

static void ph_refused(double ph)
{
    for (int i = 0; i < PAIRS; i++) {
        double fraction = 1;
        assert_status(
            hw_ammonia_fraction(pairs[i].model, pairs[i].scale, ph, 23.85, 33.85, &fraction),
            HW_STATUS_RANGE);
        assert_no_answer(fraction);
    }
    double fraction = 1;
    assert_status(hw_ammonia_fraction_at_pk(ph, 9.35, &fraction), HW_STATUS_RANGE);
    assert_no_answer(fraction);
}

static void pk_refused(double pk)
{
    double result = 1;
    assert_status(hw_ammonia_fraction_at_pk(8.15, pk, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
    result = 1;
    assert_status(hw_ammonia_ph_at(0.0385, pk, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void share_refused(double fraction, int status)
{
    double ph = 1;
    assert_status(hw_ammonia_ph_at(fraction, 9.35, &ph), status);
    assert_no_answer(ph);
}

static void refusals(void **state)
{
    (void)state;
    for (int i = 0; i < PAIRS; i++) {
        struct pair pair = pairs[i];
        status_is(pair.model, pair.scale, nextafter(0, -1), 33.85, HW_STATUS_RANGE);
        status_is(pair.model, pair.scale, nextafter(40, 99), 33.85, HW_STATUS_RANGE);
        status_is(pair.model, pair.scale, 23.85, nextafter(0, -1), HW_STATUS_RANGE);
        status_is(pair.model, pair.scale, 23.85, nextafter(45, 99), HW_STATUS_RANGE);
        for (size_t k = 0; k < sizeof not_numbers / sizeof *not_numbers; k++) {
            status_is(pair.model, pair.scale, not_numbers[k], 33.85, HW_STATUS_RANGE);
            status_is(pair.model, pair.scale, 23.85, not_numbers[k], HW_STATUS_RANGE);
        }
    }
    for (size_t k = 0; k < sizeof not_numbers / sizeof *not_numbers; k++) {
        ph_refused(not_numbers[k]);
        pk_refused(not_numbers[k]);
        share_refused(not_numbers[k], HW_STATUS_RANGE);
    }
    ph_refused(nextafter(HW_PH_MIN, 0));
    ph_refused(nextafter(HW_PH_MAX, 99));
    pk_refused(nextafter(HW_AMMONIA_PK_MIN, -1));
    pk_refused(nextafter(HW_AMMONIA_PK_MAX, 99));
    share_refused(0, HW_STATUS_NONE);
    share_refused(-0.0, HW_STATUS_NONE);
    share_refused(1, HW_STATUS_NONE);
    share_refused(nextafter(0, -1), HW_STATUS_RANGE);
    share_refused(nextafter(1, 2), HW_STATUS_RANGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(version_and_statuses),
        cmocka_unit_test(fresh_water_is_emerson),
        cmocka_unit_test(the_literal_298),
        cmocka_unit_test(free_constant_in_pure_water),
        cmocka_unit_test(khoo_agrees_with_clegg_free),
        cmocka_unit_test(khoo_agrees_with_the_new_fit),
        cmocka_unit_test(khoo_stands_above_the_rigorous_scale),
        cmocka_unit_test(why_the_total_scale_is_refused),
        cmocka_unit_test(a_tenth_of_ph_is_a_quarter),
        cmocka_unit_test(more_ph_and_heat_more_ammonia),
        cmocka_unit_test(more_salt_less_ammonia),
        cmocka_unit_test(no_jumps),
        cmocka_unit_test(scales_agree_on_the_share),
        cmocka_unit_test(same_bits_by_way_of_the_constant),
        cmocka_unit_test(the_share_and_back),
        cmocka_unit_test(models_and_scales_that_go_together),
        cmocka_unit_test(stretched),
        cmocka_unit_test(ends_of_the_ranges),
        cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
