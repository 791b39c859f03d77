/* bag_calc.c - fish out of a shipping bag: its ammonia shut and opened, and the steps into the
 * tank. */
#include "calc/bag_water.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BAG_TAN_BAG, BAG_FREE_BAG, BAG_FREE_OPEN, BAG_TIMES_WORSE, BAG_TEMP_GAP, BAG_SALINITY_GAP,
    BAG_PH_GAP, BAG_RESULTS
};
/* clang-format on */
enum { BAG_AMMONIA = 1 }; /* the group of tan and biomass */

/* clang-format off */
static const struct hw_input inputs[BAG_INPUTS] = {
    [BAG_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = HW_BAG_TOTAL_MAX,
     .group = BAG_AMMONIA, .beyond = "check the reading",
     .help = "total ammonia of the bag water, as the kit reads"},
    [BAG_BIOMASS] = {.name = "biomass", .unit = "g", .kind = HW_MASS, .lo = HW_BAG_BIOMASS_MIN,
     .hi = HW_BAG_BIOMASS_MAX, .group = BAG_AMMONIA, .beyond = "check the unit",
     .help = "mass of all the fish, if the water was not tested"},
    [BAG_BASIS] = BASIS_INPUT,
    [BAG_HOURS] = {.name = "hours", .unit = "h", .kind = HW_TIME, .lo = HW_BAG_HOURS_MIN,
     .hi = HW_BAG_HOURS_MAX, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "time since the bag was shut, needed with biomass"},
    [BAG_WATER] = {.name = "water", .unit = "L", .kind = HW_VOLUME, .lo = HW_BAG_WATER_MIN,
     .hi = HW_BAG_WATER_MAX, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "water in the bag, needed with biomass"},
    [BAG_EXCRETION] = {.name = "excretion", .unit = "mg/kg/h", .kind = HW_BODY_RATE,
     .lo = HW_BAG_EXCRETION_MIN, .hi = HW_BAG_EXCRETION_MAX, .need = HW_PRESET, .preset = 10,
     .beyond = "check the figure, starved fish give off 2 to 16",
     .help = "ammonia as N that the fish give off, for biomass"},
    [BAG_PH_BAG] = {.name = "ph_bag", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .beyond = "check the reading",
     .help = "pH when opened, meter set in fresh-water buffers"},
    [BAG_PH_OPEN] = {.name = "ph_open", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .beyond = "check the reading",
     .help = "pH of the bag water once it has stood open"},
    [BAG_TEMP] = {.name = "temp", .unit = "C", .kind = HW_TEMPERATURE, .lo = HW_AMMONIA_TEMP_MIN,
     .hi = HW_AMMONIA_TEMP_MAX, .beyond = "the formula is valid to here",
     .help = "temperature of the bag water"},
    [BAG_SALINITY] = {.name = "salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of the bag water"},
    [BAG_TANK_TEMP] = {.name = "tank_temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for fish", .help = "temperature of the tank they go into"},
    [BAG_TANK_SALINITY] = {.name = "tank_salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "too salty for fish",
     .help = "salinity of the tank they go into"},
    [BAG_TANK_PH] = {.name = "tank_ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH of the tank they go into"},
};

static const struct hw_result results[BAG_RESULTS] = {
    [BAG_TAN_BAG] = {.name = "tan_bag", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "total ammonia in the bag, as N"},
    [BAG_FREE_BAG] = {.name = "free_bag", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .help = "free ammonia in the shut bag, as N"},
    [BAG_FREE_OPEN] = {.name = "free_open", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "free ammonia in the opened bag, as N"},
    [BAG_TIMES_WORSE] = {.name = "times_worse", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .help = "free ammonia opened, as times that shut"},
    [BAG_TEMP_GAP] = {.name = "temp_gap", .unit = "C", .kind = HW_TEMPERATURE_STEP, .digits = 2,
     .sometimes = true, .help = "tank minus bag (above 0: tank warmer)"},
    [BAG_SALINITY_GAP] = {.name = "salinity_gap", .unit = "g/kg", .kind = HW_SALINITY,
     .digits = 2, .sometimes = true, .help = "tank minus bag (above 0: tank saltier)"},
    [BAG_PH_GAP] = {.name = "ph_gap", .unit = "", .kind = HW_PH, .digits = 2, .sometimes = true,
     .help = "tank minus bag (above 0: tank pH higher)"},
};
/* clang-format on */

static const char *const sources[] = {"emerson1975",     "khoo1977",       "epa1989",
                                      "epa2013",         "bag-co2",        "excretion-rates",
                                      "aquarium-steps",  "kit-chemistry",  "iupac-weights",
                                      "common-practice", "our-arithmetic", NULL};

