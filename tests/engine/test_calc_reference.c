/* test_calc_reference.c - the rows of tests/reference/calc_*.csv: whole calculations against
 * outside values. Columns: function,inputs,result,expected,abs,rel,source,how. The result `status`
 * is the calculation's status, or -9 when the question itself must be refused. */
#include "ask.h"
#include "assert_close.h"

#include <glob.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum { FUNCTION, INPUTS, RESULT, EXPECTED, ABS, REL, SOURCE, HOW, COLUMNS, ASKED_WRONGLY = -9 };

static size_t rows_run;

/* Splits one record in place; quotes around a field are taken off. Returns the number of fields. */
static size_t split(char *line, char *field[COLUMNS])
{
    size_t n = 0;
    char *to = line;
    char *from = line;
    bool quoted = false;
    field[n++] = to;
    for (; *from != '\0' && *from != '\n'; from++) {
        if (*from == '"') {
            quoted = !quoted;
        } else if (*from == ',' && !quoted) {
            *to++ = '\0';
            if (n < COLUMNS) {
                field[n] = to;
            }
            n++;
        } else {
            *to++ = *from;
        }
    }
    *to = '\0';
    return n;
}

static double number_of(const char *text)
{
    char *end = NULL;
    double value = strtod(text, &end);
    if (end == text || *end != '\0') {
        fail_msg("'%s' is not a number", text);
    }
    return value;
}

/* The value of the row's result; NaN when there is none. */
static double value_of(char *field[COLUMNS])
{
    const struct hw_calc *calc = find_calc(field[FUNCTION]);
    struct hw_question question;
    struct hw_answer answer;
    size_t which = 0;
    if (!calc) {
        fail_msg("no calculation '%s'", field[FUNCTION]);
        return NAN;
    }
    bool settled = ask_settle(calc, field[INPUTS], &question, &which) == HW_FINE;
    if (settled) {
        hw_question_answer(&question, &answer);
    }
    if (strcmp(field[RESULT], "status") == 0) {
        return settled ? answer.status : ASKED_WRONGLY;
    }
    return settled ? result_of(calc, &answer, field[RESULT]) : (double)NAN;
}

static size_t run_file(const char *name)
{
    char line[4096];
    size_t number = 0;
    size_t failed = 0;
    FILE *file = fopen(name, "r");
    assert_non_null(file);
    while (fgets(line, sizeof line, file)) {
        char *field[COLUMNS];
        number++;
        size_t n = split(line, field);
        if (n != COLUMNS) {
            fail_msg("%s:%zu: %zu fields", name, number, n);
        }
        if (number == 1) {
            assert_string_equal(field[EXPECTED], "expected");
            continue;
        }
        double got = value_of(field);
        double want = number_of(field[EXPECTED]);
        double allowed = fmax(number_of(field[ABS]), number_of(field[REL]) * fabs(want));
        rows_run++;
        if (!(fabs(got - want) <= allowed)) {
            failed++;
            print_error("%s:%zu: %s %s %s: got %.17g, expected %.17g +- %.3g (%s)\n", name, number,
                        field[FUNCTION], field[INPUTS], field[RESULT], got, want, allowed,
                        field[SOURCE]);
        }
    }
    (void)fclose(file);
    check(number > 1);
    return failed;
}

static void all_rows(void **state)
{
    (void)state;
    glob_t files;
    size_t failed = 0;
    assert_int_equal(glob("tests/reference/calc_*.csv", 0, NULL, &files), 0);
    for (size_t i = 0; i < files.gl_pathc; i++) {
        failed += run_file(files.gl_pathv[i]);
    }
    globfree(&files);
    assert_int_equal(failed, 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(all_rows)};
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    printf("%zu checks passed\n%zu reference rows\n", failed ? (size_t)0 : rows_run, rows_run);
    return failed;
}
