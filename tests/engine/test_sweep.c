/* test_sweep.c - the points of a sweep are the answers to single questions, bit for bit, for every
 * calculation. */
#include "ask.h"
#include "assert_close.h"
#include "cli/help.h"
#include "engine/points.h"
#include "tables.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { OPTIONS = 24, VALUE = 100, LINE = 2000 };

/* An example of the help, taken apart. */
struct asked {
    const struct hw_calc *calc;
    size_t n;
    struct {
        char name[VALUE], value[VALUE];
        const struct hw_input *input;
    } option[OPTIONS];
};

/* True when the example asks in a form of its own already. */
static bool has_form(const struct example *example)
{
    return strpbrk(example->command, ":") || strstr(example->command, "+-") ||
           strstr(example->command, "--solve") || strstr(example->command, "--rows");
}

/* "holdwater NAME --input value ...", without what is no input. The examples have no quotes. */
static void take_apart(const struct example *example, struct asked *asked)
{
    char text[LINE];
    check(strpbrk(example->command, "'\"\\") == NULL);
    (void)snprintf(text, sizeof text, "%s", example->command);
    asked->calc = find_calc(example->calculation);
    asked->n = 0;
    char *rest = text;
    for (char *word = strtok_r(rest, " ", &rest); word; word = strtok_r(NULL, " ", &rest)) {
        size_t input = strncmp(word, "--", 2) == 0
                           ? hw_input_find(asked->calc, word + 2, strlen(word + 2))
                           : asked->calc->n_inputs;
        if (input < asked->calc->n_inputs) {
            (void)snprintf(asked->option[asked->n].name, VALUE, "%s", word + 2);
            (void)snprintf(asked->option[asked->n].value, VALUE, "%s", strtok_r(NULL, " ", &rest));
            asked->n++;
        }
    }
}

/* The question as one line, with the options `swept` (OPTIONS: none) written otherwise. */
static void write_line(const struct asked *asked, const size_t swept[2], char value[2][VALUE],
                       char line[LINE])
{
    size_t used = 0;
    line[0] = '\0';
    for (size_t i = 0; i < asked->n; i++) {
        const char *text = i == swept[0]   ? value[0]
                           : i == swept[1] ? value[1]
                                           : asked->option[i].value;
        used += (size_t)snprintf(line + used, LINE - used, "%s%s=%s", i == 0 ? "" : ";",
                                 asked->option[i].name, text);
    }
}

/* A sweep that begins where the option stands and goes up or down a little. False when it is no
 * number. */
static bool make_sweep(const char *value, double factor, char text[VALUE])
{
    char *unit = NULL;
    double x = strtod(value, &unit);
    if (unit == value) {
        return false;
    }
    double step = x == 0 ? 0.0013 : fabs(x) * 0.0013;
    double stop = x + factor * 5.4 * step;
    (void)snprintf(text, VALUE, "%.9g%s:%.9g%s:%.3g%s", x, unit, stop, unit, factor * step, unit);
    return true;
}

static void check_same_bits(const void *a, const void *b, size_t n, const char *line)
{
    if (memcmp(a, b, n) != 0) {
        fail_msg("not the same bits: %s", line);
    }
    check(memcmp(a, b, n) == 0);
}

/* Every point of a swept question against the question typed for it. */
static size_t check_points(const struct asked *asked, const size_t swept[2],
                           const struct hw_question *question)
{
    static struct hw_points points;
    char value[2][VALUE] = {"", ""};
    char line[LINE];
    size_t total = hw_points_count(question);
    hw_points_begin(&points, question);
    for (size_t k = 0; k < total; k++) {
        if (k % 7 == 0) {
            hw_points_answer(&points, k, total - k < 7 ? total - k : 7);
        }
        for (size_t a = 0; a < question->n_axes; a++) {
            const struct hw_axis *axis = &question->axis[a];
            size_t number = a == 0 ? k % points.across : k / points.across;
            const char *name = question->calc->inputs[axis->input].name;
            size_t at =
                hw_name_is(name, asked->option[swept[0]].name, strlen(asked->option[swept[0]].name))
                    ? 0
                    : 1;
            (void)snprintf(value[at], VALUE, "%.15g%s", hw_sweep_number(&axis->sweep, number),
                           axis->sweep.unit ? axis->sweep.unit->name : "");
        }
        struct hw_question alone;
        struct hw_question taken;
        struct hw_answer answer;
        struct hw_answer answer_taken;
        write_line(asked, swept, value, line);
        ask(asked->calc, line, &alone, &answer);
        hw_points_take(&points, k, &taken, &answer_taken);
        check_same_bits(alone.in, taken.in, asked->calc->n_inputs * sizeof alone.in[0], line);
        check_same_bits(answer.out, answer_taken.out, asked->calc->n_results * sizeof answer.out[0],
                        line);
        check(answer.notes == answer_taken.notes && answer.status == answer_taken.status);
        check(taken.n_axes == question->n_axes && taken.from[question->axis[0].input] == HW_SWEPT);
    }
    return total;
}

