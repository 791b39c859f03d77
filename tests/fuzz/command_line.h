/* command_line.h - bytes of a fuzzer made into a command line. Lines of the bytes are its parts:
 *
 *     first     the name of a calculation or a command; =X chooses one
 *     !...      every input that a calculation asks for, with values in range
 *     #...      one input: a value, one with an uncertainty, or a sweep
 *     %...      one of the options that are no inputs, with a value that it takes
 *     ?...      the question backwards: one input is looked for, for the result that it had
 *     &...      some inputs as columns of a file of rows
 *     other     a word as it stands
 *     (empty)   ends the command line: what follows stands in the file of rows
 *
 * What the bytes after a mark say is drawn from the tables of the calculation, so that most lines
 * are understood; an option that was written before is replaced. */
#ifndef HW_COMMAND_LINE_H
#define HW_COMMAND_LINE_H
#include "draw.h"

#include <stdio.h>

enum { LINE_OPTIONS = 64, LINE_TEXT = 1000, LINE_WORDS = 2 * LINE_OPTIONS + 3 };

/* An option, its name without the hyphens, and its value; or a word as it stands. */
struct line_option {
    bool bare, has_value, joined;
    char name[LINE_TEXT], value[LINE_TEXT];
};

struct command_line {
    char command[LINE_TEXT];
    const struct hw_calc *calc; /* that of the name, else the first of all */
    double in[HW_INPUTS];       /* of the last line with '!', else all NaN */
    struct line_option option[LINE_OPTIONS];
    size_t n;
    bool as_it_stands;              /* there is a word as it stands */
    const char *file, *tanks, *log; /* the names of files that options name */
    FILE *rows;                     /* what stands in `file` */
    char text[LINE_WORDS][LINE_TEXT + LINE_TEXT + 4];
    char *word[LINE_WORDS + 1];
};

/* Makes the command line, whose names of files and whose `rows` are set, of bytes. */
void command_line_make(struct command_line *line, struct draw draw);

/* Writes the words, options from last to first when `reversed`; returns how many, at least 1. No
 * word that the program takes for the name of a file is another than those three. */
int command_line_words(struct command_line *line, bool reversed);

/* True when there is an option of that name. */
bool command_line_has(const struct command_line *line, const char *name);
#endif
