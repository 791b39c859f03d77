/* holdwater/refraction.h - salinity from refractive index and from refractometers with a brine
 * scale.
 */
#ifndef HOLDWATER_REFRACTION_H
#define HOLDWATER_REFRACTION_H

#include "holdwater/seawater.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_REFRACTION_INDEX_MIN       1.3
#define HW_REFRACTION_INDEX_MAX       1.4
#define HW_REFRACTION_TEMP_MIN        (-2.0) /* degrees Celsius */
#define HW_REFRACTION_TEMP_MAX        40.0
#define HW_REFRACTION_TEMP_FIT_MIN    0.0 /* where the equation was fitted */
#define HW_REFRACTION_TEMP_FIT_MAX    30.0
#define HW_REFRACTION_SALINITY_FITTED 35.0
#define HW_REFRACTION_BRINE_MIN       (-10.0) /* a reading on a brine scale, g/kg or g/L */
#define HW_REFRACTION_BRINE_MAX       100.0

/* The two brine scales: sodium chloride by mass of solution, or by volume. */
enum hw_refraction_brine { HW_REFRACTION_BRINE_GKG = 0, HW_REFRACTION_BRINE_GL = 1 };

/* What turns a reading on a brine scale into the salinity of sea water. */
#define HW_REFRACTION_BRINE_GKG_FACTOR 0.959
#define HW_REFRACTION_BRINE_GL_FACTOR  0.937

/* hw_refraction_index_at - refractive index of sea water in yellow light.
 *
 * Given
 *   temp      degrees Celsius, HW_REFRACTION_TEMP_MIN to HW_REFRACTION_TEMP_MAX
 *   salinity  HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   index     relative to air, at 589.3 nm (the sodium line)
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: outside 0 to 30 degrees, or above salinity 35;
 *   HW_STATUS_RANGE
 * Notes
 *  1. n = n0 + (n1 + n2 T + n3 T^2) S + n4 T^2 + (n5 + n6 S + n7 T) / L + n8 / L^2 + n9 / L^3,
 *     L = 589.3.
 *  2. Salinity 0 at 20 degrees: 1.33300; the handbook value relative to air is 1.3330.
 * Source
 *   Quan & Fry 1995, Applied Optics 34:3477, coefficients as in five public codes.
 */
int hw_refraction_index_at(double temp, double salinity, double *index);

/* hw_refraction_salinity - the salinity behind a refractive index.
 *
 * Given
 *   index     relative to air at 589.3 nm, in water at temp, HW_REFRACTION_INDEX_MIN to _INDEX_MAX
 *   temp      degrees Celsius, HW_REFRACTION_TEMP_MIN to HW_REFRACTION_TEMP_MAX
 * Returned
 *   salinity  HW_SEAWATER_SALINITY_READ_MIN to HW_SEAWATER_SALINITY_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: outside 0 to 30 degrees, or salinity below 0 or above 35;
 *   HW_STATUS_NONE: below HW_SEAWATER_SALINITY_READ_MIN or above HW_SEAWATER_SALINITY_MAX;
 *   HW_STATUS_RANGE
 * Notes
 *  1. The equation is linear in salinity: nothing is iterated. 0.0001 in the index is 0.55 in
 *     salinity.
 *  2. An instrument that compensates for temperature shows the index as at 20 degrees: then temp is
 *     20.
 * Source
 *   As hw_refraction_index_at.
 */
int hw_refraction_salinity(double index, double temp, double *salinity);

/* hw_refraction_salinity_by_brine - sea water read on the scale of a refractometer for brine.
 *
 * Given
 *   scale     which of the brine scales
 *   reading   g/kg or g/L, HW_REFRACTION_BRINE_MIN to HW_REFRACTION_BRINE_MAX
 * Returned
 *   salinity  HW_SEAWATER_SALINITY_READ_MIN to HW_SEAWATER_SALINITY_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity below 0 or above 35; HW_STATUS_NONE: below
 *   HW_SEAWATER_SALINITY_READ_MIN or above HW_SEAWATER_SALINITY_MAX; HW_STATUS_CHOICE;
 *   HW_STATUS_RANGE
 * Notes
 *  1. Sea salt bends light more than as much sodium chloride: real sea water reads high. Zeroed on
 *     pure water the instrument is right at 0 and about 4 % (g/kg) or 7 % (g/L) high at 35.
 *     Salinity is 0.959 x reading in g/kg, 0.937 x reading in g/L, good to about 1 %.
 *  2. As at 20 degrees, where both index tables hold: for instruments that compensate.
 * Source
 *   Computed: Quan & Fry 1995 against the sodium chloride table of the CRC Handbook, 102nd edition,
 *   n at 20 degrees (four decimals).
 */
int hw_refraction_salinity_by_brine(enum hw_refraction_brine scale, double reading,
                                    double *salinity);

/* hw_refraction_brine_reading - what a true refractometer for brine shows in sea water.
 *
 * Given
 *   scale     which of the brine scales
 *   salinity  of the sea water, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   reading   g/kg or g/L: 36.5 or 37.4 at 35
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above 35; HW_STATUS_CHOICE; HW_STATUS_RANGE
 * Notes
 *  1. The way back of hw_refraction_salinity_by_brine, for a standard of sea water.
 * Source
 *   As hw_refraction_salinity_by_brine.
 */
int hw_refraction_brine_reading(enum hw_refraction_brine scale, double salinity, double *reading);

#ifdef __cplusplus
}
#endif

#endif
