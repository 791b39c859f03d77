/* test_decimal.c - the decimal reader and writer against strtod and snprintf, bit for bit and byte
 * for byte. Tens of millions more are compared by tests/long/decimal.sh. */
#include "assert_close.h"
#include "engine/decimal.h"
#include "engine/decimal_quick.h"

#include <float.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const uint64_t SEED = 23850717;
static uint64_t random_state;

/* The generator "splitmix64" of Steele, Lea & Flood 2014. */
static uint64_t random_bits(void)
{
    uint64_t z = random_state += UINT64_C(0x9e3779b97f4a7c15);
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

static int random_below(int n)
{
    return (int)(random_bits() % (uint64_t)n);
}

static double from_bits(uint64_t bits)
{
    double value;
    memcpy(&value, &bits, sizeof value);
    return value;
}

static uint64_t bits_of(double value)
{
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    return bits;
}

/* --- Writing --- */

static int is_written(double value, int digits)
{
    char want[64];
    int n = snprintf(want, sizeof want, "%.*g", digits, value + 0.0);
    char got[HW_DECIMAL_MAX + 1];
    memset(got, '#', sizeof got);
    size_t length = hw_decimal_write(got, value, digits);
    int fine = length == (size_t)n && memcmp(got, want, length + 1) == 0;
    if (!fine) {
        print_error("%.17g to %d digits: %.*s, not %s\n", value, digits, (int)length, got, want);
    }
    return fine && got[HW_DECIMAL_MAX] == '#';
}

static void written(double value, int digits)
{
    check(is_written(value, digits));
    check(is_written(-value, digits));
}

/* One check for all the digits, so that the count of checks is not theirs alone. */
static void written_to_all_digits(double value)
{
    int fine = 1;
    for (int digits = 1; digits <= HW_DECIMAL_DIGITS_MAX; digits++) {
        fine &= is_written(value, digits) && is_written(-value, digits);
    }
    check(fine);
}

/* The value and the doubles beside it. */
static void written_with_neighbours(double value)
{
    written_to_all_digits(value);
    written_to_all_digits(nextafter(value, DBL_MAX));
    written_to_all_digits(nextafter(value, 0));
}

static void notable_numbers_are_written(void **state)
{
    (void)state;
    static const double numbers[] = {
        0.0,
        -0.0,
        0.5,
        1.5,
        2.5,
        3.5,
        0.25,
        0.35,
        1234565,
        1234575,
        0.1234565,
        0.1234575,
        123456.5,
        123457.5,
        12345.65,
        9.999995,
        9.9999949999999,
        99999.95,
        999999.5,
        999999.4999,
        0.99999995,
        0.00099999995,
        0.00001,
        0.0001,
        0.00009999995,
        0.000099999949,
        1e6,
        999999,
        1000001,
        100000,
        123456,
        1234567,
        12345678,
        123456789,
        1e15,
        1e16,
        1e17,
        9007199254740993.0,
        1e21,
        1e22,
        1e23,
        0.1,
        0.2,
        0.3,
        1.0 / 3.0,
        2.0 / 3.0,
        25.35,
        8.1,
        34.7,
        0.0123,
        4.35,
        6.02214076e23,
        1e-14,
        1e-15,
        1e-16,
        1e99,
        1e100,
        1e-99,
        1e-100,
        5e-324,
        4.9e-320,
        DBL_MIN,
        DBL_MAX,
        DBL_EPSILON,
        1.7976931348623155e308,
    };
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        written_to_all_digits(numbers[i]);
    }
}

static void powers_are_written(void **state)
{
    (void)state;
    for (int power = -323; power <= 308; power++) {
        char text[16];
        snprintf(text, sizeof text, "1e%d", power);
        double value = strtod(text, NULL);
        written_with_neighbours(value);
    }
    for (int power = -1074; power <= 1023; power++) {
        written_with_neighbours(ldexp(1, power));
    }
}

