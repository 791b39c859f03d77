/* rows_out.h - answers a block of rows and writes them with what was found. */
#ifndef HW_ROWS_OUT_H
#define HW_ROWS_OUT_H
#include "cli/rows_block.h"

/* The header of the input with the names of what is appended; nothing in formats that are no
 * tables. */
void rows_put_header(struct rows *rows);

/* Answers the rows of the block, writes them in their order, and empties it. */
void rows_finish_block(struct rows *rows);

/* True where the output is the rows with columns appended. */
bool rows_is_table(const struct rows *rows);
#endif
