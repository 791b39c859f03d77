/* seawater.c - density, heat capacity and ionic strength of sea water. */
#include "holdwater/seawater.h"

#include "core/no_answer.h"
#include "core/range.h"
#include "core/seawater_kernel.h"

#include <stdbool.h>

static bool is_water(double salinity, double temp)
{
    return hw_within(salinity, HW_SEAWATER_SALINITY_MIN, HW_SEAWATER_SALINITY_MAX) &&
           hw_within(temp, HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX);
}

int hw_seawater_density(double salinity, double temp, double *density)
{
    *density = HW_NO_ANSWER;
    if (!is_water(salinity, temp)) {
        return HW_STATUS_RANGE;
    }
    *density = hw_density_68(salinity, hw_temp_68(temp));
    return salinity > HW_SEAWATER_SALINITY_FITTED ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_seawater_heat_capacity(double salinity, double temp, double *capacity)
{
    *capacity = HW_NO_ANSWER;
    if (!is_water(salinity, temp)) {
        return HW_STATUS_RANGE;
    }
    *capacity = hw_heat_capacity_68(salinity, hw_temp_68(temp));
    bool fitted = salinity <= HW_SEAWATER_HEAT_SALINITY_FITTED &&
                  temp >= HW_SEAWATER_HEAT_TEMP_FROM && temp <= HW_SEAWATER_HEAT_TEMP_TO;
    return fitted ? HW_STATUS_OK : HW_STATUS_STRETCHED;
}

int hw_seawater_ionic_strength(double salinity, double *molal)
{
    *molal = HW_NO_ANSWER;
    if (!hw_within(salinity, HW_SEAWATER_SALINITY_MIN, HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *molal = hw_ionic_strength(salinity);
    return HW_STATUS_OK;
}
