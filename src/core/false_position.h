/* false_position.h - the argument at which a rising function reaches a value. */
#ifndef HOLDWATER_FALSE_POSITION_H
#define HOLDWATER_FALSE_POSITION_H
#include <math.h>

/* The x between lo and hi at which f(t, x) passes target.
 *
 * f rises from lo to hi and target lies between f(t, lo) and f(t, hi). The bracket is cut where the
 * straight line through its ends passes the target; an end that stays twice has its distance
 * lowered as Anderson & Bjoerck do (BIT 13 (1973) 253), so that both ends come in; and where four
 * cuts have not left an eighth of it, it is halved, so that it always ends. Smooth functions take 4
 * to 8 steps. It ends where no number lies within the bracket, or where f gives the target itself,
 * and never leaves it. */
static inline double hw_false_position(double (*f)(double t, double x), double t, double target,
                                       double lo, double hi)
{
    double below = f(t, lo) - target;
    double above = f(t, hi) - target;
    if (below >= 0 || above <= 0) {
        return below >= 0 ? lo : hi;
    }
    int kept = 0; /* the end that stayed: -1 the lower, 1 the upper */
    double wide = hi - lo;
    for (int i = 1; hi - lo > 2.3e-16 * fmax(fabs(lo), fabs(hi)); i++) {
        double x = lo - below * (hi - lo) / (above - below);
        if (i % 4 == 0) {
            x = hi - lo > wide / 8 ? lo + (hi - lo) / 2 : x;
            wide = hi - lo;
        }
        if (!(x > lo && x < hi)) {
            x = lo + (hi - lo) / 2;
        }
        if (x <= lo) {
            break;
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
