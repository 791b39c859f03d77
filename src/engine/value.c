/* value.c - reads one written value. Strict: the whole text is one decimal number and at most one
 * unit. */
#include "engine/value.h"

#include "engine/decimal.h"

#include <float.h>
#include <math.h>
#include <string.h>

/* What stands between words; as pasted from elsewhere a space that does not break a line, wide or
 * narrow. */
static const struct blank {
    const char *bytes;
    size_t n;
} blanks[] = {{" ", 1}, {"\t", 1}, {"\xC2\xA0", 2}, {"\xE2\x80\xAF", 3}};

/* The length of the blank that a text begins with, or ends with; 0 for none. */
static size_t blank_of(struct hw_text text, bool end)
{
    for (size_t i = 0; i < sizeof blanks / sizeof blanks[0]; i++) {
        size_t n = blanks[i].n;
        if (text.n >= n && memcmp(text.at + (end ? text.n - n : 0), blanks[i].bytes, n) == 0) {
            return n;
        }
    }
    return 0;
}

struct hw_text hw_text_trimmed(struct hw_text text)
{
    for (size_t n = blank_of(text, false); n > 0; n = blank_of(text, false)) {
        text.at += n;
        text.n -= n;
    }
    for (size_t n = blank_of(text, true); n > 0; n = blank_of(text, true)) {
        text.n -= n;
    }
    return text;
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool begins(struct hw_text text, const char *word)
{
    size_t n = strlen(word);
    if (text.n < n) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        char c = text.at[i];
        if (c >= 'A' && c <= 'Z') {
            c = (char)(c - 'A' + 'a');
        }
        if (c != word[i]) {
            return false;
        }
    }
    return true;
}

/* Reads a decimal number. One that is too small for any double is read as 0: it comes out as the
 * least double instead, so that nobody takes it for a zero that was written. */
static size_t read_decimal(struct hw_text text, double *x)
{
    size_t n = hw_decimal_read(text.at, text.n, x);
    for (size_t i = 0; *x == 0 && i < n && text.at[i] != 'e' && text.at[i] != 'E'; i++) {
        *x = text.at[i] >= '1' && text.at[i] <= '9' ? DBL_TRUE_MIN : 0;
    }
    return n;
}

/* What is wrong with a text that does not begin as a decimal number. */
static enum hw_problem not_a_number(struct hw_text text)
{
    if (text.n > 1 && strchr("<>~", text.at[0])) {
        return HW_PROBLEM_BOUND;
    }
    if (text.n > 0 && (text.at[0] == '+' || text.at[0] == '-')) {
        text.at++;
        text.n--;
    }
    bool special = begins(text, "nan") || begins(text, "inf");
    return special ? HW_PROBLEM_NOT_DECIMAL : HW_PROBLEM_NOT_A_NUMBER;
}

/* What follows a number and is not a unit. HW_FINE: it may be one. */
static enum hw_problem after_number(struct hw_text number, struct hw_text rest)
{
    struct hw_text tail = hw_text_trimmed(rest);
    if (tail.n == 0) {
        return HW_FINE;
    }
    if (begins(tail, "+-") || begins(tail, "\xC2\xB1")) {
        return HW_PROBLEM_SPREAD;
    }
    if (memchr(tail.at, ':', tail.n)) {
        return HW_PROBLEM_SWEEP;
    }
    if (rest.n > 1 && rest.at[0] == ',' && is_digit(rest.at[1])) {
        return HW_PROBLEM_COMMA;
    }
    bool zero = number.at[number.n - 1] == '0' &&
                (number.n == 1 || (number.n == 2 && !is_digit(number.at[0])));
    if (zero && (rest.at[0] == 'x' || rest.at[0] == 'X')) {
        return HW_PROBLEM_NOT_DECIMAL;
    }
    for (size_t i = 0; i < tail.n; i++) {
        if (tail.at[i] == '+' && i + 1 < tail.n && tail.at[i + 1] == '-') {
            return HW_PROBLEM_SPREAD;
        }
        if (i + 1 < tail.n && tail.at[i] == '\xC2' && tail.at[i + 1] == '\xB1') {
            return HW_PROBLEM_SPREAD;
        }
    }
    return hw_unit_begins(tail.at, tail.n) ? HW_FINE : HW_PROBLEM_NOT_A_NUMBER;
}

static enum hw_problem unknown_unit(struct hw_text unit)
{
    static const char *const house[] = {"drop",  "spoon",  "teaspoon", "tablespoon", "scoop",
                                        "pinch", "capful", "cap",      "dash"};
    for (size_t i = 0; i < sizeof house / sizeof house[0]; i++) {
        if (begins(unit, house[i])) {
            return HW_PROBLEM_HOUSE_MEASURE;
        }
    }
    return hw_unit_find_any(unit.at, unit.n) ? HW_PROBLEM_WRONG_KIND : HW_PROBLEM_UNKNOWN_UNIT;
}

