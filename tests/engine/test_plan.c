/* test_plan.c - plans and the days they fall on: the program's own plans are whole, the days of a
 * count are those of a slow reckoning, and a plan comes back as it was printed. */
#include "assert_close.h"
#include "cli/by_hand.h"
#include "cli/civil.h"
#include "cli/schedule.h"
#include "tables.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { ROOM = 1 << 16 };

static struct plan plan;

static void read_own(size_t i)
{
    static char text[ROOM];
    size_t used = 0;
    for (size_t k = 0; hw_plans[i].lines[k]; k++) {
        used += (size_t)snprintf(text + used, ROOM - used, "%s\n", hw_plans[i].lines[k]);
    }
    if (!plan_read(hw_plans[i].name, text, used, &plan)) {
        fail_msg("the plan %s is none", hw_plans[i].name);
    }
}

static bool is_source(const char *key)
{
    for (size_t i = 0; calendar_caption.sources[i]; i++) {
        if (strcmp(calendar_caption.sources[i], key) == 0) {
            return true;
        }
    }
    return false;
}

/* Each cites sources that `holdwater sources calendar` tells, calls nothing the keeper's own, has a
 * day of arrival, and lasts as long as it says. */
static void own_plans_are_whole(void **state)
{
    (void)state;
    size_t n = 0;
    for (; hw_plans[n].name; n++) {
        bool arrives = false;
        int first = 0;
        int last = 0;
        read_own(n);
        for (size_t i = 0; i < plan.n; i++) {
            const struct act *act = &plan.acts[i];
            if (!is_source(act->source)) {
                fail_msg("%s: '%s' cites %s", hw_plans[n].name, act->what, act->source);
            }
            check(strcmp(act->class_name, "own") != 0);
            check(strlen(act->what) <= 48);
            arrives = arrives || act->day == 0;
        }
        plan_span(&plan, &first, &last);
        check(arrives && first < 0 && last >= 30);
    }
    check(n == 3);
    for (size_t i = 0; i < HW_DURATIONS; i++) {
        if (!is_source(hw_durations[i].source)) {
            fail_msg("a duration of %s cites %s", hw_durations[i].parasite, hw_durations[i].source);
        }
    }
}

static bool read_text(const char *text)
{
    return plan_read("a plan", text, strlen(text), &plan);
}

/* Days in, days out; seven weekdays on. */
static void weekdays_follow_one_another(void **state)
{
    (void)state;
    static const char *const names[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    /* 1600-01-01 was a Saturday: 400 years are 20871 weeks, and so was 2000-01-01. */
    long long day = civil_days((struct civil){1600, 1, 1});
    size_t name = 5;
    for (; day <= civil_days((struct civil){2399, 12, 31}); day++) {
        check(strcmp(civil_weekday(day), names[name]) == 0);
        name = (name + 1) % 7;
    }
    char text[CIVIL_TEXT];
    civil_text((struct civil){1600, 2, 29}, text);
    check(strcmp(text, "1600-02-29") == 0);
}

/* The days of an act among others, one by one. */
static void days_within_are_those_counted(void **state)
{
    (void)state;
    unsigned seed = 20310401;
    printf("seed %u\n", seed);
    srand(seed);
    for (int round = 0; round < 20000; round++) {
        struct act act = {.day = rand() % 41 - 20, .every = rand() % 8};
        act.until = act.every > 0 ? act.day + rand() % 40 : act.day;
        int from = rand() % 81 - 40;
        int to = from + rand() % 60 - 5;
        int first = 0;
        int last = 0;
        int slow_first = 0;
        int slow_last = 0;
        bool any = false;
        for (int day = act.day; day <= act.until; day += act.every > 0 ? act.every : 1) {
            if (day >= from && day <= to) {
                slow_first = any ? slow_first : day;
                slow_last = day;
                any = true;
            }
        }
        check(act_within(&act, from, to, &first, &last) == any);
        check(!any || (first == slow_first && last == slow_last));
    }
}

/* The published rule. Moments come by date; none of a count on or after the day the next one
 * begins; days before 0 in count 0 alone; and each act is numbered through. */
static void a_fish_starts_the_count_again(void **state)
{
    (void)state;
    struct schedule schedule = {.plan = &plan, .start = {1000, 1010, 1012}, .counts = 3};
    struct schedule_walk walk = {.begun = false};
    struct moment moment;
    assert_true(read_text("day\tact\tevery\tuntil\n-3\tseed\t-\t-\n-1\tthird\t3\t9\n0\tcome\t-\t-\n"
                          "7\tonce\t-\t-\n12\tend\t-\t-\n"));
    static const struct {
        size_t act, count;
        int day, number, last;
        bool first_time;
    } all[] = {
        {0, 0, -3, 1, -3, true}, {1, 0, -1, 1, 8, true},  {2, 0, 0, 1, 0, true},
        {1, 0, 2, 2, 8, false},  {1, 0, 5, 3, 8, false},  {3, 0, 7, 1, 7, true},
        {1, 0, 8, 4, 8, false},  {2, 1, 0, 2, 0, true},   {2, 2, 0, 3, 0, true},
        {1, 2, 2, 5, 8, true},   {1, 2, 5, 6, 8, false},  {3, 2, 7, 2, 7, true},
        {1, 2, 8, 7, 8, false},  {4, 2, 12, 1, 12, true},
    };
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        assert_true(schedule_next(&schedule, &walk, &moment));
        check(moment.act == all[i].act && moment.count == all[i].count);
        check(moment.day == all[i].day && moment.number == all[i].number);
        check(moment.last == all[i].last && moment.first_time == all[i].first_time);
        check(moment.date == schedule.start[moment.count] + moment.day);
    }
    check(!schedule_next(&schedule, &walk, &moment));
    check(!schedule_next(&schedule, &walk, &moment));
}

