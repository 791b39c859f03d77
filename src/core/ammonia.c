/* ammonia.c - the share of total ammonia that is free. */
#include "holdwater/ammonia.h"

#include "core/ammonia_kernel.h"
#include "core/no_answer.h"

static int ph_in_range(double ph)
{
    return ph >= HW_PH_MIN && ph <= HW_PH_MAX;
}

static int pk_in_range(double pk)
{
    return pk >= HW_AMMONIA_PK_MIN && pk <= HW_AMMONIA_PK_MAX;
}

/* Whether model and scale exist and go together. */
static int choice_stands(enum hw_ammonia_model model, enum hw_ph_scale scale)
{
    switch (model) {
    case HW_AMMONIA_KHOO1977:
    case HW_AMMONIA_EPA1989:
        return scale == HW_PH_METER;
    case HW_AMMONIA_CLEGG1995:
        return scale != HW_PH_METER && hw_scale_exists(scale);
    }
    return 0;
}

int hw_ammonia_pk(enum hw_ammonia_model model, enum hw_ph_scale scale, double temp, double salinity,
                  double *pk)
{
    *pk = HW_NO_ANSWER;
    if (!choice_stands(model, scale)) {
        return HW_STATUS_CHOICE;
    }
    if (!(temp >= HW_AMMONIA_TEMP_MIN && temp <= HW_AMMONIA_TEMP_MAX &&
          salinity >= HW_AMMONIA_SALINITY_MIN && salinity <= HW_AMMONIA_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *pk = hw_ammonia_pk_of(model, scale, temp, salinity);
    return hw_ammonia_stretched(model, scale, temp, salinity) ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_ammonia_fraction(enum hw_ammonia_model model, enum hw_ph_scale scale, double ph, double temp,
                        double salinity, double *fraction)
{
    *fraction = HW_NO_ANSWER;
    double pk = HW_NO_ANSWER;
    int status = hw_ammonia_pk(model, scale, temp, salinity, &pk);
    if (status < 0) {
        return status;
    }
    if (!ph_in_range(ph)) {
        return HW_STATUS_RANGE;
    }
    *fraction = hw_fraction_of(ph, pk);
    return status;
}

int hw_ammonia_fraction_at_pk(double ph, double pk, double *fraction)
{
    *fraction = HW_NO_ANSWER;
    if (!(ph_in_range(ph) && pk_in_range(pk))) {
        return HW_STATUS_RANGE;
    }
    *fraction = hw_fraction_of(ph, pk);
    return HW_STATUS_OK;
}

int hw_ammonia_ph_at(double fraction, double pk, double *ph)
{
    *ph = HW_NO_ANSWER;
    if (!(fraction >= 0.0 && fraction <= 1.0 && pk_in_range(pk))) {
        return HW_STATUS_RANGE;
    }
    if (fraction == 0.0 || fraction == 1.0) {
        return HW_STATUS_NONE;
    }
    *ph = hw_ph_of(fraction, pk);
    return HW_STATUS_OK;
}
