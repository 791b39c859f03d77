/* test_spread.c - what the uncertainties of inputs do to results. */
#include "ask.h"
#include "assert_close.h"
#include "engine/spread.h"
#include "inverted.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* --- Calculations of known shape -------------------------------------------------------------- */

enum { X, Y, Z, INPUTS };
enum { RATIO, VALLEY, APART, STEEP, RESULTS };
enum { STANDS, ALWAYS, ABOVE, WITHHELD, NOTES };

#define NUMBER(N, LO, HI)                                                                          \
    {                                                                                              \
        .name = (N), .unit = "", .kind = HW_NUMBER, .lo = (LO), .hi = (HI), .help = (N),           \
        .need = HW_REQUIRED                                                                        \
    }

static const struct hw_input inputs[INPUTS] = {
    [X] = NUMBER("x", 0, 1000), [Y] = NUMBER("y", 0, 10), [Z] = NUMBER("z", 0.5, 1000)};

static const struct hw_result results[RESULTS] = {
    [RATIO] = {.name = "ratio", .unit = "", .kind = HW_NUMBER, .digits = 6, .help = "1000 x y / z"},
    [VALLEY] = {.name = "valley", .unit = "", .kind = HW_NUMBER, .digits = 6, .help = "(x - 5)^2"},
    [APART] = {.name = "apart",
               .unit = "",
               .kind = HW_NUMBER,
               .digits = 6,
               .help = "root of x - 2",
               .sometimes = true},
    [STEEP] = {.name = "steep", .unit = "", .kind = HW_NUMBER, .digits = 6, .help = "-x^3"}};

static const struct hw_note notes[NOTES] = {
    [STANDS] = {.code = "stands", .text = "Stands above 7.", .source = "-", .effect = HW_STANDING},
    [ALWAYS] = {.code = "always", .text = "Always.", .source = "-", .effect = HW_CAUTION},
    [ABOVE] = {.code = "above", .text = "A ratio above 1200.", .source = "-", .effect = HW_CAUTION},
    [WITHHELD] = {.code = "withheld", .text = "Above 900.", .source = "-", .effect = HW_WITHHELD}};

static void answer_shapes(const double in[], double out[], uint64_t *bits)
{
    double x = in[X];
    double ratio = 1000 * x * in[Y] / in[Z];
    out[RATIO] = ratio;
    out[VALLEY] = (x - 5) * (x - 5);
    out[APART] = x >= 2 ? sqrt(x - 2) : (double)NAN;
    out[STEEP] = -x * x * x;
    *bits |= 1u << ALWAYS;
    *bits |= x > 7 ? 1u << STANDS : 0u;
    *bits |= ratio > 1200 ? 1u << ABOVE : 0u;
    *bits |= x > 900 ? 1u << WITHHELD : 0u;
}

static const struct hw_calc shapes = {.name = "shapes",
                                      .purpose = "known shapes",
                                      .inputs = inputs,
                                      .n_inputs = INPUTS,
                                      .results = results,
                                      .n_results = RESULTS,
                                      .notes = notes,
                                      .n_notes = NOTES,
                                      .answer = answer_shapes};

static struct hw_spread spread_of(const struct hw_calc *calc, const char *line,
                                  struct hw_answer *answer)
{
    struct hw_question question;
    struct hw_spread spread;
    ask(calc, line, &question, answer);
    hw_question_spread(&question, answer, &spread);
    return spread;
}

/* --- Checks ----------------------------------------------------------------------------------- */

/* EURACHEM/CITAC Guide CG 4, example A1 (recalled from the guide, not read again): a standard of
 * 100.28 mg +- 0.05 mg of purity 0.9999 +- 0.000058 in 100.0 mL +- 0.07 mL holds 1002.7 mg/L with a
 * standard uncertainty of 0.9 mg/L; the volume makes most of it (relative 0.0007 against 0.0005 and
 * 0.000058). */
