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
    if ((int)in[DOSE_KIND] == DOSE_KIND_FORMALIN) {
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

static void find_strength(const double in[], struct dose_plan *plan)
{
    hw_stock_strength(in[DOSE_LABEL_RAISES], in[DOSE_LABEL_PER], in[DOSE_LABEL_DOSE],
                      &plan->label_strength);
    plan->labels =
        !isnan(in[DOSE_LABEL_RAISES]) + !isnan(in[DOSE_LABEL_PER]) + !isnan(in[DOSE_LABEL_DOSE]);
    plan->strength = given(in[DOSE_STRENGTH], plan->label_strength);
    if (plan->kind == DOSE_KIND_FORMALIN) {
        plan->strength = given(in[DOSE_STRENGTH], HW_FORMALIN_STRENGTH);
    }
    if (in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT) {
        plan->strength = copper_in(plan->strength);
    }
    plan->share =
        plan->source == DOSE_SOURCE_PENTAHYDRATE ? copper_in(in[DOSE_PURITY]) : in[DOSE_PURITY];
}

/* The window: what was given, else the usual one of this kind, if it has one. */
static void find_window(const double in[], struct dose_plan *plan)
{
    plan->floor = given(in[DOSE_FLOOR_ASKED], in[DOSE_FLOOR]);
    plan->ceiling = given(in[DOSE_CEILING_ASKED], in[DOSE_CEILING]);
    plan->usual_ceiling = NAN;
    if (plan->kind == DOSE_KIND_FORMALIN) {
        plan->usual_ceiling =
            as_formaldehyde(HW_FORMALIN_SOLUTION_UL, hw_limits[HW_LIMIT_FORMALIN_BATH].value);
        plan->ceiling =
            given(level_of(in, DOSE_CEILING_FORMALIN, DOSE_CEILING_UL), plan->usual_ceiling);
    }
    if (plan->kind == DOSE_KIND_IONIC) {
        double usual = hw_limits[HW_LIMIT_COPPER_IONIC_LOW].value;
        plan->usual_ceiling = hw_limits[HW_LIMIT_COPPER_IONIC_HIGH].value;
        plan->ceiling = given(plan->ceiling, plan->usual_ceiling);
        plan->floor = given(plan->floor, above(usual, plan->ceiling) ? (double)NAN : usual);
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
    double in_a_day = days > 0 ? ceil(plan->steps / days - 1e-9) : plan->steps;
    plan->rise_a_day =
        (plan->after - plan->now) / plan->steps * fmin(plan->steps, fmax(in_a_day, 1));
    if (plan->steps > 1) {
        plan->step_liquid = plan->liquid / plan->steps;
        plan->step_mass = plan->mass / plan->steps;
        plan->step_every = days > 0 ? 24 * days / plan->steps : (double)NAN;
    }
}

static void find_formalin(struct dose_plan *plan)
{
    if (plan->kind == DOSE_KIND_FORMALIN) {
        plan->formaldehyde = plan->after;
        hw_formalin_from_formaldehyde(HW_FORMALIN_SOLUTION_UL, plan->after, &plan->solution_ul);
        hw_formalin_from_formaldehyde(HW_FORMALIN_SOLUTION_MG, plan->after, &plan->solution_mg);
        hw_formalin_oxygen(plan->solution_mg, &plan->oxygen);
    }
}

static void find_way_back(struct dose_plan *plan)
{
    double exchange = NAN;
    if (plan->added && above(plan->after, plan->ceiling)) {
        hw_change_exchange_needed(HW_CHANGE_BATCH, plan->after, 0, plan->ceiling, &exchange);
        plan->share_back = 100 * exchange;
    }
}

struct dose_plan dose_plan(const double in[])
{
    struct dose_plan plan = {
        .kind = (int)in[DOSE_KIND],
        .source = (int)in[DOSE_SOURCE],
        .steps = (int)in[DOSE_STEPS],
        .added = !isnan(in[DOSE_ADDED_LIQUID]) || !isnan(in[DOSE_ADDED_MASS]),
        .active = NAN,
        .liquid = NAN,
        .mass = NAN,
        .step_liquid = NAN,
        .step_mass = NAN,
        .step_every = NAN,
        .solution_ul = NAN,
        .solution_mg = NAN,
        .formaldehyde = NAN,
        .oxygen = NAN,
        .share_back = NAN,
    };
    plan.now = level_of(in, DOSE_NOW, DOSE_NOW_UL);
    plan.target = level_of(in, DOSE_TARGET, DOSE_TARGET_UL);
    find_strength(in, &plan);
    find_window(in, &plan);
    find_amount(in, &plan);
    find_steps(in, &plan);
    find_formalin(&plan);
    find_way_back(&plan);
    return plan;
}
