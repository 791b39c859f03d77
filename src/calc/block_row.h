/* block_row.h - one row of a block, which has it in columns. */
#ifndef HW_BLOCK_ROW_H
#define HW_BLOCK_ROW_H
#include "calc/calc.h"

/* The inputs of a row. */
static inline void block_row_read(const struct hw_block *block, size_t n_inputs, size_t row,
                                  double in[])
{
    for (size_t i = 0; i < n_inputs; i++) {
        in[i] = block->in[i][row];
    }
}

/* Puts the results of a row where somebody wants them. */
static inline void block_row_write(const struct hw_block *block, size_t n_results, size_t row,
                                   const double out[])
{
    for (size_t k = 0; k < n_results; k++) {
        if (block->out[k]) {
            block->out[k][row] = out[k];
        }
    }
}
#endif