static void a_published_example(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s =
        spread_of(&shapes, "x=100.28+-0.05;y=0.9999+-0.000058;z=100.0+-0.07", &answer);
    assert_close(answer.out[RATIO], 1002.7, 0.05, 0);
    assert_close(s.high[RATIO] - answer.out[RATIO], 0.9, 0.05, 0);
    assert_close(answer.out[RATIO] - s.low[RATIO], 0.9, 0.05, 0);
    double sum = 0.0005 * 0.0005 + 0.000058 * 0.000058 + 0.0007 * 0.0007;
    assert_close(s.share[RATIO][Z], 0.0007 * 0.0007 / sum, 0.01, 0);
    assert_close(s.share[RATIO][X] + s.share[RATIO][Y] + s.share[RATIO][Z], 1, 1e-12, 0);
}

static void up_and_down_are_kept_apart(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=3+-1;y=1;z=2", &answer);
    assert_close(s.low[STEEP], -64, 0, 0);
    assert_close(s.high[STEEP], -8, 0, 0);
    assert_close(s.low[RATIO], 1000, 1e-9, 0);
    assert_close(s.high[RATIO], 2000, 1e-9, 0);
    assert_close(s.share[STEEP][X], 1, 0, 0);
    check(isnan(s.share[STEEP][Y]));
}

/* A result that gains, or loses, at both ends. */
static void valleys(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=5.5+-2;y=1;z=2", &answer);
    assert_close(s.high[VALLEY], 6.25, 1e-12, 0);
    assert_close(s.low[VALLEY], 0.25, 0, 0);
    s = spread_of(&shapes, "x=4.5+-2;y=1;z=2", &answer);
    assert_close(s.high[VALLEY], 6.25, 1e-12, 0);
}

static void what_does_not_move_stays(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=5;y=1+-0.2;z=2", &answer);
    assert_close(s.low[VALLEY], 0, 0, 0);
    assert_close(s.high[VALLEY], 0, 0, 0);
    check(isnan(s.share[VALLEY][Y]));
    check(!isnan(s.share[RATIO][Y]));
}

static void absent_at_an_end(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=2.5+-1;y=1;z=2", &answer);
    check(!isnan(answer.out[APART]));
    check(isnan(s.low[APART]) && isnan(s.high[APART]));
    check(!isnan(s.low[RATIO]) && !isnan(s.high[RATIO]));
    s = spread_of(&shapes, "x=1.5+-1;y=1;z=2", &answer);
    check(isnan(answer.out[APART]) && isnan(s.low[APART]) && isnan(s.high[APART]));
}

/* An end outside its range is not computed, and not clipped. */
static void ends_outside(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=3;y=9.5+-1;z=2", &answer);
    check(isnan(s.high[RATIO]) && !isnan(s.low[RATIO]));
    check(s.outside == 1u << Y);
    check(isnan(s.share[RATIO][Y]));
    assert_close(s.low[STEEP], -27, 0, 0);
    s = spread_of(&shapes, "x=3;y=0+-1;z=2",
                  &answer); /* the middle stands on the end of the range */
    check(isnan(s.low[RATIO]));
    assert_close(s.high[RATIO], 1500, 1e-9, 0);
    s = spread_of(&shapes, "x=0.5+-1;y=1;z=2", &answer);
    check(isnan(s.high[STEEP]) && !isnan(s.low[STEEP]));
    s = spread_of(&shapes, "x=3;y=1;z=0.75+-0.5", &answer); /* a smaller z gives more */
    check(isnan(s.high[RATIO]) && !isnan(s.low[RATIO]));
    check(s.outside == 1u << Z);
    s = spread_of(&shapes, "x=3;y=5+-20;z=2", &answer);
    check(isnan(s.high[RATIO]) && isnan(s.low[RATIO]));
    s = spread_of(&shapes, "x=3+-0.5;y=1;z=2", &answer);
    check(s.outside == 0);
    s = spread_of(&shapes, "x=3;y=0.7+-0.70000000000000007;z=2",
                  &answer); /* zero, but for rounding */
    check(s.outside == 0);
    assert_close(s.low[RATIO], 0, 1e-9, 0);
}

