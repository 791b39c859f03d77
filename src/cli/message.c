/* message.c - the words for everything that can be wrong with a question. */
#include "cli/message.h"

#include "cli/message_hint.h"
#include "cli/stream.h"
#include "cli/wording.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* Adds to a text that ends with its NUL; what does not fit is cut. */
static void add(char *text, size_t size, const char *more)
{
    size_t used = strlen(text);
    (void)snprintf(text + used, size - used, "%s", more);
}

void message_try_help(const struct hw_calc *calc)
{
    complain("type 'holdwater %s --help' for all of it", calc->name);
}

void message_results(const struct hw_calc *calc)
{
    char text[ALLOWED_MAX * 2] = "";
    for (size_t i = 0; i < calc->n_results; i++) {
        add(text, sizeof text, i == 0 ? "" : ", ");
        add(text, sizeof text, calc->results[i].name);
    }
    complain("the results of %s are: %s", calc->name, text);
}

/* True when an input of that name is required whatever word a choice that was not given will
 * have. */
static bool required_anyhow(const struct hw_calc *calc, size_t input)
{
    uint32_t covered = 0;
    const struct hw_input *this = &calc->inputs[input];
    for (size_t i = hw_input_first(calc, input); i < calc->n_inputs; i = hw_input_next(calc, i)) {
        const struct hw_input *other = &calc->inputs[i];
        bool alike = other->need == HW_REQUIRED && other->when_input == this->when_input;
        covered |= alike ? other->when_words : 0;
    }
    const char *const *names = calc->inputs[this->when_input].words;
    size_t words = names ? hw_words_count(names) : 0;
    return words > 0 && covered == (UINT32_C(1) << words) - 1;
}

/* True when an input must be given and was not. Choices after the input `first` are not settled
 * yet. */
static bool is_missing(const struct hw_calc *calc, const struct hw_written written[],
                       const struct hw_question *question, size_t first, size_t i)
{
    const struct hw_input *input = &calc->inputs[i];
    bool written_later = written[i].from == HW_FROM_COLUMN || written[i].from == HW_SOLVED;
    if (input->need != HW_REQUIRED || input->group != 0 || written[i].text.at || written_later) {
        return false;
    }
    if (input->when_words == 0) {
        return true;
    }
    size_t choice = (size_t)input->when_input;
    bool unasked = choice < first && (input->when_words & HW_WHEN_UNASKED) != 0 &&
                   written[choice].from != HW_FROM_COLUMN;
    if (unasked || (choice <= first && !isnan(question->in[choice]))) {
        return hw_input_wanted(calc, i, question->in);
    }
    return hw_input_find(calc, input->name, strlen(input->name)) == i && required_anyhow(calc, i);
}

/* The first input of a group of which one must be given whatever else is, and none was. */
static bool begins_missing_group(const struct hw_calc *calc, const struct hw_written written[],
                                 size_t first)
{
    const struct hw_input *input = &calc->inputs[first];
    if (input->group == 0 || input->need != HW_REQUIRED) {
        return false;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *other = &calc->inputs[i];
        bool mine = other->group == input->group;
        if (mine && (i < first || other->when_words != 0 || written[i].text.at ||
                     written[i].from != HW_ABSENT)) {
            return false;
        }
    }
    return true;
}

/* ", and one of --feed --biomass --rise". */
static void add_groups(const struct hw_calc *calc, const struct hw_written written[],
                       char list[ALLOWED_MAX])
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!begins_missing_group(calc, written, i)) {
            continue;
        }
        add(list, ALLOWED_MAX, ", and one of");
        for (size_t k = i; k < calc->n_inputs; k++) {
            if (calc->inputs[k].group == calc->inputs[i].group) {
                char option[OPTION_MAX];
                option_name(calc->inputs[k].name, option);
                add(list, ALLOWED_MAX, " --");
                add(list, ALLOWED_MAX, option);
            }
        }
    }
}

/* All required inputs that were not given, so that they can be typed at once. Of one alone it is
 * told what it takes. */
