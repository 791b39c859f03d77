/* decimal.c - decimal numbers to doubles and back. Each way has a short cut for the numbers that
 * tables hold, taken only where it is proved to round correctly; strtod and snprintf do the rest.
 *
 * The proofs take doubles that are rounded once, to nearest: so a machine that computes in a wider
 * format is given no short cut, and nothing here ever changes the rounding mode. */
#include "engine/decimal.h"

#include "engine/eight.h"

#include <float.h>
#include <math.h>
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    ROUNDED_ONCE = FLT_EVAL_METHOD == 0 || FLT_EVAL_METHOD == 1,
    POWER_MIN = -15, /* the first of the powers below */
    POWER_MAX = 22,  /* the last: 10^22 = 2^22 5^22, and 5^22 < 2^53, so it is a double */
    FAST_DIGITS = 8  /* the most that are written without snprintf */
};

/* The nearest doubles: exactly the powers of ten from 10^0 on. */
static const double powers[] = {
    1e-15, 1e-14, 1e-13, 1e-12, 1e-11, 1e-10, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3,
    1e-2,  1e-1,  1e0,   1e1,   1e2,   1e3,   1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10,
    1e11,  1e12,  1e13,  1e14,  1e15,  1e16,  1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
};

static double ten_to(int power)
{
    return powers[power - POWER_MIN];
}

/* Eight characters 0. */
static const uint64_t ZEROS = HW_EIGHT('0');

/* --- Reading --- */

/* A number as it stands in the text: mantissa x 10^power. */
struct numeral {
    uint64_t mantissa; /* all digits; wrong when more than MANTISSA_DIGITS of them count */
    size_t digits;     /* how many, leading zeros and all */
    size_t fraction;   /* how many of them stand behind the point */
    int power;         /* as written behind the e; one beyond POWER_LIMIT may be cut to it */
    bool negative;
};

enum {
    MANTISSA_DIGITS = 19, /* 10^19 < 2^64: so many digits cannot wrap the mantissa */
    POWER_LIMIT = 10000   /* out of reach of any fraction of HW_DECIMAL_READ_MAX digits */
};

static bool is_digit(char c)
{
    return (unsigned char)(c - '0') < 10;
}

/* Reads digits on into the mantissa, and returns where they end. */
static const char *read_digits(const char *at, const char *end, uint64_t *mantissa)
{
    uint64_t m = *mantissa;
    while (at < end && is_digit(*at)) {
        m = 10 * m + (uint64_t)(*at - '0');
        at++;
    }
    *mantissa = m;
    return at;
}

/* Reads what stands behind an e. Returns where it ends, NULL when no digit is there. */
static const char *read_power(const char *at, const char *end, int *power)
{
    bool negative = at < end && *at == '-';
    if (at < end && (*at == '-' || *at == '+')) {
        at++;
    }
    if (at == end || !is_digit(*at)) {
        return NULL;
    }
    int p = 0;
    for (; at < end && is_digit(*at); at++) {
        p = p < POWER_LIMIT ? 10 * p + (*at - '0') : POWER_LIMIT;
    }
    *power = negative ? -p : p;
    return at;
}

/* Takes apart the numeral that a text of at least one byte begins with. Returns its length, 0 when
 * there is none. */
static size_t take_apart(const char *text, size_t n, struct numeral *numeral)
{
    const char *end = text + n;
    bool negative = *text == '-';
    const char *first = negative || *text == '+' ? text + 1 : text;
    uint64_t mantissa = 0;
    const char *at = read_digits(first, end, &mantissa);
    size_t digits = (size_t)(at - first);
    size_t fraction = 0;
    if (at < end && *at == '.') {
        const char *point = at;
        at = read_digits(point + 1, end, &mantissa);
        fraction = (size_t)(at - point) - 1;
        digits += fraction;
    }
    if (digits == 0) {
        return 0;
    }
    int power = 0;
    if (at < end && (*at == 'e' || *at == 'E')) {
        const char *after = read_power(at + 1, end, &power);
        at = after ? after : at;
    }
    *numeral = (struct numeral){mantissa, digits, fraction, power, negative};
    return (size_t)(at - text);
}

