/* challenge.c - ammonia to prove a filter, and what nitrifying it takes. */
#include "holdwater/challenge.h"

#include "core/no_answer.h"
#include "holdwater/molar.h"

static int nitrogen_in_range(double nitrogen)
{
    return nitrogen >= HW_CHALLENGE_NITROGEN_MIN && nitrogen <= HW_CHALLENGE_NITROGEN_MAX;
}

int hw_challenge_salt_mass(enum hw_challenge_salt salt, double purity, double nitrogen,
                           double *mass)
{
    *mass = HW_NO_ANSWER;
    if (salt != HW_CHALLENGE_AMMONIUM_CHLORIDE && salt != HW_CHALLENGE_AMMONIUM_SULFATE) {
        return HW_STATUS_CHOICE;
    }
    if (!(purity >= HW_CHALLENGE_PURITY_SHARE_MIN && purity <= HW_CHALLENGE_PURITY_SHARE_MAX &&
          nitrogen_in_range(nitrogen))) {
        return HW_STATUS_RANGE;
    }
    double per_nitrogen = salt == HW_CHALLENGE_AMMONIUM_CHLORIDE
                              ? HW_MOLAR_AMMONIUM_CHLORIDE / HW_MOLAR_N
                              : HW_MOLAR_AMMONIUM_SULFATE / (2.0 * HW_MOLAR_N);
    *mass = nitrogen * per_nitrogen / purity / 1000.0;
    return HW_STATUS_OK;
}

/* Per cent NH3 by mass, kg/L at 20 degrees. */
static const double densities[][2] = {
    {0.5, 0.9960}, {1, 0.9938},  {2, 0.9895},  {5, 0.9770},  {10, 0.9575}, {15, 0.9396},
    {20, 0.9228},  {24, 0.9102}, {26, 0.9040}, {28, 0.8980}, {30, 0.8920},
};

int hw_challenge_solution_density(double nh3_percent, double *density)
{
    *density = HW_NO_ANSWER;
    if (!(nh3_percent >= HW_CHALLENGE_NH3_PERCENT_MIN &&
          nh3_percent <= HW_CHALLENGE_NH3_PERCENT_MAX)) {
        return HW_STATUS_RANGE;
    }
    int i = 1;
    while (nh3_percent > densities[i][0]) {
        i++;
    }
    double share = (nh3_percent - densities[i - 1][0]) / (densities[i][0] - densities[i - 1][0]);
    *density = densities[i - 1][1] * (1.0 - share) + densities[i][1] * share;
    return HW_STATUS_OK;
}

int hw_challenge_solution_nitrogen(double nh3_percent, double *strength)
{
    double density;
    int status = hw_challenge_solution_density(nh3_percent, &density);
    *strength = 10.0 * nh3_percent * density * (HW_MOLAR_N / HW_MOLAR_NH3);
    return status;
}

int hw_challenge_nitrified(enum hw_challenge_source from, double nitrogen, double *nitrate,
                           double *oxygen, double *alkalinity)
{
    *nitrate = *oxygen = *alkalinity = HW_NO_ANSWER;
    if (from != HW_CHALLENGE_FROM_AMMONIUM && from != HW_CHALLENGE_FROM_AMMONIA) {
        return HW_STATUS_CHOICE;
    }
    if (!nitrogen_in_range(nitrogen)) {
        return HW_STATUS_RANGE;
    }
    double equivalents = from == HW_CHALLENGE_FROM_AMMONIUM ? 2.0 : 1.0;
    *nitrate = nitrogen * HW_MOLAR_NITRATE / HW_MOLAR_N;
    *oxygen = nitrogen * 2.0 * HW_MOLAR_OXYGEN / HW_MOLAR_N;
    *alkalinity = nitrogen * equivalents * (HW_MOLAR_CALCIUM_CARBONATE / 2.0) / HW_MOLAR_N;
    return HW_STATUS_OK;
}
