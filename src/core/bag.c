/* bag.c - the ammonia that fish give off in a shut bag. */
#include "holdwater/bag.h"

#include "core/no_answer.h"

int hw_bag_total(double biomass, double excretion, double hours, double water, double *total)
{
    *total = HW_NO_ANSWER;
    if (!(biomass >= HW_BAG_BIOMASS_MIN && biomass <= HW_BAG_BIOMASS_MAX) ||
        !(excretion >= HW_BAG_EXCRETION_MIN && excretion <= HW_BAG_EXCRETION_MAX) ||
        !(hours >= HW_BAG_HOURS_MIN && hours <= HW_BAG_HOURS_MAX) ||
        !(water >= HW_BAG_WATER_MIN && water <= HW_BAG_WATER_MAX)) {
        return HW_STATUS_RANGE;
    }
    double sum = biomass / 1000.0 * excretion * hours / water;
    if (sum > HW_BAG_TOTAL_MAX) {
        return HW_STATUS_NONE;
    }
    *total = sum;
    return HW_STATUS_OK;
}
