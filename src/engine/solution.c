/* solution.c - where a result reaches a target: a scan of the input's range, each change of side
 * narrowed down. */
#include "engine/solution.h"

#include "engine/answer.h"
#include "engine/search.h"

#include <math.h>

enum { CHANGES_MAX = 16 }; /* between two values of the scan: more are noise */

static const double flat = 1e-12; /* of the result: it does not hang on the input */

/* --- From one point to the next --------------------------------------------------------------- */

/* Every change of side between two points with a result, from left to right. */
static void cross(struct hw_search *s, struct hw_point a, const struct hw_point *b)
{
    double rise = fabs(b->y - a.y);
    s->crossed = !hw_search_alike(s, &a, b);
    for (int n = 0; n < CHANGES_MAX && !hw_search_alike(s, &a, b); n++) {
        struct hw_point here = a;
        struct hw_point there = *b;
        hw_search_narrow(s, &here, &there, hw_search_alike);
        if (s->on_target) {
            hw_search_leave_target(s, &here);
        } else if (hw_point_answered(&there) && hw_search_side(s, &there) != 0) {
            hw_search_pass(s, &here, &there, rise);
        }
        if (!hw_point_answered(&there)) { /* narrower than the steps of the scan */
            hw_search_add_gap(s, &there);
            hw_search_widen_gap(s, &there);
            struct hw_point end = *b;
            hw_search_narrow(s, &there, &end, hw_search_both_answered);
            hw_search_widen_gap(s, &there);
            there = *b;
        }
        s->on_target = hw_search_side(s, &there) == 0;
        s->on_from = there;
        a = there;
    }
}

/* A highest or lowest point between two others that may touch the target: all three are on one side
 * of it. */
static void touch(struct hw_search *s, struct hw_point left, struct hw_point middle,
                  struct hw_point right)
{
    double x[HW_LINE_PARTS - 1];
    struct hw_point p[HW_LINE_PARTS + 1];
    const struct hw_point end = right;
    size_t n = hw_line_between(&s->line, left.x, right.x, x);
    while (n > 1) { /* more than the middle itself */
        hw_line_look(&s->line, x, n, &p[1]);
        p[0] = left;
        p[n + 1] = right;
        for (size_t k = 1; k <= n; k++) {
            if (!hw_search_alike(s, &p[k], &middle)) {
                if (hw_point_answered(&p[k])) {
                    cross(s, middle.x < p[k].x ? middle : left, &p[k]);
                    cross(s, p[k], &end);
                }
                return;
            }
            middle = fabs(p[k].y - s->target) < fabs(middle.y - s->target) ? p[k] : middle;
        }
        for (size_t k = 0; k <= n + 1; k++) {
            left = p[k].x < middle.x ? p[k] : left;
        }
        for (size_t k = n + 2; k-- > 0;) {
            right = p[k].x > middle.x ? p[k] : right;
        }
        n = hw_line_between(&s->line, left.x, right.x, x);
    }
    hw_search_keep_extremes(s, &middle);
    if (hw_search_near(s, &middle)) {
        hw_search_add_root(s, &middle, middle.x);
    }
}

/* True when the middle of three is nearest to the target, and near enough for what lies between to
 * reach it. */
static bool may_touch(const struct hw_search *s, const struct hw_point *left,
                      const struct hw_point *middle, const struct hw_point *right)
{
    double l = fabs(left->y - s->target);
    double m = fabs(middle->y - s->target);
    double r = fabs(right->y - s->target);
    bool one_side = hw_search_side(s, middle) != 0 && hw_search_alike(s, left, middle) &&
                    hw_search_alike(s, middle, right);
    return one_side && m < l && m <= r && m <= fmax(l, r) - m;
}

static void begin_stretch(struct hw_search *s, const struct hw_point *p)
{
    hw_search_keep_extremes(s, p);
    s->in_stretch = 1;
    s->crossed = false;
    s->away = s->away || !hw_search_near(s, p);
    s->on_target = hw_search_side(s, p) == 0;
    s->on_from = s->last = *p;
}

