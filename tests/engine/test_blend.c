/* test_blend.c - the calculation blend: the states of a mixture, every note. */
#include "assert_close.h"
#include "engine/working.h"
#include "holdwater/ammonia.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *blend(void)
{
    return find_calc("blend");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(blend(), line, &question, &answer);
    return result_of(blend(), &answer, result);
}

#define SEA    ";temp=25;salinity=34;new_temp=25;new_salinity=34"
#define TANK   "volume=100L;ph=7.4;tan=2"
#define FRESH  ";new_ph=8.2"
#define KNOWN  ";alkalinity=1meq/L;new_alkalinity=2.4meq/L"
#define SOUR   TANK KNOWN FRESH SEA ";share=25%"
#define UNSAID TANK FRESH SEA ";share=25%"
#define CALM                                                                                       \
    "volume=100L;ph=8.25;alkalinity=2.4meq/L;new_alkalinity=2.4meq/L;tan=0.1;share=25%" FRESH SEA
#define AT   TANK FRESH ";share=50%;new_temp=25;new_salinity=34"
#define WEAK "volume=100L;share=50%;tan=2;ph=7.4;new_ph=8.2;temp=25;new_temp=25"
#define THIN                                                                                       \
    "volume=100L;share=50%;ph=7.4;new_ph=8.2;"                                                     \
    "temp=25;new_temp=25;salinity=9;new_salinity=9"
#define STILL   "volume=100L;share=50%"
#define SALT    "temp=25;salinity=34;new_temp=25;new_salinity=34"
#define THINNED "temp=25;salinity=0.5;new_temp=25;new_salinity=0.5"
#define STEEP   "volume=100L;share=50%;tan=1;new_ph=7;temp=25;new_temp=25;salinity=34"
#define STEP                                                                                       \
    "volume=100L;share=50%;ph=7.7;alkalinity=2.2meq/L;new_alkalinity=2.2meq/L" SEA ";new_ph="

/* Of the right pH, with too much ammonia; with so little, in balance with air, that no change is
 * needed; and a change that leaves free ammonia a little above what it was. */
#define OVER "volume=75L;tan=1.5;ph=8.1;alkalinity=2.3meq/L;new_ph=8.2;new_alkalinity=2.4meq/L" SEA
#define IDLE "volume=75L;tan=0.2;ph=8.2;alkalinity=2.4meq/L;new_ph=8.2;new_alkalinity=2.4meq/L" SEA
#define NEARLY                                                                                     \
    "volume=75L;tan=0.3;ph=8;alkalinity=2.2meq/L;new_ph=8.2;new_alkalinity=2.4meq/L;share=27%" SEA

/* Less carbon dioxide in the tank than in the air. */
#define GASSY                                                                                      \
    "volume=100L;ph=8.4;alkalinity=2.4meq/L;new_alkalinity=2.4meq/L;tan=0.5;share=75%" FRESH SEA   \
    ";air_co2="

#define ACID                                                                                       \
    "volume=100L;share=50%;ph=5.5;new_ph=5.5;alkalinity=0meq/L;new_alkalinity=0meq/L;temp=25;"     \
    "salinity=0;new_temp=25;new_salinity=0"

static const char *const states[] = {"ph_after",   "ph_same_co2",   "ph_aired",
                                     "free_after", "free_same_co2", "free_aired"};
static const char *const always[] = {"temp_after",    "salinity_after", "temp_step",
                                     "salinity_step", "tan_after",      "free_before"};

