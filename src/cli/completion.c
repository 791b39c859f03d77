/* completion.c - words that may stand where the cursor is, from the tables that the program reads
 * them with. */
#include "cli/completion.h"

#include "cli/args.h"
#include "cli/by_hand.h"
#include "cli/help.h"
#include "cli/stream.h"
#include "cli/wording.h"
#include "tables.h"

#include <stdio.h>
#include <string.h>

/* The word under the cursor: what of it is given back as it stands, and the part that is to
 * grow. */
struct growing {
    struct hw_text kept;
    const char *part;
};

/* One word, where it begins as the part does; of what it is as much as goes before a semicolon. */
static void offer(const struct growing *growing, const char *word, const char *what)
{
    if (strncmp(word, growing->part, strlen(growing->part)) == 0) {
        (void)printf("%.*s%s\t%.*s\n", (int)growing->kept.n, growing->kept.at, word,
                     (int)strcspn(what, ";"), what);
    }
}

static void offer_words(const struct growing *growing, const char *const *words)
{
    for (size_t i = 0; words[i]; i++) {
        offer(growing, words[i], "");
    }
}

/* Keeps the first n bytes of the part, too. */
static void keep(struct growing *growing, size_t n)
{
    growing->kept.n += n;
    growing->part += n;
}

/* After a number: the units of its kind. */
static void offer_units(const struct growing *growing, enum hw_kind kind)
{
    struct growing unit = *growing;
    size_t n = strspn(unit.part, "0123456789.:+-");
    if (n == 0) {
        return;
    }
    keep(&unit, n);
    for (size_t i = 0; hw_units[i].name; i++) {
        if (hw_units[i].kind == kind) {
            offer(&unit, hw_units[i].name, hw_units[i].definition);
        }
    }
}

/* Of a list with commas the last word grows. */
static struct growing last_of_list(const struct growing *growing)
{
    struct growing last = *growing;
    const char *comma = strrchr(last.part, ',');
    if (comma) {
        keep(&last, (size_t)(comma - last.part) + 1);
    }
    return last;
}

/* Entries of one name are read as one of them, so all are offered. */
static void offer_value(const struct growing *growing, const struct hw_calc *calc, size_t input)
{
    for (size_t i = input; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        const struct hw_input *entry = &calc->inputs[i];
        struct growing last = last_of_list(growing);
        if (entry->words) {
            offer_words(entry->kind == HW_SET ? &last : growing, entry->words);
        } else {
            offer_units(growing, entry->kind);
        }
    }
}

static void offer_results(const struct growing *growing, const struct hw_calc *calc)
{
    for (size_t i = 0; i < calc->n_results; i++) {
        offer(growing, calc->results[i].name, calc->results[i].help);
    }
}

/* RESULT=VALUE */
static void offer_target(const struct growing *growing, const struct hw_calc *calc)
{
    size_t n = strcspn(growing->part, "=");
    if (growing->part[n] == '\0') {
        for (size_t i = 0; i < calc->n_results; i++) {
            char target[OPTION_MAX];
            (void)snprintf(target, sizeof target, "%s=", calc->results[i].name);
            offer(growing, target, calc->results[i].help);
        }
        return;
    }
    size_t result = hw_result_find(calc, growing->part, n);
    if (result < calc->n_results) {
        struct growing value = *growing;
        keep(&value, n + 1);
        offer_units(&value, calc->results[result].kind);
    }
}

/* An input is offered once, and without `given` that of a number alone. */
static void offer_inputs(const struct growing *growing, const struct hw_calc *calc,
                         const bool given[])
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        char name[OPTION_MAX];
        option_name(input->name, name);
        if (hw_input_first(calc, i) == i && (given ? !given[i] : !input->words)) {
            offer(growing, name, input->help);
        }
    }
}

static void offer_general(const struct growing *growing, const struct hw_calc *calc,
                          const struct general_option *option)
{
    switch (option->takes) {
    case TAKES_WORD:
        offer_words(growing, option->words);
        break;
    case TAKES_PLAN:
        for (const struct hw_plan *plan = hw_plans; plan->name; plan++) {
            offer(growing, plan->name, "");
        }
        break;
    case TAKES_RESULTS: {
        const struct growing last = last_of_list(growing);
        offer_results(&last, calc);
        break;
    }
    case TAKES_INPUT:
        offer_inputs(growing, calc, NULL);
        break;
    case TAKES_TARGET:
        offer_target(growing, calc);
        break;
    default:
        break;
    }
}

/* Whose options stand on the line. */
struct asked {
    const struct hw_calc *calc;
    const struct general_option *options;
    bool by_hand; /* all options stand in the table, those that are inputs, too */
};

/* The value of an option of that name. */
static void complete_value(const struct growing *growing, const struct asked *asked,
                           struct hw_text name)
{
    const struct general_option *option =
        &asked->options[options_find(asked->options, name.at, name.n)];
    bool files = option->name && (option->takes == TAKES_FILE || option->takes == TAKES_PLAN);
    (void)puts(files ? "files" : "words");
    size_t input = hw_input_find(asked->calc, name.at, name.n);
    if (input < asked->calc->n_inputs) {
        offer_value(growing, asked->calc, input);
    } else if (option->name) {
        offer_general(growing, asked->calc, option);
    }
}