static void step_to(struct hw_search *s, const struct hw_point *p)
{
    const struct hw_point first = s->last;
    hw_search_keep_extremes(s, p);
    cross(s, s->last, p);
    s->away = s->away || !hw_search_near(s, p);
    if (s->in_stretch == 1 && !s->crossed && hw_search_side(s, &first) != 0 &&
        hw_search_near(s, &first)) {
        hw_search_add_root(s, &first, first.x);
    }
    if (s->in_stretch > 1 && may_touch(s, &s->before, &s->last, p)) {
        touch(s, s->before, s->last, *p);
    }
    s->before = s->last;
    s->last = *p;
    s->in_stretch++;
}

static void end_stretch(struct hw_search *s)
{
    if (s->on_target) {
        hw_search_leave_target(s, &s->last);
    } else if (!s->crossed && hw_search_near(s, &s->last) &&
               (s->away || s->solution->n_roots == 0)) {
        hw_search_add_root(s, &s->last, s->last.x);
    }
    s->in_stretch = 0;
}

/* A point with a result: the first of a stretch is looked for between it and what has none. */
static void take_answered(struct hw_search *s, const struct hw_point *p)
{
    struct hw_point first = *p;
    if (s->in_stretch > 0) {
        step_to(s, p);
        return;
    }
    if (s->points > 0) {
        hw_search_narrow(s, &first, &s->unanswered, hw_search_both_answered);
        hw_search_widen_gap(s, &s->unanswered);
    }
    begin_stretch(s, &first);
    if (first.x < p->x) {
        step_to(s, p);
    }
}

static void take_unanswered(struct hw_search *s, const struct hw_point *p)
{
    struct hw_point first = *p;
    if (s->in_stretch > 0) {
        struct hw_point here = s->last;
        hw_search_narrow(s, &here, &first, hw_search_both_answered);
        if (here.x > s->last.x) {
            step_to(s, &here);
        }
        end_stretch(s);
        hw_search_add_gap(s, &first);
        hw_search_widen_gap(s, &first);
    } else if (s->points == 0) {
        hw_search_add_gap(s, p);
    }
    hw_search_widen_gap(s, p);
    s->unanswered = *p;
}

static void take(struct hw_search *s, const struct hw_point *p)
{
    uint64_t grave = p->notes & s->grave_notes;
    s->grave |= grave;
    s->everywhere = s->points == 0 ? p->notes : s->everywhere & p->notes;
    s->some_answer = s->some_answer || grave == 0;
    if (hw_point_answered(p)) {
        take_answered(s, p);
    } else {
        take_unanswered(s, p);
    }
    s->points++;
}

static enum hw_end end_of(const struct hw_search *s)
{
    const struct hw_solution *found = s->solution;
    double size = fmax(fabs(found->least.y), fabs(found->most.y));
    if (s->answered == 0) {
        return s->some_answer ? HW_END_ABSENT : HW_END_BARRED;
    }
    if (s->answered > 1 && found->most.y - found->least.y <= flat * size) {
        return HW_END_FLAT;
    }
    if (found->n_roots > 0) {
        return HW_END_FOUND;
    }
    return found->jumps ? HW_END_JUMPED : HW_END_UNREACHED;
}

void hw_solve(const struct hw_question *question, size_t result, double target,
              struct hw_solution *solution)
{
    struct hw_search s = {
        .target = target, .solution = solution, .grave_notes = hw_notes_grave(question->calc)};
    struct hw_point p[HW_BLOCK];
    struct hw_line_walk walk;
    double x[HW_BLOCK];
    size_t n = 0;
    const struct hw_point nothing = {(double)NAN, (double)NAN, 0};
    *solution = (struct hw_solution){.least = nothing, .most = nothing};
    hw_line_lay(question, result, &s.line);
    hw_line_start(&s.line, &walk);
    bool more = true;
    while (more) {
        more = hw_line_next(&walk, &x[n]);
        n += more ? 1 : 0;
        if (n == HW_BLOCK || (!more && n > 0)) {
            hw_line_look(&s.line, x, n, p);
            for (size_t i = 0; i < n; i++) {
                take(&s, &p[i]);
            }
            n = 0;
        }
    }
    if (s.in_stretch > 0) {
        end_stretch(&s);
    }
    solution->end = end_of(&s);
    solution->notes = s.grave | s.everywhere;
}
