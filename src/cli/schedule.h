/* schedule.h - a plan on the days of the calendar. The published rule: a fish that is added to the
 * same water starts the count again for all in it. */
#ifndef HW_SCHEDULE_H
#define HW_SCHEDULE_H
#include "cli/plan.h"

enum { ADDED_MAX = 20, COUNTS_MAX = ADDED_MAX + 1 };

/* Count 0 begins on the day of --from, each further one on that of an --added. A count holds from
 * its day 0 to the day before the next one begins. What is done before day 0 makes the tank ready,
 * once: it belongs to count 0 alone. Dates are days since 1970-01-01. */
struct schedule {
    const struct plan *plan;
    long long start[COUNTS_MAX]; /* rising */
    size_t counts;
};

/* One act on one date. */
struct moment {
    size_t act, count;
    int day;
    long long date;
    int number;      /* 1 for the first time of this act in all counts, and so on */
    int last;        /* the last day of this act in this count */
    bool first_time; /* in this count */
};

/* Where a walk over all moments stands; zero at the start. */
struct schedule_walk {
    bool begun;
    size_t count, act;
    int day, to;
    int number[PLAN_ACTS];
};

/* The next moment: by date, and on one date in the order of the plan. False when there are no
 * more. */
bool schedule_next(const struct schedule *schedule, struct schedule_walk *walk,
                   struct moment *moment);
#endif
