/* args.c - a strict reader of options: exact names, nothing twice, nothing left over. */
#include "cli/args.h"

#include "cli/message.h"
#include "cli/stream.h"
#include "cli/suggest.h"

#include <stdio.h>
#include <string.h>

const char *const format_words[] = {"text", "json", "value", NULL};

enum { FORMAT, ONLY, DIGITS, WORK, HELP, GENERAL };

const struct general_option general_options[] = {
    [FORMAT] = {"format", "WORD", "text (default), json, or value: one bare number"},
    [ONLY] = {"only", "NAME,...", "only these results"},
    [DIGITS] = {"digits", "N", "significant digits, 1 to 17, of text and value"},
    [WORK] = {"work", NULL, "the working too, step by step"},
    [HELP] = {"help", NULL, "this page"},
    [GENERAL] = {NULL, NULL, NULL},
};

bool args_want_help(int argc, char *argv[], int from)
{
    for (int i = from; i < argc; i++) {
        if (strcmp(argv[i], "--help") == 0 || strcmp(argv[i], "-h") == 0) {
            return true;
        }
    }
    return false;
}

static size_t find_general(const char *name, size_t n)
{
    size_t i = 0;
    while (i < GENERAL && !hw_name_is(general_options[i].name, name, n)) {
        i++;
    }
    return i;
}

