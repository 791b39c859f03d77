/* test_csv.c - records and cells in memory: every cut of every text gives the same records. */
#include "assert_close.h"
#include "cli/csv.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static struct hw_text text_of(const char *text)
{
    return (struct hw_text){text, strlen(text)};
}

/* The records of a text, each ended by '|', for comparison. */
static void records_of(struct hw_text text, char separator, char *all)
{
    struct csv_record record;
    size_t used = 0;
    size_t at = 0;
    all[0] = '\0';
    while (at < text.n && csv_find_record(text.at + at, text.n - at, separator, true, &record,
                                          &used) == CSV_RECORD) {
        strncat(all, record.at, record.n);
        strcat(all, "|");
        at += used;
    }
}

static void cells_of(const char *text, char separator, char *all)
{
    struct csv_record record = {text, strlen(text), strchr(text, '"') != NULL && separator == ','};
    struct csv_cell cell;
    size_t at = 0;
    all[0] = '\0';
    while (csv_next_cell(&record, separator, &at, &cell)) {
        char plain[100];
        size_t n = csv_unquote(&cell, plain);
        strncat(all, plain, n);
        strcat(all, cell.broken ? "!|" : "|");
    }
}

static void records(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        char separator;
        const char *records;
    } table[] = {
        {"a,b\nc,d\n", ',', "a,b|c,d|"},
        {"a,b\r\nc,d", ',', "a,b|c,d|"},
        {"\n\na", ',', "||a|"},
        {"\"a\nb\",c\nd\n", ',', "\"a\nb\",c|d|"},
        {"a\"b,c\"\nd\n", ',', "a\"b,c\"|d|"}, /* a quote inside a plain cell means nothing */
        {"a\"\"b\nc\n", ',', "a\"\"b|c|"},
        {"\"a\"\"\nb\"\nc\n", ',', "\"a\"\"\nb\"|c|"}, /* a doubled quote does not end the cell */
        {"\"a\"x\"\nb\n", ',', "\"a\"x\"|b|"},
        {"\"a\nb\n", '\t', "\"a|b|"}, /* quotes mean nothing between tabs */
        {"a,\"\"\nb\n", ',', "a,\"\"|b|"},
        {"a;\"b\nc\";d\ne\n", ';', "a;\"b\nc\";d|e|"},
        {"a,\"b\nc\"\n", ';', "a,\"b|c\"|"}, /* a comma begins no cell between semicolons */
    };
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        char all[200];
        records_of(text_of(table[i].text), table[i].separator, all);
        if (strcmp(all, table[i].records) != 0) {
            fail_msg("%s: %s, not %s", table[i].text, all, table[i].records);
        }
        check(strcmp(all, table[i].records) == 0);
    }
}

static void cells(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        char separator;
        const char *cells;
    } table[] = {
        {"", ',', "|"},
        {",", ',', "||"},
        {"a,b,", ',', "a|b||"},
        {"\"a,b\",c", ',', "a,b|c|"},
        {"\"a\"\"b\"", ',', "a\"b|"},
        {"\"\",x", ',', "|x|"},
        {"\"a\"x,c", ',', "a!|c|"},
        {"\"a", ',', "a!|"},
        {"a\"b\",c", ',', "a\"b\"|c|"},
        {"\"a\"\tb,c", '\t', "\"a\"|b,c|"},
    };
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        char all[200];
        cells_of(table[i].text, table[i].separator, all);
        if (strcmp(all, table[i].cells) != 0) {
            fail_msg("%s: %s, not %s", table[i].text, all, table[i].cells);
        }
        check(strcmp(all, table[i].cells) == 0);
    }
}

/* A text that is not the last of its file: a record is whole or more is asked for, never cut. */
static void every_cut(void **state)
{
    (void)state;
    static const char text[] = "a,\"b\"\"c\nd\",e\r\nf,g\n";
    static const size_t first = sizeof "a,\"b\"\"c\nd\",e\r\n" - 1;
    for (size_t n = 0; n < sizeof text; n++) {
        struct csv_record record;
        size_t used = 0;
        enum csv_end end = csv_find_record(text, n, ',', false, &record, &used);
        check(end == (n >= first ? CSV_RECORD : CSV_MORE));
        check(end == CSV_MORE || (used == first && record.n == first - 2));
    }
}

/* The same texts in pieces of every size: what is found is what is found at once, and no byte of a
 * record without quotes is looked at twice. */
