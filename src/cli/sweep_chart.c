/* sweep_chart.c - one result over two axes, folded when it is too wide. */
#include "cli/sweep_chart.h"

#include "cli/sweep_line.h"

#include <stdio.h>
#include <string.h>

struct chart {
    struct sweep_view *view;
    size_t result;
    struct sweep_column down, cell;
    size_t marks, gap; /* width of the letters; blanks between columns */
    bool absent;
};

/* Calls for each point in the order of a page. */
static void measure_chart(struct chart *chart)
{
    struct sweep_view *view = chart->view;
    sweep_line_measure_axis(&chart->down, &view->axis[1]);
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        sweep_cell(view, chart->result, k, text);
        sweep_line_measure(&chart->cell, text);
        chart->absent = chart->absent || strcmp(text, "-") == 0;
        sweep_marks(view, k, text);
        chart->marks = sweep_larger(chart->marks, strlen(text));
    }
    for (size_t k = 0; k < view->points.across; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(&view->axis[0], k, text);
        chart->cell.width = sweep_larger(chart->cell.width, strlen(text));
    }
    chart->gap =
        chart->marks > 0 ? 1 : SWEEP_GAP; /* most cells have fewer letters than there is room for */
}

static void print_chart_head(const struct chart *chart, size_t from, size_t to)
{
    const struct sweep_view *view = chart->view;
    struct sweep_line line = {.n = 0};
    char text[AXIS_TEXT];
    sweep_line_add(&line, SWEEP_INDENT + chart->down.width, "");
    for (size_t k = from; k < to; k++) {
        sweep_axis_text(&view->axis[0], k, text);
        sweep_line_right(&line, chart->gap + chart->cell.width, text);
        sweep_line_add(&line, chart->marks, "");
    }
    sweep_line_end(&line);
}

static void print_chart_row(const struct chart *chart, size_t row, size_t from, size_t to)
{
    struct sweep_view *view = chart->view;
    struct sweep_line line = {.n = 0};
    char text[NUMBER_MAX];
    sweep_axis_text(&view->axis[1], row, text);
    sweep_line_add(&line, SWEEP_INDENT, "");
    sweep_line_cell(&line, &chart->down, text);
    sweep_load(view, row * view->points.across + from, to - from);
    for (size_t k = from; k < to; k++) {
        char marks[MARKS_MAX];
        sweep_cell(view, chart->result, row * view->points.across + k, text);
        sweep_marks(view, row * view->points.across + k, marks);
        sweep_line_add(&line, chart->gap, "");
        /* a letter stands at its number, and what is left of its room behind it */
        size_t rest = strlen(text) - strcspn(text, ".");
        sweep_line_add(&line, chart->cell.width - chart->cell.rest - strcspn(text, "."), text);
        sweep_line_add(&line, 0, marks);
        sweep_line_add(&line, chart->cell.rest - rest + chart->marks - strlen(marks), "");
    }
    sweep_line_end(&line);
}

void sweep_chart(struct sweep_view *view, size_t result)
{
    struct chart chart = {.view = view, .result = result};
    measure_chart(&chart);
    size_t each = chart.gap + chart.cell.width + chart.marks;
    size_t room = PRINT_WIDTH - SWEEP_INDENT - chart.down.width;
    size_t columns = sweep_fold(view->points.across, sweep_larger(room / each, 1));
    for (size_t from = 0; from < view->points.across; from += columns) {
        size_t to = from + columns < view->points.across ? from + columns : view->points.across;
        (void)fputs(from > 0 ? "\n" : "", stdout);
        print_chart_head(&chart, from, to);
        for (size_t row = 0; row < view->points.down; row++) {
            print_chart_row(&chart, row, from, to);
        }
    }
    sweep_line_legend(view, chart.absent);
}
