/* report_text.h - the answer for people: results, inputs as used, cautions, sources. */
#ifndef HW_REPORT_TEXT_H
#define HW_REPORT_TEXT_H
#include "cli/report.h"

void report_text(const struct report *report);
#endif
