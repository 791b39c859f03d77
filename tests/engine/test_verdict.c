/* test_verdict.c - the calculation verdict: pass or not, what it carries, every note. */
#include "assert_close.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *verdict(void)
{
    return find_calc("verdict");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(verdict(), line, &question, &answer);
    return result_of(verdict(), &answer, result);
}

#define START  "volume=110L;start_tan=2;"
#define CLEAR  START "tan=0;nitrite=0;hours=24"
#define COARSE "volume=110L;kit_step=0.5;"
#define LEFT   START "tan=0.5;nitrite=0.6;hours=24"
#define SEA    ";ph=8.1;temp=25;salinity=34"

static void pass_or_not(void **state)
{
    (void)state;
    static const struct {
        double passed;
        const char *line;
    } rows[] = {
        {1, CLEAR},
        {1, START "tan=0.125;nitrite=0.125;hours=24"},
        {0, START "tan=0.126;nitrite=0;hours=24"},
        {0, START "tan=0;nitrite=0.126;hours=24"},
        {1, START "tan=0.025;nitrite=0;hours=24;kit_step=0.05"},
        {0, START "tan=0.026;nitrite=0;hours=24;kit_step=0.05"},
        /* half a step is in the kit's own basis: 0.125 as NH4 and as the ion is less as N, and
         * clear */
        {1, START "tan=0.125;nitrite=0.125;hours=24;basis=nh4;nitrite_basis=ion"},
        {0, START "tan=0.13;nitrite=0;hours=24;basis=nh4"},
        {0, START "tan=0;nitrite=0.13;hours=24;nitrite_basis=ion"},
        {0, START "tan=0;nitrite=0;hours=24.1"},
        {1, START "tan=0;nitrite=0;hours=24.1;within=36"},
        {0, LEFT},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        assert_close(ask_for(rows[i].line, "passed"), rows[i].passed, 0, 0);
    }
}

static void what_it_carries(void **state)
{
    (void)state;
    /* a kit so coarse that what is left counts as none */
    static const char *const line =
        "volume=75L;start_tan=2.5;basis=nh4;start_nitrite=0.5;nitrite_basis=ion;tan=0.3;"
        "nitrite=0.3;hours=20;protein=38%;working_share=30%;temp=26;stock_temp=23;kit_step=0.6";
    static const char *const left =
        "volume=75L;start_tan=2.5;basis=nh4;start_nitrite=0.4;nitrite_basis=ion;tan=0.3;"
        "nitrite=0.9;hours=20";
    double turned = 2.2 * 14.007 / 18.039;
    double cleared = turned + 0.2 * 14.007 / 46.005;
    double rate = cleared / 20 * 24;
    double feed = turned / 20 * 24 * 75 / (0.38 * 92);
    assert_close(ask_for(line, "cleared"), cleared, 0, 1e-14);
    assert_close(ask_for(line, "rate"), rate, 0, 1e-14);
    assert_close(ask_for(line, "capacity"), rate * 75, 0, 1e-14);
    assert_close(ask_for(line, "feed"), feed, 0, 1e-14);
    assert_close(ask_for(line, "working_feed"), feed * 0.3 / (1.072 * 1.072 * 1.072), 0, 1e-14);
    cleared = turned - 0.5 * 14.007 / 46.005;
    rate = cleared / 20 * 24;
    assert_close(ask_for(left, "cleared"), cleared, 0, 1e-14);
    assert_close(ask_for(left, "capacity"), rate * 75, 0, 1e-14);
    double above = 0.175 * 14.007 / 18.039 + 0.775 * 14.007 / 46.005;
    assert_close(ask_for(left, "hours_to_clear"), above / rate * 24, 0, 1e-13);
    assert_no_answer(ask_for(CLEAR, "hours_to_clear"));
    assert_no_answer(ask_for(START "tan=0.125;nitrite=0.125;hours=30", "hours_to_clear"));
}

