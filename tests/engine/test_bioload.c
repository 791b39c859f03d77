/* test_bioload.c - the calculation bioload: worked loads, the limit it shares with ammonia, every
 * note. */
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

static const struct hw_calc *bioload(void)
{
    return find_calc("bioload");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(bioload(), line, &question, &answer);
    return result_of(bioload(), &answer, result);
}

#define BIRCH "volume=110L;feed=4g/d;protein=45%"
#define FISH  "volume=110L;biomass=60g;protein=45%"
#define RISE  "volume=110L;rise=0.3"
#define SEA   "ph=8.1;temp=25;salinity=34"
#define LIGHT "volume=110L;feed=1g/d;protein=45%"
#define WARM  ";temp=25;salinity=34"
#define PROOF ";cleared_from=2;cleared_to=0;cleared_in=24"

static void worked_loads(void **state)
{
    (void)state;
    assert_close(ask_for(BIRCH, "production"), 165.6, 0, 1e-14);
    assert_close(ask_for(BIRCH, "rise_per_day"), 165.6 / 110, 0, 1e-14);
    assert_close(ask_for(BIRCH, "alkalinity_used"), 2 * 165.6 / 110 / 14.007, 0, 1e-14);
    assert_close(ask_for(FISH, "production"), 60 * 0.02 * 0.45 * 92, 0, 1e-14);
    assert_close(ask_for(FISH ";ration=1.5%;factor=0.16", "production"), 60 * 0.015 * 0.45 * 160, 0,
                 1e-14);
    assert_close(ask_for(BIRCH ";dead=18g", "production"), 165.6 + 18 * 0.45 * 160, 0, 1e-14);
    assert_close(ask_for("volume=110L;feed=4g/d;protein=12%;dead=18g", "production"),
                 4 * 0.12 * 92 + 18 * 0.18 * 160, 0, 1e-14);
    assert_close(ask_for(BIRCH ";capacity=0.828g/d", "load_share"), 20, 0, 1e-14);
    assert_close(ask_for(BIRCH ";capacity=0.828g/d;left=40%", "load_share"), 50, 0, 1e-14);
    assert_close(ask_for("volume=110L;feed=500mg/d;protein=45%", "production"), 20.7, 0, 1e-14);
    assert_close(ask_for(BIRCH ";limit=3", "hours_to_limit"), 24 * 3 * 110 / 165.6, 0, 1e-14);
    assert_close(ask_for(BIRCH ";limit=3", "share_a_day"), 100 * 165.6 / 110 / 3, 0, 1e-14);
}

/* A rise of the keeper's own stands in for food, in the basis of his kit; what is dead comes on top
 * of it, with the least protein unless one is given. */
static void by_a_rise(void **state)
{
    (void)state;
    double rise = 0.3 * 14.007 / 18.039;
    assert_close(ask_for("volume=75L;rise=0.3", "rise_per_day"), 0.3, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;basis=nh4", "rise_per_day"), rise, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;basis=nh4", "production"), 75 * rise, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;dead=6g", "production"), 22.5 + 6 * 0.18 * 160, 0,
                 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;dead=6g;protein=48%", "production"),
                 22.5 + 6 * 0.48 * 160, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;capacity=150;left=60%", "load_share"), 25, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;limit=0.5", "hours_to_limit"), 40, 0, 1e-14);
    assert_close(ask_for("volume=75L;rise=0.3;limit=0.5", "share_a_day"), 60, 0, 1e-14);
    check_working(bioload(), "volume=75L;rise=0.3;basis=nh4;dead=6g;capacity=150;left=60%");
    check_working(bioload(), "volume=75L;rise=0.3;basis=nh3;dead=6g;protein=48%;limit=0.5");
}

/* Where the load rests goes by the ammonia of the challenge, half a step of the kit at the least,
 * in the basis of the kit. What the rows of reference do not say of it, ahead's tests do. */
