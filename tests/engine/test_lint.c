/* test_lint.c - what must hold for the tables of every calculation. */
#include "ask.h"
#include "assert_close.h"
#include "cli/args.h"
#include "cli/by_hand.h"
#include "cli/help.h"
#include "cli/notes.h"
#include "tables.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static bool is_name(const char *name)
{
    if (!name || !(name[0] >= 'a' && name[0] <= 'z')) {
        return false;
    }
    return strspn(name, "abcdefghijklmnopqrstuvwxyz0123456789_") == strlen(name) &&
           strlen(name) <= 24;
}

static bool plain_ascii(const char *text)
{
    for (; *text != '\0'; text++) {
        if (*text < ' ' || *text > '~') {
            return false;
        }
    }
    return true;
}

#define EXPECT(condition, ...)                                                                     \
    do {                                                                                           \
        if (!(condition)) {                                                                        \
            fail_msg(__VA_ARGS__);                                                                 \
        }                                                                                          \
    } while (0)

static bool is_yes_or_no(const char *word)
{
    return strcmp(word, "yes") == 0 || strcmp(word, "no") == 0;
}

/* A condition on a word of a choice that comes before; on any other input only whether it is given.
 * What is always there has no condition for being absent. */
static void lint_condition(const struct hw_calc *calc, size_t i)
{
    const struct hw_input *input = &calc->inputs[i];
    const struct hw_input *other = &calc->inputs[input->when_input];
    const uint32_t any = HW_WHEN_GIVEN | HW_WHEN_UNASKED;
    EXPECT((size_t)input->when_input < i, "%s.%s: what it hangs on comes later", calc->name,
           input->name);
    EXPECT((other->words && other->kind != HW_SET) || (input->when_words & ~any) == 0,
           "%s.%s: its condition is no choice", calc->name, input->name);
    EXPECT(!other->words || (input->when_words & ~any) >> hw_words_count(other->words) == 0,
           "%s.%s: a word that its choice does not have", calc->name, input->name);
    bool leavable = other->when_words != 0 || other->need == HW_OPTIONAL || other->group != 0;
    EXPECT(!(input->when_words & any) || leavable, "%s.%s: its choice is always asked for",
           calc->name, input->name);
}

static void lint_group(const struct hw_calc *calc, size_t i)
{
    for (size_t k = 0; k < i; k++) {
        EXPECT(calc->inputs[k].group != calc->inputs[i].group ||
                   calc->inputs[k].need == calc->inputs[i].need,
               "%s.%s: its group has several needs", calc->name, calc->inputs[i].name);
    }
}

static void lint_input(const struct hw_calc *calc, size_t i)
{
    const struct hw_input *input = &calc->inputs[i];
    EXPECT(is_name(input->name), "%s: input %zu has no proper name", calc->name, i);
    EXPECT(input->unit && input->help && strlen(input->help) > 5, "%s.%s: no unit or help",
           calc->name, input->name);
    EXPECT(plain_ascii(input->help), "%s.%s: help is not plain", calc->name, input->name);
    EXPECT(isfinite(input->lo) && isfinite(input->hi), "%s.%s: range", calc->name, input->name);
    bool single = input->words && input->words[0] && !input->words[1];
    EXPECT(input->lo < input->hi || single, "%s.%s: lo is not below hi", calc->name, input->name);
    bool choice = input->kind == HW_CHOICE || input->kind == HW_YES_NO;
    bool worded = choice || input->kind == HW_SET;
    EXPECT(worded == (input->words != NULL), "%s.%s: words", calc->name, input->name);
    if (choice) {
        EXPECT(hw_words_count(input->words) <= 30, "%s.%s: more words than a condition has bits",
               calc->name, input->name);
        EXPECT(input->lo == 0 && input->hi == (double)hw_words_count(input->words) - 1,
               "%s.%s: words and range differ", calc->name, input->name);
    }
    if (input->kind == HW_YES_NO) {
        EXPECT(hw_words_count(input->words) == 2 && is_yes_or_no(input->words[0]) &&
                   is_yes_or_no(input->words[1]) && input->words[0][0] != input->words[1][0],
               "%s.%s: other words than yes and no", calc->name, input->name);
    }
    if (input->kind == HW_SET) {
        EXPECT(input->hi == (double)((1u << hw_words_count(input->words)) - 1),
               "%s.%s: words and range differ", calc->name, input->name);
    }
    bool unitless =
        worded || input->kind == HW_NUMBER || input->kind == HW_COUNT || input->kind == HW_PH;
    EXPECT(unitless || hw_unit_of(input->kind, input->unit), "%s.%s: '%s' is no unit of its kind",
           calc->name, input->name, input->unit);
    if (input->need == HW_PRESET) {
        EXPECT(input->preset >= input->lo && input->preset <= input->hi, "%s.%s: preset",
               calc->name, input->name);
    }
    EXPECT(input->group == 0 || input->need != HW_PRESET, "%s.%s: a group has no presets",
           calc->name, input->name);
    if (input->group != 0) {
        lint_group(calc, i);
    }
    if (input->when_words != 0) {
        lint_condition(calc, i);
    }
}

