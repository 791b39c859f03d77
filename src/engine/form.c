/* form.c - takes a written value apart: 0.6, 0.6+-0.1, 7.8:8.6:0.1. */
#include "engine/form.h"

#include "engine/decimal.h"

#include <math.h>
#include <string.h>

/* Where +- or its sign begins and how many bytes it has; 0 bytes: nowhere. */
static size_t find_spread(struct hw_text text, size_t *at)
{
    for (*at = 0; *at + 1 < text.n; (*at)++) {
        const char *here = text.at + *at;
        if ((here[0] == '+' && here[1] == '-') || (here[0] == '\xC2' && here[1] == '\xB1')) {
            return 2;
        }
    }
    return 0;
}

/* --- An uncertainty --------------------------------------------------------------------------- */

/* A half-width in a unit of its own, as a difference. A bare value is in the input's unit or its
 * column's, and a half-width beside it in another would be read against a unit nobody wrote. */
static enum hw_problem half_with_unit(const struct hw_input *input, struct hw_text tail,
                                      const struct hw_unit *of_value, double *half)
{
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    const struct hw_unit *unit = hw_unit_find(input->kind, tail.at, tail.n);
    if (!unit || (unit != kept && !of_value)) {
        return HW_PROBLEM_HALF_UNIT;
    }
    *half = hw_unit_convert_step(*half, unit, kept);
    return HW_FINE;
}

/* Per cent of the value as it was written; of a share, percentage points. */
static double half_per_cent(const struct hw_input *input, double x, const struct hw_unit *of_value,
                            double per_cent)
{
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    if (input->kind == HW_SHARE) {
        return per_cent;
    }
    double half = fabs(x) * per_cent / 100;
    return of_value ? hw_unit_convert_step(half, of_value, kept) : half;
}

/* A bare half-width, in the unit of the value. */
static double half_bare(const struct hw_input *input, const struct hw_unit *of_value, double half)
{
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    return of_value ? hw_unit_convert_step(half, of_value, kept) : half;
}

/* Given the value x as written and the unit it is in, written or of its column. */
static enum hw_problem read_half(const struct hw_input *input, struct hw_text text, double x,
                                 const struct hw_unit *of_value, double *half)
{
    double y = 0;
    enum hw_problem problem = HW_FINE;
    text = hw_text_trimmed(text);
    size_t used = text.n <= HW_TEXT_MAX ? hw_decimal_read(text.at, text.n, &y) : 0;
    struct hw_text tail = hw_text_trimmed((struct hw_text){text.at + used, text.n - used});
    bool unit_like = tail.n == 0 || hw_unit_begins(tail.at, tail.n);
    size_t again = 0;
    if (used == 0 || !unit_like || !isfinite(y) || find_spread(tail, &again) > 0) {
        return HW_PROBLEM_HALF;
    }
    if (y < 0) {
        return HW_PROBLEM_HALF_NEGATIVE;
    }
    if (tail.n == 0) {
        y = half_bare(input, of_value, y);
    } else if (tail.n == 1 && tail.at[0] == '%') {
        y = half_per_cent(input, x, of_value, y);
    } else {
        problem = half_with_unit(input, tail, of_value, &y);
    }
    *half = y;
    return problem;
}

static enum hw_problem read_spread(const struct hw_input *input, struct hw_text text, size_t at,
                                   const struct hw_unit *column, struct hw_form *form)
{
    struct hw_text centre = {text.at, at};
    struct hw_text half = {text.at + at + 2, text.n - at - 2};
    double x = 0;
    if (input->kind == HW_COUNT) {
        return HW_PROBLEM_HALF_COUNT;
    }
    enum hw_problem problem = hw_value_read(input, centre, column, &form->value, &form->unit);
    if (problem == HW_FINE) {
        (void)hw_number_read(input, centre, &x, &form->unit);
        problem = read_half(input, half, x, form->unit ? form->unit : column, &form->half);
    }
    return problem;
}

/* --- A sweep ---------------------------------------------------------------------------------- */

static enum hw_problem split_sweep(struct hw_text text, struct hw_text part[3])
{
    size_t parts = 0;
    size_t from = 0;
    for (size_t i = 0; i <= text.n; i++) {
        if (i == text.n || text.at[i] == ':') {
            if (parts == 3) {
                return HW_PROBLEM_SWEEP_PARTS;
            }
            part[parts] = hw_text_trimmed((struct hw_text){text.at + from, i - from});
            if (part[parts].n == 0) {
                return HW_PROBLEM_SWEEP_PARTS;
            }
            parts++;
            from = i + 1;
        }
    }
    return parts == 3 ? HW_FINE : HW_PROBLEM_SWEEP_PARTS;
}

/* How many values there are; HW_SWEEP_MAX + 1 when there are more. */
static size_t count_values(const struct hw_sweep *sweep)
{
    double steps = (sweep->stop - sweep->start) / sweep->step;
    if (!(steps < HW_SWEEP_MAX)) {
        return HW_SWEEP_MAX + 1;
    }
    double whole = floor(steps + 1e-9);
    bool on_the_way = steps - whole > 1e-9 || (whole == 0 && steps > 0);
    return (size_t)whole + (on_the_way ? 2 : 1);
}

