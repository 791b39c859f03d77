/* dose_work.c - the working of a dose. */
#include "calc/dose_plan.h"

#include <math.h>

enum { DOSE_LEVELS_SHOWN = 12 }; /* of more steps the first eleven and the last are written */

static void step_formaldehyde(const char *symbol, double formaldehyde, const double in[],
                              double level, struct hw_steps *steps)
{
    int basis = (int)in[DOSE_FORMALIN_BASIS];
    if (basis == HW_FORMALIN_SOLUTION_UL) {
        hw_step(steps, symbol, formaldehyde, "mg/L", "formalin-forms", "%.10g * %.10g/1000", level,
                HW_FORMALIN_STRENGTH);
    } else if (basis == HW_FORMALIN_SOLUTION_MG) {
        hw_step(steps, symbol, formaldehyde, "mg/L", "formalin-forms", "%.10g * %.10g/1000 / %.10g",
                level, HW_FORMALIN_STRENGTH, HW_FORMALIN_DENSITY);
    } else {
        hw_step(steps, symbol, formaldehyde, "mg/L", "", "%.10g", level);
    }
}

static void step_levels(const struct dose_plan *plan, const double in[], struct hw_steps *steps)
{
    if (plan->kind != KIND_FORMALIN) {
        return;
    }
    step_formaldehyde("now_formaldehyde", plan->now, in,
                      isnan(in[DOSE_NOW]) ? in[DOSE_NOW_UL] : in[DOSE_NOW], steps);
    if (!plan->added) {
        step_formaldehyde("target_formaldehyde", plan->target, in,
                          isnan(in[DOSE_TARGET]) ? in[DOSE_TARGET_UL] : in[DOSE_TARGET], steps);
    }
}

/* The share of a powder is a per cent, as a purity is. */
static void step_product(const struct dose_plan *plan, const double in[], struct hw_steps *steps)
{
    double share = in[DOSE_PURITY];
    bool salt = in[DOSE_STRENGTH_AS] == DOSE_STRENGTH_AS_SALT;
    if (!isnan(plan->label_strength)) {
        hw_step(steps, "label_strength", plan->label_strength, "mg/mL", "", "%.10g * %.10g / %.10g",
                in[DOSE_LABEL_RAISES], in[DOSE_LABEL_PER], in[DOSE_LABEL_LIQUID]);
    }
    if (!isnan(plan->label_share)) {
        share = 100 * plan->label_share;
        hw_step(steps, "label_share", share, "%", "", "100 * %.10g * %.10g / (1000 * %.10g)",
                in[DOSE_LABEL_RAISES], in[DOSE_LABEL_PER], in[DOSE_LABEL_MASS]);
    }
    if (plan->source == DOSE_SOURCE_PENTAHYDRATE || (salt && !isnan(share))) {
        hw_step(steps, "copper_share", plan->share, "%", "iupac-weights", "%.10g * %.10g/%.10g",
                share, HW_MOLAR_COPPER, HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE);
    } else if (salt) {
        hw_step(steps, "copper_strength", plan->strength, "mg/mL", "iupac-weights",
                "%.10g * %.10g/%.10g",
                isnan(in[DOSE_STRENGTH]) ? plan->label_strength : in[DOSE_STRENGTH],
                HW_MOLAR_COPPER, HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE);
    }
}

static void step_active(const struct dose_plan *plan, const double in[], struct hw_steps *steps)
{
    if (!plan->added) {
        hw_step(steps, "active", plan->active, "mg", "conservation", "(%.10g - %.10g) * %.10g",
                plan->target, plan->now, in[DOSE_VOLUME]);
    } else if (plan->source == DOSE_SOURCE_LIQUID) {
        hw_step(steps, "active", plan->active, "mg", "", "%.10g * %.10g", in[DOSE_ADDED_LIQUID],
                plan->strength);
    } else {
        hw_step(steps, "active", plan->active, "mg", "", "%.10g*1000 * %.10g/100",
                in[DOSE_ADDED_MASS], plan->share);
    }
}

