/* test_solve_run.c - what is said of searches that no calculation needs yet: ends that are withheld
 * in part, gaps of every place, many solutions, counts with a safe side. */
#include "ask.h"
#include "assert_close.h"
#include "capture.h"
#include "cli/solve.h"
#include "cli/wording.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

enum { REFUSE, WITHHOLD, NOTES };

static double (*shape)(double x, uint64_t *notes);

static void answer_shape(const double in[], double out[], uint64_t *bits)
{
    out[0] = shape(in[0], bits);
}

static void work(const double in[], struct hw_steps *steps)
{
    (void)in;
    (void)steps;
}

static const struct hw_note notes[NOTES] = {
    [REFUSE] = {.code = "refuse", .text = "Not here.", .source = NULL, .effect = HW_REFUSED},
    [WITHHOLD] = {.code = "withhold", .text = "Never.", .source = NULL, .effect = HW_WITHHELD},
};

static struct hw_input input = {.name = "x", .unit = "g", .help = ""};
static struct hw_result result = {.name = "y",
                                  .unit = "mL",
                                  .help = "the result",
                                  .kind = HW_CONCENTRATION,
                                  .digits = 3,
                                  .sometimes = true};
static const char *const sources[] = {"ours", NULL};

static const struct hw_calc made_up = {
    .name = "made_up",
    .purpose = "",
    .inputs = &input,
    .n_inputs = 1,
    .results = &result,
    .n_results = 1,
    .notes = notes,
    .n_notes = NOTES,
    .sources = sources,
    .answer = answer_shape,
    .work = work,
};

static const char *said; /* on both streams */

/* Solves a shape between 0 and hi, and keeps what is said. */
static int solve(double (*of)(double x, uint64_t *bits), double hi, double target,
                 enum format format)
{
    struct args args = {.calc = &made_up, .format = format, .only = {true}, .prefix = ""};
    struct hw_question question = {.calc = &made_up, .in = {(double)NAN}, .from = {HW_SOLVED}};
    shape = of;
    input.hi = hi;
    args.wanted_value = target;
    capture_begin();
    int status = solve_run(&args, &question);
    said = capture_end();
    return status;
}

static double bits_or(double y, bool barred, uint64_t bit, uint64_t *bits)
{
    *bits |= barred ? bit : 0;
    return barred ? (double)NAN : y;
}

static double withheld_above(double x, uint64_t *bits)
{
    return bits_or(x * x, x > 6.5, 1u << WITHHOLD, bits);
}

static double refused_above(double x, uint64_t *bits)
{
    return bits_or(x * x, x > 6.5, 1u << REFUSE, bits);
}

static double refused_between(double x, uint64_t *bits)
{
    return bits_or(x * x, x > 2.25 && x < 3.5, 1u << REFUSE, bits);
}

static double absent_below(double x, uint64_t *bits)
{
    (void)bits;
    return x < 1.25 ? (double)NAN : x;
}

static double absent_or_refused(double x, uint64_t *bits)
{
    return x < 1.25 ? (double)NAN : bits_or(x, true, 1u << REFUSE, bits);
}

static double waves(double x, uint64_t *bits)
{
    (void)bits;
    return sin(x);
}

static double endless_above(double x, uint64_t *bits)
{
    (void)bits;
    return x > 6.5 ? (double)INFINITY : x;
}

static double tenfold(double x, uint64_t *bits)
{
    (void)bits;
    return 10 * x;
}

static double steep(double x, uint64_t *bits)
{
    (void)bits;
    return 1000 * (x - 99.9);
}

static double refused(double x, uint64_t *bits)
{
    return bits_or(x, true, 1u << REFUSE, bits);
}

/* What was looked for may lie where it is withheld: then that is the status. */
static void withheld_in_part(void **state)
{
    (void)state;
    assert_int_equal(solve(withheld_above, 10, 50, FORMAT_CSV), 3);
    capture_expect(
        "no solution for x between 0 and 10 g: y runs from 0 to 42.25 mL, never 50 mL\n");
    capture_expect("no answer for x above 6.5 g: withhold: Never.\n");
    assert_int_equal(solve(withheld_above, 10, 9, FORMAT_VALUE), 0);
    assert_string_equal(said, "3\n");
    assert_int_equal(solve(refused_above, 10, 50, FORMAT_TEXT), 1);
    capture_expect("no answer for x above 6.5 g: refuse: Not here.\n");
    assert_int_equal(solve(endless_above, 10, 50, FORMAT_TEXT), 1);
    capture_expect(
        "no answer for x above 6.5 g: not-finite: These numbers lead to no finite answer: ");
    assert_int_equal(solve(endless_above, 10, 5, FORMAT_TEXT), 0);
    capture_expect("    no answer above 6.5 g: not-finite\n");
    assert_int_equal(solve(refused, 10, 50, FORMAT_VALUE), 1);
    capture_expect("made_up: refuse: Not here.\n");
}

