/* binder.c - what binds ammonia in water, and the oxygen that it takes. */
#include "holdwater/binder.h"

#include "core/no_answer.h"
#include "holdwater/molar.h"

#include <stdbool.h>

/* Grams in a mole of agent, and the moles of O2 that take its sulfur to sulfate. */
struct agent {
    double molar, oxygen;
};

static const struct agent agents[] = {
    [HW_BINDER_SULFONATE] = {HW_MOLAR_HYDROXYMETHANESULFONATE, 0.5},
    [HW_BINDER_SULFINATE] = {HW_MOLAR_HYDROXYMETHANESULFINATE, 1.0},
    [HW_BINDER_SULFINATE_DIHYDRATE] = {HW_MOLAR_HYDROXYMETHANESULFINATE_DIHYDRATE, 1.0},
};

static bool is_agent(enum hw_binder agent)
{
    return (unsigned)agent < sizeof agents / sizeof agents[0];
}

static bool is_purity(double x)
{
    return x >= HW_BINDER_PURITY_SHARE_MIN && x <= HW_BINDER_PURITY_SHARE_MAX;
}

static bool is_volume(double x)
{
    return x >= HW_BINDER_VOLUME_MIN && x <= HW_BINDER_VOLUME_MAX;
}

int hw_binder_ratio(enum hw_binder agent, double *ratio)
{
    *ratio = HW_NO_ANSWER;
    if (!is_agent(agent)) {
        return HW_STATUS_CHOICE;
    }
    *ratio = agents[agent].molar / HW_MOLAR_N;
    return HW_STATUS_OK;
}

int hw_binder_powder(enum hw_binder agent, double nitrogen, double excess, double purity,
                     double *mass)
{
    double ratio = HW_NO_ANSWER;
    int status = hw_binder_ratio(agent, &ratio);
    *mass = HW_NO_ANSWER;
    if (status < 0) {
        return status;
    }
    if (!(nitrogen >= HW_BINDER_NITROGEN_MIN && nitrogen <= HW_BINDER_NITROGEN_MAX) ||
        !(excess >= HW_BINDER_EXCESS_MIN && excess <= HW_BINDER_EXCESS_MAX) || !is_purity(purity)) {
        return HW_STATUS_RANGE;
    }
    *mass = nitrogen * ratio * excess / purity / 1000.0;
    return HW_STATUS_OK;
}

int hw_binder_oxygen_taken(enum hw_binder agent, double mass, double purity, double volume,
                           double *oxygen)
{
    *oxygen = HW_NO_ANSWER;
    if (!is_agent(agent)) {
        return HW_STATUS_CHOICE;
    }
    if (!(mass >= HW_BINDER_MASS_MIN && mass <= HW_BINDER_MASS_MAX) || !is_purity(purity) ||
        !is_volume(volume)) {
        return HW_STATUS_RANGE;
    }
    double moles = mass * purity / agents[agent].molar;
    *oxygen = 1000.0 * moles * agents[agent].oxygen * HW_MOLAR_OXYGEN / volume;
    return HW_STATUS_OK;
}

int hw_binder_by_label(double dose, double per, double binds, double volume, double total,
                       double *amount)
{
    *amount = HW_NO_ANSWER;
    if (!(dose >= HW_BINDER_DOSE_MIN && dose <= HW_BINDER_DOSE_MAX) ||
        !(per >= HW_BINDER_PER_MIN && per <= HW_BINDER_PER_MAX) ||
        !(binds >= HW_BINDER_BINDS_MIN && binds <= HW_BINDER_BINDS_MAX) || !is_volume(volume) ||
        !(total >= HW_BINDER_TOTAL_MIN && total <= HW_BINDER_TOTAL_MAX)) {
        return HW_STATUS_RANGE;
    }
    *amount = dose * (volume / per) * (total / binds);
    return HW_STATUS_OK;
}
