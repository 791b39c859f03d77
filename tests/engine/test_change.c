/* test_change.c - the change calculation: worked changes, every note, every result that may be
 * absent, mass over random rows, and the working redone by awk. */
#include "assert_close.h"
#include "calc/medicine_kind.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *change(void)
{
    return find_calc("change");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(change(), line, &question, &answer);
    return result_of(change(), &answer, result);
}

#define TANK "volume=110L;now=0.18"
#define KEEP TANK ";share=25%;keep=0.18"

static void the_check_value(void **state)
{
    (void)state;
    const char *line = "volume=110L;share=25%;now=0.18;keep=0.18;floor=0.15;strength=1mg/mL";
    assert_close(ask_for(line, "after"), 0.135, 1e-15, 0);
    assert_close(ask_for(line, "lowest"), 0.135, 1e-15, 0);
    assert_close(ask_for(line, "new_needed"), 0.18, 0, 0);
    assert_close(ask_for(line, "add"), 4.95, 1e-14, 0);
    assert_close(ask_for(line, "add_liquid"), 4.95, 1e-14, 0);
    check(isnan(ask_for(line, "times_needed")));
}

/* 200 mg in a label's 400 mg, and 20 mg in a mL. */
static void by_label(void **state)
{
    (void)state;
    assert_close(ask_for(KEEP ";label_mass=0.4g;label_per=80L;label_raises=2.5", "add_mass"),
                 0.0099, 1e-15, 0);
    assert_close(ask_for(KEEP ";label_liquid=5mL;label_per=40L;label_raises=2.5", "add_liquid"),
                 0.2475, 1e-14, 0);
}

static void lowest_on_the_way(void **state)
{
    (void)state;
    /* Falling: the last; rising: the first; flat: the same. */
    assert_close(ask_for("volume=75L;take=25L;now=6;new=3;times=2", "lowest"), 3 + 3 * 4.0 / 9, 0,
                 1e-14);
    assert_close(ask_for("volume=75L;take=25L;now=3;new=6;times=2", "lowest"), 3, 0, 0);
    assert_close(ask_for("volume=75L;take=25L;now=3;new=6;times=2", "after"), 6 - 3 * 4.0 / 9, 0,
                 1e-14);
    assert_close(ask_for("volume=75L;take=25L;now=3;new=3;times=2", "lowest"), 3, 0, 0);
}

/* With `take`, `share` and rows of single rounds the same comes out, and the dose brings the tank
 * to keep. */
static void doses_do_what_they_say(void **state)
{
    (void)state;
    hw_random_start(20310506);
    for (int i = 0; i < 400; i++) {
        bool flow = i % 2;
        double volume = hw_random_between(20, 200);
        double take = volume * hw_random_between(0.01, flow ? 3 : 1);
        double now = hw_random_between(0, 3);
        double new_level = hw_random_between(0, 1);
        double keep = hw_random_between(0, 3);
        char line[300];
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;take=%.17gL;now=%.17g;new=%.17g;keep=%.17g;method=%s;"
                       "strength=0.8mg/mL",
                       volume, take, now, new_level, keep, flow ? "flow" : "batch");
        double needed = ask_for(line, "new_needed");
        double add = ask_for(line, "add");
        check(isnan(add) == (needed <= new_level));
        if (!isnan(add)) {
            double out = flow ? exp(-take / volume) : 1 - take / volume;
            double in_new = new_level + add / take;
            assert_close(now * out + in_new * (1 - out), keep, 1e-12, 0);
            assert_close(ask_for(line, "add_liquid"), add / 0.8, 0, 1e-14);
        }
        double after = ask_for(line, "after");
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;share=%.17g%%;now=%.17g;new=%.17g;method=%s", volume,
                       100 * take / volume, now, new_level, flow ? "flow" : "batch");
        assert_close(ask_for(line, "after"), after, 0, 1e-13);
        if (!flow) {
            assert_close(volume * after, (volume - take) * now + take * new_level, 1e-12, 1e-13);
        }
    }
}

