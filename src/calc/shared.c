/* shared.c - what several calculations have in common. */
#include "calc/shared.h"

#include <math.h>

const char *const basis_words[] = {"n", "nh3", "nh4", NULL};
const char *const yes_no_words[] = {"yes", "no", NULL};
const char *const medicine_words[] = {
    "none", "copper",   "copper-ionic", "copper-amine", "copper-chelated",
    "dye",  "formalin", "antibiotic",   "binder",       "other",
    NULL};

double nitrogen_to_n(enum hw_nitrogen_basis basis, double amount)
{
    double as_n = NAN;
    hw_nitrogen_to_n(basis, amount, &as_n);
    return as_n;
}

double nitrogen_from_n(enum hw_nitrogen_basis basis, double as_n)
{
    double amount = NAN;
    hw_nitrogen_from_n(basis, as_n, &amount);
    return amount;
}

double basis_molar(enum hw_nitrogen_basis basis)
{
    static const double molar[] = {HW_MOLAR_N, HW_MOLAR_NH3, HW_MOLAR_NH4};
    return molar[basis];
}
