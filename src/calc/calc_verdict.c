/* calc_verdict.c - whether a filter passed its challenge, and what it carries. */
#include "calc/list.h"
#include "calc/verdict_reading.h"
#include "tables.h"

#include <math.h>

enum { PASSED, CLEARED, RATE, CAPACITY, FEED, WORKING_FEED, HOURS_TO_CLEAR, RESULTS };

static const char *const nitrite_words[] = {"n", "ion", NULL};

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] =
        {.name = "volume",
         .unit = "L",
         .kind = HW_VOLUME,
         .unit_must = true,
         .lo = HW_VERDICT_VOLUME_MIN,
         .hi = HW_VERDICT_VOLUME_MAX,
         .help = "water that the filter serves, without rock and sand; outside this doubt the unit",
         .need = HW_REQUIRED,
         .when_input = -1},
    [START_TAN] = {.name = "start_tan",
                   .unit = "mg/L",
                   .kind = HW_CONCENTRATION,
                   .lo = 0,
                   .hi = HW_VERDICT_NITROGEN_MAX / 2,
                   .help = "total ammonia as read when the dose was mixed, in the basis; above 50 "
                           "no filter is challenged",
                   .need = HW_REQUIRED,
                   .when_input = -1},
    [START_NITRITE] =
        {.name = "start_nitrite",
         .unit = "mg/L",
         .kind = HW_CONCENTRATION,
         .lo = 0,
         .hi = HW_VERDICT_NITROGEN_MAX / 2,
         .help = "nitrite as read at the start, in its basis; above 50 change water first",
         .need = HW_PRESET,
         .preset = 0,
         .when_input = -1},
    [TAN] = {.name = "tan",
             .unit = "mg/L",
             .kind = HW_CONCENTRATION,
             .lo = 0,
             .hi = HW_VERDICT_NITROGEN_MAX / 2,
             .help = "total ammonia as read at the end, in the basis; above 50 change water first",
             .need = HW_REQUIRED,
             .when_input = -1},
    [NITRITE] = {.name = "nitrite",
                 .unit = "mg/L",
                 .kind = HW_CONCENTRATION,
                 .lo = 0,
                 .hi = HW_VERDICT_NITROGEN_MAX / 2,
                 .help = "nitrite as read at the end, in its basis; above 50 change water first",
                 .need = HW_REQUIRED,
                 .when_input = -1},
    [HOURS] = {.name = "hours",
               .unit = "h",
               .kind = HW_TIME,
               .lo = HW_VERDICT_HOURS_MIN,
               .hi = HW_VERDICT_HOURS_MAX,
               .help = "from the start to the end; in less than an hour nothing moves that a kit "
                       "can tell, after two weeks it is no longer one challenge",
               .need = HW_REQUIRED,
               .when_input = -1},
    [BASIS] = {.name = "basis",
               .unit = "",
               .kind = HW_CHOICE,
               .lo = 0,
               .hi = 2,
               .words = basis_words,
               .help =
                   "what the ammonia kit counts: nitrogen, ammonia or ammonium (its leaflet says)",
               .need = HW_PRESET,
               .preset = HW_NITROGEN_N,
               .when_input = -1},
    [NITRITE_BASIS] =
        {.name = "nitrite_basis",
         .unit = "",
         .kind = HW_CHOICE,
         .lo = 0,
         .hi = 1,
         .words = nitrite_words,
         .help = "what the nitrite kit counts: nitrogen or the ion NO2 (its leaflet says)",
         .need = HW_PRESET,
         .preset = NITRITE_AS_N,
         .when_input = -1},
    [WITHIN] = {.name = "within",
                .unit = "h",
                .kind = HW_TIME,
                .lo = 1,
                .hi = 168,
                .help = "time in which both must be gone; more than a week proves nothing",
                .need = HW_PRESET,
                .preset = 24,
                .when_input = -1},
    [KIT_STEP] = {.name = "kit_step",
                  .unit = "mg/L",
                  .kind = HW_CONCENTRATION,
                  .lo = 0.001,
                  .hi = 2 * HW_VERDICT_HALF_MAX,
                  .help = "step between two colours of the kits, in their own basis; half of it "
                          "counts as none, and no kit is coarser than 10",
                  .need = HW_PRESET,
                  .preset = 0.25,
                  .when_input = -1},
    [NITRATE_RISE] =
        {.name = "nitrate_rise",
         .unit = "mg/L",
         .kind = HW_CONCENTRATION,
         .lo = 0,
         .hi = 500,
         .help =
             "nitrate at the end less at the start, as the ion NO3; more than 500 is no challenge",
         .need = HW_OPTIONAL,
         .when_input = -1},
    [PROTEIN] =
        {.name = "protein",
         .unit = "%",
         .kind = HW_SHARE,
         .lo = HW_VERDICT_PROTEIN_MIN,
         .hi = HW_VERDICT_PROTEIN_MAX,
         .help = "protein in the food as it is fed: dry food 40 to 60 %, wet and frozen 5 to 20 %",
         .need = HW_PRESET,
         .preset = 45,
         .when_input = -1},
    [WORKING] = {.name = "working",
                 .unit = "%",
                 .kind = HW_SHARE,
                 .lo = HW_VERDICT_WORKING_MIN,
                 .hi = HW_VERDICT_WORKING_MAX,
                 .help = "share of its rate at the challenge that the filter keeps at the low "
                         "ammonia fish need",
                 .need = HW_PRESET,
                 .preset = 25,
                 .when_input = -1},
    [TEMP] = {.name = "temp",
              .unit = "C",
              .kind = HW_TEMPERATURE,
              .lo = 0,
              .hi = HW_VERDICT_COLDER_MAX,
              .help = "water temperature during the challenge; no filter works outside",
              .need = HW_OPTIONAL,
              .when_input = -1},
    [STOCK_TEMP] = {.name = "stock_temp",
                    .unit = "C",
                    .kind = HW_TEMPERATURE,
                    .lo = 0,
                    .hi = HW_VERDICT_COLDER_MAX,
                    .help = "water temperature the fish will have; no fish bears what lies outside",
                    .need = HW_OPTIONAL,
                    .when_input = -1},
};

