/* emergency_acts.c - what is to be done, in order. Each act is one note; none is told that a rule
 * of another calculation withholds. */
#include "calc/emergency_facts.h"
#include "tables.h"

#include <math.h>

static bool needs_none(const struct emergency *e)
{
    return e->both_known && e->blend.settled;
}

/* Half a change is what nitrite that can kill asks for; where it frees ammonia, or may, there is no
 * change to be told. */
static bool both_kill(const struct emergency *e)
{
    bool frees = e->both_known ? e->half == EMERGENCY_WORSE : e->water != EMERGENCY_GOOD;
    return e->deadly && e->tan_n > 0 && frees;
}

/* What is not known yet, and what speaks against ammonia as the cause. */
static uint64_t first_acts(const struct emergency *e, const double in[])
{
    bool some = e->tan_n > 0;
    bool nitrite_known = !isnan(in[EMERGENCY_NITRITE]);
    bool unmeasured = isnan(in[EMERGENCY_VOLUME]) || isnan(e->long_ratio);
    bool new_unknown = some && !unmeasured && !e->both_known && !e->readings_odd;
    bool under = some && !isnan(e->long_ratio) && !above(e->long_ratio, 1);
    return note_bit(HW_EMERGENCY_NOTE_ACT_AIR) |
           note_if(unmeasured, HW_EMERGENCY_NOTE_ACT_MEASURE) |
           note_if(new_unknown, HW_EMERGENCY_NOTE_ACT_MEASURE_NEW) |
           note_if(e->readings_odd, HW_EMERGENCY_NOTE_ACT_READINGS) |
           note_if(!some && !nitrite_known, HW_EMERGENCY_NOTE_ACT_NO_AMMONIA) |
           note_if(!some && nitrite_known, HW_EMERGENCY_NOTE_ACT_NO_AMMONIA_READ) |
           note_if(needs_none(e) && !e->deadly, HW_EMERGENCY_NOTE_ACT_NO_CHANGE) |
           note_if(under, HW_EMERGENCY_NOTE_ACT_UNDER);
}

static uint64_t hand_acts(const struct emergency *e)
{
    return note_if(e->hand == EMERGENCY_SHORT, HW_EMERGENCY_NOTE_ACT_HAND_SHORT) |
           note_if(e->hand == EMERGENCY_AIR, HW_EMERGENCY_NOTE_ACT_HAND_AIR) |
           note_if(e->hand == EMERGENCY_WORSE, HW_EMERGENCY_NOTE_ACT_HAND_WORSE);
}

/* The share that is needed is known: with water that holds no ammonia there always is one. In sour
 * water a small change is warned of, unless half leaves ammonia under the limit or what is at hand
 * helps; what is at hand may be worse, too. */
static uint64_t known_change(const struct emergency *e)
{
    if (e->hand == EMERGENCY_WORSE || (e->deadly && e->half_under)) {
        return 0;
    }
    bool hand_helps = e->hand != EMERGENCY_EFFECT_UNKNOWN && e->hand != EMERGENCY_ENOUGH;
    bool nothing_less = e->water == EMERGENCY_SOUR && !e->deadly && !e->half_under && !hand_helps;
    return note_if(nothing_less, HW_EMERGENCY_NOTE_ACT_CHANGE_SOUR) |
           note_if(!nothing_less, HW_EMERGENCY_NOTE_ACT_CHANGE);
}

/* It is not, and pH decides. */
static uint64_t unknown_change(const struct emergency *e)
{
    bool worse = e->hand == EMERGENCY_WORSE;
    return note_if(e->water == EMERGENCY_SOUR, HW_EMERGENCY_NOTE_ACT_SOUR) |
           note_if(e->water == EMERGENCY_BETWEEN, HW_EMERGENCY_NOTE_ACT_BETWEEN) |
           note_if(e->water == EMERGENCY_GOOD && !worse, HW_EMERGENCY_NOTE_ACT_HALF);
}

/* For ammonia. */
static uint64_t change_acts(const struct emergency *e)
{
    if (!(e->tan_n > 0) || needs_none(e)) {
        return 0;
    }
    if (both_kill(e)) {
        return hand_acts(e);
    }
    return hand_acts(e) | (e->both_known ? known_change(e) : unknown_change(e));
}

