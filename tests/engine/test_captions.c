/* test_captions.c - the tables of all calculations against a second writing of their numbers,
 * captions.tsv: a preset, an end of a range or a way of rounding that changes by a slip is noticed.
 * Whoever means the change writes it in both places; what the file should say is printed. */
#include "assert_close.h"
#include "calc/calc.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { LINE_BYTES = 500 };

static FILE *file;
static size_t lines, others;

/* The next line of the file is this one. */
static void expect(const char *line)
{
    char kept[LINE_BYTES] = "";
    do {
        if (!fgets(kept, sizeof kept, file)) {
            kept[0] = '\0';
        }
    } while (kept[0] == '#');
    kept[strcspn(kept, "\n")] = '\0';
    lines++;
    if (strcmp(kept, line) != 0) {
        printf("%s\n", line);
        others++;
    }
}

static void expect_input(const struct hw_calc *calc, const struct hw_input *input)
{
    static const char *const needs[] = {
        [HW_REQUIRED] = "required", [HW_PRESET] = "preset", [HW_OPTIONAL] = "optional"};
    char line[LINE_BYTES];
    size_t words = 0;
    for (; input->words && input->words[words]; words++) {
    }
    (void)snprintf(line, sizeof line,
                   "%s\tinput\t%s\t%s\t%.12g\t%.12g\t%s\t%.12g\t%zu\t%d\t%s\t%x\t%d%d%d\t%s",
                   calc->name, input->name, input->unit[0] == '\0' ? "-" : input->unit, input->lo,
                   input->hi, needs[input->need], input->preset, words, input->group,
                   input->when_words == 0 ? "-" : calc->inputs[input->when_input].name,
                   (unsigned)input->when_words, input->unit_must, input->cell_must, input->aim,
                   input->tank ? input->tank : "-");
    expect(line);
}

static void expect_result(const struct hw_calc *calc, const struct hw_result *result)
{
    char line[LINE_BYTES];
    (void)snprintf(line, sizeof line, "%s\tresult\t%s\t%s\t%d\t%d\t%d%d%d%d", calc->name,
                   result->name, result->unit[0] == '\0' ? "-" : result->unit, result->digits,
                   result->safe, result->keep_below, result->sometimes, result->pour,
                   result->detail);
    expect(line);
}

static void as_written(void **state)
{
    (void)state;
    file = fopen("tests/engine/captions.tsv", "r");
    assert_non_null(file);
    for (size_t i = 0; hw_calcs[i]; i++) {
        for (size_t k = 0; k < hw_calcs[i]->n_inputs; k++) {
            expect_input(hw_calcs[i], &hw_calcs[i]->inputs[k]);
        }
        for (size_t k = 0; k < hw_calcs[i]->n_results; k++) {
            expect_result(hw_calcs[i], &hw_calcs[i]->results[k]);
        }
    }
    check(fgetc(file) == EOF);
    (void)fclose(file);
    check(lines > 400);
    if (others > 0) {
        fail_msg("%zu lines of tests/engine/captions.tsv are others than above", others);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(as_written)};
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
