/* change_work.c - the working of water changes: the same formulas as text, with the numbers of one
 * row. */
#include "calc/change_rounds.h"

#include <math.h>

/* A change whose size is that of its goal has no round. */
static void step_round(const struct change_rounds *change, const double in[],
                       struct hw_steps *steps)
{
    if (!isnan(in[CHANGE_TAKE])) {
        hw_step(steps, "water", change->water, "L", "", "%.10g", in[CHANGE_TAKE]);
        hw_step(steps, "exchanged", change->exchanged, "", "", "%.10g / %.10g", in[CHANGE_TAKE],
                in[CHANGE_VOLUME]);
    } else {
        hw_step(steps, "exchanged", change->exchanged, "", "", "%.10g / 100", in[CHANGE_SHARE]);
        hw_step(steps, "water", change->water, "L", "", "%.10g * %.10g", change->exchanged,
                in[CHANGE_VOLUME]);
    }
    hw_step(steps, "kept", change->kept, "", "conservation",
            change->method == HW_CHANGE_BATCH ? "1 - %.10g" : "exp(-%.10g)", change->exchanged);
}

/* What the new water must hold stands last when no product is told: so what builds on it is written
 * out in full. */
static void step_dose(const struct change_rounds *change, const double in[], struct hw_steps *steps)
{
    if (!isnan(change->add)) {
        hw_step(steps, "add", change->add, "mg", "conservation",
                "(%.10g + (%.10g - %.10g) / (1 - %.17g) - %.10g) * %.10g", change->now,
                in[CHANGE_KEEP], change->now, change->kept, change->new_level, change->water);
    }
    if (!isnan(change->new_needed)) {
        hw_step(steps, "new_needed", change->new_needed, "mg/L", "conservation",
                "%.10g + (%.10g - %.10g) / (1 - %.17g)", change->now, in[CHANGE_KEEP], change->now,
                change->kept);
    }
    if (!isnan(change->liquid)) {
        hw_step(steps, "add_liquid", change->liquid, "mL", "", "%.10g / %.10g", change->add,
                change->strength);
    }
    if (!isnan(change->mass)) {
        hw_step(steps, "add_mass", change->mass, "g", "", "%.10g / 1000 / %.10g", change->add,
                change->share);
    }
}

static void step_label(const struct change_rounds *change, const double in[],
                       struct hw_steps *steps)
{
    if (!isnan(in[CHANGE_LABEL_LIQUID])) {
        hw_step(steps, "label_strength", change->strength, "mg/mL", "", "%.10g * %.10g / %.10g",
                in[CHANGE_LABEL_RAISES], in[CHANGE_LABEL_PER], in[CHANGE_LABEL_LIQUID]);
    }
    if (!isnan(in[CHANGE_LABEL_MASS])) {
        hw_step(steps, "label_share", change->share, "", "", "%.10g * %.10g / (1000 * %.10g)",
                in[CHANGE_LABEL_RAISES], in[CHANGE_LABEL_PER], in[CHANGE_LABEL_MASS]);
    }
}

static void step_share_needed(const struct change_rounds *change, const double in[],
                              struct hw_steps *steps)
{
    double goal = in[CHANGE_GOAL];
    bool batch = change->method == HW_CHANGE_BATCH;
    if (!isnan(change->exchange_needed) && goal != change->now) {
        hw_step(steps, "share_needed", 100 * change->exchange_needed, "%", "conservation",
                batch ? "100 * (%.10g - %.10g) / (%.10g - %.10g)"
                      : "100 * log((%.10g - %.10g) / (%.10g - %.10g))",
                change->now, batch ? goal : change->new_level, batch ? change->now : goal,
                change->new_level);
    }
}

static void step_rounds_needed(const struct change_rounds *change, const double in[],
                               struct hw_steps *steps)
{
    double now = change->now;
    double new_level = change->new_level;
    double goal = in[CHANGE_GOAL];
    if (change->rounds_needed > 0 && change->kept > 0) {
        double exact = log((goal - new_level) / (now - new_level)) / log(change->kept);
        hw_step(steps, "rounds_exact", exact, "", "conservation",
                "log((%.10g - %.10g) / (%.10g - %.10g)) / log(%.17g)", goal, new_level, now,
                new_level, change->kept);
        hw_step(steps, "times_needed", change->rounds_needed, "", "", "%.10g",
                change->rounds_needed);
    }
}

static void step_levels(const struct change_rounds *change, struct hw_steps *steps)
{
    double now = change->now;
    double new_level = change->new_level;
    hw_step(steps, "lowest", change->lowest, "mg/L", "conservation",
            "(%.10g < %.10g ? %.10g : %.10g + (%.10g - %.10g) * %.10g^%d)", now, change->after, now,
            new_level, now, new_level, change->kept, change->rounds);
    hw_step(steps, "after", change->after, "mg/L", "conservation",
            "%.10g + (%.10g - %.10g) * %.10g^%d", new_level, now, new_level, change->kept,
            change->rounds);
}

void change_work(const double in[], struct hw_steps *steps)
{
    struct change_rounds change = change_rounds(in);
    if (change.by_goal) {
        step_share_needed(&change, in, steps);
        hw_step(steps, "lowest", change.lowest, "mg/L", "", "(%.10g < %.10g ? %.10g : %.10g)",
                change.now, change.after, change.now, change.after);
        hw_step(steps, "after", change.after, "mg/L", "", "%.10g", in[CHANGE_GOAL]);
        return;
    }
    step_round(&change, in, steps);
    step_share_needed(&change, in, steps);
    step_rounds_needed(&change, in, steps);
    step_levels(&change, steps);
    if (!isnan(change.add)) {
        step_label(&change, in, steps);
    }
    step_dose(&change, in, steps);
}
