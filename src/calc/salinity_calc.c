/* salinity_calc.c - salinity from whatever instrument is at hand. */
#include "calc/list.h"
#include "calc/salinity_reading.h"

#include <math.h>

/* clang-format off */
enum {
    SALINITY_SALINITY, SALINITY_FROM, SALINITY_TO, SALINITY_DENSITY, SALINITY_SG_25_25,
    SALINITY_CONDUCTIVITY, SALINITY_RESULTS
};
/* clang-format on */

static const char *const of_words[] = {"sg",    "conductivity", "compensated", "refraction",
                                       "scale", "brine-gkg",    "brine-gL",    NULL};
static const char *const reference_words[] = {"60F/60F", "20C/20C", "25C/25C", "15C/4C",
                                              "20C/4C",  "unknown", NULL};
static const char *const standard_words[] = {"sea-water", "brine", NULL};

enum {
    SALINITY_FOR_SG = 1u << SALINITY_OF_SG,
    SALINITY_FOR_MS = 1u << SALINITY_OF_CONDUCTIVITY | 1u << SALINITY_OF_COMPENSATED,
    SALINITY_FOR_COMPENSATED = 1u << SALINITY_OF_COMPENSATED,
    SALINITY_FOR_INDEX = 1u << SALINITY_OF_REFRACTION,
    SALINITY_FOR_BARE = 1u << SALINITY_OF_SG | 1u << SALINITY_OF_REFRACTION,
    SALINITY_FOR_GKG = 1u << SALINITY_OF_SCALE | 1u << SALINITY_OF_BRINE_GKG,
    SALINITY_FOR_SCALE = 1u << SALINITY_OF_SCALE,
    SALINITY_FOR_BRINE_GKG = 1u << SALINITY_OF_BRINE_GKG,
    SALINITY_FOR_GL = 1u << SALINITY_OF_BRINE_GL,
    SALINITY_IF_SEA_WATER = 1u << SALINITY_SEA_WATER,
    SALINITY_IF_BRINE = 1u << SALINITY_BRINE
};

