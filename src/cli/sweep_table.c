/* sweep_table.c - numbers in columns: a table of results over one axis, a chart of one result over
 * two. */
#include "cli/sweep_view.h"

#include <stdio.h>
#include <string.h>

enum { INDENT = 2, GAP = 2, LINE_MAX_BYTES = 1000 };

/* --- Lines and columns ------------------------------------------------------------------------ */

/* A line that is put together before it is printed, without blanks at its end. */
struct line {
    size_t n;
    char text[LINE_MAX_BYTES];
};

/* A column of numbers whose points stand below one another. */
struct column {
    size_t whole, rest; /* what stands before the points, and from them on */
    size_t width;       /* of the column, its name included */
};

static size_t larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

static void line_add(struct line *line, size_t blanks, const char *text)
{
    line->n += (size_t)snprintf(line->text + line->n, LINE_MAX_BYTES - line->n, "%*s%s",
                                (int)blanks, "", text);
}

static void line_right(struct line *line, size_t width, const char *text)
{
    line_add(line, width - strlen(text), text);
}

static void line_cell(struct line *line, const struct column *column, const char *text)
{
    size_t whole = strcspn(text, ".");
    line_add(line, column->width - column->rest - whole, text);
    line_add(line, column->rest - (strlen(text) - whole), "");
}

static void line_end(struct line *line)
{
    while (line->n > 0 && line->text[line->n - 1] == ' ') {
        line->n--;
    }
    (void)printf("%.*s\n", (int)line->n, line->text);
    line->n = 0;
}

static void measure(struct column *column, const char *text)
{
    size_t whole = strcspn(text, ".");
    column->whole = larger(column->whole, whole);
    column->rest = larger(column->rest, strlen(text) - whole);
    column->width = larger(column->width, column->whole + column->rest);
}

static void measure_axis(struct column *column, const struct sweep_axis *axis)
{
    for (size_t k = 0; k < axis->sweep->n; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(axis, k, text);
        measure(column, text);
    }
}

/* What stands in cells that hold no number. */
static void print_blank_cells(const struct sweep_view *view, bool absent)
{
    if (view->refused > 0) {
        (void)puts("  x: no answer; the letter tells why");
    }
    if (absent) {
        (void)puts("  -: does not apply there");
    }
}

/* --- One axis --------------------------------------------------------------------------------- */

struct table {
    struct sweep_view *view;
    struct column axis, result[HW_RESULTS];
    size_t marks; /* width of the letters; 0: there are none */
    bool absent;  /* some cell holds no number though there is an answer */
};

static void measure_table(struct table *table)
{
    struct sweep_view *view = table->view;
    const struct hw_calc *calc = view->question->calc;
    table->axis.width = larger(strlen(view->axis[0].input->name), strlen(view->axis[0].unit));
    measure_axis(&table->axis, &view->axis[0]);
    for (size_t i = 0; i < calc->n_results; i++) {
        table->result[i].width = larger(strlen(calc->results[i].name), strlen(sweep_unit(view, i)));
    }
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        for (size_t i = 0; i < calc->n_results; i++) {
            if (view->applies[i]) {
                sweep_cell(view, i, k, text);
                measure(&table->result[i], text);
                table->absent = table->absent || strcmp(text, "-") == 0;
            }
        }
        sweep_marks(view, k, text);
        table->marks = larger(table->marks, strlen(text));
    }
}

/* The first result behind those that stand in one block with `from`. */
static size_t end_of_block(const struct table *table, size_t from)
{
    size_t used = INDENT + table->axis.width + (table->marks > 0 ? GAP + table->marks : 0);
    size_t to = from;
    for (; to < table->view->question->calc->n_results; to++) {
        used += table->view->applies[to] ? GAP + table->result[to].width : 0;
        if (to > from && used > PRINT_WIDTH) {
            break;
        }
    }
    return to;
}

/* The names, or the units. */
static void print_head(const struct table *table, size_t from, size_t to, bool units)
{
    const struct sweep_view *view = table->view;
    const struct hw_calc *calc = view->question->calc;
    struct line line = {.n = 0};
    const char *name = units ? view->axis[0].unit : view->axis[0].input->name;
    bool some = name[0] != '\0';
    line_right(&line, INDENT + table->axis.width, name);
    for (size_t i = from; i < to; i++) {
        if (view->applies[i]) {
            name = units ? sweep_unit(view, i) : calc->results[i].name;
            some = some || name[0] != '\0';
            line_right(&line, GAP + table->result[i].width, name);
        }
    }
    if (some) {
        line_end(&line);
    }
}

