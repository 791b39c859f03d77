/* calendar_ics.h - a calendar for a phone: RFC 5545. */
#ifndef HW_CALENDAR_ICS_H
#define HW_CALENDAR_ICS_H
#include "cli/calendar_args.h"

/* One entry for each act on each date. False with a message when the time of the entries cannot be
 * told. */
bool calendar_ics(const struct calendar *calendar, const struct schedule *schedule);
#endif
