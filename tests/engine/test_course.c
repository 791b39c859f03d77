/* test_course.c - the calculation course: levels by hand, both ways of dosing again, every note. */
#include "assert_close.h"
#include "engine/working.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *course(void)
{
    return find_calc("course");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(course(), line, &question, &answer);
    return result_of(course(), &answer, result);
}

#define TANK    "volume=75L;biofilter=no;strength=1%wv;"
#define WEAK    "volume=75L;biofilter=no;strength=0.1mg/mL;"
#define ALDER   TANK "target=3;doses=4"
#define REPLACE ALDER ";redose=replace"

static void by_hand(void **state)
{
    (void)state;
    static const struct {
        const char *result;
        double full, replace;
    } rows[] = {
        {"dye", 22.5, 22.5},           {"dye_again", 22.5, 5.625}, {"level_first", 3, 3},
        {"level_last", 8.203125, 3},   {"level_ceiling", 12, 3},   {"dye_total", 90, 39.375},
        {"water_total", 56.25, 56.25}, {"days_total", 8, 8},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        assert_close(ask_for(ALDER, rows[i].result), rows[i].full, 0, 1e-15);
        assert_close(ask_for(REPLACE, rows[i].result), rows[i].replace, 0, 1e-15);
    }
    assert_close(ask_for(ALDER ";every=2d", "days_total"), 8, 0, 0);
    assert_close(ask_for(ALDER ";every=36h", "days_total"), 6, 0, 0);
}

/* Begun days count whole, and the days that come out hold those asked for. */
static void by_days(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        double doses, days;
    } rows[] = {
        {TANK "target=3;days=7", 4, 8},           {TANK "target=3;days=8", 4, 8},
        {TANK "target=3;days=8.1", 5, 10},        {TANK "target=3;days=0.5", 1, 2},
        {TANK "target=3;days=7;every=24h", 7, 7}, {TANK "target=0.2;days=50;every=12h", 100, 50},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        double dye = ask_for(rows[i].line, "dye");
        assert_close(ask_for(rows[i].line, "dye_total"), rows[i].doses * dye, 0, 1e-14);
        assert_close(ask_for(rows[i].line, "days_total"), rows[i].days, 0, 1e-15);
    }
}

static void absent_results(void **state)
{
    (void)state;
    check(isnan(ask_for(TANK "target=3;doses=1", "dye_again")));
    check(isfinite(ask_for(TANK "target=3;doses=2", "dye_again")));
    assert_close(ask_for(TANK "target=3;doses=1", "water_total"), 0, 0, 0);
    assert_close(ask_for(TANK "target=3;doses=1", "dye_total"), 22.5, 0, 0);
    assert_close(ask_for(ALDER, "dose_over"), 2, 0, 0);
    check(isnan(ask_for(REPLACE, "dose_over")));
    check(isnan(ask_for(TANK "target=1.25;doses=100", "dose_over")));
    assert_close(ask_for(TANK "target=1.3;doses=3", "dose_over"), 12, 0, 0);
    assert_close(ask_for(TANK "target=5.5;doses=3;redose=replace", "dose_over"), 1, 0, 0);
}

/* A course asked for by the rate of its first dose is the one asked for by the level. Whatever is
 * put back, the last level lies between the first and the ceiling; all the dye is in the tank or
 * went out with the changes. */
static void rate_and_target_agree(void **state)
{
    (void)state;
    hw_random_start(20310513);
    for (int i = 0; i < 400; i++) {
        static const char *const results[] = {"dye",        "dye_again", "level_first",
                                              "level_last", "dye_total", "water_total"};
        char common[160];
        char by_level[240];
        char by_rate[240];
        double volume = hw_random_between(20, 400);
        double strength = hw_random_between(2, 50);
        double level = hw_random_between(0.1, 1.2);
        double share = hw_random_between(5, 100);
        int doses = 2 + (int)hw_random_between(0, 20);
        const char *redose = i % 2 ? "full" : "replace";
        (void)snprintf(common, sizeof common,
                       "volume=%.17gL;biofilter=no;strength=%.17gmg/mL;share=%.17g%%;doses=%d;"
                       "redose=%s",
                       volume, strength, share, doses, redose);
        (void)snprintf(by_level, sizeof by_level, "%s;target=%.17g", common, level);
        (void)snprintf(by_rate, sizeof by_rate, "%s;rate=%.17gmL/L", common, level / strength);
        for (size_t k = 0; k < sizeof results / sizeof results[0]; k++) {
            assert_close(ask_for(by_rate, results[k]), ask_for(by_level, results[k]), 0, 1e-13);
        }
        double last = ask_for(by_level, "level_last");
        check(last >= level && last <= ask_for(by_level, "level_ceiling") * (1 + 1e-14));
        double level_now = level;
        double gone = 0;
        double again = ask_for(by_level, "dye_again") * strength / volume;
        for (int dose = 2; dose <= doses; dose++) {
            gone += level_now * share / 100 * volume;
            level_now = level_now * (1 - share / 100) + again;
        }
        assert_close(last, level_now, 0, 1e-13);
        assert_close(level_now * volume + gone, ask_for(by_level, "dye_total") * strength, 0,
                     1e-12);
    }
}

