/* test_limits.c - the rows of data/limits.tsv against what their sources publish, and what texts
 * and presets say of them in another form. */
#include "ask.h"
#include "assert_close.h"
#include "tables.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* Every row whose source was read. The values come from the sources, never from limits.tsv. */
static const struct {
    enum hw_limit_key key;
    double value;
    const char *source;
} published[] = {
    {HW_LIMIT_SALT_LONG, 0.035,
     "EPA 440/5-88-004: 4-day mean, mg NH3/L, as state standards adopt it"},
    {HW_LIMIT_SALT_SHORT, 0.233,
     "EPA 440/5-88-004: 1-hour mean, mg NH3/L, as state standards adopt it"},
    {HW_LIMIT_SALT_FROM, 10,
     "the rule by salinity: salt-water criteria at 10 parts per thousand and above"},
    {HW_LIMIT_FRESH_BELOW, 1,
     "the rule by salinity: fresh-water criteria up to 1 part per thousand"},
    {HW_LIMIT_TEMP_RISE, 2, "a public aquarium: a rise of more than 2 C in 24 hours"},
    {HW_LIMIT_TEMP_FALL, 1, "a public aquarium: a fall of more than 1 C in 24 hours"},
    {HW_LIMIT_DISINFECT_CONTACT, 200.0 * 30, "Piper 1982, p. 283: 200 mg/L for 30 to 60 minutes"},
    {HW_LIMIT_DISINFECT_LEVEL, 100, "Piper 1982, p. 283: or 100 mg/L for several hours"},
    {HW_LIMIT_THIOSULFATE_RATIO, 7.0, "support note TE213: 7.0 mg of pentahydrate to a mg"},
    {HW_LIMIT_THIOSULFATE_HARM, 100, "manual of prawn hatcheries: 100 mg/L killed larvae"},
    {HW_LIMIT_NITRITE_EFFECT, 3,
     "a trial with hybrid grouper: all dead at 10 mg/L in 96 h, as the ion 3.04 as N, here without "
     "its hundredths"},
    {HW_LIMIT_CHLORIDE_RATIO_HIGH, 40.5,
     "channel catfish: 16 Cl to 1 NO2 by moles; 16 x 35.45/14.007 is 40.49"},
    {HW_LIMIT_CHALLENGE_SLOW, 0.1, "Anthonisen 1976 as a review quotes it: 0.1 to 1 mg/L"},
    {HW_LIMIT_CHALLENGE_STALL, 1, "Anthonisen 1976 as a review quotes it: 0.1 to 1 mg/L"},
    {HW_LIMIT_COPPER_IONIC_LOW, 0.15, "fish-disease page: 0.15 to 0.20 mg/L"},
    {HW_LIMIT_COPPER_IONIC_HIGH, 0.20, "fish-disease page: 0.15 to 0.20 mg/L"},
    {HW_LIMIT_COPPER_RAMP_DAYS, 3, "Zec, Hadfield & Hungerford 2017: over 3 to 5 days"},
    {HW_LIMIT_COPPER_IONIC_MOST, 0.25, "trial of 2008: 60 % of flame angelfish dead within 12 h"},
    {HW_LIMIT_COPPER_SALINITY, 25, "Zec, Hadfield & Hungerford 2017: salinity above 25 g/L"},
    {HW_LIMIT_FORMALIN_BATH, 250, "UF/IFAS VM77: 250 mg/L, an hour at most"},
    {HW_LIMIT_FORMALIN_WARM, 150, "UF/IFAS VM77: 150 mg/L above 70 F, an hour at most"},
    {HW_LIMIT_FORMALIN_WARM_FROM, 21, "UF/IFAS VM77: above 70 F (21 C)"},
    {HW_LIMIT_FORMALIN_TROUT, 167, "Piper 1982, p. 276: salmonids above 50 F, 167 ppm"},
    {HW_LIMIT_FORMALIN_TROUT_FROM, 10, "Piper 1982, p. 276: salmonids above 50 F (10 C)"},
    {HW_LIMIT_FORMALIN_YOUNG, 10, "Piper 1982, p. 276: not above 10 ppm for striped bass"},
    {HW_LIMIT_FORMALIN_FILTER, 37, "Fredricks 2018: 37 mg/L of formaldehyde, no recovery in 8 d"},
    {HW_LIMIT_FORMALIN_FILTER_SOME, 9.25, "Fredricks 2018: 9.25 mg/L on 4 days, impaired"},
    {HW_LIMIT_FORMALIN_STAY, 25, "UF/IFAS VM77: 15 to 25 mg/L where it stays in"},
    {HW_LIMIT_BINDER_EXCESS, 4, "US patent 4,666,610, abstract: four moles to one of ammonia"},
    {HW_LIMIT_STARVED_FISH, 2.3, "Japanese flounder at 20 C, starved: 2.3 mg/kg/h (15 to 91 g)"},
};