static void message_missing(const struct hw_calc *calc, const struct hw_written written[],
                            const struct hw_question *question, size_t first)
{
    char list[ALLOWED_MAX] = "";
    char option[OPTION_MAX];
    size_t missing = 0;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (is_missing(calc, written, question, first, i)) {
            option_name(calc->inputs[i].name, option);
            add(list, sizeof list, " --");
            add(list, sizeof list, option);
            missing++;
        }
    }
    add_groups(calc, written, list);
    complain("%s needs%s", calc->name, list);
    if (missing == 1) {
        char allowed[ALLOWED_MAX];
        option_name(calc->inputs[first].name, option);
        allowed_text(&calc->inputs[first], allowed);
        complain("--%s takes %s", option, allowed);
        complain("(%s)", calc->inputs[first].help);
    }
}

static void message_group(const struct hw_calc *calc, size_t first, bool none)
{
    char list[ALLOWED_MAX] = "";
    for (size_t i = 0; i < calc->n_inputs; i++) {
        bool named = hw_input_first(calc, i) != i;
        if (calc->inputs[i].group == calc->inputs[first].group && !named) {
            char option[OPTION_MAX];
            option_name(calc->inputs[i].name, option);
            add(list, sizeof list, i == first ? " --" : " or --");
            add(list, sizeof list, option);
        }
    }
    complain("%s %s one of%s: %s given", calc->name,
             calc->inputs[first].need == HW_OPTIONAL ? "takes at most" : "needs exactly", list,
             none ? "none was" : "more than one was");
}

enum { WORD_MAX = 40, COMPANY_MAX = OPTION_MAX + WORD_MAX + 16 };

/* What an input's condition sees: "with --kind powder", "with --volume", "without --volume". */
static void company_text(const struct hw_calc *calc, const struct hw_input *input,
                         const struct hw_question *question, char text[COMPANY_MAX])
{
    const struct hw_input *other = &calc->inputs[input->when_input];
    double value = question->in[input->when_input];
    bool worded = other->words && !isnan(value);
    char option[OPTION_MAX];
    option_name(other->name, option);
    (void)snprintf(text, COMPANY_MAX, "%s --%s%s%.*s", isnan(value) ? "without" : "with", option,
                   worded ? " " : "", (int)WORD_MAX, worded ? other->words[(size_t)value] : "");
}

/* Of a name whose place hangs on a choice that could be made and was not: that choice, or
 * calc->n_inputs. */
static size_t choice_to_make(const struct hw_calc *calc, size_t which,
                             const struct hw_question *question)
{
    for (size_t i = hw_input_first(calc, which); i < calc->n_inputs; i = hw_input_next(calc, i)) {
        size_t choice = (size_t)calc->inputs[i].when_input;
        if (choice < which && calc->inputs[choice].words && isnan(question->in[choice]) &&
            hw_input_wanted(calc, choice, question->in)) {
            return choice;
        }
    }
    return calc->n_inputs;
}

static void message_out_of_place(const struct hw_calc *calc, size_t which,
                                 const struct hw_question *question)
{
    const struct hw_input *input = &calc->inputs[which];
    char option[OPTION_MAX];
    size_t choice = choice_to_make(calc, which, question);
    if (choice < calc->n_inputs) {
        char needed[OPTION_MAX];
        char allowed[ALLOWED_MAX];
        option_name(input->name, option);
        option_name(calc->inputs[choice].name, needed);
        allowed_text(&calc->inputs[choice], allowed);
        complain("--%s needs --%s, which takes %s", option, needed, allowed);
        complain("(%s)", calc->inputs[choice].help);
        return;
    }
    char company[COMPANY_MAX];
    option_name(input->name, option);
    company_text(calc, input, question, company);
    if (question->from[input->when_input] == HW_FROM_PRESET) {
        char choose[OPTION_MAX];
        option_name(calc->inputs[input->when_input].name, choose);
        complain("--%s has no place %s, which is assumed: leave it out, or write another --%s",
                 option, company, choose);
        return;
    }
    complain("--%s has no place %s: leave it out", option, company);
}

/* A word that belongs to another entry of the same name: the choice between them is what stands in
 * its way. */
