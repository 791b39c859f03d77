/* plot_sweep.c - the picture of a sweep as a document: title, inputs, pictures, cautions. */
#include "cli/plot_sweep.h"

#include "cli/plot_cells.h"
#include "cli/plot_notes.h"
#include "cli/plot_page.h"
#include "cli/plot_panel.h"
#include "cli/stream.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { LINE_BYTES = 5000 };

static void describe(const struct sweep_view *view, char text[LINE_BYTES])
{
    const struct hw_calc *calc = view->question->calc;
    char heading[CAPTION_MAX];
    sweep_heading(view, heading);
    size_t used = (size_t)snprintf(text, LINE_BYTES, "%s.", heading);
    for (size_t at = 0; at < view->n_results; at++) {
        size_t i = view->result[at];
        if (used < LINE_BYTES) {
            const char *unit = sweep_unit(view, i);
            char low[NUMBER_MAX];
            char high[NUMBER_MAX];
            number_text(low, view->low[i], 3, 0);
            number_text(high, view->high[i], 3, 0);
            used += (size_t)snprintf(text + used, LINE_BYTES - used, " %s is %s to %s%s%s.",
                                     calc->results[i].name, low, high, unit[0] == '\0' ? "" : " ",
                                     unit);
        }
    }
    if (view->refused > 0 && used < LINE_BYTES) {
        (void)snprintf(text + used, LINE_BYTES - used, " No answer at %zu of %zu points.",
                       view->refused, view->total);
    }
}

/* The name and unit of a result, and what it is. */
static void draw_heading(const struct sweep_view *view, size_t result, struct plot *plot)
{
    const struct hw_result *this = &view->question->calc->results[result];
    char label[AXIS_TEXT];
    sweep_label(this->name, sweep_unit(view, result), label);
    plot_wrapped(plot, 0, &plot->page.heading, label);
    plot_wrapped(plot, 0, &plot->page.words, this->help);
}

/* Plots side by side from result number `at` on, their headings first, so that their axes are
 * level. */
static void draw_side_by_side(struct sweep_view *view, size_t at, struct plot *plot)
{
    const double top = plot->y;
    const size_t left = view->n_results - at;
    const size_t n = left < plot->columns ? left : plot->columns;
    double below = top;
    for (int part = 0; part < 2; part++) {
        const double from = below;
        for (size_t i = 0; i < n; i++) {
            plot->y = from;
            plot->left = plot_column_left(plot, i);
            plot->right = plot->left + plot_column_width(plot);
            if (part == 0) {
                draw_heading(view, view->result[at + i], plot);
            } else {
                plot_panel(view, view->result[at + i], plot);
            }
            below = fmax(below, plot->y);
        }
    }
    plot->y = below;
    plot->left = plot->page.margin;
    plot->right = plot->page.width - plot->page.margin;
}

static void draw_plots(struct sweep_view *view, struct plot *plot)
{
    bool one_axis = view->question->n_axes == 1;
    for (size_t at = 0; one_axis && at < view->n_results; at += plot->columns) {
        draw_side_by_side(view, at, plot);
    }
    for (size_t at = 0; !one_axis && at < view->n_results; at++) {
        if (at == 0 || view->args->n_only > 0) {
            draw_heading(view, view->result[at], plot);
            plot_cells(view, view->result[at], plot);
        }
    }
    if (one_axis && view->n_results > 0 && sweep_lettered(view) != 0) {
        plot_wrapped(plot, 0, &plot->page.note,
                     "A bar above a plot shows where its letter holds. Heavy line: a caution begins "
                     "or ends there; dashed: the value there.");
    }
    if (one_axis && view->n_results > 0 && view->refused > 0) {
        plot_wrapped(plot, 0, &plot->page.note, "Hatched: no answer there.");
    }
}

/* The pictures, or what stands in their place. */
static void draw_results(struct sweep_view *view, struct plot *plot)
{
    const struct hw_calc *calc = view->question->calc;
    char line[CAPTION_MAX];
    if (view->refused == view->total) {
        plot_wrapped(plot, 0, &plot->page.heading, "No answer at any point");
    }
    draw_plots(view, plot);
    for (size_t i = 0; i < calc->n_results && view->refused < view->total; i++) {
        if (view->args->n_only > 0 && view->args->only[i] && !view->applies[i]) {
            (void)snprintf(line, sizeof line, "%s does not apply at any point",
                           calc->results[i].name);
            plot_wrapped(plot, 0, &plot->page.heading, line);
        }
    }
}