/* How many of the digits count: those from the first that is not 0. Signs, the point and 0 come
 * before 1 in ASCII. */
static size_t digits_that_count(const char *text, size_t digits)
{
    for (; digits > 0; text++) {
        if (*text >= '1') {
            break;
        }
        digits -= *text == '0';
    }
    return digits;
}

/* Clinger's short cut (How to read floating point numbers accurately, 1990): a mantissa up to 2^53
 * and a power of ten up to 10^22 are doubles themselves, so that their product or quotient, rounded
 * once, is the double nearest to the number. False when the numeral is not of that kind. */
static bool read_fast(const char *text, const struct numeral *numeral, double *value)
{
    int power = numeral->power - (int)numeral->fraction;
    if (!ROUNDED_ONCE || power < -POWER_MAX || power > POWER_MAX ||
        numeral->mantissa > UINT64_C(1) << DBL_MANT_DIG) {
        return false;
    }
    if (numeral->digits > MANTISSA_DIGITS &&
        digits_that_count(text, numeral->digits) > MANTISSA_DIGITS) {
        return false;
    }
    double m = (double)numeral->mantissa;
    double x = power < 0 ? m / ten_to(-power) : m * ten_to(power);
    *value = numeral->negative ? -x : x;
    return true;
}

size_t hw_decimal_read(const char *text, size_t n, double *value)
{
    struct numeral numeral;
    size_t length = n > 0 ? take_apart(text, n, &numeral) : 0;
    if (length == 0 || length > HW_DECIMAL_READ_MAX) {
        return 0;
    }
    if (!read_fast(text, &numeral, value)) {
        char copy[HW_DECIMAL_READ_MAX + 1];
        memcpy(copy, text, length);
        copy[length] = '\0';
        *value = strtod(copy, NULL);
    }
    return length;
}

/* The number that eight digits are, the first in the lowest byte: pairs, then fours, then all, each
 * step side by side. */
static uint32_t join_digits(uint64_t digits)
{
    const uint64_t every_fourth = UINT64_C(0x000000ff000000ff);
    uint64_t pairs = digits * 10 + (digits >> 8);
    uint64_t first = (pairs & every_fourth) * (100 + (UINT64_C(1000000) << 32));
    uint64_t second = (pairs >> 16 & every_fourth) * (1 + (UINT64_C(10000) << 32));
    return (uint32_t)((first + second) >> 32);
}

/* The text becomes the end of eight digits: zeros before it, and what stands before a point moved
 * up over it. Then it is Clinger's short cut again. */
bool hw_decimal_read_bare(const char *end, size_t n, double *value)
{
    if (!ROUNDED_ONCE || n - 1 >= HW_DECIMAL_BARE) {
        return false;
    }
    unsigned before = 8 * (HW_DECIMAL_BARE - (unsigned)n);
    uint64_t own = UINT64_MAX << before;
    uint64_t word = (hw_eight_load(end - HW_DECIMAL_BARE) & own) | (ZEROS & ~own);
    uint64_t other = word ^ HW_EIGHT('.');
    /* The lowest bit tells the first point; those above may be wrong. */
    uint64_t points = (other - HW_EIGHT(0x01)) & ~other & HW_EIGHT(0x80);
    int fraction = 0;
    if (points != 0) {
        uint64_t to_point = points ^ (points - 1); /* the bytes up to it, and it */
        word = (word & ~to_point) | (word & to_point >> 8) << 8 | '0';
        fraction = __builtin_clzll(points & (~points + 1)) / 8;
    }
    uint64_t digits = word ^ ZEROS;
    bool others = (((digits + HW_EIGHT(0x80 - 10)) | digits) & HW_EIGHT(0x80)) != 0;
    if (others || (points != 0 && n == 1)) {
        return false;
    }
    *value = join_digits(digits) / ten_to(fraction);
    return true;
}

