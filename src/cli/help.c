/* help.c - prints the help from the tables of the calculations. */
#include "cli/help.h"

#include "cli/args.h"
#include "cli/by_hand.h"
#include "cli/help_files.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum {
    MAP_COLUMN = 14,
    OPTION_COLUMN = 26,
    INPUT_COLUMN = 25,
    EXAMPLES_SHOWN = 3,
    MANY_INPUTS = 20,
    WORD_TEXT = 64
};

const struct help_page help_pages[] = {{"asking", help_asking},
                                       {"log", help_log},
                                       {"logbook", help_log},
                                       {"tanks", help_tanks},
                                       {NULL, NULL}};

static const uint32_t ALL_WORDS = UINT32_MAX;

const struct hw_calc *calc_find(const char *name)
{
    for (size_t i = 0; hw_calcs[i]; i++) {
        if (strcmp(hw_calcs[i]->name, name) == 0) {
            return hw_calcs[i];
        }
    }
    return NULL;
}

static void print_entry_at(const char *entry, const char *text, size_t column)
{
    size_t printed = (size_t)printf("  %s", entry);
    if (printed >= column) {
        (void)putchar('\n');
        printed = 0;
    }
    print_blanks(column - printed);
    print_wrapped(text, column, column);
}

void help_map(void)
{
    (void)puts("holdwater: the water chemistry of quarantine tanks");
    for (size_t i = 0; stages[i].name; i++) {
        (void)printf("%s\n", stages[i].name);
        for (size_t k = 0; stages[i].calculations[k]; k++) {
            const char *name = stages[i].calculations[k];
            const struct by_hand *command = by_hand_find(name);
            const struct hw_calc *calc = command ? command->caption : calc_find(name);
            if (calc) {
                print_entry_at(calc->name, calc->purpose, MAP_COLUMN);
            }
        }
    }
    (void)puts("ask: holdwater CALCULATION --NAME VALUE ...\n"
               "more: holdwater help NAME, help asking, help log, units, sources, cautions\n"
               "Fish gasp, or ammonia shows? Type: holdwater emergency\n"
               "Not veterinary advice: ask a veterinarian, follow labels and local rules.");
}

bool help_card(const struct hw_calc *calc)
{
    for (size_t i = 0; cards[i].calculation; i++) {
        if (strcmp(cards[i].calculation, calc->name) == 0) {
            for (size_t k = 0; cards[i].lines[k]; k++) {
                (void)puts(cards[i].lines[k]);
            }
            return true;
        }
    }
    return false;
}

/* --- Inputs ----------------------------------------------------------------------------------- */

static void add(char *text, size_t size, const char *more)
{
    size_t used = strlen(text);
    (void)snprintf(text + used, size - used, "%s", more);
}

/* A letter for a group of inputs, '*' for one that must be given, or ' '. */
static char mark_of(const struct hw_input *input)
{
    if (input->group != 0) {
        return (char)('a' + input->group - 1);
    }
    return input->need == HW_REQUIRED ? '*' : ' ';
}

/* True when several words begin as `stem` does, and each of them is among the bits. */
static bool whole_stem(const struct hw_input *choice, uint32_t bits, const char *stem, size_t n)
{
    size_t found = 0;
    for (size_t i = 0; choice->words[i]; i++) {
        bool begins = strncmp(choice->words[i], stem, n) == 0;
        found += begins ? 1 : 0;
        if (begins && ((bits >> i) & 1u) == 0) {
            return false;
        }
    }
    return found > 1;
}

/* Adds the words of some bits: "copper-..., dye". */
static void add_words(const struct hw_input *choice, uint32_t bits, char *text, size_t size)
{
    const char *join = " ";
    char before[WORD_TEXT] = "";
    for (size_t i = 0; choice->words && choice->words[i]; i++) {
        const char *hyphen = strchr(choice->words[i], '-');
        size_t n = hyphen ? (size_t)(hyphen - choice->words[i]) + 1 : 0;
        bool stem = bits != ALL_WORDS && n > 0 && whole_stem(choice, bits, choice->words[i], n);
        char word[WORD_TEXT];
        (void)snprintf(word, sizeof word, "%.*s%s", stem ? (int)n : WORD_TEXT - 8, choice->words[i],
                       stem ? "..." : "");
        if (((bits >> i) & 1u) != 0 && strcmp(word, before) != 0) {
            add(text, size, join);
            add(text, size, word);
            join = ", ";
        }
        memcpy(before, word, sizeof before);
    }
}

/* " (with kind copper-...)", " (without volume)". */
static void add_condition(const struct hw_calc *calc, const struct hw_input *input, char *text,
                          size_t size)
{
    const struct hw_input *other = &calc->inputs[input->when_input];
    char option[OPTION_MAX];
    if (input->when_words == 0) {
        return;
    }
    option_name(other->name, option);
    add(text, size, input->when_words == HW_WHEN_UNASKED ? " (without " : " (with ");
    add(text, size, option);
    add_words(other, input->when_words, text, size);
    add(text, size, ")");
}

