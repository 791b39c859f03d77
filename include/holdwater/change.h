/* holdwater/change.h - water changes: how a level in the tank moves towards the level in the water
 * that goes in.
 *
 * In a batch change water is taken out and the tank is then filled up; in a flow change new water
 * runs in while old water runs out, mixed at once, as through a drip and an overflow. A change is
 * measured by what is exchanged: litres of new water over litres in the tank, 0.25 for 25 %.
 */
#ifndef HOLDWATER_CHANGE_H
#define HOLDWATER_CHANGE_H

#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_CHANGE_EXCHANGED_MIN       1e-9
#define HW_CHANGE_EXCHANGED_MAX_BATCH 1.0  /* all of it */
#define HW_CHANGE_EXCHANGED_MAX_FLOW  10.0 /* ten volumes leave 0.0045 % of the old water */
#define HW_CHANGE_ROUNDS_MIN          1
#define HW_CHANGE_ROUNDS_MAX          1000
#define HW_CHANGE_LEVEL_MIN           0.0 /* mg/L, or any unit of mass in volume */
#define HW_CHANGE_LEVEL_MAX           1e6

enum hw_change_method {
    HW_CHANGE_BATCH = 0, /* out, then in */
    HW_CHANGE_FLOW = 1   /* in and out at the same time */
};

/* hw_change_kept - the share of the old water that is still there after one change.
 *
 * Given
 *   method     how the water is changed
 *   exchanged  new water over water in the tank, HW_CHANGE_EXCHANGED_MIN to the method's
 *              HW_CHANGE_EXCHANGED_MAX_...
 * Returned
 *   kept       0 to 1
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (method), HW_STATUS_RANGE
 * Notes
 *  1. batch: 1 - exchanged. flow: exp(-exchanged).
 *  2. The water in the tank is taken as well mixed throughout. Corners, rock and sand that mix
 *     slowly, and what is bound to surfaces, are not modelled.
 * Source
 *   Conservation of mass.
 */
int hw_change_kept(enum hw_change_method method, double exchanged, double *kept);

/* hw_change_level - the level after several equal changes.
 *
 * Given
 *   method, exchanged   as hw_change_kept
 *   rounds    how many changes, HW_CHANGE_ROUNDS_MIN to HW_CHANGE_ROUNDS_MAX
 *   now       level before the first, HW_CHANGE_LEVEL_MIN to HW_CHANGE_LEVEL_MAX
 *   fresh     level in the water that goes in, in the same unit and range
 * Returned
 *   level     after the last, mixed
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (method), HW_STATUS_RANGE
 * Notes
 *  1. level = fresh + (now - fresh) x kept^rounds. It moves one way, from now towards fresh, and
 *     never beyond.
 *  2. Taking water out does not change the level; filling up does. So the level on the way lies
 *     between now and the level after the last round.
 *  3. Not modelled: what is added, taken up, bound, degraded or evaporates between the rounds, and
 *     the top layer of a tank that does not mix.
 * Source
 *   Conservation of mass.
 */
int hw_change_level(enum hw_change_method method, double exchanged, int rounds, double now,
                    double fresh, double *level);

/* hw_change_fresh_needed - the level that new water must have so that one change ends at a level.
 *
 * Given
 *   method, exchanged   as hw_change_kept
 *   now       level before, HW_CHANGE_LEVEL_MIN to HW_CHANGE_LEVEL_MAX
 *   keep      level to end at, same range
 * Returned
 *   fresh     the level of the new water, in the same unit; below zero when now is so far above
 *             keep that even plain water leaves more than keep
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (method), HW_STATUS_RANGE
 * Notes
 *  1. fresh = now + (keep - now) / (1 - kept); for a batch this is (keep - now (1 - s)) / s. When
 *     keep is now, fresh is the same to the bit.
 *  2. A small change that is to lift the level a lot asks for very strong new water, which meets
 *     the fish before it is mixed: not modelled.
 * Source
 *   Conservation of mass.
 */
int hw_change_fresh_needed(enum hw_change_method method, double exchanged, double now, double keep,
                           double *fresh);

/* hw_change_exchange_needed - how much must be changed at once to reach a level.
 *
 * Given
 *   method    how the water is changed
 *   now       level before, HW_CHANGE_LEVEL_MIN to HW_CHANGE_LEVEL_MAX
 *   fresh     level in the water that goes in, same range
 *   goal      level to reach, same range
 * Returned
 *   exchanged new water over water in the tank: 0 when goal is now, at most 1 for a batch; a flow
 *             has no such end
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (method), HW_STATUS_RANGE; HW_STATUS_NONE: goal does not lie
 *   between now and fresh, or is fresh itself and the method is flow, which comes near it only
 * Notes
 *  1. batch: (now - goal) / (now - fresh). flow: ln((now - fresh) / (goal - fresh)).
 * Source
 *   Conservation of mass.
 */
int hw_change_exchange_needed(enum hw_change_method method, double now, double fresh, double goal,
                              double *exchanged);

/* hw_change_rounds_needed - how many equal changes reach a level.
 *
 * Given
 *   method, exchanged   as hw_change_kept
 *   now, fresh, goal    as hw_change_exchange_needed
 * Returned
 *   rounds    the least whole number of changes after which the level is at goal or past it; 0 when
 *             goal is now
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (method), HW_STATUS_RANGE; HW_STATUS_NONE: goal does not lie
 *   between now and fresh, or is fresh itself and each change leaves some of the old water
 * Notes
 *  1. ln((goal - fresh) / (now - fresh)) / ln(kept), rounded up. A millionth of a round too much is
 *     rounded down: it is less than any test can tell, and rounding errors are far below it.
 *  2. Not bounded by HW_CHANGE_ROUNDS_MAX.
 * Source
 *   Conservation of mass.
 */
int hw_change_rounds_needed(enum hw_change_method method, double exchanged, double now,
                            double fresh, double goal, double *rounds);

#ifdef __cplusplus
}
#endif

#endif
