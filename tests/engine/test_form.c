/* test_form.c - a value with its uncertainty, a sweep: every way in which they can be right or
 * wrong. */
#include "assert_close.h"
#include "engine/form.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char *const words[] = {"n", "nh3", "nh4", NULL};
static const char *const set_words[] = {"none", "dye", NULL};

static const struct hw_input volume = {
    .name = "volume", .unit = "L", .kind = HW_VOLUME, .unit_must = true, .lo = 0.1, .hi = 100000};
static const struct hw_input temp = {
    .name = "temp", .unit = "C", .kind = HW_TEMPERATURE, .lo = -5, .hi = 40};
static const struct hw_input ph = {.name = "ph", .unit = "", .kind = HW_PH, .lo = 5, .hi = 10};
static const struct hw_input tan_input = {
    .name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = 0, .hi = 20};
static const struct hw_input salinity = {
    .name = "salinity", .unit = "g/kg", .kind = HW_SALINITY, .lo = 0, .hi = 45};
static const struct hw_input share = {
    .name = "share", .unit = "%", .kind = HW_SHARE, .lo = 0, .hi = 100};
static const struct hw_input count = {
    .name = "count", .unit = "", .kind = HW_COUNT, .lo = 1, .hi = 100};
static const struct hw_input number = {
    .name = "number", .unit = "", .kind = HW_NUMBER, .lo = -1e300, .hi = 1e300};
static const struct hw_input basis = {
    .name = "basis", .unit = "", .kind = HW_CHOICE, .lo = 0, .hi = 2, .words = words};
static const struct hw_input medicine = {
    .name = "medicine", .unit = "", .kind = HW_SET, .lo = 0, .hi = 3, .words = set_words};

static enum hw_problem read_form(const struct hw_input *input, const char *text, const char *column,
                                 struct hw_form *form)
{
    const struct hw_unit *unit = column ? hw_unit_find_any(column, strlen(column)) : NULL;
    return hw_form_read(input, (struct hw_text){text, strlen(text)}, unit, form);
}

/* --- A point ---------------------------------------------------------------------------------- */

static void a_point_is_read_as_before(void **state)
{
    (void)state;
    struct hw_form form;
    assert_int_equal(read_form(&temp, "77F", NULL, &form), HW_FINE);
    assert_close(form.value, 25, 0, 0);
    assert_close(form.half, 0, 0, 0);
    assert_string_equal(form.unit->name, "F");
    check(form.sweep.n == 0);
    assert_int_equal(read_form(&temp, "77", "F", &form), HW_FINE);
    assert_close(form.value, 25, 0, 0);
    check(form.unit == NULL);
    assert_int_equal(read_form(&basis, "nh4", NULL, &form), HW_FINE);
    assert_close(form.value, 2, 0, 0);
    assert_int_equal(read_form(&temp, "", NULL, &form), HW_PROBLEM_EMPTY);
    assert_no_answer(form.value);
}

/* --- An uncertainty --------------------------------------------------------------------------- */

