/* verdict_calc.c - whether a filter passed its challenge, and what it carries. */
#include "calc/limit_notes.h"
#include "calc/list.h"
#include "calc/verdict_reading.h"
#include "holdwater/ahead.h"
#include "holdwater/ammonia.h"
#include "holdwater/ph.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    VERDICT_PASSED, VERDICT_WORKING_FEED, VERDICT_CAPACITY, VERDICT_HOURS_TO_CLEAR,
    VERDICT_FEED_FOR_LIMIT, VERDICT_RATE, VERDICT_CLEARED, VERDICT_FEED, VERDICT_RESULTS
};
/* clang-format on */

static const char *const nitrite_words[] = {"n", "ion", NULL};

/* clang-format off */
static const struct hw_input inputs[VERDICT_INPUTS] = {
    [VERDICT_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_VERDICT_VOLUME_MIN, .hi = HW_VERDICT_VOLUME_MAX, .beyond = "check the unit",
     .help = "water the filter serves, without rock and sand"},
    [VERDICT_START_TAN] = {.name = "start_tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = HW_VERDICT_NITROGEN_MAX / 2, .beyond = "no filter is challenged with more",
     .help = "total ammonia read when the dose was mixed in"},
    [VERDICT_START_NITRITE] = {.name = "start_nitrite", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = HW_VERDICT_NITROGEN_MAX / 2, .need = HW_PRESET, .beyond = "change water first",
     .help = "nitrite read at the start"},
    [VERDICT_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = HW_VERDICT_NITROGEN_MAX / 2, .beyond = "change water first",
     .help = "total ammonia read at the end"},
    [VERDICT_NITRITE] = {.name = "nitrite", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = HW_VERDICT_NITROGEN_MAX / 2, .beyond = "change water first",
     .help = "nitrite read at the end"},
    [VERDICT_HOURS] = {.name = "hours", .unit = "h", .kind = HW_TIME, .lo = HW_VERDICT_HOURS_MIN,
     .hi = HW_VERDICT_HOURS_MAX, .beyond = "no kit tells sooner, longer is not one challenge",
     .help = "time from the start to the end"},
    [VERDICT_BASIS] = {.name = "basis", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,
     .help = "what the ammonia kit counts (its leaflet says)"},
    [VERDICT_NITRITE_BASIS] = {.name = "nitrite_basis", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = nitrite_words, .need = HW_PRESET, .preset = VERDICT_NITRITE_AS_N,
     .help = "what the nitrite kit counts (its leaflet says)"},
    [VERDICT_WITHIN] = {.name = "within", .unit = "h", .kind = HW_TIME, .lo = 1, .hi = 168,
     .need = HW_PRESET, .preset = 24, .beyond = "longer proves nothing",
     .help = "time in which ammonia and nitrite must be gone"},
    [VERDICT_KIT_STEP] = {.name = "kit_step", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.001, .hi = 2 * HW_VERDICT_HALF_MAX, .need = HW_PRESET, .preset = 0.25,
     .beyond = "no kit is coarser", .help = "step between two colours (half counts as none)"},
    [VERDICT_NITRATE_RISE] = {.name = "nitrate_rise", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .hi = 500, .need = HW_OPTIONAL, .beyond = "more is no challenge",
     .help = "nitrate at the end less at the start, as NO3"},
    [VERDICT_PROTEIN] = {.name = "protein", .unit = "%", .kind = HW_SHARE, .lo = 100 *
     HW_VERDICT_PROTEIN_SHARE_MIN, .hi = 100 * HW_VERDICT_PROTEIN_SHARE_MAX, .need = HW_PRESET,
     .preset = 45, .beyond = "dry food has 40 to 60 %, wet and frozen 5 to 20 %",
     .help = "protein in the food as it is fed"},
    [VERDICT_WORKING_SHARE] = {.name = "working_share", .unit = "%", .kind = HW_SHARE, .lo = 100
     * HW_VERDICT_WORKING_SHARE_MIN, .hi = 100 * HW_VERDICT_WORKING_SHARE_MAX, .need = HW_PRESET,
     .preset = 25, .beyond = "100 % is all of it",
     .help = "filter's share left at the low ammonia fish need"},
    [VERDICT_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .hi = HW_VERDICT_COLDER_MAX, .need = HW_OPTIONAL,
     .beyond = "too cold or too hot for a filter",
     .help = "water temperature during the challenge"},
    [VERDICT_STOCK_TEMP] = {.name = "stock_temp", .unit = "C", .kind = HW_TEMPERATURE,
     .hi = HW_VERDICT_COLDER_MAX, .need = HW_OPTIONAL, .beyond = "too cold or too hot for fish",
     .help = "water temperature the fish will have"},
    [VERDICT_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .need = HW_OPTIONAL, .beyond = "check the reading",
     .help = "pH the fish will have, by a meter, for the limit"},
    [VERDICT_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .need = HW_OPTIONAL, .beyond = "the formula is valid to here",
     .help = "salinity of sea-salt water, for the limit"},
    [VERDICT_LIMIT] = {.name = "limit", .unit = "mg/L", .kind = HW_CONCENTRATION, .lo = 0.01,
     .hi = 100, .need = HW_OPTIONAL, .beyond = "no kit reads less, no fish stands more",
     .help = "your own limit of total ammonia as N"},
    [VERDICT_HALF] = {.name = "half", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_AHEAD_HALF_MIN, .hi = HW_AHEAD_HALF_MAX, .need = HW_PRESET, .preset = 1,
     .beyond = HW_FIGURE_HALF_LOW " to " HW_FIGURE_HALF_HIGH " mg/L was found",
     .help = "ammonia as N at which the filter works at half"},
};

