/* report_json.c - the answer as one JSON object (RFC 8259). */
#include "cli/report_json.h"

#include "cli/json.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_steps.h"

#include "holdwater/holdwater.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *const origin_words[] = {
    [HW_ABSENT] = "absent",  [HW_GIVEN] = "given",        [HW_FROM_PRESET] = "preset",
    [HW_FROM_TANK] = "tank", [HW_FROM_COLUMN] = "column", [HW_SWEPT] = "swept",
    [HW_SOLVED] = "solved",
};

/* Between members and entries: a new line and its indent, or a blank when all is on one line. */
static void put_break(const struct report *report, size_t depth)
{
    if (report->args->format == FORMAT_JSONL) {
        (void)fputs(depth == 1 ? "" : " ", stdout);
    } else {
        (void)putchar('\n');
        print_blanks(2 * depth);
    }
}

/* Starts a member of the outermost object. */
static void put_member(const struct report *report, bool *first, const char *key)
{
    (void)fputs(*first ? "" : ",", stdout);
    if (!*first && report->args->format == FORMAT_JSONL) {
        (void)putchar(' ');
    }
    put_break(report, 1);
    *first = false;
    json_string(key);
    (void)fputs(": ", stdout);
}

/* Starts an entry of an object or list within it. */
static void put_entry(const struct report *report, bool *first)
{
    (void)fputs(*first ? "" : ",", stdout);
    if (!*first || report->args->format != FORMAT_JSONL) {
        put_break(report, 2);
    }
    *first = false;
}

static void put_close(const struct report *report, bool empty, char bracket)
{
    if (!empty && report->args->format != FORMAT_JSONL) {
        put_break(report, 1);
    }
    (void)putchar(bracket);
}

/* The unit of a number, which needs no escapes. */
static void put_unit(const char *unit)
{
    (void)fputs(", \"unit\": \"", stdout);
    (void)fputs(unit, stdout);
    (void)fputs("\"", stdout);
}

static void put_inputs(const struct report *report)
{
    const struct hw_question *question = report->question;
    bool first = true;
    (void)putchar('{');
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *input = &question->calc->inputs[i];
        if (question->from[i] == HW_ABSENT) {
            continue;
        }
        put_entry(report, &first);
        json_string(input->name);
        (void)fputs(": {\"value\": ", stdout);
        if (input->words) {
            char words[WORDS_MAX];
            words_of(input, question->in[i], words, sizeof words);
            json_string(words);
        } else {
            json_number(question->in[i]);
        }
        if (question->half[i] > 0) {
            (void)fputs(", \"half_width\": ", stdout);
            json_number(question->half[i]);
        }
        put_unit(input->unit);
        (void)fputs(", \"from\": \"", stdout);
        (void)fputs(origin_words[question->from[i]], stdout);
        (void)fputs("\"}", stdout);
    }
    put_close(report, first, '}');
}

/* What was asked backwards, and every solution. */
static void put_solved(const struct report *report)
{
    const struct args *args = report->args;
    const struct hw_calc *calc = args->calc;
    const struct hw_solution *solution = report->solved->solution;
    bool first = true;
    (void)putchar('{');
    put_entry(report, &first);
    (void)printf("\"input\": \"%s\"", calc->inputs[report->question->solved].name);
    put_entry(report, &first);
    (void)printf("\"for\": {\"result\": \"%s\", \"value\": ", calc->results[args->wanted].name);
    json_number(args->wanted_value);
    (void)printf(", \"unit\": \"%s\"}", calc->results[args->wanted].unit);
    put_entry(report, &first);
    (void)fputs("\"solutions\": [", stdout);
    for (size_t i = 0; i < solution->n_roots; i++) {
        const struct hw_root *root = &solution->root[i];
        (void)fputs(i == 0 ? "{\"value\": " : ", {\"value\": ", stdout);
        json_number(root->from);
        if (root->to > root->from) {
            (void)fputs(", \"to\": ", stdout);
            json_number(root->to);
        }
        (void)fputs(", \"reached\": ", stdout);
        json_number(root->reached);
        (void)putchar('}');
    }
    (void)putchar(']');
    put_entry(report, &first);
    (void)printf("\"more\": %s", solution->more_roots ? "true" : "false");
    put_close(report, false, '}');
}

/* What the uncertainties of the inputs do to a result; from_input: shares of the variance. */
static void put_spread(const struct report *report, size_t result)
{
    const struct hw_calc *calc = report->args->calc;
    const char *between = "";
    (void)fputs(", \"low\": ", stdout);
    json_number(report->spread->low[result]);
    (void)fputs(", \"high\": ", stdout);
    json_number(report->spread->high[result]);
    (void)fputs(", \"from_input\": {", stdout);
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!isnan(report->spread->share[result][i])) {
            (void)fputs(between, stdout);
            json_string(calc->inputs[i].name);
            (void)fputs(": ", stdout);
            json_number(report->spread->share[result][i]);
            between = ", ";
        }
    }
    (void)putchar('}');
}