static void a_proven_filter(void **state)
{
    (void)state;
    double rate = 165.6 / 110 / 24;
    double vmax = (1.875 + log(16)) / 24;
    assert_close(ask_for(BIRCH PROOF, "settles"), rate / (vmax - rate), 0, 1e-13);
    assert_close(ask_for(BIRCH ";cleared_from=2;cleared_to=0.3;cleared_in=24", "settles"),
                 rate / ((1.7 + log(2 / 0.3)) / 24 - rate), 0, 1e-13);
    vmax = (1.95 * 14.007 / 17.031 + 0.6 * log(40)) / 24;
    assert_close(ask_for(BIRCH PROOF ";basis=nh3;kit_step=0.1;half=0.6", "settles"),
                 0.6 * rate / (vmax - rate), 0, 1e-13);
    assert_close(ask_for(BIRCH PROOF ";basis=nh3;kit_step=0.1;half=0.6;left=50%", "settles"),
                 0.6 * rate / (0.5 * vmax - rate), 0, 1e-12);
}

/* Each result that may be absent, present and absent. */
static const struct {
    const char *result, *present, *absent;
} sometimes[] = {
    {"load_share", BIRCH ";capacity=220", BIRCH},
    {"load_share", BIRCH ";capacity=220;left=1%", BIRCH ";capacity=220;left=0%"},
    {"hours_to_limit", BIRCH ";limit=0.5", BIRCH},
    {"hours_to_limit", BIRCH ";" SEA, BIRCH ";ph=8.1;temp=25"},
    {"hours_to_limit", BIRCH ";" SEA, BIRCH ";ph=8.1;salinity=34"},
    {"hours_to_limit", BIRCH ";" SEA, BIRCH ";temp=25;salinity=34"},
    {"hours_to_limit", BIRCH ";limit=0.5", "volume=110L;feed=0g/d;protein=45%;limit=0.5"},
    {"settles", BIRCH PROOF, BIRCH},
    {"settles", BIRCH PROOF, BIRCH PROOF ";left=0%"},
    {"settles_low", BIRCH PROOF, BIRCH PROOF ";left=30%"},
    {"settles_high", BIRCH PROOF, "volume=110L;feed=9g/d;protein=45%" PROOF},
    {"feed_for_limit", BIRCH PROOF ";limit=0.5", BIRCH PROOF},
    {"feed_for_limit", BIRCH PROOF ";limit=0.5", BIRCH ";limit=0.5"},
    {"feed_for_limit", RISE PROOF ";limit=0.5;protein=45%", RISE PROOF ";limit=0.5"},
    {"share_a_day", BIRCH ";limit=2", BIRCH ";limit=1.5"},
    {"share_a_day", "volume=110L;feed=0;protein=45%;limit=0.5", BIRCH},
};

static void absent_results(void **state)
{
    (void)state;
    keep_workings();
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check(isfinite(ask_for(sometimes[i].present, sometimes[i].result)));
        check(isnan(ask_for(sometimes[i].absent, sometimes[i].result)));
        check_working(bioload(), sometimes[i].present);
        check_working(bioload(), sometimes[i].absent);
    }
    assert_close(ask_for("volume=110L;feed=0;protein=45%;limit=0.5", "share_a_day"), 0, 0, 0);
    redo_workings();
}

