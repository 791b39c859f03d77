/* sweep_text.c - a sweep for people: what stands around its table or chart. */
#include "cli/sweep_text.h"

#include "cli/sweep_chart.h"
#include "cli/sweep_table.h"
#include "cli/text_part.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum { INDENT = 2, NAME_WIDTH = 15 };

static void print_inputs(const struct sweep_view *view)
{
    const struct hw_question *question = view->question;
    text_inputs(question, view->args->tank);
    if (hw_question_uncertain(question)) {
        (void)puts("  +-: the middle values are shown, and what an end may raise; csv and json\n"
                   "    give low and high");
    }
}

static void print_cautions(const struct sweep_view *view)
{
    bool full = view->args->full;
    const struct hw_calc *calc = view->question->calc;
    for (size_t bit = 0; notes_next(calc, view->possible, &bit); bit++) {
        char where[AXIS_TEXT];
        sweep_maybe(view, bit, where);
        text_note(hw_note_at(calc, bit), "POSSIBLE ", where, full);
    }
    for (size_t i = 0; i < view->n_told; i++) {
        size_t note = view->told[i];
        if (hw_note_at(calc, note)->effect != HW_STANDING) {
            char mark[] = {view->letter[note], ' ', '\0'};
            text_note(hw_note_at(calc, note), view->letter[note] == '\0' ? "" : mark,
                      sweep_where(view, note), full);
        }
    }
}

/* Results that were named and apply nowhere. */
static void print_absent(const struct sweep_view *view)
{
    const struct hw_calc *calc = view->question->calc;
    for (size_t i = 0; i < calc->n_results; i++) {
        if (view->args->n_only > 0 && view->args->only[i] && !view->applies[i]) {
            (void)printf("  %s does not apply at any point\n", calc->results[i].name);
        }
    }
}

static void print_table(struct sweep_view *view)
{
    const struct hw_calc *calc = view->question->calc;
    if (view->n_results == 0) {
        print_absent(view);
        return;
    }
    sweep_table(view);
    print_absent(view);
    for (size_t at = 0; at < view->n_results; at++) {
        const struct hw_result *result = &calc->results[view->result[at]];
        size_t printed = (size_t)printf("  %-*s ", NAME_WIDTH, result->name);
        print_wrapped(result->help, printed, INDENT + NAME_WIDTH + 1);
    }
}

/* A chart hangs on a wall for one result: the first, unless others are named. */
static void print_charts(struct sweep_view *view)
{
    const struct hw_calc *calc = view->question->calc;
    char others[ALLOWED_MAX] = "other results, by --only:";
    size_t used = strlen(others);
    size_t left = 0;
    for (size_t at = 0; at < view->n_results; at++) {
        size_t i = view->result[at];
        if (at == 0 || view->args->n_only > 0) {
            char label[AXIS_TEXT];
            char ways[CAPTION_MAX];
            sweep_label(calc->results[i].name, sweep_unit(view, i), label);
            print_wrapped(calc->results[i].help, (size_t)printf("%s: ", label), INDENT);
            sweep_ways(view, ways);
            (void)printf("  %s\n", ways);
            sweep_chart(view, i);
        } else {
            used += (size_t)snprintf(others + used, sizeof others - used, "%s %s",
                                     left > 0 ? "," : "", calc->results[i].name);
            left++;
        }
    }
    print_absent(view);
    if (left > 0) {
        print_blanks(INDENT);
        print_wrapped(others, INDENT, 2 * INDENT);
    }
}

void sweep_text(struct sweep_view *view)
{
    char heading[CAPTION_MAX];
    sweep_heading(view, heading);
    print_wrapped(heading, 0, INDENT);
    if (view->refused == view->total) {
        (void)puts("no answer at any point");
    } else if (view->question->n_axes == 1) {
        print_table(view);
    } else {
        print_charts(view);
    }
    print_cautions(view);
    print_inputs(view);
    text_standing(view->question->calc, view->ever, view->args->full);
    if (view->args->full) {
        text_sources(view->question->calc);
    }
}
