/* reading.c - reads readings, and keeps the latest of them. */
#include "cli/reading.h"

#include "engine/decimal.h"
#include "holdwater/trend.h"

#include <math.h>
#include <string.h>

static struct hw_text behind(struct hw_text text, size_t n)
{
    return hw_text_trimmed((struct hw_text){text.at + n, text.n - n});
}

static bool begins(struct hw_text text, const char *word)
{
    size_t n = strlen(word);
    return text.n >= n && memcmp(text.at, word, n) == 0;
}

static bool is_bound(struct hw_text text)
{
    static const char *const signs[] = {"<", ">", "~", "\xE2\x89\xA4", "\xE2\x89\xA5"};
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++) {
        if (begins(text, signs[i])) {
            return true;
        }
    }
    return false;
}

/* Takes "+- 0.1" or "+- 10%" out of what stands behind a number: the unit stands before or behind
 * it. False when it is no half-width. */
static bool drop_half_width(struct hw_text *rest)
{
    size_t at = 0;
    size_t sign = 0;
    for (; at < rest->n && sign == 0; at += sign == 0 ? 1 : 0) {
        struct hw_text here = {rest->at + at, rest->n - at};
        sign = begins(here, "+-") || begins(here, "\xC2\xB1") ? 2 : 0;
    }
    if (sign == 0) {
        return true;
    }
    double half = 0;
    struct hw_text half_text = behind(*rest, at + sign);
    size_t digits = hw_decimal_read(half_text.at, half_text.n, &half);
    struct hw_text unit = behind(half_text, digits);
    struct hw_text before = hw_text_trimmed((struct hw_text){rest->at, at});
    bool share = unit.n == 1 && unit.at[0] == '%';
    *rest = before.n > 0 || share ? before : unit;
    return digits > 0;
}

enum reading_kind reading_read(struct hw_text text, enum hw_kind kind, struct reading *reading)
{
    text = hw_text_trimmed(text);
    if (text.n == 0) {
        return READING_EMPTY;
    }
    if (is_bound(text)) {
        return READING_BOUND;
    }
    struct reading read = {.unit = NULL};
    size_t digits = hw_decimal_read(text.at, text.n, &read.value);
    if (digits == 0 || !(fabs(read.value) <= HW_TREND_VALUE_MAX)) {
        return READING_NONE;
    }
    struct hw_text rest = behind(text, digits);
    if (!drop_half_width(&rest)) {
        return READING_NONE;
    }
    if (rest.n > 0) {
        read.unit = hw_unit_find(kind, rest.at, rest.n);
        read.unit = read.unit ? read.unit : hw_unit_find_any(rest.at, rest.n);
        if (!read.unit) {
            return READING_NONE;
        }
    }
    read.value += 0.0; /* -0 is 0 */
    *reading = read;
    return READING_NUMBER;
}

enum reading_side reading_bound(struct hw_text text, enum hw_kind kind, struct reading *reading)
{
    static const struct {
        const char *sign;
        enum reading_side side;
    } signs[] = {
        {"<=", READING_UP_TO},          {">=", READING_FROM}, {"\xE2\x89\xA4", READING_UP_TO},
        {"\xE2\x89\xA5", READING_FROM}, {"<", READING_BELOW}, {">", READING_ABOVE}};
    text = hw_text_trimmed(text);
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++) {
        if (begins(text, signs[i].sign)) {
            struct hw_text number = behind(text, strlen(signs[i].sign));
            bool fine = reading_read(number, kind, reading) == READING_NUMBER;
            return fine ? signs[i].side : READING_ANYWHERE;
        }
    }
    return READING_ANYWHERE;
}

bool reading_same_unit(const struct hw_unit *a, const struct hw_unit *b)
{
    return a == b || (a && b && a->kind == b->kind && a->shift == b->shift &&
                      a->num * b->den == b->num * a->den);
}

/* Behind the last one there is room again when those before the latest are gone. */
static void make_room(struct readings *readings)
{
    if (readings->n == HW_TREND_READINGS_MAX) {
        readings->first++;
        readings->n--;
    }
    if (readings->first + readings->n == READINGS_ROOM) {
        memmove(readings->at, readings->at + readings->first, readings->n * sizeof readings->at[0]);
        readings->first = 0;
    }
}

bool readings_add(struct readings *readings, struct timed reading)
{
    readings->all++;
    bool full = readings->n == HW_TREND_READINGS_MAX;
    if (full && reading.seconds < readings->at[readings->first].seconds) {
        return false;
    }
    make_room(readings);
    struct timed *begin = readings->at + readings->first;
    size_t at = readings->n++;
    for (; at > 0 && begin[at - 1].seconds > reading.seconds; at--) {
        begin[at] = begin[at - 1];
    }
    begin[at] = reading;
    return at + 1 == readings->n;
}
