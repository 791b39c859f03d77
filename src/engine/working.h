/* working.h - the working of one answer, step by step, as a keeper could redo it on paper. */
#ifndef HW_WORKING_H
#define HW_WORKING_H
#include "calc/steps.h"

enum { HW_STEPS_MAX = 40, HW_SYMBOL_MAX = 32, HW_EXPRESSION_MAX = 900 };

struct hw_step {
    char symbol[HW_SYMBOL_MAX];
    char expression[HW_EXPRESSION_MAX];
    double value;
    const char *unit, *source;
};

struct hw_steps {
    size_t n;
    bool full; /* a step did not fit: a defect that the lint test finds */
    struct hw_step step[HW_STEPS_MAX];
};
#endif
