/* change_calc.c - what water changes do to a level, and what the new water must hold to keep it. */
#include "calc/change_rounds.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    CHANGE_AFTER, CHANGE_LOWEST, CHANGE_FRESH_NEEDED, CHANGE_ADD, CHANGE_ADD_LIQUID,
    CHANGE_SHARE_NEEDED, CHANGE_TIMES_NEEDED, CHANGE_RESULTS
};
/* clang-format on */

static const char *const method_words[] = {"batch", "flow", NULL};

enum { CHANGE_TAKE_OR_SHARE = 1, CHANGE_TIMES_MAX = 100 };

#define LEVEL .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = HW_CHANGE_LEVEL_MIN, .hi = 1e5

/* clang-format off */
static const struct hw_input inputs[CHANGE_INPUTS] = {
    [CHANGE_VOLUME] = {.name = "volume", .tank = "volume",
     .unit = "L", .kind = HW_VOLUME, .lo = 0.1, .hi = 1e5,
     .help = "water in the tank and its filter, without rock and sand; outside this doubt the "
     "unit"},
    [CHANGE_TAKE] = {.name = "take", .unit = "L", .kind = HW_VOLUME, .lo = 0.001, .hi = 1e5,
     .group = CHANGE_TAKE_OR_SHARE, .help = "water of one round; the whole tank at most, with flow "
     "ten times as much"},
    [CHANGE_SHARE] = {.name = "share", .unit = "%", .kind = HW_SHARE, .lo = 0.01,
     .hi = 100 * HW_CHANGE_EXCHANGED_MAX_FLOW, .group = CHANGE_TAKE_OR_SHARE,
     .help = "share of one round; above 100 % only with flow, where 1000 % leaves hardly any of "
     "the old water"},
    [CHANGE_METHOD] = {.name = "method", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = method_words, .need = HW_PRESET, .preset = HW_CHANGE_BATCH,
     .help = "water out, then in; or in and out at the same time, well mixed"},
    [CHANGE_TIMES] = {.name = "times", .unit = "", .kind = HW_COUNT, .lo = HW_CHANGE_ROUNDS_MIN,
     .hi = CHANGE_TIMES_MAX, .need = HW_PRESET, .preset = 1, .help = "equal rounds, one after the "
     "other; plan no further than a hundred"},
    [CHANGE_NOW] = {.name = "now", LEVEL, .help = "level in the tank before; more than 100 g/L is "
     "no treatment"},
    [CHANGE_FRESH] = {.name = "fresh", LEVEL, .need = HW_PRESET, .help = "level in the new water "
     "as it goes in; plain water holds 0"},
    [CHANGE_KEEP] = {.name = "keep", LEVEL, .need = HW_OPTIONAL, .help = "level that each round is "
     "to end at"},
    [CHANGE_FLOOR] = {.name = "floor", LEVEL, .need = HW_OPTIONAL, .help = "least level that still "
     "treats; the label has it"},
    [CHANGE_CEILING] = {.name = "ceiling", LEVEL, .need = HW_OPTIONAL,
     .help = "highest level that the fish bear; the label has it"},
    [CHANGE_GOAL] = {.name = "goal", LEVEL, .need = HW_OPTIONAL, .help = "level to reach by "
     "changes with water at fresh"},
    [CHANGE_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = 1e-3, .hi = 1000, .need = HW_OPTIONAL, .help = "medicine in the "
     "stock solution; below 0.001 it is no stock, above 1000 there is none"},
};

