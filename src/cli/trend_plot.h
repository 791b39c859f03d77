/* trend_plot.h - a record as a picture: readings, line, limit, window. */
#ifndef HW_TREND_PLOT_H
#define HW_TREND_PLOT_H
#include "cli/trend_answer.h"

void trend_plot(const struct trend_answer *answer);
#endif
