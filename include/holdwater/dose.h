/* holdwater/dose.h - a medicine brought to a level: how much of it is active, how much of a liquid
 * or a powder holds that, and what level an amount makes.
 */
#ifndef HOLDWATER_DOSE_H
#define HOLDWATER_DOSE_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Water that is treated, L. */
#define HW_DOSE_VOLUME_MIN 0.1
#define HW_DOSE_VOLUME_MAX 1e5

/* A level in it, mg/L. */
#define HW_DOSE_LEVEL_MIN 0.0
#define HW_DOSE_LEVEL_MAX 1e4

/* What is active in a dose, mg: the most that the ranges above can ask for. */
#define HW_DOSE_ACTIVE_MIN 0.0
#define HW_DOSE_ACTIVE_MAX 1e9

/* Active mg in a mL of a liquid. */
#define HW_DOSE_STRENGTH_MIN 2e-4
#define HW_DOSE_STRENGTH_MAX 1000.0

/* The share of a powder that is active, by mass. */
#define HW_DOSE_ACTIVE_SHARE_MIN 2e-5
#define HW_DOSE_ACTIVE_SHARE_MAX 1.0

/* Amounts of a liquid, mL, and of a powder, g. */
#define HW_DOSE_LIQUID_MIN 0.0
#define HW_DOSE_LIQUID_MAX 1e6
#define HW_DOSE_MASS_MIN   0.0
#define HW_DOSE_MASS_MAX   1e6

/* A label of a powder: it raises so much water, L, by so much, mg/L, with so many g. */
#define HW_DOSE_LABEL_RAISES_MIN 0.001
#define HW_DOSE_LABEL_RAISES_MAX 1000.0
#define HW_DOSE_LABEL_PER_MIN    0.1
#define HW_DOSE_LABEL_PER_MAX    1e5
#define HW_DOSE_LABEL_MASS_MIN   0.01
#define HW_DOSE_LABEL_MASS_MAX   1e5

#define HW_DOSE_STEPS_MIN 1
#define HW_DOSE_STEPS_MAX 1000

/* hw_dose_active - what must be added to bring water from one level to a higher one.
 *
 * Given
 *   volume  water that is treated, L, HW_DOSE_VOLUME_MIN to HW_DOSE_VOLUME_MAX
 *   now     level before, mg/L, HW_DOSE_LEVEL_MIN to HW_DOSE_LEVEL_MAX
 *   target  level after, mg/L, now to HW_DOSE_LEVEL_MAX
 * Returned
 *   active  mg of what the levels count
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE (a target below now as well: nothing that is added lowers a
 *   level)
 * Notes
 *  1. active = (target - now) x volume.
 *  2. Not modelled: the volume of the dose itself, what rock, sand, food and fish take up, what
 *     breaks down.
 * Source
 *   Conservation of mass.
 */
int hw_dose_active(double volume, double now, double target, double *active);

/* hw_dose_level - the level that an amount makes.
 *
 * Given
 *   volume, now   as hw_dose_active
 *   active  added, mg, HW_DOSE_ACTIVE_MIN to HW_DOSE_ACTIVE_MAX
 * Returned
 *   level   after, mg/L; it may lie above HW_DOSE_LEVEL_MAX
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. level = now + active / volume. Not modelled: as hw_dose_active.
 * Source
 *   Conservation of mass.
 */
int hw_dose_level(double volume, double now, double active, double *level);

/* hw_dose_liquid, hw_dose_liquid_active - the liquid that holds an amount, and back.
 *
 * Given
 *   active    mg, HW_DOSE_ACTIVE_MIN to HW_DOSE_ACTIVE_MAX
 *   strength  active mg in a mL of the liquid, HW_DOSE_STRENGTH_MIN to HW_DOSE_STRENGTH_MAX
 *   liquid    mL, HW_DOSE_LIQUID_MIN to HW_DOSE_LIQUID_MAX
 * Returned
 *   liquid    mL; it may lie above HW_DOSE_LIQUID_MAX
 *   active    mg
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. liquid = active / strength. A strength from a label is hw_stock_strength: what a dose raises
 *     a volume by, times that volume, over the dose.
 * Source
 *   Conservation of mass.
 */
int hw_dose_liquid(double active, double strength, double *liquid);
int hw_dose_liquid_active(double liquid, double strength, double *active);

/* hw_dose_powder, hw_dose_powder_active - the powder that holds an amount, and back.
 *
 * Given
 *   active  mg, HW_DOSE_ACTIVE_MIN to HW_DOSE_ACTIVE_MAX
 *   share   of the powder that is active, by mass, HW_DOSE_ACTIVE_SHARE_MIN to
 *           HW_DOSE_ACTIVE_SHARE_MAX
 *   mass    g of powder, HW_DOSE_MASS_MIN to HW_DOSE_MASS_MAX
 * Returned
 *   mass    g; it may lie above HW_DOSE_MASS_MAX
 *   active  mg
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. mass = active / 1000 / share. Of crystals of copper sulfate with a purity the share
 *     of copper is hw_dose_copper of the purity.
 * Source
 *   Conservation of mass.
 */
int hw_dose_powder(double active, double share, double *mass);
int hw_dose_powder_active(double mass, double share, double *active);

/* hw_dose_label_share - the share of a powder that is active, by the dose on its label.
 *
 * Given
 *   raises  rise by that dose, mg/L, HW_DOSE_LABEL_RAISES_MIN to HW_DOSE_LABEL_RAISES_MAX
 *   per     water that the dose is for, L, HW_DOSE_LABEL_PER_MIN to HW_DOSE_LABEL_PER_MAX
 *   mass    the dose, g, HW_DOSE_LABEL_MASS_MIN to HW_DOSE_LABEL_MASS_MAX
 * Returned
 *   share   of the powder, by mass; above 1 when the figures do not go together
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. share = raises x per / (1000 mass). Of a liquid see hw_stock_strength.
 * Source
 *   Conservation of mass.
 */
int hw_dose_label_share(double raises, double per, double mass, double *share);

/* hw_dose_copper - the copper in copper sulfate pentahydrate, the blue crystals.
 *
 * Given
 *   salt    an amount, a share or a strength counted as the pentahydrate, 0 to HW_DOSE_ACTIVE_MAX
 * Returned
 *   copper  the same counted as copper, in the same unit
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. copper = salt x 63.546 / 249.677, a quarter of it (25.45 %). The white anhydrous powder holds
 *     39.8 %.
 * Source
 *   IUPAC, abridged standard atomic weights.
 */
int hw_dose_copper(double salt, double *copper);

/* hw_dose_step_level - the level after some of several equal steps.
 *
 * Given
 *   now     level before the first, mg/L, HW_DOSE_LEVEL_MIN to HW_DOSE_LEVEL_MAX
 *   target  level after the last, mg/L, the same range
 *   steps   how many in all, HW_DOSE_STEPS_MIN to HW_DOSE_STEPS_MAX
 *   step    after which, 0 to steps
 * Returned
 *   level   mg/L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. level = now + (target - now) x step / steps. Not modelled: as hw_dose_active; nothing is lost
 *     between the steps.
 * Source
 *   Conservation of mass.
 */
int hw_dose_step_level(double now, double target, int steps, int step, double *level);

#ifdef __cplusplus
}
#endif

#endif