static void results_and_their_absence(void **state)
{
    (void)state;
    static const char *const unknown[] = {UNSAID, UNSAID ";alkalinity=1meq/L",
                                          UNSAID ";new_alkalinity=2.4meq/L"};
    for (size_t i = 0; i < sizeof states / sizeof states[0]; i++) {
        check(isfinite(ask_for(SOUR, states[i])));
        for (size_t k = 0; k < sizeof unknown / sizeof unknown[0]; k++) {
            assert_no_answer(ask_for(unknown[k], states[i]));
            check(ask_for(unknown[k], "free_worst") > 0);
        }
    }
    assert_no_answer(ask_for(SOUR, "free_worst"));
    for (size_t i = 0; i < sizeof always / sizeof always[0]; i++) {
        check(isfinite(ask_for(SOUR, always[i])) && isfinite(ask_for(UNSAID, always[i])));
        check(isnan(ask_for(TANK FRESH SEA ";take=101L", always[i])));
    }
    /* a share, or what is taken; a basis */
    assert_close(ask_for(TANK KNOWN FRESH SEA ";take=25L", "free_aired"),
                 ask_for(SOUR, "free_aired"), 0, 1e-14);
    assert_close(ask_for(UNSAID ";basis=nh3", "tan_after"), 1.5, 0, 1e-12);
    assert_close(ask_for(UNSAID ";basis=nh4;new_tan=2", "tan_after"), 2, 0, 1e-12);
    assert_close(ask_for(UNSAID ";basis=nh3", "free_worst"),
                 ask_for(UNSAID, "free_worst") * 14.007 / 17.031, 0, 1e-12);
    /* all of it is the new water; its pH is what the meter said */
    assert_close(ask_for(TANK KNOWN FRESH SEA ";share=100%", "ph_after"), 8.2, 1e-9, 0);
    assert_close(ask_for(TANK KNOWN FRESH SEA ";share=100%", "tan_after"), 0, 0, 0);
}

/* Without the alkalinities: at the higher pH, and at 0.15 more where the salinities are apart,
 * which is by more than 2 g/kg. */
static void the_worst(void **state)
{
    (void)state;
    assert_close(ask_for(UNSAID, "free_worst"), 1.5 / (1 + pow(10, 9.34972171 - 8.2)), 0, 1e-8);
    double near = ask_for(WEAK ";salinity=34;new_salinity=32", "free_worst");
    assert_close(ask_for(WEAK ";salinity=34;new_salinity=32.0000002", "free_worst"), near, 0, 1e-7);
    check(ask_for(WEAK ";salinity=34;new_salinity=31.9999998", "free_worst") > 1.3 * near);
    static const char *const apart = WEAK ";salinity=34;new_salinity=31.9";
    double pk = NAN;
    double fraction = ask_for(apart, "free_worst") / ask_for(apart, "tan_after");
    check(hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, 25, ask_for(apart, "salinity_after"),
                        &pk) >= 0);
    assert_close(pk - log10(1 / fraction - 1), 8.2 + 0.15, 1e-11, 0);
}