/* clang-format off */
static const struct hw_input inputs[SALINITY_INPUTS] = {
    [SALINITY_OF] = {.name = "of", .unit = "", .kind = HW_CHOICE, .hi = SALINITY_OF_BRINE_GL,
     .words = of_words, .help = "what the instrument reads (scale: for sea water)"},
    [SALINITY_READING_SG] = {.name = "reading", .unit = "", .kind = HW_NUMBER, .lo = 0.98,
     .hi = 1.06, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_SG,
     .beyond = "brackish and sea water lie within", .help = "specific gravity as read"},
    [SALINITY_READING_MS] = {.name = "reading", .unit = "mS/cm", .kind = HW_CONDUCTIVITY,
     .lo = HW_CONDUCTIVITY_MIN, .hi = HW_CONDUCTIVITY_MAX, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_MS, .beyond = "more is in uS/cm, 45 g/kg at 40 C has 86 mS/cm",
     .help = "conductivity as shown"},
    [SALINITY_READING_INDEX] = {.name = "reading", .unit = "", .kind = HW_NUMBER, .lo = 1.32,
     .hi = 1.36, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_INDEX,
     .beyond = "fresh water is 1.333, sea water 1.339",
     .help = "refractive index (589 nm) as read"},
    [SALINITY_READING_GKG] = {.name = "reading", .unit = "g/kg", .kind = HW_SALINITY, .lo = -5,
     .hi = 60, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_GKG,
     .beyond = "check the scale and its zero", .help = "parts per thousand as read"},
    [SALINITY_READING_GL] = {.name = "reading", .unit = "g/L", .kind = HW_CONCENTRATION,
     .lo = -5, .hi = 60, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_GL,
     .beyond = "check the scale and its zero", .help = "grams of NaCl in a litre as read"},
    [SALINITY_TEMP] = {.name = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_SEAWATER_TEMP_MIN, .hi = HW_SEAWATER_TEMP_MAX,
     .beyond = "the formula is valid to here", .help = "water temperature when it was read"},
    [SALINITY_REFERENCE] = {.name = "reference", .unit = "", .kind = HW_CHOICE,
     .hi = SALINITY_UNKNOWN, .words = reference_words, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_SG, .help = "the two temperatures on the hydrometer or leaflet"},
    [SALINITY_GLASS] = {.name = "glass", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .need = HW_PRESET, .preset = YES, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_SG, .help = "is the hydrometer made of glass?"},
    [SALINITY_SLOPE] = {.name = "slope", .unit = "%/C", .kind = HW_SLOPE, .lo = 100 *
     HW_CONDUCTIVITY_PER_DEGREE_MIN, .hi = 100 * HW_CONDUCTIVITY_PER_DEGREE_MAX,
     .need = HW_PRESET, .preset = 2.0, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_COMPENSATED, .beyond = "makers use 1.9 to 2.2",
     .help = "how much the meter corrects for each degree C"},
    [SALINITY_ZERO_BARE] = {.name = "zero", .unit = "", .kind = HW_NUMBER, .lo = -0.02,
     .hi = 0.02, .need = HW_PRESET, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_BARE,
     .beyond = "0.002 where pure water shows 1.002 for 1.000",
     .help = "how much too high it reads in pure water"},
    [SALINITY_ZERO_MS] = {.name = "zero", .unit = "mS/cm", .kind = HW_CONDUCTIVITY, .lo = -5,
     .hi = 5, .need = HW_PRESET, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_MS,
     .beyond = "more is no error of zero", .help = "how much too high it reads in pure water"},
    [SALINITY_ZERO_GKG] = {.name = "zero", .unit = "g/kg", .kind = HW_SALINITY, .lo = -10,
     .hi = 10, .need = HW_PRESET, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_GKG,
     .beyond = "more is no error of zero", .help = "how much too high it reads in pure water"},
    [SALINITY_ZERO_GL] = {.name = "zero", .unit = "g/L", .kind = HW_CONCENTRATION, .lo = -10,
     .hi = 10, .need = HW_PRESET, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_GL,
     .beyond = "more is no error of zero", .help = "how much too high it reads in pure water"},
    [SALINITY_STANDARD_IS_GKG] = {.name = "standard_is", .unit = "", .kind = HW_CHOICE,
     .hi = SALINITY_BRINE, .words = standard_words, .need = HW_OPTIONAL,
     .when_input = SALINITY_OF, .when_words = SALINITY_FOR_BRINE_GKG,
     .help = "what the standard is"},
    [SALINITY_STANDARD_IS_GL] = {.name = "standard_is", .unit = "", .kind = HW_CHOICE,
     .hi = SALINITY_BRINE, .words = standard_words, .need = HW_OPTIONAL,
     .when_input = SALINITY_OF, .when_words = SALINITY_FOR_GL, .help = "what the standard is"},
    [SALINITY_STANDARD_SG] = {.name = "standard", .unit = "", .kind = HW_NUMBER, .lo = 0.98,
     .hi = 1.06, .need = HW_OPTIONAL, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_SG,
     .beyond = "brackish and sea water lie within",
     .help = "true reading of a standard on this scale"},
    [SALINITY_STANDARD_MS] = {.name = "standard", .unit = "mS/cm", .kind = HW_CONDUCTIVITY,
     .lo = 0.05, .hi = HW_CONDUCTIVITY_MAX, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_MS, .beyond = "a weaker one proves nothing of salt water",
     .help = "conductivity of a standard, by its label"},
    [SALINITY_STANDARD_INDEX] = {.name = "standard", .unit = "", .kind = HW_NUMBER, .lo = 1.32,
     .hi = 1.36, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_INDEX, .beyond = "fresh water is 1.333, sea water 1.339",
     .help = "true refractive index of a standard"},
    [SALINITY_STANDARD_SCALE] = {.name = "standard", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = 5, .hi = HW_SEAWATER_SALINITY_MAX, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_SCALE, .beyond = "a weaker one magnifies every error",
     .help = "salinity of a sea-water standard, by its label"},
    [SALINITY_STANDARD_GKG] = {.name = "standard", .unit = "g/kg", .kind = HW_SALINITY, .lo = 5,
     .hi = HW_SEAWATER_SALINITY_MAX, .need = HW_OPTIONAL, .when_input = SALINITY_STANDARD_IS_GKG,
     .when_words = SALINITY_IF_SEA_WATER | SALINITY_IF_BRINE,
     .beyond = "a weaker one magnifies every error", .help = "what the standard's label says"},
    [SALINITY_STANDARD_GL] = {.name = "standard", .unit = "g/L", .kind = HW_CONCENTRATION,
     .lo = 5, .hi = 60, .need = HW_OPTIONAL, .when_input = SALINITY_STANDARD_IS_GL,
     .when_words = SALINITY_IF_BRINE, .beyond = "a weaker one magnifies every error",
     .help = "salt (NaCl) in a brine standard, by its label"},
    [SALINITY_STANDARD_GL_SEA] = {.name = "standard", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = 5, .hi = HW_SEAWATER_SALINITY_MAX, .need = HW_OPTIONAL,
     .when_input = SALINITY_STANDARD_IS_GL, .when_words = SALINITY_IF_SEA_WATER,
     .beyond = "a weaker one magnifies every error",
     .help = "salinity of a sea-water standard, by its label"},
    [SALINITY_READS_SG] = {.name = "standard_reads", .unit = "", .kind = HW_NUMBER, .lo = 0.98,
     .hi = 1.06, .need = HW_OPTIONAL, .when_input = SALINITY_OF, .when_words = SALINITY_FOR_SG,
     .beyond = "brackish and sea water lie within",
     .help = "what it shows in the standard, zero taken off"},
    [SALINITY_READS_MS] = {.name = "standard_reads", .unit = "mS/cm", .kind = HW_CONDUCTIVITY,
     .lo = 0.05, .hi = HW_CONDUCTIVITY_MAX, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_MS, .beyond = "a weaker one proves nothing of salt water",
     .help = "what it shows in the standard, zero taken off"},
    [SALINITY_READS_INDEX] = {.name = "standard_reads", .unit = "", .kind = HW_NUMBER,
     .lo = 1.32, .hi = 1.36, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_INDEX, .beyond = "fresh water is 1.333, sea water 1.339",
     .help = "what it shows in the standard, zero taken off"},
    [SALINITY_READS_GKG] = {.name = "standard_reads", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = 5, .hi = 60, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_GKG, .beyond = "a weaker one magnifies every error",
     .help = "what it shows in the standard, zero taken off"},
    [SALINITY_READS_GL] = {.name = "standard_reads", .unit = "g/L", .kind = HW_CONCENTRATION,
     .lo = 5, .hi = 60, .need = HW_OPTIONAL, .when_input = SALINITY_OF,
     .when_words = SALINITY_FOR_GL, .beyond = "a weaker one magnifies every error",
     .help = "what it shows in the standard, zero taken off"},
};

