/* holdwater/conductivity.h - salinity from electrical conductivity, and back.
 *
 * The practical salinity scale of 1978 (PSS-78) defines salinity by conductivity. Conductivities
 * are in mS/cm at the temperature of the water, without any compensation, unless it says otherwise.
 */
#ifndef HOLDWATER_CONDUCTIVITY_H
#define HOLDWATER_CONDUCTIVITY_H

#include "holdwater/seawater.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_CONDUCTIVITY_MIN            0.0 /* mS/cm */
#define HW_CONDUCTIVITY_MAX            100.0
#define HW_CONDUCTIVITY_TEMP_MIN       (-2.0) /* degrees Celsius, ITS-90 */
#define HW_CONDUCTIVITY_TEMP_MAX       40.0
#define HW_CONDUCTIVITY_TEMP_FITTED    35.0   /* the scale is defined up to here */
#define HW_CONDUCTIVITY_STANDARD       42.914 /* mS/cm at salinity 35 and 15 degrees, IPTS-68 */
#define HW_CONDUCTIVITY_RATIO_MIN      0.0
#define HW_CONDUCTIVITY_RATIO_MAX      2.0
#define HW_CONDUCTIVITY_PER_DEGREE_MIN 0.01 /* share of the conductivity at 25 degrees */
#define HW_CONDUCTIVITY_PER_DEGREE_MAX 0.03
#define HW_CONDUCTIVITY_LOW            2.0 /* salinity below which the extension of Hill holds */

/* hw_conductivity_ratio - conductivity against that of water of salinity 35 at the same
 * temperature.
 *
 * Given
 *   conductivity   mS/cm, HW_CONDUCTIVITY_MIN to HW_CONDUCTIVITY_MAX
 *   temp           degrees Celsius, HW_CONDUCTIVITY_TEMP_MIN to HW_CONDUCTIVITY_TEMP_MAX
 * Returned
 *   ratio          Rt = C / (42.914 rt)
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: above HW_CONDUCTIVITY_TEMP_FITTED; HW_STATUS_RANGE
 * Notes
 *  1. rt is a polynomial in the temperature on IPTS-68, t68 = 1.00024 t90. One atmosphere.
 *  2. 42.914 mS/cm turns the ratio of the scale into a conductivity; 42.9175, also met, is the
 *     conductivity of the same water at 15 degrees of today's temperature scale.
 * Source
 *   UNESCO 44 (Fofonoff & Millard 1983), equation 3; Culkin & Smith 1980 for 42.914, as quoted in
 *   three public codes.
 */
int hw_conductivity_ratio(double conductivity, double temp, double *ratio);

/* hw_conductivity_salinity_by_ratio - practical salinity by the formula of PSS-78 as published.
 *
 * Given
 *   ratio     Rt, HW_CONDUCTIVITY_RATIO_MIN to HW_CONDUCTIVITY_RATIO_MAX
 *   temp      degrees Celsius, HW_CONDUCTIVITY_TEMP_MIN to HW_CONDUCTIVITY_TEMP_MAX
 * Returned
 *   salinity  practical salinity, without the extension to low salinity and without limits
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity found below 2 or above 42, or above
 *   HW_CONDUCTIVITY_TEMP_FITTED; HW_STATUS_RANGE
 * Notes
 *  1. At ratio 1 and 15 degrees (IPTS-68) the published coefficients give 34.99999992.
 * Source
 *   UNESCO 44, equations 1 and 2.
 */
int hw_conductivity_salinity_by_ratio(double ratio, double temp, double *salinity);

/* hw_conductivity_salinity - practical salinity, fresh to salt.
 *
 * Given
 *   conductivity   mS/cm at temp, not compensated, HW_CONDUCTIVITY_MIN to HW_CONDUCTIVITY_MAX
 *   temp           degrees Celsius, HW_CONDUCTIVITY_TEMP_MIN to HW_CONDUCTIVITY_TEMP_MAX
 * Returned
 *   salinity       up to HW_SEAWATER_SALINITY_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: above HW_CONDUCTIVITY_TEMP_FITTED, salinity above 42, or
 *   below 0; HW_STATUS_NONE: salinity above HW_SEAWATER_SALINITY_MAX; HW_STATUS_RANGE
 * Notes
 *  1. From salinity 2 up it is PSS-78. Below 2 the correction of Hill, Dauphinee & Woods holds,
 *     times the factor that makes the two meet at 2 (the GSW variant; it differs from plain Hill by
 *     0.00034 at most for 0 to 35 degrees).
 *  2. Between 0 and 0.0007 to 0.0025 mS/cm (-2 to 40 degrees) the published equation dips to
 *     -0.0003 before it rises: the salinity is then told as found, just below 0, and stretched.
 *  3. A reading that a meter has compensated to 25 degrees must be undone first, or used with
 *     temp 25: entered with the water's temperature it is corrected twice, about 0.7 per degree.
 *  4. Below 2 the equation is for diluted sea water; the salts of tap water conduct differently.
 *     Not modelled: pressure, medicines, salts that are not sea salt.
 * Source
 *   UNESCO 44, equations 1 to 3; Hill, Dauphinee & Woods 1986, IEEE J. Oceanic Engineering 11:109,
 *   as in the GSW toolbox.
 */
int hw_conductivity_salinity(double conductivity, double temp, double *salinity);

/* hw_conductivity_at - conductivity of water of a given salinity.
 *
 * Given
 *   temp           degrees Celsius, HW_CONDUCTIVITY_TEMP_MIN to HW_CONDUCTIVITY_TEMP_MAX
 *   salinity       HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   conductivity   mS/cm at temp
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above 42, or above HW_CONDUCTIVITY_TEMP_FITTED;
 *   HW_STATUS_RANGE
 * Notes
 *  1. The inverse of hw_conductivity_salinity, found by false position in the square root of the
 *     ratio, between 0.2 and 1.25, or 0.004 and the root at salinity 2: salinity rises throughout
 *     either.
 *  2. Salinity 0 is conductivity 0. Just above 0 the answer begins at 0.0007 to 0.0025 mS/cm,
 *     where the dip of the equation ends.
 * Source
 *   As hw_conductivity_salinity.
 */
int hw_conductivity_at(double temp, double salinity, double *conductivity);

/* hw_conductivity_raw - what a meter that compensates to 25 degrees saw.
 *
 * Given
 *   at_25          the reading, mS/cm, HW_CONDUCTIVITY_MIN to HW_CONDUCTIVITY_MAX
 *   per_degree     the meter's own slope, a share of the reading, HW_CONDUCTIVITY_PER_DEGREE_MIN to
 *                  HW_CONDUCTIVITY_PER_DEGREE_MAX: 0.02 for 2 % per degree
 *   temp           of the water, HW_CONDUCTIVITY_TEMP_MIN to HW_CONDUCTIVITY_TEMP_MAX
 * Returned
 *   conductivity   mS/cm at temp: at_25 x (1 + per_degree x (temp - 25))
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. Linear compensation alone. The non-linear function for natural waters (EN 27888) is meant for
 *     60 to 1000 uS/cm and wrong for sea water by 2.5 % at 10 degrees: switch it off.
 *  2. The result may pass HW_CONDUCTIVITY_MAX.
 * Source
 *   Manuals of conductivity meters, several makers.
 */
int hw_conductivity_raw(double at_25, double per_degree, double temp, double *conductivity);

#ifdef __cplusplus
}
#endif

#endif
