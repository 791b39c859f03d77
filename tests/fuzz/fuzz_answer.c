/* fuzz_answer.c - any values in range, put to any calculation. Where there is an answer every
 * result is finite that need not be absent, where there is none all are NaN; the same question has
 * the same bits, whatever else is asked with it and whichever results are wanted; the working ends
 * at the first result. */
#include "draw.h"
#include "engine/answer.h"
#include "engine/working.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { ROWS = 5 };

static const struct hw_calc *asked;
static const double *values; /* of the question at hand */

/* Says what does not hold, and of which question, and ends it. */
static void must(bool holds, const char *what, size_t which)
{
    if (!holds) {
        (void)fprintf(stderr, "%s: %s, number %zu\n", asked->name, what, which);
        for (size_t i = 0; i < asked->n_inputs; i++) {
            if (!isnan(values[i])) {
                (void)fprintf(stderr, " %s=%.17g", asked->inputs[i].name, values[i]);
            }
        }
        (void)fputc('\n', stderr);
        abort();
    }
}

/* The same number, or none both times: NaN has no one pattern of bits. */
static bool same(double a, double b)
{
    return (isnan(a) && isnan(b)) || memcmp(&a, &b, sizeof a) == 0;
}

/* What the calculation itself says, without the engine. */
static void check_alone(const struct hw_calc *calc, const double in[],
                        const struct hw_answer *answer)
{
    double out[HW_RESULTS];
    double again[HW_RESULTS];
    uint64_t notes = 0;
    uint64_t notes_again = 0;
    calc->answer(in, out, &notes);
    calc->answer(in, again, &notes_again);
    must(notes == notes_again, "other notes when asked again", 0);
    must(notes >> calc->n_notes == 0, "notes beyond the table", 0);
    bool answered = hw_notes_status(calc, notes) >= 0;
    must(answered == (answer->status >= 0), "the engine sees it another way", 0);
    for (size_t i = 0; i < calc->n_results; i++) {
        must(same(out[i], again[i]), "another result when asked again", i);
        bool absent = isnan(out[i]) && calc->results[i].sometimes;
        must(!answered || isfinite(out[i]) || absent, "not finite", i);
        must(same(answer->out[i], answered ? out[i] : (double)NAN), "not what was answered", i);
    }
}

/* Two questions by turns, and not every result wanted. */
static void check_company(const struct hw_calc *calc, double in[2][HW_INPUTS],
                          const struct hw_answer answer[2], unsigned unwanted)
{
    static struct hw_batch batch;
    struct hw_question first = {.calc = calc};
    memcpy(first.in, in[0], sizeof first.in);
    hw_batch_fill(&batch, &first, ROWS);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        batch.in[i][1] = batch.in[i][3] = in[1][i];
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        batch.unwanted[i] = ((unwanted >> i) & 1u) != 0;
    }
    hw_batch_run(&batch, ROWS);
    for (size_t row = 0; row < ROWS; row++) {
        must(batch.notes[row] == answer[row % 2].notes, "other notes in company, row", row);
        for (size_t i = 0; i < calc->n_results; i++) {
            must(batch.unwanted[i] || same(batch.out[i][row], answer[row % 2].out[i]),
                 "another result in company", i);
        }
    }
}

static void check_working(const struct hw_calc *calc, const double in[],
                          const struct hw_answer *answer)
{
    static struct hw_steps steps;
    size_t first = 0;
    while (first < calc->n_results && isnan(answer->out[first])) {
        first++;
    }
    if (answer->status < 0 || first == calc->n_results) {
        return;
    }
    steps.n = 0;
    steps.full = false;
    calc->work(in, &steps);
    must(!steps.full && steps.n > 0, "steps of the working", steps.n);
    const struct hw_step *last = &steps.step[steps.n - 1];
    must(strcmp(last->symbol, calc->results[first].name) == 0, "the working ends elsewhere", first);
    must(same(last->value, answer->out[first]), "the working has another number", first);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    struct draw draw = {data, size};
    const struct hw_calc *calc = draw_calc(&draw);
    asked = calc;
    unsigned unwanted = draw_byte(&draw) * 256;
    unwanted += draw_byte(&draw);
    double in[2][HW_INPUTS];
    struct hw_answer answer[2];
    for (size_t k = 0; k < 2; k++) {
        draw_question(&draw, calc, in[k]);
        values = in[k];
        struct hw_question question = {.calc = calc};
        memcpy(question.in, in[k], sizeof question.in);
        hw_question_answer(&question, &answer[k]);
        check_alone(calc, in[k], &answer[k]);
        check_working(calc, in[k], &answer[k]);
    }
    check_company(calc, in, answer, unwanted);
    return 0;
}
