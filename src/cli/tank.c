/* tank.c - finds the row of one tank in the tanks file: CSV, a column `tank`, the rest named as
 * inputs. */
#include "cli/tank.h"

#include "cli/column_name.h"
#include "cli/csv.h"
#include "cli/input.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/wording.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { PATH_LENGTH = 4096, NAME_LENGTH = 256 };

/* The whole file stays in memory: the values found are read later. */
static struct input file;

/* The name of the file in use. */
static const char *tank_file(const struct args *args)
{
    static char path[PATH_LENGTH];
    const char *named = args->tanks ? args->tanks : getenv("HOLDWATER_TANKS");
    if (named && named[0] != '\0') {
        return named;
    }
    const char *config = getenv("XDG_CONFIG_HOME");
    const char *home = getenv("HOME");
    bool absolute =
        config && config[0] == '/'; /* a relative one is to be ignored, says its specification */
    int n = snprintf(path, sizeof path, "%s%s/holdwater/tanks.csv",
                     absolute ? config
                     : home   ? home
                              : "",
                     absolute ? "" : "/.config");
    return n > 0 && (size_t)n < sizeof path ? path : "";
}

/* Reads the whole file. */
static bool read_all(const char *name)
{
    if (!input_open(&file, name)) {
        return false;
    }
    bool fine = true;
    while (fine && !file.at_end) {
        fine = input_fill(&file);
        if (fine && file.end > CSV_RECORD_MAX) {
            complain("%s is too large for a tanks file (over 1 MiB)", name);
            fine = false;
        }
    }
    input_close(&file);
    input_skip_mark(&file);
    return fine;
}

/* The next record of the file; false at its end, or with a message and *fine false. */
static bool next_record(const char *name, struct csv_record *record, bool *fine)
{
    size_t used = 0;
    if (file.begin == file.end) {
        return false;
    }
    enum csv_end end =
        csv_find_record(file.text + file.begin, file.end - file.begin, ',', true, record, &used);
    if (end != CSV_RECORD) {
        complain("%s ends inside quotes", name);
        *fine = false;
        return false;
    }
    file.begin += used;
    return true;
}

static bool cell_at(const struct csv_record *record, size_t column, struct csv_cell *cell)
{
    size_t at = 0;
    for (size_t i = 0; csv_next_cell(record, ',', &at, cell); i++) {
        if (i == column) {
            return true;
        }
    }
    return false;
}

/* The text of a cell as a name: without quotes and the blanks around it. */
static struct hw_text cell_name(const struct csv_cell *cell, char room[NAME_LENGTH])
{
    if (cell->text.n >= NAME_LENGTH) {
        return (struct hw_text){room, 0};
    }
    return hw_text_trimmed((struct hw_text){room, csv_unquote(cell, room)});
}

static bool is_text(struct hw_text text, const char *word)
{
    return text.n == strlen(word) && memcmp(text.at, word, text.n) == 0;
}

/* The column called tank; false when there is none. */
static bool find_tank_column(const struct csv_record *header, size_t *column)
{
    struct csv_cell cell;
    char room[NAME_LENGTH];
    size_t at = 0;
    for (*column = 0; csv_next_cell(header, ',', &at, &cell); (*column)++) {
        struct hw_text name = cell_name(&cell, room);
        if (column_folds_to("tank", name.at, name.n)) {
            return true;
        }
    }
    return false;
}

/* Takes one cell for an input that was not given. False when another column of the row fed it
 * before. */
static bool take_cell(struct args *args, size_t first, struct hw_text text,
                      const struct hw_unit *unit)
{
    const struct hw_calc *calc = args->calc;
    if (args->written[first].from == HW_FROM_TANK) {
        complain("two columns of the tanks file feed %s: keep one", calc->inputs[first].name);
        return false;
    }
    for (size_t i = first; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        if (!args->written[i].text.at && args->written[i].from != HW_SOLVED) {
            args->written[i] = (struct hw_written){text, unit, HW_FROM_TANK};
        }
    }
    return true;
}

/* Gives a cell to the inputs that its column tells. One that only has an input's name is kept in
 * mind: it is not that input. */
static bool take_column(struct args *args, struct hw_text name, struct hw_text text)
{
    const struct hw_calc *calc = args->calc;
    const struct hw_unit *unit = NULL;
    bool taken = false;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        if (input->tank && hw_input_first(calc, i) == i &&
            column_tells(input->tank, input->kind, name, &unit)) {
            if (!take_cell(args, i, text, unit)) {
                return false;
            }
            taken = true;
        }
    }
    size_t like = 0;
    if (!taken && column_match(calc, name, &like, &unit)) {
        args->left_in_tank[like] = text;
    }
    return true;
}

static size_t cells_of(const struct csv_record *record, bool *broken)
{
    struct csv_cell cell;
    size_t at = 0;
    size_t n = 0;
    while (csv_next_cell(record, ',', &at, &cell)) {
        *broken = *broken || cell.broken;
        n++;
    }
    return n;
}