/* Every power of the table, and those beyond both of its ends, with mantissas close above and below
 * it: a power that is off sends one of them to the wrong side. To all digits; written and read. */
static void the_table_of_powers(void **state)
{
    (void)state;
    static const char *const mantissas[] = {"1",
                                            "1.00000001",
                                            "1.0000005",
                                            "1.00001",
                                            "1.0005",
                                            "1.005",
                                            "1.01",
                                            "1.05",
                                            "1.1",
                                            "1.5",
                                            "2",
                                            "2.5",
                                            "4.9999995",
                                            "5",
                                            "7.5",
                                            "9.5",
                                            "9.9",
                                            "9.95",
                                            "9.99",
                                            "9.995",
                                            "9.9995",
                                            "9.9999",
                                            "9",
                                            "8.5",
                                            "9.99999",
                                            "9.9999995",
                                            "9.999999949",
                                            "9.99999999",
                                            "9.9999999999999991",
                                            "3"};
    int fine = 1;
    for (int power = -20; power <= 26; power++) {
        for (size_t i = 0; i < sizeof mantissas / sizeof *mantissas; i++) {
            char text[40];
            double got = 0;
            (void)snprintf(text, sizeof text, "%se%d", mantissas[i], power);
            double value = strtod(text, NULL);
            fine &= hw_decimal_read(text, strlen(text), &got) == strlen(text) && got == value;
            for (int digits = 1; digits <= HW_DECIMAL_DIGITS_MAX; digits++) {
                fine &= is_written(value, digits) && is_written(-value, digits);
            }
        }
    }
    check(fine);
}

/* Numbers of one digit more than is asked for, ending in 5, at every place of the point: exact ties
 * where they are doubles, and otherwise as near to one as doubles come. */
static void ties_are_written(void **state)
{
    (void)state;
    for (int i = 0; i < 3000; i++) {
        int digits = 1 + i % 15;
        uint64_t most = 1;
        for (int d = 0; d < digits; d++) {
            most *= 10;
        }
        uint64_t mantissa = random_bits() % most * 10 + 5;
        char text[40];
        snprintf(text, sizeof text, "%llue%d", (unsigned long long)mantissa, random_below(34) - 22);
        double value = strtod(text, NULL);
        written(value, digits);
        written(nextafter(value, 0), digits);
        written(nextafter(value, DBL_MAX), digits);
        written((double)mantissa / 16, digits);
    }
}

static void random_numbers_are_written(void **state)
{
    (void)state;
    for (int i = 0; i < 4000; i++) {
        double value = from_bits(random_bits());
        if (isfinite(value)) {
            written_to_all_digits(value);
        }
        written_to_all_digits((double)random_below(10000000) / 1e4);
        written_to_all_digits(ldexp((double)(random_bits() >> 11), random_below(180) - 150));
    }
}

static void what_is_no_number_is_not_written(void **state)
{
    (void)state;
    static const double numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
    char to[HW_DECIMAL_MAX] = "untouched";
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        check(hw_decimal_write(to, numbers[i], 6) == 0);
        check(hw_decimal_write(to, numbers[i], 17) == 0);
    }
    check(hw_decimal_write(to, 2.385, 0) == 0);
    check(hw_decimal_write(to, 2.385, -1) == 0);
    check(hw_decimal_write(to, 2.385, HW_DECIMAL_DIGITS_MAX + 1) == 0);
    check(hw_decimal_write(to, 0, 18) == 0);
    check(strcmp(to, "untouched") == 0);
}

/* --- Reading --- */

/* So many bytes of the text are read, as strtod reads those alone. The text is copied to the
 * end of its memory, so that a sanitizer sees every step beyond it. */
