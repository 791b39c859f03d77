/* trend_header.c - finds the columns of times, tanks and readings. */
#include "cli/column_name.h"
#include "cli/help.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/trend_record.h"

#include <stdio.h>
#include <string.h>

enum { LIST_MAX = 300 };

static struct hw_text text_of(const char *word)
{
    return (struct hw_text){word, strlen(word)};
}

static bool same_text(struct hw_text a, struct hw_text b)
{
    return a.n == b.n && memcmp(a.at, b.at, a.n) == 0;
}

/* How a column's name is that of --of: the nearest way in which any is counts. */
enum nearness { FAR, WITHOUT_UNIT, FOLDED, SAME };

static enum nearness nearness_of(struct hw_text name, const char *of)
{
    size_t n = 0;
    (void)column_unit(name, &n);
    if (same_text(name, text_of(of))) {
        return SAME;
    }
    if (column_folds_to(of, name.at, name.n)) {
        return FOLDED;
    }
    return n < name.n && column_folds_to(of, name.at, n) ? WITHOUT_UNIT : FAR;
}

/* Adds a name to a list of what there is, while there is room. */
static void add_name(char list[LIST_MAX], const char *name)
{
    size_t used = strlen(list);
    if (used + strlen(name) + 8 < LIST_MAX) {
        (void)snprintf(list + used, LIST_MAX - used, "%s%s", used == 0 ? "" : ", ", name);
    } else if (used > 0 && list[used - 1] != '.') {
        (void)snprintf(list + used, LIST_MAX - used, ", ...");
    }
}

/* The names of the columns, to choose from; those that there is room for are weighed. */
static bool no_column(const struct trend_record *record)
{
    static char names[TREND_TRACKS][SHOWN_MAX];
    char shown[SHOWN_MAX];
    char list[LIST_MAX] = "";
    char suggestion[SUGGEST_TEXT];
    struct suggestions near = {.word = shown, .n = 0};
    struct csv_cell cell;
    size_t i = 0;
    show_text(text_of(record->ask->of), shown);
    for (size_t at = 0;
         csv_next_cell(&record->columns.header, record->columns.separator, &at, &cell); i++) {
        char *name = names[i < TREND_TRACKS ? i : TREND_TRACKS - 1];
        struct hw_text text = hw_text_trimmed(cell.text);
        show_text(text, name);
        add_name(list, name);
        (void)column_unit(text, &text.n); /* may be left out in --of */
        show_text(text, name);
        if (i < TREND_TRACKS) {
            suggest_weigh(&near, name);
        }
    }
    suggest_text(&near, "", suggestion);
    complain("%s has no column '%s'%s", record->file, shown, suggestion);
    complain("its columns are: %s", list);
    return false;
}

/* True for a name without a unit that is that of something dissolved: of an input that is a
 * concentration, or of what else kits and labels tell. */
static bool is_dissolved(struct hw_text name)
{
    static const char *const words[] = {"ammonia", "ammonium", "nitrite", "nitrate",
                                        "copper",  "chlorine", NULL};
    const struct hw_unit *unit = NULL;
    size_t input = 0;
    bool dissolved = false;
    for (size_t i = 0; words[i]; i++) {
        dissolved = dissolved || column_folds_to(words[i], name.at, name.n);
    }
    for (size_t i = 0; hw_calcs[i] && !dissolved; i++) {
        dissolved = column_match(hw_calcs[i], name, &input, &unit) &&
                    hw_calcs[i]->inputs[input].kind == HW_CONCENTRATION;
    }
    return dissolved;
}

/* A track for a column whose name is known. */
static void begin_track(struct trend_record *record, struct hw_text name, size_t column)
{
    if (record->n_tracks == TREND_TRACKS) {
        record->more_tracks = true;
        return;
    }
    struct trend_track *track = &record->track[record->n_tracks++];
    size_t n = 0;
    *track = (struct trend_track){.column = column, .unit = column_unit(name, &n)};
    track->from_header = track->settled = track->unit != NULL;
    track->concentration = is_dissolved(name);
    show_text(name, track->name);
}

