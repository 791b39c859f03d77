/* test_tank.c - what each calculation takes from the file of a tank, and from nothing else. */
#include "ask.h"
#include "calc/list.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { TEXT = 300 };

/* Every calculation, and the inputs that a column of the tanks file tells. */
static const struct {
    const char *calc, *taken; /* INPUT=COLUMN in the order of the table */
} expected[] = {
    {"volume", ""},
    {"gauge", ""},
    {"salinity", ""},
    {"saltmix", ""},
    {"neutralise", ""},
    {"ammonia", "temp=temp salinity=salinity"},
    {"nitrite", "salinity=salinity"},
    {"oxygen", "temp=temp salinity=salinity altitude=altitude volume=volume"},
    {"challenge", "volume=volume temp=temp salinity=salinity alkalinity=alkalinity"},
    {"concentrate", ""},
    {"verdict", "volume=volume temp=temp salinity=salinity"},
    {"bioload", "volume=volume temp=temp salinity=salinity"},
    {"ahead", "volume=volume temp=temp salinity=salinity"},
    {"dose", "volume=volume salinity=salinity temp=temp"},
    {"change", "volume=volume salinity=salinity"},
    {"blend", "volume=volume alkalinity=alkalinity temp=temp salinity=salinity"},
    {"buffer", "volume=volume alkalinity=alkalinity temp=temp salinity=salinity"},
    {"bath", "source_temp=temp source_salinity=salinity"},
    {"course", "volume=volume"},
    {"emergency", "volume=volume temp=temp salinity=salinity alkalinity=alkalinity"},
    {"binder", "volume=volume"},
    {"bag", "tank_temp=temp tank_salinity=salinity"},
    {"disinfect", "volume=volume"},
};

static const char *expected_of(const char *calc)
{
    for (size_t i = 0; i < sizeof expected / sizeof expected[0]; i++) {
        if (strcmp(expected[i].calc, calc) == 0) {
            return expected[i].taken;
        }
    }
    fail_msg("%s is not in the table of what is taken from a tanks file", calc);
    return NULL;
}

static void only_the_water_of_the_tank(void **state)
{
    (void)state;
    for (size_t c = 0; hw_calcs[c]; c++) {
        const struct hw_calc *calc = hw_calcs[c];
        char taken[TEXT] = "";
        for (size_t i = 0; i < calc->n_inputs; i++) {
            const struct hw_input *input = &calc->inputs[i];
            size_t used = strlen(taken);
            if (input->tank) {
                (void)snprintf(taken + used, TEXT - used, "%s%s=%s", used > 0 ? " " : "",
                               input->name, input->tank);
            }
        }
        assert_string_equal(taken, expected_of(calc->name));
    }
}

/* The columns there are, and the kind of what stands in them. */
static void columns_are_of_the_right_kind(void **state)
{
    (void)state;
    static const struct {
        const char *column;
        enum hw_kind kind;
    } columns[] = {{"volume", HW_VOLUME},
                   {"temp", HW_TEMPERATURE},
                   {"salinity", HW_SALINITY},
                   {"alkalinity", HW_ALKALINITY},
                   {"altitude", HW_LENGTH}};
    for (size_t c = 0; hw_calcs[c]; c++) {
        for (size_t i = 0; i < hw_calcs[c]->n_inputs; i++) {
            const struct hw_input *input = &hw_calcs[c]->inputs[i];
            bool found = !input->tank;
            for (size_t k = 0; k < sizeof columns / sizeof columns[0]; k++) {
                found = found || (strcmp(columns[k].column, input->tank) == 0 &&
                                  columns[k].kind == input->kind);
            }
            assert_true(found);
        }
    }
}

/* What the file has and the question does not ask for is no error: it is there for others. */
static void a_cell_out_of_place_says_nothing(void **state)
{
    (void)state;
    struct hw_written written[HW_INPUTS] = {{{NULL, 0}, NULL, HW_ABSENT}};
    struct hw_question question;
    size_t which = 0;
    static const struct {
        const char *name, *text;
        enum hw_from from;
    } cells[] = {{"of", "refraction", HW_GIVEN},
                 {"reading", "1.3390", HW_GIVEN},
                 {"temp", "20", HW_GIVEN},
                 {"slope", "1.9", HW_FROM_TANK}};
    const struct hw_calc *salinity = find_calc("salinity");
    for (size_t k = 0; k < sizeof cells / sizeof cells[0]; k++) {
        size_t i = hw_input_find(salinity, cells[k].name, strlen(cells[k].name));
        for (; i < salinity->n_inputs; i = hw_input_next(salinity, i)) {
            written[i].text = (struct hw_text){cells[k].text, strlen(cells[k].text)};
            written[i].from = cells[k].from;
        }
    }
    assert_int_equal(hw_question_settle(salinity, written, &question, &which), HW_FINE);
    size_t slope = hw_input_find(salinity, "slope", 5);
    assert_int_equal(question.from[slope], HW_ABSENT);
    written[slope].from = HW_GIVEN;
    assert_int_equal(hw_question_settle(salinity, written, &question, &which),
                     HW_PROBLEM_OUT_OF_PLACE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(only_the_water_of_the_tank),
                                       cmocka_unit_test(columns_are_of_the_right_kind),
                                       cmocka_unit_test(a_cell_out_of_place_says_nothing)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