static void read_as(const char *text, size_t length)
{
    size_t n = strlen(text);
    char *exact = malloc(n + 1);
    char *number = malloc(length + 1);
    assert_non_null(exact);
    assert_non_null(number);
    for (size_t i = 0; i < n; i++) {
        exact[1 + i] = text[i];
    }
    memcpy(number, text, length);
    number[length] = '\0';
    double got = 7.25;
    size_t taken = hw_decimal_read(exact + 1, n, &got);
    double want = length > 0 ? strtod(number, NULL) : 7.25;
    free(exact);
    free(number);
    int fine = taken == length && bits_of(got) == bits_of(want);
    if (!fine) {
        print_error("%s: %zu bytes, %.17g, not %zu bytes, %.17g\n", text, taken, got, length, want);
    }
    check(fine);
}

/* The whole text is a number. */
static void read_whole(const char *text)
{
    read_as(text, strlen(text));
}

static void notable_numbers_are_read(void **state)
{
    (void)state;
    static const char *const numbers[] = {
        "0",
        "-0",
        "+0",
        "0.0",
        "-0.0",
        "-0e5",
        "0e999",
        "0e-999",
        "000",
        "00.00",
        ".5",
        "5.",
        "-.5",
        "+5.",
        "1",
        "7",
        "2.385",
        "-2.385",
        "+2.385",
        "8.10",
        "25.35",
        "0.1",
        "0.2",
        "0.3",
        "1e0",
        "1E0",
        "1e+2",
        "1e-2",
        "1e22",
        "1e23",
        "1e-22",
        "1e-23",
        "123e22",
        "123e-22",
        "9007199254740992",
        "9007199254740993",
        "9007199254740994",
        "9007199254740995",
        "9007199254740992e22",
        "9007199254740991e-22",
        "9007199254740993e-22",
        "18446744073709551615",
        "18446744073709551616",
        "18446744073709551617",
        "184467440737095516.16",
        "36893488147419103232",
        "10000000000000000000",
        "99999999999999999999",
        "340282366920938463463374607431768211456",
        "000000000000000000000000000000000000012.5",
        "0.00000000000000000000000000000012345",
        "0.0000000000000000000000001e30",
        "12345678901234567890123456789e-25",
        "0.30000000000000000000000000000000000001",
        "2.50000000000000000000000000000000",
        "0000000000000000001",
        "00000000000000000001",
        "000000000000000000018446744073709551617",
        "1e308",
        "1.7976931348623157e308",
        "1.7976931348623158e308",
        "1.7976931348623159e308",
        "1e309",
        "-1e309",
        "1e400",
        "1e99999",
        "1e-99999",
        "1e999999999999999999999",
        "1e-999999999999999999999",
        "-1e-999999999999999999999",
        "1e4294967296",
        "1e-4294967296",
        "1e18446744073709551617",
        "1e00000000000000000000000000000000000000002",
        "1e-0",
        "2.2250738585072014e-308",
        "2.2250738585072011e-308",
        "2.2250738585072012e-308",
        "5e-324",
        "4.9406564584124654e-324",
        "2.4703282292062327e-324",
        "2.4703282292062328e-324",
        "2e-324",
        "-2e-324",
        "1e-400",
        "8.9255e-321",
        "9007199254740992.5",
        "0.500000000000000166533453693773481063544750213623046875",
        "1.00000000000000011102230246251565404236316680908203125",
        "1.00000000000000011102230246251565404236316680908203124",
        "1.00000000000000011102230246251565404236316680908203126",
    };
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        read_whole(numbers[i]);
    }
}

