/* test_binder.c - the calculation binder: by label and by name, what is withheld, every note. */
#include "assert_close.h"
#include "holdwater/binder.h"
#include "holdwater/nitrogen.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *binder(void)
{
    return find_calc("binder");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(binder(), line, &question, &answer);
    return result_of(binder(), &answer, result);
}

static int status_of(const char *line)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(binder(), line, &question, &answer);
    return answer.status;
}

#define TANK         "volume=75L;tan=0.8;"
#define BY_LABEL     ";agent=label;label-per=40L;label-binds=1"
#define LIQUID       TANK "medicine=none" BY_LABEL ";label-liquid=5mL"
#define POWDER       TANK "medicine=none" BY_LABEL ";label-mass=2g"
#define POWDER_AT(t) "volume=75L;medicine=none" BY_LABEL ";label-mass=2g;tan=" t
#define SULFONATE    TANK "medicine=none;agent=hydroxymethanesulfonate"
#define DRY          TANK "medicine=none;agent=hydroxymethanesulfinate-anhydrous"
#define DIHYDRATE    TANK "medicine=none;agent=hydroxymethanesulfinate-dihydrate"
#define WITH(m)      TANK "medicine=" m ";agent=hydroxymethanesulfonate"
#define READS(t)     "volume=75L;tan=" t ";medicine=none;agent=hydroxymethanesulfonate"

static void by_label(void **state)
{
    (void)state;
    assert_close(ask_for(LIQUID, "liquid"), 5 * 75 / 40.0 * 0.8, 0, 1e-15);
    check(isnan(ask_for(LIQUID, "amount")));
    check(isnan(ask_for(LIQUID, "oxygen_used")));
    assert_close(ask_for(POWDER, "amount"), 2 * 75 / 40.0 * 0.8, 0, 1e-15);
    check(isnan(ask_for(POWDER, "liquid")));
    check(isnan(ask_for(POWDER, "oxygen_used")));
    assert_close(ask_for(POWDER, "bound"), 60, 0, 1e-15);
    /* tan and label_binds count alike, so the basis moves what is bound and not the dose. */
    assert_close(ask_for(POWDER ";basis=nh3", "amount"), 3, 0, 1e-15);
    assert_close(ask_for(POWDER ";basis=nh3", "bound"), 60 * 14.007 / 17.031, 0, 1e-15);
    /* Above what one dose of the label binds one dose is told, and what that binds. */
    assert_close(ask_for(POWDER_AT("2.4"), "amount"), 2 * 75 / 40.0, 0, 1e-15);
    assert_close(ask_for(POWDER_AT("2.4"), "bound"), 75, 0, 1e-15);
    assert_close(ask_for(POWDER_AT("2.4") ";basis=nh3", "bound"), 75 * 14.007 / 17.031, 0, 1e-15);
    /* A label's own dose for its own water and ammonia. */
    static const char *const own = "volume=40L;tan=1;medicine=none" BY_LABEL ";label-liquid=5mL";
    assert_close(ask_for(own, "liquid"), 5, 0, 0);
}

static void by_name(void **state)
{
    (void)state;
    assert_close(ask_for(SULFONATE, "amount"), 60 * 134.081 / 14007, 0, 1e-15);
    assert_close(ask_for(DRY, "amount"), 60 * 118.082 / 14007, 0, 1e-15);
    assert_close(ask_for(DIHYDRATE, "amount"), 60 * 154.112 / 14007, 0, 1e-15);
    assert_close(ask_for(SULFONATE ";excess=4;strength=80%", "amount"),
                 60 * 134.081 / 14007 * 4 / 0.8, 0, 1e-15);
    assert_close(ask_for(SULFONATE ";basis=nh4", "amount"), 60 * 134.081 / 18039, 0, 1e-15);
    check(isnan(ask_for(SULFONATE, "liquid")));
    assert_close(ask_for(SULFONATE, "oxygen_used"), 0.8 * 15.999 / 14.007, 0, 1e-15);
    assert_close(ask_for(DRY ";excess=2", "oxygen_used"), 1.6 * 31.998 / 14.007, 0, 1e-15);
    assert_close(ask_for(DIHYDRATE ";strength=50%", "oxygen_used"), 0.8 * 31.998 / 14.007, 0,
                 1e-15);
}

static void hours(void **state)
{
    (void)state;
    assert_close(ask_for(LIQUID, "release_from"), 24, 0, 0);
    assert_close(ask_for(LIQUID, "release_to"), 48, 0, 0);
    assert_close(ask_for(SULFONATE ";hold-from=0.5d;hold-to=30h", "release_from"), 12, 0, 0);
    assert_close(ask_for(SULFONATE ";hold-from=0.5d;hold-to=30h", "release_to"), 30, 0, 0);
    assert_int_equal(status_of(LIQUID ";hold-from=30;hold-to=30"), 0);
    assert_int_equal(status_of(LIQUID ";hold-from=30.1;hold-to=30"), -1);
}

