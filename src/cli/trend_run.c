/* trend_run.c - reads a record, works out what it tells, prints it. */
#include "cli/trend_run.h"

#include "cli/args_read.h"
#include "cli/help.h"
#include "cli/stream.h"
#include "cli/trend_csv.h"
#include "cli/trend_json.h"
#include "cli/trend_plot.h"
#include "cli/trend_read.h"
#include "cli/trend_text.h"

#include <stdio.h>

/* All columns of readings, or all values of a logbook. */
static int tell_tracks(const struct trend_record *record)
{
    double now = 0;
    if (!trend_now(record, &now)) {
        return EXIT_ASKED_WRONGLY;
    }
    switch (record->ask->format) {
    case FORMAT_CSV:
        trend_csv_tracks(record, now);
        break;
    case FORMAT_JSON:
        trend_json_tracks(record, now);
        break;
    default:
        trend_text_tracks(record, now);
        break;
    }
    return EXIT_ANSWERED;
}

static int tell_answer(const struct trend_record *record)
{
    static struct trend_answer answer;
    if (!trend_answer(record, &answer)) {
        return EXIT_ASKED_WRONGLY;
    }
    switch (record->ask->format) {
    case FORMAT_CSV:
        trend_csv(&answer);
        break;
    case FORMAT_JSON:
        trend_json(&answer);
        break;
    case FORMAT_SVG:
        trend_plot(&answer);
        break;
    default:
        trend_text(&answer);
        break;
    }
    return EXIT_ANSWERED;
}

int trend_run(int argc, char *argv[])
{
    static struct trend_ask ask;
    static struct trend_record record;
    if (args_want_help(argc, argv, 2)) {
        help_by_hand(&trend_caption);
        return EXIT_ANSWERED;
    }
    if (!trend_ask_read(argc, argv, &ask)) {
        return EXIT_ASKED_WRONGLY;
    }
    int status = trend_read(&ask, &record);
    if (status != EXIT_ANSWERED) {
        return status;
    }
    return ask.of ? tell_answer(&record) : tell_tracks(&record);
}
