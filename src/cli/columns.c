/* columns.c - matches a header against the inputs of a calculation. */
#include "cli/columns.h"

#include "cli/column_like.h"
#include "cli/column_name.h"
#include "cli/stream.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

static bool same_text(struct hw_text a, struct hw_text b)
{
    return a.n == b.n && memcmp(a.at, b.at, a.n) == 0;
}

/* The --map for a column, or NULL. */
static const struct mapping *mapping_of(const struct args *args, struct hw_text name)
{
    for (size_t i = 0; i < args->n_maps; i++) {
        if (same_text(args->map[i].column, hw_text_trimmed(name))) {
            return &args->map[i];
        }
    }
    return NULL;
}

static bool mapped(const struct args *args, size_t input)
{
    for (size_t i = 0; i < args->n_maps; i++) {
        if (args->map[i].input == input) {
            return true;
        }
    }
    return false;
}

static bool add_feed(const struct args *args, struct columns *columns, const struct feed *feed,
                     struct hw_text name)
{
    for (size_t i = 0; i < columns->n_feed; i++) {
        if (columns->feed[i].input == feed->input) {
            char shown[SHOWN_MAX];
            show_text(name, shown);
            complain(
                "two columns feed %s, the second is '%s': keep one, or choose with --map COLUMN=%s",
                args->calc->inputs[feed->input].name, shown, args->calc->inputs[feed->input].name);
            return false;
        }
    }
    columns->feed[columns->n_feed++] = *feed;
    return true;
}

/* One column: what it feeds, if anything. An input that --map feeds is not fed by a column of its
 * own name. */
static bool read_column(const struct args *args, size_t column, struct hw_text name, bool *map_used,
                        struct columns *columns)
{
    struct feed feed = {column, 0, NULL};
    const struct mapping *map = mapping_of(args, name);
    if (map) {
        map_used[map - args->map] = true;
        if (map->input == MAPPED_OWN) {
            return true;
        }
        feed.input = map->input;
        feed.unit = map->unit;
        return add_feed(args, columns, &feed, name);
    }
    bool mapped_when = args->when_column.at != NULL;
    if (mapped_when && same_text(args->when_column, hw_text_trimmed(name))) {
        columns->when = (long)column;
        return true;
    }
    if (mapped_when && args->time_column.at &&
        same_text(args->time_column, hw_text_trimmed(name))) {
        columns->time = (long)column;
        return true;
    }
    if (!mapped_when &&
        column_folds_to("when", hw_text_trimmed(name).at, hw_text_trimmed(name).n)) {
        columns->when = (long)column;
    }
    if (args->tank_column.at && same_text(args->tank_column, hw_text_trimmed(name))) {
        columns->tank = (long)column;
        return true;
    }
    if (!args->tank_column.at &&
        column_folds_to("tank", hw_text_trimmed(name).at, hw_text_trimmed(name).n)) {
        columns->tank = (long)column;
    }
    bool feeds =
        column_match(args->calc, name, &feed.input, &feed.unit) && !mapped(args, feed.input);
    return !feeds || add_feed(args, columns, &feed, name);
}

bool columns_feed(const struct columns *columns, const struct hw_calc *calc, size_t input)
{
    for (size_t i = 0; i < columns->n_feed; i++) {
        if (columns->feed[i].input == hw_input_first(calc, input)) {
            return true;
        }
    }
    return false;
}

static bool is_used(const struct columns *columns, size_t column)
{
    for (size_t i = 0; i < columns->n_feed; i++) {
        if (columns->feed[i].column == column) {
            return true;
        }
    }
    long at = (long)column;
    return at == columns->when || at == columns->time || at == columns->tank;
}

/* What is left over when all columns are read; not those whose input --map feeds. */
static bool judge_others(const struct args *args, const struct columns *columns)
{
    struct csv_cell cell;
    struct feed feed = {0, 0, NULL};
    size_t column = 0;
    bool fed[HW_INPUTS] = {false};
    bool fine = true;
    for (size_t i = 0; i < args->calc->n_inputs; i++) {
        fed[i] = columns_feed(columns, args->calc, i);
    }
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell); column++) {
        if (!is_used(columns, column) && !mapping_of(args, cell.text) &&
            !column_match(args->calc, cell.text, &feed.input, &feed.unit)) {
            fine = column_judge(args, fed, hw_text_trimmed(cell.text)) && fine;
        }
    }
    return fine;
}

static bool maps_are_used(const struct args *args, const bool *map_used, const char *file)
{
    for (size_t i = 0; i < args->n_maps; i++) {
        if (!map_used[i]) {
            char shown[SHOWN_MAX];
            show_text(args->map[i].column, shown);
            complain("--map: %s has no column '%s'", file, shown);
            return false;
        }
    }
    return true;
}

/* False with a message when --map names a time or a tank that is not there. */
static bool when_is_there(const struct args *args, const struct columns *columns, const char *file)
{
    const struct {
        struct hw_text name;
        long column;
    } asked[] = {{args->when_column, columns->when},
                 {args->time_column, columns->time},
                 {args->tank_column, columns->tank}};
    for (size_t i = 0; i < sizeof asked / sizeof asked[0]; i++) {
        if (asked[i].name.at && asked[i].column == NO_COLUMN) {
            char shown[SHOWN_MAX];
            show_text(asked[i].name, shown);
            complain("--map: %s has no column '%s'", file, shown);
            return false;
        }
    }
    return true;
}

