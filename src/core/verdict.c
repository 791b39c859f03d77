/* verdict.c - what a challenge proved. */
#include "holdwater/verdict.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <math.h>
#include <stdbool.h>

static bool is_nitrogen(double x)
{
    return hw_within(x, HW_VERDICT_NITROGEN_MIN, HW_VERDICT_NITROGEN_MAX);
}

int hw_verdict_rate(double start, double left, double hours, double volume, double *rate,
                    double *capacity)
{
    *rate = *capacity = HW_NO_ANSWER;
    if (!is_nitrogen(start) || !is_nitrogen(left) ||
        !hw_within(hours, HW_VERDICT_HOURS_MIN, HW_VERDICT_HOURS_MAX) ||
        !hw_within(volume, HW_VERDICT_VOLUME_MIN, HW_VERDICT_VOLUME_MAX)) {
        return HW_STATUS_RANGE;
    }
    if (!(left < start)) {
        return HW_STATUS_NONE;
    }
    *rate = (start - left) / hours * 24.0;
    *capacity = *rate * volume;
    return HW_STATUS_OK;
}

int hw_verdict_feed_carried(double capacity, double protein, double working, double colder,
                            double *feed, double *working_feed)
{
    *feed = *working_feed = HW_NO_ANSWER;
    if (!hw_within(capacity, HW_VERDICT_CAPACITY_MIN, HW_VERDICT_CAPACITY_MAX) ||
        !hw_within(protein, HW_VERDICT_PROTEIN_SHARE_MIN, HW_VERDICT_PROTEIN_SHARE_MAX) ||
        !hw_within(working, HW_VERDICT_WORKING_SHARE_MIN, HW_VERDICT_WORKING_SHARE_MAX) ||
        !hw_within(colder, HW_VERDICT_COLDER_MIN, HW_VERDICT_COLDER_MAX)) {
        return HW_STATUS_RANGE;
    }
    *feed = capacity / (protein * HW_VERDICT_NITROGEN_OF_PROTEIN);
    *working_feed = *feed * working * pow(HW_VERDICT_THETA, -colder);
    return HW_STATUS_OK;
}

int hw_verdict_hours(double tan, double nitrite, double half_tan, double half_nitrite, double rate,
                     double *hours)
{
    *hours = HW_NO_ANSWER;
    if (!is_nitrogen(tan) || !is_nitrogen(nitrite) ||
        !hw_within(half_tan, HW_VERDICT_HALF_MIN, HW_VERDICT_HALF_MAX) ||
        !hw_within(half_nitrite, HW_VERDICT_HALF_MIN, HW_VERDICT_HALF_MAX) ||
        !hw_within(rate, HW_VERDICT_RATE_MIN, HW_VERDICT_RATE_MAX)) {
        return HW_STATUS_RANGE;
    }
    double above = fmax(tan - half_tan, 0.0) + fmax(nitrite - half_nitrite, 0.0);
    if (!(above > 0.0)) {
        return HW_STATUS_NONE;
    }
    *hours = above / rate * 24.0;
    return HW_STATUS_OK;
}
