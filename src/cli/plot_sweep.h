/* plot_sweep.h - the picture of a sweep. */
#ifndef HW_PLOT_SWEEP_H
#define HW_PLOT_SWEEP_H
#include "cli/sweep_view.h"

/* Prints it as a document: title, inputs, pictures, cautions. */
void plot_sweep(struct sweep_view *view);
#endif
