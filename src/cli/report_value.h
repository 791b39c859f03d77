/* report_value.h - one bare number for scripts. */
#ifndef HW_REPORT_VALUE_H
#define HW_REPORT_VALUE_H
#include "cli/report.h"

/* Returns false when the result asked for is absent; the message is out then, but for rows and
 * points of a sweep, which get an empty line. */
bool report_value(const struct report *report);
/* The codes of the raised cautions, in one line on stderr; nothing when there are none. */
void report_value_raised(const struct report *report);
#endif
