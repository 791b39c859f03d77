/* question.c - presets, conditions and groups. */
#include "engine/question.h"

#include <math.h>
#include <string.h>

bool hw_name_is(const char *name, const char *text, size_t n)
{
    if (strlen(name) != n) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        char c = text[i] == '-' ? '_' : text[i];
        if ((name[i] == '-' ? '_' : name[i]) != c) {
            return false;
        }
    }
    return true;
}

size_t hw_input_find(const struct hw_calc *calc, const char *name, size_t n)
{
    size_t i = 0;
    while (i < calc->n_inputs && !hw_name_is(calc->inputs[i].name, name, n)) {
        i++;
    }
    return i;
}

size_t hw_result_find(const struct hw_calc *calc, const char *name, size_t n)
{
    size_t i = 0;
    while (i < calc->n_results && !hw_name_is(calc->results[i].name, name, n)) {
        i++;
    }
    return i;
}

bool hw_input_wanted(const struct hw_calc *calc, size_t input, const double in[])
{
    const struct hw_input *this = &calc->inputs[input];
    if (this->when_input < 0) {
        return true;
    }
    double word = in[this->when_input];
    return !isnan(word) && ((this->when_words >> (unsigned)word) & 1u) != 0;
}

bool hw_input_has_twin_in_force(const struct hw_calc *calc, size_t input, const double in[])
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (i != input && strcmp(calc->inputs[i].name, calc->inputs[input].name) == 0 &&
            hw_input_wanted(calc, i, in)) {
            return true;
        }
    }
    return false;
}

static bool comes_later(const struct hw_written *written)
{
    return !written->text.at && written->from == HW_FROM_COLUMN;
}

/* Puts in an input that was not written: its preset, or nothing. */
static enum hw_problem leave_out(const struct hw_calc *calc, size_t i,
                                 const struct hw_written *written, struct hw_question *question)
{
    const struct hw_input *input = &calc->inputs[i];
    if (input->need == HW_PRESET) {
        question->in[i] = input->preset;
        question->from[i] = HW_FROM_PRESET;
        return HW_FINE;
    }
    bool required = input->need == HW_REQUIRED && input->group == 0 && !comes_later(written);
    return required ? HW_PROBLEM_MISSING : HW_FINE;
}

/* An input whose condition does not hold: out of place when it was written, unless another entry of its name is
 * meant. */
static enum hw_problem leave_unwanted(const struct hw_calc *calc, size_t i,
                                      const struct hw_written written[],
                                      const struct hw_question *question)
{
    bool meant_here = written[i].text.at && !hw_input_has_twin_in_force(calc, i, question->in);
    return meant_here ? HW_PROBLEM_OUT_OF_PLACE : HW_FINE;
}

static enum hw_problem settle_one(const struct hw_calc *calc, size_t i,
                                  const struct hw_written written[], struct hw_question *question)
{
    question->in[i] = NAN;
    question->from[i] = HW_ABSENT;
    question->unit[i] = NULL;
    int choice = calc->inputs[i].when_input;
    if (choice >= 0 && comes_later(&written[choice])) {
        return HW_FINE;
    }
    if (!hw_input_wanted(calc, i, question->in)) {
        return leave_unwanted(calc, i, written, question);
    }
    if (!written[i].text.at) {
        return leave_out(calc, i, &written[i], question);
    }
    question->from[i] = written[i].from;
    return hw_value_read(&calc->inputs[i], written[i].text, written[i].column, &question->in[i],
                         &question->unit[i]);
}

/* True when a row may still put the input in, or the choice that it hangs on. */
static bool may_come(const struct hw_calc *calc, const struct hw_written written[], size_t i)
{
    int choice = calc->inputs[i].when_input;
    return comes_later(&written[i]) || (choice >= 0 && comes_later(&written[choice]));
}

/* Exactly one input of each group; none of a group that no condition calls for. */
static enum hw_problem settle_groups(const struct hw_calc *calc, const struct hw_written written[],
                                     const struct hw_question *question, size_t *which)
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        int group = calc->inputs[i].group;
        size_t given = 0;
        bool open = false;
        bool wanted = false;
        for (size_t k = 0; group != 0 && k < calc->n_inputs; k++) {
            bool member = calc->inputs[k].group == group;
            given += member && !isnan(question->in[k]) ? 1 : 0;
            open = open || (member && may_come(calc, written, k));
            wanted = wanted || (member && hw_input_wanted(calc, k, question->in));
        }
        if (wanted && given != 1 && !open) {
            *which = i;
            return given == 0 ? HW_PROBLEM_NONE_OF_GROUP : HW_PROBLEM_MANY_OF_GROUP;
        }
    }
    return HW_FINE;
}

enum hw_problem hw_question_settle(const struct hw_calc *calc, const struct hw_written written[],
                                   struct hw_question *question, size_t *which)
{
    question->calc = calc;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        enum hw_problem problem = settle_one(calc, i, written, question);
        if (problem != HW_FINE) {
            *which = i;
            return problem;
        }
    }
    return settle_groups(calc, written, question, which);
}
