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
static void put_break(struct json_text *to, const struct report *report, size_t depth)
{
    if (report->args->format == FORMAT_JSONL) {
        json_word(to, depth == 1 ? "" : " ");
    } else {
        json_word(to, depth == 1 ? "\n  " : "\n    ");
    }
}

/* Starts a member of the outermost object. */
static void put_member(struct json_text *to, const struct report *report, bool *first,
                       const char *key)
{
    json_word(to, *first ? "" : ",");
    if (!*first && report->args->format == FORMAT_JSONL) {
        json_word(to, " ");
    }
    put_break(to, report, 1);
    *first = false;
    json_string(to, key);
    json_word(to, ": ");
}

/* Starts an entry of an object or list within it. */
static void put_entry(struct json_text *to, const struct report *report, bool *first)
{
    json_word(to, *first ? "" : ",");
    if (!*first || report->args->format != FORMAT_JSONL) {
        put_break(to, report, 2);
    }
    *first = false;
}

static void put_close(struct json_text *to, const struct report *report, bool empty,
                      const char *bracket)
{
    if (!empty && report->args->format != FORMAT_JSONL) {
        put_break(to, report, 1);
    }
    json_word(to, bracket);
}

/* The unit of a number, which needs no escapes. */
static void put_unit(struct json_text *to, const char *unit)
{
    json_word(to, ", \"unit\": \"");
    json_word(to, unit);
    json_word(to, "\"");
}

static void put_inputs(struct json_text *to, const struct report *report)
{
    const struct hw_question *question = report->question;
    bool first = true;
    json_word(to, "{");
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *input = &question->calc->inputs[i];
        if (question->from[i] == HW_ABSENT) {
            continue;
        }
        put_entry(to, report, &first);
        json_string(to, input->name);
        json_word(to, ": {\"value\": ");
        if (input->words) {
            char words[WORDS_MAX];
            words_of(input, question->in[i], words, sizeof words);
            json_string(to, words);
        } else {
            json_number(to, question->in[i]);
        }
        if (question->half[i] > 0) {
            json_word(to, ", \"half_width\": ");
            json_number(to, question->half[i]);
        }
        put_unit(to, input->unit);
        json_word(to, ", \"from\": \"");
        json_word(to, origin_words[question->from[i]]);
        json_word(to, "\"}");
    }
    put_close(to, report, first, "}");
}

/* What was asked backwards, and every solution. */
static void put_solved(struct json_text *to, const struct report *report)
{
    const struct args *args = report->args;
    const struct hw_calc *calc = args->calc;
    const struct hw_solution *solution = report->solved->solution;
    bool first = true;
    json_word(to, "{");
    put_entry(to, report, &first);
    json_word(to, "\"input\": ");
    json_string(to, calc->inputs[report->question->solved].name);
    put_entry(to, report, &first);
    json_word(to, "\"for\": {\"result\": ");
    json_string(to, calc->results[args->wanted].name);
    json_word(to, ", \"value\": ");
    json_number(to, args->wanted_value);
    put_unit(to, calc->results[args->wanted].unit);
    json_word(to, "}");
    put_entry(to, report, &first);
    json_word(to, "\"solutions\": [");
    for (size_t i = 0; i < solution->n_roots; i++) {
        const struct hw_root *root = &solution->root[i];
        json_word(to, i == 0 ? "{\"value\": " : ", {\"value\": ");
        json_number(to, root->from);
        if (root->to > root->from) {
            json_word(to, ", \"to\": ");
            json_number(to, root->to);
        }
        json_word(to, ", \"reached\": ");
        json_number(to, root->reached);
        json_word(to, "}");
    }
    json_word(to, "]");
    put_entry(to, report, &first);
    json_word(to, solution->more_roots ? "\"more\": true" : "\"more\": false");
    put_close(to, report, false, "}");
}

