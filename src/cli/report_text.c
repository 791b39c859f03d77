/* report_text.c - the answer for people, on one screen: results, cautions, inputs as used, what
 * stands always. */
#include "cli/report_text.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_change.h"
#include "cli/report_pour.h"
#include "cli/report_solved.h"
#include "cli/report_spread.h"
#include "cli/report_steps.h"
#include "cli/text_part.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { VALUE_TEXT = NUMBER_MAX + 16, WORDS_TEXT = 2 * ALLOWED_MAX, GAP = 2 };

/* The columns of the results: the widest name and value. */
struct widths {
    size_t name, value;
};

/* True for a result that this text has: one that applies, or that was asked for by name. */
static bool is_told(const struct report *report, size_t i)
{
    return args_tell(report->args, i) &&
           (!isnan(report->answer->out[i]) || report->args->n_only > 0);
}

/* "5.94 mL", "yes", "-". */
static void value_text(const struct report *report, size_t i, char text[VALUE_TEXT])
{
    const struct hw_result *result = &report->question->calc->results[i];
    double value = report->answer->out[i];
    char number[NUMBER_MAX];
    if (isnan(value)) {
        (void)snprintf(text, VALUE_TEXT, "-");
    } else if (result->kind == HW_YES_NO) {
        (void)snprintf(text, VALUE_TEXT, value > 0 ? "yes" : "no");
    } else {
        int digits = report->args->digits ? report->args->digits : result->digits;
        number_text(number, value, digits, result->safe);
        (void)snprintf(text, VALUE_TEXT, "%s%s%s", number, result->unit[0] == '\0' ? "" : " ",
                       result->unit);
    }
}

/* What an amount is for, how to measure it, and the level that the mark gives, if there is room. */
static void pour_words(const struct report *report, size_t i, size_t room, char text[WORDS_TEXT],
                       char level[REPORT_POUR])
{
    char into[REPORT_CHANGE];
    const char *help = report_change_into(report, i, into) ? into : report_pour_help(report, i);
    char measure[REPORT_POUR];
    report_pour(report, i, measure, level);
    size_t used =
        (size_t)snprintf(text, WORDS_TEXT, "%s%s%s", help, measure[0] == '\0' ? "" : ": ", measure);
    if (used + strlen(level) <= room) {
        (void)snprintf(text + used, WORDS_TEXT - used, "%s", level);
    }
}

/* What stands behind the value: the same in the keeper's own unit, what it is, how to measure
 * it. */
static void words_text(const struct report *report, size_t i, size_t room, char text[WORDS_TEXT],
                       char level[REPORT_POUR])
{
    level[0] = '\0';
    const struct hw_result *result = &report->question->calc->results[i];
    const struct hw_unit *kept = hw_unit_of(result->kind, result->unit);
    const struct hw_unit *own = own_unit(report->args->wanted_unit, report->question, result->kind);
    double value = report->answer->out[i];
    char measure[REPORT_POUR];
    (void)snprintf(text, WORDS_TEXT, "%s",
                   result->pour ? report_pour_help(report, i) : result->help);
    if (isnan(value)) {
        return;
    }
    if (report_change(report, i, measure) ||
        (result->kind == HW_MASS && report_change_into(report, i, measure))) {
        (void)snprintf(text, WORDS_TEXT, "%s", measure);
    } else if (result->pour && result->kind == HW_VOLUME) {
        pour_words(report, i, room, text, level);
    } else if (kept && own && strcmp(result->unit, "mL") != 0) {
        char number[NUMBER_MAX];
        int digits = report->args->digits ? report->args->digits : result->digits;
        number_text(number, hw_unit_convert(value, kept, own), digits, result->safe);
        (void)snprintf(text, WORDS_TEXT, "(%.40s %s) %s", number, own->name, result->help);
    }
}

static struct widths measure_results(const struct report *report)
{
    struct widths widths = {0, 0};
    for (size_t i = 0; i < report->question->calc->n_results; i++) {
        if (is_told(report, i)) {
            char value[VALUE_TEXT];
            value_text(report, i, value);
            size_t name_width = strlen(report->question->calc->results[i].name);
            size_t value_width = strlen(value);
            widths.name = name_width > widths.name ? name_width : widths.name;
            widths.value = value_width > widths.value ? value_width : widths.value;
        }
    }
    return widths;
}

/* told: the level of a mark that was told last; one that the line has no room for stands below it,
 * unless it was. */
static void print_result(const struct report *report, size_t i, struct widths widths,
                         char told[REPORT_POUR])
{
    const struct hw_result *result = &report->question->calc->results[i];
    char value[VALUE_TEXT];
    char words[WORDS_TEXT];
    char level[REPORT_POUR];
    value_text(report, i, value);
    size_t at =
        (size_t)printf("  %-*s  %-*s  ", (int)widths.name, result->name, (int)widths.value, value);
    words_text(report, i, at < PRINT_WIDTH ? PRINT_WIDTH - at : 0, words, level);
    print_wrapped(words, at, at);
    if (level[0] != '\0' && !strstr(words, level) && strcmp(level, told) != 0) {
        (void)printf("   %s\n", level);
    }
    (void)snprintf(told, REPORT_POUR, "%s", level);
    if (report->spread && !isnan(report->answer->out[i])) {
        report_spread(report, i,
                      own_unit(report->args->wanted_unit, report->question, result->kind),
                      2 + widths.name + GAP);
    }
}

/* Notes, the gravest first. */
static void print_notes(const struct report *report, uint64_t notes, const char *mark)
{
    const struct hw_calc *calc = report->question->calc;
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(calc, notes, bits);
    for (size_t i = 0; i < n; i++) {
        text_note(hw_note_at(calc, bits[i]), mark, "", report->args->full);
    }
}

static void print_working(const struct hw_steps *steps)
{
    (void)puts("working:");
    for (size_t i = 0; i < steps->n; i++) {
        const struct hw_step *step = &steps->step[i];
        char number[NUMBER_MAX];
        int printed = printf("  %s = ", step->symbol);
        print_wrapped(step->expression, (size_t)printed, 6);
        number_digits(number, step->value, 10);
        (void)printf("      = %s%s%s", number, step->unit[0] == '\0' ? "" : " ", step->unit);
        (void)printf(step->source[0] == '\0' ? "\n" : "  [%s]\n", step->source);
    }
}

static void print_results(const struct report *report)
{
    struct widths widths = measure_results(report);
    char told[REPORT_POUR] = "";
    if (report->solved) {
        report_solved(report);
    }
    for (size_t at = 0; at < report->question->calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (is_told(report, i)) {
            print_result(report, i, widths, told);
        }
    }
    report_steps_text(report);
    if (report->spread) {
        report_spread_advice(report);
    }
}

void report_text(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    uint64_t notes = report->answer->notes;
    (void)printf("%s\n", calc->name);
    if (report->answer->status >= 0) {
        print_results(report);
    }
    print_notes(report, notes & notes_between(calc, HW_CAUTION, HW_WITHHELD), "");
    print_notes(report, notes_possible(report->spread), "POSSIBLE ");
    text_inputs(report->question, report->args->tank);
    text_standing(calc, notes, report->args->full);
    if (report->steps) {
        print_working(report->steps);
    }
    if (report->args->full) {
        text_sources(calc);
    }
}
