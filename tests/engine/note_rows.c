/* note_rows.c - what every calculation's notes and results are held to. */
#include "note_rows.h"

#include "assert_close.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static void check_results(const struct hw_calc *calc, const struct hw_answer *answer)
{
    for (size_t i = 0; i < calc->n_results; i++) {
        if (answer->status < 0) {
            assert_no_answer(answer->out[i]);
        } else {
            check(calc->results[i].sometimes || isfinite(answer->out[i]));
        }
    }
}

static uint64_t notes_of(const struct hw_calc *calc, const char *line, const char *code,
                         bool wanted)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(calc, line, &question, &answer);
    if (!noted_as(&question, code, wanted)) {
        fail_msg("%s: %s by %s", code, wanted ? "not raised" : "raised", line);
    }
    check_results(calc, &answer);
    check_working(calc, line);
    return answer.notes;
}

void check_notes(const struct hw_calc *calc, const struct note_row rows[], size_t n)
{
    uint64_t reached = 0;
    keep_workings();
    for (size_t i = 0; i < n; i++) {
        reached |= notes_of(calc, rows[i].raised, rows[i].code, true);
        if (rows[i].silent) {
            (void)notes_of(calc, rows[i].silent, rows[i].code, false);
        }
    }
    redo_workings();
    assert_int_equal(reached, (UINT64_C(1) << calc->n_notes) - 1);
}

/* The entry of a name that the question gave; a name may have several. */
static size_t moved_input(const struct hw_question *question, const char *name)
{
    const struct hw_calc *calc = question->calc;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (hw_name_is(calc->inputs[i].name, name, strlen(name)) && !isnan(question->in[i])) {
            return i;
        }
    }
    fail_msg("%s: no input '%s' to move", calc->name, name);
    return 0;
}

/* What is to reach the threshold, with the input at a value. */
static double reached(struct hw_question *question, const struct note_edge *edge, size_t input,
                      double value)
{
    struct hw_answer answer;
    question->in[input] = value;
    if (!edge->result) {
        return value;
    }
    hw_question_answer(question, &answer);
    const char *slash = strchr(edge->result, '/');
    if (!slash) {
        return result_of(question->calc, &answer, edge->result);
    }
    size_t dividend = hw_result_find(question->calc, edge->result, (size_t)(slash - edge->result));
    return answer.out[dividend] / result_of(question->calc, &answer, slash + 1);
}

/* Moves the input until the target is reached, within less than `above` leaves out: the rule of
 * secants, from the question asked. */
static void bring(struct hw_question *question, const struct note_edge *edge, size_t input,
                  double target)
{
    double tolerance = 1e-11 * fmax(1, fabs(target));
    double x = edge->result ? question->in[input] : target;
    double y = reached(question, edge, input, x) - target;
    double next = x * 1.0001 + 1e-9;
    for (int i = 0; i < 60 && !(fabs(y) <= tolerance); i++) {
        double y_next = reached(question, edge, input, next) - target;
        double slope = (y_next - y) / (next - x);
        x = next;
        y = y_next;
        next = x - y / slope;
    }
    if (!(fabs(y) <= tolerance)) {
        fail_msg("%s: %.17g is not reached by %s", edge->code, target, edge->line);
    }
    question->in[input] = x;
}

static bool stands(enum note_side side, int step)
{
    return side == ABOVE   ? step > 0
           : side == BELOW ? step < 0
           : side == UP_TO ? step <= 0
                           : step >= 0;
}

static void check_edge(const struct hw_calc *calc, const struct note_edge *edge)
{
    for (int step = -1; step <= 1; step++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(calc, edge->line, &question, &answer);
        size_t input = moved_input(&question, edge->input);
        double target = edge->at + step * 1e-7 * fmax(1, fabs(edge->at));
        bring(&question, edge, input, target);
        hw_question_answer(&question, &answer);
        if (!noted_as(&question, edge->code, stands(edge->raised, step))) {
            fail_msg("%s: %s at %.17g by %s", edge->code,
                     stands(edge->raised, step) ? "not raised" : "raised", target, edge->line);
        }
    }
}

void check_edges(const struct hw_calc *calc, const struct note_edge edges[], size_t n)
{
    for (size_t i = 0; i < n; i++) {
        check_edge(calc, &edges[i]);
    }
}

double total_at(const char *ratio, const char *water)
{
    const struct hw_calc *ammonia = find_calc("ammonia");
    struct hw_question question;
    struct hw_answer answer;
    char line[120];
    (void)snprintf(line, sizeof line, "tan=1;%s", water);
    ask(ammonia, line, &question, &answer);
    return 1 / result_of(ammonia, &answer, ratio);
}
