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

/* Answers HW_BLOCK points that part the way from a to b of the one axis. */
static void part(struct hw_points *points, double a, double b)
{
    double *in = points->batch.in[points->question->axis[0].input];
    for (size_t row = 0; row < HW_BLOCK; row++) {
        double place = (double)row / (HW_BLOCK - 1);
        in[row] = hw_value_off_zero(place < 0.5 ? a + place * (b - a) : b - (1 - place) * (b - a));
    }
    hw_batch_run(&points->batch, HW_BLOCK);
}

/* The first row whose notes differ from those of row 0, or the last. */
static size_t first_turned(const struct hw_batch *batch, uint64_t notes)
{
    size_t row = 1;
    while (row < HW_BLOCK - 1 && (batch->notes[row] & notes) == (batch->notes[0] & notes)) {
        row++;
    }
    return row;
}

double hw_points_turn(struct hw_points *points, size_t k, uint64_t notes, double out[HW_RESULTS])
{
    const struct hw_axis *axis = &points->question->axis[0];
    const struct hw_input *input = &points->question->calc->inputs[axis->input];
    const double *in = points->batch.in[axis->input];
    const double from = hw_sweep_value(input, &axis->sweep, k);
    const double to = hw_sweep_value(input, &axis->sweep, k + 1);
    const int rounds = input->kind == HW_COUNT ? 0 : 2;
    size_t row = 0;
    part(points, rounds == 0 ? to : from, to);
    for (int i = 0; i < rounds; i++) {
        row = first_turned(&points->batch, notes);
        part(points, in[row - 1], in[row]);
    }
    row = rounds == 0 ? 0 : first_turned(&points->batch, notes);
    for (size_t i = 0; i < points->question->calc->n_results; i++) {
        out[i] = points->batch.out[i][row];
    }
    points->held = 0;
    return (in[row] - from) / (to - from);
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
