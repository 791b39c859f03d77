/* help_examples.c - prints worked calls as they can be typed. */
#include "cli/help_examples.h"

#include "cli/print.h"

#include <stdio.h>
#include <string.h>

/* A command in lines that can be typed as they stand: all but the last end with a backslash. */
static void print_command(const char *command)
{
    size_t at = 4;
    print_blanks(at);
    for (const char *word = command; *word != '\0';) {
        size_t n = strcspn(word, " ");
        size_t blank = word == command ? 0 : 1;
        bool last = word[n] == '\0';
        if (at + blank + n + (last ? 0 : 2) > PRINT_WIDTH) {
            (void)fputs(" \\\n", stdout);
            print_blanks(8);
            at = 8;
            blank = 0;
        }
        (void)printf("%s%.*s", blank ? " " : "", (int)n, word);
        at += blank + n;
        word += n + strspn(word + n, " ");
    }
    (void)putchar('\n');
}

bool help_examples(const struct hw_calc *calc, size_t most)
{
    size_t n = 0;
    for (size_t i = 0; examples[i].calculation; i++) {
        bool mine = strcmp(examples[i].calculation, calc->name) == 0;
        n += mine ? 1 : 0;
        if (mine && n <= most) {
            print_blanks(2);
            print_wrapped(examples[i].question, 2, 2);
            print_command(examples[i].command);
        }
    }
    return n > most;
}
