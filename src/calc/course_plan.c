/* course_plan.c - the reckoning of one dye course, and its working. */
#include "calc/course_plan.h"

#include "holdwater/bath.h"
#include "tables.h"

#include <math.h>

/* More doses than these are not written out one by one: they follow the same rule. */
enum { COURSE_DOSES_SHOWN = 10 };

/* NaN when a rate makes a level that is none of a course: the core refuses it. */
static void find_first(const double in[], struct course_plan *plan)
{
    double dye = NAN;
    double level = NAN;
    double before = NAN;
    if (isnan(in[COURSE_RATE])) {
        hw_bath_dye(in[COURSE_VOLUME], in[COURSE_STRENGTH], in[COURSE_TARGET], &dye);
        level = in[COURSE_TARGET];
    } else {
        hw_bath_dye_at_rate(in[COURSE_VOLUME], in[COURSE_RATE], &dye);
        hw_bath_level(in[COURSE_VOLUME], in[COURSE_STRENGTH], dye, &level);
    }
    plan->wanted = level;
    if (hw_course_level(plan->redose, level, plan->exchanged, 1, &before, &plan->first) == 0) {
        plan->dye = dye;
    }
}

/* Doses that cover so many days, each the time until the next: begun days count whole. */
static int doses_of(const double in[])
{
    if (isnan(in[COURSE_DAYS])) {
        return (int)in[COURSE_DOSES];
    }
    return (int)ceil(in[COURSE_DAYS] * 24 / in[COURSE_EVERY] - 1e-9);
}

struct course_plan course_plan(const double in[])
{
    struct course_plan plan = {
        .redose = (enum hw_course_redose)in[COURSE_REDOSE],
        .doses = doses_of(in),
        .exchanged = in[COURSE_SHARE] / 100,
        .dye = NAN,
        .again = NAN,
        .total = NAN,
        .first = NAN,
        .last = NAN,
        .ceiling = NAN,
        .over_from = NAN,
        .water = NAN,
    };
    double before = NAN;
    plan.days_total = plan.doses * in[COURSE_EVERY] / 24;
    find_first(in, &plan);
    hw_course_level(plan.redose, plan.first, plan.exchanged, plan.doses, &before, &plan.last);
    hw_course_ceiling(plan.redose, plan.first, plan.exchanged, &plan.ceiling);
    hw_course_dose_over(plan.redose, plan.first, plan.exchanged,
                        hw_limits[HW_LIMIT_DYE_COURSE].value, &plan.over_from);
    hw_course_amounts(plan.redose, plan.dye, plan.exchanged, plan.doses, &plan.again, &plan.total);
    hw_course_water(in[COURSE_VOLUME], plan.exchanged, plan.doses, &plan.water);
    return plan;
}

/* What the doses are called in the working. */
static const struct {
    const char *before, *after;
} names[COURSE_DOSES_SHOWN + 1] = {
    {"", ""},
    {"before_dose_1", "after_dose_1"},
    {"before_dose_2", "after_dose_2"},
    {"before_dose_3", "after_dose_3"},
    {"before_dose_4", "after_dose_4"},
    {"before_dose_5", "after_dose_5"},
    {"before_dose_6", "after_dose_6"},
    {"before_dose_7", "after_dose_7"},
    {"before_dose_8", "after_dose_8"},
    {"before_dose_9", "after_dose_9"},
    {"before_dose_10", "after_dose_10"},
};

static double level_after(const struct course_plan *plan, int dose, double *before)
{
    double after = NAN;
    hw_course_level(plan->redose, plan->first, plan->exchanged, dose, before, &after);
    return after;
}

static void step_first(const struct course_plan *plan, const double in[], struct hw_steps *steps)
{
    if (isnan(in[COURSE_RATE])) {
        hw_step(steps, "level_first", plan->first, "mg/L", "", "%.10g", in[COURSE_TARGET]);
    } else {
        hw_step(steps, "level_first", plan->first, "mg/L", "", "%.10g * %.10g", in[COURSE_RATE],
                in[COURSE_STRENGTH]);
    }
    hw_step(steps, "exchanged", plan->exchanged, "", "", "%.10g / 100", in[COURSE_SHARE]);
}

