/* tank_rows.c - finds tanks by name while rows go by. A table of slots leads from the hash of a
 * name to its row, as far in the text as it stands there: a lookup costs the same in any file. */
#include "cli/tank_rows.h"

#include "cli/stream.h"
#include "cli/wording.h"

#include <string.h>

enum { SLOTS_MAX = 1 << 20 };

static struct tank_file file;
static size_t slots;             /* a power of two, more than the rows of the file */
static uint32_t slot[SLOTS_MAX]; /* 1 + where a row begins in the text; 0: free */

/* What the header tells of each input of the calculation at hand. */
static struct hw_written told[HW_INPUTS];
static struct hw_text like[HW_INPUTS];

/* FNV-1a. */
static size_t hash_of(struct hw_text name)
{
    uint32_t hash = 2166136261U;
    for (size_t i = 0; i < name.n; i++) {
        hash = (hash ^ (unsigned char)name.at[i]) * 16777619U;
    }
    return (hash ^ hash >> 16) % slots;
}

/* The row that begins at that slot's place. */
static struct csv_record row_at(size_t at)
{
    struct csv_record row;
    size_t used = 0;
    size_t begin = slot[at] - 1;
    (void)csv_find_record(file.text + begin, file.n - begin, ',', true, &row, &used);
    return row;
}

/* The slot that holds a name, or the free one where it belongs. */
static size_t slot_of(struct hw_text name)
{
    char room[TANK_NAME_MAX];
    size_t at = hash_of(name);
    while (slot[at] != 0) {
        struct csv_record row = row_at(at);
        struct hw_text other = tank_file_tank(&file, &row, room);
        if (other.n == name.n && memcmp(other.at, name.at, name.n) == 0) {
            break;
        }
        at = (at + 1) % slots;
    }
    return at;
}

static bool index_rows(void)
{
    char room[TANK_NAME_MAX];
    struct csv_record row;
    bool fine = true;
    memset(slot, 0, sizeof slot[0] * slots);
    while (tank_file_next(&file, &row, &fine)) {
        struct hw_text name = tank_file_tank(&file, &row, room);
        size_t at = name.n > 0 ? slot_of(name) : 0;
        if (name.n > 0 && slot[at] != 0) {
            char shown[SHOWN_MAX];
            (void)show_text(name, shown);
            complain("%s has two rows for tank '%s': keep one", file.name, shown);
            return false;
        }
        if (name.n > 0) {
            slot[at] = (uint32_t)(row.at - file.text) + 1;
        }
    }
    return fine;
}

/* The header taken as if it were a row: each input that a column tells has its cell. */
static bool read_columns(const struct hw_calc *calc)
{
    struct tank_take take = {calc, told, like};
    size_t which = 0;
    memset(told, 0, sizeof told);
    memset(like, 0, sizeof like);
    enum tank_fault fault = tank_file_take(&file, &file.header, &take, &which);
    if (fault == TANK_TWICE) {
        complain("two columns of %s feed %s: keep one", file.name, calc->inputs[which].name);
    } else if (fault != TANK_FINE) {
        complain("%s has broken quotes in its first line", file.name);
    }
    return fault == TANK_FINE;
}

bool tank_rows_read(const struct args *args)
{
    if (!tank_file_read(tank_file_name(args), &file) || !read_columns(args->calc)) {
        return false;
    }
    for (slots = 2; slots < file.n; slots *= 2) {
    }
    return index_rows();
}

bool tank_rows_tell(const struct hw_calc *calc, size_t input)
{
    return told[hw_input_first(calc, input)].from == HW_FROM_TANK;
}

bool tank_rows_like(const struct hw_calc *calc, size_t input)
{
    return like[hw_input_first(calc, input)].at != NULL;
}

const char *tank_rows_take(struct hw_text tank, const struct tank_take *take)
{
    size_t which = 0;
    size_t at = slot_of(tank);
    if (slot[at] == 0) {
        return "unknown-tank";
    }
    struct csv_record row = row_at(at);
    return tank_file_take(&file, &row, take, &which) == TANK_FINE ? NULL : "tank-row";
}
