/* challenge_dose.c - the reckoning of one challenge dose. */
#include "calc/challenge_dose.h"

#include "calc/free_ammonia.h"

#include <math.h>

static void measure_salt(const double in[], struct challenge_dose *dose)
{
    hw_challenge_salt_mass((enum hw_challenge_salt)dose->reagent, in[CHALLENGE_PURITY] / 100,
                           dose->nitrogen, &dose->mass);
}

/* A strength outside the table of densities leaves NaN. */
static void measure_liquid(const double in[], struct challenge_dose *dose)
{
    if (dose->reagent == CHALLENGE_SOLUTION) {
        bool as_nh4oh = (int)in[CHALLENGE_STRENGTH_AS] == CHALLENGE_AS_NH4OH;
        dose->nh3_percent = in[CHALLENGE_STRENGTH] * (as_nh4oh ? HW_MOLAR_NH3 / HW_MOLAR_NH4OH : 1);
        hw_challenge_solution_density(dose->nh3_percent, &dose->density);
        hw_challenge_solution_nitrogen(dose->nh3_percent, &dose->strength_n);
    } else {
        dose->strength_n = nitrogen_to_n(dose->basis, in[CHALLENGE_CONCENTRATE_STRENGTH]);
    }
    dose->liquid = dose->nitrogen / dose->strength_n;
}

/* What turning all of it into nitrate takes: the dose and what was there before. */
static void nitrify(struct challenge_dose *dose)
{
    double nitrate = (double)NAN;
    double oxygen = (double)NAN;
    double of_now = (double)NAN;
    double of_dose = (double)NAN;
    hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIUM, dose->now_n, &nitrate, &oxygen, &of_now);
    hw_challenge_nitrified(dose->dose_as, dose->dose_n, &nitrate, &oxygen, &of_dose);
    hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIUM, dose->total_n, &dose->nitrate, &dose->oxygen,
                           &dose->alkalinity);
    dose->alkalinity = of_now + of_dose;
}

/* Right after mixing: dissolved carbon stays, ammonia solution brings alkalinity. The volume of the
 * dose is left out. */
static void find_ph(const double in[], struct challenge_dose *dose)
{
    struct hw_carbonate_water water;
    double air = (double)NAN;
    hw_carbonate_water(in[CHALLENGE_TEMP], in[CHALLENGE_SALINITY], &water);
    int before = hw_carbonate_water_read(&water, in[CHALLENGE_PH], in[CHALLENGE_ALKALINITY],
                                         dose->now_n, &dose->carbon, &air);
    dose->readings_odd = before < 0;
    if (before < 0) {
        return;
    }
    dose->fit_stretched = before > 0;
    dose->alkalinity_after =
        in[CHALLENGE_ALKALINITY] + challenge_brings(dose) * dose->dose_n / HW_MOLAR_N;
    hw_carbonate_water_ph(&water, dose->alkalinity_after, dose->carbon, dose->total_n,
                          &dose->ph_peak);
    if (dose->ph_peak >= HW_PH_MIN && dose->ph_peak <= HW_PH_MAX) {
        dose->ph_after = dose->ph_peak;
    }
}

static void find_free(const double in[], struct challenge_dose *dose)
{
    if (!dose->sample) {
        return;
    }
    dose->ph_peak = in[CHALLENGE_PH];
    if (dose->carbonate) {
        find_ph(in, dose);
    }
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[CHALLENGE_TEMP],
                               in[CHALLENGE_SALINITY], &dose->pk);
    dose->fit_stretched = dose->fit_stretched || status > 0;
    dose->free_peak = free_at(dose->ph_peak, dose->pk, dose->total_n);
}

struct challenge_dose challenge_dose(const double in[])
{
    struct challenge_dose dose = {
        .reagent = (int)in[CHALLENGE_REAGENT],
        .basis = (enum hw_nitrogen_basis)in[CHALLENGE_BASIS],
        .nh3_percent = (double)NAN,
        .density = (double)NAN,
        .strength_n = (double)NAN,
        .mass = (double)NAN,
        .liquid = (double)NAN,
        .sample = !isnan(in[CHALLENGE_PH]) && !isnan(in[CHALLENGE_TEMP]) &&
                  !isnan(in[CHALLENGE_SALINITY]),
        .carbon = (double)NAN,
        .alkalinity_after = (double)NAN,
        .ph_after = (double)NAN,
        .ph_peak = (double)NAN,
        .pk = (double)NAN,
        .free_peak = (double)NAN,
    };
    dose.carbonate = dose.sample && !isnan(in[CHALLENGE_ALKALINITY]);
    dose.dose_as =
        dose.reagent == CHALLENGE_SOLUTION ? HW_CHALLENGE_FROM_AMMONIA : HW_CHALLENGE_FROM_AMMONIUM;
    dose.now_n = nitrogen_to_n(dose.basis, in[CHALLENGE_NOW]);
    dose.total_n = nitrogen_to_n(dose.basis, in[CHALLENGE_TARGET]);
    dose.dose_n = dose.total_n - dose.now_n;
    dose.nitrogen = dose.dose_n * in[CHALLENGE_VOLUME];
    for (int basis = HW_NITROGEN_N; basis <= HW_NITROGEN_NH4; basis++) {
        dose.reading[basis] = nitrogen_from_n((enum hw_nitrogen_basis)basis, dose.total_n);
    }
    if (dose.reagent == CHALLENGE_SOLUTION || dose.reagent == CHALLENGE_CONCENTRATE) {
        measure_liquid(in, &dose);
    } else {
        measure_salt(in, &dose);
    }
    nitrify(&dose);
    find_free(in, &dose);
    return dose;
}

double challenge_equivalents(const struct challenge_dose *dose)
{
    return dose->dose_as == HW_CHALLENGE_FROM_AMMONIA ? 1 : 2;
}

double challenge_brings(const struct challenge_dose *dose)
{
    return dose->dose_as == HW_CHALLENGE_FROM_AMMONIA ? 1 : 0;
}
