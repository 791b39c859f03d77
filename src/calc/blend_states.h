/* blend_states.h - one change of water as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_BLEND_STATES_H
#define HW_BLEND_STATES_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/blend.h"

/* The inputs, in the order of the table. */
enum {
    VOLUME,
    TAKE,
    SHARE,
    TAN,
    BASIS,
    PH,
    ALKALINITY,
    TEMP,
    SALINITY,
    FRESH_TAN,
    FRESH_PH,
    FRESH_ALKALINITY,
    FRESH_TEMP,
    FRESH_SALINITY,
    AIR_CO2,
    INPUTS
};

/* Why there is no answer. */
enum blend_refusal { ANSWERED, OVER_VOLUME, PH_NOT_ALKALINITY, OUTSIDE_PH };

/* The states of the mixture, in the order in which they may follow. */
enum { MIXED, SAME_CO2, AIRED, STATES };

/* One row; NaN where an input is missing. */
struct blend_states {
    enum blend_refusal refusal;
    bool carbonate; /* both alkalinities are given */
    bool stretched; /* pH scale or ionisation constant */
    bool above_fit; /* density */
    bool co2_odd;   /* the tank's carbon dioxide lies outside what is reckoned with */
    double share;
    struct hw_blend blend;
    double tan_before, tan_fresh, tan_after; /* as N */
    double pk_before, pk_after;              /* of ammonium, for the meter's number */
    double alkalinity, carbon_before, carbon_fresh, carbon;
    double tank_air; /* carbon dioxide that the tank holds, uatm */
    double ph[STATES], free[STATES];
    double free_before;
    double ph_worst, free_worst;
    bool over_salt, over_fresh; /* some state is above the published limit for days that applies */
};

struct blend_states blend_states(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void blend_work(const double in[], struct hw_steps *steps);
#endif