/* New water that lies far from the tank's: fish that are moved meet all of the step. */
static uint64_t match_act(const double in[])
{
    double warmer = in[EMERGENCY_NEW_TEMP] - in[EMERGENCY_TEMP];
    double saltier = in[EMERGENCY_NEW_SALINITY] - in[EMERGENCY_SALINITY];
    bool far = above_limit(warmer, HW_LIMIT_TEMP_RISE) ||
               above_limit(-warmer, HW_LIMIT_TEMP_FALL) ||
               above_limit(saltier, HW_LIMIT_SALINITY_RISE) ||
               above_limit(-saltier, HW_LIMIT_SALINITY_FALL);
    return note_if(far, HW_EMERGENCY_NOTE_ACT_MATCH);
}

/* The notes of `change` that withhold a dose, under their own codes. */
static uint64_t withheld(const struct emergency *e)
{
    static const unsigned same[][2] = {
        {HW_CHANGE_NOTE_NEW_TOO_STRONG, HW_EMERGENCY_NOTE_NEW_TOO_STRONG},
        {HW_CHANGE_NOTE_KEEP_OVER_CEILING, HW_EMERGENCY_NOTE_KEEP_OVER_CEILING},
        {HW_CHANGE_NOTE_DYE_OVER, HW_EMERGENCY_NOTE_DYE_OVER},
        {HW_CHANGE_NOTE_CEILING_TOO_HIGH, HW_EMERGENCY_NOTE_CEILING_TOO_HIGH},
        {HW_CHANGE_NOTE_CEILING_SLIP, HW_EMERGENCY_NOTE_CEILING_SLIP},
        {HW_CHANGE_NOTE_COPPER_IN_FRESH, HW_EMERGENCY_NOTE_COPPER_IN_FRESH},
    };
    uint64_t notes = 0;
    for (size_t i = 0; e->asked && i < sizeof same / sizeof same[0]; i++) {
        notes |= note_if((e->change_notes & note_bit(same[i][0])) != 0, same[i][1]);
    }
    return notes;
}

static bool change_says(const struct emergency *e, unsigned note)
{
    return e->asked && (e->change_notes & note_bit(note)) != 0;
}

/* An amount is told, or why it is not. */
static uint64_t amount_notes(const struct emergency *e)
{
    bool told = !isnan(e->add_liquid);
    bool ramp = change_says(e, HW_CHANGE_NOTE_COPPER_RAMP) ||
                change_says(e, HW_CHANGE_NOTE_COPPER_RAMP_CHELATED);
    return note_if(told, HW_EMERGENCY_NOTE_ACT_MEDICINE_ADD) |
           note_if(told && change_says(e, HW_CHANGE_NOTE_POUR_LARGE),
                   HW_EMERGENCY_NOTE_POUR_LARGE) |
           note_if(told && change_says(e, HW_CHANGE_NOTE_SMALL_LIQUID),
                   HW_EMERGENCY_NOTE_SMALL_LIQUID) |
           note_if(ramp, HW_EMERGENCY_NOTE_ACT_KEEP_NOW) |
           note_if(change_says(e, HW_CHANGE_NOTE_CEILING_NEEDED), HW_EMERGENCY_NOTE_ACT_CEILING) |
           note_if(change_says(e, HW_CHANGE_NOTE_POUR_TOO_LARGE), HW_EMERGENCY_NOTE_ACT_STRENGTH);
}

/* What the one medicine that has a level asks for, besides the amount. */
static uint64_t level_acts(const struct emergency *e, const double in[])
{
    bool over = e->level_known && above(in[EMERGENCY_NOW], e->change.window.borne);
    bool none =
        change_says(e, HW_CHANGE_NOTE_ALREADY_ABOVE) || change_says(e, HW_CHANGE_NOTE_NEW_ENOUGH);
    if (e->level_slip) {
        return note_bit(HW_EMERGENCY_NOTE_ACT_LEVEL_SLIP);
    }
    return note_if(over, HW_EMERGENCY_NOTE_ACT_OVER_CEILING) |
           note_if(none, HW_EMERGENCY_NOTE_ACT_MEDICINE_OVER);
}

static unsigned held_by(const struct emergency *e)
{
    return e->medicine & ~(unsigned)(MEDICINE_NONE | MEDICINE_BINDER);
}

/* Of several medicines, or of one whose amount is not told. */
static uint64_t plain_acts(const struct emergency *e)
{
    unsigned held = held_by(e);
    unsigned plain = held & ~(unsigned)(MEDICINE_FORMALIN | MEDICINE_DYE);
    bool several = (held & (held - 1)) != 0; /* more than one bit */
    return note_if((held & MEDICINE_FORMALIN) != 0, HW_EMERGENCY_NOTE_ACT_FORMALIN) |
           note_if((held & MEDICINE_DYE) != 0, HW_EMERGENCY_NOTE_ACT_DYE) |
           note_if(plain != 0, HW_EMERGENCY_NOTE_ACT_MEDICINE) |
           note_if(several && e->levels_given, HW_EMERGENCY_NOTE_ACT_SEVERAL);
}

