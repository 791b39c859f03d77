/* binder_calc.c - binding ammonia for a day or two: how much of what, the oxygen it takes, and when
 * it lets go. */
#include "calc/binder_dose.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BINDER_AMOUNT, BINDER_LIQUID, BINDER_BOUND, BINDER_OXYGEN_USED, BINDER_RELEASE_FROM,
    BINDER_RELEASE_TO, BINDER_RESULTS
};
/* clang-format on */

enum { BINDER_PRODUCT = 1 }; /* the group of the label's two measures */

static const char *const agent_words[] = {"hydroxymethanesulfonate",
                                          "hydroxymethanesulfinate-anhydrous",
                                          "hydroxymethanesulfinate-dihydrate", "label", NULL};
enum { BINDER_NAMED = (1u << BINDER_BY_LABEL) - 1, BINDER_LABELLED = 1u << BINDER_BY_LABEL };

/* clang-format off */
static const struct hw_input inputs[BINDER_INPUTS] = {
    [BINDER_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BINDER_VOLUME_MIN, .hi = HW_BINDER_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [BINDER_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BINDER_TOTAL_MIN, .hi = HW_BINDER_TOTAL_MAX, .beyond = "check the reading",
     .help = "total ammonia as the kit reads it"},
    [BINDER_BASIS] = BASIS_INPUT,
    [BINDER_MEDICINE] = {.name = "medicine", .unit = "", .kind = HW_SET, .lo = MEDICINE_NONE,
     .hi = MEDICINE_ALL, .words = medicine_words, .help = "what is in the water"},
    [BINDER_AGENT] = {.name = "agent", .unit = "", .kind = HW_CHOICE, .hi = 3,
     .words = agent_words, .help = "what binds (label: a product by its own dose)"},
    [BINDER_STRENGTH] = {.name = "strength", .unit = "%", .kind = HW_SHARE, .unit_must = true,
     .lo = 100 * HW_BINDER_PURITY_SHARE_MIN, .hi = 100 * HW_BINDER_PURITY_SHARE_MAX,
     .need = HW_PRESET, .preset = 100, .when_input = BINDER_AGENT, .when_words = BINDER_NAMED,
     .beyond = "less is something else", .help = "share of the powder that is the agent"},
    [BINDER_EXCESS] = {.name = "excess", .unit = "", .kind = HW_NUMBER,
     .lo = HW_BINDER_EXCESS_MIN, .hi = HW_BINDER_EXCESS_MAX, .need = HW_PRESET, .preset = 1,
     .when_input = BINDER_AGENT, .when_words = BINDER_NAMED,
     .beyond = "the one patent read asks for 4, more is not worked out here",
     .help = "moles of agent to a mole of ammonia"},
    [BINDER_LABEL_MASS] = {.name = "label_mass", .unit = "g", .kind = HW_MASS,
     .lo = HW_BINDER_DOSE_MIN, .hi = HW_BINDER_DOSE_MAX, .need = HW_OPTIONAL,
     .group = BINDER_PRODUCT, .when_input = BINDER_AGENT, .when_words = BINDER_LABELLED,
     .beyond = "check the unit", .help = "dose of powder on the label"},
    [BINDER_LABEL_LIQUID] = {.name = "label_liquid", .unit = "mL", .kind = HW_VOLUME,
     .lo = HW_BINDER_DOSE_MIN, .hi = HW_BINDER_DOSE_MAX, .need = HW_OPTIONAL,
     .group = BINDER_PRODUCT, .when_input = BINDER_AGENT, .when_words = BINDER_LABELLED,
     .beyond = "check the unit", .help = "dose of liquid on the label"},
    [BINDER_LABEL_PER] = {.name = "label_per", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BINDER_PER_MIN, .hi = HW_BINDER_PER_MAX, .need = HW_OPTIONAL,
     .when_input = BINDER_AGENT, .when_words = BINDER_LABELLED, .beyond = "check the unit",
     .help = "water that the label's dose is for"},
    [BINDER_LABEL_BINDS] = {.name = "label_binds", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BINDER_BINDS_MIN, .hi = HW_BINDER_BINDS_MAX, .need = HW_OPTIONAL,
     .when_input = BINDER_AGENT, .when_words = BINDER_LABELLED,
     .beyond = "look at the label again",
     .help = "total ammonia the label's dose binds in that water"},
    [BINDER_HOLD_FROM] = {.name = "hold_from", .unit = "h", .kind = HW_TIME, .lo = 1, .hi = 168,
     .need = HW_PRESET, .preset = 24, .beyond = "look at the label again",
     .help = "how long it holds at least"},
    [BINDER_HOLD_TO] = {.name = "hold_to", .unit = "h", .kind = HW_TIME, .lo = 1, .hi = 168,
     .need = HW_PRESET, .preset = 48, .beyond = "look at the label again",
     .help = "how long it holds at most"},
};
/* clang-format on */

/* Rounded down: never beyond a label's dose, and what is then left unbound is less than a kit
 * shows. */
/* clang-format off */
static const struct hw_result results[BINDER_RESULTS] = {
    [BINDER_AMOUNT] = {.name = "amount", .unit = "g", .kind = HW_MASS, .digits = 3, .safe = -1,
     .sometimes = true, .help = "powder to weigh"},
    [BINDER_LIQUID] = {.name = "liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "into the tank"},
    [BINDER_BOUND] = {.name = "bound", .unit = "mg", .kind = HW_MASS, .digits = 3,
     .help = "ammonia in this water, as N, that it binds"},
    [BINDER_OXYGEN_USED] = {.name = "oxygen_used", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "oxygen that it takes at most"},
    [BINDER_RELEASE_FROM] = {.name = "release_from", .unit = "h", .kind = HW_TIME, .digits = 3,
     .help = "from then on the ammonia may come free"},
    [BINDER_RELEASE_TO] = {.name = "release_to", .unit = "h", .kind = HW_TIME, .digits = 3,
     .help = "by then the ammonia is free again"},
};
/* clang-format on */

static const char *const sources[] = {"label-and-law",    "binder-weights",
                                      "us4666610",        "us4786434",
                                      "binder-chemistry", "copper-reducers",
                                      "dye-chemistry",    "kit-chemistry",
                                      "formalin-ammonia", "dithionite-orfe",
                                      "iupac-weights",    "common-practice",
                                      "our-arithmetic",   NULL};

static uint64_t medicine_notes(unsigned medicine)
{
    return note_if((medicine & MEDICINE_COPPER_CHELATED) != 0, HW_BINDER_NOTE_BINDER_CHELATED) |
           note_if((medicine & MEDICINE_COPPER_CHELATED) != 0, HW_BINDER_NOTE_TEST_COPPER) |
           note_if((medicine & MEDICINE_FORMALIN) != 0, HW_BINDER_NOTE_BINDER_FORMALIN) |
           note_if((medicine & MEDICINE_FORMALIN) != 0, HW_BINDER_NOTE_TEST_FORMALIN) |
           note_if((medicine & MEDICINE_BINDER) != 0, HW_BINDER_NOTE_BINDER_AGAIN) |
           note_if((medicine & MEDICINE_OTHER) != 0, HW_BINDER_NOTE_BINDER_OTHER) |
           note_if((medicine & MEDICINE_OTHER) != 0, HW_BINDER_NOTE_TEST_OTHER);
}

static uint64_t agent_notes(const struct binder_dose *dose, const double in[])
{
    bool named = !dose->by_label;
    return note_if(dose->by_label, HW_BINDER_NOTE_LABEL_RULES) |
           note_if(dose->by_label, HW_BINDER_NOTE_LABEL_COUNTS) |
           note_if(dose->by_label, HW_BINDER_NOTE_OXYGEN_UNSAID) |
           note_if(above_limit(dose->label_oxygen, HW_LIMIT_BINDER_OXYGEN_HIGH),
                   HW_BINDER_NOTE_LABEL_OXYGEN) |
           note_if(above(in[BINDER_TAN], in[BINDER_LABEL_BINDS]), HW_BINDER_NOTE_OVER_LABEL) |
           note_if(named, HW_BINDER_NOTE_AGENT_BY_LABEL) |
           note_if(named && below_limit(in[BINDER_EXCESS], HW_LIMIT_BINDER_EXCESS),
                   HW_BINDER_NOTE_BINDER_EXCESS);
}

static uint64_t dose_notes(const struct binder_dose *dose, const double in[])
{
    bool hard = above_limit(dose->oxygen, HW_LIMIT_BINDER_OXYGEN_HIGH);
    bool some = !hard && above_limit(dose->oxygen, HW_LIMIT_BINDER_OXYGEN);
    bool none = in[BINDER_TAN] == 0;
    return note_if(none, HW_BINDER_NOTE_NOTHING_BOUND) |
           note_if(hard, HW_BINDER_NOTE_BINDER_OXYGEN_2) |
           note_if(some, HW_BINDER_NOTE_BINDER_OXYGEN_1) |
           note_if(!none && below_limit(dose->amount, HW_LIMIT_WEIGH_LEAST),
                   HW_BINDER_NOTE_WEIGH_SMALL) |
           note_if(!none && below_limit(dose->liquid, HW_LIMIT_DRAW_LEAST),
                   HW_BINDER_NOTE_SMALL_LIQUID) |
           note_if(dose->amount > 0, HW_BINDER_NOTE_WEIGH_POWDER) |
           note_if(above_limit(in[BINDER_HOLD_TO], HW_LIMIT_BINDER_HOLD), HW_BINDER_NOTE_HOLD_LONG);
}

/* What is in the water, or how much there is to bind, forbids a dose. It comes before what is wrong
 * with the question, which nobody needs to mend then. */
static uint64_t withheld(const struct binder_dose *dose, const double in[])
{
    struct binder_bans bans = binder_bans(dose, (unsigned)in[BINDER_MEDICINE]);
    return note_if(bans.copper, HW_BINDER_NOTE_BINDER_COPPER) |
           note_if(bans.dye, HW_BINDER_NOTE_BINDER_DYE) |
           note_if(bans.oxygen, HW_BINDER_NOTE_BINDER_OXYGEN_ALL);
}

static uint64_t refusals(const struct binder_dose *dose, const double in[])
{
    bool measured = !isnan(dose->amount) || !isnan(dose->liquid);
    return note_if(!measured, HW_BINDER_NOTE_BINDER_LABEL) |
           note_if(in[BINDER_HOLD_FROM] > in[BINDER_HOLD_TO], HW_BINDER_NOTE_HOLD_ORDER);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct binder_dose dose = binder_dose(in);
    *notes |= withheld(&dose, in);
    if (*notes == 0) {
        *notes |= refusals(&dose, in);
    }
    if (*notes == 0) {
        *notes |= medicine_notes((unsigned)in[BINDER_MEDICINE]) | agent_notes(&dose, in) |
                  dose_notes(&dose, in);
    }
    out[BINDER_AMOUNT] = dose.amount;
    out[BINDER_LIQUID] = dose.liquid;
    out[BINDER_BOUND] = dose.bound;
    out[BINDER_OXYGEN_USED] = dose.oxygen;
    out[BINDER_RELEASE_FROM] = in[BINDER_HOLD_FROM];
    out[BINDER_RELEASE_TO] = in[BINDER_HOLD_TO];
}

/* clang-format off */
const struct hw_calc hw_calc_binder = {
    .name = "binder",
    .purpose = "how much binds ammonia for a day or two, and the oxygen it takes",
    .inputs = inputs, .n_inputs = BINDER_INPUTS, .results = results,
    .n_results = BINDER_RESULTS, .notes = hw_binder_notes, .n_notes = HW_BINDER_NOTES,
    .sources = sources, .answer = answer, .work = binder_work,
};
/* clang-format on */
