/* run_reference.c - runs the rows of the reference sheets that speak of the core.
 *
 * Usage: run_reference [FOLDER], by default tests/reference. Every *.csv in it has the columns
 *
 *     function   a function of the core without its hw_, or a calculation of the program
 *     inputs     name=value, joined by ; with words for choices; temp68 is a temperature on
 *                IPTS-68; days and values are lists with blanks between
 *     result     the name of the result, or status
 *     expected   its value by the source
 *     abs, rel   tolerances; the wider of abs and rel x |expected| counts
 *     source     where the value comes from
 *     how        READ from the source, COMPUTED by an independent evaluation, or what else
 *
 * Rows of calculations are counted and left to the tests of the engine. All failing rows are told;
 * a row that cannot be understood fails too, and so does a sheet without rows. How each
 * function is called stands in reference_public.c and reference_inner.c. */
#ifndef _POSIX_C_SOURCE
#define _POSIX_C_SOURCE 200809L /* opendir */
#endif

#include <dirent.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "reference.h"

enum { COLUMNS = 8, LINE_MAX_LENGTH = 4096, SHEETS_MAX = 200 };
enum column { FUNCTION, INPUTS, RESULT, EXPECTED, ABS, REL, SOURCE, HOW };

static const char header[] = "function,inputs,result,expected,abs,rel,source,how";

struct input {
    const char *name, *value;
    int used;
};

/* One row under evaluation: what goes in, and what came out. `trouble` tells what is wrong with the
 * row itself. */
struct row {
    struct input inputs[INPUTS_MAX];
    int input_count;
    int status;
    double results[RESULTS_MAX];
    const char *trouble;
};

/* ---------------------------------------------------------------- names in one text */

/* How many names stand in a text. */
static int names_in(const char *names)
{
    int count = 0;
    for (const char *at = names; *at != '\0'; at++) {
        count += *at != ' ' && (at[1] == ' ' || at[1] == '\0');
    }
    return count;
}

/* The first name of a text, and what is left of the text. */
static const char *next_name(const char *names, char name[64])
{
    size_t length = strcspn(names, " ");
    snprintf(name, 64, "%.*s", (int)length, names);
    return names + length + (names[length] == ' ');
}

/* The place of a name in a text, or -1. */
static int place_of(const char *wanted, const char *names)
{
    char name[64];
    for (int i = 0; *names != '\0'; i++) {
        names = next_name(names, name);
        if (strcmp(name, wanted) == 0) {
            return i;
        }
    }
    return -1;
}

/* ---------------------------------------------------------------- inputs and results */

static const char *word(struct row *row, const char *name)
{
    for (int i = 0; i < row->input_count; i++) {
        if (strcmp(row->inputs[i].name, name) == 0) {
            row->inputs[i].used = 1;
            return row->inputs[i].value;
        }
    }
    return NULL;
}

static double parsed(struct row *row, const char *text)
{
    char *end = NULL;
    double value = strtod(text, &end);
    if (end == text || *end != '\0') {
        row->trouble = "not a number";
    }
    return value;
}

/* An input by its name; a temperature may be given on IPTS-68. */
static double number(struct row *row, const char *name)
{
    char on_68[70];
    const char *text = word(row, name);
    if (text != NULL) {
        return parsed(row, text);
    }
    snprintf(on_68, sizeof on_68, "%s68", name);
    text = strstr(name, "temp") != NULL ? word(row, on_68) : NULL;
    if (text != NULL) {
        return parsed(row, text) / 1.00024;
    }
    row->trouble = "an input is missing";
    return (double)NAN;
}

/* The place of a word among those a choice has, or, for refusals, a bare number. */
static int chosen(struct row *row, const struct choice *choice)
{
    const char *given = word(row, choice->name);
    if (given == NULL) {
        row->trouble = "a choice is missing";
        return 0;
    }
    int place = place_of(given, choice->words);
    return place >= 0 ? place : (int)parsed(row, given);
}

/* A list of numbers with blanks between; how many. */
static size_t list_of(struct row *row, const char *name, double list[SERIES_MAX])
{
    const char *text = word(row, name);
    size_t n = 0;
    while (text != NULL && *text != '\0' && n < SERIES_MAX) {
        char *end = NULL;
        list[n++] = strtod(text, &end);
        if (end == text || (*end != ' ' && *end != '\0')) {
            row->trouble = "no list of numbers";
            break;
        }
        text = *end == ' ' ? end + 1 : end;
    }
    return n;
}