static const struct note_row notes[] = {
    {"dye-biofilter", "volume=75L;biofilter=yes;strength=1%wv;target=3;doses=4", ALDER},
    {"dye-biofilter", "volume=75L;biofilter=yes;strength=10%wv;rate=1mL/L;doses=4",
     TANK "rate=0.3mL/L;doses=4"},
    {"dye-over", TANK "rate=2.01mL/L;doses=1", TANK "rate=2mL/L;doses=1"},
    {"dye-over", TANK "target=20.1;doses=1", TANK "target=20;doses=1"},
    {"dye-over", TANK "target=900;doses=4;redose=replace", TANK "target=20;doses=4;redose=replace"},
    {"dye-over", TANK "target=8.7;doses=3", TANK "target=8.6;doses=3"},
    {"dye-over", TANK "target=3;days=14;share=1%", ALDER},
    {"no-course-level", "volume=75L;biofilter=no;strength=0.1mg/mL;rate=0.9mL/L;doses=4",
     "volume=75L;biofilter=no;strength=0.1mg/mL;rate=1mL/L;doses=4"},
    {"pour-too-large", WEAK "target=10.1;doses=1", WEAK "target=10;doses=1"},
    {"pour-large", WEAK "target=1.1;doses=1", WEAK "target=1;doses=1"},
    {"course-over-5", ALDER, REPLACE},
    {"course-over-5", TANK "target=1.5;doses=7", TANK "target=1.5;doses=6"},
    {"course-over-5", TANK "target=5.1;doses=1", TANK "target=5;doses=1"},
    {"course-not-longer", TANK "target=1.5;doses=6", TANK "target=1.5;doses=7"},
    {"course-not-longer", TANK "target=5;doses=1", TANK "target=1.25;doses=6"},
    {"dye-check", TANK "target=10.1;doses=2;redose=replace", TANK "target=10;doses=1"},
    {"dye-check", TANK "target=3;doses=7", TANK "target=3;doses=6"},
    {"small-liquid", "volume=3L;biofilter=no;strength=1%wv;target=3;doses=1",
     "volume=4L;biofilter=no;strength=1%wv;target=3;doses=2"},
    {"small-liquid", "volume=12L;biofilter=no;strength=1%wv;target=3;doses=2;redose=replace",
     "volume=12L;biofilter=no;strength=1%wv;target=3;doses=1;redose=replace"},
    {"heater-off", ALDER, NULL},
    {"match-new-water", ALDER, NULL},
    {"dye-form", ALDER, NULL},
    {"dye-dim", ALDER, NULL},
    {"dye-reducers", ALDER, NULL},
    {"dye-stains", ALDER, NULL},
    {"dye-no-food-fish", ALDER, NULL},
    {"dye-handlers", ALDER, NULL},
    {"dye-discard", ALDER, NULL},
    {"course-change-first", ALDER, NULL},
    {"course-no-loss", ALDER, NULL},
    {"course-ammonia", ALDER, NULL},
    {"course-aerate", ALDER, NULL},
    {"course-practice", ALDER, NULL},
    {"course-young", ALDER, NULL},
    {"course-stop", ALDER, NULL},
    {"ask-vet", ALDER, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(course(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"dye-over", ABOVE, 2, "rate", NULL, TANK "rate=2mL/L;doses=1"},
    {"dye-over", ABOVE, 20, "target", NULL, TANK "target=20;doses=1"},
    {"dye-over", ABOVE, 20 / 2.734375, "target", NULL, TANK "target=5;doses=4"},
    {"no-course-level", BELOW, 1, "rate", NULL,
     "volume=75L;biofilter=no;strength=0.1mg/mL;rate=1mL/L;doses=4"},
    {"course-over-5", ABOVE, 5, "target", NULL, TANK "target=5;doses=1"},
    {"course-over-5", ABOVE, 5, "target", "level_last", TANK "target=2;doses=4"},
    {"course-not-longer", UP_TO, 5, "target", NULL, TANK "target=5;doses=1"},
    {"course-not-longer", ABOVE, 5, "target", "level_ceiling", TANK "target=1.2;doses=1"},
    {"dye-check", ABOVE, 10, "target", "level_last", ALDER},
    {"dye-check", ABOVE, 10, "target", NULL, TANK "target=10;doses=1"},
    {"small-liquid", BELOW, 1, "volume", "dye", TANK "target=3;doses=1"},
    {"small-liquid", BELOW, 1, "volume", "dye_again", REPLACE},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(course(), edges, sizeof edges / sizeof edges[0]);
}

static void statuses(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(course(), "volume=75L;biofilter=yes;strength=1%wv;target=3;doses=4", &question, &answer);
    assert_status(answer.status, -2);
    check(!noted(course(), &answer, "course-over-5"));
    check(noted(course(), &answer, "ask-vet"));
    ask(course(), TANK "rate=2.01mL/L;doses=4", &question, &answer);
    assert_status(answer.status, -2);
    ask(course(), TANK "rate=0.001mL/L;doses=4", &question, &answer);
    assert_status(answer.status, -1);
}

/* The working of a course: each dose up to the tenth, and how many are left out; all of it redone
 * by awk. */
static void working_of(const char *line, const char *last_dose, double left_out)
{
    static struct hw_steps steps;
    struct hw_question question;
    struct hw_answer answer;
    check_working(course(), line);
    ask(course(), line, &question, &answer);
    steps.n = 0;
    course()->work(question.in, &steps);
    const char *latest = "";
    double told = 0;
    for (size_t i = 0; i < steps.n; i++) {
        if (strncmp(steps.step[i].symbol, "after_dose_", 11) == 0) {
            latest = steps.step[i].symbol;
        }
        if (strcmp(steps.step[i].symbol, "doses_not_written_out") == 0) {
            told = steps.step[i].value;
        }
    }
    assert_string_equal(latest, last_dose);
    assert_close(told, left_out, 0, 0);
}

static void working(void **state)
{
    (void)state;
    working_of(ALDER, "after_dose_4", 0);
    working_of(REPLACE, "after_dose_4", 0);
    working_of(TANK "target=3;doses=1", "", 0);
    working_of(TANK "rate=0.3mL/L;doses=10;share=33%", "after_dose_10", 0);
    working_of(TANK "rate=0.3mL/L;doses=11;share=33%;redose=replace", "after_dose_10", 1);
    working_of(TANK "target=0.2;doses=100;share=1%", "after_dose_10", 90);
    working_of(TANK "target=6;doses=100;share=100%", "after_dose_10", 90);
    working_of(TANK "target=3;days=7.5", "after_dose_4", 0);
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 128; corner++) {
        char line[240];
        bool climbs = (corner & 112) == 32; /* full doses, many, hardly any change */
        const char *most = climbs ? "0.3" : corner & 2 ? "20" : "10";
        (void)snprintf(line, sizeof line,
                       "volume=%s;biofilter=no;strength=%s;target=%s;every=%s;share=%s;doses=%s;"
                       "redose=%s",
                       corner & 1 ? "10000L" : "0.1L", corner & 2 ? "100mg/mL" : "0.1mg/mL",
                       corner & 4 ? most : "0.1", corner & 8 ? "168h" : "12h",
                       corner & 16 ? "100%" : "1%", corner & 32 ? "100" : "1",
                       corner & 64 ? "replace" : "full");
        static const char *const results[] = {"dye",           "level_first", "level_last",
                                              "level_ceiling", "dye_total",   "water_total",
                                              "days_total"};
        for (size_t i = 0; i < sizeof results / sizeof results[0]; i++) {
            check(isfinite(ask_for(line, results[i])));
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(by_days),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(rate_and_target_agree),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(statuses),
        cmocka_unit_test(working),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
