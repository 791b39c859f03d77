/* blend.c - two waters mixed. */
#include "holdwater/blend.h"

#include "core/blend_kernel.h"
#include "core/no_answer.h"
#include "core/range.h"
#include "holdwater/seawater.h"

#include <math.h>
#include <stdbool.h>

static bool is_water(double temp, double salinity)
{
    return hw_within(temp, HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX) &&
           hw_within(salinity, HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX);
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
    const struct hw_blend_pair pair = hw_blend_pair_of(temp, salinity, new_temp, new_salinity);
    hw_blend_mixed(&pair, share, blend);
    bool stretched =
        salinity > HW_SEAWATER_SALINITY_FITTED || new_salinity > HW_SEAWATER_SALINITY_FITTED;
    return stretched ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_blend_level(const struct hw_blend *blend, double level, double fresh, double *mixed)
{
    double sum = hw_blend_level_of(blend, level, fresh);
    *mixed = isfinite(sum) ? sum : HW_NO_ANSWER;
    return isfinite(sum) ? HW_STATUS_OK : HW_STATUS_RANGE;
}
