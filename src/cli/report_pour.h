/* report_pour.h - how a liquid result is measured, and what level the mark of a syringe gives. */
#ifndef HW_REPORT_POUR_H
#define HW_REPORT_POUR_H
#include "cli/report.h"

enum { REPORT_POUR = 120 };

/* "5.8 mL in a 10 mL syringe (0.176 mg/L)"; "" when there is nothing to measure. The level is
 * told where the mark differs from the amount by more than 1 %. */
void report_pour(const struct report *report, size_t result, char text[REPORT_POUR]);
#endif
