/* search.c - sides of a target, narrowing, and what is found. */
#include "engine/search.h"

#include "engine/answer.h"

#include <math.h>

static const double rounding = 0x1p-50; /* of the target: as good as on it */
static const double near = 1e-9;        /* of the target: reached, by a highest or lowest point */
static const double smooth = 1e-6;      /* of the rise between two points: no leap */
static const double together = 1e-6;    /* of the input: one value, for people */

int hw_search_side(const struct hw_search *s, const struct hw_point *p)
{
    double off = p->y - s->target;
    if (fabs(off) <= rounding * fabs(s->target)) {
        return 0;
    }
    return off < 0 ? -1 : 1;
}

bool hw_search_near(const struct hw_search *s, const struct hw_point *p)
{
    return fabs(p->y - s->target) <= near * fabs(s->target);
}

static struct hw_point look_at(struct hw_search *s, double x)
{
    struct hw_point p;
    hw_line_look(&s->line, &x, 1, &p);
    return p;
}

static bool is_better(const struct hw_search *s, const struct hw_point *a, const struct hw_point *b)
{
    return hw_point_better(s->line.batch.calc, s->line.result, s->target, 0, a, b);
}

/* --- Narrowing -------------------------------------------------------------------------------- */

bool hw_search_alike(const struct hw_search *s, const struct hw_point *a, const struct hw_point *b)
{
    return hw_point_answered(a) && hw_search_side(s, a) == hw_search_side(s, b);
}

/* The same, without a tolerance: below the target, on it, above it. */
static bool exactly_alike(const struct hw_search *s, const struct hw_point *a,
                          const struct hw_point *b)
{
    return (a->y < s->target) == (b->y < s->target) && (a->y > s->target) == (b->y > s->target);
}

bool hw_search_both_answered(const struct hw_search *s, const struct hw_point *a,
                             const struct hw_point *b)
{
    (void)s;
    return hw_point_answered(a) == hw_point_answered(b);
}

void hw_search_narrow(struct hw_search *s, struct hw_point *here, struct hw_point *there,
                      bool (*same)(const struct hw_search *s, const struct hw_point *a,
                                   const struct hw_point *b))
{
    double x[HW_LINE_PARTS - 1];
    struct hw_point p[HW_LINE_PARTS - 1];
    const struct hw_point like = *here;
    size_t n = hw_line_between(&s->line, here->x, there->x, x);
    while (n > 0) {
        size_t k = 0;
        hw_line_look(&s->line, x, n, p);
        while (k < n && same(s, &p[k], &like)) {
            k++;
        }
        *here = k > 0 ? p[k - 1] : *here;
        *there = k < n ? p[k] : *there;
        n = hw_line_between(&s->line, here->x, there->x, x);
    }
}

/* --- What is found ---------------------------------------------------------------------------- */

/* True when two values of the input are as good as one: rounding makes several of one root. */
static bool are_together(const struct hw_search *s, double a, double b)
{
    const struct hw_input *input = s->line.input;
    return input->kind != HW_COUNT && (fabs(b - a) <= together * fmax(fabs(a), fabs(b)) ||
                                       fabs(b - a) <= rounding * (input->hi - input->lo));
}

void hw_search_add_root(struct hw_search *s, const struct hw_point *from, double to)
{
    struct hw_solution *found = s->solution;
    if (found->n_roots > 0 && are_together(s, found->root[found->n_roots - 1].to, from->x)) {
        struct hw_root *last = &found->root[found->n_roots - 1];
        last->to = are_together(s, last->to, to) ? last->to : to; /* here the result stays */
        return;
    }
    if (found->n_roots == HW_ROOTS) {
        found->more_roots = true;
        return;
    }
    s->away = false;
    found->root[found->n_roots++] = (struct hw_root){from->x, to, from->y};
}

/* The next double towards an end of the range; beside zero the first that is in it. */
static double next_towards(double x, double end)
{
    double next = nextafter(x, end);
    if (hw_value_off_zero(next) == next) {
        return next;
    }
    return x == 0 ? copysign(HW_VALUE_LEAST, end) : 0;
}

/* The next value of the input, unless the result leaves the target there. */
static struct hw_point beside(struct hw_search *s, const struct hw_point *p, double towards)
{
    struct hw_point next = look_at(s, next_towards(p->x, towards));
    return hw_search_near(s, &next) ? next : *p;
}

void hw_search_leave_target(struct hw_search *s, const struct hw_point *to)
{
    struct hw_point here = s->on_from;
    struct hw_point there = *to;
    s->on_target = false;
    if (!are_together(s, here.x, there.x) && here.x < there.x) {
        hw_search_add_root(s, &here, there.x);
        return;
    }
    if (s->line.input->kind == HW_COUNT) { /* no other whole number is beside it */
        hw_search_add_root(s, &here, here.x);
        return;
    }
    here = beside(s, &here, s->line.input->lo);
    there = beside(s, &there, s->line.input->hi);
    bool at_zero = here.x < 0 && there.x > 0;
    struct hw_point best = look_at(s, at_zero ? 0 : hw_value_off_zero((here.x + there.x) / 2));
    if (!at_zero) {
        if (!exactly_alike(s, &here, &there)) {
            hw_search_narrow(s, &here, &there, exactly_alike);
            best = here;
        }
        best = is_better(s, &here, &best) ? here : best;
        best = is_better(s, &there, &best) ? there : best;
    }
    hw_search_add_root(s, &best, best.x);
}

void hw_search_pass(struct hw_search *s, const struct hw_point *a, const struct hw_point *b,
                    double rise)
{
    const struct hw_result *result = &s->line.batch.calc->results[s->line.result];
    const struct hw_point *best = is_better(s, a, b) ? a : b;
    double step = fabs(b->y - a->y);
    bool whole = s->line.input->kind == HW_COUNT;
    bool leap = !whole && step > near * fabs(s->target) && step > smooth * rise;
    if (leap ? hw_search_near(s, b) : whole && result->safe == 0) {
        hw_search_add_root(s, b, b->x);
    } else if (!leap) {
        hw_search_add_root(s, best, best->x);
    } else if (hw_search_near(s, a)) {
        hw_search_add_root(s, a, a->x);
    } else if (!s->solution->jumps) {
        s->solution->jumps = true;
        s->solution->jump_from = *a;
        s->solution->jump_to = *b;
    }
}

void hw_search_add_gap(struct hw_search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    if (found->n_gaps == HW_GAPS) {
        found->more_gaps = true;
        return;
    }
    found->gap[found->n_gaps++] = (struct hw_gap){.from = p->x, .to = p->x};
}

void hw_search_widen_gap(struct hw_search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    struct hw_gap *gap = &found->gap[found->n_gaps - 1];
    if (!found->more_gaps) {
        gap->to = p->x;
        gap->notes |= p->notes & s->grave_notes;
        gap->status = hw_notes_status(s->line.batch.calc, gap->notes);
    }
}

void hw_search_keep_extremes(struct hw_search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    found->least = s->answered == 0 || p->y < found->least.y ? *p : found->least;
    found->most = s->answered == 0 || p->y > found->most.y ? *p : found->most;
    s->answered++;
}