static bool header_has(const struct columns *columns, const char *name)
{
    struct csv_cell cell;
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell);) {
        if (column_folds_to(name, hw_text_trimmed(cell.text).at, hw_text_trimmed(cell.text).n)) {
            return true;
        }
    }
    return false;
}

static bool name_is_free(const struct args *args, const struct columns *columns, const char *file,
                         const char *plain)
{
    char name[2 * COLUMN_NAME_MAX];
    (void)snprintf(name, sizeof name, "%s%s", args->prefix, plain);
    if (header_has(columns, name)) {
        complain("%s has a column '%s' already: name the new ones with --prefix WORD", file, name);
        return false;
    }
    return true;
}

/* Names of appended columns must be free. */
static bool names_are_free(const struct args *args, const struct columns *columns, const char *file)
{
    static const char *const parts[] = {"", "_low", "_high"};
    const struct hw_calc *calc = args->calc;
    for (size_t i = 0; i < calc->n_results; i++) {
        for (size_t k = 0; args->only[i] && k < (args->spread ? 3 : 1); k++) {
            char plain[COLUMN_NAME_MAX];
            column_name(calc->results[i].name, parts[k], calc->results[i].unit, plain);
            if (!name_is_free(args, columns, file, plain)) {
                return false;
            }
        }
    }
    return name_is_free(args, columns, file, "cautions") &&
           name_is_free(args, columns, file, "problem");
}

bool columns_read(const struct args *args, struct csv_record header, char separator,
                  const char *file, struct columns *columns)
{
    bool map_used[MAPS_MAX] = {false};
    struct csv_cell cell;
    *columns = (struct columns){.header = header,
                                .separator = separator,
                                .when = NO_COLUMN,
                                .time = NO_COLUMN,
                                .tank = NO_COLUMN};
    for (size_t at = 0; csv_next_cell(&header, separator, &at, &cell); columns->n++) {
        if (!read_column(args, columns->n, cell.text, map_used, columns)) {
            return false;
        }
    }
    if (!maps_are_used(args, map_used, file) || !when_is_there(args, columns, file) ||
        !judge_others(args, columns)) {
        return false;
    }
    if (columns->n_feed == 0) {
        complain("no column of %s feeds %s: is the first line a header? --map COLUMN=INPUT names "
                 "foreign ones",
                 file, args->calc->name);
        return false;
    }
    return args->format == FORMAT_JSONL || args->format == FORMAT_LOG ||
           args->format == FORMAT_VALUE || names_are_free(args, columns, file);
}

struct hw_text columns_cell(const struct columns *columns, const struct csv_record *record,
                            long column, char *room, size_t size)
{
    struct csv_cell cell = {.quoted = false};
    size_t at = 0;
    for (long i = 0; csv_next_cell(record, columns->separator, &at, &cell); i++) {
        if (i == column) {
            bool fits = cell.text.n <= size;
            return (struct hw_text){fits ? room : NULL, fits ? csv_unquote(&cell, room) : 0};
        }
    }
    return (struct hw_text){room, 0};
}

struct hw_text columns_when(const struct columns *columns, const struct csv_record *record,
                            char room[COLUMNS_WHEN])
{
    const size_t half = COLUMNS_WHEN / 2;
    struct hw_text date = columns_cell(columns, record, columns->when, room, half);
    if (columns->time == NO_COLUMN || date.n == 0) {
        return date.at ? hw_text_trimmed(date) : date;
    }
    char time[COLUMNS_WHEN / 2];
    struct hw_text hour = columns_cell(columns, record, columns->time, time, sizeof time);
    date = hw_text_trimmed(date);
    if (hour.n == 0) {
        return hour.at ? date : hour;
    }
    hour = hw_text_trimmed(hour);
    memmove(room, date.at, date.n);
    room[date.n] = 'T';
    memcpy(room + date.n + 1, hour.at, hour.n);
    return (struct hw_text){room, date.n + 1 + hour.n};
}

/* The first column with one of these names, as it is written; "" when there is none that can be
 * typed. */
static void find_named(const struct columns *columns, const char *const words[],
                       char shown[SHOWN_MAX])
{
    struct csv_cell cell;
    for (size_t at = 0; csv_next_cell(&columns->header, columns->separator, &at, &cell);) {
        struct hw_text name = hw_text_trimmed(cell.text);
        for (size_t i = 0; words[i]; i++) {
            if (column_folds_to(words[i], name.at, name.n) && show_text(name, shown)) {
                return;
            }
        }
    }
    shown[0] = '\0';
}

void columns_hint_when(const struct columns *columns, char text[COLUMNS_HINT])
{
    static const char *const dates[] = {"date", "day", NULL};
    static const char *const times[] = {"time", "hour", "clock", NULL};
    char date[SHOWN_MAX];
    char time[SHOWN_MAX];
    find_named(columns, dates, date);
    find_named(columns, times, time);
    bool any = date[0] != '\0' || time[0] != '\0';
    bool both = date[0] != '\0' && time[0] != '\0';
    (void)snprintf(text, COLUMNS_HINT, "%s%s%s%s%s", any ? "--map '" : "", date, both ? "+" : "",
                   time, any ? "=when'" : "");
}
