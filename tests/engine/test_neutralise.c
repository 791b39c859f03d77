/* test_neutralise.c - the calculation neutralise: agents, ammonia, every note. */
#include "assert_close.h"
#include "holdwater/chlorine.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *neutralise(void)
{
    return find_calc("neutralise");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(neutralise(), line, &question, &answer);
    return result_of(neutralise(), &answer, result);
}

static int status_of(const char *line)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(neutralise(), line, &question, &answer);
    return answer.status;
}

#define WATER     "volume=75L;chlorine=1.2;"
#define PLAIN     WATER "chloramine=no;medicine=none"
#define CHLORAMIN WATER "chloramine=yes;medicine=none"
#define ASCORBIC  PLAIN ";agent=ascorbic-acid"
#define WITHHELD  CHLORAMIN ";agent=ascorbic-acid"
#define WITH(m)   WATER "chloramine=no;medicine=" m

static void amounts(void **state)
{
    (void)state;
    double dry = 75 * 1.2 * 7 * HW_MOLAR_THIOSULFATE / HW_MOLAR_THIOSULFATE_PENTAHYDRATE / 1000;
    assert_close(ask_for(PLAIN, "amount"), 0.63, 0, 1e-15);
    assert_close(ask_for(PLAIN ";agent=thiosulfate-anhydrous", "amount"), dry, 0, 1e-15);
    assert_close(ask_for(ASCORBIC, "amount"), 0.225, 0, 1e-15);
    assert_close(ask_for(PLAIN ";ratio=7.4", "amount"), 0.666, 0, 1e-15);
    assert_close(ask_for(ASCORBIC ";ratio=3", "amount"), 0.27, 0, 1e-15);
    /* The medicine and the chloramine change no amount. */
    assert_close(ask_for(CHLORAMIN, "amount"), 0.63, 0, 1e-15);
    assert_close(ask_for(WITH("copper-ionic,dye"), "amount"), 0.63, 0, 1e-15);
}

static void ammonia(void **state)
{
    (void)state;
    assert_close(ask_for(CHLORAMIN, "ammonia_freed"), 1.2 * 14.007 / 70.906, 0, 1e-15);
    assert_close(ask_for(CHLORAMIN ";ratio=9", "ammonia_freed"), 1.2 * 14.007 / 70.906, 0, 1e-15);
    assert_close(ask_for(PLAIN, "ammonia_freed"), 0, 0, 0);
}

/* Nothing measured is nothing to add: an answer, with a caution about the test. */
static void no_chlorine(void **state)
{
    (void)state;
    static const char *const none = "volume=75L;chlorine=0;chloramine=yes;medicine=none";
    assert_int_equal(status_of(none), 0);
    assert_close(ask_for(none, "amount"), 0, 0, 0);
    assert_close(ask_for(none, "ammonia_freed"), 0, 0, 0);
}

/* Ascorbic acid is withheld from chloramine, whatever else is said, and from nothing else. */
static void withheld(void **state)
{
    (void)state;
    static const char *const more[] = {"", ";ratio=5", ";ratio=2.49"};
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        char line[120];
        (void)snprintf(line, sizeof line, WITHHELD "%s", more[i]);
        assert_int_equal(status_of(line), -2);
        check(isnan(ask_for(line, "amount")));
        check(isnan(ask_for(line, "ammonia_freed")));
        (void)snprintf(line, sizeof line, ASCORBIC "%s", more[i]);
        assert_int_equal(status_of(line), 0);
    }
    assert_int_equal(status_of("volume=75L;chlorine=0;chloramine=yes;medicine=dye;"
                               "agent=ascorbic-acid"),
                     -2);
    assert_int_equal(status_of(CHLORAMIN ";agent=thiosulfate-anhydrous"), 0);
}

