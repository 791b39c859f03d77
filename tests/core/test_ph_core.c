/* test_ph_core.c - scales of pH. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "core/ph_kernel.h"
#include "holdwater/ph.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const enum hw_ph_scale scales[] = {HW_PH_METER, HW_PH_NBS_RIGOROUS, HW_PH_TOTAL, HW_PH_FREE,
                                          HW_PH_SWS};
enum { SCALES = sizeof scales / sizeof *scales };

static double offset(enum hw_ph_scale scale, double temp, double salinity)
{
    double result = 0;
    check(hw_ph_offset(scale, temp, salinity, &result) >= 0);
    return result;
}

/* pH on a scale less pH on the total scale: values of an independent evaluation at 40 digits,
 * printed to four decimals. */
static void offsets_from_the_total_scale(void **state)
{
    static const struct {
        double temp, salinity, free, sws, nbs;
    } rows[] = {
        {15, 20, 0.0586, -0.0070, 0.1342}, {15, 35, 0.0764, -0.0087, 0.1152},
        {25, 20, 0.0806, -0.0080, 0.1493}, {25, 30, 0.1011, -0.0093, 0.1416},
        {25, 35, 0.1077, -0.0097, 0.1370}, {25, 40, 0.1103, -0.0101, 0.1318},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double t = rows[i].temp;
        double s = rows[i].salinity;
        double total = offset(HW_PH_TOTAL, t, s);
        assert_close(offset(HW_PH_FREE, t, s) - total, rows[i].free, 5e-5, 0);
        assert_close(offset(HW_PH_SWS, t, s) - total, rows[i].sws, 5e-5, 0);
        assert_close(offset(HW_PH_NBS_RIGOROUS, t, s) - total, rows[i].nbs, 5e-5, 0);
        assert_close(offset(HW_PH_METER, t, s) - total, rows[i].nbs, 5e-5, 0);
    }
}

static void constants_as_published(void **state)
{
    (void)state;
    const struct hw_powers of = hw_powers_of(25, 35);
    double ln_sulfate = hw_log(hw_sulfate_constant(&of));
    assert_close(ln_sulfate, -2.30, 5e-3, 0);
    assert_close(ln_sulfate, -2.29957, 5e-6, 0);
    assert_close(hw_debye_hueckel(25), 0.5115, 5e-5, 0);
}

static void all_scales_meet_in_fresh_water(void **state)
{
    (void)state;
    for (int i = 0; i < SCALES; i++) {
        for (int t = 0; t <= 45; t += 5) {
            assert_close(offset(scales[i], t, 0), 0, 0, 0);
        }
    }
}

static void order_of_the_scales(void **state)
{
    (void)state;
    for (int t = 0; t <= 45; t++) {
        for (int s = 1; s <= 45; s++) {
            double total = offset(HW_PH_TOTAL, t, s);
            check(offset(HW_PH_SWS, t, s) < total);
            check(total < 0);
            assert_close(offset(HW_PH_FREE, t, s), 0, 0, 0);
            assert_close(offset(HW_PH_METER, t, s), offset(HW_PH_NBS_RIGOROUS, t, s), 0, 0);
        }
    }
}

/* The two curves behind the join, at the salinity where they cross. */
static void curves_cross_near_six(void **state)
{
    static const struct {
        double temp, apart;
    } rows[] = {{10, 0.002}, {15, 0.002}, {20, 0.002}, {25, 0.002}, {30, 0.003}, {40, 0.011}};
    (void)state;
    double strength = hw_ionic_strength(6);
    double root = sqrt(strength);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double t = rows[i].temp;
        const struct hw_powers of = hw_powers_of(t, 6);
        const struct hw_over_free over = hw_over_free_of(&of);
        double joined = hw_log10_phi(&of, &over);
        double davies = -hw_debye_hueckel(t) * (root / (1 + root) - 0.3 * strength);
        double measured = hw_log10(hw_activity_over_sws(of.kelvin, 6) * over.sws);
        check(fabs(davies - measured) < rows[i].apart);
        check(joined <= fmax(davies, measured));
        check(joined >= fmin(davies, measured));
    }
    /* 0.10 to 0.11 at salinity 5 to 10. */
    assert_close(offset(HW_PH_METER, 25, 5), 0.11, 5e-3, 0);
    assert_close(offset(HW_PH_METER, 25, 10), 0.10, 5e-3, 0);
}

