/* calc_blend.c - what a water change does to temperature, salinity, pH and free ammonia. */
#include "calc/blend_states.h"
#include "calc/list.h"
#include "holdwater/buffer.h"
#include "tables.h"

#include <math.h>

enum {
    TEMP_AFTER,
    SALINITY_AFTER,
    TEMP_STEP,
    SALINITY_STEP,
    TAN_AFTER,
    FREE_BEFORE,
    FREE_AFTER,
    PH_AFTER,
    FREE_SAME_CO2,
    PH_SAME_CO2,
    FREE_AIRED,
    PH_AIRED,
    FREE_WORST,
    RESULTS
};

enum { TAKE_OR_SHARE = 1 };

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] =
        {.name = "volume",
         .unit = "L",
         .kind = HW_VOLUME,
         .unit_must = true,
         .lo = HW_BUFFER_VOLUME_MIN,
         .hi = HW_BUFFER_VOLUME_MAX,
         .help =
             "water in the tank and its filter, without rock and sand; outside this doubt the unit",
         .need = HW_REQUIRED,
         .when_input = -1},
    [TAKE] = {.name = "take",
              .unit = "L",
              .kind = HW_VOLUME,
              .unit_must = true,
              .lo = 0.001,
              .hi = 1e5,
              .help = "water taken out, and as much new water put in; the whole tank at most",
              .need = HW_REQUIRED,
              .group = TAKE_OR_SHARE,
              .when_input = -1},
    [SHARE] = {.name = "share",
               .unit = "%",
               .kind = HW_SHARE,
               .lo = 0.01,
               .hi = 100,
               .help = "share of the water changed; 100 % is all of it",
               .need = HW_REQUIRED,
               .group = TAKE_OR_SHARE,
               .when_input = -1},
    [TAN] = {.name = "tan",
             .unit = "mg/L",
             .kind = HW_CONCENTRATION,
             .lo = HW_BLEND_TAN_MIN,
             .hi = HW_BLEND_TAN_MAX,
             .help = "total ammonia of the tank, in the basis of the kit; above 200 no fish lives",
             .need = HW_PRESET,
             .preset = 0,
             .when_input = -1},
    [BASIS] = BASIS_INPUT,
    [PH] =
        {.name = "ph",
         .unit = "",
         .kind = HW_PH,
         .lo = HW_PH_MIN,
         .hi = HW_PH_MAX,
         .help =
             "pH of the tank, by a meter set in fresh-water buffers; below 5 or above 10 doubt it",
         .need = HW_REQUIRED,
         .when_input = -1},
    [ALKALINITY] =
        {.name = "alkalinity",
         .unit = "meq/L",
         .kind = HW_ALKALINITY,
         .lo = HW_BUFFER_ALKALINITY_MIN,
         .hi = HW_BUFFER_ALKALINITY_MAX,
         .help = "total alkalinity of the tank, as a kit titrates it; above 10 doubt the unit",
         .need = HW_OPTIONAL,
         .when_input = -1},
    [TEMP] = {.name = "temp",
              .unit = "C",
              .kind = HW_TEMPERATURE,
              .lo = HW_CARBONATE_TEMP_MIN,
              .hi = HW_CARBONATE_TEMP_MAX,
              .help = "temperature of the tank; no fish bears what lies outside",
              .need = HW_REQUIRED,
              .when_input = -1},
    [SALINITY] = {.name = "salinity",
                  .unit = "g/kg",
                  .kind = HW_SALINITY,
                  .lo = HW_PH_SALINITY_MIN,
                  .hi = HW_PH_SALINITY_MAX,
                  .help = "salinity of the tank, 0 for fresh; the constants hold no further",
                  .need = HW_REQUIRED,
                  .when_input = -1},
    [FRESH_TAN] =
        {.name = "fresh_tan",
         .unit = "mg/L",
         .kind = HW_CONCENTRATION,
         .lo = HW_BLEND_TAN_MIN,
         .hi = HW_BLEND_TAN_MAX,
         .help =
             "total ammonia of the new water, in the same basis; above 200 it is no water to use",
         .need = HW_PRESET,
         .preset = 0,
         .when_input = -1},
    [FRESH_PH] = {.name = "fresh_ph",
                  .unit = "",
                  .kind = HW_PH,
                  .lo = HW_PH_MIN,
                  .hi = HW_PH_MAX,
                  .help = "pH of the new water, by the same meter, when it has stood aired; below "
                          "5 or above 10 doubt it",
                  .need = HW_REQUIRED,
                  .when_input = -1},
    [FRESH_ALKALINITY] = {.name = "fresh_alkalinity",
                          .unit = "meq/L",
                          .kind = HW_ALKALINITY,
                          .lo = HW_BUFFER_ALKALINITY_MIN,
                          .hi = HW_BUFFER_ALKALINITY_MAX,
                          .help = "total alkalinity of the new water; above 10 doubt the unit",
                          .need = HW_OPTIONAL,
                          .when_input = -1},
    [FRESH_TEMP] = {.name = "fresh_temp",
                    .unit = "C",
                    .kind = HW_TEMPERATURE,
                    .lo = HW_CARBONATE_TEMP_MIN,
                    .hi = HW_CARBONATE_TEMP_MAX,
                    .help = "temperature of the new water; no fish bears what lies outside",
                    .need = HW_REQUIRED,
                    .when_input = -1},
    [FRESH_SALINITY] = {.name = "fresh_salinity",
                        .unit = "g/kg",
                        .kind = HW_SALINITY,
                        .lo = HW_PH_SALINITY_MIN,
                        .hi = HW_PH_SALINITY_MAX,
                        .help = "salinity of the new water; the constants hold no further",
                        .need = HW_REQUIRED,
                        .when_input = -1},
    [AIR_CO2] =
        {.name = "air_co2",
         .unit = "",
         .kind = HW_NUMBER,
         .lo = HW_CARBONATE_AIR_MIN,
         .hi = HW_CARBONATE_AIR_MAX,
         .help = "carbon dioxide of the air, uatm (ppm): open air 420, a closed room 800 to 1200",
         .need = HW_PRESET,
         .preset = 420,
         .when_input = -1},
};

