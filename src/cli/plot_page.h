/* plot_page.h - the pages that pictures are drawn on, and how they are laid out there. */
#ifndef HW_PLOT_PAGE_H
#define HW_PLOT_PAGE_H
#include "cli/plot.h"

/* A telephone: as high as it needs to be. */
void plot_page_phone(struct plot *plot);

/* On A4 no words but notes are smaller than this, in points. Of the sizes there are number
 * PLOT_PLAIN is that one. */
enum { PLOT_LEAST = 9, PLOT_PLAIN = 2 };

/* How a picture may be laid out on an A4 page: up to `columns` plots side by side, `levels` of
 * tightness. */
struct plot_choice {
    size_t columns;
    int levels;
};

/* Lays it out in the way number i, counted from 0; the one that reads best comes first. False when
 * there are no more. */
bool plot_page_a4(struct plot *plot, const struct plot_choice *choice, size_t i);

/* How wide one of the plots side by side is, and where number i begins. */
double plot_column_width(const struct plot *plot);
double plot_column_left(const struct plot *plot, size_t i);

/* How high a plot is between its axes. */
double plot_panel_height(const struct plot *plot);
#endif
