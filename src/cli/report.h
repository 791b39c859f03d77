/* report.h - one answer, and all that a format may tell of it. */
#ifndef HW_REPORT_H
#define HW_REPORT_H
#include "cli/args.h"
#include "cli/columns.h"
#include "cli/wording.h"
#include "engine/answer.h"
#include "engine/solution.h"
#include "engine/spread.h"
#include "engine/working.h"

/* The row that a question came from. */
struct row_view {
    size_t number; /* 1 is the first after the header */
    const struct columns *columns;
    struct csv_record record;
    const char *problem;    /* NULL when the question could be asked */
    struct hw_text surplus; /* what the record has beyond the header; at NULL: nothing */
};

/* What was found for a question asked backwards: args tells what was wanted, the question holds the
 * value. */
struct solved {
    const struct hw_solution *solution;
    char value[AMOUNT_MAX]; /* for people: in the input's unit ... */
    char own[AMOUNT_MAX];   /* ... and in the keeper's own, or "" */
};

struct report {
    const struct args *args;
    const struct hw_question *question;
    const struct hw_answer *answer;
    const struct hw_spread *spread; /* NULL: no input carries an uncertainty */
    const struct hw_steps *steps;   /* NULL: not asked for, or no answer */
    const struct row_view *row;     /* NULL: one question */
    const struct solved *solved;    /* NULL: not asked backwards */
};
#endif
