/* holdwater/bag.h - the ammonia that fish give off in a shut bag.
 *
 * How much of it is free, shut and opened, ammonia.h tells: hw_ammonia_fraction at the pH of each.
 */
#ifndef HOLDWATER_BAG_H
#define HOLDWATER_BAG_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of the fish in a bag, g: a larva to a hauling tank. */
#define HW_BAG_BIOMASS_MIN 0.01
#define HW_BAG_BIOMASS_MAX 1e5

/* Range of excretion, mg of ammonia as N per kg of fish and hour: fish that starve in cold water to
 * small ones just fed. */
#define HW_BAG_EXCRETION_MIN 0.1
#define HW_BAG_EXCRETION_MAX 100.0

/* Range of the time in the bag, h: to a week. */
#define HW_BAG_HOURS_MIN 0.1
#define HW_BAG_HOURS_MAX 168.0

/* Range of its water, L. */
#define HW_BAG_WATER_MIN 0.01
#define HW_BAG_WATER_MAX 1e4

/* Most total ammonia that is taken for water with fish in it, mg/L as N. */
#define HW_BAG_TOTAL_MAX 1000.0

/* hw_bag_total - total ammonia of a bag, from what is in it and for how long.
 *
 * Given
 *   biomass    of the fish, g, HW_BAG_BIOMASS_MIN to HW_BAG_BIOMASS_MAX
 *   excretion  mg of ammonia as N per kg of fish and hour, HW_BAG_EXCRETION_MIN to
 *              HW_BAG_EXCRETION_MAX
 *   hours      since the bag was shut, HW_BAG_HOURS_MIN to HW_BAG_HOURS_MAX
 *   water      in it, L, HW_BAG_WATER_MIN to HW_BAG_WATER_MAX
 * Returned
 *   total      mg/L as N
 * Status
 *   HW_STATUS_OK
 *   HW_STATUS_NONE: it comes out above HW_BAG_TOTAL_MAX, which is no bag with live fish
 *   HW_STATUS_RANGE
 * Notes
 *  1. total = biomass / 1000 x excretion x hours / water.
 *  2. Excretion differs by more than tenfold with kind, size, temperature and the last meal:
 *     starved flounder 2.3 (15 to 91 g) and 7.6 (1.5 to 6.5 g) at 20 C, turbot 1.8 to 2.0 at 12 C,
 *     gilthead bream 10 to 16 at 24 C between meals and 25 to 70 after one.
 *  3. Not modelled: ammonia that was in the water before, the fall of excretion as the hours pass,
 *     what binders and zeolite take up.
 * Source
 *   Conservation of mass.
 */
int hw_bag_total(double biomass, double excretion, double hours, double water, double *total);

#ifdef __cplusplus
}
#endif

#endif
