/* decimal.h - decimal numbers of tables: the same numbers as strtod and printf give, sooner. */
#ifndef HW_DECIMAL_H
#define HW_DECIMAL_H
#include <stdbool.h>
#include <stddef.h>

enum {
    HW_DECIMAL_READ_MAX = 255, /* the longest number that is read, in bytes */
    HW_DECIMAL_MAX = 32,       /* room for any written number, in bytes */
    HW_DECIMAL_DIGITS_MAX = 17 /* the most significant digits that can be asked for */
};

/* Reads the decimal number that text[0..n) begins with: [+-]digits[.digits][e[+-]digits], with a
 * digit before or after the point; E serves as well as e. Blanks, nan, inf and hexadecimal numbers
 * are no numbers here.
 *
 * Given
 *   text      what was written; need not be terminated; may be NULL when n is 0
 * Returned
 *   value     the double nearest to it, as strtod rounds: -0 is kept, too large is infinite, too
 *             small is 0; untouched when there is no number
 * Function value
 *   The bytes the number takes, 0 when there is none or it is longer than HW_DECIMAL_READ_MAX. An e
 *   without digits behind it is not part of the number.
 */
size_t hw_decimal_read(const char *text, size_t n, double *value);

/* Writes a number as printf does for "%.*g", save that -0 is written 0.
 *
 * Given
 *   to        room for HW_DECIMAL_MAX bytes; those behind the number may be written to
 *   value     a finite number
 *   digits    significant digits, 1 to HW_DECIMAL_DIGITS_MAX; 8 and fewer are quick
 * Function value
 *   The bytes of the number, without the NUL that ends it; 0, and nothing written, for NaN, for an
 *   infinite value and for digits out of range.
 */
size_t hw_decimal_write(char *to, double value, int digits);
#endif
