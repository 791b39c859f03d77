/* search.h - the parts of a search along a line: for solution.c alone. */
#ifndef HW_SEARCH_H
#define HW_SEARCH_H
#include "engine/root.h"

/* The state of a search. The points that it is given come in rising order. */
struct hw_search {
    struct hw_line line;
    double target;
    struct hw_solution *solution;
    struct hw_point before, last; /* of the points in the stretch with answers that runs now */
    size_t in_stretch;            /* how many there were; 0: no such stretch runs */
    bool crossed;                 /* the last step changed sides */
    bool away;                    /* since the last root the result has been off the target */
    bool on_target;               /* the result has the target, since on_from */
    struct hw_point on_from;
    struct hw_point unanswered; /* the last of those without the result */
    size_t points, answered;
    uint64_t grave_notes;       /* those of the calculation that leave no answer */
    uint64_t grave, everywhere; /* those of them that were met; notes of all points */
    bool some_answer;           /* there are answers, if without this result */
};

/* -1 below the target, 1 above, 0 on it to within rounding. */
int hw_search_side(const struct hw_search *s, const struct hw_point *p);

/* True when the result is as near to the target as a highest or lowest point must be. */
bool hw_search_near(const struct hw_search *s, const struct hw_point *p);

/* True when a point has a result, on the side where that of b is, which has one. */
bool hw_search_alike(const struct hw_search *s, const struct hw_point *a, const struct hw_point *b);

/* True when both points have a result, or neither. */
bool hw_search_both_answered(const struct hw_search *s, const struct hw_point *a,
                             const struct hw_point *b);

/* Moves two points together, until nothing lies between: `here` stays like it was, `there` stays
 * unlike it. */
void hw_search_narrow(struct hw_search *s, struct hw_point *here, struct hw_point *there,
                      bool (*same)(const struct hw_search *s, const struct hw_point *a,
                                   const struct hw_point *b));

/* Adds a root, unless it is as good as the last one. */
void hw_search_add_root(struct hw_search *s, const struct hw_point *from, double to);

/* The end of where the result has the target, to within rounding: adds a root, one value when they
 * are all one. */
void hw_search_leave_target(struct hw_search *s, const struct hw_point *to);

/* From one side to the other between neighbours, where the points that were seen first differed by
 * `rise`: adds a root, or a leap. */
void hw_search_pass(struct hw_search *s, const struct hw_point *a, const struct hw_point *b,
                    double rise);

/* A stretch without the result begins, and goes on. */
void hw_search_add_gap(struct hw_search *s, const struct hw_point *p);
void hw_search_widen_gap(struct hw_search *s, const struct hw_point *p);

/* Keeps the point when its result is the least or the most so far. */
void hw_search_keep_extremes(struct hw_search *s, const struct hw_point *p);
#endif