static const struct {
    const struct hw_input *input;
    const char *text, *column;
    double value, half;
} spreads[] = {
    {&tan_input, "0.6+-0.1", NULL, 0.6, 0.1},
    {&tan_input, "0.6 +- 0.1", NULL, 0.6, 0.1},
    {&tan_input, "\t0.6\t+-\t0.1\t", NULL, 0.6, 0.1},
    {&tan_input,
     "0.6\xC2\xB1"
     "0.1",
     NULL, 0.6, 0.1},
    {&tan_input, "0.6mg/L+-0.1mg/L", NULL, 0.6, 0.1},
    {&tan_input, "0.6mg/L+-0.1", NULL, 0.6, 0.1},
    {&tan_input, "0.6+-0.1mg/L", NULL, 0.6, 0.1},
    {&tan_input, "600ug/L+-100", NULL, 0.6, 0.1},
    {&tan_input, "600ug/L+-100ug/L", NULL, 0.6, 0.1},
    {&tan_input, "600ug/L +- 0.1 mg/L", NULL, 0.6, 0.1},
    {&tan_input, "600ug/L+-15%", NULL, 0.6, 0.09},
    {&tan_input, "600+-15%", "ug/L", 0.6, 0.09},
    {&tan_input, "600+-100", "ug/L", 0.6, 0.1},
    {&tan_input, "600+-0.1mg/L", "ug/L", 0.6, 0.1},
    {&tan_input, "0.6+-15 %", NULL, 0.6, 0.09},
    {&tan_input, "0.6+-0", NULL, 0.6, 0},
    {&tan_input, "0.6+--0", NULL, 0.6, 0},
    {&ph, "8.1+-0.05", NULL, 8.1, 0.05},
    {&ph, "8.1+-1%", NULL, 8.1, 0.081},
    {&number, "-4+-25%", NULL, -4, 1},
    /* a difference of temperatures has no offset; per cent are of the number that was written */
    {&temp, "77F+-2F", NULL, 25, 2.0 * 5 / 9},
    {&temp, "77F+-2", NULL, 25, 2.0 * 5 / 9},
    {&temp, "77F+-1C", NULL, 25, 1},
    {&temp, "25+-0.5", NULL, 25, 0.5},
    {&temp, "25+-0.5C", NULL, 25, 0.5},
    {&temp, "77+-2", "F", 25, 2.0 * 5 / 9},
    {&temp, "77F+-10%", NULL, 25, 7.7 * 5 / 9},
    {&temp, "298.15K+-0.3", NULL, 25, 0.3},
    {&temp, "-2+-50%", NULL, -2, 1},
    {&volume, "20gal+-1", NULL, 75.70823568, 3.785411784},
    {&volume, "20gal+-5%", NULL, 75.70823568, 3.785411784},
    {&volume, "20gal+-2L", NULL, 75.70823568, 2},
    {&volume, "75L+-2L", NULL, 75, 2},
    {&salinity, "33+-1", NULL, 33, 1},
    {&salinity, "1.02g/kg+-0.1", NULL, 1.02, 0.1},
    /* of a share: points, whichever way it is written */
    {&share, "25%+-5%", NULL, 25, 5},
    {&share, "25%+-5", NULL, 25, 5},
    {&share, "25+-5", "%", 25, 5},
    {&share, "25+-5%", "%", 25, 5},
};

static void uncertainties(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof spreads / sizeof spreads[0]; i++) {
        struct hw_form form;
        enum hw_problem problem =
            read_form(spreads[i].input, spreads[i].text, spreads[i].column, &form);
        if (problem != HW_FINE) {
            fail_msg("%s: %s", spreads[i].text, hw_problem_code(problem));
        }
        assert_close(form.value, spreads[i].value, 0, 1e-14);
        assert_close(form.half, spreads[i].half, 0, 1e-14);
        check(form.sweep.n == 0);
    }
}

static const struct {
    const struct hw_input *input;
    const char *text, *column;
    enum hw_problem problem;
} wrong_spreads[] = {
    {&tan_input, "0.6+-", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+- mg/L", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-x", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-0.1+-0.1", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-0.1mg/L+-0.1", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-0,1", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-1e999", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+-0.1~", NULL, HW_PROBLEM_HALF},
    {&tan_input, "0.6+--0.1", NULL, HW_PROBLEM_HALF_NEGATIVE},
    {&tan_input, "0.6+--15%", NULL, HW_PROBLEM_HALF_NEGATIVE},
    {&tan_input, "0.6+-0.1g", NULL, HW_PROBLEM_HALF_UNIT},
    {&tan_input, "0.6+-0.1L", NULL, HW_PROBLEM_HALF_UNIT},
    {&tan_input, "0.6+-0.1mg/L x", NULL, HW_PROBLEM_HALF_UNIT},
    {&tan_input, "0.6+-15%%", NULL, HW_PROBLEM_HALF_UNIT},
    {&tan_input, "0.6+-100ug/L", NULL, HW_PROBLEM_HALF_UNIT}, /* a bare 0.6 of what? */
    {&temp, "25+-2F", NULL, HW_PROBLEM_HALF_UNIT},
    {&ph, "8.1+-0.1C", NULL, HW_PROBLEM_HALF_UNIT},
    {&count, "3+-1", NULL, HW_PROBLEM_HALF_COUNT},
    {&basis, "nh3+-1", NULL, HW_PROBLEM_HALF_WORD},
    {&medicine,
     "dye\xC2\xB1"
     "1",
     NULL, HW_PROBLEM_HALF_WORD},
    {&tan_input, "+-0.1", NULL, HW_PROBLEM_EMPTY},
    {&tan_input, "0.6+0.1", NULL, HW_PROBLEM_NOT_A_NUMBER},
    {&temp, "25\xC2\xB0", NULL,
     HW_PROBLEM_UNKNOWN_UNIT}, /* a degree sign begins as the other does */
    {&tan_input, "21+-0.1", NULL, HW_PROBLEM_OUT_OF_RANGE},
    {&tan_input, "0,6+-0.1", NULL, HW_PROBLEM_COMMA},
    {&volume, "75+-2L", NULL, HW_PROBLEM_NEEDS_UNIT},
    {&salinity, "1.02+-0.1", NULL, HW_PROBLEM_GRAVITY},
    {&share, "25+-5", NULL, HW_PROBLEM_NEEDS_UNIT},
    {&share, "0.25+-5%", NULL, HW_PROBLEM_NEEDS_UNIT},
};

static void wrong_uncertainties(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof wrong_spreads / sizeof wrong_spreads[0]; i++) {
        struct hw_form form;
        enum hw_problem problem = read_form(wrong_spreads[i].input, wrong_spreads[i].text,
                                            wrong_spreads[i].column, &form);
        if (problem != wrong_spreads[i].problem) {
            fail_msg("%s: %s, not %s", wrong_spreads[i].text, hw_problem_code(problem),
                     hw_problem_code(wrong_spreads[i].problem));
        }
        check(problem == wrong_spreads[i].problem);
    }
}

