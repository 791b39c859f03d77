/* solution.c - where a result reaches a target: a scan of the input's range, each change of side narrowed down. */
#include "engine/solution.h"

#include "engine/answer.h"

#include <math.h>

enum { CHANGES_MAX = 16 }; /* between two values of the scan: more are noise */

static const double rounding = 0x1p-50; /* of the target: as good as on it */
static const double near = 1e-9;        /* of the target: reached, by a highest or lowest point */
static const double smooth = 1e-6;      /* of the rise between two points: no leap */
static const double together = 1e-6;    /* of the input: one value, for people */
static const double flat = 1e-12;       /* of the result: it does not hang on the input */

/* The state of a search. The points that it is given come in rising order. */
struct search {
    struct hw_line line;
    double target;
    struct hw_solution *solution;
    struct hw_point before, last; /* of the points in the stretch with answers that runs now */
    size_t in_stretch;            /* how many there were; 0: no such stretch runs */
    bool crossed;                 /* the last step changed sides */
    bool away;                    /* since the last root the result has been off the target */
    bool on_target;               /* the result has the target, since on_from */
    struct hw_point on_from;
    struct hw_point unanswered; /* the last of those without the result */
    size_t points, answered;
    uint32_t grave_notes;       /* those of the calculation that leave no answer */
    uint32_t grave, everywhere; /* those of them that were met; notes of all points */
    bool some_answer;           /* there are answers, if without this result */
};

/* -1 below the target, 1 above, 0 on it. */
static int side(const struct search *s, const struct hw_point *p)
{
    double off = p->y - s->target;
    if (fabs(off) <= rounding * fabs(s->target)) {
        return 0;
    }
    return off < 0 ? -1 : 1;
}

static bool is_near(const struct search *s, const struct hw_point *p)
{
    return fabs(p->y - s->target) <= near * fabs(s->target);
}

static struct hw_point look_at(struct search *s, double x)
{
    struct hw_point p;
    hw_line_look(&s->line, &x, 1, &p);
    return p;
}

int hw_notes_raised(const struct hw_calc *calc, uint32_t notes)
{
    int raised = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        raised += ((notes >> i) & 1u) != 0 && calc->notes[i].effect != HW_STANDING ? 1 : 0;
    }
    return raised;
}

bool hw_point_better(const struct hw_calc *calc, size_t result, double target, double slack,
                     const struct hw_point *a, const struct hw_point *b)
{
    int safe = calc->results[result].safe;
    bool a_safe = safe * (a->y - target) >= -slack;
    bool b_safe = safe * (b->y - target) >= -slack;
    int a_raised = hw_notes_raised(calc, a->notes);
    int b_raised = hw_notes_raised(calc, b->notes);
    if (a_safe != b_safe) {
        return a_safe;
    }
    if (safe == 0 && a_raised != b_raised) {
        return a_raised < b_raised;
    }
    return fabs(a->y - target) < fabs(b->y - target);
}

static bool is_better(const struct search *s, const struct hw_point *a, const struct hw_point *b)
{
    return hw_point_better(s->line.calc, s->line.result, s->target, 0, a, b);
}

/* --- Narrowing --------------------------------------------------------------------------------------------------- */

/* True when a point has a result, on the side where that of b is, which has one. */
static bool alike(const struct search *s, const struct hw_point *a, const struct hw_point *b)
{
    return hw_point_answered(a) && side(s, a) == side(s, b);
}

/* The same, without a tolerance: below the target, on it, above it. */
static bool exactly_alike(const struct search *s, const struct hw_point *a,
                          const struct hw_point *b)
{
    return (a->y < s->target) == (b->y < s->target) && (a->y > s->target) == (b->y > s->target);
}

static bool both_answered(const struct search *s, const struct hw_point *a,
                          const struct hw_point *b)
{
    (void)s;
    return hw_point_answered(a) == hw_point_answered(b);
}

