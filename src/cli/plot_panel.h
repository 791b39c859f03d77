/* plot_panel.h - a result over one axis as a line. */
#ifndef HW_PLOT_PANEL_H
#define HW_PLOT_PANEL_H
#include "cli/plot.h"
#include "cli/sweep_view.h"

/* Draws it from plot->y down, and moves that; with the name of the axis across when it is named. */
void plot_panel(struct sweep_view *view, size_t result, bool named, struct plot *plot);
#endif