static void a_half_that_is_too_long(void **state)
{
    (void)state;
    struct hw_form form;
    char text[HW_TEXT_MAX + 16] = "0.6+-0.1";
    memset(text + 8, '0', HW_TEXT_MAX - 2);
    text[HW_TEXT_MAX + 6] = '\0';
    assert_int_equal(read_form(&tan_input, text, NULL, &form), HW_PROBLEM_HALF);
    text[HW_TEXT_MAX + 5] = '\0';
    assert_int_equal(read_form(&tan_input, text, NULL, &form), HW_FINE);
    assert_close(form.half, 0.1, 0, 0);
}

/* --- A sweep ---------------------------------------------------------------------------------- */

static const struct {
    const struct hw_input *input;
    const char *text, *column;
    size_t n;
    double first, second, last; /* second: NaN when there is none */
} sweeps[] = {
    {&ph, "7.8:8.6:0.1", NULL, 9, 7.8, 7.9, 8.6},
    {&ph, " 7.8 : 8.6 : 0.1 ", NULL, 9, 7.8, 7.9, 8.6},
    {&ph, "\t7.8\t:\t8.6 :0.1\t", NULL, 9, 7.8, 7.9, 8.6},
    {&ph, "8.6:7.8:-0.1", NULL, 9, 8.6, 8.5, 7.8},
    {&ph, "5:10:5", NULL, 2, 5, 10, 10},
    {&ph, "6:7:1e30", NULL, 2, 6, 7, 7},             /* the step leads beyond */
    {&ph, "7.8:8.65:0.1", NULL, 10, 7.8, 7.9, 8.65}, /* the last is stop */
    {&ph, "7.8:7.85:0.1", NULL, 2, 7.8, 7.85, 7.85},
    {&ph, "8.1:8.1:0.1", NULL, 1, 8.1, (double)NAN, 8.1},
    {&ph, "8.1:8.1:-0.1", NULL, 1, 8.1, (double)NAN, 8.1},
    {&ph, "8:8.999:0.001", NULL, 1000, 8, 8.001, 8.999},
    {&temp, "68F:86F:9F", NULL, 3, 20, 25, 30},
    {&temp, "68:86:9F", NULL, 3, 20, 25, 30}, /* a unit on the last part serves all */
    {&temp, "68F:86:9F", NULL, 3, 20, 25, 30},
    {&temp, "68:86F:9F", NULL, 3, 20, 25, 30},
    {&temp, "68:86:9", "F", 3, 20, 25, 30},
    {&temp, "20:30:5", NULL, 3, 20, 25, 30},
    {&temp, "23F:104F:27F", NULL, 4, -5, 10, 40}, /* both ends, by way of a unit */
    {&temp, "268.15:313.15:15K", NULL, 4, -5, 10, 40},
    {&temp, "-5:-1:2", NULL, 3, -5, -3, -1},
    {&volume, "10gal:30gal:10gal", NULL, 3, 37.85411784, 75.70823568, 113.56235352},
    {&volume, "100mL:300mL:100mL", NULL, 3, 0.1, 0.2, 0.3},
    {&tan_input, "200:600:200ug/L", NULL, 3, 0.2, 0.4, 0.6},
    {&share, "10%:50%:20%", NULL, 3, 10, 30, 50},
    {&share, "10:50:20", "%", 3, 10, 30, 50},
    {&share, "10:50:20%", NULL, 3, 10, 30, 50},
    {&count, "1:7:2", NULL, 4, 1, 3, 7},
    {&count, "1:8:2", NULL, 5, 1, 3, 8},
    {&salinity, "0:2:0.5", NULL, 5, 0, 0.5, 2}, /* the gravities on the way are salinities */
    {&salinity, "1g/kg:2g/kg:0.5g/kg", NULL, 3, 1, 1.5, 2},
    {&number, "-0.3:0.3:0.1", NULL, 7, -0.3, -0.2, 0.3},
    {&tan_input, "1e-12:3e-12:1e-12", NULL, 3, 1e-12, 2e-12,
     3e-12}, /* not drawn to the end of the range */
};