static const struct hw_result results[RESULTS] = {
    [PASSED] = {.name = "passed",
                .unit = "",
                .kind = HW_COUNT,
                .digits = 1,
                .help = "1: ammonia and nitrite both gone in time; 0: no pass"},
    [CLEARED] = {.name = "cleared",
                 .unit = "mg/L",
                 .kind = HW_CONCENTRATION,
                 .digits = 3,
                 .help = "nitrogen that left both ammonia and nitrite, as N"},
    [RATE] = {.name = "rate",
              .unit = "mg/L/d",
              .kind = HW_RISE_PER_DAY,
              .digits = 3,
              .help = "the same in a day, as N"},
    [CAPACITY] = {.name = "capacity",
                  .unit = "mg/d",
                  .kind = HW_MASS_PER_DAY,
                  .digits = 3,
                  .safe = -1,
                  .help = "the same in all the water, at the strength of the challenge"},
    [FEED] = {.name = "feed",
              .unit = "g/d",
              .kind = HW_MASS_PER_DAY,
              .digits = 3,
              .safe = -1,
              .help = "food whose ammonia that is: not what the filter carries"},
    [WORKING_FEED] =
        {.name = "working_feed",
         .unit = "g/d",
         .kind = HW_MASS_PER_DAY,
         .digits = 3,
         .safe = -1,
         .help =
             "food a day that it carries with fish in the water; stock by this once it has passed"},
    [HOURS_TO_CLEAR] = {.name = "hours_to_clear",
                        .unit = "h",
                        .kind = HW_TIME,
                        .digits = 2,
                        .safe = 1,
                        .sometimes = true,
                        .help = "at least this long from the reading until both are gone"},
};

static const char *const sources[] = {
    "conservation", "iupac-weights",  "nitrification",       "feed-nitrogen",   "half-saturation",
    "theta",        "our-arithmetic", "nitrification-needs", "common-practice", NULL};

