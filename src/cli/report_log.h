/* report_log.h - one answer as a line of a logbook. */
#ifndef HW_REPORT_LOG_H
#define HW_REPORT_LOG_H
#include "cli/report.h"

/* One CSV record: when, tank, calculation, inputs, results, cautions. */
void report_log(const struct report *report);
#endif
