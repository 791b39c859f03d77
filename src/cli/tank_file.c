/* tank_file.c - reads the tanks file and takes what a row tells. */
#include "cli/tank_file.h"

#include "cli/column_name.h"
#include "cli/input.h"
#include "cli/stream.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { PATH_LENGTH = 4096 };

/* The whole file stays in memory: the values found are read later. */
static struct input text;

const char *tank_file_name(const struct args *args)
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
    bool fits = n > 0 && (size_t)n < sizeof path;
    return fits ? path : "(the name of the home folder is too long for any file in it)";
}

/* Reads the whole text. */
static bool read_all(const char *name)
{
    if (!input_open(&text, name)) {
        return false;
    }
    bool fine = true;
    while (fine && !text.at_end) {
        fine = input_fill(&text);
        if (fine && text.end > CSV_RECORD_MAX) {
            complain("%s is too large for a tanks file (over 1 MiB)", name);
            fine = false;
        }
    }
    input_close(&text);
    input_skip_mark(&text);
    return fine;
}

/* The next record of the file; false at its end, or with a message and *fine false. */
static bool next_record(const char *name, struct csv_record *record, bool *fine)
{
    size_t used = 0;
    if (text.begin == text.end) {
        return false;
    }
    enum csv_end end =
        csv_find_record(text.text + text.begin, text.end - text.begin, ',', true, record, &used);
    if (end != CSV_RECORD) {
        complain("%s ends inside quotes: close the last quote that opens, or take it out", name);
        *fine = false;
        return false;
    }
    text.begin += used;
    return true;
}

bool tank_file_next(const struct tank_file *file, struct csv_record *row, bool *fine)
{
    return next_record(file->name, row, fine);
}

/* The text of a cell as a name: without quotes and the blanks around it. */
static struct hw_text cell_name(const struct csv_cell *cell, char room[TANK_NAME_MAX])
{
    if (cell->text.n >= TANK_NAME_MAX) {
        return (struct hw_text){room, 0};
    }
    return hw_text_trimmed((struct hw_text){room, csv_unquote(cell, room)});
}

struct hw_text tank_file_tank(const struct tank_file *file, const struct csv_record *row,
                              char room[TANK_NAME_MAX])
{
    struct csv_cell cell;
    size_t at = 0;
    for (size_t i = 0; csv_next_cell(row, ',', &at, &cell); i++) {
        if (i == file->column) {
            return cell_name(&cell, room);
        }
    }
    return (struct hw_text){room, 0};
}

/* The column called tank; false when there is none. */
static bool find_tank_column(const struct csv_record *header, size_t *column)
{
    struct csv_cell cell;
    char room[TANK_NAME_MAX];
    size_t at = 0;
    for (*column = 0; csv_next_cell(header, ',', &at, &cell); (*column)++) {
        struct hw_text name = cell_name(&cell, room);
        if (column_folds_to("tank", name.at, name.n)) {
            return true;
        }
    }
    return false;
}

bool tank_file_read(const char *name, struct tank_file *file)
{
    bool fine = true;
    *file = (struct tank_file){.name = name};
    if (!read_all(name)) {
        return false;
    }
    file->text = text.text;
    file->n = text.end;
    bool named =
        next_record(name, &file->header, &fine) && find_tank_column(&file->header, &file->column);
    if (!named && fine) {
        complain("%s is no tanks file: its first line must name the columns, one of them tank",
                 name);
    }
    return named;
}

/* Takes one cell for an input where nothing is written. False when another column of the row fed it
 * before. */
static bool take_cell(const struct tank_take *take, size_t first, struct hw_text cell,
                      const struct hw_unit *unit)
{
    if (take->written[first].from == HW_FROM_TANK) {
        return false;
    }
    for (size_t i = first; i < take->calc->n_inputs; i = hw_input_next(take->calc, i)) {
        if (!take->written[i].text.at && take->written[i].from != HW_SOLVED) {
            take->written[i] = (struct hw_written){cell, unit, HW_FROM_TANK};
        }
    }
    return true;
}

/* Gives a cell to the inputs that its column tells. One that only has an input's name is kept in
 * mind: it is not that input. False with the input that is told twice. */
static bool take_column(const struct tank_take *take, struct hw_text name, struct hw_text cell,
                        size_t *which)
{
    const struct hw_calc *calc = take->calc;
    const struct hw_unit *unit = NULL;
    bool taken = false;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        if (input->tank && hw_input_first(calc, i) == i &&
            column_tells(input->tank, input->kind, name, &unit)) {
            *which = i;
            if (!take_cell(take, i, cell, unit)) {
                return false;
            }
            taken = true;
        }
    }
    size_t like = 0;
    if (!taken && column_match(calc, name, &like, &unit)) {
        take->left[like] = cell;
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

enum tank_fault tank_file_take(const struct tank_file *file, const struct csv_record *row,
                               const struct tank_take *take, size_t *which)
{
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_at = 0;
    bool broken = false;
    if (cells_of(&file->header, &broken) != cells_of(row, &broken) || broken) {
        return broken ? TANK_QUOTES : TANK_CELLS;
    }
    while (csv_next_cell(&file->header, ',', &name_at, &name) &&
           csv_next_cell(row, ',', &cell_at, &cell)) {
        struct hw_text tells = hw_text_trimmed(cell.text);
        if (tells.n > 0 && !take_column(take, name.text, tells, which)) {
            return TANK_TWICE;
        }
    }
    return TANK_FINE;
}
