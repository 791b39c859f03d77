/* report_steps.c - the steps of a dose that goes in by parts, which `dose` alone has. */
#include "cli/report_steps.h"

#include "cli/print.h"
#include "cli/report_pour.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { SHOWN = 6, HEAD_WIDTH = 9, CELL_WIDTH = 10, CELL_TEXT = NUMBER_MAX };

/* The entry of that name that is in force, or n_inputs. */
static size_t input_named(const struct hw_question *question, const char *name)
{
    const struct hw_calc *calc = question->calc;
    size_t i = hw_input_find(calc, name, strlen(name));
    while (i < calc->n_inputs && question->from[i] == HW_ABSENT) {
        i = hw_input_next(calc, i);
    }
    return i;
}

static double result_named(const struct hw_question *question, const struct hw_answer *answer,
                           const char *name)
{
    return answer->out[hw_result_find(question->calc, name, strlen(name))];
}

/* Asks for the first k of n steps alone. */
static bool ask_step(const struct hw_question *question, size_t k, size_t n, struct dose_step *step)
{
    size_t target = input_named(question, "target");
    size_t days = input_named(question, "days");
    double now = question->in[input_named(question, "now")];
    double part = (double)k / (double)n;
    struct hw_question first = *question;
    struct hw_answer answer;
    first.in[input_named(question, "steps")] = (double)k;
    first.in[days] = k > 1 ? question->in[days] * part : 0; /* one step has no days */
    first.in[target] = now + (question->in[target] - now) * part;
    hw_question_answer(&first, &answer);
    double liquid = result_named(question, &answer, "step_amount");
    double mass = result_named(question, &answer, "step_mass");
    step->day = question->in[days] > 0 ? question->in[days] * ((double)k - 1) / (double)n : NAN;
    step->amount = isnan(liquid) ? mass : liquid;
    step->level = first.in[target];
    return answer.status >= 0 && !isnan(step->amount);
}

bool report_steps_find(const struct report *report, struct dose_steps *steps)
{
    const struct hw_question *question = report->question;
    const struct hw_calc *calc = question->calc;
    if (strcmp(calc->name, "dose") != 0 || report->answer->status < 0) {
        return false;
    }
    size_t target = input_named(question, "target");
    double n = question->in[input_named(question, "steps")];
    if (target == calc->n_inputs || !(n > 1 && n <= STEPS_MOST)) {
        return false;
    }
    bool liquid = !isnan(result_named(question, report->answer, "step_amount"));
    steps->amount_unit = liquid ? "mL" : "g";
    steps->level_unit = calc->inputs[target].unit;
    for (size_t k = 1; k <= (size_t)n; k++) {
        if (!ask_step(question, k, (size_t)n, &steps->step[k - 1])) {
            return false;
        }
    }
    steps->n = (size_t)n;
    return true;
}

/* --- The table -------------------------------------------------------------------------------- */

static void print_cell(const char *text)
{
    (void)printf(" %*s", CELL_WIDTH, text);
}

/* One line: its name, and of each shown step the number that `field` chooses. */
static void print_line(const struct dose_steps *steps, const char *name, size_t field, int safe,
                       int digits)
{
    (void)printf("  %-*s", HEAD_WIDTH, name);
    for (size_t k = 0; k < steps->n; k++) {
        if (steps->n > SHOWN && k == 2) {
            print_cell("...");
        }
        if (steps->n <= SHOWN || k < 2 || k + 1 == steps->n) {
            const struct dose_step *step = &steps->step[k];
            const double numbers[] = {step->day, step->amount, step->level};
            char text[CELL_TEXT];
            if (field == 0) {
                number_digits(text, numbers[field], 3);
            } else {
                number_text(text, numbers[field], digits, safe);
            }
            print_cell(text);
        }
    }
    (void)putchar('\n');
}

/* True when this text tells what a step is. */
static bool is_told(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    size_t liquid = hw_result_find(calc, "step_amount", 11);
    size_t mass = hw_result_find(calc, "step_mass", 9);
    return (liquid < calc->n_results && args_tell(report->args, liquid)) ||
           (mass < calc->n_results && args_tell(report->args, mass));
}

/* What is drawn of each step, and the level that makes. False where that is as it was. */
static bool as_drawn(struct dose_steps *steps, double now, int safe)
{
    bool differs = false;
    for (size_t k = 0; k < steps->n; k++) {
        struct dose_step *step = &steps->step[k];
        double drawn = report_pour_drawn(step->amount, safe);
        differs = differs || drawn != step->amount;
        step->level = now + (step->level - now) * (drawn / step->amount);
        step->amount = drawn;
    }
    return differs;
}

void report_steps_text(const struct report *report)
{
    const struct hw_question *question = report->question;
    struct dose_steps steps;
    int digits = report->args->digits ? report->args->digits : 3;
    if (!is_told(report) || !report_steps_find(report, &steps)) {
        return;
    }
    size_t liquid = hw_result_find(question->calc, "step_amount", 11);
    int safe = question->calc->results[liquid].safe;
    if (strcmp(steps.amount_unit, "mL") == 0 &&
        as_drawn(&steps, question->in[input_named(question, "now")], safe)) {
        steps.amount_unit = "mL drawn";
    }
    if (!isnan(steps.step[0].day)) {
        print_line(&steps, "day", 0, 0, digits);
    }
    print_line(&steps, steps.amount_unit, 1, safe, digits);
    print_line(&steps, steps.level_unit, 2, 0, digits);
}
