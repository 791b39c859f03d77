/* test_false_position.c - where a rising function passes a target: smooth ones, steep and flat
 * ones, steps, and roots at the ends of the bracket. */
#include <float.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "assert_close.h"
#include "core/false_position.h"

static double straight(double t, double x)
{
    return t * x;
}

static double cubic(double t, double x)
{
    return x * x * x + t;
}

/* Rises by 2 at t and nowhere else. */
static double step(double t, double x)
{
    return x < t ? -1.0 : 1.0;
}

/* So flat at 0 that its line hardly moves. */
static double flat(double t, double x)
{
    return pow(x, t);
}

/* So steep at the upper end that the line stays there. */
static double steep(double t, double x)
{
    return exp(t * x);
}

static void smooth(void **state)
{
    (void)state;
    assert_close(hw_false_position(straight, 2.5, 8.75, 0.125, 11.0), 3.5, 0, 4 * DBL_EPSILON);
    for (double root = -2.875; root < 2.9; root += 0.375) {
        double target = cubic(0.625, root);
        assert_close(hw_false_position(cubic, 0.625, target, -3.0, 3.0), root, 1e-15, 1e-14);
    }
}

static void at_the_ends(void **state)
{
    (void)state;
    assert_close(hw_false_position(straight, 2.0, 2.0, 1.0, 4.0), 1.0, 0, 0);
    assert_close(hw_false_position(straight, 2.0, 8.0, 1.0, 4.0), 4.0, 0, 0);
    assert_close(hw_false_position(straight, 2.0, -7.0, 1.0, 4.0), 1.0, 0, 0);
    assert_close(hw_false_position(straight, 2.0, 70.0, 1.0, 4.0), 4.0, 0, 0);
}

/* The bracket closes upon a jump, and on functions whose line is of no help. */
static void odd(void **state)
{
    (void)state;
    for (double at = 0.0625; at < 1; at += 0.0937) {
        assert_close(hw_false_position(step, at, 0.0, 0.0, 1.0), at, 0, 1e-15);
        assert_close(hw_false_position(flat, 31.0, flat(31.0, at), 0.0, 1.0), at, 0, 1e-9);
        assert_close(hw_false_position(steep, 300.0, steep(300.0, at), 0.0, 1.0), at, 0, 1e-9);
    }
}

/* The least number there is, between which and 0 lies none. */
static void no_number_between(void **state)
{
    (void)state;
    assert_close(hw_false_position(step, DBL_TRUE_MIN, 0.0, 0.0, 1.0), DBL_TRUE_MIN, 0, 0);
    assert_close(hw_false_position(step, 0.0, 0.0, -1.0, 0.5), 0.0, DBL_MIN, 0);
}

/* Asked step by step, to within a part of the bracket: both ends keep their sides, and come in. */
static void step_by_step(void **state)
{
    (void)state;
    for (double near = 0.125; near > 1e-13; near /= 2) {
        double root = 0.7314159;
        struct hw_bracket b =
            hw_bracket_between(0.0, cubic(0.0, 0.0 - root), 3.0, cubic(0.0, 3.0 - root), near);
        int asked = 0;
        while (hw_bracket_is_wide(&b)) {
            double x = hw_bracket_cut(&b);
            check(x > b.lo && x < b.hi);
            hw_bracket_take(&b, x, cubic(0.0, x - root));
            check(b.lo <= root && b.hi >= root);
            asked++;
        }
        check(b.hi - b.lo <= near && asked > 0 && asked < 200);
    }
    struct hw_bracket hit = hw_bracket_between(1.0, -1.0, 4.0, 2.0, 1e-9);
    hw_bracket_take(&hit, hw_bracket_cut(&hit), 0.0);
    check(!hw_bracket_is_wide(&hit) && hit.lo == 2.0 && hit.hi == 2.0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(smooth),       cmocka_unit_test(at_the_ends),
        cmocka_unit_test(odd),          cmocka_unit_test(no_number_between),
        cmocka_unit_test(step_by_step),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
