/* plot_notes.h - what a picture says below its plots. */
#ifndef HW_PLOT_NOTES_H
#define HW_PLOT_NOTES_H
#include "cli/plot.h"
#include "cli/sweep_view.h"

/* The cautions as in text, from plot->y down, and moves that: raised ones with their letters, what
 * never to do, what to mind. */
void plot_notes(const struct sweep_view *view, struct plot *plot);

/* The version and the sources, small. */
void plot_sources(const struct hw_calc *calc, struct plot *plot);
#endif
