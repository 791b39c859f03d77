/* test_solve.c - solving backwards: made-up shapes whose roots are known, closed forms of the
 * core. */
#include "ask.h"
#include "assert_close.h"
#include "engine/solution.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* --- A calculation of one input, whose result is any function --------------------------------- */

enum { STAND, RAISE, REFUSE, WITHHOLD, NOTES };
enum { BIT_STAND = 1u << STAND, BIT_RAISE = 1u << RAISE };
enum { BIT_REFUSE = 1u << REFUSE, BIT_WITHHOLD = 1u << WITHHOLD };

static double (*shape)(double x, uint64_t *notes);
static struct hw_input input = {.name = "x", .unit = "", .help = ""};
static struct hw_result result = {
    .name = "y", .unit = "", .help = "", .kind = HW_NUMBER, .sometimes = true};
static bool outside; /* a value was asked about that is out of range, next to zero, or none */

static void answer_shape(const double in[], double out[], uint64_t *bits)
{
    double x = in[0];
    *bits |= BIT_STAND;
    out[0] = shape(x, bits);
    outside = outside || !(x >= input.lo && x <= input.hi) || hw_value_off_zero(x) != x;
}

static const struct hw_note notes[NOTES] = {
    [STAND] = {.code = "stand", .text = "", .source = NULL, .effect = HW_STANDING},
    [RAISE] = {.code = "raise", .text = "", .source = NULL, .effect = HW_CAUTION},
    [REFUSE] = {.code = "refuse", .text = "", .source = NULL, .effect = HW_REFUSED},
    [WITHHOLD] = {.code = "withhold", .text = "", .source = NULL, .effect = HW_WITHHELD},
};

static const struct hw_calc made_up = {
    .name = "made_up",
    .inputs = &input,
    .n_inputs = 1,
    .results = &result,
    .n_results = 1,
    .notes = notes,
    .n_notes = NOTES,
    .answer = answer_shape,
};

static struct hw_solution found;

/* Solves a shape between lo and hi. */
static void solve(double (*of)(double x, uint64_t *bits), double lo, double hi, double target)
{
    struct hw_question question = {.calc = &made_up, .in = {(double)NAN}, .solved = 0};
    shape = of;
    input.lo = lo;
    input.hi = hi;
    memset(&found, 0x55, sizeof found);
    hw_solve(&question, 0, target, &found);
    check(!outside);
}

/* One root, at one value. */
static void one_root(double want, double absolute, double relative)
{
    check(found.end == HW_END_FOUND);
    assert_int_equal(found.n_roots, 1);
    check(!found.more_roots);
    assert_close(found.root[0].from, want, absolute, relative);
    assert_close(found.root[0].to, found.root[0].from, 0, 0);
}

static double square(double x, uint64_t *bits)
{
    (void)bits;
    return x * x;
}

static double inverse(double x, uint64_t *bits)
{
    (void)bits;
    return 1 / x;
}

static double rising(double x, uint64_t *bits)
{
    (void)bits;
    return exp(x) + x;
}

static double linear(double x, uint64_t *bits)
{
    (void)bits;
    return 3 * x - 7;
}

static void rising_and_falling(void **state)
{
    (void)state;
    solve(square, 0, 1e5, 2);
    one_root(sqrt(2), 0, 4e-16);
    solve(square, 0, 1e5, 1e-6);
    one_root(1e-3, 0, 4e-16);
    solve(square, 0, 1e5, 9.99e9);
    one_root(sqrt(9.99e9), 0, 4e-16);
    solve(square, 0.1, 1e5, 0.0123);
    one_root(sqrt(0.0123), 0, 4e-16);
    solve(inverse, 1e-3, 1e6, 2.385e-5);
    one_root(1 / 2.385e-5, 0, 4e-16);
    solve(inverse, 1e-3, 1e6, 238.5);
    one_root(1 / 238.5, 0, 4e-16);
    solve(rising, -50, 50, 0);
    one_root(-0.56714329040978387, 0, 4e-16); /* -W(1), the omega constant */
    solve(linear, -1e3, 1e3, -7);
    one_root(0, 0, 0);
    solve(linear, -1e3, 1e3, 0);
    one_root(7.0 / 3, 0, 4e-16);
    solve(linear, -1000.5, -2, -10.1);
    check(found.end == HW_END_UNREACHED);
    assert_int_equal(found.n_roots, 0);
    assert_close(found.least.y, 3 * -1000.5 - 7, 0, 0);
    assert_close(found.least.x, -1000.5, 0, 0);
    assert_close(found.most.y, -13, 0, 0);
    assert_close(found.most.x, -2, 0, 0);
}

