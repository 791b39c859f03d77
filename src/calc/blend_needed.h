/* blend_needed.h - the smallest change of water after which free ammonia is as it should be. */
#ifndef HW_BLEND_NEEDED_H
#define HW_BLEND_NEEDED_H
#include <stdbool.h>

/* One water: degrees Celsius, g/kg, meq/L, dissolved carbon in mmol/L, total ammonia in mg N/L. */
struct blend_water {
    double temp, salinity, alkalinity, carbon, tan;
};

/* The tank, the new water, and what the mixture is judged by. */
struct blend_waters {
    struct blend_water tank, fresh;
    double free_allowed; /* mg/L as N */
    double air;          /* carbon dioxide of the room, uatm */
};

/* Whether a change of this share, 0 to 1, does what is asked of it: mixed and aired, the total is
 * to be no more than the limit for days allows, and free ammonia no more than is allowed. */
bool blend_does_it(const struct blend_waters *w, double share);

/* The smallest share that does it, and beyond which every share does; NaN where all of the water
 * would not. */
double blend_needed(const struct blend_waters *w);
#endif
