/* test_notes.c - notes of made-up calculations, in every format: the engine's own, none at all, as
 * many as there can be. */
#include "assert_close.h"
#include "capture.h"
#include "cli/notes.h"
#include "cli/reply.h"
#include "cli/rows.h"
#include "cli/sweep.h"

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

static const struct hw_input input = {.name = "x", .unit = "", .help = "", .hi = 100};
static const struct hw_result result = {.name = "y", .unit = "", .help = "the result", .digits = 3};
static const char *const sources[] = {"ours", NULL};

/* 1 / x is not finite at 0. */
static void reciprocal(const double in[], double out[], uint64_t *notes)
{
    (void)notes;
    out[0] = 1 / in[0];
}

/* Note i is raised above i, and at 64 the answer is not finite. */
static void raise_below(const double in[], double out[], uint64_t *notes)
{
    for (size_t i = 0; i < HW_NOTES; i++) {
        *notes |= in[0] > (double)i ? UINT64_C(1) << i : 0;
    }
    out[0] = in[0] < HW_NOTES + 1 ? in[0] : (double)INFINITY;
}

static void work(const double in[], struct hw_steps *steps)
{
    (void)in;
    (void)steps;
}

static const struct hw_calc plain = {
    .name = "plain",
    .purpose = "",
    .inputs = &input,
    .n_inputs = 1,
    .results = &result,
    .n_results = 1,
    .sources = sources,
    .answer = reciprocal,
    .work = work,
};

static struct hw_note notes[HW_NOTES];
static char codes[HW_NOTES][16];

static const struct hw_calc crowded = {
    .name = "crowded",
    .purpose = "",
    .inputs = &input,
    .n_inputs = 1,
    .results = &result,
    .n_results = 1,
    .notes = notes,
    .n_notes = HW_NOTES,
    .sources = sources,
    .answer = raise_below,
    .work = work,
};

static int make_notes(void **state)
{
    (void)state;
    for (size_t i = 0; i < HW_NOTES; i++) {
        (void)snprintf(codes[i], sizeof codes[i], "note-%02zu", i);
        notes[i] = (struct hw_note){
            .code = codes[i], .text = "Text.", .source = "ours", .effect = HW_CAUTION};
    }
    return 0;
}

static void settle(const struct hw_calc *calc, const char *x, struct hw_question *question)
{
    struct hw_written written = {{x, strlen(x)}, NULL, HW_GIVEN};
    size_t which = 0;
    assert_int_equal(hw_question_settle(calc, &written, question, &which), HW_FINE);
}

static struct args args_for(const struct hw_calc *calc, enum format format)
{
    return (struct args){.calc = calc,
                         .format = format,
                         .only = {true},
                         .prefix = "",
                         .when = "2031-03-05",
                         .solve = calc->n_inputs,
                         .wanted = calc->n_results};
}

static const char *said;

static int answer(const struct hw_calc *calc, const char *x, enum format format)
{
    struct args args = args_for(calc, format);
    struct hw_question question;
    settle(calc, x, &question);
    capture_begin();
    int status = question.n_axes > 0 ? sweep_run(&args, &question) : reply(&args, &question);
    said = capture_end();
    return status;
}

/* --- The engine's own note -------------------------------------------------------------------- */

static void no_finite_answer_is_told(void **state)
{
    (void)state;
    static const char told[] =
        "These numbers lead to no finite answer: check them and their units.";
    assert_int_equal(answer(&plain, "0", FORMAT_TEXT), 1);
    capture_expect("plain\nNO ANSWER not-finite: These numbers lead to no finite answer: ");
    assert_int_equal(answer(&plain, "0", FORMAT_JSON), 1);
    capture_expect("\"status\": -1,");
    capture_expect("\"y\": {\"value\": null, ");
    capture_expect("{\"code\": \"not-finite\", \"text\": \"");
    capture_expect(told);
    assert_int_equal(answer(&plain, "0", FORMAT_CSV), 1);
    capture_expect("x,y,cautions\n0,,not-finite\n");
    assert_int_equal(answer(&plain, "0", FORMAT_LOG), 1);
    capture_expect("2031-03-05,,plain,x=0,status=refused,not-finite,\n");
    assert_int_equal(answer(&plain, "0", FORMAT_VALUE), 1);
    capture_expect("holdwater: plain: not-finite: These numbers");
    capture_expect(told);
}

