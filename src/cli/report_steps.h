/* report_steps.h - the steps of a dose that goes in by parts, which `dose` alone has. */
#ifndef HW_REPORT_STEPS_H
#define HW_REPORT_STEPS_H
#include "cli/report.h"

enum { STEPS_MOST = 30 };

struct dose_step {
    double day, amount, level; /* NaN for a day or a level that is not told */
};

struct dose_steps {
    struct dose_step step[STEPS_MOST];
    size_t n;
    const char *amount_unit, *level_unit; /* of every step */
};

/* The steps of an answer, each found by asking for the level that it reaches; false where there are
 * none. */
bool report_steps_find(const struct report *report, struct dose_steps *steps);

/* The table that runs across: day, amount, level; of more than six steps the first two and the
 * last. Nothing where there are no steps. */
void report_steps_text(const struct report *report);
#endif