/* A target at an end of the range, or beside it by a rounding. */
static void at_the_ends(void **state)
{
    (void)state;
    solve(square, 3, 9, 9);
    one_root(3, 0, 0);
    solve(square, 3, 9, 81);
    one_root(9, 0, 0);
    solve(square, 3, 9, 9 * (1 - 1e-11));
    one_root(3, 0, 0);
    solve(square, 3, 9, 81 * (1 + 1e-11));
    one_root(9, 0, 0);
    solve(square, 3, 9, 9 * (1 + 1e-11));
    one_root(3 * (1 + 5e-12), 0, 1e-15);
    solve(square, 3, 9, 81 * (1 - 1e-11));
    one_root(9 * (1 - 5e-12), 0, 1e-15);
    solve(square, 3, 9, 8.9);
    check(found.end == HW_END_UNREACHED);
    solve(square, 3, 9, 81.1);
    check(found.end == HW_END_UNREACHED);
    solve(square, 0, 10, 0);
    one_root(0, 0, 0);
}

/* --- Several roots ---------------------------------------------------------------------------- */

static double hill(double x, uint64_t *bits)
{
    (void)bits;
    return 1 - (x - 3) * (x - 3);
}

static double waves(double x, uint64_t *bits)
{
    (void)bits;
    return sin(x);
}

static double narrow_pair(double x, uint64_t *bits)
{
    (void)bits;
    return (x - 0.3712345) * (x - 0.3712345) - 1e-10;
}

static void several_roots(void **state)
{
    (void)state;
    const double pi = acos(-1);
    solve(hill, 0, 10, 0);
    check(found.end == HW_END_FOUND && !found.more_roots);
    assert_int_equal(found.n_roots, 2);
    assert_close(found.root[0].from, 2, 1e-15, 0);
    assert_close(found.root[1].from, 4, 1e-15, 0);
    solve(waves, 0, 16, 0.5);
    assert_int_equal(found.n_roots, 6);
    check(!found.more_roots);
    solve(waves, 0, 100, 0.5);
    assert_int_equal(found.n_roots, HW_ROOTS);
    check(found.more_roots);
    for (size_t i = 0; i < HW_ROOTS; i++) {
        double turn = (double)(i / 2) * 2 * pi;
        double want = turn + (i % 2 == 0 ? pi / 6 : 5 * pi / 6);
        assert_close(found.root[i].from, want, 0, 1e-15);
    }
    solve(narrow_pair, 0, 1, 0); /* both between two steps of the scan */
    assert_int_equal(found.n_roots, 2);
    assert_close(found.root[0].from, 0.3712345 - 1e-5, 0, 1e-11);
    assert_close(found.root[1].from, 0.3712345 + 1e-5, 0, 1e-11);
}

static double bowl(double x, uint64_t *bits)
{
    (void)bits;
    return 5 + (x - 0.3712345) * (x - 0.3712345);
}

static double dome(double x, uint64_t *bits)
{
    (void)bits;
    return 5 - (x - 0.3712345) * (x - 0.3712345);
}

static double kink(double x, uint64_t *bits)
{
    (void)bits;
    return 5 + fabs(x - 0.3712345);
}

static double pole(double x, uint64_t *bits)
{
    (void)bits;
    return 1 / ((x - 0.3712345) * (x - 0.3712345));
}

static void touching(void **state)
{
    (void)state;
    solve(bowl, 0, 1, 5);
    one_root(0.3712345, 1e-5, 0);
    assert_close(found.root[0].reached, 5, 1e-12, 0);
    solve(dome, 0, 1, 5);
    one_root(0.3712345, 1e-5, 0);
    solve(dome, 0, 1, 5 * (1 + 5e-10));
    one_root(0.3712345, 1e-5, 0);
    solve(kink, 0, 1, 5);
    one_root(0.3712345, 1e-8, 0);
    solve(bowl, 0, 1, 5 * (1 - 1e-8));
    check(found.end == HW_END_UNREACHED);
    assert_close(found.least.y, 5, 0, 1e-14); /* its lowest point was looked for */
    assert_close(found.least.x, 0.3712345, 1e-5, 0);
    solve(pole, 0, 1, 1.5); /* no lowest point near the target between two high ones */
    check(found.end == HW_END_UNREACHED);
}

