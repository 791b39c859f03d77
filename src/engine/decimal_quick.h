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
    const size_t n = (size_t)(end - text);
    if (!HW_ROUNDED_ONCE || n - 1 >= HW_QUICK_READ_MAX) {
        return false;
    }
    double power = 1;
    uint64_t digits = (hw_eight_load(text) ^ HW_EIGHT('0')) << (0 - 8 * n) % 64;
    /* A bit that points have and digits do not. The last byte with it must be a point; another
     * one, before it, is no digit. */
    uint64_t points = digits & HW_EIGHT(0x10);
    if (points != 0) {
        unsigned last = (63 ^ (unsigned)__builtin_clzll(points)) / 8;
        if (end[(int)last - HW_QUICK_READ_MAX] != '.' || n == 1) {
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

/* What it takes to write so many digits. They are filled up with zeros to six or eight. */
struct hw_width {
    int digits;
    bool six;
    uint32_t beyond, fill; /* 10^digits, and what a number of so many digits is filled up by */
};

static inline bool hw_is_quick(int digits)
{
    return HW_ROUNDED_ONCE && digits >= 1 && digits <= HW_QUICK_DIGITS_MAX;
}

static inline struct hw_width hw_width_of(int digits)
{
    bool six = digits <= 6;
    return (struct hw_width){digits, six, (uint32_t)hw_ten_to(digits),
                             (uint32_t)hw_ten_to((six ? 6 : 8) - digits)};
}

/* The place in `hw_powers` of the power of ten that a begins with, the last not above a. For
 * 2^b <= a < 2^(b+1) that is b log10(2) rounded down, or one more. The whole-number form of it
 * holds for |b| <= 80: 78913 / 2^18 is log10(2) less 8e-7, and no 2^b up to there is so near to a
 * power of ten that 80 x 8e-7 in the logarithm matters (10^3 < 2^10 is the nearest: 0.01). */
static inline size_t hw_power_place(double a, uint32_t exponent)
{
    const uint32_t less = 1023 * 78913 - ((1 - HW_POWER_MIN) << 18);
    size_t next = (exponent * 78913 - less) >> 18;
    return next - 1 + (a >= hw_powers[next]);
}

/* Rounds a to so many digits: a whole number of them, and the power of ten of the first. 0 for
 * what is not positive, very large or small, and when it cannot be told which way to round.
 *
 * Why this is exact. Let D be the digits, x the power found, t = a 10^(D-1-x) the true number to be
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
static inline uint32_t hw_quick_round(double a, const struct hw_width *width, int *power)
{
    enum { LEAST = 1023 - 49, MOST = 1023 + 72 }; /* 2^-49 > 10^-15, and 2^73 < 10^22 */
    const double rounder = 0x1.8p52;
    const double half = 0.5;
    uint64_t exponent = hw_quick_bits(a) >> 52; /* behind the sign */
    if (exponent - LEAST > MOST - LEAST) {
        return 0;
    }
    size_t first = hw_power_place(a, (uint32_t)exponent);
    ptrdiff_t scale = width->digits - 1 - HW_POWER_MIN - (ptrdiff_t)first;
    double s =
        scale >= 0 ? a * hw_powers[scale - HW_POWER_MIN] : a / hw_powers[-scale - HW_POWER_MIN];
    double sum = s + rounder;
    double off = s - (sum - rounder);
    if ((hw_quick_bits(off) ^ hw_quick_bits(half)) << 1 == 0) {
        return 0;
    }
    uint32_t whole = (uint32_t)hw_quick_bits(sum);
    *power = (int)first + HW_POWER_MIN;
    if (whole == width->beyond) {
        whole /= 10;
        ++*power;
    }
    return whole;
}

/* Digits as the bytes of a word, the first in the lowest byte, two at a time. They are parted side
 * by side, which makes the way from the number to the word short. */
static inline uint64_t hw_spread_six(uint32_t six)
{
    uint32_t two = six / 10000;
    uint32_t four = six / 100;
    return hw_pairs[two] | (uint64_t)hw_pairs[four - 100 * two] << 16 |
           (uint64_t)hw_pairs[six - 100 * four] << 32;
}

static inline uint64_t hw_spread_eight(uint32_t eight)
{
    uint32_t six = eight / 100;
    return hw_spread_six(six) | (uint64_t)hw_pairs[eight - 100 * six] << 48;
}

/* Where the last digit that is not 0 ends; there is one. gcc and clang both count zero bits, and a
 * search that branches would gamble on every number. */
static inline size_t hw_last_digit(uint64_t digits)
{
    return (63 ^ (size_t)__builtin_clzll(digits)) / 8 + 1;
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

/* Puts what hw_quick_round gave as %g does: from 10^-4 up to as many whole digits as were asked for
 * plainly, else with a power of ten. */
static inline size_t hw_quick_put(char *to, uint32_t whole, int power, const struct hw_width *width)
{
    uint32_t filled = whole * width->fill;
    uint64_t word = width->six ? hw_spread_six(filled) : hw_spread_eight(filled);
    if (power < 0 && power >= -4) {
        hw_eight_store(to, HW_EIGHT('0'));
        to[1] = '.';
        hw_eight_store(to + 1 - power, word + HW_EIGHT('0'));
        return (size_t)(1 - power) + hw_last_digit(word);
    }
    bool plain = power >= 0 && power < width->digits;
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

/* hw_decimal_write of decimal.h without the NUL. 0 where that must do it: for more digits than
 * HW_QUICK_DIGITS_MAX, and for what hw_quick_round declines but for its sign. */
static inline size_t hw_quick_write(char *to, double value, int digits)
{
    if (!hw_is_quick(digits)) {
        return 0;
    }
    const struct hw_width width = hw_width_of(digits);
    size_t sign = (size_t)(hw_quick_bits(value) >> 63);
    int power = 0;
    uint32_t whole = hw_quick_round(sign != 0 ? -value : value, &width, &power);
    if (whole == 0) {
        return 0;
    }
    to[0] = '-';
    return sign + hw_quick_put(to + sign, whole, power, &width);
}
#endif
