/* question.c - presets, conditions and groups. */
#include "engine/question.h"

#include <math.h>
#include <string.h>

size_t hw_input_find(const struct hw_calc *calc, const char *name, size_t n)
{
    size_t i = 0;
    while (i < calc->n_inputs && !hw_name_is(calc->inputs[i].name, name, n)) {
        i++;
    }
    return i;
}

size_t hw_input_first(const struct hw_calc *calc, size_t input)
{
    const char *name = calc->inputs[input].name;
    return hw_input_find(calc, name, strlen(name));
}

size_t hw_input_next(const struct hw_calc *calc, size_t input)
{
    size_t i = input + 1;
    while (i < calc->n_inputs && strcmp(calc->inputs[i].name, calc->inputs[input].name) != 0) {
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
    if (this->when_words == 0) {
        return true;
    }
    double value = in[this->when_input];
    if (isnan(value)) {
        return (this->when_words & HW_WHEN_UNASKED) != 0;
    }
    bool worded = calc->inputs[this->when_input].words != NULL;
    uint32_t word = worded ? UINT32_C(1) << (unsigned)value : 0;
    return (this->when_words & (word | HW_WHEN_GIVEN)) != 0;
}

/* True when another entry of the same name is in force instead. */
static bool has_twin_in_force(const struct hw_calc *calc, size_t input, const double in[])
{
    for (size_t i = hw_input_first(calc, input); i < calc->n_inputs; i = hw_input_next(calc, i)) {
        if (i != input && hw_input_wanted(calc, i, in)) {
            return true;
        }
    }
    return false;
}

size_t hw_question_aim(const struct hw_question *question)
{
    size_t i = 0;
    while (i < question->calc->n_inputs &&
           !(question->calc->inputs[i].aim && question->from[i] != HW_ABSENT)) {
        i++;
    }
    return i;
}

bool hw_question_uncertain(const struct hw_question *question)
{
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        if (question->half[i] > 0) {
            return true;
        }
    }
    return false;
}

static bool comes_later(const struct hw_written *written)
{
    return !written->text.at && written->from == HW_FROM_COLUMN;
}

