/* carbonate.c - pH from alkalinity and dissolved carbon, and back. */
#include "holdwater/carbonate.h"

#include "core/ammonia_kernel.h"
#include "core/carbonate_kernel.h"
#include "core/no_answer.h"
#include "core/ph_kernel.h"
#include "core/range.h"
#include "core/seawater_kernel.h"
#include "holdwater/molar.h"

#include <math.h>
#include <stdbool.h>

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

/* ln of what a water's constants are the exponentials of: those of HSO4- and HF on the free scale,
 * the others as in hw_carbonate_water. */
enum { SULFATE, FLUORIDE, K1, K2, KB, KW, KN, GAS, CONSTANTS };

static void find_logarithms(const struct hw_powers *of, double ln[CONSTANTS])
{
    const double ln_10 = 0x1.26bb1bbb55516p+1;
    const double ln_100 = 0x1.26bb1bbb55516p+2;
    double molal = hw_clegg1995_molal_pk(of->temp, of->salinity);
    ln[SULFATE] = hw_ln_sulfate(of);
    ln[FLUORIDE] = hw_ln_fluoride(of);
    ln[K1] = -ln_10 * hw_carbonic_pk1(of);
    ln[K2] = -ln_10 * hw_carbonic_pk2(of);
    ln[KB] = hw_ln_boric(of);
    ln[KW] = hw_ln_water(of);
    ln[KN] = of->ln_share - ln_10 * molal;
    ln[GAS] = hw_ln_carbon_dioxide_solubility(of->kelvin, of->ln_t - ln_100, of->salinity) +
              hw_ln_carbon_dioxide_fugacity(of->kelvin);
}

/* Each logarithm and ratio that several constants need is found once, and the exponentials in one
 * loop, of which a compiler can take two or more at a time. */
int hw_carbonate_water(double temp, double salinity, struct hw_carbonate_water *water)
{
    *water = no_water;
    if (!hw_within(temp, HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX) ||
        !hw_within(salinity, HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    const struct hw_powers of = hw_powers_of(temp, salinity);
    double constant[CONSTANTS];
    find_logarithms(&of, constant);
    for (int i = 0; i < CONSTANTS; i++) {
        constant[i] = hw_exp(constant[i]);
    }
    const struct hw_over_free over = hw_over_free_by(&of, constant[SULFATE], constant[FLUORIDE]);
    water->status = hw_scale_stretched(HW_PH_METER, salinity) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
    water->temp = temp;
    water->salinity = salinity;
    water->density = hw_density_at_68(hw_temp_68(temp), salinity);
    water->meter_over_total = -hw_log10_phi(&of, &over) - -hw_log10(over.total);
    water->k1 = constant[K1];
    water->k2 = constant[K2];
    water->kb = constant[KB];
    water->kw = constant[KW];
    water->kn = constant[KN];
    water->boron = hw_total_boron(salinity);
    water->per_atmosphere = constant[GAS];
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

/* Alkalinity of the water at some H+, which falls with it, whichever way carbon is known; and by
 * how much it falls for each 1/e that H+ rises by: -d(alkalinity)/d(ln h), above 0. */
struct at_h {
    double alkalinity, fall;
};

static struct at_h look_at(const struct water *w, double h)
{
    const struct hw_carbonate_water *at = w->at;
    double borate = at->kb / (at->kb + h);
    double ammonia = at->kn / (at->kn + h);
    double hydroxide = at->kw / h;
    struct at_h found = {at->boron * borate + hydroxide - h + w->nitrogen * ammonia,
                         at->boron * borate * (1.0 - borate) + hydroxide + h +
                             w->nitrogen * ammonia * (1.0 - ammonia)};
    if (isnan(w->carbon)) {
        double bicarbonate = w->free_carbon * at->k1 / h;
        double carbonate = bicarbonate * at->k2 / h;
        found.alkalinity += bicarbonate + 2.0 * carbonate;
        found.fall += bicarbonate + 4.0 * carbonate;
    } else {
        /* Shares of dissolved carbon that are CO2, bicarbonate and carbonate. */
        double part = 1.0 / (h * h + at->k1 * h + at->k1 * at->k2);
        double co2 = h * h * part;
        double bicarbonate = at->k1 * h * part;
        double carbonate = at->k1 * at->k2 * part;
        found.alkalinity += w->carbon * (bicarbonate + 2.0 * carbonate);
        found.fall +=
            w->carbon * (co2 * bicarbonate + bicarbonate * carbonate + 4.0 * co2 * carbonate);
    }
    return found;
}

/* H+ of pH 3 and 12. */
static const double most_acid = 1e-3;
static const double most_base = 1e-12;

static bool has_ph(const struct water *w)
{
    return look_at(w, most_acid).alkalinity < w->alkalinity &&
           look_at(w, most_base).alkalinity > w->alkalinity;
}

/* Newton's steps in ln h, none farther than a sevenfold, each within what is left of pH 3 to 12;
 * one that leads out, which is rare, is halfway in pH instead, if there is a pH at all.
 * (2 + x) / (2 - x) stands for e^x: what that is wrong by is gone with the step. Four or five are
 * enough. */
static int solve(const struct water *w, double *ph)
{
    const double farthest = 1.5;
    const double near = 1e-8; /* an error so small is squared by a last step */
    double acid = most_acid;
    double base = most_base;
    double h = 1e-8;
    double step = farthest;
    for (int i = 0; i < 60 && fabs(step) > near; i++) { /* GCOVR_EXCL_LINE: it never takes 60 */
        struct at_h here = look_at(w, h);
        double over = here.alkalinity - w->alkalinity;
        acid = over < 0 ? h : acid;
        base = over < 0 ? base : h;
        step = over / here.fall;
        step = step > farthest ? farthest : step < -farthest ? -farthest : step;
        double next = h * (2.0 + step) / (2.0 - step);
        bool within = fabs(step) <= near || (next > base && next < acid);
        if (!within && !has_ph(w)) {
            return HW_STATUS_NONE;
        }
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