/* --- Writing --- */

/* The power of ten that a begins with, for 1e-15 <= a < 1e22: the last of `powers` not above a. For
 * 2^b <= a < 2^(b+1) that is b log10(2) rounded down, or one more. The whole-number form of it
 * holds for |b| <= 80: 78913 / 2^18 is log10(2) less 8e-7, and no 2^b up to there is so near to a
 * power of ten that 80 x 8e-7 in the logarithm matters (10^3 < 2^10 is the nearest: 0.01). */
static int power_of(double a)
{
    uint64_t bits;
    memcpy(&bits, &a, sizeof bits);
    int32_t b = (int32_t)(bits >> 52) - 1023;
    int32_t low = ((b * 78913 + (64 << 18)) >> 18) - 64;
    return low + (a >= ten_to(low + 1));
}

/* Rounds a to so many digits: eight digits, filled with zeros, and the power of ten of the first.
 * False when it cannot be told which way to round.
 *
 * Why this is exact. Let D be the digits, x the power found, t = a 10^(D-1-x) the true number to be
 * rounded to a whole one, and s what is computed for it.
 *
 * 1. |D-1-x| <= 22, so the power is a double, and s is t rounded once, to the nearest double. Such
 *    rounding keeps order: for every double h, t < h gives s <= h, and t > h gives s >= h.
 * 2. s <= 10^8 by the choice of x, so every half h near it is a double. Hence s > h only if t > h,
 *    and s < h only if t < h: unless s is a half itself, s and t round to the same whole number,
 *    with no error to be bounded. When it is one, t may be a tie or lie on either side: no answer.
 * 3. s takes its whole part and a half off exactly, as the differences are no finer than s.
 * 4. Powers of ten below 10^0 are not doubles, so x may be one too high, for the one double a that
 *    is nearest to 10^x and below it. Here t rounds to 10^(D-1): one and zeros. printf rounds the
 *    tenfold of t, which lies less than 10^8 2^-53 below 10^D, to 10^D: one and zeros as well. x is
 *    never too low: a double not below 10^(x+1) is not below the double nearest to it.
 * 5. When s rounds up to 10^D, a rounds to the next power of ten, and so it does in printf. */
static bool round_fast(double a, int digits, uint32_t *eight, int *power)
{
    static const uint32_t fill[FAST_DIGITS + 1] = {0,    10000000, 1000000, 100000, 10000,
                                                   1000, 100,      10,      1};
    int x = power_of(a);
    int scale = digits - 1 - x;
    double s = scale >= 0 ? a * ten_to(scale) : a / ten_to(-scale);
    uint32_t whole = (uint32_t)s;
    double over = s - whole - 0.5;
    if (over == 0) {
        return false;
    }
    whole = (whole + (over > 0)) * fill[digits];
    bool carried = whole == 100000000;
    *eight = carried ? 10000000 : whole;
    *power = x + carried;
    return true;
}

