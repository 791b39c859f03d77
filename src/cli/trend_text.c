/* trend_text.c - what a record tells, for people. */
#include "cli/trend_text.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/text_part.h"
#include "tables.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { DIGITS = 3, MORE_DIGITS = 6, TRACKS_SHOWN = 18, NAME_WIDTH = 28, NAME_ROOM = 17 };

static int digits_of(const struct trend_record *record, int usual)
{
    return record->ask->digits ? record->ask->digits : usual;
}

static const char *unit_name(const struct trend_record *record)
{
    return record->track[0].unit ? record->track[0].unit->name : "";
}

/* Days as a number: "5.5", "0.25". */
static void days_words(double days, char text[TREND_LINE])
{
    char number[NUMBER_MAX];
    number_digits(number, days, days < 100 ? DIGITS : MORE_DIGITS);
    (void)snprintf(text, TREND_LINE, "%.40s d", number);
}

void trend_value(const struct trend_answer *answer, double value, char text[TREND_LINE])
{
    const char *unit = unit_name(answer->record);
    char number[NUMBER_MAX];
    number_digits(number, value, digits_of(answer->record, MORE_DIGITS));
    (void)snprintf(text, TREND_LINE, "%.40s%s%.20s", number, unit[0] == '\0' ? "" : " ", unit);
}

/* --- The line --------------------------------------------------------------------------------- */

static void slope_number(const struct trend_answer *answer, size_t result, char text[NUMBER_MAX])
{
    number_digits(text, answer->out[result], digits_of(answer->record, DIGITS));
}

/* What an interval that holds 0 tells all the same: an end at 0 leaves one way open. */
static const char *trendless(const struct trend_answer *answer)
{
    const double low = answer->out[TREND_SLOPE_LOW];
    const double high = answer->out[TREND_SLOPE_HIGH];
    if ((low < 0) == (high > 0)) {
        return "no trend can be told";
    }
    return low < 0 ? "may be level or falling" : "may be level or rising";
}

void trend_slope_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    const char *unit = unit_name(answer->record);
    const char *blank = unit[0] == '\0' ? "" : " ";
    char part[3][NUMBER_MAX];
    for (size_t i = 0; i < 3; i++) {
        slope_number(answer, TREND_SLOPE + i, part[i]);
    }
    if (isnan(answer->out[TREND_SLOPE])) {
        (void)snprintf(text, TREND_LINE, "cannot be told");
    } else if (isnan(answer->out[TREND_SLOPE_LOW])) {
        (void)snprintf(text, TREND_LINE, "%.30s%s%.20s a day, without an interval", part[0], blank,
                       unit);
    } else if (notes_have(answer->notes, HW_TREND_NOTE_NO_TREND)) {
        (void)snprintf(text, TREND_LINE, "%s: %.30s to %.30s%s%.20s a day", trendless(answer),
                       part[1], part[2], blank, unit);
    } else {
        (void)snprintf(text, TREND_LINE, "%.30s to %.30s%s%.20s a day, the median %.30s", part[1],
                       part[2], blank, unit, part[0]);
    }
}

static void readings_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    char from[WHEN_MAX];
    char to[WHEN_MAX];
    char span[TREND_LINE];
    double last = answer->days[answer->n - 1];
    trend_moment(answer, 0, false, from);
    trend_moment(answer, last, false, to);
    days_words(last, span);
    (void)snprintf(text, TREND_LINE, "%zu in %.20s, %s to %s", answer->used, span, from, to);
    if (answer->used == 1) {
        (void)snprintf(text, TREND_LINE, "1, of %s", to);
    } else if (strlen(text) > PRINT_WIDTH - NAME_ROOM) {
        trend_moment(answer, 0, true, from);
        trend_moment(answer, last, true, to);
        (void)snprintf(text, TREND_LINE, "%zu in %.20s, %s to %s", answer->used, span, from, to);
    }
}

