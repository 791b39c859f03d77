/* rows_quick.h - a quick lane for the records that most files are made of. */
#ifndef HW_ROWS_QUICK_H
#define HW_ROWS_QUICK_H
#include "cli/rows_block.h"

/* Finds out, once all else is prepared, whether this run may have plain records, and what may be
 * taken for granted of them. */
void rows_quick_prepare(struct rows *rows);

/* Takes records off the input as long as they are plain: as many cells as the header, no quote and
 * no carriage return in them, and in the cells that feed inputs short bare numbers in range. What
 * it leaves, and every fault, is for rows_take, which gives the same for plain ones. */
void rows_quick_take(struct rows *rows);
#endif
