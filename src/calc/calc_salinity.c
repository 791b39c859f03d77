/* calc_salinity.c - salinity from whatever instrument is at hand. */
#include "calc/list.h"
#include "calc/salinity_reading.h"

#include <math.h>

enum { SALINITY, DENSITY, SG_25_25, CONDUCTIVITY, RESULTS };

static const char *const of_words[] = {"sg",    "conductivity", "compensated", "refraction",
                                       "scale", "brine-gkg",    "brine-gL",    NULL};
static const char *const reference_words[] = {"60F/60F", "20C/20C", "25C/25C",
                                              "15C/4C",  "20C/4C",  NULL};

enum {
    FOR_SG = 1u << OF_SG,
    FOR_MS = 1u << OF_CONDUCTIVITY | 1u << OF_COMPENSATED,
    FOR_COMPENSATED = 1u << OF_COMPENSATED,
    FOR_INDEX = 1u << OF_REFRACTION,
    FOR_BARE = 1u << OF_SG | 1u << OF_REFRACTION,
    FOR_GKG = 1u << OF_SCALE | 1u << OF_BRINE_GKG,
    FOR_GL = 1u << OF_BRINE_GL
};

static const struct hw_input inputs[INPUTS] = {
    [OF] = {.name = "of",
            .unit = "",
            .kind = HW_CHOICE,
            .lo = 0,
            .hi = OF_BRINE_GL,
            .words = of_words,
            .help = "what the instrument reads: specific gravity; conductivity as it is, or"
                    " compensated to 25 C; refractive index; a sea-water scale; a brine (NaCl)"
                    " scale by mass or by volume",
            .need = HW_REQUIRED,
            .when_input = -1},
    [READING_SG] = {.name = "reading",
                    .unit = "",
                    .kind = HW_NUMBER,
                    .lo = 0.98,
                    .hi = 1.06,
                    .help = "specific gravity as read; brackish and sea water lie within",
                    .need = HW_REQUIRED,
                    .when_input = OF,
                    .when_words = FOR_SG},
    [READING_MS] =
        {.name = "reading",
         .unit = "mS/cm",
         .kind = HW_CONDUCTIVITY,
         .lo = HW_CONDUCTIVITY_MIN,
         .hi = HW_CONDUCTIVITY_MAX,
         .help = "conductivity as shown; at 45 g/kg and 40 C it is 86, a larger one is in uS/cm",
         .need = HW_REQUIRED,
         .when_input = OF,
         .when_words = FOR_MS},
    [READING_INDEX] =
        {.name = "reading",
         .unit = "",
         .kind = HW_NUMBER,
         .lo = 1.32,
         .hi = 1.36,
         .help = "refractive index (589 nm) as read; fresh water is 1.333, sea water 1.339",
         .need = HW_REQUIRED,
         .when_input = OF,
         .when_words = FOR_INDEX},
    [READING_GKG] = {.name = "reading",
                     .unit = "g/kg",
                     .kind = HW_SALINITY,
                     .lo = -5,
                     .hi = 60,
                     .help = "parts per thousand as read; below 0 only by an error of zero",
                     .need = HW_REQUIRED,
                     .when_input = OF,
                     .when_words = FOR_GKG},
    [READING_GL] = {.name = "reading",
                    .unit = "g/L",
                    .kind = HW_CONCENTRATION,
                    .lo = -5,
                    .hi = 60,
                    .help = "grams of NaCl in a litre as read; below 0 only by an error of zero",
                    .need = HW_REQUIRED,
                    .when_input = OF,
                    .when_words = FOR_GL},
    [TEMP] = {.name = "temp",
              .unit = "C",
              .kind = HW_TEMPERATURE,
              .lo = HW_SEAWATER_TEMP_MIN,
              .hi = HW_SEAWATER_TEMP_MAX,
              .help = "of the water when it was read; the equations hold no further",
              .need = HW_REQUIRED,
              .when_input = -1},
    [REFERENCE] = {.name = "reference",
                   .unit = "",
                   .kind = HW_CHOICE,
                   .lo = 0,
                   .hi = 4,
                   .words = reference_words,
                   .help = "the two temperatures printed on a hydrometer's scale or in its leaflet;"
                           " they are never guessed: 1.0264 at 25 C is 35.0 g/kg on 25C/25C, 37.4"
                           " on 60F/60F and 38.8 on 20C/4C",
                   .need = HW_REQUIRED,
                   .when_input = OF,
                   .when_words = FOR_SG},
    [GLASS] = {.name = "glass",
               .unit = "",
               .kind = HW_CHOICE,
               .lo = 0,
               .hi = 1,
               .words = yes_no_words,
               .help =
                   "whether the hydrometer is glass, which grows with heat; no corrects nothing",
               .need = HW_PRESET,
               .preset = YES,
               .when_input = OF,
               .when_words = FOR_SG},
    [SLOPE] = {.name = "slope",
               .unit = "%/C",
               .kind = HW_SLOPE,
               .lo = HW_CONDUCTIVITY_SLOPE_MIN,
               .hi = HW_CONDUCTIVITY_SLOPE_MAX,
               .help = "per cent per C by which the meter compensates; makers use 1.9 to 2.2",
               .need = HW_PRESET,
               .preset = 2.0,
               .when_input = OF,
               .when_words = FOR_COMPENSATED},
    [ZERO_BARE] =
        {.name = "zero",
         .unit = "",
         .kind = HW_NUMBER,
         .lo = -0.02,
         .hi = 0.02,
         .help = "what the instrument shows too much in pure water, on its own scale: 0.002 when"
                 " it shows 1.002 for 1.000",
         .need = HW_PRESET,
         .preset = 0,
         .when_input = OF,
         .when_words = FOR_BARE},
    [ZERO_MS] = {.name = "zero",
                 .unit = "mS/cm",
                 .kind = HW_CONDUCTIVITY,
                 .lo = -5,
                 .hi = 5,
                 .help = "what the meter shows in pure water; more than 5 is no zero error",
                 .need = HW_PRESET,
                 .preset = 0,
                 .when_input = OF,
                 .when_words = FOR_MS},
    [ZERO_GKG] = {.name = "zero",
                  .unit = "g/kg",
                  .kind = HW_SALINITY,
                  .lo = -10,
                  .hi = 10,
                  .help = "what the instrument shows in pure water; more than 10 is no zero error",
                  .need = HW_PRESET,
                  .preset = 0,
                  .when_input = OF,
                  .when_words = FOR_GKG},
    [ZERO_GL] = {.name = "zero",
                 .unit = "g/L",
                 .kind = HW_CONCENTRATION,
                 .lo = -10,
                 .hi = 10,
                 .help = "what the instrument shows in pure water; more than 10 is no zero error",
                 .need = HW_PRESET,
                 .preset = 0,
                 .when_input = OF,
                 .when_words = FOR_GL},
    [STANDARD_SG] = {.name = "standard",
                     .unit = "",
                     .kind = HW_NUMBER,
                     .lo = 0.98,
                     .hi = 1.06,
                     .help = "true reading of a standard on this scale, with --standard-reads",
                     .need = HW_OPTIONAL,
                     .when_input = OF,
                     .when_words = FOR_SG},
    [STANDARD_MS] = {.name = "standard",
                     .unit = "mS/cm",
                     .kind = HW_CONDUCTIVITY,
                     .lo = 0.05,
                     .hi = HW_CONDUCTIVITY_MAX,
                     .help = "conductivity of a standard as its label tells it for this meter,"
                             " with --standard-reads; weaker ones prove nothing of salt water",
                     .need = HW_OPTIONAL,
                     .when_input = OF,
                     .when_words = FOR_MS},
    [STANDARD_INDEX] = {.name = "standard",
                        .unit = "",
                        .kind = HW_NUMBER,
                        .lo = 1.32,
                        .hi = 1.36,
                        .help = "true index of a standard, with --standard-reads",
                        .need = HW_OPTIONAL,
                        .when_input = OF,
                        .when_words = FOR_INDEX},
    [STANDARD_GKG] = {.name = "standard",
                      .unit = "g/kg",
                      .kind = HW_SALINITY,
                      .lo = 5,
                      .hi = 60,
                      .help = "what a true instrument of this scale shows in a standard, with"
                              " --standard-reads; weaker than 5 magnifies every error",
                      .need = HW_OPTIONAL,
                      .when_input = OF,
                      .when_words = FOR_GKG},
    [STANDARD_GL] = {.name = "standard",
                     .unit = "g/L",
                     .kind = HW_CONCENTRATION,
                     .lo = 5,
                     .hi = 60,
                     .help = "what a true instrument of this scale shows in a standard, with"
                             " --standard-reads; weaker than 5 magnifies every error",
                     .need = HW_OPTIONAL,
                     .when_input = OF,
                     .when_words = FOR_GL},
    [READS_SG] = {.name = "standard_reads",
                  .unit = "",
                  .kind = HW_NUMBER,
                  .lo = 0.98,
                  .hi = 1.06,
                  .help = "what this hydrometer shows in the standard, after zero is taken off",
                  .need = HW_OPTIONAL,
                  .when_input = OF,
                  .when_words = FOR_SG},
    [READS_MS] = {.name = "standard_reads",
                  .unit = "mS/cm",
                  .kind = HW_CONDUCTIVITY,
                  .lo = 0.05,
                  .hi = HW_CONDUCTIVITY_MAX,
                  .help = "what this meter shows in the standard, after zero is taken off",
                  .need = HW_OPTIONAL,
                  .when_input = OF,
                  .when_words = FOR_MS},
    [READS_INDEX] = {.name = "standard_reads",
                     .unit = "",
                     .kind = HW_NUMBER,
                     .lo = 1.32,
                     .hi = 1.36,
                     .help = "what this instrument shows in the standard, after zero is taken off",
                     .need = HW_OPTIONAL,
                     .when_input = OF,
                     .when_words = FOR_INDEX},
    [READS_GKG] = {.name = "standard_reads",
                   .unit = "g/kg",
                   .kind = HW_SALINITY,
                   .lo = 5,
                   .hi = 60,
                   .help = "what this instrument shows in the standard, after zero is taken off",
                   .need = HW_OPTIONAL,
                   .when_input = OF,
                   .when_words = FOR_GKG},
    [READS_GL] = {.name = "standard_reads",
                  .unit = "g/L",
                  .kind = HW_CONCENTRATION,
                  .lo = 5,
                  .hi = 60,
                  .help = "what this instrument shows in the standard, after zero is taken off",
                  .need = HW_OPTIONAL,
                  .when_input = OF,
                  .when_words = FOR_GL},
};