/* Takes the cells of the tank's row that tell its water; empty ones say nothing. */
static bool take_row(struct args *args, const struct csv_record *header,
                     const struct csv_record *row)
{
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_position = 0;
    bool broken = false;
    if (cells_of(header, &broken) != cells_of(row, &broken) || broken) {
        complain("the tanks file: the row of this tank %s: a comma too many or too few moves every "
                 "value",
                 broken ? "has broken quotes" : "has another number of cells than the header");
        return false;
    }
    while (csv_next_cell(header, ',', &name_at, &name) &&
           csv_next_cell(row, ',', &cell_position, &cell)) {
        struct hw_text text = hw_text_trimmed(cell.text);
        if (text.n > 0 && !take_column(args, name.text, text)) {
            return false;
        }
    }
    return true;
}

static bool no_such_tank(const struct args *args, const char *name, struct suggestions *near)
{
    char shown[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text((struct hw_text){args->tank, strlen(args->tank)}, shown);
    suggest_text(near, "", suggestion);
    complain("%s has no tank '%s'%s", name, shown, suggestion);
    return false;
}

/* Goes through the rows. The names of tanks that are near the one asked for are kept for the
 * message. */
static bool find_row(struct args *args, const char *name, const struct csv_record *header,
                     size_t column)
{
    static char names[SUGGEST_MAX][SHOWN_MAX]; /* those that are near */
    struct suggestions near = {.word = args->tank, .n = 0};
    struct csv_record record;
    struct csv_record found = {NULL, 0, false};
    struct csv_cell cell;
    char room[NAME_LENGTH];
    size_t kept = 0;
    bool fine = true;
    while (next_record(name, &record, &fine)) {
        if (!cell_at(&record, column, &cell)) {
            continue;
        }
        struct hw_text tank = cell_name(&cell, room);
        if (is_text(tank, args->tank)) {
            if (found.at) {
                complain("%s has two rows for tank '%s': keep one", name, args->tank);
                return false;
            }
            found = record;
        } else if (near.n < SUGGEST_MAX && kept < SUGGEST_MAX) {
            if (show_text(tank, names[kept])) { /* else it could not be typed as it is told */
                suggest_weigh(&near, names[kept]);
                kept = near.n;
            }
        }
    }
    if (!fine || !found.at) {
        return fine ? no_such_tank(args, name, &near) : false;
    }
    return take_row(args, header, &found);
}

/* True for a file that nobody named and that is not there. */
static bool is_absent(const struct args *args, const char *name)
{
    const char *set = getenv("HOLDWATER_TANKS");
    return !args->tanks && !(set && set[0] != '\0') && access(name, F_OK) != 0 &&
           (errno == ENOENT || errno == ENOTDIR);
}

bool tank_fill(struct args *args)
{
    const char *name = tank_file(args);
    struct csv_record header;
    size_t column = 0;
    bool fine = true;
    if (is_absent(args, name)) {
        complain("there is no tanks file %s: --tank goes into the log as a name alone, nothing is "
                 "known of its water",
                 name);
        return true;
    }
    if (!read_all(name)) {
        return false;
    }
    bool named = next_record(name, &header, &fine) && find_tank_column(&header, &column);
    if (!named && fine) {
        complain("%s is no tanks file: its first line must name the columns, one of them tank",
                 name);
    }
    return named && find_row(args, name, &header, column);
}

bool tank_known(const char *tank, const char *tanks)
{
    static const struct hw_calc nothing = {.name = "tank"};
    static struct args args;
    args = (struct args){.calc = &nothing, .tank = tank, .tanks = tanks};
    return is_absent(&args, tank_file(&args)) || tank_fill(&args);
}

static bool tells_water(const char *name)
{
    static const char *const words[] = {"volume", "temp", "salinity", "alkalinity"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (strcmp(words[i], name) == 0) {
            return true;
        }
    }
    return false;
}

void tank_mention(const struct args *args, size_t input)
{
    struct hw_text text = args->left_in_tank[input];
    char option[OPTION_MAX];
    char shown[SHOWN_MAX];
    if (!text.at || args->written[input].text.at || args->written[input].from == HW_SOLVED ||
        is_text(text, "none")) {
        return;
    }
    option_name(args->calc->inputs[input].name, option);
    if (tells_water(args->calc->inputs[input].name)) {
        complain("the tank's %s is not that of the water %s asks about: write --%s",
                 args->calc->inputs[input].name, args->calc->name, option);
        return;
    }
    show_text(text, shown);
    complain("the tanks file says %s '%s', which may be out of date and is not taken: write --%s "
             "as it is now",
             args->calc->inputs[input].name, shown, option);
}

bool tank_agrees(const struct args *args, const struct hw_question *question)
{
    bool agrees = true;
    for (size_t i = 0; i < args->calc->n_inputs; i++) {
        const struct hw_input *input = &args->calc->inputs[i];
        struct hw_text text = args->left_in_tank[i];
        if (text.at && question->from[i] == HW_FROM_PRESET && !is_text(text, "none") &&
            !tells_water(input->name)) {
            char option[OPTION_MAX];
            char preset[ALLOWED_MAX];
            option_name(input->name, option);
            if (input->words) {
                words_of(input, input->preset, preset, sizeof preset);
            } else {
                amount_text(input->preset, 6, input->unit, preset);
            }
            complain("%s would be assumed instead: write --%s", preset, option);
            agrees = false;
        }
    }
    return agrees;
}
