/* nitrite_calc.c - nitrite in both ways of counting, and the chloride that stands against it. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/nitrite.h"
#include "holdwater/seawater.h"
#include "tables.h"

#include <math.h>

enum { NITRITE_NITRITE, NITRITE_BASIS, NITRITE_SALINITY, NITRITE_INPUTS };
enum { NITRITE_AS_N, NITRITE_AS_ION, NITRITE_CHLORIDE, NITRITE_CHLORIDE_RATIO, NITRITE_RESULTS };

static const char *const nitrite_words[] = {"n", "ion", NULL};

/* The litre of the chloride: the temperature is not asked for, as it moves it by less than 1 %. */
static const double temp = 20;

/* clang-format off */
static const struct hw_input inputs[NITRITE_INPUTS] = {
    [NITRITE_NITRITE] = {.name = "nitrite", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 1000,
     .beyond = "check the unit", .help = "nitrite as the kit reads it"},
    [NITRITE_BASIS] = {.name = "basis", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = nitrite_words, .need = HW_PRESET, .preset = HW_NITRITE_N,
     .help = "what the kit counts (its leaflet says)"},
    [NITRITE_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_SEAWATER_SALINITY_MIN, .hi = HW_SEAWATER_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of sea-salt water, 0 for fresh"},
};

static const struct hw_result results[NITRITE_RESULTS] = {
    [NITRITE_AS_N] = {.name = "as_n", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "nitrite as nitrogen, NO2-N"},
    [NITRITE_AS_ION] = {.name = "as_ion", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "nitrite as the ion, NO2"},
    [NITRITE_CHLORIDE] = {.name = "chloride", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .safe = -1, .help = "chloride of sea salt at this salinity"},
    [NITRITE_CHLORIDE_RATIO] = {.name = "chloride_ratio", .unit = "", .kind = HW_NUMBER,
     .digits = 3, .safe = -1, .sometimes = true, .help = "chloride over nitrite as N, by mass"},
};
/* clang-format on */

static const char *const sources[] = {
    "iupac-weights",   "chlorinity",      "sea-salt",    "eos80",         "grouper-trial",
    "grouper2022",     "nitrite-calcium", "tomasso1986", "catfish-ratio", "kit-chemistry",
    "common-practice", "our-arithmetic",  NULL};

static void find(const double in[], double out[])
{
    enum hw_nitrite_basis basis = (enum hw_nitrite_basis)in[NITRITE_BASIS];
    hw_nitrite_to_n(basis, in[NITRITE_NITRITE], &out[NITRITE_AS_N]);
    hw_nitrite_to_ion(basis, in[NITRITE_NITRITE], &out[NITRITE_AS_ION]);
    hw_seawater_chloride_at(temp, in[NITRITE_SALINITY], &out[NITRITE_CHLORIDE]);
    hw_nitrite_chloride_ratio(out[NITRITE_CHLORIDE], out[NITRITE_AS_N],
                              &out[NITRITE_CHLORIDE_RATIO]);
}

static uint64_t notes_of(const double in[], const double out[])
{
    bool there = out[NITRITE_AS_N] > 0;
    bool fresh = below_limit(in[NITRITE_SALINITY], HW_LIMIT_NITRITE_FRESH_BELOW);
    bool low = below_limit(in[NITRITE_SALINITY], HW_LIMIT_NITRITE_LOW_SALINITY);
    return note_if(there && !fresh, HW_NITRITE_NOTE_NITRITE_SEEN) |
           note_if(!there, HW_NITRITE_NOTE_NITRITE_NONE) |
           note_if(there && fresh, HW_NITRITE_NOTE_NITRITE_FRESH_ACT) |
           note_if(!below_limit(out[NITRITE_AS_N], HW_LIMIT_NITRITE_EFFECT),
                   HW_NITRITE_NOTE_NITRITE_EFFECT) |
           note_if(below_limit(out[NITRITE_CHLORIDE_RATIO], HW_LIMIT_CHLORIDE_RATIO_HIGH),
                   HW_NITRITE_NOTE_CHLORIDE_RATIO_LOW) |
           note_if(there && low && !fresh, HW_NITRITE_NOTE_NITRITE_LOW_SALINITY) |
           note_if(fresh, HW_NITRITE_NOTE_TAP_CHLORIDE) |
           note_if(above(in[NITRITE_SALINITY], HW_SEAWATER_SALINITY_FITTED),
                   HW_NITRITE_NOTE_ABOVE_FIT);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    find(in, out);
    *notes |= notes_of(in, out);
}

static void work(const double in[], struct hw_steps *steps)
{
    double out[NITRITE_RESULTS];
    double density = NAN;
    bool as_ion = (int)in[NITRITE_BASIS] == HW_NITRITE_ION;
    double molar = as_ion ? HW_MOLAR_NITRITE : HW_MOLAR_N;
    find(in, out);
    hw_seawater_density_at(temp, in[NITRITE_SALINITY], &density);
    hw_step(steps, "density", density, "kg/m3", "eos80", "%.10g", density);
    hw_step(steps, "chloride", out[NITRITE_CHLORIDE], "mg/L", "chlorinity",
            "%.10g * %.10g/%.10g * %.10g", HW_SEAWATER_CHLORIDE_PER_CHLORINITY,
            in[NITRITE_SALINITY], HW_SEAWATER_SALINITY_PER_CHLORINITY, density);
    if (!isnan(out[NITRITE_CHLORIDE_RATIO])) {
        hw_step(steps, "chloride_ratio", out[NITRITE_CHLORIDE_RATIO], "", "",
                "%.10g / (%.10g * %.10g/%.10g)", out[NITRITE_CHLORIDE], in[NITRITE_NITRITE],
                HW_MOLAR_N, molar);
    }
    hw_step(steps, "as_ion", out[NITRITE_AS_ION], "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
            in[NITRITE_NITRITE], HW_MOLAR_NITRITE, molar);
    hw_step(steps, "as_n", out[NITRITE_AS_N], "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
            in[NITRITE_NITRITE], HW_MOLAR_N, molar);
}

/* clang-format off */
const struct hw_calc hw_calc_nitrite = {
    .name = "nitrite",
    .purpose = "nitrite as nitrogen and as the ion, and the chloride against it",
    .inputs = inputs, .n_inputs = NITRITE_INPUTS, .results = results, .n_results = NITRITE_RESULTS,
    .notes = hw_nitrite_notes, .n_notes = HW_NITRITE_NOTES, .sources = sources, .answer = answer,
    .work = work,
};
/* clang-format on */
