/* dose_notes.c - what a dose says besides numbers. */
#include "calc/dose_plan.h"
#include "holdwater/course.h"
#include "tables.h"

#include <math.h>

/* The notes of the kind, in the order of enum medicine_note. */
static const unsigned note_of[MEDICINE_NOTES] = {
    [MEDICINE_CEILING_NEEDED] = HW_DOSE_NOTE_CEILING_NEEDED,
    [MEDICINE_FLOOR_OVER_CEILING] = HW_DOSE_NOTE_FLOOR_OVER_CEILING,
    [MEDICINE_OVER_CEILING] = HW_DOSE_NOTE_OVER_CEILING,
    [MEDICINE_FORMALIN_OVER] = HW_DOSE_NOTE_FORMALIN_OVER,
    [MEDICINE_CEILING_TOO_HIGH] = HW_DOSE_NOTE_CEILING_TOO_HIGH,
    [MEDICINE_CEILING_SLIP] = HW_DOSE_NOTE_CEILING_SLIP,
    [MEDICINE_COPPER_IN_FRESH] = HW_DOSE_NOTE_COPPER_IN_FRESH,
    [MEDICINE_DYE_BIOFILTER] = HW_DOSE_NOTE_DYE_BIOFILTER,
    [MEDICINE_DYE_OVER] = HW_DOSE_NOTE_DYE_OVER,
    [MEDICINE_CEILING_OVER_USUAL] = HW_DOSE_NOTE_CEILING_OVER_USUAL,
    [MEDICINE_CEILING_OVER_KNOWN] = HW_DOSE_NOTE_CEILING_OVER_KNOWN,
    [MEDICINE_CEILING_UNSAID] = HW_DOSE_NOTE_CEILING_UNSAID,
    [MEDICINE_COPPER_FRESH_NOW] = HW_DOSE_NOTE_COPPER_FRESH_NOW,
    [MEDICINE_COPPER_BRACKISH] = HW_DOSE_NOTE_COPPER_BRACKISH,
    [MEDICINE_COPPER_RAMP] = HW_DOSE_NOTE_COPPER_RAMP,
    [MEDICINE_CHELATED_RAMP] = HW_DOSE_NOTE_COPPER_RAMP_CHELATED,
    [MEDICINE_DYE_IN_FILTER] = HW_DOSE_NOTE_DYE_IN_FILTER,
    [MEDICINE_DYE_HIGH] = HW_DOSE_NOTE_DYE_LEVEL_HIGH,
};

static bool is_copper(const struct dose_plan *plan)
{
    return ((1u << plan->kind) & KINDS_OF_COPPER) != 0;
}

/* Copper that its water holds but weakly. */
static bool is_loose(const struct dose_plan *plan)
{
    return plan->kind == KIND_IONIC || plan->kind == KIND_AMINE;
}

static bool by_label(const struct dose_plan *plan)
{
    return product_label_whole(&plan->label);
}

static bool is_pure_copper(const struct dose_plan *plan, const double in[])
{
    return is_copper(plan) && plan->source == DOSE_SOURCE_POWDER && in[DOSE_PURITY] == 100 &&
           !by_label(plan);
}

/* Crystals that make another copper than the kind, a powder that would be all copper, a salt's
 * strength of a solid. */
static bool copper_does_not_fit(const struct dose_plan *plan, const double in[])
{
    bool crystals = plan->source == DOSE_SOURCE_PENTAHYDRATE;
    bool salt = in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT;
    return (crystals && plan->kind != KIND_IONIC) || is_pure_copper(plan, in) ||
           (salt && plan->source != DOSE_SOURCE_LIQUID && !by_label(plan));
}

/* A liquid: neither the strength alone nor the whole label alone. A powder: half a label, or one
 * beside a purity. */
static bool product_is_unclear(const struct dose_plan *plan, const double in[])
{
    bool labelled = product_label_given(&plan->label) > 0;
    if (plan->source == DOSE_SOURCE_LIQUID) {
        bool by_strength = !isnan(in[DOSE_STRENGTH]);
        return by_strength ? labelled : !by_label(plan);
    }
    return labelled && (!by_label(plan) || in[DOSE_PURITY] != 100);
}

