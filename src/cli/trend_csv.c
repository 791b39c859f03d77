/* trend_csv.c - what a record tells, as CSV. */
#include "cli/trend_csv.h"

#include "cli/column_name.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "cli/report_cell.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* A number and the comma after it; nothing for NaN. */
static void put_number(const struct trend_record *record, double value)
{
    char number[NUMBER_MAX] = "";
    if (!isnan(value)) {
        number_digits(number, value, record->ask->digits ? record->ask->digits : 6);
    }
    (void)printf("%s,", number);
}

static void put_text(const char *text)
{
    report_cell_own(stdout, (struct hw_text){text, strlen(text)}, ',');
    (void)putchar(',');
}

void trend_csv(const struct trend_answer *answer)
{
    const struct trend_record *record = answer->record;
    char from[WHEN_MAX];
    char to[WHEN_MAX];
    char codes[CODES_MAX];
    trend_moment(answer, 0, false, from);
    trend_moment(answer, answer->days[answer->n - 1], false, to);
    (void)fputs("tank,of,readings,from,to,", stdout);
    for (size_t i = 0; i < TREND_RESULTS; i++) {
        char name[COLUMN_NAME_MAX];
        column_name(trend_results[i], "", answer->unit[i], name);
        (void)printf("%s,", name);
    }
    (void)puts("cautions");
    put_text(record->ask->tank ? record->ask->tank : "");
    put_text(record->ask->of);
    (void)printf("%zu,%s,%s,", answer->used, from, to);
    for (size_t i = 0; i < TREND_RESULTS; i++) {
        put_number(record, answer->out[i]);
    }
    notes_codes(&trend_caption, answer->notes, 0, codes);
    report_cell_text(stdout, codes, ',');
    (void)putchar('\n');
}

void trend_csv_tracks(const struct trend_record *record, double now)
{
    (void)puts("column,unit,readings,when,last,age_d,change");
    for (size_t i = 0; i < record->n_tracks; i++) {
        const struct trend_track *track = &record->track[i];
        struct when when = record->newest;
        char text[WHEN_MAX];
        char change[NUMBER_MAX] = "";
        if (track->n == 0) {
            continue;
        }
        double age = (now - (double)track->last.seconds) / 86400;
        when.seconds = track->last.seconds;
        when_text(&when, text);
        put_text(track->name);
        (void)printf("%s,%zu,%s,",
                     track->mixed  ? "mixed"
                     : track->unit ? track->unit->name
                                   : "",
                     track->n, text);
        put_number(record, track->mixed ? (double)NAN : track->last.value);
        put_number(record, age >= 0 ? age : (double)NAN);
        if (track->n > 1 && !track->mixed) {
            number_digits(change, track->last.value - track->before.value,
                          record->ask->digits ? record->ask->digits : 6);
        }
        (void)puts(change);
    }
}
