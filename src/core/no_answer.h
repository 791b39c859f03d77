/* no_answer.h - what a result holds when there is none. NAN itself is a float, and a compiler that
 * watches for silent widening says so. */
#ifndef HOLDWATER_NO_ANSWER_H
#define HOLDWATER_NO_ANSWER_H

#include <math.h>

#define HW_NO_ANSWER ((double)NAN)

#endif
