/* rows_line.h - a row of a table in one go. */
#ifndef HW_ROWS_LINE_H
#define HW_ROWS_LINE_H
#include "cli/rows_block.h"

/* Finds out, once all else is prepared, whether lines of this run are written so. */
void rows_line_prepare(struct rows *rows);

/* Writes a row that has no problem. False, and nothing written, when this run or this row is not of
 * that kind, or when the row is too long for that. */
bool rows_line_put(struct rows *rows, const struct row *row);

/* Hands what was written to stdout. */
void rows_flush(struct rows *rows);

/* How the notes of a row are spelt. */
struct hw_text rows_codes(struct rows *rows, uint64_t notes, uint64_t possible);
#endif
