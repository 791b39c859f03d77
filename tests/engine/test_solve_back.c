/* test_solve_back.c - solving backwards: each input and result of all calculations, back again. */
#include "ask.h"
#include "assert_close.h"
#include "engine/solution.h"
#include "inverted.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static struct hw_solution found;

static struct {
    size_t questions, pairs, found, flat, steep, failed;
    size_t pairs_before; /* those of the calculations before this one */
} tally;

static double forward(const struct hw_question *base, double x, size_t r)
{
    struct hw_question question = *base;
    struct hw_answer answer;
    question.in[base->solved] = x;
    hw_question_answer(&question, &answer);
    return answer.out[r];
}

static double random_value(const struct hw_input *of)
{
    double first = of->lo > 0 ? of->lo : 1e-6 * of->hi;
    bool decades = of->lo >= 0 && of->hi > 100 * first;
    double x = decades ? exp(hw_random_between(log(first), log(of->hi)))
                       : hw_random_between(of->lo, of->hi);
    x = x < of->lo ? of->lo : x > of->hi ? of->hi : x;
    return of->kind == HW_COUNT ? floor(x) : x;
}

/* True when the result rises all the way, or falls all the way, by more than rounding at each of
 * many steps. */
static bool is_monotone(const struct hw_question *question, size_t r)
{
    enum { LOOKS = 60 };
    const struct hw_input *moving = &question->calc->inputs[question->solved];
    double last = forward(question, moving->lo, r);
    int way = 0;
    for (int i = 1; i <= LOOKS; i++) {
        double at = i == LOOKS ? moving->hi : moving->lo + (moving->hi - moving->lo) * i / LOOKS;
        double y = forward(question, moving->kind == HW_COUNT ? floor(at) : at, r);
        double step = y - last;
        int now = step > 1e-7 * fabs(y) ? 1 : step < -1e-7 * fabs(y) ? -1 : 0;
        if (now == 0 || !isfinite(step) || (way != 0 && now != way)) {
            return false;
        }
        way = now;
        last = y;
    }
    return true;
}

static bool comes_back(const struct hw_question *question, size_t r, double x, double y)
{
    double off = INFINITY;
    for (size_t i = 0; i < found.n_roots; i++) {
        const struct hw_root *root = &found.root[i];
        double again = forward(question, root->from, r);
        if (!hw_is_close(again, y, y == 0 ? 1e-9 : 0, 1e-9)) {
            return false;
        }
        double here = x < root->from ? root->from - x : x > root->to ? x - root->to : 0;
        off = here < off ? here : off;
    }
    bool steep = found.n_roots == 1 && is_monotone(question, r);
    tally.steep += steep ? 1 : 0;
    /* one of the roots is the value it came from; where the result is monotone it is the only
     * one */
    return found.more_roots || off <= 1e-6 * fabs(x) || (steep && off <= 1e-9);
}

/* False where there is no result to go back from. */
static bool there_and_back(const struct hw_question *question, size_t r, double x)
{
    double y = forward(question, x, r);
    if (!isfinite(y)) {
        return false;
    }
    hw_solve(question, r, y, &found);
    bool good = found.end == HW_END_FLAT
                    ? hw_is_close(found.least.y, y, 0, 1e-11) || found.least.y == y
                    : found.end == HW_END_FOUND && comes_back(question, r, x, y);
    tally.pairs++;
    tally.flat += found.end == HW_END_FLAT ? 1 : 0;
    tally.found += found.end == HW_END_FOUND ? 1 : 0;
    if (!good) {
        tally.failed++;
        print_error("%s: %s=%.17g gives %s=%.17g; back: end %d, %zu roots, first %.17g\n",
                    question->calc->name, question->calc->inputs[question->solved].name, x,
                    question->calc->results[r].name, y, (int)found.end, found.n_roots,
                    found.root[0].from);
    }
    return true;
}

/* Each pair of input and result is asked back where it is first met with an answer, and more often
 * where a calculation has few pairs; then, question by question, a part of them in turn, so that
 * all come round. */
enum { FEW = 90, IN_TURN = 64 };
static bool tried[HW_INPUTS][HW_RESULTS];

static void invert(const struct hw_question *base)
{
    const struct hw_calc *calc = base->calc;
    bool few = tally.pairs - tally.pairs_before < FEW;
    size_t pair = tally.questions;
    tally.questions++;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        struct hw_question question = *base;
        if (calc->inputs[i].words || !hw_input_wanted(calc, i, base->in)) {
            continue;
        }
        for (size_t k = 0; k < calc->n_inputs; k++) {
            if (calc->inputs[k].group != 0 && calc->inputs[k].group == calc->inputs[i].group) {
                question.in[k] = NAN;
            }
        }
        question.solved = i;
        question.in[i] = NAN;
        double x = random_value(&calc->inputs[i]);
        for (size_t r = 0; r < calc->n_results; r++, pair++) {
            if (few || !tried[i][r] || pair % IN_TURN == 0) {
                tried[i][r] = there_and_back(&question, r, x) || tried[i][r];
            }
        }
    }
}

static void every_calculation(void **state)
{
    (void)state;
    hw_random_start(20310305);
    for (size_t c = 0; hw_calcs[c]; c++) {
        size_t before = tally.found;
        tally.pairs_before = tally.pairs;
        memset(tried, 0, sizeof tried);
        check(each_question(hw_calcs[c], invert) >= 2);
        if (tally.found - before < 4) {
            fail_msg("%s: only %zu inverted", hw_calcs[c]->name, tally.found - before);
        }
    }
    printf("%zu questions: %zu pairs of input and result, %zu inverted (%zu of them monotone), "
           "%zu flat, %zu failed\n",
           tally.questions, tally.pairs, tally.found, tally.steep, tally.flat, tally.failed);
    assert_int_equal(tally.failed, 0);
    assert_int_equal(tally.found + tally.flat, tally.pairs);
    check(tally.found > 800 && tally.steep > 300);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_calculation),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