/* Adds "; else 0 mg/L". */
static void add_preset(const struct hw_input *input, char *text, size_t size)
{
    char preset[ALLOWED_MAX];
    if (input->need != HW_PRESET) {
        return;
    }
    if (input->words) {
        (void)snprintf(preset, sizeof preset, "%s", input->words[(size_t)input->preset]);
    } else {
        amount_text(input->preset, 6, input->unit, preset);
    }
    add(text, size, "; else ");
    add(text, size, preset);
}

/* True when an earlier entry of the name is told with the same words: then it is told once. */
static bool told_before(const struct hw_calc *calc, size_t i)
{
    for (size_t k = hw_input_first(calc, i); k < i; k = hw_input_next(calc, k)) {
        if (strcmp(calc->inputs[k].help, calc->inputs[i].help) == 0) {
            return true;
        }
    }
    return false;
}

/* The units of the entries of a name that are told as one: "mg/L, uL/L". */
static void units_of_name(const struct hw_calc *calc, size_t i, char *text, size_t size)
{
    add(text, size, calc->inputs[i].unit);
    for (size_t k = hw_input_next(calc, i); k < calc->n_inputs; k = hw_input_next(calc, k)) {
        bool same = strcmp(calc->inputs[k].help, calc->inputs[i].help) == 0;
        if (same && strcmp(calc->inputs[k].unit, calc->inputs[i].unit) != 0) {
            add(text, size, text[0] == '\0' ? "" : ", ");
            add(text, size, calc->inputs[k].unit);
        }
    }
}

/* One line, or two: "* --temp C   water temperature". */
static void print_input(const struct hw_calc *calc, size_t i)
{
    const struct hw_input *input = &calc->inputs[i];
    char option[OPTION_MAX];
    char unit[ALLOWED_MAX] = "";
    char entry[ALLOWED_MAX];
    char text[3 * ALLOWED_MAX];
    bool twins = hw_input_next(calc, i) < calc->n_inputs;
    option_name(input->name, option);
    units_of_name(calc, i, unit, sizeof unit);
    (void)snprintf(entry, sizeof entry, "%c --%s%s%.60s", mark_of(input), option,
                   unit[0] == '\0' ? "" : " ", unit);
    (void)snprintf(text, sizeof text, "%s", input->help);
    if (input->words) {
        add(text, sizeof text, ":");
        add_words(input, ALL_WORDS, text, sizeof text);
    }
    add_preset(input, text, sizeof text);
    /* where one may be left out, its place is told by the message to who gives it elsewhere */
    bool alone = !twins || strcmp(calc->inputs[hw_input_next(calc, i)].help, input->help) != 0;
    if (alone && input->need == HW_REQUIRED) {
        add_condition(calc, input, text, sizeof text);
    }
    print_entry_at(entry, text, INPUT_COLUMN);
}

/* The first input of a group, or n_inputs. */
static size_t first_of_group(const struct hw_calc *calc, int group)
{
    size_t i = 0;
    while (i < calc->n_inputs && calc->inputs[i].group != group) {
        i++;
    }
    return i;
}

static void print_legend(const struct hw_calc *calc)
{
    (void)puts("inputs (* must be given; asking: holdwater help asking)");
    for (int group = 1; first_of_group(calc, group) < calc->n_inputs; group++) {
        const struct hw_input *input = &calc->inputs[first_of_group(calc, group)];
        (void)printf("  %c: give %s one of these\n", mark_of(input),
                     input->need == HW_OPTIONAL ? "at most" : "exactly");
    }
}

static void print_results(const struct hw_calc *calc)
{
    char text[4 * ALLOWED_MAX] = "";
    for (size_t i = 0; i < calc->n_results; i++) {
        const struct hw_result *result = &calc->results[i];
        add(text, sizeof text, i == 0 ? "" : ", ");
        add(text, sizeof text, result->name);
        add(text, sizeof text, result->unit[0] == '\0' ? "" : " ");
        add(text, sizeof text, result->unit);
    }
    (void)fputs("results: ", stdout);
    print_wrapped(text, 9, 2);
}

void help_calc(const struct hw_calc *calc)
{
    (void)printf("holdwater %s: ", calc->name);
    print_wrapped(calc->purpose, strlen(calc->name) + 12, 2);
    (void)puts("examples");
    bool more = help_examples(calc, EXAMPLES_SHOWN - (calc->n_inputs > MANY_INPUTS ? 1 : 0));
    print_legend(calc);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!told_before(calc, i)) {
            print_input(calc, i);
        }
    }
    print_results(calc);
    (void)printf("more: holdwater help %s NAME (of an input or result)%s,\n"
                 "  holdwater cautions %s, holdwater sources %s\n",
                 calc->name, more ? " or examples" : "", calc->name, calc->name);
}

