/* calc_buffer.c - what to weigh to raise alkalinity, and what that does to pH and free ammonia. */
#include "calc/buffer_dose.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

enum { MASS, PH_AFTER, FREE_AFTER, PH_AIRED, FREE_AIRED, FREE_BEFORE, RESULTS };

static const char *const source_words[] = {"sodium-bicarbonate", "sodium-carbonate", NULL};

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .kind = HW_VOLUME,
                .unit_must = true,
                .lo = HW_BUFFER_VOLUME_MIN,
                .hi = HW_BUFFER_VOLUME_MAX,
                .help = "water in the tank and its filter, without rock and sand; outside this "
                        "doubt the unit",
                .need = HW_REQUIRED,
                .when_input = -1},
    [ALKALINITY] = {.name = "alkalinity",
                    .unit = "meq/L",
                    .kind = HW_ALKALINITY,
                    .lo = HW_BUFFER_ALKALINITY_MIN,
                    .hi = HW_BUFFER_ALKALINITY_MAX,
                    .help = "total alkalinity now, as a kit titrates it; above 10 doubt the unit",
                    .need = HW_REQUIRED,
                    .when_input = -1},
    [TARGET] = {.name = "target",
                .unit = "meq/L",
                .kind = HW_ALKALINITY,
                .lo = HW_BUFFER_ALKALINITY_MIN,
                .hi = HW_BUFFER_ALKALINITY_MAX,
                .help = "alkalinity wanted; sea water has 2.3, above 10 doubt the unit",
                .need = HW_REQUIRED,
                .when_input = -1},
    [SOURCE] = {.name = "source",
                .unit = "",
                .kind = HW_CHOICE,
                .lo = 0,
                .hi = 1,
                .words = source_words,
                .help = "baking soda, or the carbonate, which raises pH far more",
                .need = HW_PRESET,
                .preset = HW_BUFFER_BICARBONATE,
                .when_input = -1},
    [PH] = {.name = "ph",
            .unit = "",
            .kind = HW_PH,
            .lo = HW_PH_MIN,
            .hi = HW_PH_MAX,
            .help = "pH now, by a meter set in fresh-water buffers; below 5 or above 10 doubt it",
            .need = HW_OPTIONAL,
            .when_input = -1},
    [TEMP] = {.name = "temp",
              .unit = "C",
              .kind = HW_TEMPERATURE,
              .lo = HW_CARBONATE_TEMP_MIN,
              .hi = HW_CARBONATE_TEMP_MAX,
              .help = "water temperature; no fish bears what lies outside",
              .need = HW_OPTIONAL,
              .when_input = -1},
    [SALINITY] = {.name = "salinity",
                  .unit = "g/kg",
                  .kind = HW_SALINITY,
                  .lo = HW_PH_SALINITY_MIN,
                  .hi = HW_PH_SALINITY_MAX,
                  .help = "salinity of sea-salt water, 0 for fresh; the constants hold no further",
                  .need = HW_OPTIONAL,
                  .when_input = -1},
    [TAN] = {.name = "tan",
             .unit = "mg/L",
             .kind = HW_CONCENTRATION,
             .lo = HW_BUFFER_TAN_MIN,
             .hi = HW_BUFFER_TAN_MAX,
             .help = "total ammonia as N (a kit's NH3 by 0.822, NH4 by 0.776); above 200 no fish "
                     "lives",
             .need = HW_OPTIONAL,
             .when_input = -1},
};

#define FREE .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 2, .sometimes = true

static const struct hw_result results[RESULTS] = {
    [MASS] = {.name = "mass",
              .unit = "g",
              .kind = HW_MASS,
              .digits = 3,
              .safe = -1,
              .help = "to weigh and to pour in slowly, dissolved"},
    [PH_AFTER] = {.name = "ph_after",
                  .unit = "",
                  .kind = HW_PH,
                  .digits = 3,
                  .sometimes = true,
                  .help = "pH right after mixing, before any gas goes in or out"},
    [FREE_AFTER] = {FREE, .name = "free_after", .help = "free ammonia then, as N"},
    [PH_AIRED] = {.name = "ph_aired",
                  .unit = "",
                  .kind = HW_PH,
                  .digits = 3,
                  .sometimes = true,
                  .help = "pH in balance with open air, hours later"},
    [FREE_AIRED] = {FREE, .name = "free_aired", .help = "free ammonia then, as N"},
    [FREE_BEFORE] = {FREE, .name = "free_before", .help = "free ammonia before anything, as N"},
};

static const char *const sources[] = {
    "iupac-weights", "conservation",  "carbonate-set",   "clegg1995",      "dickson1990",
    "dickson1979",   "takahashi1982", "davies",          "emerson1975",    "khoo1977",
    "epa1989",       "epa2013",       "common-practice", "our-arithmetic", NULL};

