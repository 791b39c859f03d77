/* test_working.c - what does not fit a working is noticed. */
#include "assert_close.h"
#include "engine/working.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static struct hw_steps steps;

static void a_step_is_kept(void **state)
{
    (void)state;
    steps.n = 0;
    steps.full = false;
    hw_step(&steps, "pka", 9.35, "", "khoo1977", "%.10g + %d", 2.385, 7);
    check(steps.n == 1 && !steps.full);
    check(strcmp(steps.step[0].expression, "2.385 + 7") == 0);
    check(strcmp(steps.step[0].symbol, "pka") == 0 && steps.step[0].value == 9.35);
}

static void too_much_is_noticed(void **state)
{
    (void)state;
    char long_text[HW_EXPRESSION_MAX + 1];
    memset(long_text, '1', sizeof long_text);
    long_text[sizeof long_text - 1] = '\0';
    steps.n = 0;
    steps.full = false;
    hw_step(&steps, "pka", 1, "", "", "%s", long_text);
    check(steps.full);
    steps.full = false;
    long_text[HW_SYMBOL_MAX] = '\0';
    hw_step(&steps, long_text, 1, "", "", "1");
    check(steps.full);
    steps.n = 0;
    steps.full = false;
    for (int i = 0; i < HW_STEPS_MAX; i++) {
        hw_step(&steps, "a", 1, "", "", "1");
    }
    check(!steps.full && steps.n == HW_STEPS_MAX);
    hw_step(&steps, "a", 1, "", "", "1");
    check(steps.full && steps.n == HW_STEPS_MAX);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_step_is_kept),
        cmocka_unit_test(too_much_is_noticed),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
