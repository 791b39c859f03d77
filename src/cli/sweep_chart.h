/* sweep_chart.h - one result over two axes. */
#ifndef HW_SWEEP_CHART_H
#define HW_SWEEP_CHART_H
#include "cli/sweep_view.h"

/* Prints its numbers and letters. */
void sweep_chart(struct sweep_view *view, size_t result);
#endif
