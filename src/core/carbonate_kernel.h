/* carbonate_kernel.h - constants of the carbonate system, mol per kg of solution, total scale.
 * Arguments are in range; temperatures `kelvin` are t + 273.15. */
#ifndef HOLDWATER_CARBONATE_KERNEL_H
#define HOLDWATER_CARBONATE_KERNEL_H

#include "core/elementary.h"

#include <math.h>

/* Solubility of carbon dioxide, mol/kg/atm (Weiss 1974). */
static inline double hw_carbon_dioxide_solubility(double kelvin, double salinity)
{
    double h = kelvin / 100.0;
    return hw_exp(-60.2409 + 93.4517 / h + 23.3585 * hw_log(h) +
                  salinity * (0.023517 - 0.023656 * h + 0.0047036 * h * h));
}

/* Fugacity over partial pressure of carbon dioxide at one atmosphere (Weiss 1974). */
static inline double hw_carbon_dioxide_fugacity(double kelvin)
{
    double b = -1636.75 + kelvin * (12.0408 + kelvin * (-0.0327957 + kelvin * 3.16528e-5));
    double d = 57.7 - 0.118 * kelvin;
    return hw_exp((b + 2.0 * d) * 1.01325 / (83.14462618 * kelvin));
}

/* Waters, Millero & Woosley 2014: the two have one form. pure, by 1/T, by ln T; then by S^0.5, S,
 * S^2, S^0.5/T, S/T, S^0.5 ln T. */
static inline double hw_waters2014(const double c[9], double kelvin, double salinity)
{
    double root = sqrt(salinity);
    double ln_t = hw_log(kelvin);
    return c[0] + c[1] / kelvin + c[2] * ln_t + c[3] * root + salinity * (c[4] + c[5] * salinity) +
           (c[6] * root + c[7] * salinity) / kelvin + c[8] * root * ln_t;
}

static inline double hw_carbonic_pk1(double kelvin, double salinity)
{
    static const double c[9] = {-126.34048, 6320.813,  19.568224, 13.568513, 0.031645,
                                -5.3834e-5, -539.2304, -5.635,    -2.0901396};
    return hw_waters2014(c, kelvin, salinity);
}

static inline double hw_carbonic_pk2(double kelvin, double salinity)
{
    static const double c[9] = {-90.18333,  5143.692,  14.613358, 21.389248, 0.12452358,
                                -3.7447e-4, -787.3736, -19.84233, -3.3773006};
    return hw_waters2014(c, kelvin, salinity);
}

/* ln of the constant of boric acid (Dickson 1990). */
static inline double hw_ln_boric(double kelvin, double salinity)
{
    double r = sqrt(salinity);
    double over_t = -8966.90 + r * (-2890.53 + r * (-77.942 + r * (1.728 + r * -0.0996)));
    return over_t / kelvin + 148.0248 + 137.1942 * r + 1.62142 * salinity -
           (24.4344 + 25.085 * r + 0.2474 * salinity) * hw_log(kelvin) + 0.053105 * r * kelvin;
}

/* ln of the ion product of water (Millero 1995). */
static inline double hw_ln_water(double kelvin, double salinity)
{
    double ln_t = hw_log(kelvin);
    return 148.9652 - 13847.26 / kelvin - 23.6521 * ln_t +
           (118.67 / kelvin - 5.977 + 1.0495 * ln_t) * sqrt(salinity) - 0.01615 * salinity;
}

/* Total boron, mol per kg of solution (Uppstrom 1974). */
static inline double hw_total_boron(double salinity)
{
    return 0.0004157 * salinity / 35.0;
}

#endif
