/* clock.c - the time of a log line. Everything but the reading of the clock is arithmetic. */
#include "cli/clock.h"

#include "cli/civil.h"

#include <stdio.h>
#include <stdlib.h>

long long clock_seconds(const struct tm *broken)
{
    struct civil date = {broken->tm_year + 1900, broken->tm_mon + 1, broken->tm_mday};
    return ((civil_days(date) * 24 + broken->tm_hour) * 60 + broken->tm_min) * 60 + broken->tm_sec;
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
