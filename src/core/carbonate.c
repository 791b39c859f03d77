/* carbonate.c - pH from alkalinity and dissolved carbon, and back. */
#include "holdwater/carbonate.h"

#include "core/ammonia_kernel.h"
#include "core/carbonate_kernel.h"
#include "core/no_answer.h"
#include "core/ph_kernel.h"
#include "core/range.h"
#include "core/seawater_kernel.h"
#include "holdwater/molar.h"

/* What is in one water, mol per kg of solution. */
struct water {
    const struct hw_carbonate_water *at; /* its constants */
    double nitrogen, alkalinity;
    double carbon, free_carbon; /* what is known of it: all, or carbon dioxide; the other is NaN */
};

static const struct hw_carbonate_water no_water = {
    HW_STATUS_RANGE, HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
    HW_NO_ANSWER,    HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
};

/* Each logarithm and ratio that several constants need is found once. */
int hw_carbonate_water(double temp, double salinity, struct hw_carbonate_water *water)
{
    *water = no_water;
    if (!hw_within(temp, HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX) ||
        !hw_within(salinity, HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    const struct hw_powers of = hw_powers_of(temp, salinity);
    const struct hw_over_free over = hw_over_free_of(&of);
    water->status = hw_scale_stretched(HW_PH_METER, salinity) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
    water->temp = temp;
    water->salinity = salinity;
    water->density = hw_density_at_68(hw_temp_68(temp), salinity);
    water->meter_over_total = -hw_log10_phi(&of, &over) - -hw_log10(over.total);
    water->k1 = hw_exp10(-hw_carbonic_pk1(&of));
    water->k2 = hw_exp10(-hw_carbonic_pk2(&of));
    water->kb = hw_exp(hw_ln_boric(&of));
    water->kw = hw_exp(hw_ln_water(&of));
    water->kn = hw_exp10(-hw_clegg1995_pk(HW_PH_TOTAL, temp, salinity));
    water->boron = hw_total_boron(salinity);
    water->per_atmosphere =
        hw_carbon_dioxide_solubility(of.kelvin, salinity) * hw_carbon_dioxide_fugacity(of.kelvin);
    return water->status;
}

/* Checks what all questions share. */
static int fill(const struct hw_carbonate_water *at, double alkalinity, double tan, struct water *w)
{
    if (at->status < 0 ||
        !hw_within(alkalinity, HW_CARBONATE_ALKALINITY_MIN, HW_CARBONATE_ALKALINITY_MAX) ||
        !hw_within(tan, HW_CARBONATE_TAN_MIN, HW_CARBONATE_TAN_MAX)) {
        return HW_STATUS_RANGE;
    }
    w->at = at;
    w->nitrogen = tan / HW_MOLAR_N / at->density;
    w->alkalinity = alkalinity / at->density;
    return at->status;
}

/* Alkalinity that is no carbonate, at h mol/kg of H+. */
static double other_alkalinity(const struct water *w, double h)
{
    return w->at->boron * w->at->kb / (w->at->kb + h) + w->at->kw / h - h +
           w->nitrogen * w->at->kn / (w->at->kn + h);
}

/* Equivalents of alkalinity in a mole of dissolved carbon. */
static double equivalents(const struct water *w, double h)
{
    return (w->at->k1 * h + 2.0 * w->at->k1 * w->at->k2) /
           (h * h + w->at->k1 * h + w->at->k1 * w->at->k2);
}

/* Alkalinity of the water at h mol/kg of H+; it falls with h, whichever way carbon is known. */
static double alkalinity_at(const struct water *w, double h)
{
    double carbonate = isnan(w->carbon)
                           ? w->free_carbon * w->at->k1 / h * (1.0 + 2.0 * w->at->k2 / h)
                           : w->carbon * equivalents(w, h);
    return other_alkalinity(w, h) + carbonate;
}

/* How much of it falls for each 1/e that h rises by: -d(alkalinity)/d(ln h), above 0. */
static double alkalinity_fall(const struct water *w, double h)
{
    double borate = w->at->kb / (w->at->kb + h);
    double ammonia = w->at->kn / (w->at->kn + h);
    double fall = w->at->boron * borate * (1.0 - borate) + w->at->kw / h + h +
                  w->nitrogen * ammonia * (1.0 - ammonia);
    if (isnan(w->carbon)) {
        return fall + w->free_carbon * w->at->k1 / h * (1.0 + 4.0 * w->at->k2 / h);
    }
    /* Shares of dissolved carbon that are CO2, bicarbonate and carbonate. */
    double all = h * h + w->at->k1 * h + w->at->k1 * w->at->k2;
    double co2 = h * h / all;
    double bicarbonate = w->at->k1 * h / all;
    double carbonate = w->at->k1 * w->at->k2 / all;
    return fall + w->carbon * (co2 * bicarbonate + bicarbonate * carbonate + 4.0 * co2 * carbonate);
}

/* Newton's steps in ln h, each within what is left of pH 3 to 12; one that leads out, or farther
 * than a hundredfold, is halfway in pH instead. Four to eight are enough. */
static int solve(const struct water *w, double *ph)
{
    const double farthest = 4.6;
    const double near = 1e-8; /* an error so small is squared by a last step */
    double acid = 1e-3;
    double base = 1e-12;
    if (!(alkalinity_at(w, acid) < w->alkalinity && alkalinity_at(w, base) > w->alkalinity)) {
        return HW_STATUS_NONE;
    }
    double h = 1e-8;
    double step = farthest;
    for (int i = 0; i < 60 && fabs(step) > near; i++) { /* GCOVR_EXCL_LINE: it never takes 60 */
        double over = alkalinity_at(w, h) - w->alkalinity;
        acid = over < 0 ? h : acid;
        base = over < 0 ? base : h;
        step = over / alkalinity_fall(w, h);
        double next = fabs(step) < farthest ? h * hw_exp(step) : acid;
        bool within = fabs(step) <= near || (next > base && next < acid);
        h = within ? next : sqrt(acid * base);
    }
    *ph = w->at->meter_over_total - hw_log10(h);
    return HW_STATUS_OK;
}

int hw_carbonate_water_read(const struct hw_carbonate_water *water, double ph, double alkalinity,
                            double tan, double *carbon, double *air)
{
    struct water w;
    int status = fill(water, alkalinity, tan, &w);
    *carbon = *air = HW_NO_ANSWER;
    if (status < 0 || !hw_within(ph, HW_PH_MIN, HW_PH_MAX)) {
        return HW_STATUS_RANGE;
    }
    double h = hw_exp10(-(ph - water->meter_over_total));
    double left = w.alkalinity - other_alkalinity(&w, h);
    if (!(left > 0.0)) {
        return HW_STATUS_NONE;
    }
    double in_all = left / equivalents(&w, h);
    double share = h * h / (h * h + water->k1 * h + water->k1 * water->k2);
    *carbon = in_all * water->density;
    *air = in_all * share / water->per_atmosphere * 1e6;
    return status;
}

int hw_carbonate_water_ph(const struct hw_carbonate_water *water, double alkalinity, double carbon,
                          double tan, double *ph)
{
    struct water w;
    int status = fill(water, alkalinity, tan, &w);
    *ph = HW_NO_ANSWER;
    if (status < 0 || !hw_within(carbon, HW_CARBONATE_CARBON_MIN, HW_CARBONATE_CARBON_MAX)) {
        return HW_STATUS_RANGE;
    }
    w.carbon = carbon / water->density;
    w.free_carbon = HW_NO_ANSWER;
    int solved = solve(&w, ph);
    return solved < 0 ? solved : status;
}

int hw_carbonate_water_ph_in_air(const struct hw_carbonate_water *water, double alkalinity,
                                 double air, double tan, double *ph)
{
    struct water w;
    int status = fill(water, alkalinity, tan, &w);
    *ph = HW_NO_ANSWER;
    if (status < 0 || !hw_within(air, HW_CARBONATE_AIR_MIN, HW_CARBONATE_AIR_MAX)) {
        return HW_STATUS_RANGE;
    }
    w.carbon = HW_NO_ANSWER;
    w.free_carbon = water->per_atmosphere * air * 1e-6;
    (void)solve(&w, ph); /* alkalinity and air in range: the pH lies well within 3 to 12 */
    return status;
}

/* --- One question of one water ---------------------------------------------------------------- */

int hw_carbonate_constants(double temp, double salinity, struct hw_carbonate_constants *constants)
{
    struct hw_carbonate_water w;
    int status = hw_carbonate_water(temp, salinity, &w);
    *constants = (struct hw_carbonate_constants){HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
                                                 HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
                                                 HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER};
    if (status >= 0) {
        constants->pk1 = -hw_log10(w.k1);
        constants->pk2 = -hw_log10(w.k2);
        constants->pkb = -hw_log10(w.kb);
        constants->pkw = -hw_log10(w.kw);
        constants->pkn = -hw_log10(w.kn);
        constants->boron = w.boron;
        constants->per_atmosphere = w.per_atmosphere;
        constants->density = w.density / 1000.0;
        constants->meter_over_total = w.meter_over_total;
    }
    return status;
}

int hw_carbonate_carbon(double ph, double alkalinity, double tan, double temp, double salinity,
                        double *carbon)
{
    struct hw_carbonate_water w;
    double air = HW_NO_ANSWER;
    (void)hw_carbonate_water(temp, salinity, &w);
    return hw_carbonate_water_read(&w, ph, alkalinity, tan, carbon, &air);
}

int hw_carbonate_ph(double alkalinity, double carbon, double tan, double temp, double salinity,
                    double *ph)
{
    struct hw_carbonate_water w;
    (void)hw_carbonate_water(temp, salinity, &w);
    return hw_carbonate_water_ph(&w, alkalinity, carbon, tan, ph);
}

int hw_carbonate_ph_in_air(double alkalinity, double air, double tan, double temp, double salinity,
                           double *ph)
{
    struct hw_carbonate_water w;
    (void)hw_carbonate_water(temp, salinity, &w);
    return hw_carbonate_water_ph_in_air(&w, alkalinity, air, tan, ph);
}

int hw_carbonate_air(double ph, double alkalinity, double tan, double temp, double salinity,
                     double *air)
{
    struct hw_carbonate_water w;
    double carbon = HW_NO_ANSWER;
    (void)hw_carbonate_water(temp, salinity, &w);
    return hw_carbonate_water_read(&w, ph, alkalinity, tan, &carbon, air);
}
