/* course_calc.c - a course of dye in a tank: what to pour and when, and how high the level
 * climbs. */
#include "calc/course_plan.h"
#include "calc/list.h"
#include "calc/medicine_kind.h"
#include "holdwater/bath.h"
#include "holdwater/dose.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    COURSE_DYE, COURSE_DYE_AGAIN, COURSE_LEVEL_FIRST, COURSE_LEVEL_LAST, COURSE_LEVEL_CEILING,
    COURSE_DYE_TOTAL, COURSE_WATER_TOTAL, COURSE_DAYS_TOTAL, COURSE_DOSE_OVER, COURSE_RESULTS
};
/* clang-format on */

enum {
    COURSE_AMOUNT = 1, /* the groups: of rate and target, of doses and days */
    COURSE_LENGTH = 2,
    COURSE_DOSES_MOST = 100, /* the longest course, and the days of it when two doses are a day */
    COURSE_DAYS_MOST = 50
};

static const char *const redose_words[] = {"full", "replace", NULL};

/* clang-format off */
static const struct hw_input inputs[COURSE_INPUTS] = {
    [COURSE_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_COURSE_VOLUME_MIN, .hi = HW_COURSE_VOLUME_MAX, .beyond = "check the unit",
     .help = "water in the tank, without what stands in it"},
    [COURSE_BIOFILTER] = {.name = "biofilter", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .help = "does a biofilter or media of one share this water?"},
    [COURSE_STRENGTH] = {.name = "strength", .unit = "mg/mL", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = HW_BATH_STRENGTH_MIN, .hi = HW_BATH_STRENGTH_MAX,
     .beyond = "look at the label again, 1 %wv is 10 mg/mL",
     .help = "dye in the stock as its label counts it"},
    [COURSE_RATE] = {.name = "rate", .aim = true, .unit = "mL/L", .kind = HW_DOSE_RATE,
     .lo = HW_BATH_RATE_MIN, .hi = HW_BATH_RATE_MAX, .group = COURSE_AMOUNT,
     .beyond = "check the unit, more is no dose of a stock",
     .help = "stock of the first dose per volume, by its label"},
    [COURSE_TARGET] = {.name = "target", .aim = true, .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_COURSE_LEVEL_MIN, .hi = HW_DOSE_LEVEL_MAX, .group = COURSE_AMOUNT,
     .beyond = "less does nothing, no dose goes above " HW_FIGURE_DYE_MOST " mg/L",
     .help = "level that the first dose is to make"},
    [COURSE_EVERY] = {.name = "every", .unit = "h", .kind = HW_TIME, .lo = 12, .hi = 168,
     .need = HW_PRESET, .preset = 48,
     .beyond = "not more than twice a day, after a week it is a new course",
     .help = "time from one dose to the next"},
    [COURSE_SHARE] = {.name = "share", .unit = "%", .kind = HW_SHARE, .lo = 100 *
     HW_COURSE_EXCHANGED_MIN, .hi = 100 * HW_COURSE_EXCHANGED_MAX, .need = HW_PRESET,
     .preset = 25, .beyond = "with less than 1 % the dye only builds up",
     .help = "share of water changed before each further dose"},
    [COURSE_DOSES] = {.name = "doses", .unit = "", .kind = HW_COUNT, .lo = HW_COURSE_DOSES_MIN,
     .hi = COURSE_DOSES_MOST, .group = COURSE_LENGTH, .beyond = "plan no further",
     .help = "how many doses, the first counted"},
    [COURSE_DAYS] = {.name = "days", .unit = "d", .kind = HW_TIME, .lo = 0.5,
     .hi = COURSE_DAYS_MOST, .group = COURSE_LENGTH, .beyond = "plan no further",
     .help = "how long, a begun day counts as a whole one"},
    [COURSE_REDOSE] = {.name = "redose", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = redose_words, .need = HW_PRESET, .preset = HW_COURSE_FULL,
     .help = "each further dose (replace: what the change took)"},
};

static const struct hw_result results[COURSE_RESULTS] = {
    [COURSE_DYE] = {.name = "dye", .unit = "mL", .kind = HW_VOLUME, .digits = 3, .safe = -1,
     .pour = true, .help = "first dose"},
    [COURSE_DYE_AGAIN] = {.name = "dye_again", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = -1, .sometimes = true, .pour = true, .help = "each further dose"},
    [COURSE_LEVEL_FIRST] = {.name = "level_first", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .detail = true, .help = "dye in the tank after the first dose"},
    [COURSE_LEVEL_LAST] = {.name = "level_last", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .help = "dye after the last dose: none is higher"},
    [COURSE_LEVEL_CEILING] = {.name = "level_ceiling", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .detail = true, .help = "dye after a dose if the course never ended"},
    [COURSE_DYE_TOTAL] = {.name = "dye_total", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = 1, .help = "stock to have in the house"},
    [COURSE_WATER_TOTAL] = {.name = "water_total", .unit = "L", .kind = HW_VOLUME, .digits = 3,
     .safe = 1, .help = "new water for all the changes"},
    [COURSE_DAYS_TOTAL] = {.name = "days_total", .unit = "d", .kind = HW_TIME, .digits = 2,
     .help = "from the first dose to the end of the last"},
    [COURSE_DOSE_OVER] = {.name = "dose_over", .unit = "", .kind = HW_COUNT, .digits = 1,
     .sometimes = true, .help = "dose after which it is above " HW_FIGURE_DYE_COURSE " mg/L"},
};
/* clang-format on */

