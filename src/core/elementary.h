/* elementary.h - exponentials and logarithms that give the same bits everywhere.
 *
 * The results of libm differ in the last bits from one C library to the next, and so would those
 * of the program. These functions use only + - * / of IEEE doubles, rounded to nearest, and moves
 * of bits, each of which has one result; they are compiled without contraction of a * b + c.
 *
 * Error in units in the last place. "Found" is the largest at 30 million random points a line,
 * against 64-bit significands; "checked" is what the tables and oracles among the checks allow,
 * against 50 digits and more.
 *
 *                                       found   checked
 *     hw_exp10    |x| <= 20             1.32    1.35
 *     hw_exp10    |x| <= 300            1.31    1.35
 *     hw_exp      |x| <= 20             0.97    1.00
 *     hw_exp      |x| <= 700            0.97    1.00
 *     hw_log      any positive number   0.94    0.95
 *     hw_log10    any positive number   0.89    0.90
 *
 * Outside the ranges named at each function the result is NaN; there is no overflow, no underflow
 * and no signal of either. What the core asks of them lies within -20 to 20 for the exponentials.
 */
#ifndef HOLDWATER_ELEMENTARY_H
#define HOLDWATER_ELEMENTARY_H

#include "core/no_answer.h"

#include <float.h>
#include <stdint.h>
#include <string.h>

/* Wider registers, as of the x87, round twice: other digits, and equal numbers that differ. */
#if FLT_EVAL_METHOD < 0 || FLT_EVAL_METHOD > 1
#error "double arithmetic is not in double: build with -msse2 -mfpmath=sse"
#endif

#define HW_EXP10_LIMIT 300.0
#define HW_EXP_LIMIT   700.0

static inline uint64_t hw_bits_of(double x)
{
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    return bits;
}

static inline double hw_double_of(uint64_t bits)
{
    double x;
    memcpy(&x, &bits, sizeof x);
    return x;
}

/* Adding and taking away 1.5 x 2^52 rounds to a whole number, and leaves it in the low bits. */
static const double hw_rounder = 0x1.8p52;

/* 2^k exp(y), |y| <= 0.35: the Taylor series to the 13th degree, cut off below 1e-17 of the
 * result. k is in the low bits of `rounded`, which is k + hw_rounder; 2^k is a normal number. */
static inline double hw_scaled_exp(double y, double rounded)
{
    double p = 1.0 / 6227020800.0; /* the inverse factorials, 13! to 2! */
    p = 1.0 / 479001600 + y * p;
    p = 1.0 / 39916800 + y * p;
    p = 1.0 / 3628800 + y * p;
    p = 1.0 / 362880 + y * p;
    p = 1.0 / 40320 + y * p;
    p = 1.0 / 5040 + y * p;
    p = 1.0 / 720 + y * p;
    p = 1.0 / 120 + y * p;
    p = 1.0 / 24 + y * p;
    p = 1.0 / 6 + y * p;
    p = 1.0 / 2 + y * p;
    double power = hw_double_of((hw_bits_of(rounded) + 1023) << 52);
    return (1.0 + (y + y * y * p)) * power;
}

/* 10^x for |x| <= HW_EXP10_LIMIT. With k the whole number nearest to x log2(10) and
 * r = x - k log10(2), 10^x = 2^k exp(r ln 10). */
static inline double hw_exp10_within(double x)
{
    const double log2_10 = 0x1.a934f0979a371p+1;
    const double log10_2_high = 0x1.34413509f6000p-2; /* 13 low bits clear: k times it is exact */
    const double log10_2_low = 0x1.9fef311f12b36p-42;
    const double ln_10_high = 0x1.26bb1bbb55516p+1;
    const double ln_10_low = -0x1.f48ad494ea3e9p-53;
    double rounded = x * log2_10 + hw_rounder;
    double k = rounded - hw_rounder;
    double r = (x - k * log10_2_high) - k * log10_2_low;
    return hw_scaled_exp(r * ln_10_high + r * ln_10_low, rounded);
}

