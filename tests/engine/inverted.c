/* inverted.c - questions of every calculation, from the examples of the help and the reference
 * rows. */
#include "inverted.h"

#include "ask.h"
#include "cli/help.h"

#include <glob.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

enum { LINE_MAX_LENGTH = 4096, EVERY = 29 };

static size_t ask_line(const struct hw_calc *calc, const char *line,
                       void (*with)(const struct hw_question *question))
{
    struct hw_question question;
    size_t which = 0;
    if (ask_settle(calc, line, &question, &which) != HW_FINE || question.n_axes > 0) {
        return 0;
    }
    with(&question);
    return 1;
}

/* "holdwater bath --volume 12L --work" as "volume=12L"; options that are no inputs are left out. */
static void line_of(const struct hw_calc *calc, const char *command, char line[LINE_MAX_LENGTH])
{
    size_t used = 0;
    line[0] = '\0';
    const char *word = strstr(command, " --");
    while (word) {
        const char *name = word + 3;
        size_t n = strcspn(name, " =");
        const char *value = name + n + (name[n] == '\0' ? 0 : 1);
        size_t length = strcspn(value, " ");
        if (hw_input_find(calc, name, n) < calc->n_inputs) {
            used += (size_t)snprintf(line + used, LINE_MAX_LENGTH - used, "%s%.*s=%.*s",
                                     used == 0 ? "" : ";", (int)n, name, (int)length, value);
        }
        word = strstr(name + n, " --");
    }
}

/* The first row of a file, and every so many after it. */
static size_t ask_rows(const struct hw_calc *calc, const char *name,
                       void (*with)(const struct hw_question *question))
{
    char line[LINE_MAX_LENGTH];
    size_t asked = 0;
    FILE *file = fopen(name, "r");
    assert_non_null(file);
    for (size_t number = 0; fgets(line, sizeof line, file); number++) {
        char *inputs = line + strcspn(line, ",");
        if (number % EVERY != 1 || *inputs == '\0') {
            continue;
        }
        *inputs++ = '\0';
        inputs[strcspn(inputs, ",")] = '\0';
        bool quoted = inputs[0] == '"'; /* a set of words: it holds the comma that cuts it */
        if (strcmp(line, calc->name) == 0 && !quoted) {
            asked += ask_line(calc, inputs, with);
        }
    }
    (void)fclose(file);
    return asked;
}

size_t each_question(const struct hw_calc *calc, void (*with)(const struct hw_question *question))
{
    char line[LINE_MAX_LENGTH];
    size_t asked = 0;
    glob_t files;
    for (size_t i = 0; examples[i].calculation; i++) {
        if (strcmp(examples[i].calculation, calc->name) == 0) {
            line_of(calc, examples[i].command, line);
            asked += ask_line(calc, line, with);
        }
    }
    assert_int_equal(glob("tests/reference/calc_*.csv", 0, NULL, &files), 0);
    for (size_t i = 0; i < files.gl_pathc; i++) {
        asked += ask_rows(calc, files.gl_pathv[i], with);
    }
    globfree(&files);
    return asked;
}