/* What the uncertainties of the inputs do to a result; from_input: shares of the variance. */
static void put_spread(struct json_text *to, const struct report *report, size_t result)
{
    const struct hw_calc *calc = report->args->calc;
    const char *between = "";
    json_word(to, ", \"low\": ");
    json_number(to, report->spread->low[result]);
    json_word(to, ", \"high\": ");
    json_number(to, report->spread->high[result]);
    json_word(to, ", \"from_input\": {");
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (!isnan(report->spread->share[result][i])) {
            json_word(to, between);
            json_string(to, calc->inputs[i].name);
            json_word(to, ": ");
            json_number(to, report->spread->share[result][i]);
            between = ", ";
        }
    }
    json_word(to, "}");
}

static void put_results(struct json_text *to, const struct report *report)
{
    const struct hw_calc *calc = report->args->calc;
    bool first = true;
    json_word(to, "{");
    for (size_t at = 0; at < calc->n_results; at++) {
        size_t i = report->args->order[at];
        if (report->args->only[i]) {
            put_entry(to, report, &first);
            json_string(to, calc->results[i].name);
            json_word(to, ": {\"value\": ");
            json_number(to, report->answer->out[i]);
            put_unit(to, calc->results[i].unit);
            if (report->spread) {
                put_spread(to, report, i);
            }
            json_word(to, "}");
        }
    }
    put_close(to, report, first, "}");
}

static void put_working(struct json_text *to, const struct report *report)
{
    bool first = true;
    json_word(to, "[");
    for (size_t i = 0; i < report->steps->n; i++) {
        const struct hw_step *step = &report->steps->step[i];
        put_entry(to, report, &first);
        json_word(to, "{\"symbol\": ");
        json_string(to, step->symbol);
        json_word(to, ", \"expression\": ");
        json_string(to, step->expression);
        json_word(to, ", \"value\": ");
        json_number(to, step->value);
        put_unit(to, step->unit);
        json_word(to, ", \"source\": ");
        json_string(to, step->source);
        json_word(to, "}");
    }
    put_close(to, report, first, "]");
}

/* Raised before standing, the gravest first. */
static void put_notes(struct json_text *to, const struct report *report)
{
    const struct hw_calc *calc = report->args->calc;
    uint64_t possible = notes_possible(report->spread);
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(calc, report->answer->notes | possible, bits);
    bool first = true;
    json_word(to, "[");
    for (size_t i = 0; i < n; i++) {
        const struct hw_note *note = hw_note_at(calc, bits[i]);
        put_entry(to, report, &first);
        json_word(to, "{\"code\": ");
        json_string(to, note->code);
        json_word(to, ", \"text\": ");
        json_string(to, note->text);
        json_word(to, notes_have(possible, bits[i]) ? ", \"possible\": true}" : "}");
    }
    put_close(to, report, first, "]");
}

static void put_sources(struct json_text *to, const struct hw_calc *calc)
{
    json_word(to, "[");
    for (size_t i = 0; calc->sources[i]; i++) {
        json_word(to, i == 0 ? "" : ", ");
        json_string(to, calc->sources[i]);
    }
    json_word(to, "]");
}

static void put_unquoted(struct json_text *to, const struct csv_cell *cell)
{
    static char room[CSV_RECORD_MAX];
    json_bytes(to, (struct hw_text){room, csv_unquote(cell, room)});
}

/* The cells of the row by their header. */
static void put_cells(struct json_text *to, const struct row_view *row)
{
    struct csv_cell name;
    struct csv_cell cell;
    size_t name_at = 0;
    size_t cell_at = 0;
    bool first = true;
    json_word(to, "{");
    while (csv_next_cell(&row->columns->header, row->columns->separator, &name_at, &name) &&
           csv_next_cell(&row->record, row->columns->separator, &cell_at, &cell)) {
        json_word(to, first ? "" : ", ");
        first = false;
        put_unquoted(to, &name);
        json_word(to, ": ");
        put_unquoted(to, &cell);
    }
    json_word(to, "}");
}

