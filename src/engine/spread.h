/* spread.h - what the uncertainty of the inputs does to the results.
 *
 * Each uncertain input is moved by its half-width, one standard deviation, to each side while the
 * others stay. What a result gains and loses by that is kept apart, because a pH 0.1 up does more
 * than a pH 0.1 down. Gains of independent inputs add up as the root of the sum of their squares,
 * and losses do. */
#ifndef HW_SPREAD_H
#define HW_SPREAD_H
#include "engine/answer.h"

struct hw_spread {
    double low[HW_RESULTS], high[HW_RESULTS]; /* NaN: cannot be told */
    double share[HW_RESULTS]
                [HW_INPUTS]; /* of the variance; NaN where low or high is, or nothing moves */
    uint64_t possible; /* notes, as bits, of a point within the spread and not of the answer */
    uint64_t
        outside; /* inputs with an end outside their range, as bits: nothing is computed there */
};

/* Works out the spread of a settled question that has been answered.
 *
 * Returned
 *   spread    low = high = the result where no uncertain input moves it. Both NaN when the result
 *             is absent in the middle or at an end, and where it is absent at the point about
 *             its low or its high, that one. One of them NaN when the end that would give it
 *             lies outside the input's range. Without an answer all is NaN and nothing possible.
 * Notes
 *  1. The middle, both ends of each input, and for each result the points about its low and its
 *     high are looked at, for notes too. What a result does between them is not.
 *  2. Of an amount to pour the same amount is looked at with each uncertain input at its ends: in
 *     less water than was thought the level that it makes may pass a limit. Notes only: low and
 *     high of the level are those of amounts that other readings would have told.
 *  3. Standing notes are not counted as possible.
 */
void hw_question_spread(const struct hw_question *question, const struct hw_answer *answer,
                        struct hw_spread *spread);
#endif
