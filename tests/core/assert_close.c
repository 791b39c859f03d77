/* assert_close.c - comparing doubles in tests. */
#include "assert_close.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

enum { PLACES = 4096 }; /* several times as many as any test program has */

/* The places that have checked something, by open addressing. */
static struct place {
    const char *file;
    int line;
} places[PLACES];
static long checks_run;
static uint64_t random_state = 1;

/* Counts a check, the first time at its place. */
static void count_check(const char *file, int line)
{
    size_t at = (size_t)line % PLACES;
    while (places[at].file && (places[at].line != line || places[at].file != file)) {
        at = (at + 1) % PLACES;
    }
    checks_run += places[at].file ? 0 : 1;
    places[at] = (struct place){file, line};
}

int hw_is_close(double got, double want, double absolute, double relative)
{
    if (!isfinite(got) || !isfinite(want) || !(absolute >= 0) || !(relative >= 0)) {
        return 0;
    }
    double off = fabs(got - want);
    return off <= absolute || off <= relative * fabs(want);
}

void hw_assert_close(double got, double want, double absolute, double relative, const char *what,
                     const char *file, int line)
{
    count_check(file, line);
    if (!hw_is_close(got, want, absolute, relative)) {
        print_error("%s is %.17g, not %.17g (off by %.3g; allowed %.3g, or %.3g of it)\n", what,
                    got, want, got - want, absolute, relative);
        _fail(file, line);
    }
}

void hw_assert_no_answer(double got, const char *what, const char *file, int line)
{
    count_check(file, line);
    if (!isnan(got)) {
        print_error("%s is %.17g, not NaN\n", what, got);
        _fail(file, line);
    }
}

void hw_assert_status(int got, int want, const char *what, const char *file, int line)
{
    count_check(file, line);
    if (got != want) {
        print_error("%s is %d, not %d\n", what, got, want);
        _fail(file, line);
    }
}

void hw_check(int holds, const char *what, const char *file, int line)
{
    count_check(file, line);
    if (!holds) {
        print_error("does not hold: %s\n", what);
        _fail(file, line);
    }
}

int hw_report_checks(int failed)
{
    if (failed == 0) {
        printf("%ld checks passed\n", checks_run);
    }
    return failed;
}

void hw_random_start(unsigned long seed)
{
    printf("seed %lu\n", seed);
    random_state = seed;
}

/* The generator "splitmix64" of Steele, Lea & Flood 2014. */
double hw_random_between(double low, double high)
{
    random_state += UINT64_C(0x9e3779b97f4a7c15);
    uint64_t z = random_state;
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    z ^= z >> 31;
    return low + (high - low) * ((double)(z >> 11) * 0x1p-53);
}
