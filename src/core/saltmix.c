/* saltmix.c - water made saltier or less salty, by the conservation of salt. */
#include "holdwater/saltmix.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <stdbool.h>

static bool is_volume(double x)
{
    return hw_within(x, HW_SALTMIX_VOLUME_MIN, HW_SALTMIX_VOLUME_MAX);
}

/* The density of the water that there is, and the checks that all questions share. */
static int start(double volume, double temp, double salinity, double target, double *density)
{
    int status = hw_seawater_density_at(temp, salinity, density);
    if (!is_volume(volume) ||
        !hw_within(target, HW_SEAWATER_SALINITY_MIN, HW_SEAWATER_SALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    return status;
}

int hw_saltmix_raise(double volume, double temp, double salinity, double target, double dry,
                     double *mass)
{
    double density = HW_NO_ANSWER;
    int status = start(volume, temp, salinity, target, &density);
    *mass = HW_NO_ANSWER;
    if (status < 0 || !hw_within(dry, HW_SALTMIX_DRY_MIN, HW_SALTMIX_DRY_MAX)) {
        return HW_STATUS_RANGE;
    }
    if (target < salinity) {
        return HW_STATUS_NONE;
    }
    *mass = volume * density * (target - salinity) / (1000.0 * dry - target);
    return status;
}

/* Water at 0 g/kg, at a temperature that was checked. */
static double fresh_density(double temp)
{
    double density = HW_NO_ANSWER;
    (void)hw_seawater_density_at(temp, 0.0, &density);
    return density;
}

int hw_saltmix_dilute(double volume, double temp, double salinity, double target, double *litres)
{
    double density = HW_NO_ANSWER;
    int status = start(volume, temp, salinity, target, &density);
    *litres = HW_NO_ANSWER;
    if (status < 0) {
        return status;
    }
    if (target > salinity || (target == 0.0 && salinity > 0.0)) {
        return HW_STATUS_NONE;
    }
    *litres = target == salinity
                  ? 0.0
                  : volume * density / fresh_density(temp) * (salinity - target) / target;
    return status;
}

int hw_saltmix_replace(double volume, double temp, double salinity, double target, double *litres)
{
    double density = HW_NO_ANSWER;
    int status = start(volume, temp, salinity, target, &density);
    *litres = HW_NO_ANSWER;
    if (status < 0) {
        return status;
    }
    if (target > salinity) {
        return HW_STATUS_NONE;
    }
    double excess = density * (salinity - target);
    *litres =
        target == salinity ? 0.0 : volume * (excess / (excess + fresh_density(temp) * target));
    return status;
}

int hw_saltmix_dry(double mass, double makes, double temp, double salinity, double *dry)
{
    double density = HW_NO_ANSWER;
    int status = hw_seawater_density_at(temp, salinity, &density);
    *dry = HW_NO_ANSWER;
    if (status < 0 || !is_volume(makes) ||
        !hw_within(mass, HW_SALTMIX_MASS_MIN, HW_SALTMIX_MASS_MAX)) {
        return HW_STATUS_RANGE;
    }
    double share = makes * density / 1000.0 * salinity / mass;
    if (!hw_within(share, HW_SALTMIX_DRY_MIN, HW_SALTMIX_LABEL_MAX)) {
        return HW_STATUS_NONE;
    }
    *dry = share;
    return status;
}
