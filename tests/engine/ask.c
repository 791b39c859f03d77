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

enum hw_problem ask_settle(const struct hw_calc *calc, const char *line,
                           struct hw_question *question, size_t *which)
{
    struct hw_written written[HW_INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
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

/* What `awk` makes of an expression. */
static double by_awk(const char *expression)
{
    char command[HW_EXPRESSION_MAX + 100];
    char line[64] = "";
    (void)snprintf(command, sizeof command, "LC_ALL=C awk 'BEGIN{printf \"%%.17g\\n\", (%s)}'",
                   expression);
    FILE *awk = popen(command, "r");
    assert_non_null(awk);
    assert_non_null(fgets(line, sizeof line, awk));
    assert_int_equal(pclose(awk), 0);
    return strtod(line, NULL);
}

static const char *first_result(const struct hw_calc *calc, const struct hw_answer *answer)
{
    size_t i = 0;
    while (i + 1 < calc->n_results && isnan(answer->out[i])) {
        i++;
    }
    return calc->results[i].name;
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
    check(!steps.full);
    check(steps.n > 0);
    for (size_t k = 0; k < steps.n; k++) {
        const struct hw_step *step = &steps.step[k];
        assert_close(by_awk(step->expression), step->value, 1e-9, 1e-8);
        size_t result = hw_result_find(calc, step->symbol, strlen(step->symbol));
        if (result < calc->n_results) {
            assert_close(step->value, answer.out[result], 0, 0);
        }
    }
    assert_string_equal(steps.step[steps.n - 1].symbol, first_result(calc, &answer));
}
