/* fuzz_trend.c - any bytes as a sheet of readings or a logbook: read, worked out and printed in
 * every format. The first byte chooses what is asked. */
#define _GNU_SOURCE /* memfd_create */
#include "cli/trend_csv.h"
#include "cli/trend_json.h"
#include "cli/trend_plot.h"
#include "cli/trend_read.h"
#include "cli/trend_text.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <unistd.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool condition)
{
    if (!condition) {
        abort();
    }
}

/* Readings are kept in the order of their times; results that are told are numbers in order. */
static void judge(const struct trend_answer *answer)
{
    const double *out = answer->out;
    must(answer->n >= 1 && answer->n <= HW_TREND_READINGS_MAX && answer->used <= answer->n);
    for (size_t i = 1; i < answer->n; i++) {
        must(answer->days[i - 1] <= answer->days[i]);
    }
    must(isnan(out[TREND_SLOPE_LOW]) == isnan(out[TREND_SLOPE_HIGH]));
    must(!(out[TREND_SLOPE_LOW] > out[TREND_SLOPE]) && !(out[TREND_SLOPE] > out[TREND_SLOPE_HIGH]));
    must(isnan(out[TREND_DAYS_TO_LIMIT]) || out[TREND_DAYS_TO_LIMIT] >= 0);
    must(isnan(out[TREND_HELD]) || out[TREND_HELD] >= 0);
}

static void answer_one(const struct trend_record *record)
{
    static struct trend_answer answer;
    if (trend_answer(record, &answer)) {
        judge(&answer);
        trend_text(&answer);
        trend_csv(&answer);
        trend_json(&answer);
        trend_plot(&answer);
    }
}

static void answer_all(const struct trend_record *record)
{
    double now = 0;
    if (trend_now(record, &now)) {
        trend_text_tracks(record, now);
        trend_csv_tracks(record, now);
        trend_json_tracks(record, now);
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct trend_ask ask;
    static struct trend_record record;
    char name[64];
    int file = memfd_create("rows", 0);
    if (size < 1 || file < 0 || write(file, data + 1, size - 1) != (ssize_t)(size - 1)) {
        (void)close(file);
        return 0;
    }
    (void)snprintf(name, sizeof name, "/proc/self/fd/%d", file);
    char *words[16] = {"holdwater", "trend", "--rows", name};
    int n = 4;
    if (data[0] & 1) {
        words[n++] = "--of";
        words[n++] = data[0] & 2 ? "ammonia.free" : "tan";
        words[n++] = "--limit=0.5";
        words[n++] = "--floor=0.1";
    }
    if (data[0] & 4) {
        words[n++] = "--tank=birch";
    }
    if (data[0] & 8) {
        words[n++] = "--separator=semicolon";
        words[n++] = "--decimal=comma";
    }
    words[n++] = data[0] & 16 ? "--when=2031-03-07" : "--when=2031-03-07T08:00Z";
    if (data[0] & 32) {
        words[n++] = "--map=day+hour=when";
    }
    if (trend_ask_read(n, words, &ask) && trend_read(&ask, &record) == 0) {
        if (ask.of) {
            answer_one(&record);
        } else {
            answer_all(&record);
        }
    }
    (void)close(file);
    return 0;
}
