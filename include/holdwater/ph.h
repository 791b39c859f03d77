/* holdwater/ph.h - scales of pH in fresh, brackish and sea water.
 *
 * In salt water a pH is a number on one of several scales, which differ by up to 0.15. A meter
 * calibrated in fresh-water buffers reads near the NBS scale; TRIS buffers in synthetic sea water
 * and dyes read by a spectrophotometer give the total scale.
 */
#ifndef HOLDWATER_PH_H
#define HOLDWATER_PH_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_PH_MIN          5.0
#define HW_PH_MAX          10.0
#define HW_PH_TEMP_MIN     0.0 /* degrees Celsius: the range of the sulfate constant */
#define HW_PH_TEMP_MAX     45.0
#define HW_PH_SALINITY_MIN 0.0 /* g/kg */
#define HW_PH_SALINITY_MAX 45.0

enum hw_ph_scale {
    HW_PH_METER = 0,        /* a meter calibrated in fresh-water buffers, the number as read */
    HW_PH_NBS_RIGOROUS = 1, /* activity of H+ by NBS buffers, liquid junction included */
    HW_PH_TOTAL = 2,        /* free H+ and HSO4-, mol per kg of solution */
    HW_PH_FREE = 3,         /* free H+, mol per kg of solution */
    HW_PH_SWS = 4           /* sea water scale: free H+, HSO4- and HF, mol per kg of solution */
};

/* hw_ph_offset - how far a scale lies from the free scale.
 *
 * Given
 *   scale     the scale
 *   temp      degrees Celsius, HW_PH_TEMP_MIN to HW_PH_TEMP_MAX
 *   salinity  g/kg, HW_PH_SALINITY_MIN to HW_PH_SALINITY_MAX
 * Returned
 *   offset    (pH on that scale) - (pH on the free scale); 0 for the free scale itself. A pK moves
 *             between scales by the same amount as a pH.
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: scale is meter or nbs-rigorous and the salinity is above 3
 *   and below 20, or above 40; HW_STATUS_CHOICE; HW_STATUS_RANGE
 * Notes
 *  1. total: -log10(1 + ST/KS). sws: -log10(1 + ST/KS + FT/KF). ST and FT are the total sulfate
 *     and fluoride of sea water of that salinity, KS and KF the constants of HSO4- and HF.
 *  2. nbs-rigorous: -log10(phi), phi being the activity of H+ by NBS buffers over the free H+.
 *     From salinity 9 up phi = fH (1 + ST/KS + FT/KF), where fH was measured at salinity 20 to 40
 *     and holds the liquid junction; its authors' successors call it old and uncertain. Up to
 *     salinity 3 log10(phi) is the Davies equation. Between 3 and 9 the two are joined by the
 *     smooth weight x x (3 - 2 x), x = (S - 3) / 6. The join is this library's own: the curves
 *     cross near salinity 6, within 0.002 at 10 to 25 degrees and 0.011 at 40. What lies between 3
 *     and 20 is therefore told as stretched.
 *  3. meter is treated as nbs-rigorous here: it is what a well-kept meter would read. The
 *     constants of ammonia.h that are used with a meter's pH take the number as read and need no
 *     offset.
 *  4. One electrode differs from another by 0.01 to 0.05 at its junction (recalled, not sourced);
 *     not modelled.
 *  5. The offset is continuous. Its slope is infinite at salinity 0 on the meter and nbs-rigorous
 *     scales, where it starts as the square root of the ionic strength.
 *  6. Composition is that of sea salt. Waters made otherwise have other sulfate and fluoride.
 * Source
 *   ST: Morris & Riley 1966. FT: Riley 1965. KS: Dickson 1990, 0 to 45 degrees, free scale.
 *   KF: Dickson & Riley 1979, free scale. fH: Takahashi et al. 1982, GEOSECS Pacific Expedition,
 *   page 80. Ionic strength: DOE 1994. Davies equation with A = 1.8246e6 / (eps T)^1.5, eps of
 *   water by Malmberg & Maryott 1956 (its coefficients recalled, not read).
 */
int hw_ph_offset(enum hw_ph_scale scale, double temp, double salinity, double *offset);

/* hw_ph_convert - a pH from one scale to another.
 *
 * Given
 *   ph         on the scale `from`, HW_PH_MIN to HW_PH_MAX
 *   from, to   the two scales
 *   temp       degrees Celsius, HW_PH_TEMP_MIN to HW_PH_TEMP_MAX
 *   salinity   g/kg, HW_PH_SALINITY_MIN to HW_PH_SALINITY_MAX
 * Returned
 *   converted  on the scale `to`; it may pass HW_PH_MIN or HW_PH_MAX by the difference of the two
 *              offsets
 * Status
 *   As hw_ph_offset for the two scales; the graver counts.
 * Notes
 *  1. converted = ph + (offset of `to` - offset of `from`).
 * Source
 *   As hw_ph_offset.
 */
int hw_ph_convert(double ph, enum hw_ph_scale from, enum hw_ph_scale to, double temp,
                  double salinity, double *converted);

#ifdef __cplusplus
}
#endif

#endif
