/* ahead_calc.c - total ammonia in the hours and days to come, under a steady routine. */
#include "calc/ahead_days.h"
#include "calc/block_row.h"
#include "calc/limit_notes.h"
#include "calc/list.h"
#include "holdwater/ammonia.h"
#include "holdwater/ph.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    AHEAD_TAN_THEN, AHEAD_PEAK, AHEAD_PEAK_HOUR, AHEAD_HOURS_TO_LIMIT, AHEAD_SETTLES,
    AHEAD_FREE_PEAK, AHEAD_SETTLES_LOW, AHEAD_SETTLES_HIGH, AHEAD_FEED_FOR_LIMIT, AHEAD_RESULTS
};
/* clang-format on */

enum { AHEAD_GIVERS = 1 };       /* the group of feed, biomass and rise */
enum { AHEAD_READING_MAX = 50 }; /* mg/L, as verdict takes them */

/* clang-format off */
static const struct hw_input inputs[AHEAD_INPUTS] = {
    [AHEAD_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_BIOLOAD_VOLUME_MIN, .hi = HW_BIOLOAD_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in tank and filter, without rock and sand"},
    [AHEAD_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = AHEAD_READING_MAX, .beyond = "change water first",
     .help = "total ammonia now, just after a meal"},
    [AHEAD_BASIS] = {.name = "basis", .unit = "", .kind = HW_CHOICE, .hi = HW_NITROGEN_NH4,
     .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,
     .help = "what tan, new_tan, rise and cleared_... count"},
    [AHEAD_KIT_STEP] = {.name = "kit_step", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.001, .hi = 5, .need = HW_PRESET, .preset = 0.25, .beyond = "no kit is coarser",
     .help = "step of the kit: cleared_to is half at least"},
    [AHEAD_FEED] = {.name = "feed", .unit = "g/d", .kind = HW_MASS_PER_DAY,
     .lo = HW_BIOLOAD_FEED_MIN, .hi = HW_BIOLOAD_FEED_MAX, .group = AHEAD_GIVERS,
     .beyond = "more is no quarantine tank", .help = "food in a day, as it is fed"},
    [AHEAD_BIOMASS] = {.name = "biomass", .unit = "g", .kind = HW_MASS,
     .lo = HW_BIOLOAD_BIOMASS_MIN, .hi = HW_BIOLOAD_BIOMASS_MAX, .group = AHEAD_GIVERS,
     .beyond = "check the unit", .help = "mass of all the fish, when they are not fed"},
    [AHEAD_RISE] = {.name = "rise", .unit = "mg/L/d", .kind = HW_RISE_PER_DAY, .lo = 0.01,
     .hi = 100, .group = AHEAD_GIVERS, .beyond = "check the unit",
     .help = "your reading: rise in a day, no filter, no change"},
    [AHEAD_PROTEIN] = {.name = "protein", .unit = "%", .kind = HW_SHARE, .lo = 100 *
     HW_BIOLOAD_PROTEIN_SHARE_MIN, .hi = 100 * HW_BIOLOAD_PROTEIN_SHARE_MAX,
     .when_input = AHEAD_FEED, .when_words = HW_WHEN_GIVEN,
     .beyond = "dry food has 40 to 60 %, wet and frozen 5 to 20 %",
     .help = "protein in the food as it is fed"},
    [AHEAD_MEALS] = {.name = "meals", .unit = "", .kind = HW_COUNT, .lo = HW_AHEAD_MEALS_MIN,
     .hi = HW_AHEAD_MEALS_MAX, .need = HW_PRESET, .preset = 1, .beyond = "one an hour at most",
     .help = "meals in a day, at equal times, one at hour 0"},
    [AHEAD_FACTOR] = {.name = "factor", .unit = "", .kind = HW_NUMBER,
     .lo = HW_BIOLOAD_FACTOR_MIN, .hi = HW_BIOLOAD_FACTOR_MAX, .need = HW_PRESET,
     .preset = HW_BIOLOAD_FACTOR, .beyond = "0.03 is the least measured, 0.16 is all there is",
     .help = "g of ammonia nitrogen from a g of protein"},
    [AHEAD_BASAL] = {.name = "basal", .unit = "mg/kg/h", .kind = HW_BODY_RATE,
     .lo = HW_BIOLOAD_STARVED_MIN, .hi = HW_BIOLOAD_STARVED_MAX, .need = HW_PRESET,
     .preset = HW_AHEAD_BASAL, .beyond = "1.8 to 16 was measured",
     .help = "nitrogen given off by fish that are not fed"},
    [AHEAD_CLEARED_FROM] = {.name = "cleared_from", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.01, .hi = AHEAD_READING_MAX, .need = HW_OPTIONAL,
     .beyond = "no filter is challenged with more",
     .help = "ammonia at the start of the filter's challenge"},
    [AHEAD_CLEARED_TO] = {.name = "cleared_to", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = AHEAD_READING_MAX, .when_input = AHEAD_CLEARED_FROM, .when_words = HW_WHEN_GIVEN,
     .beyond = "that is no challenge", .help = "ammonia at its end"},
    [AHEAD_CLEARED_IN] = {.name = "cleared_in", .unit = "h", .kind = HW_TIME,
     .lo = HW_AHEAD_CHALLENGE_MIN, .hi = HW_AHEAD_CHALLENGE_MAX, .when_input = AHEAD_CLEARED_FROM,
     .when_words = HW_WHEN_GIVEN, .beyond = "no kit tells sooner, longer is not one challenge",
     .help = "hours from its start to its end"},
    [AHEAD_HALF] = {.name = "half", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_AHEAD_HALF_MIN, .hi = HW_AHEAD_HALF_MAX, .need = HW_PRESET, .preset = 1,
     .beyond = HW_FIGURE_HALF_LOW " to " HW_FIGURE_HALF_HIGH " mg/L was found",
     .help = "ammonia as N at which the filter works at half"},
    [AHEAD_LEFT] = {.name = "left", .unit = "%", .kind = HW_SHARE, .hi = 100, .need = HW_PRESET,
     .preset = 100, .beyond = "100 % is all of it",
     .help = "share of the filter left, as after a medicine"},
    [AHEAD_SHARE] = {.name = "share", .unit = "%", .kind = HW_SHARE, .hi = 100,
     .need = HW_PRESET, .beyond = "100 % is all of it", .help = "water changed each time"},
    [AHEAD_EVERY] = {.name = "every", .unit = "h", .kind = HW_TIME, .lo = HW_AHEAD_EVERY_MIN,
     .hi = HW_AHEAD_EVERY_MAX, .need = HW_PRESET, .preset = 24, .beyond = "that is no routine",
     .help = "hours from change to change, and to the first"},
    [AHEAD_NEW_TAN] = {.name = "new_tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = AHEAD_READING_MAX, .need = HW_PRESET, .beyond = "that is no new water",
     .help = "total ammonia in the new water"},
    [AHEAD_HOURS] = {.name = "hours", .unit = "h", .kind = HW_TIME, .hi = HW_AHEAD_HOURS_MAX,
     .beyond = "nobody knows so far ahead", .help = "how far ahead; 0:72:3 is a curve"},
    [AHEAD_LIMIT] = {.name = "limit", .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = 0.01,
     .hi = 100, .need = HW_OPTIONAL, .beyond = "no kit reads less, no fish stands more",
     .help = "your own limit of total ammonia as N"},
    [AHEAD_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "highest pH expected, by a meter"},
    [AHEAD_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX, .need = HW_OPTIONAL,
     .beyond = "the formula is valid to here", .help = "water temperature"},
    [AHEAD_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of sea-salt water, 0 for fresh"},
};

static const struct hw_result results[AHEAD_RESULTS] = {
    [AHEAD_TAN_THEN] = {.name = "tan_then", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .keep_below = true, .help = "total ammonia at that hour, as N"},
    [AHEAD_PEAK] = {.name = "peak", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .keep_below = true, .help = "the highest total on the way, as N"},
    [AHEAD_PEAK_HOUR] = {.name = "peak_hour", .unit = "h", .kind = HW_TIME, .digits = 3,
     .help = "from now until it is so high"},
    [AHEAD_HOURS_TO_LIMIT] = {.name = "hours_to_limit", .unit = "h", .kind = HW_TIME,
     .digits = 2, .safe = -1, .sometimes = true, .help = "from now until the limit is reached"},
    [AHEAD_SETTLES] = {.name = "settles", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 2,
     .sometimes = true, .keep_below = true,
     .help = "mean at which the filter holds it, no changes"},
    [AHEAD_FREE_PEAK] = {.name = "free_peak", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .keep_below = true,
     .help = "free ammonia at the highest, as N"},
    [AHEAD_SETTLES_LOW] = {.name = "settles_low", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 2, .sometimes = true, .detail = true, .keep_below = true,
     .help = "the same, least of what filters do"},
    [AHEAD_SETTLES_HIGH] = {.name = "settles_high", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 2, .sometimes = true, .detail = true, .keep_below = true,
     .help = "the same, most of what filters do"},
    [AHEAD_FEED_FOR_LIMIT] = {.name = "feed_for_limit", .unit = "g/d", .kind = HW_MASS_PER_DAY,
     .digits = 2, .safe = -1, .sometimes = true, .detail = true,
     .help = "food that rests at the limit: stay well below"},
};
/* clang-format on */

static const char *const sources[] = {"saturating-filter",
                                      "prompt-share",
                                      "meal-peak",
                                      "ahead-steps",
                                      "ahead-ripple",
                                      "ahead-range",
                                      "flounder-excretion",
                                      "feed-nitrogen",
                                      "protein-figures",
                                      "conservation",
                                      "half-saturation",
                                      "khoo1977",
                                      "epa1989",
                                      "epa2013",
                                      "iupac-weights",
                                      "common-practice",
                                      "our-arithmetic",
                                      NULL};

static const struct limit_notes about_limit = {
    .salt = HW_AHEAD_NOTE_LIMIT_SALT,
    .fresh = HW_AHEAD_NOTE_LIMIT_FRESH,
    .stricter = HW_AHEAD_NOTE_RATIO_STRICTER,
    .jump = HW_AHEAD_NOTE_CRITERIA_JUMP,
    .stretched = HW_AHEAD_NOTE_CRITERIA_STRETCHED,
    .own = HW_AHEAD_NOTE_LIMIT_OWN,
    .over_published = HW_AHEAD_NOTE_LIMIT_OVER_PUBLISHED,
    .unseen = HW_AHEAD_NOTE_LIMIT_UNSEEN,
    .not_safe = HW_AHEAD_NOTE_LIMIT_NOT_SAFE,
};

static const struct rest_notes about_rest = {
    .clears_fast = HW_AHEAD_NOTE_CLEARS_FAST,
    .hours_few = HW_AHEAD_NOTE_HOURS_FEW,
    .never_settles = HW_AHEAD_NOTE_NEVER_SETTLES,
    .over_limit = HW_AHEAD_NOTE_SETTLES_OVER_LIMIT,
    .unsure = HW_AHEAD_NOTE_SETTLES_UNSURE,
    .range = HW_AHEAD_NOTE_SETTLES_RANGE,
};

static uint64_t filter_notes(const struct ahead_days *days, const double in[])
{
    bool filter = !isnan(in[AHEAD_CLEARED_FROM]);
    bool less = in[AHEAD_LEFT] < 100;
    return rest_notes_of(&about_rest, &days->filter, &days->rest, days->limit) |
           note_if(!filter, HW_AHEAD_NOTE_FILTER_UNSAID) |
           note_if(filter && less, HW_AHEAD_NOTE_LEFT_OF_FILTER) |
           note_if(!filter && less, HW_AHEAD_NOTE_LEFT_OF_NOTHING);
}

static uint64_t missing_notes(const struct ahead_days *days, const double in[])
{
    bool none = isnan(in[AHEAD_PH]) && isnan(in[AHEAD_TEMP]) && isnan(in[AHEAD_SALINITY]);
    bool much = above_limit(days->outlook.peak, HW_LIMIT_ACT_TODAY);
    return note_if(much, HW_AHEAD_NOTE_MUCH_AHEAD) |
           (none ? note_bit(HW_AHEAD_NOTE_LIMIT_UNSAID)
                 : note_if(isnan(in[AHEAD_PH]), HW_AHEAD_NOTE_LIMIT_NEEDS_PH) |
                       note_if(isnan(in[AHEAD_TEMP]), HW_AHEAD_NOTE_LIMIT_NEEDS_TEMP) |
                       note_if(isnan(in[AHEAD_SALINITY]), HW_AHEAD_NOTE_LIMIT_NEEDS_SALINITY));
}

static uint64_t limit_notes(const struct ahead_days *days, const double in[])
{
    if (isnan(days->limit)) {
        return missing_notes(days, in);
    }
    bool now = days->hours_to_limit <= 0;
    return limit_notes_of(&about_limit, &days->published, in[AHEAD_LIMIT]) |
           note_if(now, HW_AHEAD_NOTE_LIMIT_NOW) |
           note_if(!now && !isnan(days->hours_to_limit), HW_AHEAD_NOTE_LIMIT_AHEAD);
}

static uint64_t food_notes(const double in[])
{
    bool recalled = in[AHEAD_FACTOR] == HW_BIOLOAD_FACTOR;
    if (isnan(in[AHEAD_FEED])) {
        return note_if(!isnan(in[AHEAD_BIOMASS]), HW_AHEAD_NOTE_UNFED_FISH);
    }
    return note_bit(HW_AHEAD_NOTE_PROTEIN_AS_FED) | note_bit(HW_AHEAD_NOTE_MEAL_PATTERN) |
           note_if(recalled, HW_AHEAD_NOTE_FEED_FIGURE) |
           note_if(!recalled, HW_AHEAD_NOTE_FACTOR_OWN);
}

static uint64_t change_notes(const struct ahead_days *days, const double in[])
{
    bool changed = in[AHEAD_SHARE] > 0;
    bool late = days->hours_to_limit > 0 && days->hours_to_limit < in[AHEAD_EVERY];
    return note_if(changed && below_limit(in[AHEAD_PH], HW_LIMIT_SOUR_BELOW),
                   HW_AHEAD_NOTE_SOUR_CHANGE) |
           note_if(above_limit(in[AHEAD_SHARE], HW_LIMIT_CHANGE_LARGE),
                   HW_AHEAD_NOTE_CHANGE_LARGE) |
           note_if(changed && late, HW_AHEAD_NOTE_CHANGE_LATE) |
           note_if(changed, HW_AHEAD_NOTE_CHANGE_DUE);
}

static uint64_t notes_of(const struct ahead_days *days, const double in[])
{
    if (proves_nothing(&days->filter)) {
        return note_bit(HW_AHEAD_NOTE_CHALLENGE_NO_DROP);
    }
    return filter_notes(days, in) | limit_notes(days, in) | food_notes(in) |
           change_notes(days, in) |
           note_if(days->production < HW_BIOLOAD_RISE_LEAST, HW_AHEAD_NOTE_NOTHING_GIVEN_OFF) |
           note_if(days->fit_stretched, HW_AHEAD_NOTE_FIT_STRETCHED) |
           note_if(!isnan(days->free_peak), HW_AHEAD_NOTE_FREE_AT_PH);
}

static void put(const struct ahead_days *days, double out[])
{
    out[AHEAD_TAN_THEN] = days->outlook.then;
    out[AHEAD_PEAK] = days->outlook.peak;
    out[AHEAD_PEAK_HOUR] = days->outlook.peak_hour;
    out[AHEAD_HOURS_TO_LIMIT] = days->hours_to_limit;
    out[AHEAD_SETTLES] = days->rest.level;
    out[AHEAD_FREE_PEAK] = days->free_peak;
    out[AHEAD_SETTLES_LOW] = days->rest.low;
    out[AHEAD_SETTLES_HIGH] = days->rest.high;
    out[AHEAD_FEED_FOR_LIMIT] = days->feed_for_limit;
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct ahead_days days = ahead_days(in);
    *notes |= notes_of(&days, in);
    put(&days, out);
}

/* Each row beside the one before it. */
static bool block(const struct hw_block *block)
{
    double in[AHEAD_INPUTS];
    double out[AHEAD_RESULTS];
    struct ahead_days days;
    for (size_t row = 0; row < block->n; row++) {
        block_row_read(block, AHEAD_INPUTS, row, in);
        days = ahead_days_beside(in, row > 0 ? &days : NULL);
        block->notes[row] |= notes_of(&days, in);
        put(&days, out);
        block_row_write(block, AHEAD_RESULTS, row, out);
    }
    return true;
}

/* clang-format off */
const struct hw_calc hw_calc_ahead = {
    .name = "ahead", .purpose = "total ammonia in the hours and days to come",
    .inputs = inputs, .n_inputs = AHEAD_INPUTS, .results = results, .n_results = AHEAD_RESULTS,
    .notes = hw_ahead_notes, .n_notes = HW_AHEAD_NOTES, .sources = sources, .answer = answer,
    .block = block, .work = ahead_work,
};
/* clang-format on */
