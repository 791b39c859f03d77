/* help.c - prints the help from the tables of the calculations. */
#include "cli/help.h"

#include "cli/args.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/wording.h"

#include <stdio.h>
#include <string.h>

enum { OPTION_COLUMN = 26 };

const struct hw_calc *calc_find(const char *name)
{
    for (size_t i = 0; hw_calcs[i]; i++) {
        if (strcmp(hw_calcs[i]->name, name) == 0) {
            return hw_calcs[i];
        }
    }
    return NULL;
}

static void print_entry(const char *entry, const char *text)
{
    int printed = printf("  %s", entry);
    if (printed > OPTION_COLUMN - 2) {
        (void)putchar('\n');
        printed = 0;
    }
    print_blanks((size_t)(OPTION_COLUMN - printed));
    print_wrapped(text, OPTION_COLUMN, OPTION_COLUMN);
}

void help_map(void)
{
    (void)puts("holdwater: the water chemistry of quarantine tanks\n");
    for (size_t i = 0; stages[i].name; i++) {
        int printed = printf("%s: ", stages[i].name);
        print_wrapped(stages[i].question, (size_t)printed, 2);
        for (size_t k = 0; stages[i].calculations[k]; k++) {
            const struct hw_calc *calc = calc_find(stages[i].calculations[k]);
            if (calc) {
                print_entry(calc->name, calc->purpose);
            }
        }
    }
    (void)puts("\nask: holdwater CALCULATION --NAME VALUE ...");
    print_entry("help CALCULATION", "examples, inputs, results and cautions of one");
    print_entry("units", "every unit that is understood");
    print_entry("sources [KEY]", "where the numbers come from; or those of a CALCULATION");
    print_entry("cautions [CODE]", "what the cautions mean; or those of a CALCULATION");
    print_entry("--version", "the version");
    (void)puts("\nNot veterinary advice: ask a veterinarian, follow labels and local rules.");
}

static void print_examples(const struct hw_calc *calc)
{
    for (size_t i = 0; examples[i].calculation; i++) {
        if (strcmp(examples[i].calculation, calc->name) == 0) {
            (void)fputs("  ", stdout);
            print_wrapped(examples[i].question, 2, 2);
            (void)fputs("    ", stdout);
            print_wrapped(examples[i].command, 4, 8);
        }
    }
}

static const char *value_word(const struct hw_input *input)
{
    if (input->kind == HW_SET) {
        return "WORD,...";
    }
    return input->words ? "WORD" : "VALUE";
}

/* "; exactly one of --take, --share", or at most one. */
static void group_text(const struct hw_calc *calc, const struct hw_input *input, char *text,
                       size_t size)
{
    int group = input->group;
    const char *join = input->need == HW_OPTIONAL ? "; at most one of --" : "; exactly one of --";
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (calc->inputs[i].group == group && hw_input_first(calc, i) == i) {
            char option[OPTION_MAX];
            size_t used = strlen(text);
            option_name(calc->inputs[i].name, option);
            (void)snprintf(text + used, size - used, "%s%s", join, option);
            join = ", --";
        }
    }
}

/* " (with --kind liquid, powder, or without it)", " (with --volume)", " (without --volume)". */
static void condition_text(const struct hw_calc *calc, const struct hw_input *input, char *text,
                           size_t size)
{
    const struct hw_input *other = &calc->inputs[input->when_input];
    bool without = (input->when_words & HW_WHEN_UNASKED) != 0;
    bool alone = input->when_words == HW_WHEN_UNASKED;
    char option[OPTION_MAX];
    size_t used = strlen(text);
    option_name(other->name, option);
    (void)snprintf(text + used, size - used, " (%s --%s", alone ? "without" : "with", option);
    const char *join = " ";
    for (size_t i = 0; other->words && other->words[i]; i++) {
        if (((input->when_words >> i) & 1u) != 0) {
            used = strlen(text);
            (void)snprintf(text + used, size - used, "%s%s", join, other->words[i]);
            join = ", ";
        }
    }
    used = strlen(text);
    (void)snprintf(text + used, size - used, "%s)", without && !alone ? ", or without it" : "");
}

