/* emergency_work.c - the working of an emergency. The first result of the table comes last. */
#include "calc/emergency_facts.h"

#include <math.h>

static void step_hours(const struct emergency *e, const double in[], struct hw_steps *steps)
{
    double molar = basis_molar((enum hw_nitrogen_basis)in[EMERGENCY_BASIS]);
    bool passed = !isnan(e->hours_again) && !(e->hours_again > 0);
    if (!isnan(e->hours_again)) {
        hw_step(steps, "tan_left", e->tan_left, "mg/L", "", "%.15g", e->tan_left);
        hw_step(steps, "limit_left", e->limit_left, "mg/L", "", "%.15g", e->limit_left);
    }
    if (passed) { /* but for what rounding leaves */
        hw_step(steps, "hours_again", 0, "h", "our-arithmetic", "0");
    } else if (!isnan(e->hours_again)) {
        hw_step(steps, "hours_again", e->hours_again, "h", "our-arithmetic",
                "(%.15g - %.15g) / (%.10g * %.10g/%.10g) * 24", e->limit_left, e->tan_left,
                in[EMERGENCY_RISE], HW_MOLAR_N, molar);
    }
}

static void step_binder(const struct emergency *e, struct hw_steps *steps)
{
    if (!isnan(e->binder_allowed)) {
        hw_step(steps, "binder_oxygen", e->binder_oxygen, "mg/L", "binder-weights",
                "%.15g * 0.5 * %.10g/%.10g", e->tan_n, HW_MOLAR_OXYGEN, HW_MOLAR_N);
        hw_step(steps, "binder_allowed", e->binder_allowed, "", "label-and-law",
                "(%.10g <= %.10g) * %d", e->binder_oxygen,
                hw_limits[HW_LIMIT_BINDER_OXYGEN_ALL].value,
                !e->bans.copper && !e->bans.dye && !emergency_binder_spoiled(e));
    }
}

static void step_change(const struct emergency *e, struct hw_steps *steps)
{
    if (!isnan(e->add_liquid)) {
        hw_step(steps, "new_needed", e->change.new_needed, "mg/L", "conservation", "%.15g",
                e->change.new_needed);
        hw_step(steps, "add_liquid", e->add_liquid, "mL", "conservation",
                "(%.15g - %.10g) * %.10g / %.10g", e->change.new_needed, e->change.new_level,
                e->change.water, e->change.strength);
    }
    if (!isnan(e->at_hand_ratio)) {
        hw_step(steps, "at_hand_ratio", e->at_hand_ratio, "", "our-arithmetic", "%.15g / %.15g",
                e->at_hand.tan_after, e->at_hand.limit_after);
    }
}

static void step_share(const struct emergency *e, const double in[], struct hw_steps *steps)
{
    if (!isnan(e->water_needed)) {
        hw_step(steps, "water_needed", e->water_needed, "L", "", "%.15g * %.10g", e->blend.needed,
                in[EMERGENCY_VOLUME]);
    }
    if (!isnan(e->share_needed)) {
        hw_step(steps, "share_needed", e->share_needed, "%", "carbonate-set", "100 * %.15g",
                e->blend.needed);
    }
}

void emergency_work(const double in[], struct hw_steps *steps)
{
    struct emergency e = emergency_facts(in);
    hw_step(steps, "tan_n", e.tan_n, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
            in[EMERGENCY_TAN], HW_MOLAR_N,
            basis_molar((enum hw_nitrogen_basis)in[EMERGENCY_BASIS]));
    step_hours(&e, in, steps);
    step_binder(&e, steps);
    step_change(&e, steps);
    step_share(&e, in, steps);
    if (!isnan(e.long_ratio)) {
        long_limit_work(&e.limit, "limit", steps);
        hw_step(steps, "long_ratio", e.long_ratio, "", "", "%.15g / %.15g", e.tan_n,
                e.limit.total_n);
    }
}
