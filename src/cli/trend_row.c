/* trend_row.c - takes readings out of the rows of a file. */
#include "cli/column_name.h"
#include "cli/report_cell.h"
#include "cli/stream.h"
#include "cli/trend_record.h"

#include <stdio.h>
#include <string.h>

/* The row at hand, and its time. */
struct row_times {
    const struct csv_record *row;
    struct hw_text text; /* of its time, as written */
    struct when when;
    bool read, fine;
    char room[COLUMNS_WHEN];
};

static const struct hw_text nothing = {"", 0};

/* Nothing is shown of a row that is wrong as a whole. */
static void pass_over(struct trend_record *record, struct trend_passed *passed, struct hw_text text,
                      const char *why)
{
    if (passed->n++ == 0) {
        passed->row = record->row;
        passed->why = why;
        show_text(text, passed->shown);
    }
}

/* --- Tanks ------------------------------------------------------------------------------------ */

static void note_tank(struct trend_record *record, struct hw_text tank)
{
    char shown[SHOWN_MAX];
    show_text(tank, shown);
    for (size_t i = 0; i < record->n_tanks; i++) {
        if (strcmp(record->tank[i], shown) == 0) {
            return;
        }
    }
    if (record->n_tanks < TREND_TANKS) {
        memcpy(record->tank[record->n_tanks++], shown, sizeof shown);
    }
}

/* A logbook guards names that a spreadsheet would run with an apostrophe. */
static struct hw_text unguarded(const struct trend_record *record, struct hw_text tank)
{
    bool guarded = record->logbook && tank.n > 1 && tank.at[0] == '\'' && tank.at[1] != '\0' &&
                   strchr("=+-@", tank.at[1]);
    return guarded ? (struct hw_text){tank.at + 1, tank.n - 1} : tank;
}

/* True for a row of the tank that is asked for. Without --tank every row is, and the names of the
 * tanks are noted all the same. */
static bool is_of_tank(struct trend_record *record, const struct csv_record *row)
{
    char room[CELL_MAX];
    struct hw_text tank = hw_text_trimmed(
        columns_cell(&record->columns, row, record->columns.tank, room, sizeof room));
    tank = unguarded(record, tank);
    if (record->columns.tank != NO_COLUMN) {
        note_tank(record, tank);
    }
    const char *asked = record->ask->tank;
    return !asked || (strlen(asked) == tank.n && memcmp(asked, tank.at, tank.n) == 0);
}

/* --- Readings --------------------------------------------------------------------------------- */

/* The time of the row, read when its first reading is. */
static bool has_time(struct trend_record *record, struct row_times *times)
{
    if (!times->read) {
        times->read = true;
        times->text = columns_when(&record->columns, times->row, times->room);
        times->fine = when_read(times->text, &times->when);
        if (!times->fine) {
            pass_over(record, &record->rows, times->text,
                      "is no time as 2031-03-05 or 2031-03-05T08:15+00:00");
        }
    }
    return times->fine;
}

/* Times with an offset from UTC are not compared with times without. */
static bool times_agree(struct trend_record *record, const struct row_times *times)
{
    if (record->any_time && record->newest.has_offset != times->when.has_offset) {
        complain("%s: row %zu: the time %.*s has %s offset, those above have %s: give all times of "
                 "the file an offset as +00:00, or none",
                 record->file, record->row, (int)times->text.n, times->text.at,
                 times->when.has_offset ? "an" : "no", times->when.has_offset ? "none" : "one");
        record->wrong = true;
        return false;
    }
    return true;
}

static const char *unit_words(const struct hw_unit *unit)
{
    return unit ? unit->name : "no unit";
}

/* A column has one unit: that of its header, or of its first reading. Mixed ones are refused where
 * the column is asked for. */
static bool unit_agrees(struct trend_record *record, struct trend_track *track,
                        const struct hw_unit *unit)
{
    if (!track->settled) {
        track->settled = true;
        track->unit = unit;
        return true;
    }
    if ((!unit && track->from_header) || reading_same_unit(track->unit, unit)) {
        return true;
    }
    track->mixed = true;
    if (record->ask->of) {
        complain("%s: row %zu: this reading of %s has %s, %s %s: a column has one unit",
                 record->file, record->row, track->name, unit_words(unit),
                 track->from_header ? "the header" : "those above have", unit_words(track->unit));
        record->wrong = true;
    }
    return false;
}