static bool is_unlikely(const struct dose_plan *plan)
{
    return product_label_unlikely(&plan->label) || plan->after > HW_DOSE_LEVEL_MAX;
}

/* Formalin of a strength that is a bath of an hour at most. */
static bool is_bath(const struct dose_plan *plan)
{
    return plan->kind == KIND_FORMALIN && above_limit(plan->solution_mg, HW_LIMIT_FORMALIN_STAY);
}

static bool steps_have_no_use(const struct dose_plan *plan, const double in[])
{
    bool over_days = in[DOSE_DAYS] > 0;
    return (plan->added && (plan->steps > 1 || over_days)) || (plan->steps == 1 && over_days) ||
           (over_days && is_bath(plan));
}

/* All steps together, or what was poured already. */
static double percent_of_water(const struct dose_plan *plan, const double in[])
{
    if (plan->added) {
        return poured_percent(in[DOSE_ADDED_LIQUID], in[DOSE_ADDED_MASS], in[DOSE_VOLUME]);
    }
    return poured_percent(plan->liquid, plan->mass, in[DOSE_VOLUME]);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct dose_plan *plan, const double in[])
{
    bool formalin = plan->kind == KIND_FORMALIN;
    bool liquid = plan->source == DOSE_SOURCE_LIQUID;
    bool odd_formalin = formalin && (!liquid || product_label_given(&plan->label) > 0);
    return note_if(copper_does_not_fit(plan, in), HW_DOSE_NOTE_COPPER_FORM) |
           note_if(odd_formalin, HW_DOSE_NOTE_FORMALIN_AS_LIQUID) |
           note_if(!formalin && product_is_unclear(plan, in), HW_DOSE_NOTE_STRENGTH_OR_LABEL) |
           note_if(is_unlikely(plan), HW_DOSE_NOTE_DOSE_UNLIKELY) |
           note_if(plan->target <= plan->now, HW_DOSE_NOTE_TARGET_NOT_ABOVE) |
           note_if(steps_have_no_use(plan, in), HW_DOSE_NOTE_STEPS_WITHOUT_USE) |
           note_if(!plan->added && above_limit(percent_of_water(plan, in), HW_LIMIT_POUR_MOST),
                   HW_DOSE_NOTE_POUR_TOO_LARGE) |
           medicine_no_answer(&plan->medicine, note_of);
}

/* What was poured is more than may stay. Of dye and formalin the ceiling is that of a short time: a
 * level between the two is no slip, but does not stay either. */
static uint64_t back_notes(const struct dose_plan *plan)
{
    bool short_time = plan->kind == KIND_DYE || plan->kind == KIND_FORMALIN;
    if (isnan(plan->share_back)) {
        return 0;
    }
    return note_if(short_time && above(plan->after, plan->window.usual),
                   HW_DOSE_NOTE_ADDED_DEADLY) |
           note_if(short_time, HW_DOSE_NOTE_ADDED_TO_STAY) |
           note_if(!short_time, HW_DOSE_NOTE_ADDED_OVER);
}

static uint64_t level_notes(const struct dose_plan *plan)
{
    double first = plan->now + (plan->after - plan->now) / plan->steps;
    bool reached = !below(plan->after, plan->window.floor);
    bool later = reached && below(first, plan->window.floor);
    return note_if(!reached, HW_DOSE_NOTE_UNDER_FLOOR) |
           note_if(later && !is_loose(plan), HW_DOSE_NOTE_FLOOR_NOT_YET) |
           note_if(later && is_loose(plan), HW_DOSE_NOTE_FLOOR_ON_THE_WAY) | back_notes(plan);
}

static uint64_t pour_notes(const struct dose_plan *plan, const double in[])
{
    return note_if(above_limit(percent_of_water(plan, in), HW_LIMIT_POUR_LARGE),
                   HW_DOSE_NOTE_POUR_LARGE) |
           note_if(below_limit(plan->step_liquid, HW_LIMIT_DRAW_LEAST), HW_DOSE_NOTE_SMALL_LIQUID) |
           note_if(below_limit(plan->step_mass, HW_LIMIT_WEIGH_LEAST), HW_DOSE_NOTE_WEIGH_SMALL) |
           note_if(!plan->added, HW_DOSE_NOTE_DOSE_HOW) |
           note_if(plan->kind == KIND_OTHER, HW_DOSE_NOTE_ANTIBIOTIC_FILTER);
}

