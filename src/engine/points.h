/* points.h - the points of a swept question, answered block by block. */
#ifndef HW_POINTS_H
#define HW_POINTS_H
#include "engine/answer.h"

enum { HW_POINTS_MAX = 10000 }; /* the most points of one question */

/* The first axis runs across, the second down; points are numbered as a page is read. */
struct hw_points {
    const struct hw_question *question;
    size_t across, down; /* values of the axes; down is 1 when there is one axis */
    size_t first, held;  /* the points that are answered: first, first + 1, ... */
    struct hw_batch batch;
};

/* How many points a question with one or two axes has. */
size_t hw_points_count(const struct hw_question *question);

/* Makes ready for a question, which is kept. Nothing is answered yet. */
void hw_points_begin(struct hw_points *points, const struct hw_question *question);

/* Answers the points first to first + n - 1; n is at most HW_BLOCK. */
void hw_points_answer(struct hw_points *points, size_t first, size_t n);

/* Of one axis: the place between points k and k + 1 at which one of these notes begins or ends,
 * from 0 (point k) to 1; the results there. It has to hold at one of the two and not at the other.
 * Whole numbers have nothing in between: 1. What was answered before is lost. */
double hw_points_turn(struct hw_points *points, size_t k, uint64_t notes, double out[HW_RESULTS]);

/* The question at point k, one that is answered, and its answer: the same bits as if it had been
 * asked alone. */
void hw_points_take(const struct hw_points *points, size_t k, struct hw_question *question,
                    struct hw_answer *answer);
#endif
