/* test_value.c - every way in which a written value can be right or wrong. */
#include "assert_close.h"
#include "engine/value.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const char *const words[] = {"n", "nh3", "nh4", NULL};
static const char *const set_words[] = {"none", "dye", "formalin", NULL};

static const struct hw_input volume = {
    .name = "volume", .unit = "L", .kind = HW_VOLUME, .unit_must = true, .lo = 0.1, .hi = 100000};
static const struct hw_input temp = {
    .name = "temp", .unit = "C", .kind = HW_TEMPERATURE, .lo = 0, .hi = 40};
static const struct hw_input ph = {.name = "ph", .unit = "", .kind = HW_PH, .lo = 5, .hi = 10};
static const struct hw_input salinity = {
    .name = "salinity", .unit = "g/kg", .kind = HW_SALINITY, .lo = 0, .hi = 45};
static const struct hw_input fresh = {
    .name = "salinity", .unit = "g/kg", .kind = HW_SALINITY, .lo = 0, .hi = 45, .need = HW_PRESET};
static const struct hw_input zero = {
    .name = "zero", .unit = "g/kg", .kind = HW_SALINITY, .lo = -10, .hi = 10, .need = HW_PRESET};
static const struct hw_input share = {
    .name = "share", .unit = "%", .kind = HW_SHARE, .lo = 0, .hi = 100};
static const struct hw_input mass = {
    .name = "mass", .unit = "g", .kind = HW_MASS, .unit_must = true, .lo = 0, .hi = 1e6};
static const struct hw_input count = {
    .name = "count", .unit = "", .kind = HW_COUNT, .lo = 1, .hi = 100};
static const struct hw_input large_count = {
    .name = "large", .unit = "", .kind = HW_COUNT, .lo = -1e15, .hi = 1e15};
static const struct hw_input number = {
    .name = "number", .unit = "", .kind = HW_NUMBER, .lo = -1e300, .hi = 1e300};
static const struct hw_input within = {
    .name = "within", .unit = "h", .kind = HW_TIME, .lo = 0, .hi = 240};
static const struct hw_input basis = {
    .name = "basis", .unit = "", .kind = HW_CHOICE, .lo = 0, .hi = 2, .words = words};
static const struct hw_input medicine = {
    .name = "medicine", .unit = "", .kind = HW_SET, .lo = 0, .hi = 7, .words = set_words};

static const struct {
    const struct hw_input *input;
    const char *text;
    double value;
} right[] = {
    {&volume, "75L", 75},
    {&volume, "75 L", 75},
    {&volume, "  75\tL ", 75},
    {&volume, "20gal", 75.70823568},
    {&volume, "3e2 mL", 0.3},
    {&volume, "1e5L", 100000},
    {&temp, "77F", 25},
    {&temp, "32F", 0},
    {&temp, "104F", 40},
    {&temp, "313.15K", 40},
    {&temp, "273.15 K", 0},
    {&temp, "23.85", 23.85},
    {&ph, "8.15", 8.15},
    {&ph, "+8.15", 8.15},
    {&ph, "5", 5},
    {&ph, "10.", 10},
    {&ph, "81.5e-1", 8.15},
    {&salinity, "34", 34},
    {&salinity, "1.02g/kg", 1.02},
    {&salinity, "0.97", 0.97},
    {&fresh, "1", 1},
    {&zero, "1", 1},
    {&zero, "1.026", 1.026},
    {&salinity, "1.07", 1.07},
    {&salinity, "34.1 ppt", 34.1},
    {&volume, "75l", 75},
    {&volume, "75 liters", 75},
    {&volume, "75litre", 75},
    {&volume, "750ml", 0.75},
    {&temp, "77\xC2\xB0\x46", 25},
    {&temp, "25 \xC2\xB0\x43", 25},
    {&mass, "2.5 grams", 2.5},
    {&share, "25%", 25},
    {&share, "0.5 %", 0.5},
    {&share, "0%", 0},
    {&mass, "578mg", 0.578},
    {&mass, "-0g", 0},
    {&count, "4", 4},
    {&large_count, "3000000000", 3e9}, /* more than a long holds on 32 bits */
    {&large_count, "-1e15", -1e15},
    {&number, ".5", 0.5},
    {&number, "-2.385e-3", -2.385e-3},
    {&number, "-0.0e-400", 0},
    {&number, "1e-12", 1e-12},
    {&number, "-1e-12", -1e-12},
    {&mass, "1e-12g", 1e-12},
    {&within, "3.6e-9 min", 6e-11},
    {&within, "90min", 1.5},
    {&within, "1d", 24},
    {&basis, "nh4", 2},
    {&basis, "NH3", 1},
    {&basis, " n ", 0},
    {&medicine, "none", 1},
    {&medicine, "dye,formalin", 6},
};