/* Several columns are as near: which names can be typed in full, if they differ. */
static bool several(const struct trend_record *record, enum nearness best, size_t found)
{
    const struct columns *columns = &record->columns;
    const char *first = record->track[0].name;
    char list[LIST_MAX] = "";
    char shown[SHOWN_MAX];
    struct csv_cell cell;
    bool differ = false;
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell);) {
        struct hw_text name = hw_text_trimmed(cell.text);
        if (nearness_of(name, record->ask->of) == best) {
            char quoted[SHOWN_MAX + 2];
            show_text(name, shown);
            (void)snprintf(quoted, sizeof quoted, "'%s'", shown);
            add_name(list, quoted);
            differ = differ || strcmp(shown, first) != 0;
        }
    }
    if (differ) {
        show_text(text_of(record->ask->of), shown);
        complain("%s has %zu columns for --of %s: write the name in full, one of %s", record->file,
                 found, shown, list);
    } else {
        complain("%s has %zu columns called '%s': rename all but one", record->file, found, first);
    }
    return false;
}

/* The column that --of names, in the nearest way; of two there must not be a choice. */
static bool find_of(struct trend_record *record)
{
    const struct columns *columns = &record->columns;
    enum nearness best = WITHOUT_UNIT;
    size_t found = 0;
    struct csv_cell cell;
    size_t column = 0;
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell); column++) {
        struct hw_text name = hw_text_trimmed(cell.text);
        enum nearness this = nearness_of(name, record->ask->of);
        if (this > best || (this == best && found == 0)) {
            found = 0;
            record->n_tracks = 0;
            begin_track(record, name, column);
        }
        found += this >= best ? 1 : 0;
        best = this > best ? this : best;
    }
    if (found == 0) {
        return no_column(record);
    }
    if (found > 1) {
        return several(record, best, found);
    }
    long of = (long)record->track[0].column;
    if (of == columns->when || of == columns->time || of == columns->tank) {
        complain("column '%s' of %s holds times or tanks: --of names a column of readings",
                 record->track[0].name, record->file);
        return false;
    }
    return true;
}

/* All columns may hold readings. */
static void begin_tracks(struct trend_record *record)
{
    const struct columns *columns = &record->columns;
    struct csv_cell cell;
    long column = 0;
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell); column++) {
        if (column != columns->when && column != columns->time && column != columns->tank) {
            begin_track(record, hw_text_trimmed(cell.text), (size_t)column);
        }
    }
}

/* --of CALCULATION.NAME, an input or a result of a calculation. */
static bool logbook_of(struct trend_record *record)
{
    const char *of = record->ask->of;
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT] = "";
    show_text(text_of(of), shown);
    const char *dot = strchr(of, '.');
    char name[SHOWN_MAX] = "";
    (void)snprintf(name, sizeof name, "%.*s", (int)(dot ? dot - of : 0), of);
    const struct hw_calc *calc = dot ? calc_find(name) : NULL;
    struct suggestions near = {.word = dot ? name : shown, .n = 0};
    for (size_t i = 0; hw_calcs[i] && !calc; i++) {
        suggest_weigh(&near, hw_calcs[i]->name);
    }
    if (!dot || !calc) {
        suggest_text(&near, "", suggestion);
        complain(
            "%s is a logbook: write --of CALCULATION.NAME, as in --of ammonia.free, not '%s'%s",
            record->file, shown, suggestion);
        return false;
    }
    near.word = dot + 1;
    size_t n = strlen(dot + 1);
    if (hw_input_find(calc, dot + 1, n) < calc->n_inputs ||
        hw_result_find(calc, dot + 1, n) < calc->n_results) {
        begin_track(record, (struct hw_text){of, strlen(of)}, 0);
        record->track[0].unit = NULL; /* each line writes its own */
        record->track[0].from_header = record->track[0].settled = false;
        return true;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        suggest_weigh(&near, calc->inputs[i].name);
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        suggest_weigh(&near, calc->results[i].name);
    }
    suggest_text(&near, "", suggestion);
    show_text(text_of(dot + 1), shown);
    complain("%s has no input or result '%s'%s", calc->name, shown, suggestion);
    return false;
}

/* True for "Aquarium", "tank_id" or "Name of tank". */
static bool sounds_like_tank(struct hw_text name)
{
    static const char *const words[] = {"tank", "tanks", "aquarium", "bucket",
                                        "vat",  "basin", "system",   NULL};
    for (size_t from = 0; from < name.n;) {
        size_t n = 0;
        while (from + n < name.n && !strchr(" _-.()#", name.at[from + n])) {
            n++;
        }
        for (size_t i = 0; words[i]; i++) {
            if (column_folds_to(words[i], name.at + from, n)) {
                return true;
            }
        }
        from += n + 1;
    }
    return false;
}

