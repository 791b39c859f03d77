/* test_ammonia.c - the ammonia calculation: published limits, every note, every result that may be
 * absent, and the working redone by awk. */
#include "ask.h"
#include "assert_close.h"
#include "engine/working.h"
#include "holdwater/criteria.h"
#include "holdwater/ph.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *ammonia(void)
{
    return find_calc("ammonia");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(ammonia(), line, &question, &answer);
    return result_of(ammonia(), &answer, result);
}

/* EPA 440/5-88-004: pK = 9.245 + 0.116 I + 0.0324 (298 - T) + 0.0415 P/T, written out again here
 * with libm. */
static double free_1989(double tan_nh3, double ph, double temp, double salinity)
{
    double ionic = 19.9273 * salinity / (1000 - 1.005109 * salinity);
    double kelvin = temp + 273.15;
    double pk = 9.245 + 0.116 * ionic + 0.0324 * (298 - kelvin) + 0.0415 / kelvin;
    return tan_nh3 / (1 + pow(10, pk - ph));
}

/* The limits are 0.035 (4 days) and 0.233 (1 hour) mg NH3/L, EPA 1989 as adopted in state
 * standards. */
static void salt_water_limits(void **state)
{
    (void)state;
    const char *line = "tan=0.6;basis=nh3;ph=8.2;temp=25;salinity=34";
    double want = free_1989(0.6, 8.2, 25, 34);
    assert_close(ask_for(line, "free_for_limit"), want, 0, 1e-12);
    assert_close(ask_for(line, "long_ratio"), want / 0.035, 0, 1e-12);
    assert_close(ask_for(line, "short_ratio"), want / 0.233, 0, 1e-12);
    assert_close(ask_for("tan=0.6;basis=nh3;ph=8.2;temp=25;salinity=34;model=epa1989", "free_nh3"),
                 want, 0, 1e-12);
}

/* At the total and at the pH that are said to reach the limit, it is reached. */
static void reaching_the_limit(void **state)
{
    (void)state;
    static const char *const waters[] = {
        "temp=25;salinity=34",
        "temp=14;salinity=5.5",
        "temp=13.85;salinity=0",
        "temp=25;salinity=34;ph_scale=total",
        "temp=25;salinity=22;ph_scale=free",
        "temp=25;salinity=33;long_limit=0.05",
        "temp=25;salinity=33;long_limit=0.05;limit_basis=nh3;ph_scale=sws",
    };
    for (size_t i = 0; i < sizeof waters / sizeof waters[0]; i++) {
        char line[200];
        (void)snprintf(line, sizeof line, "tan=2.385;basis=nh4;ph=7.9;%s", waters[i]);
        double tan_long = ask_for(line, "tan_long");
        double ph_long = ask_for(line, "ph_long");
        (void)snprintf(line, sizeof line, "tan=%.17g;basis=nh4;ph=7.9;%s", tan_long, waters[i]);
        assert_close(ask_for(line, "long_ratio"), 1, 0, 1e-12);
        (void)snprintf(line, sizeof line, "tan=2.385;basis=nh4;ph=%.17g;%s", ph_long, waters[i]);
        assert_close(ask_for(line, "long_ratio"), 1, 0, 1e-11);
    }
}

/* Whatever the water: where there is a pH that reaches the limit for days, the ratio there is 1. */
static void ph_long_reaches_the_limit(void **state)
{
    (void)state;
    long present = 0;
    hw_random_start(20310305);
    for (int i = 0; i < 2000; i++) {
        char line[200];
        char reached[300];
        (void)snprintf(line, sizeof line, "tan=%.17g;temp=%.17g;salinity=%.17gg/kg",
                       hw_random_between(0.05, 8), hw_random_between(0, 40),
                       hw_random_between(0, i % 2 ? 12 : 45));
        (void)snprintf(reached, sizeof reached, "%s;ph=%.17g", line, hw_random_between(5, 10));
        double ph_long = ask_for(reached, "ph_long");
        if (!isnan(ph_long)) {
            (void)snprintf(reached, sizeof reached, "%s;ph=%.17g", line, ph_long);
            assert_close(ask_for(reached, "long_ratio"), 1, 0, 1e-10);
            present++;
        }
    }
    check(present > 1000);
}

/* Between 1 and 10 g/kg the stricter of the two kinds holds; at the ends one kind alone. */
static void which_limit_holds(void **state)
{
    (void)state;
    double criterion = NAN;
    assert_int_equal(hw_criteria_epa2013(HW_CRITERIA_EPA2013_CCC, 7.4, 24, &criterion), 0);
    double fresh = 1.2 / criterion;
    double salt_5 = free_1989(1.2 * 17.031 / 14.007, 7.4, 24, 5) / 0.035;
    assert_close(ask_for("tan=1.2;ph=7.4;temp=24;salinity=0.9", "long_ratio"), fresh, 0, 1e-12);
    assert_close(ask_for("tan=1.2;ph=7.4;temp=24;salinity=5", "long_ratio"), fmax(fresh, salt_5), 0,
                 1e-12);
    assert_close(ask_for("tan=1.2;ph=7.4;temp=24;salinity=10", "long_ratio"),
                 free_1989(1.2 * 17.031 / 14.007, 7.4, 24, 10) / 0.035, 0, 1e-12);
    check(fresh > salt_5); /* so that the line above saw a choice */
    double sour = ask_for("tan=1.2;ph=9.4;temp=24;salinity=5", "long_ratio");
    assert_int_equal(hw_criteria_epa2013(HW_CRITERIA_EPA2013_CCC, 9.4, 24, &criterion), 1);
    assert_close(sour, fmax(1.2 / criterion, free_1989(1.2 * 17.031 / 14.007, 9.4, 24, 5) / 0.035),
                 0, 1e-12);
}

