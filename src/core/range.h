/* range.h - the two-sided check of a range: NaN and infinity never pass. */
#ifndef HOLDWATER_RANGE_H
#define HOLDWATER_RANGE_H

#include <stdbool.h>

static inline bool hw_within(double x, double lo, double hi)
{
    return x >= lo && x <= hi;
}

#endif