static const struct hw_result results[VERDICT_RESULTS] = {
    [VERDICT_PASSED] = {.name = "passed", .unit = "", .kind = HW_YES_NO, .digits = 1,
     .help = "were ammonia and nitrite both gone in time"},
    [VERDICT_WORKING_FEED] = {.name = "working_feed", .unit = "g/d", .kind = HW_MASS_PER_DAY,
     .digits = 3, .safe = -1, .sometimes = true,
     .help = "food a day that it carries: stock by this"},
    [VERDICT_CAPACITY] = {.name = "capacity", .unit = "mg/d", .kind = HW_MASS_PER_DAY,
     .digits = 3, .safe = -1, .help = "nitrogen cleared a day at challenge strength"},
    [VERDICT_HOURS_TO_CLEAR] = {.name = "hours_to_clear", .unit = "h", .kind = HW_TIME,
     .digits = 2, .safe = 1, .sometimes = true, .help = "at least, until both are gone"},
    [VERDICT_FEED_FOR_LIMIT] = {.name = "feed_for_limit", .unit = "g/d",
     .kind = HW_MASS_PER_DAY, .digits = 2, .safe = -1, .sometimes = true, .detail = true,
     .help = "food that rests at the limit: stay well below"},
    [VERDICT_RATE] = {.name = "rate", .unit = "mg/L/d", .kind = HW_RISE_PER_DAY, .digits = 3,
     .detail = true, .help = "nitrogen cleared a day from a litre"},
    [VERDICT_CLEARED] = {.name = "cleared", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .detail = true, .help = "nitrogen that left ammonia and nitrite, as N"},
    [VERDICT_FEED] = {.name = "feed", .unit = "g/d", .kind = HW_MASS_PER_DAY, .digits = 3,
     .safe = -1, .sometimes = true, .detail = true,
     .help = "food it would clear, not what it carries"},
};
/* clang-format on */

static const char *const sources[] = {"conservation",    "iupac-weights",
                                      "nitrification",   "feed-nitrogen",
                                      "half-saturation", "theta",
                                      "our-arithmetic",  "dye-chemistry",
                                      "common-practice", "saturating-filter",
                                      "ahead-ripple",    "epa1989",
                                      "epa2013",         NULL};

static uint64_t passing_notes(const struct verdict_reading *r, const double in[])
{
    bool clear = r->tan_clear && r->nitrite_clear;
    bool late = above(in[VERDICT_HOURS], in[VERDICT_WITHIN]);
    bool early = below(in[VERDICT_HOURS], in[VERDICT_WITHIN]);
    double start = in[VERDICT_START_TAN] + in[VERDICT_KIT_STEP] / 2;
    return note_if(clear && late, HW_VERDICT_NOTE_READ_LATE) |
           note_if(!clear && early, HW_VERDICT_NOTE_READ_EARLY) |
           note_if(!clear && !early, HW_VERDICT_NOTE_NOT_CLEAR) |
           note_if(r->tan_clear && !clear, HW_VERDICT_NOTE_NITRITE_BEHIND) |
           note_if(clear, HW_VERDICT_NOTE_RATE_AT_LEAST) |
           note_if(below_limit(start, HW_LIMIT_CHALLENGE_TARGET), HW_VERDICT_NOTE_START_LOW) |
           note_if(r->passed, HW_VERDICT_NOTE_CHANGE_AFTER_PASS);
}

/* Of the food, which a filter that has not passed is not told. */
static uint64_t feed_notes(const struct verdict_reading *r, const double in[])
{
    return note_bit(HW_VERDICT_NOTE_FEED_FIGURE) | note_bit(HW_VERDICT_NOTE_NOT_CARRYING) |
           note_if(below(r->turned, r->cleared), HW_VERDICT_NOTE_NITRITE_COUNTED) |
           note_if(above(r->colder, 0), HW_VERDICT_NOTE_COLDER_STOCK) |
           note_if(above(in[VERDICT_STOCK_TEMP], in[VERDICT_TEMP]), HW_VERDICT_NOTE_WARMER_STOCK) |
           note_if(isnan(in[VERDICT_TEMP]) != isnan(in[VERDICT_STOCK_TEMP]),
                   HW_VERDICT_NOTE_TEMP_HALF);
}