/* Ionic and amine-held copper and dye withhold it, whatever stands beside them and whatever is
 * asked; nothing else does. All sets of medicines, by each kind of agent. */
static void withheld(void **state)
{
    (void)state;
    static const char *const words[] = {"copper-ionic", "copper-amine", "copper-chelated",
                                        "dye",          "formalin",     "antibiotic",
                                        "binder",       "other",        "copper"};
    static const char *const agents[] = {
        "agent=hydroxymethanesulfonate", "agent=hydroxymethanesulfinate-anhydrous;excess=2",
        "agent=hydroxymethanesulfinate-dihydrate;strength=60%",
        "agent=label;label-per=40L;label-binds=1;label-mass=2g", "agent=label"};
    const unsigned forbidden = 1u << 0 | 1u << 1 | 1u << 3 | 1u << 8;
    for (unsigned set = 1; set < 512; set++) {
        char line[300] = TANK "medicine=";
        for (unsigned i = 0; i < 9; i++) {
            if (((set >> i) & 1u) != 0) {
                size_t used = strlen(line);
                (void)snprintf(line + used, sizeof line - used, "%s%s",
                               line[used - 1] == '=' ? "" : ",", words[i]);
            }
        }
        size_t used = strlen(line);
        (void)snprintf(line + used, sizeof line - used, ";%s", agents[set % 5]);
        bool wanted = (set & forbidden) != 0;
        bool labelled = set % 5 != 4;
        assert_int_equal(status_of(line), wanted ? -2 : labelled ? 0 : -1);
        wanted = wanted || !labelled;
        check(isnan(ask_for(line, "amount")) == wanted);
        check(isnan(ask_for(line, "bound")) == wanted);
        check(isnan(ask_for(line, "release_from")) == wanted);
    }
    assert_int_equal(status_of(WITH("copper-ionic") ";hold-from=40;hold-to=30"), -2);
    assert_int_equal(status_of("volume=75L;tan=0;medicine=dye;agent=hydroxymethanesulfonate"), -2);
}

