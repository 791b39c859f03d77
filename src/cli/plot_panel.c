/* plot_panel.c - one axis as a line between axes, with bars above it for notes. Nothing is told by
 * shades alone. */
#include "cli/plot_panel.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { PANEL_HEIGHT = 170, BAR_HEIGHT = 15, DOTS_MAX = 60 };

struct panel {
    struct sweep_view *view;
    struct plot *plot;
    size_t result;
    struct plot_scale x, y;
};

static double place_x(const struct panel *panel, size_t k)
{
    return plot_scale_place(&panel->x, hw_sweep_number(panel->view->axis[0].sweep, k));
}

/* From zero when the values fill a good part of the way from there. */
static void fit_y(const struct sweep_view *view, size_t result, struct plot_scale *y)
{
    double low = view->low[result];
    double high = view->high[result];
    plot_scale_fit(y, low > 0 && low < 0.6 * high ? 0 : low, high, 5, true);
}

/* The room that labels at the left need, the same for all results, so that their axes stand below
 * one another. */
static double left_of(const struct sweep_view *view)
{
    double widest = 0;
    for (size_t i = 0; i < view->question->calc->n_results; i++) {
        struct plot_scale y;
        if (view->applies[i]) {
            fit_y(view, i, &y);
            widest = fmax(widest, plot_scale_width(&y));
        }
    }
    return PLOT_MARGIN + widest + 8;
}

static void fit_scales(struct panel *panel)
{
    const struct sweep_view *view = panel->view;
    double ends[] = {hw_sweep_number(view->axis[0].sweep, 0),
                     hw_sweep_number(view->axis[0].sweep, view->total - 1)};
    fit_y(view, panel->result, &panel->y);
    panel->x.from = left_of(view);
    panel->x.to = PLOT_WIDTH - PLOT_MARGIN - 12;
    for (size_t most = 8; most >= 2; most--) {
        plot_scale_fit(&panel->x, fmin(ends[0], ends[1]), fmax(ends[0], ends[1]), most, false);
        if ((plot_scale_width(&panel->x) + 8) * (double)most < panel->x.to - panel->x.from) {
            break;
        }
    }
}

/* Where some notes begin or end between point k and the next: dashed lines to both axes. Returns
 * the place across. */
static double draw_turn(const struct panel *panel, uint64_t notes, double bar, size_t k)
{
    double out[HW_RESULTS];
    double way = hw_points_turn(&panel->view->points, k, notes, out);
    double x = place_x(panel, k) + way * (place_x(panel, k + 1) - place_x(panel, k));
    double value = sweep_shown(panel->view, panel->result, out[panel->result]);
    plot_line(panel->plot, (double[2]){x, bar}, (double[2]){x, panel->y.from}, PLOT_DASHED);
    if (value >= panel->view->low[panel->result] && value <= panel->view->high[panel->result]) {
        double y = plot_scale_place(&panel->y, value);
        plot_line(panel->plot, (double[2]){panel->x.from, y}, (double[2]){x, y}, PLOT_DASHED);
    }
    return x;
}

/* From point `first` to point `last` some notes are raised: a bar above the plot. */
static void draw_run(const struct panel *panel, uint64_t notes, double bar, size_t first,
                     size_t last)
{
    bool begins = first > 0;
    bool ends = last + 1 < panel->view->total;
    double a = begins ? draw_turn(panel, notes, bar, first - 1) : place_x(panel, first);
    double b = ends ? draw_turn(panel, notes, bar, last) : place_x(panel, last);
    double outside = a < b ? 2.5 : -2.5;
    plot_line(panel->plot, (double[2]){begins ? a : a - outside, bar},
              (double[2]){ends ? b : b + outside, bar}, PLOT_BAR);
}

static void draw_hatching(const struct panel *panel, size_t first, size_t last)
{
    double a = fmin(place_x(panel, first), place_x(panel, last));
    double b = fmax(place_x(panel, first), place_x(panel, last));
    double from = fmax(a - 4, panel->x.from);
    double to = fmin(b + 4, panel->x.to);
    struct plot_box box = {from, panel->y.to, to - from, panel->y.from - panel->y.to};
    plot_hatch(panel->plot, &box);
}