/* The level when all is in; formalin has three in its place. */
static void step_after(const struct dose_plan *plan, double volume, struct hw_steps *steps)
{
    bool formalin = plan->kind == KIND_FORMALIN;
    hw_step(steps, formalin ? "formaldehyde" : "level_after", plan->after, "mg/L", "conservation",
            "%.10g + %.10g / %.10g", plan->now, plan->active, volume);
    if (formalin) {
        hw_step(steps, "solution_mg", plan->solution_mg, "mg/L", "formalin-forms",
                "%.10g / (%.10g/1000) * %.10g", plan->after, HW_FORMALIN_STRENGTH,
                HW_FORMALIN_DENSITY);
        hw_step(steps, "oxygen_used", plan->oxygen, "mg/L", "formalin-oxygen", "%.10g / %.10g",
                plan->solution_mg, HW_FORMALIN_PER_OXYGEN);
        hw_step(steps, "solution_ul", plan->solution_ul, "uL/L", "formalin-forms",
                "%.10g / (%.10g/1000)", plan->after, HW_FORMALIN_STRENGTH);
    }
}

/* Where what was poured brought the level, and the way back; the first result stands last. */
static void step_poured(const struct dose_plan *plan, double volume, struct hw_steps *steps)
{
    bool formalin = plan->kind == KIND_FORMALIN;
    if (formalin) {
        step_after(plan, volume, steps);
    }
    if (!isnan(plan->share_back)) {
        hw_step(steps, "share_back", plan->share_back, "%", "conservation",
                "100 * (1 - %.10g / (%.10g + %.10g / %.10g))", plan->window.stay, plan->now,
                plan->active, volume);
    }
    if (!formalin) {
        step_after(plan, volume, steps);
    }
}

static void step_steps(const struct dose_plan *plan, const double in[], struct hw_steps *steps)
{
    for (int step = 1; plan->steps > 1 && step <= plan->steps; step++) {
        char symbol[24] = "level_after_step_";
        double level = NAN;
        int at = 17;
        if (step == DOSE_LEVELS_SHOWN && plan->steps > DOSE_LEVELS_SHOWN) {
            step = plan->steps;
        }
        if (step > 9) {
            symbol[at++] = (char)('0' + step / 10);
        }
        symbol[at++] = (char)('0' + step % 10);
        symbol[at] = '\0';
        hw_dose_step_level(plan->now, plan->target, plan->steps, step, &level);
        hw_step(steps, symbol, level, "mg/L", "conservation", "%.10g + (%.10g - %.10g) * %d/%d",
                plan->now, plan->target, plan->now, step, plan->steps);
    }
    if (!isnan(plan->step_every)) {
        hw_step(steps, "step_every", plan->step_every, "h", "", "24 * %.10g / %d", in[DOSE_DAYS],
                plan->steps);
    }
}

static void step_pour(const struct dose_plan *plan, struct hw_steps *steps)
{
    if (plan->source == DOSE_SOURCE_LIQUID) {
        hw_step(steps, "liquid", plan->liquid, "mL", "", "%.10g / %.10g", plan->active,
                plan->strength);
        hw_step(steps, "step_amount", plan->step_liquid, "mL", "", "%.10g / %d", plan->liquid,
                plan->steps);
    } else {
        hw_step(steps, "mass", plan->mass, "g", "", "%.10g/1000 / (%.10g/100)", plan->active,
                plan->share);
        hw_step(steps, "step_mass", plan->step_mass, "g", "", "%.10g / %d", plan->mass,
                plan->steps);
    }
}

/* What was poured ends with where the level is, a dose with what to pour now. */
void dose_work(const double in[], struct hw_steps *steps)
{
    struct dose_plan plan = dose_plan(in);
    step_product(&plan, in, steps);
    step_levels(&plan, in, steps);
    step_active(&plan, in, steps);
    if (plan.added) {
        step_poured(&plan, in[DOSE_VOLUME], steps);
    } else {
        step_after(&plan, in[DOSE_VOLUME], steps);
        step_steps(&plan, in, steps);
        step_pour(&plan, steps);
    }
}
