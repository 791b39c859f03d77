/* report_cell.c - cells of a table or a logbook. */
#include "cli/report_cell.h"

#include "cli/print.h"

#include <stdio.h>
#include <string.h>

void report_cell(FILE *out, struct hw_text text, char separator)
{
    char cell[2 * CELL_MAX + 2];
    struct hw_text cut = {text.at, text.n < CELL_MAX ? text.n : CELL_MAX};
    size_t n = csv_write_cell(cut, separator, cell);
    (void)fwrite(cell, 1, n, out);
}

void report_cell_text(FILE *out, const char *text, char separator)
{
    report_cell(out, (struct hw_text){text, strlen(text)}, separator);
}

bool report_cell_runs(struct hw_text text)
{
    return text.n > 0 && text.at[0] != '\0' && strchr("=+-@\t\r", text.at[0]);
}

void report_cell_own(FILE *out, struct hw_text text, char separator)
{
    char guarded[CELL_MAX + 1] = "'";
    if (!report_cell_runs(text)) {
        report_cell(out, text, separator);
        return;
    }
    size_t n = text.n < CELL_MAX ? text.n : CELL_MAX;
    memcpy(guarded + 1, text.at, n);
    report_cell(out, (struct hw_text){guarded, n + 1}, separator);
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
