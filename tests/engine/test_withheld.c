/* test_withheld.c - properties of all calculations: what is withheld or refused has no number, not
 * at the ends of an uncertainty either; and a quantity is the same in every unit and spelling. */
#include "assert_close.h"
#include "calc/list.h"
#include "engine/answer.h"
#include "engine/spread.h"
#include "engine/unit.h"
#include "engine/value.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { SEED = 20310305, QUESTIONS = 4000, TEXT = 80 };

static uint32_t state_of_random = SEED;

static double random_share(void)
{
    state_of_random = state_of_random * 1664525u + 1013904223u;
    return (double)(state_of_random >> 8) / (double)(1u << 24);
}

/* A value of the input's range, more often small than large where the range spans decades. */
static double random_value(const struct hw_input *input)
{
    if (input->words) {
        size_t n = hw_words_count(input->words);
        size_t word = (size_t)(random_share() * (double)n);
        return input->kind == HW_SET ? (double)(UINT32_C(1) << word) : (double)word;
    }
    double lo = input->lo > 0 ? input->lo : 1e-3;
    bool decades = input->lo >= 0 && input->hi > 100 * lo;
    double x = decades ? lo * pow(input->hi / lo, random_share())
                       : input->lo + random_share() * (input->hi - input->lo);
    x = input->kind == HW_COUNT ? floor(x) : x;
    return x < input->lo ? input->lo : x > input->hi ? input->hi : x;
}

/* A question that could have been settled: one of each group, no input whose condition fails. */
static void random_question(const struct hw_calc *calc, struct hw_question *question)
{
    bool taken[HW_INPUTS + 1] = {false};
    *question = (struct hw_question){.calc = calc, .solved = calc->n_inputs};
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        bool left = input->need != HW_REQUIRED && random_share() < 0.5;
        bool one_too_many = input->group != 0 && taken[input->group];
        question->in[i] = NAN;
        if (!hw_input_wanted(calc, i, question->in) || one_too_many) {
            continue;
        }
        if (left) {
            question->in[i] = input->need == HW_PRESET ? input->preset : (double)NAN;
            continue;
        }
        question->in[i] = random_value(input);
        taken[input->group] = true;
        bool uncertain = !input->words && input->kind != HW_COUNT && random_share() < 0.3;
        question->half[i] = uncertain ? 0.2 * fabs(question->in[i]) : 0;
    }
}

static void check_untold(const struct hw_calc *calc, const struct hw_answer *answer,
                         const struct hw_spread *spread)
{
    for (size_t k = 0; k < calc->n_results; k++) {
        if (answer->status < 0) {
            check(isnan(answer->out[k]) && isnan(spread->low[k]) && isnan(spread->high[k]));
        } else if (isnan(answer->out[k])) {
            check(isnan(spread->low[k]) && isnan(spread->high[k]));
        }
    }
}

static void no_number_where_it_is_withheld(void **state)
{
    (void)state;
    static struct hw_question question;
    static struct hw_spread spread;
    struct hw_answer answer;
    size_t withheld = 0;
    size_t answered = 0;
    size_t possible = 0;
    for (size_t c = 0; hw_calcs[c]; c++) {
        uint64_t grave = hw_notes_grave(hw_calcs[c]);
        for (int n = 0; n < QUESTIONS / 20; n++) {
            random_question(hw_calcs[c], &question);
            hw_question_answer(&question, &answer);
            hw_question_spread(&question, &answer, &spread);
            check_untold(hw_calcs[c], &answer, &spread);
            check((answer.status < 0) == ((answer.notes & grave) != 0));
            withheld += answer.status == -2 ? 1 : 0;
            answered += answer.status >= 0 ? 1 : 0;
            possible += (spread.possible & grave) != 0 ? 1 : 0;
        }
    }
    (void)printf("seed %d: %zu answered, %zu withheld, %zu with an end that has no answer\n", SEED,
                 answered, withheld, possible);
    assert_true(withheld > 50 && answered > 500 && possible > 20);
}

/* Reads a value as it would be typed, in a unit spelt that way, and holds it against what was
 * meant. */
static void check_spelling(const struct hw_input *input, double value, const struct hw_unit *unit,
                           struct hw_text spelling)
{
    char text[TEXT];
    double got = NAN;
    const struct hw_unit *written = NULL;
    double there = hw_unit_convert(value, hw_unit_of(input->kind, input->unit), unit);
    int n = snprintf(text, sizeof text, "%.17g%.*s", there, (int)spelling.n, spelling.at);
    enum hw_problem problem =
        hw_value_read(input, (struct hw_text){text, (size_t)n}, NULL, &got, &written);
    if (problem != HW_FINE) {
        fail_msg("%s %s: %s", input->name, text, hw_problem_code(problem));
    }
    double size = fabs(input->lo) > fabs(input->hi) ? fabs(input->lo) : fabs(input->hi);
    assert_close(got, value, input->kind == HW_TEMPERATURE ? 1e-13 * (size + 300) : 0, 1e-13);
    assert_ptr_equal(written, unit);
}

static void the_same_in_every_unit(void **state)
{
    (void)state;
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < hw_calcs[c]->n_inputs; i++) {
            const struct hw_input *input = &hw_calcs[c]->inputs[i];
            for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
                if (unit->kind != input->kind || input->kind == HW_COUNT) {
                    continue;
                }
                double value = random_value(input);
                check_spelling(input, value, unit,
                               (struct hw_text){unit->name, strlen(unit->name)});
                for (const char *word = hw_unit_aliases(unit); *word != '\0';) {
                    size_t length = strcspn(word, " ");
                    check_spelling(input, value, unit, (struct hw_text){word, length});
                    word += length + (word[length] == ' ' ? 1 : 0);
                }
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(no_number_where_it_is_withheld),
                                       cmocka_unit_test(the_same_in_every_unit)};
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
