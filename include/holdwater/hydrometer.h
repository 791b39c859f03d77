/* holdwater/hydrometer.h - salinity from a hydrometer, by way of density.
 *
 * A specific gravity "Tx/Ty" is the density of the liquid at Tx over that of pure water at Ty. The
 * two temperatures stand on the scale of the instrument and decide what its numbers mean: 1.0264 at
 * 25 degrees is salinity 35.0 on a scale 25C/25C, 37.4 on 60F/60F and 38.8 on 20C/4C.
 */
#ifndef HOLDWATER_HYDROMETER_H
#define HOLDWATER_HYDROMETER_H

#include "holdwater/seawater.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_HYDROMETER_READING_MIN   0.9
#define HW_HYDROMETER_READING_MAX   1.2
#define HW_HYDROMETER_SCALE_MIN     0.0 /* degrees Celsius, both temperatures of a scale */
#define HW_HYDROMETER_SCALE_MAX     40.0
#define HW_HYDROMETER_EXPANSION_MIN 0.0 /* per degree, of volume */
#define HW_HYDROMETER_EXPANSION_MAX 1e-3
#define HW_HYDROMETER_GLASS         25e-6 /* conventional expansion of a glass hydrometer */

/* The instrument: the two temperatures of its scale, and how its body expands. */
struct hw_hydrometer {
    double scale_temp; /* Tx, degrees Celsius: where the scale is right */
    double water_temp; /* Ty, degrees Celsius: the water it compares with */
    double expansion;  /* per degree: HW_HYDROMETER_GLASS, or 0 for no correction */
};

/* hw_hydrometer_density - density of the liquid a hydrometer floats in.
 *
 * Given
 *   hydrometer  its temperatures HW_HYDROMETER_SCALE_MIN to _SCALE_MAX, its expansion
 *               HW_HYDROMETER_EXPANSION_MIN to _EXPANSION_MAX
 *   reading     HW_HYDROMETER_READING_MIN to HW_HYDROMETER_READING_MAX
 *   temp        of the liquid, degrees Celsius, HW_SEAWATER_TEMP_MIN to HW_SEAWATER_TEMP_MAX
 * Returned
 *   density     kg/m3 at temp: reading x (water's density at Ty) / (1 + expansion (temp - Tx))
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. Pure water is water of salinity 0 by hw_seawater_density_at.
 *  2. A glass hydrometer grows with heat and floats higher: on a scale 60F/60F read at 25 degrees
 *     the correction is -0.32 in salinity. No standard was found for plastic swing arms.
 *  3. Surface tension, contact angle and temperature limit a user's hydrometer to 370 ppm or worse,
 *     0.5 in salinity. Not modelled.
 * Source
 *   ISO 1768:1975 for the expansion of glass (extract read); the definition of specific gravity.
 */
int hw_hydrometer_density(const struct hw_hydrometer *hydrometer, double reading, double temp,
                          double *density);

/* hw_hydrometer_reading - what a true hydrometer shows at the temperature of its scale.
 *
 * Given
 *   hydrometer  as hw_hydrometer_density; its expansion does not count here
 *   salinity    HW_SEAWATER_SALINITY_MIN to HW_SEAWATER_SALINITY_MAX
 * Returned
 *   reading     density of that water at Tx over that of pure water at Ty
 * Status
 *   HW_STATUS_OK; HW_STATUS_STRETCHED: as hw_seawater_density_at; HW_STATUS_RANGE
 * Notes
 *  1. Salinity 35: 1.02637 on 25C/25C, 1.02686 on 60F/60F, 1.02660 on 20C/20C, 1.02600 on 15C/4C,
 *     1.02479 on 20C/4C.
 * Source
 *   As hw_seawater_density_at.
 */
int hw_hydrometer_reading(const struct hw_hydrometer *hydrometer, double salinity, double *reading);

#ifdef __cplusplus
}
#endif

#endif