static void rounds_are_single_changes(void **state)
{
    (void)state;
    static const char *const methods[] = {"batch", "flow"};
    for (size_t i = 0; i < 2; i++) {
        char line[200];
        double level = 61.5;
        for (int times = 1; times <= 12; times++) {
            (void)snprintf(line, sizeof line, "volume=190L;take=23.5L;now=%.17g;new=4.25;method=%s",
                           level, methods[i]);
            level = ask_for(line, "after");
            (void)snprintf(line, sizeof line,
                           "volume=190L;take=23.5L;now=61.5;new=4.25;method=%s;times=%d",
                           methods[i], times);
            assert_close(ask_for(line, "after"), level, 0, 1e-14);
        }
    }
}

static void goals(void **state)
{
    (void)state;
    const char *line = "volume=75L;take=20L;now=80;new=5;goal=20";
    assert_close(ask_for(line, "share_needed"), 80, 0, 1e-14);
    assert_close(ask_for(line, "times_needed"), ceil(log(0.2) / log(55.0 / 75)), 0, 0);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=20;method=flow", "share_needed"),
                 100 * log(4), 0, 1e-14);
    /* Without a size it is one change, of the size that the goal needs. */
    assert_close(ask_for("volume=75L;now=80;new=5;goal=20", "share_needed"), 80, 0, 1e-14);
    assert_close(ask_for("volume=75L;now=80;new=5;goal=20", "times_needed"), 1, 0, 0);
    assert_close(ask_for("volume=75L;now=80;new=5;goal=20", "after"), 20, 0, 0);
    assert_close(ask_for("volume=75L;now=80;new=5;goal=20", "lowest"), 20, 0, 0);
    assert_close(ask_for("volume=75L;now=5;new=80;goal=20", "lowest"), 5, 0, 0);
    assert_close(ask_for("volume=75L;now=80;goal=80", "share_needed"), 0, 0, 0);
    assert_close(ask_for("volume=75L;now=80;goal=80", "times_needed"), 0, 0, 0);
    assert_close(ask_for("volume=75L;now=80;goal=20;method=flow", "share_needed"), 100 * log(4), 0,
                 1e-14);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=80", "share_needed"), 0, 0, 0);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=80", "times_needed"), 0, 0, 0);
}

#define IONIC      "volume=110L;share=25%;kind=copper-ionic;salinity=33"
#define AMINE      "volume=110L;share=25%;kind=copper-amine;salinity=33;now=0.45;keep=0.45"
#define CHELATE    "volume=110L;share=25%;kind=copper-chelated;salinity=33;now=2;keep=2"
#define AMINE_IN   "volume=110L;share=25%;kind=copper-amine;salinity=33"
#define CHELATE_IN "volume=110L;share=25%;kind=copper-chelated;salinity=33"
#define FRESH      "volume=110L;share=25%;kind=copper-ionic;now=0.18"
#define FILTER     "volume=110L;share=25%;kind=dye;biofilter=yes;now=3"
#define DYE        "volume=110L;share=25%;kind=dye;biofilter=no"
#define ALL        "volume=110L;share=100%;now=0"
#define LABEL      KEEP ";label_per=80L;label_raises=0.25"