static const struct hw_result results[RESULTS] = {
    [TEMP_AFTER] = {.name = "temp_after",
                    .unit = "C",
                    .kind = HW_TEMPERATURE,
                    .digits = 3,
                    .help = "temperature of the mixture"},
    [SALINITY_AFTER] = {.name = "salinity_after",
                        .unit = "g/kg",
                        .kind = HW_SALINITY,
                        .digits = 3,
                        .help = "salinity of the mixture"},
    [TEMP_STEP] = {.name = "temp_step",
                   .unit = "C",
                   .kind = HW_TEMPERATURE_STEP,
                   .digits = 2,
                   .help = "what the fish meet; above 0 warmer"},
    [SALINITY_STEP] = {.name = "salinity_step",
                       .unit = "g/kg",
                       .kind = HW_SALINITY,
                       .digits = 2,
                       .help = "what the fish meet; above 0 saltier"},
    [TAN_AFTER] = {.name = "tan_after",
                   .unit = "mg/L",
                   .kind = HW_CONCENTRATION,
                   .digits = 3,
                   .help = "total ammonia of the mixture, as N"},
    [FREE_BEFORE] = {.name = "free_before",
                     .unit = "mg/L",
                     .kind = HW_CONCENTRATION,
                     .digits = 2,
                     .help = "free ammonia before the change, as N"},
    [FREE_AFTER] = {.name = "free_after",
                    .unit = "mg/L",
                    .kind = HW_CONCENTRATION,
                    .digits = 2,
                    .sometimes = true,
                    .help = "free ammonia right after mixing, as N"},
    [PH_AFTER] = {.name = "ph_after",
                  .unit = "",
                  .kind = HW_PH,
                  .digits = 3,
                  .sometimes = true,
                  .help = "pH right after mixing, before gas goes in or out"},
    [FREE_SAME_CO2] = {.name = "free_same_co2",
                       .unit = "mg/L",
                       .kind = HW_CONCENTRATION,
                       .digits = 2,
                       .sometimes = true,
                       .help = "free ammonia if the tank comes back to its carbon dioxide"},
    [PH_SAME_CO2] = {.name = "ph_same_co2",
                     .unit = "",
                     .kind = HW_PH,
                     .digits = 3,
                     .sometimes = true,
                     .help = "pH then"},
    [FREE_AIRED] = {.name = "free_aired",
                    .unit = "mg/L",
                    .kind = HW_CONCENTRATION,
                    .digits = 2,
                    .sometimes = true,
                    .help = "free ammonia in balance with the air of the room"},
    [PH_AIRED] = {.name = "ph_aired",
                  .unit = "",
                  .kind = HW_PH,
                  .digits = 3,
                  .sometimes = true,
                  .help = "pH then, hours later"},
    [FREE_WORST] =
        {.name = "free_worst",
         .unit = "mg/L",
         .kind = HW_CONCENTRATION,
         .digits = 2,
         .sometimes = true,
         .help = "free ammonia at the higher of the two pH values, when alkalinity is not known"},
};

static const char *const sources[] = {
    "conservation",   "eos80",       "unesco44-heat", "carbonate-set",  "clegg1995",
    "dickson1990",    "dickson1979", "takahashi1982", "davies",         "emerson1975",
    "khoo1977",       "epa1989",     "epa2013",       "aquarium-steps", "common-practice",
    "our-arithmetic", NULL};

