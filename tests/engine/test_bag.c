/* test_bag.c - the calculation bag: shut and opened, against ammonia itself, every note. */
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

static const struct hw_calc *bag(void)
{
    return find_calc("bag");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(bag(), line, &question, &answer);
    return result_of(bag(), &answer, result);
}

static int status_of(const char *line)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(bag(), line, &question, &answer);
    return answer.status;
}

#define SEA      ";temp=23;salinity=31"
#define PH       ";ph-bag=6.9;ph-open=8.1"
#define TESTED   "tan=6" PH SEA
#define MILD     "tan=3" PH SEA
#define WEIGHED  "biomass=35g;hours=26;water=2.5L" PH SEA
#define TANK(t)  TESTED ";tank-temp=" t ";tank-salinity=31"
#define SALT(s)  TESTED ";tank-temp=23;tank-salinity=" s
#define FRESH(t) "tan=" t ";ph-bag=6.8;ph-open=7.9;temp=24;salinity=0"

static void totals(void **state)
{
    (void)state;
    assert_close(ask_for(TESTED, "tan_bag"), 6, 0, 0);
    assert_close(ask_for(TESTED ";basis=nh3", "tan_bag"), 6 * 14.007 / 17.031, 0, 1e-15);
    assert_close(ask_for(TESTED ";basis=nh4", "tan_bag"), 6 * 14.007 / 18.039, 0, 1e-15);
    assert_close(ask_for(WEIGHED, "tan_bag"), 0.035 * 10 * 26 / 2.5, 0, 1e-15);
    assert_close(ask_for(WEIGHED ";excretion=2.3", "tan_bag"), 0.035 * 2.3 * 26 / 2.5, 0, 1e-15);
    /* The rate is of nitrogen, whatever a kit counts. */
    assert_close(ask_for(WEIGHED ";basis=nh4", "tan_bag"), 0.035 * 10 * 26 / 2.5, 0, 1e-15);
    /* Water without ammonia gets worse by the same factor. */
    static const char *const clean = "tan=0" PH SEA;
    assert_close(ask_for(clean, "free_open"), 0, 0, 0);
    assert_close(ask_for(clean, "times_worse"), ask_for(TESTED, "times_worse"), 0, 0);
}

static void gaps(void **state)
{
    (void)state;
    assert_close(ask_for(TESTED ";tank-temp=25.5", "temp_gap"), 2.5, 0, 1e-15);
    check(isnan(ask_for(TESTED ";tank-temp=25.5", "salinity_gap")));
    assert_close(ask_for(TESTED ";tank-salinity=28.5", "salinity_gap"), -2.5, 0, 1e-15);
    check(isnan(ask_for(TESTED ";tank-salinity=28.5", "temp_gap")));
    check(isnan(ask_for(TESTED, "temp_gap")) && isnan(ask_for(TESTED, "salinity_gap")));
    assert_close(ask_for(TESTED ";tank-temp=68F", "temp_gap"), -3, 0, 1e-14);
    assert_close(ask_for(TESTED ";tank-ph=8.15", "ph_gap"), 1.25, 0, 1e-14);
    check(isnan(ask_for(TESTED ";tank-temp=25.5", "ph_gap")));
}

/* Mass alone is no ammonia, and a measurement needs no reckoning. */
static void refused(void **state)
{
    (void)state;
    static const char *const lines[] = {"biomass=35g" PH SEA,
                                        "biomass=35g;hours=26" PH SEA,
                                        "biomass=35g;water=2.5L" PH SEA,
                                        "biomass=35g;excretion=2" PH SEA,
                                        TESTED ";hours=26",
                                        TESTED ";water=2.5L",
                                        TESTED ";hours=26;water=2.5L",
                                        "biomass=35kg;hours=26;water=2.5L" PH SEA};
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
        assert_int_equal(status_of(lines[i]), -1);
    }
    assert_int_equal(status_of(WEIGHED), 0);
    assert_int_equal(status_of(TESTED), 0);
}