static const struct {
    const struct hw_input *input;
    const char *text;
    enum hw_problem problem;
} wrong[] = {
    {&ph, "", HW_PROBLEM_EMPTY},
    {&ph, "   ", HW_PROBLEM_EMPTY},
    {&ph, "eight", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "-", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "<8", HW_PROBLEM_BOUND},
    {&ph, " > 8.8", HW_PROBLEM_BOUND},
    {&number, "~1", HW_PROBLEM_BOUND},
    {&ph, "<", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, ".", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1.5", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8 1", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8,1", HW_PROBLEM_COMMA},
    {&volume, "75,5L", HW_PROBLEM_COMMA},
    {&ph, "nan", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "-NaN", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "inf", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "Infinity", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "0x8", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "-0X8p1", HW_PROBLEM_NOT_DECIMAL},
    {&large_count, "3000000000.5", HW_PROBLEM_NOT_WHOLE},
    {&number, "9e-13", HW_PROBLEM_NEAR_ZERO},
    {&number, "-9e-13", HW_PROBLEM_NEAR_ZERO},
    {&number, "5e-324", HW_PROBLEM_NEAR_ZERO},
    {&number, "1e-400", HW_PROBLEM_NEAR_ZERO}, /* too small for a double, and not zero */
    {&number, "-0.00001e-400", HW_PROBLEM_NEAR_ZERO},
    {&salinity, "1e-307", HW_PROBLEM_NEAR_ZERO},
    {&share, "1e-15%", HW_PROBLEM_NEAR_ZERO},
    {&mass, "9e-10mg", HW_PROBLEM_NEAR_ZERO},
    {&mass, "1e-323mg", HW_PROBLEM_NEAR_ZERO}, /* 0 if it were converted first */
    {&volume, "1e-13L", HW_PROBLEM_OUT_OF_RANGE},
    {&volume, "1e-323L", HW_PROBLEM_OUT_OF_RANGE},
    {&number, "1e999", HW_PROBLEM_TOO_LARGE},
    {&number, "-1e999", HW_PROBLEM_TOO_LARGE},
    {&ph, "8.1+-0.1", HW_PROBLEM_SPREAD},
    {&ph,
     "8.1\xC2\xB1"
     "0.1",
     HW_PROBLEM_SPREAD},
    {&temp, "77F+-1", HW_PROBLEM_SPREAD},
    {&temp, "77F \xC2\xB1 1", HW_PROBLEM_SPREAD},
    {&ph, "7.8:8.6:0.1", HW_PROBLEM_SWEEP},
    {&volume, "75", HW_PROBLEM_NEEDS_UNIT},
    {&mass, "2", HW_PROBLEM_NEEDS_UNIT},
    {&volume, "75 buckets", HW_PROBLEM_UNKNOWN_UNIT},
    {&volume, "75 ML", HW_PROBLEM_UNKNOWN_UNIT},
    {&volume, "75 kg", HW_PROBLEM_WRONG_KIND},
    {&temp, "25 mg/L", HW_PROBLEM_WRONG_KIND},
    {&ph, "8.1 @", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1 {", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1 [", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1+", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1 \xC2", HW_PROBLEM_NOT_A_NUMBER},
    {&temp, "25 C+", HW_PROBLEM_UNKNOWN_UNIT},
    {&temp, "25 C\xC2", HW_PROBLEM_UNKNOWN_UNIT},
    {&ph, "8.1,", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "8.1,x", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "+nan", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "in", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "_", HW_PROBLEM_NOT_A_NUMBER},
    {&ph, "-0x8", HW_PROBLEM_NOT_DECIMAL},
    {&ph, "10x8", HW_PROBLEM_UNIT_UNWANTED},
    {&ph, "00x8", HW_PROBLEM_UNIT_UNWANTED},
    {&temp, "5 %", HW_PROBLEM_WRONG_KIND},
    {&temp, "5 Z", HW_PROBLEM_UNKNOWN_UNIT},
    {&mass, "1 tbp", HW_PROBLEM_UNKNOWN_UNIT},
    {&mass, "1 cap", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "1 cot", HW_PROBLEM_UNKNOWN_UNIT},
    {&mass, "1 tbsq", HW_PROBLEM_UNKNOWN_UNIT},
    {&salinity, "-1", HW_PROBLEM_OUT_OF_RANGE},
    {&count, "-0.5", HW_PROBLEM_OUT_OF_RANGE},
    {&basis, "nh", HW_PROBLEM_UNKNOWN_WORD},
    {&basis, "nh9", HW_PROBLEM_UNKNOWN_WORD},
    {&medicine, ",dye", HW_PROBLEM_UNKNOWN_WORD},
    {&ph, "8.1 L", HW_PROBLEM_UNIT_UNWANTED},
    {&count, "4 d", HW_PROBLEM_UNIT_UNWANTED},
    {&volume, "3 drops", HW_PROBLEM_HOUSE_MEASURE},
    {&volume, "3 Drops", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "2 spoons", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "1 tsp", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "1 tbsp", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "1 cup", HW_PROBLEM_HOUSE_MEASURE},
    {&mass, "2 teaspoons", HW_PROBLEM_HOUSE_MEASURE},
    {&volume, "1 tablespoon", HW_PROBLEM_HOUSE_MEASURE},
    {&volume, "20 gallons", HW_PROBLEM_UNKNOWN_UNIT},
    {&volume, "20 gallon", HW_PROBLEM_UNKNOWN_UNIT},
    {&temp, "25\xC2\xB0", HW_PROBLEM_UNKNOWN_UNIT},
    {&volume, "<5L", HW_PROBLEM_BOUND},
    {&share, "25", HW_PROBLEM_NEEDS_UNIT},
    {&share, "0.5", HW_PROBLEM_NEEDS_UNIT},
    {&share, "0", HW_PROBLEM_NEEDS_UNIT},
    {&share, "101%", HW_PROBLEM_OUT_OF_RANGE},
    {&share, "-0.1%", HW_PROBLEM_OUT_OF_RANGE},
    {&salinity, "0.98", HW_PROBLEM_GRAVITY},
    {&salinity, "1.0264", HW_PROBLEM_GRAVITY},
    {&salinity, "1", HW_PROBLEM_GRAVITY},
    {&salinity, "1.06", HW_PROBLEM_GRAVITY},
    {&fresh, "0.98", HW_PROBLEM_GRAVITY},
    {&fresh, "1.026", HW_PROBLEM_GRAVITY},
    {&ph, "4.99", HW_PROBLEM_OUT_OF_RANGE},
    {&ph, "10.001", HW_PROBLEM_OUT_OF_RANGE},
    {&temp, "104.001F", HW_PROBLEM_OUT_OF_RANGE},
    {&count, "2.5", HW_PROBLEM_NOT_WHOLE},
    {&basis, "NH33", HW_PROBLEM_UNKNOWN_WORD},
    {&basis, "1", HW_PROBLEM_UNKNOWN_WORD},
    {&medicine, "dye,", HW_PROBLEM_UNKNOWN_WORD},
    {&medicine, "dye,dye", HW_PROBLEM_WORD_TWICE},
    {&medicine, "none,dye", HW_PROBLEM_NOT_ALONE},
};

static void right_values(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof right / sizeof right[0]; i++) {
        double value = 0;
        const struct hw_unit *unit = NULL;
        struct hw_text text = {right[i].text, strlen(right[i].text)};
        enum hw_problem problem = hw_value_read(right[i].input, text, NULL, &value, &unit);
        if (problem != HW_FINE) {
            fail_msg("'%s' was refused: %s", right[i].text, hw_problem_code(problem));
        }
        assert_close(value, right[i].value, 0, 0);
    }
}

static void wrong_values(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        double value = 2.385;
        const struct hw_unit *unit = NULL;
        struct hw_text text = {wrong[i].text, strlen(wrong[i].text)};
        enum hw_problem problem = hw_value_read(wrong[i].input, text, NULL, &value, &unit);
        if (problem != wrong[i].problem) {
            fail_msg("'%s' is %s, not %s", wrong[i].text, hw_problem_code(problem),
                     hw_problem_code(wrong[i].problem));
        }
        assert_close(value, 2.385, 0, 0);
    }
}

