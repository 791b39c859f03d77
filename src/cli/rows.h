/* rows.h - a calculation over every row of a file. */
#ifndef HW_ROWS_H
#define HW_ROWS_H
#include "cli/args.h"

/* Answers every row of args->rows on stdout, in order, in constant memory. Returns the exit
 * status. */
int rows_run(const struct args *args);
#endif
