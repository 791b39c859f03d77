/* value.h - one written value: number and unit, a word, or a set of words. */
#ifndef HW_VALUE_H
#define HW_VALUE_H
#include "engine/problem.h"
#include "engine/unit.h"

enum { HW_TEXT_MAX = 255 }; /* the longest written value, in bytes */

/* The range of every number leaves this much out on both sides of zero, in its canonical unit: no
 * measurement is so small, and what is divided by it would soon be infinite. Zero itself is in. */
#define HW_VALUE_LEAST 1e-12

/* The number, or 0 where it is nearer to zero than HW_VALUE_LEAST: for points that are reckoned and
 * not read. */
double hw_value_off_zero(double x);

/* Text as it was written. */
struct hw_text {
    const char *at; /* NULL: not given */
    size_t n;
};

/* The text without the blanks and tabs around it. */
struct hw_text hw_text_trimmed(struct hw_text text);

/* Reads one value for an input, in the input's unit and checked against its range.
 *
 * Given
 *   input     what is wanted
 *   text      the whole of what was written; blanks around it and before the unit are allowed
 *   column    the unit of a bare number when the column's name carries one, else NULL; it may be of
 *             another kind when the entries of one name differ in kind, and the value is then
 *             refused
 * Returned
 *   value     in the input's unit; untouched when there is a problem
 *   written   the unit that was written with it, or NULL
 */
enum hw_problem hw_value_read(const struct hw_input *input, struct hw_text text,
                              const struct hw_unit *column, double *value,
                              const struct hw_unit **written);

/* Reads a number and the unit that may follow it, in that unit and not checked against a range. For
 * parts of what was written; written is NULL when there is no unit. */
enum hw_problem hw_number_read(const struct hw_input *input, struct hw_text text, double *x,
                               const struct hw_unit **written);

/* Brings a number that was read into the input's unit and checks it, as hw_value_read does. */
enum hw_problem hw_number_settle(const struct hw_input *input, double x,
                                 const struct hw_unit *written, const struct hw_unit *column,
                                 double *value);

/* Numbers above one and up to another. */
struct hw_span {
    double above, to;
};

/* The numbers that hw_number_settle takes and leaves as they are, where no unit was written with
 * them and the column has this one, or none. Some others may be taken, too. */
void hw_number_kept(const struct hw_input *input, const struct hw_unit *column,
                    struct hw_span *span);

/* How many words a choice or a set has. */
size_t hw_words_count(const char *const *words);
/* True when two names are the same, case aside, '-' and '_' being equal. */
bool hw_name_is(const char *name, const char *text, size_t n);
#endif
