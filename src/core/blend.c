/* blend.c - two waters mixed. */
#include "holdwater/blend.h"

#include "core/no_answer.h"
#include "core/range.h"
#include "core/seawater_kernel.h"
#include "holdwater/seawater.h"

#include <math.h>
#include <stdbool.h>

static bool is_water(double temp, double salinity)
{
    return hw_within(temp, HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX) &&
           hw_within(salinity, HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX);
}

/* (1 - share) a + share b, without rounding where a is b, and at both ends. */
static double mean(double a, double b, double share)
{
    return share < 0.5 ? a + share * (b - a) : b - (1.0 - share) * (b - a);
}

int hw_blend_mix(double share, double temp, double salinity, double new_temp, double new_salinity,
                 struct hw_blend *blend)
{
    *blend = (struct hw_blend){HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER,
                               HW_NO_ANSWER, HW_NO_ANSWER, HW_NO_ANSWER};
    if (!hw_within(share, HW_BLEND_SHARE_MIN, HW_BLEND_SHARE_MAX) || !is_water(temp, salinity) ||
        !is_water(new_temp, new_salinity)) {
        return HW_STATUS_RANGE;
    }
    double old_density = hw_density_at_68(hw_temp_68(temp), salinity);
    double new_density = hw_density_at_68(hw_temp_68(new_temp), new_salinity);
    double w = share * new_density / mean(old_density, new_density, share);
    blend->mass_share = w;
    double old_heat = (1.0 - w) * hw_specific_heat_68(hw_temp_68(temp), salinity);
    double new_heat = w * hw_specific_heat_68(hw_temp_68(new_temp), new_salinity);
    blend->heat_share = new_heat / (old_heat + new_heat);
    blend->temp = mean(temp, new_temp, blend->heat_share);
    blend->salinity = mean(salinity, new_salinity, w);
    double density = hw_density_at_68(hw_temp_68(blend->temp), blend->salinity);
    blend->per_old = (1.0 - w) * density / old_density;
    blend->per_new = w * density / new_density;
    bool stretched =
        salinity > HW_SEAWATER_SALINITY_FITTED || new_salinity > HW_SEAWATER_SALINITY_FITTED;
    return stretched ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_blend_level(const struct hw_blend *blend, double level, double fresh, double *mixed)
{
    double sum = level * blend->per_old + fresh * blend->per_new;
    *mixed = isfinite(sum) ? sum : HW_NO_ANSWER;
    return isfinite(sum) ? HW_STATUS_OK : HW_STATUS_RANGE;
}
