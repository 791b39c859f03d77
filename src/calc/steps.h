/* steps.h - how a calculation writes its working down. What a step holds is in engine/working.h. */
#ifndef HW_STEPS_H
#define HW_STEPS_H
#include "calc/calc.h"

/* Adds one step of the working.
 *
 * Given
 *   symbol   what the step finds; the name of a result when it is one
 *   value    the number found, from the same core call that the answer used
 *   unit     its unit, "" for a bare number
 *   source   a key of data/references.tsv, or "" for plain arithmetic
 *   format   the expression with its numbers, as printf writes it: numbers by %.10g. It is
 *            arithmetic that awk reads: + - * / ^ ( ) exp() log() sqrt(), and <= in brackets, which
 *            is 1 or 0
 */
#if defined(__GNUC__)
__attribute__((format(printf, 6, 7)))
#endif
void hw_step(struct hw_steps *steps, const char *symbol, double value, const char *unit,
             const char *source, const char *format, ...);
#endif
