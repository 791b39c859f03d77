/* answer.c - the loop over a block. */
#include "engine/answer.h"

#include "calc/block_row.h"

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

/* What is left of notes of which some of those in `telling` hide others. Goes from bit to bit: most
 * rows have one or two that hide, of dozens. */
static uint64_t gravest_of_facts(const struct hw_calc *calc, uint64_t notes, uint64_t telling)
{
    for (uint64_t left = notes & telling; left != 0;) {
        uint64_t hides = calc->notes[__builtin_ctzll(left)].hides;
        notes &= ~hides;
        left &= (left - 1) & ~hides;
    }
    return notes;
}

uint64_t hw_notes_told(const struct hw_calc *calc, uint64_t notes)
{
    return gravest_of_facts(calc, notes, tell_facts(calc));
}

/* What a row is where a result is not finite that must be: the engine's own note. */
static uint64_t judge(const struct hw_result *result, double x)
{
    return isfinite(x) || (isnan(x) && result->sometimes) ? 0 : bit_of(HW_NOTE_NOT_FINITE);
}

/* Asks for each row of a block. Whether it has an answer does not hang on what is wanted. */
static void answer_rows(const struct hw_calc *calc, const struct hw_block *block)
{
    double in[HW_INPUTS];
    double out[HW_RESULTS];
    for (size_t row = 0; row < block->n; row++) {
        block_row_read(block, calc->n_inputs, row, in);
        calc->answer(in, out, &block->notes[row]);
        for (size_t k = 0; k < calc->n_results; k++) {
            block->notes[row] |= judge(&calc->results[k], out[k]);
        }
        block_row_write(block, calc->n_results, row, out);
    }
}

/* True when a value of the column is not finite. Such values alone have all bits of the exponent,
 * so that one more carries into the sign. */
static bool is_any_infinite(const double *column, size_t n)
{
    const uint64_t exponent = UINT64_C(0x7ff) << 52;
    uint64_t carried = 0;
    for (size_t row = 0; row < n; row++) {
        uint64_t bits;
        memcpy(&bits, &column[row], sizeof bits);
        carried |= (bits & exponent) + (UINT64_C(1) << 52);
    }
    return carried >> 63 != 0;
}

/* The same judgement of what `block` has set. */
static void judge_columns(const struct hw_calc *calc, const struct hw_block *block)
{
    for (size_t k = 0; k < calc->n_results; k++) {
        if (!block->out[k] || !is_any_infinite(block->out[k], block->n)) {
            continue;
        }
        for (size_t row = 0; row < block->n; row++) {
            block->notes[row] |= judge(&calc->results[k], block->out[k][row]);
        }
    }
}

static void write_no_answer(const struct hw_calc *calc, const struct hw_block *block, size_t row)
{
    for (size_t k = 0; k < calc->n_results; k++) {
        if (block->out[k]) {
            block->out[k][row] = NAN;
        }
    }
}

static struct hw_finishing finishing_of(const struct hw_calc *calc)
{
    return (struct hw_finishing){
        .calc = calc,
        .grave = hw_notes_grave(calc),
        .with_answer = set_by(calc, HW_SET_WITH_ANSWER),
        .ever = set_by(calc, HW_SET_EVER),
        .telling = tell_facts(calc),
    };
}

static uint64_t finish_notes(const struct hw_finishing *f, uint64_t notes)
{
    const uint64_t own = bit_of(HW_NOTE_NOT_FINITE);
    if ((notes & f->grave & ~own) != 0) {
        notes &= ~own; /* a row that is refused has no results to be judged */
    }
    notes |= f->ever | ((notes & f->grave) == 0 ? f->with_answer : 0);
    return gravest_of_facts(f->calc, notes, f->telling);
}

/* Most rows of a block have one of a few sets of notes: each is worked out once or so. */
enum { SETS_KEPT = 64, SETS_SHIFT = 58 };

static void finish_rows(const struct hw_finishing *f, const struct hw_block *block)
{
    uint64_t set[SETS_KEPT] = {0};
    uint64_t finished[SETS_KEPT];
    uint64_t none = finish_notes(f, 0);
    for (size_t i = 0; i < SETS_KEPT; i++) {
        finished[i] = none;
    }
    for (size_t row = 0; row < block->n; row++) {
        uint64_t notes = block->notes[row];
        /* the golden ratio spreads sets of few bits over the places */
        size_t place = (size_t)(notes * UINT64_C(0x9e3779b97f4a7c15) >> SETS_SHIFT);
        if (set[place] != notes) {
            set[place] = notes;
            finished[place] = finish_notes(f, notes);
        }
        block->notes[row] = finished[place];
        if ((finished[place] & f->grave) != 0) {
            write_no_answer(f->calc, block, row);
        }
    }
}

static void run(const struct hw_finishing *f, const struct hw_block *block)
{
    if (f->calc->block && f->calc->block(block)) {
        judge_columns(f->calc, block);
    } else {
        answer_rows(f->calc, block);
    }
    finish_rows(f, block);
}

void hw_block_run(const struct hw_calc *calc, const struct hw_block *block)
{
    const struct hw_finishing finishing = finishing_of(calc);
    run(&finishing, block);
}

void hw_batch_fill(struct hw_batch *batch, const struct hw_question *question, size_t n)
{
    batch->calc = question->calc;
    batch->finishing = finishing_of(question->calc);
    memset(batch->unwanted, 0, sizeof batch->unwanted);
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
        out[i] = batch->unwanted[i] ? NULL : batch->out[i];
    }
    memset(batch->notes, 0, n * sizeof batch->notes[0]);
    struct hw_block block = {n, in, out, batch->notes};
    run(&batch->finishing, &block);
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
