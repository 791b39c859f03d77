/* seawater.c - density and ionic strength of sea water. */
#include "holdwater/seawater.h"

#include "core/no_answer.h"
#include "core/seawater_kernel.h"

#include <math.h>

/* The coefficients of UNESCO 44, equations 13 and 14: pure water and the three powers of salinity,
 * each by rising powers of the temperature on IPTS-68. */
static double density_at(double s, double t)
{
    static const double pure[] = {999.842594,  6.793952e-2,  -9.095290e-3,
                                  1.001685e-4, -1.120083e-6, 6.536332e-9};
    static const double by_s[] = {8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9};
    static const double by_s_1_5[] = {-5.72466e-3, 1.0227e-4, -1.6546e-6};
    static const double by_s_2 = 4.8314e-4;
    double water =
        pure[0] + t * (pure[1] + t * (pure[2] + t * (pure[3] + t * (pure[4] + t * pure[5]))));
    double first = by_s[0] + t * (by_s[1] + t * (by_s[2] + t * (by_s[3] + t * by_s[4])));
    double second = by_s_1_5[0] + t * (by_s_1_5[1] + t * by_s_1_5[2]);
    return water + s * (first + sqrt(s) * second + s * by_s_2);
}

int hw_seawater_density(double salinity, double temp, double *density)
{
    *density = HW_NO_ANSWER;
    if (!(salinity >= HW_SEAWATER_SALINITY_MIN && salinity <= HW_SEAWATER_SALINITY_MAX &&
          temp >= HW_SEAWATER_TEMP_MIN && temp <= HW_SEAWATER_TEMP_MAX)) {
        return HW_STATUS_RANGE;
    }
    *density = density_at(salinity, 1.00024 * temp);
    return salinity > HW_SEAWATER_SALINITY_FITTED ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_seawater_ionic_strength(double salinity, double *molal)
{
    *molal = HW_NO_ANSWER;
    if (!(salinity >= HW_SEAWATER_SALINITY_MIN && salinity <= HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *molal = hw_ionic_strength(salinity);
    return HW_STATUS_OK;
}