/* Moves two points together, until nothing lies between: `here` stays like it was, `there` stays unlike it. */
static void narrow(struct search *s, struct hw_point *here, struct hw_point *there,
                   bool (*same)(const struct search *s, const struct hw_point *a,
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

/* --- What is found ----------------------------------------------------------------------------------------------- */

/* True when two values of the input are as good as one: rounding makes several of one root. */
static bool are_together(const struct search *s, double a, double b)
{
    const struct hw_input *input = s->line.input;
    return input->kind != HW_COUNT && (fabs(b - a) <= together * fmax(fabs(a), fabs(b)) ||
                                       fabs(b - a) <= rounding * (input->hi - input->lo));
}

static void add_root(struct search *s, const struct hw_point *from, double to)
{
    struct hw_solution *found = s->solution;
    if (found->n_roots > 0 && are_together(s, found->root[found->n_roots - 1].to, from->x)) {
        return;
    }
    if (found->n_roots == HW_ROOTS) {
        found->more_roots = true;
        return;
    }
    s->away = false;
    found->root[found->n_roots++] = (struct hw_root){from->x, to, from->y};
}

/* The next value of the input, unless the result leaves the target there. */
static struct hw_point beside(struct search *s, const struct hw_point *p, double towards)
{
    struct hw_point next = look_at(s, nextafter(p->x, towards));
    return is_near(s, &next) ? next : *p;
}

/* The end of where the result has the target, to within rounding. One value of it is chosen when they are all one. */
static void leave_target(struct search *s, const struct hw_point *to)
{
    struct hw_point here = s->on_from;
    struct hw_point there = *to;
    s->on_target = false;
    if (!are_together(s, here.x, there.x) && here.x < there.x) {
        add_root(s, &here, there.x);
        return;
    }
    here = beside(s, &here, s->line.input->lo);
    there = beside(s, &there, s->line.input->hi);
    bool at_zero = here.x < 0 && there.x > 0;
    struct hw_point best = look_at(s, at_zero ? 0 : (here.x + there.x) / 2);
    if (!at_zero) {
        if (!exactly_alike(s, &here, &there)) {
            narrow(s, &here, &there, exactly_alike);
            best = here;
        }
        best = is_better(s, &here, &best) ? here : best;
        best = is_better(s, &there, &best) ? there : best;
    }
    add_root(s, &best, best.x);
}

/* From one side to the other between neighbours, where the points that were seen first differed by `rise`. */
static void pass(struct search *s, const struct hw_point *a, const struct hw_point *b, double rise)
{
    const struct hw_result *result = &s->line.calc->results[s->line.result];
    const struct hw_point *best = is_better(s, a, b) ? a : b;
    double step = fabs(b->y - a->y);
    bool whole = s->line.input->kind == HW_COUNT;
    bool leap = !whole && step > near * fabs(s->target) && step > smooth * rise;
    if (leap ? is_near(s, b) : whole && result->safe == 0) {
        add_root(s, b, b->x);
    } else if (!leap) {
        add_root(s, best, best->x);
    } else if (is_near(s, a)) {
        add_root(s, a, a->x);
    } else if (!s->solution->jumps) {
        s->solution->jumps = true;
        s->solution->jump_from = *a;
        s->solution->jump_to = *b;
    }
}

static void add_gap(struct search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    if (found->n_gaps == HW_GAPS) {
        found->more_gaps = true;
        return;
    }
    found->gap[found->n_gaps++] = (struct hw_gap){.from = p->x, .to = p->x};
}

static void widen_gap(struct search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    struct hw_gap *gap = &found->gap[found->n_gaps - 1];
    if (!found->more_gaps) {
        gap->to = p->x;
        gap->notes |= p->notes & s->grave_notes;
        gap->status = hw_notes_status(s->line.calc, gap->notes);
    }
}

static void keep_extremes(struct search *s, const struct hw_point *p)
{
    struct hw_solution *found = s->solution;
    found->least = s->answered == 0 || p->y < found->least.y ? *p : found->least;
    found->most = s->answered == 0 || p->y > found->most.y ? *p : found->most;
    s->answered++;
}

/* --- From one point to the next ---------------------------------------------------------------------------------- */

/* Every change of side between two points with a result, from left to right. */
static void cross(struct search *s, struct hw_point a, const struct hw_point *b)
{
    double rise = fabs(b->y - a.y);
    s->crossed = !alike(s, &a, b);
    for (int n = 0; n < CHANGES_MAX && !alike(s, &a, b); n++) {
        struct hw_point here = a;
        struct hw_point there = *b;
        narrow(s, &here, &there, alike);
        if (s->on_target) {
            leave_target(s, &here);
        } else if (hw_point_answered(&there) && side(s, &there) != 0) {
            pass(s, &here, &there, rise);
        }
        if (!hw_point_answered(&there)) { /* narrower than the steps of the scan */
            add_gap(s, &there);
            widen_gap(s, &there);
            struct hw_point end = *b;
            narrow(s, &there, &end, both_answered);
            widen_gap(s, &there);
            there = *b;
        }
        s->on_target = side(s, &there) == 0;
        s->on_from = there;
        a = there;
    }
}

/* A highest or lowest point between two others that may touch the target: all three are on one side of it. */
static void touch(struct search *s, struct hw_point left, struct hw_point middle,
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
            if (!alike(s, &p[k], &middle)) {
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
    keep_extremes(s, &middle);
    if (is_near(s, &middle)) {
        add_root(s, &middle, middle.x);
    }
}

/* True when the middle of three is nearest to the target, and near enough for what lies between to reach it. */
static bool may_touch(const struct search *s, const struct hw_point *left,
                      const struct hw_point *middle, const struct hw_point *right)
{
    double l = fabs(left->y - s->target);
    double m = fabs(middle->y - s->target);
    double r = fabs(right->y - s->target);
    bool one_side = side(s, middle) != 0 && alike(s, left, middle) && alike(s, middle, right);
    return one_side && m < l && m <= r && m <= fmax(l, r) - m;
}

static void begin_stretch(struct search *s, const struct hw_point *p)
{
    keep_extremes(s, p);
    s->in_stretch = 1;
    s->crossed = false;
    s->away = s->away || !is_near(s, p);
    s->on_target = side(s, p) == 0;
    s->on_from = s->last = *p;
}

static void step_to(struct search *s, const struct hw_point *p)
{
    const struct hw_point first = s->last;
    keep_extremes(s, p);
    cross(s, s->last, p);
    s->away = s->away || !is_near(s, p);
    if (s->in_stretch == 1 && !s->crossed && side(s, &first) != 0 && is_near(s, &first)) {
        add_root(s, &first, first.x);
    }
    if (s->in_stretch > 1 && may_touch(s, &s->before, &s->last, p)) {
        touch(s, s->before, s->last, *p);
    }
    s->before = s->last;
    s->last = *p;
    s->in_stretch++;
}

static void end_stretch(struct search *s)
{
    if (s->on_target) {
        leave_target(s, &s->last);
    } else if (!s->crossed && is_near(s, &s->last) && (s->away || s->solution->n_roots == 0)) {
        add_root(s, &s->last, s->last.x);
    }
    s->in_stretch = 0;
}

/* A point with a result: the first of a stretch is looked for between it and what has none. */
static void take_answered(struct search *s, const struct hw_point *p)
{
    struct hw_point first = *p;
    if (s->in_stretch > 0) {
        step_to(s, p);
        return;
    }
    if (s->points > 0) {
        narrow(s, &first, &s->unanswered, both_answered);
        widen_gap(s, &s->unanswered);
    }
    begin_stretch(s, &first);
    if (first.x < p->x) {
        step_to(s, p);
    }
}

static void take_unanswered(struct search *s, const struct hw_point *p)
{
    struct hw_point first = *p;
    if (s->in_stretch > 0) {
        struct hw_point here = s->last;
        narrow(s, &here, &first, both_answered);
        if (here.x > s->last.x) {
            step_to(s, &here);
        }
        end_stretch(s);
        add_gap(s, &first);
        widen_gap(s, &first);
    } else if (s->points == 0) {
        add_gap(s, p);
    }
    widen_gap(s, p);
    s->unanswered = *p;
}

static void take(struct search *s, const struct hw_point *p)
{
    uint32_t grave = p->notes & s->grave_notes;
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

static enum hw_end end_of(const struct search *s)
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
    struct search s = {
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
