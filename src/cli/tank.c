/* tank.c - finds the row of one tank in the tanks file. */
#include "cli/tank.h"

#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/tank_file.h"
#include "cli/wording.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static bool is_text(struct hw_text text, const char *word)
{
    return text.n == strlen(word) && memcmp(text.at, word, text.n) == 0;
}

/* Takes the cells of the tank's row that tell its water. */
static bool take_row(struct args *args, const struct tank_file *file, const struct csv_record *row)
{
    struct tank_take take = {args->calc, args->written, args->left_in_tank};
    size_t which = 0;
    enum tank_fault fault = tank_file_take(file, row, &take, &which);
    if (fault == TANK_TWICE) {
        complain("two columns of the tanks file feed %s: keep one", args->calc->inputs[which].name);
    } else if (fault != TANK_FINE) {
        complain("%s: the row of tank '%s' %s: a comma too many or too few moves every value",
                 file->name, args->tank,
                 fault == TANK_QUOTES ? "has broken quotes"
                                      : "has another number of cells than the header");
    }
    return fault == TANK_FINE;
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
static bool find_row(struct args *args, const struct tank_file *file)
{
    static char names[SUGGEST_MAX][SHOWN_MAX]; /* those that are near */
    struct suggestions near = {.word = args->tank, .n = 0};
    struct csv_record row;
    struct csv_record found = {NULL, 0, false};
    char room[TANK_NAME_MAX];
    size_t kept = 0;
    bool fine = true;
    while (tank_file_next(file, &row, &fine)) {
        struct hw_text tank = tank_file_tank(file, &row, room);
        if (is_text(tank, args->tank)) {
            if (found.at) {
                complain("%s has two rows for tank '%s': keep one", file->name, args->tank);
                return false;
            }
            found = row;
        } else if (tank.n > 0 && near.n < SUGGEST_MAX && kept < SUGGEST_MAX) {
            if (show_text(tank, names[kept])) { /* else it could not be typed as it is told */
                suggest_weigh(&near, names[kept]);
                kept = near.n;
            }
        }
    }
    if (!fine || !found.at) {
        return fine ? no_such_tank(args, file->name, &near) : false;
    }
    return take_row(args, file, &found);
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
    const char *name = tank_file_name(args);
    struct tank_file file;
    if (is_absent(args, name)) {
        complain("there is no tanks file %s: --tank goes into the log as a name alone, nothing is "
                 "known of its water",
                 name);
        return true;
    }
    return tank_file_read(name, &file) && find_row(args, &file);
}

bool tank_known(const char *tank, const char *tanks)
{
    static const struct hw_calc nothing = {.name = "tank"};
    static struct args args;
    args = (struct args){.calc = &nothing, .tank = tank, .tanks = tanks};
    return is_absent(&args, tank_file_name(&args)) || tank_fill(&args);
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

size_t tank_conflict(const struct hw_question *question, const struct hw_text left[])
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (left[i].at && question->from[i] == HW_FROM_PRESET && !is_text(left[i], "none") &&
            !tells_water(question->calc->inputs[i].name)) {
            return i;
        }
    }
    return question->calc->n_inputs;
}

bool tank_agrees(const struct args *args, const struct hw_question *question)
{
    size_t i = tank_conflict(question, args->left_in_tank);
    if (i == args->calc->n_inputs) {
        return true;
    }
    const struct hw_input *input = &args->calc->inputs[i];
    char option[OPTION_MAX];
    char preset[ALLOWED_MAX];
    option_name(input->name, option);
    if (input->words) {
        words_of(input, input->preset, preset, sizeof preset);
    } else {
        amount_text(input->preset, 6, input->unit, preset);
    }
    complain("%s would be assumed instead: write --%s", preset, option);
    return false;
}