/* The bits of a condition, all words for HW_WHEN_GIVEN. */
static uint32_t words_of_condition(const struct hw_input *input)
{
    bool given = (input->when_words & HW_WHEN_GIVEN) != 0;
    return given ? input->when_words | (HW_WHEN_GIVEN - 1) : input->when_words;
}

static bool never_together(const struct hw_calc *calc, const struct hw_input *a,
                           const struct hw_input *b);

/* True when entry a hangs on a choice that is not asked for where entry b is in force: then the two
 * are never in force together. The choice may hang on another in its turn. */
static bool asked_elsewhere(const struct hw_calc *calc, const struct hw_input *a,
                            const struct hw_input *b)
{
    const struct hw_input *choice = &calc->inputs[a->when_input];
    return choice->when_words != 0 && !(a->when_words & HW_WHEN_UNASKED) &&
           never_together(calc, choice, b);
}

/* True when the conditions of two entries never hold together. */
static bool never_together(const struct hw_calc *calc, const struct hw_input *a,
                           const struct hw_input *b)
{
    if (a->when_words == 0 || b->when_words == 0) {
        return false;
    }
    if (a->when_input == b->when_input) {
        return !(words_of_condition(a) & words_of_condition(b));
    }
    return asked_elsewhere(calc, a, b) || asked_elsewhere(calc, b, a);
}

static void lint_names(const struct hw_calc *calc)
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *a = &calc->inputs[i];
        for (size_t k = 0; k < i; k++) {
            const struct hw_input *b = &calc->inputs[k];
            EXPECT(never_together(calc, a, b) || strcmp(a->name, b->name) != 0, "%s: two inputs %s",
                   calc->name, a->name);
        }
        for (size_t k = 0; k < calc->n_results; k++) {
            EXPECT(strcmp(a->name, calc->results[k].name) != 0, "%s: %s is input and result",
                   calc->name, a->name);
        }
        for (size_t k = 0; general_options[k].name; k++) {
            EXPECT(strcmp(a->name, general_options[k].name) != 0, "%s: %s is a general option",
                   calc->name, a->name);
        }
    }
    for (size_t i = 0; i < calc->n_results; i++) {
        for (size_t k = 0; k < i; k++) {
            EXPECT(strcmp(calc->results[i].name, calc->results[k].name) != 0, "%s: two results %s",
                   calc->name, calc->results[i].name);
        }
    }
}

static void lint_result(const struct hw_calc *calc, const struct hw_result *result)
{
    EXPECT(is_name(result->name), "%s: a result has no proper name", calc->name);
    EXPECT(result->unit && result->help && plain_ascii(result->help), "%s.%s: help", calc->name,
           result->name);
    EXPECT(result->digits >= 1 && result->digits <= 10, "%s.%s: digits", calc->name, result->name);
    EXPECT(result->safe >= -1 && result->safe <= 1, "%s.%s: safe", calc->name, result->name);
    EXPECT(result->unit[0] == '\0' || hw_unit_of(result->kind, result->unit), "%s.%s: unit",
           calc->name, result->name);
}

static bool is_reference(const char *key)
{
    for (size_t i = 0; i < HW_REFERENCES; i++) {
        if (strcmp(hw_references[i].key, key) == 0) {
            return true;
        }
    }
    return false;
}

static void lint_rest(const struct hw_calc *calc)
{
    EXPECT(calc->n_inputs <= HW_INPUTS && calc->n_results <= HW_RESULTS &&
               calc->n_notes <= HW_NOTES,
           "%s: too large", calc->name);
    EXPECT(calc->answer && calc->work && calc->purpose, "%s: holes", calc->name);
    size_t sources = 0;
    for (; calc->sources[sources]; sources++) {
        EXPECT(is_reference(calc->sources[sources]), "%s: no source %s", calc->name,
               calc->sources[sources]);
    }
    EXPECT(sources > 0, "%s: no sources", calc->name);
    for (size_t i = 0; i < calc->n_notes; i++) {
        EXPECT(calc->notes[i].code && calc->notes[i].text && calc->notes[i].source, "%s: note %zu",
               calc->name, i);
    }
    size_t given = 0;
    for (size_t i = 0; examples[i].calculation; i++) {
        given += strcmp(examples[i].calculation, calc->name) == 0 ? 1 : 0;
    }
    EXPECT(given >= 2, "%s: fewer than two examples", calc->name);
    bool placed = false;
    for (size_t i = 0; stages[i].name; i++) {
        for (size_t k = 0; stages[i].calculations[k]; k++) {
            placed = placed || strcmp(stages[i].calculations[k], calc->name) == 0;
        }
    }
    EXPECT(placed, "%s: in no stage of the map", calc->name);
}

