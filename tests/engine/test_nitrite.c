/* test_nitrite.c - the calculation nitrite: both ways of counting, chloride, every note. */
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

static const struct hw_calc *nitrite(void)
{
    return find_calc("nitrite");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(nitrite(), line, &question, &answer);
    return result_of(nitrite(), &answer, result);
}

/* Molar masses written out again here. */
static void both_ways_of_counting(void **state)
{
    (void)state;
    static const char *const as_n = "nitrite=0.85;salinity=31.5";
    static const char *const as_ion = "nitrite=850ug/L;basis=ion;salinity=31.5";
    assert_close(ask_for(as_n, "as_n"), 0.85, 0, 0);
    assert_close(ask_for(as_n, "as_ion"), 0.85 * 46.005 / 14.007, 0, 1e-15);
    assert_close(ask_for(as_ion, "as_n"), 0.85 * 14.007 / 46.005, 0, 1e-15);
    assert_close(ask_for(as_ion, "as_ion"), 0.85, 0, 1e-15);
    assert_close(ask_for(as_ion, "chloride"), ask_for(as_n, "chloride"), 0, 0);
    assert_close(ask_for(as_n, "chloride_ratio"), ask_for(as_n, "chloride") / 0.85, 0, 1e-15);
}

/* 19 353 mg/kg of chloride at 35 g/kg and 1024.763 kg/m3 at 20 C. */
static void chloride(void **state)
{
    (void)state;
    assert_close(ask_for("nitrite=0.3;salinity=35", "chloride"), 19353 * 1.024763, 0, 1e-4);
    assert_close(ask_for("nitrite=0.3;salinity=0", "chloride"), 0, 0, 0);
    assert_close(ask_for("nitrite=0.3;salinity=0", "chloride_ratio"), 0, 0, 0);
    check(isnan(ask_for("nitrite=0;salinity=35", "chloride_ratio")));
    check(isfinite(ask_for("nitrite=0;salinity=35", "chloride")));
}

static void stretched_above_the_fit(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(nitrite(), "nitrite=0.3;salinity=42.1", &question, &answer);
    assert_int_equal(answer.status, 1);
    ask(nitrite(), "nitrite=0.3;salinity=42", &question, &answer);
    assert_int_equal(answer.status, 0);
}

static const struct note_row notes[] = {
    {"nitrite-seen", "nitrite=0.02;salinity=34", "nitrite=0;salinity=34"},
    {"nitrite-none", "nitrite=0;salinity=34", "nitrite=0.02;salinity=34"},
    {"nitrite-fresh-act", "nitrite=0.1;salinity=0.9", "nitrite=0.1;salinity=1g/kg"},
    {"nitrite-fresh-act", "nitrite=0.1;salinity=0", "nitrite=0;salinity=0"},
    {"nitrite-effect", "nitrite=3;salinity=34", "nitrite=2.99;salinity=34"},
    {"nitrite-effect", "nitrite=10;basis=ion;salinity=34", "nitrite=9.8;basis=ion;salinity=34"},
    {"chloride-ratio-low", "nitrite=0.3;salinity=0", "nitrite=0;salinity=0"},
    {"chloride-ratio-low", "nitrite=28;salinity=2", "nitrite=27;salinity=2"},
    {"nitrite-low-salinity", "nitrite=0.3;salinity=19.9", "nitrite=0.3;salinity=20"},
    {"nitrite-low-salinity", "nitrite=0.3;salinity=1g/kg", "nitrite=0.3;salinity=0.9"},
    {"nitrite-low-salinity", "nitrite=0.02;salinity=12", "nitrite=0;salinity=12"},
    {"tap-chloride", "nitrite=0;salinity=0.9", "nitrite=0;salinity=1g/kg"},
    {"above-fit", "nitrite=0.3;salinity=42.1", "nitrite=0.3;salinity=42"},
    {"nitrite-basis", "nitrite=0.3;salinity=34", NULL},
    {"chloride-not-safe", "nitrite=0.3;salinity=34", NULL},
    {"chloride-reckoned", "nitrite=0.3;salinity=34", NULL},
    {"nitrite-kit", "nitrite=0.3;salinity=34", NULL},
    {"ask-vet", "nitrite=0.3;salinity=34", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(nitrite(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"nitrite-fresh-act", BELOW, 1, "salinity", NULL, "nitrite=0.1;salinity=1g/kg"},
    {"nitrite-effect", FROM, 3, "nitrite", NULL, "nitrite=3;salinity=34"},
    {"nitrite-effect", FROM, 3, "nitrite", "as_n", "nitrite=10;basis=ion;salinity=34"},
    {"chloride-ratio-low", BELOW, 40.5, "nitrite", "chloride_ratio", "nitrite=27;salinity=2"},
    {"nitrite-low-salinity", BELOW, 20, "salinity", NULL, "nitrite=0.3;salinity=20"},
    {"nitrite-low-salinity", FROM, 1, "salinity", NULL, "nitrite=0.3;salinity=1g/kg"},
    {"tap-chloride", BELOW, 1, "salinity", NULL, "nitrite=0;salinity=1g/kg"},
    {"above-fit", ABOVE, 42, "salinity", NULL, "nitrite=0.3;salinity=42"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(nitrite(), edges, sizeof edges / sizeof edges[0]);
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 8; corner++) {
        char line[100];
        (void)snprintf(line, sizeof line, "nitrite=%s;basis=%s;salinity=%s",
                       corner & 1 ? "1000" : "0", corner & 2 ? "ion" : "n",
                       corner & 4 ? "45" : "0");
        check(isfinite(ask_for(line, "as_n")));
        check(isfinite(ask_for(line, "as_ion")));
        check(isfinite(ask_for(line, "chloride")));
        check(isfinite(ask_for(line, "chloride_ratio")) == ((corner & 1) != 0));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(both_ways_of_counting),
        cmocka_unit_test(chloride),
        cmocka_unit_test(stretched_above_the_fit),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