/* So a pH brought to a meter's scale can leave 5 to 10 at the upper end alone. */
static void a_meter_shows_most(void **state)
{
    (void)state;
    for (double temp = 0; temp <= 40; temp += 2.5) {
        for (double salinity = 0; salinity <= 45; salinity += 0.25) {
            double meter = NAN;
            check(hw_ph_offset(HW_PH_METER, temp, salinity, &meter) >= 0);
            for (int scale = HW_PH_NBS_RIGOROUS; scale <= HW_PH_SWS; scale++) {
                double other = NAN;
                check(hw_ph_offset((enum hw_ph_scale)scale, temp, salinity, &other) >= 0);
                check(meter >= other);
            }
        }
    }
}

static void dilution_and_basis(void **state)
{
    (void)state;
    double plain = ask_for("tan=2.4;ph=8;temp=25;salinity=34", "free");
    assert_close(ask_for("tan=0.6;dilution=4;ph=8;temp=25;salinity=34", "free"), plain, 0, 1e-15);
    assert_close(ask_for("tan=2.4;basis=nh3;ph=8;temp=25;salinity=34", "free"),
                 plain * 14.007 / 17.031, 0, 1e-14);
    assert_close(ask_for("tan=2.4;basis=nh4;ph=8;temp=25;salinity=34", "free"),
                 plain * 14.007 / 18.039, 0, 1e-14);
    assert_close(ask_for("tan=2.4;ph=8;temp=25;salinity=34", "free_nh3"), plain * 17.031 / 14.007,
                 0, 1e-14);
}

