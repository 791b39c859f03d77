/* root.h - what a search can find, and which of two points serves better. */
#ifndef HW_ROOT_H
#define HW_ROOT_H
#include "engine/line.h"

enum { HW_ROOTS = 8, HW_GAPS = 4 };

/* How a search ended. */
enum hw_end {
    HW_END_FOUND,     /* there is a solution, perhaps several */
    HW_END_JUMPED,    /* the result leaps over the target and never has it */
    HW_END_UNREACHED, /* stays on one side, or passes the target without an answer */
    HW_END_FLAT,      /* the result does not hang on the input */
    HW_END_ABSENT,    /* there are answers, and the result is in none of them */
    HW_END_BARRED     /* refused or withheld, whatever the input is */
};

/* Where the result has the target: at one value, or all the way from one to another. */
struct hw_root {
    double from, to; /* equal for one value */
    double reached;  /* the result at `from`; a count rarely hits it and passes it there */
};

/* A stretch of the input in which the result is not there. */
struct hw_gap {
    double from, to;
    int status;     /* the gravest in it: -2 withheld, -1 refused, 0 the result does not apply */
    uint64_t notes; /* those that leave no answer */
};

struct hw_solution {
    enum hw_end end;
    size_t n_roots;
    bool more_roots; /* than there is room for */
    struct hw_root root[HW_ROOTS];
    struct hw_point least, most; /* what the result runs from and to; nothing when it is nowhere */
    bool jumps;
    struct hw_point jump_from, jump_to; /* the first place where the result leaps over the target */
    size_t n_gaps;
    bool more_gaps;
    struct hw_gap gap[HW_GAPS];
    uint64_t
        notes; /* when barred: every note that leaves no answer, and those that hold everywhere */
};

/* How many notes were raised by values. */
int hw_notes_raised(const struct hw_calc *calc, uint64_t notes);

/* The side of a target on which a result may lie when it is solved for: -1 not above, +1 not below,
 * 0 either. That of an amount is the side that it is rounded to; a time is to be reached, though it
 * is shown rounded down. */
int hw_solved_side(const struct hw_result *result);

/* True when point a serves better than b to bring a result to a target: what is on its `safe` side
 * comes first (within slack both count as being on the target), then, when it has no such side,
 * fewer raised notes, then the nearer. */
bool hw_point_better(const struct hw_calc *calc, size_t result, double target, double slack,
                     const struct hw_point *a, const struct hw_point *b);
#endif
