/* holdwater/criteria.h - published fresh-water limits of total ammonia.
 */
#ifndef HOLDWATER_CRITERIA_H
#define HOLDWATER_CRITERIA_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_CRITERIA_EPA2013_PH_MIN   5.0
#define HW_CRITERIA_EPA2013_PH_MAX   10.0
#define HW_CRITERIA_EPA2013_TEMP_MIN 0.0 /* degrees Celsius */
#define HW_CRITERIA_EPA2013_TEMP_MAX 40.0
#define HW_CRITERIA_EPA2013_TAN_MIN  0.0 /* mg N/L */
#define HW_CRITERIA_EPA2013_TAN_MAX  1e6

/* What the published tables cover (recalled, not read): outside, an answer is stretched. */
#define HW_CRITERIA_EPA2013_PH_TABLE_MIN   6.5
#define HW_CRITERIA_EPA2013_PH_TABLE_MAX   9.0
#define HW_CRITERIA_EPA2013_TEMP_TABLE_MAX 30.0

enum hw_criteria_limit {
    HW_CRITERIA_EPA2013_CCC = 0, /* chronic, mean of 30 days */
    HW_CRITERIA_EPA2013_CMC_PRESENT =
        1,                             /* acute, mean of one hour, with salmonids (Oncorhynchus) */
    HW_CRITERIA_EPA2013_CMC_ABSENT = 2 /* acute, mean of one hour, without salmonids */
};

/* hw_criteria_epa2013 - the limit of total ammonia in fresh water, US EPA 2013.
 *
 * Given
 *   which     which of the criteria
 *   ph        meter pH, HW_CRITERIA_EPA2013_PH_MIN to HW_CRITERIA_EPA2013_PH_MAX
 *   temp      degrees Celsius, HW_CRITERIA_EPA2013_TEMP_MIN to HW_CRITERIA_EPA2013_TEMP_MAX
 * Returned
 *   tan_n     total ammonia, mg N/L
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: pH outside 6.5 to 9.0 or above 30 degrees, where the
 *   published tables end (recalled, not read); HW_STATUS_CHOICE; HW_STATUS_RANGE
 * Notes
 *  1. With g = 0.0114 / (1 + 10^(7.204 - pH)) + 1.6181 / (1 + 10^(pH - 7.204)):
 *     CCC = 0.8876 (0.0278 / (1 + 10^(7.688 - pH)) + 1.1994 / (1 + 10^(pH - 7.688)))
 *           x 2.126 x 10^(0.028 (20 - max(t, 7)));
 *     CMC present = min(0.275 / (1 + 10^(7.204 - pH)) + 39.0 / (1 + 10^(pH - 7.204)),
 *           0.7249 g x 23.12 x 10^(0.036 (20 - t)));
 *     CMC absent = 0.7249 g x min(51.93, 23.12 x 10^(0.036 (20 - t))).
 *  2. Averaging: the CMC over one hour; the CCC over 30 days, and no 4 days above 2.5 times it;
 *     neither passed more than once in three years on the average.
 *  3. A criterion protects most species of wild fresh water, mussels among them. It is not a
 *     level at which a sick or newly shipped fish is well.
 *  4. Fresh water only: nothing here depends on salinity.
 * Source
 *   US EPA 2013, EPA-822-R-13-001; coefficients as in the Oregon DEQ Tables 30(a-c), which adopt
 *   them.
 */
int hw_criteria_epa2013(enum hw_criteria_limit which, double ph, double temp, double *tan_n);

/* hw_criteria_epa2013_ccc_ph - the pH at which the chronic criterion equals a given total ammonia.
 *
 * Given
 *   tan_n     total ammonia, mg N/L, HW_CRITERIA_EPA2013_TAN_MIN to HW_CRITERIA_EPA2013_TAN_MAX
 *   temp      degrees Celsius, HW_CRITERIA_EPA2013_TEMP_MIN to HW_CRITERIA_EPA2013_TEMP_MAX
 * Returned
 *   ph        above it the criterion is lower than tan_n; not limited to
 *             HW_CRITERIA_EPA2013_PH_MIN and HW_CRITERIA_EPA2013_PH_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: as hw_criteria_epa2013, at the pH found; HW_STATUS_NONE:
 *   tan_n is never reached, because it is below the criterion at any high pH or above it at any
 *   low one; HW_STATUS_RANGE
 * Notes
 *  1. Both terms of the CCC share the inflection 7.688, so with u = 10^(pH - 7.688) the criterion
 *     is k (0.0278 u + 1.1994) / (1 + u), k its factor of temperature, and
 *     u = (1.1994 - c) / (c - 0.0278), c = tan_n / k. Nothing is iterated.
 * Source
 *   As hw_criteria_epa2013, solved for pH.
 */
int hw_criteria_epa2013_ccc_ph(double tan_n, double temp, double *ph);

#ifdef __cplusplus
}
#endif

#endif
