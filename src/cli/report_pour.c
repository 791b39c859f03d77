/* report_pour.c - how a liquid result is measured, and what level the mark of a syringe gives. */
#include "cli/report_pour.h"

#include "cli/notes.h"
#include "cli/pour.h"
#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double worth_telling = 0.01; /* of the amount */

/* The amount that another aim asks for; NaN when it has none. */
static double amount_at(const struct hw_question *question, size_t aim, double at, size_t result)
{
    const struct hw_input *input = &question->calc->inputs[aim];
    struct hw_question other = *question;
    struct hw_answer answer;
    if (!(at >= input->lo && at <= input->hi)) {
        return NAN;
    }
    other.in[aim] = at;
    hw_question_answer(&other, &answer);
    return answer.out[result];
}

/* The aim that is met by what is drawn: amounts are in proportion to it, from some level on, and
 * asking again confirms it. NaN when that is not so. */
static double aim_met(const struct report *report, size_t aim, size_t result, double drawn)
{
    double amount = report->answer->out[result];
    double wanted = report->question->in[aim];
    double near = wanted * (drawn < amount ? 0.999 : 1.001);
    double slope = (amount_at(report->question, aim, near, result) - amount) / (near - wanted);
    double met = wanted + (drawn - amount) / slope;
    double again = amount_at(report->question, aim, met, result);
    return fabs(again - drawn) <= 1e-6 * drawn ? met : NAN;
}

/* True when it is poured in several steps: a table tells the level of each, as it is drawn. */
static bool has_steps(const struct hw_question *question)
{
    size_t steps = hw_input_find(question->calc, "steps", 5);
    return steps < question->calc->n_inputs && question->in[steps] > 1;
}

/* " (for 0.176 mg/L)": the aim that is met, in the unit it was written in. */
static void met_text(const struct hw_question *question, size_t aim, double met, int safe,
                     char text[REPORT_POUR])
{
    const struct hw_input *input = &question->calc->inputs[aim];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    const struct hw_unit *written = question->unit[aim];
    bool other = written && kept && written != kept;
    char number[NUMBER_MAX];
    number_text(number, other ? hw_unit_convert(met, kept, written) : met, 3, safe);
    const char *word = strcmp(input->name, "keep") == 0 ? "keeps" : "for";
    (void)snprintf(text, REPORT_POUR, " (%s %.20s %s)", word, number,
                   other ? written->name : input->unit);
}

/* True for the first amount to pour, and for one that is as large: what another amount makes hangs
 * on what was drawn before. */
static bool is_first(const struct report *report, size_t result)
{
    const double *amounts = report->answer->out;
    size_t i = 0;
    while (i < result && !(report->question->calc->results[i].pour && !isnan(amounts[i]))) {
        i++;
    }
    return amounts[i] == amounts[result];
}

void report_pour(const struct report *report, size_t result, char measure[REPORT_POUR],
                 char level[REPORT_POUR])
{
    const struct hw_question *question = report->question;
    const struct hw_result *this = &question->calc->results[result];
    double amount = report->answer->out[result];
    char poured[POUR_TEXT];
    double drawn = pour_text(amount, this->safe, poured);
    size_t aim = hw_question_aim(question);
    (void)snprintf(measure, REPORT_POUR, "%s", poured);
    level[0] = '\0';
    if (isnan(drawn) || aim == question->calc->n_inputs || has_steps(question) ||
        !is_first(report, result) || !(fabs(drawn - amount) > worth_telling * amount)) {
        return;
    }
    double met = aim_met(report, aim, result, drawn);
    if (!isnan(met)) {
        met_text(question, aim, met, this->safe, level);
    }
}

double report_pour_drawn(double amount, int safe)
{
    char poured[POUR_TEXT];
    double drawn = pour_text(amount, safe, poured);
    return fabs(drawn - amount) > worth_telling * amount ? drawn : amount;
}

const char *report_pour_help(const struct report *report, size_t result)
{
    const struct hw_calc *calc = report->question->calc;
    uint64_t notes = report->answer->notes;
    if (has_steps(report->question)) {
        return "each step";
    }
    for (size_t bit = 0; notes_next(calc, notes, &bit); bit++) {
        const char *code = hw_note_at(calc, bit)->code;
        if (strcmp(code, "copper-ramp") == 0 || strcmp(code, "copper-ramp-chelated") == 0) {
            return "if all at once";
        }
    }
    return calc->results[result].help;
}