static void possible_notes_of(void **state)
{
    (void)state;
    struct hw_answer answer;
    struct hw_spread s = spread_of(&shapes, "x=2.5+-0.5;y=0.9;z=2", &answer);
    check((answer.notes & 1u << ABOVE) == 0);
    check(s.possible == 1u << ABOVE);
    /* neither alone, but both together: 1100 +- 78 and +- 78 reach 1210 */
    s = spread_of(&shapes, "x=1.1+-0.078;y=1+-0.071;z=1", &answer);
    check(s.possible == 1u << ABOVE);
    s = spread_of(&shapes, "x=1+-0.05;y=1+-0.05;z=1", &answer);
    check(s.possible == 0);
    s = spread_of(&shapes, "x=6.9+-0.2;y=0;z=1", &answer); /* a standing note is not news */
    check(s.possible == 0);
    s = spread_of(&shapes, "x=890+-20;y=0;z=1", &answer);
    assert_status(answer.status, 0);
    check(s.possible == 1u << WITHHELD);
    check(isnan(s.low[STEEP]) && isnan(s.high[STEEP]));
    s = spread_of(&shapes, "x=910+-20;y=0;z=1", &answer);
    assert_status(answer.status, -2);
    check(s.possible == 0 && isnan(s.low[STEEP]));
}

/* Every calculation bears every uncertainty: results are finite or absent, low is not above
 * high. */
static void low_is_below_high(void **state)
{
    (void)state;
    struct hw_answer answer;
    static const char *const lines[][2] = {
        {"ammonia", "tan=0.6+-15%;ph=8.15+-0.1;temp=77F+-1;salinity=34+-1"},
        {"change", "volume=110L+-2;share=25%+-2;now=0.5+-0.02;keep=0.5;strength=1mg/mL;goal=0.2"},
        {"volume", "measured=inside;length=100cm+-0.5;width=50cm+-0.5;depth=39.5cm+-0.3"},
        {"oxygen",
         "temp=25+-0.5;salinity=34+-1;oxygen_now=6.1+-0.2;volume=110L+-2;biomass=240g+-20"},
        {"nitrite", "nitrite=0.5+-0.1;salinity=33+-1"},
    };
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++) {
        const struct hw_calc *calc = find_calc(lines[i][0]);
        struct hw_spread s = spread_of(calc, lines[i][1], &answer);
        for (size_t k = 0; k < calc->n_results; k++) {
            if (!isnan(s.low[k]) && !isnan(s.high[k])) {
                check(s.low[k] <= answer.out[k] && answer.out[k] <= s.high[k]);
            }
        }
        check(s.low[0] < answer.out[0] && answer.out[0] < s.high[0]);
    }
}

/* --- Ends outside, in every calculation ------------------------------------------------------- */

static struct {
    size_t spreads, kept, failed;
} untold;

/* True when a result is one number all the way from a to b of an input. */
static bool does_not_move(const struct hw_question *question, size_t i, const double way[2],
                          size_t result)
{
    enum { LOOKS = 17 };
    struct hw_question there = *question;
    struct hw_answer answer;
    double first = NAN;
    for (int k = 0; k < LOOKS; k++) {
        there.in[i] = hw_value_off_zero(way[0] + (way[1] - way[0]) * k / (LOOKS - 1));
        hw_question_answer(&there, &answer);
        first = k == 0 ? answer.out[result] : first;
        if (!hw_is_close(answer.out[result], first, 0, 1e-13)) {
            return false;
        }
    }
    return true;
}

