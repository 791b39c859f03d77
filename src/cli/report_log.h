/* report_log.h - one answer as a line of a logbook. */
#ifndef HW_REPORT_LOG_H
#define HW_REPORT_LOG_H
#include "cli/report.h"

#include <stdio.h>

/* The columns of a logbook, with the end of their line. */
#define REPORT_LOG_HEADER "when,tank,calculation,inputs,results,cautions,note\n"

/* One CSV record of those columns. Where there is no answer, results say status=withheld or
 * status=refused, and problem=CODE INPUT of a row that could not be asked. */
void report_log(const struct report *report, FILE *out);
#endif
