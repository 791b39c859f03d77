/* bath_calc.c - a short bath in dye: what to pour, what level that is, how well the water
 * matches. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/ammonia.h"
#include "holdwater/bath.h"
#include "holdwater/ph.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BATH_VOLUME, BATH_STRENGTH, BATH_RATE, BATH_TARGET, BATH_MINUTES, BATH_TEMP, BATH_SALINITY,
    BATH_PH, BATH_SOURCE_TEMP, BATH_SOURCE_SALINITY, BATH_SOURCE_PH, BATH_INPUTS
};
/* clang-format on */
/* clang-format off */
enum {
    BATH_DYE, BATH_LEVEL, BATH_REPEAT_FROM, BATH_REPEAT_TO, BATH_TEMP_GAP, BATH_SALINITY_GAP,
    BATH_PH_GAP, BATH_RESULTS
};
/* clang-format on */
enum { BATH_AMOUNT = 1 }; /* the group of rate and target */

/* clang-format off */
static const struct hw_input inputs[BATH_INPUTS] = {
    [BATH_VOLUME] = {.name = "volume", .unit = "L", .kind = HW_VOLUME, .lo = HW_BATH_VOLUME_MIN,
     .hi = HW_BATH_VOLUME_MAX, .beyond = "less holds no fish, more is no bath",
     .help = "water in the bath"},
    [BATH_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = HW_BATH_STRENGTH_MIN, .hi = HW_BATH_STRENGTH_MAX,
     .beyond = "look at the label again, 1 %wv is 10 mg/mL",
     .help = "dye in the stock as its label counts it"},
    [BATH_RATE] = {.name = "rate", .aim = true, .unit = "mL/L", .kind = HW_DOSE_RATE,
     .lo = HW_BATH_RATE_MIN, .hi = HW_BATH_RATE_MAX, .group = BATH_AMOUNT,
     .beyond = "check the unit, more is no dose of a stock",
     .help = "stock per volume of bath, by its label"},
    [BATH_TARGET] = {.name = "target", .aim = true, .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BATH_LEVEL_MIN, .hi = HW_BATH_LEVEL_MAX, .group = BATH_AMOUNT,
     .beyond = "less does nothing, more is a slip", .help = "level wanted in the bath"},
    [BATH_MINUTES] = {.name = "minutes", .unit = "min", .kind = HW_TIME, .lo = 1, .hi = 120,
     .need = HW_PRESET, .preset = 30, .beyond = "longer is a course, no bath",
     .help = "how long the fish stays in"},
    [BATH_TEMP] = {.name = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for fish", .help = "temperature of the bath"},
    [BATH_SALINITY] = {.name = "salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX, .need = HW_OPTIONAL,
     .beyond = "too salty for fish", .help = "salinity of the bath"},
    [BATH_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading", .help = "pH of the bath"},
    [BATH_SOURCE_TEMP] = {.name = "source_temp", .tank = "temp", .unit = "C",
     .kind = HW_TEMPERATURE, .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX,
     .need = HW_OPTIONAL, .beyond = "too cold or too hot for fish",
     .help = "temperature of the water the fish comes from"},
    [BATH_SOURCE_SALINITY] = {.name = "source_salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "too salty for fish",
     .help = "salinity of the water the fish comes from"},
    [BATH_SOURCE_PH] = {.name = "source_ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH of the water the fish comes from"},
};

static const struct hw_result results[BATH_RESULTS] = {
    [BATH_DYE] = {.name = "dye", .unit = "mL", .kind = HW_VOLUME, .digits = 3, .safe = -1,
     .pour = true, .help = "into the bath"},
    [BATH_LEVEL] = {.name = "level", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "dye in the bath, in the form on the label"},
    [BATH_REPEAT_FROM] = {.name = "repeat_from", .unit = "h", .kind = HW_TIME, .digits = 2,
     .help = "after this bath: next one not before"},
    [BATH_REPEAT_TO] = {.name = "repeat_to", .unit = "h", .kind = HW_TIME, .digits = 2,
     .help = "after this bath: next at the latest, if any"},
    [BATH_TEMP_GAP] = {.name = "temp_gap", .unit = "C", .kind = HW_TEMPERATURE_STEP, .digits = 2,
     .sometimes = true, .help = "bath minus source (above 0: bath warmer)"},
    [BATH_SALINITY_GAP] = {.name = "salinity_gap", .unit = "g/kg", .kind = HW_SALINITY,
     .digits = 2, .sometimes = true, .help = "bath minus source (above 0: bath saltier)"},
    [BATH_PH_GAP] = {.name = "ph_gap", .unit = "", .kind = HW_PH, .digits = 2, .sometimes = true,
     .help = "bath minus source (above 0: bath pH higher)"},
};
/* clang-format on */

static const char *const sources[] = {"dye-labels",      "dye-forms",      "dye-chemistry",
                                      "rifici1996",      "li2023",         "aquarium-steps",
                                      "common-practice", "our-arithmetic", NULL};

static double dye_of(const double in[])
{
    double dye = NAN;
    if (isnan(in[BATH_RATE])) {
        hw_bath_dye(in[BATH_VOLUME], in[BATH_STRENGTH], in[BATH_TARGET], &dye);
    } else {
        hw_bath_dye_at_rate(in[BATH_VOLUME], in[BATH_RATE], &dye);
    }
    return dye;
}

static double level_of(const double in[], double dye)
{
    double level = NAN;
    hw_bath_level(in[BATH_VOLUME], in[BATH_STRENGTH], dye, &level);
    return level;
}

/* A target was checked by its range; a rate can make any level. */
static bool is_no_bath(const double in[], double level)
{
    return !isnan(in[BATH_RATE]) &&
           (below(level, HW_BATH_LEVEL_MIN) || above(level, HW_BATH_LEVEL_MAX));
}

static uint64_t refusals(const double in[], const double out[])
{
    double percent = poured_percent(out[BATH_DYE], NAN, in[BATH_VOLUME]);
    return note_if(is_no_bath(in, out[BATH_LEVEL]), HW_BATH_NOTE_NO_BATH_LEVEL) |
           note_if(above_limit(percent, HW_LIMIT_POUR_MOST), HW_BATH_NOTE_POUR_TOO_LARGE);
}

static uint64_t dye_notes(const double in[], const double out[])
{
    double level = out[BATH_LEVEL];
    double percent = poured_percent(out[BATH_DYE], NAN, in[BATH_VOLUME]);
    return note_if(above_limit(percent, HW_LIMIT_POUR_LARGE), HW_BATH_NOTE_POUR_LARGE) |
           note_if(above_limit(level, HW_LIMIT_DYE_CHECK), HW_BATH_NOTE_DYE_CHECK) |
           note_if(above_limit(level, HW_LIMIT_DYE_FILTER), HW_BATH_NOTE_DYE_OVER_5) |
           note_if(above_limit(in[BATH_MINUTES], HW_LIMIT_BATH_MINUTES), HW_BATH_NOTE_BATH_LONG);
}

/* The fish is moved twice, in and back: what is a step up on the way in is one down on the way
 * back. The way back is told when the way in is not over its own limit. */
static uint64_t gap_notes(const double out[])
{
    double temp = out[BATH_TEMP_GAP];
    double salinity = out[BATH_SALINITY_GAP];
    bool in_warm = above_limit(temp, HW_LIMIT_TEMP_RISE);
    bool back_cold = !in_warm && above_limit(temp, HW_LIMIT_TEMP_FALL);
    bool in_thin = above_limit(-salinity, HW_LIMIT_SALINITY_FALL);
    bool back_salt = !in_thin && above_limit(-salinity, HW_LIMIT_SALINITY_RISE);
    return note_if(in_warm, HW_BATH_NOTE_TEMP_STEP_UP) |
           note_if(above_limit(-temp, HW_LIMIT_TEMP_FALL), HW_BATH_NOTE_TEMP_STEP_DOWN) |
           note_if(above_limit(salinity, HW_LIMIT_SALINITY_RISE), HW_BATH_NOTE_SALINITY_STEP_UP) |
           note_if(in_thin, HW_BATH_NOTE_SALINITY_STEP_DOWN) |
           note_if(above_limit(fabs(out[BATH_PH_GAP]), HW_LIMIT_PH_STEP), HW_BATH_NOTE_PH_STEP) |
           note_if(back_cold || back_salt, HW_BATH_NOTE_RETURN_STEP);
}

static bool half_given(double bath, double source)
{
    return isnan(bath) != isnan(source);
}

static uint64_t notes_of(const double in[], const double out[])
{
    bool half = half_given(in[BATH_TEMP], in[BATH_SOURCE_TEMP]) ||
                half_given(in[BATH_SALINITY], in[BATH_SOURCE_SALINITY]) ||
                half_given(in[BATH_PH], in[BATH_SOURCE_PH]);
    uint64_t no_answer = refusals(in, out);
    if (no_answer != 0) {
        return no_answer;
    }
    return dye_notes(in, out) | gap_notes(out) | note_if(half, HW_BATH_NOTE_GAP_HALF);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    out[BATH_DYE] = dye_of(in);
    out[BATH_LEVEL] = level_of(in, out[BATH_DYE]);
    out[BATH_REPEAT_FROM] = hw_limits[HW_LIMIT_BATH_REPEAT_FROM].value;
    out[BATH_REPEAT_TO] = hw_limits[HW_LIMIT_BATH_REPEAT_TO].value;
    out[BATH_TEMP_GAP] = in[BATH_TEMP] - in[BATH_SOURCE_TEMP];
    out[BATH_SALINITY_GAP] = in[BATH_SALINITY] - in[BATH_SOURCE_SALINITY];
    out[BATH_PH_GAP] = in[BATH_PH] - in[BATH_SOURCE_PH];
    *notes |= notes_of(in, out);
}

static void step_gap(const double in[], int bath, int source, const struct hw_result *gap,
                     struct hw_steps *steps)
{
    if (!isnan(in[bath]) && !isnan(in[source])) {
        hw_step(steps, gap->name, in[bath] - in[source], gap->unit, "", "%.10g - %.10g", in[bath],
                in[source]);
    }
}

static void work(const double in[], struct hw_steps *steps)
{
    double dye = dye_of(in);
    step_gap(in, BATH_TEMP, BATH_SOURCE_TEMP, &results[BATH_TEMP_GAP], steps);
    step_gap(in, BATH_SALINITY, BATH_SOURCE_SALINITY, &results[BATH_SALINITY_GAP], steps);
    step_gap(in, BATH_PH, BATH_SOURCE_PH, &results[BATH_PH_GAP], steps);
    if (isnan(in[BATH_RATE])) {
        hw_step(steps, "dye_mass", in[BATH_TARGET] * in[BATH_VOLUME], "mg", "", "%.10g * %.10g",
                in[BATH_TARGET], in[BATH_VOLUME]);
        hw_step(steps, "dye", dye, "mL", "", "%.10g / %.10g", in[BATH_TARGET] * in[BATH_VOLUME],
                in[BATH_STRENGTH]);
    } else {
        hw_step(steps, "level", level_of(in, dye), "mg/L", "", "%.10g * %.10g", in[BATH_RATE],
                in[BATH_STRENGTH]);
        hw_step(steps, "dye", dye, "mL", "", "%.10g * %.10g", in[BATH_RATE], in[BATH_VOLUME]);
    }
}

/* clang-format off */
const struct hw_calc hw_calc_bath = {
    .name = "bath",
    .purpose = "what to pour for a short dye bath, and how well its water fits",
    .inputs = inputs, .n_inputs = BATH_INPUTS, .results = results,
    .n_results = BATH_RESULTS, .notes = hw_bath_notes, .n_notes = HW_BATH_NOTES, .sources = sources,
    .answer = answer, .work = work,
};
/* clang-format on */
