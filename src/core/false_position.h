/* false_position.h - the argument at which a rising function reaches a value. */
#ifndef HOLDWATER_FALSE_POSITION_H
#define HOLDWATER_FALSE_POSITION_H
#include <math.h>

/* The x between lo and hi at which f(t, x) passes target.
 *
 * f rises from lo to hi and target lies between f(t, lo) and f(t, hi). The bracket is cut where
 * the straight line through its ends passes the target; an end that stays twice has its distance
 * lowered as Anderson & Bjoerck do (BIT 13 (1973) 253), so that both ends come in. Smooth
 * functions take 4 to 8 steps. It ends where the bracket is no wider than the spacing of the
 * numbers there, where f gives the target itself, or after 60 steps, and never leaves the bracket.
 * */
static inline double hw_false_position(double (*f)(double t, double x), double t, double target,
                                       double lo, double hi)
{
    double below = f(t, lo) - target;
    double above = f(t, hi) - target;
    if (below >= 0 || above <= 0) {
        return below >= 0 ? lo : hi;
    }
    int kept = 0; /* the end that stayed: -1 the lower, 1 the upper */
    for (int i = 0; i < 60 && hi - lo > 2.3e-16 * fabs(hi); i++) {
        double x = lo - below * (hi - lo) / (above - below);
        if (!(x > lo && x < hi)) {
            x = lo + (hi - lo) / 2;
        }
        double here = f(t, x) - target;
        if (here < 0) {
            double scale = 1 - here / below;
            above *= kept == 1 ? (scale > 0 ? scale : 0.5) : 1;
            lo = x;
            below = here;
            kept = 1;
        } else {
            double scale = 1 - here / above;
            below *= kept == -1 ? (scale > 0 ? scale : 0.5) : 1;
            hi = x;
            above = here;
            kept = -1;
        }
        if (here == 0) {
            return x;
        }
    }
    return hi;
}

#endif