static void step_number(const struct course_plan *plan, const double in[], struct hw_steps *steps)
{
    if (!isnan(in[COURSE_DAYS])) {
        hw_step(steps, "doses_exact", in[COURSE_DAYS] * 24 / in[COURSE_EVERY], "", "",
                "%.10g * 24 / %.10g", in[COURSE_DAYS], in[COURSE_EVERY]);
        hw_step(steps, "doses_whole", plan->doses, "", "", "%d", plan->doses);
    }
}

/* The level before and after each of the first doses, and how many more there are. */
static void step_doses(const struct course_plan *plan, struct hw_steps *steps)
{
    int shown = plan->doses < COURSE_DOSES_SHOWN ? plan->doses : COURSE_DOSES_SHOWN;
    double before = 0;
    double earlier = plan->first;
    for (int dose = 2; dose <= shown; dose++) {
        double after = level_after(plan, dose, &before);
        hw_step(steps, names[dose].before, before, "mg/L", "conservation", "%.10g * (1 - %.10g)",
                earlier, plan->exchanged);
        if (plan->redose == HW_COURSE_FULL) {
            hw_step(steps, names[dose].after, after, "mg/L", "", "%.10g + %.10g", before,
                    plan->first);
        } else {
            hw_step(steps, names[dose].after, after, "mg/L", "", "%.10g + %.10g * %.10g", before,
                    earlier, plan->exchanged);
        }
        earlier = after;
    }
    if (plan->doses > shown) {
        hw_step(steps, "doses_not_written_out", plan->doses - shown, "", "", "%d - %d", plan->doses,
                shown);
    }
}

/* The level after any dose at once, by the sum of the series. */
static void step_level(const struct course_plan *plan, const char *symbol, int dose, double level,
                       struct hw_steps *steps)
{
    if (plan->redose == HW_COURSE_FULL) {
        hw_step(steps, symbol, level, "mg/L", "conservation", "%.10g * (1 - (1 - %.10g)^%d)/%.10g",
                plan->first, plan->exchanged, dose, plan->exchanged);
    } else {
        hw_step(steps, symbol, level, "mg/L", "conservation", "%.10g", plan->first);
    }
}

static void step_levels(const struct course_plan *plan, struct hw_steps *steps)
{
    step_level(plan, "level_last", plan->doses, plan->last, steps);
    if (plan->redose == HW_COURSE_FULL) {
        hw_step(steps, "level_ceiling", plan->ceiling, "mg/L", "conservation", "%.10g / %.10g",
                plan->first, plan->exchanged);
    } else {
        hw_step(steps, "level_ceiling", plan->ceiling, "mg/L", "conservation", "%.10g",
                plan->first);
    }
    if (!isnan(plan->over_from)) {
        int dose = (int)plan->over_from;
        double before = 0;
        step_level(plan, "level_over", dose, level_after(plan, dose, &before), steps);
        hw_step(steps, "dose_over", plan->over_from, "", "dye-courses", "%d", dose);
    }
}

/* The amounts build on the first dose, which stands last: so each is written out in full. */
static void step_amounts(const struct course_plan *plan, const double in[], struct hw_steps *steps)
{
    double each = plan->redose == HW_COURSE_FULL ? 1 : plan->exchanged;
    hw_step(steps, "days_total", plan->days_total, "d", "", "%d * %.10g / 24", plan->doses,
            in[COURSE_EVERY]);
    hw_step(steps, "water_total", plan->water, "L", "", "(%d - 1) * %.10g * %.10g", plan->doses,
            plan->exchanged, in[COURSE_VOLUME]);
    hw_step(steps, "dye_total", plan->total, "mL", "",
            "%.10g * %.10g / %.10g * (1 + (%d - 1) * %.10g)", plan->first, in[COURSE_VOLUME],
            in[COURSE_STRENGTH], plan->doses, each);
    if (plan->doses > 1) {
        hw_step(steps, "dye_again", plan->again, "mL", "", "%.10g * %.10g * %.10g / %.10g", each,
                plan->first, in[COURSE_VOLUME], in[COURSE_STRENGTH]);
    }
    hw_step(steps, "dye", plan->dye, "mL", "", "%.10g * %.10g / %.10g", plan->first,
            in[COURSE_VOLUME], in[COURSE_STRENGTH]);
}

void course_work(const double in[], struct hw_steps *steps)
{
    struct course_plan plan = course_plan(in);
    step_first(&plan, in, steps);
    step_number(&plan, in, steps);
    step_doses(&plan, steps);
    step_levels(&plan, steps);
    step_amounts(&plan, in, steps);
}
