/* blend_needed.h - the smallest change of water after which free ammonia is as it should be. */
#ifndef HW_BLEND_NEEDED_H
#define HW_BLEND_NEEDED_H
#include "calc/blend_states.h"

/* How far a change is from what is asked of it: mixed and aired, the total is to be no more than
 * the limit for days allows, and free ammonia no more than a little above what it was. The largest
 * of these four ratios; at 1 and below the change does it. `s` knows both waters. */
double blend_worst_at(const struct blend_states *s, const double in[], double share);

/* Finds `need`, `needed` and `settled` of two waters that are known. */
void blend_find_needed(struct blend_states *s, const double in[]);

/* Free ammonia that a change may leave, mg/L as N. */
double blend_free_allowed(const struct blend_states *s);
#endif
