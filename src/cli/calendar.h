/* calendar.h - the command `calendar`: a plan on the days of the calendar. */
#ifndef HW_CALENDAR_H
#define HW_CALENDAR_H

/* The whole command; returns an exit status. */
int calendar_run(int argc, char *argv[]);
#endif
