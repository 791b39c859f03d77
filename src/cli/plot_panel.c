/* plot_panel.c - one axis as a line between axes, with bars above it for notes. Nothing is told by
 * shades alone. */
#include "cli/plot_panel.h"

#include "cli/plot_page.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

struct panel {
    struct sweep_view *view;
    struct plot *plot;
    size_t result;
    struct plot_scale x, y;
};

/* The row of a note above a plot. */
static double bar_height(const struct plot *plot)
{
    return plot->page.tick.size * 1.25;
}

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
static double room_of_labels(const struct sweep_view *view, const struct plot *plot)
{
    double widest = 0;
    for (size_t i = 0; i < view->question->calc->n_results; i++) {
        struct plot_scale y;
        if (view->applies[i]) {
            fit_y(view, i, &y);
            widest = fmax(widest, plot_scale_width(&y, plot->page.tick.size));
        }
    }
    return widest + 8;
}

static void fit_scales(struct panel *panel)
{
    const struct sweep_view *view = panel->view;
    double ends[] = {hw_sweep_number(view->axis[0].sweep, 0),
                     hw_sweep_number(view->axis[0].sweep, view->total - 1)};
    fit_y(view, panel->result, &panel->y);
    panel->x.from = panel->plot->left + room_of_labels(view, panel->plot);
    panel->x.to = panel->plot->right - panel->plot->page.tick.size;
    for (size_t most = 8; most >= 2; most--) {
        plot_scale_fit(&panel->x, fmin(ends[0], ends[1]), fmax(ends[0], ends[1]), most, false);
        if ((plot_scale_width(&panel->x, panel->plot->page.tick.size) + 8) * (double)most <
            panel->x.to - panel->x.from) {
            break;
        }
    }
}

/* Where some notes begin or end between point k and the next: the place across, and the value of
 * the result there. */
static double turn_of(const struct panel *panel, uint64_t notes, size_t k, double *value)
{
    double out[HW_RESULTS];
    double way = hw_points_turn(&panel->view->points, k, notes, out);
    *value = sweep_shown(panel->view, panel->result, out[panel->result]);
    return place_x(panel, k) + way * (place_x(panel, k + 1) - place_x(panel, k));
}

/* A heavy line down to the axis where a caution begins or ends, and from where it meets the curve a
 * dashed one to the other axis. */
static void draw_turn(const struct panel *panel, double top, double x, double value)
{
    plot_line(panel->plot, (double[2]){x, top}, (double[2]){x, panel->y.from}, PLOT_HEAVY);
    if (value >= panel->view->low[panel->result] && value <= panel->view->high[panel->result]) {
        double y = plot_scale_place(&panel->y, value);
        plot_line(panel->plot, (double[2]){panel->x.from, y}, (double[2]){x, y}, PLOT_DASHED);
    }
}

/* Between two points. Cautions that begin or end at one place have one line, from the highest of
 * their bars: a graver one begins where the milder one of the same fact ends. */
static void draw_turns_between(const struct panel *panel, uint64_t changed, double top, size_t k)
{
    const struct sweep_view *view = panel->view;
    const double row = bar_height(panel->plot);
    double drawn[NOTES_MAX];
    size_t n = 0;
    for (size_t i = 0; i < view->n_told && view->letter[view->told[i]] != '\0'; i++) {
        if (notes_have(changed, view->told[i])) {
            double value = NAN;
            double x = turn_of(panel, UINT64_C(1) << view->told[i], k, &value);
            bool again = false;
            for (size_t j = 0; j < n; j++) {
                again = again || fabs(drawn[j] - x) < 0.5;
            }
            if (!again) {
                draw_turn(panel, top + row * ((double)i + 0.2), x, value);
                drawn[n++] = x;
            }
        }
    }
}

static void draw_turns(const struct panel *panel, double top)
{
    struct sweep_view *view = panel->view;
    const uint64_t lettered = sweep_lettered(view);
    uint64_t before = 0;
    for (size_t k = 0; k < view->total; k++) {
        sweep_reach(view, k);
        uint64_t notes = sweep_notes(view, k) & lettered;
        if (k > 0 && notes != before) {
            draw_turns_between(panel, notes ^ before, top, k - 1);
        }
        before = notes;
    }
}

/* From point ends[0] to point ends[1] a note is raised: a bar above the plot. */
static void draw_run(const struct panel *panel, uint64_t note, double bar, const size_t ends[2])
{
    double value = NAN;
    bool begins = ends[0] > 0;
    bool finishes = ends[1] + 1 < panel->view->total;
    double a = begins ? turn_of(panel, note, ends[0] - 1, &value) : place_x(panel, ends[0]);
    double b = finishes ? turn_of(panel, note, ends[1], &value) : place_x(panel, ends[1]);
    double outside = a < b ? 2.5 : -2.5;
    plot_line(panel->plot, (double[2]){begins ? a : a - outside, bar},
              (double[2]){finishes ? b : b + outside, bar}, PLOT_BAR);
}