/* A spoon is a volume of liquid; of a powder it is a guess. */
static bool is_spoon(struct hw_text unit)
{
    return (unit.n == 3 && memcmp(unit.at, "tsp", 3) == 0) ||
           (unit.n == 4 && memcmp(unit.at, "tbsp", 4) == 0) ||
           (unit.n == 3 && memcmp(unit.at, "cup", 3) == 0);
}

static enum hw_problem find_unit(const struct hw_input *input, struct hw_text text,
                                 const struct hw_unit **unit)
{
    *unit = hw_unit_find(input->kind, text.at, text.n);
    if (*unit) {
        return HW_FINE;
    }
    if (!hw_unit_of(input->kind, input->unit)) {
        return HW_PROBLEM_UNIT_UNWANTED;
    }
    bool powder = input->kind == HW_MASS || input->kind == HW_MASS_PER_DAY;
    if (powder && is_spoon(text)) {
        return HW_PROBLEM_HOUSE_MEASURE;
    }
    return unknown_unit(text);
}

static const struct {
    double lo, hi;
} gravity = {0.98, 1.06};

/* A salinity without a unit beside it that looks like a specific gravity; a unit in the name of its
 * column says what the column was meant to hold, not what was typed. What is 0 unless told is no
 * such reading: if it may be below, it is the error of an instrument; else it is fresh water, and 1
 * is either its gravity or 1 g/kg, which is next to it. */
static bool looks_like_gravity(const struct hw_input *input, const struct hw_unit *column,
                               double value)
{
    bool salinity = input->kind == HW_SALINITY && (!column || column->kind == HW_SALINITY);
    bool zero_assumed = input->need == HW_PRESET && input->preset == 0;
    bool taken = zero_assumed && (input->lo < 0 || value == 1);
    return salinity && !taken && value >= gravity.lo && value <= gravity.hi;
}

double hw_value_off_zero(double x)
{
    return fabs(x) < HW_VALUE_LEAST ? 0 : x;
}

/* An end of the range that was written in another unit may come back a rounding error beside it:
 * then it is the end. Outside the error may be one of the whole range, for units with an offset;
 * inside it is a few of the last bits of the end itself. */
static double onto_end(double value, double end, bool outside, double size)
{
    double slack = outside ? 64 * (DBL_EPSILON * size) : 8 * (DBL_EPSILON * fabs(end));
    return fabs(value - end) <= slack ? end : value;
}

static enum hw_problem in_range(const struct hw_input *input, bool converted, double *value)
{
    if (converted) {
        double size = fabs(input->hi) > fabs(input->lo) ? fabs(input->hi) : fabs(input->lo);
        *value = onto_end(*value, input->lo, *value < input->lo, size);
        *value = onto_end(*value, input->hi, *value > input->hi, size);
    }
    if (!(*value >= input->lo && *value <= input->hi)) {
        return HW_PROBLEM_OUT_OF_RANGE;
    }
    if (input->kind == HW_COUNT && *value != floor(*value)) {
        return HW_PROBLEM_NOT_WHOLE;
    }
    if (hw_value_off_zero(*value) != *value) {
        return HW_PROBLEM_NEAR_ZERO;
    }
    *value += 0.0; /* -0 becomes 0 */
    return HW_FINE;
}

/* A number that was read, with the unit that was written or that the column carries, or none. */
static enum hw_problem finish_number(const struct hw_input *input, double x,
                                     const struct hw_unit *unit, double *value)
{
    if (!(x >= -DBL_MAX && x <= DBL_MAX)) {
        return HW_PROBLEM_TOO_LARGE;
    }
    if (x != 0 && fabs(x) < DBL_MIN && input->lo <= 0) {
        return HW_PROBLEM_NEAR_ZERO; /* in any unit, and a conversion might make it 0 */
    }
    if (unit && unit->kind != input->kind) {
        return HW_PROBLEM_WRONG_KIND; /* the column's, when entries of one name differ in kind */
    }
    if (!unit && hw_unit_must(input)) {
        return HW_PROBLEM_NEEDS_UNIT;
    }
    if (unit) {
        x = hw_unit_convert(x, unit, hw_unit_of(input->kind, input->unit));
    }
    enum hw_problem problem = in_range(input, unit != NULL, &x);
    if (problem == HW_FINE) {
        *value = x;
    }
    return problem;
}

