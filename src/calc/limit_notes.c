/* limit_notes.c - which notes about a limit, and about a load at rest, hold. */
#include "calc/limit_notes.h"

#include "calc/shared.h"
#include "tables.h"

#include <math.h>

uint64_t limit_notes_of(const struct limit_notes *notes, const struct long_limit *published,
                        double own)
{
    if (isnan(own)) {
        return note_bit(notes->not_safe) | note_if(published->salt, notes->salt) |
               note_if(published->fresh, notes->fresh) |
               note_if(published->salt && published->fresh, notes->stricter) |
               note_if(published->jump, notes->jump) |
               note_if(published->stretched, notes->stretched);
    }
    bool unseen = isnan(published->total_n);
    return note_bit(notes->not_safe) | note_bit(notes->own) |
           note_if(above(own, published->total_n), notes->over_published) |
           note_if(unseen && above_limit(own, HW_LIMIT_ACT_TODAY), notes->unseen);
}

uint64_t rest_notes_of(const struct rest_notes *notes, const struct proven_filter *filter,
                       const struct proven_rest *rest, double limit)
{
    double a_day = 24 * (filter->from - filter->to) / filter->hours;
    bool rests = !isnan(rest->level);
    bool over = above(rest->level, limit);
    bool high = isnan(rest->high) || above(rest->high, limit);
    return note_if(above_limit(a_day, HW_LIMIT_CLEARS_FAST), notes->clears_fast) |
           note_if(below_limit(filter->hours, HW_LIMIT_VERDICT_HOURS), notes->hours_few) |
           note_if(!isnan(filter->from) && !rests, notes->never_settles) |
           note_if(over, notes->over_limit) | note_if(rests && high && !over, notes->unsure) |
           note_if(rests, notes->range);
}