static const struct hw_result results[SALINITY_RESULTS] = {
    [SALINITY_SALINITY] = {.name = "salinity", .unit = "g/kg", .kind = HW_SALINITY, .digits = 3,
     .sometimes = true, .help = "practical salinity, taken as g/kg"},
    [SALINITY_FROM] = {.name = "salinity_from", .unit = "g/kg", .kind = HW_SALINITY, .digits = 3,
     .sometimes = true, .help = "lowest salinity the reading can mean"},
    [SALINITY_TO] = {.name = "salinity_to", .unit = "g/kg", .kind = HW_SALINITY, .digits = 3,
     .sometimes = true, .help = "highest salinity the reading can mean"},
    [SALINITY_DENSITY] = {.name = "density", .unit = "kg/m3", .kind = HW_DENSITY, .digits = 6,
     .sometimes = true, .help = "density at this temperature"},
    [SALINITY_SG_25_25] = {.name = "sg_25_25", .unit = "", .kind = HW_NUMBER, .digits = 5,
     .sometimes = true, .help = "what a true 25C/25C hydrometer shows at 25 C"},
    [SALINITY_CONDUCTIVITY] = {.name = "conductivity", .unit = "mS/cm", .kind = HW_CONDUCTIVITY,
     .digits = 3, .sometimes = true, .help = "at this temperature, not compensated"},
};
/* clang-format on */

static const char *const sources[] = {
    "eos80",         "pss78",          "hill1986",    "iso1768",
    "aguilera2008",  "quan-fry1995",   "brine-table", "meter-manuals",
    "label-and-law", "our-arithmetic", NULL};

static uint64_t refusals(const struct salinity_reading *r)
{
    bool alone = isnan(r->standard) && !isnan(r->standard_is);
    return note_if(alone || isnan(r->standard) != isnan(r->reads),
                   HW_SALINITY_NOTE_STANDARD_ALONE) |
           note_if(isnan(r->found) && r->above, HW_SALINITY_NOTE_TOO_SALTY) |
           note_if(isnan(r->found) && !r->above, HW_SALINITY_NOTE_BELOW_FRESH);
}

static uint64_t stretches(const struct salinity_reading *r)
{
    bool index_fits = !below(r->temp, HW_REFRACTION_TEMP_FIT_MIN) &&
                      !above(r->temp, HW_REFRACTION_TEMP_FIT_MAX) &&
                      !above(r->salinity, HW_REFRACTION_SALINITY_FITTED);
    return note_if(below(r->found, 0), HW_SALINITY_NOTE_COUNTED_AS_FRESH) |
           note_if(above(r->salinity, HW_SEAWATER_SALINITY_FITTED), HW_SALINITY_NOTE_ABOVE_FIT) |
           note_if(above(r->temp, HW_CONDUCTIVITY_TEMP_FITTED),
                   HW_SALINITY_NOTE_WARM_CONDUCTIVITY) |
           note_if(r->of == SALINITY_OF_REFRACTION && !index_fits,
                   HW_SALINITY_NOTE_INDEX_STRETCHED);
}