static void sweep_values(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof sweeps / sizeof sweeps[0]; i++) {
        struct hw_form form;
        const struct hw_input *input = sweeps[i].input;
        enum hw_problem problem = read_form(input, sweeps[i].text, sweeps[i].column, &form);
        if (problem != HW_FINE || form.sweep.n != sweeps[i].n) {
            fail_msg("%s: %s, %zu values", sweeps[i].text, hw_problem_code(problem), form.sweep.n);
        }
        assert_close(form.value, hw_sweep_value(input, &form.sweep, 0), 0, 0);
        assert_close(form.value, sweeps[i].first, 0, 1e-14);
        assert_close(form.half, 0, 0, 0);
        assert_close(hw_sweep_value(input, &form.sweep, form.sweep.n - 1), sweeps[i].last, 0,
                     1e-14);
        if (form.sweep.n > 1) {
            assert_close(hw_sweep_value(input, &form.sweep, 1), sweeps[i].second, 0, 1e-14);
        }
        check(form.unit == form.sweep.unit);
    }
}

static const struct {
    const struct hw_input *input;
    const char *text, *column;
    enum hw_problem problem;
} wrong_sweeps[] = {
    {&ph, "7.8:8.6", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8:8.6:0.1:2", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8:8.6:", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, ":8.6:0.1", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8::0.1", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "::", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, ":::", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8 : : 0.1", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8+-0.1:8.6:0.1", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7.8:8.6:0.1+-0.01", NULL, HW_PROBLEM_SWEEP_PARTS},
    {&ph, "7,8:8.6:0.1", NULL, HW_PROBLEM_COMMA},
    {&ph, "7.8:x:0.1", NULL, HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "7.8:8.6:nan", NULL, HW_PROBLEM_NOT_DECIMAL},
    {&ph, "7.8:inf:0.1", NULL, HW_PROBLEM_NOT_DECIMAL},
    {&ph, "7.8:8.6:0.1C", NULL, HW_PROBLEM_UNIT_UNWANTED},
    {&temp, "68F:86F:9", NULL, HW_PROBLEM_SWEEP_UNITS}, /* a step of 9 what? */
    {&temp, "20C:86F:9F", NULL, HW_PROBLEM_SWEEP_UNITS},
    {&temp, "68F:30C:9F", NULL, HW_PROBLEM_SWEEP_UNITS},
    {&temp, "20C:30:5", NULL, HW_PROBLEM_SWEEP_UNITS},
    {&temp, "20:30:5mg/L", NULL, HW_PROBLEM_WRONG_KIND},
    {&volume, "10:30:5", NULL, HW_PROBLEM_NEEDS_UNIT},
    {&volume, "10:30:5 drops", NULL, HW_PROBLEM_HOUSE_MEASURE},
    {&temp, "20:41:5", NULL, HW_PROBLEM_OUT_OF_RANGE},
    {&temp, "-6:30:5", NULL, HW_PROBLEM_OUT_OF_RANGE},
    {&tan_input, "1e-13:1:0.5", NULL, HW_PROBLEM_NEAR_ZERO},
    {&tan_input, "1:1e-13:-0.5", NULL, HW_PROBLEM_NEAR_ZERO},
    {&tan_input, "0:1e-11:1e-13", NULL, HW_PROBLEM_NEAR_ZERO}, /* what follows the start */
    {&number, "-0.01:0.02:0.0100000000005", NULL, HW_PROBLEM_NEAR_ZERO}, /* what is on the way */
    {&number, "0:1e999:1", NULL, HW_PROBLEM_TOO_LARGE},
    {&number, "0:1:1e999", NULL, HW_PROBLEM_TOO_LARGE},
    {&number, "0:-1:-1e999", NULL, HW_PROBLEM_TOO_LARGE},
    {&salinity, "1:2:0.5", NULL, HW_PROBLEM_GRAVITY},
    {&salinity, "0:1.02:0.5", NULL, HW_PROBLEM_GRAVITY},
    {&share, "10:50:20", NULL, HW_PROBLEM_NEEDS_UNIT},
    {&share, "0.1:0.5:0.2", NULL, HW_PROBLEM_NEEDS_UNIT},
    {&count, "1:7:1.5", NULL, HW_PROBLEM_NOT_WHOLE},
    {&count, "1.5:7:1", NULL, HW_PROBLEM_NOT_WHOLE},
    {&count, "1:7.5:1", NULL, HW_PROBLEM_NOT_WHOLE},
    {&basis, "n:nh4:nh3", NULL, HW_PROBLEM_SWEEP_WORD},
    {&medicine, "none:dye", NULL, HW_PROBLEM_SWEEP_WORD},
    {&ph, "7.8:8.6:0", NULL, HW_PROBLEM_STEP_ZERO},
    {&ph, "7.8:7.8:0", NULL, HW_PROBLEM_STEP_ZERO},
    {&ph, "7.8:8.6:-0", NULL, HW_PROBLEM_STEP_ZERO},
    {&ph, "7.8:8.6:-0.1", NULL, HW_PROBLEM_STEP_SIGN},
    {&ph, "8.6:7.8:0.1", NULL, HW_PROBLEM_STEP_SIGN},
    {&ph, "8:9:0.001", NULL, HW_PROBLEM_SWEEP_LONG}, /* 1001 values */
    {&ph, "8:8.9995:0.001", NULL, HW_PROBLEM_SWEEP_LONG},
    {&ph, "5:10:1e-300", NULL, HW_PROBLEM_SWEEP_LONG},
    {&number, "-1e300:1e300:1e-300", NULL, HW_PROBLEM_SWEEP_LONG}, /* infinitely many steps */
};