/* True when the choice that an input hangs on is told by a row, or hangs itself on one that is. */
static bool hangs_on_later(const struct hw_calc *calc, size_t i, const struct hw_written written[])
{
    while (calc->inputs[i].when_words != 0) {
        i = (size_t)calc->inputs[i].when_input;
        if (comes_later(&written[i])) {
            return true;
        }
    }
    return false;
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

/* An input whose condition does not hold: out of place when it was written, unless another entry of
 * its name is meant. A tanks file tells what is, whatever is asked: there it is left alone. */
static enum hw_problem leave_unwanted(const struct hw_calc *calc, size_t i,
                                      const struct hw_written written[],
                                      const struct hw_question *question)
{
    bool told = written[i].text.at && written[i].from != HW_FROM_TANK;
    bool named = told || written[i].from == HW_SOLVED;
    bool meant_here = named && !has_twin_in_force(calc, i, question->in);
    return meant_here ? HW_PROBLEM_OUT_OF_PLACE : HW_FINE;
}

/* An input that is solved for. It has no value yet, and counts as given for what hangs on it: until
 * all is settled any number stands in its place. */
static enum hw_problem leave_open(const struct hw_calc *calc, size_t i,
                                  const struct hw_written *written, struct hw_question *question)
{
    question->from[i] = HW_SOLVED;
    question->solved = i;
    question->in[i] = calc->inputs[i].lo;
    if (calc->inputs[i].words) {
        return HW_PROBLEM_SOLVE_WORD;
    }
    return written->text.at ? HW_PROBLEM_SOLVE_GIVEN : HW_FINE;
}

static enum hw_problem read_one(const struct hw_calc *calc, size_t i,
                                const struct hw_written *written, struct hw_question *question)
{
    struct hw_form form;
    question->from[i] = written->from;
    enum hw_problem problem = hw_form_read(&calc->inputs[i], written->text, written->column, &form);
    if (problem != HW_FINE) {
        return problem;
    }
    question->in[i] = form.value;
    question->half[i] = form.half;
    question->unit[i] = form.unit;
    if (form.sweep.n == 0) {
        return HW_FINE;
    }
    if (written->from != HW_GIVEN) {
        return HW_PROBLEM_SWEEP; /* a file tells what is, not what may be */
    }
    if (question->n_axes == HW_AXES) {
        return HW_PROBLEM_SWEEPS;
    }
    question->from[i] = HW_SWEPT;
    question->axis[question->n_axes++] = (struct hw_axis){i, form.sweep};
    return HW_FINE;
}

static enum hw_problem settle_one(const struct hw_calc *calc, size_t i,
                                  const struct hw_written written[], struct hw_question *question)
{
    question->in[i] = NAN;
    question->half[i] = 0;
    question->from[i] = HW_ABSENT;
    question->unit[i] = NULL;
    if (hangs_on_later(calc, i, written)) {
        return HW_FINE;
    }
    if (!hw_input_wanted(calc, i, question->in)) {
        return leave_unwanted(calc, i, written, question);
    }
    if (written[i].from == HW_SOLVED) {
        return leave_open(calc, i, &written[i], question);
    }
    if (!written[i].text.at) {
        return leave_out(calc, i, &written[i], question);
    }
    return read_one(calc, i, &written[i], question);
}

/* True when a row may still put the input in, or a choice that it hangs on. */
static bool may_come(const struct hw_calc *calc, const struct hw_written written[], size_t i)
{
    return comes_later(&written[i]) || hangs_on_later(calc, i, written);
}

/* What is known of a group: how many of its inputs are given; whether a row may still give one;
 * whether one is in force, and one that has to be given. */
struct group {
    size_t given;
    bool open, wanted, required;
};

static struct group look_at_group(const struct hw_written written[],
                                  const struct hw_question *question, int number)
{
    const struct hw_calc *calc = question->calc;
    struct group group = {0, false, false, false};
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (calc->inputs[i].group == number) {
            bool wanted = hw_input_wanted(calc, i, question->in);
            group.given += isnan(question->in[i]) ? 0 : 1;
            group.open = group.open || may_come(calc, written, i);
            group.wanted = group.wanted || wanted;
            group.required = group.required || (wanted && calc->inputs[i].need == HW_REQUIRED);
        }
    }
    return group;
}

static enum hw_problem judge_group(const struct group *group)
{
    if (group->open || !group->wanted) {
        return HW_FINE;
    }
    if (group->given > 1) {
        return HW_PROBLEM_MANY_OF_GROUP;
    }
    return group->given == 0 && group->required ? HW_PROBLEM_NONE_OF_GROUP : HW_FINE;
}

/* Exactly one input of each group, or at most one; none of a group that no condition calls for. */
static enum hw_problem settle_groups(const struct hw_calc *calc, const struct hw_written written[],
                                     const struct hw_question *question, size_t *which)
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (calc->inputs[i].group == 0) {
            continue;
        }
        struct group group = look_at_group(written, question, calc->inputs[i].group);
        enum hw_problem problem = judge_group(&group);
        if (problem != HW_FINE) {
            *which = i;
            return problem;
        }
    }
    return HW_FINE;
}

enum hw_problem hw_question_settle(const struct hw_calc *calc, const struct hw_written written[],
                                   struct hw_question *question, size_t *which)
{
    question->calc = calc;
    question->n_axes = 0;
    question->solved = calc->n_inputs;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        enum hw_problem problem = settle_one(calc, i, written, question);
        if (problem != HW_FINE) {
            *which = i;
            return problem;
        }
    }
    enum hw_problem problem = settle_groups(calc, written, question, which);
    if (question->solved < calc->n_inputs) {
        question->in[question->solved] = NAN;
    }
    return problem;
}
