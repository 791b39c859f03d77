/* test_finite.c - every answer is finite: each number at the ends of its range and next to zero, in
 * random company. */
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

enum { QUESTIONS = 20000, QUESTIONS_MOST = 1000000, ANSWERS = 500 };

static bool chance(double share)
{
    return hw_random_between(0, 1) < share;
}

/* The least number above zero that is in range. */
static double least_of(const struct hw_input *input)
{
    double least = input->kind == HW_COUNT ? 1 : HW_VALUE_LEAST;
    return input->lo > least ? input->lo : least;
}

/* An end of the range, or its least number, or what lies between. */
static double number_of(const struct hw_input *input, double ends)
{
    double among[] = {input->lo, least_of(input), input->hi};
    if (chance(ends)) {
        return among[(int)hw_random_between(0, 3)];
    }
    double x = hw_random_between(input->lo, input->hi);
    return input->kind == HW_COUNT ? floor(x) : hw_value_off_zero(x);
}

/* A set has one word in two, and its first, "none", now and then alone. */
static double words_of_input(const struct hw_input *input)
{
    size_t words = hw_words_count(input->words);
    if (input->kind != HW_SET) {
        return floor(hw_random_between(0, (double)words));
    }
    double bits = chance(0.5) ? 1 : 0;
    for (size_t i = 1; bits == 0 && i < words; i++) {
        bits += chance(0.5) ? ldexp(1, (int)i) : 0;
    }
    return bits;
}

/* Leaves one input of a group, of those that are wanted. */
static void thin_group(const struct hw_calc *calc, int group, double in[])
{
    size_t there = 0;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        there += calc->inputs[i].group == group && !isnan(in[i]) ? 1 : 0;
    }
    size_t kept = (size_t)hw_random_between(0, (double)there);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (calc->inputs[i].group == group && !isnan(in[i])) {
            in[i] = kept-- == 0 ? in[i] : NAN;
        }
    }
}

/* A question as settling would leave it. Where most numbers are ends most questions are refused, so
 * the share of them varies. */
static void make_question(const struct hw_calc *calc, struct hw_question *question)
{
    int groups = 0;
    double ends = hw_random_between(0, 1);
    question->calc = calc;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        groups = input->group > groups ? input->group : groups;
        question->in[i] = NAN;
        if (hw_input_wanted(calc, i, question->in) &&
            !(input->need == HW_OPTIONAL && chance(0.4))) {
            question->in[i] = input->words ? words_of_input(input) : number_of(input, ends);
        }
    }
    for (int group = 1; group <= groups; group++) {
        thin_group(calc, group, question->in);
    }
}

static void tell(const struct hw_question *question)
{
    const struct hw_calc *calc = question->calc;
    print_error("%s:", calc->name);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!isnan(question->in[i])) {
            print_error(" %s=%.17g", calc->inputs[i].name, question->in[i]);
        }
    }
    print_error("\n");
    double out[HW_RESULTS];
    uint64_t notes = 0;
    calc->answer(question->in, out, &notes);
    for (size_t i = 0; i < calc->n_results; i++) {
        if (!isfinite(out[i])) {
            print_error("    %s is %g%s\n", calc->results[i].name, out[i],
                        calc->results[i].sometimes ? " (sometimes)" : "");
        }
    }
}

static void every_answer_is_finite(void **state)
{
    (void)state;
    hw_random_start(20310307);
    for (size_t c = 0; hw_calcs[c]; c++) {
        struct hw_question question;
        struct hw_answer answer;
        size_t answered = 0;
        size_t infinite = 0;
        for (int i = 0; i < QUESTIONS || (answered < ANSWERS && i < QUESTIONS_MOST); i++) {
            make_question(hw_calcs[c], &question);
            hw_question_answer(&question, &answer);
            answered += answer.status >= 0 ? 1 : 0;
            if (((answer.notes >> HW_NOTE_NOT_FINITE) & 1u) != 0 && infinite++ < 3) {
                tell(&question);
            }
        }
        printf("%s: %zu answers, %zu not finite\n", hw_calcs[c]->name, answered, infinite);
        check(answered >= ANSWERS && infinite == 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_answer_is_finite),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