/* No food is told of a filter that has not passed, whatever it cleared. */
static void no_pass_no_food(void **state)
{
    (void)state;
    static const char *const lines[] = {
        LEFT,
        START "tan=0;nitrite=0;hours=24.1",
        START "tan=0;nitrite=1;hours=12",
        START "tan=0.126;nitrite=0;hours=24;temp=26;stock_temp=23",
    };
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
        assert_close(ask_for(lines[i], "passed"), 0, 0, 0);
        check(isfinite(ask_for(lines[i], "capacity")));
        assert_no_answer(ask_for(lines[i], "feed"));
        assert_no_answer(ask_for(lines[i], "working_feed"));
        char limited[160];
        (void)snprintf(limited, sizeof limited, "%s;limit=0.5", lines[i]);
        assert_no_answer(ask_for(limited, "feed_for_limit"));
    }
    check(isfinite(ask_for(CLEAR, "feed")));
    check(isfinite(ask_for(CLEAR, "working_feed")));
}

/* Nitrite that stood there at the start was cleared too, but food begins as ammonia. */
static void food_goes_by_ammonia(void **state)
{
    (void)state;
    static const char *const line =
        COARSE "start_tan=0.3;start_nitrite=3;tan=0.2;nitrite=0;hours=20";
    static const char *const none =
        COARSE "start_tan=0.2;start_nitrite=3;tan=0.22;nitrite=0;hours=24";
    assert_close(ask_for(line, "cleared"), 3.1, 0, 1e-14);
    assert_close(ask_for(line, "capacity"), 3.1 / 20 * 24 * 110, 0, 1e-14);
    assert_close(ask_for(line, "feed"), 0.1 / 20 * 24 * 110 / (0.45 * 92), 0, 1e-13);
    /* ammonia that is only half way is cleared by neither count */
    assert_close(ask_for(COARSE "start_tan=2;start_nitrite=0.1;tan=0;nitrite=0.2;hours=24", "feed"),
                 ask_for(COARSE "start_tan=2;tan=0;nitrite=0.1;hours=24", "feed"), 0, 1e-14);
    /* no ammonia was turned: there is no food in it */
    assert_close(ask_for(none, "feed"), 0, 0, 0);
    assert_close(ask_for(none, "working_feed"), 0, 0, 0);
}

/* The food that rests at the limit: the least by the own half and by 0.3 and 2 mg/L, of the ammonia
 * alone; the limit at the temperature of the fish; a colder filter is a slower one. */
static void food_at_the_limit(void **state)
{
    (void)state;
    double sharp = (1.875 + 0.3 * log(16)) / 24 / (0.3 + 0.5);
    double blunt = (1.875 + 2 * log(16)) / 24 / (2 + 0.5);
    double coarse = (1.875 + 4 * log(16)) / 24 / (4 + 0.5);
    double food = 0.5 * 24 * 110 / 41.4;
    check(blunt < sharp);
    assert_close(ask_for(CLEAR ";limit=0.5", "feed_for_limit"), food * blunt, 0, 1e-13);
    assert_close(ask_for(CLEAR ";limit=0.5;half=0.4", "feed_for_limit"), food * blunt, 0, 1e-13);
    assert_close(ask_for(CLEAR ";limit=0.5;half=4", "feed_for_limit"), food * coarse, 0, 1e-13);
    /* at a high limit it is the sharp one */
    sharp = (1.875 + 0.3 * log(16)) / 24 / (0.3 + 3);
    assert_close(ask_for(CLEAR ";limit=3", "feed_for_limit"), 6 * food * sharp, 0, 1e-13);
    assert_close(ask_for(CLEAR ";limit=0.5;temp=26;stock_temp=25", "feed_for_limit"),
                 food * blunt / 1.072, 0, 1e-13);
    assert_close(ask_for(CLEAR ";limit=0.5;temp=26;stock_temp=27", "feed_for_limit"), food * blunt,
                 0, 1e-13);
    double limit = total_at("long_ratio", "ph=8.1;temp=27;salinity=34");
    assert_close(ask_for(CLEAR ";temp=26;stock_temp=27;ph=8.1;salinity=34", "feed_for_limit"),
                 food * limit / 0.5 * (1.875 + 2 * log(16)) / 24 / (2 + limit), 0, 1e-12);
    assert_close(ask_for(CLEAR ";temp=27;ph=8.1;salinity=34", "feed_for_limit"),
                 ask_for(CLEAR ";stock_temp=27;ph=8.1;salinity=34", "feed_for_limit"), 0, 0);
    /* nitrite from the start tells nothing of ammonia, which did not fall here */
    assert_no_answer(ask_for(COARSE "start_tan=0.2;start_nitrite=3;tan=0.1;nitrite=0;hours=24;"
                                    "limit=0.5",
                             "feed_for_limit"));
    assert_no_answer(ask_for(CLEAR, "feed_for_limit"));
    assert_no_answer(ask_for(CLEAR ";ph=8.1;salinity=34", "feed_for_limit"));
}

