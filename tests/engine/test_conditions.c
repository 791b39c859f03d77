/* test_conditions.c - conditions on whether another input is given, groups of which one or none is
 * given, and yes or no, on a made-up calculation. */
#include "ask.h"
#include "assert_close.h"
#include "cli/help.h"
#include "cli/message.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

/* Water is told by volume or by mass, and may be let be. With a volume its loss is asked for and a
 * rate may be given; without one the place must be told. */
enum { FED, VOLUME, LOSS, RATE, PLACE, LEVEL, COUNTED, WEIGHED, KEPT, INPUTS };
enum { FIRST, RESULTS };

static const char *const yes_no[] = {"no", "yes", NULL};
static const char *const places[] = {"indoors", "outdoors", NULL};

static const struct hw_input inputs[INPUTS] = {
    [FED] = {.name = "fed", .unit = "", .help = "fed", .kind = HW_YES_NO, .hi = 1, .words = yes_no},
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .help = "volume",
                .kind = HW_VOLUME,
                .lo = 1,
                .hi = 1000,
                .need = HW_OPTIONAL},
    [LOSS] = {.name = "loss",
              .unit = "%",
              .help = "loss",
              .kind = HW_SHARE,
              .hi = 100,
              .when_input = VOLUME,
              .when_words = HW_WHEN_GIVEN},
    [RATE] = {.name = "rate",
              .unit = "",
              .help = "rate",
              .kind = HW_NUMBER,
              .hi = 9,
              .need = HW_PRESET,
              .preset = 2,
              .when_input = VOLUME,
              .when_words = HW_WHEN_GIVEN},
    [PLACE] = {.name = "place",
               .unit = "",
               .help = "place",
               .kind = HW_CHOICE,
               .hi = 1,
               .words = places,
               .when_input = VOLUME,
               .when_words = HW_WHEN_UNASKED},
    [LEVEL] = {.name = "level",
               .unit = "",
               .help = "level",
               .kind = HW_NUMBER,
               .hi = 9,
               .need = HW_OPTIONAL,
               .when_input = PLACE,
               .when_words = HW_WHEN_GIVEN},
    [COUNTED] = {.name = "counted",
                 .unit = "",
                 .help = "counted",
                 .kind = HW_COUNT,
                 .hi = 9,
                 .need = HW_OPTIONAL,
                 .group = 1},
    [WEIGHED] = {.name = "weighed",
                 .unit = "g",
                 .help = "weighed",
                 .kind = HW_MASS,
                 .hi = 9,
                 .need = HW_OPTIONAL,
                 .group = 1},
    [KEPT] = {.name = "kept",
              .unit = "",
              .help = "kept",
              .kind = HW_NUMBER,
              .hi = 9,
              .when_input = FED,
              .when_words = 2u},
};

static const struct hw_result results[RESULTS] = {
    [FIRST] = {.name = "first", .unit = "", .help = "", .kind = HW_YES_NO, .digits = 1}};

static void answer_loss(const double in[], double out[], uint64_t *notes)
{
    (void)notes;
    out[FIRST] = isnan(in[LOSS]) || in[LOSS] < 50 ? 0 : 1;
}

static const struct hw_calc made_up = {.name = "made_up",
                                       .purpose = "none",
                                       .inputs = inputs,
                                       .n_inputs = INPUTS,
                                       .results = results,
                                       .n_results = RESULTS,
                                       .answer = answer_loss};