static const struct hw_result results[RESULTS] = {
    [SALINITY] = {.name = "salinity",
                  .unit = "g/kg",
                  .kind = HW_SALINITY,
                  .digits = 3,
                  .help = "salinity of the water (practical salinity, taken as g/kg)"},
    [DENSITY] = {.name = "density",
                 .unit = "kg/m3",
                 .kind = HW_DENSITY,
                 .digits = 6,
                 .help = "its density at the temperature given"},
    [SG_25_25] = {.name = "sg_25_25",
                  .unit = "",
                  .kind = HW_NUMBER,
                  .digits = 5,
                  .help = "what a true hydrometer 25C/25C shows in it at 25 C"},
    [CONDUCTIVITY] = {.name = "conductivity",
                      .unit = "mS/cm",
                      .kind = HW_CONDUCTIVITY,
                      .digits = 3,
                      .help = "its conductivity at the temperature given, not compensated"},
};

static const char *const sources[] = {
    "eos80",         "pss78",          "hill1986",    "iso1768",
    "aguilera2008",  "quan-fry1995",   "brine-table", "meter-manuals",
    "label-and-law", "our-arithmetic", NULL};

/* More than this between the salinity with and without correction, and the instrument wants
 * care. */
static const double large_correction = 2;

/* Warmer or colder than this, and how a meter compensates decides. */
static const double near_25 = 1;
static const double far_from_25 = 3;

