/* buffer_dose.c - the reckoning of one dose of buffer, and its working. */
#include "calc/buffer_dose.h"

#include <math.h>

/* Carbon dioxide of open air, uatm. */
static const double open_air = 420;

/* Free ammonia of a total at a pH, mg/L as N. */
static double free_at(double ph, double pk, double tan)
{
    double fraction = NAN;
    hw_ammonia_fraction_at_pk(ph, pk, &fraction);
    return fraction * tan;
}

static void find_free(struct buffer_dose *dose, const double in[])
{
    double pk_1989 = NAN;
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[TEMP], in[SALINITY], &dose->pk);
    dose->stretched = dose->stretched || status > 0;
    hw_ammonia_pk(HW_AMMONIA_EPA1989, HW_PH_METER, in[TEMP], in[SALINITY], &pk_1989);
    double highest = fmax(in[PH], fmax(dose->ph_after, dose->ph_aired));
    dose->free_before = free_at(in[PH], dose->pk, in[TAN]);
    dose->free_after = free_at(dose->ph_after, dose->pk, in[TAN]);
    dose->free_aired = free_at(dose->ph_aired, dose->pk, in[TAN]);
    dose->highest_nh3 = nitrogen_from_n(HW_NITROGEN_NH3, free_at(highest, pk_1989, in[TAN]));
}

/* Right after mixing, and in balance with open air. The volume of the salt is left out. */
static void find_states(struct buffer_dose *dose, const double in[])
{
    double tan = isnan(in[TAN]) ? 0 : in[TAN];
    int status =
        hw_carbonate_carbon(in[PH], in[ALKALINITY], tan, in[TEMP], in[SALINITY], &dose->carbon);
    if (status < 0) {
        dose->refusal = PH_NOT_ALKALINITY;
        return;
    }
    dose->stretched = status > 0;
    dose->carbon_after = dose->carbon + (in[TARGET] - in[ALKALINITY]) * dose->carbon_per_eq;
    hw_carbonate_ph(in[TARGET], dose->carbon_after, tan, in[TEMP], in[SALINITY], &dose->ph_after);
    hw_carbonate_ph_in_air(in[TARGET], open_air, tan, in[TEMP], in[SALINITY], &dose->ph_aired);
    if (!(dose->ph_after <= HW_PH_MAX)) {
        dose->refusal = OVER_PH;
        return;
    }
    if (!isnan(in[TAN])) {
        find_free(dose, in);
    }
}

struct buffer_dose buffer_dose(const double in[])
{
    struct buffer_dose dose = {
        .source = (enum hw_buffer_source)in[SOURCE],
        .states = !isnan(in[PH]) && !isnan(in[TEMP]) && !isnan(in[SALINITY]),
        .carbon = NAN,
        .carbon_after = NAN,
        .ph_after = NAN,
        .ph_aired = NAN,
        .pk = NAN,
        .free_before = NAN,
        .free_after = NAN,
        .free_aired = NAN,
        .highest_nh3 = NAN,
    };
    dose.carbon_per_eq = dose.source == HW_BUFFER_BICARBONATE ? 1 : 0.5;
    int status = hw_buffer_mass(dose.source, in[VOLUME], in[ALKALINITY], in[TARGET], &dose.mass);
    if (status < 0) {
        dose.refusal = TARGET_BELOW;
    } else if (dose.states) {
        find_states(&dose, in);
    }
    return dose;
}

static void step_free(const char *symbol, double value, double ph, double pk, double tan,
                      struct hw_steps *steps)
{
    hw_step(steps, symbol, value, "mg/L", "khoo1977", "%.10g / (1 + 10^(%.10g - %.10g))", tan, pk,
            ph);
}

static void step_states(const struct buffer_dose *dose, const double in[], struct hw_steps *steps)
{
    hw_step(steps, "carbon", dose->carbon, "mmol/L", "carbonate-set", "%.10g", dose->carbon);
    hw_step(steps, "carbon_after", dose->carbon_after, "mmol/L", "conservation",
            "%.10g + (%.10g - %.10g) * %.10g", dose->carbon, in[TARGET], in[ALKALINITY],
            dose->carbon_per_eq);
    hw_step(steps, "ph_after", dose->ph_after, "", "carbonate-set", "%.10g", dose->ph_after);
    hw_step(steps, "ph_aired", dose->ph_aired, "", "carbonate-set", "%.10g", dose->ph_aired);
    if (!isnan(in[TAN])) {
        hw_step(steps, "pk", dose->pk, "", "khoo1977", "%.10g", dose->pk);
        step_free("free_before", dose->free_before, in[PH], dose->pk, in[TAN], steps);
        step_free("free_after", dose->free_after, dose->ph_after, dose->pk, in[TAN], steps);
        step_free("free_aired", dose->free_aired, dose->ph_aired, dose->pk, in[TAN], steps);
    }
}

void buffer_work(const double in[], struct hw_steps *steps)
{
    struct buffer_dose dose = buffer_dose(in);
    if (dose.states) {
        step_states(&dose, in, steps);
    }
    hw_step(steps, "mass", dose.mass, "g", "iupac-weights", "(%.10g - %.10g) * %.10g * %.10g/1000",
            in[TARGET], in[ALKALINITY], in[VOLUME],
            dose.source == HW_BUFFER_BICARBONATE ? HW_MOLAR_SODIUM_BICARBONATE
                                                 : HW_MOLAR_SODIUM_CARBONATE / 2);
}
