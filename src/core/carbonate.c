/* carbonate.c - pH from alkalinity and dissolved carbon, and back. */
#include "holdwater/carbonate.h"

#include "core/ammonia_kernel.h"
#include "core/carbonate_kernel.h"
#include "core/no_answer.h"
#include "core/ph_kernel.h"
#include "core/range.h"
#include "core/seawater_kernel.h"
#include "holdwater/molar.h"

/* One water at its temperature and salinity: constants and totals in mol per kg of solution. */
struct water {
    double density, meter_over_total;
    double k1, k2, kb, kw, kn;
    double boron, nitrogen, alkalinity;
    double carbon, free_carbon; /* what is known of it: all, or carbon dioxide; the other is NaN */
};

/* Checks what all questions share and finds the constants. */
static int water_of(double alkalinity, double tan, double temp, double salinity, struct water *w)
{
    if (!hw_within(alkalinity, HW_CARBONATE_ALKALINITY_MIN, HW_CARBONATE_ALKALINITY_MAX) ||
        !hw_within(tan, HW_CARBONATE_TAN_MIN, HW_CARBONATE_TAN_MAX) ||
        !hw_within(temp, HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX) ||
        !hw_within(salinity, HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    double kelvin = hw_kelvin(temp);
    w->density = hw_density_at_68(hw_temp_68(temp), salinity);
    w->meter_over_total = hw_offset_from_free(HW_PH_METER, temp, salinity) -
                          hw_offset_from_free(HW_PH_TOTAL, temp, salinity);
    w->k1 = hw_exp10(-hw_carbonic_pk1(kelvin, salinity));
    w->k2 = hw_exp10(-hw_carbonic_pk2(kelvin, salinity));
    w->kb = hw_exp(hw_ln_boric(kelvin, salinity));
    w->kw = hw_exp(hw_ln_water(kelvin, salinity));
    w->kn = hw_exp10(-hw_clegg1995_pk(HW_PH_TOTAL, temp, salinity));
    w->boron = hw_total_boron(salinity);
    w->nitrogen = tan / HW_MOLAR_N / w->density;
    w->alkalinity = alkalinity / w->density;
    return hw_scale_stretched(HW_PH_METER, salinity) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

/* Alkalinity that is no carbonate, at h mol/kg of H+. */
static double other_alkalinity(const struct water *w, double h)
{
    return w->boron * w->kb / (w->kb + h) + w->kw / h - h + w->nitrogen * w->kn / (w->kn + h);
}

/* Equivalents of alkalinity in a mole of dissolved carbon. */
static double equivalents(const struct water *w, double h)
{
    return (w->k1 * h + 2.0 * w->k1 * w->k2) / (h * h + w->k1 * h + w->k1 * w->k2);
}

/* Alkalinity of the water at h mol/kg of H+; it falls with h, whichever way carbon is known. */
static double alkalinity_at(const struct water *w, double h)
{
    double carbonate = isnan(w->carbon) ? w->free_carbon * w->k1 / h * (1.0 + 2.0 * w->k2 / h)
                                        : w->carbon * equivalents(w, h);
    return other_alkalinity(w, h) + carbonate;
}

/* How much of it falls for each 1/e that h rises by: -d(alkalinity)/d(ln h), above 0. */
static double alkalinity_fall(const struct water *w, double h)
{
    double borate = w->kb / (w->kb + h);
    double ammonia = w->kn / (w->kn + h);
    double fall = w->boron * borate * (1.0 - borate) + w->kw / h + h +
                  w->nitrogen * ammonia * (1.0 - ammonia);
    if (isnan(w->carbon)) {
        return fall + w->free_carbon * w->k1 / h * (1.0 + 4.0 * w->k2 / h);
    }
    /* Shares of dissolved carbon that are CO2, bicarbonate and carbonate. */
    double all = h * h + w->k1 * h + w->k1 * w->k2;
    double co2 = h * h / all;
    double bicarbonate = w->k1 * h / all;
    double carbonate = w->k1 * w->k2 / all;
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
    for (int i = 0; i < 60 && fabs(step) > near; i++) {
        double over = alkalinity_at(w, h) - w->alkalinity;
        acid = over < 0 ? h : acid;
        base = over < 0 ? base : h;
        step = over / alkalinity_fall(w, h);
        double next = fabs(step) < farthest ? h * hw_exp(step) : acid;
        bool within = fabs(step) <= near || (next > base && next < acid);
        h = within ? next : sqrt(acid * base);
    }
    *ph = w->meter_over_total - hw_log10(h);
    return HW_STATUS_OK;
}

/* A water whose pH was read: h and dissolved carbon, mol/kg. */
struct reading {
    struct water water;
    double h, carbon;
};

static int read_water(double ph, double alkalinity, double tan, double temp, double salinity,
                      struct reading *r)
{
    int status = water_of(alkalinity, tan, temp, salinity, &r->water);
    if (status < 0 || !hw_within(ph, HW_PH_MIN, HW_PH_MAX)) {
        return HW_STATUS_RANGE;
    }
    r->h = hw_exp10(-(ph - r->water.meter_over_total));
    double left = r->water.alkalinity - other_alkalinity(&r->water, r->h);
    r->carbon = left / equivalents(&r->water, r->h);
    return left > 0.0 ? status : HW_STATUS_NONE;
}

/* Carbon dioxide that one atmosphere of it dissolves, mol/kg. */
static double per_atmosphere(double temp, double salinity)
{
    double kelvin = hw_kelvin(temp);
    return hw_carbon_dioxide_solubility(kelvin, salinity) * hw_carbon_dioxide_fugacity(kelvin);
}

int hw_carbonate_constants(double temp, double salinity, struct hw_carbonate_constants *constants)
{
    struct water w;
    int status = water_of(HW_CARBONATE_ALKALINITY_MIN, HW_CARBONATE_TAN_MIN, temp, salinity, &w);
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
        constants->per_atmosphere = per_atmosphere(temp, salinity);
        constants->density = w.density / 1000.0;
        constants->meter_over_total = w.meter_over_total;
    }
    return status;
}

int hw_carbonate_carbon(double ph, double alkalinity, double tan, double temp, double salinity,
                        double *carbon)
{
    struct reading r;
    int status = read_water(ph, alkalinity, tan, temp, salinity, &r);
    *carbon = status < 0 ? HW_NO_ANSWER : r.carbon * r.water.density;
    return status;
}

int hw_carbonate_ph(double alkalinity, double carbon, double tan, double temp, double salinity,
                    double *ph)
{
    struct water w;
    int status = water_of(alkalinity, tan, temp, salinity, &w);
    *ph = HW_NO_ANSWER;
    if (status < 0 || !hw_within(carbon, HW_CARBONATE_CARBON_MIN, HW_CARBONATE_CARBON_MAX)) {
        return HW_STATUS_RANGE;
    }
    w.carbon = carbon / w.density;
    w.free_carbon = HW_NO_ANSWER;
    int solved = solve(&w, ph);
    return solved < 0 ? solved : status;
}

int hw_carbonate_ph_in_air(double alkalinity, double air, double tan, double temp, double salinity,
                           double *ph)
{
    struct water w;
    int status = water_of(alkalinity, tan, temp, salinity, &w);
    *ph = HW_NO_ANSWER;
    if (status < 0 || !hw_within(air, HW_CARBONATE_AIR_MIN, HW_CARBONATE_AIR_MAX)) {
        return HW_STATUS_RANGE;
    }
    w.carbon = HW_NO_ANSWER;
    w.free_carbon = per_atmosphere(temp, salinity) * air * 1e-6;
    (void)solve(&w, ph); /* alkalinity and air in range: the pH lies well within 3 to 12 */
    return status;
}

int hw_carbonate_air(double ph, double alkalinity, double tan, double temp, double salinity,
                     double *air)
{
    struct reading r;
    int status = read_water(ph, alkalinity, tan, temp, salinity, &r);
    *air = HW_NO_ANSWER;
    if (status >= 0) {
        const struct water *w = &r.water;
        double share = r.h * r.h / (r.h * r.h + w->k1 * r.h + w->k1 * w->k2);
        *air = r.carbon * share / per_atmosphere(temp, salinity) * 1e6;
    }
    return status;
}
