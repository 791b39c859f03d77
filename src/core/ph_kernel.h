/* ph_kernel.h - the bodies behind holdwater/ph.h, shared by the scalar functions and by ammonia.
 * Arguments are in range; nothing is checked here. Temperatures `kelvin` are t + 273.15. */
#ifndef HOLDWATER_PH_KERNEL_H
#define HOLDWATER_PH_KERNEL_H

#include "core/elementary.h"
#include "core/seawater_kernel.h"
#include "holdwater/ph.h"

#include <math.h>

static inline double hw_kelvin(double temp)
{
    return temp + 273.15;
}

/* What the formulas of one water have in common. */
struct hw_powers {
    double temp, kelvin, ln_t;
    double salinity, root;          /* root: its square root */
    double strength, strength_root; /* ionic, mol per kg of water */
    double ln_share;                /* ln of the kilograms of water in one of solution (DOE 1994) */
};

static inline struct hw_powers hw_powers_of(double temp, double salinity)
{
    double strength = hw_ionic_strength(salinity);
    struct hw_powers powers = {
        temp,     hw_kelvin(temp), hw_log(hw_kelvin(temp)),          salinity, sqrt(salinity),
        strength, sqrt(strength),  hw_log(1.0 - 0.001005 * salinity)};
    return powers;
}

/* Total sulfate, mol per kg of solution (Morris & Riley 1966). */
static inline double hw_total_sulfate(double salinity)
{
    return (0.14 / 96.062) * salinity / 1.80655;
}

/* Total fluoride, mol per kg of solution (Riley 1965). */
static inline double hw_total_fluoride(double salinity)
{
    return (0.000067 / 18.998) * salinity / 1.80655;
}

/* ln of the constant of HSO4- on the free scale, mol per kg of solution (Dickson 1990). */
static inline double hw_ln_sulfate(const struct hw_powers *of)
{
    /* ln K = pure water + a I^0.5 + b I + c I^1.5 + d I^2. */
    double pure = -4276.1 / of->kelvin + 141.328 - 23.093 * of->ln_t;
    double a = -13856.0 / of->kelvin + 324.57 - 47.986 * of->ln_t;
    double b = 35474.0 / of->kelvin - 771.54 + 114.723 * of->ln_t;
    double c = -2698.0 / of->kelvin;
    double d = 1776.0 / of->kelvin;
    double root = of->strength_root;
    return pure + root * (a + root * (b + root * (c + root * d))) + of->ln_share;
}

static inline double hw_sulfate_constant(const struct hw_powers *of)
{
    return hw_exp(hw_ln_sulfate(of));
}

/* ln of the constant of HF on the free scale, mol per kg of solution (Dickson & Riley 1979). */
static inline double hw_ln_fluoride(const struct hw_powers *of)
{
    return 1590.2 / of->kelvin - 12.641 + 1.525 * of->strength_root + of->ln_share;
}

static inline double hw_fluoride_constant(const struct hw_powers *of)
{
    return hw_exp(hw_ln_fluoride(of));
}

/* H+ of the total scale, and of the sea water scale, over free H+. */
struct hw_over_free {
    double total, sws;
};

/* By the constants of HSO4- and HF. */
static inline struct hw_over_free hw_over_free_by(const struct hw_powers *of, double sulfate,
                                                  double fluoride)
{
    double total = 1.0 + hw_total_sulfate(of->salinity) / sulfate;
    struct hw_over_free over = {total, total + hw_total_fluoride(of->salinity) / fluoride};
    return over;
}

static inline struct hw_over_free hw_over_free_of(const struct hw_powers *of)
{
    return hw_over_free_by(of, hw_sulfate_constant(of), hw_fluoride_constant(of));
}

/* Activity of H+ by NBS buffers over H+ of the sea water scale (Takahashi et al. 1982). */
static inline double hw_activity_over_sws(double kelvin, double salinity)
{
    return 1.2948 - 0.002036 * kelvin + (0.0004607 - 0.000001475 * kelvin) * salinity * salinity;
}

/* The factor A of Debye and Hueckel, base 10, kg^0.5 mol^-0.5; the permittivity of water is by
 * Malmberg & Maryott 1956. */
static inline double hw_debye_hueckel(double temp)
{
    double permittivity = 87.740 + temp * (-0.40008 + temp * (9.398e-4 + temp * -1.410e-6));
    double product = permittivity * hw_kelvin(temp);
    return 1.8246e6 / (product * sqrt(product));
}

/* log10 of phi, the activity of H+ by NBS buffers over free H+: by fH from `measured_from` up, by
 * Davies up to `davies_to`, and smoothly from one to the other between. */
static inline double hw_log10_phi(const struct hw_powers *of, const struct hw_over_free *over)
{
    const double davies_to = 3.0;
    const double measured_from = 9.0;
    double salinity = of->salinity;
    double davies = 0.0;
    double measured = 0.0;
    double weight = 1.0;
    if (salinity < measured_from) {
        double root = of->strength_root;
        double x = (salinity - davies_to) / (measured_from - davies_to);
        davies = -hw_debye_hueckel(of->temp) * (root / (1.0 + root) - 0.3 * of->strength);
        weight = x > 0.0 ? x * x * (3.0 - 2.0 * x) : 0.0;
    }
    if (salinity > davies_to) {
        measured = hw_log10(hw_activity_over_sws(of->kelvin, salinity) * over->sws);
    }
    return weight * measured + (1.0 - weight) * davies;
}

/* (pH on the scale) - (pH on the free scale); the scale exists. */
static inline double hw_offset_from_free(enum hw_ph_scale scale, double temp, double salinity)
{
    if (scale == HW_PH_FREE) {
        return 0.0;
    }
    struct hw_powers of = hw_powers_of(temp, salinity);
    struct hw_over_free over = hw_over_free_of(&of);
    if (scale == HW_PH_TOTAL) {
        return -hw_log10(over.total);
    }
    if (scale == HW_PH_SWS) {
        return -hw_log10(over.sws);
    }
    return -hw_log10_phi(&of, &over); /* HW_PH_METER, HW_PH_NBS_RIGOROUS */
}

static inline int hw_scale_exists(enum hw_ph_scale scale)
{
    return scale == HW_PH_METER || scale == HW_PH_NBS_RIGOROUS || scale == HW_PH_TOTAL ||
           scale == HW_PH_FREE || scale == HW_PH_SWS;
}

/* Whether an offset leans on the join, or on fH beyond what was measured. */
static inline int hw_scale_stretched(enum hw_ph_scale scale, double salinity)
{
    return (scale == HW_PH_METER || scale == HW_PH_NBS_RIGOROUS) &&
           ((salinity > 3.0 && salinity < 20.0) || salinity > 40.0);
}

#endif
