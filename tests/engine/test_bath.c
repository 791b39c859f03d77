/* test_bath.c - the calculation bath: amounts, gaps, every note. */
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

static const struct hw_calc *bath(void)
{
    return find_calc("bath");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(bath(), line, &question, &answer);
    return result_of(bath(), &answer, result);
}

static void by_target_and_by_rate(void **state)
{
    (void)state;
    static const char *const target = "volume=12L;strength=1%wv;target=6mg/L";
    static const char *const rate = "volume=11.3L;strength=8mg/mL;rate=0.35mL/L";
    assert_close(ask_for(target, "dye"), 7.2, 0, 1e-15);
    assert_close(ask_for(target, "level"), 6, 0, 1e-15);
    assert_close(ask_for(rate, "dye"), 11.3 * 0.35, 0, 1e-15);
    assert_close(ask_for(rate, "level"), 0.35 * 8, 0, 1e-15);
    assert_close(ask_for(target, "repeat_from"), 24, 0, 0);
    assert_close(ask_for(target, "repeat_to"), 48, 0, 0);
}

/* The level of a target's amount given as a rate is the target. */
static void target_and_rate_agree(void **state)
{
    (void)state;
    hw_random_start(20310413);
    for (int i = 0; i < 500; i++) {
        char line[120];
        double volume = hw_random_between(2, 60);
        double strength = hw_random_between(2, 50);
        double level = hw_random_between(0.5, 12);
        (void)snprintf(line, sizeof line, "volume=%.17gL;strength=%.17gmg/mL;target=%.17g", volume,
                       strength, level);
        double dye = ask_for(line, "dye");
        (void)snprintf(line, sizeof line, "volume=%.17gL;strength=%.17gmg/mL;rate=%.17gmL/L",
                       volume, strength, dye / volume);
        assert_close(ask_for(line, "dye"), dye, 0, 1e-14);
        assert_close(ask_for(line, "level"), level, 0, 1e-14);
    }
}

#define TANK "volume=12L;strength=1%wv;target=4;"

static void gaps(void **state)
{
    (void)state;
    assert_close(ask_for(TANK "temp=25;source_temp=23.5", "temp_gap"), 1.5, 0, 0);
    assert_close(ask_for(TANK "salinity=33;source_salinity=34.5", "salinity_gap"), -1.5, 0, 0);
    assert_close(ask_for(TANK "ph=8.1;source_ph=7.6", "ph_gap"), 0.5, 0, 1e-14);
    static const char *const results[] = {"temp_gap", "salinity_gap", "ph_gap"};
    for (size_t i = 0; i < 3; i++) {
        check(isnan(ask_for("volume=12L;strength=1%wv;target=4", results[i])));
        check(isnan(ask_for(TANK "temp=25;salinity=34;ph=8", results[i])));
        check(isnan(ask_for(TANK "source_temp=25;source_salinity=34;source_ph=8", results[i])));
    }
}