static void a_long_text_is_refused(void **state)
{
    (void)state;
    char text[400];
    memset(text, '1', sizeof text);
    double value = 0;
    const struct hw_unit *unit = NULL;
    assert_int_equal(
        hw_value_read(&number, (struct hw_text){text, sizeof text}, NULL, &value, &unit),
        HW_PROBLEM_NOT_A_NUMBER);
    assert_int_equal(
        hw_value_read(&number, (struct hw_text){text, HW_TEXT_MAX}, NULL, &value, &unit), HW_FINE);
}

/* A unit in the column's name stands for the unit of a bare number, and for nothing else. */
static void a_column_can_carry_the_unit(void **state)
{
    (void)state;
    double value = 0;
    const struct hw_unit *unit = NULL;
    const struct hw_unit *gal = hw_unit_of(HW_VOLUME, "gal");
    assert_int_equal(hw_value_read(&volume, (struct hw_text){"20", 2}, gal, &value, &unit),
                     HW_FINE);
    assert_close(value, 75.70823568, 0, 0);
    assert_null(unit);
    assert_int_equal(hw_value_read(&volume, (struct hw_text){"20L", 3}, gal, &value, &unit),
                     HW_FINE);
    assert_close(value, 20, 0, 0);
    const struct hw_unit *percent = hw_unit_of(HW_SHARE, "%");
    assert_int_equal(hw_value_read(&share, (struct hw_text){"25", 2}, percent, &value, &unit),
                     HW_FINE);
    assert_close(value, 25, 0, 0);
}