/* Warmer is never counted in the filter's favour, and one temperature alone counts for nothing. */
static void warmer_is_not_counted(void **state)
{
    (void)state;
    double plain = ask_for(CLEAR, "working_feed");
    assert_close(ask_for(CLEAR ";temp=23;stock_temp=26", "working_feed"), plain, 0, 0);
    assert_close(ask_for(CLEAR ";temp=26", "working_feed"), plain, 0, 0);
    assert_close(ask_for(CLEAR ";stock_temp=16", "working_feed"), plain, 0, 0);
    assert_close(ask_for(CLEAR ";temp=26;stock_temp=25", "working_feed"), plain / 1.072, 0, 1e-14);
    assert_close(ask_for(CLEAR ";temp=26;stock_temp=25", "feed"), ask_for(CLEAR, "feed"), 0, 0);
}

static const struct note_row notes[] = {
    {"nothing-cleared", START "tan=2;nitrite=0;hours=24", START "tan=1.9;nitrite=0;hours=24"},
    {"nothing-cleared", START "tan=0.5;nitrite=1.5;hours=24", CLEAR},
    /* 0.1 + 0.2 is not 0.3: a rounding is no ammonia cleared */
    {"nothing-cleared", "volume=110L;start_tan=0.1;start_nitrite=0.2;tan=0.3;nitrite=0;hours=24",
     LEFT},
    {"start-unreadable", "volume=110L;start_tan=0.125;tan=0;nitrite=0;hours=24",
     "volume=110L;start_tan=0.13;tan=0;nitrite=0;hours=24"},
    {"start-unreadable", "volume=110L;start_tan=0;start_nitrite=0.1;tan=0;nitrite=0;hours=24",
     "volume=110L;start_tan=0;start_nitrite=0.2;tan=0;nitrite=0;hours=24"},
    {"start-unreadable", COARSE "start_tan=0.25;tan=0;nitrite=0;hours=24", CLEAR},
    {"kit-coarse", CLEAR ";kit_step=0.51", COARSE "start_tan=0.25;tan=0;nitrite=0;hours=24"},
    {"kit-coarse", CLEAR ";kit_step=0.51;basis=nh4", CLEAR ";basis=nh4"},
    {"kit-coarse", CLEAR ";kit_step=0.65;basis=nh4;nitrite_basis=ion",
     CLEAR ";kit_step=0.64;basis=nh4;nitrite_basis=ion"},
    {"kit-coarse", START "tan=2;nitrite=0;hours=24;kit_step=5",
     START "tan=2;nitrite=0;hours=24;kit_step=0.5"},
    {"clears-fast", START "tan=0;nitrite=0;hours=1", START "tan=0;nitrite=0;hours=3"},
    {"hours-few", START "tan=0;nitrite=0;hours=5", START "tan=2;nitrite=0;hours=5"},
    {"within-long", CLEAR ";within=36", CLEAR},
    {"within-long", LEFT ";within=36", LEFT},
    {"working-share-high", CLEAR ";working_share=30%", CLEAR},
    {"working-share-high", CLEAR ";working_share=30%", LEFT ";working_share=30%"},
    {"nitrite-counted", COARSE "start_tan=0.3;start_nitrite=3;tan=0.2;nitrite=0;hours=20", CLEAR},
    {"nitrite-counted", START "start_nitrite=0.2;tan=0;nitrite=0;hours=24",
     COARSE "start_tan=2;start_nitrite=0.2;tan=0;nitrite=0.2;hours=24"},
    {"nitrite-counted", START "start_nitrite=0.5;tan=0;nitrite=0;hours=24",
     START "start_nitrite=0.5;tan=0;nitrite=0;hours=25"},
    {"read-late", START "tan=0;nitrite=0;hours=25", CLEAR},
    {"read-late", START "tan=0;nitrite=0;hours=25", START "tan=1;nitrite=0;hours=25"},
    {"read-early", START "tan=1;nitrite=0;hours=12", LEFT},
    {"read-early", START "tan=0;nitrite=1;hours=12", START "tan=0;nitrite=0;hours=12"},
    {"not-clear", LEFT, CLEAR},
    {"not-clear", START "tan=1;nitrite=0;hours=30", START "tan=1;nitrite=0;hours=12"},
    {"nitrite-behind", START "tan=0.125;nitrite=0.5;hours=24", LEFT},
    {"nitrite-behind", START "tan=0;nitrite=0.5;hours=12", CLEAR},
    {"rate-at-least", CLEAR, LEFT},
    {"start-low", "volume=110L;start_tan=1.87;tan=0;nitrite=0;hours=24",
     "volume=110L;start_tan=1.875;tan=0;nitrite=0;hours=24"},
    {"nitrate-short", CLEAR ";nitrate_rise=3.8", CLEAR ";nitrate_rise=3.9"},
    {"nitrate-short", "volume=110L;start_tan=10;tan=0;nitrite=0;hours=24;nitrate_rise=33.1",
     "volume=110L;start_tan=10;tan=0;nitrite=0;hours=24;nitrate_rise=33.3"},
    {"nitrate-over", CLEAR ";nitrate_rise=13.9", CLEAR ";nitrate_rise=13.8"},
    {"nitrate-over", CLEAR ";nitrate_rise=20", CLEAR},
    {"nitrate-unsaid", CLEAR, CLEAR ";nitrate_rise=9"},
    {"colder-stock", CLEAR ";temp=26;stock_temp=25", CLEAR ";temp=25;stock_temp=25"},
    {"colder-stock", CLEAR ";temp=26;stock_temp=25", CLEAR ";temp=25"},
    {"warmer-stock", CLEAR ";temp=25;stock_temp=26", CLEAR ";temp=25;stock_temp=77F"},
    {"colder-stock", CLEAR ";temp=26;stock_temp=25", LEFT ";temp=26;stock_temp=25"},
    {"warmer-stock", CLEAR ";temp=25;stock_temp=26", LEFT ";temp=25;stock_temp=26"},
    {"temp-half", CLEAR ";temp=25", LEFT ";temp=25"},
    {"temp-half", CLEAR ";temp=25", CLEAR ";temp=25;stock_temp=25"},
    {"temp-half", CLEAR ";stock_temp=25", CLEAR},
    {"limit-feed", CLEAR SEA, CLEAR},
    {"limit-feed", CLEAR ";limit=0.2", LEFT ";limit=0.2"},
    {"model-read", CLEAR SEA, CLEAR},
    {"limit-not-safe", CLEAR SEA, CLEAR ";ph=8.1"},
    {"limit-salt", CLEAR SEA, CLEAR SEA ";limit=0.2"},
    {"limit-fresh", CLEAR ";ph=8;temp=25;salinity=9.9", CLEAR SEA},
    {"limit-own", CLEAR ";limit=0.2", CLEAR SEA},
    {"limit-over-published", CLEAR SEA ";limit=0.51", CLEAR SEA ";limit=0.5"},
    {"limit-unseen", CLEAR ";limit=0.26", CLEAR ";limit=0.25"},
    {"limit-unseen", CLEAR ";limit=0.26", CLEAR SEA ";limit=0.26"},
    {"limit-needs-ph", CLEAR ";temp=25;salinity=34", CLEAR ";salinity=34"},
    {"limit-needs-ph", CLEAR ";stock_temp=25;salinity=34", CLEAR ";temp=25"},
    {"limit-needs-ph", CLEAR ";temp=25;salinity=34", LEFT ";temp=25;salinity=34"},
    {"limit-needs-temp", CLEAR ";ph=8.1;salinity=34", CLEAR ";ph=8.1;salinity=34;stock_temp=25"},
    {"limit-needs-temp", CLEAR ";ph=8.1", CLEAR SEA},
    {"limit-needs-salinity", CLEAR ";ph=8.1;temp=25", CLEAR SEA},
    {"limit-needs-salinity", CLEAR ";ph=8.1", CLEAR ";ph=8.1;limit=0.2"},
    {"ratio-stricter", CLEAR ";ph=8;temp=25;salinity=9.9", CLEAR SEA},
    {"ratio-stricter", CLEAR ";ph=8;temp=25;salinity=1.1g/kg", CLEAR ";ph=8;temp=25;salinity=0.9"},
    {"criteria-jump", CLEAR ";ph=8;temp=25;salinity=9.1", CLEAR ";ph=8;temp=25;salinity=11"},
    {"criteria-stretched", CLEAR ";ph=8;temp=25;salinity=41", CLEAR ";ph=8;temp=25;salinity=40.8"},
    {"change-after-pass", CLEAR, LEFT},
    {"not-carrying", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"not-carrying", CLEAR, LEFT},
    {"feed-figure", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"feed-figure", CLEAR, LEFT},
    {"void-after", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"half-step", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"kit-basis", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"same-water", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"feed-filter", CLEAR, START "tan=2;nitrite=0;hours=24"},
    {"ask-vet", CLEAR, NULL},
    {"ask-vet", START "tan=2;nitrite=0;hours=24", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(verdict(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"nothing-cleared", UP_TO, 0.5, "start_tan", NULL,
     "volume=110L;start_tan=0.5;tan=0.5;nitrite=0;hours=24"},
    {"start-unreadable", UP_TO, 0.125, "start_tan", NULL,
     "volume=110L;start_tan=0.125;tan=0;nitrite=0;hours=24"},
    {"start-unreadable", UP_TO, 0.125, "start_nitrite", NULL,
     "volume=110L;start_tan=0;start_nitrite=0.125;tan=0;nitrite=0;hours=24"},
    {"not-clear", ABOVE, 0.125, "tan", NULL, START "tan=0.125;nitrite=0;hours=24"},
    {"not-clear", ABOVE, 0.125, "nitrite", NULL, START "tan=0;nitrite=0.125;hours=24"},
    {"kit-coarse", ABOVE, 0.5, "kit_step", NULL, CLEAR ";kit_step=0.5"},
    {"kit-coarse", ABOVE, 0.5, "kit_step", NULL, CLEAR ";kit_step=0.5;basis=nh4"},
    {"kit-coarse", ABOVE, 0.5 * 18.039 / 14.007, "kit_step", NULL,
     CLEAR ";kit_step=0.6;basis=nh4;nitrite_basis=ion"},
    {"clears-fast", ABOVE, 24, "hours", "rate", START "tan=0;nitrite=0;hours=2"},
    {"hours-few", BELOW, 6, "hours", NULL, LEFT},
    {"within-long", ABOVE, 24, "within", NULL, CLEAR ";within=24"},
    {"limit-unseen", ABOVE, 0.25, "limit", NULL, CLEAR ";limit=0.25"},
    {"working-share-high", ABOVE, 25, "working_share", NULL, CLEAR ";working_share=25%"},
    {"read-late", ABOVE, 24, "hours", NULL, CLEAR},
    {"read-early", BELOW, 24, "hours", NULL, LEFT},
    {"not-clear", FROM, 24, "hours", NULL, LEFT},
    {"change-after-pass", UP_TO, 24, "hours", NULL, CLEAR},
    {"change-after-pass", UP_TO, 0.125, "tan", NULL, START "tan=0.125;nitrite=0;hours=24"},
    {"start-low", BELOW, 1.875, "start_tan", NULL,
     "volume=110L;start_tan=1.875;tan=0;nitrite=0;hours=24"},
    {"nitrate-short", BELOW, 2 * 62.004 / 14.007 - 5, "nitrate_rise", NULL,
     CLEAR ";nitrate_rise=4"},
    {"nitrate-over", ABOVE, 2 * 62.004 / 14.007 + 5, "nitrate_rise", NULL,
     CLEAR ";nitrate_rise=14"},
    {"nitrate-short", BELOW, 0.75 * 10 * 62.004 / 14.007, "nitrate_rise", NULL,
     "volume=110L;start_tan=10;tan=0;nitrite=0;hours=24;nitrate_rise=33"},
    {"nitrate-over", ABOVE, 1.25 * 10 * 62.004 / 14.007, "nitrate_rise", NULL,
     "volume=110L;start_tan=10;tan=0;nitrite=0;hours=24;nitrate_rise=55"},
    {"colder-stock", BELOW, 25, "stock_temp", NULL, CLEAR ";temp=25;stock_temp=25"},
    {"warmer-stock", ABOVE, 25, "stock_temp", NULL, CLEAR ";temp=25;stock_temp=25"},
    {"nitrite-counted", ABOVE, 0, "start_nitrite", NULL, CLEAR ";start_nitrite=0"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(verdict(), edges, sizeof edges / sizeof edges[0]);
}

static void workings(void **state)
{
    (void)state;
    check_working(verdict(), LEFT ";temp=26;stock_temp=22.5;nitrate_rise=5");
    check_working(verdict(), LEFT ";basis=nh3;nitrite_basis=ion;start_nitrite=0.3");
    check_working(verdict(), START "tan=0;nitrite=0.6;hours=24");
    check_working(verdict(), START "tan=0.6;nitrite=0;hours=24");
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 64; corner++) {
        char line[240];
        (void)snprintf(line, sizeof line,
                       "volume=%s;start_tan=50;start_nitrite=50;tan=%s;nitrite=0;hours=%s;"
                       "kit_step=%s;protein=%s;working_share=%s;temp=40;stock_temp=0",
                       corner & 1 ? "100000L" : "0.1L", corner & 2 ? "50" : "0",
                       corner & 4 ? "336" : "1", corner & 8 ? "0.5" : "0.001",
                       corner & 16 ? "90%" : "3%", corner & 32 ? "100%" : "1%");
        check(isfinite(ask_for(line, "capacity")));
        double passed = ask_for(line, "passed");
        check(isfinite(ask_for(line, "working_feed")) == (passed > 0));
        check(isfinite(ask_for(line, "feed")) == (passed > 0));
        check(isnan(ask_for(line, "hours_to_clear")) == !(corner & 2));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pass_or_not),       cmocka_unit_test(what_it_carries),
        cmocka_unit_test(no_pass_no_food),   cmocka_unit_test(food_goes_by_ammonia),
        cmocka_unit_test(food_at_the_limit), cmocka_unit_test(warmer_is_not_counted),
        cmocka_unit_test(every_note),        cmocka_unit_test(every_edge),
        cmocka_unit_test(workings),          cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
