/* plot_cells.c - two axes as shaded cells with their numbers in them, folded when they are too
 * many for the width. */
#include "cli/plot_cells.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { CELL_HEIGHT = 22, MARK_HEIGHT = 13 };

struct cells {
    struct sweep_view *view;
    struct plot *plot;
    size_t result;
    double left;  /* where the cells begin */
    double width; /* of a cell */
    double height;
    size_t columns; /* in a block */
    bool absent;
};

static double axis_width(const struct sweep_axis *axis)
{
    double widest = 0;
    for (size_t k = 0; k < axis->sweep->n; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(axis, k, text);
        widest = fmax(widest, plot_text_width(text, plot_tick.size * 1.1));
    }
    return widest;
}

static void measure(struct cells *cells)
{
    struct sweep_view *view = cells->view;
    double widest = axis_width(&view->axis[0]);
    bool marks = false;
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        sweep_cell(view, cells->result, k, text);
        widest = fmax(widest, plot_text_width(text, plot_tick.size));
        cells->absent = cells->absent || strcmp(text, "-") == 0;
        sweep_marks(view, k, text);
        widest = fmax(widest, plot_text_width(text, plot_tick.size));
        marks = marks || text[0] != '\0';
    }
    cells->left = PLOT_MARGIN + axis_width(&view->axis[1]) + 6;
    cells->height = CELL_HEIGHT + (marks ? MARK_HEIGHT : 0);
    double room = PLOT_WIDTH - PLOT_MARGIN - cells->left;
    cells->columns = sweep_fold(view->points.across, (size_t)fmax(floor(room / (widest + 5)), 1));
    cells->width = fmin(room / (double)cells->columns, fmax(70, widest + 5));
}

/* From white at the lowest to the darkest at the highest. */
static double grey_of(const struct cells *cells, double value)
{
    double low = cells->view->low[cells->result];
    double high = cells->view->high[cells->result];
    return high > low ? (value - low) / (high - low) : 0;
}

/* A cell without an answer: hatched, with a white plate for its letter. */
static void draw_refused(const struct cells *cells, const struct plot_box *box, const char *marks)
{
    double width = plot_text_width(marks, plot_tick.size) + 6;
    struct plot_look bold = plot_tick;
    bold.bold = true;
    struct plot_box plate = {box->x + (box->width - width) / 2, box->y + box->height / 2 - 8, width,
                             16};
    plot_hatch(cells->plot, box);
    plot_shade(cells->plot, &plate, 0);
    plot_text(cells->plot, box->x + box->width / 2, box->y + box->height / 2 + 4, &bold, marks);
}

static void draw_cell(const struct cells *cells, const struct plot_box *box, size_t k)
{
    const struct sweep_view *view = cells->view;
    struct plot_look look = plot_tick;
    char text[NUMBER_MAX];
    char marks[MARKS_MAX];
    double value = sweep_value(view, cells->result, k);
    double grey = isnan(value) ? 0 : grey_of(cells, value);
    sweep_cell(view, cells->result, k, text);
    sweep_marks(view, k, marks);
    if (sweep_is_refused(view, k)) {
        draw_refused(cells, box, marks);
        return;
    }
    double middle = box->y + box->height / 2 + plot_tick.size * 0.35;
    double up = marks[0] == '\0' ? 0 : MARK_HEIGHT / 2.0;
    look.white = plot_is_dark(grey);
    plot_shade(cells->plot, box, grey);
    plot_text(cells->plot, box->x + box->width / 2, middle - up, &look, text);
    if (marks[0] != '\0') {
        look.bold = true;
        plot_text(cells->plot, box->x + box->width / 2, middle + up, &look, marks);
    }
}

/* The columns from..to of the cells, with the values of both axes. */
static void draw_block(struct cells *cells, size_t from, size_t to)
{
    struct sweep_view *view = cells->view;
    struct plot *plot = cells->plot;
    struct plot_look head = plot_tick;
    struct plot_look side = plot_tick;
    char text[AXIS_TEXT];
    head.bold = side.bold = true;
    side.anchor = PLOT_RIGHT;
    plot->y += plot_tick.size;
    for (size_t i = from; i < to; i++) {
        sweep_axis_text(&view->axis[0], i, text);
        plot_text(plot, cells->left + ((double)(i - from) + 0.5) * cells->width, plot->y, &head,
                  text);
    }
    plot->y += 4;
    for (size_t row = 0; row < view->points.down; row++) {
        size_t first = row * view->points.across;
        sweep_axis_text(&view->axis[1], row, text);
        plot_text(plot, cells->left - 5, plot->y + cells->height / 2 + plot_tick.size * 0.35, &side,
                  text);
        sweep_load(view, first + from, to - from);
        for (size_t i = from; i < to; i++) {
            struct plot_box box = {cells->left + (double)(i - from) * cells->width, plot->y,
                                   cells->width, cells->height};
            draw_cell(cells, &box, first + i);
        }
        plot->y += cells->height;
    }
    plot->y += 8;
}

static void draw_words(const struct cells *cells)
{
    const struct sweep_view *view = cells->view;
    const char *unit = sweep_unit(view, cells->result);
    char low[NUMBER_MAX];
    char high[NUMBER_MAX];
    char line[CAPTION_MAX];
    number_text(low, view->low[cells->result], 3, 0);
    number_text(high, view->high[cells->result], 3, 0);
    (void)snprintf(line, sizeof line, "The darker the higher: %s to %s%s%s.", low, high,
                   unit[0] == '\0' ? "" : " ", unit);
    plot_wrapped(cells->plot, 0, &plot_words, line);
    if (view->refused > 0) {
        plot_wrapped(cells->plot, 0, &plot_words, "Hatched: no answer; the letter tells why.");
    }
    if (cells->absent) {
        plot_wrapped(cells->plot, 0, &plot_words, "-: does not apply there.");
    }
}

void plot_cells(struct sweep_view *view, size_t result, struct plot *plot)
{
    struct cells cells = {.view = view, .plot = plot, .result = result};
    char line[CAPTION_MAX];
    sweep_ways(view, line);
    plot_wrapped(plot, 0, &plot_words, line);
    plot->y += 4;
    measure(&cells);
    for (size_t from = 0; from < view->points.across; from += cells.columns) {
        size_t end = from + cells.columns;
        draw_block(&cells, from, end < view->points.across ? end : view->points.across);
    }
    draw_words(&cells);
    plot->y += 12;
}
