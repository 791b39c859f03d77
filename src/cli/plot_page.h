/* plot_page.h - the pages that pictures are drawn on, and how they are laid out there. */
#ifndef HW_PLOT_PAGE_H
#define HW_PLOT_PAGE_H
#include "cli/plot.h"

/* A telephone: as high as it needs to be. */
void plot_page_phone(struct plot *plot);

/* On A4 no words but notes are smaller than this, in points. */
enum { PLOT_LEAST = 9 };

/* A way to lay a picture out on A4. */
struct plot_way {
    bool lying;
    size_t columns; /* plots side by side, 1 or more */
    size_t tight;   /* as in struct plot */
    size_t size;    /* of words: 0 the largest; PLOT_PLAIN the least; PLOT_SMALL with small notes */
};

enum { PLOT_PLAIN = 2, PLOT_SMALL };

void plot_page_a4(struct plot *plot, const struct plot_way *way);

/* From one way to the next one, which reads less well, none of them beyond `most`. The first is
 * {false, 1, 0, 0}. False when there are no more. */
bool plot_way_next(struct plot_way *way, const struct plot_way *most);

/* How wide one of the plots side by side is, and where number i begins. */
double plot_column_width(const struct plot *plot);
double plot_column_left(const struct plot *plot, size_t i);

/* How high a plot is between its axes. */
double plot_panel_height(const struct plot *plot);
#endif
