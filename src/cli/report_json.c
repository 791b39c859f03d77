/* report_json.c - the answer as one JSON object (RFC 8259). */
#include "cli/message.h"
#include "cli/print.h"
#include "cli/report.h"

#include "holdwater/holdwater.h"

#include <math.h>
#include <stdio.h>

static const char *const origin_words[] = {
    [HW_ABSENT] = "absent",  [HW_GIVEN] = "given",        [HW_FROM_PRESET] = "preset",
    [HW_FROM_TANK] = "tank", [HW_FROM_COLUMN] = "column", [HW_SWEPT] = "swept",
    [HW_SOLVED] = "solved",
};

static void put_string(const char *text)
{
    (void)putchar('"');
    for (; *text != '\0'; text++) {
        unsigned char c = (unsigned char)*text;
        if (c == '"' || c == '\\') {
            (void)printf("\\%c", c);
        } else if (c < ' ') {
            (void)printf("\\u%04x", c);
        } else {
            (void)putchar(c);
        }
    }
    (void)putchar('"');
}

static void put_number(double value)
{
    char text[NUMBER_MAX];
    if (!isfinite(value)) {
        (void)fputs("null", stdout);
        return;
    }
    number_exact(text, value);
    (void)fputs(text, stdout);
}

/* Starts an entry of an object: a comma after the one before, a new line, the key. */
static void put_key(bool *first, const char *key)
{
    (void)fputs(*first ? "\n    " : ",\n    ", stdout);
    *first = false;
    put_string(key);
    (void)fputs(": ", stdout);
}

static void put_inputs(const struct hw_question *question)
{
    bool first = true;
    (void)fputs("  \"inputs\": {", stdout);
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *input = &question->calc->inputs[i];
        if (question->from[i] == HW_ABSENT) {
            continue;
        }
        put_key(&first, input->name);
        (void)fputs("{\"value\": ", stdout);
        if (input->words) {
            char words[ALLOWED_MAX];
            words_of(input, question->in[i], words, sizeof words);
            put_string(words);
        } else {
            put_number(question->in[i]);
        }
        (void)printf(", \"unit\": \"%s\", \"from\": \"%s\"}", input->unit,
                     origin_words[question->from[i]]);
    }
    (void)fputs("\n  },\n", stdout);
}

static void put_results(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    bool first = true;
    (void)fputs("  \"results\": {", stdout);
    for (size_t i = 0; i < calc->n_results; i++) {
        if (report->args->only[i]) {
            put_key(&first, calc->results[i].name);
            (void)fputs("{\"value\": ", stdout);
            put_number(report->answer->out[i]);
            (void)printf(", \"unit\": \"%s\"}", calc->results[i].unit);
        }
    }
    (void)fputs("\n  },\n", stdout);
}

static void put_steps(const struct hw_steps *steps)
{
    (void)fputs("  \"working\": [", stdout);
    for (size_t i = 0; i < steps->n; i++) {
        const struct hw_step *step = &steps->step[i];
        (void)fputs(i == 0 ? "\n    {\"symbol\": " : ",\n    {\"symbol\": ", stdout);
        put_string(step->symbol);
        (void)fputs(", \"expression\": ", stdout);
        put_string(step->expression);
        (void)fputs(", \"value\": ", stdout);
        put_number(step->value);
        (void)printf(", \"unit\": \"%s\", \"source\": \"%s\"}", step->unit, step->source);
    }
    (void)fputs("\n  ],\n", stdout);
}

/* Raised before standing, the gravest first. */
static void put_notes(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    bool first = true;
    (void)fputs("  \"cautions\": [", stdout);
    for (int effect = HW_WITHHELD; effect >= HW_STANDING; effect--) {
        for (size_t i = 0; i < calc->n_notes; i++) {
            if (!has_note(report->answer, i) || calc->notes[i].effect != (enum hw_effect)effect) {
                continue;
            }
            (void)fputs(first ? "\n    {\"code\": " : ",\n    {\"code\": ", stdout);
            first = false;
            put_string(calc->notes[i].code);
            (void)fputs(", \"text\": ", stdout);
            put_string(calc->notes[i].text);
            (void)putchar('}');
        }
    }
    (void)fputs("\n  ],\n", stdout);
}

static void put_sources(const struct hw_calc *calc)
{
    (void)fputs("  \"sources\": [", stdout);
    for (size_t i = 0; calc->sources[i]; i++) {
        (void)fputs(i == 0 ? "" : ", ", stdout);
        put_string(calc->sources[i]);
    }
    (void)fputs("]\n", stdout);
}

void report_json(const struct report *report)
{
    const struct hw_calc *calc = report->question->calc;
    (void)printf("{\n  \"program\": \"holdwater\",\n  \"version\": \"%s\",\n", HW_VERSION);
    (void)printf("  \"calculation\": \"%s\",\n  \"status\": %d,\n", calc->name,
                 report->answer->status);
    put_inputs(report->question);
    put_results(report);
    if (report->steps) {
        put_steps(report->steps);
    }
    put_notes(report);
    put_sources(calc);
    (void)puts("}");
}
