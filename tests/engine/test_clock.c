/* test_clock.c - the time of a log line: dates, and the offset of local time from UTC, at new year
 * above all, when the two lie in different years. */
#include "assert_close.h"
#include "cli/clock.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const long long year_2031 = 1924992000; /* 2031-01-01T00:00:00Z: 22280 days */

/* Every day of 1900 to 2200 as the C library has it, at a time of day that moves. */
static void seconds_of_every_day(void **state)
{
    (void)state;
    const long long day = 86400;
    for (long long k = -25567; k < 84006; k++) {
        long long now = k * day + (k * 7919 % day + day) % day;
        time_t seconds = (time_t)now;
        struct tm utc;
        assert_non_null(gmtime_r(&seconds, &utc));
        check(clock_seconds(&utc) == now);
    }
}

static void at(long long now, const char *want)
{
    time_t seconds = (time_t)now;
    struct tm local;
    char text[CLOCK_TEXT];
    assert_non_null(localtime_r(&seconds, &local));
    clock_text(&local, now, text);
    assert_string_equal(text, want);
    check(strcmp(text, want) == 0);
}

static void in_zone(const char *zone)
{
    assert_int_equal(setenv("TZ", zone, 1), 0);
    tzset();
}

static void west_of_utc(void **state)
{
    (void)state;
    in_zone("<-0330>3:30");
    at(year_2031, "2030-12-31T20:30:00-03:30");
    at(year_2031 + 3 * 3600 + 1799, "2030-12-31T23:59:59-03:30");
    at(year_2031 + 3 * 3600 + 1800, "2031-01-01T00:00:00-03:30");
    at(year_2031 + 90 * 86400 + 600, "2031-03-31T20:40:00-03:30");
    in_zone("<-12>12");
    at(year_2031, "2030-12-31T12:00:00-12:00");
    at(year_2031 + 43199, "2030-12-31T23:59:59-12:00");
    in_zone("<-0030>0:30");
    at(year_2031 + 600, "2030-12-31T23:40:00-00:30");
}

static void east_of_utc(void **state)
{
    (void)state;
    in_zone("<+0545>-5:45");
    at(year_2031 - 1, "2031-01-01T05:44:59+05:45");
    at(year_2031 - 5 * 3600 - 2701, "2030-12-31T23:59:59+05:45");
    in_zone("<+14>-14");
    at(year_2031 - 14 * 3600, "2031-01-01T00:00:00+14:00");
    at(year_2031, "2031-01-01T14:00:00+14:00");
    in_zone("UTC0");
    at(year_2031, "2031-01-01T00:00:00+00:00");
    at(year_2031 - 1, "2030-12-31T23:59:59+00:00");
}

/* The last day of February, and an hour that summer time repeats. */
static void leap_days_and_summer_time(void **state)
{
    (void)state;
    in_zone("<-05>5");
    at(1961560800, "2032-02-28T01:00:00-05:00");
    at(1961560800 + 86400, "2032-02-29T01:00:00-05:00");
    in_zone("<+01>-1<+02>,M3.5.0,M10.5.0/3");
    at(1919293200 - 3600, "2030-10-27T02:00:00+02:00");
    at(1919293200, "2030-10-27T02:00:00+01:00");
}

/* The clock itself: what it says is a time near now, in the form of the others. */
static void now(void **state)
{
    (void)state;
    char text[CLOCK_TEXT];
    struct tm said = {0};
    int hours = 0;
    int minutes = 0;
    in_zone("<-0330>3:30");
    long long before = (long long)time(NULL);
    clock_now(text);
    long long after = (long long)time(NULL);
    assert_int_equal(sscanf(text, "%d-%d-%dT%d:%d:%d-%d:%d", &said.tm_year, &said.tm_mon,
                            &said.tm_mday, &said.tm_hour, &said.tm_min, &said.tm_sec, &hours,
                            &minutes),
                     8);
    assert_int_equal(strlen(text), 25);
    said.tm_year -= 1900;
    said.tm_mon -= 1;
    long long utc = clock_seconds(&said) + hours * 3600 + minutes * 60;
    check(utc >= before && utc <= after);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(seconds_of_every_day),
        cmocka_unit_test(west_of_utc),
        cmocka_unit_test(east_of_utc),
        cmocka_unit_test(leap_days_and_summer_time),
        cmocka_unit_test(now),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
