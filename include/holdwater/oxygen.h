/* holdwater/oxygen.h - oxygen that water holds in balance with air, and how long it lasts.
 */
#ifndef HOLDWATER_OXYGEN_H
#define HOLDWATER_OXYGEN_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Degrees Celsius; g/kg of sea salt, taken as practical salinity. */
#define HW_OXYGEN_TEMP_MIN        0.0
#define HW_OXYGEN_TEMP_MAX        40.0
#define HW_OXYGEN_SALINITY_MIN    0.0
#define HW_OXYGEN_SALINITY_MAX    45.0
#define HW_OXYGEN_SALINITY_FITTED 40.0 /* the equation was fitted up to here */

/* Pressure of the air, standard atmospheres of 101325 Pa. */
#define HW_OXYGEN_PRESSURE_MIN 0.5
#define HW_OXYGEN_PRESSURE_MAX 1.1

/* Metres above the sea: air pressure of 1.061 to 0.533 atm. */
#define HW_OXYGEN_ALTITUDE_MIN (-500.0)
#define HW_OXYGEN_ALTITUDE_MAX 5000.0

/* Dissolved oxygen, mg/L: water under pure oxygen holds about 40. */
#define HW_OXYGEN_LEVEL_MIN 0.0
#define HW_OXYGEN_LEVEL_MAX 50.0

/* Sealed water, L; fish in it, g; oxygen that a kilogram of them uses, mg in an hour. */
#define HW_OXYGEN_VOLUME_MIN  0.05
#define HW_OXYGEN_VOLUME_MAX  1e5
#define HW_OXYGEN_BIOMASS_MIN 0.01
#define HW_OXYGEN_BIOMASS_MAX 1e6
#define HW_OXYGEN_UPTAKE_MIN  10.0
#define HW_OXYGEN_UPTAKE_MAX  5000.0

/* One fish, g, and the sizes that the equation of uptake was fitted to. */
#define HW_OXYGEN_FISH_MIN     0.01
#define HW_OXYGEN_FISH_MAX     1e5
#define HW_OXYGEN_FISH_FIT_MIN 3.2
#define HW_OXYGEN_FISH_FIT_MAX 165.6

/* hw_oxygen_pressure - the pressure of the air at an altitude.
 *
 * Given
 *   altitude  metres above the sea, HW_OXYGEN_ALTITUDE_MIN to HW_OXYGEN_ALTITUDE_MAX
 * Returned
 *   pressure  atm
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. pressure = (1 - 0.0065 H / 288.15)^n, with H = 6356766 x altitude / (6356766 + altitude),
 *     the altitude as the model counts it, and n = 9.80665 x 0.0289644 / (8.31432 x 0.0065),
 *     5.2559.
 *  2. A mean: weather moves the pressure by about 3 % (recalled), not modelled. A barometer that is
 *     set to sea level, as forecasts are, does not show the pressure in the room.
 * Source
 *   US Standard Atmosphere 1976, lowest layer (formula and constants read in the definitions of the
 *   program GNU units 2.22).
 */
int hw_oxygen_pressure(double altitude, double *pressure);

/* hw_oxygen_pressure_share - what a pressure makes of the saturation at one atmosphere.
 *
 * Given
 *   temp      degrees Celsius, HW_OXYGEN_TEMP_MIN to HW_OXYGEN_TEMP_MAX
 *   pressure  of the moist air, atm, HW_OXYGEN_PRESSURE_MIN to HW_OXYGEN_PRESSURE_MAX
 * Returned
 *   share     1 at 1 atm
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. share = (P - u) (1 - theta P) / ((1 - u) (1 - theta)), with the pressure of water vapour
 *     u = exp(11.8571 - 3840.70/T - 216961/T^2) and
 *     theta = 0.000975 - 1.426e-5 t + 6.436e-8 t^2; T = t + 273.15.
 *  2. The vapour is that over fresh water; over sea water it is 2 % less, which moves the share by
 *     less than 0.1 %.
 * Source
 *   Benson & Krause 1984 (read in an open package and six public codes, not in the paper).
 */
