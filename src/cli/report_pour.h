/* report_pour.h - how a liquid result is measured, and what level the mark of a syringe gives. */
#ifndef HW_REPORT_POUR_H
#define HW_REPORT_POUR_H
#include "cli/report.h"

enum { REPORT_POUR = 120 };

/* measure is "5.8 mL in a 10 mL syringe", or "" when there is nothing to measure; level is
 * " (for 0.176 mg/L)", what that mark meets, where it differs from the amount by more than 1 %,
 * else "". */
void report_pour(const struct report *report, size_t result, char measure[REPORT_POUR],
                 char level[REPORT_POUR]);

/* What is drawn of an amount, mL: the mark where that is more than 1 % away, else the amount. */
double report_pour_drawn(double amount, int safe);

/* What an amount is for: its words, but for copper that must not go in all at once. */
const char *report_pour_help(const struct report *report, size_t result);
#endif
