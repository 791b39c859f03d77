/* trend_answer.c - what a record of readings tells. */
#include "cli/trend_answer.h"

#include "calc/shared.h"
#include "cli/clock.h"
#include "cli/stream.h"
#include "cli/trend_held.h"
#include "engine/answer.h"
#include "tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

const char *const trend_results[TREND_RESULTS] = {
    [TREND_SLOPE] = "slope",
    [TREND_SLOPE_LOW] = "slope_low",
    [TREND_SLOPE_HIGH] = "slope_high",
    [TREND_LAST_READING] = "last",
    [TREND_AGE] = "age",
    [TREND_DAYS_TO_LIMIT] = "days_to_limit",
    [TREND_HELD] = "held",
};

static const double day_seconds = 86400;

static void raise_if(struct trend_answer *answer, bool condition, enum hw_trend_note note)
{
    answer->notes |= condition ? UINT64_C(1) << note : 0;
}

static bool given(const struct trend_answer *answer, size_t level)
{
    return !isnan(answer->level[level]);
}

/* --- What is asked against the readings ------------------------------------------------------- */

/* A limit in the unit of the readings: one without a unit has theirs where that is mg/L, which is
 * what labels are written in, or none. */
static bool read_level(const struct trend_record *record, size_t level, double *value)
{
    const struct hw_text text = record->ask->level[level];
    const struct hw_unit *unit = record->track[0].unit;
    struct reading reading = {.unit = NULL};
    *value = NAN;
    if (!text.at) {
        return true;
    }
    (void)reading_read(text, unit ? unit->kind : HW_NUMBER, &reading);
    if (reading.unit && (!unit || reading.unit->kind != unit->kind)) {
        complain("--%s %.*s: the readings of %s are in %s: write it %s", trend_level_names[level],
                 (int)text.n, text.at, record->track[0].name, unit ? unit->name : "no unit",
                 unit ? "so too" : "without one");
        return false;
    }
    const struct hw_unit *usual = hw_unit_find(HW_CONCENTRATION, "mg/L", 4);
    if (!reading.unit && unit && !reading_same_unit(unit, usual)) {
        complain("--%s %.*s: the readings of %s are in %s: write --%s with its unit",
                 trend_level_names[level], (int)text.n, text.at, record->track[0].name, unit->name,
                 trend_level_names[level]);
        return false;
    }
    *value = reading.unit ? hw_unit_convert(reading.value, reading.unit, unit) : reading.value;
    return true;
}

static bool read_levels(const struct trend_record *record, struct trend_answer *answer)
{
    for (size_t i = 0; i < TREND_LEVELS; i++) {
        if (!read_level(record, i, &answer->level[i])) {
            return false;
        }
    }
    if (answer->level[TREND_FLOOR] > answer->level[TREND_CEILING]) {
        complain("--floor is above --ceiling: a level cannot be held between them");
        return false;
    }
    return true;
}

bool trend_now(const struct trend_record *record, double *now)
{
    char clock[CLOCK_TEXT];
    struct when when;
    const char *asked = record->ask->when;
    bool offset = record->newest.has_offset;
    clock_now(clock);
    struct hw_text text = {asked ? asked : clock, strlen(asked ? asked : clock)};
    *now = NAN;
    if (!when_read(text, &when)) {
        return true;
    }
    if (asked && when.has_offset != offset) {
        complain("--when %s: the times of %s have %s offset: write it %s", asked, record->file,
                 offset ? "an" : "no", offset ? "with one, as 2031-03-05T08:15+00:00" : "without");
        return false;
    }
    *now = (double)(when.seconds + (offset ? 0 : 60LL * when.offset));
    return true;
}

bool trend_has_window(const struct trend_ask *ask)
{
    return ask->level[TREND_FLOOR].at || ask->level[TREND_CEILING].at;
}

/* --- The line --------------------------------------------------------------------------------- */

static bool all_above_zero(const double *values, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        if (values[i] < 0) {
            return false;
        }
    }
    return true;
}

