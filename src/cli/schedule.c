/* schedule.c - goes through the days of a plan. Counts follow one another and never overlap, so a
 * walk by count and day is one by date. */
#include "cli/schedule.h"

/* The days of a count on which acts can fall. */
static void window(const struct schedule *schedule, size_t count, int *from, int *to)
{
    int first = 0;
    int last = 0;
    plan_span(schedule->plan, &first, &last);
    *from = count == 0 ? first : 0;
    *to = last;
    if (count + 1 < schedule->counts) {
        long long days = schedule->start[count + 1] - schedule->start[count];
        *to = days - 1 < last ? (int)days - 1 : last;
    }
}

/* Steps to the next act of the day, the next day, the next count. False at the end. */
static bool step(const struct schedule *schedule, struct schedule_walk *walk)
{
    if (walk->count >= schedule->counts) {
        return false;
    }
    if (walk->begun && walk->act + 1 < schedule->plan->n) {
        walk->act++;
        return true;
    }
    walk->act = 0;
    if (walk->begun && walk->day < walk->to) {
        walk->day++;
        return true;
    }
    walk->count += walk->begun ? 1 : 0;
    walk->begun = true;
    for (; walk->count < schedule->counts; walk->count++) {
        window(schedule, walk->count, &walk->day, &walk->to);
        if (walk->day <= walk->to) {
            return true;
        }
    }
    return false;
}

bool schedule_next(const struct schedule *schedule, struct schedule_walk *walk,
                   struct moment *moment)
{
    while (step(schedule, walk)) {
        const struct act *act = &schedule->plan->acts[walk->act];
        int from = 0;
        int to = 0;
        int today = 0;
        if (!act_within(act, walk->day, walk->day, &today, &today)) {
            continue;
        }
        *moment = (struct moment){.act = walk->act,
                                  .count = walk->count,
                                  .day = walk->day,
                                  .date = schedule->start[walk->count] + walk->day,
                                  .number = ++walk->number[walk->act]};
        window(schedule, walk->count, &from, &to);
        (void)act_within(act, from, to, &today, &moment->last);
        moment->first_time = today == walk->day;
        return true;
    }
    return false;
}