static void print_row(const struct table *table, size_t k, size_t from, size_t to)
{
    struct line line = {.n = 0};
    char text[NUMBER_MAX];
    sweep_axis_text(&table->view->axis[0], k, text);
    line_add(&line, INDENT, "");
    line_cell(&line, &table->axis, text);
    for (size_t i = from; i < to; i++) {
        if (table->view->applies[i]) {
            sweep_cell(table->view, i, k, text);
            line_add(&line, GAP, "");
            line_cell(&line, &table->result[i], text);
        }
    }
    sweep_marks(table->view, k, text);
    line_add(&line, GAP, text);
    line_end(&line);
}

void sweep_table(struct sweep_view *view)
{
    struct table table = {.view = view};
    measure_table(&table);
    size_t first = sweep_first(view);
    for (size_t from = first; from < view->question->calc->n_results;) {
        size_t to = end_of_block(&table, from);
        if (from > first) {
            (void)putchar('\n');
        }
        print_head(&table, from, to, false);
        print_head(&table, from, to, true);
        for (size_t k = 0; k < view->total; k++) {
            sweep_reach(view, k);
            print_row(&table, k, from, to);
        }
        from = to;
    }
    print_blank_cells(view, table.absent);
}

/* --- Two axes --------------------------------------------------------------------------------- */

struct chart {
    struct sweep_view *view;
    size_t result;
    struct column down, cell;
    size_t marks, gap; /* width of the letters; blanks between columns */
    bool absent;
};

/* Calls for each point in the order of a page. */
static void measure_chart(struct chart *chart)
{
    struct sweep_view *view = chart->view;
    measure_axis(&chart->down, &view->axis[1]);
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        sweep_cell(view, chart->result, k, text);
        measure(&chart->cell, text);
        chart->absent = chart->absent || strcmp(text, "-") == 0;
        sweep_marks(view, k, text);
        chart->marks = larger(chart->marks, strlen(text));
    }
    for (size_t k = 0; k < view->points.across; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(&view->axis[0], k, text);
        chart->cell.width = larger(chart->cell.width, strlen(text));
    }
    chart->gap =
        chart->marks > 0 ? 1 : GAP; /* most cells have fewer letters than there is room for */
}

static void print_chart_head(const struct chart *chart, size_t from, size_t to)
{
    const struct sweep_view *view = chart->view;
    struct line line = {.n = 0};
    char text[AXIS_TEXT];
    line_add(&line, INDENT + chart->down.width, "");
    for (size_t k = from; k < to; k++) {
        sweep_axis_text(&view->axis[0], k, text);
        line_right(&line, chart->gap + chart->cell.width, text);
        line_add(&line, chart->marks, "");
    }
    line_end(&line);
}

static void print_chart_row(const struct chart *chart, size_t row, size_t from, size_t to)
{
    struct sweep_view *view = chart->view;
    struct line line = {.n = 0};
    char text[NUMBER_MAX];
    sweep_axis_text(&view->axis[1], row, text);
    line_add(&line, INDENT, "");
    line_cell(&line, &chart->down, text);
    sweep_load(view, row * view->points.across + from, to - from);
    for (size_t k = from; k < to; k++) {
        char marks[MARKS_MAX];
        sweep_cell(view, chart->result, row * view->points.across + k, text);
        sweep_marks(view, row * view->points.across + k, marks);
        line_add(&line, chart->gap, "");
        /* a letter stands at its number, and what is left of its room behind it */
        size_t rest = strlen(text) - strcspn(text, ".");
        line_add(&line, chart->cell.width - chart->cell.rest - strcspn(text, "."), text);
        line_add(&line, 0, marks);
        line_add(&line, chart->cell.rest - rest + chart->marks - strlen(marks), "");
    }
    line_end(&line);
}

void sweep_chart(struct sweep_view *view, size_t result)
{
    struct chart chart = {.view = view, .result = result};
    measure_chart(&chart);
    size_t each = chart.gap + chart.cell.width + chart.marks;
    size_t room = PRINT_WIDTH - INDENT - chart.down.width;
    size_t columns = sweep_fold(view->points.across, larger(room / each, 1));
    for (size_t from = 0; from < view->points.across; from += columns) {
        size_t to = from + columns < view->points.across ? from + columns : view->points.across;
        (void)fputs(from > 0 ? "\n" : "", stdout);
        print_chart_head(&chart, from, to);
        for (size_t row = 0; row < view->points.down; row++) {
            print_chart_row(&chart, row, from, to);
        }
    }
    print_blank_cells(view, chart.absent);
}
