/* calendar.c - the command `calendar`: a plan on the days of the calendar. */
#include "cli/calendar.h"

#include "cli/args_read.h"
#include "cli/by_hand.h"
#include "cli/calendar_csv.h"
#include "cli/calendar_ics.h"
#include "cli/calendar_text.h"
#include "cli/civil.h"
#include "cli/help.h"
#include "cli/plan_file.h"
#include "cli/stream.h"
#include "cli/tank.h"

#include <stdio.h>

static void date_text(long long days, char text[CIVIL_TEXT])
{
    civil_text(civil_date(days), text);
}

/* Counts in their order; false with a message when one begins after the fish of the one before it
 * are through, or when a date is one that nobody can write. */
static bool set_up(const struct calendar *calendar, const struct plan *plan,
                   struct schedule *schedule)
{
    char text[CIVIL_TEXT];
    char end[CIVIL_TEXT];
    int first = 0;
    int last = 0;
    plan_span(plan, &first, &last);
    *schedule = (struct schedule){.plan = plan, .counts = 1 + calendar->n_added};
    schedule->start[0] = calendar->from;
    for (size_t i = 0; i < calendar->n_added; i++) {
        long long over = schedule->start[i] + last;
        schedule->start[i + 1] = calendar->added[i];
        if (calendar->added[i] > over) {
            date_text(calendar->added[i], text);
            date_text(over, end);
            complain("--added %s: the count before it is over on %s: these fish have a calendar of "
                     "their own, --from %s",
                     text, end, text);
            return false;
        }
    }
    long long earliest = civil_days((struct civil){CIVIL_YEAR_MIN, 1, 1});
    long long latest = civil_days((struct civil){CIVIL_YEAR_MAX, 12, 31});
    bool early = schedule->start[0] + first < earliest;
    if (early || schedule->start[schedule->counts - 1] + last > latest) {
        complain("the plan runs from day %d to day %d: one of them lies %s: choose another --from",
                 first, last, early ? "before the year 1600" : "after the year 9999");
        return false;
    }
    return true;
}

int calendar_run(int argc, char *argv[])
{
    static struct calendar calendar;
    static struct plan plan;
    struct schedule schedule;
    if (args_want_help(argc, argv, 2)) {
        help_by_hand(&calendar_caption);
        return EXIT_ANSWERED;
    }
    if (!calendar_args_read(argc, argv, &calendar) || !plan_load(calendar.plan_word, &plan)) {
        return EXIT_ASKED_WRONGLY;
    }
    if (calendar.format == CALENDAR_TABLE) {
        plan_write(calendar.plan_word, &plan);
        return EXIT_ANSWERED;
    }
    if ((calendar.tank && !tank_known(calendar.tank, calendar.tanks)) ||
        !set_up(&calendar, &plan, &schedule)) {
        return EXIT_ASKED_WRONGLY;
    }
    switch (calendar.format) {
    case CALENDAR_ICS:
        return calendar_ics(&calendar, &schedule) ? EXIT_ANSWERED : EXIT_ASKED_WRONGLY;
    case CALENDAR_TEXT:
        calendar_text(&calendar, &schedule);
        return EXIT_ANSWERED;
    default:
        calendar_csv(&calendar, &schedule, calendar.format == CALENDAR_CSV ? ',' : '\t');
        return EXIT_ANSWERED;
    }
}