static void no_finite_answer_in_a_sweep(void **state)
{
    (void)state;
    assert_int_equal(answer(&plain, "0:2:1", FORMAT_TEXT), 1);
    capture_expect("  0  x      a\n  1  1.00\n  2  0.500\n");
    capture_expect("\na NO ANSWER not-finite: ");
    assert_int_equal(answer(&plain, "0:2:1", FORMAT_SVG), 1);
    capture_expect("NO ANSWER not-finite: ");
    assert_int_equal(answer(&plain, "0:2:1", FORMAT_CSV), 1);
    capture_expect("0,,not-finite\n1,1,\n2,0.5,\n");
}

/* An end of the uncertain input is not finite, the middle is. */
static void no_finite_end(void **state)
{
    (void)state;
    assert_int_equal(answer(&plain, "1+-1", FORMAT_TEXT), 0);
    capture_expect("\nPOSSIBLE NO ANSWER not-finite: ");
    assert_int_equal(answer(&plain, "1+-1", FORMAT_CSV), 0);
    capture_expect(",possible:not-finite\n");
}

static void no_finite_answer_in_rows(void **state)
{
    (void)state;
    struct args args = args_for(&plain, FORMAT_CSV);
    char name[] = "/tmp/holdwater-notes-XXXXXX";
    int file = mkstemp(name);
    static const char rows[] = "x\n2\n0\n";
    assert_int_equal(write(file, rows, sizeof rows - 1), sizeof rows - 1);
    (void)close(file);
    args.rows = name;
    capture_begin();
    int status = rows_run(&args);
    (void)capture_end();
    (void)unlink(name);
    assert_int_equal(status, 1);
    capture_expect("x,y,cautions,problem\n2,0.5,,\n0,,not-finite,refused not-finite\n");
}

/* The same in columns, for blocks that do not begin with 4. */
static bool reciprocals(const struct hw_block *block)
{
    for (size_t row = 0; block->in[0][0] != 4 && block->out[0] && row < block->n; row++) {
        block->out[0][row] = 1 / block->in[0][row];
    }
    return block->in[0][0] != 4;
}

/* Answers a block of two rows, the second of which has no finite answer, with its result wanted or
 * not. */
static void two_rows(bool (*by_block)(const struct hw_block *block), double first, bool wanted)
{
    struct hw_calc calc = plain;
    calc.block = by_block;
    double x[] = {first, 0};
    double y[] = {-7, -7};
    uint64_t raised[] = {0, 0};
    const double *const in[] = {x};
    double *const out[] = {wanted ? y : NULL};
    struct hw_block block = {2, in, out, raised};
    hw_block_run(&calc, &block);
    check(wanted ? y[0] == 1 / first && isnan(y[1]) : y[0] == -7 && y[1] == -7);
    check(raised[0] == 0);
    bool judged = wanted || !by_block || first == 4;
    check(raised[1] == (judged ? UINT64_C(1) << HW_NOTE_NOT_FINITE : 0));
}

/* Whether a row has an answer does not hang on what is wanted of it; of what `block` leaves out
 * nothing is known, so it takes no rows that might have none. */
static void no_finite_answer_in_a_block(void **state)
{
    (void)state;
    two_rows(NULL, 8, true);
    two_rows(NULL, 8, false);
    two_rows(reciprocals, 8, true);
    two_rows(reciprocals, 8, false);
    two_rows(reciprocals, 4, true);
    two_rows(reciprocals, 4, false);
}

