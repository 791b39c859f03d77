/* working.c - collects the steps of a working. Text by printf, as numbers of a working are for
 * people. */
#include "engine/working.h"

#include <stdarg.h>
#include <stdio.h>

void hw_step(struct hw_steps *steps, const char *symbol, double value, const char *unit,
             const char *source, const char *format, ...)
{
    if (steps->n == HW_STEPS_MAX) {
        steps->full = true;
        return;
    }
    struct hw_step *step = &steps->step[steps->n++];
    va_list numbers;
    va_start(numbers, format);
    int symbol_length = snprintf(step->symbol, sizeof step->symbol, "%s", symbol);
    int length = vsnprintf(step->expression, sizeof step->expression, format, numbers);
    va_end(numbers);
    if (length < 0 || (size_t)length >= sizeof step->expression || symbol_length < 0 ||
        (size_t)symbol_length >= sizeof step->symbol) {
        steps->full = true;
    }
    step->value = value;
    step->unit = unit;
    step->source = source;
}
