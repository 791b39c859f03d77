/* buffer_dose.c - the reckoning of one dose of buffer, and its working. */
#include "calc/buffer_dose.h"

#include "calc/ammonia_hour.h"
#include "calc/carbonate_work.h"
#include "calc/free_ammonia.h"
#include "calc/long_limit.h"

#include <math.h>

/* Carbon dioxide of open air, uatm. */
static const double open_air = 420;

/* More free ammonia than fish are said to bear for an hour. */
static bool passes_hour(double ph, const double in[])
{
    struct ammonia_hour hour =
        ammonia_hour(in[BUFFER_TAN], ph, in[BUFFER_TEMP], in[BUFFER_SALINITY]);
    return above(hour.salt_ratio, 1) || above(hour.fresh_ratio, 1);
}

static void find_free(struct buffer_dose *dose, const double in[])
{
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[BUFFER_TEMP],
                               in[BUFFER_SALINITY], &dose->pk);
    dose->stretched = dose->stretched || status > 0;
    double highest = fmax(in[BUFFER_PH], fmax(dose->ph_after, dose->ph_aired));
    struct long_limit limit = long_limit(highest, in[BUFFER_TEMP], in[BUFFER_SALINITY]);
    dose->over_salt = above(in[BUFFER_TAN], limit.salt_n);
    dose->over_fresh = above(in[BUFFER_TAN], limit.fresh_n);
    dose->free_before = free_at(in[BUFFER_PH], dose->pk, in[BUFFER_TAN]);
    dose->free_after = free_at(dose->ph_after, dose->pk, in[BUFFER_TAN]);
    dose->free_aired = free_at(dose->ph_aired, dose->pk, in[BUFFER_TAN]);
    if (dose->mass > 0 && passes_hour(fmax(dose->ph_after, dose->ph_aired), in)) {
        dose->refusal = BUFFER_OVER_HOUR;
    }
}

/* Right after mixing, and in balance with open air. The volume of the salt is left out. */
static void find_states(struct buffer_dose *dose, const double in[])
{
    double tan = isnan(in[BUFFER_TAN]) ? 0 : in[BUFFER_TAN];
    struct hw_carbonate_water water;
    double air = NAN;
    hw_carbonate_water(in[BUFFER_TEMP], in[BUFFER_SALINITY], &water);
    int status = hw_carbonate_water_read(&water, in[BUFFER_PH], in[BUFFER_ALKALINITY], tan,
                                         &dose->carbon, &air);
    if (status < 0) {
        dose->refusal = BUFFER_PH_NOT_ALKALINITY;
        return;
    }
    dose->stretched = status > 0;
    dose->carbon_after =
        dose->carbon + (in[BUFFER_TARGET] - in[BUFFER_ALKALINITY]) * dose->carbon_per_eq;
    hw_carbonate_water_ph(&water, in[BUFFER_TARGET], dose->carbon_after, tan, &dose->ph_after);
    hw_carbonate_water_ph_in_air(&water, in[BUFFER_TARGET], open_air, tan, &dose->ph_aired);
    if (!(dose->ph_after <= HW_PH_MAX)) {
        dose->refusal = BUFFER_OVER_PH;
        return;
    }
    if (!isnan(in[BUFFER_TAN])) {
        find_free(dose, in);
    }
}

struct buffer_dose buffer_dose(const double in[])
{
    struct buffer_dose dose = {
        .reagent = (enum hw_buffer_source)in[BUFFER_REAGENT],
        .states = !isnan(in[BUFFER_PH]) && !isnan(in[BUFFER_TEMP]) && !isnan(in[BUFFER_SALINITY]),
        .carbon = NAN,
        .carbon_after = NAN,
        .ph_after = NAN,
        .ph_aired = NAN,
        .pk = NAN,
        .free_before = NAN,
        .free_after = NAN,
        .free_aired = NAN,
    };
    dose.carbon_per_eq = dose.reagent == HW_BUFFER_BICARBONATE ? 1 : 0.5;
    int status = hw_buffer_mass(dose.reagent, in[BUFFER_VOLUME], in[BUFFER_ALKALINITY],
                                in[BUFFER_TARGET], &dose.mass);
    if (status < 0) {
        dose.refusal = BUFFER_TARGET_BELOW;
    } else if (dose.states) {
        find_states(&dose, in);
    } else if (in[BUFFER_TAN] > 0 && dose.mass > 0) {
        dose.refusal = BUFFER_UNSEEN;
    }
    return dose;
}

static void step_states(const struct buffer_dose *dose, const double in[], struct hw_steps *steps)
{
    struct carbonate_water water = {in[BUFFER_ALKALINITY],
                                    isnan(in[BUFFER_TAN]) ? 0 : in[BUFFER_TAN], in[BUFFER_TEMP],
                                    in[BUFFER_SALINITY]};
    step_carbon("carbon", dose->carbon, in[BUFFER_PH], &water, steps);
    hw_step(steps, "carbon_after", dose->carbon_after, "mmol/L", "conservation",
            "%.10g + (%.10g - %.10g) * %.10g", dose->carbon, in[BUFFER_TARGET],
            in[BUFFER_ALKALINITY], dose->carbon_per_eq);
    water.alkalinity = in[BUFFER_TARGET];
    step_ph_closed(&(struct carbonate_symbols){"ph_after", "alkalinity_at_ph_after"},
                   dose->ph_after, dose->carbon_after, &water, steps);
    step_ph_in_air(&(struct carbonate_symbols){"ph_aired", "alkalinity_at_ph_aired"},
                   dose->ph_aired, open_air, &water, steps);
    if (!isnan(in[BUFFER_TAN])) {
        step_pk_khoo("pk", dose->pk, in[BUFFER_TEMP], in[BUFFER_SALINITY], steps);
        step_free_at("free_before", dose->free_before, in[BUFFER_TAN], dose->pk, in[BUFFER_PH],
                     steps);
        step_free_at("free_after", dose->free_after, in[BUFFER_TAN], dose->pk, dose->ph_after,
                     steps);
        step_free_at("free_aired", dose->free_aired, in[BUFFER_TAN], dose->pk, dose->ph_aired,
                     steps);
    }
}

void buffer_work(const double in[], struct hw_steps *steps)
{
    struct buffer_dose dose = buffer_dose(in);
    if (dose.states) {
        step_states(&dose, in, steps);
    }
    hw_step(steps, "mass", dose.mass, "g", "iupac-weights", "(%.10g - %.10g) * %.10g * %.10g/1000",
            in[BUFFER_TARGET], in[BUFFER_ALKALINITY], in[BUFFER_VOLUME],
            dose.reagent == HW_BUFFER_BICARBONATE ? HW_MOLAR_SODIUM_BICARBONATE
                                                  : HW_MOLAR_SODIUM_CARBONATE / 2);
}
