/* test_oxygen.c - the calculation oxygen: saturation, the hours that are left, every note. */
#include "assert_close.h"
#include "holdwater/oxygen.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *oxygen(void)
{
    return find_calc("oxygen");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(oxygen(), line, &question, &answer);
    return result_of(oxygen(), &answer, result);
}

#define WATER "temp=25.5;salinity=33.5"
#define FISH  WATER ";volume=110L;biomass=240g"
#define READ  FISH ";oxygen_now=6.2"
#define COOL  "temp=25;salinity=33.5;volume=110L;oxygen_now=6.2;biomass=240g"
#define LEFT  "temp=25.5;salinity=33.5;volume=110L;oxygen_now=6.2;biomass=240g"

static void results_and_their_absence(void **state)
{
    (void)state;
    assert_close(ask_for(READ, "saturation"), ask_for(WATER, "saturation"), 0, 0);
    assert_close(ask_for(READ, "percent"), 620 / ask_for(WATER, "saturation"), 0, 1e-15);
    assert_close(ask_for(READ, "hours"), 2.2 * 110 / (0.24 * 420), 0, 1e-14);
    assert_close(ask_for(READ ";uptake=500;floor=5.1", "hours"), 1.1 * 110 / (0.24 * 500), 0,
                 1e-14);
    assert_no_answer(ask_for(FISH, "percent"));
    assert_no_answer(ask_for(FISH, "hours"));
    assert_no_answer(ask_for(WATER ";oxygen_now=6.2", "hours"));
    assert_no_answer(ask_for(WATER ";oxygen_now=6.2;volume=110L", "hours"));
    assert_no_answer(ask_for(WATER ";oxygen_now=6.2;biomass=240g", "hours"));
    check(isfinite(ask_for(WATER ";oxygen_now=6.2", "percent")));
    /* at the floor and below there is no time left, whatever the water and the fish */
    assert_close(ask_for(FISH ";oxygen_now=4", "hours"), 0, 0, 0);
    assert_close(ask_for(WATER ";oxygen_now=1.5", "hours"), 0, 0, 0);
    assert_close(ask_for(WATER ";oxygen_now=0", "percent"), 0, 0, 0);
}

/* As told, else by size, else that of a small fish. */
static void uptake_is_told_or_reckoned(void **state)
{
    (void)state;
    double hours = ask_for(LEFT ";uptake=100", "hours");
    assert_close(hours, 2.2 * 110 / (0.24 * 100), 0, 1e-14);
    assert_close(ask_for(LEFT ";uptake=100;fish-mass=12g", "hours"), hours, 0, 0);
    assert_close(ask_for(LEFT ";fish-mass=12g", "hours"),
                 100 * hours / (15.077 * pow(12, -0.2452) * 1000 / 24), 0, 1e-14);
    assert_close(ask_for(LEFT ";fish-mass=5000mg", "hours") / ask_for(LEFT, "hours"), 420 / 423.366,
                 0, 1e-5);
    check(ask_for(LEFT ";fish-mass=120g", "hours") > ask_for(LEFT ";fish-mass=12g", "hours"));
    assert_no_answer(ask_for(LEFT ";fish-mass=241g", "saturation"));
}

static void altitude_in_any_unit(void **state)
{
    (void)state;
    double high = ask_for(WATER ";altitude=1500m", "saturation");
    check(high < ask_for(WATER, "saturation"));
    assert_close(ask_for(WATER ";altitude=150000cm", "saturation"), high, 0, 1e-15);
    assert_close(ask_for(WATER ";altitude=4921.25984251968ft", "saturation"), high, 0, 1e-14);
    check(ask_for(WATER ";altitude=-430m", "saturation") > ask_for(WATER, "saturation"));
}

