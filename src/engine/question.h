/* question.h - what was asked, made whole: every input read, checked, preset or left out. */
#ifndef HW_QUESTION_H
#define HW_QUESTION_H
#include "engine/form.h"

/* Where a value came from. */
enum hw_from {
    HW_ABSENT,
    HW_GIVEN,
    HW_FROM_PRESET,
    HW_FROM_TANK,
    HW_FROM_COLUMN,
    HW_SWEPT,
    HW_SOLVED
};

/* One input as it was written. The entries of one name share one writing. An input that is not
 * written and whose `from` is HW_FROM_COLUMN is written later, row by row: what hangs on it is not
 * judged before. One whose `from` is HW_SOLVED is looked for. */
struct hw_written {
    struct hw_text text;          /* text.at NULL: not written */
    const struct hw_unit *column; /* the unit that the column's name carries, or NULL */
    enum hw_from from;
};

enum { HW_AXES = 2 }; /* the most inputs that are swept at once */

/* An input that is swept. */
struct hw_axis {
    size_t input;
    struct hw_sweep sweep;
};

struct hw_question {
    const struct hw_calc *calc;
    double in[HW_INPUTS];   /* NaN: absent, or solved for; of a sweep the first value */
    double half[HW_INPUTS]; /* half-widths in the inputs' units; 0: exact */
    enum hw_from from[HW_INPUTS];
    const struct hw_unit *unit[HW_INPUTS]; /* the unit written with the value, or NULL */
    struct hw_axis axis[HW_AXES];          /* in the order of the table */
    size_t n_axes;
    size_t solved; /* the input that is solved for, or calc->n_inputs */
};

/* Reads and checks all inputs of a calculation, in the order of its table.
 *
 * Given
 *   calc      the calculation
 *   written   one entry per input of calc
 * Returned
 *   question  complete when the answer is HW_FINE, else not to be used
 *   which     the input at fault; for a group or a condition the first input that it concerns
 */
enum hw_problem hw_question_settle(const struct hw_calc *calc, const struct hw_written written[],
                                   struct hw_question *question, size_t *which);

/* True when some input carries an uncertainty. */
bool hw_question_uncertain(const struct hw_question *question);

/* The input in force that amounts to pour are for, or calc->n_inputs. */
size_t hw_question_aim(const struct hw_question *question);

/* True when the input has no condition, or its condition holds for the values settled so far. */
bool hw_input_wanted(const struct hw_calc *calc, size_t input, const double in[]);

/* The index of the first input of that name, or calc->n_inputs. Case does not count; '-'
 * and '_' are equal. */
size_t hw_input_find(const struct hw_calc *calc, const char *name, size_t n);

/* The entries of one name: the first of them, and the one after `input`, or calc->n_inputs. */
size_t hw_input_first(const struct hw_calc *calc, size_t input);
size_t hw_input_next(const struct hw_calc *calc, size_t input);

/* The index of the result of that name, or calc->n_results. */
size_t hw_result_find(const struct hw_calc *calc, const char *name, size_t n);
#endif
