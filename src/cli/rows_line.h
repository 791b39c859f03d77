/* rows_line.h - a row of a table in one go. */
#ifndef HW_ROWS_LINE_H
#define HW_ROWS_LINE_H
#include "cli/rows_block.h"

/* Finds out, once all else is prepared, whether lines of this run are written so. */
void rows_line_prepare(struct rows *rows);

/* Writes the rows of a block from `first` on, as long as they have no problem. Returns how many;
 * none when this run or that row is not of that kind, or when the row is too long for that. */
size_t rows_line_put(struct rows *rows, size_t first);

/* Hands what was written to stdout. */
void rows_flush(struct rows *rows);

/* How the notes of a row are spelt. */
struct hw_text rows_codes(struct rows *rows, uint64_t notes, uint64_t possible);
#endif
