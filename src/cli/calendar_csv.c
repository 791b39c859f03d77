/* calendar_csv.c - a calendar as a table. */
#include "cli/calendar_csv.h"

#include "cli/civil.h"
#include "cli/report_cell.h"

#include <stdio.h>
#include <string.h>

static void own_cell(const char *text, char separator)
{
    report_cell_own(stdout, (struct hw_text){text, strlen(text)}, separator);
    (void)putchar(separator);
}

void calendar_csv(const struct calendar *calendar, const struct schedule *schedule, char separator)
{
    static const char *const names[] = {"date", "weekday", "tank",   "count",   "day",
                                        "act",  "class",   "source", "cautions"};
    enum { NAMES = sizeof names / sizeof names[0] };
    struct schedule_walk walk = {.begun = false};
    struct moment moment;
    char date[CIVIL_TEXT];
    for (size_t i = 0; i < NAMES; i++) {
        (void)printf("%s%c", names[i], i + 1 < NAMES ? separator : '\n');
    }
    while (schedule_next(schedule, &walk, &moment)) {
        const struct act *act = &schedule->plan->acts[moment.act];
        civil_text(civil_date(moment.date), date);
        (void)printf("%s%c%s%c", date, separator, civil_weekday(moment.date), separator);
        own_cell(calendar->tank ? calendar->tank : "", separator);
        (void)printf("%zu%c%d%c", moment.count + 1, separator, moment.day, separator);
        own_cell(act->what, separator);
        (void)printf("%s%c", act->class_name, separator);
        own_cell(act->source, separator);
        (void)puts(moment.count > 0 ? "count-restarted" : "");
    }
}
