/* trend_held.c - for how long a level was held. What is no number ends a run where it is outside or
 * may be: a kit that shows <0.10 has not shown that a floor of 0.15 was held. */
#include "cli/trend_held.h"

#include "calc/shared.h"

#include <math.h>

/* The number of a mark in the unit of the readings; NaN where its unit would be a guess. */
static double number_of(const struct trend_track *track, const struct timed *mark)
{
    bool same = reading_same_unit(mark->unit, track->unit);
    if (same || (!mark->unit && track->from_header)) {
        return mark->value;
    }
    if (mark->unit && track->unit && mark->unit->kind == track->unit->kind) {
        return fmin(hw_unit_convert(mark->value, mark->unit, track->unit), HW_TREND_VALUE_MAX);
    }
    return (double)NAN;
}

/* What a reading below a number, or at it, counts as: a value that lies where it must lie, or NaN
 * where it may be inside or outside. */
static double below_number(double number, bool or_at, double floor, double ceiling)
{
    if (isfinite(floor)) {
        bool outside = or_at ? above(floor, number) : !above(number, floor);
        return outside ? HW_TREND_VALUE_MIN : (double)NAN;
    }
    return above(number, ceiling) ? (double)NAN : ceiling;
}

static double value_of_mark(const struct trend_answer *answer, const struct timed *mark,
                            const struct hw_trend_window *window)
{
    double number = number_of(&answer->record->track[0], mark);
    if (isnan(number)) {
        return number;
    }
    switch (mark->side) {
    case READING_AT:
        return number;
    case READING_BELOW:
    case READING_UP_TO:
        return below_number(number, mark->side == READING_UP_TO, window->floor, window->ceiling);
    case READING_ABOVE:
    case READING_FROM:
        return -below_number(-number, mark->side == READING_FROM, -window->ceiling, -window->floor);
    default:
        return (double)NAN;
    }
}

/* The latest of both, in the order of their times; of one time a mark is the later one. */
static void merge(struct trend_answer *answer, const struct hw_trend_window *window)
{
    const struct readings *marks = &answer->record->marks;
    struct trend_cells *cells = &answer->cells;
    size_t numbers = answer->n;
    size_t left = marks->n;
    cells->n = numbers + left < HW_TREND_READINGS_MAX ? numbers + left : HW_TREND_READINGS_MAX;
    for (size_t i = cells->n; i-- > 0;) {
        const struct timed *mark = left > 0 ? &marks->at[marks->first + left - 1] : NULL;
        double day = mark ? trend_day(answer, mark->seconds) : 0;
        bool later = mark && (numbers == 0 || day >= answer->days[numbers - 1]);
        left -= later ? 1 : 0;
        numbers -= later ? 0 : 1;
        cells->days[i] = later ? day : answer->days[numbers];
        cells->values[i] = later ? value_of_mark(answer, mark, window) : answer->values[numbers];
        cells->mark_last = i + 1 == cells->n ? later : cells->mark_last;
    }
}

bool trend_held(struct trend_answer *answer)
{
    const double *level = answer->level;
    const struct hw_trend_window window = {
        .floor = isnan(level[TREND_FLOOR]) ? -(double)INFINITY : level[TREND_FLOOR],
        .ceiling = isnan(level[TREND_CEILING]) ? (double)INFINITY : level[TREND_CEILING],
        .gap = answer->record->ask->settled.in[TREND_GAP]};
    const struct trend_cells *cells = &answer->cells;
    merge(answer, &window);
    return hw_trend_held(cells->days, cells->values, cells->n, &window, &answer->run) >= 0;
}
