/* print.c - numbers and wrapped words on stdout. */
#include "cli/print.h"

#include "engine/decimal.h"

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

void number_exact(char text[NUMBER_MAX], double value)
{
    for (int digits = 15; digits <= 17; digits++) {
        (void)snprintf(text, NUMBER_MAX, "%.*g", digits, value + 0.0);
        if (strtod(text, NULL) == value) {
            return;
        }
    }
}

void number_digits(char text[NUMBER_MAX], double value, int digits)
{
    text[hw_decimal_write(text, value, digits)] = '\0'; /* of what is not finite nothing */
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
