/* blend_states.h - one change of water as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_BLEND_STATES_H
#define HW_BLEND_STATES_H
#include "calc/blend_needed.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/blend.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    BLEND_VOLUME, BLEND_TAKE, BLEND_SHARE, BLEND_TAN, BLEND_BASIS, BLEND_PH, BLEND_ALKALINITY,
    BLEND_TEMP, BLEND_SALINITY, BLEND_NEW_TAN, BLEND_NEW_PH, BLEND_NEW_ALKALINITY,
    BLEND_NEW_TEMP, BLEND_NEW_SALINITY, BLEND_AIR_CO2, BLEND_INPUTS
};
/* clang-format on */

/* Why there is no answer. */
/* clang-format off */
enum blend_refusal {
    BLEND_ANSWERED, BLEND_OVER_VOLUME, BLEND_PH_NOT_ALKALINITY, BLEND_OUTSIDE_PH, BLEND_NO_SHARE
};
/* clang-format on */

/* What is known of the smallest change that does it: nothing, without both alkalinities or ammonia;
 * its share; or that none below all of the water does. */
enum blend_need { BLEND_NEED_UNKNOWN, BLEND_NEED_FOUND, BLEND_NEED_NONE };

/* The states of the mixture, in the order in which they may follow. */
enum { BLEND_MIXED, BLEND_SAME_CO2, BLEND_AIRED, BLEND_STATES };

/* One row; NaN where an input is missing. */
struct blend_states {
    enum blend_refusal refusal;
    bool carbonate; /* both alkalinities are given */
    bool stretched; /* pH scale or ionisation constant */
    bool above_fit; /* density */
    bool co2_odd;   /* the tank's carbon dioxide lies outside what is reckoned with */
    bool sought;    /* no share was given: it is the one that is needed */
    bool settled;   /* without any change the tank is, and when aired stays, as it should be */
    bool enough;    /* the share does it; false where that is not known */
    enum blend_need need;
    double needed; /* share of the water; NaN: not found */
    double share;
    struct hw_blend blend;
    double tan_before, tan_new, tan_after;           /* as N */
    double tan_after_basis;                          /* as the kit counts */
    double pk_before, pk_after;                      /* of ammonium, for the meter's number */
    struct hw_carbonate_water tank_water, new_water; /* with both alkalinities */
    struct hw_carbonate_water needed_water;          /* of the search: ask blend_is_water */
    double alkalinity, carbon_before, carbon_new, carbon;
    double tank_air; /* carbon dioxide that the tank holds, uatm */
    double ph[BLEND_STATES], free[BLEND_STATES];
    double free_before;
    double free_allowed; /* what a change that does it may leave */
    double ph_worst, free_worst;
    double limit_after;         /* total for days at the highest pH after it, mg/L as N */
    bool hour_salt, hour_fresh; /* after the change a published 1-hour limit is passed */
    bool over_salt, over_fresh; /* some state is above the published limit for days that applies */
};

struct blend_states blend_states(const double in[]);

/* The same in two parts, for several shares of one question: both waters before the change, and
 * from a copy of that the change; NaN: the share that is needed. in[BLEND_SHARE] and
 * in[BLEND_TAKE] are not looked at. */
struct blend_states blend_before(const double in[]);
void blend_change(struct blend_states *s, const double in[], double share);

/* Finds `need` where a share was given, which blend_states leaves out; and `needed`, where the
 * share is wanted. */
void blend_look_for_needed(struct blend_states *s, const double in[], bool share);

/* The highest free ammonia of all states told; NaN where there is none. */
double blend_highest_free(const struct blend_states *s);

/* Writes the working; the same names and numbers as the answer. */
void blend_work(const double in[], struct hw_steps *steps);
#endif
