/* line.h - a calculation along one of its inputs, the others staying as they are. */
#ifndef HW_LINE_H
#define HW_LINE_H
#include "engine/answer.h"

/* What the calculation says at one value of the input. */
struct hw_point {
    double x;       /* the input */
    double y;       /* the result; NaN: refused, withheld, or it does not apply */
    uint64_t notes; /* bits, indices into calc->notes */
};

/* Large: one at a time, on the stack. */
struct hw_line {
    const struct hw_input *input;
    size_t moving; /* the index of that input */
    size_t result; /* the result that is looked at */
    struct hw_batch batch;
};

/* Lays the line along the input `question->solved`. */
void hw_line_lay(const struct hw_question *question, size_t result, struct hw_line *line);

/* The points at x[0..n), n at most HW_BLOCK. */
void hw_line_look(struct hw_line *line, const double x[], size_t n, struct hw_point point[]);

/* True when the point has a result. */
bool hw_point_answered(const struct hw_point *point);

enum { HW_LINE_PARTS = 16 };

/* Values that lie strictly between a and b, in the order from a to b: they divide it into
 * HW_LINE_PARTS or fewer; whole numbers for a count, and none but zero itself nearer to zero than
 * HW_VALUE_LEAST. Returns how many there are, 0 when nothing
 * lies between. */
size_t hw_line_between(const struct hw_line *line, double a, double b, double x[HW_LINE_PARTS - 1]);

/* The values that a search looks at first: both ends of the input's range and about four thousand
 * between, evenly spaced; half of them by equal factors when the range spans decades. For a count,
 * whole numbers. */
struct hw_line_walk {
    double lo, hi, last;
    bool whole, started;
    size_t even, evens;  /* the next of the evenly spaced, and how many intervals they make */
    double factor, next; /* of those by equal factors; next is hi or more when there are no more */
};

void hw_line_start(const struct hw_line *line, struct hw_line_walk *walk);

/* The next value, larger than the last; false when hi has been. */
bool hw_line_next(struct hw_line_walk *walk, double *x);
#endif