/* The two latest, by their times. */
static void add_to_track(struct trend_track *track, struct timed reading)
{
    track->n++;
    if (track->n == 1 || reading.seconds >= track->last.seconds) {
        track->before = track->last;
        track->last = reading;
    } else if (track->n == 2 || reading.seconds >= track->before.seconds) {
        track->before = reading;
    }
}

static void add_reading(struct trend_record *record, struct trend_track *track,
                        const struct row_times *times, double value)
{
    const struct timed reading = {.seconds = times->when.seconds, .value = value};
    trend_note_time(record, &times->when);
    add_to_track(track, reading);
    if (record->ask->of) {
        (void)readings_add(&record->readings, reading);
    }
}

/* True for less than 0 of what is dissolved. A logbook holds what was worked out. */
static bool is_absurd(const struct trend_record *record, const struct trend_track *track,
                      const struct reading *reading)
{
    const struct hw_unit *unit = reading->unit ? reading->unit : track->unit;
    bool concentration = unit ? unit->kind == HW_CONCENTRATION : track->concentration;
    return reading->value < 0 && concentration && !record->logbook;
}

/* One cell, or one value of a log line; `number` is what of it is read: with a decimal comma not
 * what was written. */
static void take_reading(struct trend_record *record, struct trend_track *track,
                         struct hw_text written, struct hw_text number, struct row_times *times)
{
    struct reading reading = {.unit = NULL};
    enum hw_kind kind = track->unit ? track->unit->kind : HW_NUMBER;
    enum reading_kind found = reading_read(number, kind, &reading);
    bool bound = found == READING_BOUND;
    bool absurd = found == READING_NUMBER && is_absurd(record, track, &reading);
    if (found == READING_EMPTY) {
        return;
    }
    if (found != READING_NUMBER || absurd) {
        enum reading_side side = bound ? reading_bound(number, kind, &reading) : READING_ANYWHERE;
        pass_over(record, bound ? &record->bounds : &record->cells, written,
                  absurd ? "is below 0, as no concentration is" : "is no number");
        trend_mark(record, times->row, (struct timed){0, reading.value, side, reading.unit});
        return;
    }
    if (!has_time(record, times)) {
        trend_mark(record, times->row, (struct timed){0, reading.value, READING_AT, reading.unit});
    } else if (times_agree(record, times) && unit_agrees(record, track, reading.unit)) {
        add_reading(record, track, times, reading.value);
    }
}

/* --- Rows of a sheet -------------------------------------------------------------------------- */

static void take_cells(struct trend_record *record, struct row_times *times)
{
    struct csv_cell cell;
    char room[CELL_MAX] = "";
    char swapped[CSV_SWAPPED_MAX];
    size_t column = 0;
    size_t next = 0;
    for (size_t at = 0; next < record->n_tracks &&
                        csv_next_cell(times->row, record->columns.separator, &at, &cell);
         column++) {
        if (record->track[next].column != column) {
            continue;
        }
        struct trend_track *track = &record->track[next++];
        if (cell.text.n > CELL_MAX) { /* whatever it begins with, it is no number */
            const struct hw_text cut = {cell.text.at, CELL_MAX};
            take_reading(record, track, cut, (struct hw_text){"?", 1}, times);
            continue;
        }
        struct hw_text text = hw_text_trimmed((struct hw_text){room, csv_unquote(&cell, room)});
        struct hw_text number =
            record->ask->decimal_comma ? csv_swap_decimals(text, swapped) : text;
        take_reading(record, track, text, number, times);
    }
}

/* --- Lines of a logbook ----------------------------------------------------------------------- */

/* Takes "name=value unit" off a list joined by "; ". */
static bool next_entry(struct hw_text *list, struct hw_text *name, struct hw_text *value)
{
    if (list->n == 0) {
        return false;
    }
    const char *end = memchr(list->at, ';', list->n);
    size_t n = end ? (size_t)(end - list->at) : list->n;
    struct hw_text entry = hw_text_trimmed((struct hw_text){list->at, n});
    const char *equals = memchr(entry.at, '=', entry.n);
    *name = entry;
    *value = nothing;
    if (equals) {
        name->n = (size_t)(equals - entry.at);
        *value = (struct hw_text){equals + 1, entry.n - name->n - 1};
    }
    n += end ? 1 : 0;
    *list = (struct hw_text){list->at + n, list->n - n};
    return true;
}

/* False for a line that says status=withheld, status=refused or problem=CODE in its results: its
 * inputs may be anything. */
static bool is_answered(struct hw_text results)
{
    struct hw_text name;
    struct hw_text value;
    return next_entry(&results, &name, &value) && !hw_name_is("status", name.at, name.n) &&
           !hw_name_is("problem", name.at, name.n);
}

