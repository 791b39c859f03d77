/* holdwater/volume.h - how much water a tank really holds: from its measures, and from what an
 * addition does to it.
 *
 * Every dose is an amount times a volume, so an error in the volume is the same error in the dose.
 * Lengths are in cm, volumes in L.
 */
#ifndef HOLDWATER_VOLUME_H
#define HOLDWATER_VOLUME_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of a length, width, diameter or depth of water, cm: a jar to a pool of 10 m. */
#define HW_VOLUME_SIDE_MIN 1.0
#define HW_VOLUME_SIDE_MAX 1000.0

/* Range of the thickness of a wall, cm: thin plastic to the window of a public aquarium. */
#define HW_VOLUME_WALL_MIN 0.05
#define HW_VOLUME_WALL_MAX 10.0

/* Range of the water line below the rim, cm: a full tank to the deepest. */
#define HW_VOLUME_BELOW_RIM_MIN 0.0
#define HW_VOLUME_BELOW_RIM_MAX HW_VOLUME_SIDE_MAX

/* Range of the thickness of a bottom, cm: none, where the height was taken inside, to the thickest
 * wall. */
#define HW_VOLUME_BOTTOM_MIN 0.0
#define HW_VOLUME_BOTTOM_MAX HW_VOLUME_WALL_MAX

/* Range of each part of a sum of volumes, L; the upper end is the largest box. */
#define HW_VOLUME_PART_MIN 0.0
#define HW_VOLUME_PART_MAX 1e6

/* Range of an addition, mg, and of the rise it makes, mg/L. */
#define HW_VOLUME_ADDED_MIN 0.1
#define HW_VOLUME_ADDED_MAX 1e9
#define HW_VOLUME_RISE_MIN  0.01
#define HW_VOLUME_RISE_MAX  1e5

/* Range of a rise of alkalinity, meq/L: less no test shows, more falls out as lime. */
#define HW_VOLUME_ALKALINITY_MIN 0.01
#define HW_VOLUME_ALKALINITY_MAX 50.0

/* hw_volume_inside - the inside measure of a tank that was measured outside.
 *
 * Given
 *   outside  length, width or diameter over the walls, cm, HW_VOLUME_SIDE_MIN to
 *            HW_VOLUME_SIDE_MAX
 *   wall     thickness of one wall, cm, HW_VOLUME_WALL_MIN to HW_VOLUME_WALL_MAX
 * Returned
 *   inside   the same between the walls, cm
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE, HW_STATUS_NONE (less than HW_VOLUME_SIDE_MIN is left)
 * Notes
 *  1. inside = outside - 2 wall. Both walls are taken to be equally thick.
 *  2. For length, width and diameter; a height has one bottom and no second wall: hw_volume_depth.
 * Source
 *   Geometry.
 */
int hw_volume_inside(double outside, double wall, double *inside);

/* hw_volume_depth - the depth of the water, from the height of the tank.
 *
 * Given
 *   height     from the floor inside, or from under the bottom, up to the rim, cm,
 *              HW_VOLUME_SIDE_MIN to HW_VOLUME_SIDE_MAX
 *   below_rim  from the rim down to the water line, cm, HW_VOLUME_BELOW_RIM_MIN to
 *              HW_VOLUME_BELOW_RIM_MAX
 *   bottom     thickness of the bottom, cm, HW_VOLUME_BOTTOM_MIN to HW_VOLUME_BOTTOM_MAX: 0 where
 *              the height was taken inside
 * Returned
 *   depth      from the floor inside to the water line, cm
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE, HW_STATUS_NONE (less than HW_VOLUME_SIDE_MIN is left)
 * Notes
 *  1. depth = height - below_rim - bottom.
 *  2. Not modelled: a rim or foot that stands beyond the glass, a second bottom, a sloping bottom.
 * Source
 *   Geometry.
 */
int hw_volume_depth(double height, double below_rim, double bottom, double *depth);

/* hw_volume_box - the water in a box.
 *
 * Given
 *   length, width  inside, cm, HW_VOLUME_SIDE_MIN to HW_VOLUME_SIDE_MAX
 *   depth          of the water, not of the tank, cm, the same range
 * Returned
 *   gross          L, with nothing in the water; at most HW_VOLUME_PART_MAX
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. gross = length x width x depth / 1000.
 *  2. Not modelled: rounded or cut corners, beads of sealant, a bowed front, a sloping bottom.
 * Source
 *   Geometry; 1 L = 1000 cm3.
 */
int hw_volume_box(double length, double width, double depth, double *gross);

/* hw_volume_cylinder - the water in an upright cylinder.
 *
 * Given
 *   diameter  inside, cm, HW_VOLUME_SIDE_MIN to HW_VOLUME_SIDE_MAX
 *   depth     of the water, cm, the same range
 * Returned
 *   gross     L, with nothing in the water
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. gross = pi/4 x diameter^2 x depth / 1000.
 *  2. Not modelled: tapering walls (a bucket) - measure the diameter half way up the water; the
 *     error is then below 1 % while the top is less than 1.4 times as wide as the bottom.
 * Source
 *   Geometry; note 2 by the volume of a truncated cone.
 */
int hw_volume_cylinder(double diameter, double depth, double *gross);

/* hw_volume_net - the water that a dose is for.
 *
 * Given
 *   gross      L, HW_VOLUME_PART_MIN to HW_VOLUME_PART_MAX
 *   displaced  what rock, sand and gear take of it, L, the same range
 *   extra      water outside the tank that runs through it, L, the same range
 * Returned
 *   net        L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE, HW_STATUS_NONE (nothing is left)
 * Notes
 *  1. net = gross - displaced + extra. At or below 1e-12 of displaced it is rounding error, and
 *     nothing is left.
 *  2. A porous thing displaces its solid volume, not its outline: what it makes the water rise.
 * Source
 *   Conservation of volume.
 */
int hw_volume_net(double gross, double displaced, double extra, double *net);

/* hw_volume_gauge - the water that a known addition was spread through.
 *
 * Given
 *   added   mass of the substance, mg, HW_VOLUME_ADDED_MIN to HW_VOLUME_ADDED_MAX
 *   rise    measured rise of the same substance, counted the same way, mg/L,
 *           HW_VOLUME_RISE_MIN to HW_VOLUME_RISE_MAX
 * Returned
 *   net     L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. net = added / rise. A relative error of the rise is the same relative error of the volume.
 *  2. Not modelled: what is taken up, bound, evaporated or not yet mixed in. Each makes the rise
 *     too small and the volume too large.
 *  3. Not modelled: the volume of the addition itself.
 * Source
 *   Conservation of mass.
 */
int hw_volume_gauge(double added, double rise, double *net);

/* hw_volume_gauge_bicarbonate - the same from sodium bicarbonate, read as alkalinity.
 *
 * Given
 *   added   mass of sodium bicarbonate, mg, HW_VOLUME_ADDED_MIN to HW_VOLUME_ADDED_MAX
 *   rise    measured rise of the alkalinity, meq/L, HW_VOLUME_ALKALINITY_MIN to
 *           HW_VOLUME_ALKALINITY_MAX
 * Returned
 *   net     L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. net = added / 84.006 / rise: one equivalent to a mole. Carbon dioxide that comes or goes does
 *     not change alkalinity.
 *  2. Not modelled: calcium carbonate that falls out, and takes alkalinity with it: the volume then
 *     comes out too large. Otherwise as hw_volume_gauge.
 * Source
 *   Conservation of charge.
 */
int hw_volume_gauge_bicarbonate(double added, double rise, double *net);

#ifdef __cplusplus
}
#endif

#endif