static void last_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    char value[TREND_LINE];
    trend_value(answer, answer->out[TREND_LAST_READING], value);
    if (!isnan(answer->out[TREND_AGE])) {
        char age[TREND_LINE];
        days_words(answer->out[TREND_AGE], age);
        (void)snprintf(text, TREND_LINE, "%.70s, read %.20s ago", value, age);
    } else {
        (void)snprintf(text, TREND_LINE, "%.70s, its age cannot be told", value);
    }
}

/* The day, or why there is none. */
static void limit_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    char limit[TREND_LINE];
    double ahead = answer->out[TREND_DAYS_TO_LIMIT];
    trend_value(answer, answer->level[TREND_LIMIT], limit);
    if (!isnan(ahead)) {
        char days[TREND_LINE];
        char day[WHEN_MAX];
        days_words(ahead, days);
        trend_moment(answer, answer->days[answer->n - 1] + ahead, true, day);
        (void)snprintf(text, TREND_LINE, "%.20s from the last reading, to %.40s on %s", days, limit,
                       day);
        return;
    }
    const char *why = "there is no slope";
    if (notes_have(answer->notes, HW_TREND_NOTE_NO_TREND)) {
        why = "no trend";
    } else if (notes_have(answer->notes, HW_TREND_NOTE_NO_INTERVAL)) {
        why = "too few readings";
    } else if (notes_have(answer->notes, HW_TREND_NOTE_LIMIT_RISING)) {
        why = "already above it, and rising";
    } else if (notes_have(answer->notes, HW_TREND_NOTE_LIMIT_AWAY)) {
        why = "the line leads away from it";
    } else if (notes_have(answer->notes, HW_TREND_NOTE_LIMIT_FAR)) {
        why = "not within as many days as were measured";
    }
    (void)snprintf(text, TREND_LINE, "cannot be told for %.40s: %s", limit, why);
}

/* --- Held ------------------------------------------------------------------------------------- */

static void held_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    const struct hw_trend_run *run = &answer->run;
    char held[TREND_LINE];
    char gap[TREND_LINE];
    char since[WHEN_MAX];
    days_words(run->held, held);
    days_words(run->longest, gap);
    if (isnan(answer->out[TREND_HELD])) {
        (void)snprintf(text, TREND_LINE, "cannot be told: the last cell may lie outside");
        return;
    }
    if (run->from == answer->cells.n) {
        (void)snprintf(text, TREND_LINE, "0 d: the last %s is %s",
                       answer->cells.mark_last ? "cell" : "reading",
                       run->by == HW_TREND_BREAK_BELOW ? "below the floor" : "above the ceiling");
        return;
    }
    trend_moment(answer, answer->cells.days[run->from], false, since);
    (void)snprintf(text, TREND_LINE, "%.20s unbroken, from %s on; longest gap %.20s", held, since,
                   gap);
}

static void broken_words(const struct trend_answer *answer, char text[TREND_LINE])
{
    static const char *const by[] = {
        [HW_TREND_BREAK_NONE] = "nothing, as far as the readings reach back",
        [HW_TREND_BREAK_BELOW] = "a reading below the floor",
        [HW_TREND_BREAK_ABOVE] = "a reading above the ceiling",
        [HW_TREND_BREAK_GAP] = "a gap without a reading",
        [HW_TREND_BREAK_UNTOLD] = "an unclear cell",
    };
    const struct hw_trend_run *run = &answer->run;
    size_t before = run->by == HW_TREND_BREAK_GAP ? run->from : run->from - 1;
    int n = snprintf(text, TREND_LINE, "%s", by[run->by]);
    if (run->by != HW_TREND_BREAK_NONE) {
        char when[WHEN_MAX];
        trend_moment(answer, answer->cells.days[before], true, when);
        n += snprintf(text + n, TREND_LINE - (size_t)n, " %s %s",
                      run->by == HW_TREND_BREAK_GAP ? "until" : "on", when);
    }
    n += snprintf(text + n, TREND_LINE - (size_t)n, "; %zu of %zu outside", run->outside,
                  answer->cells.n);
    if (run->by == HW_TREND_BREAK_UNTOLD && n + 14 < PRINT_WIDTH - NAME_ROOM) {
        (void)snprintf(text + n, TREND_LINE - (size_t)n, ", %zu unclear", run->untold);
    }
}