static bool message_twin_word(const struct hw_calc *calc, size_t which, struct hw_text text,
                              const struct hw_question *question)
{
    const struct hw_input *input = &calc->inputs[which];
    bool elsewhere = false;
    for (size_t i = hw_input_first(calc, which); i < calc->n_inputs; i = hw_input_next(calc, i)) {
        double value = 0;
        const struct hw_unit *unit = NULL;
        elsewhere = elsewhere || (i != which && hw_value_read(&calc->inputs[i], text, NULL, &value,
                                                              &unit) == HW_FINE);
    }
    if (!elsewhere) {
        return false;
    }
    char option[OPTION_MAX];
    char company[COMPANY_MAX];
    char shown[SHOWN_MAX];
    char allowed[ALLOWED_MAX];
    option_name(input->name, option);
    company_text(calc, input, question, company);
    show_text(text, shown);
    allowed_text(input, allowed);
    complain("--%s %s does not go %s, which takes %s", option, shown, company, allowed);
    return true;
}

/* What is wrong with a written value, without saying what is allowed. */
static const char *reason(enum hw_problem problem)
{
    static const char *const reasons[HW_PROBLEMS] = {
        [HW_PROBLEM_EMPTY] = "is empty",
        [HW_PROBLEM_COMMA] =
            "has a comma: write a decimal point, as in 8.1, and nothing between thousands",
        [HW_PROBLEM_NOT_DECIMAL] = "is not a plain decimal number",
        [HW_PROBLEM_TOO_LARGE] = "is too large for any number here",
        [HW_PROBLEM_SPREAD] = "carries an uncertainty: none can stand here",
        [HW_PROBLEM_SWEEP] = "is a sweep: only an option of one question can be one",
        [HW_PROBLEM_NEEDS_UNIT] = "has no unit: no answer rests on a guessed unit",
        [HW_PROBLEM_UNKNOWN_UNIT] =
            "has a unit that is not known here ('holdwater units' lists them)",
        [HW_PROBLEM_UNIT_UNWANTED] = "has a unit where none belongs",
        [HW_PROBLEM_GRAVITY] = ("looks like a specific gravity: turn it into a salinity first "
                                "('holdwater salinity'), or write the unit, as in 1.02g/kg"),
        [HW_PROBLEM_NOT_WHOLE] = "is not a whole number",
        [HW_PROBLEM_WORD_TWICE] = "names a word twice",
        [HW_PROBLEM_NOT_ALONE] = "has none beside other words: none stands alone",
        [HW_PROBLEM_HALF] = "has no number after +-: write it as in 0.6+-0.1 or 0.6+-15%",
        [HW_PROBLEM_HALF_NEGATIVE] =
            "has an uncertainty below zero: +- stands for both sides already",
        [HW_PROBLEM_HALF_UNIT] = ("has an uncertainty in a unit that does not go with the value: "
                                  "write the same unit on both"),
        [HW_PROBLEM_HALF_WORD] = "is a word: it has no uncertainty",
        [HW_PROBLEM_HALF_COUNT] = "is a whole number: it has no uncertainty",
        [HW_PROBLEM_SWEEP_PARTS] =
            "is no sweep: write start:stop:step, three plain numbers, as in 7.8:8.6:0.1",
        [HW_PROBLEM_SWEEP_UNITS] =
            "has parts with different units: a unit on the last part serves all",
        [HW_PROBLEM_SWEEP_WORD] = "is no sweep: words cannot be counted through, ask once for each",
        [HW_PROBLEM_STEP_ZERO] = "has a step of 0",
        [HW_PROBLEM_STEP_SIGN] = "has a step that leads away from its end: give it the other sign",
        [HW_PROBLEM_SWEEP_LONG] = "has more than 1000 values: take a larger step",
        [HW_PROBLEM_OUT_OF_RANGE] = "is out of range",
        [HW_PROBLEM_NEAR_ZERO] =
            "comes nearer to zero than anything that is measured: write 0, or check its unit",
    };
    return reasons[problem] ? reasons[problem] : "is not a number";
}

