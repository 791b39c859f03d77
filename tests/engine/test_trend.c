/* test_trend.c - readings as they are written, and the latest of them that are kept. */
#include "assert_close.h"
#include "cli/column_name.h"
#include "cli/reading.h"
#include "holdwater/trend.h"
#include "tables.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static struct hw_text text_of(const char *word)
{
    return (struct hw_text){word, strlen(word)};
}

static void written(void **state)
{
    (void)state;
    static const struct {
        const char *text, *unit;
        double value;
    } numbers[] = {
        {"0.25", NULL, 0.25},
        {" 0.25 mg/L ", "mg/L", 0.25},
        {"-1.5C", "C", -1.5},
        {"0.6+-0.1 mg/L", "mg/L", 0.6},
        {"0.6 mg/L +- 0.1", "mg/L", 0.6},
        {"0.6+-10%", NULL, 0.6},
        {"0.6\xC2\xB1"
         "0.1",
         NULL, 0.6},
        {"33%", "%", 33},
        {"1e-3", NULL, 1e-3},
        {"0.6ppm", "ppm", 0.6},
        {"1e12", NULL, 1e12},
        {"-0", NULL, 0},
    };
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        struct reading reading = {.value = NAN};
        assert_int_equal(reading_read(text_of(numbers[i].text), HW_NUMBER, &reading),
                         READING_NUMBER);
        assert_close(reading.value, numbers[i].value, 0, 0);
        check(!signbit(reading.value) || numbers[i].value < 0);
        const char *unit = reading.unit ? reading.unit->name : NULL;
        check((!unit && !numbers[i].unit) || strcmp(unit, numbers[i].unit) == 0);
    }
    static const struct {
        const char *text;
        enum reading_kind kind;
    } others[] = {
        {"", READING_EMPTY},
        {" \t", READING_EMPTY},
        {"<0.25", READING_BOUND},
        {"> 3", READING_BOUND},
        {"~1", READING_BOUND},
        {"\xE2\x89\xA4"
         "1",
         READING_BOUND},
        {"0,25", READING_NONE},
        {"drops", READING_NONE},
        {"3 drops", READING_NONE},
        {"nan", READING_NONE},
        {"inf", READING_NONE},
        {"0x10", READING_NONE},
        {"1e13", READING_NONE},
        {"-1e13", READING_NONE},
        {"1e999", READING_NONE},
        {"0.6+-", READING_NONE},
        {"0.6+-mg/L", READING_NONE},
        {"0.6+-0.1 spoon", READING_NONE},
        {"0.25mg/L/week", READING_NONE},
    };
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++) {
        struct reading reading = {.value = 7};
        assert_int_equal(reading_read(text_of(others[i].text), HW_NUMBER, &reading),
                         others[i].kind);
        assert_close(reading.value, 7, 0, 0);
    }
}

/* On which side of which number: <= is no <. */
static void bounds(void **state)
{
    (void)state;
    static const struct {
        const char *text, *unit;
        enum reading_side side;
        double value;
    } cells[] = {
        {"<0.25", NULL, READING_BELOW, 0.25},
        {" > 3 mg/L ", "mg/L", READING_ABOVE, 3},
        {"<= 0.25ug/L", "ug/L", READING_UP_TO, 0.25},
        {">=8", NULL, READING_FROM, 8},
        {"\xE2\x89\xA4"
         "1",
         NULL, READING_UP_TO, 1},
        {"\xE2\x89\xA5 1", NULL, READING_FROM, 1},
        {"~1", NULL, READING_ANYWHERE, 7},
        {"<", NULL, READING_ANYWHERE, 7},
        {"<<1", NULL, READING_ANYWHERE, 7},
        {"<half", NULL, READING_ANYWHERE, 7},
        {"<1 spoon", NULL, READING_ANYWHERE, 7},
        {"0.30?", NULL, READING_ANYWHERE, 7},
        {"", NULL, READING_ANYWHERE, 7},
    };
    for (size_t i = 0; i < sizeof cells / sizeof cells[0]; i++) {
        struct reading reading = {.value = 7};
        assert_int_equal(reading_bound(text_of(cells[i].text), HW_NUMBER, &reading), cells[i].side);
        assert_close(reading.value, cells[i].value, 0, 0);
        const char *unit = reading.unit ? reading.unit->name : NULL;
        check((!unit && !cells[i].unit) || strcmp(unit, cells[i].unit) == 0);
    }
}

