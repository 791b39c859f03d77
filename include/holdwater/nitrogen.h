/* holdwater/nitrogen.h - one amount of total ammonia, counted in three ways.
 *
 * Test kits state total ammonia (NH3 and NH4+ together) as nitrogen, as ammonia or as ammonium.
 * The number of moles is the same; the milligrams are not: 1 mg/L as N is 1.2159 mg/L as NH3 and
 * 1.2879 mg/L as NH4.
 */
#ifndef HOLDWATER_NITROGEN_H
#define HOLDWATER_NITROGEN_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of an amount, in any unit of mass or of mass per volume. */
#define HW_NITROGEN_MIN 0.0
#define HW_NITROGEN_MAX 1e6

/* What the milligrams of a reading count. All three count every nitrogen atom of NH3 and NH4+. */
enum hw_nitrogen_basis {
    HW_NITROGEN_N = 0,   /* nitrogen: "NH3-N", "NH4-N", "TAN" */
    HW_NITROGEN_NH3 = 1, /* ammonia: "NH3" */
    HW_NITROGEN_NH4 = 2  /* ammonium: "NH4" */
};

/* hw_nitrogen_to_n - an amount in a kit's basis, as nitrogen.
 *
 * Given
 *   basis    what the amount counts
 *   amount   in any unit of mass or concentration, HW_NITROGEN_MIN to HW_NITROGEN_MAX
 * Returned
 *   as_n     the same amount as nitrogen, in the same unit
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (basis), HW_STATUS_RANGE (amount)
 * Notes
 *  1. as_n = amount x 14.007 / M, M being the molar mass of the basis; exact for nitrogen.
 *  2. "As NH3" counts all the nitrogen at 17.031 g/mol: it is not the share that is NH3.
 * Source
 *   IUPAC, abridged standard atomic weights: N 14.007, H 1.008.
 */
int hw_nitrogen_to_n(enum hw_nitrogen_basis basis, double amount, double *as_n);

/* hw_nitrogen_from_n - an amount as nitrogen, in a kit's basis.
 *
 * Given
 *   basis    what the result is to count
 *   as_n     amount as nitrogen, HW_NITROGEN_MIN to HW_NITROGEN_MAX
 * Returned
 *   amount   the same in the basis asked, in the same unit; at most 1.288 times as_n
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (basis), HW_STATUS_RANGE (as_n)
 * Notes
 *  1. amount = as_n x M / 14.007; exact for nitrogen. The round trip is good to 2 units in the
 *     last place, not to the bit.
 * Source
 *   As hw_nitrogen_to_n.
 */
int hw_nitrogen_from_n(enum hw_nitrogen_basis basis, double as_n, double *amount);

#ifdef __cplusplus
}
#endif

#endif
