/* oxygen.c - oxygen that water holds, and how long it lasts. */
#include "holdwater/oxygen.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <math.h>
#include <stdbool.h>

static bool is_level(double x)
{
    return hw_within(x, HW_OXYGEN_LEVEL_MIN, HW_OXYGEN_LEVEL_MAX);
}

static bool is_moist_air(double temp, double pressure)
{
    return hw_within(temp, HW_OXYGEN_TEMP_MIN, HW_OXYGEN_TEMP_MAX) &&
           hw_within(pressure, HW_OXYGEN_PRESSURE_MIN, HW_OXYGEN_PRESSURE_MAX);
}

static double kelvin(double temp)
{
    return temp + 273.15;
}

int hw_oxygen_pressure(double altitude, double *pressure)
{
    static const double earth = 6356766.0;  /* m, the radius that makes heights of equal work */
    static const double lapse = 0.0065;     /* K/m */
    static const double sea_level = 288.15; /* K */
    static const double exponent = 9.80665 * 0.0289644 / (8.31432 * 0.0065);
    *pressure = HW_NO_ANSWER;
    if (!hw_within(altitude, HW_OXYGEN_ALTITUDE_MIN, HW_OXYGEN_ALTITUDE_MAX)) {
        return HW_STATUS_RANGE;
    }
    double height = earth * altitude / (earth + altitude);
    *pressure = pow(1.0 - lapse / sea_level * height, exponent);
    return HW_STATUS_OK;
}

/* Arguments in range. Oxygen follows its own pressure, that of the air less the water vapour; theta
 * is how far it is from an ideal gas. */
static double pressure_share(double temp, double pressure)
{
    double t = kelvin(temp);
    double vapour = exp(11.8571 - 3840.70 / t - 216961.0 / (t * t));
    double theta = 0.000975 - 1.426e-5 * temp + 6.436e-8 * temp * temp;
    return (pressure - vapour) * (1.0 - theta * pressure) / ((1.0 - vapour) * (1.0 - theta));
}

int hw_oxygen_pressure_share(double temp, double pressure, double *share)
{
    *share = HW_NO_ANSWER;
    if (!is_moist_air(temp, pressure)) {
        return HW_STATUS_RANGE;
    }
    *share = pressure_share(temp, pressure);
    return HW_STATUS_OK;
}

/* mg/L at one atmosphere, as a logarithm: by rising powers of 1/T, fresh water and what a g/kg of
 * salt takes away. */
static double log_at_one_atm(double temp, double salinity)
{
    static const double fresh[] = {-139.34411, 1.575701e5, -6.642308e7, 1.243800e10, -8.621949e11};
    static const double salt[] = {1.7674e-2, -10.754, 2140.7};
    double r = 1.0 / kelvin(temp);
    double water = fresh[0] + r * (fresh[1] + r * (fresh[2] + r * (fresh[3] + r * fresh[4])));
    return water - salinity * (salt[0] + r * (salt[1] + r * salt[2]));
}

int hw_oxygen_saturation(double temp, double salinity, double pressure, double *saturation)
{
    *saturation = HW_NO_ANSWER;
    if (!is_moist_air(temp, pressure) ||
        !hw_within(salinity, HW_OXYGEN_SALINITY_MIN, HW_OXYGEN_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *saturation = exp(log_at_one_atm(temp, salinity)) * pressure_share(temp, pressure);
    return salinity > HW_OXYGEN_SALINITY_FITTED ? HW_STATUS_STRETCHED : HW_STATUS_OK;
}

int hw_oxygen_uptake(double fish, double *uptake)
{
    static const double mg_per_kg_hour = 1000.0 / 24.0; /* in a g/kg/d */
    *uptake = HW_NO_ANSWER;
    if (!hw_within(fish, HW_OXYGEN_FISH_MIN, HW_OXYGEN_FISH_MAX)) {
        return HW_STATUS_RANGE;
    }
    *uptake = 15.077 * pow(fish, -0.2452) * mg_per_kg_hour;
    return hw_within(fish, HW_OXYGEN_FISH_FIT_MIN, HW_OXYGEN_FISH_FIT_MAX) ? HW_STATUS_OK
                                                                           : HW_STATUS_STRETCHED;
}

int hw_oxygen_hours(double oxygen, double floor, double volume, double biomass, double uptake,
                    double *hours)
{
    *hours = HW_NO_ANSWER;
    if (!is_level(oxygen) || !is_level(floor) ||
        !hw_within(volume, HW_OXYGEN_VOLUME_MIN, HW_OXYGEN_VOLUME_MAX) ||
        !hw_within(biomass, HW_OXYGEN_BIOMASS_MIN, HW_OXYGEN_BIOMASS_MAX) ||
        !hw_within(uptake, HW_OXYGEN_UPTAKE_MIN, HW_OXYGEN_UPTAKE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *hours = fmax(oxygen - floor, 0.0) * volume / (biomass / 1000.0 * uptake);
    return HW_STATUS_OK;
}