/* Each note raised once, and once not. */
static const struct note_row notes[] = {
    {"over-short-salt", "tan=6;ph=8.3;temp=27;salinity=34", "tan=0.6;ph=8.3;temp=27;salinity=34"},
    {"over-long-salt", "tan=1;ph=8.3;temp=27;salinity=34", "tan=0.06;ph=8.3;temp=27;salinity=34"},
    {"over-short-fresh", "tan=6;ph=8.3;temp=27;salinity=0.3", "tan=6;ph=6.8;temp=27;salinity=0.3"},
    {"over-long-fresh", "tan=1;ph=8.3;temp=27;salinity=0.3", "tan=1;ph=8.3;temp=27;salinity=34"},
    {"over-short-own", "tan=1;ph=8.3;temp=27;salinity=34;short_limit=0.02",
     "tan=1;ph=8.3;temp=27;salinity=34;short_limit=0.2"},
    {"limit-over-published", "tan=3;ph=8.4;temp=26;salinity=34;long_limit=1",
     "tan=3;ph=8.4;temp=26;salinity=34;long_limit=0.028"},
    {"limit-over-published", "tan=0.3;ph=8.4;temp=26;salinity=34;short_limit=2",
     "tan=0.3;ph=8.4;temp=26;salinity=34;short_limit=0.19"},
    {"limit-over-published", "ph=8.4;temp=26;salinity=34;short_limit=2",
     "ph=8.4;temp=26;salinity=34;short_limit=0.233;limit_basis=nh3"},
    {"limit-over-published", "ph=8.4;temp=26;salinity=0.2;long_limit=20",
     "ph=8.4;temp=26;salinity=0.2;long_limit=0.02"},
    /* between 1 and 10 g/kg, the salt-water limit alone and the fresh-water one alone */
    {"limit-over-published", "ph=9.4;temp=26;salinity=5;long_limit=0.03",
     "ph=9.4;temp=26;salinity=5;long_limit=0.028"},
    {"limit-over-published", "ph=7;temp=26;salinity=5;long_limit=0.02",
     "ph=7;temp=26;salinity=34;long_limit=0.02"},
    {"limit-over-published", "tan=1;ph=8;temp=25;salinity=34;long_limit=1",
     "tan=1;ph=9.98;ph_scale=total;temp=25;salinity=34;long_limit=1"},
    {"over-long-salt", "tan=1;ph=8.3;temp=27;salinity=34;long_limit=2",
     "tan=0.06;ph=8.3;temp=27;salinity=34;long_limit=2"},
    {"over-short-salt", "tan=6;ph=8.3;temp=27;salinity=34;short_limit=5",
     "tan=0.6;ph=8.3;temp=27;salinity=34;short_limit=5"},
    {"over-long-fresh", "tan=1;ph=8.3;temp=27;salinity=0.3;long_limit=2",
     "tan=0.1;ph=8.3;temp=27;salinity=0.3;long_limit=2"},
    {"over-short-fresh", "tan=6;ph=8.3;temp=27;salinity=0.3;short_limit=5",
     "tan=6;ph=6.8;temp=27;salinity=0.3;short_limit=5"},
    {"criteria-stretched", "tan=1;ph=9.2;temp=25;salinity=0.3;long_limit=1",
     "tan=1;ph=9.2;temp=25;salinity=0.3;long_limit=1;short_limit=2"},
    {"sour-tank", "tan=0.26;ph=7.7;temp=25;salinity=34", "tan=0.25;ph=7.7;temp=25;salinity=34"},
    {"sour-tank", "tan=9;ph=7.7;temp=25;salinity=0.3", "tan=9;ph=7.9;temp=25;salinity=0.3"},
    {"sour-tank", "tan=1;ph=7.6;temp=25;salinity=34;ph_scale=total", "ph=7.7;temp=25;salinity=34"},
    {"over-long-own", "tan=1;ph=8.3;temp=27;salinity=34;long_limit=0.02",
     "tan=1;ph=8.3;temp=27;salinity=34;long_limit=0.2"},
    {"act-today", "tan=0.26;ph=7;temp=25;salinity=34", "tan=0.25;ph=8.3;temp=25;salinity=34"},
    {"any-ammonia", "tan=0.25;ph=7;temp=25;salinity=34", "tan=0;ph=8.3;temp=25;salinity=34"},
    {"kit-end", "tan=3;ph=8;temp=25;salinity=34", "tan=2.99;ph=8;temp=25;salinity=34"},
    {"kit-end", "tan=3;dilution=4;ph=8;temp=25;salinity=34",
     "tan=2;dilution=4;ph=8;temp=25;salinity=34"},
    {"kit-end", "tan=3;basis=nh4;ph=8;temp=25;salinity=34", "ph=8;temp=25;salinity=34"},
    {"tan-unsaid", "ph=8;temp=25;salinity=34", "tan=0;ph=8;temp=25;salinity=34"},
    {"tan-unsaid", "ph=8;temp=25;salinity=5", "tan=1;ph=8;temp=25;salinity=5"},
    {"tan-unsaid", "ph=8;temp=25;salinity=0.5;basis=nh4", "tan=1;ph=8;temp=25;salinity=5"},
    {"any-ammonia", "tan=0.1;ph=8;temp=25;salinity=34", "ph=8;temp=25;salinity=34"},
    {"act-today", "tan=1;ph=8;temp=25;salinity=34", "ph=8;temp=25;salinity=34"},
    {"limit-looks-nh3", "tan=1;ph=8;temp=25;salinity=34;long_limit=0.035",
     "tan=1;ph=8;temp=25;salinity=34;long_limit=0.035;limit_basis=nh3"},
    {"limit-looks-nh3", "tan=1;ph=8;temp=25;salinity=34;short_limit=0.233",
     "tan=1;ph=8;temp=25;salinity=34;short_limit=0.234"},
    {"criteria-jump", "tan=1;ph=8;temp=25;salinity=9.2", "tan=1;ph=8;temp=25;salinity=11"},
    {"criteria-jump", "tan=1;ph=8;temp=25;salinity=1.9g/kg", "tan=1;ph=8;temp=25;salinity=0"},
    {"criteria-no-ph", "tan=1;ph=9.98;ph_scale=total;temp=25;salinity=34",
     "tan=1;ph=9.8;ph_scale=total;temp=25;salinity=34"},
    {"criteria-stretched", "tan=1;ph=9.2;temp=25;salinity=0.3",
     "tan=1;ph=9.0;temp=25;salinity=0.3"},
    {"criteria-stretched", "tan=1;ph=8;temp=25;salinity=41", "tan=1;ph=8;temp=25;salinity=40.9"},
    {"fit-stretched", "tan=1;ph=8;temp=4.9;salinity=34", "tan=1;ph=8;temp=5;salinity=34"},
    {"fit-stretched", "tan=1;ph=8;temp=25;salinity=12;ph_scale=nbs-rigorous",
     "tan=1;ph=8;temp=25;salinity=34;ph_scale=nbs-rigorous"},
    {"test-copper", "tan=1;ph=8;temp=25;salinity=34;medicine=copper",
     "tan=1;ph=8;temp=25;salinity=34;medicine=binder"},
    {"test-copper", "tan=1;ph=8;temp=25;salinity=34;medicine=copper-chelated",
     "tan=1;ph=8;temp=25;salinity=34;medicine=dye"},
    {"test-copper", "tan=1;ph=8;temp=25;salinity=34;medicine=copper-ionic,formalin",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"test-dye", "tan=1;ph=8;temp=25;salinity=34;medicine=dye",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"test-formalin", "tan=1;ph=8;temp=25;salinity=34;medicine=formalin",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"test-antibiotic", "tan=1;ph=8;temp=25;salinity=34;medicine=antibiotic",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"test-binder", "tan=1;ph=8;temp=25;salinity=34;medicine=binder",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"test-other", "tan=1;ph=8;temp=25;salinity=34;medicine=other",
     "tan=1;ph=8;temp=25;salinity=34"},
    {"medicine-unsaid", "tan=1;ph=8;temp=25;salinity=34",
     "tan=1;ph=8;temp=25;salinity=34;medicine=none"},
    {"bound-by-binder", "tan=1;ph=8;temp=25;salinity=34;medicine=none",
     "tan=1;ph=8;temp=25;salinity=34;medicine=binder"},
    {"ratio-salt", "tan=1;ph=8;temp=25;salinity=1g/kg", "tan=1;ph=8;temp=25;salinity=0.9"},
    {"ratio-fresh", "tan=1;ph=8;temp=25;salinity=9.9", "tan=1;ph=8;temp=25;salinity=10"},
    {"ratio-stricter", "tan=1;ph=8;temp=25;salinity=9.9", "tan=1;ph=8;temp=25;salinity=34"},
    {"ratio-salt", "tan=1;ph=8;temp=25;salinity=34;long_limit=0.1",
     "tan=1;ph=8;temp=25;salinity=34;long_limit=0.1;short_limit=1"},
    {"ratio-own-long", "tan=1;ph=8;temp=25;salinity=34;long_limit=0.1",
     "tan=1;ph=8;temp=25;salinity=34;short_limit=1"},
    {"ratio-own-short", "tan=1;ph=8;temp=25;salinity=34;short_limit=1",
     "tan=1;ph=8;temp=25;salinity=34;long_limit=0.1"},
    {"kit-basis", "tan=0;ph=8;temp=25;salinity=34", NULL},
    {"limit-not-safe", "tan=0;ph=8;temp=25;salinity=34", NULL},
    {"ph-error", "tan=0;ph=8;temp=25;salinity=34", NULL},
    {"film-rough", "tan=0;ph=8;temp=25;salinity=34", NULL},
    {"ask-vet", "tan=0;ph=8;temp=25;salinity=34", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(ammonia(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"over-short-salt", ABOVE, 1, "tan", "short_ratio", "tan=2;ph=8.3;temp=27;salinity=34"},
    {"over-short-salt", ABOVE, 0.233, "tan", "free_for_limit", "tan=2;ph=8.3;temp=27;salinity=34"},
    {"over-long-salt", ABOVE, 1, "tan", "long_ratio", "tan=0.3;ph=8.3;temp=27;salinity=34"},
    {"over-long-salt", ABOVE, 0.035, "tan", "free_for_limit", "tan=0.3;ph=8.3;temp=27;salinity=34"},
    {"over-short-fresh", ABOVE, 1, "tan", "short_ratio", "tan=2;ph=8.3;temp=27;salinity=0.3"},
    {"over-long-fresh", ABOVE, 1, "tan", "long_ratio", "tan=0.6;ph=8.3;temp=27;salinity=0.3"},
    {"over-short-own", ABOVE, 1, "tan", "short_ratio",
     "tan=1;ph=8.3;temp=27;salinity=34;short_limit=0.02"},
    {"over-long-own", ABOVE, 1, "tan", "long_ratio",
     "tan=1;ph=8.3;temp=27;salinity=34;long_limit=0.02"},
    {"limit-over-published", ABOVE, 0.035, "long_limit", NULL,
     "ph=8.4;temp=26;salinity=34;long_limit=0.035;limit_basis=nh3"},
    {"limit-over-published", ABOVE, 0.035 * 14.007 / 17.031, "long_limit", NULL,
     "ph=8.4;temp=26;salinity=34;long_limit=0.03"},
    {"limit-over-published", ABOVE, 0.233, "short_limit", NULL,
     "tan=3;ph=8.4;temp=26;salinity=34;short_limit=0.233;limit_basis=nh3"},
    {"over-long-salt", ABOVE, 0.035, "tan", "free_for_limit",
     "tan=0.3;ph=8.4;temp=26;salinity=34;long_limit=1"},
    {"over-short-salt", ABOVE, 0.233, "tan", "free_for_limit",
     "tan=2;ph=8.4;temp=26;salinity=34;short_limit=1"},
    {"sour-tank", BELOW, 7.8, "ph", NULL, "tan=1;ph=7.8;temp=25;salinity=34"},
    {"sour-tank", ABOVE, 0.25, "tan", NULL, "tan=0.25;ph=7;temp=25;salinity=34"},
    {"act-today", ABOVE, 0.25, "tan", NULL, "tan=0.25;ph=7;temp=25;salinity=34"},
    {"any-ammonia", UP_TO, 0.25, "tan", NULL, "tan=0.25;ph=7;temp=25;salinity=34"},
    {"kit-end", FROM, 3, "tan", NULL, "tan=3;dilution=2;ph=7;temp=25;salinity=34"},
    {"criteria-jump", BELOW, 2, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=2"},
    {"criteria-jump", ABOVE, 9, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=9"},
    {"criteria-jump", BELOW, 11, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=11"},
    {"criteria-stretched", BELOW, 6.5, "ph", NULL, "tan=1;ph=6.5;temp=25;salinity=0.3"},
    {"criteria-stretched", ABOVE, 9, "ph", NULL, "tan=1;ph=9;temp=25;salinity=0.3"},
    {"criteria-stretched", ABOVE, 30, "temp", NULL, "tan=1;ph=8;temp=30;salinity=0.3"},
    {"criteria-stretched", ABOVE, 40.9, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=40.9"},
    {"fit-stretched", BELOW, 5, "temp", NULL, "tan=1;ph=8;temp=5;salinity=34"},
    {"fit-stretched", ABOVE, 44.55, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=44.55"},
    {"fit-stretched", ABOVE, 40.9, "salinity", NULL,
     "tan=1;ph=8;temp=25;salinity=40.9;model=epa1989"},
    {"fit-stretched", ABOVE, 40, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=40;ph_scale=total"},
    {"fit-stretched", ABOVE, 3, "salinity", NULL,
     "tan=1;ph=8;temp=25;salinity=3;ph_scale=nbs-rigorous"},
    {"fit-stretched", BELOW, 20, "salinity", NULL,
     "tan=1;ph=8;temp=25;salinity=20;ph_scale=nbs-rigorous"},
    {"ratio-salt", FROM, 1, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=1g/kg"},
    {"ratio-fresh", BELOW, 10, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=10"},
    {"ratio-stricter", FROM, 1, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=1g/kg"},
    {"ratio-stricter", BELOW, 10, "salinity", NULL, "tan=1;ph=8;temp=25;salinity=10"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(ammonia(), edges, sizeof edges / sizeof edges[0]);
}

/* Of fresh water the limit is a total: one's own is laxer from the total on that reaches it. */
static void laxer_than_the_criteria(void **state)
{
    (void)state;
    const struct note_edge at[] = {
        {"limit-over-published", ABOVE, total_at("long_ratio", "ph=8.4;temp=26;salinity=0.2"),
         "long_limit", "tan_long", "ph=8.4;temp=26;salinity=0.2;long_limit=0.1"},
    };
    check_edges(ammonia(), at, sizeof at / sizeof at[0]);
}

/* Below pH 7.8 nothing is above a limit for days that is not to be acted on today: so act-today
 * alone decides on sour-tank. */
static void sour_limits_lie_higher(void **state)
{
    (void)state;
    for (double temp = 0; temp <= 40; temp += 0.5) {
        for (double salinity = 0; salinity <= 45; salinity += 1.5) {
            char line[100];
            (void)snprintf(line, sizeof line, "ph=7.8;temp=%.1f;salinity=%.1fg/kg", temp, salinity);
            check(ask_for(line, "tan_long") > 0.25);
        }
    }
}

/* Of the alarms the gravest alone is told, in fresh water as in salt; an hour before days. */
static void one_alarm(void **state)
{
    (void)state;
    static const char *const alarms[] = {"over-short-salt", "over-short-fresh", "over-long-salt",
                                         "over-long-fresh", "act-today",        "any-ammonia"};
    static const struct {
        const char *line, *alarm;
    } rows[] = {
        {"tan=6;ph=8.3;temp=27;salinity=34", "over-short-salt"},
        {"tan=0.6;ph=8.3;temp=27;salinity=34", "over-long-salt"},
        {"tan=6;ph=8.3;temp=27;salinity=0.3", "over-short-fresh"},
        {"tan=1;ph=8.3;temp=27;salinity=0.3", "over-long-fresh"},
        {"tan=3;ph=8.5;temp=27;salinity=5g/kg", "over-short-salt"},
        {"tan=3;ph=7.9;temp=27;salinity=5g/kg", "over-short-fresh"},
        {"tan=0.3;ph=7;temp=27;salinity=0.3", "act-today"},
        {"tan=0.1;ph=7;temp=27;salinity=0.3", "any-ammonia"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(ammonia(), rows[i].line, &question, &answer);
        for (size_t k = 0; k < sizeof alarms / sizeof alarms[0]; k++) {
            bool wanted = strcmp(alarms[k], rows[i].alarm) == 0;
            check(noted(ammonia(), &answer, alarms[k]) == wanted);
        }
    }
}

/* What needs no reading is the same with one and without; what needs one is absent. */
static void without_a_reading(void **state)
{
    (void)state;
    static const char *const needs[] = {"free",       "free_nh3",    "free_for_limit",
                                        "long_ratio", "short_ratio", "ph_long"};
    static const char *const needs_none[] = {"tan_long", "free_percent", "pka"};
    static const char *const waters[] = {
        "ph=8.1;temp=25;salinity=34",
        "ph=8.1;temp=25;salinity=5;basis=nh4",
        "ph=7.2;temp=25;salinity=5;basis=nh3",
        "ph=7.4;temp=14;salinity=0",
        "ph=8.1;temp=25;salinity=34;ph_scale=total",
        "ph=8.1;temp=25;salinity=34;model=epa1989;long_limit=0.02;limit_basis=nh3;basis=nh4",
    };
    for (size_t i = 0; i < sizeof waters / sizeof waters[0]; i++) {
        char line[200];
        (void)snprintf(line, sizeof line, "tan=0.85;%s", waters[i]);
        for (size_t k = 0; k < sizeof needs / sizeof needs[0]; k++) {
            assert_no_answer(ask_for(waters[i], needs[k]));
        }
        for (size_t k = 0; k < sizeof needs_none / sizeof needs_none[0]; k++) {
            check(isfinite(ask_for(line, needs_none[k])));
            assert_close(ask_for(waters[i], needs_none[k]), ask_for(line, needs_none[k]), 0, 0);
        }
        check_working(ammonia(), waters[i]);
    }
    check_working(ammonia(), "ph=9.98;ph_scale=total;temp=25;salinity=34");
    assert_no_answer(ask_for("ph=9.98;ph_scale=total;temp=25;salinity=34", "tan_long"));
}

/* Each result that may be absent, present and absent; every other one always finite. */
static const struct {
    const char *result, *present, *absent;
} sometimes[] = {
    {"free", "tan=0;ph=8;temp=25;salinity=34", "ph=8;temp=25;salinity=34"},
    {"free_nh3", "tan=0;ph=8;temp=25;salinity=34", "ph=8;temp=25;salinity=34"},
    {"free_for_limit", "tan=1;ph=8;temp=25;salinity=1g/kg", "tan=1;ph=8;temp=25;salinity=0.9"},
    {"long_ratio", "tan=1;ph=8;temp=25;salinity=34",
     "tan=1;ph=9.98;ph_scale=total;temp=25;salinity=34"},
    {"short_ratio", "tan=0;ph=8;temp=25;salinity=0",
     "tan=1;ph=9.98;ph_scale=total;temp=25;salinity=34"},
    {"tan_long", "tan=0;ph=8;temp=25;salinity=0",
     "tan=1;ph=9.98;ph_scale=total;temp=25;salinity=34"},
    {"ph_long", "tan=1;ph=8;temp=25;salinity=34", "tan=0;ph=8;temp=25;salinity=34"},
    {"ph_long", "tan=1;ph=8;temp=25;salinity=0", "tan=0.01;ph=8;temp=25;salinity=0"},
    /* over the fresh-water criterion at every pH: no pH reaches it, the salt-water one included */
    {"ph_long", "tan=1;ph=7.3;temp=25;salinity=5", "tan=2;ph=7.3;temp=25;salinity=5"},
};

static void absent_results(void **state)
{
    (void)state;
    const struct hw_calc *calc = ammonia();
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check(isfinite(ask_for(sometimes[i].present, sometimes[i].result)));
        check(isnan(ask_for(sometimes[i].absent, sometimes[i].result)));
    }
    for (size_t i = 0; i < sizeof notes / sizeof notes[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(calc, notes[i].raised, &question, &answer);
        for (size_t k = 0; k < calc->n_results; k++) {
            check(calc->results[k].sometimes || isfinite(answer.out[k]));
        }
    }
}

/* The corners of every range are answered. */
static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const scales[] = {"meter", "nbs-rigorous", "total", "free", "sws"};
    for (unsigned corner = 0; corner < 16; corner++) {
        for (size_t scale = 0; scale < 5; scale++) {
            char line[200];
            (void)snprintf(line, sizeof line, "tan=%s;ph=%s;temp=%s;salinity=%s;ph_scale=%s",
                           corner & 1 ? "1000" : "0", corner & 2 ? "10" : "5",
                           corner & 4 ? "40" : "0", corner & 8 ? "45" : "0", scales[scale]);
            check(isfinite(ask_for(line, "free")));
            check(isfinite(ask_for(line, "pka")));
        }
    }
}

/* Every step of the working is evaluated by awk: `print EXPRESSION`. */
static void working_can_be_redone(void **state)
{
    (void)state;
    keep_workings();
    static const char *const more[] = {
        "tan=0.6;ph=8.15;temp=77F;salinity=34",
        "tan=0.6;basis=nh4;dilution=3;ph=7.4;temp=14;salinity=5.5",
        "tan=0.6;ph=7.9;temp=25;salinity=34;model=epa1989",
        "tan=0.6;ph=7.9;temp=25;salinity=2;ph_scale=nbs-rigorous",
        "tan=0.6;ph=7.9;temp=25;salinity=6;ph_scale=nbs-rigorous",
        "tan=0.6;ph=7.9;temp=11.5;salinity=35;ph_scale=nbs-rigorous",
        "tan=0.6;ph=7.9;temp=25;salinity=35;ph_scale=sws",
        "tan=0.6;ph=7.9;temp=25;salinity=0;ph_scale=free",
        "tan=0.6;ph=7.9;temp=4.5;salinity=0",
        "tan=0.6;ph=7.9;temp=3;salinity=0;long_limit=0.02;short_limit=0.2;limit_basis=nh3",
        /* a limit that is so far off that no total reaches it: the working ends before */
        "basis=nh3;ph=5;ph_scale=sws;temp=0.2;salinity=44.3;model=clegg1995;long_limit=97.3",
    };
    for (size_t i = 0; i < sizeof notes / sizeof notes[0]; i++) {
        check_working(ammonia(), notes[i].raised);
    }
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        check_working(ammonia(), more[i]);
    }
    redo_workings();
}

/* A block of random rows gives the bits of the one-off, and free ammonia rises with pH and
 * temperature. */
static void random_rows(void **state)
{
    (void)state;
    const struct hw_calc *calc = ammonia();
    static double in[HW_INPUTS][HW_BLOCK];
    static double out[HW_RESULTS][HW_BLOCK];
    static uint64_t bits[HW_BLOCK];
    const double *in_at[HW_INPUTS];
    double *out_at[HW_RESULTS];
    struct hw_question question;
    struct hw_answer answer;
    uint64_t seed = UINT64_C(0x9e3779b97f4a7c15);
    printf("random rows: seed 0x9e3779b97f4a7c15\n");
    for (size_t row = 0; row < HW_BLOCK; row++) {
        ask(calc,
            row % 2 ? "tan=0.6;ph=8;temp=25;salinity=34"
                    : "tan=0.6;ph=8;temp=25;salinity=34;ph_scale=total",
            &question, &answer);
        for (size_t i = 0; i < calc->n_inputs; i++) {
            in[i][row] = question.in[i];
            seed = seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
            double share = (double)(seed >> 11) / 9007199254740992.0;
            if (!calc->inputs[i].words && question.from[i] == HW_GIVEN) {
                in[i][row] = calc->inputs[i].lo + share * (calc->inputs[i].hi - calc->inputs[i].lo);
            }
        }
        bits[row] = 0;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        in_at[i] = in[i];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        out_at[i] = out[i];
    }
    struct hw_block block = {HW_BLOCK, in_at, out_at, bits};
    hw_block_run(calc, &block);
    for (size_t row = 0; row < HW_BLOCK; row++) {
        for (size_t i = 0; i < calc->n_inputs; i++) {
            question.in[i] = in[i][row];
        }
        hw_question_answer(&question, &answer);
        assert_int_equal(answer.notes, bits[row]);
        for (size_t i = 0; i < calc->n_results; i++) {
            assert_memory_equal(&answer.out[i], &out[i][row], sizeof(double));
        }
        double free_before = answer.out[0];
        question.in[hw_input_find(calc, "ph", 2)] *= 0.999;
        hw_question_answer(&question, &answer);
        check(answer.out[0] < free_before);
    }
}

/* --- The rows of a block against one-off questions ------------------------------------------- */

enum { FEW = 8 }; /* fewer rows than this `block` leaves to `answer` */

static struct {
    double in[HW_INPUTS][HW_BLOCK], out[HW_RESULTS][HW_BLOCK];
    const double *in_at[HW_INPUTS];
    double *out_at[HW_RESULTS];
    uint64_t notes[HW_BLOCK];
    uint64_t seed;
} plain;

static double random_share(void)
{
    plain.seed = plain.seed * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
    return (double)(plain.seed >> 11) / 9007199254740992.0;
}

/* A number of the range, and often one of its ends or what limits and fits hang on. */
static double odd_number(const struct hw_input *input)
{
    static const double odd[] = {0,    1e-12, 0.02,  1,     1.5,  2,   3,  4.999,
                                 5,    6.5,   7,     7.2,   7.99, 8,   10, 20,
                                 40.9, 40.91, 44.55, 44.56, 0.25, 0.5, 30};
    double share = random_share();
    double x = odd[(size_t)(random_share() * (sizeof odd / sizeof *odd))];
    if (share < 0.1) {
        return input->lo;
    }
    if (share < 0.2) {
        return input->hi;
    }
    bool within = x >= input->lo && x <= input->hi;
    return share < 0.5 && within ? x : input->lo + random_share() * (input->hi - input->lo);
}

/* Fills a block with one question, numbers drawn anew in each row. */
static void draw_block(const struct hw_calc *calc, const char *written, bool salt)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(calc, written, &question, &answer);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        bool drawn =
            question.from[i] == HW_GIVEN && !calc->inputs[i].words && calc->inputs[i].hi > 5;
        bool limit = strstr(calc->inputs[i].name, "limit") != NULL;
        for (size_t row = 0; row < HW_BLOCK; row++) {
            plain.in[i][row] = drawn && !limit ? odd_number(&calc->inputs[i]) : question.in[i];
        }
        plain.in_at[i] = plain.in[i];
    }
    double *salinity = plain.in[hw_input_find(calc, "salinity", 8)];
    for (size_t row = 0; salt && row < HW_BLOCK; row++) {
        salinity[row] = 33 + 12 * random_share();
    }
}

/* Answers the first n rows, the results of a set of bits wanted, and holds each to its question. */
static void hold_block(const struct hw_calc *calc, size_t n, unsigned wanted)
{
    struct hw_question question = {.calc = calc};
    struct hw_answer answer;
    memset(plain.notes, 0, sizeof plain.notes);
    for (size_t k = 0; k < calc->n_results; k++) {
        plain.out_at[k] = (wanted >> k & 1u) != 0 ? plain.out[k] : NULL;
        for (size_t row = 0; row < HW_BLOCK; row++) {
            plain.out[k][row] = -7;
        }
    }
    struct hw_block block = {n, plain.in_at, plain.out_at, plain.notes};
    hw_block_run(calc, &block);
    for (size_t row = 0; row < n; row++) {
        for (size_t i = 0; i < calc->n_inputs; i++) {
            question.in[i] = plain.in[i][row];
        }
        hw_question_answer(&question, &answer);
        check(answer.notes == plain.notes[row]);
        for (size_t k = 0; k < calc->n_results; k++) {
            bool is_wanted = (wanted >> k & 1u) != 0;
            double got = plain.out[k][row];
            bool same = memcmp(&got, &answer.out[k], sizeof got) == 0;
            check(is_wanted ? same || (isnan(got) && isnan(answer.out[k])) : got == -7);
        }
    }
    check(n == HW_BLOCK || plain.out[0][n] == -7);
}

static void blocks_are_one_off_questions(void **state)
{
    (void)state;
    static const char *const written[] = {
        "tan=0.6;ph=8;temp=25;salinity=34",
        "tan=0.6;ph=8;temp=25;salinity=34;basis=nh4;dilution=3",
        "tan=0.6;ph=8;temp=25;salinity=34;basis=nh3;medicine=copper,formalin",
        "tan=0.6;ph=8;temp=25;salinity=34;model=epa1989",
        "tan=0.6;ph=8;temp=25;salinity=34;long_limit=0.02",
        "tan=0.6;ph=8;temp=25;salinity=34;short_limit=0.2",
        "tan=0.6;ph=8;temp=25;salinity=34;ph_scale=total",
        "ph=8;temp=25;salinity=34",
    };
    static const unsigned wanted[] = {0x1ff, 0x21, 0, 0x08, 0x10, 0x1c6};
    const struct hw_calc *calc = find_calc("ammonia");
    plain.seed = UINT64_C(0x2031030500000001);
    printf("seed %llx\n", (unsigned long long)plain.seed);
    for (size_t i = 0; i < sizeof written / sizeof *written; i++) {
        for (size_t k = 0; k < sizeof wanted / sizeof *wanted; k++) {
            draw_block(calc, written[i], k % 2 == 0);
            hold_block(calc, HW_BLOCK, wanted[k]);
            hold_block(calc, 101, wanted[k]);
            hold_block(calc, FEW, wanted[k]);
            hold_block(calc, FEW - 1, wanted[k]);
        }
    }
}

/* A block is taken where every row is plain; a single row that is not leaves it to `answer`. */
static void what_a_block_takes(void **state)
{
    (void)state;
    static const char *const inputs[] = {"basis",    "ph_scale",   "model",
                                         "medicine", "long_limit", "short_limit"};
    const struct hw_calc *calc = find_calc("ammonia");
    plain.seed = UINT64_C(0x2031030500000002);
    draw_block(calc, "tan=0.6;ph=8;temp=25;salinity=34", true);
    for (size_t k = 0; k < calc->n_results; k++) {
        plain.out_at[k] = NULL;
    }
    struct hw_block block = {HW_BLOCK, plain.in_at, plain.out_at, plain.notes};
    check(calc->block(&block));
    for (size_t i = 0; i < sizeof inputs / sizeof *inputs; i++) {
        double *cell = &plain.in[hw_input_find(calc, inputs[i], strlen(inputs[i]))][HW_BLOCK - 1];
        double before = *cell;
        *cell = 1;
        check(!calc->block(&block));
        *cell = before;
    }
    check(calc->block(&block));
}

/* The activity of a glass electrode's buffers: sea water's from 9 g/kg up, fresh water's up to 3,
 * both only between, where a mean of the two is written. */
static void working_by_its_region(void **state)
{
    (void)state;
    static struct hw_steps steps;
    static const struct {
        const char *salinity;
        bool sea, fresh;
    } regions[] = {
        {"2.9", false, true}, {"3", false, true}, {"3.1", true, true},
        {"8.9", true, true},  {"9", true, false}, {"9.1", true, false},
    };
    for (size_t i = 0; i < sizeof regions / sizeof regions[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        char line[200];
        const char *text = "";
        (void)snprintf(line, sizeof line,
                       "tan=0.6;ph=8.1;ph_scale=nbs-rigorous;temp=25;salinity=%s",
                       regions[i].salinity);
        ask(ammonia(), line, &question, &answer);
        steps.n = 0;
        ammonia()->work(question.in, &steps);
        for (size_t k = 0; k < steps.n; k++) {
            if (strcmp(steps.step[k].symbol, "nbs_minus_free") == 0) {
                text = steps.step[k].expression;
            }
        }
        check((strstr(text, "1.2948") != NULL) == regions[i].sea);
        check((strstr(text, "1.8246e6") != NULL) == regions[i].fresh);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(working_by_its_region),
        cmocka_unit_test(salt_water_limits),
        cmocka_unit_test(reaching_the_limit),
        cmocka_unit_test(ph_long_reaches_the_limit),
        cmocka_unit_test(which_limit_holds),
        cmocka_unit_test(a_meter_shows_most),
        cmocka_unit_test(dilution_and_basis),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(laxer_than_the_criteria),
        cmocka_unit_test(sour_limits_lie_higher),
        cmocka_unit_test(one_alarm),
        cmocka_unit_test(without_a_reading),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(working_can_be_redone),
        cmocka_unit_test(random_rows),
        cmocka_unit_test(blocks_are_one_off_questions),
        cmocka_unit_test(what_a_block_takes),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
