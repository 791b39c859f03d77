/* false_position.h - the argument at which a rising function reaches a value. */
#ifndef HOLDWATER_FALSE_POSITION_H
#define HOLDWATER_FALSE_POSITION_H
#include "core/bracket_kernel.h"

#include <math.h>

/* The x between lo and hi at which f(t, x) passes target.
 *
 * f rises from lo to hi and target lies between f(t, lo) and f(t, hi). It ends where no number lies
 * within the bracket, or where f gives the target itself, and never leaves it. Smooth functions
 * take 4 to 8 steps. */
static inline double hw_false_position(double (*f)(double t, double x), double t, double target,
                                       double lo, double hi)
{
    double below = f(t, lo) - target;
    double above = f(t, hi) - target;
    if (below >= 0 || above <= 0) {
        return below >= 0 ? lo : hi;
    }
    struct hw_bracket b = hw_bracket_between(lo, below, hi, above, 0);
    while (b.hi - b.lo > 2.3e-16 * fmax(fabs(b.lo), fabs(b.hi))) {
        double x = hw_bracket_cut(&b);
        if (x <= b.lo) {
            break;
        }
        hw_bracket_take(&b, x, f(t, x) - target);
    }
    return b.hi;
}

#endif