/* However many fish are added, at whatever times within the plan: each act has as many times as
 * without them or more, so that made anew a calendar leaves no entry behind. */
static void nothing_is_left_behind(void **state)
{
    (void)state;
    unsigned seed = 20310411;
    printf("seed %u\n", seed);
    srand(seed);
    for (int round = 0; round < 3000; round++) {
        read_own((size_t)(rand() % 3));
        struct schedule schedule = {.plan = &plan, .start = {0}, .counts = 1};
        int before[PLAN_ACTS] = {0};
        int first = 0;
        int last = 0;
        plan_span(&plan, &first, &last);
        for (size_t added = 0; added < 4; added++) {
            struct schedule_walk walk = {.begun = false};
            struct moment moment;
            long long date = -PLAN_DAYS;
            while (schedule_next(&schedule, &walk, &moment)) {
                check(moment.date >= date && moment.day <= last);
                check(moment.day >= 0 || moment.count == 0);
                check(moment.count + 1 == schedule.counts ||
                      moment.date < schedule.start[moment.count + 1]);
                date = moment.date;
            }
            for (size_t i = 0; i < plan.n; i++) {
                check(walk.number[i] >= before[i]);
                before[i] = walk.number[i];
            }
            schedule.start[schedule.counts] =
                schedule.start[schedule.counts - 1] + 1 + rand() % last;
            schedule.counts++;
        }
    }
}

/* What is printed is the same plan. */
static void plans_come_back(void **state)
{
    (void)state;
    static struct plan again;
    static const char *const texts[] = {
        "act;source;day\n\"a; \"\"b\"\"\";- -;+3\n;;\nc;;-3650\n",
        "Day,Act,Every,Until,Class\n0,\"x, y\",1,3650,Vet\n,,,,\n# no act,,,,\n5,#3,,,-\n",
        "\"# a comment, quoted\"\nday,act\n1,-2\n",
    };
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        char *text = NULL;
        size_t n = 0;
        assert_true(read_text(texts[i]));
        FILE *out = open_memstream(&text, &n);
        assert_non_null(out);
        plan_print(out, &plan);
        (void)fclose(out);
        assert_true(plan_read("a plan", text, n, &again));
        check(again.n == plan.n);
        for (size_t k = 0; k < plan.n; k++) {
            const struct act *a = &plan.acts[k];
            const struct act *b = &again.acts[k];
            check(a->day == b->day && a->every == b->every && a->until == b->until);
            check(strcmp(a->what, b->what) == 0 && strcmp(a->source, b->source) == 0);
            check(a->class_name == b->class_name);
        }
        free(text);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(own_plans_are_whole),
        cmocka_unit_test(weekdays_follow_one_another),
        cmocka_unit_test(days_within_are_those_counted),
        cmocka_unit_test(a_fish_starts_the_count_again),
        cmocka_unit_test(nothing_is_left_behind),
        cmocka_unit_test(plans_come_back),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
