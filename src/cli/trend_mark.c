/* trend_mark.c - the times of rows, and cells that are no readings but may end a run. */
#include "cli/trend_record.h"

void trend_note_time(struct trend_record *record, const struct when *when)
{
    bool latest = !record->any_time || when->seconds >= record->newest.seconds;
    record->any_time = true;
    record->above = when->seconds;
    record->unordered += latest ? 0 : 1;
    if (latest) {
        record->newest = *when;
    }
}

void trend_mark(struct trend_record *record, const struct csv_record *row, struct timed mark)
{
    char room[COLUMNS_WHEN];
    struct when when;
    bool read = when_read(columns_when(&record->columns, row, room), &when) &&
                (!record->any_time || when.has_offset == record->newest.has_offset);
    if (read) {
        trend_note_time(record, &when);
    }
    if (record->ask->of && record->any_time) {
        mark.seconds = record->above;
        (void)readings_add(&record->marks, mark);
    }
}
