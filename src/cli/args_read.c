/* args_read.c - a strict reader of options: exact names, nothing twice, nothing left over. */
#include "cli/args_read.h"

#include "cli/args_check.h"
#include "cli/args_words.h"
#include "cli/column_name.h"
#include "cli/message.h"
#include "cli/stream.h"
#include "cli/suggest.h"
#include "cli/topic.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

bool args_want_help(int argc, char *argv[], int from)
{
    for (int i = from; i < argc; i++) {
        bool named = strncmp(argv[i], "--", 2) == 0;
        if ((named && hw_name_is("help", argv[i] + 2, strlen(argv[i] + 2))) ||
            strcmp(argv[i], "-h") == 0) {
            return true;
        }
    }
    return false;
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
    for (size_t i = 0; i < GENERAL_OPTIONS; i++) {
        suggest_weigh(&near, general_options[i].name);
    }
    if (!topic_options(calc, word, suggestion, sizeof suggestion)) {
        suggest_text(&near, "--", suggestion);
    }
    complain("%s has no option --%s%s", calc->name, word, suggestion);
    message_try_help(calc);
    return false;
}

static bool read_format(struct hw_text text, struct args *args)
{
    int word = option_word("format", format_words, text);
    args->format = word < 0 ? FORMAT_TEXT : (enum format)word;
    args->format_given = true;
    return word >= 0;
}

static bool read_page(struct hw_text text, struct args *args)
{
    int word = option_word("page", page_words, text);
    args->page = word < 0 ? PAGE_PHONE : (enum page)word;
    args->page_given = true;
    return word >= 0;
}

static bool read_on_bad(struct hw_text text, struct args *args)
{
    int word = option_word("on-bad", on_bad_words, text);
    args->on_bad = word < 0 ? BAD_KEEP : (enum on_bad)word;
    return word >= 0;
}

/* COLUMN=INPUT; the last '=' divides them. */
static bool read_map(struct hw_text text, struct args *args)
{
    size_t cut = text.n;
    while (cut > 0 && text.at[cut - 1] != '=') {
        cut--;
    }
    if (args->n_maps == MAPS_MAX) {
        complain("--map can be given %d times: rename the other columns in the file", MAPS_MAX);
        return false;
    }
    if (cut < 2) {
        return option_wrong("map", text, "COLUMN=INPUT, as in 'Water temp=temp'");
    }
    if (hw_name_is("when", text.at + cut, text.n - cut)) {
        return option_when_map(text, (struct hw_text){text.at, cut - 1}, &args->when_column,
                               &args->time_column);
    }
    if (hw_name_is("tank", text.at + cut, text.n - cut)) {
        return option_tank_map(text, (struct hw_text){text.at, cut - 1}, &args->tank_column);
    }
    struct mapping *map = &args->map[args->n_maps];
    map->column = (struct hw_text){text.at, cut - 1};
    map->input = MAPPED_OWN;
    bool own = hw_name_is("own", text.at + cut, text.n - cut);
    if (!own && !column_match(args->calc, (struct hw_text){text.at + cut, text.n - cut},
                              &map->input, &map->unit)) {
        return option_wrong("map", text, "COLUMN=INPUT with an input of this calculation, or own");
    }
    for (size_t i = 0; i < args->n_maps; i++) {
        bool same_column = map->column.n == args->map[i].column.n &&
                           memcmp(map->column.at, args->map[i].column.at, map->column.n) == 0;
        if (same_column || (!own && map->input == args->map[i].input)) {
            return option_wrong("map", text, "each column and each input once");
        }
    }
    args->n_maps++;
    return true;
}

static bool read_prefix(const char *word, struct args *args)
{
    size_t n = strspn(word, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_");
    if (n == 0 || n > 24 || word[n] != '\0') {
        return option_wrong("prefix", (struct hw_text){word, strlen(word)},
                            "up to 24 letters, digits and _");
    }
    args->prefix = word;
    return true;
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
            return option_no_result("only", calc, name);
        }
        if (args->only[result]) {
            return option_wrong("only", text, "each result once");
        }
        args->only[result] = true;
        args->order[args->n_only++] = result;
        from = to + 1;
    }
    size_t n = args->n_only;
    for (size_t i = 0; i < calc->n_results; i++) {
        if (!args->only[i]) {
            args->order[n++] = i;
        }
    }
    return true;
}

