/* civil.h - dates of the Gregorian calendar and the days between them. */
#ifndef HW_CIVIL_H
#define HW_CIVIL_H
#include <stdbool.h>

enum { CIVIL_YEAR_MIN = 1600, CIVIL_YEAR_MAX = 9999 };

struct civil {
    int year, month, day; /* as written: January is 1 */
};

/* True for a day that exists, in the years above. */
bool civil_exists(struct civil date);

/* Days from 1970-01-01 to a date that exists. */
long long civil_days(struct civil date);

/* The date that many days after 1970-01-01. */
struct civil civil_date(long long days);

/* "Thu" for the first day of 1970. */
const char *civil_weekday(long long days);

enum { CIVIL_TEXT = 40 };

/* "2031-04-01". */
void civil_text(struct civil date, char text[CIVIL_TEXT]);
#endif
