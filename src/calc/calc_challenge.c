/* calc_challenge.c - how much ammonia proves a filter, what to expect of it, and what it costs the
 * water. */
#include "calc/challenge_dose.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

enum {
    MASS,
    LIQUID,
    NITROGEN,
    READING,
    NITRATE,
    ALKALINITY_USED,
    OXYGEN_USED,
    FREE_PEAK,
    PH_AFTER,
    RESULTS
};

static const char *const source_words[] = {"ammonium-chloride", "ammonium-sulfate",
                                           "ammonia-solution", "concentrate", NULL};
static const char *const strength_words[] = {"nh3", "nh4oh", NULL};
enum { SALTS = 1u << CHLORIDE | 1u << SULFATE };

/* Below this many grams or millilitres household measures do not serve. */
static const double small = 1;

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
    [FISH] = {.name = "fish",
              .unit = "",
              .kind = HW_CHOICE,
              .lo = 0,
              .hi = 1,
              .words = yes_no_words,
              .help = "whether fish or other animals are in the water; with them there is no dose",
              .need = HW_REQUIRED,
              .when_input = -1},
    [TARGET] = {.name = "target",
                .unit = "mg/L",
                .kind = HW_CONCENTRATION,
                .lo = 0.1,
                .hi = 50,
                .help = "total ammonia after the dose, in the basis; below 0.1 no kit reads it, "
                        "above 50 it proves nothing",
                .need = HW_PRESET,
                .preset = 2,
                .when_input = -1},
    [BASIS] = BASIS_INPUT,
    [NOW] = {.name = "now",
             .unit = "mg/L",
             .kind = HW_CONCENTRATION,
             .lo = 0,
             .hi = 50,
             .help = "total ammonia in the water before the dose, in the basis; above 50 change "
                     "water first",
             .need = HW_PRESET,
             .preset = 0,
             .when_input = -1},
    [SOURCE] = {.name = "source",
                .unit = "",
                .kind = HW_CHOICE,
                .lo = 0,
                .hi = 3,
                .words = source_words,
                .help = "what is dosed; a concentrate is a solution of known ammonia content",
                .need = HW_PRESET,
                .preset = CHLORIDE,
                .when_input = -1},
    [STRENGTH] = {.name = "strength",
                  .unit = "%",
                  .kind = HW_SHARE,
                  .unit_must = true,
                  .lo = 0.5,
                  .hi = 62,
                  .help = "ammonia in the bottle by mass; the table of densities runs from 0.5 to "
                          "30 % NH3, which is 61.7 % NH4OH",
                  .need = HW_REQUIRED,
                  .when_input = SOURCE,
                  .when_words = 1u << SOLUTION},
    [STRENGTH_AS] = {.name = "strength_as",
                     .unit = "",
                     .kind = HW_CHOICE,
                     .lo = 0,
                     .hi = 1,
                     .words = strength_words,
                     .help = "what the label's per cent counts: ammonia or ammonium hydroxide",
                     .need = HW_PRESET,
                     .preset = AS_NH3,
                     .when_input = SOURCE,
                     .when_words = 1u << SOLUTION},
    [CONCENTRATE_STRENGTH] = {.name = "concentrate_strength",
                              .unit = "g/L",
                              .kind = HW_CONCENTRATION,
                              .unit_must = true,
                              .lo = 0.01,
                              .hi = 300,
                              .help = "ammonia in the concentrate, in the basis; below 0.01 it is "
                                      "no concentrate, above 300 none is so strong",
                              .need = HW_REQUIRED,
                              .when_input = SOURCE,
                              .when_words = 1u << CONCENTRATE},
    [PURITY] = {.name = "purity",
                .unit = "%",
                .kind = HW_SHARE,
                .unit_must = true,
                .lo = HW_CHALLENGE_PURITY_MIN,
                .hi = HW_CHALLENGE_PURITY_MAX,
                .help = "share of the powder that is the salt; below 10 % it is something else",
                .need = HW_PRESET,
                .preset = 100,
                .when_input = SOURCE,
                .when_words = SALTS},
    [PH] = {.name = "ph",
            .unit = "",
            .kind = HW_PH,
            .lo = HW_PH_MIN,
            .hi = HW_PH_MAX,
            .help = "pH of the water before the dose, by a meter calibrated in fresh-water "
                    "buffers; below 5 or above 10 doubt the reading",
            .need = HW_OPTIONAL,
            .when_input = -1},
    [TEMP] = {.name = "temp",
              .unit = "C",
              .kind = HW_TEMPERATURE,
              .lo = HW_AMMONIA_TEMP_MIN,
              .hi = HW_AMMONIA_TEMP_MAX,
              .help = "water temperature; the constants hold no further",
              .need = HW_OPTIONAL,
              .when_input = -1},
    [SALINITY] = {.name = "salinity",
                  .unit = "g/kg",
                  .kind = HW_SALINITY,
                  .lo = HW_AMMONIA_SALINITY_MIN,
                  .hi = HW_AMMONIA_SALINITY_MAX,
                  .help = "salinity of sea-salt water; the constants hold no further",
                  .need = HW_OPTIONAL,
                  .when_input = -1},
    [ALKALINITY] = {.name = "alkalinity",
                    .unit = "meq/L",
                    .kind = HW_ALKALINITY,
                    .lo = HW_BUFFER_ALKALINITY_MIN,
                    .hi = HW_BUFFER_ALKALINITY_MAX,
                    .help = "total alkalinity before the dose, as a kit titrates it; above 10 "
                            "doubt the unit",
                    .need = HW_OPTIONAL,
                    .when_input = -1},
};