/* Up to where it begins and ends between points. */
static void draw_hatching(const struct panel *panel, const size_t ends[2])
{
    const uint64_t grave = hw_notes_grave(panel->view->question->calc);
    double value = NAN;
    double a = ends[0] > 0 ? turn_of(panel, grave, ends[0] - 1, &value) : place_x(panel, ends[0]);
    double b = ends[1] + 1 < panel->view->total ? turn_of(panel, grave, ends[1], &value)
                                                : place_x(panel, ends[1]);
    double from = fmax(fmin(a, b) - 1, panel->x.from);
    double to = fmin(fmax(a, b) + 1, panel->x.to);
    struct plot_box box = {from, panel->y.to, to - from, panel->y.from - panel->y.to};
    plot_hatch(panel->plot, &box);
}

/* Runs of points at which some of these notes are raised, drawn as bars or, for NAN, hatched. */
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
            draw_hatching(panel, (size_t[2]){first, k - 1});
        } else if (on && !raised) {
            draw_run(panel, notes, bar, (size_t[2]){first, k - 1});
        }
        first = raised && !on ? k : first;
        on = raised;
    }
}

/* A row for each note with a letter: the letter at the left, a thin line that leads to its bars. */
static void draw_bars(const struct panel *panel, double top)
{
    const struct sweep_view *view = panel->view;
    const struct plot *plot = panel->plot;
    const double row = bar_height(plot);
    struct plot_look look = plot->page.words;
    look.anchor = PLOT_RIGHT;
    look.bold = true;
    for (size_t i = 0; i < view->n_told && view->letter[view->told[i]] != '\0'; i++) {
        const double y = top + ((double)i + 0.5) * row;
        char letter[] = {view->letter[view->told[i]], '\0'};
        plot_text(plot, panel->x.from - 5, y + look.size * 0.35, &look, letter);
        plot_line(plot, (double[2]){panel->x.from, y}, (double[2]){panel->x.to, y}, PLOT_GRID);
        draw_runs(panel, UINT64_C(1) << view->told[i], y);
    }
}

static void draw_curve(const struct panel *panel, enum plot_curve curve)
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
            plot_curve_begin(panel->plot, curve, place_x(panel, k),
                             plot_scale_place(&panel->y, value));
            open = true;
        }
    }
    if (open) {
        plot_curve_end(panel->plot);
    }
}

/* At each point when they are not crowded; always at one that stands alone. */
static void draw_dots(const struct panel *panel)
{
    struct sweep_view *view = panel->view;
    const double apart = (panel->x.to - panel->x.from) / (double)view->total;
    const bool few = apart > 2 * panel->plot->page.tick.size / 3;
    double before = NAN;
    double here = NAN;
    for (size_t k = 0; k <= view->total; k++) {
        double next = NAN;
        if (k < view->total) {
            sweep_reach(view, k);
            next = sweep_value(view, panel->result, k);
        }
        if (!isnan(here) && (few || (isnan(before) && isnan(next)))) {
            plot_dot(panel->plot, place_x(panel, k - 1), plot_scale_place(&panel->y, here));
        }
        before = here;
        here = next;
    }
}

/* Bars of notes from `top` down, lines where they begin or end, the curve. */
static void draw_plot(const struct panel *panel, double top)
{
    draw_runs(panel, hw_notes_grave(panel->view->question->calc), NAN);
    plot_frame(panel->plot, &panel->x, &panel->y);
    draw_bars(panel, top);
    draw_turns(panel, top);
    draw_curve(panel, PLOT_BED);
    draw_curve(panel, PLOT_BLACK);
    draw_dots(panel);
}

void plot_panel(struct sweep_view *view, size_t result, bool named, struct plot *plot)
{
    struct panel panel = {.view = view, .plot = plot, .result = result};
    struct plot_look axis_name = plot->page.tick;
    const double size = plot->page.tick.size;
    axis_name.bold = true;
    fit_scales(&panel);
    plot->y += size * 0.4;
    double top = plot->y;
    for (size_t i = 0; i < view->n_told; i++) {
        plot->y += view->letter[view->told[i]] == '\0' ? 0 : bar_height(plot);
    }
    panel.y.to = plot->y + size * 0.7;
    panel.y.from = panel.y.to + plot_panel_height(plot);
    if (!plot->measuring) {
        draw_plot(&panel, top);
    }
    plot->y = panel.y.from + size * 1.7;
    if (named) {
        char label[AXIS_TEXT];
        plot->y += size * 1.3;
        sweep_label(view->axis[0].input->name, view->axis[0].unit, label);
        plot_text(plot, (panel.x.from + panel.x.to) / 2, plot->y, &axis_name, label);
    }
    plot->y += size * 0.4;
    if (view->answered[result] + view->refused < view->total) {
        plot_wrapped(plot, 0, &plot->page.note, "No line: it does not apply there.");
    }
    plot->y += size * 0.8;
}