static const struct {
    const char *line;
    enum hw_problem problem;
    size_t at;
} rows[] = {
    {"fed=no;volume=75L;loss=5%", HW_FINE, 0},
    {"fed=no;volume=75L;loss=5%;rate=3", HW_FINE, 0},
    {"fed=no;volume=75L", HW_PROBLEM_MISSING, LOSS},
    {"fed=no;place=indoors", HW_FINE, 0},
    {"fed=no", HW_PROBLEM_MISSING, PLACE},
    {"fed=no;loss=5%;place=indoors", HW_PROBLEM_OUT_OF_PLACE, LOSS},
    {"fed=no;rate=3;place=indoors", HW_PROBLEM_OUT_OF_PLACE, RATE},
    {"fed=no;volume=75L;loss=5%;place=indoors", HW_PROBLEM_OUT_OF_PLACE, PLACE},
    {"fed=no;place=indoors;level=4", HW_FINE, 0},  /* the first word counts as given, too */
    {"fed=no;place=outdoors;level=4", HW_FINE, 0}, /* any word does */
    {"fed=no;volume=75L;loss=5%;level=4", HW_PROBLEM_OUT_OF_PLACE, LEVEL},
    {"fed=no;volume=1:9:2L;loss=5%", HW_FINE, 0},
    {"fed=no;volume=75L+-3;loss=5%", HW_FINE, 0},
    /* one of the group, or none */
    {"fed=no;place=indoors;counted=3", HW_FINE, 0},
    {"fed=no;place=indoors;weighed=3g", HW_FINE, 0},
    {"fed=no;place=indoors;counted=3;weighed=3g", HW_PROBLEM_MANY_OF_GROUP, COUNTED},
    /* yes and no */
    {"fed=yes;place=indoors;kept=3", HW_FINE, 0},
    {"fed=yes;place=indoors", HW_PROBLEM_MISSING, KEPT},
    {"fed=no;place=indoors;kept=3", HW_PROBLEM_OUT_OF_PLACE, KEPT},
    {"fed=1;place=indoors", HW_PROBLEM_UNKNOWN_WORD, FED},
    {"fed=maybe;place=indoors", HW_PROBLEM_UNKNOWN_WORD, FED},
    {"fed=yes,no;place=indoors", HW_PROBLEM_UNKNOWN_WORD, FED},
    {"fed=yes+-1;place=indoors", HW_PROBLEM_HALF_WORD, FED},
    {"fed=no:yes:1;place=indoors", HW_PROBLEM_SWEEP_WORD, FED},
};

static void what_hangs_on_what(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct hw_question question;
        size_t which = INPUTS;
        enum hw_problem got = ask_settle(&made_up, rows[i].line, &question, &which);
        if (got != rows[i].problem || (got != HW_FINE && which != rows[i].at)) {
            fail_msg("%s: %s at %zu, not %s at %zu", rows[i].line, hw_problem_code(got), which,
                     hw_problem_code(rows[i].problem), rows[i].at);
        }
        check(got != HW_FINE || which == INPUTS);
    }
}

static void what_is_filled_in(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(&made_up, "fed=yes;volume=75L;loss=60%;kept=1", &question, &answer);
    check(question.in[FED] == 1 && question.from[FED] == HW_GIVEN);
    check(question.in[RATE] == 2 && question.from[RATE] == HW_FROM_PRESET);
    check(isnan(question.in[PLACE]) && isnan(question.in[COUNTED]));
    check(answer.status == 0 && answer.out[FIRST] == 1);
    ask(&made_up, "fed=no;place=outdoors", &question, &answer);
    check(question.in[FED] == 0 && question.in[PLACE] == 1);
    check(isnan(question.in[RATE]) && question.from[RATE] == HW_ABSENT);
    check(answer.status == 0 && answer.out[FIRST] == 0);
}