/* Nobody lives in the water: neither side of a dose is the dangerous one, so none is rounded to a
 * side. */
static const struct hw_result results[RESULTS] = {
    [MASS] = {.name = "mass",
              .unit = "g",
              .kind = HW_MASS,
              .digits = 3,
              .sometimes = true,
              .help = "of the salt, to weigh"},
    [LIQUID] = {.name = "liquid",
                .unit = "mL",
                .kind = HW_VOLUME,
                .digits = 3,
                .sometimes = true,
                .help = "of the solution, to draw into a syringe"},
    [NITROGEN] =
        {.name = "nitrogen", .unit = "mg", .kind = HW_MASS, .digits = 3, .help = "in the dose"},
    [READING] = {.name = "reading",
                 .unit = "mg/L",
                 .kind = HW_CONCENTRATION,
                 .digits = 3,
                 .help = "what the kit should show once it is mixed, in the basis"},
    [NITRATE] = {.name = "nitrate",
                 .unit = "mg/L",
                 .kind = HW_CONCENTRATION,
                 .digits = 3,
                 .help = "by which nitrate rises, as the ion, when all ammonia in the water is "
                         "used up"},
    [ALKALINITY_USED] = {.name = "alkalinity_used",
                         .unit = "mgCaCO3/L",
                         .kind = HW_ALKALINITY,
                         .digits = 3,
                         .help = "from before the dose until all is nitrate"},
    [OXYGEN_USED] = {.name = "oxygen_used",
                     .unit = "mg/L",
                     .kind = HW_CONCENTRATION,
                     .digits = 3,
                     .help = "oxygen that the bacteria take for it"},
    [FREE_PEAK] = {.name = "free_peak",
                   .unit = "mg/L",
                   .kind = HW_CONCENTRATION,
                   .digits = 3,
                   .sometimes = true,
                   .help = "free ammonia after the dose, as N, at ph_after, or at the pH given "
                           "when that is not known"},
    [PH_AFTER] = {.name = "ph_after",
                  .unit = "",
                  .kind = HW_PH,
                  .digits = 3,
                  .sometimes = true,
                  .help = "pH right after the dose is mixed in, before any gas goes in or out"},
};

static const char *const sources[] = {
    "iupac-weights",       "nitrification",   "crc2021",        "conservation",
    "carbonate-set",       "clegg1995",       "dickson1990",    "dickson1979",
    "takahashi1982",       "davies",          "emerson1975",    "khoo1977",
    "nitrification-needs", "common-practice", "our-arithmetic", NULL};

static uint64_t source_notes(const struct challenge_dose *dose)
{
    bool salt = dose->source == CHLORIDE || dose->source == SULFATE;
    return note_if(salt, HW_CHALLENGE_NOTE_WEIGH_POWDER) |
           note_if(dose->mass < small, HW_CHALLENGE_NOTE_WEIGH_SMALL) |
           note_if(dose->liquid < small, HW_CHALLENGE_NOTE_SMALL_LIQUID) |
           note_if(dose->source == SOLUTION, HW_CHALLENGE_NOTE_PLAIN_AMMONIA) |
           note_if(dose->source == SOLUTION, HW_CHALLENGE_NOTE_AMMONIA_CORROSIVE) |
           note_if(dose->source == CONCENTRATE, HW_CHALLENGE_NOTE_COUNTER_ION);
}