static void a_number_ends_where_it_ends(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        size_t length;
    } rows[] = {
        {"", 0},      {"+", 0},    {"-", 0},        {".", 0},     {"-.", 0},       {"+-1", 0},
        {"--1", 0},   {"e5", 0},   {".e5", 0},      {"-e", 0},    {"nan", 0},      {"-nan", 0},
        {"inf", 0},   {"+inf", 0}, {"infinity", 0}, {" 1", 0},    {"\t1", 0},      {"\n1", 0},
        {"x1", 0},    {",5", 0},   {"$5", 0},       {"..5", 0},   {"\xd9\xa1", 0}, {"/", 0},
        {":", 0},     {"0x1", 1},  {"-0x1p3", 2},   {"0X", 1},    {"1,5", 1},      {"1 ", 1},
        {"1.2.3", 3}, {"1..2", 2}, {"1e", 1},       {"1e+", 1},   {"1e-", 1},      {"1E+x", 1},
        {"1.e", 2},   {"1.e2", 4}, {".5e1", 4},     {"1e2.5", 3}, {"1e2e3", 3},    {"1e+-2", 1},
        {"8.1mg", 3}, {"2.5e", 3}, {"1ee2", 1},     {"25C", 2},   {"1-2", 1},      {"12/", 2},
        {"12:", 2},   {"1e3:", 3}, {"1e3/", 3},     {"1_000", 1}, {"1'000", 1},    {"3+-0.1", 1},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        read_as(rows[i].text, rows[i].length);
    }
    double value = 7.25;
    check(hw_decimal_read("25.75", 2, &value) == 2 && value == 25);
    check(hw_decimal_read("25.75", 3, &value) == 3 && value == 25);
    check(hw_decimal_read("25.56", 4, &value) == 4 && value == 25.5);
    check(hw_decimal_read("2e31", 3, &value) == 3 && value == 2000);
    check(hw_decimal_read("2e31", 2, &value) == 1 && value == 2);
    check(hw_decimal_read("4\0005", 3, &value) == 1 && value == 4);
    value = 7.25;
    check(hw_decimal_read("25.35", 0, &value) == 0 && value == 7.25);
    check(hw_decimal_read(NULL, 0, &value) == 0 && value == 7.25);
}

/* Numbers around the longest that is read, filled with zeros in front and digits behind. */
static void long_numbers(void **state)
{
    (void)state;
    char text[600];
    for (size_t n = 1; n < sizeof text - 1; n++) {
        size_t length = n <= HW_DECIMAL_READ_MAX ? n : 0;
        memset(text, '0', n);
        text[n] = '\0';
        read_as(text, length);
        text[n - 1] = '7';
        read_as(text, length);
        memset(text, '6', n);
        read_as(text, length);
        if (n > 9) {
            text[0] = '-';
            text[1] = '.';
            memcpy(text + n - 4, "e-31", 4);
            read_as(text, length);
            memset(text + 2, '0', n - 8);
            read_as(text, length);
            memset(text, '0', n);
            memcpy(text, "3e+", 3);
            text[n - 1] = '5';
            read_as(text, length);
        }
    }
}

static void random_decimals_are_read(void **state)
{
    (void)state;
    for (int i = 0; i < 20000; i++) {
        char digits[48];
        int n = 1 + random_below(i % 4 ? 9 : 40);
        for (int d = 0; d < n; d++) {
            digits[d] = (char)('0' + random_below(random_below(3) ? 10 : 1));
        }
        int point = random_below(n + 1);
        char text[80];
        int used =
            snprintf(text, sizeof text, "%s%.*s%s%.*s",
                     i % 3   ? ""
                     : i % 2 ? "-"
                             : "+",
                     point, digits, i % 5 || point == 0 ? "." : "", n - point, digits + point);
        if (i % 7 == 0) {
            snprintf(text + used, sizeof text - (size_t)used, "%c%+d", i % 2 ? 'e' : 'E',
                     random_below(i % 8 ? 60 : 700) - (i % 8 ? 30 : 350));
        }
        read_whole(text);
    }
}

