/* emergency_facts.c - the reckoning of one emergency: each number is asked of the calculation that
 * tells it alone. */
#include "calc/emergency_facts.h"

#include "calc/free_ammonia.h"
#include "calc/list.h"
#include "tables.h"

#include <math.h>
#include <string.h>

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

/* Temperature, salinity and the pH of both waters: all that a mixture needs. */
static bool mixes(const double in[])
{
    return in[EMERGENCY_TAN] > 0 && !isnan(in[EMERGENCY_TEMP]) && !isnan(in[EMERGENCY_SALINITY]) &&
           !isnan(in[EMERGENCY_NEW_PH]);
}

/* The question of `blend`: new water without ammonia, matched where nothing else was said. */
static void find_before(struct emergency *e, const double in[])
{
    const double blend_in[BLEND_INPUTS] = {
        [BLEND_VOLUME] = in[EMERGENCY_VOLUME],
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
    memcpy(e->blend_in, blend_in, sizeof blend_in);
    if (mixes(in)) {
        e->before = blend_before(e->blend_in);
    }
}

static struct blend_states ask_blend(const struct emergency *e, double share)
{
    struct blend_states asked = e->before;
    blend_change(&asked, e->blend_in, share);
    return asked;
}

static void find_share(struct emergency *e, const double in[])
{
    bool known =
        mixes(in) && !isnan(in[EMERGENCY_ALKALINITY]) && !isnan(in[EMERGENCY_NEW_ALKALINITY]);
    if (!known) {
        return;
    }
    e->blend = ask_blend(e, NAN);
    e->readings_odd = e->blend.refusal != BLEND_ANSWERED;
    e->both_known = !e->readings_odd;
    if (e->both_known) {
        e->share_needed = 100 * e->blend.needed;
        e->water_needed = e->blend.needed * in[EMERGENCY_VOLUME];
        e->free_aired = ask_blend(e, 0).free[BLEND_AIRED];
    }
}

static bool is_under(const struct blend_states *after)
{
    return !above(after->tan_after, after->limit_after);
}

/* Air is ordered in any case, so that a change is held against the tank aired without one, too.
 * Without both alkalinities that is not known. */
static enum emergency_effect effect_of(const struct emergency *e, const struct blend_states *after)
{
    double highest = blend_highest_free(after);
    if (after->refusal != BLEND_ANSWERED) {
        return EMERGENCY_WORSE; /* beyond what can be reckoned with */
    }
    if (after->enough) {
        return EMERGENCY_ENOUGH;
    }
    if (!free_rises(after->free_before, highest)) {
        return EMERGENCY_SHORT;
    }
    if (e->both_known && is_under(after)) {
        return EMERGENCY_UNDER;
    }
    bool known = !isnan(e->free_aired);
    return known && !above(highest, e->free_aired) ? EMERGENCY_AIR : EMERGENCY_WORSE;
}

static void find_half(struct emergency *e)
{
    if (e->both_known) {
        struct blend_states half = ask_blend(e, 0.5);
        e->half = effect_of(e, &half);
        e->half_under = e->half != EMERGENCY_WORSE && is_under(&half);
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
    e->at_hand = ask_blend(e, share);
    if (e->at_hand.refusal != BLEND_ANSWERED) {
        e->readings_odd = true;
        return;
    }
    e->at_hand_ratio = e->at_hand.tan_after / e->at_hand.limit_after;
    e->hand = effect_of(e, &e->at_hand);
}

static bool is_deadly(const double in[])
{
    return in[EMERGENCY_NITRITE] > 0 &&
           !below_limit(in[EMERGENCY_NITRITE], HW_LIMIT_NITRITE_EFFECT);
}

double emergency_water_in(const double in[], double water_needed)
{
    double needed = water_needed > 0 ? water_needed : (double)NAN;
    if (is_deadly(in)) {
        needed = fmax(needed, in[EMERGENCY_VOLUME] / 2); /* of a number and none, the number */
    }
    return fmin(share_at_hand(in) * in[EMERGENCY_VOLUME], needed);
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
        [KIND_IONIC] = CHANGE_KIND_IONIC,
        [KIND_AMINE] = CHANGE_KIND_AMINE,
        [KIND_CHELATED] = CHANGE_KIND_CHELATED,
        [KIND_DYE] = CHANGE_KIND_DYE,
        [KIND_FORMALIN] = NAN,
        [KIND_OTHER] = CHANGE_KIND_OTHER,
    };
    return words[kind];
}

/* Whether a filter shares the water is not known: of a dye no amount is told. */
static void ask_change(struct emergency *e, const double in[])
{
    const struct hw_input *change = hw_calc_change.inputs;
    for (int i = 0; i < CHANGE_INPUTS; i++) {
        e->change_in[i] = NAN;
    }
    e->change_in[CHANGE_VOLUME] = or_else(in[EMERGENCY_VOLUME], 1);
    e->change_in[CHANGE_TAKE] = or_else(e->water_in, e->change_in[CHANGE_VOLUME]);
    e->change_in[CHANGE_METHOD] = change[CHANGE_METHOD].preset;
    e->change_in[CHANGE_TIMES] = change[CHANGE_TIMES].preset;
    e->change_in[CHANGE_NEW] = change[CHANGE_NEW].preset;
    e->change_in[CHANGE_NOW] = in[EMERGENCY_NOW];
    e->change_in[CHANGE_KEEP] = in[EMERGENCY_KEEP];
    e->change_in[CHANGE_KIND] = word_of(e->kind);
    e->change_in[CHANGE_SALINITY] = in[EMERGENCY_SALINITY];
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

static bool is_copper(enum medicine_kind kind)
{
    return (KINDS_OF_COPPER >> kind & 1u) != 0;
}

/* What is taken for a slip in a ceiling is one in a level, too. Copper of a kind that is not known
 * may be chelated. */
static bool is_slip(const struct emergency *e, double now)
{
    unsigned mild = MEDICINE_COPPER_UNKNOWN | MEDICINE_COPPER_CHELATED;
    bool chelated = (e->medicine & mild) != 0;
    return is_copper(e->kind) &&
           above_limit(now, chelated ? HW_LIMIT_COPPER_CHELATED_SLIP : HW_LIMIT_COPPER_AMINE_SLIP);
}

static bool has_level(const double in[])
{
    return !isnan(in[EMERGENCY_NOW]) || !isnan(in[EMERGENCY_KEEP]) ||
           !isnan(in[EMERGENCY_CEILING]) || !isnan(in[EMERGENCY_STRENGTH]);
}

static void find_medicine(struct emergency *e, const double in[])
{
    e->levels_given = has_level(in);
    e->unnamed =
        e->levels_given && (e->medicine & ~(unsigned)(MEDICINE_NONE | MEDICINE_BINDER)) == 0;
    e->level_known = e->kind != KIND_UNSAID && !isnan(in[EMERGENCY_NOW]);
    if (!e->level_known) {
        return;
    }
    ask_change(e, in);
    e->asked = !isnan(in[EMERGENCY_KEEP]);
    e->level_slip = is_slip(e, in[EMERGENCY_NOW]);
    bool told = e->asked && !e->level_slip && e->kind != KIND_DYE &&
                !(is_copper(e->kind) && isnan(in[EMERGENCY_SALINITY]));
    if (told && !isnan(e->water_in) && pours(e->change_notes)) {
        e->add_liquid = e->change.liquid;
    }
}

bool emergency_binder_spoiled(const struct emergency *e)
{
    return (e->medicine & (MEDICINE_BINDER | MEDICINE_FORMALIN)) != 0;
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
    if (e->bans.copper || e->bans.dye || e->bans.oxygen || emergency_binder_spoiled(e)) {
        e->binder_allowed = 0;
    } else if (!(e->medicine & MEDICINE_OTHER) && e->tan_n > 0) {
        e->binder_allowed = 1;
    }
}

/* Until the limit is passed again, by a rise in the basis of the kit. */
static void find_hours(struct emergency *e, const double in[])
{
    double rise = nitrogen_to_n((enum hw_nitrogen_basis)in[EMERGENCY_BASIS], in[EMERGENCY_RISE]);
    bool at_hand = e->hand != EMERGENCY_EFFECT_UNKNOWN;
    const struct blend_states *left = at_hand ? &e->at_hand : &e->blend;
    bool changed = at_hand || !isnan(e->share_needed);
    e->tan_left = changed ? left->tan_after : e->tan_n;
    e->limit_left = changed ? left->limit_after : e->limit.total_n;
    double hours = (e->limit_left - e->tan_left) / rise * 24;
    bool apart = below(e->tan_left, e->limit_left) || above(e->tan_left, e->limit_left);
    hours = apart || isnan(hours) ? hours : 0; /* what rounding leaves is no time */
    e->hours_again = hours < 0 ? (double)NAN : hours;
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
        .free_aired = NAN,
        .at_hand_ratio = NAN,
        .add_liquid = NAN,
        .binder_allowed = NAN,
    };
    e.long_ratio = e.tan_n / e.limit.total_n;
    e.kind = kind_of(e.medicine);
    e.deadly = is_deadly(in);
    find_before(&e, in);
    find_share(&e, in);
    find_half(&e);
    find_at_hand(&e, in);
    e.water_in = emergency_water_in(in, e.water_needed);
    find_medicine(&e, in);
    find_binder(&e, in);
    find_hours(&e, in);
    return e;
}
