/* sweep_table.h - a sweep over one axis in columns. */
#ifndef HW_SWEEP_TABLE_H
#define HW_SWEEP_TABLE_H
#include "cli/sweep_view.h"

/* Prints the numbers of the results that apply, and letters. */
void sweep_table(struct sweep_view *view);
#endif
