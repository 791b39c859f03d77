/* answer.c - runs blocks. */
#include "engine/answer.h"

#include <math.h>
#include <string.h>

int hw_notes_status(const struct hw_calc *calc, uint32_t notes)
{
    static const int status_of[] = {
        [HW_STANDING] = 0, [HW_CAUTION] = 0,   [HW_STRETCHED] = 1,
        [HW_REFUSED] = -1, [HW_WITHHELD] = -2,
    };
    enum hw_effect gravest = HW_STANDING;
    for (size_t i = 0; i < calc->n_notes; i++) {
        if (((notes >> i) & 1u) != 0 && calc->notes[i].effect > gravest) {
            gravest = calc->notes[i].effect;
        }
    }
    return status_of[gravest];
}

uint32_t hw_notes_grave(const struct hw_calc *calc)
{
    uint32_t grave = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        if (calc->notes[i].effect == HW_REFUSED || calc->notes[i].effect == HW_WITHHELD) {
            grave |= UINT32_C(1) << i;
        }
    }
    return grave;
}

void hw_block_run(const struct hw_calc *calc, const struct hw_block *block)
{
    calc->run(block);
    uint32_t grave = hw_notes_grave(calc);
    for (size_t row = 0; row < block->n; row++) {
        if ((block->notes[row] & grave) != 0) {
            for (size_t k = 0; k < calc->n_results; k++) {
                block->out[k][row] = NAN;
            }
        }
    }
}

void hw_batch_fill(struct hw_batch *batch, const struct hw_question *question, size_t n)
{
    batch->calc = question->calc;
    for (size_t i = 0; i < batch->calc->n_inputs; i++) {
        for (size_t row = 0; row < n; row++) {
            batch->in[i][row] = question->in[i];
        }
    }
}

void hw_batch_run(struct hw_batch *batch, size_t n)
{
    const double *in[HW_INPUTS];
    double *out[HW_RESULTS];
    if (n == 0) {
        return;
    }
    for (size_t i = 0; i < batch->calc->n_inputs; i++) {
        in[i] = batch->in[i];
    }
    for (size_t i = 0; i < batch->calc->n_results; i++) {
        out[i] = batch->out[i];
    }
    memset(batch->notes, 0, n * sizeof batch->notes[0]);
    struct hw_block block = {n, in, out, batch->notes};
    hw_block_run(batch->calc, &block);
}

void hw_question_answer(const struct hw_question *question, struct hw_answer *answer)
{
    const struct hw_calc *calc = question->calc;
    const double *in[HW_INPUTS];
    double *out[HW_RESULTS];
    for (size_t i = 0; i < calc->n_inputs; i++) {
        in[i] = &question->in[i];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        out[i] = &answer->out[i];
    }
    answer->notes = 0;
    struct hw_block block = {1, in, out, &answer->notes};
    hw_block_run(calc, &block);
    answer->status = hw_notes_status(calc, answer->notes);
}