static void wrong_sweeps_are_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof wrong_sweeps / sizeof wrong_sweeps[0]; i++) {
        struct hw_form form;
        enum hw_problem problem =
            read_form(wrong_sweeps[i].input, wrong_sweeps[i].text, wrong_sweeps[i].column, &form);
        if (problem != wrong_sweeps[i].problem) {
            fail_msg("%s: %s, not %s", wrong_sweeps[i].text, hw_problem_code(problem),
                     hw_problem_code(wrong_sweeps[i].problem));
        }
        check(problem == wrong_sweeps[i].problem);
    }
}

/* A whole number of 10^-decimals, written out. */
static void write_decimal(char text[64], long long scaled, int decimals, const char *unit)
{
    long long ten = 1;
    for (int i = 0; i < decimals; i++) {
        ten *= 10;
    }
    long long size = scaled < 0 ? -scaled : scaled;
    int places = decimals < 1 ? 1 : decimals > 15 ? 15 : decimals;
    (void)snprintf(text, 64, "%s%lld.%0*lld%s", scaled < 0 ? "-" : "", size / ten, places,
                   size % ten, unit);
}

static long long random_whole(double low, double high)
{
    return (long long)floor(hw_random_between(low, high));
}

/* Each value is the number that would be typed, counted in whole numbers. */
static void check_as_typed(const struct hw_input *input, const char *unit, double low, double high)
{
    int decimals = (int)random_whole(0, 6);
    double ten = pow(10, decimals);
    long long start = random_whole(ceil(low * ten), floor(high * ten) + 1);
    long long stop = random_whole(ceil(low * ten), floor(high * ten) + 1);
    long long most = stop > start ? stop - start : start - stop;
    long long step = (long long)((double)most / hw_random_between(1, 997)) + 1;
    step = stop < start ? -step : step;
    char part[3][64];
    char text[220];
    write_decimal(part[0], start, decimals, unit);
    write_decimal(part[1], stop, decimals, unit);
    write_decimal(part[2], step, decimals, unit);
    (void)snprintf(text, sizeof text, "%s:%s:%s", part[0], part[1], part[2]);
    struct hw_form form;
    enum hw_problem problem = read_form(input, text, NULL, &form);
    if (problem != HW_FINE) {
        fail_msg("%s: %s", text, hw_problem_code(problem));
    }
    long long whole = most / (step < 0 ? -step : step);
    assert_int_equal(form.sweep.n, whole + (most % step == 0 ? 1 : 2));
    for (size_t k = 0; k < form.sweep.n; k++) {
        double typed = 0;
        const struct hw_unit *written = NULL;
        write_decimal(part[0], k + 1 < form.sweep.n ? start + (long long)k * step : stop, decimals,
                      unit);
        problem = hw_value_read(input, (struct hw_text){part[0], strlen(part[0])}, NULL, &typed,
                                &written);
        double value = hw_sweep_value(input, &form.sweep, k);
        if (problem != HW_FINE || !(value == typed)) {
            fail_msg("%s, value %zu: %.17g, typed %s: %.17g", text, k, value, part[0], typed);
        }
        check(memcmp(&value, &typed, sizeof value) == 0); /* -0 is not 0 */
        (void)snprintf(text + 110, 100, "%.15g%s", hw_sweep_number(&form.sweep, k), unit);
        problem = hw_value_read(input, (struct hw_text){text + 110, strlen(text + 110)}, NULL,
                                &typed, &written);
        check(problem == HW_FINE && value == typed);
    }
}