static const struct note_row notes[] = {
    {"oxygen-act-now", FISH ";oxygen_now=4", READ},
    {"oxygen-act-now", WATER ";oxygen_now=5;floor=5.5", WATER ";oxygen_now=5"},
    {"oxygen-act-now", WATER ";oxygen_now=0", WATER},
    {"oxygen-act-now", WATER ";oxygen_now=3.9;floor=2", WATER ";oxygen_now=4.1;floor=2"},
    {"oxygen-low", WATER ";oxygen_now=4.1;floor=2", WATER ";oxygen_now=3.9;floor=2"},
    {"floor-low", READ ";floor=3.9", READ},
    {"floor-low", WATER ";floor=0", WATER ";floor=5"},
    {"uptake-warm", READ, COOL},
    {"uptake-warm", READ ";fish-mass=12g", COOL ";fish-mass=12g"},
    {"uptake-warm", READ, READ ";uptake=500"},
    {"uptake-warm", READ, READ ";fish-mass=12g;uptake=500"},
    {"uptake-warm", READ, FISH},
    {"oxygen-soon", FISH ";oxygen_now=4.9", FISH ";oxygen_now=5"},
    {"oxygen-soon", FISH ";oxygen_now=4.1", FISH ";oxygen_now=4"},
    {"oxygen-low", WATER ";oxygen_now=5", READ},
    {"oxygen-low", FISH ";oxygen_now=5.4", FISH ";oxygen_now=3.9"},
    {"oxygen-over", WATER ";oxygen_now=7.7", WATER ";oxygen_now=7.4"},
    {"oxygen-over", WATER ";oxygen_now=8.3", WATER},
    {"floor-not-held", WATER ";floor=6.9", WATER ";floor=6.7"},
    {"floor-not-held", "temp=32;salinity=35;altitude=4500m", "temp=32;salinity=35;altitude=2000m"},
    {"oxygen-stretched", "temp=25;salinity=40.5", "temp=25;salinity=40"},
    {"hours-unread", FISH, READ},
    {"hours-unread", FISH, WATER ";volume=110L"},
    {"hours-half", WATER ";volume=110L", READ},
    {"hours-half", WATER ";biomass=240g;oxygen_now=6.2", FISH},
    {"hours-half", WATER ";biomass=240g", WATER ";biomass=240g;oxygen_now=3"},
    {"hours-unsaid", WATER, READ},
    {"hours-unsaid", WATER ";oxygen_now=6.2", WATER ";oxygen_now=3.2"},
    {"air-first", WATER, NULL},
    {"sealed-water", READ, FISH},
    {"sealed-water", READ, FISH ";oxygen_now=3"},
    {"fish-over-biomass", READ ";fish-mass=241g", READ ";fish-mass=240g"},
    {"fish-over-biomass", READ ";fish-mass=241g;uptake=300", WATER ";fish-mass=241g"},
    {"uptake-by-size", READ ";fish-mass=12g", READ ";fish-mass=12g;uptake=300"},
    {"uptake-by-size", READ ";fish-mass=12g", FISH ";fish-mass=12g;oxygen_now=3"},
    {"uptake-stretched", READ ";fish-mass=3g", READ ";fish-mass=4g"},
    {"uptake-stretched", READ ";fish-mass=170g", READ ";fish-mass=160g"},
    {"uptake-stretched", READ ";fish-mass=3g", READ ";fish-mass=3g;uptake=300"},
    {"uptake-stretched", READ ";fish-mass=3g", FISH ";fish-mass=3g"},
    {"uptake-rough", READ, FISH ";oxygen_now=3"},
    {"oxygen-meter", WATER ";oxygen_now=6.2", FISH},
    {"oxygen-floor", READ, NULL},
    {"ask-vet", WATER, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(oxygen(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"oxygen-act-now", UP_TO, 4, "oxygen_now", NULL, FISH ";oxygen_now=4"},
    {"oxygen-act-now", UP_TO, 4, "oxygen_now", NULL, FISH ";oxygen_now=4;floor=2"},
    {"oxygen-act-now", UP_TO, 5, "oxygen_now", NULL, FISH ";oxygen_now=5;floor=5"},
    {"floor-low", BELOW, 4, "floor", NULL, READ ";floor=4"},
    {"uptake-warm", ABOVE, 25, "temp", NULL, COOL},
    {"oxygen-soon", BELOW, 1, "biomass", "hours", READ},
    {"oxygen-soon", ABOVE, 4, "oxygen_now", NULL, FISH ";oxygen_now=4"},
    {"oxygen-low", BELOW, 80, "oxygen_now", "percent", WATER ";oxygen_now=5"},
    {"oxygen-low", ABOVE, 4, "oxygen_now", NULL, FISH ";oxygen_now=4"},
    {"oxygen-over", ABOVE, 110, "oxygen_now", "percent", WATER ";oxygen_now=7"},
    {"floor-not-held", BELOW, 5, "temp", "saturation",
     "temp=30;salinity=35;floor=5;altitude=2000m"},
    {"fish-over-biomass", ABOVE, 240, "fish-mass", NULL, READ ";fish-mass=240g"},
    {"uptake-stretched", BELOW, 3.2, "fish-mass", NULL, READ ";fish-mass=3.2g"},
    {"uptake-stretched", ABOVE, 165.6, "fish-mass", NULL, READ ";fish-mass=165.6g"},
    {"oxygen-stretched", ABOVE, 40, "salinity", NULL, "temp=25;salinity=40"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(oxygen(), edges, sizeof edges / sizeof edges[0]);
}

static void workings(void **state)
{
    (void)state;
    check_working(oxygen(), READ ";altitude=-430m");
    check_working(oxygen(), READ ";fish-mass=31.4g");
    check_working(oxygen(), READ ";altitude=5000m;temp=0");
    check_working(oxygen(), "temp=40;salinity=45;oxygen_now=50;volume=0.05L;biomass=1000kg");
}

/* Random questions: hours go with the water, against fish and uptake; percent times saturation is
 * the reading. */
static void hours_balance(void **state)
{
    (void)state;
    hw_random_start(20310311);
    for (int i = 0; i < 1000; i++) {
        char line[240];
        double now = hw_random_between(4.5, 12);
        double volume = hw_random_between(0.5, 400);
        double biomass = hw_random_between(1, 3000);
        double uptake = hw_random_between(20, 900);
        double floor = hw_random_between(0, 4.4);
        (void)snprintf(line, sizeof line,
                       "temp=%.3f;salinity=%.3fg/kg;altitude=%.1fm;oxygen_now=%.6f;volume=%.6fL;"
                       "biomass=%.6fg;uptake=%.6f;floor=%.6f",
                       hw_random_between(0, 40), hw_random_between(0, 40),
                       hw_random_between(-500, 5000), now, volume, biomass, uptake, floor);
        double used = ask_for(line, "hours") * uptake * biomass / 1000;
        assert_close(now - used / volume, floor, 1e-5, 0);
        assert_close(ask_for(line, "percent") / 100 * ask_for(line, "saturation"), now, 1e-6, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(results_and_their_absence),
        cmocka_unit_test(uptake_is_told_or_reckoned),
        cmocka_unit_test(altitude_in_any_unit),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(workings),
        cmocka_unit_test(hours_balance),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
