/* test_ahead.c - the calculation ahead: what it shares with bioload and verdict, every note. */
#include "assert_close.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *ahead(void)
{
    return find_calc("ahead");
}

static double ask_of(const char *calc, const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(find_calc(calc), line, &question, &answer);
    return result_of(find_calc(calc), &answer, result);
}

static double ask_for(const char *line, const char *result)
{
    return ask_of("ahead", line, result);
}

#define TANK   "volume=110L;tan=0.1;hours=30;"
#define FOOD   TANK "feed=2g/d;protein=45%"
#define RISE   TANK "rise=0.3"
#define FISH   TANK "biomass=60g"
#define PROOF  ";cleared_from=2;cleared_to=0;cleared_in=24"
#define SEA    ";ph=8.1;temp=25;salinity=34"
#define PASSED "volume=110L;start_tan=2;tan=0;nitrite=0;hours=24"

/* Rows of the outside check are at 1e-8; here what is plain arithmetic. */
static void by_hand(void **state)
{
    (void)state;
    assert_close(ask_for(RISE, "tan_then"), 0.1 + 0.3 * 30 / 24, 0, 1e-13);
    assert_close(ask_for(RISE ";basis=nh4", "tan_then"), (0.1 + 0.3 * 30 / 24) * 14.007 / 18.039, 0,
                 1e-13);
    assert_close(ask_for(FISH ";basal=5", "tan_then"), 0.1 + 0.06 * 5 * 30 / 110, 0, 1e-13);
    assert_close(ask_for(RISE ";limit=0.4", "hours_to_limit"), 24, 0, 1e-12);
    assert_close(ask_for(RISE ";share=50%;every=20h", "tan_then"), 0.35 / 2 + 0.125, 0, 1e-13);
    assert_close(ask_for(RISE ";share=50%;every=30h", "tan_then"), 0.475, 0, 1e-13);
    assert_close(ask_for(RISE ";share=50%;every=20h;new_tan=0.1;basis=nh3", "tan_then"),
                 (0.35 / 2 + 0.05 + 0.125) * 14.007 / 17.031, 0, 1e-13);
    assert_close(ask_for(FOOD ";meals=3;hours=0", "tan_then"), 0.1, 0, 0);
    double vmax = 0.4 * (1.875 + log(16)) / 24;
    double rate = 2 * 41.4 / 110 / 24;
    assert_close(ask_for(FOOD PROOF ";left=40%", "settles"), rate / (vmax - rate), 0, 1e-13);
    assert_close(ask_for(FOOD PROOF ";left=40%;limit=0.3", "feed_for_limit"),
                 vmax * 0.3 / 1.3 * 24 * 110 / 41.4, 0, 1e-13);
}

/* A clean pass counts as half a step of the kit, in the kit's own basis. */
static void least_left(void **state)
{
    (void)state;
    double plain = ask_for(FOOD PROOF, "settles");
    assert_close(ask_for(TANK "feed=2g/d;protein=45%;cleared_from=2;cleared_to=0.1;cleared_in=24",
                         "settles"),
                 plain, 0, 0);
    assert_close(ask_for(TANK "feed=2g/d;protein=45%;cleared_from=2;cleared_to=0.125;cleared_in=24",
                         "settles"),
                 plain, 0, 0);
    check(ask_for(TANK "feed=2g/d;protein=45%;cleared_from=2;cleared_to=0.126;cleared_in=24",
                  "settles") > plain);
    double share = 14.007 / 18.039;
    double vmax = ((2 - 0.125) * share + log(16)) / 24;
    double rate = 2 * 41.4 / 110 / 24;
    assert_close(ask_for(FOOD PROOF ";basis=nh4", "settles"), rate / (vmax - rate), 0, 1e-13);
    assert_close(ask_for(FOOD PROOF ";kit_step=0.1", "settles"),
                 rate / ((1.95 + log(40)) / 24 - rate), 0, 1e-13);
}