/* --- Leaps, flats, steps ---------------------------------------------------------------------- */

static double leap(double x, uint64_t *bits)
{
    (void)bits;
    return x < 5.0625 ? x : x + 10;
}

static double stairs(double x, uint64_t *bits)
{
    (void)bits;
    return floor(x / 10);
}

static double hyperbola(double x, uint64_t *bits)
{
    (void)bits;
    return x == 0.3712345 ? 1e300 : 1 / (x - 0.3712345);
}

static double teeth(double x, uint64_t *bits)
{
    (void)bits;
    return x - 10 * floor(x / 10); /* falls by 10 at each tenth */
}

static double noise(double x, uint64_t *bits)
{
    uint64_t z = 0;
    (void)bits;
    memcpy(&z, &x, sizeof z);
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return 5 + ((z >> 40) & 1 ? 0.001 : -0.001);
}

/* Over five at every other value of the scan from -1 to 1; between them on five or below it, at
 * random. */
static double noise_below(double x, uint64_t *bits)
{
    double scan = (x + 1) * 2048;
    bool over = scan == floor(scan) && fmod(scan, 2) == 1;
    return over ? 5.1 : noise(x, bits) < 5 ? 4.9 : 5;
}

/* Past zero by a little, midway between two values of the scan: a step of rounding is no leap. */
static double small_step(double x, uint64_t *bits)
{
    (void)bits;
    return x - 0.5 + copysign(1e-12, x - 0.5);
}

static void leaps(void **state)
{
    (void)state;
    solve(leap, 0, 10, 7.5);
    check(found.end == HW_END_JUMPED && found.jumps);
    assert_int_equal(found.n_roots, 0);
    assert_close(found.jump_from.x, nextafter(5.0625, 0), 0, 0);
    assert_close(found.jump_to.x, 5.0625, 0, 0);
    assert_close(found.jump_from.y, 5.0625, 1e-15, 1e-15);
    assert_close(found.jump_to.y, 15.0625, 0, 0);
    solve(leap, 0, 10, 5.0625); /* the foot of the leap comes as near as can be */
    one_root(5.0625, 0, 2e-16);
    solve(leap, 0, 10, 15.0625);
    one_root(5.0625, 0, 2e-16);
    solve(leap, 0, 10, 5.0625 * (1 + 1e-11));
    one_root(5.0625, 0, 2e-16);
    solve(leap, 0, 10, nextafter(15.0625, 0));
    one_root(5.0625, 0, 0);
    solve(leap, 0, 10, 15.0625 * (1 - 1e-11)); /* and so does its head */
    one_root(5.0625, 0, 0);
    solve(leap, 0, 10, 3.5);
    one_root(3.5, 0, 0);
    check(!found.jumps);
    solve(small_step, -2048, 2048, 0);
    one_root(0.5, 0, 0);
    check(!found.jumps);
    solve(noise, 0, 1, 5); /* to and fro without end, and in a moment */
    check(found.end == HW_END_JUMPED);
    solve(noise_below, -1, 1, 5);
    check(found.end == HW_END_FOUND && found.more_roots);
    solve(hyperbola, 0, 1, 0.25);
    check(found.end == HW_END_JUMPED);
    assert_close(found.jump_from.x, 0.3712345, 0, 2e-16);
    check(found.jump_from.y < -1e15 && found.jump_to.y > 1e15);
    solve(teeth, 0, 35, 7);
    assert_int_equal(found.n_roots, 3);
    check(found.jumps); /* besides */
    assert_close(found.jump_to.x, 10, 0, 0);
    assert_close(found.root[2].from, 27, 0, 1e-15);
}

static double three(double x, uint64_t *bits)
{
    (void)x;
    (void)bits;
    return 3;
}

static double three_with_noise(double x, uint64_t *bits)
{
    (void)bits;
    return x * 3 / x;
}

static double nothing_at_all(double x, uint64_t *bits)
{
    (void)x;
    (void)bits;
    return 0;
}

static double almost_flat(double x, uint64_t *bits)
{
    (void)bits;
    return 1 + 0.998e-12 * x;
}

