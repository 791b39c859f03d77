/* same_values.c - two tables that must hold the same values.
 *
 * Usage: same_values OURS THEIRS. Files or pipes of CSV with a header; cells that hold neither
 * commas nor line ends. Every column of THEIRS must be in OURS, by its name, with the same cell in
 * every row: byte for byte, or as numbers that differ by no more than a millionth. Quotes around a
 * cell do not count. Prints what was found, in words; status 1 at the first row that differs. */
#define _GNU_SOURCE /* getline */

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { CELLS = 1000 };

struct table {
    FILE *file;
    const char *name;
    char *line;
    size_t room, n;
    char *cell[CELLS];
};

static void cut(struct table *table)
{
    char *at = table->line;
    for (table->n = 0; table->n < CELLS && at;) {
        char *end = strchr(at, ',');
        size_t length = end ? (size_t)(end - at) : strlen(at);
        at[length] = '\0';
        if (length >= 2 && at[0] == '"' && at[length - 1] == '"') {
            at[length - 1] = '\0';
            at++;
        }
        table->cell[table->n++] = at;
        at = end ? end + 1 : NULL;
    }
}

static int next_row(struct table *table)
{
    ssize_t n = getline(&table->line, &table->room, table->file);
    if (n < 0) {
        return 0;
    }
    while (n > 0 && (table->line[n - 1] == '\n' || table->line[n - 1] == '\r')) {
        table->line[--n] = '\0';
    }
    cut(table);
    return 1;
}

static void open_table(struct table *table, const char *name)
{
    table->name = name;
    table->file = fopen(name, "r");
    if (!table->file || !next_row(table)) {
        fprintf(stderr, "same_values: %s cannot be read, or is empty\n", name);
        exit(1);
    }
}

/* The relative difference of two cells that are numbers; infinity when one is not. */
static double apart(const char *a, const char *b)
{
    char *end_a = NULL;
    char *end_b = NULL;
    double x = strtod(a, &end_a);
    double y = strtod(b, &end_b);
    if (end_a == a || end_b == b || *end_a != '\0' || *end_b != '\0') {
        return (double)INFINITY;
    }
    return x == y ? 0 : fabs(x - y) / fmax(fabs(x), fabs(y));
}

int main(int argc, char **argv)
{
    static struct table ours;
    static struct table theirs;
    size_t place[CELLS];
    unsigned long rows = 0;
    unsigned long other = 0;
    double most = 0;
    if (argc != 3) {
        return 2;
    }
    open_table(&ours, argv[1]);
    open_table(&theirs, argv[2]);
    for (size_t i = 0; i < theirs.n; i++) {
        for (place[i] = 0; place[i] < ours.n; place[i]++) {
            if (strcmp(ours.cell[place[i]], theirs.cell[i]) == 0) {
                break;
            }
        }
        if (place[i] == ours.n) {
            fprintf(stderr, "same_values: no column %s\n", theirs.cell[i]);
            return 1;
        }
    }
    size_t columns = theirs.n;
    while (next_row(&theirs)) {
        rows++;
        if (!next_row(&ours) || theirs.n != columns) {
            fprintf(stderr, "same_values: row %lu is missing, or has other cells\n", rows);
            return 1;
        }
        for (size_t i = 0; i < columns; i++) {
            const char *mine = place[i] < ours.n ? ours.cell[place[i]] : "";
            double difference = strcmp(mine, theirs.cell[i]) == 0 ? 0 : apart(mine, theirs.cell[i]);
            if (!(difference <= 1e-6)) {
                fprintf(stderr, "same_values: row %lu: %s, not %s\n", rows, mine, theirs.cell[i]);
                return 1;
            }
            most = difference > most ? difference : most;
            other += strcmp(mine, theirs.cell[i]) != 0;
        }
    }
    if (next_row(&ours) || rows == 0) {
        fprintf(stderr, "same_values: more rows than the other, or none\n");
        return 1;
    }
    if (other == 0) {
        printf("%lu rows alike, byte for byte\n", rows);
    } else {
        printf("%lu rows alike; %lu cells written otherwise, %.1g apart at most\n", rows, other,
               most);
    }
    return 0;
}
