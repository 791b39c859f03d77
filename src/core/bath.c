/* bath.c - dye in a bath. */
#include "holdwater/bath.h"

#include "core/no_answer.h"

#include <stdbool.h>

static bool is_volume(double x)
{
    return x >= HW_BATH_VOLUME_MIN && x <= HW_BATH_VOLUME_MAX;
}

static bool is_strength(double x)
{
    return x >= HW_BATH_STRENGTH_MIN && x <= HW_BATH_STRENGTH_MAX;
}

int hw_bath_dye(double volume, double strength, double level, double *dye)
{
    *dye = HW_NO_ANSWER;
    if (!is_volume(volume) || !is_strength(strength) ||
        !(level >= HW_BATH_LEVEL_MIN && level <= HW_BATH_LEVEL_MAX)) {
        return HW_STATUS_RANGE;
    }
    *dye = level * volume / strength;
    return HW_STATUS_OK;
}

int hw_bath_dye_at_rate(double volume, double rate, double *dye)
{
    *dye = HW_NO_ANSWER;
    if (!is_volume(volume) || !(rate >= HW_BATH_RATE_MIN && rate <= HW_BATH_RATE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *dye = rate * volume;
    return HW_STATUS_OK;
}

int hw_bath_level(double volume, double strength, double dye, double *level)
{
    *level = HW_NO_ANSWER;
    if (!is_volume(volume) || !is_strength(strength) ||
        !(dye >= HW_BATH_DYE_MIN && dye <= HW_BATH_DYE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *level = dye * strength / volume;
    return HW_STATUS_OK;
}
