/* challenge_work.c - the working of a challenge dose: the same formulas as text, with the numbers
 * of one row. */
#include "calc/carbonate_work.h"
#include "calc/challenge_dose.h"
#include "calc/free_ammonia.h"

#include <math.h>

static void step_reading(const char *symbol, enum hw_nitrogen_basis basis,
                         const struct challenge_dose *dose, const double in[],
                         struct hw_steps *steps)
{
    hw_step(steps, symbol, dose->reading[basis], "mg/L", "iupac-weights",
            "(%.10g + %.10g/%.10g) * %.10g/%.10g", dose->now_n, dose->nitrogen,
            in[CHALLENGE_VOLUME], basis_molar(basis), HW_MOLAR_N);
}

static void step_nitrogen(const struct challenge_dose *dose, const double in[],
                          struct hw_steps *steps)
{
    double molar = basis_molar(dose->basis);
    hw_step(steps, "target_as_n", dose->total_n, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
            in[CHALLENGE_TARGET], HW_MOLAR_N, molar);
    hw_step(steps, "now_as_n", dose->now_n, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
            in[CHALLENGE_NOW], HW_MOLAR_N, molar);
    hw_step(steps, "nitrogen", dose->nitrogen, "mg", "", "(%.10g - %.10g) * %.10g", dose->total_n,
            dose->now_n, in[CHALLENGE_VOLUME]);
    step_reading("reading_n", HW_NITROGEN_N, dose, in, steps);
    step_reading("reading_nh3", HW_NITROGEN_NH3, dose, in, steps);
    step_reading("reading_nh4", HW_NITROGEN_NH4, dose, in, steps);
}

static void step_uses(const struct challenge_dose *dose, struct hw_steps *steps)
{
    hw_step(steps, "nitrate", dose->nitrate, "mg/L", "nitrification", "%.10g * %.10g/%.10g",
            dose->total_n, HW_MOLAR_NITRATE, HW_MOLAR_N);
    hw_step(steps, "alkalinity_used", dose->alkalinity, "mgCaCO3/L", "nitrification",
            "(2*%.10g + %.10g*%.10g) * (%.10g/2)/%.10g", dose->now_n, challenge_equivalents(dose),
            dose->dose_n, HW_MOLAR_CALCIUM_CARBONATE, HW_MOLAR_N);
    hw_step(steps, "oxygen_used", dose->oxygen, "mg/L", "nitrification", "%.10g * 2*%.10g/%.10g",
            dose->total_n, HW_MOLAR_OXYGEN, HW_MOLAR_N);
}

static void step_free(const struct challenge_dose *dose, const double in[], struct hw_steps *steps)
{
    if (isnan(dose->free_peak)) {
        return;
    }
    if (!isnan(dose->ph_after)) {
        struct carbonate_water water = {in[CHALLENGE_ALKALINITY], dose->now_n, in[CHALLENGE_TEMP],
                                        in[CHALLENGE_SALINITY]};
        step_carbon("carbon", dose->carbon, in[CHALLENGE_PH], &water, steps);
        hw_step(steps, "alkalinity_after", dose->alkalinity_after, "meq/L", "conservation",
                "%.10g + %.10g*%.10g/%.10g", in[CHALLENGE_ALKALINITY], challenge_brings(dose),
                dose->dose_n, HW_MOLAR_N);
        water.alkalinity = dose->alkalinity_after;
        water.tan = dose->total_n;
        step_ph_closed(&(struct carbonate_symbols){"ph_after", "alkalinity_at_ph_after"},
                       dose->ph_after, dose->carbon, &water, steps);
    }
    step_pk_khoo("pka", dose->pk, in[CHALLENGE_TEMP], in[CHALLENGE_SALINITY], steps);
    step_free_at("free_peak", dose->free_peak, dose->total_n, dose->pk, dose->ph_peak, steps);
}

static void step_mass(const struct challenge_dose *dose, const double in[], struct hw_steps *steps)
{
    bool chloride = dose->reagent == CHALLENGE_CHLORIDE;
    hw_step(steps, "mass", dose->mass, "g", "iupac-weights",
            "%.10g * %.10g/(%d*%.10g) / (%.10g/100) / 1000", dose->nitrogen,
            chloride ? HW_MOLAR_AMMONIUM_CHLORIDE : HW_MOLAR_AMMONIUM_SULFATE, chloride ? 1 : 2,
            HW_MOLAR_N, in[CHALLENGE_PURITY]);
}

static void step_liquid(const struct challenge_dose *dose, const double in[],
                        struct hw_steps *steps)
{
    if (dose->reagent == CHALLENGE_SOLUTION) {
        bool as_nh4oh = (int)in[CHALLENGE_STRENGTH_AS] == CHALLENGE_AS_NH4OH;
        hw_step(steps, "nh3_percent", dose->nh3_percent, "%", "iupac-weights",
                "%.10g * %.10g/%.10g", in[CHALLENGE_STRENGTH], as_nh4oh ? HW_MOLAR_NH3 : 1,
                as_nh4oh ? HW_MOLAR_NH4OH : 1);
        hw_step(steps, "density", dose->density, "kg/L", "crc2021", "%.10g", dose->density);
        hw_step(steps, "strength_as_n", dose->strength_n, "g/L", "iupac-weights",
                "10 * %.10g * %.10g * %.10g/%.10g", dose->nh3_percent, dose->density, HW_MOLAR_N,
                HW_MOLAR_NH3);
    } else {
        hw_step(steps, "strength_as_n", dose->strength_n, "g/L", "iupac-weights",
                "%.10g * %.10g/%.10g", in[CHALLENGE_CONCENTRATE_STRENGTH], HW_MOLAR_N,
                basis_molar(dose->basis));
    }
    hw_step(steps, "liquid", dose->liquid, "mL", "", "%.10g / %.10g", dose->nitrogen,
            dose->strength_n);
}

void challenge_work(const double in[], struct hw_steps *steps)
{
    struct challenge_dose dose = challenge_dose(in);
    step_nitrogen(&dose, in, steps);
    step_uses(&dose, steps);
    step_free(&dose, in, steps);
    if (isnan(dose.liquid)) {
        step_mass(&dose, in, steps);
    } else {
        step_liquid(&dose, in, steps);
    }
}
