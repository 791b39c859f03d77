/* refraction.c - refractive index of sea water, and refractometers made for brine. */
#include "holdwater/refraction.h"

#include "core/no_answer.h"

static const double wavelength = 589.3; /* nm */

/* Quan & Fry 1995: the index without salt, and what one unit of salinity adds. */
static double without_salt(double temp)
{
    double by_wave = (15.868 + (-0.00423) * temp) / wavelength;
    return 1.31405 - 2.02e-6 * temp * temp + by_wave - 4382.0 / (wavelength * wavelength) +
           1.1455e6 / (wavelength * wavelength * wavelength);
}

static double by_salinity(double temp)
{
    return 1.779e-4 + temp * (-1.05e-6 + temp * 1.6e-8) + 0.01155 / wavelength;
}

static int temp_in_range(double temp)
{
    return temp >= HW_REFRACTION_TEMP_MIN && temp <= HW_REFRACTION_TEMP_MAX;
}

static int status_at(double temp, double salinity)
{
    int fitted = salinity >= 0 && salinity <= HW_REFRACTION_SALINITY_FITTED &&
                 temp >= HW_REFRACTION_TEMP_FIT_MIN && temp <= HW_REFRACTION_TEMP_FIT_MAX;
    return fitted ? HW_STATUS_OK : HW_STATUS_STRETCHED;
}

/* A salinity found, if it is one. */
static int found(double temp, double value, double *salinity)
{
    if (!(value >= HW_SEAWATER_SALINITY_READ_MIN && value <= HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_NONE;
    }
    *salinity = value;
    return status_at(temp, value);
}

int hw_refraction_index_at(double temp, double salinity, double *index)
{
    *index = HW_NO_ANSWER;
    if (!(salinity >= HW_SEAWATER_SALINITY_MIN && salinity <= HW_SEAWATER_SALINITY_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    *index = without_salt(temp) + by_salinity(temp) * salinity;
    return status_at(temp, salinity);
}

int hw_refraction_salinity(double index, double temp, double *salinity)
{
    *salinity = HW_NO_ANSWER;
    if (!(index >= HW_REFRACTION_INDEX_MIN && index <= HW_REFRACTION_INDEX_MAX &&
          temp_in_range(temp))) {
        return HW_STATUS_RANGE;
    }
    return found(temp, (index - without_salt(temp)) / by_salinity(temp), salinity);
}

static int is_scale(enum hw_refraction_brine scale)
{
    return scale == HW_REFRACTION_BRINE_GKG || scale == HW_REFRACTION_BRINE_GL;
}

static double factor_of(enum hw_refraction_brine scale)
{
    return scale == HW_REFRACTION_BRINE_GKG ? HW_REFRACTION_BRINE_GKG_FACTOR
                                            : HW_REFRACTION_BRINE_GL_FACTOR;
}

int hw_refraction_salinity_by_brine(enum hw_refraction_brine scale, double reading,
                                    double *salinity)
{
    *salinity = HW_NO_ANSWER;
    if (!is_scale(scale)) {
        return HW_STATUS_CHOICE;
    }
    if (!(reading >= HW_REFRACTION_BRINE_MIN && reading <= HW_REFRACTION_BRINE_MAX)) {
        return HW_STATUS_RANGE;
    }
    return found(20, factor_of(scale) * reading, salinity);
}

int hw_refraction_brine_reading(enum hw_refraction_brine scale, double salinity, double *reading)
{
    *reading = HW_NO_ANSWER;
    if (!is_scale(scale)) {
        return HW_STATUS_CHOICE;
    }
    if (!(salinity >= HW_SEAWATER_SALINITY_MIN && salinity <= HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *reading = salinity / factor_of(scale);
    return status_at(20, salinity);
}