/* What every calculation has beside its tables: tests, outside values, cases, a page. */
static void files_are_there(void **state)
{
    (void)state;
    static const char *const places[] = {"tests/engine/test_%s.c", "tests/reference/calc_%s.csv",
                                         "tests/cli/%s.txt", "docs/calculations/%s.md"};
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < sizeof places / sizeof places[0]; i++) {
            char name[80];
            size_t stem = strcspn(places[i], "%");
            (void)snprintf(name, sizeof name, "%.*s%s%s", (int)stem, places[i], hw_calcs[c]->name,
                           places[i] + stem + 2);
            FILE *file = fopen(name, "r");
            EXPECT(file, "%s is missing", name);
            (void)fclose(file);
        }
        bool asks = false;
        for (size_t i = 0; i < hw_calcs[c]->n_notes; i++) {
            asks = asks || strcmp(hw_calcs[c]->notes[i].code, "ask-vet") == 0;
        }
        EXPECT(asks, "%s: no ask-vet", hw_calcs[c]->name);
    }
}

static void tables_are_whole(void **state)
{
    (void)state;
    for (size_t c = 0; hw_calcs[c]; c++) {
        const struct hw_calc *calc = hw_calcs[c];
        check(is_name(calc->name));
        assert_ptr_equal(find_calc(calc->name), calc);
        for (size_t i = 0; i < calc->n_inputs; i++) {
            lint_input(calc, i);
        }
        for (size_t i = 0; i < calc->n_results; i++) {
            lint_result(calc, &calc->results[i]);
        }
        lint_names(calc);
        lint_rest(calc);
    }
    for (size_t i = 0; stages[i].name; i++) {
        for (size_t k = 0; stages[i].calculations[k]; k++) {
            const char *name = stages[i].calculations[k];
            EXPECT(by_hand_find(name) || find_calc(name), "the map names %s", name);
        }
    }
    for (size_t i = 0; i < HW_LIMITS; i++) {
        EXPECT(is_reference(hw_limits[i].source), "limit %s: source", hw_limits[i].key);
    }
}

/* A command by hand has what help and lists tell of it, and its places. */
static void commands_by_hand_are_whole(void **state)
{
    (void)state;
    for (size_t c = 0; by_hand[c].caption; c++) {
        const struct hw_calc *caption = by_hand[c].caption;
        EXPECT(is_name(caption->name) && caption->purpose && caption->n_notes > 0 &&
                   caption->n_notes <= HW_NOTES,
               "%s: holes", caption->name);
        bool asks = false;
        for (size_t i = 0; i < caption->n_notes; i++) {
            asks = asks || strcmp(caption->notes[i].code, "ask-vet") == 0;
            EXPECT(caption->notes[i].source, "%s: note %zu", caption->name, i);
        }
        EXPECT(asks, "%s: no ask-vet", caption->name);
        EXPECT(caption->sources[0], "%s: no sources", caption->name);
        for (size_t i = 0; caption->sources[i]; i++) {
            EXPECT(is_reference(caption->sources[i]), "%s: no source %s", caption->name,
                   caption->sources[i]);
        }
        for (size_t i = 0; by_hand[c].options[i].name; i++) {
            EXPECT(is_name(by_hand[c].options[i].name) && plain_ascii(by_hand[c].options[i].help),
                   "%s: option %zu", caption->name, i);
        }
        size_t given = 0;
        for (size_t i = 0; examples[i].calculation; i++) {
            given += strcmp(examples[i].calculation, caption->name) == 0 ? 1 : 0;
        }
        bool placed = false;
        for (size_t i = 0; stages[i].name; i++) {
            for (size_t k = 0; stages[i].calculations[k]; k++) {
                placed = placed || strcmp(stages[i].calculations[k], caption->name) == 0;
            }
        }
        EXPECT(given >= 2 && placed, "%s: %zu examples, or in no stage of the map", caption->name,
               given);
        for (size_t i = 0; hw_calcs[i]; i++) {
            EXPECT(strcmp(hw_calcs[i]->name, caption->name) != 0, "%s is there twice",
                   caption->name);
        }
    }
}