/* ppm is a concentration, and parts by volume where those are asked for. */
static void units(void **state)
{
    (void)state;
    struct reading a;
    struct reading b;
    (void)reading_read(text_of("1ppm"), HW_PARTS, &a);
    assert_int_equal(a.unit->kind, HW_PARTS);
    (void)reading_read(text_of("1ppm"), HW_NUMBER, &a);
    assert_int_equal(a.unit->kind, HW_CONCENTRATION);
    (void)reading_read(text_of("1mg/L"), HW_NUMBER, &b);
    check(reading_same_unit(a.unit, b.unit));
    (void)reading_read(text_of("1ug/L"), HW_NUMBER, &b);
    check(!reading_same_unit(a.unit, b.unit));
    check(reading_same_unit(NULL, NULL) && !reading_same_unit(a.unit, NULL) &&
          !reading_same_unit(NULL, b.unit));
    static const struct {
        const char *name, *unit;
        size_t n;
    } names[] = {{"tan mg/L", "mg/L", 3},      {"TAN (mg/L)", "mg/L", 3},
                 {"temp_F", "F", 4},           {"Temp [degC]", "C", 4},
                 {"free_mg_L", "mg/L", 4},     {"tan", NULL, 3},
                 {"day_one", NULL, 7},         {"", NULL, 0},
                 {"slope_mg_L_d", "mg/L/d", 5}};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        size_t n = 99;
        const struct hw_unit *unit = column_unit(text_of(names[i].name), &n);
        check(names[i].unit ? unit && strcmp(unit->name, names[i].unit) == 0 : !unit);
        check(n == names[i].n);
    }
}

static int by_time(const void *a, const void *b)
{
    const struct timed *x = a;
    const struct timed *y = b;
    int later = (x->seconds > y->seconds) - (x->seconds < y->seconds);
    return later != 0 ? later : (x->value > y->value) - (x->value < y->value);
}

/* Whatever order they come in, the latest are kept, of one time in the order they came. */
static void latest(void **state)
{
    (void)state;
    enum { MANY = 5000 };
    static struct timed all[MANY];
    static struct readings readings;
    hw_random_start(20310307);
    for (int way = 0; way < 4; way++) {
        memset(&readings, 0, sizeof readings);
        for (size_t i = 0; i < MANY; i++) {
            double at = way == 0 ? (double)i : way == 1 ? -(double)i : hw_random_between(-900, 900);
            at = way == 3 ? floor(at / 300) + (double)i / 2 : at;
            all[i] = (struct timed){.seconds = (long long)floor(at), .value = (double)i};
            bool is_latest = true;
            for (size_t k = 0; k < i && way == 2; k++) {
                is_latest = is_latest && all[k].seconds <= all[i].seconds;
            }
            bool told = readings_add(&readings, all[i]);
            check(way != 0 || told);
            check(way != 2 || i > 300 || told == is_latest);
            check(readings.n == (i < HW_TREND_READINGS_MAX ? i + 1 : HW_TREND_READINGS_MAX));
        }
        assert_int_equal(readings.all, MANY);
        qsort(all, MANY, sizeof all[0], by_time);
        for (size_t i = 0; i < readings.n; i++) {
            struct timed kept = readings.at[readings.first + i];
            struct timed want = all[MANY - readings.n + i];
            check(kept.seconds == want.seconds && kept.value == want.value);
        }
    }
}

/* The figure in the texts is the number that is kept. */
static void figures(void **state)
{
    (void)state;
    assert_close(hw_limits[HW_LIMIT_TREND_MOST].value, HW_TREND_READINGS_MAX, 0, 0);
    check(hw_limits[HW_LIMIT_TREND_LEAST].value >= HW_TREND_READINGS_MIN);
    check(hw_limits[HW_LIMIT_TREND_INTERVAL].value > hw_limits[HW_LIMIT_TREND_LEAST].value);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(written), cmocka_unit_test(bounds),  cmocka_unit_test(units),
        cmocka_unit_test(latest),  cmocka_unit_test(figures),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
