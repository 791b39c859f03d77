/* trend_read.c - reads a file for `trend`, and says what was wrong with it. */
#include "cli/trend_read.h"

#include "cli/records.h"
#include "cli/report_log.h"
#include "cli/stream.h"
#include "cli/suggest.h"

#include <stdio.h>
#include <string.h>

enum { TANKS_TEXT = TREND_TANKS * (SHOWN_MAX + 4) };

static struct input input;
static char header[CSV_RECORD_MAX];

/* A logbook that was begun by >> has no header: its first line is a row. */
static bool read_header(const struct trend_ask *ask, struct trend_record *record)
{
    static const char log_header[] = REPORT_LOG_HEADER;
    struct csv_record first;
    char separator = ask->separator;
    if (!record_header(&input, ask->decimal_comma, &separator, &first)) {
        return false;
    }
    if (separator == ',' && trend_is_log_line(&first)) {
        struct csv_record named = {log_header, sizeof log_header - 2, false};
        bool fine = trend_header(record, named, ',');
        if (fine) {
            trend_row(record, first);
        }
        return fine;
    }
    memcpy(header, first.at, first.n);
    first.at = header;
    return trend_header(record, first, separator);
}

static bool read_rows(struct trend_record *record)
{
    struct csv_record row;
    while (!record->wrong) {
        enum record_end end = record_take(&input, record->columns.separator, &row);
        if (end == RECORD_FOUND) {
            trend_row(record, row);
        } else if (end == RECORD_NONE) {
            return true;
        } else if (end != RECORD_MORE) {
            record_complain(&input, record->row + 1, end);
            return false;
        } else if (!input_fill(&input)) {
            return false;
        }
    }
    return false;
}

/* "alder, birch, no name" */
static void list_tanks(const struct trend_record *record, char text[TANKS_TEXT])
{
    text[0] = '\0';
    for (size_t i = 0; i < record->n_tanks; i++) {
        size_t used = strlen(text);
        const char *name = record->tank[i][0] == '\0' ? "no name" : record->tank[i];
        (void)snprintf(text + used, TANKS_TEXT - used, "%s%s", i == 0 ? "" : ", ", name);
    }
}

/* Readings of one tank alone make a record. */
static bool tank_fits(const struct trend_record *record)
{
    char tanks[TANKS_TEXT];
    list_tanks(record, tanks);
    if (!record->ask->tank && record->n_tanks > 1) {
        complain("%s has rows of several tanks (%s): choose one with --tank NAME", record->file,
                 tanks);
        return false;
    }
    if (record->ask->tank && record->of_tank == 0 && record->n_tanks > 0) {
        char shown[SHOWN_MAX];
        char suggestion[SUGGEST_TEXT];
        show_text((struct hw_text){record->ask->tank, strlen(record->ask->tank)}, shown);
        struct suggestions near = {.word = shown, .n = 0};
        for (size_t i = 0; i < record->n_tanks; i++) {
            suggest_weigh(&near, record->tank[i]);
        }
        suggest_text(&near, "", suggestion);
        complain("%s has no row of tank '%s'%s", record->file, shown, suggestion);
        complain("its rows are of: %s", tanks);
        return false;
    }
    return true;
}

static void tell_passed(const struct trend_record *record, const struct trend_passed *passed)
{
    if (passed->n > 0) {
        const char *quote = passed->shown[0] == '\0' ? "" : "'";
        char iso[WHEN_MAX];
        bool pointed = when_pointed((struct hw_text){passed->shown, strlen(passed->shown)}, iso);
        complain("%s: %zu %s passed over, the first is row %zu: %s%s%s %s%s", record->file,
                 passed->n, passed->n == 1 ? "row was" : "rows were", passed->row, quote,
                 quote[0] == '\0' ? "it" : passed->shown, quote,
                 pointed ? "is no time: write " : passed->why, pointed ? iso : "");
    }
}

static bool has_readings(const struct trend_record *record)
{
    for (size_t i = 0; i < record->n_tracks; i++) {
        if (record->track[i].n > 0) {
            return true;
        }
    }
    return false;
}

int trend_read(const struct trend_ask *ask, struct trend_record *record)
{
    memset(record, 0, sizeof *record);
    record->ask = ask;
    if (!input_open(&input, ask->rows)) {
        return EXIT_ASKED_WRONGLY;
    }
    record->file = input_name(&input);
    bool fine = stream_apart(input.descriptor) && read_header(ask, record) && read_rows(record);
    input_close(&input);
    if (!fine || !tank_fits(record)) {
        return EXIT_ASKED_WRONGLY;
    }
    tell_passed(record, &record->rows);
    tell_passed(record, &record->without);
    if (ask->of) { /* other columns may well hold words */
        tell_passed(record, &record->cells);
        tell_passed(record, &record->bounds);
    }
    if (!has_readings(record)) {
        complain("%s has no reading%s%s: %s", record->file, ask->of ? " of " : "",
                 ask->of ? record->track[0].name : "",
                 record->row == 0 ? "there are no rows behind its header"
                                  : "no row has a number and a time that exists");
        return EXIT_UNANSWERED;
    }
    return EXIT_ANSWERED;
}
