/* emergency_facts.h - what is known of one emergency, by the reckoning of the calculations that
 * tell each number alone; shared by the answer, its acts and its working. */
#ifndef HW_EMERGENCY_FACTS_H
#define HW_EMERGENCY_FACTS_H
#include "calc/binder_dose.h"
#include "calc/blend_states.h"
#include "calc/change_rounds.h"
#include "calc/long_limit.h"
#include "calc/shared.h"
#include "calc/steps.h"

#include <stdbool.h>

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    EMERGENCY_TAN, EMERGENCY_BASIS, EMERGENCY_PH, EMERGENCY_MEDICINE, EMERGENCY_VOLUME,
    EMERGENCY_TEMP, EMERGENCY_SALINITY, EMERGENCY_NITRITE, EMERGENCY_ALKALINITY, EMERGENCY_NEW_PH,
    EMERGENCY_NEW_ALKALINITY, EMERGENCY_NEW_TEMP, EMERGENCY_NEW_SALINITY, EMERGENCY_AT_HAND,
    EMERGENCY_NOW, EMERGENCY_KEEP, EMERGENCY_CEILING, EMERGENCY_STRENGTH, EMERGENCY_RISE,
    EMERGENCY_INPUTS
};
/* clang-format on */

/* What pH says of a change of water. */
enum emergency_water { EMERGENCY_GOOD, EMERGENCY_BETWEEN, EMERGENCY_SOUR };

/* What a change of some size does to free ammonia, at the worst of its states. */
enum emergency_effect {
    EMERGENCY_EFFECT_UNKNOWN,
    EMERGENCY_ENOUGH, /* as much as the share that is needed */
    EMERGENCY_SHORT,  /* it helps */
    EMERGENCY_UNDER,  /* it rises, and stays under the limit */
    EMERGENCY_AIR,    /* it rises, to no more than air alone brings it to */
    EMERGENCY_WORSE   /* it rises above that, or may */
};

/* One row; NaN where an input is missing. */
struct emergency {
    unsigned medicine;
    enum emergency_water water;
    double tan_n;            /* mg/L */
    struct long_limit limit; /* of the tank as it is */
    double long_ratio;
    bool both_known;   /* enough is known of both waters to look for the share that is needed */
    bool readings_odd; /* the readings of the two waters do not go together */
    double blend_in[BLEND_INPUTS];     /* the question of `blend` ... */
    struct blend_states before;        /* ... and both waters, where they are known */
    struct blend_states blend;         /* the change that is needed */
    double share_needed, water_needed; /* %, L */
    double free_aired;                 /* of the tank aired without a change, mg/L as N */
    enum emergency_effect half, hand;  /* of half the water; of the water at hand */
    bool half_under;                   /* half the water leaves it under the limit, aired, too */
    bool deadly;                       /* nitrite */
    struct blend_states at_hand;       /* after the water at hand */
    double at_hand_ratio;
    double water_in;   /* L of new water that go in */
    bool levels_given; /* a level or a strength */
    bool unnamed;      /* and no medicine that could have it */
    /* The medicine for the new water, as `change` has it. */
    bool level_known; /* --now is given for the one medicine that is dosed to a level */
    bool level_slip;  /* so much that it looks like a slip of the unit */
    bool asked;       /* --keep is given, too */
    enum medicine_kind kind;
    double change_in[CHANGE_INPUTS];
    struct change_rounds change;
    uint64_t change_notes; /* of `change` */
    double add_liquid;
    struct binder_bans bans;
    double binder_oxygen;  /* mg/L, of the mildest agent */
    double binder_allowed; /* 1, 0 or NaN */
    /* What is left after the water at hand, else after the change that is needed, else now; and the
     * limit there. */
    double tan_left, limit_left;
    double hours_again;
};

struct emergency emergency_facts(const double in[]);

/* The new water that goes in, L: no more than is at hand, nor than is needed: water_needed, and at
 * least half where nitrite can kill. NaN where neither is known. */
double emergency_water_in(const double in[], double water_needed);

/* Whether a binder has no place for a reason that binder itself does not withhold for. */
bool emergency_binder_spoiled(const struct emergency *e);

/* What is to be done, in order, as bits of the notes. */
uint64_t emergency_acts(const struct emergency *e, const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void emergency_work(const double in[], struct hw_steps *steps);
#endif
