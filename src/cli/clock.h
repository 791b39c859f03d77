/* clock.h - the time of a log line: local time with its offset from UTC, to the second. */
#ifndef HW_CLOCK_H
#define HW_CLOCK_H
#include <time.h>

enum { CLOCK_TEXT = 48 };

/* Seconds since 1970 of a date and time as if they were UTC; it needs no daylight saving time. */
long long clock_seconds(const struct tm *broken);

/* "2031-03-05T08:15:00+01:00" for a local time and the moment it stands for, in seconds since
 * 1970. */
void clock_text(const struct tm *local, long long now, char text[CLOCK_TEXT]);

/* The time now; "" when there is none. */
void clock_now(char text[CLOCK_TEXT]);
#endif