static double barely_rising(double x, uint64_t *bits)
{
    (void)bits;
    return 1 + 1.005e-12 * x;
}

static void flats(void **state)
{
    (void)state;
    solve(almost_flat, 0, 1, 2); /* by 1e-12 of the result and less: nothing hangs on the input */
    check(found.end == HW_END_FLAT);
    solve(barely_rising, 0, 1, 2);
    check(found.end == HW_END_UNREACHED);
    static const double targets[] = {2, 3, 4, 0};
    for (size_t i = 0; i < 4; i++) {
        solve(three, 0, 10, targets[i]);
        check(found.end == HW_END_FLAT);
        assert_close(found.least.y, 3, 0, 0);
        solve(three_with_noise, 0.1, 10, targets[i]);
        check(found.end == HW_END_FLAT);
        assert_close(found.most.y, 3, 0, 1e-15);
        solve(nothing_at_all, 0, 10, targets[i]);
        check(found.end == HW_END_FLAT);
    }
}

static double clamped(double x, uint64_t *bits)
{
    (void)bits;
    return x < 2.3 ? 2.3 : x > 4.1 ? 4.1 : x;
}

static void expect_root(size_t i, double from, double to)
{
    assert_close(found.root[i].from, from, 0, 1e-15);
    assert_close(found.root[i].to, to, 0, 1e-15);
}

/* Where the target is met all the way from one value to another. */
static void stretches(void **state)
{
    (void)state;
    solve(stairs, 0, 100, 3);
    check(found.end == HW_END_FOUND);
    assert_int_equal(found.n_roots, 1);
    expect_root(0, 30, nextafter(40, 0));
    solve(stairs, 0, 100, 10);
    assert_int_equal(found.n_roots, 1);
    expect_root(0, 100, 100);
    solve(stairs, 0, 1e5, 9999); /* narrower than the steps of the scan */
    assert_int_equal(found.n_roots, 1);
    expect_root(0, 99990, nextafter(1e5, 0));
    solve(stairs, 0, 1e5, 4321.5);
    check(found.end == HW_END_JUMPED);
    assert_close(found.jump_to.x, 43220, 0, 0);
    solve(clamped, 0, 10, 2.3);
    expect_root(0, 0, 2.3);
    solve(clamped, 0, 10, 4.1);
    expect_root(0, 4.1, 10);
    solve(clamped, 0, 10, 3.3);
    one_root(3.3, 0, 0);
}

/* --- Where there is no answer ----------------------------------------------------------------- */

static double bits_or(double y, bool barred, uint64_t bit, uint64_t *bits)
{
    *bits |= barred ? bit : 0;
    return barred ? (double)NAN : y;
}

static double absent_below(double x, uint64_t *bits)
{
    (void)bits;
    return x < 2.7182818 ? (double)NAN : x * x;
}

static double refused_above(double x, uint64_t *bits)
{
    return bits_or(x * x, x > 2.7182818, BIT_REFUSE, bits);
}

static double withheld_between(double x, uint64_t *bits)
{
    return bits_or(x * x, x > 2 && x < 3, x < 2.5 ? BIT_REFUSE : BIT_WITHHOLD, bits);
}

static double thin_gap(double x, uint64_t *bits)
{
    return bits_or(x * x, fabs(x - 3.14159) < 1e-5, BIT_REFUSE, bits);
}

static double many_gaps(double x, uint64_t *bits)
{
    return bits_or(x * x, x - floor(x) > 0.75, BIT_REFUSE, bits);
}

static double only_at_two(double x, uint64_t *bits)
{
    return bits_or(x * x, x != 2, BIT_REFUSE, bits);
}

static double gap_at_a_low_point(double x, uint64_t *bits)
{
    return bits_or(fabs(x - 3.14159), fabs(x - 3.14159) < 1e-4, BIT_REFUSE, bits);
}

static void expect_gap(size_t i, double from, double to, int status, uint64_t bits)
{
    assert_close(found.gap[i].from, from, 0, 0);
    assert_close(found.gap[i].to, to, 0, 0);
    assert_int_equal(found.gap[i].status, status);
    assert_int_equal(found.gap[i].notes, bits);
}

