/* test_pour.c - how an amount is measured. */
#include "assert_close.h"
#include "cli/pour.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const struct {
    double amount;
    int safe;
    const char *text;
} rows[] = {
    {7.2, -1, "7.2 mL in a 10 mL syringe"},
    {0.6 * 12, -1, "7.2 mL in a 10 mL syringe"},
    {7.2 - 1e-12, -1, "7.2 mL in a 10 mL syringe"},
    {7.2 + 1e-12, 1, "7.2 mL in a 10 mL syringe"},
    {7.19, -1, "7.0 mL in a 10 mL syringe"},
    {7.19, 1, "7.2 mL in a 10 mL syringe"},
    {7.19, 0, "7.2 mL in a 10 mL syringe"},
    {7.09, 0, "7.0 mL in a 10 mL syringe"},
    {0.05, -1, "0.05 mL in a 1 mL syringe"},
    {0.049, 0, "too little for a syringe: dilute the stock"},
    {0.049, 1, "too little for a syringe: dilute the stock"},
    {0.4771, -1, "0.47 mL in a 1 mL syringe"},
    {0.4771, 1, "0.48 mL in a 1 mL syringe"},
    {0.999, 1, "1.00 mL in a 1 mL syringe"},
    {1, -1, "1.00 mL in a 1 mL syringe"},
    {1.378, -1, "1 + 0.37 mL in a 1 mL syringe"},
    {2, -1, "2.0 mL in a 3 mL syringe"},
    {2.385, -1, "2.3 mL in a 3 mL syringe"},
    {3.57, -1, "3 + 0.5 mL in a 3 mL syringe"},
    {4.5, -1, "4.4 mL in a 5 mL syringe"},
    {10, -1, "10.0 mL in a 10 mL syringe"},
    {13.39, -1, "10 + 3.2 mL in a 10 mL syringe"},
    {20, -1, "20 mL in a 20 mL syringe"},
    {41.9, -1, "41 mL in a 60 mL syringe"},
    {60, 1, "60 mL in a 60 mL syringe"},
    {5.94, -1, "5.8 mL in a 10 mL syringe"},
    {14.4, -1, "10 + 4.4 mL in a 10 mL syringe"},
    {60.5, -1, "60 mL in a 60 mL syringe"},
    {60.5, 1, "60 + 1 mL in a 60 mL syringe"},
    {99.9, 1, "60 + 40 mL in a 60 mL syringe"},
    {100, -1, "100 mL in a cylinder"},
    {150.3, 1, "152 mL in a cylinder"},
    {440, 1, "440 mL in a cylinder"},
    {600, -1, "600 mL in a cylinder"},
    {609, -1, "600 mL in a cylinder"},
    {601, 1, "610 mL in a cylinder"},
    {1049, -1, "1000 mL in a jug"},
    {5e6, -1, "5000000 mL in a bucket with marks"},
    {0, -1, ""},
    {-3, 0, ""},
    {(double)NAN, 0, ""},
    {(double)INFINITY, 0, ""},
};

static void texts(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        char text[POUR_TEXT];
        double poured = pour_text(rows[i].amount, rows[i].safe, text);
        assert_string_equal(text, rows[i].text);
        check(isnan(poured) == (strstr(text, " in a ") == NULL));
        check(strlen(text) < POUR_TEXT);
    }
}

/* What is drawn is never on the wrong side, and never off by more than 1/20 from 0.2 mL up. */
static void never_on_the_wrong_side(void **state)
{
    (void)state;
    hw_random_start(20310411);
    for (int i = 0; i < 20000; i++) {
        double amount = pow(10, hw_random_between(-1.3, 5));
        for (int safe = -1; safe <= 1; safe++) {
            char text[POUR_TEXT];
            double drawn = pour_text(amount, safe, text);
            char *end;
            double shown = strtod(text, &end);
            shown += strncmp(end, " + ", 3) == 0 ? strtod(end + 3, NULL) : 0;
            check(fabs(shown - drawn) <= 1e-8 * amount);
            double mark = amount < 0.2 ? 0.01 : amount / 20;
            check(fabs(drawn - amount) <= mark * (safe == 0 ? 0.5 : 1) + 1e-8 * amount);
            check(safe >= 0 || drawn <= amount * (1 + 1e-8));
            check(safe <= 0 || drawn >= amount * (1 - 1e-8));
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(texts),
        cmocka_unit_test(never_on_the_wrong_side),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