static void read_series(struct row *row, struct series *series)
{
    series->n = list_of(row, "days", series->days);
    if (list_of(row, "values", series->values) != series->n) {
        row->trouble = "as many days as values are wanted";
    }
}

static int called(const struct function *f, const int c[], const double x[], double y[])
{
    if (f->of1 != NULL) {
        return f->of1(x[0], y);
    }
    if (f->of2 != NULL) {
        return f->of2(x[0], x[1], y);
    }
    if (f->of3 != NULL) {
        return f->of3(x[0], x[1], x[2], y);
    }
    if (f->of4 != NULL) {
        return f->of4(x[0], x[1], x[2], x[3], y);
    }
    if (f->of5 != NULL) {
        return f->of5(x[0], x[1], x[2], x[3], x[4], y);
    }
    return f->call != NULL ? f->call(x, y) : f->chosen(c, x, y);
}

/* Fills status and results from the inputs. */
static void evaluate(const struct function *f, struct row *row)
{
    int choices[CHOICES_MAX] = {0};
    double in[INPUTS_MAX] = {0};
    char name[64];
    const char *names = f->in;
    for (int i = 0; i < CHOICES_MAX && f->choices[i].name != NULL; i++) {
        choices[i] = chosen(row, &f->choices[i]);
    }
    for (int i = 0; *names != '\0'; i++) {
        names = next_name(names, name);
        in[i] = number(row, name);
    }
    static struct series series;
    if (f->series != NULL) {
        read_series(row, &series);
    }
    if (row->trouble == NULL) {
        row->status = f->series != NULL ? f->series(&series, in, row->results)
                                        : called(f, choices, in, row->results);
    }
}

/* What is wrong with a row that was evaluated: inputs left over, or results that are no numbers
 * with a status that says they are, or the other way round. */
static void look_over(const struct function *f, struct row *row)
{
    for (int i = 0; i < row->input_count && row->trouble == NULL; i++) {
        if (!row->inputs[i].used) {
            row->trouble = "an input the function does not have";
        }
    }
    for (int i = 0; i < names_in(f->out) && row->trouble == NULL; i++) {
        if (row->status < 0 ? !isnan(row->results[i]) : !isfinite(row->results[i])) {
            row->trouble = "status and result do not go together";
        }
    }
}

/* The value of the result asked for; with `trouble` when the function has none of that name. */
static double result_named(const struct function *f, struct row *row, const char *name)
{
    int place = place_of(name, f->out);
    if (strcmp(name, "status") == 0) {
        return row->status;
    }
    if (place < 0) {
        row->trouble = "no such result";
        return (double)NAN;
    }
    return row->results[place];
}

/* ---------------------------------------------------------------- functions and calculations */

/* The program's calculations, whose rows other tests run. */
static const char calculations[] =
    "ahead ammonia bag bath binder bioload blend buffer challenge change concentrate course "
    "disinfect "
    "dose emergency gauge neutralise nitrite oxygen salinity saltmix verdict volume";

static const struct function *function_named(const char *name)
{
    const struct function *const tables[] = {reference_public, reference_inner};
    for (size_t t = 0; t < sizeof tables / sizeof *tables; t++) {
        for (const struct function *f = tables[t]; f->name != NULL; f++) {
            if (strcmp(f->name, name) == 0) {
                return f;
            }
        }
    }
    return NULL;
}

/* ---------------------------------------------------------------- reading a sheet */

/* Cuts a record into its fields in place, taking quotes away; the number of fields, or -1 for
 * quotes that do not close or stand in the wrong place. */
static int split_record(char *line, char *fields[], int most)
{
    int count = 0;
    char *from = line;
    for (;;) {
        if (count == most) {
            return -1;
        }
        char *to = from;
        fields[count++] = from;
        if (*from == '"') {
            for (from++; *from != '\0' && (*from != '"' || from[1] == '"'); from++) {
                if (*from == '"') {
                    from++;
                }
                *to++ = *from;
            }
            if (*from++ != '"') {
                return -1;
            }
        } else {
            while (*from != '\0' && *from != ',') {
                *to++ = *from++;
            }
        }
        char stop = *from;
        if (stop != '\0' && stop != ',') {
            return -1;
        }
        from++;
        *to = '\0';
        if (stop == '\0') {
            return count;
        }
    }
}

