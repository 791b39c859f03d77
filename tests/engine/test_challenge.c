/* test_challenge.c - the challenge calculation: worked doses, every note, every result that may be
 * absent, and the working redone by awk. */
#include "assert_close.h"
#include "holdwater/ammonia.h"
#include "holdwater/carbonate.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *challenge(void)
{
    return find_calc("challenge");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(challenge(), line, &question, &answer);
    return result_of(challenge(), &answer, result);
}

/* Molar masses written out again here. */
static const double n = 14.007;
static const double nh3 = 17.031;
static const double nh4 = 18.039;

static void doses(void **state)
{
    (void)state;
    assert_close(ask_for("volume=20gal;fish=no", "mass"), 2 * 20 * 3.785411784 * 53.489 / n / 1000,
                 0, 1e-14);
    assert_close(ask_for("volume=75L;fish=no;purity=97%;now=0.3;basis=nh4", "mass"),
                 1.7 * n / nh4 * 75 * 53.489 / n / 0.97 / 1000, 0, 1e-14);
    assert_close(ask_for("volume=75L;fish=no;reagent=ammonium-sulfate", "mass"),
                 2 * 75 * 132.134 / (2 * n) / 1000, 0, 1e-14);
    assert_close(
        ask_for("volume=75L;fish=no;reagent=ammonia-solution;strength=10%;basis=nh3", "liquid"),
        2 * 75 / (1000 * 0.9575 * 0.10), 0, 1e-14);
    assert_close(
        ask_for("volume=75L;fish=no;reagent=concentrate;concentrate_strength=2.5g/L", "liquid"),
        2 * 75 / 2.5, 0, 1e-14);
    assert_close(ask_for("volume=75L;fish=no;reagent=concentrate;concentrate_strength=2.5g/L;"
                         "basis=nh3",
                         "nitrogen"),
                 2 * 75 * n / nh3, 0, 1e-14);
}

/* The two ways of labelling one bottle ask for the same millilitres. */
static void two_labels_of_one_bottle(void **state)
{
    (void)state;
    char line[200];
    (void)snprintf(line, sizeof line,
                   "volume=75L;fish=no;reagent=ammonia-solution;strength=%.17g%%",
                   56.6 * nh3 / 35.046);
    double liquid = ask_for("volume=75L;fish=no;reagent=ammonia-solution;strength=56.6%;"
                            "strength_as=nh4oh",
                            "liquid");
    assert_close(ask_for(line, "liquid"), liquid, 0, 1e-14);
}

/* The readings are one total by three kits, the target by the one whose basis was given; what is
 * there already is nitrified too. */
static void what_to_expect(void **state)
{
    (void)state;
    static const char *const bases[] = {"n", "nh3", "nh4"};
    const double molar[] = {n, nh3, nh4};
    for (size_t i = 0; i < 3; i++) {
        char line[200];
        (void)snprintf(line, sizeof line,
                       "volume=110L;fish=no;target=2.4;now=0.6;basis=%s;reagent=ammonia-solution;"
                       "strength=9.5%%;ph=8.1;temp=25;salinity=34",
                       bases[i]);
        double total = 2.4 * n / molar[i];
        assert_close(ask_for(line, "reading_n"), total, 0, 1e-15);
        assert_close(ask_for(line, "reading_nh3"), total * nh3 / n, 0, 1e-15);
        assert_close(ask_for(line, "reading_nh4"), total * nh4 / n, 0, 1e-15);
        assert_close(ask_for(line, "nitrate"), total * 62.004 / n, 0, 1e-14);
        assert_close(ask_for(line, "oxygen_used"), total * 63.996 / n, 0, 1e-14);
        /* two equivalents for the quarter that was there, one for the rest */
        assert_close(ask_for(line, "alkalinity_used"), total * (2 * 0.25 + 0.75) * 50.043 / n, 0,
                     1e-13);
        double pk = 0.09018 + 2729.92 / 298.15 +
                    (0.1552 - 0.0003142 * 25) * 19.924 * 34 / (1000 - 1.005 * 34);
        assert_close(ask_for(line, "free_peak"), total / (1 + pow(10, pk - 8.1)), 0, 1e-12);
    }
}