enum hw_problem hw_number_read(const struct hw_input *input, struct hw_text text, double *x,
                               const struct hw_unit **written)
{
    *written = NULL;
    text = hw_text_trimmed(text);
    if (text.n == 0) {
        return HW_PROBLEM_EMPTY;
    }
    if (text.n > HW_TEXT_MAX) {
        return HW_PROBLEM_NOT_A_NUMBER;
    }
    struct hw_text number = {text.at, read_decimal(text, x)};
    if (number.n == 0) {
        return not_a_number(text);
    }
    struct hw_text rest = {text.at + number.n, text.n - number.n};
    enum hw_problem problem = after_number(number, rest);
    struct hw_text tail = hw_text_trimmed(rest);
    if (problem == HW_FINE && tail.n > 0) {
        problem = find_unit(input, tail, written);
    }
    return problem;
}

enum hw_problem hw_number_settle(const struct hw_input *input, double x,
                                 const struct hw_unit *written, const struct hw_unit *column,
                                 double *value)
{
    if (!written && looks_like_gravity(input, column, x)) {
        return HW_PROBLEM_GRAVITY;
    }
    return finish_number(input, x, written ? written : column, value);
}

/* A unit of the column converts, but for the input's own, and moves what is next to an end; whole
 * numbers are looked at one by one. */
void hw_number_kept(const struct hw_input *input, const struct hw_unit *column,
                    struct hw_span *span)
{
    double from = input->kind == HW_SALINITY ? gravity.hi : HW_VALUE_LEAST;
    bool converts = column ? column != hw_unit_of(input->kind, input->unit) : hw_unit_must(input);
    bool none = converts || input->words || input->kind == HW_COUNT;
    double next_to_end = column ? 16 * DBL_EPSILON : 0;
    span->above = fmax(from, input->lo + next_to_end * fabs(input->lo));
    span->to = none ? span->above : input->hi - next_to_end * fabs(input->hi);
}

static char fold(char c)
{
    if (c == '-') {
        return '_';
    }
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

bool hw_name_is(const char *name, const char *text, size_t n)
{
    if (strlen(name) != n) {
        return false;
    }
    for (size_t i = 0; i < n; i++) {
        if (fold(name[i]) != fold(text[i])) {
            return false;
        }
    }
    return true;
}

static int find_word(const char *const *words, const char *at, size_t n)
{
    for (int i = 0; words && words[i]; i++) {
        if (hw_name_is(words[i], at, n)) {
            return i;
        }
    }
    return -1;
}

static enum hw_problem read_set(const struct hw_input *input, struct hw_text text, double *value)
{
    uint32_t bits = 0;
    for (size_t from = 0; from <= text.n;) {
        const char *comma = memchr(text.at + from, ',', text.n - from);
        size_t to = comma ? (size_t)(comma - text.at) : text.n;
        struct hw_text part = hw_text_trimmed((struct hw_text){text.at + from, to - from});
        int word = find_word(input->words, part.at, part.n);
        if (word < 0) {
            return HW_PROBLEM_UNKNOWN_WORD;
        }
        if (bits & (UINT32_C(1) << word)) {
            return HW_PROBLEM_WORD_TWICE;
        }
        bits |= UINT32_C(1) << word;
        from = to + 1;
    }
    bool has_none = (bits & 1u) != 0 && find_word(input->words, "none", 4) == 0;
    if (has_none && bits != 1u) {
        return HW_PROBLEM_NOT_ALONE;
    }
    *value = bits;
    return HW_FINE;
}

enum hw_problem hw_value_read(const struct hw_input *input, struct hw_text text,
                              const struct hw_unit *column, double *value,
                              const struct hw_unit **written)
{
    double x = 0;
    *written = NULL;
    if (!input->words && text.n > 0 && read_decimal(text, &x) == text.n) {
        /* nothing but a number: what most cells are */
        return hw_number_settle(input, x, NULL, column, value);
    }
    text = hw_text_trimmed(text);
    if (text.n == 0) {
        return HW_PROBLEM_EMPTY;
    }
    if (input->kind == HW_CHOICE || input->kind == HW_YES_NO) {
        int word = find_word(input->words, text.at, text.n);
        if (word < 0) {
            return HW_PROBLEM_UNKNOWN_WORD;
        }
        *value = word;
        return HW_FINE;
    }
    if (input->kind == HW_SET) {
        return read_set(input, text, value);
    }
    const struct hw_unit *unit = NULL;
    enum hw_problem problem = hw_number_read(input, text, &x, &unit);
    if (problem == HW_FINE) {
        problem = hw_number_settle(input, x, unit, column, value);
    }
    *written = problem == HW_FINE ? unit : NULL;
    return problem;
}

size_t hw_words_count(const char *const *words)
{
    size_t n = 0;
    while (words[n]) {
        n++;
    }
    return n;
}