/* What the new water is to hold. */
static uint64_t medicine_acts(const struct emergency *e, const double in[])
{
    bool fresh_copper = (held_by(e) & MEDICINE_COPPER) != 0 &&
                        below_limit(in[EMERGENCY_SALINITY], HW_LIMIT_COPPER_FRESH_BELOW);
    uint64_t level = level_acts(e, in);
    uint64_t amount = amount_notes(e);
    uint64_t ends =
        note_bit(HW_EMERGENCY_NOTE_ACT_LEVEL_SLIP) | note_bit(HW_EMERGENCY_NOTE_ACT_MEDICINE_OVER);
    if (withheld(e) != 0 || (level & ends) != 0) {
        return level;
    }
    if (fresh_copper) {
        return level | note_bit(HW_EMERGENCY_NOTE_ACT_COPPER_FRESH);
    }
    return level | (amount != 0 ? amount : plain_acts(e));
}

/* Whether ammonia may be bound first: the strongest reason against it, or on what terms. */
static uint64_t binder_act(const struct emergency *e)
{
    const struct {
        bool holds;
        unsigned note;
    } first[] = {
        {e->bans.copper, HW_EMERGENCY_NOTE_ACT_BINDER_COPPER},
        {e->bans.dye, HW_EMERGENCY_NOTE_ACT_BINDER_DYE},
        {e->bans.oxygen, HW_EMERGENCY_NOTE_ACT_BINDER_OXYGEN},
        {(e->medicine & MEDICINE_BINDER) != 0, HW_EMERGENCY_NOTE_ACT_BINDER_AGAIN},
        {(e->medicine & MEDICINE_FORMALIN) != 0, HW_EMERGENCY_NOTE_ACT_BINDER_FORMALIN},
        {(e->medicine & (MEDICINE_COPPER_CHELATED | MEDICINE_OTHER)) != 0,
         HW_EMERGENCY_NOTE_ACT_BINDER_LABEL},
        {e->water == EMERGENCY_GOOD || e->half_under, HW_EMERGENCY_NOTE_ACT_BINDER},
    };
    for (size_t i = 0; i < sizeof first / sizeof first[0]; i++) {
        if (first[i].holds) {
            return note_bit(first[i].note);
        }
    }
    return note_bit(HW_EMERGENCY_NOTE_ACT_BINDER_FIRST);
}

static uint64_t nitrite_acts(const struct emergency *e, const double in[])
{
    bool mild = in[EMERGENCY_NITRITE] > 0 && !e->deadly;
    bool alone = !(e->tan_n > 0);
    bool both = both_kill(e);
    return note_if(e->deadly && !both, HW_EMERGENCY_NOTE_ACT_NITRITE_DEADLY) |
           note_if(both, HW_EMERGENCY_NOTE_ACT_NITRITE_BOTH) |
           note_if(mild && !alone, HW_EMERGENCY_NOTE_ACT_NITRITE_TOO) |
           note_if(mild && alone, HW_EMERGENCY_NOTE_ACT_NITRITE);
}

static uint64_t standing(const struct emergency *e, const double in[])
{
    bool medicine = (e->medicine & ~(unsigned)MEDICINE_NONE) != 0;
    return note_if(medicine, HW_EMERGENCY_NOTE_ACT_KIT) |
           note_if(!below_limit(in[EMERGENCY_TAN], HW_LIMIT_KIT_END),
                   HW_EMERGENCY_NOTE_ACT_KIT_END);
}

uint64_t emergency_acts(const struct emergency *e, const double in[])
{
    bool binds = e->tan_n > 0 && !needs_none(e);
    uint64_t no_dose = withheld(e);
    uint64_t notes =
        first_acts(e, in) | no_dose | change_acts(e) | nitrite_acts(e, in) | standing(e, in) |
        note_if(no_dose != 0, HW_EMERGENCY_NOTE_ACT_ASK_AGAIN) |
        note_if(e->unnamed, HW_EMERGENCY_NOTE_MEDICINE_NONE_LEVEL) |
        note_if(below_limit(e->hours_again, HW_LIMIT_REACHED_SOON), HW_EMERGENCY_NOTE_ACT_AGAIN);
    if (binds && !e->unnamed) {
        notes |= binder_act(e);
    }
    if (binds || in[EMERGENCY_NITRITE] > 0) {
        notes |= match_act(in) | medicine_acts(e, in);
    }
    return notes;
}
