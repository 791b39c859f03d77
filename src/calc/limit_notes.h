/* limit_notes.h - the notes of several calculations about one thing: the limit for days, published
 * or the keeper's own, and where a load rests against it. */
#ifndef HW_LIMIT_NOTES_H
#define HW_LIMIT_NOTES_H
#include "calc/long_limit.h"
#include "calc/proven_filter.h"

#include <stdint.h>

/* The numbers of a calculation's notes about the limit. */
struct limit_notes {
    unsigned salt, fresh, stricter, jump, stretched; /* of the published one */
    unsigned own, over_published, unseen;            /* of the keeper's own */
    unsigned not_safe;
};

/* The bits of those that hold; own is the keeper's limit, mg/L as N, or NaN. One of the two limits
 * is known. */
uint64_t limit_notes_of(const struct limit_notes *notes, const struct long_limit *published,
                        double own);

/* The numbers of a calculation's notes about a proven filter and where a load rests with it. */
struct rest_notes {
    unsigned clears_fast, hours_few, never_settles, over_limit, unsure, range;
};

/* The bits of those that hold; limit is total ammonia, mg/L as N, or NaN. */
uint64_t rest_notes_of(const struct rest_notes *notes, const struct proven_filter *filter,
                       const struct proven_rest *rest, double limit);
#endif
