/* emergency_facts.c - the reckoning of one emergency: each number is asked of the calculation that
 * tells it alone. */
#include "calc/emergency_facts.h"

#include "calc/free_ammonia.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>

static enum emergency_water water_of(double ph)
{
    if (below_limit(ph, HW_LIMIT_SOUR_BELOW)) {
        return EMERGENCY_SOUR;
    }
    return below_limit(ph, HW_LIMIT_GOOD_FROM) ? EMERGENCY_BETWEEN : EMERGENCY_GOOD;
}

static double or_else(double given, double other)
{
    return isnan(given) ? other : given;
}

/* The question of `blend`: new water without ammonia, matched where nothing else was said. */
static struct blend_states ask_blend(const double in[], double share)
{
    const double blend_in[BLEND_INPUTS] = {
        [BLEND_VOLUME] = in[EMERGENCY_VOLUME],
        [BLEND_TAKE] = NAN,
        [BLEND_SHARE] = 100 * share,
        [BLEND_TAN] = in[EMERGENCY_TAN],
        [BLEND_BASIS] = in[EMERGENCY_BASIS],
        [BLEND_PH] = in[EMERGENCY_PH],
        [BLEND_ALKALINITY] = in[EMERGENCY_ALKALINITY],
        [BLEND_TEMP] = in[EMERGENCY_TEMP],
        [BLEND_SALINITY] = in[EMERGENCY_SALINITY],
        [BLEND_NEW_PH] = in[EMERGENCY_NEW_PH],
        [BLEND_NEW_ALKALINITY] = in[EMERGENCY_NEW_ALKALINITY],
        [BLEND_NEW_TEMP] = or_else(in[EMERGENCY_NEW_TEMP], in[EMERGENCY_TEMP]),
        [BLEND_NEW_SALINITY] = or_else(in[EMERGENCY_NEW_SALINITY], in[EMERGENCY_SALINITY]),
        [BLEND_AIR_CO2] = hw_calc_blend.inputs[BLEND_AIR_CO2].preset,
    };
    return blend_states(blend_in);
}

/* Temperature, salinity and the pH of both waters: all that a mixture needs. */
static bool mixes(const double in[])
{
    return in[EMERGENCY_TAN] > 0 && !isnan(in[EMERGENCY_TEMP]) && !isnan(in[EMERGENCY_SALINITY]) &&
           !isnan(in[EMERGENCY_NEW_PH]);
}

static void find_share(struct emergency *e, const double in[])
{
    bool known =
        mixes(in) && !isnan(in[EMERGENCY_ALKALINITY]) && !isnan(in[EMERGENCY_NEW_ALKALINITY]);
    if (!known) {
        return;
    }
    e->blend = ask_blend(in, NAN);
    e->readings_odd = e->blend.refusal != BLEND_ANSWERED;
    e->both_known = !e->readings_odd;
    if (e->both_known) {
        e->share_needed = 100 * e->blend.needed;
        e->water_needed = e->blend.needed * in[EMERGENCY_VOLUME];
    }
}

/* More water at hand than the tank holds changes all of it. */
static double share_at_hand(const double in[])
{
    double share = in[EMERGENCY_AT_HAND] / in[EMERGENCY_VOLUME];
    return share > 1 ? 1 : share;
}

static void find_at_hand(struct emergency *e, const double in[])
{
    double share = share_at_hand(in);
    if (isnan(share) || !mixes(in) || e->readings_odd) {
        return;
    }
    e->at_hand = ask_blend(in, share);
    if (e->at_hand.refusal != BLEND_ANSWERED) {
        e->readings_odd = true;
        return;
    }
    bool rises = free_rises(e->at_hand.free_before, blend_highest_free(&e->at_hand));
    e->at_hand_ratio = e->at_hand.tan_after / e->at_hand.limit_after;
    e->hand = rises ? EMERGENCY_HAND_WORSE : EMERGENCY_HAND_SHORT;
    if (e->at_hand.enough) {
        e->hand = EMERGENCY_HAND_ENOUGH;
    }
}

/* The one kind that is dosed to a level; copper of a kind that is not known counts as ionic. */
static enum medicine_kind kind_of(unsigned medicine)
{
    switch (medicine & ~(unsigned)MEDICINE_BINDER) {
    case MEDICINE_COPPER_UNKNOWN:
    case MEDICINE_COPPER_IONIC:
        return KIND_IONIC;
    case MEDICINE_COPPER_AMINE:
        return KIND_AMINE;
    case MEDICINE_COPPER_CHELATED:
        return KIND_CHELATED;
    case MEDICINE_DYE:
        return KIND_DYE;
    case MEDICINE_ANTIBIOTIC:
    case MEDICINE_OTHER:
        return KIND_OTHER;
    default:
        return KIND_UNSAID;
    }
}

/* The word of the input `kind` of `change`. */
static double word_of(enum medicine_kind kind)
{
    static const double words[] = {
        [KIND_IONIC] = 0, [KIND_AMINE] = 1,      [KIND_CHELATED] = 2,
        [KIND_DYE] = 3,   [KIND_FORMALIN] = NAN, [KIND_OTHER] = 4,
    };
    return words[kind];
}

/* The water that goes in: what is at hand, else what is needed. */
static double water_in(const struct emergency *e, const double in[])
{
    double at_hand = share_at_hand(in) * in[EMERGENCY_VOLUME];
    return isnan(in[EMERGENCY_AT_HAND]) ? e->water_needed : at_hand;
}

/* Whether a filter shares the water is not asked: of a dye it is asked as if there were none, and
 * no amount is told. */
