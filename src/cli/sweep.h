/* sweep.h - a question with one or two inputs swept: a table, a chart, a picture. */
#ifndef HW_SWEEP_H
#define HW_SWEEP_H
#include "cli/args.h"

/* Answers it on stdout; returns the exit status. */
int sweep_run(const struct args *args, const struct hw_question *question);
#endif
