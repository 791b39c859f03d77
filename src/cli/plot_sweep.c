/* plot_sweep.c - the picture of a sweep as a document: title, inputs, pictures, cautions. */
#include "cli/plot_sweep.h"

#include "cli/plot_cells.h"
#include "cli/plot_panel.h"
#include "cli/text_part.h"

#include "holdwater/holdwater.h"

#include <stdio.h>
#include <string.h>

enum { LINE_BYTES = 4000 };

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

/* All of them, as in text: a picture on a wall must not say less. */
static void draw_cautions(const struct sweep_view *view, struct plot *plot)
{
    const struct hw_calc *calc = view->question->calc;
    char line[LINE_BYTES];
    for (size_t bit = 0; notes_next(calc, view->possible, &bit); bit++) {
        const struct hw_note *note = hw_note_at(calc, bit);
        char where[AXIS_TEXT];
        sweep_maybe(view, bit, where);
        (void)snprintf(line, sizeof line, "POSSIBLE %s %s%s: %s", text_heading(note->effect),
                       note->code, where, note->text);
        plot_wrapped(plot, 0, &plot_words, line);
        plot->y += 4;
    }
    for (size_t i = 0; i < view->n_told; i++) {
        const struct hw_note *note = hw_note_at(calc, view->told[i]);
        char letter[] = {view->letter[view->told[i]], '\0'};
        struct plot_look bold = plot_words;
        bold.bold = true;
        (void)snprintf(line, sizeof line, "%s %s%s: %s", text_heading(note->effect), note->code,
                       sweep_where(view, view->told[i]), note->text);
        if (letter[0] != '\0') {
            plot_text(plot, PLOT_MARGIN, plot->y + plot_words.size, &bold, letter);
        }
        plot_wrapped(plot, letter[0] != '\0' ? 16 : 0, &plot_words, line);
        plot->y += 4;
    }
}

static void draw_sources(const struct sweep_view *view, struct plot *plot)
{
    char line[LINE_BYTES];
    const char *const *sources = view->question->calc->sources;
    size_t used = (size_t)snprintf(line, sizeof line, "holdwater %s; sources:", HW_VERSION);
    for (size_t i = 0; sources[i] && used < sizeof line; i++) {
        used += (size_t)snprintf(line + used, sizeof line - used, " %s", sources[i]);
    }
    plot_wrapped(plot, 0, &plot_words, line);
}

/* The name and unit of a result, and what it is. */
static void draw_heading(const struct sweep_view *view, size_t result, struct plot *plot)
{
    const struct hw_result *this = &view->question->calc->results[result];
    char label[AXIS_TEXT];
    sweep_label(this->name, sweep_unit(view, result), label);
    plot_wrapped(plot, 0, &plot_heading, label);
    plot_wrapped(plot, 0, &plot_words, this->help);
}

/* The pictures, or what stands in their place. */
static void draw_results(struct sweep_view *view, struct plot *plot)
{
    const struct hw_calc *calc = view->question->calc;
    bool one_axis = view->question->n_axes == 1;
    char line[CAPTION_MAX];
    if (view->refused == view->total) {
        plot_wrapped(plot, 0, &plot_heading, "No answer at any point");
    }
    for (size_t at = 0; at < view->n_results; at++) {
        size_t i = view->result[at];
        if (one_axis) {
            draw_heading(view, i, plot);
            plot_panel(view, i, plot);
        } else if (at == 0 || view->args->n_only > 0) {
            draw_heading(view, i, plot);
            plot_cells(view, i, plot);
        }
    }
    if (one_axis && view->n_told > 0 && view->letter[view->told[0]] != '\0') {
        plot_wrapped(
            plot, 0, &plot_words,
            "A bar above a plot shows where its letter holds; dashed lines where that begins or "
            "ends, and the value there.");
    }
    if (one_axis && view->refused > 0 && view->n_results > 0) {
        plot_wrapped(plot, 0, &plot_words, "Hatched: no answer there.");
    }
    for (size_t i = 0; i < calc->n_results && view->refused < view->total; i++) {
        if (view->args->n_only > 0 && view->args->only[i] && !view->applies[i]) {
            (void)snprintf(line, sizeof line, "%s does not apply at any point",
                           calc->results[i].name);
            plot_wrapped(plot, 0, &plot_heading, line);
        }
    }
}

static void draw(struct sweep_view *view, struct plot *plot)
{
    char text[LINE_BYTES];
    char heading[CAPTION_MAX];
    char caption[CAPTION_MAX];
    describe(view, text);
    sweep_heading(view, heading);
    sweep_caption(view, caption);
    plot_begin(plot, heading, text);
    plot_wrapped(plot, 0, &plot_title, heading);
    plot->y += 4;
    plot_wrapped(plot, 0, &plot_words, caption);
    if (hw_question_uncertain(view->question)) {
        plot_wrapped(
            plot, 0, &plot_words,
            "+-: the middle values are drawn, and what an end may raise is told; csv and json give "
            "low and high");
    }
    plot->y += 10;
    draw_results(view, plot);
    plot->y += 6;
    draw_cautions(view, plot);
    plot->y += 4;
    draw_sources(view, plot);
    plot->y += PLOT_MARGIN;
    plot_end(plot);
}

void plot_sweep(struct sweep_view *view)
{
    struct plot plot = {.measuring = true};
    draw(view, &plot);
    plot.height = plot.y;
    plot.measuring = false;
    draw(view, &plot);
}
