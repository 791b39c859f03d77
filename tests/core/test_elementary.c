/* test_elementary.c - the project's own exponentials and logarithms. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "core/elementary.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static void exact_values(void **state)
{
    (void)state;
    assert_close(hw_exp10(0), 1, 0, 0);
    assert_close(hw_exp(0), 1, 0, 0);
    assert_close(hw_log(1), 0, 0, 0);
    assert_close(hw_log10(1), 0, 0, 0);
    assert_close(hw_exp10(-0.0), 1, 0, 0);
    for (int n = 1; n <= 22; n++) {
        double power = 1;
        for (int i = 0; i < n; i++) {
            power *= 10; /* exact up to 10^22 */
        }
        assert_close(hw_exp10(n), power, 0, 2.9e-16);
        assert_close(hw_log10(power), n, 0, 1.8e-16);
    }
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    check(isnormal(hw_exp10(HW_EXP10_LIMIT)));
    check(isnormal(hw_exp10(-HW_EXP10_LIMIT)));
    check(isnormal(hw_exp(HW_EXP_LIMIT)));
    check(isnormal(hw_exp(-HW_EXP_LIMIT)));
    assert_no_answer(hw_exp10(nextafter(HW_EXP10_LIMIT, 999)));
    assert_no_answer(hw_exp10(nextafter(-HW_EXP10_LIMIT, -999)));
    assert_no_answer(hw_exp10(300.001)); /* short of the largest double, as far as is promised */
    assert_no_answer(hw_exp(nextafter(HW_EXP_LIMIT, 999)));
    assert_no_answer(hw_exp(nextafter(-HW_EXP_LIMIT, -999)));
    assert_no_answer(hw_log(0));
    assert_no_answer(hw_log(-0.0));
    assert_no_answer(hw_log(-2.385));
    assert_no_answer(hw_log10(0));
    assert_no_answer(hw_log10(-0.0));
    assert_no_answer(hw_log10(-2.385));
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        assert_no_answer(hw_exp10(not_numbers[i]));
        assert_no_answer(hw_exp(not_numbers[i]));
        assert_no_answer(hw_log(not_numbers[i]));
        assert_no_answer(hw_log10(not_numbers[i]));
    }
    /* The smallest and the largest numbers there are: -1074 ln 2 and 1024 ln 2. */
    assert_close(hw_log(0x1p-1074), -744.44007192138126231, 0, 1.2e-16);
    assert_close(hw_log(0x1.fffffffffffffp+1023), 709.78271289338399673, 0, 1.2e-16);
    assert_close(hw_log10(0x1p-1074), -323.30621534311580366, 0, 1.8e-16);
    assert_close(hw_log10(0x1.fffffffffffffp+1023), 308.25471555991674385, 0, 1.8e-16);
    assert_close(hw_log(0x1p-1022), -708.39641853226410622, 0, 1.7e-16);
}

static void they_undo_each_other(void **state)
{
    (void)state;
    hw_random_start(20310420);
    for (int i = 0; i < 20000; i++) {
        double x = hw_random_between(-20, 20);
        assert_close(hw_log10(hw_exp10(x)), x, 2e-16, 3e-16);
        assert_close(hw_log(hw_exp(x)), x, 3e-16, 3e-16);
        assert_close(hw_exp10(x) * hw_exp10(-x), 1, 8e-16, 0);
    }
}

/* No step back at the seams, where k and the power of two change. */
static void rising_everywhere(void **state)
{
    (void)state;
    for (int k = -60; k <= 60; k++) {
        double seam = (k + 0.5) * 0.30102999566398120;
        double x = seam - 1e-14;
        double before = hw_exp10(x);
        for (int i = 0; i < 40; i++) {
            x += 5e-16 * fmax(1, fabs(seam));
            double now = hw_exp10(x);
            check(now >= before * (1 - 4e-16));
            before = now;
        }
    }
    double before = -1e9;
    for (double x = 1.0 / 3; x < 3; x += 1.0 / 4096) {
        check(hw_log(x) > before);
        before = hw_log(x);
    }
}

/* Against libm, which is another hand's work; its own error adds one unit in the last place. */
static void near_libm(void **state)
{
    (void)state;
    hw_random_start(20310421);
    for (int i = 0; i < 20000; i++) {
        double x = hw_random_between(-300, 300);
        assert_close(hw_exp10(x), pow(10, x), 0, 6e-16);
        assert_close(hw_exp(2 * x), exp(2 * x), 0, 6e-16);
        double y = pow(10, x);
        assert_close(hw_log(y), log(y), 0, 5e-16);
        assert_close(hw_log10(y), log10(y), 0, 5e-16);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(exact_values),
        cmocka_unit_test(ends_of_the_ranges),
        cmocka_unit_test(they_undo_each_other),
        cmocka_unit_test(rising_everywhere),
        cmocka_unit_test(near_libm),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
