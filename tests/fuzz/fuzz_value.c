/* fuzz_value.c - any bytes as the value of any input: what is accepted lies in the input's
 * range. */
#include "engine/value.h"

#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

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
    const struct hw_unit *written = NULL;
    double value = 0;
    struct hw_text text = {(const char *)data + 2, size - 2};
    if (hw_value_read(input, text, column, &value, &written) == HW_FINE &&
        !(value >= input->lo && value <= input->hi)) {
        abort();
    }
    return 0;
}