static const struct note_row notes[] = {
    {"fit-stretched", WEAK KNOWN ";salinity=22;new_salinity=15",
     WEAK ";salinity=22;new_salinity=15"},
    {"fit-stretched", AT ";temp=4;salinity=34", SOUR},
    {"fit-stretched", AT KNOWN ";temp=4;salinity=34", SOUR},
    {"fit-stretched", AT ";temp=45F;salinity=0.5;alkalinity=1meq/L;new_alkalinity=2.4meq/L", SOUR},
    {"fit-stretched", WEAK KNOWN ";salinity=12;new_salinity=34", SOUR},
    {"fit-stretched", WEAK KNOWN ";salinity=34;new_salinity=4", SOUR},
    {"above-fit", AT ";temp=25;salinity=42.5", AT ";temp=25;salinity=42"},
    {"salt-step-down", WEAK ";salinity=34;new_salinity=23.8", WEAK ";salinity=34;new_salinity=24"},
    {"salt-step-up", AT ";temp=25;salinity=31.9", AT ";temp=25;salinity=32.1"},
    {"blend-over-volume", TANK FRESH SEA ";take=101L", TANK FRESH SEA ";take=100L"},
    {"ph-not-alkalinity",
     "volume=100L;share=50%;ph=9.5;alkalinity=0.1meq/L;new_alkalinity=2meq/L" FRESH SEA, SOUR},
    {"ph-not-alkalinity",
     "volume=100L;share=50%;ph=8;alkalinity=2meq/L;new_alkalinity=0.1meq/L;new_ph=9.5" SEA, SOUR},
    {"blend-over-ph", STEEP ";ph=9.9;new_salinity=31", STEEP ";ph=9.8;new_salinity=31"},
    {"blend-over-ph", STEEP ";ph=9.9;new_salinity=31", STEEP ";ph=9.9;new_salinity=33"},
    {"fit-stretched",
     "volume=100L;share=90%;ph=7.4;new_ph=8;temp=6;new_temp=2;salinity=34;new_salinity=34",
     "volume=100L;share=10%;ph=7.4;new_ph=8;temp=6;new_temp=2;salinity=34;new_salinity=34"},
    {"blend-over-ph", ACID ";air_co2=10000", ACID},
    {"fit-stretched", WEAK KNOWN ";salinity=0.5;new_salinity=9", SOUR},
    {"blend-frees", UNSAID, CALM},
    {"blend-frees", UNSAID, SOUR ";new_tan=2"},
    {"blend-frees", UNSAID, SOUR},
    {"blend-frees", UNSAID, TANK KNOWN FRESH SEA ";share=95%"},
    /* free ammonia rises, and the change is one that does it all the same */
    {"blend-frees", UNSAID, NEARLY},
    {"blend-no-help", SOUR, TANK KNOWN FRESH SEA ";share=95%"},
    {"blend-no-help", SOUR, NEARLY},
    {"blend-no-help", SOUR, OVER ";share=25%"},
    {"blend-short", OVER ";share=25%", SOUR},
    {"blend-short", OVER ";share=25%", OVER ";share=85%"},
    {"blend-short", OVER ";share=25%", OVER},
    {"blend-none-does", SOUR ";new_tan=2", SOUR},
    {"blend-none-does", TANK KNOWN FRESH SEA ";new_tan=2", TANK KNOWN FRESH SEA},
    {"blend-none-does", TANK KNOWN FRESH SEA ";tan=0;new_tan=0.1", SOUR},
    {"blend-none-needed", IDLE, OVER},
    {"blend-none-needed", IDLE ";alkalinity=2.6meq/L", IDLE ";share=25%"},
    {"blend-none-needed", IDLE, IDLE ";new_tan=2"},
    {"blend-large", TANK KNOWN FRESH SEA, OVER},
    {"blend-large", TANK KNOWN FRESH SEA, TANK KNOWN FRESH SEA ";share=95%"},
    {"blend-no-share", TANK FRESH SEA, TANK KNOWN FRESH SEA},
    {"blend-no-share", TANK KNOWN FRESH SEA ";tan=0", UNSAID},
    {"over-limit-salt", OVER ";share=85%", OVER},
    {"ph-not-alkalinity",
     "volume=100L;tan=1;ph=9.5;alkalinity=0.1meq/L;new_alkalinity=2meq/L" FRESH SEA,
     TANK KNOWN FRESH SEA},
    {"blend-ph-sour", TANK KNOWN FRESH SEA, TANK KNOWN FRESH SEA ";new_tan=2"},
    {"blend-ph-step", STEP "8.23", STEP "8.22"},
    {"blend-ph-step", STEP "7.13", STEP "7.15"},
    {"blend-ph-step", "volume=100L;ph=7.4;share=25%" FRESH SEA, UNSAID},
    {"blend-ph-step", "volume=100L;ph=7.9;share=25%" FRESH SEA,
     "volume=100L;ph=7.91;share=25%" FRESH SEA},
    {"blend-ph-step", "volume=100L;ph=7.4;tan=2;new_ph=7;share=25%" SEA,
     TANK KNOWN FRESH SEA ";share=95%"},
    /* a large change thins more than the pH frees, and is not to be split either */
    {"blend-ph-sour", TANK KNOWN FRESH SEA ";share=95%", "volume=100L;ph=7.4;share=25%" FRESH SEA},
    {"blend-ph-sour", UNSAID, "volume=100L;ph=7.9;tan=2;share=25%" FRESH SEA},
    {"blend-ph-sour", UNSAID, "volume=100L;ph=7.4;tan=2;new_ph=7;share=25%" SEA},
    {"blend-ph-sour", UNSAID, "volume=100L;ph=7.4;tan=2;new_ph=7.6;share=25%" SEA},
    {"blend-no-tan", "volume=100L;ph=7.4;share=25%" FRESH SEA, UNSAID},
    {"blend-no-tan", "volume=100L;ph=7.4;share=25%;tan=0;new_tan=0" FRESH SEA,
     "volume=100L;ph=7.4;share=25%;new_tan=0.00001" FRESH SEA},
    {"blend-hour-salt", STILL ";tan=8;ph=8.2;new_ph=8.2;" SALT,
     "volume=100L;share=90%;tan=8;ph=8.2;new_ph=8.2;" SALT},
    {"blend-hour-fresh", STILL ";tan=8;ph=8.2;new_ph=8.2;" THINNED,
     "volume=100L;share=90%;tan=8;ph=8.2;new_ph=8.2;" THINNED},
    {"blend-hour-salt", STILL ";tan=8;ph=8.2;new_ph=8.2;" SALT, SOUR},
    {"blend-frees-back", GASSY "1500", GASSY "100"},
    {"blend-frees-back", GASSY "1500", SOUR},
    {"blend-frees-later", GASSY "100", GASSY "1500"},
    {"blend-ph-step", "volume=100L;ph=7.9;share=25%" FRESH SEA, CALM},
    {"blend-ph-step", "volume=100L;ph=8.5;share=25%" FRESH SEA, CALM},
    {"blend-frees-later", SOUR,
     "volume=100L;ph=8.1;alkalinity=2.4meq/L;new_alkalinity=2.4meq/"
     "L;tan=0.1;share=25%;air_co2=1500" FRESH SEA},
    {"blend-frees-later", SOUR, UNSAID},
    {"blend-brings-ammonia", SOUR ";new_tan=2.1", SOUR ";new_tan=2"},
    {"over-limit-salt", SOUR, CALM},
    {"over-limit-salt", UNSAID, WEAK ";salinity=0.9;new_salinity=0.9"},
    {"over-limit-fresh", WEAK ";salinity=0.9;new_salinity=0.9", UNSAID},
    {"over-limit-salt", THIN ";tan=8", THIN ";tan=0.1"},
    {"over-limit-fresh", THIN ";tan=8", THIN ";tan=0.1"},
    {"blend-warms", AT ";temp=20.9;salinity=34", AT ";temp=21.1;salinity=34"},
    {"blend-cools", AT ";temp=27.1;salinity=34", AT ";temp=26.9;salinity=34"},
    {"carbonate-fresh", AT ";temp=25;salinity=4.9", AT ";temp=25;salinity=5"},
    {"carbonate-fresh", WEAK ";salinity=34;new_salinity=4.9", WEAK ";salinity=34;new_salinity=5"},
    {"blend-co2-odd",
     "volume=100L;share=25%;ph=9;alkalinity=2.4meq/L;new_alkalinity=2.4meq/L" FRESH SEA, SOUR},
    {"blend-co2-odd",
     "volume=100L;share=25%;ph=6;alkalinity=2.4meq/L;new_alkalinity=2.4meq/L" FRESH SEA, UNSAID},
    {"blend-states", SOUR, UNSAID},
    {"blend-worst", UNSAID, SOUR},
    {"blend-worst", UNSAID ";alkalinity=1meq/L", SOUR},
    {"blend-measure", SOUR, TANK FRESH SEA ";take=101L"},
    {"ask-vet", SOUR, NULL},
    {"ask-vet", TANK FRESH SEA ";take=101L", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(blend(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"blend-frees", ABOVE, 1.01, "new_ph", "free_worst/free_before", UNSAID},
    {"blend-no-help", ABOVE, 1.05, "air_co2", "free_aired/free_before",
     TANK SEA ";alkalinity=1meq/L;new_ph=7.4;new_alkalinity=1meq/L;share=25%;air_co2=1300"},
    {"blend-large", ABOVE, 75, "tan", "share_needed", OVER},
    {"blend-frees-later", ABOVE, 1.01, "ph", "free_aired/free_after", SOUR},
    {"blend-frees-back", ABOVE, 1.01, "new_ph", "free_same_co2/free_after", GASSY "1500"},
    {"blend-ph-sour", BELOW, 7.8, "ph", NULL, STILL ";tan=2;ph=7.8;new_ph=8.3;" SALT},
    {"blend-ph-sour", FROM, 7.7, "new_ph", NULL, STILL ";tan=2;ph=7.4;new_ph=7.7;" SALT},
    {"blend-brings-ammonia", ABOVE, 2, "new_tan", NULL, SOUR ";new_tan=2"},
    {"blend-ph-step", FROM, 8.0, "new_ph", "ph_after", STEP "8.22"},
    {"blend-ph-step", UP_TO, 7.4, "new_ph", "ph_after", STEP "7.14"},
    {"blend-ph-step", FROM, 8.2, "new_ph", NULL, "volume=100L;ph=7.9;share=25%" FRESH SEA},
    {"blend-ph-step", UP_TO, 8.2, "new_ph", NULL, "volume=100L;ph=8.5;share=25%" FRESH SEA},
    {"blend-warms", ABOVE, 2, "new_temp", "temp_step", AT ";temp=21;salinity=34"},
    {"blend-cools", BELOW, -1, "new_temp", "temp_step", AT ";temp=27;salinity=34"},
    {"salt-step-up", ABOVE, 1, "new_salinity", "salinity_step", AT ";temp=25;salinity=32"},
    {"salt-step-down", BELOW, -5, "new_salinity", "salinity_step",
     WEAK ";salinity=34;new_salinity=24"},
    {"carbonate-fresh", BELOW, 5, "salinity", NULL, AT ";temp=25;salinity=5"},
    {"carbonate-fresh", BELOW, 5, "new_salinity", NULL, WEAK ";salinity=34;new_salinity=5"},
    {"above-fit", ABOVE, 42, "salinity", NULL, AT ";temp=25;salinity=42"},
    {"fit-stretched", BELOW, 5, "temp", NULL, AT ";temp=5;salinity=34"},
    {"blend-over-volume", ABOVE, 100, "take", NULL, TANK FRESH SEA ";take=100L"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(blend(), edges, sizeof edges / sizeof edges[0]);
}

/* The limit for days is that of the tank before, and of the mixture at the highest pH. */
static void at_the_limits_of_ammonia(void **state)
{
    (void)state;
    double salt = total_at("long_ratio", "ph=8.2;temp=25;salinity=34");
    double fresh = total_at("long_ratio", "ph=8.2;temp=25;salinity=0.5");
    double hour_salt = total_at("short_ratio", "ph=8.2;temp=25;salinity=34");
    double hour_fresh = total_at("short_ratio", "ph=8.2;temp=25;salinity=0.5");
    const struct note_edge at[] = {

        {"over-limit-salt", ABOVE, salt, "tan", NULL, STILL ";tan=0.5;ph=8.2;new_ph=7.6;" SALT},
        {"over-limit-salt", ABOVE, salt, "new_tan", "tan_after",
         STILL ";tan=0;new_tan=1;ph=7.6;new_ph=8.2;" SALT},
        {"over-limit-fresh", ABOVE, fresh, "tan", NULL,
         STILL ";tan=0.5;ph=8.2;new_ph=7.6;" THINNED},
        {"over-limit-fresh", ABOVE, fresh, "new_tan", "tan_after",
         STILL ";tan=0;new_tan=1;ph=7.6;new_ph=8.2;" THINNED},
        {"blend-hour-salt", ABOVE, hour_salt, "new_tan", "tan_after",
         STILL ";tan=0;new_tan=6;ph=7.6;new_ph=8.2;" SALT},
        {"blend-hour-fresh", ABOVE, hour_fresh, "new_tan", "tan_after",
         STILL ";tan=0;new_tan=6;ph=7.6;new_ph=8.2;" THINNED},
    };
    check_edges(blend(), at, sizeof at / sizeof at[0]);
}

static void workings(void **state)
{
    (void)state;
    check_working(blend(), SOUR);
    check_working(blend(), UNSAID);
    check_working(blend(),
                  "volume=110L;take=7gal;tan=0.8;basis=nh4;ph=7.7;alkalinity=4dKH;temp=78F;"
                  "salinity=33;new_tan=0.1;new_ph=8.1;new_alkalinity=7dKH;"
                  "new_temp=74F;new_salinity=35;air_co2=800");
}

/* The proof of the change that is needed is of that change, whatever change was asked about: its
 * worst ratio is 1, or just below, where a limit decides. */
static void proof_of_what_is_needed(void **state)
{
    (void)state;
    static struct hw_steps steps;
    static const char *const asked[] = {"", ";take=9L", ";share=55%"};
    for (size_t i = 0; i < 3; i++) {
        struct hw_question question;
        struct hw_answer answer;
        char line[300];
        double worst = NAN;
        (void)snprintf(line, sizeof line,
                       "volume=75L;tan=1.5;ph=7.9;alkalinity=2meq/L;temp=25;salinity=34;"
                       "new_ph=8.2;new_alkalinity=2.4meq/L;new_temp=25;new_salinity=34%s",
                       asked[i]);
        ask(blend(), line, &question, &answer);
        steps.n = 0;
        blend()->work(question.in, &steps);
        for (size_t k = 0; k < steps.n; k++) {
            worst = strcmp(steps.step[k].symbol, "worst_ratio") == 0 ? steps.step[k].value : worst;
        }
        assert_close(worst, 1, 1e-6, 0);
    }
}

/* At the upper ends of both waters the mixture, which is a little denser than their mean, has an
 * answer still. */
static void at_the_upper_ends(void **state)
{
    (void)state;
    static const char line[] =
        "volume=100L;share=50%;tan=200;new_tan=200;ph=7.4;alkalinity=10meq/L;temp=25;salinity=0;"
        "new_ph=8.2;new_alkalinity=10meq/L;new_temp=25;new_salinity=45";
    struct hw_question question;
    struct hw_answer answer;
    ask(blend(), line, &question, &answer);
    check(answer.status >= 0 && result_of(blend(), &answer, "tan_after") > 200);
    check(isfinite(result_of(blend(), &answer, "free_after")));
    check(isfinite(result_of(blend(), &answer, "free_aired")));
    /* what is odd is the tank's carbon dioxide alone: it holds more than 10000 uatm */
    check(noted(blend(), &answer, "blend-co2-odd"));
    ask(blend(),
        "volume=100L;share=50%;tan=200;new_tan=200;ph=7.9;alkalinity=10meq/L;temp=25;salinity=0;"
        "new_ph=8.2;new_alkalinity=10meq/L;new_temp=25;new_salinity=45",
        &question, &answer);
    check(!noted(blend(), &answer, "blend-co2-odd"));
    check(isfinite(result_of(blend(), &answer, "free_same_co2")));
}

/* Changes worked out elsewhere, with the same set of constants written anew: sea water of 34 g/kg
 * and 25 C; new water of pH 8.2 and 2.4 meq/L. The shares are whole per cents, and whether rounded
 * or cut off was not told: one to either side of each, what is told of it is passed. */
static void changes_worked_out_elsewhere(void **state)
{
    (void)state;
    static const struct {
        const char *line, *result;
        double share, at; /* at: mg/L as N; 0: what it was before */
    } rows[] = {
        {"tan=2;ph=7.2;alkalinity=0.7meq/L", "free_after", 88, 0},
        {"tan=2;ph=7.2;alkalinity=0.7meq/L", "free_aired", 88, 0},
        {"tan=2;ph=7.4;alkalinity=1meq/L", "free_after", 80, 0},
        {"tan=2;ph=7.4;alkalinity=1meq/L", "free_aired", 81, 0},
        {"tan=2;ph=7.6;alkalinity=1.4meq/L", "free_after", 65, 0},
        {"tan=2;ph=7.6;alkalinity=1.4meq/L", "free_aired", 69, 0},
        {"tan=2;ph=7.8;alkalinity=1.8meq/L", "free_after", 28, 0},
        {"tan=2;ph=7.8;alkalinity=1.8meq/L", "free_aired", 52, 0},
        {"tan=2;ph=8;alkalinity=2.2meq/L", "free_aired", 29, 0},
        {"tan=2;ph=7.2;alkalinity=2.4meq/L", "free_after", 87, 0},
        {"tan=2;ph=7.2;alkalinity=2.4meq/L", "free_aired", 89, 0},
        {"tan=2;ph=7.6;alkalinity=2.4meq/L", "free_aired", 72, 0},
        {"tan=2;ph=8;alkalinity=2.4meq/L", "free_aired", 32, 0},
        /* 0.035 mg NH3/L by the constant of the answer, not by that behind the limit */
        {"tan=1.5;ph=8.1;alkalinity=2.3meq/L", "free_aired", 69, 0.0288},
        {"tan=1.5;ph=7.2;alkalinity=0.7meq/L", "free_aired", 60, 0.0288},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        for (int side = -1; side <= 1; side += 2) {
            char line[200];
            (void)snprintf(line, sizeof line,
                           "volume=100L;%s;new_ph=8.2;new_alkalinity=2.4meq/L" SEA ";share=%.1f%%",
                           rows[i].line, rows[i].share + side);
            double at = rows[i].at > 0 ? rows[i].at : ask_for(line, "free_before");
            check((ask_for(line, rows[i].result) - at) * side < 0);
        }
    }
}

/* How far a change is from what is asked of it, by the results told of it and the limit that
 * `ammonia` tells. */
static double worst_of(const char *line)
{
    static const char *const ph[] = {"ph_after", "ph_aired"};
    static const char *const free[] = {"free_after", "free_aired"};
    double worst = 0;
    for (int i = 0; i < 2; i++) {
        char water[100];
        (void)snprintf(water, sizeof water, "ph=%.15g;temp=%.15g;salinity=%.15gg/kg",
                       ask_for(line, ph[i]), ask_for(line, "temp_after"),
                       ask_for(line, "salinity_after"));
        double limit = total_at("long_ratio", water);
        double free_ratio = ask_for(line, free[i]) / (1.05 * ask_for(line, "free_before"));
        worst = fmax(worst, fmax(ask_for(line, "tan_after") / limit, free_ratio));
    }
    return worst;
}

/* What is needed does it, and all that is more; a little less does not. Salinities that lie apart
 * have a limit that jumps between them. */
static void what_is_needed(void **state)
{
    (void)state;
    size_t found = 0;
    size_t none = 0;
    size_t settled = 0;
    hw_random_start(20310307);
    for (int i = 0; i < 300; i++) {
        char line[400];
        double tan = i % 5 == 0 ? hw_random_between(0.01, 0.1) : hw_random_between(0.05, 4);
        double ph = i % 5 == 0 ? hw_random_between(8, 8.3) : hw_random_between(6.9, 8.3);
        double alkalinity = hw_random_between(0.8, 3);
        double temp = hw_random_between(18, 30);
        double salt = hw_random_between(0, 36);
        double new_tan = i % 4 == 0 ? hw_random_between(0, 0.3) : 0;
        double new_ph = hw_random_between(7.6, 8.3);
        double new_alkalinity = hw_random_between(1.5, 3);
        double new_temp = hw_random_between(18, 30);
        double new_salt = i % 3 == 0 ? hw_random_between(0, 36) : salt;
        int n = snprintf(line, sizeof line,
                         "volume=75L;tan=%.6f;ph=%.6f;alkalinity=%.6fmeq/L;temp=%.6f;salinity="
                         "%.6fg/kg;new_tan=%.6f;new_ph=%.6f;new_alkalinity=%.6fmeq/L;new_temp=%.6f;"
                         "new_salinity=%.6fg/kg",
                         tan, ph, alkalinity, temp, salt, new_tan, new_ph, new_alkalinity, new_temp,
                         new_salt);
        double needed = ask_for(line, "share_needed");
        found += needed > 0 ? 1 : 0;
        settled += needed == 0 ? 1 : 0;
        none += isnan(needed) ? 1 : 0;
        if (isnan(needed)) {
            (void)snprintf(line + n, sizeof line - (size_t)n, ";share=100%%");
            check(worst_of(line) > 1);
            continue;
        }
        assert_close(ask_for(line, "water_needed"), needed * 0.75, 0, 1e-12);
        for (double more = 0; needed + more <= 100; more += 100.0 / 61) {
            (void)snprintf(line + n, sizeof line - (size_t)n, ";share=%.12f%%",
                           fmax(needed + more, 0.01));
            check(worst_of(line) <= 1 + 1e-6);
        }
        if (needed > 0.1) {
            (void)snprintf(line + n, sizeof line - (size_t)n, ";share=%.12f%%", needed - 0.001);
            check(worst_of(line) > 1);
        }
    }
    (void)printf("%zu found, %zu where none is needed, %zu where none does it\n", found, settled,
                 none);
    assert_true(found > 150 && settled > 10 && none > 10);
}

/* Whichever of two waters is called the tank, the mixture is the same; more carbon dioxide in the
 * air is less free ammonia; and with as many waters as there are, the mixture has what both
 * bring. */
static void either_way_round(void **state)
{
    (void)state;
    hw_random_start(20310423);
    for (int i = 0; i < 500; i++) {
        char line[400];
        double ph[2];
        double alkalinity[2];
        double temp[2];
        double salinity[2];
        double tan[2];
        double found[2][4];
        for (int k = 0; k < 2; k++) {
            ph[k] = hw_random_between(6.8, 8.2);
            alkalinity[k] = hw_random_between(0.8, 4);
            temp[k] = hw_random_between(5, 35);
            salinity[k] = hw_random_between(0, 44);
            tan[k] = hw_random_between(0, 5);
        }
        double share = hw_random_between(1, 99);
        for (int k = 0; k < 2; k++) {
            int n = snprintf(line, sizeof line,
                             "volume=75L;share=%.9f%%;ph=%.9f;alkalinity=%.9fmeq/L;temp=%.9f;"
                             "salinity=%.9fg/kg;tan=%.9f;new_ph=%.9f;new_alkalinity=%.9fmeq/L;"
                             "new_temp=%.9f;new_salinity=%.9fg/kg;new_tan=%.9f",
                             k ? 100 - share : share, ph[k], alkalinity[k], temp[k], salinity[k],
                             tan[k], ph[!k], alkalinity[!k], temp[!k], salinity[!k], tan[!k]);
            check(n > 0 && (size_t)n < sizeof line - 20);
            found[k][0] = ask_for(line, "ph_after");
            found[k][1] = ask_for(line, "free_aired");
            found[k][2] = ask_for(line, "temp_after");
            found[k][3] = ask_for(line, "tan_after");
            (void)snprintf(line + n, sizeof line - (size_t)n, ";air_co2=800");
            check(ask_for(line, "free_aired") < found[k][1]);
        }
        for (int k = 0; k < 4; k++) {
            check(isfinite(found[0][k]));
            assert_close(found[0][k], found[1][k], 0, 1e-8);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(results_and_their_absence),
        cmocka_unit_test(the_worst),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(at_the_limits_of_ammonia),
        cmocka_unit_test(workings),
        cmocka_unit_test(proof_of_what_is_needed),
        cmocka_unit_test(at_the_upper_ends),
        cmocka_unit_test(changes_worked_out_elsewhere),
        cmocka_unit_test(what_is_needed),
        cmocka_unit_test(either_way_round),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