/* By the least and the most of the own half and of 0.3 and 2, whichever way round they are. */
static void range_of_filters(void **state)
{
    (void)state;
    static const char *const halves[] = {";half=0.3", ";half=1", ";half=2", ";half=4", ";half=0.1"};
    for (size_t i = 0; i < sizeof halves / sizeof halves[0]; i++) {
        for (int feed = 1; feed <= 5; feed++) {
            char line[200];
            (void)snprintf(line, sizeof line, TANK "feed=%dg/d;protein=45%%" PROOF "%s", feed,
                           halves[i]);
            double own = ask_for(line, "settles");
            double low = ask_for(line, "settles_low");
            double high = ask_for(line, "settles_high");
            (void)snprintf(line, sizeof line, TANK "feed=%dg/d;protein=45%%" PROOF ";half=0.3",
                           feed);
            double sharp = ask_for(line, "settles");
            (void)snprintf(line, sizeof line, TANK "feed=%dg/d;protein=45%%" PROOF ";half=2", feed);
            double blunt = ask_for(line, "settles");
            assert_close(low, fmin(own, fmin(sharp, blunt)), 0, 0);
            assert_close(high, fmax(own, fmax(sharp, blunt)), 0, 0);
        }
    }
    /* above what the challenge cleared on the mean the sharp filter is the worse one */
    check(isfinite(ask_for(TANK "feed=5.2g/d;protein=45%" PROOF, "settles_high")));
    assert_close(ask_for(TANK "feed=5.2g/d;protein=45%" PROOF, "settles_high"),
                 ask_for(TANK "feed=5.2g/d;protein=45%" PROOF ";half=0.3", "settles"), 0, 0);
}

/* One core behind the three: bioload says the same of the same load, verdict the least. */
static void with_its_neighbours(void **state)
{
    (void)state;
    static const char *const results[] = {"settles", "settles_low", "settles_high",
                                          "feed_for_limit"};
    static const char *const same = "volume=110L;feed=2g/d;protein=45%" PROOF SEA ";left=70%";
    for (size_t i = 0; i < sizeof results / sizeof results[0]; i++) {
        assert_close(ask_of("bioload", same, results[i]),
                     ask_for(FOOD PROOF SEA ";left=70%", results[i]), 0, 0);
    }
    double least = INFINITY;
    static const char *const halves[] = {";half=0.3", ";half=1", ";half=2"};
    for (size_t i = 0; i < sizeof halves / sizeof halves[0]; i++) {
        char line[200];
        (void)snprintf(line, sizeof line, "%s%s", FOOD PROOF SEA, halves[i]);
        least = fmin(least, ask_for(line, "feed_for_limit"));
    }
    assert_close(ask_of("verdict", PASSED SEA, "feed_for_limit"), least, 0, 1e-14);
    /* fed by that much it rests at the limit, which is that of ammonia */
    char line[200];
    (void)snprintf(line, sizeof line, TANK "feed=%.17gg/d;protein=45%%" PROOF,
                   ask_for(FOOD PROOF SEA, "feed_for_limit"));
    assert_close(ask_for(line, "settles"), total_at("long_ratio", "ph=8.1;temp=25;salinity=34"), 0,
                 1e-12);
    /* free ammonia of the peak is what ammonia says of it */
    (void)snprintf(line, sizeof line, "tan=%.17g" SEA, ask_for(FOOD PROOF SEA, "peak"));
    assert_close(ask_of("ammonia", line, "free"), ask_for(FOOD PROOF SEA, "free_peak"), 0, 1e-13);
}