/* The slope, and its interval where there are readings enough. */
static void lay_line(struct trend_answer *answer)
{
    const size_t n = answer->used;
    const double *days = answer->days + answer->n - n;
    const double *values = answer->values + answer->n - n;
    double *out = answer->out;
    const bool few = (double)n < hw_limits[HW_LIMIT_TREND_LEAST].value;
    const bool narrow = (double)n < hw_limits[HW_LIMIT_TREND_INTERVAL].value;
    raise_if(answer, few, HW_TREND_NOTE_FEW_READINGS);
    if (few) {
        return;
    }
    int status = hw_trend_slope(days, values, n, &out[TREND_SLOPE], &answer->intercept);
    if (status >= 0 && !narrow) {
        status = hw_trend_interval(days, values, n, &out[TREND_SLOPE_LOW], &out[TREND_SLOPE_HIGH]);
    }
    if (status < 0) {
        out[TREND_SLOPE] = answer->intercept = NAN;
        raise_if(answer, true, HW_TREND_NOTE_ONE_TIME);
        return;
    }
    double end = answer->intercept + out[TREND_SLOPE] * days[n - 1];
    raise_if(answer, narrow, HW_TREND_NOTE_NO_INTERVAL);
    raise_if(answer, out[TREND_SLOPE_LOW] <= 0 && out[TREND_SLOPE_HIGH] >= 0,
             HW_TREND_NOTE_NO_TREND);
    raise_if(answer, end < 0 && all_above_zero(values, n), HW_TREND_NOTE_LINE_BELOW_ZERO);
}

/* The day of a limit: where the slope is sure, and not further ahead than the readings reach
 * back. */
static void meet_limit(struct trend_answer *answer)
{
    double *out = answer->out;
    double days = NAN;
    double last = answer->days[answer->n - 1];
    double limit = answer->level[TREND_LIMIT];
    bool sure = out[TREND_SLOPE_LOW] > 0 || out[TREND_SLOPE_HIGH] < 0;
    raise_if(answer, above(out[TREND_LAST_READING], limit), HW_TREND_NOTE_LIMIT_PASSED);
    if (!given(answer, TREND_LIMIT) || !sure) {
        return;
    }
    int status = hw_trend_days_to(answer->intercept + out[TREND_SLOPE] * last, out[TREND_SLOPE],
                                  limit, &days);
    double span = last - answer->days[answer->n - answer->used];
    bool near = days <= span;
    out[TREND_DAYS_TO_LIMIT] = near ? days : NAN;
    bool away = status < 0 &&
                (limit > answer->intercept + out[TREND_SLOPE] * last) != (out[TREND_SLOPE] > 0);
    raise_if(answer, near, HW_TREND_NOTE_LIMIT_NEAR);
    raise_if(answer, away && out[TREND_SLOPE] > 0, HW_TREND_NOTE_LIMIT_RISING);
    raise_if(answer, away && out[TREND_SLOPE] < 0, HW_TREND_NOTE_LIMIT_AWAY);
    raise_if(answer, !near && !away, HW_TREND_NOTE_LIMIT_FAR);
}

/* --- Held ------------------------------------------------------------------------------------- */

static void count_held(struct trend_answer *answer)
{
    const struct trend_record *record = answer->record;
    if (!trend_has_window(record->ask) || !trend_held(answer)) {
        return;
    }
    const struct hw_trend_run *run = &answer->run;
    const size_t all = record->readings.all + record->marks.all;
    bool none = run->from == answer->cells.n;
    bool untold = run->by == HW_TREND_BREAK_UNTOLD;
    answer->out[TREND_HELD] = none && untold ? NAN : run->held;
    raise_if(answer, none && !untold, HW_TREND_NOTE_LEVEL_OUTSIDE);
    raise_if(answer, untold, HW_TREND_NOTE_HELD_UNTOLD);
    raise_if(answer, !none && !untold && run->by != HW_TREND_BREAK_NONE, HW_TREND_NOTE_RUN_BROKEN);
    raise_if(answer, run->from == 0 && all > answer->cells.n, HW_TREND_NOTE_HELD_LONGER);
}

static void tell_age(struct trend_answer *answer)
{
    const struct readings *readings = &answer->record->readings;
    long long last = readings->at[readings->first + readings->n - 1].seconds;
    double age = (answer->now - (double)last) / day_seconds;
    answer->out[TREND_AGE] = age >= 0 ? age : NAN;
    raise_if(answer, !(age >= 0), HW_TREND_NOTE_READING_AHEAD);
    raise_if(answer, age > answer->record->ask->settled.in[TREND_GAP], HW_TREND_NOTE_READING_OLD);
}

/* --- All -------------------------------------------------------------------------------------- */

