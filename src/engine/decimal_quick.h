/* decimal_quick.h - the short cuts of decimal.c for the numbers that most rows hold, as bodies that
 * a loop over rows can take in whole. What they decline is for decimal.h.
 *
 * The proofs take doubles that are rounded once, to nearest: so a machine that computes in a wider
 * format is given no short cut, and nothing here ever changes the rounding mode. */
#ifndef HW_DECIMAL_QUICK_H
#define HW_DECIMAL_QUICK_H
#include "engine/eight.h"

#include <float.h>
#include <stdbool.h>
#include <stddef.h>

enum {
    HW_ROUNDED_ONCE = FLT_EVAL_METHOD == 0 || FLT_EVAL_METHOD == 1,
    HW_POWER_MIN = -15,     /* the first of the powers below */
    HW_POWER_MAX = 22,      /* the last: 10^22 = 2^22 5^22, and 5^22 < 2^53, so it is a double */
    HW_QUICK_READ_MAX = 8,  /* the longest text that is read, in bytes */
    HW_QUICK_DIGITS_MAX = 8 /* the most that are written without snprintf */
};

/* The nearest doubles: exactly the powers of ten from 10^0 on. */
extern const double hw_powers[HW_POWER_MAX - HW_POWER_MIN + 1];

/* The digits of a number below 100 as two bytes, the first in the low one. */
extern const uint16_t hw_pairs[100];

static inline double hw_ten_to(int power)
{
    return hw_powers[power - HW_POWER_MIN];
}

/* --- Reading --- */

/* The number that eight digits are, the first in the lowest byte: pairs, then fours, then all, each
 * step side by side. */
static inline uint32_t hw_join_digits(uint64_t digits)
{
    uint64_t pairs = (digits * 10 + (digits >> 8)) & UINT64_C(0x00ff00ff00ff00ff);
    uint64_t fours = pairs * ((100 << 16) + 1) >> 16 & UINT64_C(0x0000ffff0000ffff);
    return (uint32_t)(fours * ((UINT64_C(10000) << 32) + 1) >> 32);
}

/* By the place of a point among eight digits: the bytes before it and behind it, and the power of
 * ten that they are divided by. */
struct hw_splits {
    uint64_t before[HW_QUICK_READ_MAX], behind[HW_QUICK_READ_MAX];
    double power[HW_QUICK_READ_MAX];
};

extern const struct hw_splits hw_splits;

/* Reads a text that is nothing but a short number: digits, and a point before, behind or between
 * them or none.
 *
 * Given
 *   text      HW_QUICK_READ_MAX bytes of it can be read, whatever follows the text
 *   end       the byte behind the text
 * Returned
 *   value     as hw_decimal_read of decimal.h; untouched when the answer is false
 * Function value
 *   False for any other text, and for one longer than HW_QUICK_READ_MAX: it may be a number still.
 */
static inline bool hw_quick_read(const char *text, const char *end, double *value)
{
    /* The text becomes the end of eight digits: zeros before it, and what stands before a point
     * moved up over it. Then it is Clinger's short cut: see read_fast in decimal.c. */
    const size_t minus_n = (size_t)(text - end);
    if (!HW_ROUNDED_ONCE || minus_n + HW_QUICK_READ_MAX >= HW_QUICK_READ_MAX) {
        return false;
    }
    double power = 1;
    uint64_t digits = (hw_eight_load(text) ^ HW_EIGHT('0')) << 8 * minus_n % 64;
    /* A bit that points have and digits do not. The last byte with it must be a point; another
     * one, before it, is no digit. */
    uint64_t points = digits & HW_EIGHT(0x10);
    if (points != 0) {
        unsigned last = (63 ^ (unsigned)__builtin_clzll(points)) / 8;
        if (end[(int)last - HW_QUICK_READ_MAX] != '.' || minus_n == (size_t)-1) {
            return false;
        }
        digits = (digits & hw_splits.behind[last]) | (digits & hw_splits.before[last]) << 8;
        power = hw_splits.power[last];
    }
    if ((((digits + HW_EIGHT(0x80 - 10)) | digits) & HW_EIGHT(0x80)) != 0) {
        return false;
    }
    *value = hw_join_digits(digits) / power;
    return true;
}

