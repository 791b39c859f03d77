/* calendar_text.h - a calendar for people: a line for each act of each count. */
#ifndef HW_CALENDAR_TEXT_H
#define HW_CALENDAR_TEXT_H
#include "cli/calendar_args.h"

void calendar_text(const struct calendar *calendar, const struct schedule *schedule);
#endif
