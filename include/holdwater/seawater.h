/* holdwater/seawater.h - density, heat capacity, ionic strength and chloride of sea water, fresh to
 * salt, and the salinity behind a density.
 */
#ifndef HOLDWATER_SEAWATER_H
#define HOLDWATER_SEAWATER_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Salinity, g/kg (taken as practical salinity), and temperature, degrees Celsius on ITS-90. */
#define HW_SEAWATER_SALINITY_MIN      0.0
#define HW_SEAWATER_SALINITY_MAX      45.0
#define HW_SEAWATER_SALINITY_FITTED   42.0 /* the equation of density was fitted up to here */
#define HW_SEAWATER_TEMP_MIN          (-2.0)
#define HW_SEAWATER_TEMP_MAX          40.0
#define HW_SEAWATER_SALINITY_READ_MIN (-0.5) /* instruments may read this far below fresh water */

/* A density, kg/m3, that a salinity is asked for. */
#define HW_SEAWATER_DENSITY_MIN 800.0
#define HW_SEAWATER_DENSITY_MAX 1300.0

/* Where the equation of heat capacity was fitted. */
#define HW_SEAWATER_HEAT_SALINITY_FITTED 40.0
#define HW_SEAWATER_HEAT_TEMP_FROM       0.0
#define HW_SEAWATER_HEAT_TEMP_TO         35.0

/* Salinity is 1.80655 times chlorinity; of chlorinity 0.9989 is chloride (the rest is bromide,
 * which chlorinity counts as chloride). */
#define HW_SEAWATER_SALINITY_PER_CHLORINITY 1.80655
#define HW_SEAWATER_CHLORIDE_PER_CHLORINITY 0.9989

/* hw_seawater_density_at - density at one atmosphere.
 *
 * Given
 *   temp      temperature, degrees Celsius, ITS-90, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 *   salinity  practical salinity, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
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
int hw_seawater_density_at(double temp, double salinity, double *density);

/* hw_seawater_salinity_by_density - the salinity of water of a given density.
 *
 * Given
 *   density   kg/m3 at temp, HW_SEAWATER_DENSITY_MIN to HW_SEAWATER_DENSITY_MAX
 *   temp      degrees Celsius, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 * Returned
 *   salinity  HW_SEAWATER_SALINITY_READ_MIN to HW_SEAWATER_SALINITY_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity below 0 or above HW_SEAWATER_SALINITY_FITTED;
 *   HW_STATUS_NONE: below HW_SEAWATER_SALINITY_READ_MIN or above HW_SEAWATER_SALINITY_MAX;
 *   HW_STATUS_RANGE
 * Notes
 *  1. The inverse of hw_seawater_density_at, found by false position between 0 and
 *     HW_SEAWATER_SALINITY_MAX: density rises by more than 0.7 kg/m3 per unit of salinity
 *     everywhere.
 *  2. Below the density of pure water the straight line of the slope at 0 goes on: so that an
 *     instrument a little off in fresh water can be told from one that is wrong.
 * Source
 *   As hw_seawater_density_at.
 */
int hw_seawater_salinity_by_density(double density, double temp, double *salinity);

/* hw_seawater_specific_heat - specific heat capacity at one atmosphere.
 *
 * Given
 *   temp, salinity  as for hw_seawater_density_at
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
int hw_seawater_specific_heat(double temp, double salinity, double *capacity);

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

/* hw_seawater_chloride_at - chloride in water of sea salt.
 *
 * Given
 *   temp      temperature of the litre, degrees Celsius, HW_SEAWATER_TEMP_MIN to
 *             HW_SEAWATER_TEMP_MAX
 *   salinity  g/kg, HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   chloride  mg/L of the ion Cl
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above HW_SEAWATER_SALINITY_FITTED;
 *   HW_STATUS_RANGE
 * Notes
 *  1. chloride = 0.9989 x salinity / 1.80655 x density, the density in kg/m3: 0.553 of
 *     the salinity by mass, 19 353 mg/kg and 19 832 mg/L at 35 g/kg and 20 degrees.
 *  2. Between 0 and 40 degrees the litre moves it by less than 1 %.
 *  3. Salt of oceanic composition. Salt mixes differ by some per cent; chloride of tap water, plain
 *     salt and other salts are not modelled.
 * Source
 *   Chlorinity: S = 1.80655 Cl as open code of sea-water chemistry has it. 0.9989: composition of
 *   reference sea water, chloride 19.353 g/kg at a chlorinity of 19.374 (recalled). Density: as
 *   hw_seawater_density_at.
 */
int hw_seawater_chloride_at(double temp, double salinity, double *chloride);

#ifdef __cplusplus
}
#endif

#endif
