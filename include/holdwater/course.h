/* holdwater/course.h - a course of dye in a tank: equal doses, with a part of the water changed
 * before each further one.
 *
 * Levels are mg/L, of the dye as its label counts it; bath.h turns a level into an amount of stock
 * and back. A change is measured as in change.h: new water over water in the tank, 0.25 for 25 %.
 */
#ifndef HOLDWATER_COURSE_H
#define HOLDWATER_COURSE_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of the level that the first dose makes, mg/L: more is a bath or a slip. */
#define HW_COURSE_LEVEL_MIN 0.1
#define HW_COURSE_LEVEL_MAX 20.0

/* Range of the water changed before each further dose, over the water in the tank. With less than a
 * hundredth the dye only builds up. */
#define HW_COURSE_EXCHANGED_MIN 0.01
#define HW_COURSE_EXCHANGED_MAX 1.0

/* Range of the number of doses. */
#define HW_COURSE_DOSES_MIN 1
#define HW_COURSE_DOSES_MAX 10000

/* Range of an amount of stock, mL. */
#define HW_COURSE_DYE_MIN 0.0
#define HW_COURSE_DYE_MAX 5e6

/* Range of the water of a tank, L. */
#define HW_COURSE_VOLUME_MIN 0.1
#define HW_COURSE_VOLUME_MAX 10000.0

/* Range of a level that is not to be passed, mg/L. */
#define HW_COURSE_LIMIT_MIN 0.01
#define HW_COURSE_LIMIT_MAX 1000.0

enum hw_course_redose {
    HW_COURSE_FULL = 0,   /* each further dose is as large as the first */
    HW_COURSE_REPLACE = 1 /* each further dose puts back what the change took */
};

/* hw_course_level - the level before and after one of the doses.
 *
 * Given
 *   redose     what a further dose is
 *   first      level that the first dose makes, HW_COURSE_LEVEL_MIN to HW_COURSE_LEVEL_MAX
 *   exchanged  changed before each further dose, HW_COURSE_EXCHANGED_MIN to HW_COURSE_EXCHANGED_MAX
 *   dose       which: 1 is the first, HW_COURSE_DOSES_MIN to HW_COURSE_DOSES_MAX
 * Returned
 *   before     after the change and before the dose; 0 before the first
 *   after      when the dose is mixed
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (redose), HW_STATUS_RANGE
 * Notes
 *  1. after(1) = first, before(n) = after(n - 1) (1 - exchanged). Full: after(n) = before(n) +
 *     first, that is first (1 - (1 - exchanged)^n) / exchanged. Replace: after(n) = first.
 *  2. The change is a batch: water out, then in, with plain water, mixed. The highest level between
 *     two doses is that after a dose.
 *  3. Not modelled: loss of dye to light, carbon, sand, silicone and reducers, so that levels are
 *     the most there can be; water that evaporates and is topped up.
 * Source
 *   Conservation of mass.
 */
int hw_course_level(enum hw_course_redose redose, double first, double exchanged, int dose,
                    double *before, double *after);

/* hw_course_ceiling - the level after a dose that a course without an end settles at.
 *
 * Given
 *   redose, first, exchanged   as hw_course_level
 * Returned
 *   ceiling    mg/L; the level after a dose comes near it and never passes it
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (redose), HW_STATUS_RANGE
 * Notes
 *  1. Full: first / exchanged. Replace: first.
 *  2. Not modelled: as hw_course_level.
 * Source
 *   Conservation of mass: at the ceiling a change takes out as much as a dose brings.
 */
int hw_course_ceiling(enum hw_course_redose redose, double first, double exchanged,
                      double *ceiling);

/* hw_course_dose_over - the first dose after which the level is above a limit.
 *
 * Given
 *   redose, first, exchanged   as hw_course_level
 *   limit      mg/L, HW_COURSE_LIMIT_MIN to HW_COURSE_LIMIT_MAX
 * Returned
 *   dose       1 is the first; a whole number
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (redose), HW_STATUS_RANGE; HW_STATUS_NONE: no dose passes it
 * Notes
 *  1. Full: the least n with first (1 - (1 - exchanged)^n) / exchanged > limit.
 *  2. A level above the limit by less than a thousand-millionth of it counts as at the limit.
 * Source
 *   As hw_course_level, solved for the dose.
 */
int hw_course_dose_over(enum hw_course_redose redose, double first, double exchanged, double limit,
                        double *dose);

/* hw_course_amounts - the stock for a further dose and for the whole course.
 *
 * Given
 *   redose     what a further dose is
 *   dye        mL of stock of the first dose, HW_COURSE_DYE_MIN to HW_COURSE_DYE_MAX
 *   exchanged  as hw_course_level
 *   doses      how many, the first counted, HW_COURSE_DOSES_MIN to HW_COURSE_DOSES_MAX
 * Returned
 *   again      mL, each further dose, whether there is one or not
 *   total      mL, all doses together
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (redose), HW_STATUS_RANGE
 * Notes
 *  1. Full: again = dye. Replace: again = dye x exchanged. total = dye + (doses - 1) again.
 * Source
 *   Conservation of mass.
 */
int hw_course_amounts(enum hw_course_redose redose, double dye, double exchanged, int doses,
                      double *again, double *total);

/* hw_course_water - the new water that the changes of a course take.
 *
 * Given
 *   volume     water in the tank, L, HW_COURSE_VOLUME_MIN to HW_COURSE_VOLUME_MAX
 *   exchanged  as hw_course_level
 *   doses      how many, the first counted, HW_COURSE_DOSES_MIN to HW_COURSE_DOSES_MAX
 * Returned
 *   water      L, all changes together; there is none before the first dose
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. water = (doses - 1) x exchanged x volume.
 *  2. Not counted: what takes the dye out after the last dose.
 * Source
 *   Conservation of volume.
 */
int hw_course_water(double volume, double exchanged, int doses, double *water);

#ifdef __cplusplus
}
#endif

#endif
