/* answer.h - questions put to a calculation, one or many. */
#ifndef HW_ANSWER_H
#define HW_ANSWER_H
#include "engine/question.h"

struct hw_answer {
    double out[HW_RESULTS];
    uint64_t notes; /* bits, indices into calc->notes, and HW_NOTE_NOT_FINITE */
    int status;     /* 0, 1, -1, -2: of the gravest note */
};

/* The engine's own note, set on a row whose results are not all finite where they must be: a
 * calculation lets none through, and if it ever does, this is what is said. */
enum { HW_NOTE_NOT_FINITE = HW_NOTES };

/* The note of a bit: one of the calculation's, or the engine's own; NULL where there is none. */
const struct hw_note *hw_note_at(const struct hw_calc *calc, size_t bit);

/* Answers a block: all by `block` where the calculation has one that takes it, or each row by
 * `answer`; then sets the notes that need no decision, and writes NaN over every result of the
 * refused and withheld rows. The one way to a calculation, for one row and for many. */
void hw_block_run(const struct hw_calc *calc, const struct hw_block *block);

/* What the engine makes of the notes of a calculation: bits, by what those notes do. */
struct hw_finishing {
    const struct hw_calc *calc;
    uint64_t grave, with_answer, ever, telling;
};

/* Questions to one calculation, one a row, held in columns. Large: one at a time, on the stack. */
struct hw_batch {
    const struct hw_calc *calc;
    struct hw_finishing finishing;
    double in[HW_INPUTS][HW_BLOCK];
    double out[HW_RESULTS][HW_BLOCK];
    uint64_t notes[HW_BLOCK];
    bool unwanted[HW_RESULTS]; /* such a result is not set */
};

/* Makes the first n rows the same question, n at most HW_BLOCK; every result is wanted. */
void hw_batch_fill(struct hw_batch *batch, const struct hw_question *question, size_t n);

/* Answers the first n rows, n at most HW_BLOCK; with none it does nothing. */
void hw_batch_run(struct hw_batch *batch, size_t n);

/* The notes that leave no answer, as bits. */
uint64_t hw_notes_grave(const struct hw_calc *calc);

/* Of notes that tell the same fact the first, which is the gravest, is left. */
uint64_t hw_notes_told(const struct hw_calc *calc, uint64_t notes);

/* The status that goes with these notes. */
int hw_notes_status(const struct hw_calc *calc, uint64_t notes);

/* The answer to one settled question. */
void hw_question_answer(const struct hw_question *question, struct hw_answer *answer);
#endif
