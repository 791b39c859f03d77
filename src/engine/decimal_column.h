/* decimal_column.h - decimal numbers of a column, one row after another. */
#ifndef HW_DECIMAL_COLUMN_H
#define HW_DECIMAL_COLUMN_H
#include <stddef.h>
#include <stdint.h>

enum { HW_COLUMN_BEYOND = 8 };

/* The least and the greatest number of a column. */
struct hw_extent {
    double least, most;
};

/* Reads short bare numbers: see hw_quick_read.
 *
 * Given
 *   text      HW_COLUMN_BEYOND bytes behind its last cell can be read, whatever they are
 *   at        of row i the cell stands between the bytes at[i * stride] and at[i * stride + 1]
 *   n         how many rows
 * Returned
 *   column    the numbers, up to the first cell that holds anything else
 *   extent    of them, where there are any
 * Function value
 *   How many numbers there are before that cell.
 */
size_t hw_column_read(const char *text, const uint16_t *at, size_t stride, size_t n, double *column,
                      struct hw_extent *extent);
#endif
