/* nitrite.c - nitrite as N or as the ion, and the chloride that stands against it. */
#include "holdwater/nitrite.h"

#include "core/no_answer.h"
#include "holdwater/molar.h"

/* Grams that hold one mole of nitrite, or 0 for a basis that does not exist. */
static double molar_mass(enum hw_nitrite_basis basis)
{
    switch (basis) {
    case HW_NITRITE_N:
        return HW_MOLAR_N;
    case HW_NITRITE_ION:
        return HW_MOLAR_NITRITE;
    }
    return 0.0;
}

static int in_range(double amount)
{
    return amount >= HW_NITRITE_MIN && amount <= HW_NITRITE_MAX;
}

static int converted(enum hw_nitrite_basis basis, double amount, double to_mass, double *result)
{
    double from_mass = molar_mass(basis);
    *result = HW_NO_ANSWER;
    if (from_mass == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!in_range(amount)) {
        return HW_STATUS_RANGE;
    }
    *result = amount * (to_mass / from_mass);
    return HW_STATUS_OK;
}

int hw_nitrite_to_n(enum hw_nitrite_basis basis, double amount, double *as_n)
{
    return converted(basis, amount, HW_MOLAR_N, as_n);
}

int hw_nitrite_to_ion(enum hw_nitrite_basis basis, double amount, double *as_ion)
{
    return converted(basis, amount, HW_MOLAR_NITRITE, as_ion);
}

int hw_nitrite_chloride_ratio(double chloride, double as_n, double *ratio)
{
    *ratio = HW_NO_ANSWER;
    if (!(chloride >= HW_NITRITE_CHLORIDE_MIN && chloride <= HW_NITRITE_CHLORIDE_MAX &&
          in_range(as_n))) {
        return HW_STATUS_RANGE;
    }
    if (as_n == 0.0) {
        return HW_STATUS_NONE;
    }
    *ratio = chloride / as_n;
    return HW_STATUS_OK;
}