static void put_results(const struct report *report)
{
    const struct hw_calc *calc = report->args->calc;
    bool first = true;
    (void)putchar('{');
    for (size_t at = 0; at < calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (report->args->only[i]) {
            put_entry(report, &first);
            json_string(calc->results[i].name);
            (void)fputs(": {\"value\": ", stdout);
            json_number(report->answer->out[i]);
            put_unit(calc->results[i].unit);
            if (report->spread) {
                put_spread(report, i);
            }
            (void)putchar('}');
        }
    }
    put_close(report, first, '}');
}

static void put_working(const struct report *report)
{
    bool first = true;
    (void)putchar('[');
    for (size_t i = 0; i < report->steps->n; i++) {
        const struct hw_step *step = &report->steps->step[i];
        put_entry(report, &first);
        (void)fputs("{\"symbol\": ", stdout);
        json_string(step->symbol);
        (void)fputs(", \"expression\": ", stdout);
        json_string(step->expression);
        (void)fputs(", \"value\": ", stdout);
        json_number(step->value);
        (void)printf(", \"unit\": \"%s\", \"source\": \"%s\"}", step->unit, step->source);
    }
    put_close(report, first, ']');
}

/* Raised before standing, the gravest first. */
static void put_notes(const struct report *report)
{
    const struct hw_calc *calc = report->args->calc;
    uint64_t possible = notes_possible(report->spread);
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(calc, report->answer->notes | possible, bits);
    bool first = true;
    (void)putchar('[');
    for (size_t i = 0; i < n; i++) {
        const struct hw_note *note = hw_note_at(calc, bits[i]);
        put_entry(report, &first);
        (void)fputs("{\"code\": ", stdout);
        json_string(note->code);
        (void)fputs(", \"text\": ", stdout);
        json_string(note->text);
        (void)fputs(notes_have(possible, bits[i]) ? ", \"possible\": true}" : "}", stdout);
    }
    put_close(report, first, ']');
}

static void put_sources(const struct hw_calc *calc)
{
    (void)putchar('[');
    for (size_t i = 0; calc->sources[i]; i++) {
        (void)fputs(i == 0 ? "" : ", ", stdout);
        json_string(calc->sources[i]);
    }
    (void)putchar(']');
}

static void put_unquoted(const struct csv_cell *cell)
{
    static char room[CSV_RECORD_MAX];
    json_bytes((struct hw_text){room, csv_unquote(cell, room)});
}

/* The cells of the row by their header. */
static void put_cells(const struct row_view *row)
{
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_at = 0;
    bool first = true;
    (void)putchar('{');
    while (csv_next_cell(&row->columns->header, row->columns->separator, &name_at, &name) &&
           csv_next_cell(&row->record, row->columns->separator, &cell_at, &cell)) {
        (void)fputs(first ? "" : ", ", stdout);
        first = false;
        put_unquoted(&name);
        (void)fputs(": ", stdout);
        put_unquoted(&cell);
    }
    (void)putchar('}');
}

static void put_row(const struct report *report, bool *first)
{
    put_member(report, first, "row");
    (void)printf("%zu", report->row->number);
    put_member(report, first, "cells");
    put_cells(report->row);
    put_member(report, first, "problem");
    if (report->row->problem) {
        json_string(report->row->problem);
    } else {
        (void)fputs("null", stdout);
    }
    if (report->row->surplus.at) {
        put_member(report, first, "surplus");
        json_bytes(report->row->surplus);
    }
}

/* The steps of a dose that goes in by parts, where there are any. */
static void put_steps(const struct report *report, bool *first_member)
{
    struct dose_steps steps;
    bool first = true;
    if (!report_steps_find(report, &steps)) {
        return;
    }
    put_member(report, first_member, "steps");
    (void)putchar('[');
    for (size_t k = 0; k < steps.n; k++) {
        put_entry(report, &first);
        (void)fputs("{\"day\": ", stdout);
        json_number(steps.step[k].day);
        (void)fputs(", \"amount\": ", stdout);
        json_number(steps.step[k].amount);
        (void)printf(", \"unit\": \"%s\", \"level\": ", steps.amount_unit);
        json_number(steps.step[k].level);
        (void)printf(", \"level_unit\": \"%s\"}", steps.level_unit);
    }
    put_close(report, first, ']');
}

void report_json_object(const struct report *report)
{
    bool first = true;
    bool asked = !report->row || !report->row->problem;
    (void)putchar('{');
    put_member(report, &first, "program");
    json_string("holdwater");
    put_member(report, &first, "version");
    json_string(HW_VERSION);
    put_member(report, &first, "calculation");
    json_string(report->args->calc->name);
    if (report->row) {
        put_row(report, &first);
    }
    put_member(report, &first, "status");
    (void)printf("%d", report->answer->status);
    if (report->solved) {
        put_member(report, &first, "solved");
        put_solved(report);
    }
    put_member(report, &first, "inputs");
    if (asked) {
        put_inputs(report);
    } else {
        (void)fputs("{}", stdout);
    }
    put_member(report, &first, "results");
    put_results(report);
    put_steps(report, &first);
    if (report->steps) {
        put_member(report, &first, "working");
        put_working(report);
    }
    put_member(report, &first, "cautions");
    put_notes(report);
    put_member(report, &first, "sources");
    put_sources(report->args->calc);
    (void)fputs(report->args->format == FORMAT_JSONL ? "}" : "\n}", stdout);
}

void report_json(const struct report *report)
{
    report_json_object(report);
    (void)putchar('\n');
}
