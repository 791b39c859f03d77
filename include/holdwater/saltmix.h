/* holdwater/saltmix.h - water made saltier with dry salt, or less salty with fresh water.
 *
 * Salinity is counted by mass: grams of sea salt in a kilogram of the water that holds it. Volumes
 * of water are turned into masses by density, and salt is conserved.
 */
#ifndef HOLDWATER_SALTMIX_H
#define HOLDWATER_SALTMIX_H

#include "holdwater/seawater.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Litres of water; grams of a product. Salinities and temperatures: as HW_SEAWATER_... */
#define HW_SALTMIX_VOLUME_MIN 0.1
#define HW_SALTMIX_VOLUME_MAX 1e5
#define HW_SALTMIX_MASS_MIN   1.0
#define HW_SALTMIX_MASS_MAX   1e6

/* Sea salt in a product, as a share of its mass; the rest is water bound in it. A mix with all its
 * magnesium, calcium and strontium as the common hydrates has 0.85 (computed). */
#define HW_SALTMIX_DRY_MIN 0.5
#define HW_SALTMIX_DRY_MAX 1.0

/* What a label may claim: a little more than there is, by rounding. */
#define HW_SALTMIX_LABEL_MAX 1.05

/* hw_saltmix_raise - the product to dissolve in water so that it reaches a salinity.
 *
 * Given
 *   volume    L of water before the salt, HW_SALTMIX_VOLUME_MIN to HW_SALTMIX_VOLUME_MAX
 *   temp      of the water, degrees Celsius, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 *   salinity  of that water, g/kg, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 *   target    salinity to reach, g/kg, the same range
 *   dry       sea salt in the product, HW_SALTMIX_DRY_MIN to HW_SALTMIX_DRY_MAX
 * Returned
 *   mass      g of product; 0 when the water is at the target
 * Status
 *   As hw_seawater_density_at of that water; HW_STATUS_NONE: target is below salinity;
 *   HW_STATUS_RANGE
 * Notes
 *  1. mass = 1000 m (target - salinity) / (1000 dry - target), with m = volume x density / 1000,
 *     the mass of the water in kg.
 *  2. Salinity is taken as g/kg. A practical salinity of 35 is 35.165 g/kg: as much too little
 *     salt, 0.5 %, when the target is meant so.
 *  3. Not modelled: salt that does not dissolve or falls out again, and salt that is no sea salt.
 * Source
 *   Conservation of mass; density as hw_seawater_density_at.
 */
int hw_saltmix_raise(double volume, double temp, double salinity, double target, double dry,
                     double *mass);

/* hw_saltmix_dilute - the fresh water to add so that water falls to a salinity.
 *
 * Given
 *   volume, temp, salinity, target   as hw_saltmix_raise
 * Returned
 *   litres    of fresh water at that temperature; 0 when the water is at the target
 * Status
 *   As hw_saltmix_raise; HW_STATUS_NONE: target is above salinity, or 0 while salinity is not
 * Notes
 *  1. litres = volume x density / fresh density x (salinity / target - 1).
 * Source
 *   As hw_saltmix_raise.
 */
int hw_saltmix_dilute(double volume, double temp, double salinity, double target, double *litres);

/* hw_saltmix_replace - the water to take out, and to replace by as much fresh water, so that what
 * is left falls to a salinity.
 *
 * Given
 *   volume, temp, salinity, target   as hw_saltmix_raise
 * Returned
 *   litres    out, and in; 0 when the water is at the target, all of it when target is 0
 * Status
 *   As hw_saltmix_raise; HW_STATUS_NONE: target is above salinity
 * Notes
 *  1. litres = volume / (1 + fresh density / density x target / (salinity - target)).
 *  2. Out first, then in and mixed. What is taken out while it runs in is not modelled.
 * Source
 *   As hw_saltmix_raise.
 */
int hw_saltmix_replace(double volume, double temp, double salinity, double target, double *litres);

/* hw_saltmix_dry - the sea salt in a product by what its label says it makes.
 *
 * Given
 *   mass      g of product, HW_SALTMIX_MASS_MIN to HW_SALTMIX_MASS_MAX
 *   makes     L of finished salt water that it makes, HW_SALTMIX_VOLUME_MIN to
 *             HW_SALTMIX_VOLUME_MAX
 *   temp      of that water, degrees Celsius, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 *   salinity  of that water, g/kg, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   dry       g of sea salt in a g of product, HW_SALTMIX_DRY_MIN to HW_SALTMIX_LABEL_MAX
 * Status
 *   As hw_seawater_density_at of the finished water; HW_STATUS_NONE: the share is outside these;
 *   HW_STATUS_RANGE
 * Notes
 *  1. dry = makes x density / 1000 x salinity / mass.
 *  2. More than 1 cannot be: a label rounds, or means practical salinity (0.5 %) or litres before
 *     the salt (1 %). Do not use more than HW_SALTMIX_DRY_MAX.
 * Source
 *   As hw_saltmix_raise.
 */
int hw_saltmix_dry(double mass, double makes, double temp, double salinity, double *dry);

#ifdef __cplusplus
}
#endif

#endif
