/* test_refraction_core.c - refractive index and brine scales. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/refraction.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static double index_of(double salinity, double temp)
{
    double result = 0;
    check(hw_refraction_index_at(temp, salinity, &result) >= 0);
    return result;
}

/* Fresh water: CRC Handbook, 1.3330 relative to air. 35: Quan & Fry evaluated. */
static void known_indices(void **state)
{
    (void)state;
    assert_close(index_of(0, 20), 1.3330, 5e-5, 0);
    assert_close(index_of(35, 20), 1.33941, 5e-6, 0);
}

static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (int i = 0; i < 5000; i++) {
        double t = hw_random_between(-2, 40);
        double s = hw_random_between(0.001, 44.999);
        double found = 0;
        int status = hw_refraction_salinity(index_of(s, t), t, &found);
        assert_close(found, s, 5e-12, 0); /* the index has 16 digits, the salinity 4 fewer */
        assert_status(status,
                      t >= 0 && t <= 30 && found <= 35 ? HW_STATUS_OK : HW_STATUS_STRETCHED);
    }
}

/* What the brine table of seawater tells: true salinity, reading in g/kg, reading in g/L; 1 %. */
static void brine_scales(void **state)
{
    (void)state;
    static const double rows[][3] = {
        {20, 20.9, 21.2}, {30, 31.3, 32.0}, {33, 34.4, 35.2}, {35, 36.5, 37.4}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double salinity = 0;
        check(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, rows[i][1], &salinity) >= 0);
        assert_close(salinity, rows[i][0], 0, 0.01);
        check(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GL, rows[i][2], &salinity) >= 0);
        assert_close(salinity, rows[i][0], 0, 0.01);
        double reading = 0;
        check(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GKG, rows[i][0], &reading) == 0);
        assert_close(reading, rows[i][1], 0, 0.01);
        check(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GL, rows[i][0], &reading) == 0);
        assert_close(reading, rows[i][2], 0, 0.01);
    }
}

/* The factors again, from sodium chloride at 20 degrees (CRC Handbook, n to four decimals). */
static void brine_factors_from_the_handbook(void **state)
{
    (void)state;
    static const double percent[] = {2, 3, 3.5, 4};
    static const double molar[] = {0.346, 0.523, 0.613, 0.703};
    static const double index[] = {1.3365, 1.3383, 1.3391, 1.34};
    for (size_t i = 0; i < sizeof percent / sizeof *percent; i++) {
        double sea = 0;
        double brine = 0;
        check(hw_refraction_salinity(index[i], 20, &sea) >= 0);
        check(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, 10 * percent[i], &brine) >=
              0);
        /* Half a last digit of the index is 0.27 in salinity, and the factors are good to 1 %. */
        assert_close(brine, sea, 0.27 + 0.01 * sea, 0);
        check(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GL, 58.443 * molar[i], &brine) >=
              0);
        assert_close(brine, sea, 0.27 + 0.01 * sea, 0);
    }
}

static void statuses(void **state)
{
    (void)state;
    double r = 0;
    double n = index_of(0, 20);
    assert_status(hw_refraction_index_at(30, 35, &r), HW_STATUS_OK);
    assert_status(hw_refraction_index_at(30, nextafter(35, 36), &r), HW_STATUS_STRETCHED);
    assert_status(hw_refraction_index_at(nextafter(30, 31), 35, &r), HW_STATUS_STRETCHED);
    assert_status(hw_refraction_index_at(nextafter(0, -1), 35, &r), HW_STATUS_STRETCHED);
    assert_status(hw_refraction_index_at(40, 45, &r), HW_STATUS_STRETCHED);
    assert_status(hw_refraction_salinity(n - 5e-5, 20, &r), HW_STATUS_STRETCHED);
    check(r < -0.2 && r > -0.3);
    assert_status(hw_refraction_salinity(n - 1e-4, 20, &r), HW_STATUS_NONE);
    assert_no_answer(r);
    assert_status(hw_refraction_salinity(1.4, 20, &r), HW_STATUS_NONE);
    assert_no_answer(r);
    assert_status(hw_refraction_salinity(1.3, 20, &r), HW_STATUS_NONE);
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, -10, &r),
                  HW_STATUS_NONE);
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GL, 100, &r), HW_STATUS_NONE);
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GL, 0, &r), HW_STATUS_OK);
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, -0.4, &r),
                  HW_STATUS_STRETCHED);
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, 38, &r),
                  HW_STATUS_STRETCHED);
    assert_status(hw_refraction_salinity_by_brine((enum hw_refraction_brine)2, 38, &r),
                  HW_STATUS_CHOICE);
    assert_no_answer(r);
    assert_status(hw_refraction_brine_reading((enum hw_refraction_brine)2, 35, &r),
                  HW_STATUS_CHOICE);
    assert_no_answer(r);
    assert_status(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GKG, 35, &r), HW_STATUS_OK);
    assert_status(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GL, nextafter(35, 36), &r),
                  HW_STATUS_STRETCHED);
    assert_status(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GKG, 0, &r), HW_STATUS_OK);
    assert_status(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GL, 45, &r), HW_STATUS_STRETCHED);
}

static void no_reading(double salinity)
{
    double result = 1;
    assert_status(hw_refraction_brine_reading(HW_REFRACTION_BRINE_GL, salinity, &result),
                  HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_index(double salinity, double temp)
{
    double result = 1;
    assert_status(hw_refraction_index_at(temp, salinity, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_salinity(double index, double temp)
{
    double result = 1;
    assert_status(hw_refraction_salinity(index, temp, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void no_brine(double reading)
{
    double result = 1;
    assert_status(hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, reading, &result),
                  HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void refusals(void **state)
{
    (void)state;
    no_index(nextafter(0, -1), 23.85);
    no_index(nextafter(45, 46), 23.85);
    no_index(33.85, nextafter(-2, -3));
    no_index(33.85, nextafter(40, 41));
    no_salinity(nextafter(1.3, 1), 23.85);
    no_salinity(nextafter(1.4, 2), 23.85);
    no_salinity(1.3385, nextafter(-2, -3));
    no_salinity(1.3385, nextafter(40, 41));
    no_brine(nextafter(-10, -11));
    no_brine(nextafter(100, 101));
    no_reading(nextafter(0, -1));
    no_reading(nextafter(45, 46));
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        no_index(not_numbers[i], 23.85);
        no_index(33.85, not_numbers[i]);
        no_salinity(not_numbers[i], 23.85);
        no_salinity(1.3385, not_numbers[i]);
        no_brine(not_numbers[i]);
        no_reading(not_numbers[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(known_indices), cmocka_unit_test(there_and_back),
        cmocka_unit_test(brine_scales),  cmocka_unit_test(brine_factors_from_the_handbook),
        cmocka_unit_test(statuses),      cmocka_unit_test(refusals),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