/* --- Writing --- */

static inline uint64_t hw_quick_bits(double x)
{
    uint64_t bits;
    memcpy(&bits, &x, sizeof bits);
    return bits;
}

/* The power of ten that a begins with, for 1e-15 <= a < 1e22: the last of `hw_powers` not above a.
 * For 2^b <= a < 2^(b+1) that is b log10(2) rounded down, or one more. The whole-number form of it
 * holds for |b| <= 80: 78913 / 2^18 is log10(2) less 8e-7, and no 2^b up to there is so near to a
 * power of ten that 80 x 8e-7 in the logarithm matters (10^3 < 2^10 is the nearest: 0.01). */
static inline int hw_power_of(double a)
{
    int32_t b = (int32_t)(hw_quick_bits(a) >> 52) - 1023;
    int32_t low = ((b * 78913 + (64 << 18)) >> 18) - 64;
    return low + (a >= hw_ten_to(low + 1));
}

/* A number as it is written: its sign, eight digits, filled with zeros, and the power of ten of the
 * first. */
struct hw_rounded {
    uint32_t eight;
    int16_t power;
    bool negative;
};

/* Rounds a number to so many digits. False, and eight 0, for more digits than HW_QUICK_DIGITS_MAX,
 * for what is very large or small, for 0, which begins with no digit, and when it cannot be told
 * which way to round.
 *
 * Why this is exact. Let a be the size, D the digits, x the power found, t = a 10^(D-1-x) the true number to be
 * rounded to a whole one, and s what is computed for it.
 *
 * 1. |D-1-x| <= 22, so the power is a double, and s is t rounded once, to the nearest double. Such
 *    rounding keeps order: for every double h, t < h gives s <= h, and t > h gives s >= h.
 * 2. s <= 10^8 by the choice of x, so every half h near it is a double. Hence s > h only if t > h,
 *    and s < h only if t < h: unless s is a half itself, s and t round to the same whole number,
 *    with no error to be bounded. When it is one, t may be a tie or lie on either side: no answer.
 * 3. Adding 1.5 x 2^52 rounds s to the nearest whole number, which is left in the low bits of the
 *    sum. Taking it away gives that number, and what s is off it is exact, being no finer than s.
 * 4. Powers of ten below 10^0 are not doubles, so x may be one too high, for the one double a that
 *    is nearest to 10^x and below it. Here t rounds to 10^(D-1): one and zeros. printf rounds the
 *    tenfold of t, which lies less than 10^8 2^-53 below 10^D, to 10^D: one and zeros as well. x is
 *    never too low: a double not below 10^(x+1) is not below the double nearest to it.
 * 5. When s rounds up to 10^D, a rounds to the next power of ten, and so it does in printf. */
static inline bool hw_quick_round(double value, int digits, struct hw_rounded *rounded)
{
    static const uint32_t fill[HW_QUICK_DIGITS_MAX + 1] = {0,    10000000, 1000000, 100000, 10000,
                                                           1000, 100,      10,      1};
    const double least = 1e-15;
    const double beyond = 1e22;
    const double rounder = 0x1.8p52;
    const double half = 0.5;
    uint64_t bits = hw_quick_bits(value) & UINT64_MAX >> 1;
    rounded->eight = 0;
    /* doubles of one sign are in the order of their bits */
    bool in_range = bits - hw_quick_bits(least) < hw_quick_bits(beyond) - hw_quick_bits(least);
    if (!HW_ROUNDED_ONCE || !in_range || digits < 1 || digits > HW_QUICK_DIGITS_MAX) {
        return false;
    }
    double a;
    memcpy(&a, &bits, sizeof a);
    int x = hw_power_of(a);
    int scale = digits - 1 - x;
    double s = scale >= 0 ? a * hw_ten_to(scale) : a / hw_ten_to(-scale);
    double sum = s + rounder;
    double off = s - (sum - rounder);
    if ((hw_quick_bits(off) ^ hw_quick_bits(half)) << 1 == 0) {
        return false;
    }
    uint32_t whole = (uint32_t)hw_quick_bits(sum) * fill[digits];
    bool carried = whole == 100000000;
    rounded->eight = carried ? 10000000 : whole;
    rounded->power = (int16_t)(x + carried);
    rounded->negative = hw_quick_bits(value) >> 63 != 0;
    return true;
}

