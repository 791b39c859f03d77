/* fuzz_decimal.c - the decimal reader and writer against strtod and snprintf: any text, and the
 * same bytes taken as doubles. */
#include "engine/decimal.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static uint64_t bits_of(double value)
{
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    return bits;
}

/* The number that a text begins with, by strtod. It is shown the characters of decimal numbers
 * only, so that it sees no blank, no nan or inf and nothing hexadecimal. */
static size_t expected(const char *text, size_t n, double *value)
{
    char *copy = malloc(n + 1);
    if (!copy) {
        abort();
    }
    size_t i = 0;
    for (; i < n && text[i] != '\0' && strchr("0123456789+-.eE", text[i]); i++) {
        copy[i] = text[i];
    }
    copy[i] = '\0';
    char *end;
    double x = strtod(copy, &end);
    size_t length = (size_t)(end - copy);
    free(copy);
    if (length > HW_DECIMAL_READ_MAX) {
        length = 0;
    }
    if (length > 0) {
        *value = x;
    }
    return length;
}

static void read_text(const char *text, size_t n)
{
    double got = 7.25;
    double want = 7.25;
    size_t got_length = hw_decimal_read(text, n, &got);
    size_t want_length = expected(text, n, &want);
    if (got_length != want_length || bits_of(got) != bits_of(want)) {
        fprintf(stderr, "%.*s: %zu bytes, %.17g, not %zu bytes, %.17g\n", (int)n, text, got_length,
                got, want_length, want);
        abort();
    }
}

static void write_value(double value, int digits)
{
    char got[HW_DECIMAL_MAX] = "";
    size_t length = hw_decimal_write(got, value, digits);
    char want[64] = "";
    if (isfinite(value) && digits >= 1 && digits <= HW_DECIMAL_DIGITS_MAX) {
        snprintf(want, sizeof want, "%.*g", digits, value + 0.0);
    }
    if (length != strlen(want) || strcmp(got, want) != 0) {
        fprintf(stderr, "%.17g to %d digits: %s, not %s\n", value, digits, got, want);
        abort();
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    read_text((const char *)data, size);
    double value;
    if (size > sizeof value) {
        memcpy(&value, data + 1, sizeof value);
        write_value(value, data[0] % (HW_DECIMAL_DIGITS_MAX + 2));
    }
    if (hw_decimal_read((const char *)data, size, &value) > 0) {
        for (int digits = 0; digits <= HW_DECIMAL_DIGITS_MAX + 1; digits++) {
            write_value(value, digits);
        }
    }
    return 0;
}
