/* test_disinfect.c - the calculation disinfect: bottles, amounts, every note. */
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

static const struct hw_calc *disinfect(void)
{
    return find_calc("disinfect");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(disinfect(), line, &question, &answer);
    return result_of(disinfect(), &answer, result);
}

#define TANK   "volume=75L;strength=5.25%"
#define BOTTLE "volume=75L;strength=10.9%;strength_as=naocl-ww;density=1.157g/mL"

static void amounts(void **state)
{
    (void)state;
    assert_close(ask_for("volume=100L;strength=5%", "bleach"), 400, 0, 1e-15);
    assert_close(ask_for("volume=100L;strength=5%", "thiosulfate"), 140, 0, 1e-15);
    assert_close(ask_for("volume=100L;strength=5%", "contact"), 6000, 0, 0);
    assert_close(ask_for(TANK ";minutes=1h;target=150", "contact"), 9000, 0, 0);
    assert_close(ask_for(TANK ";target=150;ratio=7.4", "thiosulfate"), 83.25, 0, 1e-15);
}

/* One bottle, labelled in three ways: 120 g/L at 1.157, NaOCl being 1.05 times the chlorine. */
static void three_labels_of_one_bottle(void **state)
{
    (void)state;
    char line[120];
    double by_volume = ask_for("volume=75L;strength=12%", "bleach");
    (void)snprintf(line, sizeof line,
                   "volume=75L;strength=%.17g%%;strength_as=ww;density=1157kg/m3", 12 / 1.157);
    assert_close(ask_for(line, "bleach"), by_volume, 0, 1e-14);
    (void)snprintf(line, sizeof line,
                   "volume=75L;strength=%.17g%%;strength_as=naocl-ww;density=1.157g/mL",
                   12 * 1.05 / 1.157);
    assert_close(ask_for(line, "bleach"), by_volume, 0, 0.0005);
}

static const struct note_row notes[] = {
    {"contact-short", TANK ";minutes=29", TANK ";minutes=30"},
    {"contact-short", TANK ";target=199", TANK ";target=200"},
    {"target-low", TANK ";target=99;minutes=4h", TANK ";target=100;minutes=4h"},
    {"ratio-too-low", TANK ";ratio=0.87", TANK ";ratio=0.88"},
    {"ratio-low", TANK ";ratio=6.9", TANK ";ratio=7"},
    {"small-liquid", "volume=0.2L;strength=5%", "volume=1L;strength=5%"},
    {"weigh-small", "volume=0.7L;strength=5%", "volume=0.8L;strength=5%"},
    {"percent-by-mass", BOTTLE, TANK},
    {"percent-by-mass", "volume=75L;strength=10%;strength_as=ww;density=1.15g/mL", TANK},
    {"percent-by-volume", TANK, BOTTLE},
    {"drain-first", TANK, NULL},
    {"contact-whole", TANK, NULL},
    {"test-strong", TANK, NULL},
    {"neutralise-rinse", TANK, NULL},
    {"never-mix", TANK, NULL},
    {"bleach-care", TANK, NULL},
    {"bleach-old", TANK, NULL},
    {"bleach-plain", TANK, NULL},
    {"porous-out", TANK, NULL},
    {"fresh-fill", TANK, NULL},
    {"bleach-waste", TANK, NULL},
    {"ask-vet", TANK, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(disinfect(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"contact-short", BELOW, 6000, "minutes", "contact", TANK ";minutes=30"},
    {"contact-short", BELOW, 200, "target", NULL, TANK ";target=200"},
    {"target-low", BELOW, 100, "target", NULL, TANK ";target=100;minutes=4h"},
    {"ratio-too-low", BELOW, 0.875, "ratio", NULL, TANK ";ratio=1"},
    {"ratio-low", BELOW, 7, "ratio", NULL, TANK ";ratio=7"},
    {"small-liquid", BELOW, 1, "volume", "bleach", TANK},
    {"weigh-small", BELOW, 1, "volume", "thiosulfate", TANK},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(disinfect(), edges, sizeof edges / sizeof edges[0]);
}

/* A strength carries its %, and a density belongs to a per cent by mass. */
static void conditions(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"volume=75L", HW_PROBLEM_MISSING},
        {"volume=75L;strength=0.05", HW_PROBLEM_NEEDS_UNIT},
        {"volume=75;strength=5%", HW_PROBLEM_NEEDS_UNIT},
        {TANK ";density=1.1g/mL", HW_PROBLEM_OUT_OF_PLACE},
        {TANK ";strength_as=ww", HW_PROBLEM_MISSING},
        {TANK ";strength_as=naocl-ww", HW_PROBLEM_MISSING},
        {TANK ";strength_as=ww;density=1.1", HW_PROBLEM_NEEDS_UNIT},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        assert_int_equal(ask_settle(disinfect(), wrong[i].line, &question, &which),
                         wrong[i].problem);
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const labels[] = {
        "",
        ";strength_as=ww;density=1g/mL",
        ";strength_as=ww;density=1.3g/mL",
        ";strength_as=naocl-ww;density=1g/mL",
        ";strength_as=naocl-ww;density=1300kg/m3",
    };
    for (unsigned corner = 0; corner < 32; corner++) {
        for (size_t i = 0; i < sizeof labels / sizeof labels[0]; i++) {
            char line[200];
            (void)snprintf(
                line, sizeof line, "volume=%s;strength=%s;target=%s;minutes=%s;ratio=%s%s",
                corner & 1 ? "1e5L" : "0.1L", corner & 2 ? "20%" : "1%", corner & 4 ? "1000" : "10",
                corner & 8 ? "1d" : "1", corner & 16 ? "10" : "0.875", labels[i]);
            check(isfinite(ask_for(line, "bleach")));
            check(isfinite(ask_for(line, "contact")));
            check(isfinite(ask_for(line, "thiosulfate")));
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(amounts),    cmocka_unit_test(three_labels_of_one_bottle),
        cmocka_unit_test(every_note), cmocka_unit_test(every_edge),
        cmocka_unit_test(conditions), cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