static void set_units(struct trend_answer *answer)
{
    const struct hw_unit *unit = answer->record->track[0].unit;
    for (size_t i = 0; i < TREND_RESULTS; i++) {
        bool slope = i <= TREND_SLOPE_HIGH;
        const char *name = i == TREND_LAST_READING || slope ? (unit ? unit->name : "") : "d";
        (void)snprintf(answer->unit[i], TREND_UNIT, "%.20s%s",
                       slope && name[0] == '\0' ? "1" : name, slope ? "/d" : "");
    }
}

/* Day 0 is the first of those used: the days of the line are small numbers then. */
static void take_readings(struct trend_answer *answer)
{
    const struct readings *readings = &answer->record->readings;
    const struct timed *at = readings->at + readings->first;
    double most = answer->record->ask->settled.in[TREND_LAST];
    answer->n = readings->n;
    answer->used = (double)readings->n > most ? (size_t)most : readings->n;
    answer->origin = at[answer->n - answer->used].seconds;
    for (size_t i = 0; i < answer->n; i++) {
        answer->days[i] = trend_day(answer, at[i].seconds);
        answer->values[i] = at[i].value;
    }
    answer->out[TREND_LAST_READING] = answer->values[answer->n - 1];
}

/* True when two readings have one time, or a column sounds like one of tanks. */
static bool may_mix(const struct trend_answer *answer)
{
    bool mix = answer->record->like_tank;
    for (size_t i = 1; i < answer->n; i++) {
        mix = mix || answer->days[i] == answer->days[i - 1];
    }
    return mix;
}

static void note_file(struct trend_answer *answer)
{
    const struct trend_record *record = answer->record;
    const struct trend_track *track = &record->track[0];
    const struct trend_ask *ask = record->ask;
    const bool apart = record->columns.tank == NO_COLUMN;
    const bool negative = !all_above_zero(answer->values, answer->n);
    raise_if(answer, record->bounds.n > 0, HW_TREND_NOTE_READINGS_BOUNDED);
    raise_if(answer, record->rows.n + record->cells.n > 0, HW_TREND_NOTE_ROWS_PASSED_OVER);
    raise_if(answer, record->without.n > 0, HW_TREND_NOTE_LINES_WITHOUT);
    raise_if(answer, !record->logbook && !track->unit && negative, HW_TREND_NOTE_READING_NEGATIVE);
    raise_if(answer, apart && may_mix(answer), HW_TREND_NOTE_TANKS_MIXED);
    raise_if(answer, apart, HW_TREND_NOTE_TANKS_AS_ONE);
    raise_if(answer, record->unordered > 0, HW_TREND_NOTE_ROWS_UNORDERED);
    raise_if(answer, true, HW_TREND_NOTE_LINE_ONLY);
    raise_if(answer, true, HW_TREND_NOTE_KIT_IN_STEPS);
    raise_if(answer, trend_has_window(ask), HW_TREND_NOTE_HELD_TO_LAST);
    raise_if(answer, !ask->level[TREND_LIMIT].at, HW_TREND_NOTE_LINE_LIMIT_UNSAID);
    raise_if(answer, !trend_has_window(ask), HW_TREND_NOTE_WINDOW_UNSAID);
    raise_if(answer, true, HW_TREND_NOTE_SLOPE_METHOD);
    raise_if(answer, true, HW_TREND_NOTE_ASK_VET);
}

bool trend_answer(const struct trend_record *record, struct trend_answer *answer)
{
    *answer = (struct trend_answer){.record = record, .intercept = NAN};
    for (size_t i = 0; i < TREND_RESULTS; i++) {
        answer->out[i] = NAN;
    }
    if (!read_levels(record, answer) || !trend_now(record, &answer->now)) {
        return false;
    }
    set_units(answer);
    take_readings(answer);
    tell_age(answer);
    lay_line(answer);
    meet_limit(answer);
    count_held(answer);
    note_file(answer);
    answer->notes = hw_notes_told(&trend_caption, answer->notes);
    return true;
}

void trend_moment(const struct trend_answer *answer, double days, bool date_alone,
                  char text[WHEN_MAX])
{
    struct when when = answer->record->newest;
    when.seconds = answer->origin + (long long)floor(days * day_seconds + 0.5);
    when.has_time = when.has_time && !date_alone;
    when.has_offset = when.has_offset && !date_alone;
    when_text(&when, text);
}
