/* points.c - the points of a swept question. */
#include "engine/points.h"

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
    hw_batch_fill(&points->batch, question, HW_BLOCK);
}

/* Puts the inputs of point k into a row. Inputs that no axis gives stand there already. */
static void place_point(struct hw_points *points, size_t k, size_t row)
{
    const struct hw_question *question = points->question;
    for (size_t i = 0; i < question->n_axes; i++) {
        const struct hw_axis *axis = &question->axis[i];
        size_t number = i == 0 ? k % points->across : k / points->across;
        points->batch.in[axis->input][row] =
            hw_sweep_value(&question->calc->inputs[axis->input], &axis->sweep, number);
    }
}

void hw_points_answer(struct hw_points *points, size_t first, size_t n)
{
    for (size_t row = 0; row < n; row++) {
        place_point(points, first + row, row);
    }
    hw_batch_run(&points->batch, n);
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
        question->in[i] = points->batch.in[i][row];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        answer->out[i] = points->batch.out[i][row];
    }
    answer->notes = points->batch.notes[row];
    answer->status = hw_notes_status(calc, answer->notes);
}
