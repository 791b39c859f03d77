/* binder_dose.c - the reckoning of one dose of an ammonia binder, and its working. */
#include "calc/binder_dose.h"

#include "holdwater/challenge.h"

#include <math.h>

/* One dose of the label is the most that is told, however much ammonia there is. */
static bool is_over_label(const double in[])
{
    return above(in[BINDER_TAN], in[BINDER_LABEL_BINDS]);
}

/* A dose of the label in one of its measures; none, NaN, stays none. */
static double product(const double in[], int measure, double level)
{
    double amount = NAN;
    hw_binder_by_label(in[measure], in[BINDER_LABEL_PER], in[BINDER_LABEL_BINDS], in[BINDER_VOLUME],
                       level, &amount);
    return amount;
}

/* Oxygen that the agent which takes least takes, one mole to one. */
static double mildest_oxygen(double bound, double volume)
{
    double powder = NAN;
    double oxygen = NAN;
    hw_binder_powder(HW_BINDER_SULFONATE, bound, HW_BINDER_EXCESS_MIN, HW_BINDER_PURITY_SHARE_MAX,
                     &powder);
    hw_binder_oxygen_taken(HW_BINDER_SULFONATE, powder, HW_BINDER_PURITY_SHARE_MAX, volume,
                           &oxygen);
    return oxygen;
}

struct binder_dose binder_dose(const double in[])
{
    struct binder_dose dose = {.by_label = (int)in[BINDER_AGENT] == BINDER_BY_LABEL,
                               .amount = NAN,
                               .liquid = NAN,
                               .oxygen = NAN,
                               .label_oxygen = NAN};
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)in[BINDER_BASIS];
    dose.level = is_over_label(in) ? in[BINDER_LABEL_BINDS] : in[BINDER_TAN];
    dose.total_n = nitrogen_to_n(basis, in[BINDER_TAN]);
    dose.level_n = nitrogen_to_n(basis, dose.level);
    dose.bound = dose.level_n * in[BINDER_VOLUME];
    if (dose.by_label) {
        dose.amount = product(in, BINDER_LABEL_MASS, dose.level);
        dose.liquid = product(in, BINDER_LABEL_LIQUID, dose.level);
        dose.label_oxygen = mildest_oxygen(dose.total_n * in[BINDER_VOLUME], in[BINDER_VOLUME]);
    } else {
        enum hw_binder agent = (enum hw_binder)in[BINDER_AGENT];
        hw_binder_powder(agent, dose.bound, in[BINDER_EXCESS], in[BINDER_STRENGTH] / 100,
                         &dose.amount);
        hw_binder_oxygen_taken(agent, dose.amount, in[BINDER_STRENGTH] / 100, in[BINDER_VOLUME],
                               &dose.oxygen);
    }
    return dose;
}

struct binder_bans binder_bans(const struct binder_dose *dose, unsigned medicine)
{
    return (struct binder_bans){
        .copper = (medicine & MEDICINE_COPPER_LOOSE) != 0,
        .dye = (medicine & MEDICINE_DYE) != 0,
        .oxygen = above_limit(dose->oxygen, HW_LIMIT_BINDER_OXYGEN_ALL) ||
                  above_limit(dose->label_oxygen, HW_LIMIT_BINDER_OXYGEN_ALL),
    };
}

static double molar_of(const double in[])
{
    static const double molar[] = {HW_MOLAR_HYDROXYMETHANESULFONATE,
                                   HW_MOLAR_HYDROXYMETHANESULFINATE,
                                   HW_MOLAR_HYDROXYMETHANESULFINATE_DIHYDRATE};
    return molar[(int)in[BINDER_AGENT]];
}

static void step_label(const struct binder_dose *dose, const double in[], struct hw_steps *steps)
{
    bool liquid = !isnan(dose->liquid);
    hw_step(steps, liquid ? "liquid" : "amount", liquid ? dose->liquid : dose->amount,
            liquid ? "mL" : "g", "label-and-law", "%.10g * (%.10g / %.10g) * (%.10g / %.10g)",
            in[liquid ? BINDER_LABEL_LIQUID : BINDER_LABEL_MASS], in[BINDER_VOLUME],
            in[BINDER_LABEL_PER], dose->level, in[BINDER_LABEL_BINDS]);
}

/* Oxygen goes with the agent, and that with the nitrogen bound: strength and hydrate fall out. */
static void step_agent(const struct binder_dose *dose, const double in[], struct hw_steps *steps)
{
    double moles = (int)in[BINDER_AGENT] == HW_BINDER_SULFONATE ? 0.5 : 1;
    hw_step(steps, "oxygen_used", dose->oxygen, "mg/L", "binder-weights",
            "%.10g * %.10g * %.10g*%.10g/%.10g", dose->total_n, in[BINDER_EXCESS], moles,
            HW_MOLAR_OXYGEN, HW_MOLAR_N);
    hw_step(steps, "amount", dose->amount, "g", "binder-weights",
            "%.10g * %.10g/%.10g * %.10g / (%.10g/100) / 1000", dose->bound, molar_of(in),
            HW_MOLAR_N, in[BINDER_EXCESS], in[BINDER_STRENGTH]);
}

void binder_work(const double in[], struct hw_steps *steps)
{
    struct binder_dose dose = binder_dose(in);
    hw_step(steps, is_over_label(in) ? "label_binds_as_n" : "tan_as_n", dose.level_n, "mg/L",
            "iupac-weights", "%.10g * %.10g/%.10g", dose.level, HW_MOLAR_N,
            basis_molar((enum hw_nitrogen_basis)in[BINDER_BASIS]));
    hw_step(steps, "bound", dose.bound, "mg", "", "%.10g * %.10g", dose.level_n, in[BINDER_VOLUME]);
    if (dose.by_label) {
        step_label(&dose, in, steps);
    } else {
        step_agent(&dose, in, steps);
    }
}
