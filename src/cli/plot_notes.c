/* plot_notes.c - cautions and sources. A picture on a wall warns of all that a text warns of. */
#include "cli/plot_notes.h"

#include "cli/text_part.h"

#include "holdwater/holdwater.h"

#include <stdio.h>
#include <string.h>

enum { LINE_BYTES = 4000 };

static void add(char line[LINE_BYTES], const char *more)
{
    size_t used = strlen(line);
    (void)snprintf(line + used, LINE_BYTES - used, "%s", more);
}

/* A raised note: "POSSIBLE CAUTION code (at every point): what it says". */
static void draw_raised(const struct sweep_view *view, size_t bit, const char *mark,
                        const char *where, struct plot *plot)
{
    const struct hw_note *note = hw_note_at(view->question->calc, bit);
    char line[LINE_BYTES] = "";
    add(line, mark);
    add(line, text_heading(note->effect));
    add(line, " ");
    add(line, note->code);
    add(line, where);
    add(line, ": ");
    add(line, view->args->full || !note->brief ? note->text : note->brief);
    char letter[] = {view->letter[bit], '\0'};
    bool lettered = mark[0] == '\0' && letter[0] != '\0';
    if (lettered) {
        struct plot_look bold = plot->page.words;
        bold.bold = true;
        plot_text(plot, plot->left, plot->y + bold.size, &bold, letter);
    }
    plot_wrapped(plot, lettered ? plot->page.words.size * 1.3 : 0, &plot->page.words, line);
    plot->y += 3;
}

/* Adds the sentences of a list. */
static void add_list(const struct hw_calc *calc, uint64_t notes, enum hw_list list,
                     char line[LINE_BYTES])
{
    for (size_t bit = 0; notes_next_on(calc, notes, list, &bit); bit++) {
        add(line, " ");
        char sentence[SENTENCE_MAX];
        text_sentence(hw_note_at(calc, bit), sentence);
        for (char *c = sentence; *c != '\0'; c++) {
            *c = *c == PRINT_TIE ? ' ' : *c;
        }
        add(line, sentence);
    }
}

/* The sentences behind their heading, if there are any. */
static void draw_lists(const struct sweep_view *view, const char *heading,
                       const enum hw_list lists[3], struct plot *plot)
{
    const struct hw_calc *calc = view->question->calc;
    const uint64_t standing = view->ever & notes_between(calc, HW_STANDING, HW_STANDING);
    char line[LINE_BYTES] = "";
    add(line, heading);
    for (size_t i = 0; i < 3 && lists[i] != HW_LIST_NONE; i++) {
        add_list(calc, standing, lists[i], line);
    }
    if (strlen(line) > strlen(heading)) {
        plot_wrapped(plot, 0, &plot->page.note, line);
        plot->y += 3;
    }
}

static void draw_standing(const struct sweep_view *view, struct plot *plot)
{
    static const enum hw_list never[3] = {HW_LIST_NEVER, HW_LIST_NONE, HW_LIST_NONE};
    static const enum hw_list minded[3] = {HW_LIST_SIGN, HW_LIST_MIND, HW_LIST_LAST};
    const struct hw_calc *calc = view->question->calc;
    const uint64_t standing = view->ever & notes_between(calc, HW_STANDING, HW_STANDING);
    draw_lists(view, "never:", never, plot);
    draw_lists(view, "mind:", minded, plot);
    for (size_t bit = 0; view->args->full && notes_next(calc, standing, &bit); bit++) {
        plot_wrapped(plot, 0, &plot->page.note, hw_note_at(calc, bit)->text);
        plot->y += 3;
    }
}

void plot_notes(const struct sweep_view *view, struct plot *plot)
{
    const struct hw_calc *calc = view->question->calc;
    for (size_t bit = 0; notes_next(calc, view->possible, &bit); bit++) {
        char where[AXIS_TEXT];
        sweep_maybe(view, bit, where);
        draw_raised(view, bit, "POSSIBLE ", where, plot);
    }
    for (size_t i = 0; i < view->n_told; i++) {
        size_t bit = view->told[i];
        if (hw_note_at(calc, bit)->effect != HW_STANDING) {
            draw_raised(view, bit, "", sweep_where(view, bit), plot);
        }
    }
    draw_standing(view, plot);
}

void plot_sources(const struct hw_calc *calc, struct plot *plot)
{
    char line[LINE_BYTES] = "holdwater " HW_VERSION "; sources:";
    const char *const *sources = calc->sources;
    for (size_t i = 0; sources[i]; i++) {
        add(line, " ");
        add(line, sources[i]);
    }
    plot_wrapped(plot, 0, &plot->page.note, line);
}