static const char *const sources[] = {
    "conservation", "dye-labels", "dye-forms",       "dye-courses",    "dye-chemistry",
    "rifici1996",   "li2023",     "common-practice", "our-arithmetic", NULL};

/* The notes of the kind that a course can come to, in the order of enum medicine_note. What it
 * raises of its levels it says in words of its own. */
static const unsigned note_of[MEDICINE_NOTES] = {
    [MEDICINE_CEILING_NEEDED] = NO_NOTE,
    [MEDICINE_FLOOR_OVER_CEILING] = NO_NOTE,
    [MEDICINE_OVER_CEILING] = NO_NOTE,
    [MEDICINE_FORMALIN_OVER] = NO_NOTE,
    [MEDICINE_CEILING_TOO_HIGH] = NO_NOTE,
    [MEDICINE_CEILING_SLIP] = NO_NOTE,
    [MEDICINE_COPPER_IN_FRESH] = NO_NOTE,
    [MEDICINE_DYE_BIOFILTER] = HW_COURSE_NOTE_DYE_BIOFILTER,
    [MEDICINE_DYE_OVER] = HW_COURSE_NOTE_DYE_OVER,
    [MEDICINE_CEILING_OVER_USUAL] = NO_NOTE,
    [MEDICINE_CEILING_OVER_KNOWN] = NO_NOTE,
    [MEDICINE_CEILING_UNSAID] = NO_NOTE,
    [MEDICINE_COPPER_FRESH_NOW] = NO_NOTE,
    [MEDICINE_COPPER_BRACKISH] = NO_NOTE,
    [MEDICINE_COPPER_RAMP] = NO_NOTE,
    [MEDICINE_CHELATED_RAMP] = NO_NOTE,
    [MEDICINE_DYE_IN_FILTER] = NO_NOTE,
    [MEDICINE_DYE_HIGH] = NO_NOTE,
};

static uint64_t level_notes(const struct course_plan *plan)
{
    return note_if(plan->over_from <= plan->doses, HW_COURSE_NOTE_COURSE_OVER_5) |
           note_if(plan->over_from > plan->doses, HW_COURSE_NOTE_COURSE_NOT_LONGER) |
           note_if(above_limit(plan->last, HW_LIMIT_DYE_CHECK), HW_COURSE_NOTE_DYE_CHECK);
}

/* The notes that leave no answer. The last level is the highest; of a first one out of its range
 * the core makes no course. */
static uint64_t refusals(const struct course_plan *plan, const double in[])
{
    struct medicine dye = {
        .kind = KIND_DYE,
        .to_pour = true,
        .biofilter = (int)in[COURSE_BIOFILTER] == YES,
        .floor = NAN,
        .ceiling = NAN,
        .salinity = NAN,
        .temp = NAN,
        .level = plan->last,
        .rise_a_day = NAN,
    };
    return note_if(plan->wanted < HW_COURSE_LEVEL_MIN, HW_COURSE_NOTE_NO_COURSE_LEVEL) |
           note_if(plan->wanted > HW_COURSE_LEVEL_MAX, HW_COURSE_NOTE_DYE_OVER) |
           note_if(
               above_limit(poured_percent(plan->dye, NAN, in[COURSE_VOLUME]), HW_LIMIT_POUR_MOST),
               HW_COURSE_NOTE_POUR_TOO_LARGE) |
           medicine_no_answer(&dye, note_of);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    struct course_plan plan = course_plan(in);
    double again = plan.doses > 1 ? plan.again : (double)NAN;
    *notes |= refusals(&plan, in);
    if (*notes == 0) {
        *notes |=
            level_notes(&plan) |
            note_if(
                above_limit(poured_percent(plan.dye, NAN, in[COURSE_VOLUME]), HW_LIMIT_POUR_LARGE),
                HW_COURSE_NOTE_POUR_LARGE) |
            note_if(below_limit(fmin(plan.dye, again), HW_LIMIT_DRAW_LEAST), /* again: maybe NaN */
                    HW_COURSE_NOTE_SMALL_LIQUID);
    }
    out[COURSE_DYE] = plan.dye;
    out[COURSE_DYE_AGAIN] = again;
    out[COURSE_LEVEL_FIRST] = plan.first;
    out[COURSE_LEVEL_LAST] = plan.last;
    out[COURSE_LEVEL_CEILING] = plan.ceiling;
    out[COURSE_DYE_TOTAL] = plan.total;
    out[COURSE_WATER_TOTAL] = plan.water;
    out[COURSE_DAYS_TOTAL] = plan.days_total;
    out[COURSE_DOSE_OVER] = plan.over_from;
}

/* clang-format off */
const struct hw_calc hw_calc_course = {
    .name = "course",
    .purpose = "dye over days without a biofilter: what to pour, how high it goes",
    .inputs = inputs, .n_inputs = COURSE_INPUTS, .results = results,
    .n_results = COURSE_RESULTS, .notes = hw_course_notes, .n_notes = HW_COURSE_NOTES,
    .sources = sources, .answer = answer, .work = course_work,
};
/* clang-format on */