static uint64_t refusals(const struct salinity_reading *r)
{
    return note_if(isnan(r->standard) != isnan(r->reads), HW_SALINITY_NOTE_STANDARD_ALONE) |
           note_if(isnan(r->found) && r->above, HW_SALINITY_NOTE_TOO_SALTY) |
           note_if(isnan(r->found) && !r->above, HW_SALINITY_NOTE_BELOW_FRESH);
}

static uint64_t stretches(const struct salinity_reading *r)
{
    bool index_fits = r->temp >= HW_REFRACTION_TEMP_FIT_MIN &&
                      r->temp <= HW_REFRACTION_TEMP_FIT_MAX &&
                      r->salinity <= HW_REFRACTION_SALINITY_FITTED;
    return note_if(r->found < 0, HW_SALINITY_NOTE_COUNTED_AS_FRESH) |
           note_if(r->salinity > HW_SEAWATER_SALINITY_FITTED, HW_SALINITY_NOTE_ABOVE_FIT) |
           note_if(r->temp > HW_CONDUCTIVITY_TEMP_FITTED, HW_SALINITY_NOTE_WARM_CONDUCTIVITY) |
           note_if(r->of == OF_REFRACTION && !index_fits, HW_SALINITY_NOTE_INDEX_STRETCHED);
}

