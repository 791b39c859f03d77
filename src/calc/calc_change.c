/* calc_change.c - what water changes do to a level, and what the new water must hold to keep it. */
#include "calc/change_rounds.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

enum { AFTER, LOWEST, FRESH_NEEDED, ADD, ADD_LIQUID, SHARE_NEEDED, TIMES_NEEDED, RESULTS };

static const char *const method_words[] = {"batch", "flow", NULL};

enum { TAKE_OR_SHARE = 1, TIMES_MAX = 100 };

/* A level counts as beyond a limit when it is so by more than rounding. */
static const double noise = 1e-9;

#define LEVEL                                                                                      \
    .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = HW_CHANGE_LEVEL_MIN, .hi = 1e5, .when_input = -1

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .kind = HW_VOLUME,
                .unit_must = true,
                .lo = 0.1,
                .hi = 1e5,
                .help = "water in the tank and its filter, without rock and sand; outside this "
                        "doubt the unit",
                .need = HW_REQUIRED,
                .when_input = -1},
    [TAKE] = {.name = "take",
              .unit = "L",
              .kind = HW_VOLUME,
              .unit_must = true,
              .lo = 0.001,
              .hi = 1e5,
              .help = "water of one round; the whole tank at most, with flow ten times as much",
              .need = HW_REQUIRED,
              .group = TAKE_OR_SHARE,
              .when_input = -1},
    [SHARE] = {.name = "share",
               .unit = "%",
               .kind = HW_SHARE,
               .lo = 0.01,
               .hi = 100 * HW_CHANGE_EXCHANGED_MAX_FLOW,
               .help = "share of one round; above 100 % only with flow, where 1000 % leaves hardly "
                       "any of the old water",
               .need = HW_REQUIRED,
               .group = TAKE_OR_SHARE,
               .when_input = -1},
    [METHOD] = {.name = "method",
                .unit = "",
                .kind = HW_CHOICE,
                .lo = 0,
                .hi = 1,
                .words = method_words,
                .help = "water out, then in; or in and out at the same time, well mixed",
                .need = HW_PRESET,
                .preset = HW_CHANGE_BATCH,
                .when_input = -1},
    [TIMES] = {.name = "times",
               .unit = "",
               .kind = HW_COUNT,
               .lo = HW_CHANGE_ROUNDS_MIN,
               .hi = TIMES_MAX,
               .help = "equal rounds, one after the other; plan no further than a hundred",
               .need = HW_PRESET,
               .preset = 1,
               .when_input = -1},
    [NOW] = {LEVEL, .name = "now",
             .help = "level in the tank before; more than 100 g/L is no treatment",
             .need = HW_REQUIRED},
    [FRESH] = {LEVEL, .name = "fresh",
               .help = "level in the new water as it goes in; plain water holds 0",
               .need = HW_PRESET, .preset = 0},
    [KEEP] = {LEVEL, .name = "keep", .help = "level that each round is to end at",
              .need = HW_OPTIONAL},
    [FLOOR] = {LEVEL, .name = "floor", .help = "least level that still treats; the label has it",
               .need = HW_OPTIONAL},
    [CEILING] = {LEVEL, .name = "ceiling",
                 .help = "highest level that the fish bear; the label has it", .need = HW_OPTIONAL},
    [GOAL] = {LEVEL, .name = "goal", .help = "level to reach by changes with water at fresh",
              .need = HW_OPTIONAL},
    [STRENGTH] = {.name = "strength",
                  .unit = "mg/mL",
                  .kind = HW_CONCENTRATION,
                  .unit_must = true,
                  .lo = 1e-3,
                  .hi = 1000,
                  .help = "medicine in the stock solution; below 0.001 it is no stock, above 1000 "
                          "there is none",
                  .need = HW_OPTIONAL,
                  .when_input = -1},
};

static const struct hw_result results[RESULTS] = {
    [AFTER] = {.name = "after",
               .unit = "mg/L",
               .kind = HW_CONCENTRATION,
               .digits = 3,
               .help = "level after the last round, filled up with water at fresh"},
    [LOWEST] = {.name = "lowest",
                .unit = "mg/L",
                .kind = HW_CONCENTRATION,
                .digits = 3,
                .help = "lowest level on the way, mixed, filled up with water at fresh"},
    [FRESH_NEEDED] = {.name = "fresh_needed",
                      .unit = "mg/L",
                      .kind = HW_CONCENTRATION,
                      .digits = 3,
                      .safe = -1,
                      .sometimes = true,
                      .help = "level that the new water of the first round must hold to end at "
                              "keep; below 0: already above"},
    [ADD] = {.name = "add",
             .unit = "mg",
             .kind = HW_MASS,
             .digits = 3,
             .safe = -1,
             .sometimes = true,
             .help = "of medicine, into the new water of that round"},
    [ADD_LIQUID] = {.name = "add_liquid",
                    .unit = "mL",
                    .kind = HW_VOLUME,
                    .digits = 3,
                    .safe = -1,
                    .sometimes = true,
                    .help = "of the stock solution, the same"},
    [SHARE_NEEDED] = {.name = "share_needed",
                      .unit = "%",
                      .kind = HW_SHARE,
                      .digits = 3,
                      .safe = 1,
                      .sometimes = true,
                      .help = "to reach the goal in one round"},
    [TIMES_NEEDED] = {.name = "times_needed",
                      .unit = "",
                      .kind = HW_COUNT,
                      .digits = 1,
                      .safe = 1,
                      .sometimes = true,
                      .help = "rounds of this size to reach the goal or pass it"},
};

