/* decimal_column.h - decimal numbers of a column, one row after another. */
#ifndef HW_DECIMAL_COLUMN_H
#define HW_DECIMAL_COLUMN_H
#include <stddef.h>
#include <stdint.h>

enum { HW_COLUMN_BEYOND = 8, HW_SPELT_MAX = 31 };

/* A cell as it is written: the separator before it, and the number; nothing else for one that is
 * not finite. All bytes of the text may be copied. */
struct hw_spelt {
    char text[HW_SPELT_MAX];
    unsigned char n;
};

/* The least and the greatest number of a column. */
struct hw_extent {
    double least, most;
};

/* Cells of a column. That of row i stands between the bytes at[i * stride] and at[i * stride + 1]
 * of the text, and the second of them is `end`. HW_COLUMN_BEYOND bytes behind the last one can be
 * read, whatever they are. */
struct hw_cells {
    const char *text;
    const uint16_t *at;
    size_t stride, n;
    char end;
};

/* Reads short bare numbers: see hw_quick_read. Returns how many there are before the first cell
 * that holds anything else, or does not end so. The extent is theirs, where there are any. */
size_t hw_column_read(const struct hw_cells *cells, double *column, struct hw_extent *extent);

/* Spells the numbers of a column as hw_decimal_write does. */
void hw_column_write(struct hw_spelt *to, const double *column, size_t n, int digits,
                     char separator);
#endif
