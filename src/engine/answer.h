/* answer.h - the block call, and the answer to one question. */
#ifndef HW_ANSWER_H
#define HW_ANSWER_H
#include "engine/question.h"

struct hw_answer {
    double out[HW_RESULTS];
    uint32_t notes; /* bits, indices into calc->notes */
    int status;     /* 0, 1, -1, -2: of the gravest note */
};

/* Runs a block: calls run, then writes NaN over every result of the refused and withheld rows. The
 * one way to a calculation, for one row and for many. */
void hw_block_run(const struct hw_calc *calc, const struct hw_block *block);

/* Questions to one calculation, one a row, held in columns. Large: one at a time, on the stack. */
struct hw_batch {
    const struct hw_calc *calc;
    double in[HW_INPUTS][HW_BLOCK];
    double out[HW_RESULTS][HW_BLOCK];
    uint32_t notes[HW_BLOCK];
};

/* Makes the first n rows the same question, n at most HW_BLOCK. */
void hw_batch_fill(struct hw_batch *batch, const struct hw_question *question, size_t n);

/* Answers the first n rows, n at most HW_BLOCK; with none it does nothing. */
void hw_batch_run(struct hw_batch *batch, size_t n);

/* The notes that leave no answer, as bits. */
uint32_t hw_notes_grave(const struct hw_calc *calc);

/* The status that goes with these notes. */
int hw_notes_status(const struct hw_calc *calc, uint32_t notes);

/* The answer to one settled question. */
void hw_question_answer(const struct hw_question *question, struct hw_answer *answer);
#endif