static const struct note_row notes[] = {
    {"more-than-all", TANK ";take=111L", TANK ";take=110L"},
    {"more-than-all", TANK ";share=101%", TANK ";share=101%;method=flow"},
    {"flow-too-long", TANK ";take=1101L;method=flow", TANK ";take=1100L;method=flow"},
    {"how-much", TANK, TANK ";goal=0.1"},
    {"how-much", TANK, TANK ";take=20L"},
    {"how-much", TANK ";goal=0.1;times=2", TANK ";share=25%;goal=0.1;times=2"},
    {"how-much", TANK ";goal=0.1;keep=0.18", KEEP ";goal=0.1"},
    {"goal-beyond", TANK ";goal=0.2", TANK ";goal=0"},
    {"goal-beyond", TANK ";goal=0;method=flow", TANK ";goal=0.0001;method=flow"},
    {"goal-beyond", TANK ";goal=0.2", TANK ";goal=0.2;times=2"},
    {"product-unclear", LABEL ";strength=1mg/mL", LABEL ";label_liquid=1mL"},
    {"product-unclear", LABEL, LABEL ";label_mass=1g"},
    {"product-unclear", LABEL ";label_mass=1g;strength=1mg/mL", KEEP ";strength=1mg/mL"},
    {"product-unclear", KEEP ";label_mass=1g;label_per=80L", KEEP},
    {"product-unclear", KEEP ";label_mass=1g;label_raises=0.25", KEEP},
    {"product-unclear", LABEL ";label_mass=0.019g", LABEL ";label_mass=0.021g"},
    {"product-unclear", LABEL ";label_mass=201g", LABEL ";label_mass=199g"},
    {"product-unclear", KEEP ";label_liquid=1L;label_per=9L;label_raises=0.1",
     KEEP ";label_liquid=1L;label_per=10L;label_raises=0.1"},
    {"product-unclear", KEEP ";label_liquid=1mL;label_per=40L;label_raises=26",
     KEEP ";label_liquid=1mL;label_per=40L;label_raises=25"},
    {"floor-over-ceiling", KEEP ";floor=0.21;ceiling=0.2", KEEP ";floor=0.2;ceiling=0.2"},
    {"floor-over-ceiling", IONIC ";now=0.18;floor=0.21", IONIC ";now=0.1;ceiling=0.12"},
    {"ceiling-needed", AMINE, AMINE ";ceiling=0.5"},
    {"ceiling-needed", CHELATE, IONIC ";now=0.18;keep=0.18"},
    {"ceiling-needed", AMINE, "volume=110L;share=25%;kind=copper-amine;salinity=33;now=0.45"},
    {"keep-over-ceiling", KEEP ";ceiling=0.17", KEEP ";ceiling=0.18"},
    {"keep-over-ceiling", IONIC ";now=0.2;keep=0.201", IONIC ";now=0.2;keep=0.2"},
    {"keep-over-ceiling", "volume=110L;share=10%;now=0;keep=0.5;ceiling=0.2", KEEP},
    {"new-too-strong", TANK ";share=25%;keep=0.2;ceiling=0.25",
     TANK ";share=25%;keep=0.2;ceiling=0.26"},
    {"new-too-strong", IONIC ";now=0.17;keep=0.178", IONIC ";now=0.17;keep=0.177"},
    {"new-too-strong", DYE ";now=3;keep=7.3", DYE ";now=3;keep=7.2"},
    {"ceiling-too-high", IONIC ";now=0.18;keep=0.18;ceiling=0.25",
     IONIC ";now=0.18;keep=0.18;ceiling=0.249"},
    {"ceiling-too-high", IONIC ";now=0.18;keep=0.18;ceiling=0.25", IONIC ";now=0.18;ceiling=0.25"},
    {"copper-in-fresh", FRESH ";salinity=0.99g/kg;keep=0.18", FRESH ";salinity=1g/kg;keep=0.18"},
    {"copper-in-fresh", FRESH ";salinity=0;keep=0.18", FRESH ";salinity=0"},
    {"dye-biofilter", FILTER ";keep=3", DYE ";now=3;keep=3"},
    {"dye-biofilter", FILTER ";keep=3", FILTER},
    {"dye-over", DYE ";now=20;keep=20.1", DYE ";now=20;keep=20"},
    {"dye-over", DYE ";now=21;keep=21;ceiling=30", DYE ";now=21"},
    {"small-liquid", KEEP ";strength=5mg/mL", KEEP ";strength=1mg/mL"},
    {"small-liquid", KEEP ";strength=5mg/mL", KEEP},
    {"pour-too-large", ALL ";keep=10.1;strength=0.1mg/mL", ALL ";keep=10;strength=0.1mg/mL"},
    {"pour-too-large", ALL ";keep=10.1;strength=0.1mg/mL", ALL ";keep=10.1"},
    {"pour-large", ALL ";keep=1.1;strength=0.1mg/mL", ALL ";keep=1;strength=0.1mg/mL"},
    {"pour-large", ALL ";keep=1.1;label_mass=200g;label_per=80L;label_raises=0.25",
     ALL ";keep=0.9;label_mass=200g;label_per=80L;label_raises=0.25"},
    {"weigh-small", LABEL ";label_mass=4g", LABEL ";label_mass=5g"},
    {"weigh-small", LABEL ";label_mass=4g", LABEL ";label_liquid=1mL"},
    {"below-floor", TANK ";share=25%;floor=0.136", TANK ";share=25%;floor=0.135"},
    {"below-floor", TANK ";share=25%;floor=0.19;new=0.5", TANK ";share=25%;floor=0.15;new=0.18"},
    {"below-floor", IONIC ";now=0.19", IONIC ";now=0.2"},
    {"below-floor", IONIC ";now=0.19", IONIC ";now=0.19;keep=0.19"},
    {"below-floor", IONIC ";now=0.19;goal=0.15", IONIC ";now=0.19;goal=0.14"},
    {"ends-below-floor", TANK ";share=25%;floor=0.136", TANK ";share=25%;floor=0.19;new=0.5"},
    {"ends-below-floor", IONIC ";now=0.19", IONIC ";now=0.19;goal=0.05"},
    {"forgotten-floor", IONIC ";now=0.18;keep=0.18", IONIC ";now=0.2;keep=0.2"},
    {"forgotten-floor", IONIC ";now=0.18;keep=0.18", IONIC ";now=0.18"},
    {"under-floor", IONIC ";now=0.14;keep=0.149", IONIC ";now=0.14;keep=0.15"},
    {"under-floor", KEEP ";floor=0.19", KEEP ";floor=0.18"},
    {"above-ceiling", TANK ";share=25%;ceiling=0.17", TANK ";share=25%;ceiling=0.18"},
    {"above-ceiling", IONIC ";now=0.21", IONIC ";now=0.2"},
    {"above-ceiling", IONIC ";now=0.26", IONIC ";now=0.27"}, /* the graver one is told */
    {"above-ceiling", AMINE_IN ";now=0.51", AMINE_IN ";now=0.5"},
    {"above-ceiling", AMINE_IN ";now=0.51", AMINE_IN ";now=0.51;ceiling=0.6"},
    {"above-ceiling", CHELATE_IN ";now=2.6", CHELATE_IN ";now=2.5"},
    {"ends-above-ceiling", IONIC ";now=0.27", IONIC ";now=0.26"},
    {"ends-above-ceiling", CHELATE_IN ";now=3.4", CHELATE_IN ";now=3.3"},
    {"ends-above-ceiling", TANK ";share=25%;ceiling=0.134", TANK ";share=25%;ceiling=0.135"},
    {"new-over-ceiling", TANK ";share=25%;ceiling=0.2;new=0.21",
     TANK ";share=25%;ceiling=0.2;new=0.2"},
    {"new-over-ceiling", IONIC ";now=0.18;new=0.21", IONIC ";now=0.18;new=0.2"},
    {"new-over-ceiling", IONIC ";now=0.5;new=0.21", IONIC ";now=0.5;new=0.2"},
    {"new-over-ceiling", IONIC ";now=0.18;keep=0.18;new=0.21", IONIC ";now=0.18;keep=0.18;new=0.2"},
    {"new-over-ceiling", "volume=110L;kind=copper-ionic;salinity=33;now=0.1;new=0.5;goal=0.18",
     "volume=110L;kind=copper-ionic;salinity=33;now=0.1;new=0.2;goal=0.18"},
    {"new-over-ceiling", AMINE_IN ";now=0.9;new=0.51", AMINE_IN ";now=0.9;new=0.5"},
    {"new-over-ceiling", AMINE ";ceiling=0.6;new=0.61", AMINE ";ceiling=0.6;new=0.6"},
    {"new-over-ceiling", CHELATE_IN ";now=4;new=2.6", CHELATE_IN ";now=4;new=2.5"},
    {"new-over-ceiling", DYE ";now=3;new=21", DYE ";now=3;new=20"},
    {"ceiling-needed", AMINE_IN ";now=0.3;new=0.4", AMINE_IN ";now=0.4;new=0.4"},
    {"ceiling-slip", AMINE ";ceiling=1.6", AMINE ";ceiling=1.5"},
    {"ceiling-slip", CHELATE ";ceiling=7.6", CHELATE ";ceiling=7.5"},
    {"ceiling-slip", AMINE_IN ";now=0.3;new=0.4;ceiling=500",
     AMINE_IN ";now=0.4;new=0.3;ceiling=500"},
    {"copper-in-fresh", FRESH ";salinity=0;new=0.19", FRESH ";salinity=0;new=0.18"},
    {"copper-fresh-now", FRESH ";salinity=0.99g/kg", FRESH ";salinity=1g/kg"},
    {"ends-below-floor", FRESH ";salinity=2", FRESH ";salinity=0.9"},
    {"copper-fresh-now", FRESH ";salinity=0.99g/kg",
     "volume=110L;share=25%;kind=copper-ionic;now=0;salinity=0"},
    {"dye-biofilter", FILTER ";new=3.1", FILTER ";new=3"},
    {"dye-in-filter", FILTER, DYE ";now=3"},
    {"dye-in-filter", FILTER, "volume=110L;share=25%;kind=dye;biofilter=yes;now=0"},
    {"change-large", TANK ";share=75.1%", TANK ";share=75%"},
    {"change-large", TANK ";share=95%", TANK ";share=95%;method=flow"},
    {"change-large", TANK ";goal=0.04", TANK ";goal=0.05"},
    {"already-above", TANK ";share=25%;keep=0.13", TANK ";share=25%;keep=0.136"},
    {"new-enough", KEEP ";new=0.18", KEEP ";new=0.17"},
    {"new-enough", KEEP ";new=0.2", TANK ";share=25%;keep=0.13"},
    {"later-rounds", KEEP ";times=2", KEEP},
    {"later-rounds", KEEP ";times=2", TANK ";share=25%;times=2"},
    {"goal-unreachable", TANK ";share=25%;goal=0.2", TANK ";share=25%;goal=0.01"},
    {"goal-unreachable", TANK ";share=25%;goal=0", TANK ";share=100%;goal=0"},
    {"goal-unreachable", TANK ";share=25%;goal=0;method=flow", TANK ";share=25%;goal=0.18"},
    {"ceiling-over-usual", IONIC ";now=0.18;keep=0.18;ceiling=0.21",
     IONIC ";now=0.18;keep=0.18;ceiling=0.2"},
    {"ceiling-over-usual", DYE ";now=3;keep=3;ceiling=21", DYE ";now=3;keep=3;ceiling=20"},
    {"ceiling-over-known", AMINE ";ceiling=0.51", AMINE ";ceiling=0.5"},
    {"ceiling-unsaid", KEEP ";kind=other", TANK ";share=25%;kind=other"},
    {"copper-ramp", IONIC ";now=0.1;new=0.2;share=70%", IONIC ";now=0.1;new=0.2;share=60%"},
    {"copper-ramp-chelated",
     "volume=110L;share=75%;kind=copper-chelated;salinity=33;now=1;keep=1.7"
     ";ceiling=2",
     CHELATE ";ceiling=2"},
    {"below-floor", IONIC ";now=0.14;new=0.15", IONIC ";now=0.15;new=0.16"},
    {"dye-level-high", DYE ";now=6", DYE ";now=5"},
    {"ceiling-over-known", CHELATE ";ceiling=2.51", CHELATE ";ceiling=2.5"},
    {"ceiling-unsaid", KEEP, KEEP ";ceiling=0.2"},
    {"ceiling-unsaid", KEEP ";kind=other", KEEP ";kind=dye;biofilter=no"},
    {"ceiling-unsaid", KEEP, TANK ";share=25%"},
    {"copper-brackish", FRESH ";salinity=24.9;keep=0.18", FRESH ";salinity=25;keep=0.18"},
    {"copper-ramp", "volume=110L;share=100%;kind=copper-ionic;salinity=33;now=0.1;keep=0.167",
     IONIC ";now=0.1;keep=0.12"},
    {"dye-level-high", DYE ";now=5;keep=5.1", DYE ";now=5;keep=5"},
    {"pre-dose", KEEP, TANK ";share=25%"},
    {"pre-dose", KEEP, TANK ";share=25%;keep=0.13"},
    {"test-level", KEEP, TANK ";share=25%"},
    {"keep-unsaid", TANK ";share=25%;strength=1mg/mL", KEEP ";strength=1mg/mL"},
    {"keep-unsaid", TANK ";share=25%;label_mass=1g;label_per=80L;label_raises=0.25",
     LABEL ";label_mass=1g"},
    {"dose-order", KEEP, TANK ";take=111L"},
    {"heater-off", KEEP, TANK ";take=111L"},
    {"match-new-water", KEEP, TANK ";take=111L"},
    {"ph-differs", KEEP, TANK ";take=111L"},
    {"no-dry-salt", KEEP, TANK ";take=111L"},
    {"ask-vet", KEEP, NULL},
    {"ask-vet", TANK ";take=111L", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(change(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"more-than-all", ABOVE, 100, "share", NULL, TANK ";share=100%"},
    {"flow-too-long", ABOVE, 1100, "take", NULL, TANK ";take=1100L;method=flow"},
    {"floor-over-ceiling", ABOVE, 0.2, "floor", NULL, KEEP ";floor=0.2;ceiling=0.2"},
    {"floor-over-ceiling", ABOVE, 0.2, "floor", NULL, IONIC ";now=0.18;floor=0.2"},
    {"keep-over-ceiling", ABOVE, 0.18, "keep", NULL, KEEP ";ceiling=0.18"},
    {"keep-over-ceiling", ABOVE, 0.2, "keep", NULL, IONIC ";now=0.2;keep=0.2"},
    {"ceiling-too-high", FROM, 0.25, "ceiling", NULL, IONIC ";now=0.18;keep=0.18;ceiling=0.25"},
    {"copper-in-fresh", BELOW, 1, "salinity", NULL, FRESH ";salinity=1g/kg;keep=0.18"},
    {"copper-brackish", BELOW, 25, "salinity", NULL, FRESH ";salinity=25g/kg;keep=0.18"},
    {"dye-over", ABOVE, 20, "keep", NULL, DYE ";now=20;keep=20"},
    {"dye-level-high", ABOVE, 5, "keep", NULL, DYE ";now=5;keep=5"},
    {"new-too-strong", ABOVE, 0.1975, "keep", NULL, TANK ";share=25%;keep=0.2;ceiling=0.25"},
    {"ceiling-over-usual", ABOVE, 0.2, "ceiling", NULL, IONIC ";now=0.18;keep=0.18;ceiling=0.2"},
    {"ceiling-over-known", ABOVE, 0.5, "ceiling", NULL, AMINE ";ceiling=0.5"},
    {"ceiling-over-known", ABOVE, 2.5, "ceiling", NULL, CHELATE ";ceiling=2.5"},
    {"pour-too-large", ABOVE, 10, "keep", NULL, ALL ";keep=10;strength=0.1mg/mL"},
    {"pour-large", ABOVE, 1, "keep", NULL, ALL ";keep=1;strength=0.1mg/mL"},
    {"small-liquid", BELOW, 1, "volume", "add_liquid", KEEP ";strength=5mg/mL"},
    {"weigh-small", BELOW, 1, "volume", "add_mass", LABEL ";label_mass=5g"},
    {"below-floor", BELOW, 0.135, "now", "lowest", TANK ";share=25%;floor=0.135"},
    {"ends-below-floor", BELOW, 0.135, "now", "after", TANK ";share=25%;floor=0.135"},
    {"below-floor", FROM, 0.15, "goal", NULL, IONIC ";now=0.19;goal=0.15"},
    {"forgotten-floor", BELOW, 0.15, "now", "after", IONIC ";now=0.19;keep=0.19"},
    {"under-floor", BELOW, 0.18, "keep", NULL, KEEP ";floor=0.18"},
    {"above-ceiling", ABOVE, 0.18, "now", NULL, TANK ";share=25%;ceiling=0.18"},
    {"above-ceiling", ABOVE, 0.5, "now", NULL, AMINE_IN ";now=0.5"},
    {"above-ceiling", ABOVE, 2.5, "now", NULL, CHELATE_IN ";now=2.5"},
    {"ends-above-ceiling", ABOVE, 0.2, "now", "after", IONIC ";now=0.26"},
    {"new-over-ceiling", ABOVE, 0.2, "new", NULL, TANK ";share=25%;ceiling=0.2;new=0.2"},
    {"new-over-ceiling", ABOVE, 0.2, "new", NULL, IONIC ";now=0.18;new=0.2"},
    {"new-over-ceiling", ABOVE, 20, "new", NULL, DYE ";now=3;new=20"},
    {"dye-biofilter", ABOVE, 3, "new", NULL, FILTER ";new=3"},
    {"copper-in-fresh", ABOVE, 0.18, "new", NULL, FRESH ";salinity=0;new=0.18"},
    {"copper-fresh-now", BELOW, 1, "salinity", NULL, FRESH ";salinity=1g/kg"},
    {"ceiling-slip", ABOVE, 1.5, "ceiling", NULL, AMINE ";ceiling=1.5"},
    {"ceiling-slip", ABOVE, 7.5, "ceiling", NULL, CHELATE ";ceiling=7.5"},
    {"change-large", ABOVE, 75, "share", NULL, TANK ";share=75%"},
    {"already-above", BELOW, 0, "keep", "new_needed", TANK ";share=25%;keep=0.14"},
    {"new-enough", FROM, 0.18, "new", NULL, KEEP ";new=0.18"},
    {"pre-dose", BELOW, 0.18, "new", NULL, KEEP ";new=0.18"},
    {"goal-unreachable", ABOVE, 0.18, "goal", NULL, TANK ";share=25%;goal=0.18"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(change(), edges, sizeof edges / sizeof edges[0]);
}

/* Each result that may be absent, present and absent. */
static const struct {
    const char *result, *present, *absent;
} sometimes[] = {
    {"new_needed", TANK ";share=25%;keep=0.01", TANK ";share=25%"},
    {"add", KEEP, TANK ";share=25%;keep=0.01"},
    {"add_mass", LABEL ";label_mass=1g", LABEL ";label_liquid=1mL"},
    {"add_liquid", LABEL ";label_liquid=1mL", LABEL ";label_mass=1g"},
    {"add", KEEP ";new=0.1", KEEP ";new=0.18"},
    {"add_liquid", KEEP ";strength=1mg/mL", KEEP},
    {"add_liquid", KEEP ";strength=1mg/mL", TANK ";share=25%;strength=1mg/mL"},
    {"add_liquid", KEEP ";strength=1mg/mL", TANK ";share=25%;keep=0.01;strength=1mg/mL"},
    {"share_needed", TANK ";share=25%;goal=0.05", TANK ";share=25%"},
    {"share_needed", TANK ";share=25%;goal=0", TANK ";share=25%;goal=0.2"},
    {"times_needed", TANK ";share=25%;goal=0.05", TANK ";share=25%;goal=0"},
    {"times_needed", TANK ";goal=0.05", TANK},
};

static void absent_results(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check(isfinite(ask_for(sometimes[i].present, sometimes[i].result)));
        check(isnan(ask_for(sometimes[i].absent, sometimes[i].result)));
    }
}

static void group_and_units(void **state)
{
    (void)state;
    struct hw_question question;
    size_t which = 0;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"volume=110L;share=25%;now=0.18;kind=copper-ionic", HW_PROBLEM_MISSING},
        {"volume=110L;share=25%;now=0.18;kind=dye", HW_PROBLEM_MISSING},
        {TANK ";share=25%;take=20L", HW_PROBLEM_MANY_OF_GROUP},
        {LABEL ";label_mass=1g;label_liquid=1mL", HW_PROBLEM_MANY_OF_GROUP},
        {TANK ";share=25%;kind=formalin", HW_PROBLEM_UNKNOWN_WORD},
        {TANK ";share=25%;salinity=33", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";share=25%;kind=other;salinity=33", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";share=25%;biofilter=no", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";share=25", HW_PROBLEM_NEEDS_UNIT},
        {TANK ";share=0.25", HW_PROBLEM_NEEDS_UNIT},
        {TANK ";take=20", HW_PROBLEM_NEEDS_UNIT},
        {KEEP ";strength=1", HW_PROBLEM_NEEDS_UNIT},
        {"volume=110;share=25%;now=0.18", HW_PROBLEM_NEEDS_UNIT},
        {"volume=110L;share=25%", HW_PROBLEM_MISSING},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        assert_int_equal(ask_settle(change(), wrong[i].line, &question, &which), wrong[i].problem);
    }
    assert_close(ask_for(TANK ";share=25.0%", "after"), ask_for(TANK ";share=25%", "after"), 0, 0);
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 256; corner++) {
        char line[300];
        const char *flow = corner & 1 ? "flow" : "batch";
        const char *share = corner & 2 ? "0.01%" : corner & 1 ? "1000%" : "100%";
        (void)snprintf(line, sizeof line,
                       "volume=%s;share=%s;method=%s;times=%s;now=%s;new=%s;keep=%s;goal=%s",
                       corner & 4 ? "1e5L" : "0.1L", share, flow, corner & 8 ? "100" : "1",
                       corner & 16 ? "1e5" : "0", corner & 32 ? "1e5" : "0",
                       corner & 64 ? "1e5" : "0", corner & 128 ? "1e5" : "0");
        check(isfinite(ask_for(line, "after")));
        check(isfinite(ask_for(line, "new_needed")));
    }
    check(isfinite(ask_for("volume=1e5L;take=0.001L;now=5;keep=6;goal=4", "times_needed")));
    check(isfinite(
        ask_for("volume=1e5L;share=100%;now=0;keep=1e5;strength=1000mg/mL", "add_liquid")));
    check(isfinite(
        ask_for("volume=0.1L;share=100%;now=0;keep=1e-4;strength=0.001mg/mL", "add_liquid")));
    check(isfinite(ask_for("volume=1e4L;take=1e5L;method=flow;now=5;keep=6", "add")));
}