static enum hw_problem check_sweep(struct hw_sweep *sweep)
{
    double way = sweep->stop - sweep->start;
    if (!isfinite(sweep->step)) {
        return HW_PROBLEM_TOO_LARGE;
    }
    if (sweep->step == 0) {
        return HW_PROBLEM_STEP_ZERO;
    }
    if ((way > 0 && sweep->step < 0) || (way < 0 && sweep->step > 0)) {
        return HW_PROBLEM_STEP_SIGN;
    }
    sweep->n = count_values(sweep);
    return sweep->n > HW_SWEEP_MAX ? HW_PROBLEM_SWEEP_LONG : HW_FINE;
}

/* Between two ends in range only the neighbourhood of zero is out of it. */
static enum hw_problem check_values(const struct hw_input *input, const struct hw_sweep *sweep)
{
    for (size_t k = 0; k < sweep->n; k++) {
        if (isnan(hw_sweep_value(input, sweep, k))) {
            return HW_PROBLEM_NEAR_ZERO;
        }
    }
    return HW_FINE;
}

static enum hw_problem read_sweep(const struct hw_input *input, struct hw_text text,
                                  const struct hw_unit *column, struct hw_form *form)
{
    struct hw_text part[3];
    struct hw_sweep *sweep = &form->sweep;
    double *number[3] = {&sweep->start, &sweep->stop, &sweep->step};
    const struct hw_unit *unit[3];
    size_t at = 0;
    enum hw_problem problem =
        find_spread(text, &at) > 0 ? HW_PROBLEM_SWEEP_PARTS : split_sweep(text, part);
    for (size_t i = 0; i < 3 && problem == HW_FINE; i++) {
        problem = hw_number_read(input, part[i], number[i], &unit[i]);
    }
    for (size_t i = 0; i < 2 && problem == HW_FINE; i++) {
        problem = unit[i] && unit[i] != unit[2] ? HW_PROBLEM_SWEEP_UNITS : HW_FINE;
    }
    if (problem != HW_FINE) {
        return problem;
    }
    double stop = 0;
    form->unit = sweep->unit = unit[2] ? unit[2] : column;
    problem = hw_number_settle(input, sweep->start, unit[2], column, &form->value);
    problem =
        problem == HW_FINE ? hw_number_settle(input, sweep->stop, unit[2], column, &stop) : problem;
    if (problem == HW_FINE && input->kind == HW_COUNT && sweep->step != floor(sweep->step)) {
        problem = HW_PROBLEM_NOT_WHOLE;
    }
    problem = problem == HW_FINE ? check_sweep(sweep) : problem;
    return problem == HW_FINE ? check_values(input, sweep) : problem;
}

/* The sum is off by some last bits of the larger end, so a value much smaller than that is rounded
 * to as many digits less. */
double hw_sweep_number(const struct hw_sweep *sweep, size_t k)
{
    if (k == 0 || k + 1 == sweep->n) {
        return k == 0 ? sweep->start : sweep->stop;
    }
    char text[HW_DECIMAL_MAX];
    double end = fmax(fabs(sweep->start), fabs(sweep->stop));
    double x = fma((double)k, sweep->step, sweep->start);
    if (fabs(x) < 1e-12 * fabs(sweep->step)) {
        return 0;
    }
    double decades = floor(log10(end)) - floor(log10(fabs(x)));
    int digits = (int)fmax(15 - decades, 1);
    (void)hw_decimal_read(text, hw_decimal_write(text, x, digits), &x);
    return x;
}

double hw_sweep_value(const struct hw_input *input, const struct hw_sweep *sweep, size_t k)
{
    double x = hw_sweep_number(sweep, k);
    double value = NAN;
    /* a gravity on the way is a salinity, as both ends are */
    if (hw_number_settle(input, x, sweep->unit, NULL, &value) == HW_PROBLEM_GRAVITY) {
        const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
        (void)hw_number_settle(input, x, kept, NULL, &value);
    }
    return value;
}

/* --- Any form --------------------------------------------------------------------------------- */

enum hw_problem hw_form_read(const struct hw_input *input, struct hw_text text,
                             const struct hw_unit *column, struct hw_form *form)
{
    size_t at = 0;
    *form = (struct hw_form){.value = NAN, .half = 0, .unit = NULL};
    bool spread = find_spread(text, &at) > 0;
    bool sweep = memchr(text.at, ':', text.n) != NULL;
    if (input->words && (spread || sweep)) {
        return spread ? HW_PROBLEM_HALF_WORD : HW_PROBLEM_SWEEP_WORD;
    }
    if (sweep) {
        return read_sweep(input, text, column, form);
    }
    if (spread) {
        return read_spread(input, text, at, column, form);
    }
    return hw_value_read(input, text, column, &form->value, &form->unit);
}
