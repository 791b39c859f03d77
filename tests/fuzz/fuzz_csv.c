/* fuzz_csv.c - any bytes as a CSV or TSV file: records never overlap or go missing, and a file that
 * arrives in two pieces has the same records. */
#include "cli/csv.h"

#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void must(bool condition)
{
    if (!condition) {
        abort();
    }
}

/* Cells lie side by side and make up the record. */
static void cells(const struct csv_record *record, char separator)
{
    struct csv_cell cell;
    size_t at = 0;
    size_t bytes = 0;
    size_t n = 0;
    while (csv_next_cell(record, separator, &at, &cell)) {
        must(cell.raw.at >= record->at && cell.raw.at + cell.raw.n <= record->at + record->n);
        must(cell.text.at >= cell.raw.at && cell.text.at + cell.text.n <= cell.raw.at + cell.raw.n);
        char *plain = malloc(cell.text.n + 1);
        char *written = malloc(2 * cell.text.n + 2);
        size_t length = csv_unquote(&cell, plain);
        must(length <= cell.text.n);
        must(csv_write_cell((struct hw_text){plain, length}, separator, written) <= 2 * length + 2);
        free(plain);
        free(written);
        bytes += cell.raw.n;
        n++;
    }
    must(n > 0 && bytes + n - 1 == record->n);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size < 2) {
        return 0;
    }
    char separator = ",;\t"[data[0] % 3];
    const char *text = (const char *)data + 1;
    size_t n = size - 1;
    size_t begin = 0;
    while (begin < n) {
        struct csv_record record;
        struct csv_record early;
        size_t used = 0;
        size_t early_used = 0;
        enum csv_end end =
            csv_find_record(text + begin, n - begin, separator, true, &record, &used);
        if (end != CSV_RECORD) {
            must(end == CSV_UNCLOSED);
            return 0;
        }
        must(used > 0 && used <= n - begin && record.n <= used);
        size_t cut = (data[0] >> 1) % (n - begin) + 1;
        if (csv_find_record(text + begin, cut, separator, false, &early, &early_used) ==
            CSV_RECORD) {
            must(early_used == used && early.n == record.n);
        }
        cells(&record, separator);
        begin += used;
    }
    return 0;
}