static bool unknown_option(const struct hw_calc *calc, const char *name, size_t n)
{
    char word[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text((struct hw_text){name, n}, word);
    struct suggestions near = {.word = word, .n = 0};
    for (size_t i = 0; i < calc->n_inputs; i++) {
        suggest_weigh(&near, calc->inputs[i].name);
    }
    for (size_t i = 0; i < GENERAL; i++) {
        suggest_weigh(&near, general_options[i].name);
    }
    suggest_text(&near, "--", suggestion);
    complain("%s has no option --%s%s", calc->name, word, suggestion);
    message_try_help(calc);
    return false;
}

static bool wrong_word(const char *option, struct hw_text text, const char *allowed)
{
    char word[SHOWN_MAX];
    show_text(text, word);
    complain("--%s '%s': write %s", option, word, allowed);
    return false;
}

static bool read_format(struct hw_text text, struct args *args)
{
    for (int i = 0; format_words[i]; i++) {
        if (strlen(format_words[i]) == text.n && memcmp(format_words[i], text.at, text.n) == 0) {
            args->format = (enum format)i;
            return true;
        }
    }
    return wrong_word("format", text, "text, json or value");
}

static bool read_digits(struct hw_text text, struct args *args)
{
    int digits = 0;
    for (size_t i = 0; i < text.n && i < 3; i++) {
        bool digit = text.at[i] >= '0' && text.at[i] <= '9';
        digits = digit ? digits * 10 + (text.at[i] - '0') : 99;
    }
    if (text.n == 0 || text.n > 2 || digits < 1 || digits > 17) {
        return wrong_word("digits", text, "a whole number from 1 to 17");
    }
    args->digits = digits;
    return true;
}

static bool unknown_result(const struct hw_calc *calc, struct hw_text text)
{
    char word[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    show_text(text, word);
    struct suggestions near = {.word = word, .n = 0};
    for (size_t i = 0; i < calc->n_results; i++) {
        suggest_weigh(&near, calc->results[i].name);
    }
    suggest_text(&near, "", suggestion);
    complain("--only '%s': %s has no such result%s", word, calc->name, suggestion);
    message_results(calc);
    return false;
}

static bool read_only(struct hw_text text, struct args *args)
{
    const struct hw_calc *calc = args->calc;
    memset(args->only, 0, sizeof args->only);
    for (size_t from = 0; from <= text.n;) {
        const char *comma = memchr(text.at + from, ',', text.n - from);
        size_t to = comma ? (size_t)(comma - text.at) : text.n;
        struct hw_text name = {text.at + from, to - from};
        size_t result = hw_result_find(calc, name.at, name.n);
        if (result == calc->n_results) {
            return unknown_result(calc, name);
        }
        if (args->only[result]) {
            return wrong_word("only", text, "each result once");
        }
        args->only[result] = true;
        args->only_first = args->n_only == 0 ? result : args->only_first;
        args->n_only++;
        from = to + 1;
    }
    return true;
}

static bool read_general(size_t option, struct hw_text text, struct args *args)
{
    switch (option) {
    case FORMAT:
        return read_format(text, args);
    case ONLY:
        return read_only(text, args);
    case DIGITS:
        return read_digits(text, args);
    default:
        args->work = true;
        return true;
    }
}

/* All entries of a name share one writing. False when it was written before. */
static bool write_input(struct args *args, size_t first, struct hw_text text)
{
    const struct hw_calc *calc = args->calc;
    if (args->written[first].text.at) {
        return false;
    }
    for (size_t i = first; i < calc->n_inputs; i++) {
        if (strcmp(calc->inputs[i].name, calc->inputs[first].name) == 0) {
            args->written[i].text = text;
            args->written[i].from = HW_GIVEN;
        }
    }
    return true;
}

static bool repeated(const char *name, size_t n)
{
    complain("--%.*s is given twice: give it once", (int)n, name);
    return false;
}

/* Combinations of general options that have no meaning. */
static bool sensible(const struct args *args)
{
    if (args->format == FORMAT_VALUE && args->n_only > 1) {
        complain("--format value prints one number: name one result with --only");
        return false;
    }
    if (args->format == FORMAT_VALUE && args->work) {
        complain("--work has no place in --format value: use text or json");
        return false;
    }
    if (args->format == FORMAT_JSON && args->digits > 0) {
        complain("--digits has no place in --format json, which prints numbers in full");
        return false;
    }
    return true;
}

static bool unexpected(const struct hw_calc *calc, const char *word)
{
    char shown[SHOWN_MAX];
    show_text((struct hw_text){word, strlen(word)}, shown);
    complain("'%s' is not an option: values are written as --NAME VALUE", shown);
    message_try_help(calc);
    return false;
}

/* One option as it stands on the command line. */
struct option {
    const char *name; /* not ended by NUL when a value follows after '=' */
    size_t n;
    size_t input;   /* the input of that name, or calc->n_inputs */
    size_t general; /* the general option of that name, or GENERAL */
    const char *value;
};

/* Finds the option that argv[*i] names, and its value, which may be the next word. */
static bool find_option(int argc, char *argv[], const struct hw_calc *calc, int *i,
                        struct option *option)
{
    const char *word = argv[*i];
    if (strncmp(word, "--", 2) != 0 || word[2] == '\0') {
        return unexpected(calc, word);
    }
    option->name = word + 2;
    option->n = strcspn(option->name, "=");
    option->input = hw_input_find(calc, option->name, option->n);
    option->general = find_general(option->name, option->n);
    if (option->input == calc->n_inputs && option->general == GENERAL) {
        return unknown_option(calc, option->name, option->n);
    }
    bool takes_value = option->input < calc->n_inputs || general_options[option->general].value;
    bool joined = option->name[option->n] == '=';
    option->value = "";
    if (joined && !takes_value) {
        complain("--%s takes no value", general_options[option->general].name);
        return false;
    }
    if (joined) {
        option->value = option->name + option->n + 1;
    } else if (takes_value && *i + 1 == argc) {
        complain("--%.*s needs a value after it", (int)option->n, option->name);
        message_try_help(calc);
        return false;
    } else if (takes_value) {
        option->value = argv[++*i];
    }
    return true;
}

bool args_read(int argc, char *argv[], const struct hw_calc *calc, struct args *args)
{
    *args = (struct args){.calc = calc, .format = FORMAT_TEXT};
    bool general_seen[GENERAL] = {false};
    for (size_t i = 0; i < calc->n_results; i++) {
        args->only[i] = true;
    }
    for (int i = 2; i < argc; i++) {
        struct option option;
        if (!find_option(argc, argv, calc, &i, &option)) {
            return false;
        }
        struct hw_text text = {option.value, strlen(option.value)};
        bool is_input = option.input < calc->n_inputs;
        bool first_time =
            is_input ? write_input(args, option.input, text) : !general_seen[option.general];
        if (!first_time) {
            return repeated(option.name, option.n);
        }
        if (!is_input) {
            general_seen[option.general] = true;
            if (!read_general(option.general, text, args)) {
                return false;
            }
        }
    }
    return sensible(args);
}
