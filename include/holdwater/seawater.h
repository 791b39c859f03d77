/* holdwater/seawater.h - density, heat capacity and ionic strength of sea water, fresh to salt.
 */
#ifndef HOLDWATER_SEAWATER_H
#define HOLDWATER_SEAWATER_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Salinity, g/kg (taken as practical salinity), and temperature, degrees Celsius on ITS-90. */
#define HW_SEAWATER_SALINITY_MIN    0.0
#define HW_SEAWATER_SALINITY_MAX    45.0
#define HW_SEAWATER_SALINITY_FITTED 42.0 /* the equation of density was fitted up to here */
#define HW_SEAWATER_TEMP_MIN        (-2.0)
#define HW_SEAWATER_TEMP_MAX        40.0

/* Where the equation of heat capacity was fitted. */
#define HW_SEAWATER_HEAT_SALINITY_FITTED 40.0
#define HW_SEAWATER_HEAT_TEMP_FROM       0.0
#define HW_SEAWATER_HEAT_TEMP_TO         35.0

/* hw_seawater_density - density at one atmosphere.
 *
 * Given
 *   salinity  practical salinity, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 *   temp      temperature, degrees Celsius, ITS-90, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 * Returned
 *   density   kg/m3
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above HW_SEAWATER_SALINITY_FITTED;
 *   HW_STATUS_RANGE
 * Notes
 *  1. The equation is written in the older scale IPTS-68; the temperature is brought to it by
 *     t68 = 1.00024 t90. Leaving that out would cost up to 0.004 kg/m3.
 *  2. One atmosphere: the depth of a tank adds about 0.0045 kg/m3 per metre, not modelled. Nor is
 *     dissolved air.
 *  3. Sea salt of oceanic composition. Within 0.009 kg/m3 of the TEOS-10 standard for salinity 0 to
 *     42 and 0 to 40 degrees.
 *  4. Salt that is not sea salt, and medicines, are not modelled.
 * Source
 *   Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, equations 13 and 14
 *   (the equation of state of 1980, Millero & Poisson 1981, Deep-Sea Research 28A:625-629); the
 *   relation of the two temperature scales as oceanography uses it.
 */
int hw_seawater_density(double salinity, double temp, double *density);

/* hw_seawater_heat_capacity - specific heat capacity at one atmosphere.
 *
 * Given
 *   salinity, temp  as for hw_seawater_density
 * Returned
 *   capacity   J/(kg K)
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above HW_SEAWATER_HEAT_SALINITY_FITTED, or a
 *   temperature outside HW_SEAWATER_HEAT_TEMP_FROM to _TO; HW_STATUS_RANGE
 * Notes
 *  1. Standard deviation of the fit 0.5 J/(kg K). Within 5.1 J/(kg K), 0.13 %, of the TEOS-10
 *     standard for salinity 0 to 45 and 0 to 40 degrees.
 *  2. Written in IPTS-68, as the density is; the size of the kelvin is not converted (0.024 %, and
 *     nothing in a ratio of two capacities).
 * Source
 *   Fofonoff & Millard 1983, UNESCO Technical Papers in Marine Science 44, equation 26.
 */
int hw_seawater_heat_capacity(double salinity, double temp, double *capacity);

/* hw_seawater_ionic_strength - formal ionic strength.
 *
 * Given
 *   salinity  practical salinity, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   molal     mol per kg of pure water: I = 19.924 S / (1000 - 1.005 S)
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. Formal: every ion counted as free, none as paired.
 *  2. Fresh water has salinity 0 and so ionic strength 0 here; the 0.002 to 0.02 that hardness
 *     gives it is not modelled.
 * Source
 *   DOE 1994, Handbook of methods for the analysis of the various parameters of the carbon dioxide
 *   system in sea water, chapter 5.
 */
int hw_seawater_ionic_strength(double salinity, double *molal);

#ifdef __cplusplus
}
#endif

#endif