static void every_problem_has_a_code(void **state)
{
    (void)state;
    for (int i = 0; i < HW_PROBLEMS; i++) {
        const char *code = hw_problem_code((enum hw_problem)i);
        assert_non_null(code);
        for (int k = 0; k < i; k++) {
            assert_string_not_equal(code, hw_problem_code((enum hw_problem)k));
        }
    }
}

/* The column's name may carry a unit of another kind, when entries of one name differ in kind. */
static void column_of_another_kind(void **state)
{
    (void)state;
    double value = 3.5;
    const struct hw_unit *written = NULL;
    const struct hw_unit *column = hw_unit_of(HW_CONDUCTIVITY, "mS/cm");
    struct hw_text text = {"1.0264", 6};
    assert_int_equal(hw_value_read(&number, text, column, &value, &written), HW_PROBLEM_WRONG_KIND);
    assert_int_equal(hw_value_read(&salinity, text, column, &value, &written),
                     HW_PROBLEM_WRONG_KIND);
    assert_close(value, 3.5, 0, 0);
}

/* Settles a number of a column; true when it is taken and left as it is. */
static bool is_kept(const struct hw_input *input, const struct hw_unit *column, double x)
{
    double value = -7;
    return hw_number_settle(input, x, NULL, column, &value) == HW_FINE &&
           memcmp(&value, &x, sizeof x) == 0;
}

/* Every number of the span is kept: at its ends, next to them, and between. */
static void check_span(const struct hw_input *input, const struct hw_unit *column, bool some)
{
    struct hw_span span;
    hw_number_kept(input, column, &span);
    check((span.to > span.above) == some);
    for (int i = 1; i <= 1000 && some; i++) {
        check(is_kept(input, column, span.above + i / 1000.0 * (span.to - span.above)));
    }
    check(!some || (is_kept(input, column, nextafter(span.above, span.to)) &&
                    is_kept(input, column, span.to) &&
                    is_kept(input, column, nextafter(span.to, span.above))));
}

static void numbers_that_are_kept(void **state)
{
    (void)state;
    const struct hw_unit *fahrenheit = hw_unit_find(HW_TEMPERATURE, "F", 1);
    const struct hw_unit *celsius = hw_unit_of(HW_TEMPERATURE, "C");
    const struct hw_unit *litres = hw_unit_of(HW_VOLUME, "L");
    static const struct hw_input negative = {
        .name = "below", .unit = "", .kind = HW_NUMBER, .lo = -5, .hi = -2};
    struct hw_span span;
    check_span(&temp, NULL, true);
    check_span(&ph, NULL, true);
    check_span(&salinity, NULL, true);
    check_span(&fresh, NULL, true);
    check_span(&zero, NULL, true);
    check_span(&number, NULL, true);
    check_span(&within, NULL, true);
    check_span(&temp, celsius, true);
    check_span(&temp, fahrenheit, false);
    check_span(&volume, NULL, false);
    check_span(&volume, litres, true);
    check_span(&count, NULL, false);
    check_span(&basis, NULL, false);
    check_span(&negative, NULL, false);
    hw_number_kept(&salinity, NULL, &span);
    check(!is_kept(&salinity, NULL, span.above)); /* a gravity */
}

/* Names in any case, from the first letter to the last; what lies beside letters stays apart. */
static void names_in_any_case(void **state)
{
    (void)state;
    check(hw_name_is("abcxyz", "ABCXYZ", 6));
    check(hw_name_is("zero", "ZERO", 4));
    check(hw_name_is("stock_temp", "Stock-Temp", 10));
    check(!hw_name_is("a{", "a[", 2)); /* [ follows Z as { follows z */
    check(!hw_name_is("a`", "a@", 2)); /* @ is before A as ` is before a */
    check(!hw_name_is("zero", "ZER", 3));
    check(!hw_name_is("zero", "ZEROS", 5));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(column_of_another_kind),
        cmocka_unit_test(names_in_any_case),
        cmocka_unit_test(right_values),
        cmocka_unit_test(wrong_values),
        cmocka_unit_test(a_long_text_is_refused),
        cmocka_unit_test(a_column_can_carry_the_unit),
        cmocka_unit_test(every_problem_has_a_code),
        cmocka_unit_test(numbers_that_are_kept),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
