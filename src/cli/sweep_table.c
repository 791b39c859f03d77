/* sweep_table.c - a sweep over one axis in columns. */
#include "cli/sweep_table.h"

#include "cli/sweep_line.h"

#include <stdio.h>
#include <string.h>

struct table {
    struct sweep_view *view;
    struct sweep_column axis, result[HW_RESULTS];
    size_t marks; /* width of the letters; 0: there are none */
    bool absent;  /* some cell holds no number though there is an answer */
};

static void measure_table(struct table *table)
{
    struct sweep_view *view = table->view;
    const struct hw_calc *calc = view->question->calc;
    table->axis.width = sweep_larger(strlen(view->axis[0].input->name), strlen(view->axis[0].unit));
    sweep_line_measure_axis(&table->axis, &view->axis[0]);
    for (size_t i = 0; i < calc->n_results; i++) {
        table->result[i].width =
            sweep_larger(strlen(calc->results[i].name), strlen(sweep_unit(view, i)));
    }
    for (size_t k = 0; k < view->total; k++) {
        char text[NUMBER_MAX];
        sweep_reach(view, k);
        for (size_t i = 0; i < calc->n_results; i++) {
            if (view->applies[i]) {
                sweep_cell(view, i, k, text);
                sweep_line_measure(&table->result[i], text);
                table->absent = table->absent || strcmp(text, "-") == 0;
            }
        }
        sweep_marks(view, k, text);
        table->marks = sweep_larger(table->marks, strlen(text));
    }
}

/* The place behind the results that stand in one block with that at `from`. */
static size_t end_of_block(const struct table *table, size_t from)
{
    size_t used =
        SWEEP_INDENT + table->axis.width + (table->marks > 0 ? SWEEP_GAP + table->marks : 0);
    size_t to = from;
    for (; to < table->view->n_results; to++) {
        used += SWEEP_GAP + table->result[table->view->result[to]].width;
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
    struct sweep_line line = {.n = 0};
    const char *name = units ? view->axis[0].unit : view->axis[0].input->name;
    bool some = name[0] != '\0';
    sweep_line_right(&line, SWEEP_INDENT + table->axis.width, name);
    for (size_t at = from; at < to; at++) {
        size_t i = view->result[at];
        name = units ? sweep_unit(view, i) : calc->results[i].name;
        some = some || name[0] != '\0';
        sweep_line_right(&line, SWEEP_GAP + table->result[i].width, name);
    }
    if (some) {
        sweep_line_end(&line);
    }
}

static void print_row(const struct table *table, size_t k, size_t from, size_t to)
{
    struct sweep_line line = {.n = 0};
    char text[NUMBER_MAX];
    sweep_axis_text(&table->view->axis[0], k, text);
    sweep_line_add(&line, SWEEP_INDENT, "");
    sweep_line_cell(&line, &table->axis, text);
    for (size_t at = from; at < to; at++) {
        size_t i = table->view->result[at];
        sweep_cell(table->view, i, k, text);
        sweep_line_add(&line, SWEEP_GAP, "");
        sweep_line_cell(&line, &table->result[i], text);
    }
    sweep_marks(table->view, k, text);
    sweep_line_add(&line, SWEEP_GAP, text);
    sweep_line_end(&line);
}

void sweep_table(struct sweep_view *view)
{
    struct table table = {.view = view};
    measure_table(&table);
    for (size_t from = 0; from < view->n_results;) {
        size_t to = end_of_block(&table, from);
        if (from > 0) {
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
    sweep_line_legend(view, table.absent);
}
