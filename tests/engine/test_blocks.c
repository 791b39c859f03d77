/* test_blocks.c - the quick ways of a calculation over many rows, against one question at a time:
 * the same bits and notes, whatever is wanted. */
#include "ask.h"
#include "assert_close.h"
#include "calc/list.h"
#include "engine/answer.h"
#include "inverted.h"
#include "tables.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static struct hw_batch batch;
static size_t n_rows, n_blocks;

static void put_row(const struct hw_question *question)
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        batch.in[i][n_rows] = question->in[i];
    }
    n_rows++;
}

/* By `block`, with one result wanted or all. */
static bool run_block(const struct hw_calc *calc, size_t wanted)
{
    const double *in[HW_INPUTS];
    double *out[HW_RESULTS];
    for (size_t i = 0; i < HW_INPUTS; i++) {
        in[i] = batch.in[i];
    }
    for (size_t k = 0; k < HW_RESULTS; k++) {
        out[k] = wanted == calc->n_results || wanted == k ? batch.out[k] : NULL;
    }
    memset(batch.notes, 0, sizeof batch.notes);
    const struct hw_block block = {n_rows, in, out, batch.notes};
    return calc->block(&block);
}

static bool same_bits(double a, double b)
{
    return memcmp(&a, &b, sizeof a) == 0 || (isnan(a) && isnan(b));
}

static void compare(const struct hw_calc *calc, size_t wanted)
{
    for (size_t row = 0; row < n_rows; row++) {
        double in[HW_INPUTS];
        double out[HW_RESULTS];
        uint64_t notes = 0;
        for (size_t i = 0; i < calc->n_inputs; i++) {
            in[i] = batch.in[i][row];
        }
        calc->answer(in, out, &notes);
        check(batch.notes[row] == notes);
        for (size_t k = 0; k < calc->n_results; k++) {
            bool is_wanted = wanted == calc->n_results || wanted == k;
            check(!is_wanted || same_bits(batch.out[k][row], out[k]));
        }
    }
}

static void flush(const struct hw_calc *calc)
{
    for (size_t wanted = 0; n_rows > 0 && wanted <= calc->n_results; wanted++) {
        if (run_block(calc, wanted)) {
            n_blocks++;
            compare(calc, wanted);
        }
    }
    n_rows = 0;
}

/* A question, and the same with one number after the other changed, as in a sweep or a log. */
static void add_rows(const struct hw_question *base)
{
    const struct hw_calc *calc = base->calc;
    put_row(base);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        struct hw_question other = *base;
        if (!input->words && !isnan(base->in[i])) {
            double near = base->in[i] * hw_random_between(0.9, 1.1);
            near = input->kind == HW_COUNT ? base->in[i] + 1 : near;
            other.in[i] = fmin(fmax(near, input->lo), input->hi);
            put_row(&other);
            put_row(base);
        }
    }
    put_row(base);
    flush(calc);
}

static void every_block(void **state)
{
    (void)state;
    size_t calcs = 0;
    hw_random_start(20310307);
    for (size_t c = 0; hw_calcs[c]; c++) {
        if (hw_calcs[c]->block) {
            n_blocks = 0;
            check(each_question(hw_calcs[c], add_rows) >= 2);
            check(n_blocks > 20);
            calcs++;
        }
    }
    assert_int_equal(calcs, 3);
}

/* New water that is no better: that no share does it is told, whether or not a share is wanted. */
static void no_share_does_it(void **state)
{
    (void)state;
    const struct hw_calc *blend = find_calc("blend");
    struct hw_question question;
    struct hw_answer answer;
    ask(blend,
        "volume=100L;share=25%;tan=2;ph=7.4;alkalinity=1meq/L;temp=25;salinity=34;new_tan=2;"
        "new_ph=8.2;new_alkalinity=2.4meq/L;new_temp=25;new_salinity=34",
        &question, &answer);
    check(noted(blend, &answer, "blend-none-does"));
    hw_random_start(20310308);
    n_blocks = 0;
    add_rows(&question);
    assert_int_equal(n_blocks, blend->n_results + 1);
}

static size_t place_of(const struct hw_calc *calc, const char *name)
{
    size_t i = 0;
    while (i < calc->n_inputs && strcmp(calc->inputs[i].name, name) != 0) {
        i++;
    }
    check(i < calc->n_inputs);
    return i;
}

/* Numbers one after another about x, as near as doubles are, each in a row of its own. */
static void put_about(struct hw_question *question, size_t input, double x)
{
    for (int step = 0; step < 4; step++) {
        x = nextafter(x, 0);
    }
    for (int step = 0; step < 8; step++, x = nextafter(x, HUGE_VAL)) {
        question->in[input] = x;
        put_row(question);
    }
}

/* About where above_limit and below_limit turn, which is not at the limit itself. */
static void put_turns(struct hw_question question, size_t input, double limit)
{
    double noise = 1e-9 * fmax(1, limit);
    put_about(&question, input, limit - noise);
    put_about(&question, input, limit);
    put_about(&question, input, limit + noise);
}

static bool is_over(const struct hw_question *question, unsigned note)
{
    double out[HW_RESULTS];
    uint64_t notes = 0;
    question->calc->answer(question->in, out, &notes);
    return (notes >> note & 1) != 0;
}

/* About the total from which on a note is raised. */
static void put_total(struct hw_question question, size_t tan, unsigned note)
{
    double low = 0;
    double high = 50;
    for (int i = 0; i < 60; i++) {
        question.in[tan] = low + (high - low) / 2;
        *(is_over(&question, note) ? &high : &low) = question.in[tan];
    }
    check(high < 50);
    put_about(&question, tan, high);
}

/* Ammonia side by side, about every number at which a note turns. */
static void beside_limits(void **state)
{
    (void)state;
    const struct hw_calc *ammonia = find_calc("ammonia");
    struct hw_question question;
    struct hw_answer answer;
    ask(ammonia, "tan=0.6;ph=7.2;temp=25;salinity=34", &question, &answer);
    const size_t tan = place_of(ammonia, "tan");
    const size_t ph = place_of(ammonia, "ph");
    const size_t salinity = place_of(ammonia, "salinity");
    const double near = hw_limits[HW_LIMIT_CRITERIA_NEAR].value;
    n_blocks = 0;
    for (int warm = 0; warm < 30; warm++) {
        question.in[place_of(ammonia, "temp")] = 10.3 + warm;
        put_turns(question, tan, hw_limits[HW_LIMIT_ACT_TODAY].value);
        put_turns(question, tan, hw_limits[HW_LIMIT_KIT_END].value);
        put_turns(question, ph, hw_limits[HW_LIMIT_SOUR_BELOW].value);
        put_turns(question, salinity, hw_limits[HW_LIMIT_SALT_FROM].value);
        flush(ammonia);
        put_turns(question, salinity, hw_limits[HW_LIMIT_SALT_FROM].value + near);
        put_turns(question, salinity, hw_limits[HW_LIMIT_FRESH_BELOW].value - near);
        put_total(question, tan, HW_AMMONIA_NOTE_OVER_LONG_SALT);
        question.in[ph] = 8.4;
        put_total(question, tan, HW_AMMONIA_NOTE_OVER_LONG_SALT);
        put_total(question, tan, HW_AMMONIA_NOTE_OVER_SHORT_SALT);
        question.in[ph] = 7.2;
        flush(ammonia);
    }
    assert_int_equal(n_blocks, 60 * (ammonia->n_results + 1));
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_block),
                                       cmocka_unit_test(no_share_does_it),
                                       cmocka_unit_test(beside_limits)};
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
