/* test_print.c - numbers for people: digits kept, and rounded to the safe side. */
#include "assert_close.h"
#include "cli/print.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void shown(double value, int digits, int safe, const char *want)
{
    char text[NUMBER_MAX];
    number_text(text, value, digits, safe);
    assert_string_equal(text, want);
    check(strcmp(text, want) == 0);
}

static void as_people_write_them(void **state)
{
    (void)state;
    shown(0, 3, 0, "0.00");
    shown(-0.0, 3, 0, "0.00");
    shown(1234.5, 3, 0, "1234");
    shown(0.040021, 3, 0, "0.0400");
    shown(1e15, 3, 0, "1000000000000000");
    shown(1e16, 3, 0, "1.00e+16");
    shown(1e-7, 3, 0, "1.00e-07");
    shown(9.995, 3, 1, "10.0");
    shown(22.51, 3, 1, "22.6");
    shown(1234.2, 3, 1, "1235");
    shown(22.49, 3, -1, "22.4");
    shown(1234.6, 3, -1, "1234");
    shown(22.5 - 1e-12, 3, -1, "22.5");
}

/* Just below a power of ten no digit is lost. */
static void below_a_power_of_ten(void **state)
{
    (void)state;
    shown(9.995, 3, -1, "9.99");
    shown(9.9999, 3, -1, "9.99");
    shown(0.999866, 3, -1, "0.999");
    shown(99.96, 3, -1, "99.9");
    shown(999.7, 3, -1, "999");
    shown(9999.7, 3, -1, "9999");
    shown(10 - 1e-12, 3, -1, "10.0");
    shown(-9.999, 3, -1, "-10.0");
    shown(-9.999, 3, 1, "-9.99");
    shown(0.0099996, 2, -1, "0.0099");
}

/* With an exponent, too. */
static void tiny_and_huge(void **state)
{
    (void)state;
    shown(3.929075e-8, 3, -1, "3.92e-08");
    shown(3.921e-8, 3, 1, "3.93e-08");
    shown(9.9996e-8, 3, -1, "9.99e-08");
    shown(9.991e-8, 3, 1, "1.00e-07");
    shown(1.2346e17, 3, -1, "1.23e+17");
    shown(1.2351e17, 3, -1, "1.23e+17");
    shown(1.2301e17, 3, 1, "1.24e+17");
    shown(5e-8, 3, -1, "5.00e-08");
}

/* Never on the wrong side by more than noise, and never further than a unit of the last digit asked
 * for. */
static void on_the_safe_side(void **state)
{
    (void)state;
    hw_random_start(20310601);
    for (int i = 0; i < 20000; i++) {
        char text[NUMBER_MAX];
        int digits = 2 + i % 4;
        int exponent = -5 + i % 11;
        double value = hw_random_between(1, 10) * pow(10, exponent);
        double unit = pow(10, exponent - digits + 1);
        if (i % 3 == 0) {
            value = (10 - hw_random_between(0, 1) * pow(10, -(i % 5))) * pow(10, exponent);
        }
        unit = unit < 1 ? unit : 1;
        for (int safe = -1; safe <= 1; safe++) {
            number_text(text, value, digits, safe);
            double read = strtod(text, NULL);
            check(safe >= 0 || read <= value * (1 + 1e-9));
            check(safe <= 0 || read >= value * (1 - 1e-9));
            check(fabs(read - value) <= (safe == 0 ? 0.5 : 1) * unit * (10 + 1e-6) / 10 ||
                  (safe >= 0 && read >= 10 * pow(10, exponent)));
        }
    }
}

/* What is no finite number leaves no old bytes behind. */
static void the_buffer_is_ended(void **state)
{
    (void)state;
    static const double values[] = {(double)INFINITY, -(double)INFINITY, (double)NAN};
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        char text[NUMBER_MAX];
        memset(text, 'x', sizeof text);
        number_digits(text, values[i], 6);
        assert_string_equal(text, "");
        memset(text, 'x', sizeof text);
        number_digits(text, values[i], 17);
        assert_string_equal(text, "");
        memset(text, 'x', sizeof text);
        number_exact(text, values[i]);
        check(memchr(text, '\0', sizeof text) != NULL);
        for (int safe = -1; safe <= 1; safe++) {
            memset(text, 'x', sizeof text);
            number_text(text, values[i], 3, safe);
            check(memchr(text, '\0', sizeof text) != NULL);
            memset(text, 'x', sizeof text);
            number_significant(text, values[i], 3, safe);
            check(memchr(text, '\0', sizeof text) != NULL);
        }
    }
}

/* As it is defined: the first of 15, 16 and 17 digits that reads back. */
static int is_exact(double value)
{
    char want[NUMBER_MAX];
    char got[NUMBER_MAX];
    int digits = 15;
    do {
        (void)snprintf(want, sizeof want, "%.*g", digits, value + 0.0);
    } while (strtod(want, NULL) != value && ++digits <= 17);
    number_exact(got, value);
    if (strcmp(want, got) != 0) {
        print_error("%s, not %s\n", got, want);
    }
    return strcmp(want, got) == 0;
}

static void exact_numbers(void **state)
{
    (void)state;
    static const double values[] = {0,      -0.0,     1,      10,      0.1,     1e5,     1e6,
                                    1e7,    9999999,  1e8,    1e14,    1e15,    1e16,    123456789,
                                    1e-4,   9.5e-5,   1e-5,   1e-15,   1e-16,   1e22,    1e23,
                                    5e-324, 1e300,    2.5,    1.0 / 3, 2.0 / 3, 0.3,     0.1 + 0.2,
                                    8.15,   99999.95, 1234.5, 1e-300,  100.25,  1e15 / 7};
    uint64_t bits = 20310305;
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        check(is_exact(values[i]) && is_exact(-values[i]));
        check(is_exact(nextafter(values[i], 1e308)) && is_exact(nextafter(values[i], -1e308)));
    }
    printf("seed 20310305\n");
    int fine = 1;
    for (int i = 0; i < 60000; i++) {
        bits = bits * UINT64_C(6364136223846793005) + UINT64_C(1442695040888963407);
        double fraction = (double)(bits >> 11) * 0x1p-53;
        fine &= is_exact(fraction) && is_exact(-1000 * fraction);
        fine &= is_exact(ldexp(fraction, (int)(bits & 127) - 64));
        fine &= is_exact((double)(bits >> 40) / 1000) && is_exact((double)(bits >> 20) / 1e8);
    }
    check(fine);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(as_people_write_them), cmocka_unit_test(below_a_power_of_ten),
        cmocka_unit_test(tiny_and_huge),        cmocka_unit_test(on_the_safe_side),
        cmocka_unit_test(the_buffer_is_ended),  cmocka_unit_test(exact_numbers),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