/* More than rounding, and more than any reading can tell. */
static const double noise = 1e-9;
static const double hundredth = 1.01;

static bool over(double step, enum hw_limit_key limit)
{
    return step > hw_limits[limit].value + noise;
}

static uint64_t ammonia_notes(const struct blend_states *s)
{
    double settled = fmax(s->free[SAME_CO2], s->free[AIRED]);
    double highest = fmax(fmax(s->free[MIXED], settled), s->free_worst);
    bool falls = s->tan_after < s->tan_before;
    return note_if(falls && highest > s->free_before * hundredth, HW_BLEND_NOTE_BLEND_FREES) |
           note_if(settled > s->free[MIXED] * hundredth, HW_BLEND_NOTE_BLEND_FREES_LATER) |
           note_if(s->tan_fresh > s->tan_before, HW_BLEND_NOTE_BLEND_BRINGS_AMMONIA) |
           note_if(s->over_salt, HW_BLEND_NOTE_OVER_LIMIT_SALT) |
           note_if(s->over_fresh, HW_BLEND_NOTE_OVER_LIMIT_FRESH);
}

static uint64_t step_notes(const struct blend_states *s, const double in[])
{
    double warmer = s->blend.temp - in[TEMP];
    double saltier = s->blend.salinity - in[SALINITY];
    return note_if(over(warmer, HW_LIMIT_TEMP_RISE), HW_BLEND_NOTE_BLEND_WARMS) |
           note_if(over(-warmer, HW_LIMIT_TEMP_FALL), HW_BLEND_NOTE_BLEND_COOLS) |
           note_if(over(saltier, HW_LIMIT_SALINITY_RISE), HW_BLEND_NOTE_SALT_STEP_UP) |
           note_if(over(-saltier, HW_LIMIT_SALINITY_FALL), HW_BLEND_NOTE_SALT_STEP_DOWN);
}

static uint64_t notes_of(const struct blend_states *s, const double in[])
{
    static const unsigned refusals[] = {[OVER_VOLUME] = HW_BLEND_NOTE_BLEND_OVER_VOLUME,
                                        [PH_NOT_ALKALINITY] = HW_BLEND_NOTE_PH_NOT_ALKALINITY,
                                        [OUTSIDE_PH] = HW_BLEND_NOTE_BLEND_OVER_PH};
    if (s->refusal != ANSWERED) {
        return note_bit(refusals[s->refusal]);
    }
    double freshest = fmin(in[SALINITY], in[FRESH_SALINITY]);
    return ammonia_notes(s) | step_notes(s, in) |
           note_if(freshest < hw_limits[HW_LIMIT_CARBONATE_FRESH].value,
                   HW_BLEND_NOTE_CARBONATE_FRESH) |
           note_if(s->stretched, HW_BLEND_NOTE_FIT_STRETCHED) |
           note_if(s->above_fit, HW_BLEND_NOTE_ABOVE_FIT) |
           note_if(s->co2_odd, HW_BLEND_NOTE_BLEND_CO2_ODD) |
           note_if(s->carbonate, HW_BLEND_NOTE_BLEND_STATES) |
           note_if(!s->carbonate, HW_BLEND_NOTE_BLEND_WORST) |
           note_bit(HW_BLEND_NOTE_BLEND_MEASURE);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct blend_states s = blend_states(in);
    *notes |= notes_of(&s, in) | note_bit(HW_BLEND_NOTE_ASK_VET);
    out[TEMP_AFTER] = s.blend.temp;
    out[SALINITY_AFTER] = s.blend.salinity;
    out[TEMP_STEP] = s.blend.temp - in[TEMP];
    out[SALINITY_STEP] = s.blend.salinity - in[SALINITY];
    out[TAN_AFTER] = s.tan_after;
    out[FREE_BEFORE] = s.free_before;
    out[FREE_AFTER] = s.free[MIXED];
    out[PH_AFTER] = s.ph[MIXED];
    out[FREE_SAME_CO2] = s.free[SAME_CO2];
    out[PH_SAME_CO2] = s.ph[SAME_CO2];
    out[FREE_AIRED] = s.free[AIRED];
    out[PH_AIRED] = s.ph[AIRED];
    out[FREE_WORST] = s.free_worst;
}

const struct hw_calc hw_calc_blend = {
    .name = "blend",
    .purpose = "what a water change does to temperature, salinity, pH and free ammonia",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_blend_notes,
    .n_notes = HW_BLEND_NOTES,
    .sources = sources,
    .answer = answer,
    .work = blend_work,
};
