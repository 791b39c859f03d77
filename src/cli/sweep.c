/* sweep.c - a question with one or two inputs swept: a table, a chart, a picture. */
#include "cli/sweep.h"

#include "cli/stream.h"

int sweep_run(const struct args *args, struct hw_question *question)
{
    (void)args;
    (void)question;
    complain("a sweep is not answered by this version: ask for one value at a time");
    return EXIT_ASKED_WRONGLY;
}