static uint64_t ammonia_notes(const struct bag_water *bag, const double in[])
{
    bool shut = above(bag->shut.salt_ratio, 1) || above(bag->shut.fresh_ratio, 1);
    bool stretched = bag->shut.criteria_stretched || bag->worst.criteria_stretched;
    return note_if(shut, HW_BAG_NOTE_SHUT_OVER_HOUR) |
           note_if(above(bag->worst.salt_ratio, 1), HW_BAG_NOTE_OPEN_OVER_HOUR_SALT) |
           note_if(above(bag->worst.fresh_ratio, 1), HW_BAG_NOTE_OPEN_OVER_HOUR_FRESH) |
           note_if(above(bag->total_n, bag->long_n), HW_BAG_NOTE_OPEN_OVER_LONG) |
           note_if(in[BAG_PH_OPEN] <= in[BAG_PH_BAG], HW_BAG_NOTE_PH_NO_RISE) |
           note_if(bag->open.fit_stretched, HW_BAG_NOTE_FIT_STRETCHED) |
           note_if(stretched, HW_BAG_NOTE_HOUR_STRETCHED) |
           note_if(isnan(in[BAG_TAN]), HW_BAG_NOTE_BAG_RECKONED) |
           note_if(!isnan(in[BAG_TAN]), HW_BAG_NOTE_BAG_DILUTE) |
           note_if(!isnan(in[BAG_TAN]), HW_BAG_NOTE_KIT_BASIS);
}

static uint64_t gap_notes(const double out[])
{
    return note_if(above_limit(out[BAG_TEMP_GAP], HW_LIMIT_TEMP_RISE), HW_BAG_NOTE_TANK_WARMER) |
           note_if(above_limit(-out[BAG_TEMP_GAP], HW_LIMIT_TEMP_FALL), HW_BAG_NOTE_TANK_COLDER) |
           note_if(above_limit(out[BAG_SALINITY_GAP], HW_LIMIT_SALINITY_RISE),
                   HW_BAG_NOTE_TANK_SALTIER) |
           note_if(above_limit(-out[BAG_SALINITY_GAP], HW_LIMIT_SALINITY_FALL),
                   HW_BAG_NOTE_SALT_STEP_DOWN) |
           note_if(above_limit(fabs(out[BAG_PH_GAP]), HW_LIMIT_PH_STEP),
                   HW_BAG_NOTE_TANK_PH_APART) |
           note_if(isnan(out[BAG_TEMP_GAP] + out[BAG_SALINITY_GAP] + out[BAG_PH_GAP]),
                   HW_BAG_NOTE_TANK_UNSAID);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct bag_water *bag, const double in[])
{
    bool measured = !isnan(in[BAG_TAN]);
    bool some = !isnan(in[BAG_HOURS]) || !isnan(in[BAG_WATER]);
    bool both = !isnan(in[BAG_HOURS]) && !isnan(in[BAG_WATER]);
    return note_if(!measured && !both, HW_BAG_NOTE_BAG_NEEDS_TIME) |
           note_if(measured && some, HW_BAG_NOTE_BAG_MEASURED) |
           note_if(!measured && both && isnan(bag->total_n), HW_BAG_NOTE_BAG_IMPOSSIBLE);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct bag_water bag = bag_water(in);
    out[BAG_TAN_BAG] = bag.total_n;
    out[BAG_FREE_BAG] = bag.shut.free_n;
    out[BAG_FREE_OPEN] = bag.open.free_n;
    out[BAG_TIMES_WORSE] = bag.times_worse;
    out[BAG_TEMP_GAP] = in[BAG_TANK_TEMP] - in[BAG_TEMP];
    out[BAG_SALINITY_GAP] = in[BAG_TANK_SALINITY] - in[BAG_SALINITY];
    out[BAG_PH_GAP] = in[BAG_TANK_PH] - in[BAG_PH_BAG];
    *notes |= refusals(&bag, in);
    if (*notes == 0) {
        *notes |= ammonia_notes(&bag, in) | gap_notes(out);
    }
}

/* clang-format off */
const struct hw_calc hw_calc_bag = {
    .name = "bag",
    .purpose = "fish out of a shipping bag: free ammonia, and steps to the tank",
    .inputs = inputs, .n_inputs = BAG_INPUTS, .results = results,
    .n_results = BAG_RESULTS, .notes = hw_bag_notes, .n_notes = HW_BAG_NOTES, .sources = sources,
    .answer = answer, .work = bag_work,
};
/* clang-format on */
