/* report_cell.c - cells of a table or a logbook on stdout. */
#include "cli/report_cell.h"

#include "cli/print.h"

#include <stdio.h>
#include <string.h>

void report_cell(struct hw_text text, char separator)
{
    char cell[2 * CELL_MAX + 2];
    struct hw_text cut = {text.at, text.n < CELL_MAX ? text.n : CELL_MAX};
    size_t n = csv_write_cell(cut, separator, cell);
    (void)fwrite(cell, 1, n, stdout);
}

void report_cell_text(const char *text, char separator)
{
    report_cell((struct hw_text){text, strlen(text)}, separator);
}

void report_cell_input(const struct hw_question *question, size_t i, int digits,
                       char text[WORDS_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    text[0] = '\0';
    if (question->from[i] == HW_ABSENT) {
        return;
    }
    if (input->words) {
        words_of(input, question->in[i], text, WORDS_MAX);
    } else {
        char number[NUMBER_MAX];
        number_digits(number, question->in[i], digits);
        (void)snprintf(text, WORDS_MAX, "%s", number);
    }
}
