/* carbonate_kernel.h - constants of the carbonate system, mol per kg of solution, total scale.
 * Arguments are in range; nothing is checked here. */
#ifndef HOLDWATER_CARBONATE_KERNEL_H
#define HOLDWATER_CARBONATE_KERNEL_H

#include "core/elementary.h"
#include "core/ph_kernel.h"

#include <math.h>

/* ln of the solubility of carbon dioxide, mol/kg/atm (Weiss 1974), by ln(T/100) too. */
static inline double hw_ln_carbon_dioxide_solubility(double kelvin, double ln_h, double salinity)
{
    double h = kelvin / 100.0;
    return -60.2409 + 93.4517 / h + 23.3585 * ln_h +
           salinity * (0.023517 - 0.023656 * h + 0.0047036 * h * h);
}

static inline double hw_carbon_dioxide_solubility(double kelvin, double salinity)
{
    return hw_exp(hw_ln_carbon_dioxide_solubility(kelvin, hw_log(kelvin / 100.0), salinity));
}

/* ln of fugacity over partial pressure of carbon dioxide at one atmosphere (Weiss 1974). */
static inline double hw_ln_carbon_dioxide_fugacity(double kelvin)
{
    double b = -1636.75 + kelvin * (12.0408 + kelvin * (-0.0327957 + kelvin * 3.16528e-5));
    double d = 57.7 - 0.118 * kelvin;
    return (b + 2.0 * d) * 1.01325 / (83.14462618 * kelvin);
}

static inline double hw_carbon_dioxide_fugacity(double kelvin)
{
    return hw_exp(hw_ln_carbon_dioxide_fugacity(kelvin));
}

/* Waters, Millero & Woosley 2014: the two have one form. pure, by 1/T, by ln T; then by S^0.5, S,
 * S^2, S^0.5/T, S/T, S^0.5 ln T. */
static inline double hw_waters2014(const double c[9], const struct hw_powers *of)
{
    double salinity = of->salinity;
    return c[0] + c[1] / of->kelvin + c[2] * of->ln_t + c[3] * of->root +
           salinity * (c[4] + c[5] * salinity) + (c[6] * of->root + c[7] * salinity) / of->kelvin +
           c[8] * of->root * of->ln_t;
}

static inline double hw_carbonic_pk1(const struct hw_powers *of)
{
    static const double c[9] = {-126.34048, 6320.813,  19.568224, 13.568513, 0.031645,
                                -5.3834e-5, -539.2304, -5.635,    -2.0901396};
    return hw_waters2014(c, of);
}

static inline double hw_carbonic_pk2(const struct hw_powers *of)
{
    static const double c[9] = {-90.18333,  5143.692,  14.613358, 21.389248, 0.12452358,
                                -3.7447e-4, -787.3736, -19.84233, -3.3773006};
    return hw_waters2014(c, of);
}

/* ln of the constant of boric acid (Dickson 1990). */
static inline double hw_ln_boric(const struct hw_powers *of)
{
    double r = of->root;
    double over_t = -8966.90 + r * (-2890.53 + r * (-77.942 + r * (1.728 + r * -0.0996)));
    return over_t / of->kelvin + 148.0248 + 137.1942 * r + 1.62142 * of->salinity -
           (24.4344 + 25.085 * r + 0.2474 * of->salinity) * of->ln_t + 0.053105 * r * of->kelvin;
}

/* ln of the ion product of water (Millero 1995). */
static inline double hw_ln_water(const struct hw_powers *of)
{
    return 148.9652 - 13847.26 / of->kelvin - 23.6521 * of->ln_t +
           (118.67 / of->kelvin - 5.977 + 1.0495 * of->ln_t) * of->root - 0.01615 * of->salinity;
}

/* Total boron, mol per kg of solution (Uppstrom 1974). */
static inline double hw_total_boron(double salinity)
{
    return 0.0004157 * salinity / 35.0;
}

#endif
