/* buffer_calc.c - what to weigh to raise alkalinity, and what that does to pH and free ammonia. */
#include "calc/buffer_dose.h"
#include "calc/free_ammonia.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BUFFER_MASS, BUFFER_PH_AFTER, BUFFER_FREE_BEFORE, BUFFER_FREE_AFTER, BUFFER_PH_AIRED,
    BUFFER_FREE_AIRED, BUFFER_RESULTS
};
/* clang-format on */

static const char *const reagent_words[] = {"sodium-bicarbonate", "sodium-carbonate", NULL};

/* clang-format off */
static const struct hw_input inputs[BUFFER_INPUTS] = {
    [BUFFER_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BUFFER_VOLUME_MIN, .hi = HW_BUFFER_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [BUFFER_ALKALINITY] = {.name = "alkalinity", .tank = "alkalinity", .unit = "meq/L",
     .kind = HW_ALKALINITY, .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN,
     .hi = HW_BUFFER_ALKALINITY_MAX, .beyond = "check the unit",
     .help = "total alkalinity now, as a kit reads it"},
    [BUFFER_TARGET] = {.name = "target", .unit = "meq/L", .kind = HW_ALKALINITY,
     .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN, .hi = HW_BUFFER_ALKALINITY_MAX,
     .beyond = "check the unit, sea water has 2.3 meq/L", .help = "total alkalinity wanted"},
    [BUFFER_REAGENT] = {.name = "reagent", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = reagent_words, .need = HW_PRESET, .preset = HW_BUFFER_BICARBONATE,
     .help = "what is weighed (carbonate raises pH far more)"},
    [BUFFER_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH now, by a meter set in fresh-water buffers"},
    [BUFFER_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_CARBONATE_TEMP_MIN, .hi = HW_CARBONATE_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for fish", .help = "water temperature"},
    [BUFFER_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_PH_SALINITY_MIN, .hi = HW_PH_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of sea-salt water, 0 for fresh"},
    [BUFFER_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BUFFER_TAN_MIN, .hi = HW_BUFFER_TAN_MAX, .need = HW_OPTIONAL,
     .beyond = "no fish lives in more", .help = "total ammonia as N (NH3 x 0.822, NH4 x 0.776)"},
};
/* clang-format on */

#define FREE .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 2, .sometimes = true

/* clang-format off */
static const struct hw_result results[BUFFER_RESULTS] = {
    [BUFFER_MASS] = {.name = "mass", .unit = "g", .kind = HW_MASS, .digits = 3, .safe = -1,
     .help = "of the reagent (--reagent), to weigh"},
    [BUFFER_PH_AFTER] = {.name = "ph_after", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .help = "pH right after mixing"},
    [BUFFER_FREE_BEFORE] = {.name = "free_before", FREE, .help = "free ammonia before, as N"},
    [BUFFER_FREE_AFTER] = {.name = "free_after", FREE,
     .help = "free ammonia right after mixing, as N"},
    [BUFFER_PH_AIRED] = {.name = "ph_aired", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .help = "pH hours later, in balance with air"},
    [BUFFER_FREE_AIRED] = {.name = "free_aired", FREE,
     .help = "free ammonia hours later, aired, as N"},
};
/* clang-format on */

static const char *const sources[] = {
    "iupac-weights", "conservation",    "carbonate-set",  "clegg1995",
    "dickson1990",   "dickson1979",     "takahashi1982",  "davies",
    "malmberg1956",  "emerson1975",     "khoo1977",       "epa1989",
    "epa2013",       "common-practice", "our-arithmetic", NULL};

static uint64_t ammonia_notes(const struct buffer_dose *dose, const double in[])
{
    bool ammonia = in[BUFFER_TAN] > 0;
    double worst_now = fmax(dose->free_before, dose->free_after);
    bool maybe = !(in[BUFFER_TAN] <= 0); /* none was given: there may be some */
    return note_if(maybe && dose->reagent == HW_BUFFER_CARBONATE, HW_BUFFER_NOTE_CARBONATE_NEVER) |
           note_if(free_rises(dose->free_before, dose->free_after), HW_BUFFER_NOTE_BUFFER_FREES) |
           note_if(free_rises(worst_now, dose->free_aired), HW_BUFFER_NOTE_BUFFER_FREES_LATER) |
           note_if(dose->over_salt, HW_BUFFER_NOTE_OVER_LIMIT_SALT) |
           note_if(dose->over_fresh, HW_BUFFER_NOTE_OVER_LIMIT_FRESH) |
           note_if(ammonia, HW_BUFFER_NOTE_AMMONIA_FIRST);
}

static uint64_t step_notes(const struct buffer_dose *dose, const double in[])
{
    double rise = in[BUFFER_TARGET] - in[BUFFER_ALKALINITY];
    bool carbonate = dose->reagent == HW_BUFFER_CARBONATE;
    return note_if(above_limit(rise, HW_LIMIT_ALKALINITY_RISE), HW_BUFFER_NOTE_ALKALINITY_STEP) |
           note_if(above_limit(fabs(dose->ph_after - in[BUFFER_PH]), HW_LIMIT_PH_STEP),
                   HW_BUFFER_NOTE_BUFFER_PH_STEP) |
           note_if(above_limit(in[BUFFER_TARGET], HW_LIMIT_ALKALINITY_HIGH),
                   HW_BUFFER_NOTE_ALKALINITY_HIGH) |
           note_if(below_limit(dose->mass, HW_LIMIT_WEIGH_LEAST), HW_BUFFER_NOTE_WEIGH_SMALL) |
           note_if(!carbonate, HW_BUFFER_NOTE_BAKING_SODA) |
           note_if(carbonate, HW_BUFFER_NOTE_WASHING_SODA) | note_bit(HW_BUFFER_NOTE_POUR_BUFFER) |
           note_bit(HW_BUFFER_NOTE_BUFFER_MEASURE);
}

static uint64_t state_notes(const struct buffer_dose *dose, const double in[])
{
    bool fresh = below_limit(in[BUFFER_SALINITY], HW_LIMIT_CARBONATE_FRESH);
    return note_if(dose->states, HW_BUFFER_NOTE_BUFFER_STATES) |
           note_if(!dose->states, HW_BUFFER_NOTE_BUFFER_UNSAID) |
           note_if(isnan(in[BUFFER_TAN]), HW_BUFFER_NOTE_BUFFER_TAN_UNSAID) |
           note_if(dose->states && fresh, HW_BUFFER_NOTE_CARBONATE_FRESH) |
           note_if(dose->stretched, HW_BUFFER_NOTE_FIT_STRETCHED);
}

static uint64_t notes_of(const struct buffer_dose *dose, const double in[])
{
    static const unsigned refusals[] = {[BUFFER_TARGET_BELOW] = HW_BUFFER_NOTE_TARGET_BELOW,
                                        [BUFFER_PH_NOT_ALKALINITY] =
                                            HW_BUFFER_NOTE_PH_NOT_ALKALINITY,
                                        [BUFFER_UNSEEN] = HW_BUFFER_NOTE_BUFFER_UNSEEN,
                                        [BUFFER_OVER_PH] = HW_BUFFER_NOTE_BUFFER_OVER_PH,
                                        [BUFFER_OVER_HOUR] = HW_BUFFER_NOTE_BUFFER_OVER_HOUR};
    if (dose->refusal != BUFFER_ANSWERED) {
        return note_bit(refusals[dose->refusal]);
    }
    bool nothing = in[BUFFER_TARGET] == in[BUFFER_ALKALINITY];
    return state_notes(dose, in) | (nothing ? note_bit(HW_BUFFER_NOTE_NOTHING_TO_MIX)
                                            : ammonia_notes(dose, in) | step_notes(dose, in));
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct buffer_dose dose = buffer_dose(in);
    *notes |= notes_of(&dose, in);
    out[BUFFER_MASS] = dose.mass;
    out[BUFFER_PH_AFTER] = dose.ph_after;
    out[BUFFER_FREE_AFTER] = dose.free_after;
    out[BUFFER_PH_AIRED] = dose.ph_aired;
    out[BUFFER_FREE_AIRED] = dose.free_aired;
    out[BUFFER_FREE_BEFORE] = dose.free_before;
}

/* clang-format off */
const struct hw_calc hw_calc_buffer = {
    .name = "buffer",
    .purpose = "what to weigh to raise alkalinity, and what pH and ammonia then do",
    .inputs = inputs, .n_inputs = BUFFER_INPUTS, .results = results, .n_results = BUFFER_RESULTS,
    .notes = hw_buffer_notes, .n_notes = HW_BUFFER_NOTES, .sources = sources, .answer = answer,
    .work = buffer_work,
};
/* clang-format on */