/* Eight digits as the bytes of a word, the first in the lowest byte, two at a time. They are parted
 * side by side, which makes the way from the number to the word short. */
static inline uint64_t hw_spread_digits(uint32_t eight)
{
    uint32_t two = eight / 1000000;
    uint32_t four = eight / 10000;
    uint32_t six = eight / 100;
    return hw_pairs[two] | (uint64_t)hw_pairs[four - 100 * two] << 16 |
           (uint64_t)hw_pairs[six - 100 * four] << 32 | (uint64_t)hw_pairs[eight - 100 * six] << 48;
}

/* Where the last digit that is not 0 ends; there is one. gcc and clang both count zero bits, and a
 * search that branches would gamble on every number. */
static inline size_t hw_last_digit(uint64_t digits)
{
    return HW_QUICK_DIGITS_MAX - (size_t)__builtin_clzll(digits) / 8;
}

/* Puts digits with a point behind the first `whole` of them, without zeros behind the point. All
 * are stored twice, and the length tells what counts: cheaper than to ask for each digit. */
static inline size_t hw_put_with_point(char *to, uint64_t digits, size_t whole)
{
    size_t last = hw_last_digit(digits);
    uint64_t word = digits + HW_EIGHT('0');
    hw_eight_store(to, word);
    to[whole] = '.';
    hw_eight_store(to + whole + 1, word >> (8 * (whole - 1)) >> 8);
    return last > whole ? last + 1 : whole;
}

/* Puts the digits as %g does: from 10^-4 up to as many whole digits as were asked for plainly, else
 * with a power of ten. */
static inline size_t hw_put_digits(char *to, uint32_t eight, int power, int digits)
{
    uint64_t word = hw_spread_digits(eight);
    if (power < 0 && power >= -4) {
        hw_eight_store(to, HW_EIGHT('0'));
        to[1] = '.';
        hw_eight_store(to + 1 - power, word + HW_EIGHT('0'));
        return (size_t)(1 - power) + hw_last_digit(word);
    }
    bool plain = power >= 0 && power < digits;
    size_t n = hw_put_with_point(to, word, plain ? (size_t)power + 1 : 1);
    if (plain) {
        return n;
    }
    int size = power < 0 ? -power : power;
    to[n] = 'e';
    to[n + 1] = power < 0 ? '-' : '+';
    to[n + 2] = (char)('0' + size / 10);
    to[n + 3] = (char)('0' + size % 10);
    return n + 4;
}

/* Writes what was rounded to so many digits, as printf does. */
static inline size_t hw_quick_put(char *to, const struct hw_rounded *rounded, int digits)
{
    to[0] = '-';
    return rounded->negative + hw_put_digits(to + rounded->negative, rounded->eight,
                                             rounded->power, digits);
}

/* hw_decimal_write of decimal.h without the NUL. 0 where that must do it. */
static inline size_t hw_quick_write(char *to, double value, int digits)
{
    struct hw_rounded rounded;
    return hw_quick_round(value, digits, &rounded) ? hw_quick_put(to, &rounded, digits) : 0;
}
#endif
