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
    (void)hw_decimal_write(text, value, digits);
}

/* The decimal exponent of a number once it is rounded to that many digits. */
static int exponent_of(double value, int digits)
{
    char text[NUMBER_MAX];
    (void)snprintf(text, sizeof text, "%.*e", digits - 1, value);
    const char *e = strchr(text, 'e');
    return e ? (int)strtol(e + 1, NULL, 10) : 0;
}

/* Writes a value with the decimals that so many digits of a number with this exponent have. Returns what stands there. */
static double write_places(char text[NUMBER_MAX], double value, int places)
{
    (void)snprintf(text, NUMBER_MAX, "%.*f", places, value);
    return strtod(text, NULL);
}

static int places_of(int digits, int exponent)
{
    return digits - 1 - exponent > 0 ? digits - 1 - exponent : 0;
}

void number_text(char text[NUMBER_MAX], double value, int digits, int safe)
{
    value += 0.0;
    int exponent = value != 0 ? exponent_of(value, digits) : 0;
    if (exponent < -6 || exponent > 15) {
        (void)snprintf(text, NUMBER_MAX, "%.*e", digits - 1, value);
        return;
    }
    int places = places_of(digits, exponent);
    double noise = 1e-9 * fabs(value);
    double shown = write_places(text, value, places);
    bool aside = safe < 0 ? shown > value + noise : safe > 0 && shown < value - noise;
    if (!aside) {
        return;
    }
    /* Rounded to the other side it may stay below the power of ten, and has a digit more. */
    places = places_of(digits, exponent_of(value, 17));
    shown = write_places(text, value, places);
    if (safe < 0 ? shown > value + noise : shown < value - noise) {
        double next = shown + safe * pow(10, -places);
        (void)write_places(text, next, places_of(digits, exponent_of(next, digits)));
    }
}

void print_blanks(size_t n)
{
    (void)printf("%*s", (int)n, "");
}

void print_wrapped(const char *text, size_t at, size_t indent)
{
    bool first = true;
    while (*text != '\0') {
        size_t word = strcspn(text, " ");
        if (!first && at + 1 + word > PRINT_WIDTH) {
            (void)putchar('\n');
            print_blanks(indent);
            at = indent;
        } else if (!first) {
            (void)putchar(' ');
            at++;
        }
        (void)printf("%.*s", (int)word, text);
        at += word;
        text += word;
        text += strspn(text, " ");
        first = false;
    }
    (void)putchar('\n');
}