static void need_text(const struct hw_calc *calc, const struct hw_input *input, char *text,
                      size_t size)
{
    char preset[ALLOWED_MAX] = "";
    text[0] = '\0';
    if (input->need == HW_PRESET && input->words) {
        (void)snprintf(preset, sizeof preset, "%s", input->words[(size_t)input->preset]);
    } else if (input->need == HW_PRESET) {
        char number[NUMBER_MAX];
        number_digits(number, input->preset, 6);
        (void)snprintf(preset, sizeof preset, "%.40s%s%s", number,
                       input->unit[0] == '\0' ? "" : " ", input->unit);
    }
    if (input->need == HW_PRESET) {
        (void)snprintf(text, size, "; %s if not given", preset);
    } else if (input->need == HW_REQUIRED && input->group == 0) {
        (void)snprintf(text, size, "; required");
    } else if (input->group != 0) {
        group_text(calc, input, text, size);
    }
    if (input->when_words != 0) {
        condition_text(calc, input, text, size);
    }
}

static void print_input(const struct hw_calc *calc, const struct hw_input *input)
{
    char option[OPTION_MAX];
    char entry[OPTION_MAX + 16];
    char allowed[ALLOWED_MAX];
    char need[ALLOWED_MAX];
    char text[3 * ALLOWED_MAX];
    option_name(input->name, option);
    allowed_text(input, allowed);
    need_text(calc, input, need, sizeof need);
    (void)snprintf(entry, sizeof entry, "--%s %s", option, value_word(input));
    (void)snprintf(text, sizeof text, "%s: %s%s", input->help, allowed, need);
    print_entry(entry, text);
}

static void print_results(const struct hw_calc *calc)
{
    for (size_t i = 0; i < calc->n_results; i++) {
        const struct hw_result *result = &calc->results[i];
        char text[ALLOWED_MAX];
        (void)snprintf(text, sizeof text, "%s%s%s%s%s", result->help,
                       result->unit[0] == '\0' ? "" : ", ", result->unit, "",
                       result->sometimes ? "; where it applies" : "");
        print_entry(result->name, text);
    }
}

static void print_cautions(const struct hw_calc *calc)
{
    uint64_t standing = notes_of_table(calc) & notes_between(calc, HW_STANDING, HW_STANDING);
    for (size_t bit = 0; notes_next(calc, standing, &bit); bit++) {
        (void)fputs("  ", stdout);
        print_wrapped(hw_note_at(calc, bit)->text, 2, 4);
    }
    (void)fputs("  raised by values:", stdout);
    char codes[4 * ALLOWED_MAX] = "";
    uint64_t raised = notes_of_table(calc) & ~standing;
    for (size_t bit = 0; notes_next(calc, raised, &bit); bit++) {
        size_t used = strlen(codes);
        (void)snprintf(codes + used, sizeof codes - used, " %s", hw_note_at(calc, bit)->code);
    }
    print_wrapped(codes[0] == '\0' ? " none" : codes, 19, 4);
}

void help_calc(const struct hw_calc *calc)
{
    (void)printf("holdwater %s: ", calc->name);
    print_wrapped(calc->purpose, strlen(calc->name) + 12, 2);
    (void)puts("\nexamples");
    print_examples(calc);
    (void)puts("\ninputs (a bare number takes the unit of the range)\n"
               "  8.1+-0.1 in place of a value tells how sure it is: results get low and high;\n"
               "  7.8:8.6:0.1 is a sweep, start:stop:step: a table of one, a chart of two;\n"
               "  --solve INPUT --for RESULT=VALUE leaves the input out and looks for it");
    for (size_t i = 0; i < calc->n_inputs; i++) {
        print_input(calc, &calc->inputs[i]);
    }
    (void)puts("\nresults");
    print_results(calc);
    (void)puts("\nanswers");
    for (size_t i = 0; general_options[i].name; i++) {
        char entry[OPTION_MAX];
        (void)snprintf(entry, sizeof entry, "--%s%s%s", general_options[i].name,
                       general_options[i].value ? " " : "",
                       general_options[i].value ? general_options[i].value : "");
        print_entry(entry, general_options[i].help);
    }
    (void)puts("\ncautions");
    print_cautions(calc);
    (void)puts("\nexit status");
    (void)puts("  0 answered; 1 an answer could not be given; 2 asked wrongly, or could not");
    (void)puts("  read or write; 3 withheld for safety");
}
