/* plot_cells.c - two axes as shaded cells with their numbers in them, folded when they are too
 * many for the width. */
#include "cli/plot_cells.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* From this tightness on letters stand behind their number, not below it. */
enum { BESIDE = 2 };

struct cells {
    struct sweep_view *view;
    struct plot *plot;
    size_t result;
    struct plot_look tick;
    double left;          /* where the cells begin */
    double width, height; /* of a cell */
    double number, marks; /* the widest of the numbers, and of the letters */
    size_t columns;       /* in a block */
    bool absent;
};

static double axis_width(const struct cells *cells, const struct sweep_axis *axis)
{
    double widest = 0;
    for (size_t k = 0; k < axis->sweep->n; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(axis, k, text);
        widest = fmax(widest, plot_text_width(text, cells->tick.size * 1.1));
    }
    return widest;
}

/* What is in the cells. */
static void measure_points(struct cells *cells)
{
    struct sweep_view *view = cells->view;
    double size = cells->tick.size;
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        sweep_cell(view, cells->result, k, text);
        cells->number = fmax(cells->number, plot_text_width(text, size));
        cells->absent = cells->absent || strcmp(text, "-") == 0;
        sweep_marks(view, k, text);
        cells->marks = fmax(cells->marks, plot_text_width(text, size * 1.1));
    }
}

static void measure(struct cells *cells)
{
    const struct plot *plot = cells->plot;
    const double size = cells->tick.size;
    const double gap = size * (plot->tight == 0 ? 0.6 : 0.35);
    measure_points(cells);
    bool beside = plot->tight >= BESIDE && cells->marks > 0;
    double widest = fmax(cells->number, cells->marks);
    widest = beside ? cells->number + gap + cells->marks : widest;
    widest = gap + fmax(widest, axis_width(cells, &cells->view->axis[0]));
    cells->left = plot->left + axis_width(cells, &cells->view->axis[1]) + 6;
    cells->height = size * (plot->tight == 0 ? 1.8 : 1.4);
    cells->height += beside || cells->marks <= 0 ? 0 : size * 1.1;
    double room = plot->right - cells->left;
    size_t across = cells->view->points.across;
    cells->columns = sweep_fold(across, (size_t)fmax(floor(room / widest), 1));
    cells->width = fmin(room / (double)cells->columns, fmax(5.8 * size, widest));
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
    double size = cells->tick.size;
    double width = plot_text_width(marks, size) + 6;
    double middle = box->y + box->height / 2;
    struct plot_look bold = cells->tick;
    bold.bold = true;
    struct plot_box plate = {box->x + (box->width - width) / 2, middle - size * 0.65, width,
                             size * 1.3};
    plot_hatch(cells->plot, box);
    plot_shade(cells->plot, &plate, 0);
    plot_text(cells->plot, box->x + box->width / 2, middle + size * 0.35, &bold, marks);
}

/* The number and the letters of a cell, below one another or side by side. */
static void draw_cell_text(const struct cells *cells, const struct plot_box *box, const char *text,
                           const char *marks)
{
    const struct plot *plot = cells->plot;
    struct plot_look look = cells->tick;
    struct plot_look bold = look;
    double middle = box->x + box->width / 2;
    double foot = box->y + box->height / 2 + look.size * 0.35;
    double up = marks[0] == '\0' ? 0 : look.size * 0.55;
    bold.bold = true;
    if (plot->tight >= BESIDE && cells->marks > 0) {
        double from = middle - (cells->number + cells->marks + 3) / 2;
        look.anchor = PLOT_RIGHT;
        bold.anchor = PLOT_LEFT;
        plot_text(plot, from + cells->number, foot, &look, text);
        plot_text(plot, from + cells->number + 3, foot, &bold, marks);
        return;
    }
    plot_text(plot, middle, foot - up, &look, text);
    if (marks[0] != '\0') {
        plot_text(plot, middle, foot + up, &bold, marks);
    }
}

static void draw_cell(const struct cells *cells, const struct plot_box *box, size_t k)
{
    const struct sweep_view *view = cells->view;
    char text[NUMBER_MAX];
    char marks[MARKS_MAX];
    double value = sweep_value(view, cells->result, k);
    sweep_marks(view, k, marks);
    if (sweep_is_refused(view, k)) {
        draw_refused(cells, box, marks);
        return;
    }
    sweep_cell(view, cells->result, k, text);
    plot_shade(cells->plot, box, isnan(value) ? 0 : grey_of(cells, value));
    draw_cell_text(cells, box, text, marks);
}

