/* blend_calc.c - what a water change does to temperature, salinity, pH and free ammonia. */
#include "calc/blend_states.h"
#include "calc/block_row.h"
#include "calc/free_ammonia.h"
#include "calc/list.h"
#include "holdwater/buffer.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BLEND_SHARE_NEEDED, BLEND_WATER_NEEDED, BLEND_TAN_AFTER, BLEND_FREE_BEFORE,
    BLEND_FREE_AFTER, BLEND_FREE_AIRED, BLEND_FREE_WORST, BLEND_PH_AFTER, BLEND_PH_AIRED,
    BLEND_TEMP_STEP, BLEND_SALINITY_STEP, BLEND_TEMP_AFTER, BLEND_SALINITY_AFTER,
    BLEND_FREE_SAME_CO2, BLEND_PH_SAME_CO2, BLEND_RESULTS
};
/* clang-format on */

enum { BLEND_TAKE_OR_SHARE = 1 };

/* clang-format off */
static const struct hw_input inputs[BLEND_INPUTS] = {
    [BLEND_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BUFFER_VOLUME_MIN, .hi = HW_BUFFER_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [BLEND_TAKE] = {.name = "take", .unit = "L", .kind = HW_VOLUME, .lo = 0.001, .hi = 1e5,
     .need = HW_OPTIONAL, .group = BLEND_TAKE_OR_SHARE, .beyond = "check the unit",
     .help = "water taken out, and as much new water put in"},
    [BLEND_SHARE] = {.name = "share", .unit = "%", .kind = HW_SHARE, .lo = 0.01, .hi = 100,
     .need = HW_OPTIONAL, .group = BLEND_TAKE_OR_SHARE, .beyond = "100 % is all of it",
     .help = "share of the water changed"},
    [BLEND_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BLEND_TAN_MIN, .hi = HW_BLEND_TAN_MAX, .need = HW_PRESET,
     .beyond = "no fish lives in more", .help = "total ammonia of the tank, as the kit reads it"},
    [BLEND_BASIS] = BASIS_INPUT,
    [BLEND_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .beyond = "check the reading", .help = "tank pH by a meter set in fresh-water buffers"},
    [BLEND_ALKALINITY] = {.name = "alkalinity", .tank = "alkalinity", .unit = "meq/L",
     .kind = HW_ALKALINITY, .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN,
     .hi = HW_BUFFER_ALKALINITY_MAX, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "total alkalinity of the tank, as a kit reads it"},
    [BLEND_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_CARBONATE_TEMP_MIN, .hi = HW_CARBONATE_TEMP_MAX,
     .beyond = "too cold or too hot for fish", .help = "temperature of the tank"},
    [BLEND_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_PH_SALINITY_MIN, .hi = HW_PH_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of the tank, 0 for fresh"},
    [BLEND_NEW_TAN] = {.name = "new_tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_BLEND_TAN_MIN, .hi = HW_BLEND_TAN_MAX, .need = HW_PRESET,
     .beyond = "no water to use", .help = "total ammonia of the new water, by the same kit"},
    [BLEND_NEW_PH] = {.name = "new_ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN,
     .hi = HW_PH_MAX, .beyond = "check the reading",
     .help = "pH of the new water, aired, by the same meter"},
    [BLEND_NEW_ALKALINITY] = {.name = "new_alkalinity", .unit = "meq/L", .kind = HW_ALKALINITY,
     .unit_must = true, .lo = HW_BUFFER_ALKALINITY_MIN, .hi = HW_BUFFER_ALKALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "check the unit", .help = "total alkalinity of the new water"},
    [BLEND_NEW_TEMP] = {.name = "new_temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_CARBONATE_TEMP_MIN, .hi = HW_CARBONATE_TEMP_MAX,
     .beyond = "too cold or too hot for fish", .help = "temperature of the new water"},
    [BLEND_NEW_SALINITY] = {.name = "new_salinity", .unit = "g/kg", .kind = HW_SALINITY,
     .lo = HW_PH_SALINITY_MIN, .hi = HW_PH_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of the new water, 0 for fresh"},
    [BLEND_AIR_CO2] = {.name = "air_co2", .unit = "", .kind = HW_NUMBER,
     .lo = HW_CARBONATE_AIR_MIN, .hi = HW_CARBONATE_AIR_MAX, .need = HW_PRESET, .preset = 420,
     .beyond = "open air has 420, a closed room 800 to 1200",
     .help = "carbon dioxide of the room's air in ppm (uatm)"},
};

#define FREE .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 2

static const struct hw_result results[BLEND_RESULTS] = {
    [BLEND_SHARE_NEEDED] = {.name = "share_needed", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "least change: ammonia under the limit, no rise"},
    [BLEND_WATER_NEEDED] = {.name = "water_needed", .unit = "L", .kind = HW_VOLUME, .digits = 3,
     .safe = 1, .sometimes = true, .help = "new water for that change"},
    [BLEND_TAN_AFTER] = {.name = "tan_after", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .help = "total ammonia after mixing, in your basis"},
    [BLEND_FREE_BEFORE] = {.name = "free_before", FREE,
     .help = "free ammonia before the change, as N"},
    [BLEND_FREE_AFTER] = {.name = "free_after", FREE, .sometimes = true,
     .help = "free ammonia right after mixing, as N"},
    [BLEND_FREE_AIRED] = {.name = "free_aired", FREE, .sometimes = true,
     .help = "free ammonia hours later, aired, as N"},
    [BLEND_FREE_WORST] = {.name = "free_worst", FREE, .sometimes = true,
     .help = "free ammonia at worst, at the higher pH, as N"},
    [BLEND_PH_AFTER] = {.name = "ph_after", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .help = "pH right after mixing"},
    [BLEND_PH_AIRED] = {.name = "ph_aired", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .help = "pH hours later, in balance with room air"},
    [BLEND_TEMP_STEP] = {.name = "temp_step", .unit = "C", .kind = HW_TEMPERATURE_STEP,
     .digits = 2, .sometimes = true, .help = "what the fish meet: above 0 warmer"},
    [BLEND_SALINITY_STEP] = {.name = "salinity_step", .unit = "g/kg", .kind = HW_SALINITY,
     .digits = 2, .sometimes = true, .help = "what the fish meet: above 0 saltier"},
    [BLEND_TEMP_AFTER] = {.name = "temp_after", .unit = "C", .kind = HW_TEMPERATURE, .digits = 3,
     .detail = true, .sometimes = true, .help = "temperature of the mixture"},
    [BLEND_SALINITY_AFTER] = {.name = "salinity_after", .unit = "g/kg", .kind = HW_SALINITY,
     .digits = 3, .detail = true, .sometimes = true, .help = "salinity of the mixture"},
    [BLEND_FREE_SAME_CO2] = {.name = "free_same_co2", FREE, .sometimes = true, .detail = true,
     .help = "free ammonia at the tank's own CO2, as N"},
    [BLEND_PH_SAME_CO2] = {.name = "ph_same_co2", .unit = "", .kind = HW_PH, .digits = 3,
     .sometimes = true, .detail = true, .help = "pH at the tank's own CO2"},
};
/* clang-format on */

static const char *const sources[] = {"conservation",    "eos80",          "unesco44-heat",
                                      "carbonate-set",   "clegg1995",      "dickson1990",
                                      "dickson1979",     "takahashi1982",  "davies",
                                      "malmberg1956",    "emerson1975",    "khoo1977",
                                      "epa1989",         "epa2013",        "aquarium-steps",
                                      "common-practice", "our-arithmetic", NULL};

/* Whether the change does it, and what would. */
static uint64_t need_notes(const struct blend_states *s)
{
    bool found = s->need == BLEND_NEED_FOUND;
    bool short_of_it = found && !s->enough;
    bool rises = free_rises(s->free_before, blend_highest_free(s));
    return note_if(s->need == BLEND_NEED_NONE, HW_BLEND_NOTE_BLEND_NONE_DOES) |
           note_if(s->sought && s->settled, HW_BLEND_NOTE_BLEND_NONE_NEEDED) |
           note_if(s->sought && above_limit(100 * s->needed, HW_LIMIT_CHANGE_LARGE),
                   HW_BLEND_NOTE_BLEND_LARGE) |
           note_if(short_of_it && !rises, HW_BLEND_NOTE_BLEND_SHORT) |
           note_if(short_of_it && rises, HW_BLEND_NOTE_BLEND_NO_HELP);
}

static uint64_t ammonia_notes(const struct blend_states *s)
{
    bool falls = below(s->tan_after, s->tan_before);
    bool rises = falls && free_rises(s->free_before, blend_highest_free(s));
    bool frees = rises && !s->enough && s->need != BLEND_NEED_NONE;
    bool later = free_rises(s->free[BLEND_MIXED], s->free[BLEND_AIRED]);
    bool back = free_rises(s->free[BLEND_MIXED], s->free[BLEND_SAME_CO2]);
    bool none = !(s->tan_before > 0) && !(s->tan_new > 0);
    return need_notes(s) | note_if(none, HW_BLEND_NOTE_BLEND_NO_TAN) |
           note_if(frees, HW_BLEND_NOTE_BLEND_FREES) |
           note_if(later, HW_BLEND_NOTE_BLEND_FREES_LATER) |
           note_if(back && !later, HW_BLEND_NOTE_BLEND_FREES_BACK) |
           note_if(s->tan_new > s->tan_before, HW_BLEND_NOTE_BLEND_BRINGS_AMMONIA) |
           note_if(s->hour_salt, HW_BLEND_NOTE_BLEND_HOUR_SALT) |
           note_if(s->hour_fresh, HW_BLEND_NOTE_BLEND_HOUR_FRESH) |
           note_if(s->over_salt, HW_BLEND_NOTE_OVER_LIMIT_SALT) |
           note_if(s->over_fresh, HW_BLEND_NOTE_OVER_LIMIT_FRESH);
}

/* At once: what comes with the air comes slowly. Without the alkalinities it may be either pH. Sour
 * water with ammonia that gets a higher pH is not to be changed in parts. */
static uint64_t ph_notes(const struct blend_states *s, const double in[])
{
    double ph = s->carbonate ? s->ph[BLEND_MIXED] : in[BLEND_NEW_PH];
    double rise = ph - in[BLEND_PH];
    bool steps = !below_limit(fabs(rise), HW_LIMIT_PH_STEP);
    bool sour = rise > 0 && s->tan_before > 0 && s->need != BLEND_NEED_NONE &&
                below_limit(in[BLEND_PH], HW_LIMIT_SOUR_BELOW);
    return note_if(steps && sour, HW_BLEND_NOTE_BLEND_PH_SOUR) |
           note_if(steps && !sour, HW_BLEND_NOTE_BLEND_PH_STEP);
}

/* Of a change that has a size. */
static uint64_t step_notes(const struct blend_states *s, const double in[])
{
    if (isnan(s->share)) {
        return 0;
    }
    double warmer = s->blend.temp - in[BLEND_TEMP];
    double saltier = s->blend.salinity - in[BLEND_SALINITY];
    return note_if(above_limit(warmer, HW_LIMIT_TEMP_RISE), HW_BLEND_NOTE_BLEND_WARMS) |
           note_if(above_limit(-warmer, HW_LIMIT_TEMP_FALL), HW_BLEND_NOTE_BLEND_COOLS) |
           ph_notes(s, in) |
           note_if(above_limit(saltier, HW_LIMIT_SALINITY_RISE), HW_BLEND_NOTE_SALT_STEP_UP) |
           note_if(above_limit(-saltier, HW_LIMIT_SALINITY_FALL), HW_BLEND_NOTE_SALT_STEP_DOWN);
}

static uint64_t notes_of(const struct blend_states *s, const double in[])
{
    static const unsigned refusals[] = {[BLEND_OVER_VOLUME] = HW_BLEND_NOTE_BLEND_OVER_VOLUME,
                                        [BLEND_PH_NOT_ALKALINITY] = HW_BLEND_NOTE_PH_NOT_ALKALINITY,
                                        [BLEND_OUTSIDE_PH] = HW_BLEND_NOTE_BLEND_OVER_PH,
                                        [BLEND_NO_SHARE] = HW_BLEND_NOTE_BLEND_NO_SHARE};
    if (s->refusal != BLEND_ANSWERED) {
        return note_bit(refusals[s->refusal]);
    }
    double freshest = fmin(in[BLEND_SALINITY], in[BLEND_NEW_SALINITY]);
    return ammonia_notes(s) | step_notes(s, in) |
           note_if(below_limit(freshest, HW_LIMIT_CARBONATE_FRESH), HW_BLEND_NOTE_CARBONATE_FRESH) |
           note_if(s->stretched, HW_BLEND_NOTE_FIT_STRETCHED) |
           note_if(s->above_fit, HW_BLEND_NOTE_ABOVE_FIT) |
           note_if(s->co2_odd, HW_BLEND_NOTE_BLEND_CO2_ODD) |
           note_if(s->carbonate, HW_BLEND_NOTE_BLEND_STATES) |
           note_if(!s->carbonate, HW_BLEND_NOTE_BLEND_WORST);
}

/* One row. Where a share was given, notes and other results ask only whether any share does it. */
static void answer_row(const double in[], bool needed, double out[], uint64_t *notes)
{
    struct blend_states s = blend_states(in);
    if (!s.sought) {
        blend_look_for_needed(&s, in, needed);
    }
    *notes |= notes_of(&s, in);
    out[BLEND_SHARE_NEEDED] = 100 * s.needed;
    out[BLEND_WATER_NEEDED] = s.needed * in[BLEND_VOLUME];
    out[BLEND_TEMP_AFTER] = s.blend.temp;
    out[BLEND_SALINITY_AFTER] = s.blend.salinity;
    out[BLEND_TEMP_STEP] = s.blend.temp - in[BLEND_TEMP];
    out[BLEND_SALINITY_STEP] = s.blend.salinity - in[BLEND_SALINITY];
    out[BLEND_TAN_AFTER] = s.tan_after_basis;
    out[BLEND_FREE_BEFORE] = s.free_before;
    out[BLEND_FREE_AFTER] = s.free[BLEND_MIXED];
    out[BLEND_PH_AFTER] = s.ph[BLEND_MIXED];
    out[BLEND_FREE_SAME_CO2] = s.free[BLEND_SAME_CO2];
    out[BLEND_PH_SAME_CO2] = s.ph[BLEND_SAME_CO2];
    out[BLEND_FREE_AIRED] = s.free[BLEND_AIRED];
    out[BLEND_PH_AIRED] = s.ph[BLEND_AIRED];
    out[BLEND_FREE_WORST] = s.free_worst;
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    answer_row(in, true, out, notes);
}

/* Does without the search where nobody wants what it finds. */
static bool block(const struct hw_block *block)
{
    bool needed = block->out[BLEND_SHARE_NEEDED] || block->out[BLEND_WATER_NEEDED];
    double in[BLEND_INPUTS];
    double out[BLEND_RESULTS];
    for (size_t row = 0; row < block->n; row++) {
        block_row_read(block, BLEND_INPUTS, row, in);
        answer_row(in, needed, out, &block->notes[row]);
        block_row_write(block, BLEND_RESULTS, row, out);
    }
    return true;
}

/* clang-format off */
const struct hw_calc hw_calc_blend = {
    .name = "blend",
    .purpose = "what a water change does to temperature, salinity, pH and ammonia",
    .inputs = inputs, .n_inputs = BLEND_INPUTS, .results = results, .n_results = BLEND_RESULTS,
    .notes = hw_blend_notes, .n_notes = HW_BLEND_NOTES, .sources = sources, .answer = answer,
    .block = block, .work = blend_work,
};
/* clang-format on */
