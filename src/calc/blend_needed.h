/* blend_needed.h - the smallest change of water after which free ammonia is as it should be. */
#ifndef HW_BLEND_NEEDED_H
#define HW_BLEND_NEEDED_H
#include "holdwater/blend.h"
#include "holdwater/carbonate.h"

#include <stdbool.h>

/* One water, made ready; alkalinity in meq/L, dissolved carbon in mmol/L, total ammonia in mg/L as
 * N. */
struct blend_water {
    const struct hw_carbonate_water *ready;
    double alkalinity, carbon, tan;
};

/* The tank, the new water, and what the mixture is judged by. */
struct blend_waters {
    struct blend_water tank, fresh;
    double free_allowed; /* mg/L as N */
    double air;          /* carbon dioxide of the room, uatm */
};

/* Whether a water that is ready is that of a mixture. */
bool blend_is_water(const struct hw_blend *blend, const struct hw_carbonate_water *water);

/* The water of a mixture: one of the two where it is the same, else it is made ready in `made`. */
const struct hw_carbonate_water *blend_ready(const struct blend_waters *w,
                                             const struct hw_blend *blend,
                                             struct hw_carbonate_water *made);

/* Whether a mixture, made ready, does what is asked of it: mixed and aired, the total is to be no
 * more than the limit for days allows, and free ammonia no more than is allowed. */
bool blend_does_it(const struct blend_waters *w, const struct hw_blend *blend,
                   const struct hw_carbonate_water *water);

/* Whether all of the water would do it: then some share does. */
bool blend_is_possible(const struct blend_waters *w);

/* The smallest share that does it, and beyond which every share does; NaN where all of the water
 * would not. `settled`: there is one, and no change at all does it too. `mixed` may become the
 * mixture of that share, made ready: ask blend_is_water. */
double blend_needed(const struct blend_waters *w, bool *settled, struct hw_carbonate_water *mixed);
#endif
