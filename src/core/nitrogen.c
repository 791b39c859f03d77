/* nitrogen.c - one amount of total ammonia, counted as N, NH3 or NH4. */
#include "holdwater/nitrogen.h"

#include "core/no_answer.h"

/* Grams that hold one mole of nitrogen, or 0 for a basis that does not exist. */
static double molar_mass(enum hw_nitrogen_basis basis)
{
    switch (basis) {
    case HW_NITROGEN_N:
        return HW_MOLAR_N;
    case HW_NITROGEN_NH3:
        return HW_MOLAR_NH3;
    case HW_NITROGEN_NH4:
        return HW_MOLAR_NH4;
    }
    return 0.0;
}

static int converted(double amount, double from_mass, double to_mass, double *result)
{
    *result = HW_NO_ANSWER;
    if (from_mass == 0.0 || to_mass == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!(amount >= HW_NITROGEN_MIN && amount <= HW_NITROGEN_MAX)) {
        return HW_STATUS_RANGE;
    }
    *result = amount * (to_mass / from_mass);
    return HW_STATUS_OK;
}

int hw_nitrogen_to_n(enum hw_nitrogen_basis basis, double amount, double *as_n)
{
    return converted(amount, molar_mass(basis), HW_MOLAR_N, as_n);
}

int hw_nitrogen_from_n(enum hw_nitrogen_basis basis, double as_n, double *amount)
{
    return converted(as_n, HW_MOLAR_N, molar_mass(basis), amount);
}