static uint64_t water_notes(const struct challenge_dose *dose, const double in[])
{
    double left = in[ALKALINITY] - dose->alkalinity / (HW_MOLAR_CALCIUM_CARBONATE / 2);
    bool told = !isnan(dose->ph_after);
    bool at_given = dose->sample && (!dose->carbonate || dose->readings_odd);
    return note_if(left < hw_limits[HW_LIMIT_CHALLENGE_ALKALINITY].value,
                   HW_CHALLENGE_NOTE_ALKALINITY_LOW) |
           note_if(isnan(in[ALKALINITY]), HW_CHALLENGE_NOTE_ALKALINITY_UNSAID) |
           note_if(dose->total_n > hw_limits[HW_LIMIT_CHALLENGE_STALL].value,
                   HW_CHALLENGE_NOTE_DOSE_STALLS) |
           note_if(at_given && dose->source == SOLUTION, HW_CHALLENGE_NOTE_PEAK_HIGHER) |
           note_if(dose->readings_odd, HW_CHALLENGE_NOTE_PEAK_READINGS) |
           note_if(!at_given && dose->sample && !told, HW_CHALLENGE_NOTE_PEAK_OUTSIDE_PH) |
           note_if(told && in[SALINITY] < hw_limits[HW_LIMIT_CARBONATE_FRESH].value,
                   HW_CHALLENGE_NOTE_CARBONATE_FRESH) |
           note_if(told, HW_CHALLENGE_NOTE_CHALLENGE_STATE) |
           note_if(!dose->sample, HW_CHALLENGE_NOTE_PEAK_UNSAID) |
           note_if(dose->fit_stretched, HW_CHALLENGE_NOTE_FIT_STRETCHED);
}

static const uint64_t always =
    UINT64_C(1) << HW_CHALLENGE_NOTE_NO_FISH | UINT64_C(1) << HW_CHALLENGE_NOTE_KIT_BASIS |
    UINT64_C(1) << HW_CHALLENGE_NOTE_ADSORBENTS_OUT |
    UINT64_C(1) << HW_CHALLENGE_NOTE_AERATE_CHALLENGE |
    UINT64_C(1) << HW_CHALLENGE_NOTE_CHECK_READING | UINT64_C(1) << HW_CHALLENGE_NOTE_TEST_AT_24H |
    UINT64_C(1) << HW_CHALLENGE_NOTE_SAME_WATER |
    UINT64_C(1) << HW_CHALLENGE_NOTE_CHANGE_AFTER_PASS |
    UINT64_C(1) << HW_CHALLENGE_NOTE_FEED_FILTER | UINT64_C(1) << HW_CHALLENGE_NOTE_ASK_VET;

/* The notes that leave no answer. */
static uint64_t refusals(const struct challenge_dose *dose, const double in[])
{
    return note_if((int)in[FISH] == YES, HW_CHALLENGE_NOTE_FISH_IN_WATER) |
           note_if(in[TARGET] <= in[NOW], HW_CHALLENGE_NOTE_NOTHING_TO_ADD) |
           note_if(dose->source == SOLUTION && isnan(dose->density),
                   HW_CHALLENGE_NOTE_OUTSIDE_DENSITIES);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct challenge_dose dose = challenge_dose(in);
    *notes |= refusals(&dose, in);
    *notes |= *notes != 0 ? note_bit(HW_CHALLENGE_NOTE_ASK_VET)
                          : always | source_notes(&dose) | water_notes(&dose, in);
    out[MASS] = dose.mass;
    out[LIQUID] = dose.liquid;
    out[NITROGEN] = dose.nitrogen;
    out[READING] = dose.reading;
    out[NITRATE] = dose.nitrate;
    out[ALKALINITY_USED] = dose.alkalinity;
    out[OXYGEN_USED] = dose.oxygen;
    out[FREE_PEAK] = dose.free_peak;
    out[PH_AFTER] = dose.ph_after;
}

const struct hw_calc hw_calc_challenge = {
    .name = "challenge",
    .purpose = "how much ammonia to dose to prove a filter, and what to expect of it",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_challenge_notes,
    .n_notes = HW_CHALLENGE_NOTES,
    .sources = sources,
    .answer = answer,
    .work = challenge_work,
};
