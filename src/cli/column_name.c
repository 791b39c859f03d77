/* column_name.c - what a column's name says: an input, perhaps with a unit. */
#include "cli/column_name.h"

#include <stdio.h>
#include <string.h>

enum { SPELT_MAX = 40 };

/* A unit as it is spelt in a column's name: '/' and '.' are '_', '%' is pct, C is degC. */
static void spell_unit(const char *unit, char spelt[SPELT_MAX])
{
    size_t n = 0;
    if (strcmp(unit, "C") == 0) {
        unit = "degC";
    }
    for (; *unit != '\0' && n + 4 < SPELT_MAX; unit++) {
        if (*unit == '%') {
            memcpy(spelt + n, "pct", 3);
            n += 3;
        } else {
            spelt[n++] = *unit == '/' || *unit == '.' ? '_' : *unit;
        }
    }
    spelt[n] = '\0';
}

void column_name(const char *name, const char *part, const char *unit, char text[COLUMN_NAME_MAX])
{
    char spelt[SPELT_MAX];
    spell_unit(unit, spelt);
    (void)snprintf(text, COLUMN_NAME_MAX, "%s%s%s%s", name, part, spelt[0] == '\0' ? "" : "_",
                   spelt);
}

/* Small letters, and what may stand between two words as one. */
static char fold(char c)
{
    if (c == ' ' || c == '-') {
        return '_';
    }
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

bool column_folds_to(const char *word, const char *text, size_t n)
{
    size_t i = 0;
    while (i < n && word[i] != '\0' && fold(word[i]) == fold(text[i])) {
        i++;
    }
    return i == n && word[n] == '\0';
}

/* Behind the first n bytes of a column's name its unit: after '_' or a blank, or in brackets. at is
 * NULL when nothing can be one. */
static struct hw_text unit_part(struct hw_text name, size_t n)
{
    static const struct hw_text none = {NULL, 0};
    struct hw_text rest = {name.at + n, name.n - n};
    bool apart = rest.n > 0 && (rest.at[0] == '_' || rest.at[0] == ' ');
    rest = apart ? hw_text_trimmed((struct hw_text){rest.at + 1, rest.n - 1}) : rest;
    bool bracketed = rest.n > 2 && ((rest.at[0] == '(' && rest.at[rest.n - 1] == ')') ||
                                    (rest.at[0] == '[' && rest.at[rest.n - 1] == ']'));
    if (bracketed) {
        rest = hw_text_trimmed((struct hw_text){rest.at + 1, rest.n - 2});
    }
    return (apart || bracketed) && rest.n > 0 ? rest : none;
}

static const struct hw_unit *spelt_unit(enum hw_kind kind, const char *text, size_t n)
{
    for (const struct hw_unit *unit = hw_units; unit->name; unit++) {
        char spelt[SPELT_MAX] = "";
        spell_unit(unit->name, spelt);
        bool degrees = kind == HW_TEMPERATURE && n > 3 && column_folds_to("deg", text, 3) &&
                       column_folds_to(unit->name, text + 3, n - 3);
        if (unit->kind == kind &&
            (column_folds_to(spelt, text, n) || column_folds_to(unit->name, text, n) || degrees)) {
            return unit;
        }
    }
    return hw_unit_find(kind, text, n);
}

const struct hw_unit *column_unit_within(enum hw_kind kind, struct hw_text name)
{
    const struct hw_unit *found = NULL;
    for (size_t i = 0; i < name.n;) {
        size_t n = 0;
        while (i + n < name.n && !strchr(" _()[],;", name.at[i + n])) {
            n++;
        }
        const struct hw_unit *unit = n > 0 && i > 0 ? spelt_unit(kind, name.at + i, n) : NULL;
        found = unit ? unit : found;
        i += n + 1;
    }
    return found;
}

/* The longest one: mg_L, and not L. */
const struct hw_unit *column_unit(struct hw_text name, size_t *n)
{
    for (*n = 1; *n < name.n; ++*n) {
        struct hw_text part = unit_part(name, *n);
        for (const struct hw_unit *unit = hw_units; part.at && unit->name; unit++) {
            const struct hw_unit *found = spelt_unit(unit->kind, part.at, part.n);
            if (found) {
                return found;
            }
        }
    }
    *n = name.n;
    return NULL;
}

bool column_tells(const char *word, enum hw_kind kind, struct hw_text name,
                  const struct hw_unit **unit)
{
    size_t n = strlen(word);
    name = hw_text_trimmed(name);
    *unit = NULL;
    if (column_folds_to(word, name.at, name.n)) {
        return true;
    }
    if (name.n > n + 1 && column_folds_to(word, name.at, n)) {
        struct hw_text part = unit_part(name, n);
        *unit = part.at ? spelt_unit(kind, part.at, part.n) : NULL;
    }
    return *unit != NULL;
}

bool column_match(const struct hw_calc *calc, struct hw_text name, size_t *input,
                  const struct hw_unit **unit)
{
    name = hw_text_trimmed(name);
    while (name.n > 1 && name.at[name.n - 1] == '?') {
        name = hw_text_trimmed((struct hw_text){name.at, name.n - 1}); /* "Fish?" */
    }
    *unit = NULL;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (column_folds_to(calc->inputs[i].name, name.at, name.n)) {
            *input = i;
            return true;
        }
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        size_t n = strlen(calc->inputs[i].name);
        if (name.n > n + 1 && column_folds_to(calc->inputs[i].name, name.at, n)) {
            struct hw_text part = unit_part(name, n);
            *unit = part.at ? spelt_unit(calc->inputs[i].kind, part.at, part.n) : NULL;
            if (*unit) {
                *input = hw_input_first(calc, i);
                return true;
            }
        }
    }
    return false;
}