/* Zero and standard: used together, and how much they move. */
static uint64_t correction_notes(const struct salinity_reading *r)
{
    bool both = r->zero != 0 && !isnan(r->standard);
    double move = fabs(salinity_behind(r, r->reading) - r->found);
    return note_if(both, HW_SALINITY_NOTE_ZERO_AND_STANDARD) |
           note_if(isnan(move) || above_limit(move, HW_LIMIT_SALINITY_CORRECTION),
                   HW_SALINITY_NOTE_LARGE_CORRECTION);
}

/* What must be known of each kind of instrument. */
static uint64_t instrument_notes(const struct salinity_reading *r, double glass)
{
    bool meter = r->of == SALINITY_OF_CONDUCTIVITY || r->of == SALINITY_OF_COMPENSATED;
    bool brine = r->of == SALINITY_OF_BRINE_GKG || r->of == SALINITY_OF_BRINE_GL;
    double from_25 = fabs(r->temp - 25);
    return note_if(r->of == SALINITY_OF_SG, HW_SALINITY_NOTE_HYDROMETER_ROUGH) |
           note_if(r->of == SALINITY_OF_SG && glass == YES, HW_SALINITY_NOTE_TAKEN_AS_GLASS) |
           note_if(r->of == SALINITY_OF_SG && glass == NO, HW_SALINITY_NOTE_NOT_GLASS) |
           note_if(r->of == SALINITY_OF_CONDUCTIVITY &&
                       above_limit(from_25, HW_LIMIT_COMPENSATION_TEMP),
                   HW_SALINITY_NOTE_MAYBE_COMPENSATED) |
           note_if(r->of == SALINITY_OF_COMPENSATED && above_limit(from_25, HW_LIMIT_SLOPE_TEMP),
                   HW_SALINITY_NOTE_SLOPE_MATTERS) |
           note_if(r->of == SALINITY_OF_COMPENSATED, HW_SALINITY_NOTE_LINEAR_ONLY) |
           note_if(meter && below(r->salinity, HW_CONDUCTIVITY_LOW), HW_SALINITY_NOTE_FRESH_IONS) |
           note_if(r->of == SALINITY_OF_REFRACTION, HW_SALINITY_NOTE_INDEX_ROUGH) |
           note_if(r->of == SALINITY_OF_SCALE, HW_SALINITY_NOTE_SCALE_TAKEN) |
           note_if(brine, HW_SALINITY_NOTE_BRINE_FACTOR) |
           note_if(brine || r->of == SALINITY_OF_SCALE, HW_SALINITY_NOTE_READ_AS_AT_20);
}

/* All that is to be said of one reading. */
static uint64_t notes_of(const struct salinity_reading *r, double glass)
{
    uint64_t refused = refusals(r);
    return refused != 0 ? refused : stretches(r) | correction_notes(r) | instrument_notes(r, glass);
}

/* Of a hydrometer without its reference there is a range alone. What is to be said of either end
 * holds for the range. */
static uint64_t answer_range(const double in[], double out[])
{
    struct salinity_range range = salinity_range(in);
    struct salinity_reading low = salinity_reading_by(in, range.low);
    struct salinity_reading high = salinity_reading_by(in, range.high);
    out[SALINITY_FROM] = low.salinity;
    out[SALINITY_TO] = high.salinity;
    return notes_of(&low, in[SALINITY_GLASS]) | notes_of(&high, in[SALINITY_GLASS]) |
           note_if(refusals(&low) == 0, HW_SALINITY_NOTE_REFERENCE_UNKNOWN);
}

static uint64_t answer_one(const double in[], double out[])
{
    struct salinity_reading r = salinity_reading(in);
    out[SALINITY_SALINITY] = r.salinity;
    out[SALINITY_DENSITY] = r.density;
    out[SALINITY_SG_25_25] = r.gravity;
    out[SALINITY_CONDUCTIVITY] = r.conductivity;
    return notes_of(&r, in[SALINITY_GLASS]);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    for (size_t i = 0; i < SALINITY_RESULTS; i++) {
        out[i] = NAN;
    }
    *notes |= salinity_reference_unknown(in) ? answer_range(in, out) : answer_one(in, out);
}

/* clang-format off */
const struct hw_calc hw_calc_salinity = {
    .name = "salinity",
    .purpose = "salinity from a hydrometer, conductivity meter or refractometer",
    .inputs = inputs, .n_inputs = SALINITY_INPUTS, .results = results,
    .n_results = SALINITY_RESULTS, .notes = hw_salinity_notes, .n_notes = HW_SALINITY_NOTES,
    .sources = sources, .answer = answer, .work = salinity_work,
};
/* clang-format on */