static const char *const sources[] = {"conservation", "common-practice", NULL};

static bool below(double level, double limit)
{
    return level < limit * (1 - noise);
}

static bool above(double level, double limit)
{
    return level > limit * (1 + noise);
}

static uint64_t window_notes(const struct change_rounds *change, const double in[])
{
    double highest = change->after > change->now ? change->after : change->now;
    return note_if(below(change->lowest, in[FLOOR]), HW_CHANGE_NOTE_BELOW_FLOOR) |
           note_if(below(change->after, in[FLOOR]), HW_CHANGE_NOTE_ENDS_BELOW_FLOOR) |
           note_if(above(highest, in[CEILING]), HW_CHANGE_NOTE_ABOVE_CEILING) |
           note_if(above(change->fresh_needed, in[CEILING]), HW_CHANGE_NOTE_FRESH_TOO_STRONG) |
           note_if(below(in[KEEP], in[FLOOR]) || above(in[KEEP], in[CEILING]),
                   HW_CHANGE_NOTE_KEEP_OUTSIDE);
}

static uint64_t dose_notes(const struct change_rounds *change, const double in[])
{
    bool keep = !isnan(in[KEEP]);
    bool enough = keep && change->fresh_needed >= 0 && isnan(change->add);
    return note_if(!isnan(change->add), HW_CHANGE_NOTE_PRE_DOSE) |
           note_if(keep, HW_CHANGE_NOTE_TEST_LEVEL) |
           note_if(change->fresh_needed < 0, HW_CHANGE_NOTE_ALREADY_ABOVE) |
           note_if(enough, HW_CHANGE_NOTE_FRESH_ENOUGH) |
           note_if(keep && change->rounds > 1, HW_CHANGE_NOTE_LATER_ROUNDS) |
           note_if(change->liquid < 1, HW_CHANGE_NOTE_SMALL_LIQUID) |
           note_if(!keep && !isnan(in[STRENGTH]), HW_CHANGE_NOTE_KEEP_UNSAID);
}

static uint64_t goal_notes(const struct change_rounds *change, const double in[])
{
    bool missing = isnan(change->exchange_needed) || isnan(change->rounds_needed);
    return note_if(!isnan(in[GOAL]) && missing, HW_CHANGE_NOTE_GOAL_UNREACHABLE);
}

static const uint64_t always =
    UINT64_C(1) << HW_CHANGE_NOTE_DOSE_ORDER | UINT64_C(1) << HW_CHANGE_NOTE_HEATER_OFF |
    UINT64_C(1) << HW_CHANGE_NOTE_MATCH_NEW_WATER | UINT64_C(1) << HW_CHANGE_NOTE_PH_DIFFERS |
    UINT64_C(1) << HW_CHANGE_NOTE_NO_DRY_SALT | UINT64_C(1) << HW_CHANGE_NOTE_ASK_VET;

/* The notes that leave no answer. */
static uint64_t refusals(const struct change_rounds *change, const double in[])
{
    bool batch = change->method == HW_CHANGE_BATCH;
    bool too_much = isnan(change->kept);
    return note_if(too_much && batch, HW_CHANGE_NOTE_MORE_THAN_ALL) |
           note_if(too_much && !batch, HW_CHANGE_NOTE_FLOW_TOO_LONG) |
           note_if(in[FLOOR] > in[CEILING], HW_CHANGE_NOTE_FLOOR_OVER_CEILING);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct change_rounds change = change_rounds(in);
    *notes |= refusals(&change, in);
    *notes |= *notes != 0 ? note_bit(HW_CHANGE_NOTE_ASK_VET)
                          : always | window_notes(&change, in) | dose_notes(&change, in) |
                                goal_notes(&change, in);
    out[AFTER] = change.after;
    out[LOWEST] = change.lowest;
    out[FRESH_NEEDED] = change.fresh_needed;
    out[ADD] = change.add;
    out[ADD_LIQUID] = change.liquid;
    out[SHARE_NEEDED] = 100 * change.exchange_needed;
    out[TIMES_NEEDED] = change.rounds_needed;
}

const struct hw_calc hw_calc_change = {
    .name = "change",
    .purpose = "what water changes do to a level, and what the new water must hold to keep it",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_change_notes,
    .n_notes = HW_CHANGE_NOTES,
    .sources = sources,
    .answer = answer,
    .work = change_work,
};