static void every_piece(void **state)
{
    (void)state;
    static const char text[] =
        "a,\"b\"\"c\nd\",e\r\nf,g\n\n\"\"\n,\"x\"y,\nplain,5\" wide\nz,\"1\n\"";
    const char separators[] = {',', ';', '\t'};
    for (size_t s = 0; s < sizeof separators; s++) {
        for (size_t piece = 1; piece < sizeof text; piece++) {
            struct csv_scan scan = {.separator = separators[s]};
            struct csv_record record;
            struct csv_record whole;
            size_t begin = 0;
            size_t n = 0;
            while (begin < sizeof text - 1) {
                size_t used = 0;
                size_t used_whole = 0;
                bool last = n == sizeof text - 1;
                enum csv_end end =
                    csv_scan_on(&scan, text + begin, n - begin, last, &record, &used);
                check(scan.done <= n - begin);
                if (end == CSV_MORE) {
                    n = n + piece < sizeof text - 1 ? n + piece : sizeof text - 1;
                    continue;
                }
                check(end == csv_find_record(text + begin, sizeof text - 1 - begin, separators[s],
                                             true, &whole, &used_whole));
                if (end == CSV_UNCLOSED) {
                    break;
                }
                check(end == CSV_RECORD && used == used_whole && record.at == whole.at &&
                      record.n == whole.n && record.quotes == whole.quotes);
                check(scan.done == 0 && !scan.quotes);
                begin += used;
            }
        }
    }
}

/* A record of nearly 1 MiB in pieces of 100 bytes takes time in proportion to its length: what was
 * looked at is overwritten with line feeds and quotes here, and nobody notices. */
static void pieces_are_looked_at_once(void **state)
{
    (void)state;
    static char text[CSV_RECORD_MAX];
    static const char *const begins[] = {"", "\"", "a,\""};
    for (size_t k = 0; k < sizeof begins / sizeof *begins; k++) {
        struct csv_scan scan = {.separator = ','};
        struct csv_record record = {NULL, 0, false};
        size_t used = 0;
        size_t length = sizeof text - 10;
        memset(text, 'x', sizeof text);
        memcpy(text, begins[k], strlen(begins[k]));
        text[length - 1] = k > 0 ? '"' : 'x';
        text[length] = '\n';
        size_t n = 100;
        for (; csv_scan_on(&scan, text, n, false, &record, &used) == CSV_MORE; n += 100) {
            check(scan.done == n);
            for (size_t i = 0; i < n; i++) {
                text[i] = "\n\",x"[i % 4];
            }
        }
        check(used == length + 1 && record.n == length && record.quotes == (k > 0));
    }
}

static void too_long_and_unclosed(void **state)
{
    (void)state;
    static char text[CSV_RECORD_MAX + 2];
    struct csv_record record;
    size_t used = 0;
    memset(text, 'x', sizeof text);
    check(csv_find_record(text, CSV_RECORD_MAX, ',', false, &record, &used) == CSV_MORE);
    check(csv_find_record(text, CSV_RECORD_MAX, ',', true, &record, &used) == CSV_RECORD);
    check(csv_find_record(text, CSV_RECORD_MAX + 1, ',', false, &record, &used) == CSV_TOO_LONG);
    text[0] = '"';
    check(csv_find_record(text, CSV_RECORD_MAX + 1, ',', false, &record, &used) == CSV_TOO_LONG);
    check(csv_find_record("\"a\nb", 4, ',', true, &record, &used) == CSV_UNCLOSED);
    check(csv_find_record("\"a\nb", 4, ',', false, &record, &used) == CSV_MORE);
}

/* What is written as a cell is read as the same text. */
static void written_cells_are_read_again(void **state)
{
    (void)state;
    static const char letters[] = "ab,\"\n\r ";
    hw_random_start(20310305);
    for (int i = 0; i < 2000; i++) {
        char text[12];
        char cell_text[2 * sizeof text + 2];
        char again[sizeof cell_text];
        size_t n = (size_t)hw_random_between(0, 11.99);
        for (size_t k = 0; k < n; k++) {
            text[k] = letters[(size_t)hw_random_between(0, 6.99)];
        }
        size_t written = csv_write_cell((struct hw_text){text, n}, ',', cell_text);
        struct csv_record record = {cell_text, written, true};
        struct csv_cell cell;
        size_t at = 0;
        check(csv_next_cell(&record, ',', &at, &cell) && !cell.broken);
        check(csv_unquote(&cell, again) == n && memcmp(again, text, n) == 0);
        check(!csv_next_cell(&record, ',', &at, &cell));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(records),
        cmocka_unit_test(cells),
        cmocka_unit_test(every_cut),
        cmocka_unit_test(every_piece),
        cmocka_unit_test(pieces_are_looked_at_once),
        cmocka_unit_test(too_long_and_unclosed),
        cmocka_unit_test(written_cells_are_read_again),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
