/* challenge_calc.c - how much ammonia proves a filter, what to expect of it, and what it costs the
 * water. */
#include "calc/challenge_dose.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    CHALLENGE_MASS, CHALLENGE_LIQUID, CHALLENGE_READING_N, CHALLENGE_READING_NH3,
    CHALLENGE_READING_NH4, CHALLENGE_NITRATE, CHALLENGE_FREE_PEAK, CHALLENGE_PH_AFTER,
    CHALLENGE_NITROGEN, CHALLENGE_ALKALINITY_USED, CHALLENGE_OXYGEN_USED, CHALLENGE_RESULTS
};
/* clang-format on */

static const char *const reagent_words[] = {"ammonium-chloride", "ammonium-sulfate",
                                            "ammonia-solution", "concentrate", NULL};
static const char *const strength_words[] = {"nh3", "nh4oh", NULL};
enum { CHALLENGE_SALTS = 1u << CHALLENGE_CHLORIDE | 1u << CHALLENGE_SULFATE };

/* clang-format off */
static const struct hw_input inputs[CHALLENGE_INPUTS] = {
    [CHALLENGE_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = 0.1, .hi = 1e5, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [CHALLENGE_FISH] = {.name = "fish", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .help = "are fish or other animals in the water?"},
    [CHALLENGE_TARGET] = {.name = "target", .aim = true, .unit = "mg/L",
     .kind = HW_CONCENTRATION, .lo = 0.1, .hi = 50, .need = HW_PRESET, .preset = 2,
     .beyond = "no kit reads less, more proves nothing",
     .help = "total ammonia after the dose, in the kit's basis"},
    [CHALLENGE_BASIS] = BASIS_INPUT,
    [CHALLENGE_NOW] = {.name = "now", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 50,
     .need = HW_PRESET, .beyond = "change water first",
     .help = "total ammonia before the dose, in the kit's basis"},
    [CHALLENGE_REAGENT] = {.name = "reagent", .unit = "", .kind = HW_CHOICE, .hi = 3,
     .words = reagent_words, .need = HW_PRESET, .preset = CHALLENGE_CHLORIDE,
     .help = "what is dosed"},
    [CHALLENGE_STRENGTH] = {.name = "strength", .unit = "%", .kind = HW_SHARE, .unit_must = true,
     .lo = 0.5, .hi = 62, .when_input = CHALLENGE_REAGENT, .when_words = 1u <<
     CHALLENGE_SOLUTION, .beyond = "the table has 0.5 to 30 % NH3, to 61.7 % NH4OH",
     .help = "ammonia in the bottle by mass"},
    [CHALLENGE_STRENGTH_AS] = {.name = "strength_as", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = strength_words, .need = HW_PRESET, .preset = CHALLENGE_AS_NH3,
     .when_input = CHALLENGE_REAGENT, .when_words = 1u << CHALLENGE_SOLUTION,
     .help = "what the label's per cent counts"},
    [CHALLENGE_CONCENTRATE_STRENGTH] = {.name = "concentrate_strength", .unit = "g/L",
     .kind = HW_CONCENTRATION, .unit_must = true, .lo = 0.01, .hi = 300,
     .when_input = CHALLENGE_REAGENT, .when_words = 1u << CHALLENGE_CONCENTRATE,
     .beyond = "check the unit, no concentrate is so weak or so strong",
     .help = "ammonia in the concentrate, in the kit's basis"},
    [CHALLENGE_PURITY] = {.name = "purity", .unit = "%", .kind = HW_SHARE, .unit_must = true,
     .lo = 100 * HW_CHALLENGE_PURITY_SHARE_MIN, .hi = 100 * HW_CHALLENGE_PURITY_SHARE_MAX,
     .need = HW_PRESET, .preset = 100, .when_input = CHALLENGE_REAGENT,
     .when_words = CHALLENGE_SALTS, .beyond = "less is something else",
     .help = "share of the powder that is the salt"},
    [CHALLENGE_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH before dosing, meter set in fresh-water buffers"},
    [CHALLENGE_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "the formula is valid to here", .help = "water temperature"},
    [CHALLENGE_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of sea-salt water, 0 for fresh"},
    [CHALLENGE_ALKALINITY] = {.name = "alkalinity", .tank = "alkalinity", .unit = "meq/L",
     .kind = HW_ALKALINITY, .lo = HW_BUFFER_ALKALINITY_MIN, .hi = HW_BUFFER_ALKALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "total alkalinity before dosing, as a kit reads it"},
};
/* clang-format on */

/* Nobody lives in the water: neither side of a dose is the dangerous one, so none is rounded to a
 * side. */
/* clang-format off */
static const struct hw_result results[CHALLENGE_RESULTS] = {
    [CHALLENGE_MASS] = {.name = "mass", .unit = "g", .kind = HW_MASS, .digits = 3,
     .sometimes = true, .pour = true, .help = "of the reagent (--reagent), to weigh"},
    [CHALLENGE_LIQUID] = {.name = "liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .sometimes = true, .pour = true, .help = "into the tank"},
    [CHALLENGE_READING_N] = {.name = "reading_n", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "what a kit for NH3-N will show"},
    [CHALLENGE_READING_NH3] = {.name = "reading_nh3", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "what a kit for NH3 will show"},
    [CHALLENGE_READING_NH4] = {.name = "reading_nh4", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "what a kit for NH4 will show"},
    [CHALLENGE_NITRATE] = {.name = "nitrate", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "nitrate it makes in the end, as the ion"},
    [CHALLENGE_FREE_PEAK] = {.name = "free_peak", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "free ammonia after the dose, as N"},
    [CHALLENGE_PH_AFTER] = {.name = "ph_after", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .help = "pH right after the dose is mixed in"},
    [CHALLENGE_NITROGEN] = {.name = "nitrogen", .unit = "mg", .kind = HW_MASS, .digits = 3,
     .detail = true, .help = "nitrogen in the dose"},
    [CHALLENGE_ALKALINITY_USED] = {.name = "alkalinity_used", .unit = "mgCaCO3/L",
     .kind = HW_ALKALINITY, .digits = 3, .detail = true,
     .help = "alkalinity used until all is nitrate"},
    [CHALLENGE_OXYGEN_USED] = {.name = "oxygen_used", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .detail = true, .help = "oxygen used until all is nitrate"},
};
/* clang-format on */

static const char *const sources[] = {
    "iupac-weights",       "nitrification",   "crc2021",        "conservation",
    "carbonate-set",       "clegg1995",       "dickson1990",    "dickson1979",
    "takahashi1982",       "davies",          "emerson1975",    "khoo1977",
    "nitrification-needs", "common-practice", "our-arithmetic", NULL};

static uint64_t reagent_notes(const struct challenge_dose *dose)
{
    bool salt = dose->reagent == CHALLENGE_CHLORIDE || dose->reagent == CHALLENGE_SULFATE;
    return note_if(salt, HW_CHALLENGE_NOTE_WEIGH_POWDER) |
           note_if(below_limit(dose->mass, HW_LIMIT_WEIGH_LEAST), HW_CHALLENGE_NOTE_WEIGH_SMALL) |
           note_if(below_limit(dose->liquid, HW_LIMIT_DRAW_LEAST), HW_CHALLENGE_NOTE_SMALL_LIQUID) |
           note_if(dose->reagent == CHALLENGE_SOLUTION, HW_CHALLENGE_NOTE_PLAIN_AMMONIA) |
           note_if(dose->reagent == CHALLENGE_SOLUTION, HW_CHALLENGE_NOTE_AMMONIA_CORROSIVE) |
           note_if(dose->reagent == CHALLENGE_CONCENTRATE, HW_CHALLENGE_NOTE_COUNTER_ION);
}

/* The alkalinity was given, and is not used: the dose is reckoned as if it were not. */
static uint64_t odd_notes(const struct challenge_dose *dose)
{
    bool solution = dose->reagent == CHALLENGE_SOLUTION;
    return note_if(dose->readings_odd && !solution, HW_CHALLENGE_NOTE_PEAK_READINGS) |
           note_if(dose->readings_odd && solution, HW_CHALLENGE_NOTE_PEAK_READINGS_HIGHER);
}

/* More than sea water has, where it is not told what this water has. */
static bool uses_all(const struct challenge_dose *dose, const double in[])
{
    return isnan(in[CHALLENGE_ALKALINITY]) &&
           above_limit(dose->alkalinity / (HW_MOLAR_CALCIUM_CARBONATE / 2),
                       HW_LIMIT_SEA_ALKALINITY);
}

static uint64_t water_notes(const struct challenge_dose *dose, const double in[])
{
    double left = in[CHALLENGE_ALKALINITY] - dose->alkalinity / (HW_MOLAR_CALCIUM_CARBONATE / 2);
    bool told = !isnan(dose->ph_after);
    bool at_given = dose->sample && (!dose->carbonate || dose->readings_odd);
    bool stalls = above_limit(dose->free_peak, HW_LIMIT_CHALLENGE_STALL);
    bool large = !dose->sample && above_limit(dose->total_n, HW_LIMIT_CHALLENGE_LARGE);
    bool slows = above_limit(dose->free_peak, HW_LIMIT_CHALLENGE_SLOW);
    return note_if(below_limit(left, HW_LIMIT_CHALLENGE_ALKALINITY),
                   HW_CHALLENGE_NOTE_ALKALINITY_LOW) |
           note_if(isnan(in[CHALLENGE_ALKALINITY]), HW_CHALLENGE_NOTE_ALKALINITY_UNSAID) |
           note_if(uses_all(dose, in), HW_CHALLENGE_NOTE_ALKALINITY_ALL) |
           note_if(large, HW_CHALLENGE_NOTE_DOSE_LARGE) |
           note_if(stalls, HW_CHALLENGE_NOTE_DOSE_STALLS) |
           note_if(slows && !stalls, HW_CHALLENGE_NOTE_DOSE_SLOWS) | odd_notes(dose) |
           note_if(dose->sample && !dose->carbonate && dose->reagent == CHALLENGE_SOLUTION,
                   HW_CHALLENGE_NOTE_PEAK_HIGHER) |
           note_if(!at_given && dose->sample && !told, HW_CHALLENGE_NOTE_PEAK_OUTSIDE_PH) |
           note_if(told && below_limit(in[CHALLENGE_SALINITY], HW_LIMIT_CARBONATE_FRESH),
                   HW_CHALLENGE_NOTE_CARBONATE_FRESH) |
           note_if(told, HW_CHALLENGE_NOTE_CHALLENGE_STATE) |
           note_if(!dose->sample, HW_CHALLENGE_NOTE_PEAK_UNSAID) |
           note_if(dose->fit_stretched, HW_CHALLENGE_NOTE_FIT_STRETCHED);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct challenge_dose *dose, const double in[])
{
    return note_if((int)in[CHALLENGE_FISH] == YES, HW_CHALLENGE_NOTE_FISH_IN_WATER) |
           note_if(in[CHALLENGE_TARGET] <= in[CHALLENGE_NOW], HW_CHALLENGE_NOTE_NOTHING_TO_ADD) |
           note_if(dose->reagent == CHALLENGE_SOLUTION && isnan(dose->density),
                   HW_CHALLENGE_NOTE_OUTSIDE_DENSITIES);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct challenge_dose dose = challenge_dose(in);
    *notes |= refusals(&dose, in);
    if (*notes == 0) {
        *notes |= reagent_notes(&dose) | water_notes(&dose, in);
    }
    out[CHALLENGE_MASS] = dose.mass;
    out[CHALLENGE_LIQUID] = dose.liquid;
    out[CHALLENGE_READING_N] = dose.reading[HW_NITROGEN_N];
    out[CHALLENGE_READING_NH3] = dose.reading[HW_NITROGEN_NH3];
    out[CHALLENGE_READING_NH4] = dose.reading[HW_NITROGEN_NH4];
    out[CHALLENGE_NITRATE] = dose.nitrate;
    out[CHALLENGE_FREE_PEAK] = dose.free_peak;
    out[CHALLENGE_PH_AFTER] = dose.ph_after;
    out[CHALLENGE_NITROGEN] = dose.nitrogen;
    out[CHALLENGE_ALKALINITY_USED] = dose.alkalinity;
    out[CHALLENGE_OXYGEN_USED] = dose.oxygen;
}

/* clang-format off */
const struct hw_calc hw_calc_challenge = {
    .name = "challenge",
    .purpose = "how much ammonia to dose to prove a filter, and what to expect",
    .inputs = inputs, .n_inputs = CHALLENGE_INPUTS, .results = results,
    .n_results = CHALLENGE_RESULTS, .notes = hw_challenge_notes, .n_notes = HW_CHALLENGE_NOTES,
    .sources = sources, .answer = answer, .work = challenge_work,
};
/* clang-format on */