/* Sweeps one option, or two, upwards if there is room, else down. Returns the points, 0 when it is
 * no number. */
static size_t sweep_options(const struct asked *asked, const size_t swept[2])
{
    static const double factors[4][2] = {{1, 1}, {-1, 1}, {1, -1}, {-1, -1}};
    enum hw_problem problem = HW_PROBLEM_OUT_OF_RANGE;
    char line[LINE];
    for (size_t i = 0; i < 4 && problem == HW_PROBLEM_OUT_OF_RANGE; i++) {
        char value[2][VALUE] = {"", ""};
        struct hw_question question;
        size_t which = 0;
        if (!make_sweep(asked->option[swept[0]].value, factors[i][0], value[0]) ||
            (swept[1] < OPTIONS &&
             !make_sweep(asked->option[swept[1]].value, factors[i][1], value[1]))) {
            return 0;
        }
        write_line(asked, swept, value, line);
        problem = ask_settle(asked->calc, line, &question, &which);
        if (problem == HW_FINE) {
            return check_points(asked, swept, &question);
        }
    }
    if (problem == HW_PROBLEM_NOT_WHOLE || problem == HW_PROBLEM_SWEEP_WORD) {
        return 0; /* a count, or a word that begins as a number: 25C/25C */
    }
    fail_msg("%s: %s", line, hw_problem_code(problem));
    return 0;
}

static void every_calculation(void **state)
{
    (void)state;
    for (size_t i = 0; hw_calcs[i]; i++) {
        size_t points = 0;
        size_t grid_points = 0;
        for (const struct example *example = examples; example->calculation; example++) {
            struct asked asked;
            if (strcmp(example->calculation, hw_calcs[i]->name) != 0 || has_form(example)) {
                continue;
            }
            take_apart(example, &asked);
            for (size_t k = 0; k < asked.n; k++) {
                points += sweep_options(&asked, (size_t[2]){k, OPTIONS});
                for (size_t m = k + 1; m < asked.n; m++) {
                    grid_points += sweep_options(&asked, (size_t[2]){k, m});
                }
            }
        }
        printf("%s: %zu points of one axis, %zu of two\n", hw_calcs[i]->name, points, grid_points);
        check(points > 0 && grid_points > 0);
    }
}

static void counts_are_swept_too(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    static struct hw_points points;
    size_t which = 0;
    assert_int_equal(ask_settle(find_calc("change"), "volume=75L;take=20L;times=1:7:2;now=80",
                                &question, &which),
                     HW_FINE);
    hw_points_begin(&points, &question);
    assert_int_equal(hw_points_count(&question), 4);
    hw_points_answer(&points, 3, 1);
    hw_points_take(&points, 3, &question, &answer);
    struct hw_answer alone;
    ask(find_calc("change"), "volume=75L;take=20L;times=7;now=80", &question, &alone);
    check_same_bits(&alone.out[0], &answer.out[0], sizeof alone.out[0], "times=7");
}

static double input_at(const struct hw_question *question, size_t k)
{
    const struct hw_axis *axis = &question->axis[0];
    return hw_sweep_value(&question->calc->inputs[axis->input], &axis->sweep, k);
}

/* Where a caution begins or ends between two points, upwards and downwards: asked alone, just
 * beside it, the caution holds on one side and not on the other. At the limit for days the ratio to
 * it is 1. */
