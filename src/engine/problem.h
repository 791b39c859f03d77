/* problem.h - everything that can be wrong with what was asked. The code is what a `problem` cell
 * shows. */
#ifndef HW_PROBLEM_H
#define HW_PROBLEM_H
#include <stdbool.h>

enum hw_problem {
    HW_FINE,
    HW_PROBLEM_EMPTY,         /* no characters */
    HW_PROBLEM_NOT_A_NUMBER,  /* no decimal number, or more after it than a unit */
    HW_PROBLEM_COMMA,         /* a decimal comma */
    HW_PROBLEM_NOT_DECIMAL,   /* nan, inf, hexadecimal */
    HW_PROBLEM_TOO_LARGE,     /* beyond double precision */
    HW_PROBLEM_SPREAD,        /* value+-half: not taken here */
    HW_PROBLEM_SWEEP,         /* start:stop:step: not taken here */
    HW_PROBLEM_NEEDS_UNIT,    /* a bare number where a unit is required */
    HW_PROBLEM_UNKNOWN_UNIT,  /* no such unit */
    HW_PROBLEM_WRONG_KIND,    /* a unit of another kind */
    HW_PROBLEM_UNIT_UNWANTED, /* a unit where there is none */
    HW_PROBLEM_HOUSE_MEASURE, /* drops, or spoons of powder */
    HW_PROBLEM_GRAVITY,       /* a bare salinity that looks like a specific gravity */
    HW_PROBLEM_OUT_OF_RANGE,  /* outside lo to hi */
    HW_PROBLEM_NOT_WHOLE,     /* a count with a fraction */
    HW_PROBLEM_UNKNOWN_WORD,  /* not one of the words */
    HW_PROBLEM_WORD_TWICE,    /* a word given twice in a set */
    HW_PROBLEM_NOT_ALONE,     /* "none" with other words */
    HW_PROBLEM_MISSING,       /* a required input was not given */
    HW_PROBLEM_NONE_OF_GROUP, /* exactly one of a group is wanted, none was given */
    HW_PROBLEM_MANY_OF_GROUP, /* exactly one of a group is wanted, several were given */
    HW_PROBLEM_OUT_OF_PLACE,  /* given although its condition does not hold */
    HW_PROBLEM_HALF,          /* what follows +- is no number */
    HW_PROBLEM_HALF_NEGATIVE, /* a half-width below zero */
    HW_PROBLEM_HALF_UNIT,     /* a half-width in a unit that the value cannot share */
    HW_PROBLEM_HALF_WORD,     /* a half-width on a word or a set of words */
    HW_PROBLEM_HALF_COUNT,    /* a half-width on a whole number */
    HW_PROBLEM_SWEEP_PARTS,   /* not start:stop:step */
    HW_PROBLEM_SWEEP_UNITS,   /* parts with different units */
    HW_PROBLEM_SWEEP_WORD,    /* a sweep of words */
    HW_PROBLEM_STEP_ZERO,     /* a step of zero */
    HW_PROBLEM_STEP_SIGN,     /* a step that leads away from the stop */
    HW_PROBLEM_SWEEP_LONG,    /* more values than HW_SWEEP_MAX */
    HW_PROBLEM_SWEEPS,        /* more sweeps than HW_AXES */
    HW_PROBLEM_SOLVE_GIVEN,   /* solved for, and given too */
    HW_PROBLEM_SOLVE_WORD,    /* solved for, and it takes words */
    HW_PROBLEM_NEAR_ZERO,     /* not zero, and nearer to it than HW_VALUE_LEAST */
    HW_PROBLEM_BOUND,         /* told as a bound or a guess: <0.25, >8, ~1 */
    HW_PROBLEMS
};

/* The code in words, such as "out-of-range"; "fine" for HW_FINE. */
const char *hw_problem_code(enum hw_problem problem);

/* True when the value itself was understood and is not in its range. */
bool hw_problem_of_range(enum hw_problem problem);
#endif