enum { PUBLISHED = sizeof published / sizeof published[0] };

static bool was_read(const char *source)
{
    for (size_t i = 0; i < HW_REFERENCES; i++) {
        if (strcmp(hw_references[i].key, source) == 0) {
            return strcmp(hw_references[i].class_name, "read") == 0;
        }
    }
    return false;
}

static void as_published(void **state)
{
    (void)state;
    for (size_t i = 0; i < PUBLISHED; i++) {
        const struct hw_limit *limit = &hw_limits[published[i].key];
        if (!hw_is_close(limit->value, published[i].value, 0, 0)) {
            fail_msg("%s is %g in limits.tsv; published is %g: %s", limit->key, limit->value,
                     published[i].value, published[i].source);
        }
        check(was_read(limit->source));
    }
}

/* A row whose source was read has its published value above, once. */
static void none_is_left_out(void **state)
{
    (void)state;
    for (size_t k = 0; k < HW_LIMITS; k++) {
        size_t found = 0;
        for (size_t i = 0; i < PUBLISHED; i++) {
            found += (size_t)published[i].key == k ? 1 : 0;
        }
        if (found != (was_read(hw_limits[k].source) ? 1 : 0)) {
            fail_msg("%s: %zu published values", hw_limits[k].key, found);
        }
        check(found <= 1);
    }
}

static const char *text_of(const char *code)
{
    for (size_t i = 0; i < HW_CAUTIONS; i++) {
        if (strcmp(hw_cautions[i].code, code) == 0) {
            return hw_cautions[i].text;
        }
    }
    fail_msg("no caution %s", code);
    return "";
}

static double value_of(enum hw_limit_key key)
{
    return hw_limits[key].value;
}

static void says(const char *code, const char *words, double figure, double by_limits, double half)
{
    if (!strstr(text_of(code), words)) {
        fail_msg("%s does not say '%s'", code, words);
    }
    if (!hw_is_close(by_limits, figure, half, 0)) {
        fail_msg("%s says '%s', by limits.tsv it is %g", code, words, by_limits);
    }
    check(half >= 0);
}

/* Figures that follow from a row, and shares in words: what the text says, the number that this is,
 * the same by the rows, and half of the last digit said. A meq/L is 2.804 dKH. */
static void figures_that_follow(void **state)
{
    (void)state;
    double bath = value_of(HW_LIMIT_FORMALIN_BATH);
    double warm = value_of(HW_LIMIT_FORMALIN_WARM);
    double days = value_of(HW_LIMIT_COPPER_RAMP_DAYS);
    double contact = value_of(HW_LIMIT_DISINFECT_CONTACT);
    double share = value_of(HW_LIMIT_NITRATE_KIT_SHARE);
    says("copper-ramp", "more than a third of the ceiling", 1.0 / 3, 1 / days, 0);
    says("copper-ramp-chelated", "more than a third of the ceiling", 1.0 / 3, 1 / days, 0);
    says("ceiling-slip", "three times the highest known", 3,
         value_of(HW_LIMIT_COPPER_AMINE_SLIP) / value_of(HW_LIMIT_COPPER_AMINE_KNOWN), 1e-15);
    says("ceiling-slip", "three times the highest known", 3,
         value_of(HW_LIMIT_COPPER_CHELATED_SLIP) / value_of(HW_LIMIT_COPPER_CHELATED_KNOWN), 1e-15);
    says("formalin-over", "(231.4 uL/L, 85.6 mg/L", 231.4, bath / 1.08 - 0.05, 0.05);
    says("formalin-over", "85.6 mg/L of formaldehyde", 85.6, bath / 1.08 * 0.37 - 0.05, 0.05);
    says("formalin-over", "(138.8 uL/L, 51.3)", 138.8, warm / 1.08 - 0.05, 0.05);
    says("formalin-over", "uL/L, 51.3)", 51.3, warm / 1.08 * 0.37 - 0.05, 0.05);
    says("stock-near-solubility", "More than half", 50, value_of(HW_LIMIT_STOCK_SOLUBILITY), 0);
    says("top-up-large", "more than a fifth", 20, value_of(HW_LIMIT_TOP_UP_SHARE), 0);
    says("load-quarter", "is more than a quarter", 25, value_of(HW_LIMIT_LOAD_SHARE), 0);
    says("nitrate-short", "mg/L or a quarter", 0.25, share, 0);
    says("nitrate-over", "mg/L or a quarter", 0.25, share, 0);
    says("oxygen-soon", "Less than an hour", 1, value_of(HW_LIMIT_OXYGEN_SOON), 0);
    says("limit-within-day", "in less than a day", 24, value_of(HW_LIMIT_REACHED_SOON), 0);
    says("binder-excess", "asks for at least 4 to one", 4, value_of(HW_LIMIT_BINDER_EXCESS), 0);
    says("below-starved", "55 mg of nitrogen per kg in a day", 55,
         24 * value_of(HW_LIMIT_STARVED_FISH), 0.5);
    says("nitrite-effect", "at 10 mg/L in 4 days", 10,
         value_of(HW_LIMIT_NITRITE_EFFECT) * 46.005 / 14.007, 0.5);
    says("contact-short", "200 mg/L for 30 minutes", 200 * 30, contact, 0);
    says("label-wet", "no more than 0.15 of it", 0.15, 1 - value_of(HW_LIMIT_SALT_DRY), 0.005);
    says("salt-counted-dry", "up to 0.15 of their mass", 0.15, 1 - value_of(HW_LIMIT_SALT_DRY),
         0.005);
    says("alkalinity-step", "(1.4 dKH)", 1.4, 2.804 * value_of(HW_LIMIT_ALKALINITY_RISE), 0.05);
    says("alkalinity-high", "(11 dKH)", 11, 2.804 * value_of(HW_LIMIT_ALKALINITY_HIGH), 0.5);
    says("ph-step", "a step of 0.3 doubles", 2, pow(10, value_of(HW_LIMIT_PH_STEP)), 0.05);
    says("buffer-ph-step", "a step of 0.3 doubles", 2, pow(10, value_of(HW_LIMIT_PH_STEP)), 0.05);
}