static const struct note_row notes[] = {
    {"bag-needs-time", "biomass=35g" PH SEA, WEIGHED},
    {"bag-needs-time", "biomass=35g;hours=26" PH SEA, TESTED},
    {"bag-needs-time", "biomass=35g;water=2.5L" PH SEA, TESTED ";water=2.5L"},
    {"bag-measured", TESTED ";water=2.5L", TESTED},
    {"bag-measured", TESTED ";hours=26", WEIGHED},
    {"bag-impossible", "biomass=35kg;hours=26;water=2.5L" PH SEA, WEIGHED},
    {"bag-impossible", "biomass=35kg;hours=26;water=2.5L" PH SEA, "biomass=35kg;hours=26" PH SEA},
    {"bag-impossible", "biomass=100kg;hours=10.1;water=10L" PH SEA,
     "biomass=100kg;hours=10;water=10L" PH SEA},
    {"shut-over-hour", "tan=40;ph-bag=7.3;ph-open=7.9" SEA, TESTED},
    {"shut-over-hour", "tan=40;ph-bag=7.3;ph-open=7.2;temp=24;salinity=0", FRESH("10")},
    {"open-over-hour-salt", TESTED, "tan=2" PH SEA},
    {"open-over-hour-salt", "tan=9;ph-bag=6.9;ph-open=8.3;temp=23;salinity=5", FRESH("10")},
    {"open-over-hour-fresh", FRESH("10"), FRESH("1")},
    {"open-over-long", "tan=2" PH SEA, TESTED},
    {"open-over-long", FRESH("2"), FRESH("10")},
    {"open-over-long", "tan=0.3" PH SEA ";tank-ph=8.6", "tan=0.3" PH SEA},
    /* the tank's pH where that is the higher one */
    {"open-over-hour-salt", MILD ";tank-ph=8.3", MILD},
    {"open-over-hour-salt", TESTED ";tank-ph=7.2", MILD ";tank-ph=7.2"},
    {"open-over-hour-fresh", FRESH("2") ";tank-ph=8.6", FRESH("2")},
    {"hour-stretched", FRESH("1") ";tank-ph=9.1", FRESH("1") ";tank-ph=9"},
    {"open-over-hour-fresh", "tan=9;ph-bag=6.9;ph-open=8.3;temp=23;salinity=5", TESTED},
    {"hour-stretched", "tan=1;ph-bag=6.4;ph-open=7.9;temp=24;salinity=0", FRESH("1")},
    {"hour-stretched", "tan=1;ph-bag=6.9;ph-open=9.1;temp=24;salinity=0", TESTED},
    {"hour-stretched", "tan=1;ph-bag=6.9;ph-open=8.1;temp=24;salinity=42", TESTED},
    {"ph-no-rise", "tan=6;ph-bag=7.9;ph-open=7.9" SEA, "tan=6;ph-bag=7.9;ph-open=7.91" SEA},
    {"ph-no-rise", "tan=6;ph-bag=8;ph-open=7.9" SEA, TESTED},
    {"tank-warmer", TANK("25.01"), TANK("25")},
    {"tank-warmer", TESTED ";tank-temp=26", TANK("20")},
    {"tank-colder", TANK("21.99"), TANK("22")},
    {"tank-colder", TESTED ";tank-temp=20", TANK("26")},
    {"tank-saltier", SALT("32.01"), SALT("32")},
    {"salt-step-down", SALT("25.9"), SALT("26")},
    {"salt-step-down", SALT("25.9"), TESTED},
    {"tank-saltier", TESTED ";tank-salinity=34", SALT("25")},
    {"tank-ph-apart", TESTED ";tank-ph=8.1", TESTED ";tank-ph=7.1"},
    {"tank-ph-apart", TESTED ";tank-ph=6.5", TESTED},
    {"tank-unsaid", TESTED, TANK("23") ";tank-ph=7"},
    {"tank-unsaid", TESTED ";tank-temp=23;tank-ph=7", SALT("31") ";tank-ph=7"},
    {"tank-unsaid", TESTED ";tank-salinity=31;tank-ph=7", TANK("23") ";tank-ph=8"},
    {"tank-unsaid", TANK("23"), SALT("31") ";tank-ph=7"},
    {"fit-stretched", "tan=6" PH ";temp=4;salinity=31", TESTED},
    {"bag-reckoned", WEIGHED, TESTED},
    {"bag-dilute", TESTED, WEIGHED},
    {"kit-basis", TESTED, WEIGHED},
    {"ph-error", TESTED, "biomass=35g" PH SEA},
    {"limit-not-safe", TESTED, "biomass=35g" PH SEA},
    {"drip-disputed", WEIGHED, "biomass=35g" PH SEA},
    {"tank-to-bag", WEIGHED, "biomass=35g" PH SEA},
    {"no-bag-water", WEIGHED, TESTED ";hours=26"},
    {"bag-no-air", TESTED, TESTED ";hours=26"},
    {"bag-ph-how", TESTED, TESTED ";hours=26"},
    {"ask-vet", TESTED, NULL},
    {"ask-vet", "biomass=35g" PH SEA, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(bag(), notes, sizeof notes / sizeof notes[0]);
    check_working(bag(), WEIGHED ";tank-temp=20;tank-salinity=36");
    check_working(bag(), TESTED ";basis=nh4;tank-temp=20");
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"bag-impossible", ABOVE, 10, "hours", NULL, "biomass=100kg;hours=10;water=10L" PH SEA},
    {"tank-warmer", ABOVE, 2, "tank-temp", "temp_gap", TANK("25")},
    {"tank-colder", BELOW, -1, "tank-temp", "temp_gap", TANK("22")},
    {"tank-saltier", ABOVE, 1, "tank-salinity", "salinity_gap", SALT("32")},
    {"tank-ph-apart", ABOVE, 0.3, "tank-ph", "ph_gap", TESTED ";tank-ph=7.2"},
    {"tank-ph-apart", BELOW, -0.3, "tank-ph", "ph_gap", TESTED ";tank-ph=6.6"},
    {"salt-step-down", BELOW, -5, "tank-salinity", "salinity_gap", SALT("26")},
    {"ph-no-rise", UP_TO, 7.9, "ph-open", NULL, "tan=6;ph-bag=7.9;ph-open=7.9" SEA},
    {"hour-stretched", BELOW, 6.5, "ph-bag", NULL,
     "tan=1;ph-bag=6.5;ph-open=7.9;temp=24;salinity=0"},
    {"hour-stretched", ABOVE, 9, "ph-open", NULL, "tan=1;ph-bag=6.9;ph-open=9;temp=24;salinity=0"},
    {"hour-stretched", ABOVE, 40.9, "salinity", NULL,
     "tan=1;ph-bag=6.9;ph-open=8.1;temp=24;salinity=40.9"},
    {"fit-stretched", BELOW, 5, "temp", NULL, "tan=6" PH ";temp=5;salinity=31"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(bag(), edges, sizeof edges / sizeof edges[0]);
}

/* The limit of an hour is reached by the total that reaches it there. */
static void at_the_limits_of_ammonia(void **state)
{
    (void)state;
    const struct note_edge at[] = {

        {"shut-over-hour", ABOVE, total_at("short_ratio", "ph=7.3" SEA), "tan", NULL,
         "tan=40;ph-bag=7.3;ph-open=7.9" SEA},
        {"shut-over-hour", ABOVE, total_at("short_ratio", "ph=6.8;temp=24;salinity=0"), "tan", NULL,
         FRESH("40")},
        {"open-over-long", ABOVE, total_at("long_ratio", "ph=8.1" SEA), "tan", NULL,
         "tan=0.6" PH SEA},
        {"open-over-hour-salt", ABOVE, total_at("short_ratio", "ph=8.1" SEA), "tan", NULL, TESTED},
        {"open-over-hour-salt", ABOVE, total_at("short_ratio", "ph=8.3" SEA), "tan", NULL,
         MILD ";tank-ph=8.3"},
        {"open-over-hour-salt", ABOVE, total_at("short_ratio", "ph=8.1" SEA), "tan", NULL,
         TESTED ";tank-ph=7.9"},
        {"open-over-hour-fresh", ABOVE, total_at("short_ratio", "ph=7.9;temp=24;salinity=0"), "tan",
         NULL, FRESH("10")},
    };
    check_edges(bag(), at, sizeof at / sizeof at[0]);
}

static void asked_never_assumed(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"ph-bag=6.9;ph-open=8.1" SEA, HW_PROBLEM_NONE_OF_GROUP},
        {TESTED ";biomass=35g", HW_PROBLEM_MANY_OF_GROUP},
        {"tan=6;ph-bag=6.9" SEA, HW_PROBLEM_MISSING},
        {"tan=6;ph-open=8.1" SEA, HW_PROBLEM_MISSING},
        {"tan=6" PH ";temp=23", HW_PROBLEM_MISSING},
        {"tan=6" PH ";salinity=31", HW_PROBLEM_MISSING},
        {"biomass=35;hours=26;water=2.5L" PH SEA, HW_PROBLEM_NEEDS_UNIT},
        {"biomass=35g;hours=26;water=2.5" PH SEA, HW_PROBLEM_NEEDS_UNIT},
        {"tan=6" PH ";temp=23;salinity=1.023", HW_PROBLEM_GRAVITY},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        assert_int_equal(ask_settle(bag(), wrong[i].line, &question, &which), wrong[i].problem);
    }
}

