/* rows_in.h - takes the cells of a record that feed inputs, and reads them. */
#ifndef HW_ROWS_IN_H
#define HW_ROWS_IN_H
#include "cli/rows_block.h"

/* Reads a record into the block; a full block is answered and written. */
void rows_take(struct rows *rows, struct csv_record record);

/* The first input that carries an uncertainty, where rows take none: HW_PROBLEM_SPREAD. */
enum hw_problem rows_find_uncertain(const struct hw_question *question, size_t *which);
#endif