/* The least of an agent that takes out a mg of chlorine, by molar masses: half of a last digit. */
static void least_by_chemistry(void **state)
{
    (void)state;
    assert_close(value_of(HW_LIMIT_THIOSULFATE_LEAST), 248.184 / 4 / 70.906, 0.0005, 0);
    assert_close(value_of(HW_LIMIT_THIOSULFATE_LEAST_ANHYDROUS), 158.108 / 4 / 70.906, 0.0005, 0);
    assert_close(value_of(HW_LIMIT_ASCORBIC_LEAST), 176.124 / 70.906, 0.005, 0);
}

/* A text that shows a limit shows the time over which it holds. */
static void times_are_told(void **state)
{
    (void)state;
    static const struct {
        const char *code;
        enum hw_limit_key key;
    } rows[] = {
        {"over-short-salt", HW_LIMIT_SALT_SHORT},     {"over-long-salt", HW_LIMIT_SALT_LONG},
        {"ratio-salt", HW_LIMIT_SALT_SHORT},          {"ratio-salt", HW_LIMIT_SALT_LONG},
        {"open-over-hour-salt", HW_LIMIT_SALT_SHORT}, {"over-limit-salt", HW_LIMIT_SALT_LONG},
        {"blend-hour-salt", HW_LIMIT_SALT_SHORT},     {"limit-salt", HW_LIMIT_SALT_LONG},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        check(strstr(text_of(rows[i].code), hw_limits[rows[i].key].averaging));
    }
}

/* Presets that are a limit. */
static void presets_agree(void **state)
{
    (void)state;
    static const struct {
        const char *calculation, *input;
        enum hw_limit_key key;
    } rows[] = {
        {"challenge", "target", HW_LIMIT_CHALLENGE_TARGET},
        {"bath", "minutes", HW_LIMIT_BATH_MINUTES},
        {"binder", "hold_to", HW_LIMIT_BINDER_HOLD},
        {"disinfect", "ratio", HW_LIMIT_THIOSULFATE_RATIO},
        {"verdict", "working_share", HW_LIMIT_LOAD_SHARE},
        {"verdict", "within", HW_LIMIT_CHALLENGE_HOURS},
        {"oxygen", "floor", HW_LIMIT_OXYGEN_FLOOR},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const struct hw_calc *calc = find_calc(rows[i].calculation);
        size_t at = hw_input_find(calc, rows[i].input, strlen(rows[i].input));
        assert_true(at < calc->n_inputs && calc->inputs[at].need == HW_PRESET);
        assert_close(calc->inputs[at].preset, value_of(rows[i].key), 0, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(as_published),        cmocka_unit_test(none_is_left_out),
        cmocka_unit_test(figures_that_follow), cmocka_unit_test(least_by_chemistry),
        cmocka_unit_test(times_are_told),      cmocka_unit_test(presets_agree),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
