/* report_solved.h - the head of the text of a question asked backwards. */
#ifndef HW_REPORT_SOLVED_H
#define HW_REPORT_SOLVED_H
#include "cli/report.h"

/* The value that was found, and what to know about it. */
void report_solved(const struct report *report);
#endif
