/* sweep_text.c - a sweep for people: what stands around its table or chart. */
#include "cli/message.h"
#include "cli/report.h"
#include "cli/sweep_view.h"

#include <stdio.h>
#include <string.h>

enum { INDENT = 2, NAME_WIDTH = 16 };

static void print_heading(const struct sweep_view *view)
{
    char line[ALLOWED_MAX];
    size_t used = (size_t)snprintf(line, sizeof line, "%s:", view->question->calc->name);
    for (size_t i = 0; i < view->question->n_axes; i++) {
        const struct sweep_axis *axis = &view->axis[i];
        char from[AXIS_TEXT];
        char to[AXIS_TEXT];
        sweep_axis_text(axis, 0, from);
        sweep_axis_text(axis, axis->sweep->n - 1, to);
        used += (size_t)snprintf(line + used, sizeof line - used, "%s %s from %s to %s%s%s%s",
                                 i == 0 ? "" : ",", axis->input->name, from, to,
                                 axis->unit[0] == '\0' ? "" : " ", axis->unit,
                                 view->question->n_axes == 1 ? ""
                                 : i == 0                    ? " across"
                                                             : " down");
    }
    print_wrapped(line, 0, INDENT);
}

static void print_inputs(const struct sweep_view *view)
{
    const struct hw_question *question = view->question;
    (void)puts("from");
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->from[i] != HW_ABSENT && question->from[i] != HW_SWEPT) {
            print_input(question, i);
        }
    }
    if (hw_question_uncertain(question)) {
        (void)puts("  +-: the middle values are shown; csv and json give low and high");
    }
}

static void print_notes(const struct sweep_view *view, enum hw_effect effect, bool lettered)
{
    const struct hw_calc *calc = view->question->calc;
    for (size_t i = 0; sweep_next_note(view, effect, &i); i++) {
        char mark[] = {view->letter[i], ' ', '\0'};
        bool all = effect > HW_STANDING && view->total > 1;
        if (lettered == (view->letter[i] != '\0')) {
            print_note(&calc->notes[i], lettered ? mark : "",
                       !lettered && all ? " (at every point)" : "");
        }
    }
}

/* The letters first, then what is raised everywhere, then what is true of every answer. */
static void print_cautions(const struct sweep_view *view)
{
    (void)puts("cautions");
    for (int effect = HW_WITHHELD; effect > HW_STANDING; effect--) {
        print_notes(view, (enum hw_effect)effect, true);
    }
    for (int effect = HW_WITHHELD; effect >= HW_STANDING; effect--) {
        print_notes(view, (enum hw_effect)effect, false);
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
    (void)puts("table");
    sweep_table(view);
    print_absent(view);
    (void)puts("where");
    for (size_t i = 0; i < calc->n_results; i++) {
        if (view->applies[i]) {
            size_t printed = (size_t)printf("  %-*s ", NAME_WIDTH - 1, calc->results[i].name);
            print_wrapped(calc->results[i].help, printed, INDENT + NAME_WIDTH);
        }
    }
}

static void print_axes(const struct sweep_view *view)
{
    char label[HW_AXES][AXIS_TEXT];
    for (size_t i = 0; i < HW_AXES; i++) {
        sweep_label(view->axis[i].input->name, view->axis[i].unit, label[i]);
    }
    (void)printf("  %s across; %s down\n", label[0], label[1]);
}

/* A chart hangs on a wall for one result: the first, unless others are named. */
static void print_charts(struct sweep_view *view)
{
    const struct hw_calc *calc = view->question->calc;
    size_t first = sweep_first(view);
    char others[ALLOWED_MAX] = "other results, by --only:";
    size_t used = strlen(others);
    size_t left = 0;
    for (size_t i = first; i < calc->n_results; i++) {
        if (view->applies[i] && (i == first || view->args->n_only > 0)) {
            char label[AXIS_TEXT];
            sweep_label(calc->results[i].name, sweep_unit(view, i), label);
            print_wrapped(calc->results[i].help, (size_t)printf("%s: ", label), INDENT);
            print_axes(view);
            sweep_chart(view, i);
        } else if (view->applies[i]) {
            used +=
                (size_t)snprintf(others + used, sizeof others - used, " %s", calc->results[i].name);
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
    print_heading(view);
    print_inputs(view);
    if (view->refused == view->total) {
        (void)puts("no answer at any point");
    } else if (view->question->n_axes == 1) {
        print_table(view);
    } else {
        print_charts(view);
    }
    print_cautions(view);
    print_sources(view->question->calc);
}
