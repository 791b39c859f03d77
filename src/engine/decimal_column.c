/* decimal_column.c - what is the same for a column is done once. */
#include "engine/decimal_column.h"

#include "engine/decimal_quick.h"

#include <math.h>

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