static const struct {
    const char *result, *present, *absent;
} sometimes[] = {
    {"hours_to_limit", RISE ";limit=0.4", RISE ";limit=0.5"},
    {"hours_to_limit", RISE ";limit=0.4", RISE},
    {"hours_to_limit", TANK "rise=0.6" SEA, TANK "rise=0.6;ph=8.1;temp=25"},
    {"settles", FOOD PROOF, FOOD},
    {"settles", FOOD PROOF, TANK "feed=13g/d;protein=45%" PROOF},
    {"settles", FOOD PROOF, FOOD PROOF ";left=0%"},
    {"settles_low", FOOD PROOF, TANK "feed=13g/d;protein=45%" PROOF},
    {"settles_high", FOOD PROOF, TANK "feed=9g/d;protein=45%" PROOF},
    {"settles_low", TANK "feed=9g/d;protein=45%" PROOF, FOOD},
    {"feed_for_limit", FOOD PROOF SEA, FOOD PROOF},
    {"feed_for_limit", FOOD PROOF ";limit=0.4", FOOD ";limit=0.4"},
    {"feed_for_limit", FOOD PROOF ";limit=0.4", RISE PROOF ";limit=0.4"},
    {"free_peak", FOOD SEA, FOOD ";ph=8.1;salinity=34"},
    {"free_peak", FOOD SEA, FOOD ";ph=8.1;temp=25"},
    {"free_peak", FOOD SEA ";limit=0.4", FOOD ";temp=25;salinity=34"},
};

static void absent_results(void **state)
{
    (void)state;
    keep_workings();
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check(isfinite(ask_for(sometimes[i].present, sometimes[i].result)));
        check(isnan(ask_for(sometimes[i].absent, sometimes[i].result)));
        check_working(ahead(), sometimes[i].present);
        check_working(ahead(), sometimes[i].absent);
    }
    check_working(ahead(), FISH ";basis=nh3;share=30%;new_tan=0.2" PROOF ";half=3;left=60%" SEA);
    check_working(ahead(), RISE ";basis=nh4;share=30%;every=7;ph=7;temp=20;salinity=5");
    check_working(ahead(), FOOD ";factor=0.1;meals=3;ph=7;temp=20;salinity=0.5");
    redo_workings();
}

