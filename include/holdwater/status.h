/* holdwater/status.h - what every function of the library returns.
 *
 * The sign of a status says whether there is an answer:
 *
 *    0   there is one, inside the range its equation was fitted to;
 *   > 0  there is one, but outside that range: use it with care and say so;
 *   < 0  there is none, and every result is NaN.
 *
 * Notes
 *  1. Results are always stored, whatever the status; none is left as it was.
 *  2. Ranges are checked from both sides (lo <= x and x <= hi), so that NaN and infinity are
 *     refused everywhere. Both ends of a range belong to it.
 *  3. An unknown choice is told before a number out of range, when both are wrong.
 *  4. No function of the library keeps state, allocates, reads the locale or uses errno
 *     (the functions of libm that some call may set it).
 */
#ifndef HOLDWATER_STATUS_H
#define HOLDWATER_STATUS_H

#ifdef __cplusplus
extern "C" {
#endif

enum hw_status {
    HW_STATUS_OK = 0,        /* an answer */
    HW_STATUS_STRETCHED = 1, /* an answer, outside the range the equation was fitted to */
    HW_STATUS_RANGE = -1,    /* no answer: an argument is out of its range or not finite */
    HW_STATUS_CHOICE = -2,   /* no answer: an enum value is unknown or at odds with another */
    HW_STATUS_NONE = -3      /* no answer: the equation has no solution for these arguments */
};

/* hw_status_text - what a status means, in words for people.
 *
 * Given
 *   status   what a function returned, or any other number
 * Returned (as the value of the function)
 *   English words without a full stop, constant, never NULL. A number that is none of the statuses
 *   above is told by its sign alone.
 */
const char *hw_status_text(int status);

#ifdef __cplusplus
}
#endif

#endif