/* The options that are not there yet. */
static void complete_option(const char *word, const struct asked *asked, int n, char *words[])
{
    bool given[HW_INPUTS] = {false};
    bool seen[OPTIONS_MAX] = {false};
    for (int i = 0; i < n; i++) {
        bool named = strncmp(words[i], "--", 2) == 0;
        const char *name = words[i] + (named ? 2 : 0);
        size_t length = strcspn(name, "=");
        size_t input = named ? hw_input_find(asked->calc, name, length) : HW_INPUTS;
        size_t option = named ? options_find(asked->options, name, length) : 0;
        if (named && input < asked->calc->n_inputs) {
            given[input] = true;
        } else if (named && asked->options[option].name) {
            seen[option] = !asked->options[option].repeats;
        }
    }
    size_t hyphens = strspn(word, "-");
    if (hyphens > 2) {
        return;
    }
    struct growing growing = {{"--", 2}, word + hyphens};
    if (!asked->by_hand) {
        offer_inputs(&growing, asked->calc, given);
    }
    for (size_t i = 0; asked->options[i].name; i++) {
        if (!seen[i]) {
            offer(&growing, asked->options[i].name, asked->options[i].help);
        }
    }
}

/* True when a word is an option whose value is the next word. */
static bool awaits(const struct asked *asked, const char *word)
{
    if (strncmp(word, "--", 2) != 0 || strchr(word, '=')) {
        return false;
    }
    size_t n = strlen(word + 2);
    const struct general_option *option =
        &asked->options[options_find(asked->options, word + 2, n)];
    return hw_input_find(asked->calc, word + 2, n) < asked->calc->n_inputs ||
           (option->name && option->value);
}

static void complete_asking(int n, char *words[], const struct asked *asked)
{
    char *word = words[n - 1];
    bool value = false;
    for (int i = 0; i < n - 1; i++) {
        value = !value && awaits(asked, words[i]);
    }
    size_t equals = strcspn(word, "=");
    if (value) {
        const char *name = words[n - 2] + 2;
        const struct growing growing = {{word, 0}, word};
        complete_value(&growing, asked, (struct hw_text){name, strlen(name)});
    } else if (strncmp(word, "--", 2) == 0 && word[equals] == '=') {
        const struct growing growing = {{word, equals + 1}, word + equals + 1};
        complete_value(&growing, asked, (struct hw_text){word + 2, equals - 2});
    } else {
        (void)puts("words");
        complete_option(word, asked, n - 1, words);
    }
}

/* --- Words that are no options ---------------------------------------------------------------- */

static void offer_names(const struct growing *growing)
{
    for (size_t i = 0; hw_calcs[i]; i++) {
        offer(growing, hw_calcs[i]->name, hw_calcs[i]->purpose);
    }
    for (size_t i = 0; by_hand[i].caption; i++) {
        offer(growing, by_hand[i].caption->name, by_hand[i].caption->purpose);
    }
}

/* What may stand after a command that takes one word: n is 1 there. */
static void complete_plain(const char *command, int n, char *words[])
{
    const struct growing growing = {{"", 0}, words[n - 1]};
    const struct by_hand *hand = n > 1 ? by_hand_find(words[0]) : NULL;
    const struct hw_calc *calc = n > 1 ? (hand ? hand->caption : calc_find(words[0])) : NULL;
    if (n == 2 && calc && strcmp(command, "help") == 0) {
        offer_inputs(&growing, calc, (const bool[HW_INPUTS]){false});
        offer_results(&growing, calc);
        offer(&growing, "examples", "all examples");
    }
    if (n > 1) {
        return;
    }
    if (strcmp(command, "completion") == 0) {
        offer_words(&growing, completion_shells);
        return;
    }
    bool help = strcmp(command, "help") == 0;
    if (help || strcmp(command, "sources") == 0 || strcmp(command, "cautions") == 0) {
        offer_names(&growing);
    }
    for (size_t i = 0; help && help_pages[i].name; i++) {
        offer(&growing, help_pages[i].name, "");
    }
    for (size_t i = 0; i < HW_REFERENCES && strcmp(command, "sources") == 0; i++) {
        offer(&growing, hw_references[i].key, "");
    }
    for (size_t i = 0; i < HW_CAUTIONS && strcmp(command, "cautions") == 0; i++) {
        offer(&growing, hw_cautions[i].code, "");
    }
}

static void complete(int n, char *words[], const char *const commands[])
{
    if (n == 1) {
        const struct growing growing = {{"", 0}, words[0]};
        (void)puts("words");
        offer_names(&growing);
        for (size_t i = 0; commands[i]; i++) {
            if (!by_hand_find(commands[i])) {
                offer(&growing, commands[i], "");
            }
        }
        return;
    }
    const struct by_hand *hand = by_hand_find(words[0]);
    const struct hw_calc *calc = hand ? hand->caption : calc_find(words[0]);
    if (calc) {
        const struct asked asked = {calc, hand ? hand->options : general_options, hand != NULL};
        complete_asking(n - 1, words + 1, &asked);
    } else {
        (void)puts("words");
        complete_plain(words[0], n - 1, words + 1);
    }
}

int completion_run(int argc, char *argv[], const char *const commands[])
{
    if (argc > 3 && strcmp(argv[2], "next") == 0) {
        complete(argc - 3, argv + 3, commands);
        return EXIT_ANSWERED;
    }
    const char *script = argc == 3 ? completion_script(argv[2]) : NULL;
    if (!script) {
        complain("completion takes the name of a shell: bash, zsh or fish");
        return EXIT_ASKED_WRONGLY;
    }
    (void)fputs(script, stdout);
    return EXIT_ANSWERED;
}
