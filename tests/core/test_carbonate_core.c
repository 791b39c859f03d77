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

/* From a reading to carbon and back to the reading; more alkalinity is a higher pH, more carbon a
 * lower one. */
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

/* Soda water and lye as near to the ends of pH 3 to 12 as there is a pH: the last one lies at the
 * end, and none comes after it. */
static void near_the_ends(void **state)
{
    (void)state;
    struct hw_carbonate_constants sea;
    struct hw_carbonate_constants fresh;
    double ph = 0;
    double last = 4;
    double at = 700;
    hw_carbonate_constants(25, 35, &sea);
    hw_carbonate_constants(25, 0, &fresh);
    for (; hw_carbonate_ph(0, at, 0, 25, 35, &ph) == HW_STATUS_OK; at += 0.01) {
        check(ph < last);
        last = ph;
    }
    check(at > 710 && at < 750);
    assert_close(last - sea.meter_over_total, 3, 1e-5, 0);
    last = 11;
    for (at = 9; hw_carbonate_ph(at, 0, 0, 25, 0, &ph) == HW_STATUS_OK; at += 0.0001) {
        check(ph > last);
        last = ph;
    }
    check(at > 9.5 && at < 10);
    assert_close(last - fresh.meter_over_total, 12, 1e-5, 0);
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
    {{8, 2.4, 1, 25, 34}, {5, 0, 0, 0, 0}, {10, 20, 210, 40, 45}},
    {{2.4, 2.2, 1, 25, 34}, {0, 0, 0, 0, 0}, {20, 1000, 210, 40, 45}},
    {{2.4, 420, 1, 25, 34}, {0, 100, 0, 0, 0}, {20, 10000, 210, 40, 45}},
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

/* At 25 degrees and salinity 34 an open package (PyCO2SYS 1.8.3.4) gives pK1 by Waters, Millero &
 * Woosley 2014, ln KB by Dickson 1990 and by Weiss 1974 the fugacity, and K0 at salinity 5; ln KW
 * by Millero 1995 was computed apart in double precision. */
static void constants(void **state)
{
    (void)state;
    struct hw_carbonate_constants c;
    assert_status(hw_carbonate_constants(25, 34, &c), HW_STATUS_OK);
    assert_close(c.pk1, 5.854660827024418, 1e-12, 0);
    assert_close(c.pkb * log(10), 19.809593206558745, 1e-12, 0);
    assert_close(c.pkw * log(10), 30.451800526399698, 1e-12, 0);
    assert_close(c.boron, 0.0004157 * 34 / 35, 0, 1e-15);
    /* they are those that the other functions use: bicarbonate alone, half way between the two */
    double carbon = 0;
    double h = pow(10, -(8 - c.meter_over_total));
    double k1 = pow(10, -c.pk1);
    double k2 = pow(10, -c.pk2);
    double others = c.boron * pow(10, -c.pkb) / (pow(10, -c.pkb) + h) + pow(10, -c.pkw) / h - h;
    assert_status(hw_carbonate_carbon(8, 2.3, 0, 25, 34, &carbon), HW_STATUS_OK);
    double charge = (k1 * h + 2 * k1 * k2) / (h * h + k1 * h + k1 * k2);
    assert_close(carbon, (2.3 - others * 1000 * c.density) / charge, 0, 1e-12);
    assert_status(hw_carbonate_constants(25, 5, &c), HW_STATUS_STRETCHED);
    assert_close(c.per_atmosphere, 0.03318662277029805 * 0.9968104405447391, 0, 1e-12);
    static const double no_water[][2] = {{-0.1, 35}, {40.1, 35}, {25, -0.1}, {25, 45.1}};
    for (size_t i = 0; i < sizeof no_water / sizeof *no_water; i++) {
        assert_status(hw_carbonate_constants(no_water[i][0], no_water[i][1], &c), HW_STATUS_RANGE);
        const double parts[] = {c.pk1,
                                c.pk2,
                                c.pkb,
                                c.pkw,
                                c.pkn,
                                c.boron,
                                c.per_atmosphere,
                                c.density,
                                c.meter_over_total};
        for (size_t k = 0; k < sizeof parts / sizeof *parts; k++) {
            assert_no_answer(parts[k]);
        }
    }
}

/* --- A water made ready ----------------------------------------------------------------------- */

static void same(int status, int other, const double *a, const double *b)
{
    assert_status(status, other);
    assert_memory_equal(a, b, sizeof *a);
}

/* Each question of a water made ready has the answer of the function that makes it ready anew, to
 * the last bit, an answer or none. */
static void of_one_water(void **state)
{
    (void)state;
    hw_random_start(20310417);
    int none = 0;
    for (int i = 0; i < 3000; i++) {
        double temp = hw_random_between(-1, 41);
        double salinity = hw_random_between(-1, 46);
        double ph = hw_random_between(4.9, 10.1);
        double alkalinity = hw_random_between(-0.1, 5);
        double carbon = hw_random_between(-0.1, 8);
        double air = hw_random_between(50, 2500);
        double tan = hw_random_between(-0.1, 10);
        struct hw_carbonate_water water;
        struct hw_carbonate_constants c;
        double a = 0;
        double b = 0;
        double x = 0;
        assert_status(hw_carbonate_water(temp, salinity, &water),
                      hw_carbonate_constants(temp, salinity, &c));
        int read = hw_carbonate_water_read(&water, ph, alkalinity, tan, &a, &b);
        same(read, hw_carbonate_carbon(ph, alkalinity, tan, temp, salinity, &x), &a, &x);
        same(read, hw_carbonate_air(ph, alkalinity, tan, temp, salinity, &x), &b, &x);
        none += read == HW_STATUS_NONE;
        int closed = hw_carbonate_water_ph(&water, alkalinity, carbon, tan, &a);
        same(closed, hw_carbonate_ph(alkalinity, carbon, tan, temp, salinity, &x), &a, &x);
        int open = hw_carbonate_water_ph_in_air(&water, alkalinity, air, tan, &a);
        same(open, hw_carbonate_ph_in_air(alkalinity, air, tan, temp, salinity, &x), &a, &x);
    }
    check(none > 50);
}

static void parts_of_a_water(void **state)
{
    (void)state;
    struct hw_carbonate_water w;
    struct hw_carbonate_constants c;
    assert_status(hw_carbonate_water(24.3, 33.1, &w), HW_STATUS_OK);
    assert_status(hw_carbonate_constants(24.3, 33.1, &c), HW_STATUS_OK);
    assert_status(w.status, HW_STATUS_OK);
    assert_close(w.temp, 24.3, 0, 0);
    assert_close(w.salinity, 33.1, 0, 0);
    assert_close(w.density, 1000 * c.density, 0, 1e-15);
    assert_close(w.meter_over_total, c.meter_over_total, 0, 0);
    assert_close(log10(w.k1), -c.pk1, 0, 1e-14);
    assert_close(log10(w.k2), -c.pk2, 0, 1e-14);
    assert_close(log10(w.kb), -c.pkb, 0, 1e-14);
    assert_close(log10(w.kw), -c.pkw, 0, 1e-14);
    assert_close(log10(w.kn), -c.pkn, 0, 1e-14);
    assert_close(w.boron, c.boron, 0, 0);
    assert_close(w.per_atmosphere, c.per_atmosphere, 0, 0);
}

static void no_water(const struct hw_carbonate_water *w)
{
    const double parts[] = {
        w->temp, w->salinity, w->density, w->meter_over_total, w->k1, w->k2, w->kb,
        w->kw,   w->kn,       w->boron,   w->per_atmosphere};
    double a = 1;
    double b = 1;
    assert_status(w->status, HW_STATUS_RANGE);
    for (size_t k = 0; k < sizeof parts / sizeof *parts; k++) {
        assert_no_answer(parts[k]);
    }
    assert_status(hw_carbonate_water_read(w, 8, 2.3, 0.4, &a, &b), HW_STATUS_RANGE);
    assert_no_answer(a);
    assert_no_answer(b);
    assert_status(hw_carbonate_water_ph(w, 2.3, 2.1, 0.4, &a), HW_STATUS_RANGE);
    assert_no_answer(a);
    assert_status(hw_carbonate_water_ph_in_air(w, 2.3, 420, 0.4, &b), HW_STATUS_RANGE);
    assert_no_answer(b);
}

/* Both ends are in, the next number is out, and of no water there is no answer. */
static void ranges_of_a_water(void **state)
{
    (void)state;
    static const double ends[2][2] = {{HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX},
                                      {HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX}};
    for (int arg = 0; arg < 2; arg++) {
        struct hw_carbonate_water w;
        double at[2] = {24.3, 33.1};
        for (int end = 0; end < 2; end++) {
            at[arg] = ends[arg][end];
            check(hw_carbonate_water(at[0], at[1], &w) >= 0 && w.k1 > 0);
            at[arg] = nextafter(ends[arg][end], end ? 1e10 : -1);
            assert_status(hw_carbonate_water(at[0], at[1], &w), HW_STATUS_RANGE);
            no_water(&w);
        }
        for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
            at[arg] = not_numbers[i];
            assert_status(hw_carbonate_water(at[0], at[1], &w), HW_STATUS_RANGE);
            no_water(&w);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(no_answer),
        cmocka_unit_test(near_the_ends),
        cmocka_unit_test(always_in_air),
        cmocka_unit_test(ranges),
        cmocka_unit_test(constants),
        cmocka_unit_test(of_one_water),
        cmocka_unit_test(parts_of_a_water),
        cmocka_unit_test(ranges_of_a_water),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
