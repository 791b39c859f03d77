/* ammonia_kernel.h - the bodies behind holdwater/ammonia.h, one for scalars and arrays alike.
 * Arguments are in range and choices exist; nothing is checked here. */
#ifndef HOLDWATER_AMMONIA_KERNEL_H
#define HOLDWATER_AMMONIA_KERNEL_H

#include "core/elementary.h"
#include "core/ph_kernel.h"
#include "core/seawater_kernel.h"
#include "holdwater/ammonia.h"

#include <math.h>

/* Emerson et al. 1975 for pure water; slope in formal ionic strength by Khoo et al. 1977. */
static inline double hw_khoo1977_pk(double temp, double salinity)
{
    double pure = 0.09018 + 2729.92 / hw_kelvin(temp);
    double slope = 0.1552 - 0.0003142 * temp;
    return pure + slope * hw_ionic_strength(salinity);
}

/* The ionic strength that US EPA 1989 writes, mol per kg of water. */
static inline double hw_epa1989_ionic_strength(double salinity)
{
    return 19.9273 * salinity / (1000.0 - 1.005109 * salinity);
}

/* US EPA 1989 at one atmosphere, with 298 as printed. */
static inline double hw_epa1989_pk(double temp, double salinity)
{
    double kelvin = hw_kelvin(temp);
    return 9.245 + 0.116 * hw_epa1989_ionic_strength(salinity) + 0.0324 * (298.0 - kelvin) +
           0.0415 / kelvin;
}

/* Clegg & Whitfield 1995, equation 18: total scale, mol per kg of water. */
static inline double hw_clegg1995_molal_pk(double temp, double salinity)
{
    /* One line per power of the salinity: 1, T^0.5, T and 1/T. */
    static const double quarter[] = {0.04203362, 0.0, 0.0, -11.24742};
    static const double half[] = {-13.6416, 1.176949, -0.02860785, 545.4834};
    static const double three_halves[] = {-0.1462507, 0.0090226468, -0.0001471361, 10.5425};
    static const double two[] = {0.004669309, -0.0001691742, 0.0, -0.5677934};
    static const double five_halves[] = {-2.354039e-5, 0.0, 0.0, 0.009698623};
    double t = hw_kelvin(temp);
    double root_t = sqrt(t);
    double root_s = sqrt(salinity);
    double pure = 9.244605 - 2729.33 * (1.0 / 298.15 - 1.0 / t);
    double a = quarter[0] + quarter[3] / t;
    double b = half[0] + half[1] * root_t + half[2] * t + half[3] / t;
    double c =
        three_halves[0] + three_halves[1] * root_t + three_halves[2] * t + three_halves[3] / t;
    double d = two[0] + two[1] * root_t + two[3] / t;
    double e = five_halves[0] + five_halves[3] / t;
    return pure + a * sqrt(root_s) + b * root_s +
           salinity * (c * root_s + salinity * (d + e * root_s));
}

/* The same for mol per kg of solution, on any scale but the meter's. */
static inline double hw_clegg1995_pk(enum hw_ph_scale scale, double temp, double salinity)
{
    double total = hw_clegg1995_molal_pk(temp, salinity) - hw_log10(1.0 - 0.001005 * salinity);
    if (scale == HW_PH_TOTAL) {
        return total;
    }
    return total + (hw_offset_from_free(scale, temp, salinity) -
                    hw_offset_from_free(HW_PH_TOTAL, temp, salinity));
}

/* The constant of a model and scale that go together. */
static inline double hw_ammonia_pk_of(enum hw_ammonia_model model, enum hw_ph_scale scale,
                                      double temp, double salinity)
{
    if (model == HW_AMMONIA_EPA1989) {
        return hw_epa1989_pk(temp, salinity);
    }
    if (model == HW_AMMONIA_CLEGG1995) {
        return hw_clegg1995_pk(scale, temp, salinity);
    }
    return hw_khoo1977_pk(temp, salinity);
}

/* Whether a model leaves what it was fitted to. */
static inline int hw_ammonia_stretched(enum hw_ammonia_model model, enum hw_ph_scale scale,
                                       double temp, double salinity)
{
    if (model == HW_AMMONIA_KHOO1977) {
        return ((temp < 5.0) & (salinity > 0.0)) | (salinity > 44.55);
    }
    if (model == HW_AMMONIA_EPA1989) {
        return salinity > 40.9; /* recalled: ionic strength up to 0.85 */
    }
    return salinity > 40.0 || hw_scale_stretched(scale, salinity);
}

/* The pH at which a fraction, above 0 and below 1, is NH3. */
static inline double hw_ph_of(double fraction, double pk)
{
    return pk + hw_log10(fraction / (1.0 - fraction));
}

/* Moles of NH3 over moles of NH3 and NH4+. */
static inline double hw_fraction_of(double ph, double pk)
{
    return 1.0 / (1.0 + hw_exp10_within(pk - ph));
}

#endif
