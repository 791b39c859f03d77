/* test_row_problem.c - every reason code that a row can have is told by `cautions`. */
#include "assert_close.h"
#include "cli/row_problem.h"
#include "engine/problem.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static bool is_told(const char *code)
{
    for (size_t i = 0; row_problems[i].code; i++) {
        if (strcmp(row_problems[i].code, code) == 0) {
            return true;
        }
    }
    return false;
}

/* Rows have no sweeps and are not asked backwards: the codes of those are told where they arise. */
static bool is_of_rows(enum hw_problem problem)
{
    return problem != HW_FINE &&
           !(problem >= HW_PROBLEM_SWEEP_PARTS && problem <= HW_PROBLEM_SOLVE_WORD);
}

static void every_code(void **state)
{
    (void)state;
    for (int i = HW_FINE; i < HW_PROBLEMS; i++) {
        enum hw_problem problem = (enum hw_problem)i;
        if (is_of_rows(problem) && !is_told(hw_problem_code(problem))) {
            fail_msg("%s is not told", hw_problem_code(problem));
        }
    }
    for (size_t i = 0; row_problems[i + 1].code; i++) {
        check(strcmp(row_problems[i].code, row_problems[i + 1].code) < 0);
        check(row_problems[i].text[strlen(row_problems[i].text) - 1] == '.');
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_code)};
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