static void where_a_caution_turns(void **state)
{
    (void)state;
    static const char *const sweeps[] = {"7.8:8.6:0.1", "8.6:7.8:-0.1", "7:9:2"};
    static struct hw_points points;
    const struct hw_calc *calc = find_calc("ammonia");
    /* above the limit for an hour that note is told instead */
    uint64_t over = UINT64_C(1) << HW_AMMONIA_NOTE_OVER_LONG_SALT |
                    UINT64_C(1) << HW_AMMONIA_NOTE_OVER_SHORT_SALT;
    size_t ratio = hw_result_find(calc, "long_ratio", 10);
    for (size_t i = 0; i < sizeof sweeps / sizeof *sweeps; i++) {
        struct hw_question question;
        char line[LINE];
        size_t turns = 0;
        size_t which = 0;
        (void)snprintf(line, sizeof line, "tan=0.6;temp=25;salinity=34;ph=%s", sweeps[i]);
        assert_int_equal(ask_settle(calc, line, &question, &which), HW_FINE);
        hw_points_begin(&points, &question);
        size_t total = hw_points_count(&question);
        for (size_t k = 0; k + 1 < total; k++) {
            hw_points_answer(&points, k, 2);
            bool now = (points.batch.notes[0] & over) != 0;
            if (now == ((points.batch.notes[1] & over) != 0)) {
                continue;
            }
            double out[HW_RESULTS];
            double way = hw_points_turn(&points, k, over, out);
            double reach = input_at(&question, k + 1) - input_at(&question, k);
            turns++;
            check(way > 0 && way <= 1);
            assert_close(out[ratio], 1, 2e-4, 0);
            for (int side = -1; side <= 1; side += 2) {
                struct hw_question alone;
                struct hw_answer answer;
                double ph = input_at(&question, k) + (way + side * 2e-5) * reach;
                (void)snprintf(line, sizeof line, "tan=0.6;temp=25;salinity=34;ph=%.15g", ph);
                ask(calc, line, &alone, &answer);
                check(((answer.notes & over) != 0) == (side * reach > 0));
            }
        }
        check(turns == 1);
    }
}

/* Three doses or four, and nothing in between. */
static void whole_numbers_turn_at_the_next(void **state)
{
    (void)state;
    static struct hw_points points;
    struct hw_question question;
    size_t which = 0;
    double out[HW_RESULTS];
    const struct hw_calc *calc = find_calc("course");
    uint64_t over = UINT64_C(1) << HW_COURSE_NOTE_COURSE_OVER_5;
    assert_int_equal(ask_settle(calc,
                                "volume=75L;biofilter=no;strength=1%wv;target=3mg/L;doses=1:4:1",
                                &question, &which),
                     HW_FINE);
    hw_points_begin(&points, &question);
    hw_points_answer(&points, 0, 2);
    check((points.batch.notes[0] & over) == 0 && (points.batch.notes[1] & over) != 0);
    assert_close(hw_points_turn(&points, 0, over, out), 1, 0, 0);
    assert_close(out[hw_result_find(calc, "level_last", 10)], 5.25, 0, 1e-15);
}

/* The first in the order of the table runs across, whatever was written first; a full block. */
static void order_of_a_grid(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_question point;
    struct hw_answer answer;
    static struct hw_points points;
    size_t which = 0;
    assert_int_equal(ask_settle(find_calc("ammonia"),
                                "temp=20:30:0.5;ph=7:9:0.125;tan=0.6;salinity=33", &question,
                                &which),
                     HW_FINE);
    hw_points_begin(&points, &question);
    assert_int_equal(points.across, 17);
    assert_int_equal(points.down, 21);
    assert_int_equal(hw_points_count(&question), 357);
    hw_points_answer(&points, 101, HW_BLOCK);
    hw_points_take(&points, 101 + HW_BLOCK - 1, &point, &answer);
    assert_close(point.in[question.axis[0].input], 9, 0, 0);
    assert_close(point.in[question.axis[1].input], 30, 0, 0);
    hw_points_take(&points, 17 * 6, &point, &answer);
    assert_close(point.in[question.axis[0].input], 7, 0, 0);
    assert_close(point.in[question.axis[1].input], 23, 0, 0);
}

static void a_third_sweep_and_sweeps_from_files(void **state)
{
    (void)state;
    struct hw_question question;
    size_t which = 0;
    const struct hw_calc *calc = find_calc("ammonia");
    assert_int_equal(
        ask_settle(calc, "temp=20:30:5;ph=7:9:1;tan=0.6;salinity=33:35:1", &question, &which),
        HW_PROBLEM_SWEEPS);
    assert_string_equal(calc->inputs[which].name, "salinity");
    struct hw_written written[HW_INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    size_t ph = hw_input_find(calc, "ph", 2);
    size_t tan = hw_input_find(calc, "tan", 3);
    written[tan] = (struct hw_written){{"0.6", 3}, NULL, HW_GIVEN};
    static const enum hw_from files[] = {HW_FROM_TANK, HW_FROM_COLUMN};
    for (size_t i = 0; i < 2; i++) {
        written[ph] = (struct hw_written){{"7:9:1", 5}, NULL, files[i]};
        assert_int_equal(hw_question_settle(calc, written, &question, &which), HW_PROBLEM_SWEEP);
        assert_int_equal(which, ph);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_calculation),
        cmocka_unit_test(counts_are_swept_too),
        cmocka_unit_test(where_a_caution_turns),
        cmocka_unit_test(whole_numbers_turn_at_the_next),
        cmocka_unit_test(order_of_a_grid),
        cmocka_unit_test(a_third_sweep_and_sweeps_from_files),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