int hw_oxygen_pressure_share(double temp, double pressure, double *share);

/* hw_oxygen_saturation - oxygen in water in balance with moist air.
 *
 * Given
 *   temp        degrees Celsius, HW_OXYGEN_TEMP_MIN to HW_OXYGEN_TEMP_MAX
 *   salinity    g/kg, HW_OXYGEN_SALINITY_MIN to HW_OXYGEN_SALINITY_MAX
 *   pressure    atm, HW_OXYGEN_PRESSURE_MIN to HW_OXYGEN_PRESSURE_MAX
 * Returned
 *   saturation  mg/L
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: salinity above HW_OXYGEN_SALINITY_FITTED;
 *   HW_STATUS_RANGE
 * Notes
 *  1. At one atmosphere ln saturation = -139.34411 + 1.575701e5/T - 6.642308e7/T^2 +
 *     1.243800e10/T^3 - 8.621949e11/T^4 - S (1.7674e-2 - 10.754/T + 2140.7/T^2); times the share of
 *     hw_oxygen_pressure_share.
 *  2. Within 0.03 % of the fit by Garcia & Gordon 1992 to the same measurements, for salinity 0 to
 *     40 and 0 to 40 degrees.
 *  3. The temperature is taken as given, on today's scale: the older scale of the equation would
 *     move the result by less than 0.02 %.
 *  4. Not modelled: air under pressure, as bubbles at depth have; pure oxygen; salt that is no sea
 *     salt.
 * Source
 *   Benson & Krause 1984 (as above).
 */
int hw_oxygen_saturation(double temp, double salinity, double pressure, double *saturation);

/* hw_oxygen_uptake - the oxygen that fish of a size use.
 *
 * Given
 *   fish    mass of one fish, g, HW_OXYGEN_FISH_MIN to HW_OXYGEN_FISH_MAX
 * Returned
 *   uptake  mg of oxygen that a kilogram of such fish uses in an hour, the mean of a day
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: outside HW_OXYGEN_FISH_FIT_MIN to HW_OXYGEN_FISH_FIT_MAX;
 *   HW_STATUS_RANGE
 * Notes
 *  1. uptake = 15.077 fish^-0.2452 g/kg/d, x 1000 / 24: 423 at 5 g, 357 at 10 g, 241 at 50 g. The
 *     study's highest rate, 17.266 fish^-0.2033, is 1.2 times as much at 5 g, 1.4 at 100 g.
 *  2. One flatfish, California halibut. Others differ: turbot 218 at 18 degrees at most.
 *  3. Not modelled: temperature (about twice for 10 degrees more), food, fright, sickness.
 * Source
 *   Merino, Piedrahita & Conklin 2009, Aquac. Eng. 41:166 (abstract).
 */
int hw_oxygen_uptake(double fish, double *uptake);

/* hw_oxygen_hours - how long oxygen lasts in water that is shut off from air.
 *
 * Given
 *   oxygen   at the start, mg/L, HW_OXYGEN_LEVEL_MIN to HW_OXYGEN_LEVEL_MAX
 *   floor    level not to fall below, mg/L, the same range
 *   volume   L of water, HW_OXYGEN_VOLUME_MIN to HW_OXYGEN_VOLUME_MAX
 *   biomass  g of fish, HW_OXYGEN_BIOMASS_MIN to HW_OXYGEN_BIOMASS_MAX
 *   uptake   mg of oxygen that a kilogram of fish uses in an hour, HW_OXYGEN_UPTAKE_MIN to
 *            HW_OXYGEN_UPTAKE_MAX
 * Returned
 *   hours    until the floor; 0 when oxygen is at it or below
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. hours = (oxygen - floor) x volume / (biomass / 1000 x uptake).
 *  2. Not modelled: what bacteria, dirt and medicines use, and what an open surface gives; fish
 *     that slow down, or panic, as it runs out.
 * Source
 *   Conservation of mass.
 */
int hw_oxygen_hours(double oxygen, double floor, double volume, double biomass, double uptake,
                    double *hours);

#ifdef __cplusplus
}
#endif

#endif
