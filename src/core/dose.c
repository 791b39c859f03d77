/* dose.c - a medicine brought to a level. */
#include "holdwater/dose.h"

#include "core/no_answer.h"
#include "core/range.h"
#include "holdwater/molar.h"

#include <stdbool.h>

static bool is_volume(double x)
{
    return hw_within(x, HW_DOSE_VOLUME_MIN, HW_DOSE_VOLUME_MAX);
}

static bool is_level(double x)
{
    return hw_within(x, HW_DOSE_LEVEL_MIN, HW_DOSE_LEVEL_MAX);
}

static bool is_active(double x)
{
    return hw_within(x, HW_DOSE_ACTIVE_MIN, HW_DOSE_ACTIVE_MAX);
}

static bool is_strength(double x)
{
    return hw_within(x, HW_DOSE_STRENGTH_MIN, HW_DOSE_STRENGTH_MAX);
}

static bool is_share(double x)
{
    return hw_within(x, HW_DOSE_ACTIVE_SHARE_MIN, HW_DOSE_ACTIVE_SHARE_MAX);
}

int hw_dose_active(double volume, double now, double target, double *active)
{
    *active = HW_NO_ANSWER;
    if (!is_volume(volume) || !is_level(now) || !hw_within(target, now, HW_DOSE_LEVEL_MAX)) {
        return HW_STATUS_RANGE;
    }
    *active = (target - now) * volume;
    return HW_STATUS_OK;
}

int hw_dose_level(double volume, double now, double active, double *level)
{
    *level = HW_NO_ANSWER;
    if (!is_volume(volume) || !is_level(now) || !is_active(active)) {
        return HW_STATUS_RANGE;
    }
    *level = now + active / volume;
    return HW_STATUS_OK;
}

int hw_dose_liquid(double active, double strength, double *liquid)
{
    *liquid = HW_NO_ANSWER;
    if (!is_active(active) || !is_strength(strength)) {
        return HW_STATUS_RANGE;
    }
    *liquid = active / strength;
    return HW_STATUS_OK;
}

int hw_dose_liquid_active(double liquid, double strength, double *active)
{
    *active = HW_NO_ANSWER;
    if (!hw_within(liquid, HW_DOSE_LIQUID_MIN, HW_DOSE_LIQUID_MAX) || !is_strength(strength)) {
        return HW_STATUS_RANGE;
    }
    *active = liquid * strength;
    return HW_STATUS_OK;
}

int hw_dose_powder(double active, double share, double *mass)
{
    *mass = HW_NO_ANSWER;
    if (!is_active(active) || !is_share(share)) {
        return HW_STATUS_RANGE;
    }
    *mass = active / 1000.0 / share;
    return HW_STATUS_OK;
}

int hw_dose_powder_active(double mass, double share, double *active)
{
    *active = HW_NO_ANSWER;
    if (!hw_within(mass, HW_DOSE_MASS_MIN, HW_DOSE_MASS_MAX) || !is_share(share)) {
        return HW_STATUS_RANGE;
    }
    *active = mass * 1000.0 * share;
    return HW_STATUS_OK;
}

int hw_dose_label_share(double raises, double per, double mass, double *share)
{
    *share = HW_NO_ANSWER;
    if (!hw_within(raises, HW_DOSE_LABEL_RAISES_MIN, HW_DOSE_LABEL_RAISES_MAX) ||
        !hw_within(per, HW_DOSE_LABEL_PER_MIN, HW_DOSE_LABEL_PER_MAX) ||
        !hw_within(mass, HW_DOSE_LABEL_MASS_MIN, HW_DOSE_LABEL_MASS_MAX)) {
        return HW_STATUS_RANGE;
    }
    *share = raises * per / (1000.0 * mass);
    return HW_STATUS_OK;
}

int hw_dose_copper(double salt, double *copper)
{
    *copper = HW_NO_ANSWER;
    if (!is_active(salt)) {
        return HW_STATUS_RANGE;
    }
    *copper = salt * (HW_MOLAR_COPPER / HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE);
    return HW_STATUS_OK;
}

int hw_dose_step_level(double now, double target, int steps, int step, double *level)
{
    *level = HW_NO_ANSWER;
    if (!is_level(now) || !is_level(target) || steps < HW_DOSE_STEPS_MIN ||
        steps > HW_DOSE_STEPS_MAX || step < 0 || step > steps) {
        return HW_STATUS_RANGE;
    }
    *level = now + (target - now) * step / steps;
    return HW_STATUS_OK;
}
