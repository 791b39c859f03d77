/* note_rows.c - what every calculation's notes and results are held to. */
#include "note_rows.h"

#include "assert_close.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

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
    if (noted(calc, &answer, code) != wanted) {
        fail_msg("%s: %s by %s", code, wanted ? "not raised" : "raised", line);
    }
    check_results(calc, &answer);
    check_working(calc, line);
    return answer.notes;
}

void check_notes(const struct hw_calc *calc, const struct note_row rows[], size_t n)
{
    uint64_t reached = 0;
    for (size_t i = 0; i < n; i++) {
        reached |= notes_of(calc, rows[i].raised, rows[i].code, true);
        if (rows[i].silent) {
            (void)notes_of(calc, rows[i].silent, rows[i].code, false);
        }
    }
    assert_int_equal(reached, (UINT64_C(1) << calc->n_notes) - 1);
}
