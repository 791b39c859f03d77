/* problem.c - the codes in words. */
#include "engine/problem.h"

static const char *const codes[HW_PROBLEMS] = {
    [HW_FINE] = "fine",
    [HW_PROBLEM_EMPTY] = "empty",
    [HW_PROBLEM_NOT_A_NUMBER] = "not-a-number",
    [HW_PROBLEM_COMMA] = "decimal-comma",
    [HW_PROBLEM_NOT_DECIMAL] = "not-decimal",
    [HW_PROBLEM_TOO_LARGE] = "too-large",
    [HW_PROBLEM_SPREAD] = "spread-not-taken",
    [HW_PROBLEM_SWEEP] = "sweep-not-taken",
    [HW_PROBLEM_NEEDS_UNIT] = "needs-unit",
    [HW_PROBLEM_UNKNOWN_UNIT] = "unknown-unit",
    [HW_PROBLEM_WRONG_KIND] = "wrong-kind",
    [HW_PROBLEM_UNIT_UNWANTED] = "unit-unwanted",
    [HW_PROBLEM_HOUSE_MEASURE] = "house-measure",
    [HW_PROBLEM_GRAVITY] = "looks-like-gravity",
    [HW_PROBLEM_OUT_OF_RANGE] = "out-of-range",
    [HW_PROBLEM_NOT_WHOLE] = "not-whole",
    [HW_PROBLEM_UNKNOWN_WORD] = "unknown-word",
    [HW_PROBLEM_WORD_TWICE] = "word-twice",
    [HW_PROBLEM_NOT_ALONE] = "not-alone",
    [HW_PROBLEM_MISSING] = "missing",
    [HW_PROBLEM_NONE_OF_GROUP] = "none-of-group",
    [HW_PROBLEM_MANY_OF_GROUP] = "many-of-group",
    [HW_PROBLEM_OUT_OF_PLACE] = "out-of-place",
    [HW_PROBLEM_HALF] = "half-width",
    [HW_PROBLEM_HALF_NEGATIVE] = "half-width-negative",
    [HW_PROBLEM_HALF_UNIT] = "half-width-unit",
    [HW_PROBLEM_HALF_WORD] = "half-width-on-word",
    [HW_PROBLEM_HALF_COUNT] = "half-width-on-count",
    [HW_PROBLEM_SWEEP_PARTS] = "sweep-parts",
    [HW_PROBLEM_SWEEP_UNITS] = "sweep-units",
    [HW_PROBLEM_SWEEP_WORD] = "sweep-of-words",
    [HW_PROBLEM_STEP_ZERO] = "step-zero",
    [HW_PROBLEM_STEP_SIGN] = "step-sign",
    [HW_PROBLEM_SWEEP_LONG] = "sweep-long",
    [HW_PROBLEM_SWEEPS] = "sweeps",
    [HW_PROBLEM_SOLVE_GIVEN] = "solved-and-given",
    [HW_PROBLEM_SOLVE_WORD] = "solve-word",
    [HW_PROBLEM_NEAR_ZERO] = "near-zero",
    [HW_PROBLEM_BOUND] = "bound-or-guess",
};

const char *hw_problem_code(enum hw_problem problem)
{
    return codes[problem];
}

bool hw_problem_of_range(enum hw_problem problem)
{
    return problem == HW_PROBLEM_OUT_OF_RANGE || problem == HW_PROBLEM_NEAR_ZERO;
}