/* Cuts name=value;name=value in place. */
static void split_inputs(struct row *row, char *text)
{
    while (text != NULL && *text != '\0') {
        char *next = strchr(text, ';');
        if (next != NULL) {
            *next++ = '\0';
        }
        char *equals = strchr(text, '=');
        if (equals == NULL || equals == text || row->input_count == INPUTS_MAX) {
            row->trouble = "inputs cannot be read";
            return;
        }
        *equals = '\0';
        if (word(row, text) != NULL) {
            row->trouble = "an input is named twice";
        }
        struct input input = {text, equals + 1, 0};
        row->inputs[row->input_count++] = input;
        text = next;
    }
    for (int i = 0; i < row->input_count; i++) {
        row->inputs[i].used = 0;
    }
}

struct tally {
    int ran, left, failed;
};

static void tell(struct tally *tally, const char *sheet, int line, const char *what)
{
    tally->failed++;
    print_error("%s:%d: %s\n", sheet, line, what);
}

static void run_row(struct tally *tally, const char *sheet, int line, char *fields[])
{
    const struct function *function = function_named(fields[FUNCTION]);
    struct row row = {.status = 0};
    if (*fields[SOURCE] == '\0' || *fields[HOW] == '\0') {
        tell(tally, sheet, line, "source or how is empty");
        return;
    }
    double expected = parsed(&row, fields[EXPECTED]);
    double absolute = parsed(&row, fields[ABS]);
    double relative = parsed(&row, fields[REL]);
    split_inputs(&row, fields[INPUTS]);
    if (function == NULL) {
        if (row.trouble != NULL || place_of(fields[FUNCTION], calculations) < 0) {
            tell(tally, sheet, line, row.trouble != NULL ? row.trouble : "unknown function");
        }
        tally->left++;
        return;
    }
    tally->ran++;
    double got = (double)NAN;
    if (row.trouble == NULL) {
        evaluate(function, &row);
        got = result_named(function, &row, fields[RESULT]);
        look_over(function, &row);
    }
    if (row.trouble != NULL) {
        tell(tally, sheet, line, row.trouble);
    } else if (!hw_is_close(got, expected, absolute, relative)) {
        tell(tally, sheet, line, "differs");
        print_error("    %s %s is %.17g, not %.17g (off by %.3g; allowed %.3g, or %.3g of it)\n",
                    fields[FUNCTION], fields[RESULT], got, expected, got - expected, absolute,
                    relative);
    }
}

