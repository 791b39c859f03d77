/* holdwater/blend.h - two waters mixed: by mass, with heat, salt and what is dissolved conserved.
 */
#ifndef HOLDWATER_BLEND_H
#define HOLDWATER_BLEND_H

#include "holdwater/carbonate.h"
#include "holdwater/ph.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Share of the volume that is new water. */
#define HW_BLEND_SHARE_MIN 0.0
#define HW_BLEND_SHARE_MAX 1.0

/* Total ammonia of either water, mg/L: no fish lives in more. */
#define HW_BLEND_TAN_MIN 0.0
#define HW_BLEND_TAN_MAX 200.0

/* How two waters mix. */
struct hw_blend {
    double mass_share; /* of the mixture that is new water */
    double heat_share; /* of its heat capacity that is the new water's */
    double temp;       /* of the mixture, degrees Celsius */
    double salinity;   /* of the mixture, g/kg */
    double per_old;    /* litres of the old water in a litre of the mixture ... */
    double per_new;    /* ... and of the new; the two need not add up to 1 */
};

/* hw_blend_mix - temperature, salinity and proportions of two waters mixed.
 *
 * Given
 *   share          of the volume poured together that is new, HW_BLEND_SHARE_MIN to _MAX
 *   temp, salinity        of the old water, degrees Celsius and g/kg,
 *                         HW_CARBONATE_TEMP_MIN to _MAX, HW_PH_SALINITY_MIN to _MAX
 *   new_temp, new_salinity  of the new water, the same ranges
 * Returned
 *   blend          all parts; each NaN without an answer
 * Status
 *   HW_STATUS_STRETCHED: a salinity above what the equation of density was fitted to;
 *   HW_STATUS_RANGE
 * Notes
 *  1. mass_share w = x r2 / ((1 - x) r1 + x r2), with densities r1 and r2.
 *  2. salinity is (1 - w) s1 + w s2; temp is (1 - q) t1 + q t2, with q = w c2 / ((1 - w) c1 + w c2)
 *     and c the specific heat capacities. The heat of mixing is not modelled: fresh and sea water
 *     mixed are some 0.005 degrees cooler, up to 0.05 in cold brine.
 *  3. The heat capacities are used up to 45 g/kg and 40 degrees without a status of their own:
 *     there they are within 0.13 % of the TEOS-10 standard.
 *  4. per_old = (1 - w) r / r1 and per_new = w r / r2, with r the density of the mixture.
 * Source
 *   Conservation of mass; density and heat capacity as in seawater.h.
 */
int hw_blend_mix(double share, double temp, double salinity, double new_temp, double new_salinity,
                 struct hw_blend *blend);

/* hw_blend_level - what a litre of the mixture holds of something conserved.
 *
 * Given
 *   blend   as hw_blend_mix found it
 *   level   in the old water, per litre, in any unit
 *   fresh   in the new water, the same unit
 * Returned
 *   mixed   the level in the mixture
 * Status
 *   HW_STATUS_OK; HW_STATUS_RANGE: the blend has no answer, or a level is not finite
 * Notes
 *  1. level x per_old + fresh x per_new: the mass is conserved, so per kilogram it is
 *     (1 - w) a1 + w a2.
 *  2. Holds for alkalinity, dissolved carbon, total ammonia, a medicine; not for pH or free
 *     ammonia.
 * Source
 *   Conservation of mass.
 */
int hw_blend_level(const struct hw_blend *blend, double level, double fresh, double *mixed);

#ifdef __cplusplus
}
#endif

#endif
