/* seawater.c - density, heat capacity, ionic strength and chloride of sea water. */
#include "holdwater/seawater.h"

#include "core/no_answer.h"
#include "core/range.h"
#include "core/seawater_kernel.h"

#include <math.h>
#include <stdbool.h>

static bool is_water(double temp, double salinity)
{
    return hw_within(salinity, HW_SEAWATER_SALINITY_MIN, HW_SEAWATER_SALINITY_MAX) &&
           hw_within(temp, HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX);
}

int hw_seawater_density_at(double temp, double salinity, double *density)
{
    *density = HW_NO_ANSWER;
    if (!is_water(temp, salinity)) {
        return HW_STATUS_RANGE;
    }
    *density = hw_density_at_68(hw_temp_68(temp), salinity);
    return salinity > HW_SEAWATER_SALINITY_FITTED ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

/* The salinity at which water is heavier than fresh water by so much, kg/m3: where
 * a S + b S^1.5 + c S^2 is that much, by Newton's steps. The slope stays within 4 % of a, so that
 * the start is within 4 % and the third step leaves 1e-16 of it. */
static double salinity_of(double t68, double above_fresh)
{
    double a = hw_density_by_salinity(t68);
    double b = hw_density_by_salinity_1_5(t68);
    double salinity = above_fresh / a;
    for (int i = 0; i < 3; i++) {
        double root = sqrt(salinity);
        double off = salinity * (a + root * b + salinity * hw_density_by_salinity_2) - above_fresh;
        salinity -= off / (a + 1.5 * root * b + 2.0 * salinity * hw_density_by_salinity_2);
    }
    return salinity;
}

int hw_seawater_salinity_by_density(double density, double temp, double *salinity)
{
    *salinity = HW_NO_ANSWER;
    if (!(hw_within(density, HW_SEAWATER_DENSITY_MIN, HW_SEAWATER_DENSITY_MAX) &&
          hw_within(temp, HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX))) {
        return HW_STATUS_RANGE;
    }
    double t68 = hw_temp_68(temp);
    double above_fresh = density - hw_density_at_68(t68, 0);
    if (above_fresh <= 0) {
        double below = above_fresh / hw_density_by_salinity(t68);
        if (below < HW_SEAWATER_SALINITY_READ_MIN) {
            return HW_STATUS_NONE;
        }
        *salinity = below;
        return below < 0 ? HW_STATUS_STRETCHED : HW_STATUS_OK;
    }
    if (density > hw_density_at_68(t68, HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_NONE;
    }
    *salinity = fmin(salinity_of(t68, above_fresh), HW_SEAWATER_SALINITY_MAX);
    return *salinity > HW_SEAWATER_SALINITY_FITTED ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_seawater_specific_heat(double temp, double salinity, double *capacity)
{
    *capacity = HW_NO_ANSWER;
    if (!is_water(temp, salinity)) {
        return HW_STATUS_RANGE;
    }
    *capacity = hw_specific_heat_68(hw_temp_68(temp), salinity);
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

int hw_seawater_chloride_at(double temp, double salinity, double *chloride)
{
    double density;
    int status = hw_seawater_density_at(temp, salinity, &density);
    /* g/kg times kg/m3 is g/m3, which is mg/L; without a density it is NaN. */
    *chloride = HW_SEAWATER_CHLORIDE_PER_CHLORINITY * salinity /
                HW_SEAWATER_SALINITY_PER_CHLORINITY * density;
    return status;
}
