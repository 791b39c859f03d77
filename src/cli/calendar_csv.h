/* calendar_csv.h - a calendar as a table: a record for each act on each date. */
#ifndef HW_CALENDAR_CSV_H
#define HW_CALENDAR_CSV_H
#include "cli/calendar_args.h"

void calendar_csv(const struct calendar *calendar, const struct schedule *schedule, char separator);
#endif