/* The published limit is the one that ammonia tells, at every salinity. */
static void limit_is_that_of_ammonia(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    hw_random_start(20310602);
    for (int i = 0; i < 1000; i++) {
        char water[120];
        char line[200];
        double rise = 0.0625;
        double salinity = i % 3 ? hw_random_between(0, 45) : hw_random_between(0, 12);
        (void)snprintf(water, sizeof water, "ph=%.17g;temp=%.17g;salinity=%.17gg/kg",
                       hw_random_between(5, 10), hw_random_between(0, 40), salinity);
        (void)snprintf(line, sizeof line, "tan=1;%s", water);
        ask(find_calc("ammonia"), line, &question, &answer);
        double limit = result_of(find_calc("ammonia"), &answer, "tan_long");
        bool stretched = noted(find_calc("ammonia"), &answer, "criteria-stretched");
        bool jump = noted(find_calc("ammonia"), &answer, "criteria-jump");
        (void)snprintf(line, sizeof line, "volume=92L;feed=1g/d;protein=6.25%%;%s", water);
        ask(bioload(), line, &question, &answer);
        assert_close(result_of(bioload(), &answer, "hours_to_limit"), 24 * limit / rise, 0, 1e-13);
        check(noted(bioload(), &answer, "criteria-jump") == jump);
        /* ammonia looks at the limit for an hour too, which may be stretched alike */
        check(noted(bioload(), &answer, "criteria-stretched") == stretched);
    }
}

/* Changed every day by the share that is told, the level stays at or below the limit and comes to
 * it; without changes it is there after the hours that are told. Fish that get a ration are fish
 * that get that food. */
static void answers_do_what_they_say(void **state)
{
    (void)state;
    hw_random_start(20310603);
    int changed = 0;
    for (int i = 0; i < 500; i++) {
        char by_fish[240];
        char by_food[240];
        double volume = hw_random_between(20, 400);
        double biomass = hw_random_between(5, 400);
        double ration = hw_random_between(0.5, 4);
        double limit = hw_random_between(0.2, 4);
        double protein = hw_random_between(5, 60);
        (void)snprintf(by_fish, sizeof by_fish,
                       "volume=%.17gL;biomass=%.17gg;ration=%.17g%%;protein=%.17g%%;limit=%.17g",
                       volume, biomass, ration, protein, limit);
        (void)snprintf(by_food, sizeof by_food,
                       "volume=%.17gL;feed=%.17gg/d;protein=%.17g%%;limit=%.17g", volume,
                       biomass * ration / 100, protein, limit);
        double rise = ask_for(by_fish, "rise_per_day");
        assert_close(rise, ask_for(by_food, "rise_per_day"), 0, 1e-13);
        assert_close(rise * volume, ask_for(by_fish, "production"), 0, 1e-13);
        assert_close(rise * ask_for(by_fish, "hours_to_limit") / 24, limit, 0, 1e-13);
        double share = ask_for(by_fish, "share_a_day") / 100;
        check(isnan(share) == (rise > limit));
        if (share > 0.02) {
            double level = 0;
            for (int day = 0; day < 1500; day++) {
                level = level * (1 - share) + rise;
                check(level <= limit * (1 + 1e-9));
            }
            assert_close(level, limit, 0, 1e-9);
            changed++;
        }
    }
    check(changed > 100);
}

/* What verdict says that a filter carries is a quarter of its capacity here. */
static void working_feed_is_a_quarter(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    char line[160];
    ask(find_calc("verdict"), "volume=110L;start_tan=2.2;tan=0.1;nitrite=0.05;hours=23;protein=38%",
        &question, &answer);
    (void)snprintf(line, sizeof line, "volume=110L;feed=%.17gg/d;protein=38%%;capacity=%.17g",
                   result_of(find_calc("verdict"), &answer, "working_feed"),
                   result_of(find_calc("verdict"), &answer, "capacity"));
    assert_close(ask_for(line, "load_share"), 25, 0, 1e-14);
}

