/* course_plan.h - one dye course as the core sees it; shared by the answer and its working. */
#ifndef HW_COURSE_PLAN_H
#define HW_COURSE_PLAN_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/course.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    COURSE_VOLUME, COURSE_BIOFILTER, COURSE_STRENGTH, COURSE_RATE, COURSE_TARGET, COURSE_EVERY,
    COURSE_SHARE, COURSE_DOSES, COURSE_DAYS, COURSE_REDOSE, COURSE_INPUTS
};
/* clang-format on */

/* One row, and what the core says of it; all NaN when the first dose makes no level of a course. */
struct course_plan {
    enum hw_course_redose redose;
    int doses;
    double exchanged;          /* before each further dose, over the volume */
    double dye, again, total;  /* mL of stock */
    double wanted;             /* mg/L, of the first dose as it was asked for */
    double first, last;        /* mg/L, after the first and the last dose */
    double ceiling, over_from; /* mg/L; the dose that passes 5 mg/L, NaN when none does */
    double water, days_total;  /* L and d, of the whole course */
};

struct course_plan course_plan(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void course_work(const double in[], struct hw_steps *steps);
#endif
