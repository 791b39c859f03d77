/* test_unit.c - units: definitions, round trips, no two of one name in a kind. The factors are held
 * against an independent program by tests/oracles/unit_factors.py. */
#include "assert_close.h"
#include "engine/unit.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static double in_first(enum hw_kind kind, const char *name, double value)
{
    const struct hw_unit *unit = hw_unit_of(kind, name);
    assert_non_null(unit);
    const struct hw_unit *first = hw_units;
    while (first->kind != kind) {
        first++;
    }
    return hw_unit_convert(value, unit, first);
}

/* International definitions: NIST Handbook 44, appendix C (exact figures, recalled and held by the
 * oracle). */
static void definitions_are_whole(void **state)
{
    (void)state;
    assert_close(in_first(HW_VOLUME, "gal", 1), 3.785411784, 0, 0);
    assert_close(in_first(HW_VOLUME, "impgal", 1), 4.54609, 0, 0);
    assert_close(in_first(HW_VOLUME, "floz", 128), 3.785411784, 0, 0);
    assert_close(in_first(HW_VOLUME, "tsp", 768), 3.785411784, 0, 2e-16); /* two roundings */
    assert_close(in_first(HW_MASS, "lb", 1), 453.59237, 0, 0);
    assert_close(in_first(HW_MASS, "oz", 16), 453.59237, 0, 0);
    assert_close(in_first(HW_LENGTH, "in", 5), 12.7, 0, 0);
    assert_close(in_first(HW_TEMPERATURE, "F", 77), 25, 0, 0);
    assert_close(in_first(HW_TEMPERATURE, "F", -40), -40, 0, 0);
    assert_close(in_first(HW_TEMPERATURE, "K", 298.15), 25, 0, 0);
    assert_close(in_first(HW_CONCENTRATION, "%wv", 1), 10000, 0, 0);
    assert_close(in_first(HW_TIME, "d", 2), 48, 0, 0);
}

/* Each unit in the first of its kind, to the last digit: exact by the inch of 25.4 mm and
 * the pound of 0.45359237 kg (1959), the US gallon of 231 cubic inches and the imperial gallon of
 * 4.54609 L, as in NIST SP 811 (2008), appendix B (recalled; the oracle holds them);
 * 231 x 2.54^3 / 1000 = 3.785411784 and its parts by hand. Of German degrees:
 * 10 mg CaO/L at 56.077 g/mol. */
static void every_size(void **state)
{
    (void)state;
    static const struct {
        enum hw_kind kind;
        const char *name;
        double size;
    } sizes[] = {
        {HW_VOLUME, "L", 1},
        {HW_VOLUME, "mL", 0.001},
        {HW_VOLUME, "gal", 3.785411784},
        {HW_VOLUME, "impgal", 4.54609},
        {HW_VOLUME, "floz", 0.0295735295625},
        {HW_VOLUME, "cup", 0.2365882365},
        {HW_VOLUME, "pt", 0.473176473},
        {HW_VOLUME, "qt", 0.946352946},
        {HW_VOLUME, "tsp", 0.00492892159375},
        {HW_VOLUME, "tbsp", 0.01478676478125},
        {HW_VOLUME, "m3", 1000},
        {HW_VOLUME, "ft3", 28.316846592},
        {HW_MASS, "g", 1},
        {HW_MASS, "mg", 0.001},
        {HW_MASS, "kg", 1000},
        {HW_MASS, "oz", 28.349523125},
        {HW_MASS, "lb", 453.59237},
        {HW_LENGTH, "cm", 1},
        {HW_LENGTH, "mm", 0.1},
        {HW_LENGTH, "m", 100},
        {HW_LENGTH, "in", 2.54},
        {HW_LENGTH, "ft", 30.48},
        {HW_TEMPERATURE_STEP, "C", 1},
        {HW_TEMPERATURE_STEP, "F", 0.55555555555555556},
        {HW_TEMPERATURE_STEP, "K", 1},
        {HW_SALINITY, "g/kg", 1},
        {HW_SALINITY, "ppt", 1},
        {HW_SALINITY, "psu", 1},
        {HW_CONCENTRATION, "mg/L", 1},
        {HW_CONCENTRATION, "ppm", 1},
        {HW_CONCENTRATION, "ug/L", 0.001},
        {HW_CONCENTRATION, "g/L", 1000},
        {HW_CONCENTRATION, "mg/mL", 1000},
        {HW_CONCENTRATION, "%wv", 10000},
        {HW_SHARE, "%", 1},
        {HW_TIME, "h", 1},
        {HW_TIME, "min", 0.016666666666666667},
        {HW_TIME, "d", 24},
        {HW_DOSE_RATE, "mL/L", 1},
        {HW_DOSE_RATE, "mL/gal", 0.26417205235814842},
        {HW_CONDUCTIVITY, "mS/cm", 1},
        {HW_CONDUCTIVITY, "uS/cm", 0.001},
        {HW_ALKALINITY, "meq/L", 1},
        {HW_ALKALINITY, "dKH", 0.35665246001034292},
        {HW_ALKALINITY, "mgCaCO3/L", 0.019982814779289811},
        {HW_MASS_PER_DAY, "g/d", 1},
        {HW_MASS_PER_DAY, "mg/d", 0.001},
        {HW_MASS_PER_DAY, "kg/d", 1000},
        {HW_MASS_PER_DAY, "oz/d", 28.349523125},
        {HW_MASS_PER_DAY, "lb/d", 453.59237},
        {HW_DENSITY, "kg/m3", 1},
        {HW_DENSITY, "g/mL", 1000},
        {HW_SLOPE, "%/C", 1},
        {HW_CONTACT, "mg.min/L", 1},
        {HW_RISE_PER_DAY, "mg/L/d", 1},
        {HW_BODY_RATE, "mg/kg/h", 1},
        {HW_PARTS, "uL/L", 1},
        {HW_PARTS, "ppm", 1},
        {HW_PARTS, "mL/L", 1000},
        {HW_ALKALINITY_PER_DAY, "meq/L/d", 1},
        {HW_ALKALINITY_PER_DAY, "dKH/d", 0.35665246001034292},
        {HW_ALKALINITY_PER_DAY, "mgCaCO3/L/d", 0.019982814779289811},
    };
    size_t n = 0;
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        assert_close(in_first(sizes[i].kind, sizes[i].name, 1), sizes[i].size, 0, 3e-16);
    }
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        n += unit->kind != HW_TEMPERATURE ? 1 : 0; /* points on a scale: above */
    }
    check(n == sizeof sizes / sizeof sizes[0]);
}

