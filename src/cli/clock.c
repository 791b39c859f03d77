/* clock.c - the time of a log line. Everything but the reading of the clock is arithmetic. */
#include "cli/clock.h"

#include <stdio.h>
#include <stdlib.h>

/* Days since 1970 of a date in the Gregorian calendar. The year is counted from March, so that the
 * day a leap year adds is its last. */
static long long days_of(const struct tm *date)
{
    long long month = date->tm_mon + 1;
    long long year = date->tm_year + 1900LL - (month <= 2 ? 1 : 0);
    long long era = (year >= 0 ? year : year - 399) / 400;
    long long of_era = year - era * 400;
    long long of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + date->tm_mday - 1;
    return era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719468;
}

long long clock_seconds(const struct tm *broken)
{
    return ((days_of(broken) * 24 + broken->tm_hour) * 60 + broken->tm_min) * 60 + broken->tm_sec;
}

void clock_text(const struct tm *local, long long now, char text[CLOCK_TEXT])
{
    int offset = (int)((clock_seconds(local) - now) / 60);
    (void)snprintf(text, CLOCK_TEXT, "%04d-%02d-%02dT%02d:%02d:%02d%c%02d:%02d",
                   local->tm_year + 1900, local->tm_mon + 1, local->tm_mday, local->tm_hour,
                   local->tm_min, local->tm_sec, offset < 0 ? '-' : '+', abs(offset) / 60,
                   abs(offset) % 60);
}

void clock_now(char text[CLOCK_TEXT])
{
    time_t now = time(NULL);
    struct tm local;
    if (!localtime_r(&now, &local)) {
        text[0] = '\0';
        return;
    }
    clock_text(&local, (long long)now, text);
}