/* --- What was used ---------------------------------------------------------------------------- */

/* "given: rows readings.csv, tank birch": a name and its value stay in one line. */
static void print_list(const char *heading, const char *const names[], char values[][TREND_LINE],
                       size_t n)
{
    size_t at = 0;
    for (size_t i = 0; i < n; i++) {
        char entry[TREND_LINE];
        (void)snprintf(entry, sizeof entry, "%s %.90s%s", names[i], values[i],
                       i + 1 < n ? "," : "");
        for (char *c = entry; *c != '\0'; c++) {
            *c = *c == ' ' ? PRINT_TIE : *c;
        }
        at = at == 0 ? print_words(heading, 0, 2, true) : at;
        at = print_words(entry, at, 2, false);
    }
    if (n > 0) {
        (void)putchar('\n');
    }
}

static void show(const char *word, char text[TREND_LINE])
{
    char shown[SHOWN_MAX];
    (void)show_text((struct hw_text){word, strlen(word)}, shown);
    (void)snprintf(text, TREND_LINE, "%s", shown);
}

static void print_settled(const struct trend_ask *ask, enum hw_from from, const char *names[],
                          char values[][TREND_LINE], size_t *n)
{
    for (size_t i = 0; i < TREND_INPUTS; i++) {
        if (ask->settled.from[i] == from && (i == TREND_LAST || trend_has_window(ask))) {
            char number[NUMBER_MAX];
            number_digits(number, ask->settled.in[i], MORE_DIGITS);
            names[*n] = trend_caption.inputs[i].name;
            (void)snprintf(values[(*n)++], TREND_LINE, "%.40s%s", number,
                           i == TREND_GAP ? " d" : "");
        }
    }
}

static void print_asked(const struct trend_answer *answer)
{
    enum { ITEMS = 10 };
    const struct trend_ask *ask = answer->record->ask;
    const char *names[ITEMS];
    char values[ITEMS][TREND_LINE];
    const char *const words[] = {ask->rows, ask->tank, ask->of, ask->when};
    static const char *const word_names[] = {"rows", "tank", "of", "when"};
    size_t n = 0;
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (words[i]) {
            names[n] = word_names[i];
            show(words[i], values[n++]);
        }
    }
    for (size_t i = 0; i < TREND_LEVELS; i++) {
        if (!isnan(answer->level[i])) {
            names[n] = trend_level_names[i];
            trend_value(answer, answer->level[i], values[n++]);
        }
    }
    print_settled(ask, HW_GIVEN, names, values, &n);
    print_list("given:", names, values, n);
    n = 0;
    print_settled(ask, HW_FROM_PRESET, names, values, &n);
    print_list("assumed:", names, values, n);
}

static void print_line(const char *name, const char *words)
{
    (void)printf("  %-13s  %s\n", name, words);
}

static void print_notes(const struct trend_answer *answer)
{
    const uint64_t raised = answer->notes & notes_between(&trend_caption, HW_CAUTION, HW_WITHHELD);
    for (size_t bit = 0; notes_next(&trend_caption, raised, &bit); bit++) {
        text_note(hw_note_at(&trend_caption, bit), "", "", answer->record->ask->full);
    }
}

void trend_text(const struct trend_answer *answer)
{
    const struct trend_ask *ask = answer->record->ask;
    char words[TREND_LINE];
    (void)puts("trend");
    trend_slope_words(answer, words);
    print_line("slope", words);
    readings_words(answer, words);
    print_line("readings", words);
    last_words(answer, words);
    print_line("last", words);
    if (ask->level[TREND_LIMIT].at) {
        limit_words(answer, words);
        print_line("days_to_limit", words);
    }
    if (trend_has_window(ask)) {
        held_words(answer, words);
        print_line("held", words);
        broken_words(answer, words);
        print_line("broken by", words);
    }
    print_notes(answer);
    print_asked(answer);
    text_standing(&trend_caption, answer->notes, ask->full);
    if (ask->full) {
        text_sources(&trend_caption);
    }
}

