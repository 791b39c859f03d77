/* holdwater/bioload.h - the ammonia that food, fish and what is dead give off in a day, and what
 * that does to water that no filter clears.
 *
 * Nitrogen is counted as N: total ammonia, mg of nitrogen.
 */
#ifndef HOLDWATER_BIOLOAD_H
#define HOLDWATER_BIOLOAD_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Food, g a day; fish, g; food in a day as a share of the mass of fish. */
#define HW_BIOLOAD_FEED_MIN         0.0
#define HW_BIOLOAD_FEED_MAX         1e5
#define HW_BIOLOAD_BIOMASS_MIN      0.01
#define HW_BIOLOAD_BIOMASS_MAX      5e5
#define HW_BIOLOAD_RATION_SHARE_MIN 1e-4
#define HW_BIOLOAD_RATION_SHARE_MAX 0.2

/* Protein in food as it is fed, a share of its mass. */
#define HW_BIOLOAD_PROTEIN_SHARE_MIN 0.03
#define HW_BIOLOAD_PROTEIN_SHARE_MAX 0.9

/* Ammonia nitrogen given off, g from a gram of protein fed. HW_BIOLOAD_FACTOR is a design figure
 * and recalled: 0.16 of protein is nitrogen, times 0.80 taken up, 0.80 given off, 0.90 of that as
 * ammonia. */
#define HW_BIOLOAD_FACTOR_MIN 0.03
#define HW_BIOLOAD_FACTOR_MAX 0.16
#define HW_BIOLOAD_FACTOR     0.092

/* Nitrogen in protein, g/g: all of it comes out of what rots. */
#define HW_BIOLOAD_WHOLE 0.16

/* Mass of what is dead or rots, g, and the least share of protein it is counted with: a dead
 * fish has 15 to 18 % (recalled). */
#define HW_BIOLOAD_DEAD_MIN           0.0
#define HW_BIOLOAD_DEAD_MAX           1e5
#define HW_BIOLOAD_DEAD_PROTEIN_SHARE 0.18

/* What fish that are not fed give off, mg of nitrogen from a kg in an hour. */
#define HW_BIOLOAD_STARVED_MIN 0.1
#define HW_BIOLOAD_STARVED_MAX 100.0

/* Nitrogen given off, mg a day; water, L; a rise, mg in a litre and day; a limit of total ammonia,
 * mg/L. */
#define HW_BIOLOAD_PRODUCTION_MIN 0.0
#define HW_BIOLOAD_PRODUCTION_MAX 3e7
#define HW_BIOLOAD_VOLUME_MIN     0.1
#define HW_BIOLOAD_VOLUME_MAX     1e5
#define HW_BIOLOAD_RISE_MIN       0.0
#define HW_BIOLOAD_RISE_MAX       3e8
#define HW_BIOLOAD_RISE_LEAST     1e-15 /* less is none */
#define HW_BIOLOAD_LIMIT_MIN      0.001
#define HW_BIOLOAD_LIMIT_MAX      1e6

/* hw_bioload_daily_feed - the food that a mass of fish gets in a day.
 *
 * Given
 *   biomass   g of living fish, HW_BIOLOAD_BIOMASS_MIN to HW_BIOLOAD_BIOMASS_MAX
 *   ration    food in a day as a share of biomass, HW_BIOLOAD_RATION_SHARE_MIN to
 *             HW_BIOLOAD_RATION_SHARE_MAX
 * Returned
 *   feed      g a day
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. feed = biomass x ration. What is fed and what is eaten count the same.
 * Source
 *   Arithmetic.
 */
int hw_bioload_daily_feed(double biomass, double ration, double *feed);

/* hw_bioload_from_feed - the ammonia that food turns into by way of the fish.
 *
 * Given
 *   feed      g a day, HW_BIOLOAD_FEED_MIN to HW_BIOLOAD_FEED_MAX
 *   protein   share of the food as it is fed, HW_BIOLOAD_PROTEIN_SHARE_MIN to
 *             HW_BIOLOAD_PROTEIN_SHARE_MAX
 *   factor    g of nitrogen from a gram of protein, HW_BIOLOAD_FACTOR_MIN to HW_BIOLOAD_FACTOR_MAX
 * Returned
 *   nitrogen  mg a day
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. nitrogen = 1000 x feed x protein x factor.
 *  2. HW_BIOLOAD_FACTOR is 57.5 % of the nitrogen in the food. Ammonia measured in the first day
 *     after a meal is 20 to 30 % of it, factor 0.032 to 0.048; the rest comes later, out of faeces.
 *  3. Not modelled: the hours of the day (ammonia peaks 3 to 8 hours after a meal), size,
 *     temperature, urea, and what fish give off that are not fed.
 * Source
 *   Design figure of aquaculture, P = feed x protein x 0.092 (recalled).
 */