/* What ammonia says of the bag's total at a pH. */
static struct hw_answer ammonia_at(double tan, double ph, double temp, double salinity)
{
    char line[200];
    struct hw_question question;
    struct hw_answer answer;
    (void)snprintf(line, sizeof line, "tan=%.17g;ph=%.17g;temp=%.17g;salinity=%.17gg/kg", tan, ph,
                   temp, salinity);
    ask(find_calc("ammonia"), line, &question, &answer);
    return answer;
}

static bool over_hour(const struct hw_answer *ammonia)
{
    return noted(find_calc("ammonia"), ammonia, "over-short-salt") ||
           noted(find_calc("ammonia"), ammonia, "over-short-fresh");
}

/* A property: the two free ammonias are those that ammonia tells of the same water to the bit, and
 * so are the limits of an hour; times_worse is their ratio, and above 1 when pH rises. */
static void as_ammonia_says(void **state)
{
    (void)state;
    const struct hw_calc *ammonia = find_calc("ammonia");
    int over = 0;
    int shut_over = 0;
    hw_random_start(20310605);
    for (int i = 0; i < 1500; i++) {
        char line[240];
        struct hw_question question;
        struct hw_answer answer;
        double ph_bag = hw_random_between(6, 8.5);
        double ph_open = hw_random_between(6, 8.8);
        double temp = hw_random_between(0, 40);
        double salinity = i % 3 == 0 ? hw_random_between(0, 11) : hw_random_between(0, 45);
        (void)snprintf(line, sizeof line,
                       "tan=%.17g;ph-bag=%.17g;ph-open=%.17g;temp=%.17g;salinity=%.17gg/kg",
                       hw_random_between(0.01, 40), ph_bag, ph_open, temp, salinity);
        ask(bag(), line, &question, &answer);
        double tan = result_of(bag(), &answer, "tan_bag");
        struct hw_answer shut = ammonia_at(tan, ph_bag, temp, salinity);
        struct hw_answer open = ammonia_at(tan, ph_open, temp, salinity);
        double free_bag = result_of(bag(), &answer, "free_bag");
        double free_open = result_of(bag(), &answer, "free_open");
        double worse = result_of(bag(), &answer, "times_worse");
        assert_close(free_bag, result_of(ammonia, &shut, "free"), 0, 0);
        assert_close(free_open, result_of(ammonia, &open, "free"), 0, 0);
        assert_close(worse, free_open / free_bag, 0, 1e-14);
        check((worse > 1) == (ph_open > ph_bag));
        check(noted(bag(), &answer, "shut-over-hour") == over_hour(&shut));
        check(noted_as(&question, "open-over-hour-salt", noted(ammonia, &open, "over-short-salt")));
        check(
            noted_as(&question, "open-over-hour-fresh", noted(ammonia, &open, "over-short-fresh")));
        over += over_hour(&open) ? 1 : 0;
        shut_over += over_hour(&shut) ? 1 : 0;
    }
    check(over > 100 && over < 1400 && shut_over > 100 && shut_over < 1400);
}

