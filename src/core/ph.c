/* ph.c - scales of pH. */
#include "holdwater/ph.h"

#include "core/no_answer.h"
#include "core/ph_kernel.h"

int hw_ph_offset(enum hw_ph_scale scale, double temp, double salinity, double *offset)
{
    *offset = HW_NO_ANSWER;
    if (!hw_scale_exists(scale)) {
        return HW_STATUS_CHOICE;
    }
    if (!(temp >= HW_PH_TEMP_MIN && temp <= HW_PH_TEMP_MAX && salinity >= HW_PH_SALINITY_MIN &&
          salinity <= HW_PH_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *offset = hw_offset_from_free(scale, temp, salinity);
    return hw_scale_stretched(scale, salinity) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_ph_convert(double ph, enum hw_ph_scale from, enum hw_ph_scale to, double temp,
                  double salinity, double *converted)
{
    *converted = HW_NO_ANSWER;
    double of_from = HW_NO_ANSWER;
    double of_to = HW_NO_ANSWER;
    int from_status = hw_ph_offset(from, temp, salinity, &of_from);
    int to_status = hw_ph_offset(to, temp, salinity, &of_to);
    if (from_status == HW_STATUS_CHOICE || to_status == HW_STATUS_CHOICE) {
        return HW_STATUS_CHOICE;
    }
    if (from_status == HW_STATUS_RANGE || !(ph >= HW_PH_MIN && ph <= HW_PH_MAX)) {
        return HW_STATUS_RANGE;
    }
    *converted = ph + (of_to - of_from);
    return from_status > to_status ? from_status : to_status;
}