/* --- Without --of ----------------------------------------------------------------------------- */

/* How many bytes of a name there is room for: no character is cut. */
static size_t name_room(const char *name, size_t most)
{
    size_t n = strlen(name) < most ? strlen(name) : most;
    while (n > 0 && ((unsigned char)name[n] & 0xC0) == 0x80) {
        n--;
    }
    return n;
}

/* The cells of a track: name, last value, age, change. */
static void track_cells(const struct trend_record *record, const struct trend_track *track,
                        double now, char cell[4][TREND_LINE])
{
    char number[NUMBER_MAX];
    const char *unit = track->unit ? track->unit->name : "";
    double age = (now - (double)track->last.seconds) / 86400;
    (void)snprintf(cell[0], TREND_LINE, "%.*s", (int)name_room(track->name, NAME_WIDTH),
                   track->name);
    number_digits(number, track->last.value, digits_of(record, MORE_DIGITS));
    (void)snprintf(cell[1], TREND_LINE, "%.30s%s%.12s", number, unit[0] == '\0' ? "" : " ", unit);
    (void)snprintf(cell[2], TREND_LINE, "-");
    if (age >= 0) {
        days_words(age, cell[2]);
    }
    (void)snprintf(cell[3], TREND_LINE, "-");
    if (track->mixed) {
        (void)snprintf(cell[1], TREND_LINE, "mixed units");
    } else if (track->n > 1) {
        double change = track->last.value - track->before.value;
        number_digits(number, change, DIGITS);
        (void)snprintf(cell[3], TREND_LINE, "%s%.20s", change > 0 ? "+" : "", number);
    }
}

static void print_cells(char cell[4][TREND_LINE], const size_t width[4])
{
    (void)printf("  %-*.*s  %-*s  %-*s  %s\n", (int)width[0], (int)name_room(cell[0], width[0]),
                 cell[0], (int)width[1], cell[1], (int)width[2], cell[2], cell[3]);
}

/* Where the table is wider than a screen, its last heading is short, then names are cut. */
static void fit_table(char head[4][TREND_LINE], size_t width[4])
{
    const size_t room = PRINT_WIDTH - 8 - width[1] - width[2];
    if (width[0] + strlen(head[3]) > room) {
        (void)snprintf(head[3], TREND_LINE, "change");
    }
    width[3] = strlen(head[3]) > width[3] ? strlen(head[3]) : width[3];
    width[0] = width[0] + width[3] > room ? room - width[3] : width[0];
}

void trend_text_tracks(const struct trend_record *record, double now)
{
    char head[4][TREND_LINE] = {"column", "last", "age", "change since the one before"};
    char cell[4][TREND_LINE];
    size_t width[4] = {strlen(head[0]), strlen(head[1]), strlen(head[2]), 0};
    size_t left = 0;
    for (int pass = 0; pass < 2; pass++) {
        size_t shown = 0;
        for (size_t i = 0; i < record->n_tracks; i++) {
            if (record->track[i].n == 0 || (pass == 1 && shown == TRACKS_SHOWN)) {
                left += pass == 1 && record->track[i].n > 0 ? 1 : 0;
                continue;
            }
            if (pass == 1 && shown++ == 0) {
                fit_table(head, width);
                (void)puts("trend");
                print_cells(head, width);
            }
            track_cells(record, &record->track[i], now, cell);
            for (size_t k = 0; k < 4 && pass == 0; k++) {
                width[k] = strlen(cell[k]) > width[k] ? strlen(cell[k]) : width[k];
            }
            if (pass == 1) {
                print_cells(cell, width);
            }
        }
    }
    if (left > 0 || record->more_tracks) {
        (void)printf("and %zu more%s: --format csv has them\n", left,
                     record->more_tracks ? " at least" : "");
    }
    (void)puts("ask: add --of COLUMN, --limit X, or --floor X --ceiling X");
}
