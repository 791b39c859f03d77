/* test_when.c - dates and the times of a logbook: every day of eight centuries as the C library has
 * it, which texts are times, and the moment each one tells. */
#include "assert_close.h"
#include "cli/civil.h"
#include "cli/when.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

/* 1600-01-01 to 2399-12-31, 292,194 days. */
static void every_day(void **state)
{
    (void)state;
    long long first = civil_days((struct civil){1600, 1, 1});
    long long last = civil_days((struct civil){2399, 12, 31});
    assert_true(first == -135140 && last - first + 1 == 292194);
    for (long long day = first; day <= last; day++) {
        time_t seconds = (time_t)(day * 86400);
        struct tm utc;
        struct civil date = civil_date(day);
        assert_non_null(gmtime_r(&seconds, &utc));
        check(date.year == utc.tm_year + 1900 && date.month == utc.tm_mon + 1 &&
              date.day == utc.tm_mday && civil_days(date) == day && civil_exists(date));
    }
}

/* Far ends, and before the year 0. */
static void far_days(void **state)
{
    (void)state;
    for (long long day = -1500000; day < 4000000; day += 997) {
        check(civil_days(civil_date(day)) == day);
    }
    struct civil zero = civil_date(-719528);
    check(zero.year == 0 && zero.month == 1 && zero.day == 1);
}

/* As many days of 31 x 12 exist in a year as the year has days. */
static void days_that_exist(void **state)
{
    (void)state;
    static const struct {
        int year, days;
    } rows[] = {{1599, 0},   {1600, 366}, {1700, 365}, {1900, 365}, {2000, 366},
                {2031, 365}, {2032, 366}, {2100, 365}, {9999, 365}, {10000, 0}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        int exist = 0;
        for (int month = -1; month <= 14; month++) {
            for (int day = -1; day <= 40; day++) {
                exist += civil_exists((struct civil){rows[i].year, month, day}) ? 1 : 0;
            }
        }
        check(exist == rows[i].days);
    }
}

static struct hw_text text_of(const char *text)
{
    return (struct hw_text){text, strlen(text)};
}

static void moments(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        long long seconds;
        bool has_time, has_offset;
    } rows[] = {
        {"1970-01-01", 0, false, false},
        {"2031-01-01", 1924992000, false, false},
        {"2031-01-01T00:00", 1924992000, true, false},
        {"2031-01-01 08:15", 1924992000 + 29700, true, false},
        {"2031-01-01T08:15:07", 1924992000 + 29707, true, false},
        {"2031-01-01T08:15Z", 1924992000 + 29700, true, true},
        {"2031-01-01T08:15:07+01:00", 1924992000 + 29707 - 3600, true, true},
        {"2031-01-01T08:15-03:30", 1924992000 + 29700 + 12600, true, true},
        {"2031-01-01T23:59:59+14:00", 1924992000 + 86399 - 50400, true, true},
        {"1600-02-29", -11670998400, false, false},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        struct when when = {.seconds = -1};
        assert_true(when_read(text_of(rows[i].text), &when));
        check(when.seconds == rows[i].seconds);
        check(when.has_time == rows[i].has_time && when.has_offset == rows[i].has_offset);
        check(when_is_iso(text_of(rows[i].text)));
    }
}

static void no_moments(void **state)
{
    (void)state;
    static const char *const texts[] = {"",
                                        "2031",
                                        "2031-03",
                                        "2031-3-5",
                                        "31-03-05",
                                        "05.03.2031",
                                        "03/05/2031",
                                        "2031-03-05T",
                                        "2031-03-05 ",
                                        "2031-03-05x08:15",
                                        "2031-03-05T8:15",
                                        "2031-03-05T08",
                                        "2031-03-05T08:15:",
                                        "2031-03-05T08:15:7",
                                        "2031-02-29",
                                        "2031-02-30",
                                        "2031-04-31",
                                        "2031-00-10",
                                        "2031-13-10",
                                        "2031-03-00",
                                        "2031-03-32",
                                        "1599-12-31",
                                        "0000-01-01",
                                        "2031-03-05T24:00",
                                        "2031-03-05T08:60",
                                        "2031-03-05T08:15:60",
                                        "2031-03-05T08:15:99",
                                        "2031-03-05T08:15+14:01",
                                        "2031-03-05T08:15+14:60",
                                        "2031-03-05T08:15+01:60",
                                        "2031-03-05T08:15+99:99",
                                        "2031-03-05T08:15+1:00",
                                        "2031-03-05T08:15+01",
                                        "2031-03-05T08:15ZZ",
                                        "2031-03-05T08:15:00z",
                                        "2031-03-05T08:15 Z",
                                        "2031-03-05T08:15*01:00",
                                        " 2031-03-05",
                                        "2031-03-05T08:15+01:00 "};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        struct when when = {.seconds = -17};
        if (when_read(text_of(texts[i]), &when) || when.seconds != -17 ||
            when_is_iso(text_of(texts[i]))) {
            print_error("'%s' is no time\n", texts[i]);
            fail();
        }
        check(when.seconds == -17);
    }
}

/* What was read is written as it stood: a date, minutes, seconds, an offset. */
static void written_back(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "2031-03-05",
        "1600-01-01T00:00",
        "1969-12-31T23:59:59",
        "2031-03-05T08:15",
        "2031-03-05T08:15:30",
        "2031-03-05T08:15+00:00",
        "2031-12-31T23:15:01+05:45",
        "2031-01-01T00:15-14:00",
        "9999-12-31T23:59:59+14:00",
    };
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        struct when when;
        char text[WHEN_MAX];
        assert_true(when_read((struct hw_text){texts[i], strlen(texts[i])}, &when));
        when_text(&when, text);
        assert_string_equal(text, texts[i]);
    }
}

/* Dates with points are read to be written anew, no more. */
static void with_points(void **state)
{
    (void)state;
    static const struct {
        const char *text, *iso;
    } dates[] = {
        {"01.04.2031", "2031-04-01"},
        {"31.12.2031 08:15", "2031-12-31T08:15"},
        {"31.12.2031T08:15+01:00", "2031-12-31T08:15+01:00"},
    };
    static const char *const none[] = {"",
                                       "2031-04-01",
                                       "1.4.2031",
                                       "01/04/2031",
                                       "31.02.2031",
                                       "01.04.31",
                                       "01.13.2031",
                                       "01.04.2031.",
                                       "01.04.2031 late",
                                       "01.04.2031 08:15 and a tale that is longer than any time"};
    char iso[WHEN_MAX];
    for (size_t i = 0; i < sizeof dates / sizeof dates[0]; i++) {
        assert_true(when_pointed(text_of(dates[i].text), iso));
        assert_string_equal(iso, dates[i].iso);
    }
    for (size_t i = 0; i < sizeof none / sizeof none[0]; i++) {
        check(!when_pointed(text_of(none[i]), iso));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(written_back), cmocka_unit_test(every_day),
        cmocka_unit_test(far_days),     cmocka_unit_test(days_that_exist),
        cmocka_unit_test(moments),      cmocka_unit_test(no_moments),
        cmocka_unit_test(with_points),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