static void no_jumps(void **state)
{
    (void)state;
    for (int i = 0; i < SCALES; i++) {
        for (int t = 0; t <= 45; t += 5) {
            /* The square root of the ionic strength rises steeply from fresh water. */
            for (int step = 15; step < 4500; step++) {
                double s = step * 0.01;
                check(fabs(offset(scales[i], t, s + 0.01 > 45 ? 45 : s + 0.01) -
                           offset(scales[i], t, s)) < 1e-3);
            }
            for (double join = 3; join <= 9; join += 6) {
                assert_close(offset(scales[i], t, nextafter(join, 0)), offset(scales[i], t, join),
                             1e-12, 0);
                assert_close(offset(scales[i], t, nextafter(join, 99)), offset(scales[i], t, join),
                             1e-12, 0);
            }
        }
    }
}

static void round_trips(void **state)
{
    (void)state;
    hw_random_start(20310418);
    for (int i = 0; i < 4000; i++) {
        double ph = hw_random_between(5.5, 9.5);
        double t = hw_random_between(HW_PH_TEMP_MIN, HW_PH_TEMP_MAX);
        double s = hw_random_between(HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX);
        enum hw_ph_scale from = scales[i % SCALES];
        enum hw_ph_scale to = scales[i / SCALES % SCALES];
        double there = 0;
        double back = 0;
        check(hw_ph_convert(ph, from, to, t, s, &there) >= 0);
        check(hw_ph_convert(there, to, from, t, s, &back) >= 0);
        assert_close(back, ph, 4e-15, 0);
        assert_close(there, ph + (offset(to, t, s) - offset(from, t, s)), 0, 0);
        if (from == to) {
            assert_close(there, ph, 0, 0);
        }
    }
}

static int offset_status(enum hw_ph_scale scale, double salinity)
{
    double result = 0;
    int status = hw_ph_offset(scale, 23.85, salinity, &result);
    check(status < 0 || isfinite(result));
    return status;
}

static void stretched(void **state)
{
    (void)state;
    for (int i = 0; i < SCALES; i++) {
        int nbs = scales[i] == HW_PH_METER || scales[i] == HW_PH_NBS_RIGOROUS;
        assert_status(offset_status(scales[i], 0), HW_STATUS_OK);
        assert_status(offset_status(scales[i], 3), HW_STATUS_OK);
        assert_status(offset_status(scales[i], nextafter(3, 4)), nbs);
        assert_status(offset_status(scales[i], nextafter(20, 19)), nbs);
        assert_status(offset_status(scales[i], 20), HW_STATUS_OK);
        assert_status(offset_status(scales[i], 40), HW_STATUS_OK);
        assert_status(offset_status(scales[i], nextafter(40, 41)), nbs);
        assert_status(offset_status(scales[i], 45), nbs);
    }
    double ph = 0;
    assert_status(hw_ph_convert(8.1, HW_PH_TOTAL, HW_PH_SWS, 24, 12, &ph), HW_STATUS_OK);
    assert_status(hw_ph_convert(8.1, HW_PH_METER, HW_PH_SWS, 24, 12, &ph), HW_STATUS_STRETCHED);
    assert_status(hw_ph_convert(8.1, HW_PH_FREE, HW_PH_METER, 24, 12, &ph), HW_STATUS_STRETCHED);
    assert_status(hw_ph_convert(8.1, HW_PH_FREE, HW_PH_METER, 24, 33, &ph), HW_STATUS_OK);
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    for (int i = 0; i < SCALES; i++) {
        double ph = 0;
        check(hw_ph_convert(HW_PH_MIN, scales[i], HW_PH_FREE, HW_PH_TEMP_MIN, HW_PH_SALINITY_MIN,
                            &ph) >= 0);
        check(isfinite(ph));
        check(hw_ph_convert(HW_PH_MAX, scales[i], HW_PH_FREE, HW_PH_TEMP_MAX, HW_PH_SALINITY_MAX,
                            &ph) >= 0);
        check(isfinite(ph));
        offset(scales[i], HW_PH_TEMP_MAX, HW_PH_SALINITY_MIN);
        offset(scales[i], HW_PH_TEMP_MIN, HW_PH_SALINITY_MAX);
    }
    /* Only what goes in is checked against the range of pH. */
    double ph = 0;
    check(hw_ph_convert(HW_PH_MAX, HW_PH_TOTAL, HW_PH_FREE, 25, 35, &ph) >= 0);
    check(ph > HW_PH_MAX);
}

