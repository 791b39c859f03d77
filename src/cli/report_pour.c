/* report_pour.c - how a liquid result is measured, and what level the mark of a syringe gives. */
#include "cli/report_pour.h"

#include "cli/pour.h"
#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double worth_telling = 0.01; /* of the amount */

/* The input that the amounts are for, as it was given, or n_inputs. */
static size_t aim_of(const struct hw_question *question)
{
    size_t i = 0;
    while (i < question->calc->n_inputs &&
           !(question->calc->inputs[i].aim && question->from[i] != HW_ABSENT)) {
        i++;
    }
    return i;
}

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

/* True when it is poured in several steps: the aim is met after the last. */
static bool has_steps(const struct hw_question *question)
{
    size_t steps = hw_input_find(question->calc, "steps", 5);
    return steps < question->calc->n_inputs && question->in[steps] > 1;
}

void report_pour(const struct report *report, size_t result, char text[REPORT_POUR])
{
    const struct hw_result *this = &report->question->calc->results[result];
    double amount = report->answer->out[result];
    char measure[POUR_TEXT];
    double drawn = pour_text(amount, this->safe, measure);
    (void)snprintf(text, REPORT_POUR, "%s", measure);
    size_t aim = aim_of(report->question);
    if (isnan(drawn) || aim == report->question->calc->n_inputs ||
        !(fabs(drawn - amount) > worth_telling * amount)) {
        return;
    }
    double met = aim_met(report, aim, result, drawn);
    if (!isnan(met)) {
        char number[NUMBER_MAX];
        number_text(number, met, 3, this->safe);
        size_t used = strlen(text);
        (void)snprintf(text + used, REPORT_POUR - used, " (%.20s %s%s)", number,
                       report->question->calc->inputs[aim].unit,
                       has_steps(report->question) ? " in the end" : "");
    }
}