static void ask_change(struct emergency *e, const double in[])
{
    const struct hw_input *change = hw_calc_change.inputs;
    double water = water_in(e, in);
    for (int i = 0; i < CHANGE_INPUTS; i++) {
        e->change_in[i] = NAN;
    }
    e->change_in[CHANGE_VOLUME] = or_else(in[EMERGENCY_VOLUME], 1);
    e->change_in[CHANGE_TAKE] = water > 0 ? water : e->change_in[CHANGE_VOLUME];
    e->change_in[CHANGE_METHOD] = change[CHANGE_METHOD].preset;
    e->change_in[CHANGE_TIMES] = change[CHANGE_TIMES].preset;
    e->change_in[CHANGE_NEW] = change[CHANGE_NEW].preset;
    e->change_in[CHANGE_NOW] = in[EMERGENCY_NOW];
    e->change_in[CHANGE_KEEP] = in[EMERGENCY_KEEP];
    e->change_in[CHANGE_KIND] = word_of(e->kind);
    e->change_in[CHANGE_SALINITY] = in[EMERGENCY_SALINITY];
    e->change_in[CHANGE_BIOFILTER] = NO;
    e->change_in[CHANGE_CEILING] = in[EMERGENCY_CEILING];
    e->change_in[CHANGE_STRENGTH] = in[EMERGENCY_STRENGTH];
    e->change = change_rounds(e->change_in);
    e->change_notes = change_notes(&e->change, e->change_in);
}

/* Notes that leave no amount, and those that say not to pour it at once. */
static bool pours(uint64_t notes)
{
    uint64_t grave =
        note_bit(HW_CHANGE_NOTE_COPPER_RAMP) | note_bit(HW_CHANGE_NOTE_COPPER_RAMP_CHELATED);
    for (unsigned i = 0; i < HW_CHANGE_NOTES; i++) {
        grave |= note_if(hw_change_notes[i].effect >= HW_REFUSED, i);
    }
    return (notes & grave) == 0;
}

static void find_medicine(struct emergency *e, const double in[])
{
    bool copper = (KINDS_OF_COPPER >> e->kind & 1u) != 0;
    e->asked = e->kind != KIND_UNSAID && !isnan(in[EMERGENCY_NOW]) && !isnan(in[EMERGENCY_KEEP]);
    if (!e->asked) {
        return;
    }
    ask_change(e, in);
    bool told = e->kind != KIND_DYE && !(copper && isnan(in[EMERGENCY_SALINITY]));
    if (told && water_in(e, in) > 0 && pours(e->change_notes)) {
        e->add_liquid = e->change.liquid;
    }
}

/* A binder by its label, of which no more is known than what the mildest agent takes. */
static void find_binder(struct emergency *e, const double in[])
{
    double binder_in[BINDER_INPUTS];
    for (int i = 0; i < BINDER_INPUTS; i++) {
        binder_in[i] = NAN;
    }
    binder_in[BINDER_VOLUME] = or_else(in[EMERGENCY_VOLUME], 1);
    binder_in[BINDER_TAN] = in[EMERGENCY_TAN];
    binder_in[BINDER_BASIS] = in[EMERGENCY_BASIS];
    binder_in[BINDER_MEDICINE] = in[EMERGENCY_MEDICINE];
    binder_in[BINDER_AGENT] = BINDER_BY_LABEL;
    struct binder_dose dose = binder_dose(binder_in);
    e->bans = binder_bans(&dose, e->medicine);
    e->binder_oxygen = dose.label_oxygen;
    if (e->bans.copper || e->bans.dye || e->bans.oxygen) {
        e->binder_allowed = 0;
    } else if (!(e->medicine & MEDICINE_OTHER)) {
        e->binder_allowed = 1;
    }
}

/* Until the limit is passed again, by a rise in the basis of the kit. */
static void find_hours(struct emergency *e, const double in[])
{
    double rise = nitrogen_to_n((enum hw_nitrogen_basis)in[EMERGENCY_BASIS], in[EMERGENCY_RISE]);
    const struct blend_states *left = e->hand != EMERGENCY_HAND_UNKNOWN ? &e->at_hand : &e->blend;
    bool changed = e->hand != EMERGENCY_HAND_UNKNOWN || !isnan(e->share_needed);
    e->tan_left = changed ? left->tan_after : e->tan_n;
    e->limit_left = changed ? left->limit_after : e->limit.total_n;
    double hours = (e->limit_left - e->tan_left) / rise * 24;
    hours = hours < 0 ? 0 : hours;
    e->hours_again = above(e->tan_left, e->limit_left) ? (double)NAN : hours;
}

struct emergency emergency_facts(const double in[])
{
    struct emergency e = {
        .medicine = (unsigned)in[EMERGENCY_MEDICINE],
        .water = water_of(in[EMERGENCY_PH]),
        .tan_n = nitrogen_to_n((enum hw_nitrogen_basis)in[EMERGENCY_BASIS], in[EMERGENCY_TAN]),
        .limit = long_limit(in[EMERGENCY_PH], in[EMERGENCY_TEMP], in[EMERGENCY_SALINITY]),
        .share_needed = NAN,
        .water_needed = NAN,
        .at_hand_ratio = NAN,
        .add_liquid = NAN,
        .binder_allowed = NAN,
    };
    e.long_ratio = e.tan_n / e.limit.total_n;
    e.kind = kind_of(e.medicine);
    find_share(&e, in);
    find_at_hand(&e, in);
    find_medicine(&e, in);
    find_binder(&e, in);
    find_hours(&e, in);
    return e;
}
