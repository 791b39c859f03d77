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
#include <unistd.h>

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

bool noted_as(const struct hw_question *question, const char *code, bool wanted)
{
    const struct hw_calc *calc = question->calc;
    struct hw_answer answer;
    double out[HW_RESULTS];
    uint64_t notes = 0;
    hw_question_answer(question, &answer);
    calc->answer(question->in, out, &notes);
    answer.notes |= wanted ? notes : 0;
    return noted(calc, &answer, code) == wanted;
}

/* --- Workings --------------------------------------------------------------------------------- */

enum { PROGRAM_MAX = 1 << 20, REDONE_MAX = 8000 };

/* What awk is to work out: one statement a step, and the value that it must have. */
static struct {
    bool kept; /* until redo_workings */
    char program[PROGRAM_MAX];
    size_t used, n;
    struct {
        size_t at;
        double value;
    } step[REDONE_MAX];
} redone;

static void keep_steps(const struct hw_steps *steps)
{
    for (size_t i = 0; i < steps->n; i++) {
        check(redone.n < REDONE_MAX && redone.used < PROGRAM_MAX - 2 * HW_EXPRESSION_MAX);
        redone.step[redone.n].at = redone.used;
        redone.step[redone.n++].value = steps->step[i].value;
        redone.used += (size_t)snprintf(redone.program + redone.used, PROGRAM_MAX - redone.used,
                                        "BEGIN { printf \"%%.17g\\n\", (%s) } # %s\n",
                                        steps->step[i].expression, steps->step[i].symbol);
    }
}

static void write_program(const char *name)
{
    FILE *file = fopen(name, "w");
    assert_non_null(file);
    check(fwrite(redone.program, 1, redone.used, file) == redone.used);
    assert_int_equal(fclose(file), 0);
}

static void redo_steps(void)
{
    char name[] = "/tmp/working-XXXXXX";
    char command[80];
    int file = mkstemp(name);
    assert_true(file >= 0 && close(file) == 0);
    write_program(name);
    (void)snprintf(command, sizeof command, "LC_ALL=C awk -f %s; rm %s", name, name);
    FILE *awk = popen(command, "r");
    assert_non_null(awk);
    for (size_t i = 0; i < redone.n; i++) {
        const char *statement = redone.program + redone.step[i].at;
        char printed[64] = "";
        assert_non_null(fgets(printed, sizeof printed, awk));
        if (!hw_is_close(strtod(printed, NULL), redone.step[i].value, 1e-9, 1e-8)) {
            fail_msg("%.*s is %s, not %.17g", (int)strcspn(statement, "\n"), statement, printed,
                     redone.step[i].value);
        }
    }
    assert_int_equal(pclose(awk), 0);
    redone.used = redone.n = 0;
}

void keep_workings(void)
{
    redone.kept = true;
}

void redo_workings(void)
{
    check(redone.kept && redone.n > 0);
    redone.kept = false;
    redo_steps();
}

/* Results that no step leads to: hours of the day and spans that are read off, not reckoned; ends
 * of a range or a way back that are told only where they matter. */
static bool goes_without_step(const char *calc, const char *result)
{
    static const char *const without[][2] = {
        {"ahead", "peak_hour"},
        {"ahead", "settles_high"},
        {"ammonia", "ph_long"},
        {"ammonia", "tan_long"},
        {"bath", "level"},
        {"bath", "repeat_from"},
        {"bath", "repeat_to"},
        {"binder", "release_from"},
        {"binder", "release_to"},
        {"change", "times_needed"},
        {"neutralise", "ammonia_freed"},
    };
    for (size_t i = 0; i < sizeof without / sizeof without[0]; i++) {
        if (strcmp(calc, without[i][0]) == 0 && strcmp(result, without[i][1]) == 0) {
            return true;
        }
    }
    return false;
}

/* Each result that is there has its step, but for 0, to which there is no way to show. */
static void check_results_have_steps(const struct hw_answer *answer, const struct hw_calc *calc,
                                     const struct hw_steps *steps)
{
    for (size_t i = 0; i < calc->n_results; i++) {
        const char *name = calc->results[i].name;
        bool found = isnan(answer->out[i]) || answer->out[i] == 0;
        for (size_t k = 0; k < steps->n; k++) {
            found = found || strcmp(steps->step[k].symbol, name) == 0;
        }
        if (!found && !goes_without_step(calc->name, name)) {
            fail_msg("%s: no step finds %s, %.17g", calc->name, name, answer->out[i]);
        }
    }
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
    keep_steps(&steps);
    if (!redone.kept) {
        redo_steps();
    }
    for (size_t i = 0; i < steps.n; i++) {
        size_t result = hw_result_find(calc, steps.step[i].symbol, strlen(steps.step[i].symbol));
        if (result < calc->n_results) {
            assert_close(steps.step[i].value, answer.out[result], 0, 0);
        }
    }
    check_results_have_steps(&answer, calc, &steps);
    size_t first = 0;
    while (first < calc->n_results && isnan(answer.out[first])) {
        first++;
    }
    if (first < calc->n_results) {
        assert_string_equal(steps.step[steps.n - 1].symbol, calc->results[first].name);
    }
}
