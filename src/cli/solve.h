/* solve.h - a question asked backwards. */
#ifndef HW_SOLVE_H
#define HW_SOLVE_H
#include "cli/report.h"

/* Answers it on stdout; returns the exit status. */
int solve_run(const struct args *args, struct hw_question *question);

/* Where an input lies in words: "above 100 %", "between 2 and 3 C". */
enum { PLACE_MAX = 120 };
void place_text(const struct hw_input *input, double from, double to, char text[PLACE_MAX]);

/* A number with its unit. */
void amount_text(double value, int digits, const char *unit, char text[SOLVED_TEXT]);

/* What was wanted, in the result's unit and as it was written. */
void target_text(const struct args *args, int digits, char text[2 * SOLVED_TEXT]);
#endif
