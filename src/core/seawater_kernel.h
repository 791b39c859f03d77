/* seawater_kernel.h - the bodies behind holdwater/seawater.h that other subjects share. Arguments
 * are in range; nothing is checked here. Temperatures t68 are on IPTS-68. */
#ifndef HOLDWATER_SEAWATER_KERNEL_H
#define HOLDWATER_SEAWATER_KERNEL_H

#include <math.h>

/* A temperature of today's scale, ITS-90, on the scale of the equations of 1978 to 1983. */
static inline double hw_temp_68(double temp)
{
    return 1.00024 * temp;
}

/* What multiplies the first power of salinity in the density: also the slope at salinity 0. */
static inline double hw_density_by_salinity(double t68)
{
    static const double by_s[] = {8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9};
    return by_s[0] + t68 * (by_s[1] + t68 * (by_s[2] + t68 * (by_s[3] + t68 * by_s[4])));
}

/* What multiplies the power of 1.5, and of 2. */
static inline double hw_density_by_salinity_1_5(double t68)
{
    static const double by_s[] = {-5.72466e-3, 1.0227e-4, -1.6546e-6};
    return by_s[0] + t68 * (by_s[1] + t68 * by_s[2]);
}

static const double hw_density_by_salinity_2 = 4.8314e-4;

/* Density at one atmosphere, kg/m3: UNESCO 44, equations 13 and 14: pure water and the three powers
 * of salinity, each by rising powers of the temperature. */
static inline double hw_density_at_68(double t68, double salinity)
{
    static const double pure[] = {999.842594,  6.793952e-2,  -9.095290e-3,
                                  1.001685e-4, -1.120083e-6, 6.536332e-9};
    double water =
        pure[0] +
        t68 * (pure[1] + t68 * (pure[2] + t68 * (pure[3] + t68 * (pure[4] + t68 * pure[5]))));
    double second = hw_density_by_salinity_1_5(t68);
    return water + salinity * (hw_density_by_salinity(t68) + sqrt(salinity) * second +
                               salinity * hw_density_by_salinity_2);
}

/* Specific heat capacity at one atmosphere, J/(kg K): UNESCO 44, equation 26. */
static inline double hw_specific_heat_68(double t68, double salinity)
{
    static const double pure[] = {4217.4, -3.720283, 0.1412855, -2.654387e-3, 2.093236e-5};
    static const double by_s[] = {-7.643575, 0.1072763, -1.38385e-3};
    static const double by_s_1_5[] = {0.1770383, -4.07718e-3, 5.148e-5};
    double water = pure[0] + t68 * (pure[1] + t68 * (pure[2] + t68 * (pure[3] + t68 * pure[4])));
    double first = by_s[0] + t68 * (by_s[1] + t68 * by_s[2]);
    double second = by_s_1_5[0] + t68 * (by_s_1_5[1] + t68 * by_s_1_5[2]);
    return water + salinity * (first + sqrt(salinity) * second);
}

/* Formal ionic strength, mol per kg of water (DOE 1994). */
static inline double hw_ionic_strength(double salinity)
{
    return 19.924 * salinity / (1000.0 - 1.005 * salinity);
}

#endif
