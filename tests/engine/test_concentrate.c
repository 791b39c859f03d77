/* test_concentrate.c - the calculation concentrate: masses, strengths, solubility, every note. */
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

static const struct hw_calc *concentrate(void)
{
    return find_calc("concentrate");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(concentrate(), line, &question, &answer);
    return result_of(concentrate(), &answer, result);
}

#define CHLORIDE "reagent=ammonium-chloride;into=110L;make=250mL;"
#define COPPER   "reagent=copper-sulfate-pentahydrate;into=75L;make=500mL;"
#define SULFATE  "reagent=ammonium-sulfate;into=10L;make=250mL;"

/* Molar masses written out again here. */
static void masses(void **state)
{
    (void)state;
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL", "mass"), 11 * 0.25 * 53.489 / 14.007, 0,
                 1e-14);
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL;basis=nh3", "mass"),
                 11 * 0.25 * 53.489 / 17.031, 0, 1e-14);
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL;basis=nh4", "mass"),
                 11 * 0.25 * 53.489 / 18.039, 0, 1e-14);
    assert_close(ask_for("reagent=ammonium-sulfate;into=20gal;make=2L;raises=0.3;per=6mL", "mass"),
                 0.3 * 20 * 3.785411784 / 6 * 2 * 132.134 / 28.014, 0, 1e-14);
    assert_close(ask_for(COPPER "raises=0.04;per=3mL", "mass"), 0.5 * 249.677 / 63.546, 0, 1e-14);
}

/* In g/L, whatever the basis: it is the basis that the strength is in. */
static void strengths(void **state)
{
    (void)state;
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL", "strength"), 11, 0, 1e-14);
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL;basis=nh4", "strength"), 11, 0, 1e-14);
    assert_close(ask_for(COPPER "raises=40ug/L;per=3mL", "strength"), 1, 0, 1e-14);
    assert_close(ask_for(COPPER "raises=0.04", "strength"), 3, 0, 1e-14);
}

static void shares(void **state)
{
    (void)state;
    assert_close(ask_for(CHLORIDE "raises=0.4;per=4mL", "solubility_share"),
                 100 * 11 * 53.489 / 14.007 / 291, 0, 1e-14);
    assert_close(ask_for(COPPER "raises=0.04;per=3mL", "solubility_share"),
                 100 * 249.677 / 63.546 / 319, 0, 1e-14);
}

/* Of the chloride 76.2 g/L as N dissolve, of the sulfate 113, of copper 81.1. */
static const struct note_row notes[] = {
    {"stock-over-solubility", CHLORIDE "raises=0.7", CHLORIDE "raises=0.69"},
    {"stock-over-solubility", COPPER "raises=1.09", COPPER "raises=1.08"},
    {"stock-over-solubility", "reagent=ammonium-sulfate;raises=50;into=100000L;per=0.1mL;make=1L",
     "reagent=ammonium-sulfate;raises=1.13;into=100L;make=1L"},
    {"stock-near-solubility", CHLORIDE "raises=0.35", CHLORIDE "raises=0.34"},
    {"stock-weigh-small", COPPER "raises=0.01;per=2mL", COPPER "raises=0.01"},
    {"stock-one-dose", "reagent=ammonium-chloride;raises=2;into=110L;make=100mL;per=101mL",
     "reagent=ammonium-chloride;raises=2;into=110L;make=100mL;per=100mL"},
    {"small-liquid", COPPER "raises=0.04;per=0.9mL", COPPER "raises=0.04;per=1mL"},
    {"stock-ammonia-stalls", SULFATE "raises=5.1", SULFATE "raises=5"},
    {"stock-ammonia-stalls", SULFATE "raises=5.1;basis=nh4", COPPER "raises=0.05"},
    {"stock-copper-step", COPPER "raises=0.051", COPPER "raises=0.05"},
    {"stock-copper-step", COPPER "raises=0.051", CHLORIDE "raises=0.051"},
    {"stock-copper-over", COPPER "raises=0.21", COPPER "raises=0.2"},
    {"no-fish", CHLORIDE "raises=0.2", COPPER "raises=0.05"},
    {"kit-basis", CHLORIDE "raises=0.2", COPPER "raises=0.05"},
    {"stock-hydrate", COPPER "raises=0.05", CHLORIDE "raises=0.2"},
    {"stock-copper-test", COPPER "raises=0.05", CHLORIDE "raises=0.2"},
    {"stock-invertebrates", COPPER "raises=0.05", CHLORIDE "raises=0.2"},
    {"stock-beats-pinch", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"stock-fill-up", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"stock-label", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"stock-one-tank", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"stock-pure", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"stock-keeping", COPPER "raises=0.05", CHLORIDE "raises=0.7"},
    {"ask-vet", CHLORIDE "raises=0.7", NULL},
    {"ask-vet", COPPER "raises=0.05", NULL},
    {"ask-vet", CHLORIDE "raises=0.2;basis=nh4", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(concentrate(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"stock-ammonia-stalls", ABOVE, 5, "raises", NULL, SULFATE "raises=5"},
    {"stock-over-solubility", ABOVE, 291 * 14.007 / 53.489 / 110, "raises", NULL,
     CHLORIDE "raises=0.7"},
    {"stock-near-solubility", ABOVE, 50, "raises", "solubility_share", CHLORIDE "raises=0.35"},
    {"stock-weigh-small", BELOW, 1, "raises", "mass", COPPER "raises=0.01"},
    {"stock-one-dose", BELOW, 100, "make", NULL,
     "reagent=ammonium-chloride;raises=2;into=110L;make=100mL;per=100mL"},
    {"small-liquid", BELOW, 1, "per", NULL, COPPER "raises=0.04;per=1mL"},
    {"stock-copper-step", ABOVE, 0.05, "raises", NULL, COPPER "raises=0.05"},
    {"stock-copper-over", ABOVE, 0.2, "raises", NULL, COPPER "raises=0.2"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(concentrate(), edges, sizeof edges / sizeof edges[0]);
}

/* Every corner is an answer, or refused for what does not dissolve. */
static void corners(void **state)
{
    (void)state;
    static const char *const reagents[] = {"ammonium-chloride", "ammonium-sulfate",
                                           "copper-sulfate-pentahydrate"};
    int answered = 0;
    for (unsigned corner = 0; corner < 48; corner++) {
        struct hw_question question;
        struct hw_answer answer;
        char line[200];
        (void)snprintf(line, sizeof line, "reagent=%s;raises=%s;per=%s;into=%s;make=%s",
                       reagents[corner / 16], corner & 1 ? "50" : "0.001",
                       corner & 2 ? "1000mL" : "0.1mL", corner & 4 ? "100000L" : "0.1L",
                       corner & 8 ? "100L" : "10mL");
        ask(concentrate(), line, &question, &answer);
        bool over = noted(concentrate(), &answer, "stock-over-solubility");
        check(answer.status == (over ? -1 : 0));
        check(over || (answer.out[0] > 0 && answer.out[1] > 0 && answer.out[2] > 0));
        answered += over ? 0 : 1;
    }
    check(answered >= 24);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(masses),     cmocka_unit_test(strengths),  cmocka_unit_test(shares),
        cmocka_unit_test(every_note), cmocka_unit_test(every_edge), cmocka_unit_test(corners),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
