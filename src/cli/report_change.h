/* report_change.h - the litres of new water, which the answers about water changes have. */
#ifndef HW_REPORT_CHANGE_H
#define HW_REPORT_CHANGE_H
#include "cli/report.h"

enum { REPORT_CHANGE = 120 };

/* The words of new_needed, with how much new water it is that must hold it: "the level that 27.5 L
 * of new water must have". False for any other result, and where that is not known. */
bool report_change(const struct report *report, size_t result, char text[REPORT_CHANGE]);

/* The words of add_liquid and add_mass, with the water that it is for: "into 27.5 L new water", so
 * that nobody doses the tank by it. False for any other result, and where that is not known. */
bool report_change_into(const struct report *report, size_t result, char text[REPORT_CHANGE]);
#endif