/* A property: weighed or measured, one total is one bag. */
static void weighed_as_measured(void **state)
{
    (void)state;
    static const char *const same[] = {"free_bag", "free_open", "times_worse"};
    hw_random_start(20310606);
    for (int i = 0; i < 500; i++) {
        char line[240];
        char tested[240];
        (void)snprintf(line, sizeof line,
                       "biomass=%.17gg;hours=%.17g;water=%.17gL;excretion=%.17g" PH SEA,
                       hw_random_between(0.1, 100), hw_random_between(1, 48),
                       hw_random_between(0.5, 20), hw_random_between(1, 16));
        (void)snprintf(tested, sizeof tested, "tan=%.17g" PH SEA, ask_for(line, "tan_bag"));
        for (size_t k = 0; k < 3; k++) {
            assert_close(ask_for(line, same[k]), ask_for(tested, same[k]), 0, 0);
        }
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 32; corner++) {
        char line[240];
        (void)snprintf(line, sizeof line, "tan=%s;ph-bag=%s;ph-open=%s;temp=%s;salinity=%s",
                       corner & 1 ? "1000" : "0", corner & 2 ? "10" : "5", corner & 4 ? "10" : "5",
                       corner & 8 ? "40" : "0", corner & 16 ? "45" : "0");
        check(isfinite(ask_for(line, "free_open")));
        check(isfinite(ask_for(line, "times_worse")));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(totals),
        cmocka_unit_test(gaps),
        cmocka_unit_test(refused),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(at_the_limits_of_ammonia),
        cmocka_unit_test(asked_never_assumed),
        cmocka_unit_test(as_ammonia_says),
        cmocka_unit_test(weighed_as_measured),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