static uint64_t passing_notes(const struct verdict_reading *r, const double in[])
{
    bool clear = r->tan_clear && r->nitrite_clear;
    bool late = in[HOURS] > in[WITHIN];
    bool early = in[HOURS] < in[WITHIN];
    double start = in[START_TAN] + in[KIT_STEP] / 2;
    return note_if(clear && late, HW_VERDICT_NOTE_READ_LATE) |
           note_if(!clear && early, HW_VERDICT_NOTE_READ_EARLY) |
           note_if(!clear && !early, HW_VERDICT_NOTE_NOT_CLEAR) |
           note_if(r->tan_clear && !clear, HW_VERDICT_NOTE_NITRITE_BEHIND) |
           (clear ? note_bit(HW_VERDICT_NOTE_RATE_AT_LEAST) : 0) |
           note_if(r->turned < r->cleared, HW_VERDICT_NOTE_NITRITE_COUNTED) |
           note_if(start < hw_limits[HW_LIMIT_CHALLENGE_TARGET].value, HW_VERDICT_NOTE_START_LOW) |
           note_if(r->passed, HW_VERDICT_NOTE_CHANGE_AFTER_PASS);
}

static uint64_t nitrate_notes(const struct verdict_reading *r, const double in[])
{
    double margin = fmax(hw_limits[HW_LIMIT_NITRATE_KIT].value,
                         hw_limits[HW_LIMIT_NITRATE_KIT_SHARE].value * r->nitrate);
    return note_if(in[NITRATE_RISE] < r->nitrate - margin, HW_VERDICT_NOTE_NITRATE_SHORT) |
           note_if(in[NITRATE_RISE] > r->nitrate + margin, HW_VERDICT_NOTE_NITRATE_OVER) |
           note_if(isnan(in[NITRATE_RISE]), HW_VERDICT_NOTE_NITRATE_UNSAID);
}

static uint64_t temp_notes(const struct verdict_reading *r, const double in[])
{
    return note_if(r->colder > 0, HW_VERDICT_NOTE_COLDER_STOCK) |
           note_if(in[STOCK_TEMP] > in[TEMP], HW_VERDICT_NOTE_WARMER_STOCK) |
           note_if(isnan(in[TEMP]) != isnan(in[STOCK_TEMP]), HW_VERDICT_NOTE_TEMP_HALF);
}

static const uint64_t always =
    UINT64_C(1) << HW_VERDICT_NOTE_NOT_CARRYING | UINT64_C(1) << HW_VERDICT_NOTE_FEED_FIGURE |
    UINT64_C(1) << HW_VERDICT_NOTE_VOID_AFTER | UINT64_C(1) << HW_VERDICT_NOTE_HALF_STEP |
    UINT64_C(1) << HW_VERDICT_NOTE_KIT_BASIS | UINT64_C(1) << HW_VERDICT_NOTE_SAME_WATER |
    UINT64_C(1) << HW_VERDICT_NOTE_FEED_FILTER;

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct verdict_reading r = verdict_reading(in);
    *notes |= note_bit(HW_VERDICT_NOTE_ASK_VET);
    *notes |= r.moved ? always | passing_notes(&r, in) | nitrate_notes(&r, in) | temp_notes(&r, in)
                      : note_bit(r.readable ? HW_VERDICT_NOTE_NOTHING_CLEARED
                                            : HW_VERDICT_NOTE_START_UNREADABLE);
    out[PASSED] = r.passed;
    out[CLEARED] = r.cleared;
    out[RATE] = r.rate;
    out[CAPACITY] = r.capacity;
    out[FEED] = r.feed;
    out[WORKING_FEED] = r.working_feed;
    out[HOURS_TO_CLEAR] = r.hours_to_clear;
}

const struct hw_calc hw_calc_verdict = {
    .name = "verdict",
    .purpose = "whether a filter passed its challenge, and how much food it carries",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_verdict_notes,
    .n_notes = HW_VERDICT_NOTES,
    .sources = sources,
    .answer = answer,
    .work = verdict_work,
};