static void values_are_those_typed(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (int i = 0; i < 60; i++) {
        check_as_typed(&ph, "", 5, 10);
        check_as_typed(&temp, "", -5, 40);
        check_as_typed(&temp, "F", 23, 104);
        check_as_typed(&temp, "K", 268.15, 313.15);
        check_as_typed(&volume, "gal", 0.03, 26417);
        check_as_typed(&volume, "mL", 100, 1e8);
        check_as_typed(&tan_input, "ug/L", 0, 20000);
        check_as_typed(&salinity, "ppt", 0, 45);
        check_as_typed(&share, "%", 0, 100);
        check_as_typed(&number, "", -1e6, 1e6);
        check_as_typed(&number, "", -100, 3);
    }
}

static void zero_is_met_exactly(void **state)
{
    (void)state;
    struct hw_form form;
    assert_int_equal(read_form(&number, "-0.9:0.9:0.1", NULL, &form), HW_FINE);
    double value = hw_sweep_value(&number, &form.sweep, 9);
    check(value == 0 && !signbit(value));
    assert_int_equal(read_form(&number, "-100:2:0.3", NULL, &form), HW_FINE);
    assert_close(hw_sweep_value(&number, &form.sweep, 333), -0.1, 0, 0);
    assert_int_equal(read_form(&salinity, "0:2:0.5", NULL, &form), HW_FINE);
    assert_close(hw_sweep_value(&salinity, &form.sweep, 2), 1, 0,
                 0); /* though 1.0 alone is refused */
    assert_int_equal(read_form(&number, "0:0:1", NULL, &form), HW_FINE);
    assert_close(hw_sweep_value(&number, &form.sweep, 0), 0, 0, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_point_is_read_as_before),
        cmocka_unit_test(uncertainties),
        cmocka_unit_test(wrong_uncertainties),
        cmocka_unit_test(a_half_that_is_too_long),
        cmocka_unit_test(sweep_values),
        cmocka_unit_test(wrong_sweeps_are_refused),
        cmocka_unit_test(values_are_those_typed),
        cmocka_unit_test(zero_is_met_exactly),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
