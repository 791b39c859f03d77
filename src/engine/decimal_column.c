/* decimal_column.c - what is the same for a column is done once. */
#include "engine/decimal_column.h"

#include "engine/decimal.h"
#include "engine/decimal_quick.h"

#include <math.h>
#include <string.h>

enum { AT_ONCE = 64 };

size_t hw_column_read(const char *text, const uint16_t *at, size_t stride, size_t n, double *column,
                      struct hw_extent *extent)
{
    double least = HUGE_VAL;
    double most = -HUGE_VAL;
    size_t row = 0;
    for (; row < n; row++, at += stride) {
        double x = 0;
        if (!hw_quick_read(text + at[0] + 1, text + at[1], &x)) {
            break;
        }
        column[row] = x;
        least = least < x ? least : x;
        most = most > x ? most : x;
    }
    *extent = (struct hw_extent){least, most};
    return row;
}

/* A number that is not short, behind the separator. */
static size_t write_slowly(char *to, double value, int digits)
{
    char text[HW_DECIMAL_MAX];
    size_t n = hw_decimal_write(text, value, digits);
    memcpy(to, text, n);
    return n;
}

/* Rounds all, then puts all: the steps of one number wait for each other, and a short loop has more
 * of them under way. */
static void write_some(struct hw_spelt *to, const double *column, size_t n, int digits)
{
    struct hw_rounded rounded[AT_ONCE];
    for (size_t row = 0; row < n; row++) {
        (void)hw_quick_round(column[row], digits, &rounded[row]);
    }
    for (size_t row = 0; row < n; row++) {
        char *text = to[row].text + 1;
        size_t length = rounded[row].eight != 0 ? hw_quick_put(text, &rounded[row], digits)
                                                : write_slowly(text, column[row], digits);
        to[row].n = (unsigned char)(1 + length);
    }
}

void hw_column_write(struct hw_spelt *to, const double *column, size_t n, int digits,
                     char separator)
{
    for (size_t row = 0; row < n; row++) {
        to[row].text[0] = separator;
    }
    for (size_t row = 0; row < n; row += AT_ONCE) {
        write_some(to + row, column + row, n - row < AT_ONCE ? n - row : AT_ONCE, digits);
    }
}