/* The two digits of a number below 100, the first in the low byte. */
static uint64_t pair_of(uint32_t below_100)
{
    /* clang-format off */
    static const uint16_t pairs[100] = {
        0x0000, 0x0100, 0x0200, 0x0300, 0x0400, 0x0500, 0x0600, 0x0700, 0x0800, 0x0900,
        0x0001, 0x0101, 0x0201, 0x0301, 0x0401, 0x0501, 0x0601, 0x0701, 0x0801, 0x0901,
        0x0002, 0x0102, 0x0202, 0x0302, 0x0402, 0x0502, 0x0602, 0x0702, 0x0802, 0x0902,
        0x0003, 0x0103, 0x0203, 0x0303, 0x0403, 0x0503, 0x0603, 0x0703, 0x0803, 0x0903,
        0x0004, 0x0104, 0x0204, 0x0304, 0x0404, 0x0504, 0x0604, 0x0704, 0x0804, 0x0904,
        0x0005, 0x0105, 0x0205, 0x0305, 0x0405, 0x0505, 0x0605, 0x0705, 0x0805, 0x0905,
        0x0006, 0x0106, 0x0206, 0x0306, 0x0406, 0x0506, 0x0606, 0x0706, 0x0806, 0x0906,
        0x0007, 0x0107, 0x0207, 0x0307, 0x0407, 0x0507, 0x0607, 0x0707, 0x0807, 0x0907,
        0x0008, 0x0108, 0x0208, 0x0308, 0x0408, 0x0508, 0x0608, 0x0708, 0x0808, 0x0908,
        0x0009, 0x0109, 0x0209, 0x0309, 0x0409, 0x0509, 0x0609, 0x0709, 0x0809, 0x0909,
    };
    /* clang-format on */
    return pairs[below_100];
}

/* Eight digits as the bytes of a word, the first in the lowest byte, two at a time. n 5243 / 2^19
 * is n / 100 in whole numbers below 10000. */
static uint64_t spread_digits(uint32_t eight)
{
    uint32_t high = eight / 10000;
    uint32_t low = eight - 10000 * high;
    uint32_t first = high * 5243 >> 19;
    uint32_t third = low * 5243 >> 19;
    return pair_of(first) | pair_of(high - 100 * first) << 16 | pair_of(third) << 32 |
           pair_of(low - 100 * third) << 48;
}

/* Where the last digit that is not 0 ends; there is one. gcc and clang both count zero bits, and a
 * search that branches would gamble on every number. */
static size_t last_digit(uint64_t digits)
{
    return FAST_DIGITS - (size_t)__builtin_clzll(digits) / 8;
}

/* Puts digits with a point behind the first `whole` of them, without zeros behind the point. All
 * are stored twice, and the length tells what counts: cheaper than to ask for each digit. */
static size_t put_with_point(char *to, uint64_t digits, size_t whole)
{
    size_t last = last_digit(digits);
    uint64_t word = digits + ZEROS;
    hw_eight_store(to, word);
    to[whole] = '.';
    hw_eight_store(to + whole + 1, word >> (8 * (whole - 1)) >> 8);
    return last > whole ? last + 1 : whole;
}

/* Puts the digits as %g does: from 10^-4 up to as many whole digits as were asked for plainly, else
 * with a power of ten. */
static size_t put_number(char *to, uint32_t eight, int power, int digits)
{
    uint64_t word = spread_digits(eight);
    if (power < 0 && power >= -4) {
        hw_eight_store(to, ZEROS);
        to[1] = '.';
        hw_eight_store(to + 1 - power, word + ZEROS);
        return (size_t)(1 - power) + last_digit(word);
    }
    bool plain = power >= 0 && power < digits;
    size_t n = put_with_point(to, word, plain ? (size_t)power + 1 : 1);
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

static size_t write_slow(char *to, double value, int digits)
{
    if (!(fabs(value) <= DBL_MAX) || digits < 1 || digits > HW_DECIMAL_DIGITS_MAX) {
        return 0;
    }
    if (value == 0) {
        memcpy(to, "0", 2);
        return 1;
    }
    return (size_t)snprintf(to, HW_DECIMAL_MAX, "%.*g", digits, value);
}

size_t hw_decimal_write(char *to, double value, int digits)
{
    double a = fabs(value);
    uint32_t eight;
    int power;
    if (!ROUNDED_ONCE || digits < 1 || digits > FAST_DIGITS || !(a >= 1e-15 && a < 1e22) ||
        !round_fast(a, digits, &eight, &power)) {
        return write_slow(to, value, digits);
    }
    size_t sign = value < 0;
    to[0] = '-';
    size_t n = sign + put_number(to + sign, eight, power, digits);
    to[n] = '\0';
    return n;
}