/* A heavy line at each border of a cell of this row beyond which other cautions hold: with its
 * neighbours at both sides, and with the row above, whose letters are in `above`. */
static void draw_borders(const struct cells *cells, size_t row, const size_t ends[2],
                         uint64_t above[])
{
    struct sweep_view *view = cells->view;
    const size_t across = view->points.across;
    const size_t from = ends[0] > 0 ? ends[0] - 1 : 0;
    const size_t to = ends[1] < across ? ends[1] + 1 : across;
    const double y = cells->plot->y;
    const uint64_t lettered = sweep_lettered(view);
    sweep_load(view, row * across + from, to - from);
    for (size_t i = from; i < to; i++) {
        double x = cells->left + ((double)i - (double)ends[0]) * cells->width;
        uint64_t notes = sweep_notes(view, row * across + i) & lettered;
        bool inside = i >= ends[0] && i < ends[1];
        if (i > from && notes != (sweep_notes(view, row * across + i - 1) & lettered)) {
            plot_line(cells->plot, (double[2]){x, y}, (double[2]){x, y + cells->height},
                      PLOT_HEAVY);
        }
        if (row > 0 && inside && notes != above[i - from]) {
            plot_line(cells->plot, (double[2]){x, y}, (double[2]){x + cells->width, y}, PLOT_HEAVY);
        }
        above[i - from] = notes;
    }
}

static void draw_row(const struct cells *cells, size_t row, size_t from, size_t to)
{
    struct sweep_view *view = cells->view;
    struct plot *plot = cells->plot;
    struct plot_look side = cells->tick;
    char text[AXIS_TEXT];
    side.bold = true;
    side.anchor = PLOT_RIGHT;
    sweep_axis_text(&view->axis[1], row, text);
    plot_text(plot, cells->left - 5, plot->y + cells->height / 2 + side.size * 0.35, &side, text);
    sweep_load(view, row * view->points.across + from, to - from);
    for (size_t i = from; i < to; i++) {
        struct plot_box box = {cells->left + (double)(i - from) * cells->width, plot->y,
                               cells->width, cells->height};
        draw_cell(cells, &box, row * view->points.across + i);
    }
}

/* The columns from..to of the cells, with the values of both axes. */
static void draw_block(struct cells *cells, size_t from, size_t to)
{
    struct sweep_view *view = cells->view;
    struct plot *plot = cells->plot;
    struct plot_look head = cells->tick;
    uint64_t above[HW_BLOCK] = {0};
    char text[AXIS_TEXT];
    head.bold = true;
    plot->y += head.size;
    for (size_t i = from; i < to; i++) {
        double middle = cells->left + ((double)(i - from) + 0.5) * cells->width;
        sweep_axis_text(&view->axis[0], i, text);
        plot_text(plot, middle, plot->y, &head, text);
    }
    plot->y += 4;
    for (size_t row = 0; row < view->points.down && !plot->measuring; row++) {
        draw_row(cells, row, from, to);
        draw_borders(cells, row, (size_t[2]){from, to}, above);
        plot->y += cells->height;
    }
    plot->y += plot->measuring ? cells->height * (double)view->points.down : 0;
    plot->y += 8;
}

static void draw_words(const struct cells *cells)
{
    const struct sweep_view *view = cells->view;
    struct plot *plot = cells->plot;
    const char *unit = sweep_unit(view, cells->result);
    char low[NUMBER_MAX];
    char high[NUMBER_MAX];
    char line[CAPTION_MAX];
    sweep_number_text(view, cells->result, view->low[cells->result], low);
    sweep_number_text(view, cells->result, view->high[cells->result], high);
    (void)snprintf(line, sizeof line, "The darker the higher: %s to %s%s%s.", low, high,
                   unit[0] == '\0' ? "" : " ", unit);
    plot_wrapped(plot, 0, &plot->page.note, line);
    if (cells->absent) {
        plot_wrapped(plot, 0, &plot->page.note, "-: does not apply there.");
    }
}

void plot_cells(struct sweep_view *view, size_t result, struct plot *plot)
{
    struct cells cells = {.view = view, .plot = plot, .result = result, .tick = plot->page.tick};
    char line[CAPTION_MAX];
    sweep_ways(view, line);
    plot_wrapped(plot, 0, &plot->page.words, line);
    plot->y += 4;
    measure(&cells);
    plot->folded = plot->folded || cells.columns < view->points.across;
    for (size_t from = 0; from < view->points.across; from += cells.columns) {
        size_t end = from + cells.columns;
        draw_block(&cells, from, end < view->points.across ? end : view->points.across);
    }
    draw_words(&cells);
}
