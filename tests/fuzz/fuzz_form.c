/* fuzz_form.c - any bytes as a value, an uncertainty or a sweep of any input: every value lies in
 * the input's range, no half-width is below zero, the values of a sweep go one way. */
#include "engine/form.h"

#include <math.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void want(bool holds)
{
    if (!holds) {
        abort();
    }
}

static bool in_range(const struct hw_input *input, double value)
{
    return value >= input->lo && value <= input->hi;
}

static void check_sweep(const struct hw_input *input, const struct hw_form *form)
{
    double before = hw_sweep_value(input, &form->sweep, 0);
    want(form->sweep.n <= HW_SWEEP_MAX && before == form->value);
    for (size_t k = 1; k < form->sweep.n; k++) {
        double value = hw_sweep_value(input, &form->sweep, k);
        want(in_range(input, value));
        want(form->sweep.step > 0 ? value >= before : value <= before);
        before = value;
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size < 2) {
        return 0;
    }
    size_t calculations = 0;
    while (hw_calcs[calculations]) {
        calculations++;
    }
    const struct hw_calc *calc = hw_calcs[data[0] % calculations];
    const struct hw_input *input = &calc->inputs[data[1] % calc->n_inputs];
    const struct hw_unit *column = data[1] & 0x80 ? hw_unit_of(input->kind, input->unit) : NULL;
    struct hw_text text = {(const char *)data + 2, size - 2};
    struct hw_form form;
    if (hw_form_read(input, text, column, &form) != HW_FINE) {
        return 0;
    }
    want(in_range(input, form.value));
    want(form.half >= 0 && isfinite(form.half));
    if (form.sweep.n > 0) {
        check_sweep(input, &form);
    }
    return 0;
}
