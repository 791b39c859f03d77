/* test_decimal_column.c - numbers of a column, against one at a time. */
#include "assert_close.h"
#include "engine/decimal.h"
#include "engine/decimal_column.h"
#include "engine/decimal_quick.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { ROWS = 150 };

/* --- Writing --- */

static void holds(const double *column, size_t n, int digits)
{
    static struct hw_spelt spelt[ROWS];
    hw_column_write(spelt, column, n, digits, ';');
    for (size_t row = 0; row < n; row++) {
        char want[HW_DECIMAL_MAX];
        size_t length = hw_decimal_write(want, column[row], digits);
        check(spelt[row].n == 1 + length && spelt[row].text[0] == ';' &&
              memcmp(spelt[row].text + 1, want, length) == 0);
    }
}

/* Numbers of every size, negative ones, ties, and what is no number, one beside the other. */
static void columns_are_written(void **state)
{
    (void)state;
    static const double odd[] = {0,
                                 -0.0,
                                 (double)NAN,
                                 (double)INFINITY,
                                 -(double)INFINITY,
                                 0.5,
                                 2.5,
                                 1e22,
                                 1e-15,
                                 9.9999995,
                                 99999.95,
                                 1e300,
                                 5e-7,
                                 -8.1,
                                 -12345678.5,
                                 0x1p-49,
                                 0x1p73,
                                 1};
    double column[ROWS];
    hw_random_start(20310309);
    for (int round = 0; round < 40; round++) {
        for (size_t row = 0; row < ROWS; row++) {
            double sized = pow(10, hw_random_between(-18, 25)) * (round % 3 == 0 ? -1 : 1);
            size_t which = (size_t)hw_random_between(0, 3 * sizeof odd / sizeof *odd);
            column[row] = round % 2 == 0 ? hw_random_between(0, 40) : sized;
            column[row] = which < sizeof odd / sizeof *odd ? odd[which] : column[row];
        }
        for (int digits = 1; digits <= HW_DECIMAL_DIGITS_MAX; digits++) {
            holds(column, ROWS, digits);
            holds(column, (size_t)round, digits);
        }
    }
}

/* --- Reading --- */

/* Records of two cells, so many of them; the second one is read. `bad` is the record whose second
 * cell holds something else, or ends otherwise. */
static void reads(size_t n, size_t bad, const char *cell)
{
    char text[ROWS * 32] = {0};
    uint16_t at[2 * ROWS + 1] = {0};
    double want[ROWS];
    double got[ROWS];
    size_t used = 1;
    text[0] = '\n';
    for (size_t row = 0; row < n; row++) {
        char number[16];
        int size = snprintf(number, sizeof number, "%.*f", (int)(row % 4),
                            hw_random_between(0, row % 3 == 0 ? 9 : 999));
        check(hw_decimal_read(number, (size_t)size, &want[row]) == (size_t)size);
        used += (size_t)snprintf(text + used, 32, "x%zu,", row);
        at[2 * row + 1] = (uint16_t)(used - 1);
        used += (size_t)snprintf(text + used, 32, "%s\n", row == bad ? cell : number);
        at[2 * row + 2] = (uint16_t)(used - 1);
    }
    const struct hw_cells cells = {text, at + 1, 2, n, '\n'};
    struct hw_extent extent;
    size_t n_read = hw_column_read(&cells, got, &extent);
    check(n_read == (bad < n ? bad : n));
    for (size_t row = 0; row < n_read; row++) {
        check(memcmp(&got[row], &want[row], sizeof *got) == 0);
        check(extent.least <= want[row] && want[row] <= extent.most);
    }
}

static void columns_are_read(void **state)
{
    (void)state;
    static const char *const cells[] = {"", "x", "1.2.3", "-1", "123456789", " 1", "8:"};
    hw_random_start(20310310);
    for (size_t n = 0; n < ROWS; n++) {
        reads(n, n, "");
        reads(n, n / 2, cells[n % (sizeof cells / sizeof *cells)]);
    }
    const uint16_t at[] = {0, 4, 8};
    const char text[8 + 1 + HW_COLUMN_BEYOND] = "\n1.5,2.5\n";
    const struct hw_cells ended = {text, at, 1, 2, ','};
    double got[2];
    struct hw_extent extent;
    check(hw_column_read(&ended, got, &extent) == 1); /* the second ends otherwise */
    check(extent.least == 1.5 && extent.most == 1.5);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(columns_are_written),
                                       cmocka_unit_test(columns_are_read)};
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
