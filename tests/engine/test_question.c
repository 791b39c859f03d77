/* test_question.c - presets, groups, conditions, twins and the block call, on a made-up
 * calculation. */
#include "ask.h"
#include "assert_close.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum {
    KIND,
    VOLUME,
    TAKE,
    SHARE,
    STRENGTH,
    WAY_A,
    WAY_B,
    WHOLE,
    HALF,
    AMOUNT_A,
    AMOUNT_B,
    SPARE,
    INPUTS
};
enum { FIRST, SECOND, RESULTS };
enum { STAND, RAISE, STRETCH, REFUSE, WITHHOLD, NOTES };

static const char *const kinds[] = {"liquid", "powder", "tablet", NULL};
static const char *const ways_a[] = {"slow", "fast", NULL};
static const char *const ways_b[] = {"dry", NULL};

static const struct hw_input inputs[INPUTS] = {
    [KIND] = {.name = "kind",
              .unit = "",
              .help = "kind",
              .kind = HW_CHOICE,
              .lo = 0,
              .hi = 2,
              .need = HW_PRESET,
              .preset = 0,
              .words = kinds},
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .help = "volume",
                .kind = HW_VOLUME,
                .unit_must = true,
                .lo = 1,
                .hi = 1000,
                .need = HW_REQUIRED},
    [TAKE] = {.name = "take",
              .unit = "L",
              .help = "take",
              .kind = HW_VOLUME,
              .unit_must = true,
              .lo = 0,
              .hi = 1000,
              .group = 1},
    [SHARE] = {.name = "share",
               .unit = "%",
               .help = "share",
               .kind = HW_SHARE,
               .lo = 0,
               .hi = 100,
               .group = 1},
    [STRENGTH] = {.name = "strength",
                  .unit = "mg/L",
                  .help = "strength",
                  .kind = HW_CONCENTRATION,
                  .lo = 0,
                  .hi = 1e6,
                  .need = HW_REQUIRED,
                  .when_input = KIND,
                  .when_words = 1u},
    [WAY_A] = {.name = "way",
               .unit = "",
               .help = "way",
               .kind = HW_CHOICE,
               .lo = 0,
               .hi = 1,
               .need = HW_PRESET,
               .preset = 1,
               .words = ways_a,
               .when_input = KIND,
               .when_words = 1u},
    [WAY_B] = {.name = "way",
               .unit = "",
               .help = "way",
               .kind = HW_CHOICE,
               .lo = 0,
               .hi = 0,
               .need = HW_PRESET,
               .preset = 0,
               .words = ways_b,
               .when_input = KIND,
               .when_words = 2u},
    [WHOLE] = {.name = "whole",
               .unit = "",
               .help = "whole",
               .kind = HW_NUMBER,
               .lo = 1,
               .hi = 9,
               .group = 2,
               .when_input = KIND,
               .when_words = 4u},
    [HALF] = {.name = "half",
              .unit = "",
              .help = "half",
              .kind = HW_NUMBER,
              .lo = 1,
              .hi = 9,
              .group = 2,
              .when_input = KIND,
              .when_words = 4u},
    [AMOUNT_A] = {.name = "amount",
                  .unit = "",
                  .help = "amount",
                  .kind = HW_NUMBER,
                  .lo = 1,
                  .hi = 9,
                  .need = HW_OPTIONAL,
                  .when_input = WAY_A,
                  .when_words = 1u},
    [AMOUNT_B] = {.name = "amount",
                  .unit = "",
                  .help = "amount",
                  .kind = HW_NUMBER,
                  .lo = 100,
                  .hi = 900,
                  .need = HW_OPTIONAL,
                  .when_input = WAY_A,
                  .when_words = 2u | HW_WHEN_UNASKED},
    [SPARE] = {.name = "spare_part",
               .unit = "",
               .help = "spare",
               .kind = HW_NUMBER,
               .lo = 0,
               .hi = 10,
               .need = HW_OPTIONAL},
};

static const struct hw_result results[RESULTS] = {
    [FIRST] = {.name = "first", .unit = "", .help = "", .kind = HW_NUMBER, .digits = 3},
    [SECOND] = {.name = "second", .unit = "", .help = "", .kind = HW_NUMBER, .digits = 3},
};

static const struct hw_note notes[NOTES] = {
    [STAND] = {.code = "stand", .text = "", .source = NULL, .effect = HW_STANDING},
    [RAISE] = {.code = "raise", .text = "", .source = NULL, .effect = HW_CAUTION},
    [STRETCH] = {.code = "stretch", .text = "", .source = NULL, .effect = HW_STRETCHED},
    [REFUSE] = {.code = "refuse", .text = "", .source = NULL, .effect = HW_REFUSED},
    [WITHHOLD] = {.code = "withhold", .text = "", .source = NULL, .effect = HW_WITHHELD},
};

/* Raises the note whose number is the spare part, if given. */
static void answer_made_up(const double in[], double out[], uint64_t *bits)
{
    out[FIRST] = in[VOLUME];
    out[SECOND] = isnan(in[STRENGTH]) ? 0 : in[STRENGTH];
    if (!isnan(in[SPARE])) {
        *bits |= UINT64_C(1) << (unsigned)in[SPARE];
    }
}