static uint64_t copper_notes(const struct dose_plan *plan, const double in[])
{
    bool salt =
        in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT || plan->source == DOSE_SOURCE_PENTAHYDRATE;
    if (!is_copper(plan)) {
        return 0;
    }
    return note_if(is_loose(plan), HW_DOSE_NOTE_COPPER_REDUCERS_OUT) |
           note_if(salt, HW_DOSE_NOTE_STOCK_HYDRATE) | note_bit(HW_DOSE_NOTE_COPPER_KIT) |
           note_bit(HW_DOSE_NOTE_COPPER_SENSITIVE) | note_bit(HW_DOSE_NOTE_COPPER_FILTER) |
           note_bit(HW_DOSE_NOTE_STOCK_INVERTEBRATES);
}

static uint64_t dye_notes(const struct dose_plan *plan)
{
    if (plan->kind != KIND_DYE) {
        return 0;
    }
    return note_bit(HW_DOSE_NOTE_DYE_FORM) | note_bit(HW_DOSE_NOTE_DYE_TANK) |
           note_bit(HW_DOSE_NOTE_DYE_HANDLERS);
}

/* Per cent w/v; formalin is sold in a narrow range, and hardly another medicine is. */
static bool is_odd_formalin(const struct dose_plan *plan)
{
    return below_limit(plan->strength / 10, HW_LIMIT_FORMALIN_WEAKEST) ||
           above_limit(plan->strength / 10, HW_LIMIT_FORMALIN_STRONGEST);
}

static bool looks_like_formalin(const struct dose_plan *plan)
{
    return plan->kind == KIND_OTHER && plan->source == DOSE_SOURCE_LIQUID &&
           !below_limit(plan->strength / 10, HW_LIMIT_FORMALIN_WEAKEST);
}

static bool harms_trout(const struct dose_plan *plan)
{
    return above_limit(plan->medicine.temp, HW_LIMIT_FORMALIN_TROUT_FROM) &&
           !below_limit(plan->solution_mg, HW_LIMIT_FORMALIN_TROUT);
}

static uint64_t formalin_notes(const struct dose_plan *plan, const double in[])
{
    if (plan->kind != KIND_FORMALIN) {
        return note_if(looks_like_formalin(plan), HW_DOSE_NOTE_FORMALIN_AS_OTHER);
    }
    bool stops = !below_limit(plan->formaldehyde, HW_LIMIT_FORMALIN_FILTER);
    bool slows = !below_limit(plan->formaldehyde, HW_LIMIT_FORMALIN_FILTER_SOME);
    bool too_much_for_young = above_limit(plan->solution_mg, HW_LIMIT_FORMALIN_YOUNG);
    return note_if(is_bath(plan), HW_DOSE_NOTE_FORMALIN_BATH_ONLY) |
           note_if(stops, HW_DOSE_NOTE_FORMALIN_STOPS_FILTER) |
           note_if(slows && !stops, HW_DOSE_NOTE_FORMALIN_SLOWS_FILTER) |
           note_if(too_much_for_young && !is_bath(plan), HW_DOSE_NOTE_FORMALIN_YOUNG) |
           note_if(harms_trout(plan), HW_DOSE_NOTE_FORMALIN_TROUT) |
           note_if(is_odd_formalin(plan), HW_DOSE_NOTE_FORMALIN_STRENGTH) |
           note_if(isnan(in[DOSE_STRENGTH]), HW_DOSE_NOTE_FORMALIN_37) |
           note_bit(HW_DOSE_NOTE_FORMALIN_OXYGEN) | note_bit(HW_DOSE_NOTE_FORMALIN_CARE) |
           note_bit(HW_DOSE_NOTE_FORMALIN_GLOVES);
}

uint64_t dose_notes(const struct dose_plan *plan, const double in[])
{
    uint64_t no_answer = refusals(plan, in);
    if (no_answer != 0) {
        return no_answer;
    }
    return level_notes(plan) | medicine_cautions(&plan->medicine, note_of) | pour_notes(plan, in) |
           copper_notes(plan, in) | dye_notes(plan) | formalin_notes(plan, in);
}
