/* plot_cells.h - a result over two axes as shaded cells. */
#ifndef HW_PLOT_CELLS_H
#define HW_PLOT_CELLS_H
#include "cli/plot.h"
#include "cli/sweep_view.h"

/* Draws them with their numbers in them, from plot->y down, and moves that. */
void plot_cells(struct sweep_view *view, size_t result, struct plot *plot);
#endif
