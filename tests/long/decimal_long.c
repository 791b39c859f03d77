/* decimal_long.c - tens of millions of decimal numbers, read and written, against strtod and
 * snprintf. The argument, if any, is the seed. */
#include "engine/decimal.h"

#include <float.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static uint64_t random_state = 23850717;
static long faults;

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

static double random_share(void)
{
    return (double)(random_bits() >> 11) * 0x1p-53;
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

static void fault(void)
{
    if (++faults >= 20) {
        exit(1);
    }
}

static void compare_written(double value, int digits)
{
    char got[HW_DECIMAL_MAX] = "";
    char want[64];
    size_t length = hw_decimal_write(got, value, digits);
    int n = snprintf(want, sizeof want, "%.*g", digits, value + 0.0);
    if (length != (size_t)n || strcmp(got, want) != 0) {
        printf("%.17g to %d digits: %s, not %s\n", value, digits, got, want);
        fault();
    }
}

static void compare_read(const char *text)
{
    double got = 7.25;
    size_t n = strlen(text);
    size_t length = hw_decimal_read(text, n, &got);
    double want = strtod(text, NULL);
    if (length != n || bits_of(got) != bits_of(want)) {
        printf("%s: %.17g, not %.17g\n", text, got, want);
        fault();
    }
}

/* --- Kinds of numbers: each makes the number of one turn --- */

static double any_bits(void)
{
    double value;
    do {
        value = from_bits(random_bits());
    } while (!isfinite(value));
    return value;
}

static double table_number(void)
{
    static const double sizes[] = {1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 1e-1, 1, 10, 1e2, 1e4, 1e7};
    return random_share() * sizes[random_below(11)];
}

static double short_decimal(void)
{
    static const double tens[] = {1, 10, 1e2, 1e3, 1e4, 1e5, 1e6};
    return random_below(100000000) / tens[random_below(7)];
}

/* A decimal ending in 5, or a double beside it. */
static double near_tie(void)
{
    static const int64_t most[] = {10, 100, 1000, 10000, 100000, 1000000, 10000000, 100000000};
    char text[40];
    int64_t mantissa = (int64_t)(random_bits() % (uint64_t)most[random_below(8)]) * 10 + 5;
    snprintf(text, sizeof text, "%llde%d", (long long)mantissa, random_below(32) - 22);
    double value = strtod(text, NULL);
    switch (random_below(3)) {
    case 0:
        return value;
    case 1:
        return nextafter(value, 0);
    default:
        return nextafter(value, DBL_MAX);
    }
}

/* A half, quarter, eighth ...: ties that doubles hold. */
static double exact_fraction(void)
{
    return ldexp((double)random_below(1 << 30), -random_below(40));
}

/* A few steps from a power of ten. */
static double near_power(void)
{
    char text[16];
    snprintf(text, sizeof text, "1e%d", random_below(46) - 20);
    double value = strtod(text, NULL);
    double towards = random_below(2) ? 0 : DBL_MAX;
    for (int steps = random_below(4); steps > 0; steps--) {
        value = nextafter(value, towards);
    }
    return random_below(2) ? value : value * (1 - random_share() * 1e-6);
}

static const struct {
    const char *name;
    double (*make)(void);
} kinds[] = {
    {"any bits", any_bits},
    {"numbers of tables", table_number},
    {"short decimals", short_decimal},
    {"beside decimal ties", near_tie},
    {"exact fractions", exact_fraction},
    {"beside powers of ten", near_power},
};

static long compare_kind(double (*make)(void), long turns)
{
    for (long i = 0; i < turns; i++) {
        double value = make();
        value = i % 2 ? value : -value;
        int few = 1 + (int)(i % 8);
        compare_written(value, few);
        compare_written(value, 6);
        if (i % 8 == 0) {
            compare_written(value, 1 + random_below(HW_DECIMAL_DIGITS_MAX));
        }
        char text[64];
        snprintf(text, sizeof text, "%.*g", i % 4 ? few : 17, value);
        compare_read(text);
    }
    return 2 * turns + (turns + 7) / 8 + turns;
}

static long compare_texts(long turns)
{
    for (long i = 0; i < turns; i++) {
        char digits[32];
        int n = 1 + random_below(i % 8 ? 8 : 30);
        for (int d = 0; d < n; d++) {
            digits[d] = (char)('0' + random_below(10));
        }
        int point = random_below(n + 1);
        char text[64];
        int used = snprintf(text, sizeof text, "%s%.*s.%.*s", i % 4 ? "" : "-", point, digits,
                            n - point, digits + point);
        if (i % 3 == 0) {
            snprintf(text + used, sizeof text - (size_t)used, "e%d",
                     random_below(i % 4 ? 60 : 680) - (i % 4 ? 30 : 340));
        }
        compare_read(text);
    }
    return turns;
}

int main(int argc, char **argv)
{
    if (argc > 1) {
        random_state = strtoull(argv[1], NULL, 10);
    }
    printf("seed %llu\n", (unsigned long long)random_state);
    long total = 0;
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        long n = compare_kind(kinds[i].make, 3000000);
        printf("%-22s %ld compared\n", kinds[i].name, n);
        total += n;
    }
    long n = compare_texts(15000000);
    printf("%-22s %ld compared\n", "texts", n);
    total += n;
    if (faults == 0) {
        printf("%ld checks passed\n", total);
    }
    return faults != 0;
}
