/* bioload_calc.c - how much ammonia food and fish give off, and what that does to filter and
 * water. */
#include "calc/bioload_day.h"
#include "calc/limit_notes.h"
#include "calc/list.h"
#include "holdwater/ahead.h"
#include "holdwater/ammonia.h"
#include "holdwater/ph.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    BIOLOAD_PRODUCTION, BIOLOAD_RISE_PER_DAY, BIOLOAD_SETTLES, BIOLOAD_SETTLES_LOW,
    BIOLOAD_SETTLES_HIGH, BIOLOAD_LOAD_SHARE, BIOLOAD_HOURS_TO_LIMIT, BIOLOAD_SHARE_A_DAY,
    BIOLOAD_FEED_FOR_LIMIT, BIOLOAD_ALKALINITY_USED, BIOLOAD_RESULTS
};
/* clang-format on */

enum { BIOLOAD_GIVERS = 1 }; /* the group of feed, biomass and rise */

/* clang-format off */
static const struct hw_input inputs[BIOLOAD_INPUTS] = {
    [BIOLOAD_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BIOLOAD_VOLUME_MIN, .hi = HW_BIOLOAD_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [BIOLOAD_FEED] = {.name = "feed", .unit = "g/d", .kind = HW_MASS_PER_DAY,
     .lo = HW_BIOLOAD_FEED_MIN, .hi = HW_BIOLOAD_FEED_MAX, .group = BIOLOAD_GIVERS,
     .beyond = "more is no quarantine tank", .help = "food in a day, as it is fed"},
    [BIOLOAD_BIOMASS] = {.name = "biomass", .unit = "g", .kind = HW_MASS,
     .lo = HW_BIOLOAD_BIOMASS_MIN, .hi = HW_BIOLOAD_BIOMASS_MAX, .group = BIOLOAD_GIVERS,
     .beyond = "check the unit", .help = "mass of all the fish, if the food is not weighed"},
    [BIOLOAD_RISE] = {.name = "rise", .unit = "mg/L/d", .kind = HW_RISE_PER_DAY, .lo = 0.01,
     .hi = 100, .group = BIOLOAD_GIVERS, .beyond = "check the unit",
     .help = "rise of total ammonia in a day without a filter"},
    [BIOLOAD_BASIS] = {.name = "basis", .unit = "", .kind = HW_CHOICE, .hi = HW_NITROGEN_NH4,
     .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,
     .help = "what rise and cleared_... count (see leaflet)"},
    [BIOLOAD_KIT_STEP] = {.name = "kit_step", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.001, .hi = 5, .need = HW_PRESET, .preset = 0.25, .beyond = "no kit is coarser",
     .help = "step of the kit: cleared_to is half at least"},
    [BIOLOAD_RATION] = {.name = "ration", .unit = "%", .kind = HW_SHARE, .lo = 100 *
     HW_BIOLOAD_RATION_SHARE_MIN, .hi = 100 * HW_BIOLOAD_RATION_SHARE_MAX, .need = HW_PRESET,
     .preset = 2, .beyond = "no fish eats more than a fifth of itself",
     .help = "food in a day as a share of biomass"},
    [BIOLOAD_PROTEIN] = {.name = "protein", .unit = "%", .kind = HW_SHARE, .lo = 100 *
     HW_BIOLOAD_PROTEIN_SHARE_MIN, .hi = 100 * HW_BIOLOAD_PROTEIN_SHARE_MAX, .need = HW_OPTIONAL,
     .beyond = "dry food has 40 to 60 %, wet and frozen 5 to 20 %",
     .help = "protein in food as fed, needed for feed or biomass"},
    [BIOLOAD_FACTOR] = {.name = "factor", .unit = "", .kind = HW_NUMBER,
     .lo = HW_BIOLOAD_FACTOR_MIN, .hi = HW_BIOLOAD_FACTOR_MAX, .need = HW_PRESET,
     .preset = HW_BIOLOAD_FACTOR, .beyond = "0.03 is the least measured, 0.16 is all there is",
     .help = "g of ammonia nitrogen from a g of protein"},
    [BIOLOAD_DEAD] = {.name = "dead", .unit = "g", .kind = HW_MASS, .lo = HW_BIOLOAD_DEAD_MIN,
     .hi = HW_BIOLOAD_DEAD_MAX, .need = HW_PRESET, .beyond = "more is no quarantine tank",
     .help = "dead fish and rotting food in the water"},
    [BIOLOAD_CAPACITY] = {.name = "capacity", .unit = "mg/d", .kind = HW_MASS_PER_DAY, .lo = 0.1,
     .hi = 1e8, .need = HW_OPTIONAL, .beyond = "check the unit, less is no filter",
     .help = "nitrogen the filter can clear, capacity of verdict"},
    [BIOLOAD_CLEARED_FROM] = {.name = "cleared_from", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.01, .hi = 50, .need = HW_OPTIONAL, .beyond = "no filter is challenged with more",
     .help = "ammonia at the start of the filter's challenge"},
    [BIOLOAD_CLEARED_TO] = {.name = "cleared_to", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = 50, .when_input = BIOLOAD_CLEARED_FROM, .when_words = HW_WHEN_GIVEN,
     .beyond = "that is no challenge", .help = "ammonia at its end"},
    [BIOLOAD_CLEARED_IN] = {.name = "cleared_in", .unit = "h", .kind = HW_TIME,
     .lo = HW_AHEAD_CHALLENGE_MIN, .hi = HW_AHEAD_CHALLENGE_MAX,
     .when_input = BIOLOAD_CLEARED_FROM, .when_words = HW_WHEN_GIVEN,
     .beyond = "no kit tells sooner, longer is not one challenge",
     .help = "hours from its start to its end"},
    [BIOLOAD_HALF] = {.name = "half", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_AHEAD_HALF_MIN, .hi = HW_AHEAD_HALF_MAX, .need = HW_PRESET, .preset = 1,
     .beyond = HW_FIGURE_HALF_LOW " to " HW_FIGURE_HALF_HIGH " mg/L was found",
     .help = "ammonia as N at which the filter works at half"},
    [BIOLOAD_LEFT] = {.name = "left", .unit = "%", .kind = HW_SHARE, .hi = 100,
     .need = HW_PRESET, .preset = 100, .beyond = "100 % is all of it",
     .help = "share of the filter left, as after a medicine"},
    [BIOLOAD_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "tank pH by a meter set in fresh-water buffers"},
    [BIOLOAD_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "the formula is valid to here", .help = "water temperature"},
    [BIOLOAD_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of sea-salt water, 0 for fresh"},
    [BIOLOAD_LIMIT] = {.name = "limit", .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = 0.01,
     .hi = 100, .need = HW_OPTIONAL, .beyond = "no kit reads less, no fish stands more",
     .help = "your own limit of total ammonia as N"},
};

static const struct hw_result results[BIOLOAD_RESULTS] = {
    [BIOLOAD_PRODUCTION] = {.name = "production", .unit = "mg/d", .kind = HW_MASS_PER_DAY,
     .digits = 3, .help = "ammonia given off in a day, as N"},
    [BIOLOAD_RISE_PER_DAY] = {.name = "rise_per_day", .unit = "mg/L/d", .kind = HW_RISE_PER_DAY,
     .digits = 3, .help = "rise of total ammonia with no filter, as N"},
    [BIOLOAD_SETTLES] = {.name = "settles", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 2,
     .sometimes = true, .help = "mean at which the filter holds it, as N"},
    [BIOLOAD_SETTLES_LOW] = {.name = "settles_low", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 2, .sometimes = true, .detail = true, .help = "the same, least of what filters do"},
    [BIOLOAD_SETTLES_HIGH] = {.name = "settles_high", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 2, .sometimes = true, .detail = true, .help = "the same, most of what filters do"},
    [BIOLOAD_LOAD_SHARE] = {.name = "load_share", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .sometimes = true, .help = "of the filter's capacity: stay below " HW_FIGURE_LOAD_SHARE
     " %"},
    [BIOLOAD_HOURS_TO_LIMIT] = {.name = "hours_to_limit", .unit = "h", .kind = HW_TIME,
     .digits = 2, .safe = -1, .sometimes = true, .help = "from none to the limit with no filter"},
    [BIOLOAD_SHARE_A_DAY] = {.name = "share_a_day", .unit = "%", .kind = HW_SHARE, .digits = 3,
     .safe = 1, .sometimes = true, .help = "water to change daily if there is no filter"},
    [BIOLOAD_FEED_FOR_LIMIT] = {.name = "feed_for_limit", .unit = "g/d",
     .kind = HW_MASS_PER_DAY, .digits = 2, .safe = -1, .sometimes = true, .detail = true,
     .help = "food that rests at the limit: stay well below"},
    [BIOLOAD_ALKALINITY_USED] = {.name = "alkalinity_used", .unit = "meq/L/d",
     .kind = HW_ALKALINITY_PER_DAY, .digits = 3, .detail = true,
     .help = "alkalinity that the filter uses in a day"},
};
/* clang-format on */

static const char *const sources[] = {"feed-nitrogen",
                                      "protein-nitrogen",
                                      "protein-figures",
                                      "gilthead-excretion",
                                      "flounder-excretion",
                                      "meal-peak",
                                      "piper-fasting",
                                      "half-saturation",
                                      "saturating-filter",
                                      "ahead-ripple",
                                      "conservation",
                                      "nitrification",
                                      "epa1989",
                                      "epa2013",
                                      "iupac-weights",
                                      "common-practice",
                                      "our-arithmetic",
                                      NULL};

/* The filter's own capacity, more often in the wrong unit than so large. */
static bool capacity_high(const double in[])
{
    return above_limit(in[BIOLOAD_CAPACITY] / in[BIOLOAD_VOLUME], HW_LIMIT_CLEARS_FAST);
}

static uint64_t load_notes(const struct bioload_day *day, const double in[])
{
    bool over = above(day->production, day->left);
    bool quarter = above_limit(day->share, HW_LIMIT_LOAD_SHARE);
    return note_if(over, HW_BIOLOAD_NOTE_LOAD_OVER) |
           note_if(capacity_high(in), HW_BIOLOAD_NOTE_CAPACITY_HIGH) |
           note_if(quarter && !over, HW_BIOLOAD_NOTE_LOAD_QUARTER) |
           note_if(isnan(in[BIOLOAD_CAPACITY]) && isnan(in[BIOLOAD_CLEARED_FROM]),
                   HW_BIOLOAD_NOTE_CAPACITY_UNSAID) |
           note_if(!isnan(in[BIOLOAD_CAPACITY]) && !quarter && !over, HW_BIOLOAD_NOTE_LOAD_MEANS);
}

static const struct limit_notes about_limit = {
    .salt = HW_BIOLOAD_NOTE_LIMIT_SALT,
    .fresh = HW_BIOLOAD_NOTE_LIMIT_FRESH,
    .stricter = HW_BIOLOAD_NOTE_RATIO_STRICTER,
    .jump = HW_BIOLOAD_NOTE_CRITERIA_JUMP,
    .stretched = HW_BIOLOAD_NOTE_CRITERIA_STRETCHED,
    .own = HW_BIOLOAD_NOTE_LIMIT_OWN,
    .over_published = HW_BIOLOAD_NOTE_LIMIT_OVER_PUBLISHED,
    .unseen = HW_BIOLOAD_NOTE_LIMIT_UNSEEN,
    .not_safe = HW_BIOLOAD_NOTE_LIMIT_NOT_SAFE,
};

static const struct rest_notes about_rest = {
    .clears_fast = HW_BIOLOAD_NOTE_CLEARS_FAST,
    .hours_few = HW_BIOLOAD_NOTE_HOURS_FEW,
    .never_settles = HW_BIOLOAD_NOTE_NEVER_SETTLES,
    .over_limit = HW_BIOLOAD_NOTE_SETTLES_OVER_LIMIT,
    .unsure = HW_BIOLOAD_NOTE_SETTLES_UNSURE,
    .range = HW_BIOLOAD_NOTE_SETTLES_RANGE,
};

/* Of the filter that a challenge tells. */
static uint64_t filter_notes(const struct bioload_day *day, const double in[])
{
    bool filter = !isnan(in[BIOLOAD_CLEARED_FROM]);
    bool known = filter || !isnan(in[BIOLOAD_CAPACITY]);
    bool less = in[BIOLOAD_LEFT] < 100;
    return rest_notes_of(&about_rest, &day->filter, &day->rest, day->limit) |
           note_if(filter, HW_BIOLOAD_NOTE_MODEL_READ) |
           note_if(!filter, HW_BIOLOAD_NOTE_PEAK_AFTER_MEAL) |
           note_if(less && known, HW_BIOLOAD_NOTE_LEFT_OWN) |
           note_if(less && !known, HW_BIOLOAD_NOTE_LEFT_OF_NOTHING);
}

/* What stands in for a limit that is not there: all that is missing is told. */
static uint64_t missing_notes(const double in[])
{
    bool none = isnan(in[BIOLOAD_PH]) && isnan(in[BIOLOAD_TEMP]) && isnan(in[BIOLOAD_SALINITY]);
    if (none) {
        return note_bit(HW_BIOLOAD_NOTE_LIMIT_UNSAID);
    }
    return note_if(isnan(in[BIOLOAD_PH]), HW_BIOLOAD_NOTE_LIMIT_NEEDS_PH) |
           note_if(isnan(in[BIOLOAD_TEMP]), HW_BIOLOAD_NOTE_LIMIT_NEEDS_TEMP) |
           note_if(isnan(in[BIOLOAD_SALINITY]), HW_BIOLOAD_NOTE_LIMIT_NEEDS_SALINITY);
}

static uint64_t limit_notes(const struct bioload_day *day, const double in[])
{
    if (isnan(day->limit)) {
        return missing_notes(in);
    }
    bool sour = below_limit(in[BIOLOAD_PH], HW_LIMIT_SOUR_BELOW);
    return limit_notes_of(&about_limit, &day->published, in[BIOLOAD_LIMIT]) |
           note_if(sour && day->exchanged > 0, HW_BIOLOAD_NOTE_SOUR_CHANGE) |
           note_if(below_limit(day->hours, HW_LIMIT_REACHED_SOON),
                   HW_BIOLOAD_NOTE_LIMIT_WITHIN_DAY) |
           note_if(isnan(day->exchanged), HW_BIOLOAD_NOTE_CHANGE_MORE_THAN_ALL) |
           note_if(day->exchanged > 0, HW_BIOLOAD_NOTE_CHANGE_STEADY);
}

static uint64_t food_notes(const struct bioload_day *day, const double in[])
{
    bool recalled = in[BIOLOAD_FACTOR] == HW_BIOLOAD_FACTOR;
    bool fish = !isnan(in[BIOLOAD_BIOMASS]);
    if (day->by_rise) {
        return note_bit(HW_BIOLOAD_NOTE_RISE_OWN);
    }
    return note_bit(HW_BIOLOAD_NOTE_PROTEIN_AS_FED) |
           note_if(below(day->fed, day->starved), HW_BIOLOAD_NOTE_BELOW_STARVED) |
           note_if(recalled, HW_BIOLOAD_NOTE_FEED_FIGURE) |
           note_if(!recalled, HW_BIOLOAD_NOTE_FACTOR_OWN) |
           note_if(fish, HW_BIOLOAD_NOTE_RATION_ROUGH) |
           note_if(!fish, HW_BIOLOAD_NOTE_RATION_UNUSED);
}

static uint64_t notes_of(const struct bioload_day *day, const double in[])
{
    if (!day->by_rise && isnan(in[BIOLOAD_PROTEIN])) {
        return note_bit(HW_BIOLOAD_NOTE_PROTEIN_UNSAID);
    }
    if (proves_nothing(&day->filter)) {
        return note_bit(HW_BIOLOAD_NOTE_CHALLENGE_NO_DROP);
    }
    return load_notes(day, in) | filter_notes(day, in) | limit_notes(day, in) |
           food_notes(day, in) | note_if(in[BIOLOAD_DEAD] > 0, HW_BIOLOAD_NOTE_DEAD_IN_WATER) |
           note_if(day->rise < HW_BIOLOAD_RISE_LEAST, HW_BIOLOAD_NOTE_NOTHING_GIVEN_OFF);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct bioload_day day = bioload_day(in);
    *notes |= notes_of(&day, in);
    out[BIOLOAD_PRODUCTION] = day.production;
    out[BIOLOAD_RISE_PER_DAY] = day.rise;
    out[BIOLOAD_SETTLES] = day.rest.level;
    out[BIOLOAD_SETTLES_LOW] = day.rest.low;
    out[BIOLOAD_SETTLES_HIGH] = day.rest.high;
    out[BIOLOAD_LOAD_SHARE] = day.share;
    out[BIOLOAD_HOURS_TO_LIMIT] = day.hours;
    out[BIOLOAD_SHARE_A_DAY] = 100 * day.exchanged;
    out[BIOLOAD_FEED_FOR_LIMIT] = day.feed_for_limit;
    out[BIOLOAD_ALKALINITY_USED] = day.alkalinity;
}

/* clang-format off */
const struct hw_calc hw_calc_bioload = {
    .name = "bioload",
    .purpose = "ammonia from food, fish and the dead, and what it does to a tank",
    .inputs = inputs, .n_inputs = BIOLOAD_INPUTS, .results = results,
    .n_results = BIOLOAD_RESULTS, .notes = hw_bioload_notes, .n_notes = HW_BIOLOAD_NOTES,
    .sources = sources, .answer = answer, .work = bioload_work,
};
/* clang-format on */
