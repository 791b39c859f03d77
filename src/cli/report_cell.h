/* report_cell.h - cells of a table or a logbook. */
#ifndef HW_REPORT_CELL_H
#define HW_REPORT_CELL_H
#include "cli/report.h"

#include <stdio.h>

enum { CELL_MAX = 4000 };

/* Prints text as a cell, quoted where it must be, and cut at CELL_MAX bytes. */
void report_cell(FILE *out, struct hw_text text, char separator);

/* The same for text that ends with its NUL. */
void report_cell_text(FILE *out, const char *text, char separator);

/* True for a cell that a spreadsheet would run as a formula. */
bool report_cell_runs(struct hw_text text);

/* The same as report_cell for a text of the keeper's own: one that a spreadsheet would run begins
 * with an apostrophe. */
void report_cell_own(FILE *out, struct hw_text text, char separator);

/* An input's value as it stands in a cell: a number in its unit, words, or nothing. */
void report_cell_input(const struct hw_question *question, size_t i, int digits,
                       char text[WORDS_MAX]);
#endif
