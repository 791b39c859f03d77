/* wording.c - what a value, a unit, a range or an option looks like to a keeper. */
#include "cli/wording.h"

#include "cli/print.h"
#include "cli/utf8.h"

#include <stdio.h>
#include <string.h>

/* --- What was written ------------------------------------------------------------------------- */

/* The bytes of the printable character that text begins with, or 0. C2 80 to C2 9F would be
 * commands to a terminal. */
static size_t printable_length(struct hw_text text)
{
    unsigned char c = (unsigned char)text.at[0];
    size_t length = utf8_length(text);
    bool control =
        c < ' ' || c == 127 || (length == 2 && c == 0xC2 && (unsigned char)text.at[1] < 0xA0);
    return control ? 0 : length;
}

bool show_text(struct hw_text text, char shown[SHOWN_MAX])
{
    const size_t room = SHOWN_MAX - 4;
    bool exact = true;
    size_t n = 0;
    while (text.n > 0) {
        size_t length = printable_length(text);
        size_t taken = length > 0 ? length : 1;
        if (n + taken > room) {
            (void)snprintf(shown + n, 4, "...");
            return false;
        }
        memcpy(shown + n, length > 0 ? text.at : "?", taken);
        exact = exact && length > 0;
        n += taken;
        text.at += taken;
        text.n -= taken;
    }
    shown[n] = '\0';
    return exact;
}

void option_name(const char *name, char option[OPTION_MAX])
{
    size_t i = 0;
    for (; name[i] != '\0' && i + 1 < OPTION_MAX; i++) {
        option[i] = name[i] == '_' ? '-' : name[i];
    }
    option[i] = '\0';
}

/* --- What may be written ---------------------------------------------------------------------- */

/* Adds to a text that ends with its NUL; what does not fit is cut. */
static void add(char text[ALLOWED_MAX], const char *more)
{
    size_t used = strlen(text);
    (void)snprintf(text + used, ALLOWED_MAX - used, "%s", more);
}

void units_text(enum hw_kind kind, char text[ALLOWED_MAX])
{
    text[0] = '\0';
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        if (unit->kind == kind) {
            add(text, text[0] == '\0' ? "" : ", ");
            add(text, unit->name);
        }
    }
}

static void words_text(const struct hw_input *input, char text[ALLOWED_MAX])
{
    (void)snprintf(text, ALLOWED_MAX, "%s",
                   input->kind == HW_SET     ? "any of, joined by commas: "
                   : input->words[1] == NULL ? "only "
                                             : "one of ");
    for (size_t i = 0; input->words[i]; i++) {
        add(text, i == 0 ? "" : ", ");
        add(text, input->words[i]);
    }
}

static void range_text(const struct hw_input *input, char text[ALLOWED_MAX])
{
    char lo[NUMBER_MAX];
    char hi[NUMBER_MAX];
    number_digits(lo, input->lo, 12);
    number_digits(hi, input->hi, 12);
    (void)snprintf(text, ALLOWED_MAX, "%.40s to %.40s%s%s", lo, hi,
                   input->unit[0] == '\0' ? "" : " ", input->unit);
}

void allowed_text(const struct hw_input *input, char text[ALLOWED_MAX])
{
    if (input->words) {
        words_text(input, text);
        return;
    }
    range_text(input, text);
    char units[ALLOWED_MAX];
    units_text(input->kind, units);
    if (units[0] != '\0') {
        add(text, hw_unit_must(input) ? "; with its unit: " : "; units ");
        add(text, units);
    }
}

/* --- Values ----------------------------------------------------------------------------------- */

void words_of(const struct hw_input *input, double value, char *text, size_t size)
{
    if (input->kind != HW_SET) {
        (void)snprintf(text, size, "%s", input->words[(size_t)value]);
        return;
    }
    uint32_t bits = (uint32_t)value;
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; input->words[i]; i++) {
        if (((bits >> i) & 1u) != 0 && used < size) {
            int n =
                snprintf(text + used, size - used, "%s%s", used == 0 ? "" : ",", input->words[i]);
            used += (size_t)n;
        }
    }
}

void amount_text(double value, int digits, const char *unit, char text[AMOUNT_MAX])
{
    char number[NUMBER_MAX];
    number_digits(number, value, digits);
    (void)snprintf(text, AMOUNT_MAX, "%s%s%s", number, unit[0] == '\0' ? "" : " ", unit);
}

void place_text(const struct hw_input *input, double from, double to, char text[PLACE_MAX])
{
    char a[AMOUNT_MAX];
    char b[AMOUNT_MAX];
    amount_text(from, 6, to > from && to < input->hi && from > input->lo ? "" : input->unit, a);
    amount_text(to, 6, input->unit, b);
    if (from <= input->lo && to >= input->hi) {
        (void)snprintf(text, PLACE_MAX, "anywhere");
    } else if (to <= from) {
        (void)snprintf(text, PLACE_MAX, "at %.50s", a);
    } else if (from <= input->lo) {
        (void)snprintf(text, PLACE_MAX, "below %.50s", b);
    } else if (to >= input->hi) {
        (void)snprintf(text, PLACE_MAX, "above %.50s", a);
    } else {
        (void)snprintf(text, PLACE_MAX, "between %.40s and %.50s", a, b);
    }
}

void target_text(const struct hw_result *result, double value, const struct hw_unit *written,
                 int digits, char text[TARGET_MAX])
{
    const struct hw_unit *kept = hw_unit_of(result->kind, result->unit);
    char amount[AMOUNT_MAX];
    amount_text(value, digits, result->unit, amount);
    (void)snprintf(text, TARGET_MAX, "%.60s", amount);
    if (written && written != kept) {
        char as_written[AMOUNT_MAX];
        amount_text(hw_unit_convert(value, kept, written), 6, written->name, as_written);
        (void)snprintf(text, TARGET_MAX, "%.60s (%.60s as written)", amount, as_written);
    }
}

/* --- The keeper's own units ------------------------------------------------------------------- */

/* A unit for this kind when the one that was written is of the keeper's own system. */
static const struct hw_unit *own_of(const struct hw_unit *unit, enum hw_kind kind)
{
    bool own = unit && (strcmp(unit->name, "gal") == 0 || strcmp(unit->name, "F") == 0);
    bool degrees = own && strcmp(unit->name, "F") == 0 &&
                   (kind == HW_TEMPERATURE || kind == HW_TEMPERATURE_STEP);
    if (degrees) {
        return hw_unit_of(kind, "F");
    }
    return own && unit->kind == kind ? unit : NULL;
}

const struct hw_unit *own_unit(const struct hw_unit *wanted_unit,
                               const struct hw_question *question, enum hw_kind kind)
{
    const struct hw_unit *own = own_of(wanted_unit, kind);
    for (size_t i = 0; !own && i < question->calc->n_inputs; i++) {
        own = own_of(question->unit[i], kind);
    }
    return own;
}