static const struct note_row notes[] = {
    {"load-over", BIRCH ";capacity=165.5", BIRCH ";capacity=165.6"},
    {"load-quarter", BIRCH ";capacity=662.3", BIRCH ";capacity=662.4"},
    {"load-quarter", BIRCH ";capacity=165.6", BIRCH ";capacity=165.5"},
    {"load-means", BIRCH ";capacity=662.4", BIRCH ";capacity=662.3"},
    {"load-over", BIRCH ";capacity=331.1;left=50%", BIRCH ";capacity=331.2;left=50%"},
    {"load-over", BIRCH ";capacity=662.4;left=0%", BIRCH},
    {"load-means", "volume=110L;feed=0;protein=45%;capacity=220;left=0%",
     BIRCH ";capacity=662.4;left=0%"},
    {"challenge-no-drop", RISE ";cleared_from=0.1;cleared_to=0;cleared_in=24", RISE PROOF},
    {"challenge-no-drop", RISE ";cleared_from=1;cleared_to=1;cleared_in=24", RISE},
    {"clears-fast", RISE ";cleared_from=9;cleared_to=0;cleared_in=8", RISE PROOF},
    {"clears-fast", RISE ";cleared_from=9;cleared_to=0;cleared_in=8", RISE},
    {"hours-few", RISE ";cleared_from=2;cleared_to=0;cleared_in=5.9", RISE PROOF},
    {"left-of-nothing", RISE ";left=40%", RISE PROOF ";left=40%"},
    {"left-of-nothing", RISE ";left=40%", RISE ";capacity=100;left=40%"},
    {"never-settles", BIRCH PROOF ";left=30%", BIRCH PROOF},
    {"never-settles", BIRCH PROOF ";left=0%", BIRCH ";left=0%"},
    {"settles-over-limit", BIRCH PROOF ";limit=0.4", BIRCH PROOF ";limit=0.5"},
    {"settles-over-limit", BIRCH PROOF ";limit=0.4", BIRCH PROOF},
    {"settles-unsure", BIRCH PROOF ";limit=0.5", BIRCH PROOF ";limit=0.51"},
    {"settles-unsure", "volume=110L;feed=9g/d;protein=45%" PROOF, BIRCH PROOF},
    {"settles-unsure", BIRCH PROOF ";limit=0.5", BIRCH PROOF ";limit=0.4"},
    {"settles-range", BIRCH PROOF, BIRCH},
    {"model-read", BIRCH PROOF, BIRCH},
    {"capacity-high", BIRCH ";capacity=2.65g/d", BIRCH ";capacity=2.63g/d"},
    {"capacity-high", BIRCH ";capacity=2.65g/d", BIRCH},
    {"sour-change", LIGHT ";ph=7.7" WARM, LIGHT ";ph=7.9" WARM},
    {"sour-change", LIGHT ";ph=7.7" WARM, BIRCH ";ph=7.7" WARM},
    {"sour-change", LIGHT ";ph=7.7;limit=2", LIGHT ";limit=2"},
    {"sour-change", LIGHT ";ph=7.7" WARM, LIGHT ";ph=7.7"},
    {"limit-unseen", LIGHT ";limit=0.26;ph=8.1;temp=25", LIGHT ";limit=0.25"},
    {"limit-unseen", LIGHT ";limit=0.26", LIGHT ";limit=0.26;" SEA},
    {"left-own", BIRCH ";capacity=220;left=99%", BIRCH ";capacity=220"},
    {"left-own", BIRCH ";capacity=220;left=0%", BIRCH},
    {"left-own", BIRCH PROOF ";left=99%", BIRCH PROOF},
    {"protein-unsaid", "volume=110L;feed=4g/d", BIRCH},
    {"protein-unsaid", "volume=110L;biomass=60g", FISH},
    {"protein-unsaid", "volume=110L;feed=4g/d;dead=3g", RISE},
    {"rise-own", RISE, BIRCH},
    {"capacity-unsaid", BIRCH, BIRCH ";capacity=662.5"},
    {"capacity-unsaid", BIRCH, BIRCH PROOF},
    {"limit-within-day", BIRCH ";limit=1.5", BIRCH ";limit=1.51"},
    {"limit-within-day", BIRCH ";" SEA, BIRCH},
    {"change-more-than-all", BIRCH ";limit=1.5", BIRCH ";limit=1.51"},
    {"change-more-than-all", BIRCH ";" SEA, BIRCH},
    {"change-steady", BIRCH ";limit=1.51", BIRCH ";limit=1.5"},
    {"change-steady", BIRCH ";limit=3", "volume=110L;feed=0;protein=45%;limit=3"},
    {"dead-in-water", BIRCH ";dead=0.1g", BIRCH ";dead=0g"},
    {"below-starved", "volume=110L;biomass=60g;ration=0.599%;protein=10%",
     "volume=110L;biomass=60g;ration=0.601%;protein=10%"},
    {"below-starved", "volume=110L;biomass=60g;ration=0.5%;protein=10%;dead=5g",
     "volume=110L;feed=0.01g/d;protein=10%"},
    {"nothing-given-off", "volume=110L;feed=0g/d;protein=45%",
     "volume=110L;feed=0g/d;protein=45%;dead=1g"},
    {"nothing-given-off", "volume=110L;feed=0g/d;protein=45%;" SEA, BIRCH},
    {"limit-over-published", BIRCH ";limit=0.51;" SEA, BIRCH ";limit=0.5;" SEA},
    {"limit-over-published", BIRCH ";limit=5;" SEA, BIRCH ";limit=5;ph=8.1;temp=25"},
    {"criteria-jump", BIRCH ";ph=8;temp=25;salinity=9.1", BIRCH ";ph=8;temp=25;salinity=11"},
    {"criteria-jump", BIRCH ";ph=8;temp=25;salinity=10.9", BIRCH ";ph=8;temp=25;salinity=9"},
    {"criteria-jump", BIRCH ";ph=8;temp=25;salinity=0.2", BIRCH ";ph=8;temp=25;salinity=0"},
    {"criteria-jump", BIRCH ";ph=8;temp=25;salinity=1.9",
     BIRCH ";ph=8;temp=25;salinity=1.9;limit=1"},
    {"criteria-stretched", BIRCH ";ph=8;temp=25;salinity=41", BIRCH ";ph=8;temp=25;salinity=40.8"},
    {"criteria-stretched", BIRCH ";ph=8;temp=31;salinity=5", BIRCH ";ph=8;temp=30;salinity=5"},
    {"criteria-stretched", BIRCH ";ph=9.1;temp=25;salinity=0", BIRCH ";ph=9;temp=25;salinity=0"},
    {"limit-unsaid", BIRCH, BIRCH ";ph=8"},
    {"limit-unsaid", BIRCH ";capacity=220", BIRCH ";limit=2"},
    {"limit-needs-ph", BIRCH ";temp=25", BIRCH ";ph=8"},
    {"limit-needs-ph", BIRCH ";salinity=34", BIRCH ";salinity=34;limit=2"},
    {"limit-needs-temp", BIRCH ";ph=8", BIRCH ";temp=25"},
    {"limit-needs-temp", BIRCH ";ph=8;salinity=34", BIRCH ";" SEA},
    {"limit-needs-salinity", BIRCH ";ph=8;temp=25", BIRCH ";" SEA},
    {"limit-needs-salinity", BIRCH ";ph=8", BIRCH},
    {"limit-own", BIRCH ";limit=2", BIRCH ";" SEA},
    {"limit-salt", BIRCH ";" SEA, BIRCH ";ph=8;temp=25;salinity=0.9"},
    {"limit-salt", BIRCH ";ph=8;temp=25;salinity=1g/kg", BIRCH ";limit=2;" SEA},
    {"limit-fresh", BIRCH ";ph=8;temp=25;salinity=9.9", BIRCH ";ph=8;temp=25;salinity=10"},
    {"ratio-stricter", BIRCH ";ph=8;temp=25;salinity=9.9", BIRCH ";ph=8;temp=25;salinity=10"},
    {"ratio-stricter", BIRCH ";ph=8;temp=25;salinity=1.1g/kg", BIRCH ";ph=8;temp=25;salinity=0.9"},
    {"limit-not-safe", BIRCH ";limit=2", BIRCH},
    {"limit-not-safe", BIRCH ";" SEA, BIRCH ";ph=8"},
    {"feed-figure", BIRCH, BIRCH ";factor=0.05"},
    {"feed-figure", FISH, RISE},
    {"factor-own", BIRCH ";factor=0.0921", BIRCH ";factor=0.092"},
    {"factor-own", BIRCH ";factor=0.0921", RISE ";factor=0.05"},
    {"ration-rough", FISH, BIRCH},
    {"ration-unused", BIRCH, FISH},
    {"ration-unused", BIRCH, RISE},
    {"protein-as-fed", BIRCH, RISE},
    {"no-filter-counted", BIRCH, NULL},
    {"peak-after-meal", BIRCH, BIRCH PROOF},
    {"alkalinity-eaten", BIRCH, NULL},
    {"ask-vet", BIRCH, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(bioload(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"load-over", ABOVE, 100, "capacity", "load_share", BIRCH ";capacity=165.6"},
    {"load-quarter", UP_TO, 100, "capacity", "load_share", BIRCH ";capacity=165.6"},
    {"load-quarter", ABOVE, 25, "capacity", "load_share", BIRCH ";capacity=662"},
    {"load-means", UP_TO, 25, "capacity", "load_share", BIRCH ";capacity=662"},
    {"load-over", ABOVE, 100, "left", "load_share", BIRCH ";capacity=662;left=25%"},
    {"clears-fast", ABOVE, 24.125, "cleared_from", NULL,
     RISE ";cleared_from=24;cleared_to=0;cleared_in=24"},
    {"hours-few", BELOW, 6, "cleared_in", NULL, RISE ";cleared_from=2;cleared_to=0;cleared_in=6"},
    {"settles-over-limit", ABOVE, 0.3, "feed", "settles", BIRCH PROOF ";limit=0.3"},
    {"settles-unsure", ABOVE, 0.3, "feed", "settles_high", BIRCH PROOF ";limit=0.3"},
    {"capacity-high", ABOVE, 24 * 110, "capacity", NULL, BIRCH ";capacity=2.64g/d"},
    {"sour-change", BELOW, 7.8, "ph", NULL, LIGHT ";ph=7.8" WARM},
    {"limit-unseen", ABOVE, 0.25, "limit", NULL, LIGHT ";limit=0.25"},
    {"left-own", BELOW, 100, "left", NULL, BIRCH ";capacity=662;left=100%"},
    {"limit-within-day", BELOW, 24, "limit", "hours_to_limit", BIRCH ";limit=1.5"},
    {"change-more-than-all", BELOW, 24, "limit", "hours_to_limit", BIRCH ";limit=1.5"},
    {"below-starved", BELOW, 0.06 * 2.3 * 24, "ration", "production",
     "volume=110L;biomass=60g;ration=0.6%;protein=10%"},
    {"criteria-jump", BELOW, 2, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=2"},
    {"criteria-jump", ABOVE, 9, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=9"},
    {"criteria-jump", BELOW, 11, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=11"},
    {"criteria-stretched", ABOVE, 40.9, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=40.9"},
    {"criteria-stretched", ABOVE, 30, "temp", NULL, BIRCH ";ph=8;temp=30;salinity=5"},
    {"criteria-stretched", ABOVE, 9, "ph", NULL, BIRCH ";ph=9;temp=25;salinity=0"},
    {"limit-salt", FROM, 1, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=1g/kg"},
    {"limit-fresh", BELOW, 10, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=10"},
    {"ratio-stricter", FROM, 1, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=1g/kg"},
    {"ratio-stricter", BELOW, 10, "salinity", NULL, BIRCH ";ph=8;temp=25;salinity=10"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(bioload(), edges, sizeof edges / sizeof edges[0]);
}

/* The published limit for days is the total that reaches it there. */
static void at_the_limits_of_ammonia(void **state)
{
    (void)state;
    const struct note_edge at[] = {

        {"limit-over-published", ABOVE, total_at("long_ratio", SEA), "limit", NULL,
         BIRCH ";limit=0.5;" SEA},
        {"limit-over-published", ABOVE, total_at("long_ratio", "ph=8;temp=25;salinity=0"), "limit",
         NULL, BIRCH ";limit=0.5;ph=8;temp=25;salinity=0"},
    };
    check_edges(bioload(), at, sizeof at / sizeof at[0]);
}

static void statuses(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(bioload(), BIRCH, &question, &answer);
    assert_status(answer.status, 0);
    ask(bioload(), BIRCH ";ph=8;temp=31;salinity=5", &question, &answer);
    assert_status(answer.status, 1);
    ask(bioload(), "volume=110L;feed=4g/d", &question, &answer);
    assert_status(answer.status, -1);
    size_t which = 0;
    assert_int_equal(ask_settle(bioload(), "volume=110L", &question, &which),
                     HW_PROBLEM_NONE_OF_GROUP);
    assert_int_equal(ask_settle(bioload(), BIRCH ";rise=0.3", &question, &which),
                     HW_PROBLEM_MANY_OF_GROUP);
    assert_int_equal(ask_settle(bioload(), BIRCH ";cleared_to=0", &question, &which),
                     HW_PROBLEM_OUT_OF_PLACE);
    assert_int_equal(ask_settle(bioload(), BIRCH ";cleared_from=2", &question, &which),
                     HW_PROBLEM_MISSING);
    check(ask_settle(bioload(), "volume=110L;rise=0", &question, &which) != HW_FINE);
}

/* The stricter of the two limits is taken on either side of where they cross. */
static void stricter_of_two(void **state)
{
    (void)state;
    keep_workings();
    static const char *const lines[] = {BIRCH ";ph=6.6;temp=25;salinity=5",
                                        BIRCH ";ph=8.6;temp=25;salinity=5"};
    for (size_t i = 0; i < 2; i++) {
        char salt[120];
        char fresh[120];
        size_t stem = strlen(lines[i]) - 1;
        (void)snprintf(salt, sizeof salt, "%.*s%s", (int)stem, lines[i], "10");
        (void)snprintf(fresh, sizeof fresh, "%.*s%s", (int)stem, lines[i], "0.9");
        double both = ask_for(lines[i], "hours_to_limit");
        check(both <= ask_for(fresh, "hours_to_limit"));
        /* at 10 g/kg the salt-water constant alone moves the total by a few per cent */
        check(both <= ask_for(salt, "hours_to_limit") * 1.1);
        check_working(bioload(), lines[i]);
    }
    redo_workings();
}

static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const results[] = {"production", "rise_per_day", "load_share",
                                          "hours_to_limit", "alkalinity_used"};
    for (unsigned corner = 0; corner < 256; corner++) {
        char line[240];
        (void)snprintf(line, sizeof line,
                       "volume=%s;%s;ration=%s;protein=%s;factor=%s;dead=%s;capacity=%s;limit=%s",
                       corner & 1 ? "1e5L" : "0.1L",
                       corner & 2   ? corner & 4 ? "biomass=5e5g" : "biomass=0.01g"
                       : corner & 4 ? "feed=1e5g/d"
                                    : "feed=1e-5g/d",
                       corner & 8 ? "20%" : "0.01%", corner & 16 ? "90%" : "3%",
                       corner & 32 ? "0.16" : "0.03", corner & 64 ? "1e5g" : "0g",
                       corner & 128 ? "1e8" : "0.1", corner & 128 ? "100" : "0.01");
        for (size_t i = 0; i < sizeof results / sizeof results[0]; i++) {
            if (!isfinite(ask_for(line, results[i]))) {
                fail_msg("%s by %s", results[i], line);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(worked_loads),
        cmocka_unit_test(by_a_rise),
        cmocka_unit_test(a_proven_filter),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(limit_is_that_of_ammonia),
        cmocka_unit_test(answers_do_what_they_say),
        cmocka_unit_test(working_feed_is_a_quarter),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(at_the_limits_of_ammonia),
        cmocka_unit_test(statuses),
        cmocka_unit_test(stricter_of_two),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
