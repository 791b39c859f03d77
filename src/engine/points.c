/* points.c - the points of a swept question. */
#include "engine/points.h"

#include <string.h>

size_t hw_points_count(const struct hw_question *question)
{
    size_t n = 1;
    for (size_t i = 0; i < question->n_axes; i++) {
        n *= question->axis[i].sweep.n;
    }
    return n;
}

void hw_points_begin(struct hw_points *points, const struct hw_question *question)
{
    points->question = question;
    points->across = question->axis[0].sweep.n;
    points->down = question->n_axes > 1 ? question->axis[1].sweep.n : 1;
    points->first = points->held = 0;
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        for (size_t row = 0; row < HW_BLOCK; row++) {
            points->in[i][row] = question->in[i];
        }
    }
}

/* Puts the inputs of point k into a row of the block. Inputs that no axis gives stand there already; one that is solved
 * for at each point would be found and put here. */
static void place_point(struct hw_points *points, size_t k, size_t row)
{
    const struct hw_question *question = points->question;
    for (size_t i = 0; i < question->n_axes; i++) {
        const struct hw_axis *axis = &question->axis[i];
        size_t number = i == 0 ? k % points->across : k / points->across;
        points->in[axis->input][row] =
            hw_sweep_value(&question->calc->inputs[axis->input], &axis->sweep, number);
    }
}

void hw_points_answer(struct hw_points *points, size_t first, size_t n)
{
    const struct hw_calc *calc = points->question->calc;
    const double *in[HW_INPUTS];
    double *out[HW_RESULTS];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        in[i] = points->in[i];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        out[i] = points->out[i];
    }
    for (size_t row = 0; row < n; row++) {
        place_point(points, first + row, row);
    }
    memset(points->notes, 0, sizeof points->notes);
    struct hw_block block = {n, in, out, points->notes};
    hw_block_run(calc, &block);
    points->first = first;
    points->held = n;
}

void hw_points_take(const struct hw_points *points, size_t k, struct hw_question *question,
                    struct hw_answer *answer)
{
    const struct hw_calc *calc = points->question->calc;
    size_t row = k - points->first;
    *question = *points->question;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        question->in[i] = points->in[i][row];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        answer->out[i] = points->out[i][row];
    }
    answer->notes = points->notes[row];
    answer->status = hw_notes_status(calc, answer->notes);
}
