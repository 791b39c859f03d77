/* sweep_picture.h - one result of a sweep as a picture. */
#ifndef HW_SWEEP_PICTURE_H
#define HW_SWEEP_PICTURE_H
#include "cli/plot.h"
#include "cli/sweep_view.h"

/* All draw from plot->y down, and move it: name and unit of a result, and what it is; a line over
 * one axis; shaded cells with their numbers over two. */
void sweep_draw_heading(const struct sweep_view *view, size_t result, struct plot *plot);
void sweep_draw_line(struct sweep_view *view, size_t result, struct plot *plot);
void sweep_draw_chart(struct sweep_view *view, size_t result, struct plot *plot);
#endif
