/* trend_json.c - what a record tells, as one JSON object. */
#include "cli/trend_json.h"

#include "cli/json.h"
#include "cli/notes.h"
#include "tables.h"

#include "holdwater/holdwater.h"

#include <math.h>
#include <stdio.h>

static void put_string(const char *text)
{
    struct json_text to;
    to.n = 0;
    json_string(&to, text);
    json_flush(&to);
}

static void put_value(double value)
{
    struct json_text to;
    to.n = 0;
    json_number(&to, value);
    json_flush(&to);
}

static void put_input(const char *name, bool *first)
{
    (void)printf("%s\n    \"%s\": {\"value\": ", *first ? "" : ",", name);
    *first = false;
}

static void put_end(const char *unit, const char *from)
{
    (void)printf(", \"unit\": \"%s\", \"from\": \"%s\"}", unit, from);
}

/* What was asked; levels in the unit of the readings. */
static void put_inputs(const struct trend_ask *ask, const double level[TREND_LEVELS],
                       const char *unit)
{
    const char *const words[] = {ask->rows, ask->tank, ask->of, ask->when};
    static const char *const names[] = {"rows", "tank", "of", "when"};
    bool first = true;
    (void)fputs("  \"inputs\": {", stdout);
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (words[i]) {
            put_input(names[i], &first);
            put_string(words[i]);
            put_end("", "given");
        }
    }
    for (size_t i = 0; i < TREND_LEVELS && level; i++) {
        if (!isnan(level[i])) {
            put_input(trend_level_names[i], &first);
            put_value(level[i]);
            put_end(unit, "given");
        }
    }
    for (size_t i = 0; i < TREND_INPUTS; i++) {
        put_input(trend_caption.inputs[i].name, &first);
        put_value(ask->settled.in[i]);
        put_end(trend_caption.inputs[i].unit,
                ask->settled.from[i] == HW_GIVEN ? "given" : "preset");
    }
    (void)puts("\n  },");
}

static void put_head(void)
{
    (void)printf("{\n  \"program\": \"holdwater\",\n  \"version\": \"%s\",\n"
                 "  \"calculation\": \"trend\",\n  \"status\": 0,\n",
                 HW_VERSION);
}

static void put_results(const struct trend_answer *answer)
{
    (void)fputs("  \"results\": {", stdout);
    for (size_t i = 0; i < TREND_RESULTS; i++) {
        (void)printf("%s\n    \"%s\": {\"value\": ", i == 0 ? "" : ",", trend_results[i]);
        put_value(answer->out[i]);
        (void)printf(", \"unit\": \"%s\"}", answer->unit[i]);
    }
    (void)puts("\n  },");
}

/* What the results rest on. */
static void put_readings(const struct trend_answer *answer)
{
    const struct trend_record *record = answer->record;
    char from[WHEN_MAX];
    char to[WHEN_MAX];
    trend_moment(answer, 0, false, from);
    trend_moment(answer, answer->days[answer->n - 1], false, to);
    (void)printf("  \"readings\": {\"used\": %zu, \"from\": \"%s\", \"to\": \"%s\", \"span\": ",
                 answer->used, from, to);
    put_value(answer->days[answer->n - 1]);
    (void)printf(", \"kept\": %zu, \"outside\": ", answer->n);
    if (trend_has_window(record->ask)) {
        (void)printf("%zu", answer->run.outside);
    } else {
        (void)fputs("null", stdout);
    }
    (void)printf(", \"passed_over\": %zu},\n",
                 record->rows.n + record->cells.n + record->bounds.n + record->without.n);
}

static void put_notes(uint64_t notes)
{
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(&trend_caption, notes, bits);
    (void)fputs("  \"cautions\": [", stdout);
    for (size_t i = 0; i < n; i++) {
        const struct hw_note *note = hw_note_at(&trend_caption, bits[i]);
        (void)printf("%s\n    {\"code\": \"%s\", \"text\": ", i == 0 ? "" : ",", note->code);
        put_string(note->text);
        (void)putchar('}');
    }
    (void)fputs("\n  ],\n  \"sources\": [", stdout);
    for (size_t i = 0; trend_caption.sources[i]; i++) {
        (void)printf("%s\"%s\"", i == 0 ? "" : ", ", trend_caption.sources[i]);
    }
    (void)puts("]\n}");
}

void trend_json(const struct trend_answer *answer)
{
    put_head();
    put_inputs(answer->record->ask, answer->level, answer->unit[TREND_LAST_READING]);
    put_results(answer);
    put_readings(answer);
    put_notes(answer->notes);
}

void trend_json_tracks(const struct trend_record *record, double now)
{
    bool first = true;
    put_head();
    put_inputs(record->ask, NULL, "");
    (void)fputs("  \"columns\": [", stdout);
    for (size_t i = 0; i < record->n_tracks; i++) {
        const struct trend_track *track = &record->track[i];
        struct when when = record->newest;
        char text[WHEN_MAX];
        double age = (now - (double)track->last.seconds) / 86400;
        if (track->n == 0) {
            continue;
        }
        when.seconds = track->last.seconds;
        when_text(&when, text);
        (void)fputs(first ? "\n    {\"name\": " : ",\n    {\"name\": ", stdout);
        first = false;
        put_string(track->name);
        (void)printf(", \"unit\": \"%s\", \"readings\": %zu, \"when\": \"%s\", \"last\": ",
                     track->mixed  ? "mixed"
                     : track->unit ? track->unit->name
                                   : "",
                     track->n, text);
        put_value(track->mixed ? (double)NAN : track->last.value);
        (void)fputs(", \"age\": ", stdout);
        put_value(age >= 0 ? age : (double)NAN);
        (void)fputs(", \"change\": ", stdout);
        put_value(track->n > 1 && !track->mixed ? track->last.value - track->before.value
                                                : (double)NAN);
        (void)putchar('}');
    }
    (void)puts("\n  ],");
    put_notes(UINT64_C(1) << HW_TREND_NOTE_ASK_VET);
}
