/* row_problem.h - what the reason codes in the column `problem` of rows mean. */
#ifndef HW_ROW_PROBLEM_H
#define HW_ROW_PROBLEM_H

struct row_problem {
    const char *code, *text; /* what is wrong, and what to write */
};

/* A NULL code ends the list. */
extern const struct row_problem row_problems[];
#endif
