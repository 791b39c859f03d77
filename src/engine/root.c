/* root.c - which of two points serves better. */
#include "engine/root.h"

#include <math.h>

int hw_notes_raised(const struct hw_calc *calc, uint64_t notes)
{
    int raised = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        raised += ((notes >> i) & 1u) != 0 && calc->notes[i].effect != HW_STANDING ? 1 : 0;
    }
    return raised;
}

int hw_solved_side(const struct hw_result *result)
{
    if (result->keep_below) {
        return -1;
    }
    return result->kind == HW_TIME ? -result->safe : result->safe;
}

bool hw_point_better(const struct hw_calc *calc, size_t result, double target, double slack,
                     const struct hw_point *a, const struct hw_point *b)
{
    int safe = hw_solved_side(&calc->results[result]);
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