/* What is missing for a limit, where one is wanted: a tanks file may tell the rest unasked. */
static uint64_t missing_notes(const double in[])
{
    bool temp = !isnan(in[VERDICT_TEMP]) || !isnan(in[VERDICT_STOCK_TEMP]);
    bool asked = !isnan(in[VERDICT_PH]) || (!isnan(in[VERDICT_SALINITY]) && temp);
    return note_if(asked && isnan(in[VERDICT_PH]), HW_VERDICT_NOTE_LIMIT_NEEDS_PH) |
           note_if(asked && !temp, HW_VERDICT_NOTE_LIMIT_NEEDS_TEMP) |
           note_if(asked && isnan(in[VERDICT_SALINITY]), HW_VERDICT_NOTE_LIMIT_NEEDS_SALINITY);
}

static const struct limit_notes about_limit = {
    .salt = HW_VERDICT_NOTE_LIMIT_SALT,
    .fresh = HW_VERDICT_NOTE_LIMIT_FRESH,
    .stricter = HW_VERDICT_NOTE_RATIO_STRICTER,
    .jump = HW_VERDICT_NOTE_CRITERIA_JUMP,
    .stretched = HW_VERDICT_NOTE_CRITERIA_STRETCHED,
    .own = HW_VERDICT_NOTE_LIMIT_OWN,
    .over_published = HW_VERDICT_NOTE_LIMIT_OVER_PUBLISHED,
    .unseen = HW_VERDICT_NOTE_LIMIT_UNSEEN,
    .not_safe = HW_VERDICT_NOTE_LIMIT_NOT_SAFE,
};

/* Of the limit, where food that rests at it is told. */
static uint64_t limit_notes(const struct verdict_reading *r, const double in[])
{
    return limit_notes_of(&about_limit, &r->published, in[VERDICT_LIMIT]) |
           note_bit(HW_VERDICT_NOTE_LIMIT_FEED) | note_bit(HW_VERDICT_NOTE_MODEL_READ);
}

static uint64_t nitrate_notes(const struct verdict_reading *r, const double in[])
{
    double margin = fmax(hw_limits[HW_LIMIT_NITRATE_KIT].value,
                         hw_limits[HW_LIMIT_NITRATE_KIT_SHARE].value * r->nitrate);
    return note_if(below(in[VERDICT_NITRATE_RISE], r->nitrate - margin),
                   HW_VERDICT_NOTE_NITRATE_SHORT) |
           note_if(above(in[VERDICT_NITRATE_RISE], r->nitrate + margin),
                   HW_VERDICT_NOTE_NITRATE_OVER) |
           note_if(isnan(in[VERDICT_NITRATE_RISE]), HW_VERDICT_NOTE_NITRATE_UNSAID);
}

/* What was typed and is more often a slip than meant, or proves little. */
static uint64_t doubt_notes(const struct verdict_reading *r, const double in[])
{
    return note_if(above_limit(r->rate, HW_LIMIT_CLEARS_FAST), HW_VERDICT_NOTE_CLEARS_FAST) |
           note_if(below_limit(in[VERDICT_HOURS], HW_LIMIT_VERDICT_HOURS),
                   HW_VERDICT_NOTE_HOURS_FEW) |
           note_if(above_limit(in[VERDICT_WITHIN], HW_LIMIT_CHALLENGE_HOURS),
                   HW_VERDICT_NOTE_WITHIN_LONG) |
           note_if(r->passed && above_limit(in[VERDICT_WORKING_SHARE], HW_LIMIT_LOAD_SHARE),
                   HW_VERDICT_NOTE_WORKING_SHARE_HIGH);
}

static uint64_t notes_of(const struct verdict_reading *r, const double in[])
{
    if (r->coarse) {
        return note_bit(HW_VERDICT_NOTE_KIT_COARSE);
    }
    if (!r->moved) {
        return note_bit(r->readable ? HW_VERDICT_NOTE_NOTHING_CLEARED
                                    : HW_VERDICT_NOTE_START_UNREADABLE);
    }
    return passing_notes(r, in) | doubt_notes(r, in) | nitrate_notes(r, in) |
           (r->passed ? feed_notes(r, in) : 0) |
           (r->passed && isnan(r->limit) ? missing_notes(in) : 0) |
           (isnan(r->feed_for_limit) ? 0 : limit_notes(r, in));
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct verdict_reading r = verdict_reading(in);
    *notes |= notes_of(&r, in);
    out[VERDICT_PASSED] = r.passed;
    out[VERDICT_WORKING_FEED] = r.working_feed;
    out[VERDICT_CAPACITY] = r.capacity;
    out[VERDICT_HOURS_TO_CLEAR] = r.hours_to_clear;
    out[VERDICT_FEED_FOR_LIMIT] = r.feed_for_limit;
    out[VERDICT_RATE] = r.rate;
    out[VERDICT_CLEARED] = r.cleared;
    out[VERDICT_FEED] = r.feed;
}

/* clang-format off */
const struct hw_calc hw_calc_verdict = {
    .name = "verdict",
    .purpose = "whether a filter passed its challenge, and what food it carries",
    .inputs = inputs, .n_inputs = VERDICT_INPUTS, .results = results, .n_results = VERDICT_RESULTS,
    .notes = hw_verdict_notes, .n_notes = HW_VERDICT_NOTES, .sources = sources, .answer = answer,
    .work = verdict_work,
};
/* clang-format on */
