/* dose_notes.c - what a dose says besides numbers. */
#include "calc/dose_plan.h"
#include "holdwater/course.h"
#include "tables.h"

#include <math.h>

static bool is_copper(const struct dose_plan *plan)
{
    return ((1u << plan->kind) & DOSE_KINDS_OF_COPPER) != 0;
}

static bool is_pure_copper(const struct dose_plan *plan, const double in[])
{
    return is_copper(plan) && plan->source == DOSE_SOURCE_POWDER && in[DOSE_PURITY] == 100;
}

/* Crystals that make another copper than the kind, a powder that would be all copper, a salt's
 * strength of a solid. */
static bool copper_does_not_fit(const struct dose_plan *plan, const double in[])
{
    bool crystals = plan->source == DOSE_SOURCE_PENTAHYDRATE;
    bool salt = in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT;
    return (crystals && plan->kind != DOSE_KIND_IONIC) || is_pure_copper(plan, in) ||
           (salt && plan->source != DOSE_SOURCE_LIQUID);
}

/* Neither the strength alone nor the whole label alone. */
static bool strength_is_unclear(const struct dose_plan *plan, const double in[])
{
    bool by_strength = !isnan(in[DOSE_STRENGTH]) && plan->labels == 0;
    bool by_label = isnan(in[DOSE_STRENGTH]) && plan->labels == 3;
    return !by_strength && !by_label;
}

static bool is_unlikely(const struct dose_plan *plan)
{
    return plan->label_strength < PRODUCT_MIN || plan->label_strength > PRODUCT_MAX ||
           plan->after > HW_DOSE_LEVEL_MAX ||
           (plan->kind == DOSE_KIND_DYE && plan->target > HW_COURSE_LEVEL_MAX);
}

/* Formalin of a strength that is a bath of an hour at most. */
static bool is_bath(const struct dose_plan *plan)
{
    return plan->kind == DOSE_KIND_FORMALIN &&
           above_limit(plan->solution_mg, HW_LIMIT_FORMALIN_STAY);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct dose_plan *plan, const double in[])
{
    bool formalin = plan->kind == DOSE_KIND_FORMALIN;
    bool liquid = plan->source == DOSE_SOURCE_LIQUID;
    bool spread = plan->steps > 1 || in[DOSE_DAYS] > 0;
    return note_if(copper_does_not_fit(plan, in), HW_DOSE_NOTE_COPPER_FORM) |
           note_if(formalin && (!liquid || plan->labels > 0), HW_DOSE_NOTE_FORMALIN_AS_LIQUID) |
           note_if(!formalin && liquid && strength_is_unclear(plan, in),
                   HW_DOSE_NOTE_STRENGTH_OR_LABEL) |
           note_if(is_unlikely(plan), HW_DOSE_NOTE_DOSE_UNLIKELY) |
           note_if(above(plan->floor, plan->ceiling), HW_DOSE_NOTE_FLOOR_OVER_CEILING) |
           note_if(plan->target <= plan->now, HW_DOSE_NOTE_TARGET_NOT_ABOVE) |
           note_if((plan->added && spread) || (plan->steps == 1 && spread) ||
                       (in[DOSE_DAYS] > 0 && is_bath(plan)),
                   HW_DOSE_NOTE_STEPS_WITHOUT_USE) |
           note_if(above(plan->target, plan->ceiling), HW_DOSE_NOTE_OVER_CEILING);
}

static uint64_t level_notes(const struct dose_plan *plan)
{
    double first = plan->now + (plan->after - plan->now) / plan->steps;
    bool reached = !below(plan->after, plan->floor);
    return note_if(!reached, HW_DOSE_NOTE_UNDER_FLOOR) |
           note_if(reached && below(first, plan->floor), HW_DOSE_NOTE_FLOOR_NOT_YET) |
           note_if(!isnan(plan->share_back), HW_DOSE_NOTE_ADDED_OVER) |
           note_if(above(plan->ceiling, plan->usual_ceiling), HW_DOSE_NOTE_CEILING_OVER_USUAL) |
           note_if(isnan(plan->ceiling), HW_DOSE_NOTE_CEILING_UNSAID);
}

static uint64_t pour_notes(const struct dose_plan *plan)
{
    double liquid = isnan(plan->step_liquid) ? plan->liquid : plan->step_liquid;
    double mass = isnan(plan->step_mass) ? plan->mass : plan->step_mass;
    return note_if(below_limit(liquid, HW_LIMIT_DRAW_LEAST), HW_DOSE_NOTE_SMALL_LIQUID) |
           note_if(below_limit(mass, HW_LIMIT_WEIGH_LEAST), HW_DOSE_NOTE_WEIGH_SMALL) |
           note_if(!plan->added, HW_DOSE_NOTE_DOSE_HOW);
}

static uint64_t copper_notes(const struct dose_plan *plan, const double in[])
{
    bool loose = plan->kind == DOSE_KIND_IONIC || plan->kind == DOSE_KIND_AMINE;
    bool salt =
        in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT || plan->source == DOSE_SOURCE_PENTAHYDRATE;
    double a_day = fmin(plan->ceiling, plan->usual_ceiling) /* of a number and none, the number */
                   / hw_limits[HW_LIMIT_COPPER_RAMP_DAYS].value;
    if (!is_copper(plan)) {
        return 0;
    }
    return note_if(loose && !plan->added && above(plan->rise_a_day, a_day),
                   HW_DOSE_NOTE_COPPER_RAMP) |
           note_if(loose, HW_DOSE_NOTE_COPPER_REDUCERS_OUT) |
           note_if(salt, HW_DOSE_NOTE_STOCK_HYDRATE) | note_bit(HW_DOSE_NOTE_COPPER_KIT) |
           note_bit(HW_DOSE_NOTE_COPPER_LOW_SALINITY) | note_bit(HW_DOSE_NOTE_STOCK_INVERTEBRATES);
}

static uint64_t dye_notes(const struct dose_plan *plan)
{
    if (plan->kind != DOSE_KIND_DYE) {
        return 0;
    }
    return note_if(above_limit(plan->after, HW_LIMIT_DYE_FILTER), HW_DOSE_NOTE_DYE_LEVEL_HIGH) |
           note_bit(HW_DOSE_NOTE_DYE_FORM) | note_bit(HW_DOSE_NOTE_DYE_TANK) |
           note_bit(HW_DOSE_NOTE_DYE_HANDLERS);
}

static uint64_t formalin_notes(const struct dose_plan *plan, const double in[])
{
    if (plan->kind != DOSE_KIND_FORMALIN) {
        return 0;
    }
    return note_if(is_bath(plan), HW_DOSE_NOTE_FORMALIN_BATH_ONLY) |
           note_if(isnan(in[DOSE_STRENGTH]), HW_DOSE_NOTE_FORMALIN_37) |
           note_bit(HW_DOSE_NOTE_FORMALIN_OXYGEN) | note_bit(HW_DOSE_NOTE_FORMALIN_CARE);
}

uint64_t dose_notes(const struct dose_plan *plan, const double in[])
{
    uint64_t no_answer = refusals(plan, in);
    if (no_answer != 0) {
        return no_answer;
    }
    return level_notes(plan) | pour_notes(plan) | copper_notes(plan, in) | dye_notes(plan) |
           formalin_notes(plan, in);
}
