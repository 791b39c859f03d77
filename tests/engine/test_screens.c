/* test_screens.c - tests/cli/screens.tsv has a command for each choice of each calculation. */
#include "ask.h"
#include "assert_close.h"
#include "calc/calc.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { TABLE_MAX = 1 << 16, WORDS = 200 };

static char table[TABLE_MAX];

static int read_table(void **state)
{
    (void)state;
    FILE *file = fopen("tests/cli/screens.tsv", "r");
    assert_non_null(file);
    size_t n = fread(table, 1, sizeof table - 1, file);
    (void)fclose(file);
    assert_in_range(n, 1, sizeof table - 2);
    table[n] = '\0';
    return 0;
}

/* True when a command of the calculation has those words, and they end there. */
static bool asked(const struct hw_calc *calc, const char *words)
{
    char start[WORDS];
    (void)snprintf(start, sizeof start, "\t%s ", calc->name);
    for (const char *line = strstr(table, start); line; line = strstr(line + 1, start)) {
        const char *end = strchr(line, '\n');
        for (const char *at = strstr(line, words); at && at < end; at = strstr(at + 1, words)) {
            char next = at[strlen(words)];
            if (next == ' ' || next == '\n' || next == ',') {
                return true;
            }
        }
    }
    return false;
}

/* The command for an option and its word: "--strength-as nh4oh". */
static void option_text(const struct hw_input *input, const char *word, char text[WORDS])
{
    (void)snprintf(text, WORDS, "--%s %s", input->name, word);
    for (char *c = text; *c != ' '; c++) {
        *c = *c == '_' ? '-' : *c;
    }
}

static void every_choice(void **state)
{
    (void)state;
    size_t found = 0;
    size_t missing = 0;
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < hw_calcs[c]->n_inputs; i++) {
            const struct hw_input *input = &hw_calcs[c]->inputs[i];
            for (size_t w = 0; input->kind == HW_CHOICE && input->words[w]; w++) {
                char words[WORDS];
                bool preset = input->need == HW_PRESET && (size_t)input->preset == w;
                option_text(input, input->words[w], words);
                if (!preset && !asked(hw_calcs[c], words)) {
                    print_message("%s %s: no command in screens.tsv\n", hw_calcs[c]->name, words);
                    missing++;
                }
                found++;
            }
        }
    }
    assert_int_equal(missing, 0);
    assert_in_range(found, 60, 1000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_choice)};
    return hw_report_checks(cmocka_run_group_tests(tests, read_table, NULL));
}
