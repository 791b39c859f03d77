/* report_cell.h - cells of a table or a logbook on stdout. */
#ifndef HW_REPORT_CELL_H
#define HW_REPORT_CELL_H
#include "cli/report.h"

enum { CELL_MAX = 4000 };

/* Prints text as a cell, quoted where it must be, and cut at CELL_MAX bytes. */
void report_cell(struct hw_text text, char separator);

/* The same for text that ends with its NUL. */
void report_cell_text(const char *text, char separator);

/* An input's value as it stands in a cell: a number in its unit, words, or nothing. */
void report_cell_input(const struct hw_question *question, size_t i, int digits,
                       char text[WORDS_MAX]);
#endif
