/* emergency_calc.c - fish gasp, ammonia: what to do first, what is forbidden, and how much. */
#include "calc/emergency_facts.h"
#include "calc/list.h"
#include "holdwater/buffer.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    EMERGENCY_LONG_RATIO, EMERGENCY_SHARE_NEEDED, EMERGENCY_WATER_NEEDED, EMERGENCY_AT_HAND_RATIO,
    EMERGENCY_ADD_LIQUID, EMERGENCY_BINDER_ALLOWED, EMERGENCY_HOURS_AGAIN, EMERGENCY_RESULTS
};

#define LEVEL .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 1e5, .need = HW_OPTIONAL, \
     .beyond = "more is no treatment"

static const struct hw_input inputs[EMERGENCY_INPUTS] = {
    [EMERGENCY_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BINDER_TOTAL_MIN, .hi = HW_BINDER_TOTAL_MAX, .beyond = "check the reading",
     .help = "total ammonia as the kit reads it"},
    [EMERGENCY_BASIS] = BASIS_INPUT,
    [EMERGENCY_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .beyond = "check the reading", .help = "tank pH by a meter set in fresh-water buffers"},
    [EMERGENCY_MEDICINE] = {.name = "medicine", .unit = "", .kind = HW_SET, .lo = MEDICINE_NONE,
     .hi = MEDICINE_ALL, .words = medicine_words, .help = "what is in the water"},
    [EMERGENCY_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BUFFER_VOLUME_MIN, .hi = HW_BUFFER_VOLUME_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit", .help = "water in tank and filter, without rock and sand"},
    [EMERGENCY_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_CARBONATE_TEMP_MIN, .hi = HW_CARBONATE_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for fish", .help = "temperature of the tank"},
    [EMERGENCY_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_PH_SALINITY_MIN, .hi = HW_PH_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of the tank, 0 for fresh"},
    [EMERGENCY_NITRITE] = {.name = "nitrite", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 1000,
     .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "nitrite as N (a kit of the ion: divide by 3.28)"},
    [EMERGENCY_ALKALINITY] = {.name = "alkalinity", .tank = "alkalinity", .unit = "meq/L",
     .kind = HW_ALKALINITY, .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN,
     .hi = HW_BUFFER_ALKALINITY_MAX, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "total alkalinity of the tank"},
    [EMERGENCY_NEW_PH] = {.name = "new_ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH of the new water, aired, by the same meter"},
    [EMERGENCY_NEW_ALKALINITY] = {.name = "new_alkalinity", .unit = "meq/L",
     .kind = HW_ALKALINITY, .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN,
     .hi = HW_BUFFER_ALKALINITY_MAX, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "total alkalinity of the new water"},
    [EMERGENCY_NEW_TEMP] = {.name = "new_temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_CARBONATE_TEMP_MIN, .hi = HW_CARBONATE_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for fish", .help = "of the new water, else the tank's"},
    [EMERGENCY_NEW_SALINITY] = {.name = "new_salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_PH_SALINITY_MIN, .hi = HW_PH_SALINITY_MAX, .need = HW_OPTIONAL,
     .beyond = "the formula is valid to here", .help = "of the new water, else the tank's"},
    [EMERGENCY_AT_HAND] = {.name = "at_hand", .unit = "L", .kind = HW_VOLUME, .lo = 0.001,
     .hi = 1e5, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "new water that is there now"},
    [EMERGENCY_NOW] = {.name = "now", LEVEL, .help = "level of the medicine in the tank"},
    [EMERGENCY_KEEP] = {.name = "keep", .aim = true, LEVEL,
     .help = "level that the medicine is to stay at"},
    [EMERGENCY_CEILING] = {.name = "ceiling", LEVEL,
     .help = "most that fish stand, by label (ionic copper " HW_FIGURE_COPPER_IONIC_HIGH ")"},
    [EMERGENCY_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = PRODUCT_MIN, .hi = PRODUCT_MAX, .need = HW_OPTIONAL,
     .beyond = "check the unit, no stock is so weak or so strong",
     .help = "medicine in the stock"},
    [EMERGENCY_RISE] = {.name = "rise", .unit = "mg/L/d", .kind = HW_RISE_PER_DAY, .lo = 0.01,
     .hi = 100, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "rise of total ammonia in a day, as you read it"},
};

static const struct hw_result results[EMERGENCY_RESULTS] = {
    [EMERGENCY_LONG_RATIO] = {.name = "long_ratio", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .sometimes = true, .help = "times the limit for days, the tank as it is"},
    [EMERGENCY_SHARE_NEEDED] = {.name = "share_needed", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "least change: ammonia under the limit, no rise"},
    [EMERGENCY_WATER_NEEDED] = {.name = "water_needed", .unit = "L", .kind = HW_VOLUME,
     .digits = 3, .safe = 1, .sometimes = true, .help = "new water for that change"},
    [EMERGENCY_AT_HAND_RATIO] = {.name = "at_hand_ratio", .unit = "", .kind = HW_NUMBER,
     .digits = 3, .sometimes = true, .help = "times the limit at worst, with the water at hand"},
    [EMERGENCY_ADD_LIQUID] = {.name = "add_liquid", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "into new water"},
    [EMERGENCY_BINDER_ALLOWED] = {.name = "binder_allowed", .unit = "", .kind = HW_YES_NO,
     .digits = 1, .sometimes = true, .help = "may a binder go in? (only if all labels agree)"},
    [EMERGENCY_HOURS_AGAIN] = {.name = "hours_again", .unit = "h", .kind = HW_TIME, .digits = 2,
     .safe = -1, .sometimes = true, .help = "to the limit again, after at_hand, else share_needed"},
};
/* clang-format on */

static const char *const sources[] = {"conservation",
                                      "carbonate-set",
                                      "khoo1977",
                                      "epa1989",
                                      "epa2013",
                                      "emergency-order",
                                      "copper-window",
                                      "copper-fresh",
                                      "copper-ramp",
                                      "copper-products",
                                      "copper-reducers",
                                      "dye-chemistry",
                                      "binder-weights",
                                      "binder-chemistry",
                                      "formalin-oxygen",
                                      "iupac-weights",
                                      "grouper-trial",
                                      "kit-chemistry",
                                      "aquarium-steps",
                                      "common-practice",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct emergency e = emergency_facts(in);
    *notes |= emergency_acts(&e, in);
    out[EMERGENCY_LONG_RATIO] = e.long_ratio;
    out[EMERGENCY_SHARE_NEEDED] = e.share_needed;
    out[EMERGENCY_WATER_NEEDED] = e.water_needed;
    out[EMERGENCY_AT_HAND_RATIO] = e.at_hand_ratio;
    out[EMERGENCY_ADD_LIQUID] = e.add_liquid;
    out[EMERGENCY_BINDER_ALLOWED] = e.binder_allowed;
    out[EMERGENCY_HOURS_AGAIN] = e.hours_again;
}

/* clang-format off */
const struct hw_calc hw_calc_emergency = {
    .name = "emergency",
    .purpose = "fish gasp, ammonia: what to do first, and how much",
    .inputs = inputs, .n_inputs = EMERGENCY_INPUTS, .results = results,
    .n_results = EMERGENCY_RESULTS, .notes = hw_emergency_notes,
    .n_notes = HW_EMERGENCY_NOTES, .sources = sources, .answer = answer, .work = emergency_work,
};
/* clang-format on */
