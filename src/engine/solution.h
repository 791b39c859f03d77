/* solution.h - the value of one input at which a result reaches what is wanted. */
#ifndef HW_SOLUTION_H
#define HW_SOLUTION_H
#include "engine/root.h"

/* Looks for the value of the input `question->solved` at which a result is `target`, within the
 * input's range.
 *
 * Given
 *   question   settled, with an input that is solved for; half-widths do not count
 *   result     an index into its results
 *   target     in the result's unit
 * Returned
 *   solution   roots in rising order
 * Notes
 *  1. About four thousand values are looked at, then each change of side is narrowed to
 *     neighbouring doubles. A detour of the result that is narrower than a four-thousandth of the
 *     range may be missed.
 *  2. Of the two neighbours the root is the one on the result's `safe` side; without one, that with
 *     fewer raised notes, then the nearer.
 *  3. A highest or lowest point that comes within 1e-9 of the target, in its own size, is a root.
 *     So is an end of the range.
 *  4. A count takes whole numbers: the result rarely has the target there, and the root is the
 *     first at which it has passed it, or the last before when that is the `safe` side.
 */
void hw_solve(const struct hw_question *question, size_t result, double target,
              struct hw_solution *solution);
#endif