int hw_bioload_from_feed(double feed, double protein, double factor, double *nitrogen);

/* hw_bioload_from_dead - the ammonia that what is dead or rots turns into.
 *
 * Given
 *   dead      g, HW_BIOLOAD_DEAD_MIN to HW_BIOLOAD_DEAD_MAX
 *   protein   share of the food, HW_BIOLOAD_PROTEIN_SHARE_MIN to HW_BIOLOAD_PROTEIN_SHARE_MAX
 * Returned
 *   nitrogen  mg, all of it
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. nitrogen = 1000 x dead x p x HW_BIOLOAD_WHOLE, p being protein or
 *     HW_BIOLOAD_DEAD_PROTEIN_SHARE, whichever is more: a dead fish is not less than that because
 *     the food is watery.
 *  2. All at once: how fast it rots is not modelled.
 * Source
 *   Protein is 16 % nitrogen (extension text on feeding, read).
 */
int hw_bioload_from_dead(double dead, double protein, double *nitrogen);

/* hw_bioload_starved - the ammonia that fish give off that are not fed.
 *
 * Given
 *   biomass   g of living fish, HW_BIOLOAD_BIOMASS_MIN to HW_BIOLOAD_BIOMASS_MAX
 *   rate      mg of nitrogen from a kg in an hour, HW_BIOLOAD_STARVED_MIN to HW_BIOLOAD_STARVED_MAX
 * Returned
 *   nitrogen  mg a day
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. nitrogen = biomass / 1000 x rate x 24.
 *  2. Read: 1.8 to 7.6 in starved flounder and turbot at 12 and 20 degrees, the smaller the fish
 *     the more; 10 to 16 in gilthead bream at rest, 24 degrees.
 * Source
 *   Arithmetic.
 */
int hw_bioload_starved(double biomass, double rate, double *nitrogen);

/* hw_bioload_rise - how fast total ammonia rises with nothing to clear it.
 *
 * Given
 *   production  mg of nitrogen a day, HW_BIOLOAD_PRODUCTION_MIN to HW_BIOLOAD_PRODUCTION_MAX
 *   volume      L, HW_BIOLOAD_VOLUME_MIN to HW_BIOLOAD_VOLUME_MAX
 * Returned
 *   rise        mg/L a day
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. rise = production / volume.
 * Source
 *   Conservation of nitrogen.
 */
int hw_bioload_rise(double production, double volume, double *rise);

/* hw_bioload_hours - how long until total ammonia is at a limit.
 *
 * Given
 *   rise      mg/L a day, HW_BIOLOAD_RISE_MIN to HW_BIOLOAD_RISE_MAX
 *   limit     mg/L, HW_BIOLOAD_LIMIT_MIN to HW_BIOLOAD_LIMIT_MAX
 * Returned
 *   hours     from no ammonia at all
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE; HW_STATUS_NONE: rise is below
 *   HW_BIOLOAD_RISE_LEAST, that is, nothing rises
 * Notes
 *  1. hours = 24 x limit / rise.
 * Source
 *   Conservation of nitrogen.
 */
int hw_bioload_hours(double rise, double limit, double *hours);

/* hw_bioload_change - the water to change each day so that total ammonia never passes a limit.
 *
 * Given
 *   rise, limit   as hw_bioload_hours
 * Returned
 *   exchanged     new water over water in the tank, once a day, 0 to 1
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE; HW_STATUS_NONE: not even all the water, once a day, is enough
 * Notes
 *  1. In the steady state what a day brings is what a change takes, exchanged x the level just
 *     before it, which is the highest of the day: exchanged = rise / limit.
 *  2. The new water is taken to hold no ammonia. A rise above the limit by less than a
 *     thousand-millionth of it counts as the limit.
 * Source
 *   Conservation of nitrogen.
 */
int hw_bioload_change(double rise, double limit, double *exchanged);

#ifdef __cplusplus
}
#endif

#endif
