/* test_change.c - the change calculation: worked changes, every note, every result that may be
 * absent, mass over random rows, and the working redone by awk. */
#include "assert_close.h"
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

static void the_check_value(void **state)
{
    (void)state;
    const char *line = "volume=110L;share=25%;now=0.18;keep=0.18;floor=0.15;strength=1mg/mL";
    assert_close(ask_for(line, "after"), 0.135, 1e-15, 0);
    assert_close(ask_for(line, "lowest"), 0.135, 1e-15, 0);
    assert_close(ask_for(line, "fresh_needed"), 0.18, 0, 0);
    assert_close(ask_for(line, "add"), 4.95, 1e-14, 0);
    assert_close(ask_for(line, "add_liquid"), 4.95, 1e-14, 0);
    check(isnan(ask_for(line, "times_needed")));
}

static void lowest_on_the_way(void **state)
{
    (void)state;
    /* Falling: the last; rising: the first; flat: the same. */
    assert_close(ask_for("volume=75L;take=25L;now=6;fresh=3;times=2", "lowest"), 3 + 3 * 4.0 / 9, 0,
                 1e-14);
    assert_close(ask_for("volume=75L;take=25L;now=3;fresh=6;times=2", "lowest"), 3, 0, 0);
    assert_close(ask_for("volume=75L;take=25L;now=3;fresh=6;times=2", "after"), 6 - 3 * 4.0 / 9, 0,
                 1e-14);
    assert_close(ask_for("volume=75L;take=25L;now=3;fresh=3;times=2", "lowest"), 3, 0, 0);
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
        double fresh = hw_random_between(0, 1);
        double keep = hw_random_between(0, 3);
        char line[300];
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;take=%.17gL;now=%.17g;fresh=%.17g;keep=%.17g;method=%s;"
                       "strength=0.8mg/mL",
                       volume, take, now, fresh, keep, flow ? "flow" : "batch");
        double needed = ask_for(line, "fresh_needed");
        double add = ask_for(line, "add");
        check(isnan(add) == (needed <= fresh));
        if (!isnan(add)) {
            double out = flow ? exp(-take / volume) : 1 - take / volume;
            double in_new = fresh + add / take;
            assert_close(now * out + in_new * (1 - out), keep, 1e-12, 0);
            assert_close(ask_for(line, "add_liquid"), add / 0.8, 0, 1e-14);
        }
        double after = ask_for(line, "after");
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;share=%.17g%%;now=%.17g;fresh=%.17g;method=%s", volume,
                       100 * take / volume, now, fresh, flow ? "flow" : "batch");
        assert_close(ask_for(line, "after"), after, 0, 1e-13);
        if (!flow) {
            assert_close(volume * after, (volume - take) * now + take * fresh, 1e-12, 1e-13);
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
            (void)snprintf(line, sizeof line,
                           "volume=190L;take=23.5L;now=%.17g;fresh=4.25;method=%s", level,
                           methods[i]);
            level = ask_for(line, "after");
            (void)snprintf(line, sizeof line,
                           "volume=190L;take=23.5L;now=61.5;fresh=4.25;method=%s;times=%d",
                           methods[i], times);
            assert_close(ask_for(line, "after"), level, 0, 1e-14);
        }
    }
}

static void goals(void **state)
{
    (void)state;
    const char *line = "volume=75L;take=20L;now=80;fresh=5;goal=20";
    assert_close(ask_for(line, "share_needed"), 80, 0, 1e-14);
    assert_close(ask_for(line, "times_needed"), ceil(log(0.2) / log(55.0 / 75)), 0, 0);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=20;method=flow", "share_needed"),
                 100 * log(4), 0, 1e-14);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=80", "share_needed"), 0, 0, 0);
    assert_close(ask_for("volume=75L;take=20L;now=80;goal=80", "times_needed"), 0, 0, 0);
}

#define TANK "volume=110L;now=0.18"
#define KEEP TANK ";share=25%;keep=0.18"

