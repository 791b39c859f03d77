/* hydrometer.c - readings of specific gravity, density and the salinity behind it. */
#include "holdwater/hydrometer.h"

#include "core/no_answer.h"
#include "core/seawater_kernel.h"

static int in_range(double x, double lo, double hi)
{
    return x >= lo && x <= hi;
}

static int is_hydrometer(const struct hw_hydrometer *h)
{
    return in_range(h->scale_temp, HW_HYDROMETER_SCALE_MIN, HW_HYDROMETER_SCALE_MAX) &&
           in_range(h->water_temp, HW_HYDROMETER_SCALE_MIN, HW_HYDROMETER_SCALE_MAX) &&
           in_range(h->expansion, HW_HYDROMETER_EXPANSION_MIN, HW_HYDROMETER_EXPANSION_MAX);
}

static double pure_water(double temp)
{
    return hw_density_at_68(hw_temp_68(temp), 0);
}

int hw_hydrometer_density(const struct hw_hydrometer *hydrometer, double reading, double temp,
                          double *density)
{
    *density = HW_NO_ANSWER;
    if (!(is_hydrometer(hydrometer) &&
          in_range(reading, HW_HYDROMETER_READING_MIN, HW_HYDROMETER_READING_MAX) &&
          in_range(temp, HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX))) {
        return HW_STATUS_RANGE;
    }
    *density = reading * pure_water(hydrometer->water_temp) /
               (1.0 + hydrometer->expansion * (temp - hydrometer->scale_temp));
    return HW_STATUS_OK;
}

int hw_hydrometer_reading(const struct hw_hydrometer *hydrometer, double salinity, double *reading)
{
    double density = HW_NO_ANSWER;
    *reading = HW_NO_ANSWER;
    if (!is_hydrometer(hydrometer)) {
        return HW_STATUS_RANGE;
    }
    int status = hw_seawater_density_at(hydrometer->scale_temp, salinity, &density);
    *reading = density / pure_water(hydrometer->water_temp);
    return status;
}
