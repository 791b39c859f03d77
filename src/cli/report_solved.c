/* report_solved.c - the head of the text of a question asked backwards. */
#include "cli/report_solved.h"

#include "cli/notes.h"
#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { INDENT = 4 };

static void print_line(const char *text)
{
    print_blanks(INDENT);
    print_wrapped(text, INDENT, INDENT + 2);
}

/* The result at the printed value: what it is for. */
static void print_check(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    const struct hw_result *result = &calc->results[report->args->wanted];
    char reached[AMOUNT_MAX];
    char line[TARGET_MAX];
    amount_text(report->answer->out[report->args->wanted], 6, result->unit, reached);
    (void)snprintf(line, sizeof line, "check: %s is %.60s at %s = %.60s", result->name, reached,
                   calc->inputs[report->question->solved].name, report->solved->value);
    print_line(line);
}

/* The other solutions, so that none is taken for the only one. */
static void print_others(const struct report *report, const struct hw_input *input)
{
    const struct hw_solution *solution = report->solved->solution;
    char line[AMOUNT_MAX];
    if (solution->n_roots == 1) {
        return;
    }
    (void)snprintf(line, sizeof line, "%s%zu solutions, this is the smallest; also",
                   solution->more_roots ? "more than " : "", solution->n_roots);
    for (size_t i = 1; i < solution->n_roots; i++) {
        char number[NUMBER_MAX];
        size_t used = strlen(line);
        number_digits(number, solution->root[i].from, 6);
        (void)snprintf(line + used, sizeof line - used, "%s%.30s", i == 1 ? " " : ", ", number);
    }
    size_t used = strlen(line);
    (void)snprintf(line + used, sizeof line - used, "%s%s. What follows is for this one",
                   input->unit[0] == '\0' ? "" : " ", input->unit);
    print_line(line);
}

/* One value where any of many would do, or a count that passes the target. */
static void print_kind(const struct report *report, const struct hw_input *input)
{
    const struct hw_root *root = &report->solved->solution->root[0];
    double target = report->args->wanted_value;
    if (root->to > root->from) {
        char line[TARGET_MAX];
        char from[AMOUNT_MAX];
        char to[AMOUNT_MAX];
        amount_text(root->from, 6, "", from);
        amount_text(root->to, 6, input->unit, to);
        (void)snprintf(line, sizeof line, "any from %.60s to %.60s does", from, to);
        print_line(line);
    }
    if (input->kind == HW_COUNT && fabs(root->reached - target) > 1e-9 * fabs(target)) {
        bool safe = hw_solved_side(&report->question->calc->results[report->args->wanted]) != 0;
        print_line(safe ? "no whole number meets it: this one is next to it, on the safe side"
                        : "no whole number meets it: this is the first to pass it");
    }
}

/* Where the result leaps over the target, and where there is no answer. */
static void print_rest(const struct report *report, const struct hw_input *input)
{
    const struct hw_solution *solution = report->solved->solution;
    const struct hw_calc *calc = report->question->calc;
    const char *result = calc->results[report->args->wanted].name;
    char line[2 * TARGET_MAX];
    char place[AMOUNT_MAX];
    if (solution->jumps) {
        amount_text(solution->jump_to.x, 6, input->unit, place);
        (void)snprintf(line, sizeof line, "%s leaps over it at %.60s: no solution there", result,
                       place);
        print_line(line);
    }
    for (size_t i = 0; i < solution->n_gaps; i++) {
        const struct hw_gap *gap = &solution->gap[i];
        place_text(input, gap->from, gap->to, place);
        (void)snprintf(line, sizeof line, "no answer %s: ", place);
        for (size_t bit = 0; notes_next(calc, gap->notes, &bit); bit++) {
            size_t used = strlen(line);
            (void)snprintf(line + used, sizeof line - used, "%s%s",
                           line[used - 1] == ' ' ? "" : ", ", hw_note_at(calc, bit)->code);
        }
        size_t used = strlen(line);
        if (gap->notes == 0) {
            (void)snprintf(line + used, sizeof line - used, "%s does not apply there", result);
        }
        print_line(line);
    }
}

void report_solved(const struct report *report)
{
    const struct hw_question *question = report->question;
    const struct hw_input *input = &question->calc->inputs[question->solved];
    const char *own = report->solved->own;
    char target[TARGET_MAX];
    char line[2 * TARGET_MAX];
    target_text(&question->calc->results[report->args->wanted], report->args->wanted_value,
                report->args->wanted_unit, 6, target);
    (void)snprintf(line, sizeof line, "%s%ssolved, so that %s is %s", own,
                   own[0] == '\0' ? "" : "; ", question->calc->results[report->args->wanted].name,
                   target);
    size_t at = (size_t)printf("  %s  %s  ", input->name, report->solved->value);
    print_wrapped(line, at, at);
    print_check(report);
    print_others(report, input);
    print_kind(report, input);
    print_rest(report, input);
    if (hw_question_uncertain(question)) {
        print_line("looked for with the middle of every value that carries +-");
    }
}