/* A unit of another kind; head is the option and what was written, as in --temp '25 mg/L'. */
static void message_wrong_kind(const struct hw_input *input, const char *head, struct hw_text text,
                               const struct hw_unit *column)
{
    size_t unit_at = 0;
    while (unit_at < text.n && strchr("+-.:0123456789eE ", text.at[unit_at])) {
        unit_at++;
    }
    const struct hw_unit *unit =
        unit_at < text.n ? hw_unit_find_any(text.at + unit_at, text.n - unit_at) : column;
    complain("%s is %s, %s is wanted", head, unit ? hw_kind_name(unit->kind) : "of another kind",
             hw_kind_name(input->kind));
}

static void message_value(const struct hw_calc *calc, const struct hw_written *written,
                          const struct hw_question *question, enum hw_problem problem, size_t which)
{
    struct hw_text text = written->text;
    const struct hw_input *input = &calc->inputs[which];
    char option[OPTION_MAX];
    char shown[SHOWN_MAX];
    char allowed[ALLOWED_MAX];
    char head[OPTION_MAX + SHOWN_MAX + 8];
    option_name(input->name, option);
    show_text(text, shown);
    allowed_text(input, allowed);
    (void)snprintf(head, sizeof head, "--%s '%s'", option, shown);
    if (problem == HW_PROBLEM_UNKNOWN_WORD && message_twin_word(calc, which, text, question)) {
        return;
    }
    if (problem == HW_PROBLEM_UNKNOWN_WORD) {
        message_unknown_word(input, text);
    } else if (problem == HW_PROBLEM_WRONG_KIND) {
        message_wrong_kind(input, head, text, written->column);
    } else if (!message_hint(input, head, text, written->column, problem)) {
        complain("%s %s", head, reason(problem));
    }
    complain("--%s takes %s", option, allowed);
    if (hw_problem_of_range(problem) && input->beyond) {
        complain("(%s; outside: %s)", input->help, input->beyond);
    } else {
        complain("(%s)", input->help);
    }
}

void message_for(const struct hw_input *target, struct hw_text text, enum hw_problem problem)
{
    char shown[SHOWN_MAX];
    char units[ALLOWED_MAX];
    char head[OPTION_MAX + SHOWN_MAX + 8];
    show_text(text, shown);
    units_text(target->kind, units);
    (void)snprintf(head, sizeof head, "--for %.36s='%s'", target->name, shown);
    if (problem == HW_PROBLEM_WRONG_KIND) {
        message_wrong_kind(target, head, text, NULL);
    } else if (!message_hint(target, head, text, NULL, problem)) {
        complain("%s %s", head, reason(problem));
    }
    if (units[0] != '\0') {
        complain("--for %s takes a number%s%s", target->name,
                 hw_unit_must(target) ? " with its unit: " : "; units ", units);
    }
}

/* A name that stands for an option twice over, or too many of them. */
static void message_forms(const struct hw_calc *calc, enum hw_problem problem, size_t which)
{
    char option[OPTION_MAX];
    option_name(calc->inputs[which].name, option);
    if (problem == HW_PROBLEM_SWEEPS) {
        complain("--%s is a third sweep: a table has one, a chart has two", option);
    } else if (problem == HW_PROBLEM_SOLVE_GIVEN) {
        complain("--%s is given, and --solve looks for it: leave one of the two out", option);
    } else {
        complain("--solve %s: it takes words; only a number can be looked for", option);
    }
}

void message_problem(const struct hw_calc *calc, const struct hw_written written[],
                     const struct hw_question *question, enum hw_problem problem, size_t which)
{
    if (written[which].from == HW_FROM_TANK) {
        complain("the tanks file, column %s:", calc->inputs[which].tank);
    }
    if (problem == HW_PROBLEM_MISSING) {
        message_missing(calc, written, question, which);
    } else if (problem == HW_PROBLEM_NONE_OF_GROUP || problem == HW_PROBLEM_MANY_OF_GROUP) {
        message_group(calc, which, problem == HW_PROBLEM_NONE_OF_GROUP);
    } else if (problem == HW_PROBLEM_OUT_OF_PLACE) {
        message_out_of_place(calc, which, question);
    } else if (problem == HW_PROBLEM_SWEEPS || problem == HW_PROBLEM_SOLVE_GIVEN ||
               problem == HW_PROBLEM_SOLVE_WORD) {
        message_forms(calc, problem, which);
    } else {
        message_value(calc, &written[which], question, problem, which);
        return;
    }
    message_try_help(calc);
}