/* What is swept, the fixed inputs, and smaller what was assumed. */
static void draw_title(const struct sweep_view *view, struct plot *plot)
{
    char heading[CAPTION_MAX];
    char given[CAPTION_MAX];
    char assumed[CAPTION_MAX];
    char line[LINE_BYTES];
    char text[LINE_BYTES];
    describe(view, text);
    sweep_heading(view, heading);
    sweep_given(view, given);
    sweep_assumed(view, assumed);
    (void)snprintf(line, sizeof line, "%s%s%s", heading, given[0] == '\0' ? "" : "; ", given);
    plot_begin(plot, line, text);
    plot_wrapped(plot, 0, &plot->page.title, heading);
    plot_wrapped(plot, 0, &plot->page.heading, given);
    if (assumed[0] != '\0') {
        (void)snprintf(line, sizeof line, "assumed: %s", assumed);
        plot_wrapped(plot, 0, &plot->page.note, line);
    }
    if (hw_question_uncertain(view->question)) {
        plot_wrapped(
            plot, 0, &plot->page.note,
            "+-: the middle values are drawn, and what an end may raise is told; csv and json give "
            "low and high");
    }
    plot->y += 10;
}

static void draw(struct sweep_view *view, struct plot *plot)
{
    draw_title(view, plot);
    draw_results(view, plot);
    plot->y += 4;
    plot_notes(view, plot);
    plot_sources(view, plot);
    plot->y += plot->page.margin;
    plot_end(plot);
}

static void measure(struct sweep_view *view, struct plot *plot)
{
    plot->measuring = true;
    plot->folded = false;
    draw(view, plot);
    plot->height = ceil(plot->y);
    plot->measuring = false;
}

enum { PANEL_LEVELS = 13, CELL_LEVELS = 3 };

/* A plot is wider than high, and has large words only where it is large itself. */
static bool is_shapely(const struct plot *plot)
{
    double height = plot_panel_height(plot);
    double size = plot->page.tick.size;
    return plot_column_width(plot) >= 1.4 * height && (height >= 20 * size || size <= PLOT_LEAST);
}

/* Finds the first way in which the picture fits an A4 page. */
static bool find_way(struct sweep_view *view, struct plot *plot, bool folding)
{
    bool one_axis = view->question->n_axes == 1;
    struct plot_choice choice = {.columns = 1, .levels = CELL_LEVELS};
    if (one_axis) {
        choice.columns = view->n_results < 2 ? 1 : view->n_results < 3 ? 2 : 3;
        choice.levels = PANEL_LEVELS;
    }
    for (size_t i = 0; plot_page_a4(plot, &choice, i); i++) {
        if (one_axis && !is_shapely(plot)) {
            continue;
        }
        measure(view, plot);
        if (plot->y <= plot->page.height && (folding || !plot->folded)) {
            plot->height = plot->page.height;
            return true;
        }
    }
    return false;
}

/* A picture that no page takes comes out longer: nothing is left out. */
static void fit_a4(struct sweep_view *view, struct plot *plot)
{
    static const struct plot_choice plain = {.columns = 1, .levels = 1};
    bool chart = view->question->n_axes > 1;
    if (find_way(view, plot, false) || (chart && find_way(view, plot, true))) {
        return;
    }
    plot_page_a4(plot, &plain, 2 * PLOT_PLAIN);
    measure(view, plot);
    complain("the picture is %.0f mm high, more than an A4 page: name fewer results with --only, "
             "or take larger steps",
             plot->height * plot->page.mm);
}

void plot_sweep(struct sweep_view *view)
{
    struct plot plot = {.measuring = true};
    if (view->args->page == PAGE_A4) {
        fit_a4(view, &plot);
    } else {
        plot_page_phone(&plot);
        measure(view, &plot);
    }
    draw(view, &plot);
}