static void gaps(void **state)
{
    (void)state;
    solve(absent_below, 0, 10, 9);
    one_root(3, 0, 0);
    assert_int_equal(found.n_gaps, 1);
    expect_gap(0, 0, nextafter(2.7182818, 0), 0, 0);
    solve(absent_below, 0, 10, 2.7182818 * 2.7182818);
    one_root(2.7182818, 0, 0);
    solve(absent_below, 0, 10, 4);
    check(found.end == HW_END_UNREACHED);
    assert_close(found.least.x, 2.7182818, 0, 0);
    solve(refused_above, 0, 10, 7.3);
    one_root(sqrt(7.3), 0, 4e-16);
    expect_gap(0, nextafter(2.7182818, 9), 10, -1, BIT_REFUSE);
    solve(refused_above, 0, 10, 2.7182818 * 2.7182818);
    one_root(2.7182818, 0, 0);
    solve(refused_above, 0, 10, 7.4);
    check(found.end == HW_END_UNREACHED);
    solve(withheld_between, 0, 10, 6);
    check(found.end == HW_END_UNREACHED && !found.jumps);
    check(found.least.y == 0 && found.most.y == 100);
    assert_int_equal(found.n_gaps, 1);
    expect_gap(0, nextafter(2, 9), nextafter(3, 0), -2, BIT_REFUSE | BIT_WITHHOLD);
    solve(withheld_between, 0, 10, 4);
    one_root(2, 0, 0);
    solve(withheld_between, 0, 10, 25);
    one_root(5, 0, 0);
}

static void odd_gaps(void **state)
{
    (void)state;
    solve(thin_gap, 0, 1000, 3.14159 * 3.14159);
    check(found.end == HW_END_UNREACHED && !found.jumps);
    assert_int_equal(found.n_gaps, 1);
    assert_close(found.gap[0].from, 3.14158, 1e-9, 0);
    assert_close(found.gap[0].to, 3.1416, 1e-9, 0);
    assert_int_equal(found.gap[0].status, -1);
    solve(many_gaps, 0, 100, 42.25 * 42.25);
    one_root(42.25, 0, 1e-15);
    assert_int_equal(found.n_gaps, HW_GAPS);
    check(found.more_gaps);
    expect_gap(3, nextafter(3.75, 9), nextafter(4, 0), -1, BIT_REFUSE);
    solve(only_at_two, 1, 3, 4); /* 2 is a step of the scan */
    one_root(2, 0, 0);
    solve(only_at_two, 1, 3, 5);
    check(found.end == HW_END_UNREACHED);
    solve(only_at_two, 1, 3, 4 * (1 + 1e-11));
    one_root(2, 0, 0);
    solve(gap_at_a_low_point, 0, 100, 1e-5);
    check(found.end == HW_END_UNREACHED);
}

static double refused(double x, uint64_t *bits)
{
    return bits_or(x, true, BIT_REFUSE, bits);
}

static double withheld_or_refused(double x, uint64_t *bits)
{
    return bits_or(x, true, x < 3 ? BIT_REFUSE | BIT_RAISE : BIT_WITHHOLD, bits);
}

static double refused_or_absent(double x, uint64_t *bits)
{
    return x < 3 ? (double)NAN : bits_or(x, true, BIT_REFUSE, bits);
}

static void no_answer_at_all(void **state)
{
    (void)state;
    solve(refused, 0, 10, 1);
    check(found.end == HW_END_BARRED);
    assert_int_equal(found.notes, BIT_REFUSE | BIT_STAND);
    check(isnan(found.least.y) && isnan(found.most.y));
    solve(withheld_or_refused, 0, 10, 1);
    check(found.end == HW_END_BARRED);
    assert_int_equal(found.notes, BIT_REFUSE | BIT_WITHHOLD | BIT_STAND);
    expect_gap(0, 0, 10, -2, BIT_REFUSE | BIT_WITHHOLD);
    solve(refused_or_absent, 0, 10, 1);
    check(found.end == HW_END_ABSENT);
    expect_gap(0, 0, 10, -1, BIT_REFUSE);
}

/* --- The safe side, and counts ---------------------------------------------------------------- */

static double square_with_caution(double x, uint64_t *bits)
{
    *bits |= x * x > 2 ? BIT_RAISE : 0;
    return x * x;
}

static double steps_over_two(double x, uint64_t *bits)
{
    double y = 2 + 1e6 * (x - 1.4142135623730951) + 4e-16;
    *bits |= y > 2 ? BIT_RAISE : 0;
    return y;
}