static void put_row(struct json_text *to, const struct report *report, bool *first)
{
    put_member(to, report, first, "row");
    json_number(to, (double)report->row->number);
    put_member(to, report, first, "cells");
    put_cells(to, report->row);
    put_member(to, report, first, "problem");
    if (report->row->problem) {
        json_string(to, report->row->problem);
    } else {
        json_word(to, "null");
    }
    if (report->row->surplus.at) {
        put_member(to, report, first, "surplus");
        json_bytes(to, report->row->surplus);
    }
}

/* The steps of a dose that goes in by parts, where there are any. */
static void put_steps(struct json_text *to, const struct report *report, bool *first_member)
{
    struct dose_steps steps;
    bool first = true;
    if (!report_steps_find(report, &steps)) {
        return;
    }
    put_member(to, report, first_member, "steps");
    json_word(to, "[");
    for (size_t k = 0; k < steps.n; k++) {
        put_entry(to, report, &first);
        json_word(to, "{\"day\": ");
        json_number(to, steps.step[k].day);
        json_word(to, ", \"amount\": ");
        json_number(to, steps.step[k].amount);
        put_unit(to, steps.amount_unit);
        json_word(to, ", \"level\": ");
        json_number(to, steps.step[k].level);
        json_word(to, ", \"level_unit\": ");
        json_string(to, steps.level_unit);
        json_word(to, "}");
    }
    put_close(to, report, first, "]");
}

/* All but the cautions and the sources. */
static void put_answer(struct json_text *to, const struct report *report)
{
    bool first = true;
    bool asked = !report->row || !report->row->problem;
    json_word(to, "{");
    put_member(to, report, &first, "program");
    json_string(to, "holdwater");
    put_member(to, report, &first, "version");
    json_string(to, HW_VERSION);
    put_member(to, report, &first, "calculation");
    json_string(to, report->args->calc->name);
    if (report->row) {
        put_row(to, report, &first);
    }
    put_member(to, report, &first, "status");
    json_number(to, report->answer->status);
    if (report->solved) {
        put_member(to, report, &first, "solved");
        put_solved(to, report);
    }
    put_member(to, report, &first, "inputs");
    if (asked) {
        put_inputs(to, report);
    } else {
        json_word(to, "{}");
    }
    put_member(to, report, &first, "results");
    put_results(to, report);
    put_steps(to, report, &first);
    if (report->steps) {
        put_member(to, report, &first, "working");
        put_working(to, report);
    }
}

/* The cautions, the sources, and the end of the object. */
static void put_rest(struct json_text *to, const struct report *report)
{
    bool first = false;
    put_member(to, report, &first, "cautions");
    put_notes(to, report);
    put_member(to, report, &first, "sources");
    put_sources(to, report->args->calc);
    json_word(to, report->args->format == FORMAT_JSONL ? "}" : "\n}");
}

void report_json_object(const struct report *report)
{
    struct json_text to;
    to.n = 0;
    put_answer(&to, report);
    put_rest(&to, report);
    json_flush(&to);
}

void report_json(const struct report *report)
{
    report_json_object(report);
    (void)putchar('\n');
}

void report_json_row(const struct report *report, struct json_rows *rows)
{
    uint64_t notes = report->answer->notes;
    uint64_t possible = notes_possible(report->spread);
    /* the golden ratio spreads sets of few bits over the places */
    struct json_rest *rest =
        &rows->rest[(notes * UINT64_C(0x9e3779b97f4a7c15)) >> JSON_RESTS_SHIFT];
    put_answer(&rows->out, report);
    if (!rest->known || rest->notes != notes || rest->possible != possible) {
        json_flush(&rows->out); /* should the rest be too long to be kept, it goes out next */
        rest->text.n = 0;
        rest->text.sent = false;
        put_rest(&rest->text, report);
        rest->notes = notes;
        rest->possible = possible;
        rest->known = !rest->text.sent;
    }
    json_put(&rows->out, rest->text.text, rest->text.n);
    json_word(&rows->out, "\n");
}
