/* oxygen_calc.c - how much oxygen the water can hold, and how long it lasts when the air stops. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/oxygen.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    OXYGEN_TEMP, OXYGEN_SALINITY, OXYGEN_ALTITUDE, OXYGEN_NOW, OXYGEN_VOLUME, OXYGEN_BIOMASS,
    OXYGEN_FISH_MASS, OXYGEN_UPTAKE, OXYGEN_UPTAKE_KNOWN, OXYGEN_FLOOR, OXYGEN_INPUTS
};
/* clang-format on */
enum { OXYGEN_SATURATION, OXYGEN_PERCENT, OXYGEN_HOURS, OXYGEN_RESULTS };

/* clang-format off */
static const struct hw_input inputs[OXYGEN_INPUTS] = {
    [OXYGEN_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_OXYGEN_TEMP_MIN, .hi = HW_OXYGEN_TEMP_MAX,
     .beyond = "the formula is valid to here", .help = "water temperature"},
    [OXYGEN_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_OXYGEN_SALINITY_MIN, .hi = HW_OXYGEN_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of sea-salt water, 0 for fresh"},
    [OXYGEN_ALTITUDE] = {.name = "altitude", .tank = "altitude", .unit = "m", .kind = HW_LENGTH,
     .lo = HW_OXYGEN_ALTITUDE_MIN, .hi = HW_OXYGEN_ALTITUDE_MAX, .need = HW_PRESET,
     .beyond = "hardly anybody keeps fish lower or higher",
     .help = "height of the room above the sea"},
    [OXYGEN_NOW] = {.name = "oxygen_now", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_OXYGEN_LEVEL_MIN, .hi = HW_OXYGEN_LEVEL_MAX, .need = HW_OPTIONAL,
     .beyond = "no water holds more, even under pure oxygen",
     .help = "oxygen in the water as measured"},
    [OXYGEN_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_OXYGEN_VOLUME_MIN, .hi = HW_OXYGEN_VOLUME_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "water the fish are in, to tell how long it lasts"},
    [OXYGEN_BIOMASS] = {.name = "biomass", .unit = "g", .kind = HW_MASS,
     .lo = HW_OXYGEN_BIOMASS_MIN, .hi = HW_OXYGEN_BIOMASS_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "mass of all the fish, to tell how long it lasts"},
    [OXYGEN_FISH_MASS] = {.name = "fish_mass", .unit = "g", .kind = HW_MASS,
     .lo = HW_OXYGEN_FISH_MIN, .hi = HW_OXYGEN_FISH_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "mass of one fish, small ones use more per gram"},
    [OXYGEN_UPTAKE] = {.name = "uptake", .unit = "mg/kg/h", .kind = HW_BODY_RATE,
     .lo = HW_OXYGEN_UPTAKE_MIN, .hi = HW_OXYGEN_UPTAKE_MAX, .need = HW_PRESET, .preset = 420,
     .when_input = OXYGEN_FISH_MASS, .when_words = HW_WHEN_UNASKED,
     .beyond = "no fish uses less or more",
     .help = "oxygen that the fish use (preset: fish of 5 g)"},
    [OXYGEN_UPTAKE_KNOWN] = {.name = "uptake", .unit = "mg/kg/h", .kind = HW_BODY_RATE,
     .lo = HW_OXYGEN_UPTAKE_MIN, .hi = HW_OXYGEN_UPTAKE_MAX, .need = HW_OPTIONAL,
     .when_input = OXYGEN_FISH_MASS, .when_words = HW_WHEN_GIVEN,
     .beyond = "no fish uses less or more",
     .help = "oxygen that the fish use, instead of by fish_mass"},
    [OXYGEN_FLOOR] = {.name = "floor", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 20,
     .need = HW_PRESET, .preset = 4, .beyond = "no water in air holds as much",
     .help = "oxygen not to fall below"},
};

static const struct hw_result results[OXYGEN_RESULTS] = {
    [OXYGEN_SATURATION] = {.name = "saturation", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "oxygen in balance with air"},
    [OXYGEN_PERCENT] = {.name = "percent", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .sometimes = true, .help = "per cent of saturation"},
    [OXYGEN_HOURS] = {.name = "hours", .unit = "h", .kind = HW_TIME, .digits = 2, .safe = -1,
     .sometimes = true, .help = "to the floor if shut off from air: act before"},
};
/* clang-format on */

static const char *const sources[] = {"benson-krause1984",
                                      "standard-atmosphere",
                                      "conservation",
                                      "oxygen-uptake",
                                      "common-practice",
                                      "our-arithmetic",
                                      NULL};

static bool at_floor(const double in[])
{
    return !isnan(in[OXYGEN_NOW]) && !above(in[OXYGEN_NOW], in[OXYGEN_FLOOR]);
}

/* At the floor, or where keepers act whatever floor is typed. */
static bool act_now(const double in[])
{
    return at_floor(in) ||
           (!isnan(in[OXYGEN_NOW]) && !above_limit(in[OXYGEN_NOW], HW_LIMIT_OXYGEN_FLOOR));
}

static bool by_size(const double in[])
{
    return !isnan(in[OXYGEN_FISH_MASS]) && isnan(in[OXYGEN_UPTAKE_KNOWN]);
}

/* As told, else by the size of a fish, else that of a small one. */
static double uptake_of(const double in[])
{
    double uptake = isnan(in[OXYGEN_FISH_MASS]) ? in[OXYGEN_UPTAKE] : in[OXYGEN_UPTAKE_KNOWN];
    if (by_size(in)) {
        hw_oxygen_uptake(in[OXYGEN_FISH_MASS], &uptake);
    }
    return uptake;
}

/* At the floor no time is left, whatever the water and the fish. */
static double hours_of(const double in[])
{
    double hours = NAN;
    if (at_floor(in)) {
        return 0;
    }
    hw_oxygen_hours(in[OXYGEN_NOW], in[OXYGEN_FLOOR], in[OXYGEN_VOLUME], in[OXYGEN_BIOMASS],
                    uptake_of(in), &hours);
    return hours;
}

static uint64_t level_notes(const double in[], const double out[])
{
    bool now = act_now(in);
    bool low = below_limit(out[OXYGEN_PERCENT], HW_LIMIT_OXYGEN_LOW);
    return note_if(now, HW_OXYGEN_NOTE_OXYGEN_ACT_NOW) |
           note_if(!now && below_limit(out[OXYGEN_HOURS], HW_LIMIT_OXYGEN_SOON),
                   HW_OXYGEN_NOTE_OXYGEN_SOON) |
           note_if(!now && low, HW_OXYGEN_NOTE_OXYGEN_LOW) |
           note_if(above_limit(out[OXYGEN_PERCENT], HW_LIMIT_OXYGEN_OVER),
                   HW_OXYGEN_NOTE_OXYGEN_OVER) |
           note_if(!isnan(in[OXYGEN_NOW]), HW_OXYGEN_NOTE_OXYGEN_METER) |
           note_if(below_limit(in[OXYGEN_FLOOR], HW_LIMIT_OXYGEN_FLOOR), HW_OXYGEN_NOTE_FLOOR_LOW) |
           note_if(below(out[OXYGEN_SATURATION], in[OXYGEN_FLOOR]), HW_OXYGEN_NOTE_FLOOR_NOT_HELD);
}

static uint64_t hours_notes(const double in[], const double out[])
{
    bool volume = !isnan(in[OXYGEN_VOLUME]);
    bool biomass = !isnan(in[OXYGEN_BIOMASS]);
    bool reckoned = !isnan(out[OXYGEN_HOURS]);
    return note_if(!reckoned && volume && biomass, HW_OXYGEN_NOTE_HOURS_UNREAD) |
           note_if(!reckoned && volume != biomass, HW_OXYGEN_NOTE_HOURS_HALF) |
           note_if(!reckoned && !volume && !biomass, HW_OXYGEN_NOTE_HOURS_UNSAID) |
           note_if(out[OXYGEN_HOURS] > 0, HW_OXYGEN_NOTE_SEALED_WATER) |
           note_if(out[OXYGEN_HOURS] > 0, HW_OXYGEN_NOTE_UPTAKE_ROUGH);
}

/* What the hours rest on, where there are hours. */
static uint64_t uptake_notes(const double in[], const double out[])
{
    bool fitted = !below(in[OXYGEN_FISH_MASS], HW_OXYGEN_FISH_FIT_MIN) &&
                  !above(in[OXYGEN_FISH_MASS], HW_OXYGEN_FISH_FIT_MAX);
    bool reckoned = out[OXYGEN_HOURS] > 0;
    bool assumed = by_size(in) || in[OXYGEN_UPTAKE] == inputs[OXYGEN_UPTAKE].preset;
    bool warm = above_limit(in[OXYGEN_TEMP], HW_LIMIT_UPTAKE_WARM);
    return note_if(reckoned && assumed && warm, HW_OXYGEN_NOTE_UPTAKE_WARM) |
           note_if(reckoned && by_size(in), HW_OXYGEN_NOTE_UPTAKE_BY_SIZE) |
           note_if(reckoned && by_size(in) && !fitted, HW_OXYGEN_NOTE_UPTAKE_STRETCHED);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    double pressure = NAN;
    hw_oxygen_pressure(in[OXYGEN_ALTITUDE], &pressure);
    int status = hw_oxygen_saturation(in[OXYGEN_TEMP], in[OXYGEN_SALINITY], pressure,
                                      &out[OXYGEN_SATURATION]);
    out[OXYGEN_PERCENT] = 100 * in[OXYGEN_NOW] / out[OXYGEN_SATURATION];
    out[OXYGEN_HOURS] = hours_of(in);
    if (above(in[OXYGEN_FISH_MASS], in[OXYGEN_BIOMASS])) {
        *notes |= note_bit(HW_OXYGEN_NOTE_FISH_OVER_BIOMASS);
        return;
    }
    *notes |= level_notes(in, out) | hours_notes(in, out) | uptake_notes(in, out) |
              note_if(status > 0, HW_OXYGEN_NOTE_OXYGEN_STRETCHED);
}

static void step_hours(const double in[], struct hw_steps *steps)
{
    double hours = hours_of(in);
    if (isnan(hours)) {
        return;
    }
    if (at_floor(in)) {
        hw_step(steps, "hours", hours, "h", "", "0 * (%.10g <= %.10g)", in[OXYGEN_NOW],
                in[OXYGEN_FLOOR]);
    } else {
        if (by_size(in)) {
            hw_step(steps, "uptake", uptake_of(in), "mg/kg/h", "oxygen-uptake",
                    "15.077 * %.10g^-0.2452 * 1000/24", in[OXYGEN_FISH_MASS]);
        }
        hw_step(steps, "hours", hours, "h", "conservation",
                "(%.10g - %.10g) * %.10g / (%.10g/1000 * %.10g)", in[OXYGEN_NOW], in[OXYGEN_FLOOR],
                in[OXYGEN_VOLUME], in[OXYGEN_BIOMASS], uptake_of(in));
    }
}

static void work(const double in[], struct hw_steps *steps)
{
    double t = in[OXYGEN_TEMP] + 273.15;
    double pressure = NAN;
    double share = NAN;
    double one_atm = NAN;
    double saturation = NAN;
    hw_oxygen_pressure(in[OXYGEN_ALTITUDE], &pressure);
    hw_oxygen_pressure_share(in[OXYGEN_TEMP], pressure, &share);
    hw_oxygen_saturation(in[OXYGEN_TEMP], in[OXYGEN_SALINITY], 1, &one_atm);
    hw_oxygen_saturation(in[OXYGEN_TEMP], in[OXYGEN_SALINITY], pressure, &saturation);
    hw_step(steps, "pressure", pressure, "atm", "standard-atmosphere",
            "(1 - 0.0065/288.15 * 6356766 * (%.10g) / (6356766 + (%.10g)))^(9.80665 * 0.0289644 / "
            "(8.31432 * 0.0065))",
            in[OXYGEN_ALTITUDE], in[OXYGEN_ALTITUDE]);
    hw_step(steps, "kelvin", t, "K", "", "%.10g + 273.15", in[OXYGEN_TEMP]);
    hw_step(steps, "pressure_share", share, "", "benson-krause1984",
            "(%.10g - exp(11.8571 - 3840.70/%.10g - 216961/%.10g^2)) * (1 - (0.000975 - 1.426e-5 * "
            "%.10g + 6.436e-8 * %.10g^2) * %.10g) / ((1 - exp(11.8571 - 3840.70/%.10g - "
            "216961/%.10g^2)) * (1 - (0.000975 - 1.426e-5 * %.10g + 6.436e-8 * %.10g^2)))",
            pressure, t, t, in[OXYGEN_TEMP], in[OXYGEN_TEMP], pressure, t, t, in[OXYGEN_TEMP],
            in[OXYGEN_TEMP]);
    hw_step(steps, "at_one_atm", one_atm, "mg/L", "benson-krause1984",
            "exp(-139.34411 + 1.575701e5/%.10g - 6.642308e7/%.10g^2 + 1.2438e10/%.10g^3 - "
            "8.621949e11/%.10g^4 - %.10g * (1.7674e-2 - 10.754/%.10g + 2140.7/%.10g^2))",
            t, t, t, t, in[OXYGEN_SALINITY], t, t);
    if (!isnan(in[OXYGEN_NOW])) {
        hw_step(steps, "percent", 100 * in[OXYGEN_NOW] / saturation, "", "",
                "100 * %.10g / (%.10g * %.10g)", in[OXYGEN_NOW], one_atm, share);
    }
    step_hours(in, steps);
    hw_step(steps, "saturation", saturation, "mg/L", "", "%.10g * %.10g", one_atm, share);
}

/* clang-format off */
const struct hw_calc hw_calc_oxygen = {
    .name = "oxygen",
    .purpose = "how much oxygen water holds, and how long it lasts without air",
    .inputs = inputs, .n_inputs = OXYGEN_INPUTS, .results = results, .n_results = OXYGEN_RESULTS,
    .notes = hw_oxygen_notes, .n_notes = HW_OXYGEN_NOTES, .sources = sources, .answer = answer,
    .work = work,
};
/* clang-format on */