static void the_safe_side(void **state)
{
    (void)state;
    result.safe = -1;
    solve(square, 0, 10, 2);
    one_root(sqrt(2), 0, 4e-16);
    check(found.root[0].reached < 2);
    result.safe = 1;
    solve(square, 0, 10, 2);
    one_root(sqrt(2), 0, 4e-16);
    check(found.root[0].reached > 2);
    result.safe = -1; /* shown rounded down, but to be reached */
    result.kind = HW_TIME;
    check(hw_solved_side(&result) == 1);
    solve(square, 0, 10, 2);
    one_root(sqrt(2), 0, 4e-16);
    check(found.root[0].reached > 2);
    result.kind = HW_NUMBER;
    result.safe = 0;
    solve(square, 0, 10, 2);
    one_root(sqrt(2), 0, 4e-16);
    solve(square_with_caution, 0, 10, 2);
    one_root(sqrt(2), 0, 4e-16);
    check(found.root[0].reached < 2);
    solve(steps_over_two, 0, 10, 2); /* the only value within rounding is over, and cautioned */
    one_root(sqrt(2), 0, 1e-12);
    check(found.root[0].reached < 2);
    assert_int_equal(hw_notes_raised(&made_up, BIT_STAND | BIT_RAISE | BIT_REFUSE), 2);
}

static double halving(double x, uint64_t *bits)
{
    (void)bits;
    return 80 * pow(0.5, x);
}

static double tenfold(double x, uint64_t *bits)
{
    (void)bits;
    return 10 * x;
}

static double towards_five(double x, uint64_t *bits)
{
    (void)bits;
    return 5 + pow(0.5, x);
}

static double bounce(double x, uint64_t *bits)
{
    (void)bits;
    return fabs(x - 50.5);
}

static double tenfold_with_caution(double x, uint64_t *bits)
{
    *bits |= x >= 8 ? BIT_RAISE : 0;
    return 10 * x;
}

static void counts(void **state)
{
    (void)state;
    input.kind = HW_COUNT;
    solve(three, 1, 2, 3); /* two whole numbers are enough to be flat */
    check(found.end == HW_END_FLAT);
    solve(tenfold_with_caution, 1, 100, 80); /* and not a little less, without the caution */
    one_root(8, 0, 0);
    assert_close(found.root[0].from, 8, 0, 0);
    assert_close(found.root[0].to, 8, 0, 0);
    solve(halving, 1, 100, 7); /* 80 40 20 10 5: passed at 4 */
    one_root(4, 0, 0);
    assert_close(found.root[0].reached, 5, 0, 0);
    result.safe = -1;
    solve(halving, 1, 100, 7);
    one_root(4, 0, 0);
    solve(tenfold, 1, 100, 77);
    one_root(7, 0, 0);
    result.safe = 1;
    solve(halving, 1, 100, 7);
    one_root(3, 0, 0);
    solve(tenfold, 1, 100, 77);
    one_root(8, 0, 0);
    result.safe = 0;
    solve(tenfold, 1, 100, 77);
    one_root(8, 0, 0);
    solve(tenfold, 1, 100, 70);
    one_root(7, 0, 0);
    assert_close(found.root[0].reached, 70, 0, 0);
    solve(tenfold, 1, 1e6, 1234567); /* not every one is looked at first */
    one_root(123457, 0, 0);
    solve(tenfold, 1, 1e6, 1e7);
    one_root(1e6, 0, 0);
    solve(tenfold, 1, 100, 5);
    check(found.end == HW_END_UNREACHED);
    solve(stairs, 1, 100, 4);
    expect_root(0, 40, 49);
    solve(towards_five, 1, 100, 5 + pow(0.5, 45));
    one_root(45, 0, 0); /* and not 100 too, which is as near as rounding */
    solve(bounce, 1, 100, 10);
    assert_int_equal(found.n_roots, 2);
    expect_root(0, 41, 41);
    expect_root(1, 61, 61);
    solve(bounce, 1, 100, 0.5);
    expect_root(0, 50, 51);
    solve(bounce, 1, 1e6, 0.3);
    check(found.end == HW_END_UNREACHED);
    assert_close(found.least.y, 0.5, 0, 0);
    input.kind = HW_NUMBER;
}

/* --- The steps of the scan -------------------------------------------------------------------- */

