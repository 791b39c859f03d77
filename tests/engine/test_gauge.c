/* test_gauge.c - the calculation gauge: mass over rise, every note. */
#include "assert_close.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *gauge(void)
{
    return find_calc("gauge");
}

static double net(const char *line)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(gauge(), line, &question, &answer);
    return result_of(gauge(), &answer, "net");
}

static void mass_over_rise(void **state)
{
    (void)state;
    assert_close(net("added=9g;rise=122.8mg/L"), 9000 / 122.8, 0, 1e-15);
    assert_close(net("added=9000mg;rise=0.1228g/L"), 9000 / 122.8, 0, 1e-14);
    assert_close(net("added=0.5oz;rise=200ppm"), 28349.523125 / 2 / 200, 0, 1e-14);
}

/* What a dose into the volume found raises, it was found from. */
static void there_and_back(void **state)
{
    (void)state;
    hw_random_start(20310412);
    for (int i = 0; i < 1000; i++) {
        char line[100];
        double litres = hw_random_between(5, 2000);
        double rise = hw_random_between(0.5, 400);
        (void)snprintf(line, sizeof line, "added=%.17gmg;rise=%.17gmg/L", litres * rise, rise);
        assert_close(net(line), litres, 0, 1e-14);
    }
}

/* A mole of sodium bicarbonate, 84.006 g, is one equivalent, in whatever unit the rise is told. */
static void bicarbonate_by_alkalinity(void **state)
{
    (void)state;
    assert_close(net("added=9g;reagent=sodium-bicarbonate;rise=1.46meq/L"), 9000 / 84.006 / 1.46, 0,
                 1e-15);
    double by_degrees = net("added=9g;reagent=sodium-bicarbonate;rise=4.1dKH");
    assert_close(by_degrees, net("added=9g;rise=122.8mg/L"), 0, 5e-4);
    assert_close(net("added=63.5378g;reagent=sodium-bicarbonate;rise=10mgCaCO3/L"), 3785, 0, 1e-5);
}

static void rises_keep_to_their_reagent(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"added=9g;rise=4.1dKH", HW_PROBLEM_WRONG_KIND},
        {"added=9g;reagent=sodium-bicarbonate;rise=122.8mg/L", HW_PROBLEM_WRONG_KIND},
        {"added=9g;reagent=sodium-bicarbonate;rise=4.1", HW_PROBLEM_NEEDS_UNIT},
        {"added=9g;rise=122.8", HW_PROBLEM_NEEDS_UNIT},
        {"added=9g;reagent=sodium-bicarbonate", HW_PROBLEM_MISSING},
        {"added=9g;reagent=baking-soda;rise=4.1dKH", HW_PROBLEM_UNKNOWN_WORD},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        assert_int_equal(ask_settle(gauge(), wrong[i].line, &question, &which), wrong[i].problem);
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    check(isfinite(net("added=0.1mg;rise=0.01mg/L")));
    check(isfinite(net("added=0.1mg;rise=100000mg/L")));
    check(isfinite(net("added=1000kg;rise=0.01mg/L")));
    check(isfinite(net("added=1000kg;rise=100000mg/L")));
}

static const struct note_row notes[] = {
    {"volume-unlikely", "added=9g;rise=9.1g/L", "added=9g;rise=9g/L"},
    {"volume-unlikely", "added=200.1g;rise=10mg/L", "added=200g;rise=10mg/L"},
    {"same-substance", "added=9g;rise=122.8mg/L",
     "added=9g;reagent=sodium-bicarbonate;rise=4.1dKH"},
    {"baking-soda", "added=9g;reagent=sodium-bicarbonate;rise=4.1dKH", "added=9g;rise=122.8mg/L"},
    {"gauge-before-fish", "added=9g;reagent=sodium-bicarbonate;rise=4.1dKH",
     "added=9g;rise=122.8mg/L"},
    {"mix-fully", "added=9g;rise=122.8mg/L", NULL},
    {"same-kit", "added=9g;rise=122.8mg/L", NULL},
    {"kit-steps", "added=9g;rise=122.8mg/L", NULL},
    {"conservative-tracer", "added=9g;rise=122.8mg/L", NULL},
    {"ask-vet", "added=9g;rise=122.8mg/L", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(gauge(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"volume-unlikely", BELOW, 1, "added", "net", "added=9g;rise=9g/L"},
    {"volume-unlikely", ABOVE, 20000, "added", "net", "added=200g;rise=10mg/L"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(gauge(), edges, sizeof edges / sizeof edges[0]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mass_over_rise),
        cmocka_unit_test(there_and_back),
        cmocka_unit_test(bicarbonate_by_alkalinity),
        cmocka_unit_test(rises_keep_to_their_reagent),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
