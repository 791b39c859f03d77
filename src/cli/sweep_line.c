/* sweep_line.c - lines of numbers that stand in columns. */
#include "cli/sweep_line.h"

#include <stdio.h>
#include <string.h>

size_t sweep_larger(size_t a, size_t b)
{
    return a > b ? a : b;
}

void sweep_line_add(struct sweep_line *line, size_t blanks, const char *text)
{
    size_t room = SWEEP_LINE_MAX - line->n;
    size_t n = (size_t)snprintf(line->text + line->n, room, "%*s%s", (int)blanks, "", text);
    line->n += n < room ? n : room - 1;
}

void sweep_line_right(struct sweep_line *line, size_t width, const char *text)
{
    sweep_line_add(line, width - strlen(text), text);
}

void sweep_line_cell(struct sweep_line *line, const struct sweep_column *column, const char *text)
{
    size_t whole = strcspn(text, ".");
    sweep_line_add(line, column->width - column->rest - whole, text);
    sweep_line_add(line, column->rest - (strlen(text) - whole), "");
}

void sweep_line_end(struct sweep_line *line)
{
    while (line->n > 0 && line->text[line->n - 1] == ' ') {
        line->n--;
    }
    (void)printf("%.*s\n", (int)line->n, line->text);
    line->n = 0;
}

void sweep_line_measure(struct sweep_column *column, const char *text)
{
    size_t whole = strcspn(text, ".");
    column->whole = sweep_larger(column->whole, whole);
    column->rest = sweep_larger(column->rest, strlen(text) - whole);
    column->width = sweep_larger(column->width, column->whole + column->rest);
}

void sweep_line_measure_axis(struct sweep_column *column, const struct sweep_axis *axis)
{
    for (size_t k = 0; k < axis->sweep->n; k++) {
        char text[AXIS_TEXT];
        sweep_axis_text(axis, k, text);
        sweep_line_measure(column, text);
    }
}

void sweep_line_legend(const struct sweep_view *view, bool absent)
{
    if (view->refused > 0) {
        (void)puts("  x: no answer; the letter tells why");
    }
    if (absent) {
        (void)puts("  -: does not apply there");
    }
}
