/* civil.c - dates of the Gregorian calendar and the days between them. The year is counted from
 * March, so that the day a leap year adds is its last: the days before a month are then the same in
 * every year, and 400 years are an era of always the same length. */
#include "cli/civil.h"

#include <stdio.h>

enum {
    ERA_DAYS = 146097,   /* 400 years */
    EPOCH_DAYS = 719468, /* from 0000-03-01 to 1970-01-01 */
    MARCH = 3
};

bool civil_exists(struct civil date)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int year = date.year;
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return year >= CIVIL_YEAR_MIN && year <= CIVIL_YEAR_MAX && date.month >= 1 &&
           date.month <= 12 && date.day >= 1 &&
           date.day <= days[date.month - 1] + (date.month == 2 && leap ? 1 : 0);
}

/* Days from the first of March to the first of a month that is so many months later. */
static long long days_before(long long months)
{
    return (153 * months + 2) / 5;
}

long long civil_days(struct civil date)
{
    long long year = date.year - (date.month < MARCH ? 1 : 0);
    long long era = (year >= 0 ? year : year - 399) / 400;
    long long of_era = year - era * 400;
    long long months = date.month < MARCH ? date.month + 12 - MARCH : date.month - MARCH;
    return era * ERA_DAYS + of_era * 365 + of_era / 4 - of_era / 100 + days_before(months) +
           date.day - 1 - EPOCH_DAYS;
}

struct civil civil_date(long long days)
{
    long long from_march = days + EPOCH_DAYS;
    long long era = (from_march >= 0 ? from_march : from_march - ERA_DAYS + 1) / ERA_DAYS;
    long long of_era = from_march - era * ERA_DAYS;
    /* The days that leap years have added so far; the last day of 4, 100 and 400 years is its
     * year's 366th. */
    long long year = (of_era - of_era / 1460 + of_era / 36524 - of_era / 146096) / 365;
    long long of_year = of_era - (365 * year + year / 4 - year / 100);
    long long months = (5 * of_year + 2) / 153;
    struct civil date = {.month = (int)(months < 10 ? months + MARCH : months + MARCH - 12)};
    date.day = (int)(of_year - days_before(months) + 1);
    date.year = (int)(era * 400 + year + (date.month < MARCH ? 1 : 0));
    return date;
}

const char *civil_weekday(long long days)
{
    static const char *const names[] = {"Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"};
    return names[(days % 7 + 7) % 7];
}

void civil_text(struct civil date, char text[CIVIL_TEXT])
{
    (void)snprintf(text, CIVIL_TEXT, "%04d-%02d-%02d", date.year, date.month, date.day);
}
