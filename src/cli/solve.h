/* solve.h - a question asked backwards. */
#ifndef HW_SOLVE_H
#define HW_SOLVE_H
#include "cli/args.h"

/* Answers it on stdout; returns the exit status. */
int solve_run(const struct args *args, struct hw_question *question);
#endif
