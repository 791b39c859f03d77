/* holdwater/bath.h - a short bath in dye: how much of a stock makes a level, and the level that an
 * amount of stock makes.
 *
 * The dye is counted in the form that the label names: the trihydrate holds 85.5 % of the anhydrous
 * dye, and labels use either. Strengths are in mg/mL: 1 % w/v is 1 g in 100 mL, that is 10 mg/mL.
 */
#ifndef HOLDWATER_BATH_H
#define HOLDWATER_BATH_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of the water of a bath, L: a beaker to a transport tank. */
#define HW_BATH_VOLUME_MIN 0.1
#define HW_BATH_VOLUME_MAX 10000.0

/* Range of the strength of a stock, mg/mL: 0.01 to 10 % w/v. */
#define HW_BATH_STRENGTH_MIN 0.1
#define HW_BATH_STRENGTH_MAX 100.0

/* Range of the level of a bath, mg/L. */
#define HW_BATH_LEVEL_MIN 0.1
#define HW_BATH_LEVEL_MAX 50.0

/* Range of a dosing rate, mL of stock per L of water. */
#define HW_BATH_RATE_MIN 0.001
#define HW_BATH_RATE_MAX 10.0

/* Range of an amount of stock, mL: the most that the ranges above can ask for. */
#define HW_BATH_DYE_MIN 0.0
#define HW_BATH_DYE_MAX 5e6

/* hw_bath_dye - the stock that makes a level.
 *
 * Given
 *   volume    water of the bath, L, HW_BATH_VOLUME_MIN to HW_BATH_VOLUME_MAX
 *   strength  of the stock, mg/mL, HW_BATH_STRENGTH_MIN to HW_BATH_STRENGTH_MAX
 *   level     wanted, mg/L, HW_BATH_LEVEL_MIN to HW_BATH_LEVEL_MAX
 * Returned
 *   dye       mL of stock
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. dye = level x volume / strength.
 *  2. Not modelled: the volume of the stock itself (0.06 % of the bath for 6 mg/L from 10 mg/mL),
 *     and what the bucket, the fish and light take out of the water.
 * Source
 *   Conservation of mass.
 */
int hw_bath_dye(double volume, double strength, double level, double *dye);

/* hw_bath_dye_at_rate - the stock that a dosing rate comes to.
 *
 * Given
 *   volume  water of the bath, L, HW_BATH_VOLUME_MIN to HW_BATH_VOLUME_MAX
 *   rate    mL of stock per L of water, HW_BATH_RATE_MIN to HW_BATH_RATE_MAX
 * Returned
 *   dye     mL of stock
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. dye = rate x volume. Whether the level it makes is one of a bath, hw_bath_level tells.
 * Source
 *   Conservation of volume.
 */
int hw_bath_dye_at_rate(double volume, double rate, double *dye);

/* hw_bath_level - the level that an amount of stock makes.
 *
 * Given
 *   volume    water of the bath, L, HW_BATH_VOLUME_MIN to HW_BATH_VOLUME_MAX
 *   strength  of the stock, mg/mL, HW_BATH_STRENGTH_MIN to HW_BATH_STRENGTH_MAX
 *   dye       mL of stock, HW_BATH_DYE_MIN to HW_BATH_DYE_MAX
 * Returned
 *   level     mg/L; it may lie outside HW_BATH_LEVEL_MIN to HW_BATH_LEVEL_MAX
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. level = dye x strength / volume.
 *  2. Not modelled: as hw_bath_dye.
 * Source
 *   Conservation of mass.
 */
int hw_bath_level(double volume, double strength, double dye, double *level);

#ifdef __cplusplus
}
#endif

#endif
