/* challenge_dose.c - the reckoning of one challenge dose. */
#include "calc/challenge_dose.h"

#include "holdwater/seawater.h"

#include <math.h>

static void measure_salt(const double in[], struct challenge_dose *dose)
{
    hw_ammonium_salt_mass((enum hw_ammonium_salt)dose->source, in[PURITY], dose->nitrogen,
                          &dose->mass);
}

/* A strength outside the table of densities leaves NaN. */
static void measure_liquid(const double in[], struct challenge_dose *dose)
{
    if (dose->source == SOLUTION) {
        bool as_nh4oh = (int)in[STRENGTH_AS] == AS_NH4OH;
        dose->nh3_percent = in[STRENGTH] * (as_nh4oh ? HW_MOLAR_NH3 / HW_MOLAR_NH4OH : 1);
        hw_ammonia_solution_density(dose->nh3_percent, &dose->density);
        hw_ammonia_solution_nitrogen(dose->nh3_percent, &dose->strength_n);
    } else {
        dose->strength_n = nitrogen_to_n(dose->basis, in[CONCENTRATE_STRENGTH]);
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
    hw_nitrification(HW_NITRIFIED_AMMONIUM, dose->now_n, &nitrate, &oxygen, &of_now);
    hw_nitrification(dose->dose_as, dose->dose_n, &nitrate, &oxygen, &of_dose);
    hw_nitrification(HW_NITRIFIED_AMMONIUM, dose->total_n, &dose->nitrate, &dose->oxygen,
                     &dose->alkalinity);
    dose->alkalinity = of_now + of_dose;
}

static void find_free(const double in[], struct challenge_dose *dose)
{
    double fraction = (double)NAN;
    if (isnan(in[PH]) || isnan(in[TEMP]) || isnan(in[SALINITY])) {
        return;
    }
    hw_seawater_ionic_strength(in[SALINITY], &dose->ionic);
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[TEMP], in[SALINITY], &dose->pk);
    dose->fit_stretched = status > 0;
    hw_ammonia_fraction_at_pk(in[PH], dose->pk, &fraction);
    dose->free_peak = fraction * dose->total_n;
}

struct challenge_dose challenge_dose(const double in[])
{
    struct challenge_dose dose = {
        .source = (int)in[SOURCE],
        .basis = (enum hw_nitrogen_basis)in[BASIS],
        .nh3_percent = (double)NAN,
        .density = (double)NAN,
        .strength_n = (double)NAN,
        .mass = (double)NAN,
        .liquid = (double)NAN,
        .ionic = (double)NAN,
        .pk = (double)NAN,
        .free_peak = (double)NAN,
    };
    dose.dose_as = dose.source == SOLUTION ? HW_NITRIFIED_AMMONIA : HW_NITRIFIED_AMMONIUM;
    dose.now_n = nitrogen_to_n(dose.basis, in[NOW]);
    dose.total_n = nitrogen_to_n(dose.basis, in[TARGET]);
    dose.dose_n = dose.total_n - dose.now_n;
    dose.nitrogen = dose.dose_n * in[VOLUME];
    dose.reading = nitrogen_from_n(dose.basis, dose.total_n);
    if (dose.source == SOLUTION || dose.source == CONCENTRATE) {
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
    return dose->dose_as == HW_NITRIFIED_AMMONIA ? 1 : 2;
}