/* The value that --of names, of a line of its calculation. */
static void take_named(struct trend_record *record, struct hw_text calculation,
                       const struct hw_text lists[2], struct row_times *times)
{
    const char *dot = strchr(record->ask->of, '.');
    struct hw_text name;
    struct hw_text value;
    if (calculation.n != (size_t)(dot - record->ask->of) ||
        memcmp(calculation.at, record->ask->of, calculation.n) != 0) {
        return;
    }
    for (size_t i = 0; i < 2 && is_answered(lists[0]); i++) {
        struct hw_text list = lists[i];
        while (next_entry(&list, &name, &value)) {
            if (hw_name_is(dot + 1, name.at, name.n)) {
                take_reading(record, &record->track[0], value, value, times);
                return;
            }
        }
    }
    pass_over(record, &record->without, nothing, "holds no such value, or no answer");
}

/* The track of a result, which begins with its first line; NULL when there is no room. */
static struct trend_track *track_of(struct trend_record *record, struct hw_text calculation,
                                    struct hw_text result)
{
    char name[2 * TREND_NAME];
    int n = snprintf(name, sizeof name, "%.*s.%.*s", (int)calculation.n, calculation.at,
                     (int)result.n, result.at);
    char shown[SHOWN_MAX];
    show_text((struct hw_text){name, n < (int)sizeof name ? (size_t)n : sizeof name - 1}, shown);
    for (size_t i = 0; i < record->n_tracks; i++) {
        if (strcmp(record->track[i].name, shown) == 0) {
            return &record->track[i];
        }
    }
    if (record->n_tracks == TREND_TRACKS) {
        record->more_tracks = true;
        return NULL;
    }
    struct trend_track *track = &record->track[record->n_tracks++];
    *track = (struct trend_track){.column = 0};
    memcpy(track->name, shown, sizeof shown);
    return track;
}

/* Every result of the line that is a number. */
static void take_results(struct trend_record *record, struct hw_text calculation,
                         struct hw_text list, struct row_times *times)
{
    struct hw_text name;
    struct hw_text value;
    while (next_entry(&list, &name, &value)) {
        struct reading reading;
        bool number = reading_read(value, HW_NUMBER, &reading) == READING_NUMBER;
        struct trend_track *track = number ? track_of(record, calculation, name) : NULL;
        if (track) {
            take_reading(record, track, value, value, times);
        }
    }
}

static void take_line(struct trend_record *record, struct row_times *times)
{
    static char rooms[3][CELL_MAX];
    const long at[3] = {record->calculation, record->results, record->inputs};
    struct hw_text part[3];
    for (size_t i = 0; i < 3; i++) {
        part[i] = hw_text_trimmed(
            columns_cell(&record->columns, times->row, at[i], rooms[i], sizeof rooms[i]));
    }
    if (record->ask->of) {
        take_named(record, part[0], &part[1], times);
    } else {
        take_results(record, part[0], part[1], times);
    }
}

/* --- Any row ---------------------------------------------------------------------------------- */

/* A row with another number of cells has lost or split one: what stands in a column cannot be
 * trusted. */
static const char *judge_cells(const struct trend_record *record, const struct csv_record *row)
{
    struct csv_cell cell;
    size_t n = 0;
    bool broken = false;
    bool unnamed = false;
    for (size_t at = 0; csv_next_cell(row, record->columns.separator, &at, &cell); n++) {
        broken = broken || cell.broken;
        unnamed =
            unnamed || ((long)n == record->columns.tank && memchr(cell.text.at, 0, cell.text.n));
    }
    if (n != record->columns.n) {
        return n < record->columns.n ? "has fewer cells than the header"
                                     : "has more cells than the header";
    }
    if (unnamed) {
        return "has a NUL byte in the name of its tank";
    }
    return broken ? "has quotes that do not end where their cell does" : NULL;
}

void trend_row(struct trend_record *record, struct csv_record row)
{
    struct row_times times = {.row = &row};
    record->row++;
    if (row.n == 0 && record->columns.n > 1) {
        return;
    }
    const char *fault = judge_cells(record, &row);
    if (fault) {
        pass_over(record, &record->rows, nothing, fault);
        trend_mark(record, &row, (struct timed){.side = READING_ANYWHERE});
        return;
    }
    if (!is_of_tank(record, &row)) {
        return;
    }
    record->of_tank++;
    if (record->logbook) {
        take_line(record, &times);
    } else {
        take_cells(record, &times);
    }
}