static const struct note_row notes[] = {
    {"binder-copper", WITH("copper-ionic"), SULFONATE},
    {"binder-copper", WITH("copper-amine,antibiotic"), WITH("copper-chelated")},
    {"binder-copper", TANK "medicine=copper-amine" BY_LABEL ";label-mass=2g", WITH("dye")},
    {"binder-dye", WITH("dye,copper-chelated"), WITH("copper-ionic")},
    {"hold-order", LIQUID ";hold-from=36;hold-to=35", LIQUID ";hold-from=36;hold-to=36"},
    {"hold-order", LIQUID ";hold-to=23", LIQUID ";hold-to=24"},
    {"nothing-bound", READS("0"), READS("0.01")},
    {"nothing-bound", "volume=75L;tan=0;medicine=none" BY_LABEL ";label-mass=2g", POWDER},
    {"over-label", "volume=75L;tan=1.01;medicine=none" BY_LABEL ";label-mass=2g",
     "volume=75L;tan=1;medicine=none" BY_LABEL ";label-mass=2g"},
    {"over-label", "volume=75L;tan=1.01;medicine=none" BY_LABEL ";label-liquid=2mL", SULFONATE},
    {"binder-copper", WITH("copper"), WITH("copper-chelated")},
    {"binder-label", TANK "medicine=none" BY_LABEL, POWDER},
    {"binder-label", TANK "medicine=none;agent=label;label-mass=2g;label-per=40L", POWDER},
    {"binder-label", TANK "medicine=none;agent=label;label-liquid=2mL;label-binds=1", SULFONATE},
    {"binder-label", TANK "medicine=none;agent=label", TANK "medicine=copper;agent=label"},
    {"binder-oxygen-all", READS("4.4"), READS("4.37")},
    {"binder-oxygen-all", DRY ";excess=3", DRY ";excess=2"},
    {"binder-oxygen-all", POWDER_AT("4.4"), POWDER_AT("4.37")},
    {"binder-oxygen-all", POWDER_AT("5.4;basis=nh3"), POWDER_AT("5.3;basis=nh3")},
    {"binder-oxygen-2", READS("4.37"), READS("4.4")},
    {"label-oxygen", "volume=75L;tan=1.76;medicine=none" BY_LABEL ";label-mass=2g",
     "volume=75L;tan=1.75;medicine=none" BY_LABEL ";label-mass=2g"},
    {"label-oxygen", "volume=75L;tan=1.76;medicine=none" BY_LABEL ";label-liquid=2mL",
     READS("4.37")},
    {"binder-oxygen-2", READS("1.76"), READS("1.75")},
    {"binder-oxygen-2", DRY ";excess=1.2", LIQUID},
    {"binder-oxygen-1", READS("0.88"), READS("0.87")},
    {"binder-oxygen-1", READS("1.75"), READS("1.76")},
    {"binder-again", WITH("binder"), WITH("formalin,antibiotic,other,copper-chelated")},
    {"binder-chelated", WITH("copper-chelated"), WITH("formalin,antibiotic,binder,other")},
    {"binder-chelated", WITH("copper-chelated,other"), WITH("copper-ionic")},
    {"test-copper", WITH("copper-chelated"), SULFONATE},
    {"binder-formalin", WITH("formalin,antibiotic"), WITH("antibiotic,binder,other")},
    {"test-formalin", WITH("formalin"), WITH("other")},
    {"binder-other", WITH("other"), WITH("formalin,antibiotic,binder,copper-chelated")},
    {"test-other", WITH("other"), SULFONATE},
    {"hold-long", SULFONATE ";hold-to=2.1d", SULFONATE ";hold-to=2d"},
    {"weigh-small", SULFONATE, "volume=190L;tan=0.8;medicine=none;agent=hydroxymethanesulfonate"},
    {"weigh-small", "volume=75L;tan=0.2;medicine=none" BY_LABEL ";label-mass=2g", POWDER},
    {"weigh-small", READS("0.01"), READS("0")},
    {"weigh-small", DRY, LIQUID},
    {"small-liquid", "volume=7.5L;tan=0.8;medicine=none" BY_LABEL ";label-liquid=5mL", LIQUID},
    {"small-liquid", "volume=7.5L;tan=0.01;medicine=none" BY_LABEL ";label-liquid=5mL",
     "volume=7.5L;tan=0;medicine=none" BY_LABEL ";label-liquid=5mL"},
    {"weigh-powder", POWDER, LIQUID},
    {"weigh-powder", DRY, READS("0")},
    {"label-rules", LIQUID, SULFONATE},
    {"label-counts", POWDER, DRY},
    {"oxygen-unsaid", LIQUID, DIHYDRATE},
    {"agent-by-label", SULFONATE, LIQUID},
    {"agent-by-label", DRY ";excess=2", POWDER},
    {"binder-excess", SULFONATE, SULFONATE ";excess=4"},
    {"binder-excess", SULFONATE ";excess=3.9", LIQUID},
    {"binder-excess", DIHYDRATE, LIQUID},
    {"bound-not-gone", LIQUID, WITH("dye")},
    {"binder-lets-go", LIQUID, WITH("dye")},
    {"binder-aerate", SULFONATE, WITH("copper-ionic")},
    {"binder-tests", SULFONATE, WITH("copper-ionic")},
    {"binder-then", SULFONATE, WITH("copper-amine")},
    {"kit-basis", LIQUID, LIQUID ";hold-to=1"},
    {"ask-vet", LIQUID, NULL},
    {"ask-vet", WITH("copper-ionic,dye"), NULL},
    {"ask-vet", LIQUID ";hold-to=1", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(binder(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"hold-order", ABOVE, 36, "hold-from", NULL, LIQUID ";hold-from=36;hold-to=36"},
    {"over-label", ABOVE, 1, "tan", NULL,
     "volume=75L;tan=1;medicine=none" BY_LABEL ";label-mass=2g"},
    {"binder-oxygen-all", ABOVE, 5 * 14.007 / 15.999, "tan", NULL, READS("4.377")},
    {"binder-oxygen-all", ABOVE, 5 * 14.007 / 15.999, "tan", NULL, POWDER_AT("4.377")},
    {"binder-oxygen-2", UP_TO, 5 * 14.007 / 15.999, "tan", NULL, READS("4.377")},
    {"label-oxygen", ABOVE, 2 * 14.007 / 15.999, "tan", NULL,
     "volume=75L;tan=1.75;medicine=none" BY_LABEL ";label-mass=2g"},
    {"binder-oxygen-2", ABOVE, 2, "tan", "oxygen_used", READS("1.7")},
    {"binder-oxygen-1", UP_TO, 2, "tan", "oxygen_used", READS("1.7")},
    {"binder-oxygen-1", ABOVE, 1, "tan", "oxygen_used", READS("0.9")},
    {"hold-long", ABOVE, 48, "hold-to", NULL, SULFONATE ";hold-to=48"},
    {"weigh-small", BELOW, 1, "volume", "amount", SULFONATE},
    {"weigh-small", BELOW, 1, "volume", "amount", POWDER},
    {"small-liquid", BELOW, 1, "volume", "liquid", LIQUID},
    {"binder-excess", BELOW, 4, "excess", NULL, SULFONATE ";excess=4"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(binder(), edges, sizeof edges / sizeof edges[0]);
}

/* What is in the water and what binds are asked, never assumed. */
static void asked_never_assumed(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {TANK "agent=hydroxymethanesulfonate", HW_PROBLEM_MISSING},
        {TANK "medicine=none", HW_PROBLEM_MISSING},
        {"volume=75L;medicine=none;agent=hydroxymethanesulfonate", HW_PROBLEM_MISSING},
        {"tan=1.2;medicine=none;agent=hydroxymethanesulfonate", HW_PROBLEM_MISSING},
        {"volume=75;tan=1.2;medicine=none;agent=hydroxymethanesulfonate", HW_PROBLEM_NEEDS_UNIT},
        {LIQUID ";label-mass=2g", HW_PROBLEM_MANY_OF_GROUP},
        {TANK "medicine=none" BY_LABEL ";label-mass=2", HW_PROBLEM_NEEDS_UNIT},
        {SULFONATE ";label-mass=2g", HW_PROBLEM_OUT_OF_PLACE},
        {SULFONATE ";label-binds=1", HW_PROBLEM_OUT_OF_PLACE},
        {LIQUID ";excess=2", HW_PROBLEM_OUT_OF_PLACE},
        {LIQUID ";strength=90%", HW_PROBLEM_OUT_OF_PLACE},
        {SULFONATE ";excess=5", HW_PROBLEM_OUT_OF_RANGE},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        assert_int_equal(ask_settle(binder(), wrong[i].line, &question, &which), wrong[i].problem);
    }
}

/* A property: what binds is spread through the tank again, as moles of agent to a mole of ammonia
 * it is the excess asked for; and in two halves of the water there is half of it each. */
static void moles_in_the_tank(void **state)
{
    (void)state;
    static const char *const agents[] = {"hydroxymethanesulfonate",
                                         "hydroxymethanesulfinate-anhydrous",
                                         "hydroxymethanesulfinate-dihydrate"};
    static const double molar[] = {134.081, 118.082, 154.112};
    static const char *const bases[] = {"n", "nh3", "nh4"};
    static const double of_basis[] = {14.007, 17.031, 18.039};
    hw_random_start(20310603);
    for (unsigned i = 0; i < 900; i++) {
        char line[240];
        char half[240];
        double volume = hw_random_between(0.3, 400);
        double tan = hw_random_between(0.01, 0.4);
        double strength = hw_random_between(10, 100);
        double excess = hw_random_between(1, 4);
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;tan=%.17g;basis=%s;medicine=none;agent=%s;strength=%.17g%%;"
                       "excess=%.17g",
                       volume, tan, bases[i / 3 % 3], agents[i % 3], strength, excess);
        (void)snprintf(half, sizeof half,
                       "volume=%.17gL;tan=%.17g;basis=%s;medicine=none;agent=%s;strength=%.17g%%;"
                       "excess=%.17g",
                       volume / 2, tan, bases[i / 3 % 3], agents[i % 3], strength, excess);
        double amount = ask_for(line, "amount");
        double agent = 1000 * amount * strength / 100 / molar[i % 3] / volume;
        assert_close(agent / (tan / of_basis[i / 3 % 3]), excess, 0, 1e-13);
        assert_close(ask_for(half, "amount"), amount / 2, 0, 1e-13);
        assert_close(ask_for(half, "oxygen_used"), ask_for(line, "oxygen_used"), 0, 1e-13);
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 64; corner++) {
        char line[240];
        (void)snprintf(line, sizeof line,
                       "volume=%s;tan=%s;medicine=none;agent=label;%s;label-per=%s;label-binds=%s",
                       corner & 1 ? "1e5L" : "0.1L", corner & 2 ? "4.37" : "0",
                       corner & 4 ? "label-mass=1e5g" : "label-liquid=0.001mL",
                       corner & 8 ? "1e5L" : "0.01L", corner & 16 ? "100" : "0.01");
        check(isfinite(ask_for(line, corner & 4 ? "amount" : "liquid")));
        (void)snprintf(line, sizeof line,
                       "volume=%s;tan=%s;basis=%s;medicine=none;agent=%s;strength=%s;excess=%s",
                       corner & 1 ? "1e5L" : "0.1L", corner & 2 ? "100" : "0",
                       corner & 4 ? "n" : "nh4",
                       corner & 8 ? "hydroxymethanesulfonate" : "hydroxymethanesulfinate-dihydrate",
                       corner & 16 ? "10%" : "100%", corner & 32 ? "1" : "4");
        /* 100 mg/L takes more oxygen than there is */
        assert_int_equal(status_of(line), corner & 2 ? -2 : 0);
        check(isfinite(ask_for(line, "amount")) == !(corner & 2));
        check(isfinite(ask_for(line, "oxygen_used")) == !(corner & 2));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_label),
        cmocka_unit_test(by_name),
        cmocka_unit_test(hours),
        cmocka_unit_test(withheld),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(asked_never_assumed),
        cmocka_unit_test(moles_in_the_tank),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