static void print_option(const struct general_option *option)
{
    char entry[OPTION_MAX];
    (void)snprintf(entry, sizeof entry, "--%s%s%s", option->name, option->value ? " " : "",
                   option->value ? option->value : "");
    print_entry_at(entry, option->help, OPTION_COLUMN);
}

void help_by_hand(const struct hw_calc *caption)
{
    (void)printf("holdwater %s: ", caption->name);
    print_wrapped(caption->purpose, strlen(caption->name) + 12, 2);
    (void)puts("examples");
    (void)help_examples(caption, SIZE_MAX);
    (void)puts("options");
    const struct by_hand *command = by_hand_find(caption->name);
    for (const struct general_option *option = command->options; option->name; option++) {
        print_option(option);
    }
    if (command->more) {
        (void)puts(command->more);
    }
    (void)printf("more: holdwater cautions %s, holdwater sources %s\n", caption->name,
                 caption->name);
}

/* --- One name --------------------------------------------------------------------------------- */

static void input_in_full(const struct hw_calc *calc, size_t i)
{
    const struct hw_input *input = &calc->inputs[i];
    char option[OPTION_MAX];
    char allowed[ALLOWED_MAX];
    char text[3 * ALLOWED_MAX];
    option_name(input->name, option);
    allowed_text(input, allowed);
    (void)snprintf(text, sizeof text, "%s; takes %s", input->help, allowed);
    if (input->beyond) {
        add(text, sizeof text, " (outside: ");
        add(text, sizeof text, input->beyond);
        add(text, sizeof text, ")");
    }
    add_preset(input, text, sizeof text);
    add(text, sizeof text, mark_of(input) == '*' ? "; must be given" : "");
    add_condition(calc, input, text, sizeof text);
    size_t at = (size_t)printf("--%s: ", option);
    print_wrapped(text, at, 2);
}

bool help_name(const struct hw_calc *calc, const char *name)
{
    size_t n = strlen(name);
    size_t skip = n > 2 && strncmp(name, "--", 2) == 0 ? 2 : 0;
    size_t input = hw_input_find(calc, name + skip, n - skip);
    size_t result = hw_result_find(calc, name + skip, n - skip);
    if (strcmp(name, "examples") == 0) {
        (void)help_examples(calc, SIZE_MAX);
        return true;
    }
    const struct by_hand *command = by_hand_find(calc->name);
    for (size_t i = 0; command && command->options[i].name; i++) {
        if (hw_name_is(command->options[i].name, name + skip, n - skip)) {
            print_option(&command->options[i]);
            return true;
        }
    }
    for (size_t i = input; i < calc->n_inputs; i = hw_input_next(calc, i)) {
        input_in_full(calc, i);
    }
    if (result < calc->n_results) {
        const struct hw_result *this = &calc->results[result];
        char text[ALLOWED_MAX];
        (void)snprintf(text, sizeof text, "%s%s%s%s%s", this->unit,
                       this->unit[0] == '\0' ? "" : "; ", this->help,
                       this->sometimes ? "; not in every answer" : "",
                       this->detail ? "; told with --full or --only" : "");
        print_wrapped(text, (size_t)printf("%s: ", this->name), 2);
    }
    return input < calc->n_inputs || result < calc->n_results;
}

/* --- What is the same for all ----------------------------------------------------------------- */

void help_asking(void)
{
    static const char *const told[] = {
        "values: a number and its unit, as 75L, 78F, 0.18mg/L, 25%. A bare number takes the unit"
        " that the help shows. Volumes, masses, lengths, shares and strengths must have one."
        " 'holdwater units' has them all.",
        "how sure: 8.1+-0.1 or 8.1+-2% is a value and its standard deviation. Each result then"
        " gets a low and a high: the truth lies between them in about 2 of 3 cases. POSSIBLE is"
        " what an end would raise, of an amount as it is poured.",
        "sweep: 7.8:8.6:0.1 is start, stop and step; two such inputs make a chart.",
        "backwards: --solve INPUT --for RESULT=VALUE looks for an input that is left out.",
        "the text: results first. CAUTION: raised by your values. given, assumed: what was used;"
        " read it. never, mind: true of every such answer. WITHHELD: no dose, and why.",
        "files: --rows FILE answers each line of a CSV file; --tank NAME takes the tank's water "
        "from"
        " the tanks file.",
        "tab key: 'holdwater completion bash' (or zsh, fish) says how.",
        "exit status: 0 answered; 1 an answer could not be given; 2 asked wrongly, or could not "
        "read"
        " or write; 3 withheld for safety.",
    };
    (void)puts("holdwater CALCULATION --NAME VALUE ...: what is the same for all");
    for (size_t i = 0; i < sizeof told / sizeof told[0]; i++) {
        print_wrapped(told[i], 0, 2);
    }
    (void)puts("options");
    for (size_t i = 0; general_options[i].name; i++) {
        print_option(&general_options[i]);
    }
}