#define TANK     "volume=110L;fish=no"
#define SOLUTION TANK ";reagent=ammonia-solution;strength=10%"
#define WATER    ";ph=8.1;temp=25;salinity=34"
#define STEEP    ";ph=9.9;temp=25;salinity=0;alkalinity=0.5;target=50"
#define SOUR     ";ph=5;temp=25;salinity=0;alkalinity=0.05;target=50"

static const struct note_row notes[] = {
    {"fish-in-water", "volume=110L;fish=yes", TANK},
    {"nothing-to-add", TANK ";target=2;now=2", TANK ";target=2;now=1.99"},
    {"nothing-to-add", TANK ";target=2;now=2.5", TANK},
    {"outside-densities", TANK ";reagent=ammonia-solution;strength=56.6%", SOLUTION},
    {"outside-densities", TANK ";reagent=ammonia-solution;strength=0.9%;strength_as=nh4oh",
     TANK ";reagent=ammonia-solution;strength=56.6%;strength_as=nh4oh"},
    {"outside-densities", TANK ";reagent=ammonia-solution;strength=61.8%;strength_as=nh4oh",
     TANK ";reagent=ammonia-solution;strength=61.7%;strength_as=nh4oh"},
    {"fit-stretched", TANK ";ph=8.1;temp=4;salinity=34", TANK WATER},
    {"weigh-small", TANK, "volume=190L;fish=no"},
    {"small-liquid", "volume=12L;fish=no;reagent=ammonia-solution;strength=10%", SOLUTION},
    {"plain-ammonia", SOLUTION, TANK},
    {"ammonia-corrosive", SOLUTION, TANK},
    {"counter-ion", TANK ";reagent=concentrate;concentrate_strength=2g/L", SOLUTION},
    {"alkalinity-low", TANK ";alkalinity=2.2meq/L", TANK ";alkalinity=2.3meq/L"},
    {"alkalinity-low", TANK ";alkalinity=6.2dKH", TANK},
    /* free ammonia, not the total, of which 5.3 % are free in this water; 1 mg/L of 18.77 */
    {"dose-stalls", TANK WATER ";target=18.8", TANK WATER ";target=18.7"},
    {"dose-stalls", TANK WATER ";target=18.8;now=18", TANK ";target=18.8"},
    {"dose-stalls", TANK WATER ";target=18.8", TANK ";ph=7;temp=25;salinity=34;target=50"},
    {"dose-large", TANK ";target=5.1", TANK ";target=5"},
    {"dose-large", TANK ";target=5.1;ph=8.1;temp=25", TANK WATER ";target=5.1"},
    {"dose-large", TANK ";target=6.5;basis=nh4;now=1", TANK ";target=6.5;basis=nh4" WATER},
    {"alkalinity-all", TANK ";target=16.2", TANK ";target=16"},
    {"alkalinity-all", TANK ";target=16.2", TANK ";target=16.2;alkalinity=5"},
    {"alkalinity-all", SOLUTION ";target=32.3", SOLUTION ";target=32"},
    {"dose-slows", TANK WATER ";target=1.88", TANK WATER ";target=1.87"},
    {"dose-slows", TANK WATER ";target=18.7", TANK WATER ";target=18.8"},
    {"dose-slows", TANK WATER, TANK},
    {"peak-higher", SOLUTION WATER, TANK WATER},
    {"peak-higher", SOLUTION WATER, SOLUTION},
    {"peak-higher", SOLUTION WATER, SOLUTION WATER ";alkalinity=2.3"},
    /* it is not asked for what was given, and is told what was done with it */
    {"peak-higher", SOLUTION WATER, SOLUTION WATER ";alkalinity=0.01"},
    {"peak-readings", TANK WATER ";alkalinity=0.01", TANK WATER ";alkalinity=2.3"},
    {"peak-readings", TANK WATER ";alkalinity=0.01", TANK ";alkalinity=0.01"},
    {"peak-readings", TANK WATER ";alkalinity=0.01", SOLUTION WATER ";alkalinity=0.01"},
    {"peak-readings-higher", SOLUTION WATER ";alkalinity=0.01", TANK WATER ";alkalinity=0.01"},
    {"peak-readings-higher", SOLUTION WATER ";alkalinity=0.01", SOLUTION STEEP},
    {"peak-outside-ph", SOLUTION STEEP, TANK STEEP},
    {"peak-outside-ph", TANK SOUR, TANK WATER ";alkalinity=0.01"},
    {"peak-outside-ph", TANK SOUR, TANK ";ph=5.5;temp=25;salinity=0;alkalinity=0.05"},
    {"carbonate-fresh", TANK ";ph=7.6;temp=25;salinity=4.9;alkalinity=2.3",
     TANK ";ph=7.6;temp=25;salinity=5;alkalinity=2.3"},
    {"carbonate-fresh", TANK ";ph=7.6;temp=25;salinity=0.3;alkalinity=2.3",
     TANK ";ph=7.6;temp=25;salinity=0.3"},
    {"fit-stretched", TANK ";ph=8.1;temp=25;salinity=12;alkalinity=2.3",
     TANK ";ph=8.1;temp=25;salinity=12"},
    {"challenge-state", TANK WATER ";alkalinity=2.3", TANK WATER},
    {"challenge-state", TANK WATER ";alkalinity=2.3", SOLUTION STEEP},
    {"weigh-powder", TANK ";reagent=ammonium-sulfate", SOLUTION},
    {"no-fish", TANK, "volume=110L;fish=yes"},
    {"adsorbents-out", TANK, "volume=110L;fish=yes"},
    {"aerate-challenge", TANK, "volume=110L;fish=yes"},
    {"alkalinity-unsaid", TANK, TANK ";alkalinity=2.6"},
    {"peak-unsaid", TANK ";ph=8.1;temp=25", TANK WATER},
    {"peak-unsaid", TANK ";ph=8.1;salinity=34", TANK WATER},
    {"peak-unsaid", TANK ";temp=25;salinity=34", TANK WATER},
    {"kit-basis", TANK, "volume=110L;fish=yes"},
    {"check-reading", TANK, "volume=110L;fish=yes"},
    {"test-at-24h", TANK, "volume=110L;fish=yes"},
    {"same-water", TANK, "volume=110L;fish=yes"},
    {"change-after-pass", TANK, "volume=110L;fish=yes"},
    {"feed-filter", TANK, "volume=110L;fish=yes"},
    {"ask-vet", TANK, NULL},
    {"ask-vet", "volume=110L;fish=yes", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(challenge(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"nothing-to-add", UP_TO, 2, "target", NULL, TANK ";target=2;now=2"},
    {"outside-densities", BELOW, 0.5, "strength", NULL,
     TANK ";reagent=ammonia-solution;strength=0.5%"},
    {"outside-densities", ABOVE, 30, "strength", NULL,
     TANK ";reagent=ammonia-solution;strength=30%"},
    {"weigh-small", BELOW, 1, "volume", "mass", TANK},
    {"small-liquid", BELOW, 1, "volume", "liquid", SOLUTION},
    {"alkalinity-low", BELOW, 2 + 2 * 2 / 14.007, "alkalinity", NULL, TANK ";alkalinity=2.3"},
    {"dose-large", ABOVE, 5, "target", "reading_n", TANK ";target=6;basis=nh4"},
    {"alkalinity-all", ABOVE, 2.3 * 100.086 / 2, "target", "alkalinity_used", TANK ";target=16"},
    {"dose-stalls", ABOVE, 1, "target", "free_peak", TANK WATER ";target=18"},
    {"dose-slows", UP_TO, 1, "target", "free_peak", TANK WATER ";target=18"},
    {"dose-slows", ABOVE, 0.1, "target", "free_peak", TANK WATER ";target=2"},
    {"carbonate-fresh", BELOW, 5, "salinity", NULL,
     TANK ";ph=7.6;temp=25;salinity=5;alkalinity=2.3"},
    {"fit-stretched", BELOW, 5, "temp", NULL, TANK ";ph=8.1;temp=5;salinity=34"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(challenge(), edges, sizeof edges / sizeof edges[0]);
}

static int status_of(const char *line)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(challenge(), line, &question, &answer);
    return answer.status;
}

static void statuses(void **state)
{
    (void)state;
    assert_int_equal(status_of(TANK), 0);
    assert_int_equal(status_of(TANK ";ph=8.1;temp=4;salinity=34"), 1);
    assert_int_equal(status_of(TANK ";now=2"), -1);
    assert_int_equal(status_of("volume=110L;fish=yes"), -2);
    assert_int_equal(status_of("volume=110L;fish=yes;now=2"), -2);
}

static void absent_results(void **state)
{
    (void)state;
    check(isfinite(ask_for(TANK, "mass")));
    check(isnan(ask_for(SOLUTION, "mass")));
    check(isfinite(ask_for(SOLUTION, "liquid")));
    check(isnan(ask_for(TANK, "liquid")));
    check(isfinite(ask_for(TANK WATER, "free_peak")));
    check(isnan(ask_for(TANK, "free_peak")));
    check(isnan(ask_for(TANK WATER, "ph_after")));
    check(isnan(ask_for(TANK ";temp=25;salinity=34;alkalinity=2.3", "ph_after")));
    check(isfinite(ask_for(TANK WATER ";alkalinity=2.3", "ph_after")));
    /* readings that do not go together: the peak at the pH given, as without alkalinity */
    check(isnan(ask_for(SOLUTION WATER ";alkalinity=0.01", "ph_after")));
    assert_close(ask_for(SOLUTION WATER ";alkalinity=0.01", "free_peak"),
                 ask_for(SOLUTION WATER, "free_peak"), 0, 0);
    check(isnan(ask_for(SOLUTION STEEP, "ph_after")));
    check(isnan(ask_for(SOLUTION STEEP, "free_peak")));
    check(isfinite(ask_for(SOLUTION STEEP, "liquid")));
}

/* Ammonia solution raises the pH and more so with less alkalinity, a salt lowers it a little; the
 * alkalinity that is left is what it was, and one equivalent for each nitrogen of the solution; the
 * peak is at the pH that is shown. */
static void ph_of_the_dose(void **state)
{
    (void)state;
    hw_random_start(20310503);
    for (int i = 0; i < 500; i++) {
        char water[300];
        char line[400];
        double ph = hw_random_between(6.8, 8.4);
        double alkalinity = hw_random_between(0.8, 4);
        double temp = hw_random_between(5, 35);
        double salinity = hw_random_between(0, 44);
        double now = hw_random_between(0, 1);
        double target = now + hw_random_between(0.2, 4);
        double pk = 0;
        double fraction = 0;
        double carbon = 0;
        double again = 0;
        (void)snprintf(water, sizeof water,
                       "volume=75L;fish=no;now=%.17g;target=%.17g;ph=%.17g;temp=%.17g;"
                       "salinity=%.17gg/kg;alkalinity=%.17g",
                       now, target, ph, temp, salinity, alkalinity);
        double salt = ask_for(water, "ph_after");
        check(salt < ph && salt > ph - 0.5);
        (void)snprintf(line, sizeof line, "%s;reagent=concentrate;concentrate_strength=20g/L",
                       water);
        assert_close(ask_for(line, "ph_after"), salt, 0, 0);
        (void)snprintf(line, sizeof line, "%s;reagent=ammonia-solution;strength=10%%", water);
        double liquid = ask_for(line, "ph_after");
        check(liquid > ph);
        assert_true(hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, temp, salinity, &pk) >= 0);
        assert_true(hw_ammonia_fraction_at_pk(liquid, pk, &fraction) >= 0);
        assert_close(ask_for(line, "free_peak"), fraction * target, 0, 1e-14);
        /* backwards: water of that pH, with that alkalinity, holds the carbon that it held
         * before */
        assert_true(hw_carbonate_carbon(ph, alkalinity, now, temp, salinity, &carbon) >= 0);
        assert_true(hw_carbonate_carbon(liquid, alkalinity + (target - now) / n, target, temp,
                                        salinity, &again) >= 0);
        assert_close(again, carbon, 0, 1e-9);
    }
}

/* A strength belongs to its source. */
static void conditions(void **state)
{
    (void)state;
    struct hw_question question;
    size_t which = 0;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"volume=110L", HW_PROBLEM_MISSING},
        {TANK ";strength=10%", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";strength_as=nh3", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";concentrate_strength=2g/L", HW_PROBLEM_OUT_OF_PLACE},
        {SOLUTION ";purity=90%", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";reagent=ammonia-solution", HW_PROBLEM_MISSING},
        {TANK ";reagent=concentrate", HW_PROBLEM_MISSING},
        {TANK ";reagent=concentrate;concentrate_strength=2", HW_PROBLEM_NEEDS_UNIT},
        {TANK ";reagent=ammonia-solution;strength=10", HW_PROBLEM_NEEDS_UNIT},
        {"volume=110;fish=no", HW_PROBLEM_NEEDS_UNIT},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        assert_int_equal(ask_settle(challenge(), wrong[i].line, &question, &which),
                         wrong[i].problem);
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const sources[] = {
        "reagent=ammonium-chloride;purity=10%",
        "reagent=ammonium-sulfate;purity=100%",
        "reagent=ammonia-solution;strength=0.5%",
        "reagent=ammonia-solution;strength=30%",
        "reagent=ammonia-solution;strength=61.7%;strength_as=nh4oh",
        "reagent=concentrate;concentrate_strength=0.01g/L",
        "reagent=concentrate;concentrate_strength=300g/L",
    };
    for (unsigned corner = 0; corner < 64; corner++) {
        for (size_t i = 0; i < sizeof sources / sizeof sources[0]; i++) {
            char line[256];
            (void)snprintf(line, sizeof line,
                           "volume=%s;fish=no;target=%s;now=%s;ph=%s;temp=%s;salinity=%s;%s",
                           corner & 1 ? "1e5L" : "0.1L", corner & 2 ? "50" : "0.1",
                           corner & 4 ? "0.0999" : "0", corner & 8 ? "10" : "5",
                           corner & 16 ? "40" : "0", corner & 32 ? "45" : "0", sources[i]);
            check(isfinite(ask_for(line, i < 2 ? "mass" : "liquid")));
            check(ask_for(line, "nitrogen") > 0);
            check(ask_for(line, "free_peak") > 0);
            check(ask_for(line, "alkalinity_used") > 0);
        }
    }
}

static void working_can_be_redone(void **state)
{
    (void)state;
    keep_workings();
    static const char *const more[] = {
        TANK WATER,
        "volume=20gal;fish=no;target=3;now=0.25;basis=nh3;purity=99.5%",
        SOLUTION WATER ";basis=nh4;now=0.5",
        TANK ";reagent=ammonia-solution;strength=33%;strength_as=nh4oh",
        TANK ";reagent=concentrate;concentrate_strength=2.5g/L;basis=nh3",
    };
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        check_working(challenge(), more[i]);
    }
    redo_workings();
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(doses),
        cmocka_unit_test(two_labels_of_one_bottle),
        cmocka_unit_test(what_to_expect),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(statuses),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(ph_of_the_dose),
        cmocka_unit_test(conditions),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(working_can_be_redone),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