static void working_can_be_redone(void **state)
{
    (void)state;
    keep_workings();
    static const char *const more[] = {
        KEEP ";strength=1mg/mL;new=0.02",
        "volume=75L;take=20L;times=3;now=80;new=5;goal=20",
        "volume=190L;take=95L;method=flow;now=0.6;goal=0.2;keep=0.5",
        "volume=75L;share=100%;now=80;goal=20;keep=80",
        "volume=75L;share=30%;now=2;new=7;goal=6;times=4",
        "volume=75L;share=30%;now=2;new=7;goal=2",
        "volume=75L;now=80;new=5;goal=20",
        "volume=75L;now=80;goal=20;method=flow",
        "volume=75L;now=8;new=30;goal=20",
        "volume=75L;now=80;goal=80",
        "volume=75L;share=30%;now=2;new=1;keep=2;label_mass=3g;label_per=80L;label_raises=2.5",
        "volume=75L;share=30%;now=2;keep=1;label_mass=3g;label_per=80L;label_raises=2.5",
        "volume=75L;share=30%;now=2;keep=2;times=3;method=flow",
    };
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check_working(change(), sometimes[i].present);
    }
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        check_working(change(), more[i]);
    }
    redo_workings();
}

/* Formalin far above its ceiling, which no change can be asked of: said by a calculation that has a
 * note for it, and no bit of another by one that has none. */
static void no_note_is_no_bit(void **state)
{
    (void)state;
    const struct medicine formalin = {.kind = KIND_FORMALIN,
                                      .to_pour = true,
                                      .floor = NAN,
                                      .ceiling = NAN,
                                      .salinity = NAN,
                                      .temp = 25,
                                      .level = 1000,
                                      .rise_a_day = NAN};
    unsigned note_of[MEDICINE_NOTES];
    for (size_t i = 0; i < MEDICINE_NOTES; i++) {
        note_of[i] = NO_NOTE;
    }
    check(medicine_no_answer(&formalin, note_of) == 0);
    note_of[MEDICINE_FORMALIN_OVER] = 5;
    check(medicine_no_answer(&formalin, note_of) == UINT64_C(1) << 5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_check_value),
        cmocka_unit_test(by_label),
        cmocka_unit_test(lowest_on_the_way),
        cmocka_unit_test(doses_do_what_they_say),
        cmocka_unit_test(rounds_are_single_changes),
        cmocka_unit_test(goals),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(group_and_units),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(working_can_be_redone),
        cmocka_unit_test(no_note_is_no_bit),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