/* Solved for: it has no value yet, and is as good as given. */
static void solved_for_is_given(void **state)
{
    (void)state;
    static const struct hw_text no = {"no", 2};
    static const struct hw_text share = {"5%", 2};
    static const struct hw_text three = {"3", 1};
    struct hw_written written[INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    struct hw_question question;
    size_t which = 0;
    written[FED] = (struct hw_written){no, NULL, HW_GIVEN};
    written[VOLUME].from = HW_SOLVED;
    check(hw_question_settle(&made_up, written, &question, &which) == HW_PROBLEM_MISSING);
    check(which == LOSS);
    written[LOSS] = (struct hw_written){share, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(question.solved == VOLUME && isnan(question.in[VOLUME]) && question.in[RATE] == 2);
    written[WEIGHED].from = HW_SOLVED;
    written[VOLUME] = (struct hw_written){{"75L", 3}, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(question.solved == WEIGHED && isnan(question.in[WEIGHED]));
    written[COUNTED] = (struct hw_written){three, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_PROBLEM_MANY_OF_GROUP);
}

/* Written row by row: what hangs on it is not judged before. */
static void what_comes_later_is_not_judged(void **state)
{
    (void)state;
    static const struct hw_text no = {"no", 2};
    static const struct hw_text share = {"5%", 2};
    struct hw_written written[INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    struct hw_question question;
    size_t which = 0;
    written[FED] = (struct hw_written){no, NULL, HW_GIVEN};
    written[VOLUME].from = HW_FROM_COLUMN;
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    written[LOSS] = (struct hw_written){share, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(isnan(question.in[LOSS]) && isnan(question.in[PLACE]));
}

/* --- What is said ----------------------------------------------------------------------------- */

static char said[6000]; /* on both streams */

static void say(const char *line, enum hw_problem problem)
{
    struct hw_written written[HW_INPUTS];
    struct hw_question question;
    size_t which = 0;
    ask_write(&made_up, line, written);
    enum hw_problem got = hw_question_settle(&made_up, written, &question, &which);
    assert_int_equal(got, problem);
    if (got == HW_FINE) {
        help_calc(&made_up);
    } else {
        message_problem(&made_up, written, &question, got, which);
    }
}

/* Keeps what is said of a question; of one without a problem the help. */
static void keep_said(const char *line, enum hw_problem problem)
{
    FILE *kept = tmpfile();
    assert_non_null(kept);
    (void)fflush(stdout);
    (void)fflush(stderr);
    int out = dup(STDOUT_FILENO);
    int err = dup(STDERR_FILENO);
    (void)dup2(fileno(kept), STDOUT_FILENO);
    (void)dup2(fileno(kept), STDERR_FILENO);
    say(line, problem);
    (void)fflush(stdout);
    (void)fflush(stderr);
    (void)dup2(out, STDOUT_FILENO);
    (void)dup2(err, STDERR_FILENO);
    (void)close(out);
    (void)close(err);
    rewind(kept);
    said[fread(said, 1, sizeof said - 1, kept)] = '\0';
    (void)fclose(kept);
}

static void expect_said(const char *text)
{
    if (!strstr(said, text)) {
        fail_msg("no '%s' in '%s'", text, said);
    }
}

static void words_of_conditions(void **state)
{
    (void)state;
    keep_said("fed=no;place=indoors;loss=5%", HW_PROBLEM_OUT_OF_PLACE);
    expect_said("--loss has no place without --volume: leave it out");
    keep_said("fed=no;volume=75L;loss=5%;place=indoors", HW_PROBLEM_OUT_OF_PLACE);
    expect_said("--place has no place with --volume: leave it out");
    keep_said("fed=no;place=indoors;kept=3", HW_PROBLEM_OUT_OF_PLACE);
    expect_said("--kept has no place with --fed no: leave it out");
    keep_said("fed=no;place=indoors;weighed=3g;counted=3", HW_PROBLEM_MANY_OF_GROUP);
    expect_said("made_up takes at most one of --counted or --weighed: more than one was given");
    keep_said("fed=no", HW_PROBLEM_MISSING);
    expect_said("made_up needs --place\n");
    keep_said("fed=no;volume=75L", HW_PROBLEM_MISSING);
    expect_said("made_up needs --loss\n");
    keep_said("", HW_PROBLEM_MISSING);
    expect_said("made_up needs --fed\n");
    keep_said("fed=no;place=indoors", HW_FINE);
    expect_said("  a: give at most one of these\n");
    expect_said("  * --loss %             loss (with volume)\n");
    expect_said("  * --place              place: indoors, outdoors (without volume)\n");
    expect_said("  * --kept               kept (with fed yes)\n");
    expect_said("  a --counted            counted\n");
    expect_said("    --rate               rate; else 2\n");
    expect_said("  * --fed                fed: no, yes\n");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_hangs_on_what),  cmocka_unit_test(what_is_filled_in),
        cmocka_unit_test(solved_for_is_given), cmocka_unit_test(what_comes_later_is_not_judged),
        cmocka_unit_test(words_of_conditions),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