/* More than rounding, and more than any reading can tell. */
static const double noise = 1e-9;
static const double hundredth = 1.01;

static uint64_t ammonia_notes(const struct buffer_dose *dose, const double in[])
{
    bool ammonia = in[TAN] > 0;
    double worst_now = fmax(dose->free_before, dose->free_after);
    bool maybe = !(in[TAN] <= 0); /* none was given: there may be some */
    return note_if(maybe && dose->source == HW_BUFFER_CARBONATE, HW_BUFFER_NOTE_CARBONATE_NEVER) |
           note_if(dose->free_after > dose->free_before * hundredth, HW_BUFFER_NOTE_BUFFER_FREES) |
           note_if(dose->free_aired > worst_now * hundredth, HW_BUFFER_NOTE_BUFFER_FREES_LATER) |
           note_if(dose->over_salt, HW_BUFFER_NOTE_OVER_LIMIT_SALT) |
           note_if(dose->over_fresh, HW_BUFFER_NOTE_OVER_LIMIT_FRESH) |
           note_if(ammonia, HW_BUFFER_NOTE_AMMONIA_FIRST);
}

static uint64_t step_notes(const struct buffer_dose *dose, const double in[])
{
    double rise = in[TARGET] - in[ALKALINITY];
    bool carbonate = dose->source == HW_BUFFER_CARBONATE;
    return note_if(rise > hw_limits[HW_LIMIT_ALKALINITY_RISE].value + noise,
                   HW_BUFFER_NOTE_ALKALINITY_STEP) |
           note_if(fabs(dose->ph_after - in[PH]) > hw_limits[HW_LIMIT_PH_STEP].value + noise,
                   HW_BUFFER_NOTE_BUFFER_PH_STEP) |
           note_if(in[TARGET] > hw_limits[HW_LIMIT_ALKALINITY_HIGH].value,
                   HW_BUFFER_NOTE_ALKALINITY_HIGH) |
           note_if(dose->mass < 1, HW_BUFFER_NOTE_WEIGH_SMALL) |
           note_if(!carbonate, HW_BUFFER_NOTE_BAKING_SODA) |
           note_if(carbonate, HW_BUFFER_NOTE_WASHING_SODA) | note_bit(HW_BUFFER_NOTE_POUR_BUFFER) |
           note_bit(HW_BUFFER_NOTE_BUFFER_MEASURE);
}

static uint64_t state_notes(const struct buffer_dose *dose, const double in[])
{
    bool fresh = in[SALINITY] < hw_limits[HW_LIMIT_CARBONATE_FRESH].value;
    return note_if(dose->states, HW_BUFFER_NOTE_BUFFER_STATES) |
           note_if(!dose->states, HW_BUFFER_NOTE_BUFFER_UNSAID) |
           note_if(isnan(in[TAN]), HW_BUFFER_NOTE_BUFFER_TAN_UNSAID) |
           note_if(dose->states && fresh, HW_BUFFER_NOTE_CARBONATE_FRESH) |
           note_if(dose->stretched, HW_BUFFER_NOTE_FIT_STRETCHED);
}

static uint64_t notes_of(const struct buffer_dose *dose, const double in[])
{
    static const unsigned refusals[] = {[TARGET_BELOW] = HW_BUFFER_NOTE_TARGET_BELOW,
                                        [PH_NOT_ALKALINITY] = HW_BUFFER_NOTE_PH_NOT_ALKALINITY,
                                        [OVER_PH] = HW_BUFFER_NOTE_BUFFER_OVER_PH};
    if (dose->refusal != ANSWERED) {
        return note_bit(refusals[dose->refusal]);
    }
    bool nothing = in[TARGET] == in[ALKALINITY];
    return state_notes(dose, in) | (nothing ? note_bit(HW_BUFFER_NOTE_NOTHING_TO_MIX)
                                            : ammonia_notes(dose, in) | step_notes(dose, in));
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct buffer_dose dose = buffer_dose(in);
    *notes |= notes_of(&dose, in) | note_bit(HW_BUFFER_NOTE_ASK_VET);
    out[MASS] = dose.mass;
    out[PH_AFTER] = dose.ph_after;
    out[FREE_AFTER] = dose.free_after;
    out[PH_AIRED] = dose.ph_aired;
    out[FREE_AIRED] = dose.free_aired;
    out[FREE_BEFORE] = dose.free_before;
}

const struct hw_calc hw_calc_buffer = {
    .name = "buffer",
    .purpose = "what to weigh to raise alkalinity, and what that does to pH and free ammonia",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_buffer_notes,
    .n_notes = HW_BUFFER_NOTES,
    .sources = sources,
    .answer = answer,
    .work = buffer_work,
};
