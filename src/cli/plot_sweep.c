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

/* Results of which plots are drawn. */
struct curves {
    size_t n, result[HW_RESULTS];
};

/* The same number at every point that has an answer. */
static bool is_flat(const struct sweep_view *view, size_t result)
{
    char low[NUMBER_MAX];
    char high[NUMBER_MAX];
    sweep_number_text(view, result, view->low[result], low);
    sweep_number_text(view, result, view->high[result], high);
    return strcmp(low, high) == 0 && view->answered[result] + view->refused == view->total;
}

/* A line for what is the same at every point tells less than a sentence: where no results were
 * named there are sentences, unless nothing else would be left. */
static void choose_curves(const struct sweep_view *view, struct curves *curves)
{
    curves->n = 0;
    for (size_t at = 0; at < view->n_results; at++) {
        if (view->args->n_only > 0 || view->total == 1 || !is_flat(view, view->result[at])) {
            curves->result[curves->n++] = view->result[at];
        }
    }
    if (curves->n == 0 && view->n_results > 0) {
        curves->result[curves->n++] = view->result[0];
    }
}

/* "tan_long 0.60 mg/L at every point: what it is" */
static void draw_flat(const struct sweep_view *view, size_t result, struct plot *plot)
{
    const char *unit = sweep_unit(view, result);
    const struct hw_result *this = &view->question->calc->results[result];
    char number[NUMBER_MAX];
    char line[LINE_BYTES];
    sweep_number_text(view, result, view->low[result], number);
    (void)snprintf(line, sizeof line, "%s %s%s%s at every point%s: %s", this->name, number,
                   unit[0] == '\0' ? "" : " ", unit, view->refused > 0 ? " with an answer" : "",
                   this->help);
    plot_wrapped(plot, 0, &plot->page.words, line);
}

static void draw_flats(const struct sweep_view *view, const struct curves *curves,
                       struct plot *plot)
{
    for (size_t at = 0; at < view->n_results; at++) {
        bool drawn = false;
        for (size_t i = 0; i < curves->n; i++) {
            drawn = drawn || curves->result[i] == view->result[at];
        }
        if (!drawn) {
            draw_flat(view, view->result[at], plot);
        }
    }
    plot->y += curves->n < view->n_results ? plot->page.words.size : 0;
}

/* Plots side by side from number `at` on, their headings first, so that their axes are level. On a
 * page the lowest alone name the axis across. */
static void draw_side_by_side(struct sweep_view *view, const struct curves *curves, size_t at,
                              struct plot *plot)
{
    double below = plot->y;
    for (int part = 0; part < 2; part++) {
        const double from = below;
        for (size_t i = at; i < at + plot->columns && i < curves->n; i++) {
            plot->y = from;
            plot->left = plot_column_left(plot, i - at);
            plot->right = plot->left + plot_column_width(plot);
            if (part == 0) {
                draw_heading(view, curves->result[i], plot);
            } else {
                bool lowest = i + plot->columns >= curves->n;
                plot_panel(view, curves->result[i], lowest || plot->columns == 1, plot);
            }
            below = fmax(below, plot->y);
        }
    }
    plot->y = below;
    plot->left = plot->page.margin;
    plot->right = plot->page.width - plot->page.margin;
}

/* One axis. */
static void draw_curves(struct sweep_view *view, struct plot *plot)
{
    struct curves curves;
    choose_curves(view, &curves);
    for (size_t at = 0; at < curves.n; at += plot->columns) {
        draw_side_by_side(view, &curves, at, plot);
    }
    draw_flats(view, &curves, plot);
    if (curves.n > 0 && sweep_lettered(view) != 0) {
        plot_wrapped(
            plot, 0, &plot->page.note,
            "A bar above a plot shows where its letter is told. Heavy line: a caution begins "
            "or ends there; dashed: the value there.");
    }
    if (curves.n > 0 && view->refused > 0) {
        plot_wrapped(plot, 0, &plot->page.note, "Hatched: no answer there.");
    }
}

/* Two axes: a chart of the first result, or of those that were named. */
static void draw_charts(struct sweep_view *view, struct plot *plot)
{
    for (size_t at = 0; at < view->n_results; at++) {
        if (at == 0 || view->args->n_only > 0) {
            plot->y += at == 0 ? 0 : plot->page.title.size;
            draw_heading(view, view->result[at], plot);
            plot_cells(view, view->result[at], plot);
        }
    }
    if (view->n_results > 0 && sweep_lettered(view) != 0) {
        plot_wrapped(plot, 0, &plot->page.note,
                     "Heavy line: a caution begins or ends there; the letters tell which.");
    }
    if (view->n_results > 0 && view->refused > 0) {
        plot_wrapped(plot, 0, &plot->page.note, "Hatched: no answer; the letter tells why.");
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
    if (view->question->n_axes == 1) {
        draw_curves(view, plot);
    } else {
        draw_charts(view, plot);
    }
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
    plot->y += 6;
    plot_notes(view, plot);
    plot_sources(view->question->calc, plot);
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

/* A plot is wider than high, and not narrow unless it must be. Large words are for plots that are
 * large, and for roomy cells. */
static bool is_shapely(const struct plot *plot, bool one_axis, bool pressed)
{
    const double narrow = pressed ? 110 : 150;
    const double height = plot_panel_height(plot);
    const double size = plot->page.tick.size;
    const bool large = size > PLOT_LEAST;
    if (one_axis) {
        return plot_column_width(plot) >= fmax(1.4 * height, narrow) &&
               !(large && height < 20 * size);
    }
    return !(large && plot->tight > 0);
}

/* Plots are from 320 to 60 points high, cells of three kinds. */
static void set_most(const struct sweep_view *view, struct plot_way *most)
{
    *most = (struct plot_way){.lying = true, .columns = 1, .tight = 2, .size = PLOT_SMALL};
    if (view->question->n_axes == 1) {
        struct curves curves;
        choose_curves(view, &curves);
        most->columns = curves.n < 1 ? 1 : curves.n < 4 ? curves.n : 4;
        most->tight = 13;
    }
}

/* Finds the first way in which the picture fits an A4 page: pressed, plots may be narrow, and
 * columns of cells folded. */
static bool find_way(struct sweep_view *view, struct plot *plot, bool pressed)
{
    bool one_axis = view->question->n_axes == 1;
    struct plot_way way = {.columns = 1};
    struct plot_way most;
    bool more = true;
    for (set_most(view, &most); more; more = plot_way_next(&way, &most)) {
        plot_page_a4(plot, &way);
        if (!is_shapely(plot, one_axis, pressed)) {
            continue;
        }
        measure(view, plot);
        if (plot->y <= plot->page.height && (pressed || !plot->folded)) {
            plot->height = plot->page.height;
            return true;
        }
    }
    return false;
}

/* A picture that no page takes comes out longer: nothing is left out. */
static void fit_a4(struct sweep_view *view, struct plot *plot)
{
    bool chart = view->question->n_axes > 1;
    if (find_way(view, plot, false) || find_way(view, plot, true)) {
        return;
    }
    plot_page_a4(plot, &(struct plot_way){
                           .columns = chart ? 1 : 2, .tight = chart ? 0 : 8, .size = PLOT_PLAIN});
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