/* Runs of points of which some of these notes are raised, drawn as bars or, for NAN, hatched. */
static void draw_runs(const struct panel *panel, uint64_t notes, double bar)
{
    struct sweep_view *view = panel->view;
    size_t first = 0;
    bool on = false;
    for (size_t k = 0; k <= view->total; k++) {
        bool raised = false;
        if (k < view->total) {
            sweep_reach(view, k);
            raised = (sweep_notes(view, k) & notes) != 0;
        }
        if (on && !raised && isnan(bar)) {
            draw_hatching(panel, first, k - 1);
        } else if (on && !raised) {
            draw_run(panel, notes, bar, first, k - 1);
        }
        first = raised && !on ? k : first;
        on = raised;
    }
}

static void draw_curve(const struct panel *panel)
{
    struct sweep_view *view = panel->view;
    bool open = false;
    for (size_t k = 0; k < view->total; k++) {
        sweep_reach(view, k);
        double value = sweep_value(view, panel->result, k);
        if (isnan(value)) {
            if (open) {
                plot_curve_end(panel->plot);
            }
            open = false;
        } else if (open) {
            plot_curve_to(panel->plot, place_x(panel, k), plot_scale_place(&panel->y, value));
        } else {
            plot_curve_begin(panel->plot, place_x(panel, k), plot_scale_place(&panel->y, value));
            open = true;
        }
    }
    if (open) {
        plot_curve_end(panel->plot);
    }
}

/* At each point when they are few; always at one that stands alone. True when the result is absent
 * somewhere. */
static bool draw_dots(const struct panel *panel)
{
    struct sweep_view *view = panel->view;
    double before = NAN;
    double here = NAN;
    bool absent = false;
    for (size_t k = 0; k <= view->total; k++) {
        double next = NAN;
        if (k < view->total) {
            sweep_reach(view, k);
            next = sweep_value(view, panel->result, k);
            absent = absent || (isnan(next) && !sweep_is_refused(view, k));
        }
        if (!isnan(here) && (view->total <= DOTS_MAX || (isnan(before) && isnan(next)))) {
            plot_dot(panel->plot, place_x(panel, k - 1), plot_scale_place(&panel->y, here));
        }
        before = here;
        here = next;
    }
    return absent;
}

void plot_panel(struct sweep_view *view, size_t result, struct plot *plot)
{
    struct panel panel = {.view = view, .plot = plot, .result = result};
    struct plot_look right = plot_words;
    struct plot_look axis_name = plot_words;
    char label[AXIS_TEXT];
    right.anchor = PLOT_RIGHT;
    axis_name.anchor = PLOT_MIDDLE;
    right.bold = axis_name.bold = true;
    fit_scales(&panel);
    plot->y += 6;
    double bars = plot->y;
    for (size_t i = 0; i < view->n_told; i++) {
        plot->y += view->letter[view->told[i]] == '\0' ? 0 : BAR_HEIGHT;
    }
    plot->y += 9;
    panel.y.to = plot->y;
    panel.y.from = plot->y + PANEL_HEIGHT;
    draw_runs(&panel, hw_notes_grave(view->question->calc), NAN);
    plot_frame(plot, &panel.x, &panel.y);
    for (size_t i = 0; i < view->n_told; i++) {
        char letter[] = {view->letter[view->told[i]], '\0'};
        if (letter[0] != '\0') {
            plot_text(plot, panel.x.from - 5, bars + BAR_HEIGHT - 3, &right, letter);
            draw_runs(&panel, UINT64_C(1) << view->told[i], bars + BAR_HEIGHT / 2.0);
            bars += BAR_HEIGHT;
        }
    }
    draw_curve(&panel);
    bool absent = draw_dots(&panel);
    plot->y = panel.y.from + 36;
    sweep_label(view->axis[0].input->name, view->axis[0].unit, label);
    plot_text(plot, (panel.x.from + panel.x.to) / 2, plot->y, &axis_name, label);
    plot->y += 6;
    if (absent) {
        plot_wrapped(plot, 0, &plot_words, "No line: it does not apply there.");
    }
    plot->y += 12;
}
