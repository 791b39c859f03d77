/* volume.c - the water in a tank. */
#include "holdwater/volume.h"

#include "core/no_answer.h"
#include "core/range.h"

#include <stdbool.h>

static const double pi = 3.141592653589793;
static const double cm3_per_litre = 1000;
static const double rounding = 1e-12; /* relative: what is left of a sum that comes to nothing */

static bool is_side(double x)
{
    return hw_within(x, HW_VOLUME_SIDE_MIN, HW_VOLUME_SIDE_MAX);
}

static bool is_part(double x)
{
    return hw_within(x, HW_VOLUME_PART_MIN, HW_VOLUME_PART_MAX);
}

int hw_volume_inside(double outside, double wall, double *inside)
{
    *inside = HW_NO_ANSWER;
    if (!is_side(outside) || !hw_within(wall, HW_VOLUME_WALL_MIN, HW_VOLUME_WALL_MAX)) {
        return HW_STATUS_RANGE;
    }
    double left = outside - 2 * wall;
    if (left < HW_VOLUME_SIDE_MIN) {
        return HW_STATUS_NONE;
    }
    *inside = left;
    return HW_STATUS_OK;
}

int hw_volume_depth(double height, double below_rim, double bottom, double *depth)
{
    *depth = HW_NO_ANSWER;
    if (!is_side(height) ||
        !hw_within(below_rim, HW_VOLUME_BELOW_RIM_MIN, HW_VOLUME_BELOW_RIM_MAX) ||
        !hw_within(bottom, HW_VOLUME_BOTTOM_MIN, HW_VOLUME_BOTTOM_MAX)) {
        return HW_STATUS_RANGE;
    }
    double left = height - below_rim - bottom;
    if (left < HW_VOLUME_SIDE_MIN) {
        return HW_STATUS_NONE;
    }
    *depth = left;
    return HW_STATUS_OK;
}

int hw_volume_box(double length, double width, double depth, double *gross)
{
    *gross = HW_NO_ANSWER;
    if (!is_side(length) || !is_side(width) || !is_side(depth)) {
        return HW_STATUS_RANGE;
    }
    *gross = length * width * depth / cm3_per_litre;
    return HW_STATUS_OK;
}

int hw_volume_cylinder(double diameter, double depth, double *gross)
{
    *gross = HW_NO_ANSWER;
    if (!is_side(diameter) || !is_side(depth)) {
        return HW_STATUS_RANGE;
    }
    *gross = pi / 4 * diameter * diameter * depth / cm3_per_litre;
    return HW_STATUS_OK;
}

int hw_volume_net(double gross, double displaced, double extra, double *net)
{
    *net = HW_NO_ANSWER;
    if (!is_part(gross) || !is_part(displaced) || !is_part(extra)) {
        return HW_STATUS_RANGE;
    }
    double left = gross - displaced + extra;
    if (left <= rounding * displaced) {
        return HW_STATUS_NONE;
    }
    *net = left;
    return HW_STATUS_OK;
}

int hw_volume_gauge(double added, double rise, double *net)
{
    *net = HW_NO_ANSWER;
    if (!hw_within(added, HW_VOLUME_ADDED_MIN, HW_VOLUME_ADDED_MAX) ||
        !hw_within(rise, HW_VOLUME_RISE_MIN, HW_VOLUME_RISE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *net = added / rise;
    return HW_STATUS_OK;
}

int hw_volume_gauge_bicarbonate(double added, double rise, double *net)
{
    *net = HW_NO_ANSWER;
    if (!hw_within(added, HW_VOLUME_ADDED_MIN, HW_VOLUME_ADDED_MAX) ||
        !hw_within(rise, HW_VOLUME_ALKALINITY_MIN, HW_VOLUME_ALKALINITY_MAX)) {
        return HW_STATUS_RANGE;
    }
    *net = added / HW_MOLAR_SODIUM_BICARBONATE / rise;
    return HW_STATUS_OK;
}
