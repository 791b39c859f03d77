/* holdwater/nitrite.h - nitrite counted in two ways, and the chloride that stands against it.
 *
 * Test kits state nitrite as nitrogen or as the ion NO2. The number of moles is the same; the
 * milligrams are not: 1 mg/L as N is 3.2844 mg/L as the ion.
 */
#ifndef HOLDWATER_NITRITE_H
#define HOLDWATER_NITRITE_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of an amount, in any unit of mass or of mass per volume. */
#define HW_NITRITE_MIN 0.0
#define HW_NITRITE_MAX 1e6

/* Chloride, mg/L. */
#define HW_NITRITE_CHLORIDE_MIN 0.0
#define HW_NITRITE_CHLORIDE_MAX 1e6

/* What the milligrams of a reading count. */
enum hw_nitrite_basis {
    HW_NITRITE_N = 0,  /* nitrogen: "NO2-N" */
    HW_NITRITE_ION = 1 /* the ion: "NO2" */
};

/* hw_nitrite_to_n - nitrite in a kit's basis, as nitrogen.
 *
 * Given
 *   basis    what the amount counts
 *   amount   in any unit of mass or concentration, HW_NITRITE_MIN to HW_NITRITE_MAX
 * Returned
 *   as_n     the same amount as nitrogen, in the same unit
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (basis), HW_STATUS_RANGE (amount)
 * Notes
 *  1. as_n = amount x 14.007 / 46.005 for the ion; exact for nitrogen.
 *  2. Nitrous acid HNO2 is not told apart: at the pH of tanks it is below a thousandth.
 * Source
 *   IUPAC, abridged standard atomic weights: N 14.007, O 15.999.
 */
int hw_nitrite_to_n(enum hw_nitrite_basis basis, double amount, double *as_n);

/* hw_nitrite_to_ion - nitrite in a kit's basis, as the ion NO2.
 *
 * Given
 *   basis    what the amount counts
 *   amount   in any unit of mass or concentration, HW_NITRITE_MIN to HW_NITRITE_MAX
 * Returned
 *   as_ion   the same amount as the ion, in the same unit; at most 3.2845 times the amount
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (basis), HW_STATUS_RANGE (amount)
 * Notes
 *  1. as_ion = amount x 46.005 / 14.007 for nitrogen; exact for the ion.
 * Source
 *   As hw_nitrite_to_n.
 */
int hw_nitrite_to_ion(enum hw_nitrite_basis basis, double amount, double *as_ion);

/* hw_nitrite_chloride_ratio - how many times the nitrite there is chloride, by mass.
 *
 * Given
 *   chloride  mg/L, HW_NITRITE_CHLORIDE_MIN to HW_NITRITE_CHLORIDE_MAX
 *   as_n      nitrite as nitrogen, mg/L, HW_NITRITE_MIN to HW_NITRITE_MAX
 * Returned
 *   ratio     chloride / as_n
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE, HW_STATUS_NONE (there is no nitrite)
 * Notes
 *  1. Gills take nitrite up in the place of chloride: what protects is a ratio, not an amount.
 *  2. A ratio is no safe level: species differ, and some are not protected.
 * Source
 *   Arithmetic.
 */
int hw_nitrite_chloride_ratio(double chloride, double as_n, double *ratio);

#ifdef __cplusplus
}
#endif

#endif