static const struct note_row notes[] = {
    {"challenge-no-drop", TANK "rise=0.3;cleared_from=0.1;cleared_to=0;cleared_in=24", RISE},
    {"challenge-no-drop", TANK "rise=0.3;cleared_from=1;cleared_to=1;cleared_in=24",
     TANK "rise=0.3;cleared_from=1;cleared_to=0.9;cleared_in=24"},
    {"clears-fast", TANK "rise=0.3;cleared_from=9;cleared_to=0;cleared_in=8", RISE PROOF},
    {"clears-fast", TANK "rise=0.3;cleared_from=9;cleared_to=0;cleared_in=8", RISE},
    {"hours-few", TANK "rise=0.3;cleared_from=2;cleared_to=0;cleared_in=5.9", RISE PROOF},
    {"hours-few", TANK "rise=0.3;cleared_from=2;cleared_to=0;cleared_in=5.9", RISE},
    {"left-of-nothing", RISE ";left=40%", RISE PROOF ";left=40%"},
    {"left-of-nothing", RISE ";left=40%", RISE},
    {"never-settles", TANK "feed=13g/d;protein=45%" PROOF, FOOD PROOF},
    {"never-settles", RISE PROOF ";left=0%", RISE},
    {"settles-over-limit", FOOD PROOF ";limit=0.19", FOOD PROOF ";limit=0.2"},
    {"settles-over-limit", FOOD PROOF ";limit=0.19", FOOD PROOF},
    {"settles-unsure", FOOD PROOF ";limit=0.2", FOOD PROOF ";limit=0.23"},
    {"settles-unsure", TANK "feed=9g/d;protein=45%" PROOF, FOOD PROOF},
    {"settles-unsure", TANK "feed=9g/d;protein=45%" PROOF, FOOD},
    {"settles-unsure", FOOD PROOF ";limit=0.2", FOOD PROOF ";limit=0.19"},
    {"limit-ahead", RISE ";limit=0.47", RISE ";limit=0.48"},
    {"limit-ahead", TANK "rise=0.4" SEA, TANK "rise=0.3" SEA},
    {"limit-now", RISE ";limit=0.1", RISE ";limit=0.2"},
    {"limit-ahead", RISE ";limit=0.2", RISE ";limit=0.1"},
    {"change-late", RISE ";share=25%;every=24;limit=0.2", RISE ";every=24;limit=0.2"},
    {"change-late", RISE ";share=25%;limit=0.2", RISE ";share=25%;every=6;limit=0.2"},
    {"much-ahead", RISE, TANK "rise=0.1"},
    {"much-ahead", RISE ";ph=8", RISE ";limit=0.4"},
    {"sour-change", RISE ";share=10%;ph=7.7", RISE ";share=10%;ph=7.9"},
    {"sour-change", RISE ";share=10%;ph=7.7", RISE ";share=0%;ph=7.7"},
    {"sour-change", RISE ";share=10%;ph=7.7", RISE ";share=10%"},
    {"change-large", RISE ";share=76%", RISE ";share=75%"},
    {"nothing-given-off", TANK "feed=0g/d;protein=45%", FOOD},
    {"nothing-given-off", TANK "feed=0g/d;protein=45%" PROOF, FISH},
    {"limit-over-published", RISE ";limit=0.51" SEA, RISE ";limit=0.5" SEA},
    {"limit-unseen", RISE ";limit=0.26;ph=8.1;temp=25", RISE ";limit=0.26" SEA},
    {"limit-unseen", RISE ";limit=0.26", RISE ";limit=0.25"},
    {"criteria-jump", RISE ";ph=8;temp=25;salinity=9.1", RISE ";ph=8;temp=25;salinity=11"},
    {"criteria-jump", RISE ";ph=8;temp=25;salinity=9.1",
     RISE ";limit=0.2;ph=8;temp=25;salinity=9.1"},
    {"criteria-stretched", RISE ";ph=8;temp=25;salinity=41", RISE ";ph=8;temp=25;salinity=40.8"},
    {"criteria-stretched", RISE ";ph=8;temp=31;salinity=5", RISE ";ph=8;temp=30;salinity=5"},
    {"fit-stretched", RISE ";ph=8;temp=25;salinity=44.6", RISE ";ph=8;temp=25;salinity=44.5"},
    {"fit-stretched", RISE ";ph=8;temp=25;salinity=44.6", RISE ";temp=25;salinity=44.6"},
    {"ratio-stricter", RISE ";ph=8;temp=25;salinity=9.9", RISE ";ph=8;temp=25;salinity=10"},
    {"ratio-stricter", RISE ";ph=8;temp=25;salinity=1.1g/kg", RISE ";ph=8;temp=25;salinity=0.9"},
    {"limit-salt", RISE SEA, RISE ";ph=8;temp=25;salinity=0.9"},
    {"limit-fresh", RISE ";ph=8;temp=25;salinity=9.9", RISE SEA},
    {"limit-own", RISE ";limit=0.4", RISE SEA},
    {"limit-not-safe", RISE SEA, RISE},
    {"limit-not-safe", RISE ";limit=0.4", RISE ";ph=8.1"},
    {"limit-unsaid", RISE, RISE ";ph=8.1"},
    {"limit-unsaid", RISE, RISE ";limit=0.4"},
    {"limit-needs-ph", RISE ";temp=25", RISE ";ph=8.1"},
    {"limit-needs-ph", RISE ";salinity=34", RISE},
    {"limit-needs-temp", RISE ";ph=8.1", RISE ";temp=25"},
    {"limit-needs-temp", RISE ";ph=8.1;salinity=34", RISE SEA},
    {"limit-needs-salinity", RISE ";ph=8.1;temp=25", RISE SEA},
    {"limit-needs-salinity", RISE ";ph=8.1", RISE ";limit=0.4"},
    {"feed-figure", FOOD, FOOD ";factor=0.1"},
    {"feed-figure", FOOD, RISE},
    {"factor-own", FOOD ";factor=0.1", FOOD},
    {"factor-own", FOOD ";factor=0.1", RISE ";factor=0.1"},
    {"protein-as-fed", FOOD, RISE},
    {"meal-pattern", FOOD, FISH},
    {"unfed-fish", FISH, RISE},
    {"unfed-fish", FISH, FOOD},
    {"filter-unsaid", RISE, RISE PROOF},
    {"left-of-filter", RISE PROOF ";left=99%", RISE PROOF},
    {"left-of-filter", RISE PROOF ";left=99%", RISE ";left=99%"},
    {"settles-range", RISE PROOF, RISE},
    {"change-due", RISE ";share=1%", RISE},
    {"free-at-ph", RISE SEA, RISE ";limit=0.4"},
    {"kit-basis", RISE, TANK "rise=0.3;cleared_from=0.1;cleared_to=0;cleared_in=24"},
    {"model-read", RISE, TANK "rise=0.3;cleared_from=0.1;cleared_to=0;cleared_in=24"},
    {"model-leaves-out", RISE, TANK "rise=0.3;cleared_from=0.1;cleared_to=0;cleared_in=24"},
    {"ask-vet", RISE, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(ahead(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"clears-fast", ABOVE, 24.125, "cleared_from", NULL,
     TANK "rise=0.3;cleared_from=24;cleared_to=0;cleared_in=24"},
    {"hours-few", BELOW, 6, "cleared_in", NULL,
     TANK "rise=0.3;cleared_from=2;cleared_to=0;cleared_in=6"},
    {"settles-over-limit", ABOVE, 0.3, "rise", "settles",
     TANK "rise=0.3;limit=0.3" PROOF ";hours=3"},
    {"settles-unsure", ABOVE, 0.3, "rise", "settles_high",
     TANK "rise=0.3;limit=0.3" PROOF ";hours=3"},
    {"much-ahead", ABOVE, 0.25, "tan", NULL, "volume=110L;tan=0.25;biomass=0.01g;hours=0"},
    {"sour-change", BELOW, 7.8, "ph", NULL, RISE ";share=10%;ph=7.8"},
    {"change-large", ABOVE, 75, "share", NULL, RISE ";share=75%"},
    {"limit-unseen", ABOVE, 0.25, "limit", NULL, RISE ";limit=0.25"},
    {"criteria-jump", BELOW, 2, "salinity", NULL, RISE ";ph=8;temp=25;salinity=2"},
    {"criteria-jump", ABOVE, 9, "salinity", NULL, RISE ";ph=8;temp=25;salinity=9"},
    {"limit-salt", FROM, 1, "salinity", NULL, RISE ";ph=8;temp=25;salinity=1g/kg"},
    {"limit-fresh", BELOW, 10, "salinity", NULL, RISE ";ph=8;temp=25;salinity=10"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(ahead(), edges, sizeof edges / sizeof edges[0]);
    const struct note_edge published = {"limit-over-published",
                                        ABOVE,
                                        total_at("long_ratio", "ph=8.1;temp=25;salinity=34"),
                                        "limit",
                                        NULL,
                                        RISE ";limit=0.5" SEA};
    check_edges(ahead(), &published, 1);
}

/* What cannot be asked. */
static void asked_wrongly(void **state)
{
    (void)state;
    static const struct {
        enum hw_problem problem;
        const char *line;
    } rows[] = {
        {HW_PROBLEM_MISSING, TANK "feed=2g/d"},
        {HW_PROBLEM_OUT_OF_PLACE, RISE ";protein=45%"},
        {HW_PROBLEM_NONE_OF_GROUP, "volume=110L;tan=0.1;hours=30"},
        {HW_PROBLEM_MANY_OF_GROUP, RISE ";biomass=60g"},
        {HW_PROBLEM_MISSING, RISE ";cleared_from=2;cleared_in=24"},
        {HW_PROBLEM_OUT_OF_PLACE, RISE ";cleared_in=24"},
    };
    struct hw_question question;
    size_t which = 0;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        assert_int_equal(ask_settle(ahead(), rows[i].line, &question, &which), rows[i].problem);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),          cmocka_unit_test(least_left),
        cmocka_unit_test(range_of_filters), cmocka_unit_test(with_its_neighbours),
        cmocka_unit_test(absent_results),   cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),       cmocka_unit_test(asked_wrongly),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