/* Notes what a column of that name is: a time, a tank, a part of a logbook's line. */
static void note_column(struct trend_record *record, struct hw_text name, long column,
                        long times[4])
{
    static const char *const words[4] = {"when", "datetime", "date", "time"};
    const struct trend_ask *ask = record->ask;
    for (size_t i = 0; i < 4 && !ask->when_column.at; i++) {
        times[i] = column_folds_to(words[i], name.at, name.n) ? column : times[i];
    }
    if (ask->when_column.at && same_text(name, ask->when_column)) {
        times[0] = column;
    } else if (ask->time_column.at && same_text(name, ask->time_column)) {
        record->columns.time = column;
    }
    bool mapped = ask->tank_column.at != NULL;
    if (mapped ? same_text(name, ask->tank_column) : column_folds_to("tank", name.at, name.n)) {
        record->columns.tank = column;
    } else {
        record->like_tank = record->like_tank || sounds_like_tank(name);
    }
    const struct {
        const char *word;
        long *column;
    } parts[] = {{"calculation", &record->calculation},
                 {"inputs", &record->inputs},
                 {"results", &record->results}};
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        *parts[i].column =
            column_folds_to(parts[i].word, name.at, name.n) ? column : *parts[i].column;
    }
}

/* The column of times, out of those with a name for it. */
static bool choose_when(struct trend_record *record, const long times[4])
{
    const struct trend_ask *ask = record->ask;
    bool whole = times[0] != NO_COLUMN || times[1] != NO_COLUMN;
    if (ask->when_column.at &&
        (times[0] == NO_COLUMN || (ask->time_column.at && record->columns.time == NO_COLUMN))) {
        char shown[SHOWN_MAX];
        show_text(times[0] == NO_COLUMN ? ask->when_column : ask->time_column, shown);
        complain("--map: %s has no column '%s'", record->file, shown);
        return false;
    }
    if (!whole && times[2] != NO_COLUMN && times[3] != NO_COLUMN) {
        complain(
            "%s has a column for the date and one for the time: add --map DATE+TIME=when, with "
            "their names",
            record->file);
        return false;
    }
    for (size_t i = 0; i < 4 && record->columns.when == NO_COLUMN; i++) {
        record->columns.when = times[i];
    }
    if (record->columns.when == NO_COLUMN) {
        complain("%s has no column when, datetime, date or time: is its first line a header? --map "
                 "COLUMN=when names the times",
                 record->file);
        return false;
    }
    return true;
}

/* False with a message where a tank is asked for, or a column of tanks, that is not there. */
static bool tank_is_there(const struct trend_record *record)
{
    const struct trend_ask *ask = record->ask;
    if (record->columns.tank != NO_COLUMN || (!ask->tank && !ask->tank_column.at)) {
        return true;
    }
    if (ask->tank_column.at) {
        char shown[SHOWN_MAX];
        show_text(ask->tank_column, shown);
        complain("--map: %s has no column '%s'", record->file, shown);
    } else {
        complain("%s has no column tank: leave --tank out, or name its column with --map "
                 "COLUMN=tank",
                 record->file);
    }
    return false;
}

bool trend_header(struct trend_record *record, struct csv_record header, char separator)
{
    long times[4] = {NO_COLUMN, NO_COLUMN, NO_COLUMN, NO_COLUMN};
    struct csv_cell cell;
    record->columns = (struct columns){.header = header,
                                       .separator = separator,
                                       .when = NO_COLUMN,
                                       .time = NO_COLUMN,
                                       .tank = NO_COLUMN};
    record->calculation = record->inputs = record->results = NO_COLUMN;
    for (size_t at = 0; csv_next_cell(&header, separator, &at, &cell); record->columns.n++) {
        note_column(record, hw_text_trimmed(cell.text), (long)record->columns.n, times);
    }
    if (!choose_when(record, times)) {
        return false;
    }
    if (!tank_is_there(record)) {
        return false;
    }
    record->logbook = record->calculation != NO_COLUMN && record->inputs != NO_COLUMN &&
                      record->results != NO_COLUMN;
    if (record->logbook) {
        return !record->ask->of || logbook_of(record);
    }
    if (record->ask->of) {
        return find_of(record);
    }
    begin_tracks(record);
    return true;
}

bool trend_is_log_line(const struct csv_record *record)
{
    struct csv_cell cell;
    bool when = false;
    bool calculation = false;
    size_t n = 0;
    for (size_t at = 0; csv_next_cell(record, ',', &at, &cell); n++) {
        char name[SHOWN_MAX];
        show_text(cell.text, name);
        when = when || (n == 0 && when_is_iso(cell.text));
        calculation = calculation || (n == 2 && calc_find(name));
    }
    return when && calculation && n == 7;
}
