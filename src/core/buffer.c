/* buffer.c - what to weigh to raise alkalinity. */
#include "holdwater/buffer.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <stdbool.h>

static bool is_alkalinity(double x)
{
    return hw_within(x, HW_BUFFER_ALKALINITY_MIN, HW_BUFFER_ALKALINITY_MAX);
}

int hw_buffer_mass(enum hw_buffer_source source, double volume, double alkalinity, double target,
                   double *mass)
{
    *mass = HW_NO_ANSWER;
    if (source != HW_BUFFER_BICARBONATE && source != HW_BUFFER_CARBONATE) {
        return HW_STATUS_CHOICE;
    }
    if (!is_alkalinity(alkalinity) || !is_alkalinity(target) ||
        !hw_within(volume, HW_BUFFER_VOLUME_MIN, HW_BUFFER_VOLUME_MAX)) {
        return HW_STATUS_RANGE;
    }
    if (target < alkalinity) {
        return HW_STATUS_NONE;
    }
    double gram_per_eq = source == HW_BUFFER_BICARBONATE ? HW_MOLAR_SODIUM_BICARBONATE
                                                         : HW_MOLAR_SODIUM_CARBONATE / 2.0;
    *mass = (target - alkalinity) * volume * gram_per_eq / 1000.0;
    return HW_STATUS_OK;
}
