/* plan.h - a plan: what is done on which day, as a table that a keeper reads and changes. */
#ifndef HW_PLAN_H
#define HW_PLAN_H
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

enum { PLAN_ACTS = 200, PLAN_DAYS = 3650, ACT_MAX = 120 };

struct act {
    int day;                  /* from the day the fish arrive */
    int every;                /* days from one time to the next; 0: once */
    int until;                /* the last day it can fall on; `day` when it is done once */
    const char *class_name;   /* a word of plan_classes */
    char what[ACT_MAX + 1];   /* UTF-8 without control characters */
    char source[ACT_MAX + 1]; /* "": none */
    size_t line;              /* of the file */
};

struct plan {
    size_t n;
    struct act acts[PLAN_ACTS];
};

/* Where an act comes from; NULL ends the list. */
extern const char *const plan_classes[];

/* Reads a plan out of the text of a file: columns day, act, every, until, class, source in any
 * order, parted by tabs, commas or semicolons; day and act must be there. False with a message that
 * begins with the file's name. The same text always gives the same plan. */
bool plan_read(const char *name, const char *text, size_t n, struct plan *plan);

/* Writes the plan as such a file, with tabs. */
void plan_print(FILE *out, const struct plan *plan);

/* The first and the last day that an act falls on among the days from..to; false when none. */
bool act_within(const struct act *act, long long from, long long to, int *first, int *last);

/* The first day of the plan, and the last that an act falls on. */
void plan_span(const struct plan *plan, int *first, int *last);
#endif