/* Zero and standard: used together, and how much they move. */
static uint64_t correction_notes(const struct salinity_reading *r)
{
    bool both = r->zero != 0 && !isnan(r->standard);
    double move = fabs(salinity_behind(r, r->reading) - r->found);
    return note_if(both, HW_SALINITY_NOTE_ZERO_AND_STANDARD) |
           note_if(!(move <= large_correction), HW_SALINITY_NOTE_LARGE_CORRECTION);
}

/* What must be known of each kind of instrument. */
static uint64_t instrument_notes(const struct salinity_reading *r, double glass)
{
    bool meter = r->of == OF_CONDUCTIVITY || r->of == OF_COMPENSATED;
    bool brine = r->of == OF_BRINE_GKG || r->of == OF_BRINE_GL;
    double from_25 = fabs(r->temp - 25);
    return note_if(r->of == OF_SG, HW_SALINITY_NOTE_HYDROMETER_ROUGH) |
           note_if(r->of == OF_SG && glass == YES, HW_SALINITY_NOTE_TAKEN_AS_GLASS) |
           note_if(r->of == OF_SG && glass == NO, HW_SALINITY_NOTE_NOT_GLASS) |
           note_if(r->of == OF_CONDUCTIVITY && from_25 > near_25,
                   HW_SALINITY_NOTE_MAYBE_COMPENSATED) |
           note_if(r->of == OF_COMPENSATED && from_25 > far_from_25,
                   HW_SALINITY_NOTE_SLOPE_MATTERS) |
           note_if(r->of == OF_COMPENSATED, HW_SALINITY_NOTE_LINEAR_ONLY) |
           note_if(meter && r->salinity < HW_CONDUCTIVITY_LOW, HW_SALINITY_NOTE_FRESH_IONS) |
           note_if(r->of == OF_REFRACTION, HW_SALINITY_NOTE_INDEX_ROUGH) |
           note_if(r->of == OF_SCALE, HW_SALINITY_NOTE_SCALE_TAKEN) |
           note_if(brine, HW_SALINITY_NOTE_BRINE_FACTOR) |
           note_if(brine || r->of == OF_SCALE, HW_SALINITY_NOTE_READ_AS_AT_20);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct salinity_reading r = salinity_reading(in);
    uint64_t refused = refusals(&r);
    *notes |=
        refused | note_bit(HW_SALINITY_NOTE_SEA_SALT_ONLY) | note_bit(HW_SALINITY_NOTE_ASK_VET);
    if (refused == 0) {
        *notes |= stretches(&r) | correction_notes(&r) | instrument_notes(&r, in[GLASS]);
    }
    out[SALINITY] = r.salinity;
    out[DENSITY] = r.density;
    out[SG_25_25] = r.gravity;
    out[CONDUCTIVITY] = r.conductivity;
}

const struct hw_calc hw_calc_salinity = {
    .name = "salinity",
    .purpose = "salinity from a hydrometer, a conductivity meter or a refractometer",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_salinity_notes,
    .n_notes = HW_SALINITY_NOTES,
    .sources = sources,
    .answer = answer,
    .work = salinity_work,
};