static size_t walk_along(double lo, double hi, enum hw_kind kind, double *widest)
{
    struct hw_line line = {.input = &input};
    struct hw_line_walk walk;
    double x = 0;
    double last = 0;
    size_t n = 0;
    input.lo = lo;
    input.hi = hi;
    input.kind = kind;
    hw_line_start(&line, &walk);
    *widest = 0;
    while (hw_line_next(&walk, &x)) {
        check(n == 0 ? x == lo : x > last);
        check(kind != HW_COUNT || x == floor(x));
        *widest = n == 0 ? 0 : fmax(*widest, x - last);
        last = x;
        n++;
    }
    check(last == hi);
    check(!hw_line_next(&walk, &x));
    input.kind = HW_NUMBER;
    return n;
}

static void the_scan(void **state)
{
    (void)state;
    double widest = 0;
    size_t n = walk_along(0, 40, HW_NUMBER, &widest);
    check(n > 4000 && n < 4200 && widest <= 40.0 / 2048);
    n = walk_along(7, 9, HW_NUMBER, &widest);
    check(n == 4097 && widest < 2.0 / 4095);
    n = walk_along(-3, 40, HW_NUMBER, &widest);
    check(n == 4097);
    n = walk_along(0.1, 1e5, HW_NUMBER, &widest);
    check(n > 4000 && n < 4200);
    n = walk_along(1, 100, HW_COUNT, &widest);
    check(n == 100 && widest == 1);
    n = walk_along(0, 1000, HW_COUNT, &widest);
    check(n == 1001);
    n = walk_along(1, 1e6, HW_COUNT, &widest);
    check(n > 3000 && n < 4200);
    n = walk_along(-1e6, 0, HW_NUMBER, &widest);
    check(n == 4097);
}

/* --- Random shapes with closed forms ---------------------------------------------------------- */

static double factor[3];

static double power_law(double x, uint64_t *bits)
{
    (void)bits;
    return factor[0] * pow(x, factor[1]);
}

static double saturating(double x, uint64_t *bits)
{
    (void)bits;
    return factor[0] * x / (factor[1] + x);
}

static double parabola(double x, uint64_t *bits)
{
    (void)bits;
    return factor[0] * (x - factor[1]) * (x - factor[2]);
}

static void random_shapes(void **state)
{
    (void)state;
    hw_random_start(20310306);
    for (int i = 0; i < 150; i++) {
        double want = exp(hw_random_between(log(0.1), log(1e5)));
        factor[0] = hw_random_between(0.1, 50);
        factor[1] = hw_random_between(-3, 3);
        uint64_t none = 0;
        solve(power_law, 0.1, 1e5, power_law(want, &none));
        one_root(want, 0, 1e-13 / fabs(factor[1]));
        factor[1] = exp(hw_random_between(log(0.1), log(1e4)));
        solve(saturating, 0.1, 1e5, saturating(want, &none));
        one_root(want, 0, 1e-15 * (want + factor[1]) / factor[1] + 1e-15);
        factor[1] = hw_random_between(0, 49);
        factor[2] = hw_random_between(51, 100);
        solve(parabola, 0, 100, 0);
        assert_int_equal(found.n_roots, 2);
        assert_close(found.root[0].from, factor[1], 1e-13, 0);
        assert_close(found.root[1].from, factor[2], 1e-13, 0);
    }
}

/* --- Closed forms of the core ----------------------------------------------------------------- */

/* Settles a line in which one input is left out, or given and then looked for instead, and
 * solves. */
