/* decimal_column.c - what is the same for a column is done once. */
#include "engine/decimal_column.h"

#include "engine/decimal.h"
#include "engine/decimal_quick.h"

#include <math.h>
#include <string.h>

enum { AT_ONCE = 64 };

size_t hw_column_read(const struct hw_cells *cells, double *restrict column,
                      struct hw_extent *extent)
{
    const struct hw_cells c = *cells;
    const uint16_t *at = c.at;
    double least = HUGE_VAL;
    double most = -HUGE_VAL;
    size_t row = 0;
    for (; row < c.n; row++, at += c.stride) {
        const char *end = c.text + at[1];
        double x = 0;
        if (*end != c.end || !hw_quick_read(c.text + at[0] + 1, end, &x)) {
            break;
        }
        column[row] = x;
        least = least < x ? least : x;
        most = most > x ? most : x;
    }
    *extent = (struct hw_extent){least, most};
    return row;
}

/* A number that takes longer, or is negative. */
static size_t write_other(char *to, double value, int digits)
{
    char text[HW_DECIMAL_MAX];
    size_t n = hw_decimal_write(text, value, digits);
    memcpy(to, text, n);
    return n;
}

/* A number and its power of ten: see hw_quick_round. */
struct rounded {
    uint32_t whole;
    int power;
};

/* Rounds all, then puts all: the steps of one number wait for each other, and of a short loop more
 * numbers are under way. */
static void write_some(struct hw_spelt *to, const double *column, size_t n,
                       const struct hw_width *width, char separator)
{
    struct rounded rounded[AT_ONCE];
    for (size_t row = 0; row < n; row++) {
        rounded[row].power = 0;
        rounded[row].whole = hw_quick_round(column[row], width, &rounded[row].power);
    }
    for (size_t row = 0; row < n; row++) {
        char *text = to[row].text;
        const struct rounded *r = &rounded[row];
        text[0] = separator;
        size_t length = r->whole != 0 ? hw_quick_put(text + 1, r->whole, r->power, width)
                                      : write_other(text + 1, column[row], width->digits);
        to[row].n = (unsigned char)(1 + length);
    }
}

void hw_column_write(struct hw_spelt *to, const double *column, size_t n, int digits,
                     char separator)
{
    if (!hw_is_quick(digits)) {
        for (size_t row = 0; row < n; row++) {
            to[row].text[0] = separator;
            to[row].n = (unsigned char)(1 + write_other(to[row].text + 1, column[row], digits));
        }
        return;
    }
    const struct hw_width width = hw_width_of(digits);
    for (size_t row = 0; row < n; row += AT_ONCE) {
        size_t some = n - row < AT_ONCE ? n - row : AT_ONCE;
        write_some(to + row, column + row, some, &width, separator);
    }
}
