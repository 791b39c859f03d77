/* sweep_line.h - lines of numbers that stand in columns. */
#ifndef HW_SWEEP_LINE_H
#define HW_SWEEP_LINE_H
#include "cli/sweep_view.h"

enum { SWEEP_INDENT = 2, SWEEP_GAP = 2, SWEEP_LINE_MAX = 1000 };

/* A line that is put together before it is printed, without blanks at its end. */
struct sweep_line {
    size_t n;
    char text[SWEEP_LINE_MAX];
};

/* A column of numbers whose points stand below one another. */
struct sweep_column {
    size_t whole, rest; /* what stands before the points, and from them on */
    size_t width;       /* of the column, its name included */
};

size_t sweep_larger(size_t a, size_t b);

/* Adds blanks and text; text at the right of a width; a number in its column. */
void sweep_line_add(struct sweep_line *line, size_t blanks, const char *text);
void sweep_line_right(struct sweep_line *line, size_t width, const char *text);
void sweep_line_cell(struct sweep_line *line, const struct sweep_column *column, const char *text);

/* Prints the line and empties it. */
void sweep_line_end(struct sweep_line *line);

/* Makes room for a number; for every value of an axis. */
void sweep_line_measure(struct sweep_column *column, const char *text);
void sweep_line_measure_axis(struct sweep_column *column, const struct sweep_axis *axis);

/* Prints what stands in cells that hold no number; absent: some result does not apply somewhere. */
void sweep_line_legend(const struct sweep_view *view, bool absent);
#endif
