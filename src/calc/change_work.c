/* change_work.c - the working of water changes: the same formulas as text, with the numbers of one
 * row. */
#include "calc/change_rounds.h"

#include <math.h>

static void step_round(const struct change_rounds *change, const double in[],
                       struct hw_steps *steps)
{
    if (isnan(in[CHANGE_TAKE])) {
        hw_step(steps, "exchanged", change->exchanged, "", "", "%.10g / 100", in[CHANGE_SHARE]);
        hw_step(steps, "water", change->water, "L", "", "%.10g * %.10g", change->exchanged,
                in[CHANGE_VOLUME]);
    } else {
        hw_step(steps, "water", change->water, "L", "", "%.10g", in[CHANGE_TAKE]);
        hw_step(steps, "exchanged", change->exchanged, "", "", "%.10g / %.10g", in[CHANGE_TAKE],
                in[CHANGE_VOLUME]);
    }
    hw_step(steps, "kept", change->kept, "", "conservation",
            change->method == HW_CHANGE_BATCH ? "1 - %.10g" : "exp(-%.10g)", change->exchanged);
}

static void step_dose(const struct change_rounds *change, const double in[], struct hw_steps *steps)
{
    if (isnan(change->fresh_needed)) {
        return;
    }
    hw_step(steps, "fresh_needed", change->fresh_needed, "mg/L", "conservation",
            "%.10g + (%.10g - %.10g) / (1 - %.17g)", change->now, in[CHANGE_KEEP], change->now,
            change->kept);
    if (!isnan(change->add)) {
        hw_step(steps, "add", change->add, "mg", "", "(%.10g - %.10g) * %.10g",
                change->fresh_needed, change->fresh, change->water);
    }
    if (!isnan(change->liquid)) {
        hw_step(steps, "add_liquid", change->liquid, "mL", "", "%.10g / %.10g", change->add,
                in[CHANGE_STRENGTH]);
    }
}

static void step_goal(const struct change_rounds *change, const double in[], struct hw_steps *steps)
{
    double now = change->now;
    double fresh = change->fresh;
    double goal = in[CHANGE_GOAL];
    if (!isnan(change->exchange_needed) && goal != now) {
        hw_step(steps, "share_needed", 100 * change->exchange_needed, "%", "conservation",
                change->method == HW_CHANGE_BATCH ? "100 * (%.10g - %.10g) / (%.10g - %.10g)"
                                                  : "100 * log((%.10g - %.10g) / (%.10g - %.10g))",
                now, change->method == HW_CHANGE_BATCH ? goal : fresh,
                change->method == HW_CHANGE_BATCH ? now : goal, fresh);
    }
    if (change->rounds_needed > 0 && change->kept > 0) {
        double exact = log((goal - fresh) / (now - fresh)) / log(change->kept);
        hw_step(steps, "rounds_exact", exact, "", "conservation",
                "log((%.10g - %.10g) / (%.10g - %.10g)) / log(%.17g)", goal, fresh, now, fresh,
                change->kept);
        hw_step(steps, "times_needed", change->rounds_needed, "", "", "%.10g",
                change->rounds_needed);
    }
}

void change_work(const double in[], struct hw_steps *steps)
{
    struct change_rounds change = change_rounds(in);
    step_round(&change, in, steps);
    step_dose(&change, in, steps);
    step_goal(&change, in, steps);
    hw_step(steps, "lowest", change.lowest, "mg/L", "conservation",
            "(%.10g < %.10g ? %.10g : %.10g + (%.10g - %.10g) * %.10g^%d)", change.now,
            change.after, change.now, change.fresh, change.now, change.fresh, change.kept,
            change.rounds);
    hw_step(steps, "after", change.after, "mg/L", "conservation",
            "%.10g + (%.10g - %.10g) * %.10g^%d", change.fresh, change.now, change.fresh,
            change.kept, change.rounds);
}
