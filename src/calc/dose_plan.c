/* dose_plan.c - the reckoning of one row of dose. */
#include "calc/dose_plan.h"

#include "holdwater/change.h"
#include "tables.h"

#include <math.h>

static double given(double first, double second)
{
    return isnan(first) ? second : first;
}

static double as_formaldehyde(enum hw_formalin_basis basis, double level)
{
    double formaldehyde = NAN;
    hw_formalin_to_formaldehyde(basis, level, &formaldehyde);
    return formaldehyde;
}

/* A level that was written in mg/L or, of formalin, in its basis. */
static double level_of(const double in[], int mg, int ul)
{
    if ((int)in[DOSE_KIND] == KIND_FORMALIN) {
        return as_formaldehyde((enum hw_formalin_basis)in[DOSE_FORMALIN_BASIS],
                               given(in[mg], in[ul]));
    }
    return in[mg];
}

static double copper_in(double salt)
{
    double copper = NAN;
    hw_dose_copper(salt, &copper);
    return copper;
}

/* A salt's strength, or rise on a label, is of copper only in part; so is the blue crystal. */
static void find_product(const double in[], struct dose_plan *plan)
{
    bool salt = in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT;
    plan->label = (struct product_label){in[DOSE_LABEL_LIQUID], in[DOSE_LABEL_MASS],
                                         in[DOSE_LABEL_PER], in[DOSE_LABEL_RAISES]};
    plan->label_strength = product_label_strength(&plan->label);
    plan->label_share = product_label_share(&plan->label);
    plan->strength = given(in[DOSE_STRENGTH], plan->label_strength);
    if (plan->kind == KIND_FORMALIN) {
        plan->strength = given(in[DOSE_STRENGTH], HW_FORMALIN_STRENGTH);
    }
    plan->share = given(100 * plan->label_share, in[DOSE_PURITY]);
    if (salt) {
        plan->strength = copper_in(plan->strength);
    }
    if (salt || plan->source == DOSE_SOURCE_PENTAHYDRATE) {
        plan->share = copper_in(plan->share);
    }
}

static void find_amount(const double in[], struct dose_plan *plan)
{
    double volume = in[DOSE_VOLUME];
    if (!plan->added) {
        hw_dose_active(volume, plan->now, plan->target, &plan->active);
        hw_dose_liquid(plan->active, plan->strength, &plan->liquid);
        hw_dose_powder(plan->active, plan->share / 100, &plan->mass);
    } else if (plan->source == DOSE_SOURCE_LIQUID) {
        hw_dose_liquid_active(in[DOSE_ADDED_LIQUID], plan->strength, &plan->active);
    } else {
        hw_dose_powder_active(in[DOSE_ADDED_MASS], plan->share / 100, &plan->active);
    }
    hw_dose_level(volume, plan->now, plan->active, &plan->after);
}

/* Steps stand at the beginning of equal parts of the days. */
static void find_steps(const double in[], struct dose_plan *plan)
{
    double days = in[DOSE_DAYS];
    plan->step_liquid = plan->liquid / plan->steps;
    plan->step_mass = plan->mass / plan->steps;
    if (plan->steps > 1 && days > 0) {
        plan->step_every = 24 * days / plan->steps;
    }
}

/* The most that goes in within 24 hours, mg/L. */
static double rise_a_day(const double in[], const struct dose_plan *plan)
{
    double days = in[DOSE_DAYS];
    double in_a_day = days > 0 ? ceil(plan->steps / days - 1e-9) : plan->steps;
    return (plan->after - plan->now) / plan->steps * fmin(plan->steps, fmax(in_a_day, 1));
}

static void find_medicine(const double in[], struct dose_plan *plan)
{
    plan->medicine = (struct medicine){
        .kind = plan->kind,
        .to_pour = !plan->added,
        .biofilter = in[DOSE_BIOFILTER] == YES,
        .floor = in[DOSE_FLOOR],
        .ceiling = level_of(in, DOSE_CEILING, DOSE_CEILING_UL),
        .salinity = in[DOSE_SALINITY],
        .temp = in[DOSE_TEMP],
        .level = plan->added ? plan->after : plan->target,
        .rise_a_day = rise_a_day(in, plan),
    };
    plan->window = medicine_window(&plan->medicine);
}

static void find_formalin(struct dose_plan *plan)
{
    if (plan->kind == KIND_FORMALIN) {
        plan->formaldehyde = plan->after;
        hw_formalin_from_formaldehyde(HW_FORMALIN_SOLUTION_UL, plan->after, &plan->solution_ul);
        hw_formalin_from_formaldehyde(HW_FORMALIN_SOLUTION_MG, plan->after, &plan->solution_mg);
        hw_formalin_oxygen(plan->solution_mg, &plan->oxygen);
    }
}

static void find_way_back(struct dose_plan *plan)
{
    double exchange = NAN;
    if (plan->added && above(plan->after, plan->window.stay)) {
        hw_change_exchange_needed(HW_CHANGE_BATCH, plan->after, 0, plan->window.stay, &exchange);
        plan->share_back = 100 * exchange;
    }
}

struct dose_plan dose_plan(const double in[])
{
    struct dose_plan plan = {
        .kind = (enum medicine_kind)in[DOSE_KIND],
        .source = (int)in[DOSE_SOURCE],
        .steps = (int)in[DOSE_STEPS],
        .added = !isnan(in[DOSE_ADDED_LIQUID]) || !isnan(in[DOSE_ADDED_MASS]),
        .active = NAN,
        .liquid = NAN,
        .mass = NAN,
        .step_every = NAN,
        .solution_ul = NAN,
        .solution_mg = NAN,
        .formaldehyde = NAN,
        .oxygen = NAN,
        .share_back = NAN,
    };
    plan.now = level_of(in, DOSE_NOW, DOSE_NOW_UL);
    plan.target = level_of(in, DOSE_TARGET, DOSE_TARGET_UL);
    find_product(in, &plan);
    find_amount(in, &plan);
    find_steps(in, &plan);
    find_medicine(in, &plan);
    find_formalin(&plan);
    find_way_back(&plan);
    return plan;
}
