/* bisect.h - the argument at which a rising function reaches a value. */
#ifndef HOLDWATER_BISECT_H
#define HOLDWATER_BISECT_H

/* The x between lo and hi at which f(t, x) passes target.
 *
 * f rises from lo to hi and target lies between f(t, lo) and f(t, hi). The bracket is halved 60
 * times, always: what is left of it is (hi - lo) / 2^60, less than the spacing of the numbers near
 * any x above (hi - lo) / 256. It cannot fail, run long or leave the bracket; the error left is
 * that of f itself, over its slope. */
static inline double hw_bisect(double (*f)(double t, double x), double t, double target, double lo,
                               double hi)
{
    for (int i = 0; i < 60; i++) {
        double middle = lo + (hi - lo) / 2;
        if (f(t, middle) < target) {
            lo = middle;
        } else {
            hi = middle;
        }
    }
    return hi;
}

#endif