static void where_there_is_no_answer(void **state)
{
    (void)state;
    assert_int_equal(solve(refused_between, 10, 9, FORMAT_JSON), 1);
    capture_expect("y runs from 0 to 100 mL, and passes 9 mL only where there is no answer\n");
    capture_expect("no answer for x between 2.25 and 3.5 g: refuse");
    assert_int_equal(solve(absent_below, 10, 1, FORMAT_TEXT), 1);
    capture_expect("y runs from 1.25 to 10 mL, never 1 mL\n");
    capture_expect("y does not apply for x below 1.25 g\n");
    assert_int_equal(solve(absent_below, 10, 2.5, FORMAT_TEXT), 0);
    capture_expect("\n    no answer below 1.25 g: y does not apply there\n");
    assert_int_equal(solve(absent_or_refused, 10, 2.5, FORMAT_TEXT), 1);
    capture_expect("y does not apply here, whatever x is\n");
    capture_expect("no answer for x anywhere: refuse: Not here.\n");
    char place[PLACE_MAX];
    place_text(&input, 4, 4, place);
    assert_string_equal(place, "at 4 g");
}

/* The numbers of a target and of an end that differ little are told apart. */
static void just_missed(void **state)
{
    (void)state;
    assert_int_equal(solve(tenfold, 10, 100.0001, FORMAT_TEXT), 1);
    capture_expect("y runs from 0 to 100 mL, never 100.0001 mL\n");
}

static void many_solutions(void **state)
{
    (void)state;
    assert_int_equal(solve(waves, 100, 0.5, FORMAT_TEXT), 0);
    capture_expect("x  0.5236 g  solved, so that y is 0.5 mL\n");
    capture_expect("    more than 8 solutions, this is the smallest; also 2.61799, 6.80678,\n      "
                   "8.90118, 13.09,");
    assert_int_equal(solve(waves, 100, 0.5, FORMAT_VALUE), 0);
    capture_expect("0.523599\n");
    capture_expect("x has more than 8 solutions: 0.523599 g is the smallest, then 2.61799, ");
    assert_int_equal(solve(waves, 100, 0.5, FORMAT_JSON), 0);
    capture_expect("\"more\": true");
    assert_int_equal(solve(waves, 4, 0, FORMAT_TEXT), 0);
    capture_expect("x  0.000 g  solved, so that y is 0 mL\n");
}

static void counts_on_a_side(void **state)
{
    (void)state;
    input.kind = HW_COUNT;
    result.safe = -1;
    assert_int_equal(solve(tenfold, 100, 77, FORMAT_TEXT), 0);
    capture_expect("x  7 g  solved, so that y is 77 mL\n"
                   "    check: y is 70 mL at x = 7 g\n"
                   "    no whole number meets it: this one is next to it, on the safe side\n");
    result.safe = 1;
    assert_int_equal(solve(tenfold, 100, 77, FORMAT_VALUE), 0);
    assert_string_equal(said, "8\n");
    result.safe = 0;
    input.kind = HW_NUMBER;
}

/* To the side where the result is safe, with more digits where fewer would miss the target. */
static void rounding(void **state)
{
    (void)state;
    result.safe = -1;
    assert_int_equal(solve(tenfold, 1e5, 777.77, FORMAT_TEXT), 0);
    capture_expect("x  77.77 g");
    result.safe = 1;
    assert_int_equal(solve(tenfold, 1e5, 777.77, FORMAT_TEXT), 0);
    capture_expect("x  77.78 g");
    result.safe = 0;
    assert_int_equal(solve(steep, 200, 51.3, FORMAT_TEXT), 0);
    capture_expect("x  99.9513 g ");
    assert_int_equal(solve(steep, 200, 51.3, FORMAT_VALUE), 0);
    assert_string_equal(said, "99.9513\n");
    assert_int_equal(solve(tenfold, 5.0001, 50.0009, FORMAT_TEXT), 0);
    capture_expect("x  5.000 g"); /* 5.001 is out of range */
    result.safe = 1;
    assert_int_equal(solve(tenfold, 5.0001, 50.0009, FORMAT_TEXT), 0);
    capture_expect("x  5.0001 g"); /* and below, it is on the wrong side */
    result.safe = 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(withheld_in_part), cmocka_unit_test(where_there_is_no_answer),
        cmocka_unit_test(just_missed),      cmocka_unit_test(many_solutions),
        cmocka_unit_test(counts_on_a_side), cmocka_unit_test(rounding),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