static const struct hw_result results[CHANGE_RESULTS] = {
    [CHANGE_AFTER] = {.name = "after", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "level after the last round, filled up with water at fresh"},
    [CHANGE_LOWEST] = {.name = "lowest", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "lowest level on the way, mixed, filled up with water at fresh"},
    [CHANGE_FRESH_NEEDED] = {.name = "fresh_needed", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .safe = -1, .sometimes = true, .help = "level that the new water of the first "
     "round must hold to end at keep; below 0: already above"},
    [CHANGE_ADD] = {.name = "add", .unit = "mg", .kind = HW_MASS, .digits = 3, .safe = -1,
     .sometimes = true, .help = "of medicine, into the new water of that round"},
    [CHANGE_ADD_LIQUID] = {.name = "add_liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .help = "of the stock solution, the same"},
    [CHANGE_SHARE_NEEDED] = {.name = "share_needed", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "to reach the goal in one round"},
    [CHANGE_TIMES_NEEDED] = {.name = "times_needed", .unit = "", .kind = HW_COUNT, .digits = 1,
     .safe = 1, .sometimes = true, .help = "rounds of this size to reach the goal or pass it"},
};
/* clang-format on */

static const char *const sources[] = {"conservation", "common-practice", NULL};

static uint64_t window_notes(const struct change_rounds *change, const double in[])
{
    double highest = change->after > change->now ? change->after : change->now;
    return note_if(below(change->lowest, in[CHANGE_FLOOR]), HW_CHANGE_NOTE_BELOW_FLOOR) |
           note_if(below(change->after, in[CHANGE_FLOOR]), HW_CHANGE_NOTE_ENDS_BELOW_FLOOR) |
           note_if(above(highest, in[CHANGE_CEILING]), HW_CHANGE_NOTE_ABOVE_CEILING) |
           note_if(above(change->fresh_needed, in[CHANGE_CEILING]),
                   HW_CHANGE_NOTE_FRESH_TOO_STRONG) |
           note_if(below(in[CHANGE_KEEP], in[CHANGE_FLOOR]) ||
                       above(in[CHANGE_KEEP], in[CHANGE_CEILING]),
                   HW_CHANGE_NOTE_KEEP_OUTSIDE);
}

static uint64_t dose_notes(const struct change_rounds *change, const double in[])
{
    bool keep = !isnan(in[CHANGE_KEEP]);
    bool enough = keep && !below(change->fresh_needed, 0) && isnan(change->add);
    return note_if(!isnan(change->add), HW_CHANGE_NOTE_PRE_DOSE) |
           note_if(keep, HW_CHANGE_NOTE_TEST_LEVEL) |
           note_if(below(change->fresh_needed, 0), HW_CHANGE_NOTE_ALREADY_ABOVE) |
           note_if(enough, HW_CHANGE_NOTE_FRESH_ENOUGH) |
           note_if(keep && change->rounds > 1, HW_CHANGE_NOTE_LATER_ROUNDS) |
           note_if(below_limit(change->liquid, HW_LIMIT_DRAW_LEAST), HW_CHANGE_NOTE_SMALL_LIQUID) |
           note_if(!keep && !isnan(in[CHANGE_STRENGTH]), HW_CHANGE_NOTE_KEEP_UNSAID);
}

static uint64_t goal_notes(const struct change_rounds *change, const double in[])
{
    bool missing = isnan(change->exchange_needed) || isnan(change->rounds_needed);
    return note_if(!isnan(in[CHANGE_GOAL]) && missing, HW_CHANGE_NOTE_GOAL_UNREACHABLE);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct change_rounds *change, const double in[])
{
    bool batch = change->method == HW_CHANGE_BATCH;
    bool too_much = isnan(change->kept);
    return note_if(too_much && batch, HW_CHANGE_NOTE_MORE_THAN_ALL) |
           note_if(too_much && !batch, HW_CHANGE_NOTE_FLOW_TOO_LONG) |
           note_if(above(in[CHANGE_FLOOR], in[CHANGE_CEILING]), HW_CHANGE_NOTE_FLOOR_OVER_CEILING);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct change_rounds change = change_rounds(in);
    *notes |= refusals(&change, in);
    if (*notes == 0) {
        *notes |= window_notes(&change, in) | dose_notes(&change, in) | goal_notes(&change, in);
    }
    out[CHANGE_AFTER] = change.after;
    out[CHANGE_LOWEST] = change.lowest;
    out[CHANGE_FRESH_NEEDED] = change.fresh_needed;
    out[CHANGE_ADD] = change.add;
    out[CHANGE_ADD_LIQUID] = change.liquid;
    out[CHANGE_SHARE_NEEDED] = 100 * change.exchange_needed;
    out[CHANGE_TIMES_NEEDED] = change.rounds_needed;
}

/* clang-format off */
const struct hw_calc hw_calc_change = {
    .name = "change",
    .purpose = "what water changes do to a level, and what the new water must hold to keep it",
    .inputs = inputs, .n_inputs = CHANGE_INPUTS, .results = results, .n_results = CHANGE_RESULTS,
    .notes = hw_change_notes, .n_notes = HW_CHANGE_NOTES, .sources = sources, .answer = answer,
    .work = change_work,
};
/* clang-format on */
