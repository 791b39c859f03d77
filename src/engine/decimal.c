/* decimal.c - decimal numbers to doubles and back. Each way has a short cut for the numbers that
 * tables hold, taken only where it is proved to round correctly; strtod and snprintf do the rest.
 */
#include "engine/decimal.h"

#include "engine/decimal_quick.h"

#include <float.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- Reading --- */

/* A number as it stands in the text: mantissa x 10^power. */
struct numeral {
    uint64_t mantissa; /* all digits; wrong when more than MANTISSA_DIGITS of them count */
    size_t digits;     /* how many, leading zeros and all */
    size_t fraction;   /* how many of them stand behind the point */
    int power;         /* as written behind the e; one beyond POWER_LIMIT may be cut to it */
    bool negative;
};

enum {
    MANTISSA_DIGITS = 19, /* 10^19 < 2^64: so many digits cannot wrap the mantissa */
    POWER_LIMIT = 10000   /* out of reach of any fraction of HW_DECIMAL_READ_MAX digits */
};

static bool is_digit(char c)
{
    return (unsigned char)(c - '0') < 10;
}

/* Reads digits on into the mantissa, and returns where they end. */
static const char *read_digits(const char *at, const char *end, uint64_t *mantissa)
{
    uint64_t m = *mantissa;
    while (at < end && is_digit(*at)) {
        m = 10 * m + (uint64_t)(*at - '0');
        at++;
    }
    *mantissa = m;
    return at;
}

/* Reads what stands behind an e. Returns where it ends, NULL when no digit is there. */
static const char *read_power(const char *at, const char *end, int *power)
{
    bool negative = at < end && *at == '-';
    if (at < end && (*at == '-' || *at == '+')) {
        at++;
    }
    if (at == end || !is_digit(*at)) {
        return NULL;
    }
    int p = 0;
    for (; at < end && is_digit(*at); at++) {
        p = p < POWER_LIMIT ? 10 * p + (*at - '0') : POWER_LIMIT;
    }
    *power = negative ? -p : p;
    return at;
}

/* Takes apart the numeral that a text of at least one byte begins with. Returns its length, 0 when
 * there is none. */
static size_t take_apart(const char *text, size_t n, struct numeral *numeral)
{
    const char *end = text + n;
    bool negative = *text == '-';
    const char *first = negative || *text == '+' ? text + 1 : text;
    uint64_t mantissa = 0;
    const char *at = read_digits(first, end, &mantissa);
    size_t digits = (size_t)(at - first);
    size_t fraction = 0;
    if (at < end && *at == '.') {
        const char *point = at;
        at = read_digits(point + 1, end, &mantissa);
        fraction = (size_t)(at - point) - 1;
        digits += fraction;
    }
    if (digits == 0) {
        return 0;
    }
    int power = 0;
    if (at < end && (*at == 'e' || *at == 'E')) {
        const char *after = read_power(at + 1, end, &power);
        at = after ? after : at;
    }
    *numeral = (struct numeral){mantissa, digits, fraction, power, negative};
    return (size_t)(at - text);
}

/* How many of the digits count: those from the first that is not 0. Signs, the point and 0 come
 * before 1 in ASCII. */
static size_t digits_that_count(const char *text, size_t digits)
{
    for (; digits > 0; text++) {
        if (*text >= '1') {
            break;
        }
        digits -= *text == '0';
    }
    return digits;
}

/* Clinger's short cut (How to read floating point numbers accurately, 1990): a mantissa up to 2^53
 * and a power of ten up to 10^22 are doubles themselves, so that their product or quotient, rounded
 * once, is the double nearest to the number. False when the numeral is not of that kind. */
static bool read_fast(const char *text, const struct numeral *numeral, double *value)
{
    int power = numeral->power - (int)numeral->fraction;
    if (!HW_ROUNDED_ONCE || power < -HW_POWER_MAX || power > HW_POWER_MAX ||
        numeral->mantissa > UINT64_C(1) << DBL_MANT_DIG) {
        return false;
    }
    if (numeral->digits > MANTISSA_DIGITS &&
        digits_that_count(text, numeral->digits) > MANTISSA_DIGITS) {
        return false;
    }
    double m = (double)numeral->mantissa;
    double x = power < 0 ? m / hw_ten_to(-power) : m * hw_ten_to(power);
    *value = numeral->negative ? -x : x;
    return true;
}

size_t hw_decimal_read(const char *text, size_t n, double *value)
{
    struct numeral numeral;
    size_t length = n > 0 ? take_apart(text, n, &numeral) : 0;
    if (length == 0 || length > HW_DECIMAL_READ_MAX) {
        return 0;
    }
    if (!read_fast(text, &numeral, value)) {
        char copy[HW_DECIMAL_READ_MAX + 1];
        memcpy(copy, text, length);
        copy[length] = '\0';
        *value = strtod(copy, NULL);
    }
    return length;
}

/* --- Writing --- */

static size_t write_slow(char *to, double value, int digits)
{
    if (!(fabs(value) <= DBL_MAX) || digits < 1 || digits > HW_DECIMAL_DIGITS_MAX) {
        return 0;
    }
    if (value == 0) {
        memcpy(to, "0", 2);
        return 1;
    }
    return (size_t)snprintf(to, HW_DECIMAL_MAX, "%.*g", digits, value);
}

size_t hw_decimal_write(char *to, double value, int digits)
{
    size_t n = hw_quick_write(to, value, digits);
    if (n == 0) {
        return write_slow(to, value, digits);
    }
    to[n] = '\0';
    return n;
}
