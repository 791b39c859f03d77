/* print.c - numbers and wrapped words on stdout. */
#include "cli/print.h"

#include "engine/decimal.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void number_digits(char text[NUMBER_MAX], double value, int digits)
{
    text[hw_decimal_write(text, value, digits)] = '\0'; /* of what is not finite nothing */
}

static bool reads_back(const char *text, double value)
{
    double read = NAN;
    return hw_decimal_read(text, strlen(text), &read) > 0 && read == value;
}

/* With 8 digits, where that gives the value and looks as with 15: the double nearest to a number of
 * so few digits is off it by less than half a unit of the 15th digit. */
static bool number_short(char text[NUMBER_MAX], double value)
{
    bool usual = value == 0 || (fabs(value) >= 1e-15 && fabs(value) < 1e7);
    if (usual) {
        number_digits(text, value, 8);
    }
    return usual && reads_back(text, value);
}

enum { ALL_DIGITS = 17 };

/* Takes the last digits off a number of ALL_DIGITS, rounding. False when it takes more than a look
 * at them: where they may be a half, where the digit before them is 0 or rounds up to ten. */
static bool take_off(char *text, size_t n, size_t off)
{
    static const int half_of[] = {0, 5, 50};
    int last = 0;
    for (size_t i = n - off; i < n; i++) {
        last = 10 * last + (text[i] - '0');
    }
    char *end = &text[n - off - 1];
    bool up = last > half_of[off];
    if (last == half_of[off] || *end == (up ? '9' : '0')) {
        return false;
    }
    *end = (char)(*end + up);
    end[1] = '\0';
    return true;
}

/* From its ALL_DIGITS, written once. False when that does not tell. */
static bool number_long(char text[NUMBER_MAX], double value)
{
    char all[NUMBER_MAX];
    size_t n = (size_t)snprintf(all, sizeof all, "%.*g", ALL_DIGITS, value);
    const char *point = strchr(all, '.');
    size_t first = strspn(all, "-0.");
    size_t digits = n - first - (point && point > all + first ? 1 : 0);
    if (!point || point + 3 > all + n - 1 || strchr(all, 'e') || digits != ALL_DIGITS) {
        return false;
    }
    for (size_t off = 2; off > 0; off--) {
        memcpy(text, all, n + 1);
        if (!take_off(text, n, off)) {
            return false;
        }
        if (reads_back(text, value)) {
            return true;
        }
    }
    memcpy(text, all, n + 1);
    return true;
}

void number_exact(char text[NUMBER_MAX], double value)
{
    if (number_short(text, value) || number_long(text, value)) {
        return;
    }
    for (int digits = 15; digits <= ALL_DIGITS; digits++) {
        (void)snprintf(text, NUMBER_MAX, "%.*g", digits, value + 0.0);
        if (strtod(text, NULL) == value) {
            return;
        }
    }
}

/* The decimal exponent of a number once it is rounded to that many digits. */
static int exponent_of(double value, int digits)
{
    char text[NUMBER_MAX];
    (void)snprintf(text, sizeof text, "%.*e", digits - 1, value);
    const char *e = strchr(text, 'e');
    return e ? (int)strtol(e + 1, NULL, 10) : 0;
}

/* Writes a value with the decimals that so many digits of a number with this exponent have. Returns
 * what stands there. */
static double write_places(char text[NUMBER_MAX], double value, int places)
{
    (void)snprintf(text, NUMBER_MAX, "%.*f", places, value);
    return strtod(text, NULL);
}

static int places_of(int digits, int exponent)
{
    return digits - 1 - exponent > 0 ? digits - 1 - exponent : 0;
}

/* What is shown lies on the wrong side of the value, by more than rounding. */
static bool on_wrong_side(double shown, double value, int safe)
{
    return safe * (value - shown) > 0 && fabs(value - shown) > 1e-9 * fabs(value);
}

void number_significant(char text[NUMBER_MAX], double value, int digits, int safe)
{
    (void)snprintf(text, NUMBER_MAX, "%.*e", digits - 1, value);
    double shown = strtod(text, NULL);
    if (on_wrong_side(shown, value, safe)) {
        /* Below a power of ten the step is that of the decade below. */
        int exponent = exponent_of(value, 17) - (digits - 1);
        (void)snprintf(text, NUMBER_MAX, "%.*e", digits - 1, shown + safe * pow(10, exponent));
    }
}

void number_text(char text[NUMBER_MAX], double value, int digits, int safe)
{
    value += 0.0;
    int exponent = value != 0 ? exponent_of(value, digits) : 0;
    if (exponent < -6 || exponent > 15) {
        number_significant(text, value, digits, safe);
        return;
    }
    int places = places_of(digits, exponent);
    if (!on_wrong_side(write_places(text, value, places), value, safe)) {
        return;
    }
    /* Rounded to the other side it may stay below the power of ten, and has a digit more. */
    places = places_of(digits, exponent_of(value, 17));
    double shown = write_places(text, value, places);
    if (on_wrong_side(shown, value, safe)) {
        double next = shown + safe * pow(10, -places);
        (void)write_places(text, next, places_of(digits, exponent_of(next, digits)));
    }
}

void print_blanks(size_t n)
{
    (void)printf("%*s", (int)n, "");
}

/* The length of a word, up to a comma when the whole word is wider than a line. */
static size_t word_of(const char *text, size_t indent)
{
    size_t word = strcspn(text, " ");
    size_t fits = PRINT_WIDTH - indent;
    if (word <= fits) {
        return word;
    }
    size_t part = fits;
    while (part > 0 && text[part - 1] != ',') {
        part--;
    }
    return part > 0 ? part : word;
}

size_t print_words(const char *text, size_t at, size_t indent, bool glued)
{
    while (*text != '\0') {
        size_t word = word_of(text, indent);
        if (at > indent && at + (glued ? 0 : 1) + word > PRINT_WIDTH) {
            (void)putchar('\n');
            print_blanks(indent);
            at = indent;
        } else if (!glued) {
            (void)putchar(' ');
            at++;
        }
        for (size_t i = 0; i < word; i++) {
            (void)putchar(text[i] == PRINT_TIE ? ' ' : text[i]);
        }
        at += word;
        text += word;
        glued = *text != ' ';
        text += strspn(text, " ");
    }
    return at;
}

void print_wrapped(const char *text, size_t at, size_t indent)
{
    (void)print_words(text, at, indent, true);
    (void)putchar('\n');
}
