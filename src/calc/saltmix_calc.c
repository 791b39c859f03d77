/* saltmix_calc.c - salt for a batch, or fresh water for water that is too salty. */
#include "calc/list.h"
#include "calc/saltmix_batch.h"
#include "tables.h"

#include <math.h>

enum { SALTMIX_SALT, SALTMIX_TOP_UP, SALTMIX_SWAP, SALTMIX_RESULTS };

static const char *const why_words[] = {"evaporated", "mixed-too-strong", NULL};

/* clang-format off */
static const struct hw_input inputs[SALTMIX_INPUTS] = {
    [SALTMIX_VOLUME] = {.name = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_SALTMIX_VOLUME_MIN, .hi = HW_SALTMIX_VOLUME_MAX, .beyond = "check the unit",
     .help = "water that there is, before salt goes in"},
    [SALTMIX_SALINITY] = {.name = "salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_SEAWATER_SALINITY_MIN, .hi = HW_SEAWATER_SALINITY_MAX, .need = HW_PRESET,
     .beyond = "the formula is valid to here", .help = "salinity of that water now, 0 for fresh"},
    [SALTMIX_TARGET] = {.name = "target", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_SEAWATER_SALINITY_MIN, .hi = HW_SEAWATER_SALINITY_MAX,
     .beyond = "too salty for fish", .help = "salinity wanted"},
    [SALTMIX_TEMP] = {.name = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_SEAWATER_TEMP_MIN, .hi = HW_SEAWATER_TEMP_MAX, .need = HW_PRESET, .preset = 25,
     .beyond = "too cold or too hot for fish", .help = "water temperature"},
    [SALTMIX_WHY] = {.name = "why", .unit = "", .kind = HW_CHOICE, .hi = 1, .words = why_words,
     .need = HW_OPTIONAL, .help = "why it is too salty, needed if target is lower"},
    [SALTMIX_MOISTURE] = {.name = "moisture", .unit = "%", .kind = HW_SHARE, .hi = 100 * (1 -
     HW_SALTMIX_DRY_MIN), .need = HW_PRESET,
     .beyond = "crystals bind 15 % at most, more than 50 % is brine",
     .help = "water in the product, by mass"},
    [SALTMIX_LABEL_MASS] = {.name = "label_mass", .unit = "g", .kind = HW_MASS,
     .lo = HW_SALTMIX_MASS_MIN, .hi = HW_SALTMIX_MASS_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "product that makes label_makes, by its label"},
    [SALTMIX_LABEL_MAKES] = {.name = "label_makes", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_SALTMIX_VOLUME_MIN, .hi = HW_SALTMIX_VOLUME_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "salt water that label_mass makes, by the label"},
    [SALTMIX_LABEL_SALINITY] = {.name = "label_salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = 1, .hi = HW_SEAWATER_SALINITY_MAX, .need = HW_OPTIONAL,
     .beyond = "no label promises less or more",
     .help = "salinity that the label promises for it"},
};

static const struct hw_result results[SALTMIX_RESULTS] = {
    [SALTMIX_SALT] = {.name = "salt", .unit = "g", .kind = HW_MASS, .digits = 3, .safe = -1,
     .sometimes = true, .help = "to dissolve: nine tenths, measure, the rest"},
    [SALTMIX_TOP_UP] = {.name = "top_up", .unit = "L", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .help = "fresh water to add, nothing taken out"},
    [SALTMIX_SWAP] = {.name = "swap", .unit = "L", .kind = HW_VOLUME, .digits = 3, .safe = -1,
     .sometimes = true, .help = "out, and as much fresh water in"},
};
/* clang-format on */

static const char *const sources[] = {
    "conservation",   "eos80",       "salt-hydrates",   "common-practice",
    "our-arithmetic", "copper-ramp", "nitrite-calcium", NULL};

/* The notes that leave no answer. */
static uint64_t refusals(const struct saltmix_batch *batch, const double in[])
{
    bool lower = in[SALTMIX_TARGET] < in[SALTMIX_SALINITY];
    return note_if(batch->product == SALTMIX_LABEL_IN_PART, HW_SALTMIX_NOTE_LABEL_PART) |
           note_if(batch->product == SALTMIX_LABEL_AND_MOISTURE,
                   HW_SALTMIX_NOTE_LABEL_AND_MOISTURE) |
           note_if(batch->product == SALTMIX_LABEL_UNLIKELY, HW_SALTMIX_NOTE_LABEL_UNLIKELY) |
           note_if(lower && isnan(in[SALTMIX_WHY]), HW_SALTMIX_NOTE_WHY_UNSAID) |
           note_if(lower && in[SALTMIX_WHY] == SALTMIX_EVAPORATED && in[SALTMIX_TARGET] == 0,
                   HW_SALTMIX_NOTE_TOP_UP_TO_NOTHING);
}

