/* report_spread.h - for people: how sure a result is, and which reading to repeat. */
#ifndef HW_REPORT_SPREAD_H
#define HW_REPORT_SPREAD_H
#include "cli/report.h"

/* The line under a result that tells its low and high, and which inputs make the difference; own: a
 * unit to tell it in too, or NULL. Nothing when no uncertain input moves the result. */
void report_spread(const struct report *report, size_t result, const struct hw_unit *own,
                   size_t indent);

/* What low and high are, and which reading to repeat. */
void report_spread_advice(const struct report *report);
#endif