/* Any double written to 17 digits is read back as itself. */
static void random_numbers_come_back(void **state)
{
    (void)state;
    for (int i = 0; i < 20000; i++) {
        double value = from_bits(random_bits());
        char text[HW_DECIMAL_MAX];
        if (isfinite(value)) {
            check(hw_decimal_write(text, value, 17) == strlen(text));
            read_whole(text);
            double back = 0;
            check(hw_decimal_read(text, strlen(text), &back) == strlen(text) &&
                  bits_of(back) == bits_of(value));
            check(hw_decimal_write(text, value, 1 + i % 16) == strlen(text));
            read_whole(text);
        }
    }
}

/* --- Short bare numbers ---------------------------------------------------------------------- */

/* What is read of a short text that stands between other bytes, as the ordinary reader reads it;
 * and whether it had to be read at all. */
static void read_bare(const char *text, size_t n)
{
    char room[3 * HW_QUICK_READ_MAX];
    double want = 7.25;
    size_t digits = 0;
    size_t points = 0;
    for (size_t i = 0; i < n; i++) {
        digits += text[i] >= '0' && text[i] <= '9';
        points += text[i] == '.';
    }
    bool bare = n > 0 && n <= HW_QUICK_READ_MAX && digits + points == n && digits > 0 && points < 2;
    for (int around = 0; around < 4; around++) {
        double got = 7.25;
        char *at = room + HW_QUICK_READ_MAX;
        memset(room, "9.,\xff"[around], sizeof room);
        memcpy(at, text, n);
        check(hw_quick_read(at, at + n, &got) == bare);
        if (bare) {
            check(hw_decimal_read(text, n, &want) == n);
        }
        check(bits_of(got) == bits_of(want));
    }
}

static void short_bare_numbers(void **state)
{
    (void)state;
    static const char *const notable[] = {
        "",         "0",        "9",         ".",        "..",       "5.",       ".5",
        "0.1",      "00000000", "99999999",  "0000000.", ".0000000", ".0000001", "1.2.3",
        "9999999.", "1234.567", "123456789", "-1",       "+1",       "1e5",      " 8",
        "8 ",       "8,1",      "/",         ":",        "1/",       "1:",       "\xb1",
        "1\xae",    "\xff",     "8.1C",      "\r",       "1.\x80",   "1/2",
    };
    for (size_t i = 0; i < sizeof notable / sizeof *notable; i++) {
        read_bare(notable[i], strlen(notable[i]));
    }
    for (int byte = 0; byte < 256; byte++) {
        for (size_t at = 0; at < HW_QUICK_READ_MAX; at++) {
            char text[] = "1234.678";
            text[at] = (char)byte;
            read_bare(text, HW_QUICK_READ_MAX);
            text[HW_QUICK_READ_MAX - 1] = '.';
            read_bare(text + at, HW_QUICK_READ_MAX - at);
        }
    }
}

static void random_bare_numbers(void **state)
{
    (void)state;
    static const char bytes[] = "01234567890123456789012345678901234567890123456789......./:-e,";
    for (int i = 0; i < 200000; i++) {
        char text[HW_QUICK_READ_MAX + 2];
        size_t n = (size_t)random_below(HW_QUICK_READ_MAX + 2);
        for (size_t k = 0; k < n; k++) {
            text[k] = bytes[random_below(sizeof bytes - 1)];
        }
        read_bare(text, n);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(notable_numbers_are_written),
        cmocka_unit_test(powers_are_written),
        cmocka_unit_test(the_table_of_powers),
        cmocka_unit_test(ties_are_written),
        cmocka_unit_test(random_numbers_are_written),
        cmocka_unit_test(what_is_no_number_is_not_written),
        cmocka_unit_test(notable_numbers_are_read),
        cmocka_unit_test(a_number_ends_where_it_ends),
        cmocka_unit_test(long_numbers),
        cmocka_unit_test(random_decimals_are_read),
        cmocka_unit_test(random_numbers_come_back),
        cmocka_unit_test(short_bare_numbers),
        cmocka_unit_test(random_bare_numbers),
    };
    random_state = SEED;
    printf("seed %llu\n", (unsigned long long)SEED);
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
