/* bracket_kernel.h - the one bracketed solver, asked step by step: the caller asks the function. */
#ifndef HOLDWATER_BRACKET_KERNEL_H
#define HOLDWATER_BRACKET_KERNEL_H
#include <math.h>
#include <stdbool.h>

/* Two arguments between which a function passes 0 upwards, and what is known of it there. */
struct hw_bracket {
    double lo, hi;       /* it is below 0 at lo, and 0 or above at hi */
    double below, above; /* its values there, or less of them: see hw_bracket_take */
    double near;         /* the bracket is as narrow as it need be */
    double wide;         /* it was, at the last look at how it goes */
    int kept;            /* the end that stayed: -1 the lower, 1 the upper; 0 none */
    int cuts;
};

static inline struct hw_bracket hw_bracket_between(double lo, double below, double hi, double above,
                                                   double near)
{
    struct hw_bracket bracket = {lo, hi, below, above, near, hi - lo, 0, 0};
    return bracket;
}

static inline bool hw_bracket_is_wide(const struct hw_bracket *b)
{
    return b->hi - b->lo > b->near;
}

/* Where to ask next, strictly between lo and hi, or at lo where no number lies between: at a guess
 * x, but not so near to an end that the bracket would not be narrow enough if 0 lay there; and
 * where four cuts have not left an eighth of it, it is halved, so that it always ends. */
static inline double hw_bracket_cut_at(struct hw_bracket *b, double x)
{
    double wide = b->hi - b->lo;
    x = fmin(fmax(x, b->lo + b->near / 2), b->hi - b->near / 2);
    bool halve = !(x > b->lo && x < b->hi);
    b->cuts++;
    if (b->cuts % 4 == 0) {
        halve = halve || wide > b->wide / 8;
        b->wide = wide;
    }
    return halve ? b->lo + wide / 2 : x;
}

/* The same where the straight line through the ends passes 0. */
static inline double hw_bracket_cut(struct hw_bracket *b)
{
    return hw_bracket_cut_at(b, b->lo - b->below * (b->hi - b->lo) / (b->above - b->below));
}

/* The answer. An end that stays a second time has its distance lowered as Anderson & Bjoerck do
 * (BIT 13 (1973) 253), so that both ends come in; 0 itself closes the bracket. */
static inline void hw_bracket_take(struct hw_bracket *b, double x, double here)
{
    double scale = 1 - here / (here < 0 ? b->below : b->above);
    double left = scale > 0 ? scale : 0.5;
    if (here < 0) {
        b->above *= b->kept == 1 ? left : 1;
        b->below = here;
        b->kept = 1;
    } else {
        b->below *= b->kept == -1 ? left : 1;
        b->above = here;
        b->kept = -1;
    }
    b->lo = here <= 0 ? x : b->lo;
    b->hi = here >= 0 ? x : b->hi;
}

#endif