static const struct note_row notes[] = {
    {"ascorbic-chloramine", WITHHELD, ASCORBIC},
    {"ascorbic-chloramine", WITHHELD, CHLORAMIN},
    {"reducer-copper", WITH("copper-ionic"), PLAIN},
    {"reducer-copper", WITH("copper-amine,dye"), WITH("dye,formalin,antibiotic,binder,other")},
    {"reducer-copper", WITH("copper-chelated") ";agent=ascorbic-acid", WITHHELD},
    {"reducer-dye", WITH("dye"), WITH("copper-ionic,copper-amine,copper-chelated,formalin")},
    {"binder-chlorine", WITH("antibiotic,binder"), WITH("antibiotic,other,formalin,dye")},
    {"agent-ph", PLAIN, WITHHELD},
    {"agent-ph", ASCORBIC, NULL},
    {"reducer-copper", WITH("copper"), WITH("dye")},
    {"thiosulfate-slow", PLAIN, ASCORBIC},
    {"thiosulfate-slow", PLAIN ";agent=thiosulfate-anhydrous", ASCORBIC},
    {"hydrate-matters", PLAIN, ASCORBIC},
    {"thiosulfate-over", "volume=75L;chlorine=14.3;chloramine=no;medicine=none",
     "volume=75L;chlorine=14.2;chloramine=no;medicine=none"},
    {"thiosulfate-over", "volume=75L;chlorine=20;chloramine=no;medicine=none;ratio=5",
     "volume=75L;chlorine=100;chloramine=no;medicine=none;agent=ascorbic-acid"},
    {"ratio-too-low", PLAIN ";ratio=0.87", PLAIN ";ratio=0.88"},
    {"ratio-too-low", PLAIN ";ratio=0.55;agent=thiosulfate-anhydrous",
     PLAIN ";ratio=0.56;agent=thiosulfate-anhydrous"},
    {"ratio-too-low", ASCORBIC ";ratio=2.4", ASCORBIC ";ratio=2.49"},
    {"ratio-low", PLAIN ";ratio=6.9", PLAIN ";ratio=7"},
    {"ratio-low", PLAIN ";ratio=4.45;agent=thiosulfate-anhydrous",
     PLAIN ";ratio=4.46;agent=thiosulfate-anhydrous"},
    {"ratio-low", ASCORBIC ";ratio=2.49", ASCORBIC ";ratio=2.5"},
    {"ratio-low", PLAIN ";ratio=1.9", PLAIN},
    {"no-chlorine", "volume=75L;chlorine=0;chloramine=no;medicine=none",
     "volume=75L;chlorine=0.01;chloramine=no;medicine=none"},
    {"not-tap-water", "volume=75L;chlorine=5.1;chloramine=no;medicine=none",
     "volume=75L;chlorine=5;chloramine=no;medicine=none"},
    {"ammonia-comes", CHLORAMIN, PLAIN},
    {"ammonia-comes", CHLORAMIN, "volume=75L;chlorine=0;chloramine=yes;medicine=none"},
    {"weigh-small", PLAIN, "volume=150L;chlorine=1.2;chloramine=no;medicine=none"},
    {"weigh-small", PLAIN, "volume=75L;chlorine=0;chloramine=no;medicine=none"},
    {"treat-apart", PLAIN, WITHHELD},
    {"total-chlorine", PLAIN, WITHHELD},
    {"kit-blind", PLAIN, WITHHELD},
    {"ask-supplier", PLAIN, WITHHELD},
    {"weigh-agent", PLAIN, WITHHELD},
    {"agent-kits", PLAIN, WITHHELD},
    {"ask-vet", PLAIN, NULL},
    {"ask-vet", WITHHELD, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(neutralise(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"thiosulfate-over", FROM, 100.0 / 7, "chlorine", NULL,
     "volume=75L;chlorine=14;chloramine=no;medicine=none"},
    {"thiosulfate-over", FROM, 20, "chlorine", NULL,
     "volume=75L;chlorine=20;chloramine=no;medicine=none;ratio=5"},
    {"ratio-too-low", BELOW, 0.875, "ratio", NULL, PLAIN ";ratio=1"},
    {"ratio-too-low", BELOW, 0.557, "ratio", NULL, PLAIN ";ratio=1;agent=thiosulfate-anhydrous"},
    {"ratio-too-low", BELOW, 2.48, "ratio", NULL, ASCORBIC ";ratio=2.5"},
    {"ratio-low", BELOW, 7, "ratio", NULL, PLAIN ";ratio=7"},
    {"ratio-low", BELOW, 7 * HW_MOLAR_THIOSULFATE / HW_MOLAR_THIOSULFATE_PENTAHYDRATE, "ratio",
     NULL, PLAIN ";ratio=4.46;agent=thiosulfate-anhydrous"},
    {"ratio-low", BELOW, 2.5, "ratio", NULL, ASCORBIC ";ratio=2.5"},
    {"not-tap-water", ABOVE, 5, "chlorine", NULL,
     "volume=75L;chlorine=5;chloramine=no;medicine=none"},
    {"weigh-small", BELOW, 1, "volume", "amount", PLAIN},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(neutralise(), edges, sizeof edges / sizeof edges[0]);
}

static void asked_never_assumed(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"volume=75L;chlorine=1.2;medicine=none", HW_PROBLEM_MISSING},
        {"volume=75L;chlorine=1.2;chloramine=no", HW_PROBLEM_MISSING},
        {"volume=75L;chloramine=no;medicine=none", HW_PROBLEM_MISSING},
        {"volume=75;chlorine=1.2;chloramine=no;medicine=none", HW_PROBLEM_NEEDS_UNIT},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        assert_int_equal(ask_settle(neutralise(), wrong[i].line, &question, &which),
                         wrong[i].problem);
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const agents[] = {"thiosulfate-pentahydrate", "thiosulfate-anhydrous",
                                         "ascorbic-acid"};
    static const char *const least[] = {"0.875", "0.557", "2.48"};
    for (unsigned corner = 0; corner < 16; corner++) {
        for (unsigned i = 0; i < 3; i++) {
            char line[200];
            (void)snprintf(line, sizeof line,
                           "volume=%s;chlorine=%s;chloramine=%s;medicine=none;agent=%s;ratio=%s",
                           corner & 1 ? "1e5L" : "0.1L", corner & 2 ? "1000" : "0",
                           corner & 4 && i < 2 ? "yes" : "no", agents[i],
                           corner & 8 ? "10" : least[i]);
            check(isfinite(ask_for(line, "amount")));
            check(isfinite(ask_for(line, "ammonia_freed")));
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(amounts),
        cmocka_unit_test(ammonia),
        cmocka_unit_test(no_chlorine),
        cmocka_unit_test(withheld),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(asked_never_assumed),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
