/* holdwater/buffer.h - what to weigh to raise alkalinity.
 */
#ifndef HOLDWATER_BUFFER_H
#define HOLDWATER_BUFFER_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Litres of water; alkalinity, meq/L. */
#define HW_BUFFER_VOLUME_MIN     0.1
#define HW_BUFFER_VOLUME_MAX     1e5
#define HW_BUFFER_ALKALINITY_MIN 0.0
#define HW_BUFFER_ALKALINITY_MAX 10.0
#define HW_BUFFER_TAN_MIN        0.0 /* total ammonia, mg N/L */
#define HW_BUFFER_TAN_MAX        200.0

enum hw_buffer_source { HW_BUFFER_BICARBONATE = 0, HW_BUFFER_CARBONATE = 1 };

/* hw_buffer_mass - the salt that raises the alkalinity of water.
 *
 * Given
 *   source      which salt
 *   volume      L, HW_BUFFER_VOLUME_MIN to HW_BUFFER_VOLUME_MAX
 *   alkalinity  now, meq/L, HW_BUFFER_ALKALINITY_MIN to HW_BUFFER_ALKALINITY_MAX
 *   target      alkalinity wanted, meq/L, the same range
 * Returned
 *   mass        g; 0 when the water is at the target
 * Status
 *   HW_STATUS_OK; HW_STATUS_CHOICE (source); HW_STATUS_NONE: target is below alkalinity;
 *   HW_STATUS_RANGE
 * Notes
 *  1. mass = (target - alkalinity) x volume x 84.006 / 1000 of sodium bicarbonate, or x 52.994 of
 *     sodium carbonate, which gives two equivalents for each mole.
 *  2. Pure and dry. Washing soda, the decahydrate, is 2.7 times as heavy (computed): not modelled.
 *  3. Not modelled: calcium carbonate that falls out when the salt goes in fast, and takes
 *     alkalinity with it.
 * Source
 *   Conservation of charge.
 */
int hw_buffer_mass(enum hw_buffer_source source, double volume, double alkalinity, double target,
                   double *mass);

#ifdef __cplusplus
}
#endif

#endif
