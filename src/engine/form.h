/* form.h - the forms a value can be written in: a point, a point with its uncertainty, a sweep. */
#ifndef HW_FORM_H
#define HW_FORM_H
#include "engine/value.h"

enum { HW_SWEEP_MAX = 1000 }; /* the most values of one sweep */

/* start:stop:step. The values are start, start + step, start + 2 step and so on, each rounded to
 * the 15th digit of the larger end in the unit it was written in, so that it is the number that
 * would be typed; the last is stop. */
struct hw_sweep {
    const struct hw_unit *unit; /* of the three numbers; NULL: bare */
    double start, stop, step;
    size_t n;
};

/* What was written for one input. */
struct hw_form {
    double value; /* in the input's unit; a sweep's first value */
    double half;  /* the half-width, in the input's unit; 0: the value is taken as exact */
    const struct hw_unit *unit; /* written with it, or NULL */
    struct hw_sweep sweep;      /* n is 0 when it is none */
};

/* Reads what was written for an input, in any form. Given and returned as for hw_value_read; a
 * half-width is one standard deviation, its own unit or that of the value, or per cent: of the
 * value as written, points of a share. */
enum hw_problem hw_form_read(const struct hw_input *input, struct hw_text text,
                             const struct hw_unit *column, struct hw_form *form);

/* The number k of a sweep that was read, as it would be typed. */
double hw_sweep_number(const struct hw_sweep *sweep, size_t k);

/* The value number k, in the input's unit; NaN when it is nearer to zero than HW_VALUE_LEAST, which
 * is so of no sweep that hw_form_read has read. */
double hw_sweep_value(const struct hw_input *input, const struct hw_sweep *sweep, size_t k);
#endif