static bool read_general(size_t option, const char *word, struct args *args)
{
    struct hw_text text = {word, strlen(word)};
    switch (option) {
    case OPTION_FORMAT:
        return read_format(text, args);
    case OPTION_PAGE:
        return read_page(text, args);
    case OPTION_ONLY:
        return read_only(text, args);
    case OPTION_DIGITS:
        return option_digits(text, &args->digits);
    case OPTION_TANK:
        args->tank = word;
        return true;
    case OPTION_TANKS:
        args->tanks = word;
        return true;
    case OPTION_ROWS:
        args->rows = word;
        return true;
    case OPTION_MAP:
        return read_map(text, args);
    case OPTION_PREFIX:
        return read_prefix(word, args);
    case OPTION_SEPARATOR:
        return option_separator(text, &args->separator);
    case OPTION_DECIMAL:
        return option_decimal(text, &args->decimal_comma);
    case OPTION_ON_BAD:
        return read_on_bad(text, args);
    case OPTION_LOG:
        args->log = word;
        return true;
    case OPTION_NOTE:
        args->note = word;
        return option_note(word);
    case OPTION_WHEN:
        args->when = word;
        return option_when(word);
    case OPTION_SOLVE:
        return option_solve(args->calc, text, &args->solve);
    case OPTION_FOR:
        return option_for(args->calc, text, &args->wanted, &args->wanted_value, &args->wanted_unit);
    case OPTION_SPREAD:
        args->spread = true;
        return true;
    case OPTION_FULL:
        args->full = true;
        return true;
    case OPTION_TSV:
        return option_separator((struct hw_text){"tab", 3}, &args->separator);
    default:
        args->work = true;
        return true;
    }
}

/* All entries of a name share one writing. False when it was written before. */
static bool write_input(struct args *args, size_t first, const char *word)
{
    const struct hw_calc *calc = args->calc;
    struct hw_text text = {word, strlen(word)};
    if (args->written[first].text.at) {
        return false;
    }
    for (size_t i = first; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        args->written[i].text = text;
        args->written[i].from = HW_GIVEN;
    }
    return true;
}

/* The input that is solved for, under all entries of its name. */
static void mark_solved(struct args *args)
{
    const struct hw_calc *calc = args->calc;
    for (size_t i = args->solve; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        args->written[i].from = HW_SOLVED;
    }
}

static bool repeated(const char *name, size_t n)
{
    complain("--%.*s is given twice: give it once", (int)n, name);
    return false;
}

/* The first option that takes the word, as "; did you mean --kind dye?", else those that it stands
 * for; "" where there is none. Yes and no say nothing of their option. */
static void option_of_word(const struct hw_calc *calc, const char *word, char text[SUGGEST_TEXT])
{
    bool says_nothing =
        hw_name_is("yes", word, strlen(word)) || hw_name_is("no", word, strlen(word));
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const char *const *words = calc->inputs[i].words;
        for (size_t k = 0; words && words[k] && !says_nothing; k++) {
            if (hw_name_is(words[k], word, strlen(word))) {
                char option[OPTION_MAX];
                option_name(calc->inputs[i].name, option);
                (void)snprintf(text, SUGGEST_TEXT, "; did you mean --%s %s?", option, words[k]);
                return;
            }
        }
    }
    if (hw_input_find(calc, word, strlen(word)) < calc->n_inputs) {
        (void)snprintf(text, SUGGEST_TEXT, "; did you mean --%.100s?", word);
        return;
    }
    (void)topic_options(calc, word, text, SUGGEST_TEXT);
}

/* One hyphen before a letter, a dash, a long dash or a minus. */
static bool begins_with_dash(const char *word)
{
    static const char *const dashes[] = {"\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x88\x92"};
    bool dash = word[0] == '-' && strcspn(word + 1, "-.0123456789") > 0;
    for (size_t i = 0; i < sizeof dashes / sizeof dashes[0]; i++) {
        dash = dash || strncmp(word, dashes[i], strlen(dashes[i])) == 0;
    }
    return dash;
}

/* A word that no option begins. `before` is the word before it: a value whose unit this is,
 * perhaps. */