static const struct hw_calc made_up = {
    .name = "made_up",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = notes,
    .n_notes = NOTES,
    .answer = answer_made_up,
};

static void expect_problem(const char *line, enum hw_problem problem, size_t at)
{
    struct hw_question question;
    size_t which = INPUTS;
    enum hw_problem got = ask_settle(&made_up, line, &question, &which);
    if (got != problem || (problem != HW_FINE && which != at)) {
        fail_msg("%s: %s at %zu, not %s at %zu", line, hw_problem_code(got), which,
                 hw_problem_code(problem), at);
    }
}

static void every_problem_of_a_question(void **state)
{
    (void)state;
    expect_problem("volume=75L;share=25%;strength=10mg/mL", HW_FINE, 0);
    expect_problem("volume=75L;take=20L;strength=1", HW_FINE, 0);
    expect_problem("share=25%;strength=1", HW_PROBLEM_MISSING, VOLUME);
    expect_problem("volume=75L;share=25%", HW_PROBLEM_MISSING, STRENGTH);
    expect_problem("volume=75L;strength=1", HW_PROBLEM_NONE_OF_GROUP, TAKE);
    expect_problem("volume=75L;strength=1;take=20L;share=25%", HW_PROBLEM_MANY_OF_GROUP, TAKE);
    expect_problem("kind=powder;volume=75L;share=25%", HW_FINE, 0);
    expect_problem("kind=powder;volume=75L;share=25%;strength=1", HW_PROBLEM_OUT_OF_PLACE,
                   STRENGTH);
    expect_problem("volume=75L;share=25%;strength=1;spare-part=11", HW_PROBLEM_OUT_OF_RANGE, SPARE);
    expect_problem("volume=0.5L;share=25%;strength=1", HW_PROBLEM_OUT_OF_RANGE, VOLUME);
}

/* A group whose inputs hang on a word of a choice is asked for with that word alone. */
static void groups_under_a_condition(void **state)
{
    (void)state;
    expect_problem("kind=tablet;volume=75L;share=25%;whole=3", HW_FINE, 0);
    expect_problem("kind=tablet;volume=75L;share=25%;half=3", HW_FINE, 0);
    expect_problem("kind=tablet;volume=75L;share=25%", HW_PROBLEM_NONE_OF_GROUP, WHOLE);
    expect_problem("kind=tablet;volume=75L;share=25%;whole=3;half=1", HW_PROBLEM_MANY_OF_GROUP,
                   WHOLE);
    expect_problem("kind=tablet;volume=75L;half=3", HW_PROBLEM_NONE_OF_GROUP, TAKE);
    expect_problem("kind=powder;volume=75L;share=25%;half=3", HW_PROBLEM_OUT_OF_PLACE, HALF);
    expect_problem("kind=powder;volume=75L;share=25%", HW_FINE, 0);
}

/* A condition that holds too while its choice is not asked for: the ways of a powder are others. */
static void conditions_on_what_is_not_asked(void **state)
{
    (void)state;
#define LIQUID "volume=75L;share=25%;strength=1;"
#define POWDER "kind=powder;volume=75L;share=25%;"
    expect_problem(LIQUID "way=slow;amount=3", HW_FINE, 0);
    expect_problem(LIQUID "way=slow;amount=300", HW_PROBLEM_OUT_OF_RANGE, AMOUNT_A);
    expect_problem(LIQUID "amount=300", HW_FINE, 0);
    expect_problem(LIQUID "amount=3", HW_PROBLEM_OUT_OF_RANGE, AMOUNT_B);
    expect_problem(POWDER "amount=300", HW_FINE, 0);
    expect_problem(POWDER "amount=3", HW_PROBLEM_OUT_OF_RANGE, AMOUNT_B);
}

/* One name, two entries: the choice decides which of them is meant. */
static void twins(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(&made_up, "volume=75L;share=25%;strength=1", &question, &answer);
    assert_int_equal(question.from[WAY_A], HW_FROM_PRESET);
    assert_int_equal(question.from[WAY_B], HW_ABSENT);
    assert_close(question.in[WAY_A], 1, 0, 0);
    check(isnan(question.in[WAY_B]));
    ask(&made_up, "kind=powder;volume=75L;share=25%", &question, &answer);
    assert_int_equal(question.from[WAY_A], HW_ABSENT);
    assert_int_equal(question.from[WAY_B], HW_FROM_PRESET);
    ask(&made_up, "kind=powder;volume=75L;share=25%;way=dry", &question, &answer);
    assert_int_equal(question.from[WAY_B], HW_GIVEN);
    expect_problem("kind=powder;volume=75L;share=25%;way=slow", HW_PROBLEM_UNKNOWN_WORD, WAY_B);
    expect_problem("volume=75L;share=25%;strength=1;way=dry", HW_PROBLEM_UNKNOWN_WORD, WAY_A);
}