/* --- None, and many --------------------------------------------------------------------------- */

static void no_notes_at_all(void **state)
{
    (void)state;
    size_t bits[NOTES_MAX];
    size_t bit = 0;
    char text[CODES_MAX];
    check(notes_of_table(&plain) == 0);
    check(hw_notes_grave(&plain) == UINT64_C(1) << HW_NOTE_NOT_FINITE);
    check(notes_next(&plain, UINT64_MAX, &bit) && bit == HW_NOTE_NOT_FINITE);
    assert_int_equal(notes_gravest_first(&plain, UINT64_MAX, bits), 1);
    notes_codes(&plain, 0, 0, text);
    assert_string_equal(text, "");
    assert_int_equal(answer(&plain, "4", FORMAT_TEXT), 0);
    capture_expect("plain\n  y  0.250  the result\ngiven: x 4\n");
}

static void as_many_as_there_can_be(void **state)
{
    (void)state;
    size_t bits[NOTES_MAX];
    check(notes_of_table(&crowded) == UINT64_MAX >> 1);
    assert_int_equal(notes_gravest_first(&crowded, UINT64_MAX, bits), NOTES_MAX);
    assert_int_equal(bits[0], HW_NOTE_NOT_FINITE);
    for (size_t i = 1; i < NOTES_MAX; i++) {
        assert_int_equal(bits[i], i - 1);
    }
    notes[5].effect = HW_STANDING;
    notes[7].effect = HW_WITHHELD;
    assert_int_equal(notes_gravest_first(&crowded, UINT64_MAX, bits), NOTES_MAX);
    assert_int_equal(bits[0], 7);
    assert_int_equal(bits[1], HW_NOTE_NOT_FINITE);
    assert_int_equal(bits[NOTES_MAX - 1], 5);
    check(notes_between(&crowded, HW_STANDING, HW_STANDING) == UINT64_C(1) << 5);
    check(notes_between(&crowded, HW_REFUSED, HW_WITHHELD) == hw_notes_grave(&crowded));
    char text[CODES_MAX];
    notes_codes(&crowded, 7u << 4, UINT64_C(3) << 10, text);
    assert_string_equal(text, "note-04;note-06;possible:note-10;possible:note-11");
    (void)make_notes(NULL);
}

/* Each of 64 notes is raised at some points and not at others: each has a mark of its own, and none
 * is a digit. */
static void every_note_has_its_letter(void **state)
{
    (void)state;
    assert_int_equal(answer(&crowded, "0:64:1", FORMAT_TEXT), 1);
    capture_expect("\na NO ANSWER not-finite: ");
    char used[NOTES_MAX] = {'a'};
    for (size_t i = 0; i < HW_NOTES; i++) {
        char wanted[32];
        (void)snprintf(wanted, sizeof wanted, " CAUTION %.8s: Text.\n", codes[i]);
        capture_expect(wanted);
        const char *at = strstr(said, wanted);
        char letter = at[-1];
        check(letter > ' ' && letter <= '~' && !(letter >= '0' && letter <= '9'));
        check(!memchr(used, letter, sizeof used));
        used[i + 1] = letter;
    }
    char row[NOTES_MAX + 16];
    (void)snprintf(row, sizeof row, "\n  63  63.0   %.63s\n",
                   used + 1); /* all but the first holds */
    capture_expect(row);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_finite_answer_is_told),
        cmocka_unit_test(no_finite_answer_in_a_sweep),
        cmocka_unit_test(no_finite_end),
        cmocka_unit_test(no_finite_answer_in_rows),
        cmocka_unit_test(no_finite_answer_in_a_block),
        cmocka_unit_test(no_notes_at_all),
        cmocka_unit_test(as_many_as_there_can_be),
        cmocka_unit_test(every_note_has_its_letter),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, make_notes, NULL));
}
