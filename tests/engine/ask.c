/* ask.c - asks a calculation in one line of text. */
#include "ask.h"
#include "assert_close.h"
#include "engine/working.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

const struct hw_calc *find_calc(const char *name)
{
    for (size_t i = 0; hw_calcs[i]; i++) {
        if (strcmp(hw_calcs[i]->name, name) == 0) {
            return hw_calcs[i];
        }
    }
    return NULL;
}

void ask_write(const struct hw_calc *calc, const char *line, struct hw_written written[HW_INPUTS])
{
    memset(written, 0, HW_INPUTS * sizeof *written);
    while (*line != '\0') {
        size_t name = strcspn(line, "=");
        const char *value = line + name + 1;
        size_t n = strcspn(value, ";");
        size_t first = hw_input_find(calc, line, name);
        if (first == calc->n_inputs) {
            fail_msg("%s has no input '%.*s'", calc->name, (int)name, line);
        }
        for (size_t i = first; i < calc->n_inputs; i++) {
            if (strcmp(calc->inputs[i].name, calc->inputs[first].name) == 0) {
                written[i] = (struct hw_written){{value, n}, NULL, HW_GIVEN};
            }
        }
        line = value[n] == ';' ? value + n + 1 : value + n;
    }
}

enum hw_problem ask_settle(const struct hw_calc *calc, const char *line,
                           struct hw_question *question, size_t *which)
{
    struct hw_written written[HW_INPUTS];
    ask_write(calc, line, written);
    return hw_question_settle(calc, written, question, which);
}

void ask(const struct hw_calc *calc, const char *line, struct hw_question *question,
         struct hw_answer *answer)
{
    size_t which = 0;
    enum hw_problem problem = ask_settle(calc, line, question, &which);
    if (problem != HW_FINE) {
        fail_msg("%s %s: %s at %s", calc->name, line, hw_problem_code(problem),
                 calc->inputs[which].name);
    }
    hw_question_answer(question, answer);
}

double result_of(const struct hw_calc *calc, const struct hw_answer *answer, const char *name)
{
    size_t i = hw_result_find(calc, name, strlen(name));
    if (i == calc->n_results) {
        fail_msg("%s has no result '%s'", calc->name, name);
    }
    return answer->out[i];
}

bool noted(const struct hw_calc *calc, const struct hw_answer *answer, const char *code)
{
    for (size_t i = 0; i < calc->n_notes; i++) {
        if (strcmp(calc->notes[i].code, code) == 0) {
            return ((answer->notes >> i) & 1u) != 0;
        }
    }
    fail_msg("%s has no note '%s'", calc->name, code);
    return false;
}

/* Has awk work out every expression of a working, in one run. */
static void redo_steps(const struct hw_steps *steps)
{
    static char command[100000];
    size_t used = (size_t)snprintf(command, sizeof command, "LC_ALL=C awk 'BEGIN {");
    for (size_t i = 0; i < steps->n; i++) {
        used += (size_t)snprintf(command + used, sizeof command - used,
                                 "printf \"%%.17g\\n\", (%s);", steps->step[i].expression);
        check(used < sizeof command - 2);
    }
    memcpy(command + used, "}'", sizeof "}'");
    FILE *awk = popen(command, "r");
    assert_non_null(awk);
    for (size_t i = 0; i < steps->n; i++) {
        const struct hw_step *step = &steps->step[i];
        char printed[64] = "";
        assert_non_null(fgets(printed, sizeof printed, awk));
        if (!hw_is_close(strtod(printed, NULL), step->value, 1e-9, 1e-8)) {
            fail_msg("%s = %s is %s, not %.17g", step->symbol, step->expression, printed,
                     step->value);
        }
    }
    assert_int_equal(pclose(awk), 0);
}

void check_working(const struct hw_calc *calc, const char *line)
{
    static struct hw_steps steps;
    struct hw_question question;
    struct hw_answer answer;
    ask(calc, line, &question, &answer);
    if (answer.status < 0) {
        return;
    }
    steps.n = 0;
    steps.full = false;
    calc->work(question.in, &steps);
    check(!steps.full && steps.n > 0);
    redo_steps(&steps);
    for (size_t i = 0; i < steps.n; i++) {
        size_t result = hw_result_find(calc, steps.step[i].symbol, strlen(steps.step[i].symbol));
        if (result < calc->n_results) {
            assert_close(steps.step[i].value, answer.out[result], 0, 0);
        }
    }
    size_t first = 0;
    while (isnan(answer.out[first])) {
        first++;
    }
    assert_string_equal(steps.step[steps.n - 1].symbol, calc->results[first].name);
}