static uint64_t salt_notes(const struct saltmix_batch *batch, const double in[])
{
    double step = in[SALTMIX_TARGET] - in[SALTMIX_SALINITY];
    bool counted_dry = batch->product == SALTMIX_BY_MOISTURE && in[SALTMIX_MOISTURE] == 0;
    if (step == 0) {
        return note_bit(HW_SALTMIX_NOTE_NOTHING_TO_MIX);
    }
    return note_if(above_limit(batch->label_dry, HW_LIMIT_SALT_WHOLE),
                   HW_SALTMIX_NOTE_LABEL_GENEROUS) |
           note_if(below_limit(batch->label_dry, HW_LIMIT_SALT_DRY), HW_SALTMIX_NOTE_LABEL_WET) |
           note_if(in[SALTMIX_SALINITY] > 0 && above_limit(step, HW_LIMIT_SALINITY_RISE),
                   HW_SALTMIX_NOTE_SALT_STEP_UP) |
           note_if(below_limit(batch->salt, HW_LIMIT_WEIGH_LEAST), HW_SALTMIX_NOTE_WEIGH_SMALL) |
           note_if(counted_dry, HW_SALTMIX_NOTE_SALT_COUNTED_DRY) |
           note_bit(HW_SALTMIX_NOTE_NO_DRY_SALT) | note_bit(HW_SALTMIX_NOTE_SALT_IN_STEPS) |
           note_bit(HW_SALTMIX_NOTE_WATER_BEFORE_SALT);
}

static uint64_t fresh_notes(const struct saltmix_batch *batch, const double in[])
{
    double most = hw_limits[HW_LIMIT_TOP_UP_SHARE].value / 100 * in[SALTMIX_VOLUME];
    double fall = in[SALTMIX_SALINITY] - in[SALTMIX_TARGET];
    return note_if(above_limit(fall, HW_LIMIT_SALINITY_FALL), HW_SALTMIX_NOTE_SALT_STEP_DOWN) |
           note_if(below_limit(in[SALTMIX_TARGET], HW_LIMIT_COPPER_SALINITY),
                   HW_SALTMIX_NOTE_COPPER_LOWERED) |
           note_if(below_limit(in[SALTMIX_TARGET], HW_LIMIT_NITRITE_LOW_SALINITY),
                   HW_SALTMIX_NOTE_NITRITE_LOWERED) |
           note_if(!isnan(batch->top_up), HW_SALTMIX_NOTE_TOP_UP_KEEPS) |
           note_if(above(batch->top_up, most), HW_SALTMIX_NOTE_TOP_UP_LARGE) |
           note_if(!isnan(batch->swap), HW_SALTMIX_NOTE_SWAP_THINS) |
           note_bit(HW_SALTMIX_NOTE_LOWER_SLOWLY);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct saltmix_batch batch = saltmix_batch(in);
    *notes |= refusals(&batch, in);
    if (*notes == 0) {
        *notes |= isnan(batch.salt) ? fresh_notes(&batch, in) : salt_notes(&batch, in);
        bool beyond = above(in[SALTMIX_TARGET], HW_SEAWATER_SALINITY_FITTED);
        *notes |=
            note_if(batch.stretched || beyond, HW_SALTMIX_NOTE_ABOVE_FIT) |
            note_if(in[SALTMIX_TARGET] != in[SALTMIX_SALINITY], HW_SALTMIX_NOTE_FRESH_TREATED);
    }
    out[SALTMIX_SALT] = batch.salt;
    out[SALTMIX_TOP_UP] = batch.top_up;
    out[SALTMIX_SWAP] = batch.swap;
}

/* clang-format off */
const struct hw_calc hw_calc_saltmix = {
    .name = "saltmix",
    .purpose = "how much salt a batch needs, or fresh water if it is too salty",
    .inputs = inputs, .n_inputs = SALTMIX_INPUTS, .results = results, .n_results = SALTMIX_RESULTS,
    .notes = hw_saltmix_notes, .n_notes = HW_SALTMIX_NOTES, .sources = sources, .answer = answer,
    .work = saltmix_work,
};
/* clang-format on */