static void refused(double ph, enum hw_ph_scale from, enum hw_ph_scale to, double temp,
                    double salinity, int status)
{
    double result = 1;
    assert_status(hw_ph_convert(ph, from, to, temp, salinity, &result), status);
    assert_no_answer(result);
}

static void no_offset(enum hw_ph_scale scale, double temp, double salinity, int status)
{
    double result = 1;
    assert_status(hw_ph_offset(scale, temp, salinity, &result), status);
    assert_no_answer(result);
    refused(8.1, scale, HW_PH_TOTAL, temp, salinity, status);
    refused(8.1, HW_PH_TOTAL, scale, temp, salinity, status);
}

static void refusals(void **state)
{
    (void)state;
    for (int i = 0; i < SCALES; i++) {
        no_offset(scales[i], nextafter(HW_PH_TEMP_MIN, -1), 33.85, HW_STATUS_RANGE);
        no_offset(scales[i], nextafter(HW_PH_TEMP_MAX, 99), 33.85, HW_STATUS_RANGE);
        no_offset(scales[i], 23.85, nextafter(HW_PH_SALINITY_MIN, -1), HW_STATUS_RANGE);
        no_offset(scales[i], 23.85, nextafter(HW_PH_SALINITY_MAX, 99), HW_STATUS_RANGE);
        refused(nextafter(HW_PH_MIN, 0), scales[i], HW_PH_TOTAL, 23.85, 33.85, HW_STATUS_RANGE);
        refused(nextafter(HW_PH_MAX, 99), scales[i], HW_PH_TOTAL, 23.85, 33.85, HW_STATUS_RANGE);
        for (size_t k = 0; k < sizeof not_numbers / sizeof *not_numbers; k++) {
            no_offset(scales[i], not_numbers[k], 33.85, HW_STATUS_RANGE);
            no_offset(scales[i], 23.85, not_numbers[k], HW_STATUS_RANGE);
            refused(not_numbers[k], scales[i], HW_PH_TOTAL, 23.85, 33.85, HW_STATUS_RANGE);
        }
    }
    no_offset((enum hw_ph_scale)5, 23.85, 33.85, HW_STATUS_CHOICE);
    no_offset((enum hw_ph_scale) - 1, 23.85, 33.85, HW_STATUS_CHOICE);
    no_offset((enum hw_ph_scale)5, (double)NAN, 33.85, HW_STATUS_CHOICE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(offsets_from_the_total_scale),
        cmocka_unit_test(constants_as_published),
        cmocka_unit_test(all_scales_meet_in_fresh_water),
        cmocka_unit_test(order_of_the_scales),
        cmocka_unit_test(curves_cross_near_six),
        cmocka_unit_test(no_jumps),
        cmocka_unit_test(round_trips),
        cmocka_unit_test(stretched),
        cmocka_unit_test(ends_of_the_ranges),
        cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
