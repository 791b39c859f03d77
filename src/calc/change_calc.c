/* change_calc.c - what water changes do to a level, and what the new water must hold to keep it. */
#include "calc/change_rounds.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    CHANGE_ADD_LIQUID, CHANGE_ADD_MASS, CHANGE_NEW_NEEDED, CHANGE_AFTER, CHANGE_LOWEST,
    CHANGE_SHARE_NEEDED, CHANGE_TIMES_NEEDED, CHANGE_ADD, CHANGE_RESULTS
};
/* clang-format on */

static const char *const method_words[] = {"batch", "flow", NULL};

static const char *const kind_words[CHANGE_KINDS + 1] = {
    [CHANGE_KIND_IONIC] = "copper-ionic",
    [CHANGE_KIND_AMINE] = "copper-amine",
    [CHANGE_KIND_CHELATED] = "copper-chelated",
    [CHANGE_KIND_DYE] = "dye",
    [CHANGE_KIND_OTHER] = "other",
};

enum {
    CHANGE_SIZE = 1,
    CHANGE_LABEL = 2
}; /* the groups: take and share; a label's liquid and mass */
enum { CHANGE_TIMES_MAX = 100 };

#define LEVEL .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = HW_CHANGE_LEVEL_MIN, .hi = 1e5

/* clang-format off */
static const struct hw_input inputs[CHANGE_INPUTS] = {
    [CHANGE_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = 0.1, .hi = 1e5, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [CHANGE_TAKE] = {.name = "take", .unit = "L", .kind = HW_VOLUME, .lo = 0.001, .hi = 1e5,
     .need = HW_OPTIONAL, .group = CHANGE_SIZE, .beyond = "check the unit",
     .help = "water changed in one round"},
    [CHANGE_SHARE] = {.name = "share", .unit = "%", .kind = HW_SHARE, .lo = 0.01, .hi = 100 *
     HW_CHANGE_EXCHANGED_MAX_FLOW, .need = HW_OPTIONAL, .group = CHANGE_SIZE,
     .beyond = "1000 % by flow leaves hardly any old water",
     .help = "share of the water changed in one round"},
    [CHANGE_METHOD] = {.name = "method", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = method_words, .need = HW_PRESET, .preset = HW_CHANGE_BATCH,
     .help = "how water is changed (flow: in and out at once)"},
    [CHANGE_TIMES] = {.name = "times", .unit = "", .kind = HW_COUNT, .lo = HW_CHANGE_ROUNDS_MIN,
     .hi = CHANGE_TIMES_MAX, .need = HW_PRESET, .preset = 1, .beyond = "plan no further",
     .help = "how many equal rounds, one after the other"},
    [CHANGE_NOW] = {.name = "now", LEVEL, .beyond = "more is no treatment",
     .help = "level in the tank before the change"},
    [CHANGE_NEW] = {.name = "new", LEVEL, .need = HW_PRESET, .cell_must = true,
     .beyond = "more is no treatment", .help = "level in the new water as it goes in"},
    [CHANGE_KEEP] = {.name = "keep", .aim = true, LEVEL, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "level that each round is to end at"},
    [CHANGE_KIND] = {.name = "kind", .unit = "", .kind = HW_CHOICE, .hi = CHANGE_KINDS - 1,
     .words = kind_words, .need = HW_OPTIONAL,
     .help = "the medicine, for its usual floor and ceiling"},
    [CHANGE_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .hi = 45, .when_input = CHANGE_KIND, .when_words = KINDS_OF_COPPER,
     .beyond = "too salty for fish", .help = "salinity of the water, below "
     HW_FIGURE_COPPER_FRESH_BELOW " g/kg no copper"},
    [CHANGE_BIOFILTER] = {.name = "biofilter", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .when_input = CHANGE_KIND, .when_words = 1u << CHANGE_KIND_DYE,
     .help = "does a biofilter or media of one share this water?"},
    [CHANGE_FLOOR] = {.name = "floor", LEVEL, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "least that treats, by label (ionic copper "
     HW_FIGURE_COPPER_IONIC_LOW ")"},
    [CHANGE_CEILING] = {.name = "ceiling", LEVEL, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "most that fish stand, by label (ionic copper "
     HW_FIGURE_COPPER_IONIC_HIGH ")"},
    [CHANGE_GOAL] = {.name = "goal", LEVEL, .need = HW_OPTIONAL,
     .beyond = "more is no treatment", .help = "level to reach by changes with this new water"},
    [CHANGE_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = PRODUCT_MIN, .hi = PRODUCT_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit, no stock is so weak or so strong",
     .help = "medicine in the stock"},
    [CHANGE_LABEL_LIQUID] = {.name = "label_liquid", .unit = "mL", .kind = HW_VOLUME,
     .lo = HW_STOCK_PER_MIN, .hi = HW_STOCK_PER_MAX, .need = HW_OPTIONAL, .group = CHANGE_LABEL,
     .beyond = "below 0.1 mL multiply all three, above 1 L divide them",
     .help = "dose of liquid on the label"},
    [CHANGE_LABEL_MASS] = {.name = "label_mass", .unit = "g", .kind = HW_MASS,
     .lo = HW_DOSE_LABEL_MASS_MIN, .hi = HW_DOSE_LABEL_MASS_MAX, .need = HW_OPTIONAL,
     .group = CHANGE_LABEL, .beyond = "below 0.01 g multiply all three",
     .help = "dose of powder on the label"},
    [CHANGE_LABEL_PER] = {.name = "label_per", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_STOCK_INTO_MIN, .hi = HW_STOCK_INTO_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "water that the label's dose is for"},
    [CHANGE_LABEL_RAISES] = {.name = "label_raises", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_STOCK_RAISES_MIN, .hi = HW_STOCK_RAISES_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "how far the label's dose raises that water"},
};

static const struct hw_result results[CHANGE_RESULTS] = {
    [CHANGE_ADD_LIQUID] = {.name = "add_liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "into new water"},
    [CHANGE_ADD_MASS] = {.name = "add_mass", .unit = "g", .kind = HW_MASS, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "powder, into new water"},
    [CHANGE_NEW_NEEDED] = {.name = "new_needed", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .safe = -1, .sometimes = true,
     .help = "level the new water must have to hold keep"},
    [CHANGE_AFTER] = {.name = "after", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "level after it if no medicine is added"},
    [CHANGE_LOWEST] = {.name = "lowest", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "lowest level on the way if none is added"},
    [CHANGE_SHARE_NEEDED] = {.name = "share_needed", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "one change that reaches the goal"},
    [CHANGE_TIMES_NEEDED] = {.name = "times_needed", .unit = "", .kind = HW_COUNT, .digits = 1,
     .safe = 1, .sometimes = true, .help = "rounds of this size to reach the goal"},
    [CHANGE_ADD] = {.name = "add", .unit = "mg", .kind = HW_MASS, .digits = 3, .safe = -1,
     .sometimes = true, .detail = true, .help = "medicine for the new water"},
};
/* clang-format on */

static const char *const sources[] = {"conservation",    "copper-window",   "copper-ramp",
                                      "copper-fresh",    "copper-salinity", "copper-products",
                                      "rifici1996",      "dye-chemistry",   "our-arithmetic",
                                      "common-practice", "label-and-law",   NULL};

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct change_rounds change = change_rounds(in);
    *notes |= change_notes(&change, in);
    out[CHANGE_ADD_LIQUID] = change.liquid;
    out[CHANGE_ADD_MASS] = change.mass;
    out[CHANGE_NEW_NEEDED] = change.new_needed;
    out[CHANGE_AFTER] = change.after;
    out[CHANGE_LOWEST] = change.lowest;
    out[CHANGE_SHARE_NEEDED] = 100 * change.exchange_needed;
    out[CHANGE_TIMES_NEEDED] = change.rounds_needed;
    out[CHANGE_ADD] = change.add;
}

/* clang-format off */
const struct hw_calc hw_calc_change = {
    .name = "change",
    .purpose = "what water changes do to a level, and how to keep it",
    .inputs = inputs, .n_inputs = CHANGE_INPUTS, .results = results, .n_results = CHANGE_RESULTS,
    .notes = hw_change_notes, .n_notes = HW_CHANGE_NOTES, .sources = sources, .answer = answer,
    .work = change_work,
};
/* clang-format on */
