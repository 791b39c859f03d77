/* args.c - a strict reader of options: exact names, nothing twice, nothing left over. */
#include "cli/args.h"

#include "cli/args_words.h"
#include "cli/columns.h"
#include "cli/message.h"
#include "cli/stream.h"
#include "cli/suggest.h"

#include <stdio.h>
#include <string.h>

const char *const format_words[] = {"text",  "csv", "tsv", "json", "jsonl",
                                    "value", "log", "svg", NULL};

static const char *const on_bad_words[] = {"keep", "stop", "drop", NULL};

enum {
    FORMAT,
    ONLY,
    DIGITS,
    WORK,
    TANK,
    TANKS,
    ROWS,
    TSV,
    MAP,
    PREFIX,
    ON_BAD,
    WHEN,
    SOLVE,
    FOR,
    SPREAD,
    HELP,
    GENERAL
};

const struct general_option general_options[] = {
    [FORMAT] = {"format", "WORD",
                "text, csv, tsv, json, jsonl, value (one bare number), log (a logbook line) or"
                " svg (the picture of a sweep); text if not given, csv for rows"},
    [ONLY] = {"only", "NAME,...", "only these results"},
    [DIGITS] = {"digits", "N", "significant digits, 1 to 17, of every format but json"},
    [WORK] = {"work", NULL, "the working too, step by step (text and json)"},
    [TANK] = {"tank", "NAME", "inputs that are not given come from this row of the tanks file"},
    [TANKS] = {"tanks", "FILE",
               "the tanks file; if not given $HOLDWATER_TANKS, else"
               " holdwater/tanks.csv in $XDG_CONFIG_HOME"},
    [ROWS] = {"rows", "FILE", "answer every row of a CSV file, or of standard input for -"},
    [TSV] = {"tsv", NULL, "the rows are separated by tabs"},
    [MAP] = {"map", "COLUMN=INPUT",
             "a column with a foreign name feeds this input; may be repeated"},
    [PREFIX] = {"prefix", "WORD", "before the names of the columns that are added to rows"},
    [ON_BAD] = {"on-bad", "WORD",
                "rows that give no answer: keep (with the reason; if not given), stop, or drop"},
    [WHEN] = {"when", "TIME",
              "the time of a log line, as 2031-03-05T08:15+00:00; now if not given"},
    [SOLVE] = {"solve", "INPUT", "look for this input, so that --for is met"},
    [FOR] = {"for", "RESULT=VALUE", "what --solve is to reach"},
    [SPREAD] = {"spread", NULL,
                "rows take values with an uncertainty, as 8.1+-0.1, and each result gets its"
                " low and high"},
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

static bool read_format(struct hw_text text, struct args *args)
{
    int word = option_word("format", format_words, text);
    args->format = word < 0 ? FORMAT_TEXT : (enum format)word;
    args->format_given = true;
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
    if (cut < 2 || args->n_maps == MAPS_MAX) {
        return option_wrong("map", text, "COLUMN=INPUT, as in 'Water temp=temp'");
    }
    struct mapping *map = &args->map[args->n_maps];
    map->column = (struct hw_text){text.at, cut - 1};
    if (!column_match(args->calc, (struct hw_text){text.at + cut, text.n - cut}, &map->input,
                      &map->unit)) {
        return option_wrong("map", text, "COLUMN=INPUT with an input of this calculation");
    }
    for (size_t i = 0; i < args->n_maps; i++) {
        bool same_column = map->column.n == args->map[i].column.n &&
                           memcmp(map->column.at, args->map[i].column.at, map->column.n) == 0;
        if (same_column || map->input == args->map[i].input) {
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
        args->only_first = args->n_only == 0 ? result : args->only_first;
        args->n_only++;
        from = to + 1;
    }
    return true;
}

static bool read_general(size_t option, const char *word, struct args *args)
{
    struct hw_text text = {word, strlen(word)};
    switch (option) {
    case FORMAT:
        return read_format(text, args);
    case ONLY:
        return read_only(text, args);
    case DIGITS:
        return option_digits(text, &args->digits);
    case TANK:
        args->tank = word;
        return true;
    case TANKS:
        args->tanks = word;
        return true;
    case ROWS:
        args->rows = word;
        return true;
    case MAP:
        return read_map(text, args);
    case PREFIX:
        return read_prefix(word, args);
    case ON_BAD:
        return read_on_bad(text, args);
    case WHEN:
        args->when = word;
        return option_when(word);
    case SOLVE:
        return option_solve(args->calc, text, &args->solve);
    case FOR:
        return option_for(args->calc, text, &args->wanted, &args->wanted_value, &args->wanted_unit);
    case SPREAD:
        args->spread = true;
        return true;
    case TSV:
        args->tsv = true;
        return true;
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

/* Combinations of general options that have no meaning. */
static const char *nonsense(const struct args *args)
{
    bool json = args->format == FORMAT_JSON || args->format == FORMAT_JSONL;
    if (args->format == FORMAT_VALUE && args->n_only > 1) {
        return "--format value prints one number: name one result with --only";
    }
    if (args->work && args->format != FORMAT_TEXT && !json) {
        return "--work has a place in text and json alone";
    }
    if (json && args->digits > 0) {
        return "--digits has no place in json, which prints numbers in full";
    }
    if (args->when && args->format != FORMAT_LOG) {
        return "--when has a place in --format log alone";
    }
    if (args->tanks && !args->tank) {
        return "--tanks names a file: say which tank with --tank NAME";
    }
    size_t none = args->calc->n_inputs;
    if (args->solve == none && args->wanted < args->calc->n_results) {
        return "--for says what to reach: name what may change with --solve INPUT";
    }
    if (args->solve < none && args->wanted == args->calc->n_results) {
        return "--solve INPUT needs what it is to reach: --for RESULT=VALUE";
    }
    if (args->solve < none && args->rows) {
        return "--solve has no place with --rows: ask one question";
    }
    if (args->spread && !args->rows) {
        return "--spread has a place with --rows alone: one question shows its low and high "
               "without it";
    }
    if (args->row_option && !args->rows) {
        return "--tsv, --map, --prefix and --on-bad have a place with --rows alone";
    }
    if (args->rows && args->work) {
        return "--work has no place with --rows: ask one question";
    }
    if (args->rows && args->format == FORMAT_SVG) {
        return "--format svg draws a sweep: rows have no picture";
    }
    if (args->rows && args->format == FORMAT_TEXT) {
        return "--rows has no text format: leave --format out for csv, or write tsv, jsonl, value "
               "or log";
    }
    return NULL;
}

/* Rows are CSV unless another format is given, and their json is one object a line. */
static bool settle_format(struct args *args)
{
    if (args->rows && !args->format_given) {
        args->format = FORMAT_CSV;
    }
    const char *message = nonsense(args);
    if (message) {
        complain("%s", message);
        return false;
    }
    if (args->rows && args->format == FORMAT_JSON) {
        args->format = FORMAT_JSONL;
    }
    return true;
}

/* A word that no option begins. `before` is the word before it: a value whose unit this is,
 * perhaps. */
static bool unexpected(const struct hw_calc *calc, const char *word, const char *before)
{
    char shown[SHOWN_MAX];
    char number[SHOWN_MAX];
    show_text((struct hw_text){word, strlen(word)}, shown);
    show_text((struct hw_text){before, strlen(before)}, number);
    if (hw_unit_find_any(word, strlen(word)) && strcspn(before, ".0123456789") == 0) {
        complain("'%s' is not an option: write a value and its unit as one word, %s%s", shown,
                 number, shown);
    } else {
        complain("'%s' is not an option: values are written as --NAME VALUE", shown);
    }
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
        return unexpected(calc, word, argv[*i - 1]);
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
    *args = (struct args){.calc = calc, .format = FORMAT_TEXT, .prefix = ""};
    args->solve = calc->n_inputs;
    args->wanted = calc->n_results;
    bool general_seen[GENERAL] = {false};
    for (size_t i = 0; i < calc->n_results; i++) {
        args->only[i] = true;
    }
    for (int i = 2; i < argc; i++) {
        struct option option = {.value = ""};
        if (!find_option(argc, argv, calc, &i, &option)) {
            return false;
        }
        bool is_input = option.input < calc->n_inputs;
        bool first_time = is_input ? write_input(args, option.input, option.value)
                                   : !general_seen[option.general] || option.general == MAP;
        if (!first_time) {
            return repeated(option.name, option.n);
        }
        if (!is_input) {
            general_seen[option.general] = true;
            args->row_option = args->row_option || option.general == TSV || option.general == MAP ||
                               option.general == PREFIX || option.general == ON_BAD;
            if (!read_general(option.general, option.value, args)) {
                return false;
            }
        }
    }
    mark_solved(args);
    return settle_format(args);
}