static const struct note_row notes[] = {
    {"more-than-all", TANK ";take=111L", TANK ";take=110L"},
    {"more-than-all", TANK ";share=101%", TANK ";share=101%;method=flow"},
    {"flow-too-long", TANK ";take=1101L;method=flow", TANK ";take=1100L;method=flow"},
    {"floor-over-ceiling", KEEP ";floor=0.21;ceiling=0.2", KEEP ";floor=0.2;ceiling=0.2"},
    {"small-liquid", KEEP ";strength=5mg/mL", KEEP ";strength=1mg/mL"},
    {"small-liquid", KEEP ";strength=5mg/mL", KEEP},
    {"below-floor", TANK ";share=25%;floor=0.136", TANK ";share=25%;floor=0.135"},
    {"below-floor", TANK ";share=25%;floor=0.19;fresh=0.5",
     TANK ";share=25%;floor=0.15;fresh=0.18"},
    {"ends-below-floor", TANK ";share=25%;floor=0.136", TANK ";share=25%;floor=0.19;fresh=0.5"},
    {"above-ceiling", TANK ";share=25%;ceiling=0.17", TANK ";share=25%;ceiling=0.18"},
    {"above-ceiling", TANK ";share=25%;ceiling=0.2;fresh=0.3",
     TANK ";share=25%;ceiling=0.2;fresh=0.25"},
    {"fresh-too-strong", TANK ";share=25%;keep=0.2;ceiling=0.25",
     TANK ";share=25%;keep=0.2;ceiling=0.26"},
    {"keep-outside", KEEP ";floor=0.19", KEEP ";floor=0.15;ceiling=0.2"},
    {"keep-outside", KEEP ";ceiling=0.17", KEEP},
    {"already-above", TANK ";share=25%;keep=0.13", TANK ";share=25%;keep=0.136"},
    {"fresh-enough", KEEP ";fresh=0.18", KEEP ";fresh=0.17"},
    {"fresh-enough", KEEP ";fresh=0.2", TANK ";share=25%;keep=0.13"},
    {"later-rounds", KEEP ";times=2", KEEP},
    {"later-rounds", KEEP ";times=2", TANK ";share=25%;times=2"},
    {"goal-unreachable", TANK ";share=25%;goal=0.2", TANK ";share=25%;goal=0.01"},
    {"goal-unreachable", TANK ";share=25%;goal=0", TANK ";share=100%;goal=0"},
    {"goal-unreachable", TANK ";share=25%;goal=0;method=flow", TANK ";share=25%;goal=0.18"},
    {"pre-dose", KEEP, TANK ";share=25%"},
    {"pre-dose", KEEP, TANK ";share=25%;keep=0.13"},
    {"test-level", KEEP, TANK ";share=25%"},
    {"keep-unsaid", TANK ";share=25%;strength=1mg/mL", KEEP ";strength=1mg/mL"},
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
    {"small-liquid", BELOW, 1, "volume", "add_liquid", KEEP ";strength=5mg/mL"},
    {"below-floor", BELOW, 0.135, "now", "lowest", TANK ";share=25%;floor=0.135"},
    {"ends-below-floor", BELOW, 0.135, "now", "after", TANK ";share=25%;floor=0.135"},
    {"above-ceiling", ABOVE, 0.18, "now", NULL, TANK ";share=25%;ceiling=0.18"},
    {"above-ceiling", ABOVE, 0.2, "fresh", "after", TANK ";share=25%;ceiling=0.2;fresh=0.3"},
    {"fresh-too-strong", ABOVE, 0.25, "keep", "fresh_needed",
     TANK ";share=25%;keep=0.2;ceiling=0.25"},
    {"keep-outside", BELOW, 0.18, "keep", NULL, KEEP ";floor=0.18"},
    {"keep-outside", ABOVE, 0.18, "keep", NULL, KEEP ";ceiling=0.18"},
    {"already-above", BELOW, 0, "keep", "fresh_needed", TANK ";share=25%;keep=0.14"},
    {"fresh-enough", FROM, 0.18, "fresh", NULL, KEEP ";fresh=0.18"},
    {"pre-dose", BELOW, 0.18, "fresh", NULL, KEEP ";fresh=0.18"},
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
    {"fresh_needed", TANK ";share=25%;keep=0.01", TANK ";share=25%"},
    {"add", KEEP, TANK ";share=25%;keep=0.01"},
    {"add", KEEP ";fresh=0.1", KEEP ";fresh=0.18"},
    {"add_liquid", KEEP ";strength=1mg/mL", KEEP},
    {"add_liquid", KEEP ";strength=1mg/mL", TANK ";share=25%;strength=1mg/mL"},
    {"add_liquid", KEEP ";strength=1mg/mL", TANK ";share=25%;keep=0.01;strength=1mg/mL"},
    {"share_needed", TANK ";share=25%;goal=0.05", TANK ";share=25%"},
    {"share_needed", TANK ";share=25%;goal=0", TANK ";share=25%;goal=0.2"},
    {"times_needed", TANK ";share=25%;goal=0.05", TANK ";share=25%;goal=0"},
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
        {TANK, HW_PROBLEM_NONE_OF_GROUP},
        {TANK ";share=25%;take=20L", HW_PROBLEM_MANY_OF_GROUP},
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
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 256; corner++) {
        char line[300];
        const char *flow = corner & 1 ? "flow" : "batch";
        const char *share = corner & 2 ? "0.01%" : corner & 1 ? "1000%" : "100%";
        (void)snprintf(line, sizeof line,
                       "volume=%s;share=%s;method=%s;times=%s;now=%s;fresh=%s;keep=%s;goal=%s;"
                       "strength=%s",
                       corner & 4 ? "1e5L" : "0.1L", share, flow, corner & 8 ? "100" : "1",
                       corner & 16 ? "1e5" : "0", corner & 32 ? "1e5" : "0",
                       corner & 64 ? "1e5" : "0", corner & 128 ? "1e5" : "0",
                       corner & 8 ? "0.001mg/mL" : "1000mg/mL");
        check(isfinite(ask_for(line, "after")));
        check(isfinite(ask_for(line, "fresh_needed")));
    }
    check(isfinite(ask_for("volume=1e5L;take=0.001L;now=5;keep=6;goal=4", "times_needed")));
    check(isfinite(ask_for("volume=1e4L;take=1e5L;method=flow;now=5;keep=6", "add")));
}

static void working_can_be_redone(void **state)
{
    (void)state;
    static const char *const more[] = {
        KEEP ";strength=1mg/mL;fresh=0.02",
        "volume=75L;take=20L;times=3;now=80;fresh=5;goal=20",
        "volume=190L;take=95L;method=flow;now=0.6;goal=0.2;keep=0.5",
        "volume=75L;share=100%;now=80;goal=20;keep=80",
        "volume=75L;share=30%;now=2;fresh=7;goal=6;times=4",
        "volume=75L;share=30%;now=2;fresh=7;goal=2",
    };
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check_working(change(), sometimes[i].present);
    }
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        check_working(change(), more[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_check_value),
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
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