static void run_sheet(struct tally *all, const char *folder, const char *name)
{
    char path[LINE_MAX_LENGTH];
    char line[LINE_MAX_LENGTH];
    struct tally tally = {0, 0, 0};
    int number_of_line = 0;
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *sheet = fopen(path, "r");
    if (sheet == NULL) {
        tell(all, path, 0, "cannot be opened");
        return;
    }
    while (fgets(line, sizeof line, sheet) != NULL) {
        char *fields[COLUMNS + 1];
        size_t length = strcspn(line, "\r\n");
        number_of_line++;
        if (line[length] == '\0' && !feof(sheet)) {
            tell(&tally, name, number_of_line, "the line is too long");
            break;
        }
        line[length] = '\0';
        if (number_of_line == 1) {
            if (strcmp(line, header) != 0) {
                tell(&tally, name, 1, "not the header of a reference sheet");
                break;
            }
        } else if (split_record(line, fields, COLUMNS + 1) != COLUMNS) {
            tell(&tally, name, number_of_line, "not a row of eight fields");
        } else {
            run_row(&tally, name, number_of_line, fields);
        }
    }
    fclose(sheet);
    if (tally.ran + tally.left == 0) {
        tell(&tally, name, number_of_line, "no rows");
    }
    printf("%-32s %5d rows, %d of calculations left to the engine, %d failed\n", name, tally.ran,
           tally.left, tally.failed);
    all->ran += tally.ran;
    all->left += tally.left;
    all->failed += tally.failed;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static const char *folder = "tests/reference";
static int rows_ran, rows_failed;

static void every_row_agrees(void **state)
{
    static char names[SHEETS_MAX][256];
    char *sorted[SHEETS_MAX];
    size_t count = 0;
    struct tally all = {0, 0, 0};
    (void)state;
    DIR *directory = opendir(folder);
    if (directory == NULL) {
        fail_msg("cannot open the folder %s", folder);
        return;
    }
    for (struct dirent *entry = readdir(directory); entry != NULL; entry = readdir(directory)) {
        size_t length = strlen(entry->d_name);
        if (length > 4 && strcmp(entry->d_name + length - 4, ".csv") == 0) {
            if (count == SHEETS_MAX || length >= sizeof names[0]) {
                fail_msg("too many sheets, or too long a name");
            }
            memcpy(names[count], entry->d_name, length + 1);
            sorted[count] = names[count];
            count++;
        }
    }
    closedir(directory);
    qsort(sorted, count, sizeof *sorted, by_name);
    for (size_t i = 0; i < count; i++) {
        run_sheet(&all, folder, sorted[i]);
    }
    rows_ran = all.ran;
    rows_failed = all.failed;
    if (all.failed != 0 || all.ran == 0) {
        fail_msg("%d of %d rows failed", all.failed, all.ran);
    }
}

/* ---------------------------------------------------------------- the runner itself */

static void records_are_cut_as_csv(void **state)
{
    char *fields[COLUMNS + 1];
    char plain[] = "a,b,,d";
    char quoted[] = "\"a,b\",\"c \"\"d\"\"\",\"\"";
    char open_quote[] = "a,\"b";
    char after_quote[] = "\"a\"b,c";
    char many[] = "1,2,3,4,5,6,7,8,9,10";
    (void)state;
    assert_int_equal(split_record(plain, fields, COLUMNS + 1), 4);
    assert_string_equal(fields[2], "");
    assert_string_equal(fields[3], "d");
    assert_int_equal(split_record(quoted, fields, COLUMNS + 1), 3);
    assert_string_equal(fields[0], "a,b");
    assert_string_equal(fields[1], "c \"d\"");
    assert_string_equal(fields[2], "");
    assert_int_equal(split_record(open_quote, fields, COLUMNS + 1), -1);
    assert_int_equal(split_record(after_quote, fields, COLUMNS + 1), -1);
    assert_int_equal(split_record(many, fields, COLUMNS + 1), -1);
}

static void comparison_is_strict(void **state)
{
    (void)state;
    assert_false(hw_is_close((double)NAN, 1, 1, 1));
    assert_false(hw_is_close(1, (double)NAN, 1, 1));
    assert_false(hw_is_close((double)INFINITY, (double)INFINITY, 1, 1));
    assert_false(hw_is_close(1, 1, (double)NAN, 1));
    assert_false(hw_is_close(35.16504, 35.165041, 1e-12, 0));
    assert_true(hw_is_close(35.16504, 35.165041, 1e-6 + 1e-9, 0));
    assert_true(hw_is_close(101, 100, 0, 0.01));
    assert_false(hw_is_close(101.1, 100, 0, 0.01));
}

/* Each entry has one way to be called, and as many names as that has numbers. */
static void tables_are_sound(void **state)
{
    const struct function *const tables[] = {reference_public, reference_inner};
    (void)state;
    for (size_t t = 0; t < sizeof tables / sizeof *tables; t++) {
        for (const struct function *f = tables[t]; f->name != NULL; f++) {
            int numbers = names_in(f->in);
            const int ways[] = {f->of1 != NULL,    f->of2 != NULL,   f->of3 != NULL,
                                f->of4 != NULL,    f->of5 != NULL,   f->call != NULL,
                                f->chosen != NULL, f->series != NULL};
            int count = 0;
            for (int i = 0; i < 8; i++) {
                count += ways[i];
            }
            assert_int_equal(count, 1);
            assert_in_range(names_in(f->out), 1, RESULTS_MAX);
            int direct = f->call == NULL && f->chosen == NULL && f->series == NULL;
            assert_true(numbers <= INPUTS_MAX && (!direct || ways[numbers - 1]));
            assert_true(!direct || names_in(f->out) == 1);
            assert_true((f->chosen != NULL) == (f->choices[0].name != NULL));
            assert_ptr_equal(function_named(f->name), f);
        }
    }
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(records_are_cut_as_csv),
        cmocka_unit_test(comparison_is_strict),
        cmocka_unit_test(tables_are_sound),
        cmocka_unit_test(every_row_agrees),
    };
    if (argc > 1) {
        folder = argv[1];
    }
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    printf("%d checks passed\n%d reference rows\n", rows_ran - rows_failed, rows_ran);
    return failed;
}