static void solve_line(const char *name, const char *line, const char *moving, const char *wanted,
                       double target)
{
    const struct hw_calc *calc = find_calc(name);
    struct hw_written written[HW_INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    struct hw_question question;
    size_t which = 0;
    while (*line != '\0') {
        size_t n = strcspn(line, "=");
        size_t length = strcspn(line + n + 1, ";");
        size_t i = hw_input_find(calc, line, n);
        check(i < calc->n_inputs);
        written[i] = (struct hw_written){{line + n + 1, length}, NULL, HW_GIVEN};
        line += n + 1 + length;
        line += *line == ';' ? 1 : 0;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (strcmp(calc->inputs[i].name, moving) == 0) {
            written[i].from = HW_SOLVED;
        }
    }
    check(hw_question_settle(calc, written, &question, &which) == HW_FINE);
    check(question.solved < calc->n_inputs);
    size_t r = hw_result_find(calc, wanted, strlen(wanted));
    check(r < calc->n_results);
    hw_solve(&question, r, target, &found);
}

static void closed_forms(void **state)
{
    (void)state;
    /* 2 mg/L as N in 75 L is 150 mg of N; ammonium chloride is 53.491 / 14.007 of that */
    solve_line("challenge", "volume=75L;fish=no", "target", "nitrogen", 150);
    one_root(2, 0, 1e-14);
    solve_line("challenge", "fish=no;target=2", "volume", "nitrogen", 150);
    one_root(75, 0, 1e-14);
    solve_line("change", "volume=110L;now=0.18", "share", "after", 0.135);
    one_root(25, 0, 1e-13);
    solve_line("change", "volume=110L;now=0.18", "take", "after", 0.135);
    one_root(27.5, 0, 1e-13);
    solve_line("change", "volume=110L;method=flow;now=0.18", "share", "after", 0.18 * exp(-1));
    one_root(100, 0, 1e-13);
    solve_line("change", "volume=110L;share=25%;now=80", "times", "after", 20); /* ln 4 / ln 4/3 */
    one_root(5, 0, 0);
    solve_line("bath", "volume=12L;target=6mg/L", "strength", "dye", 7.2);
    one_root(10, 0, 1e-14);
    /* looked for, they are what the answer itself says */
    struct hw_question question;
    struct hw_answer answer;
    const struct hw_calc *ammonia = find_calc("ammonia");
    const char *line = "tan=0.6;ph=8.15;temp=25;salinity=34";
    ask(ammonia, line, &question, &answer);
    solve_line("ammonia", "ph=8.15;temp=25;salinity=34", "tan", "long_ratio", 1);
    one_root(result_of(ammonia, &answer, "tan_long"), 0, 1e-13);
    solve_line("ammonia", "tan=0.6;temp=25;salinity=34", "ph", "long_ratio", 1);
    one_root(result_of(ammonia, &answer, "ph_long"), 0, 1e-12);
    solve_line("ammonia", "tan=0.6;ph=8.15;temp=25", "salinity", "long_ratio", 1);
    check(found.jumps || found.n_gaps > 0 || found.end == HW_END_UNREACHED);
    const struct hw_calc *change = find_calc("change");
    ask(change, "volume=75L;share=30%;now=80;goal=20", &question, &answer);
    solve_line("change", "volume=75L;now=80", "share", "after", 20);
    one_root(result_of(change, &answer, "share_needed"), 0, 1e-13);
    solve_line("change", "volume=75L;share=30%;now=80", "times", "after", 20);
    one_root(result_of(change, &answer, "times_needed"), 0, 0);
}

static void what_is_never_answered(void **state)
{
    (void)state;
    solve_line("challenge", "volume=75L;fish=yes", "target", "mass", 5);
    check(found.end == HW_END_BARRED);
    assert_int_equal(hw_notes_status(find_calc("challenge"), found.notes), -2);
    solve_line("ammonia", "tan=0.6;temp=25;salinity=0", "ph", "free_for_limit", 0.1);
    check(found.end == HW_END_ABSENT);
    solve_line("ammonia", "ph=8;temp=25;salinity=34", "tan", "pka", 9.3);
    check(found.end == HW_END_FLAT);
    solve_line("change", "volume=75L;now=80", "share", "after", 100);
    check(found.end == HW_END_UNREACHED);
    assert_int_equal(found.n_gaps, 1); /* a batch takes no more than all */
    check(found.gap[0].from > 100 && found.gap[0].to == 1000 && found.gap[0].status == -1);
    check(fabs(found.most.y - 80) < 0.01 && fabs(found.least.y) < 0.01);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rising_and_falling),
        cmocka_unit_test(at_the_ends),
        cmocka_unit_test(several_roots),
        cmocka_unit_test(touching),
        cmocka_unit_test(leaps),
        cmocka_unit_test(flats),
        cmocka_unit_test(stretches),
        cmocka_unit_test(gaps),
        cmocka_unit_test(odd_gaps),
        cmocka_unit_test(no_answer_at_all),
        cmocka_unit_test(the_safe_side),
        cmocka_unit_test(counts),
        cmocka_unit_test(the_scan),
        cmocka_unit_test(random_shapes),
        cmocka_unit_test(closed_forms),
        cmocka_unit_test(what_is_never_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