/* Every other spelling finds its unit, and no unit of its kind has it as its name or spelling. */
static void aliases_mean_one_unit(void **state)
{
    (void)state;
    size_t n = 0;
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        for (const char *word = hw_unit_aliases(unit); *word != '\0';) {
            size_t length = strcspn(word, " ");
            assert_true(length > 0);
            assert_ptr_equal(hw_unit_find(unit->kind, word, length), unit);
            assert_true(hw_unit_begins(word, length));
            for (const struct hw_unit *other = hw_units; other->name; other++) {
                bool same = strlen(other->name) == length && memcmp(other->name, word, length) == 0;
                assert_false(other->kind == unit->kind && same);
            }
            word += length + (word[length] == ' ' ? 1 : 0);
            n++;
        }
    }
    assert_true(n > 30);
    assert_null(hw_unit_find(HW_VOLUME, "gallon", 6));
    assert_null(hw_unit_find(HW_VOLUME, "gallons", 7));
    assert_null(hw_unit_find(HW_VOLUME, "oz", 2));
    assert_null(hw_unit_find(HW_TEMPERATURE, "\xC2\xB0", 2));
    assert_ptr_equal(hw_unit_find(HW_MASS_PER_DAY, "g", 1), hw_unit_of(HW_MASS_PER_DAY, "g/d"));
    assert_ptr_equal(hw_unit_find_any("g", 1), hw_unit_of(HW_MASS, "g"));
    assert_false(hw_unit_begins("", 0));
    assert_false(hw_unit_begins("\xC2", 1));
    assert_false(hw_unit_begins("7", 1));
}

/* A difference has no offset: 2 F are 1.11 C, never -16.7 C. */
static void differences_have_no_offset(void **state)
{
    (void)state;
    assert_close(in_first(HW_TEMPERATURE_STEP, "F", 1.8), 1, 0, 1e-15);
    assert_close(in_first(HW_TEMPERATURE_STEP, "K", 2.385), 2.385, 0, 0);
}

/* A rate per day has the size of what it is a rate of. */
static void rates_follow_what_they_count(void **state)
{
    (void)state;
    static const char *const units[][2] = {
        {"meq/L", "meq/L/d"}, {"dKH", "dKH/d"}, {"mgCaCO3/L", "mgCaCO3/L/d"}};
    for (size_t i = 0; i < sizeof units / sizeof units[0]; i++) {
        assert_close(in_first(HW_ALKALINITY_PER_DAY, units[i][1], 2.385),
                     in_first(HW_ALKALINITY, units[i][0], 2.385), 0, 0);
    }
    assert_close(in_first(HW_ALKALINITY_PER_DAY, "dKH/d", 2.8), 0.99863, 1e-5, 0);
    assert_close(in_first(HW_ALKALINITY_PER_DAY, "mgCaCO3/L/d", 50), 0.99914, 1e-5, 0);
    assert_string_equal(hw_kind_name(HW_ALKALINITY_PER_DAY), "a change of alkalinity per day");
}

static void round_trips(void **state)
{
    (void)state;
    for (const struct hw_unit *a = hw_units; a->name; a++) {
        for (const struct hw_unit *b = hw_units; b->name; b++) {
            if (a->kind == b->kind) {
                double there = hw_unit_convert(23.85, a, b);
                assert_close(hw_unit_convert(there, b, a), 23.85, 1e-13, 1e-14);
            }
        }
    }
}

static void names_are_unique_in_a_kind(void **state)
{
    (void)state;
    for (const struct hw_unit *a = hw_units; a->name; a++) {
        check(a->num > 0 && a->den > 0 && a->definition[0] != '\0');
        assert_ptr_equal(hw_unit_of(a->kind, a->name), a);
        assert_non_null(hw_unit_find_any(a->name, strlen(a->name)));
    }
    assert_null(hw_unit_of(HW_VOLUME, "ML"));
    assert_null(hw_unit_of(HW_VOLUME, "g"));
    assert_null(hw_unit_of(HW_PH, ""));
    assert_null(hw_unit_find_any("furlong", 7));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(definitions_are_whole),
        cmocka_unit_test(every_size),
        cmocka_unit_test(aliases_mean_one_unit),
        cmocka_unit_test(differences_have_no_offset),
        cmocka_unit_test(rates_follow_what_they_count),
        cmocka_unit_test(round_trips),
        cmocka_unit_test(names_are_unique_in_a_kind),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