static bool unexpected(const struct hw_calc *calc, const char *word, const char *before)
{
    char shown[SHOWN_MAX];
    char number[SHOWN_MAX];
    char suggestion[SUGGEST_TEXT];
    option_of_word(calc, word, suggestion);
    show_text((struct hw_text){word, strlen(word)}, shown);
    show_text((struct hw_text){before, strlen(before)}, number);
    if (hw_unit_find_any(word, strlen(word)) && strcspn(before, ".0123456789") == 0) {
        complain("'%s' is not an option: write a value and its unit as one word, %s%s", shown,
                 number, shown);
    } else if (begins_with_dash(word)) {
        complain("'%s': an option begins with two hyphens, --", shown);
    } else {
        complain("'%s' is not an option: values are written as --NAME VALUE%s", shown, suggestion);
    }
    message_try_help(calc);
    return false;
}

/* One option as it stands on the command line. */
struct option {
    const char *name; /* not ended by NUL when a value follows after '=' */
    size_t n;
    size_t input;   /* the input of that name, or calc->n_inputs */
    size_t general; /* the general option of that name, or GENERAL_OPTIONS */
    const char *value;
};

/* Finds the option that argv[*i] names, and its value, which may be the next word. */
static bool find_option(int argc, char *argv[], const struct hw_calc *calc, int *i,
                        struct option *option)
{
    const char *word = argv[*i];
    if (strncmp(word, "--", 2) != 0 || word[2] == '\0') {
        return unexpected(calc, word, argv[*i - 1]);
    }
    option->name = word + 2;
    option->n = strcspn(option->name, "=");
    option->input = hw_input_find(calc, option->name, option->n);
    option->general = options_find(general_options, option->name, option->n);
    if (option->input == calc->n_inputs && option->general == GENERAL_OPTIONS) {
        return unknown_option(calc, option->name, option->n);
    }
    bool takes_value = option->input < calc->n_inputs || general_options[option->general].value;
    bool joined = option->name[option->n] == '=';
    bool none_follows =
        *i + 1 == argc || (option->input < calc->n_inputs && strncmp(argv[*i + 1], "--", 2) == 0);
    if (joined && !takes_value) {
        complain("--%s takes no value", general_options[option->general].name);
        return false;
    }
    if (joined) {
        option->value = option->name + option->n + 1;
    } else if (takes_value && none_follows) {
        complain("--%.*s needs a value after it", (int)option->n, option->name);
        message_try_help(calc);
        return false;
    } else if (takes_value) {
        option->value = argv[++*i];
    }
    return true;
}

/* True for an option that only rows have. */
static bool is_row_option(size_t option)
{
    static const size_t of_rows[] = {OPTION_SEPARATOR, OPTION_DECIMAL, OPTION_TSV,
                                     OPTION_MAP,       OPTION_PREFIX,  OPTION_ON_BAD};
    for (size_t i = 0; i < sizeof of_rows / sizeof of_rows[0]; i++) {
        if (of_rows[i] == option) {
            return true;
        }
    }
    return false;
}

bool args_read(int argc, char *argv[], const struct hw_calc *calc, struct args *args)
{
    *args = (struct args){.calc = calc, .format = FORMAT_TEXT, .prefix = ""};
    args->solve = calc->n_inputs;
    args->wanted = calc->n_results;
    bool general_seen[GENERAL_OPTIONS] = {false};
    for (size_t i = 0; i < calc->n_results; i++) {
        args->only[i] = true;
        args->order[i] = i;
    }
    for (int i = 2; i < argc; i++) {
        struct option option = {.value = ""};
        if (!find_option(argc, argv, calc, &i, &option)) {
            return false;
        }
        bool is_input = option.input < calc->n_inputs;
        bool first_time =
            is_input ? write_input(args, option.input, option.value)
                     : !general_seen[option.general] || general_options[option.general].repeats;
        if (!first_time) {
            return repeated(option.name, option.n);
        }
        if (!is_input) {
            general_seen[option.general] = true;
            args->row_option = args->row_option || is_row_option(option.general);
            if (!read_general(option.general, option.value, args)) {
                return false;
            }
        }
    }
    mark_solved(args);
    return args_check(args);
}
