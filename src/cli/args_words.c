/* args_words.c - what stands after the general options. */
#include "cli/args_words.h"

#include "cli/message.h"
#include "cli/options.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/when.h"
#include "cli/wording.h"

#include <float.h>
#include <stdio.h>
#include <string.h>

bool option_wrong(const char *option, struct hw_text text, const char *allowed)
{
    char word[SHOWN_MAX];
    show_text(text, word);
    complain("--%s '%s': write %s", option, word, allowed);
    return false;
}

/* The number of a word in a list, or -1 with a message that names them all. */
int option_word(const char *option, const char *const *words, struct hw_text text)
{
    char allowed[ALLOWED_MAX] = "";
    for (int i = 0; words[i]; i++) {
        size_t used = strlen(allowed);
        if (strlen(words[i]) == text.n && memcmp(words[i], text.at, text.n) == 0) {
            return i;
        }
        (void)snprintf(allowed + used, sizeof allowed - used, "%s%s",
                       i == 0         ? ""
                       : words[i + 1] ? ", "
                                      : " or ",
                       words[i]);
    }
    (void)option_wrong(option, text, allowed);
    return -1;
}

bool option_no_result(const char *option, const struct hw_calc *calc, struct hw_text text)
{
    char word[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text(text, word);
    struct suggestions near = {.word = word, .n = 0};
    for (size_t i = 0; i < calc->n_results; i++) {
        suggest_weigh(&near, calc->results[i].name);
    }
    suggest_text(&near, "", suggestion);
    complain("--%s '%s': %s has no such result%s", option, word, calc->name, suggestion);
    message_results(calc);
    return false;
}

bool option_digits(struct hw_text text, int *value)
{
    int digits = 0;
    for (size_t i = 0; i < text.n && i < 3; i++) {
        bool digit = text.at[i] >= '0' && text.at[i] <= '9';
        digits = digit ? digits * 10 + (text.at[i] - '0') : 99;
    }
    if (text.n == 0 || text.n > 2 || digits < 1 || digits > 17) {
        return option_wrong("digits", text, "a whole number from 1 to 17");
    }
    *value = digits;
    return true;
}

bool option_separator(struct hw_text text, char *separator)
{
    if (*separator != 0) {
        complain("--tsv is --separator tab: give one of them");
        return false;
    }
    for (size_t i = 0; separator_words[i]; i++) {
        if (hw_name_is(separator_words[i], text.at, text.n)) {
            *separator = ",;\t"[i];
            return true;
        }
    }
    return option_wrong("separator", text, "comma, semicolon or tab");
}

bool option_decimal(struct hw_text text, bool *comma)
{
    *comma = hw_name_is("comma", text.at, text.n);
    return *comma || hw_name_is("point", text.at, text.n) ||
           option_wrong("decimal", text, "point or comma");
}

bool option_when_map(struct hw_text text, struct hw_text column, struct hw_text *when,
                     struct hw_text *time)
{
    if (when->at) {
        return option_wrong("map", text, "one column, or DATE+TIME, for when");
    }
    const char *plus = memchr(column.at, '+', column.n);
    size_t n = plus ? (size_t)(plus - column.at) : column.n;
    *when = (struct hw_text){column.at, n};
    if (plus) {
        *time = (struct hw_text){plus + 1, column.n - n - 1};
    }
    return true;
}

bool option_tank_map(struct hw_text text, struct hw_text column, struct hw_text *tank)
{
    if (tank->at) {
        return option_wrong("map", text, "one column for tank");
    }
    *tank = column;
    return true;
}

bool option_when(const char *word)
{
    struct hw_text text = {word, strlen(word)};
    return when_is_iso(text) || option_wrong("when", text, "a time as 2031-03-05T08:15+00:00");
}

enum { NOTE_MAX = 1000 };

bool option_note(const char *word)
{
    if (strlen(word) > NOTE_MAX || strpbrk(word, "\n\r")) {
        complain("--note takes one line of at most %d bytes", NOTE_MAX);
        return false;
    }
    return true;
}

bool option_solve(const struct hw_calc *calc, struct hw_text text, size_t *input)
{
    *input = hw_input_find(calc, text.at, text.n);
    if (*input < calc->n_inputs) {
        return true;
    }
    char word[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text(text, word);
    struct suggestions near = {.word = word, .n = 0};
    for (size_t i = 0; i < calc->n_inputs; i++) {
        suggest_weigh(&near, calc->inputs[i].name);
    }
    suggest_text(&near, "", suggestion);
    complain("--solve '%s': %s has no such input%s", word, calc->name, suggestion);
    message_try_help(calc);
    return false;
}

/* A result as if it were an input, so that its value is read as one. */
static struct hw_input as_input(const struct hw_result *result)
{
    double most = result->kind == HW_COUNT ? 1e15 : DBL_MAX; /* a count is a whole number yet */
    return (struct hw_input){.name = result->name,
                             .unit = result->unit,
                             .help = result->help,
                             .kind = result->kind,
                             .lo = -most,
                             .hi = most};
}

bool option_for(const struct hw_calc *calc, struct hw_text text, size_t *result, double *value,
                const struct hw_unit **unit)
{
    const char *equals = memchr(text.at, '=', text.n);
    if (!equals) {
        return option_wrong("for", text, "RESULT=VALUE, as in --for net=75L");
    }
    struct hw_text name = {text.at, (size_t)(equals - text.at)};
    struct hw_text wanted = {equals + 1, text.n - name.n - 1};
    *result = hw_result_find(calc, name.at, name.n);
    if (*result == calc->n_results) {
        return option_no_result("for", calc, name);
    }
    const struct hw_input target = as_input(&calc->results[*result]);
    enum hw_problem problem = hw_value_read(&target, wanted, NULL, value, unit);
    if (problem != HW_FINE) {
        message_for(&target, wanted, problem);
        return false;
    }
    return true;
}
