/* answer.c - the loop over a block. */
#include "engine/answer.h"

#include <math.h>
#include <string.h>

static const struct hw_note not_finite = {
    .code = "not-finite",
    .text = "These numbers lead to no finite answer: check them and their units.",
    .source = "our-arithmetic",
    .effect = HW_REFUSED,
};

const struct hw_note *hw_note_at(const struct hw_calc *calc, size_t bit)
{
    if (bit < calc->n_notes) {
        return &calc->notes[bit];
    }
    return bit == HW_NOTE_NOT_FINITE ? &not_finite : NULL;
}

static uint64_t bit_of(size_t note)
{
    return UINT64_C(1) << note;
}

int hw_notes_status(const struct hw_calc *calc, uint64_t notes)
{
    static const int status_of[] = {
        [HW_STANDING] = 0, [HW_CAUTION] = 0,   [HW_STRETCHED] = 1,
        [HW_REFUSED] = -1, [HW_WITHHELD] = -2,
    };
    enum hw_effect gravest =
        (notes & bit_of(HW_NOTE_NOT_FINITE)) != 0 ? not_finite.effect : HW_STANDING;
    for (size_t i = 0; i < calc->n_notes; i++) {
        if ((notes & bit_of(i)) != 0 && calc->notes[i].effect > gravest) {
            gravest = calc->notes[i].effect;
        }
    }
    return status_of[gravest];
}

uint64_t hw_notes_grave(const struct hw_calc *calc)
{
    uint64_t grave = bit_of(HW_NOTE_NOT_FINITE);
    for (size_t i = 0; i < calc->n_notes; i++) {
        if (calc->notes[i].effect >= HW_REFUSED) {
            grave |= bit_of(i);
        }
    }
    return grave;
}

static uint64_t set_by(const struct hw_calc *calc, enum hw_setter setter)
{
    uint64_t notes = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        notes |= calc->notes[i].setter == setter ? bit_of(i) : 0;
    }
    return notes;
}

/* The notes that hide others. */
static uint64_t tell_facts(const struct hw_calc *calc)
{
    uint64_t notes = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        notes |= calc->notes[i].hides != 0 ? bit_of(i) : 0;
    }
    return notes;
}

/* What is left of notes of which some of those in `telling` hide others. */
static uint64_t gravest_of_facts(const struct hw_calc *calc, uint64_t notes, uint64_t telling)
{
    for (size_t i = 0; i < calc->n_notes && (notes & telling) != 0; i++) {
        if ((notes & bit_of(i)) != 0) {
            notes &= ~calc->notes[i].hides;
        }
    }
    return notes;
}

uint64_t hw_notes_told(const struct hw_calc *calc, uint64_t notes)
{
    return gravest_of_facts(calc, notes, tell_facts(calc));
}

/* Asks for each row of a block. */
static void answer_rows(const struct hw_calc *calc, const struct hw_block *block)
{
    double in[HW_INPUTS];
    double out[HW_RESULTS];
    for (size_t row = 0; row < block->n; row++) {
        for (size_t i = 0; i < calc->n_inputs; i++) {
            in[i] = block->in[i][row];
        }
        calc->answer(in, out, &block->notes[row]);
        for (size_t k = 0; k < calc->n_results; k++) {
            block->out[k][row] = out[k];
        }
    }
}

static bool is_usable(const struct hw_calc *calc, const struct hw_block *block, size_t row)
{
    for (size_t k = 0; k < calc->n_results; k++) {
        double x = block->out[k][row];
        if (!isfinite(x) && !(isnan(x) && calc->results[k].sometimes)) {
            return false;
        }
    }
    return true;
}

static void write_no_answer(const struct hw_calc *calc, const struct hw_block *block, size_t row)
{
    for (size_t k = 0; k < calc->n_results; k++) {
        block->out[k][row] = NAN;
    }
}

void hw_block_run(const struct hw_calc *calc, const struct hw_block *block)
{
    uint64_t grave = hw_notes_grave(calc);
    uint64_t with_answer = set_by(calc, HW_SET_WITH_ANSWER);
    uint64_t ever = set_by(calc, HW_SET_EVER);
    uint64_t telling = tell_facts(calc);
    if (calc->block) {
        calc->block(block);
    } else {
        answer_rows(calc, block);
    }
    for (size_t row = 0; row < block->n; row++) {
        uint64_t *notes = &block->notes[row];
        if ((*notes & grave) == 0 && !is_usable(calc, block, row)) {
            *notes |= bit_of(HW_NOTE_NOT_FINITE);
        }
        bool answered = (*notes & grave) == 0;
        *notes |= ever | (answered ? with_answer : 0);
        *notes = gravest_of_facts(calc, *notes, telling);
        if (!answered) {
            write_no_answer(calc, block, row);
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
    for (size_t i = 0; i < HW_INPUTS; i++) {
        in[i] = batch->in[i];
    }
    for (size_t i = 0; i < HW_RESULTS; i++) {
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
    for (size_t i = 0; i < HW_INPUTS; i++) {
        in[i] = &question->in[i];
    }
    for (size_t i = 0; i < HW_RESULTS; i++) {
        out[i] = &answer->out[i];
    }
    answer->notes = 0;
    struct hw_block block = {1, in, out, &answer->notes};
    hw_block_run(calc, &block);
    answer->status = hw_notes_status(calc, answer->notes);
}