/* The same, and NaN for any other x. */
static inline double hw_exp10(double x)
{
    double result = hw_exp10_within(x);
    return x >= -HW_EXP10_LIMIT && x <= HW_EXP10_LIMIT ? result : HW_NO_ANSWER;
}

/* e^x for |x| <= HW_EXP_LIMIT, else NaN. The same with k nearest to x log2(e). */
static inline double hw_exp(double x)
{
    const double log2_e = 0x1.71547652b82fep+0;
    const double ln_2_high = 0x1.62e42fee00000p-1; /* 21 low bits clear: k times it is exact */
    const double ln_2_low = 0x1.a39ef35793c76p-33;
    double rounded = x * log2_e + hw_rounder;
    double k = rounded - hw_rounder;
    double result = hw_scaled_exp((x - k * ln_2_high) - k * ln_2_low, rounded);
    return x >= -HW_EXP_LIMIT && x <= HW_EXP_LIMIT ? result : HW_NO_ANSWER;
}

/* Of a positive finite x = 2^k m with m from sqrt(1/2) to sqrt(2): k, and log(m) as the sum of
 * `high`, which is m - 1 exactly, and `low`. With s = (m - 1) / (m + 1),
 * log(m) = 2 (s + s^3/3 + s^5/5 + ...), cut off below 1e-18 of it. */
struct hw_log_parts {
    double k, high, low;
};

static inline struct hw_log_parts hw_log_split(double x)
{
    const uint64_t sqrt_half = 0x3fe6a09e667f3bcd;
    int subnormal = x < 0x1p-1022;
    uint64_t bits = hw_bits_of(subnormal ? x * 0x1p54 : x) + (0x3ff0000000000000 - sqrt_half);
    double m = hw_double_of((bits & 0x000fffffffffffff) + sqrt_half);
    double f = m - 1.0;
    double s = f / (m + 1.0);
    double z = s * s;
    double p = 2.0 / 21;
    p = 2.0 / 19 + z * p;
    p = 2.0 / 17 + z * p;
    p = 2.0 / 15 + z * p;
    p = 2.0 / 13 + z * p;
    p = 2.0 / 11 + z * p;
    p = 2.0 / 9 + z * p;
    p = 2.0 / 7 + z * p;
    p = 2.0 / 5 + z * p;
    p = 2.0 / 3 + z * p;
    double half = 0.5 * f * f;
    /* 2 s = f - s f, and s f = f^2/2 - s f^2/2. */
    struct hw_log_parts parts = {(double)((int)(bits >> 52) - 1023 - (subnormal ? 54 : 0)), f,
                                 s * (half + z * p) - half};
    return parts;
}

/* ln(x) for a positive finite x, else NaN. */
static inline double hw_log(double x)
{
    const double ln_2_high = 0x1.62e42fee00000p-1;
    const double ln_2_low = 0x1.a39ef35793c76p-33;
    struct hw_log_parts of_x = hw_log_split(x);
    double result = of_x.k * ln_2_high + (of_x.high + (of_x.low + of_x.k * ln_2_low));
    return x > 0 && x < HUGE_VAL ? result : HW_NO_ANSWER;
}

/* log10(x) for a positive finite x, else NaN. */
static inline double hw_log10(double x)
{
    const double log10_2_high = 0x1.34413509f6000p-2;
    const double log10_2_low = 0x1.9fef311f12b36p-42;
    const double log10_e_high = 0x1.bcb7b15200000p-2; /* 21 low bits clear */
    const double log10_e_low = 0x1.b9438ca9aadd5p-36;
    struct hw_log_parts of_x = hw_log_split(x);
    /* ln(m) in two parts, the first of 21 bits, so that its product with log10_e_high is exact. */
    double high = hw_double_of(hw_bits_of(of_x.high + of_x.low) & 0xffffffff00000000);
    double low = (of_x.high - high) + of_x.low;
    double tail = (high + low) * log10_e_low + low * log10_e_high + of_x.k * log10_2_low;
    double result = of_x.k * log10_2_high + (high * log10_e_high + tail);
    return x > 0 && x < HUGE_VAL ? result : HW_NO_ANSWER;
}

#endif
