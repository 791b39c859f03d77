/* course.c - a course of dye in a tank, by the conservation of mass. */
#include "holdwater/course.h"

#include "core/no_answer.h"

#include <stdbool.h>

/* A level above a limit by less than this share of it is at the limit: sums round. */
static const double noise = 1e-9;

static bool is_exchanged(double x)
{
    return x >= HW_COURSE_EXCHANGED_MIN && x <= HW_COURSE_EXCHANGED_MAX;
}

static bool is_doses(int n)
{
    return n >= HW_COURSE_DOSES_MIN && n <= HW_COURSE_DOSES_MAX;
}

static int checked(enum hw_course_redose redose, bool first_in_range, double exchanged)
{
    if (redose != HW_COURSE_FULL && redose != HW_COURSE_REPLACE) {
        return HW_STATUS_CHOICE;
    }
    return first_in_range && is_exchanged(exchanged) ? HW_STATUS_OK : HW_STATUS_RANGE;
}

static bool is_first(double x)
{
    return x >= HW_COURSE_LEVEL_MIN && x <= HW_COURSE_LEVEL_MAX;
}

int hw_course_level(enum hw_course_redose redose, double first, double exchanged, int dose,
                    double *before, double *after)
{
    int status = checked(redose, is_first(first) && is_doses(dose), exchanged);
    *before = HW_NO_ANSWER;
    *after = HW_NO_ANSWER;
    if (status != HW_STATUS_OK) {
        return status;
    }
    *before = 0.0;
    *after = first;
    /* Dose by dose, as the keeper does it: the closed form loses digits when little is changed. */
    for (int n = 2; n <= dose; n++) {
        *before = *after * (1.0 - exchanged);
        *after = redose == HW_COURSE_FULL ? *before + first : first;
    }
    return HW_STATUS_OK;
}

int hw_course_ceiling(enum hw_course_redose redose, double first, double exchanged, double *ceiling)
{
    int status = checked(redose, is_first(first), exchanged);
    *ceiling = HW_NO_ANSWER;
    if (status == HW_STATUS_OK) {
        *ceiling = redose == HW_COURSE_FULL ? first / exchanged : first;
    }
    return status;
}

int hw_course_dose_over(enum hw_course_redose redose, double first, double exchanged, double limit,
                        double *dose)
{
    double ceiling = HW_NO_ANSWER;
    int status = hw_course_ceiling(redose, first, exchanged, &ceiling);
    *dose = HW_NO_ANSWER;
    if (status != HW_STATUS_OK) {
        return status;
    }
    if (!(limit >= HW_COURSE_LIMIT_MIN && limit <= HW_COURSE_LIMIT_MAX)) {
        return HW_STATUS_RANGE;
    }
    double most = limit * (1.0 + noise);
    if (first > most) {
        *dose = 1.0;
        return HW_STATUS_OK;
    }
    if (!(ceiling > most)) {
        return HW_STATUS_NONE;
    }
    /* Here exchanged is below 1, because with 1 the ceiling is the first level. */
    *dose = floor(log1p(-most / ceiling) / log1p(-exchanged)) + 1.0;
    return HW_STATUS_OK;
}

int hw_course_amounts(enum hw_course_redose redose, double dye, double exchanged, int doses,
                      double *again, double *total)
{
    bool is_dye = dye >= HW_COURSE_DYE_MIN && dye <= HW_COURSE_DYE_MAX;
    int status = checked(redose, is_dye && is_doses(doses), exchanged);
    *again = HW_NO_ANSWER;
    *total = HW_NO_ANSWER;
    if (status == HW_STATUS_OK) {
        *again = redose == HW_COURSE_FULL ? dye : dye * exchanged;
        *total = dye + (doses - 1) * *again;
    }
    return status;
}

int hw_course_water(double volume, double exchanged, int doses, double *water)
{
    *water = HW_NO_ANSWER;
    if (!(volume >= HW_COURSE_VOLUME_MIN && volume <= HW_COURSE_VOLUME_MAX) ||
        !is_exchanged(exchanged) || !is_doses(doses)) {
        return HW_STATUS_RANGE;
    }
    *water = (doses - 1) * exchanged * volume;
    return HW_STATUS_OK;
}
