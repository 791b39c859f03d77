/* emergency_acts.c - what is to be done, in order. Each act is one note; none is told that a rule
 * of another calculation withholds. */
#include "calc/emergency_facts.h"
#include "tables.h"

#include <math.h>

static bool needs_none(const struct emergency *e)
{
    return e->both_known && e->blend.settled;
}

/* What is not known yet, and what speaks against ammonia as the cause. */
static uint64_t first_acts(const struct emergency *e, const double in[])
{
    bool some = e->tan_n > 0;
    bool unmeasured = isnan(in[EMERGENCY_VOLUME]) || isnan(e->long_ratio);
    bool new_unknown = some && !unmeasured && !e->both_known && !e->readings_odd;
    bool under = some && !isnan(e->long_ratio) && !above(e->long_ratio, 1);
    return note_bit(HW_EMERGENCY_NOTE_ACT_AIR) |
           note_if(unmeasured, HW_EMERGENCY_NOTE_ACT_MEASURE) |
           note_if(new_unknown, HW_EMERGENCY_NOTE_ACT_MEASURE_NEW) |
           note_if(e->readings_odd, HW_EMERGENCY_NOTE_ACT_READINGS) |
           note_if(!some, HW_EMERGENCY_NOTE_ACT_NO_AMMONIA) |
           note_if(needs_none(e), HW_EMERGENCY_NOTE_ACT_NO_CHANGE) |
           note_if(under, HW_EMERGENCY_NOTE_ACT_UNDER);
}

/* The share that is needed is known: with water that holds no ammonia there always is one. */
static uint64_t known_change(const struct emergency *e)
{
    bool sour = e->water == EMERGENCY_SOUR;
    if (needs_none(e)) {
        return 0;
    }
    if (e->hand == EMERGENCY_HAND_WORSE) {
        return note_bit(HW_EMERGENCY_NOTE_ACT_HAND_WORSE);
    }
    return note_if(sour, HW_EMERGENCY_NOTE_ACT_CHANGE_SOUR) |
           note_if(!sour, HW_EMERGENCY_NOTE_ACT_CHANGE) |
           note_if(e->hand == EMERGENCY_HAND_SHORT, HW_EMERGENCY_NOTE_ACT_HAND_SHORT);
}

/* It is not, and pH decides. */
static uint64_t unknown_change(const struct emergency *e)
{
    bool worse = e->hand == EMERGENCY_HAND_WORSE;
    return note_if(worse, HW_EMERGENCY_NOTE_ACT_HAND_WORSE) |
           note_if(e->water == EMERGENCY_SOUR, HW_EMERGENCY_NOTE_ACT_SOUR) |
           note_if(e->water == EMERGENCY_BETWEEN, HW_EMERGENCY_NOTE_ACT_BETWEEN) |
           note_if(e->water == EMERGENCY_GOOD && !worse, HW_EMERGENCY_NOTE_ACT_HALF);
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

/* What the new water is to hold. */
static uint64_t medicine_acts(const struct emergency *e, const double in[])
{
    unsigned held = e->medicine & ~(unsigned)(MEDICINE_NONE | MEDICINE_BINDER);
    bool fresh_copper = (held & MEDICINE_COPPER) != 0 &&
                        below_limit(in[EMERGENCY_SALINITY], HW_LIMIT_COPPER_FRESH_BELOW);
    bool over = change_says(e, HW_CHANGE_NOTE_ABOVE_CEILING) ||
                change_says(e, HW_CHANGE_NOTE_ALREADY_ABOVE);
    bool formalin = (held & MEDICINE_FORMALIN) != 0;
    bool dye = (held & MEDICINE_DYE) != 0;
    uint64_t amount = amount_notes(e);
    if (withheld(e) != 0 || held == 0) {
        return 0;
    }
    if (fresh_copper) {
        return note_bit(HW_EMERGENCY_NOTE_ACT_COPPER_FRESH);
    }
    if (over) {
        return note_bit(HW_EMERGENCY_NOTE_ACT_MEDICINE_OVER);
    }
    bool plain = amount == 0 && !formalin && !dye;
    return amount | note_if(formalin, HW_EMERGENCY_NOTE_ACT_FORMALIN) |
           note_if(dye, HW_EMERGENCY_NOTE_ACT_DYE) | note_if(plain, HW_EMERGENCY_NOTE_ACT_MEDICINE);
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
        {e->water == EMERGENCY_GOOD, HW_EMERGENCY_NOTE_ACT_BINDER},
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
    double nitrite = in[EMERGENCY_NITRITE];
    bool some = nitrite > 0;
    bool deadly = !below_limit(nitrite, HW_LIMIT_NITRITE_EFFECT) && some;
    bool alone = !(e->tan_n > 0);
    return note_if(some && !alone, HW_EMERGENCY_NOTE_ACT_NITRITE_TOO) |
           note_if(alone && deadly, HW_EMERGENCY_NOTE_ACT_NITRITE_DEADLY) |
           note_if(alone && some && !deadly, HW_EMERGENCY_NOTE_ACT_NITRITE);
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
    bool some = e->tan_n > 0;
    bool water_goes_in = (some || in[EMERGENCY_NITRITE] > 0) && !needs_none(e);
    uint64_t notes =
        first_acts(e, in) | withheld(e) | nitrite_acts(e, in) | standing(e, in) |
        note_if(below_limit(e->hours_again, HW_LIMIT_REACHED_SOON), HW_EMERGENCY_NOTE_ACT_AGAIN);
    if (some) {
        notes |= e->both_known ? known_change(e) : unknown_change(e);
    }
    if (some && !needs_none(e)) {
        notes |= binder_act(e);
    }
    if (water_goes_in) {
        notes |= match_act(in) | medicine_acts(e, in);
    }
    return notes;
}
