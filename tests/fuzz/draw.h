/* draw.h - bytes of a fuzzer made into questions, as settling would leave them. */
#ifndef HW_DRAW_H
#define HW_DRAW_H
#include "engine/question.h"

/* Bytes that are not yet used. */
struct draw {
    const uint8_t *at;
    size_t n;
};

/* The next byte, 0 when none is left. */
unsigned draw_byte(struct draw *draw);

/* One of the calculations. */
const struct hw_calc *draw_calc(struct draw *draw);

/* A number or a word that the input takes: an end of its range, what is next to zero, the preset,
 * something in between, or any number of eight bytes that is in range. */
double draw_value(struct draw *draw, const struct hw_input *input);

/* Values for all inputs of a calculation: each in its range, NaN where it is not asked for or is
 * left out, of a group no more than one. */
void draw_question(struct draw *draw, const struct hw_calc *calc, double in[HW_INPUTS]);
#endif