/* All notes of a calculation at once fit into a cell, each with "possible:" before it; those that
 * there may be are no more than the letters of a sweep. */
static void codes_fit(void **state)
{
    (void)state;
    size_t longest = 0;
    for (size_t c = 0; hw_calcs[c]; c++) {
        const struct hw_calc *calc = hw_calcs[c];
        char text[CODES_MAX];
        size_t wanted = 0;
        for (size_t bit = 0; notes_next(calc, UINT64_MAX, &bit); bit++) {
            wanted += strlen(";possible:") + strlen(hw_note_at(calc, bit)->code);
        }
        notes_codes(calc, UINT64_MAX, UINT64_MAX, text);
        EXPECT(strlen(text) + 1 == wanted, "%s: %zu bytes of codes, and room for %d", calc->name,
               wanted, CODES_MAX);
        longest = wanted > longest ? wanted : longest;
        check(calc->n_notes <= HW_NOTES);
    }
    printf("the longest cell of codes has %zu bytes\n", longest);
}

static enum hw_problem read_number(const struct hw_input *input, double value,
                                   const struct hw_unit *unit, double *got)
{
    char text[64];
    const struct hw_unit *written = NULL;
    (void)snprintf(text, sizeof text, "%.17g%s", value, unit ? unit->name : "");
    return hw_value_read(input, (struct hw_text){text, strlen(text)}, NULL, got, &written);
}

/* Both ends of each range are accepted in every unit, and come back as the ends; just outside they
 * are refused. */
static void both_ends_in_every_unit(void **state)
{
    (void)state;
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < hw_calcs[c]->n_inputs; i++) {
            const struct hw_input *input = &hw_calcs[c]->inputs[i];
            const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
            for (const struct hw_unit *unit = hw_units; unit->name && kept; unit++) {
                double got = NAN;
                if (unit->kind != input->kind) {
                    continue;
                }
                assert_int_equal(
                    read_number(input, hw_unit_convert(input->lo, kept, unit), unit, &got),
                    HW_FINE);
                assert_close(got, input->lo, 0, 0);
                assert_int_equal(
                    read_number(input, hw_unit_convert(input->hi, kept, unit), unit, &got),
                    HW_FINE);
                assert_close(got, input->hi, 0, 0);
                double step = (input->hi - input->lo) * 1e-6;
                assert_int_equal(
                    read_number(input, hw_unit_convert(input->hi + step, kept, unit), unit, &got),
                    HW_PROBLEM_OUT_OF_RANGE);
                assert_int_equal(
                    read_number(input, hw_unit_convert(input->lo - step, kept, unit), unit, &got),
                    HW_PROBLEM_OUT_OF_RANGE);
            }
        }
    }
}

static bool any_input(const char *name, size_t n)
{
    for (size_t c = 0; hw_calcs[c]; c++) {
        if (hw_input_find(hw_calcs[c], name, n) < hw_calcs[c]->n_inputs) {
            return true;
        }
    }
    return false;
}

static bool any_calc(const char *name, size_t n)
{
    for (size_t c = 0; hw_calcs[c]; c++) {
        if (hw_name_is(hw_calcs[c]->name, name, n)) {
            return true;
        }
    }
    for (size_t c = 0; by_hand[c].caption; c++) {
        if (hw_name_is(by_hand[c].caption->name, name, n)) {
            return true;
        }
    }
    return false;
}

static void all_known(const char *list, bool (*known)(const char *, size_t))
{
    while (list && *list != '\0') {
        size_t n = strcspn(list, ",");
        if (!known(list, n)) {
            fail_msg("topics.tsv leads to '%s', which does not exist", list);
        }
        list += n + (list[n] == ',' ? 1 : 0);
    }
}

/* Words of the trade lead to what there is. Those that lead to calculations are none themselves. */
static void topics_lead_somewhere(void **state)
{
    (void)state;
    for (size_t i = 0; i < HW_TOPICS; i++) {
        all_known(hw_topics[i].asks, any_calc);
        all_known(hw_topics[i].options, any_input);
        assert_false(hw_topics[i].asks && any_calc(hw_topics[i].word, strlen(hw_topics[i].word)));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(tables_are_whole),        cmocka_unit_test(files_are_there),
        cmocka_unit_test(both_ends_in_every_unit), cmocka_unit_test(codes_fit),
        cmocka_unit_test(topics_lead_somewhere),   cmocka_unit_test(commands_by_hand_are_whole),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
