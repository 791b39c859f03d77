/* test_column_like.c - a column that may be an input is not passed over, in any calculation. */
#include "assert_close.h"
#include "capture.h"
#include "cli/column_like.h"
#include "tables.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { COLUMN_MAX = 96 };

/* What is asked of a column of that name, with every input given by an option and fed by no column,
 * or each by one. */
static bool passes(const struct hw_calc *calc, const char *name, bool all_fed)
{
    static struct args args;
    bool fed[HW_INPUTS];
    args = (struct args){.calc = calc};
    for (size_t i = 0; i < HW_INPUTS; i++) {
        args.written[i].text = (struct hw_text){"1", 1};
        fed[i] = all_fed;
    }
    capture_begin();
    bool passed = column_judge(&args, fed, (struct hw_text){name, strlen(name)});
    (void)capture_end();
    return passed;
}

/* A word that only joins others. */
static bool joins(const char *name)
{
    return strcmp(name, "of") == 0 || strcmp(name, "into") == 0;
}

static void name_within_a_name(void **state)
{
    (void)state;
    size_t tried = 0;
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < hw_calcs[c]->n_inputs; i++) {
            char name[COLUMN_MAX];
            (void)snprintf(name, sizeof name, "our %s", hw_calcs[c]->inputs[i].name);
            check(passes(hw_calcs[c], name, false) == joins(hw_calcs[c]->inputs[i].name));
            check(passes(hw_calcs[c], name, true));
            (void)snprintf(name, sizeof name, "our %ss", hw_calcs[c]->inputs[i].name);
            check(!passes(hw_calcs[c], name, false) || joins(hw_calcs[c]->inputs[i].name) ||
                  strchr(name, '_'));
            tried++;
        }
    }
    check(tried > 200);
}

static void words_of_the_trade(void **state)
{
    (void)state;
    size_t stopped = 0;
    for (size_t t = 0; t < HW_TOPICS; t++) {
        const char *options = hw_topics[t].options ? hw_topics[t].options : "";
        for (size_t c = 0; hw_calcs[c]; c++) {
            char name[COLUMN_MAX];
            bool meant = false;
            for (const char *at = options; *at != '\0'; at += at[0] == ',' ? 1 : 0) {
                size_t n = strcspn(at, ",");
                meant = meant || hw_input_find(hw_calcs[c], at, n) < hw_calcs[c]->n_inputs;
                at += n;
            }
            (void)snprintf(name, sizeof name, "our %s", hw_topics[t].word);
            bool stops = !passes(hw_calcs[c], name, false);
            check(!meant || stops || strchr(hw_topics[t].word, '-'));
            stopped += stops ? 1 : 0;
            /* by itself, where it is no name of an input here */
            size_t n = strlen(hw_topics[t].word);
            bool input = hw_input_find(hw_calcs[c], hw_topics[t].word, n) < hw_calcs[c]->n_inputs;
            check(!meant || input || !passes(hw_calcs[c], hw_topics[t].word, false) ||
                  strchr(hw_topics[t].word, '-'));
        }
    }
    check(stopped > 100);
}

static void own_columns(void **state)
{
    (void)state;
    static const char *const own[] = {"note",   "who", "id",     "time of day", "row",
                                      "colour", "ok?", "net no", "x1",          ""};
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t k = 0; k < sizeof own / sizeof own[0]; k++) {
            check(passes(hw_calcs[c], own[k], false));
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(name_within_a_name),
                                       cmocka_unit_test(words_of_the_trade),
                                       cmocka_unit_test(own_columns)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