static void where_values_come_from(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    ask(&made_up, "volume=20gal;share=25%;strength=1%wv", &question, &answer);
    assert_int_equal(question.from[KIND], HW_FROM_PRESET);
    assert_int_equal(question.from[VOLUME], HW_GIVEN);
    assert_int_equal(question.from[SPARE], HW_ABSENT);
    assert_string_equal(question.unit[VOLUME]->name, "gal");
    assert_null(question.unit[KIND]);
    assert_close(question.in[SHARE], 25, 0, 0);
    assert_close(question.in[STRENGTH], 10000, 0, 0);
    assert_close(answer.out[FIRST], 75.70823568, 0, 0);
}

static void the_gravest_note_is_the_status(void **state)
{
    (void)state;
    static const int status_of[NOTES] = {0, 0, 1, -1, -2};
    static const char *const lines[NOTES] = {"volume=75L;share=25%;strength=1;spare-part=0",
                                             "volume=75L;share=25%;strength=1;spare-part=1",
                                             "volume=75L;share=25%;strength=1;spare-part=2",
                                             "volume=75L;share=25%;strength=1;spare-part=3",
                                             "volume=75L;share=25%;strength=1;spare-part=4"};
    for (int i = 0; i < NOTES; i++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(&made_up, lines[i], &question, &answer);
        assert_int_equal(answer.status, status_of[i]);
        assert_int_equal(isnan(answer.out[FIRST]), status_of[i] < 0);
        assert_int_equal(isnan(answer.out[SECOND]), status_of[i] < 0);
        assert_int_equal(answer.notes, 1u << i);
    }
    assert_int_equal(hw_notes_status(&made_up, 0), 0);
    assert_int_equal(hw_notes_status(&made_up, 1u << STRETCH | 1u << WITHHOLD | 1u << RAISE), -2);
}

/* Written row by row: what hangs on such an input is not judged before. */
static void what_comes_later_is_not_judged(void **state)
{
    (void)state;
    static const struct hw_text liters = {"75L", 3};
    static const struct hw_text one = {"1", 1};
    struct hw_written written[INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    struct hw_question question;
    size_t which = 0;
    written[VOLUME].from = HW_FROM_COLUMN;
    written[SHARE].from = HW_FROM_COLUMN;
    written[KIND].from = HW_FROM_COLUMN;
    written[STRENGTH] = (struct hw_written){one, NULL, HW_GIVEN};
    expect_problem("strength=1", HW_PROBLEM_MISSING, VOLUME);
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(isnan(question.in[VOLUME]) && isnan(question.in[SHARE]) && question.in[KIND] == 0);
    written[SHARE].from = HW_ABSENT;
    check(hw_question_settle(&made_up, written, &question, &which) == HW_PROBLEM_NONE_OF_GROUP);
    written[TAKE].from = HW_FROM_COLUMN;
    written[WHOLE] = (struct hw_written){one, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    static const struct hw_text tablet = {"tablet", 6};
    written[KIND] = (struct hw_written){tablet, NULL, HW_GIVEN};
    written[STRENGTH] = (struct hw_written){{NULL, 0}, NULL, HW_ABSENT};
    written[WHOLE] = (struct hw_written){{NULL, 0}, NULL, HW_ABSENT};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_PROBLEM_NONE_OF_GROUP);
    check(which == WHOLE);
    written[WHOLE].from = HW_FROM_COLUMN;
    written[VOLUME] = (struct hw_written){liters, NULL, HW_GIVEN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(question.in[VOLUME] == 75);
    static const struct hw_text three = {"3", 1};
    written[AMOUNT_A] = (struct hw_written){three, NULL, HW_GIVEN};
    written[AMOUNT_B] = written[AMOUNT_A];
    check(hw_question_settle(&made_up, written, &question, &which) == HW_PROBLEM_OUT_OF_RANGE);
    check(which == AMOUNT_B);
    written[KIND] = (struct hw_written){{NULL, 0}, NULL, HW_FROM_COLUMN};
    check(hw_question_settle(&made_up, written, &question, &which) == HW_FINE);
    check(isnan(question.in[AMOUNT_A]) && isnan(question.in[AMOUNT_B]));
}

static void names(void **state)
{
    (void)state;
    assert_int_equal(hw_input_find(&made_up, "spare-part", 10), SPARE);
    assert_int_equal(hw_input_find(&made_up, "spare_part", 10), SPARE);
    assert_int_equal(hw_input_find(&made_up, "spare", 5), INPUTS);
    assert_int_equal(hw_input_find(&made_up, "Volume", 6), VOLUME);
    assert_int_equal(hw_result_find(&made_up, "second", 6), SECOND);
    assert_int_equal(hw_result_find(&made_up, "third", 5), RESULTS);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_problem_of_a_question),
        cmocka_unit_test(groups_under_a_condition),
        cmocka_unit_test(conditions_on_what_is_not_asked),
        cmocka_unit_test(twins),
        cmocka_unit_test(where_values_come_from),
        cmocka_unit_test(the_gravest_note_is_the_status),
        cmocka_unit_test(what_comes_later_is_not_judged),
        cmocka_unit_test(names),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