static const struct note_row notes[] = {
    {"no-bath-level", "volume=12L;strength=1%wv;rate=5.1mL/L",
     "volume=12L;strength=1%wv;rate=5mL/L"},
    {"no-bath-level", "volume=12L;strength=0.1mg/mL;rate=0.9mL/L",
     "volume=12L;strength=1%wv;target=50"},
    {"pour-too-large", "volume=12L;strength=0.1mg/mL;target=10.1",
     "volume=12L;strength=0.1mg/mL;target=10"},
    {"pour-large", "volume=12L;strength=0.1mg/mL;target=1.1",
     "volume=12L;strength=0.1mg/mL;target=1"},
    {"dye-check", "volume=12L;strength=1%wv;target=10.1", "volume=12L;strength=1%wv;target=10"},
    {"dye-over-5", "volume=12L;strength=1%wv;target=5.1", "volume=12L;strength=1%wv;target=5"},
    {"bath-long", TANK "minutes=31", TANK "minutes=30"},
    {"temp-step-up", TANK "temp=25.1;source_temp=23", TANK "temp=25;source_temp=23"},
    {"temp-step-up", TANK "temp=77.1F;source_temp=73.4F", TANK "temp=77F;source_temp=73.4F"},
    {"temp-step-down", TANK "temp=23;source_temp=24.1", TANK "temp=23;source_temp=24"},
    {"salinity-step-up", TANK "salinity=34.1;source_salinity=33",
     TANK "salinity=34.1;source_salinity=33.1"},
    {"salinity-step-down", TANK "salinity=28;source_salinity=33.1",
     TANK "salinity=28;source_salinity=33"},
    {"return-step", TANK "salinity=28.2;source_salinity=33.1",
     TANK "salinity=28;source_salinity=33.1"},
    {"ph-step", TANK "ph=8.3;source_ph=7.9", TANK "ph=8.3;source_ph=8"},
    {"ph-step", TANK "ph=7.6;source_ph=8", TANK "ph=8;source_ph=8.3"},
    {"return-step", TANK "temp=24.1;source_temp=23", TANK "temp=24;source_temp=23"},
    {"return-step", TANK "temp=25;source_temp=23", TANK "temp=25.1;source_temp=23"},
    {"return-step", TANK "salinity=32;source_salinity=33.1", TANK "salinity=32;source_salinity=33"},
    {"return-step", TANK "temp=26;source_temp=23;salinity=32;source_salinity=34",
     TANK "ph=8;source_ph=7"},
    {"gap-half", TANK "temp=24", TANK "temp=24;source_temp=24"},
    {"gap-half", TANK "source_salinity=34", TANK "salinity=34;source_salinity=34"},
    {"gap-half", TANK "ph=8", TANK "ph=8;source_ph=8"},
    {"match-water", TANK "minutes=20", NULL},
    {"bath-aerate", TANK "minutes=20", NULL},
    {"bath-attend", TANK "minutes=20", NULL},
    {"bath-out", TANK "minutes=20", NULL},
    {"dye-form", TANK "minutes=20", NULL},
    {"dye-dim", TANK "minutes=20", NULL},
    {"dye-reducers", TANK "minutes=20", NULL},
    {"dye-stains", TANK "minutes=20", NULL},
    {"dye-no-food-fish", TANK "minutes=20", NULL},
    {"dye-handlers", TANK "minutes=20", NULL},
    {"dye-discard", TANK "minutes=20", NULL},
    {"bath-repeat", TANK "minutes=20", NULL},
    {"ask-vet", TANK "minutes=20", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(bath(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"no-bath-level", ABOVE, 5, "rate", NULL, "volume=12L;strength=1%wv;rate=5mL/L"},
    {"no-bath-level", BELOW, 1, "rate", NULL, "volume=12L;strength=0.1mg/mL;rate=1mL/L"},
    {"pour-too-large", ABOVE, 10, "target", NULL, "volume=12L;strength=0.1mg/mL;target=10"},
    {"pour-large", ABOVE, 1, "target", NULL, "volume=12L;strength=0.1mg/mL;target=1"},
    {"dye-check", ABOVE, 10, "target", NULL, "volume=12L;strength=1%wv;target=10"},
    {"dye-over-5", ABOVE, 5, "target", NULL, "volume=12L;strength=1%wv;target=5"},
    {"dye-over-5", ABOVE, 5, "rate", "level", "volume=12L;strength=1%wv;rate=0.5mL/L"},
    {"bath-long", ABOVE, 30, "minutes", NULL, TANK "minutes=30"},
    {"temp-step-up", ABOVE, 2, "temp", "temp_gap", TANK "temp=25;source_temp=23.3"},
    {"temp-step-down", BELOW, -1, "temp", "temp_gap", TANK "temp=22;source_temp=23.3"},
    {"salinity-step-up", ABOVE, 1, "salinity", "salinity_gap",
     TANK "salinity=34;source_salinity=33.1"},
    {"salinity-step-down", BELOW, -5, "salinity", "salinity_gap",
     TANK "salinity=28.1;source_salinity=33.1"},
    {"ph-step", ABOVE, 0.3, "ph", "ph_gap", TANK "ph=8.2;source_ph=7.9"},
    {"ph-step", BELOW, -0.3, "ph", "ph_gap", TANK "ph=7.6;source_ph=7.9"},
    {"return-step", ABOVE, 1, "temp", "temp_gap", TANK "temp=24;source_temp=23.3"},
    {"return-step", UP_TO, 2, "temp", "temp_gap", TANK "temp=25;source_temp=23.3"},
    {"return-step", BELOW, -1, "salinity", "salinity_gap", TANK "salinity=32;source_salinity=33.1"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(bath(), edges, sizeof edges / sizeof edges[0]);
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 16; corner++) {
        char line[200];
        (void)snprintf(line, sizeof line, "volume=%s;strength=%s;target=%s;minutes=%s",
                       corner & 1 ? "10000L" : "0.1L", corner & 2 ? "100mg/mL" : "0.1mg/mL",
                       corner & 4 ? (corner & 2 ? "50" : "10") : "0.1", corner & 8 ? "120" : "1");
        check(isfinite(ask_for(line, "dye")));
        check(isfinite(ask_for(line, "level")));
    }
    /* Of the rates the ends make a bath with the stock from the other end. */
    check(isfinite(ask_for("volume=10000L;strength=100mg/mL;rate=0.001mL/L", "level")));
    check(isfinite(ask_for("volume=0.1L;strength=0.1mg/mL;rate=10mL/L", "level")));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_target_and_by_rate),
        cmocka_unit_test(target_and_rate_agree),
        cmocka_unit_test(gaps),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