/* What does not move with the input keeps low and high, though an end of it lies outside. */
static void reach_beyond(const struct hw_question *base, size_t i, double at, double half)
{
    const struct hw_input *moving = &base->calc->inputs[i];
    struct hw_question question = *base;
    struct hw_answer answer;
    struct hw_spread spread;
    const double way[2] = {fmax(at - half, moving->lo), fmin(at + half, moving->hi)};
    memset(question.half, 0, sizeof question.half);
    question.in[i] = at;
    question.half[i] = half;
    hw_question_answer(&question, &answer);
    hw_question_spread(&question, &answer, &spread);
    untold.spreads++;
    for (size_t r = 0; r < base->calc->n_results; r++) {
        if (isnan(answer.out[r]) || !does_not_move(&question, i, way, r)) {
            continue;
        }
        untold.kept++;
        if (spread.low[r] != answer.out[r] || spread.high[r] != answer.out[r]) {
            untold.failed++;
            print_error("%s: %s=%.17g+-%g: %s is %g to %g\n", base->calc->name, moving->name, at,
                        half, base->calc->results[r].name, spread.low[r], spread.high[r]);
        }
    }
}

static void reach_beyond_each(const struct hw_question *question)
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *moving = &question->calc->inputs[i];
        double step = (moving->hi - moving->lo) / 64;
        if (!moving->words && moving->kind != HW_COUNT && !isnan(question->in[i])) {
            reach_beyond(question, i, moving->hi - step, 2 * step);
            reach_beyond(question, i, moving->hi, step);
            reach_beyond(question, i, moving->lo + step, 2 * step);
            reach_beyond(question, i, moving->lo, step);
            reach_beyond(question, i, question->in[i], 65 * step);
        }
    }
}

static void what_does_not_move_keeps_its_ends(void **state)
{
    (void)state;
    for (size_t c = 0; hw_calcs[c]; c++) {
        check(each_question(hw_calcs[c], reach_beyond_each) >= 2);
    }
    printf("%zu spreads with an end outside, %zu results that do not move, %zu failed\n",
           untold.spreads, untold.kept, untold.failed);
    check(untold.kept > 1000 && untold.failed == 0);
}

/* What is poured as it stands: in 100 L that are thought to be 110, 20.9 mL of 1 mg/mL make 0.209
 * mg/L, above the ceiling of ionic copper, 0.20; and 0.18 + 0.1 mg/L where 0.1 were thought to be
 * in, and 1.25 times as much of a stock that is 1.25 times as strong. */
static void what_is_poured(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        bool possible;
    } rows[] = {
        {"volume=110L+-10L;target=0.19;strength=1mg/mL", true},
        {"volume=110L+-5L;target=0.19;strength=1mg/mL", false}, /* 20.9 mg in 105 L: 0.199 */
        {"volume=110L;now=0.1+-0.08;target=0.2;strength=1mg/mL", true},
        {"volume=110L;now=0.1+-0.01;target=0.18;strength=1mg/mL", false},
        {"volume=110L;target=0.18;strength=1mg/mL+-25%", true},
        {"volume=110L;target=0.18;strength=1mg/mL+-10%", false},
        {"volume=110L;target=0.18+-0.01;strength=1mg/mL+-25%", true},
        {"volume=110L;target=0.17+-0.02;strength=1mg/mL+-10%", false},
        {"volume=110L+-10L;target=0.19;source=copper-sulfate-pentahydrate", true},
    };
    const struct hw_calc *dose = find_calc("dose");
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char line[200];
        struct hw_question question;
        struct hw_answer answer;
        struct hw_spread spread;
        (void)snprintf(line, sizeof line, "kind=copper-ionic;salinity=33;%s", rows[i].line);
        ask(dose, line, &question, &answer);
        hw_question_spread(&question, &answer, &spread);
        struct hw_answer possible = {.notes = spread.possible};
        check(noted(dose, &possible, "over-ceiling") == rows[i].possible);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_published_example),
        cmocka_unit_test(up_and_down_are_kept_apart),
        cmocka_unit_test(valleys),
        cmocka_unit_test(what_does_not_move_stays),
        cmocka_unit_test(absent_at_an_end),
        cmocka_unit_test(ends_outside),
        cmocka_unit_test(possible_notes_of),
        cmocka_unit_test(low_is_below_high),
        cmocka_unit_test(what_does_not_move_keeps_its_ends),
        cmocka_unit_test(what_is_poured),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
