/* fuzz_header.c - any bytes as the header of a file and a record under it, between any separators:
 * what feeds which input, when the record says it was, and a time that is read exists. */
#include "calc/list.h"
#include "cli/column_name.h"
#include "cli/columns.h"
#include "cli/when.h"

#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool condition)
{
    if (!condition) {
        abort();
    }
}

static const struct hw_calc *calc_of(size_t pick)
{
    size_t n = 0;
    while (hw_calcs[n]) {
        n++;
    }
    return hw_calcs[pick % n];
}

static void read_when(struct hw_text text)
{
    struct when when = {.seconds = 1};
    bool read = when_read(text, &when);
    must(read == when_is_iso(text));
    must(read || when.seconds == 1);
    must(!read || (text.n >= 10 && text.n < WHEN_MAX));
    must(!read || (when.seconds > -12000000000 && when.seconds < 260000000000));
}

static void read_record(const struct columns *columns, const struct csv_record *record)
{
    char room[COLUMNS_WHEN];
    char cell[40];
    struct hw_text when = columns_when(columns, record, room);
    must(when.n < sizeof room);
    if (when.at) {
        read_when(when);
    }
    must(columns_cell(columns, record, columns->tank, cell, sizeof cell).n <= sizeof cell);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static struct args args;
    static struct columns columns;
    struct csv_record header;
    struct csv_record record;
    char hint[COLUMNS_HINT];
    size_t used = 0;
    if (size < 4) {
        return 0;
    }
    const char *text = (const char *)data + 3;
    size_t n = size - 3;
    char separator = ",;\t"[data[0] % 3];
    args = (struct args){.calc = calc_of(data[1]), .prefix = "", .format = FORMAT_LOG};
    if (data[2] & 1) {
        args.when_column = (struct hw_text){"Date", 4};
        args.time_column = (struct hw_text){"Time", 4};
    }
    for (size_t i = 0; i < args.calc->n_inputs && data[2] & 2; i++) {
        args.written[i] = (struct hw_written){{"1", 1}, NULL, HW_GIVEN};
    }
    (void)column_unit_within((enum hw_kind)(data[2] / 4 % (HW_YES_NO + 1)),
                             (struct hw_text){text, n});
    if (csv_find_record(text, n, separator, true, &header, &used) != CSV_RECORD ||
        !columns_read(&args, header, separator, "sheet.csv", &columns)) {
        return 0;
    }
    must(columns.n_feed > 0 && columns.n_feed <= HW_INPUTS);
    columns_hint_when(&columns, hint);
    must(strlen(hint) < sizeof hint);
    if (used < n &&
        csv_find_record(text + used, n - used, separator, true, &record, &used) == CSV_RECORD) {
        read_record(&columns, &record);
    }
    return 0;
}
