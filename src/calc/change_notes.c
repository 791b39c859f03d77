/* change_notes.c - what water changes say besides numbers. */
#include "calc/change_rounds.h"
#include "tables.h"

#include <math.h>

/* The notes of the kind, in the order of enum medicine_note. */
static const unsigned note_of[MEDICINE_NOTES] = {
    [MEDICINE_CEILING_NEEDED] = HW_CHANGE_NOTE_CEILING_NEEDED,
    [MEDICINE_FLOOR_OVER_CEILING] = HW_CHANGE_NOTE_FLOOR_OVER_CEILING,
    [MEDICINE_OVER_CEILING] = HW_CHANGE_NOTE_KEEP_OVER_CEILING,
    [MEDICINE_FORMALIN_OVER] = NO_NOTE, /* no kind here */
    [MEDICINE_CEILING_TOO_HIGH] = HW_CHANGE_NOTE_CEILING_TOO_HIGH,
    [MEDICINE_CEILING_SLIP] = HW_CHANGE_NOTE_CEILING_SLIP,
    [MEDICINE_COPPER_IN_FRESH] = HW_CHANGE_NOTE_COPPER_IN_FRESH,
    [MEDICINE_DYE_BIOFILTER] = HW_CHANGE_NOTE_DYE_BIOFILTER,
    [MEDICINE_DYE_OVER] = HW_CHANGE_NOTE_DYE_OVER,
    [MEDICINE_CEILING_OVER_USUAL] = HW_CHANGE_NOTE_CEILING_OVER_USUAL,
    [MEDICINE_CEILING_OVER_KNOWN] = HW_CHANGE_NOTE_CEILING_OVER_KNOWN,
    [MEDICINE_CEILING_UNSAID] = HW_CHANGE_NOTE_CEILING_UNSAID,
    [MEDICINE_COPPER_FRESH_NOW] = HW_CHANGE_NOTE_COPPER_FRESH_NOW,
    [MEDICINE_COPPER_BRACKISH] = HW_CHANGE_NOTE_COPPER_BRACKISH,
    [MEDICINE_COPPER_RAMP] = HW_CHANGE_NOTE_COPPER_RAMP,
    [MEDICINE_CHELATED_RAMP] = HW_CHANGE_NOTE_COPPER_RAMP_CHELATED,
    [MEDICINE_DYE_IN_FILTER] = HW_CHANGE_NOTE_DYE_IN_FILTER,
    [MEDICINE_DYE_HIGH] = HW_CHANGE_NOTE_DYE_LEVEL_HIGH,
};

/* No size without a goal, or with what hangs on a size. */
static bool size_is_unclear(const struct change_rounds *change, const double in[])
{
    bool wanted = isnan(in[CHANGE_GOAL]) || change->rounds > 1 || !isnan(in[CHANGE_KEEP]);
    return change->by_goal && wanted;
}

/* Strength and label, half a label, or one that makes no product. */
static bool product_is_unclear(const struct change_rounds *change, const double in[])
{
    int given = product_label_given(&change->label);
    bool whole = product_label_whole(&change->label) && isnan(in[CHANGE_STRENGTH]);
    return (given > 0 && !whole) || product_label_unlikely(&change->label);
}

/* What is added, of the new water of a round. */
static double percent_of_new(const struct change_rounds *change)
{
    return poured_percent(change->liquid, change->mass, change->water);
}

/* The notes that leave no answer. */
static uint64_t refusals(const struct change_rounds *change, const double in[])
{
    bool batch = change->method == HW_CHANGE_BATCH;
    bool too_much = !change->by_goal && isnan(change->kept);
    bool beyond = change->by_goal && isnan(change->exchange_needed);
    bool unclear = size_is_unclear(change, in);
    double ceiling = change->window.ceiling;
    bool too_strong = above(change->new_needed, ceiling) && !above(in[CHANGE_KEEP], ceiling);
    return note_if(unclear, HW_CHANGE_NOTE_HOW_MUCH) |
           note_if(too_much && batch, HW_CHANGE_NOTE_MORE_THAN_ALL) |
           note_if(too_much && !batch, HW_CHANGE_NOTE_FLOW_TOO_LONG) |
           note_if(beyond && !unclear, HW_CHANGE_NOTE_GOAL_BEYOND) |
           note_if(product_is_unclear(change, in), HW_CHANGE_NOTE_PRODUCT_UNCLEAR) |
           note_if(too_strong, HW_CHANGE_NOTE_NEW_TOO_STRONG) |
           note_if(above(change->new_level, change->window.borne),
                   HW_CHANGE_NOTE_NEW_OVER_CEILING) |
           note_if(above_limit(percent_of_new(change), HW_LIMIT_POUR_MOST),
                   HW_CHANGE_NOTE_POUR_TOO_LARGE) |
           medicine_no_answer(&change->medicine, note_of);
}

/* With keep the levels are those of a medicine that is forgotten; with a goal below the floor the
 * medicine is meant to go. */
static uint64_t floor_notes(const struct change_rounds *change, const double in[])
{
    double floor = change->window.floor;
    bool low = below(change->lowest, floor);
    bool ends_low = below(change->after, floor);
    if (!isnan(in[CHANGE_KEEP])) {
        return note_if(low, HW_CHANGE_NOTE_FORGOTTEN_FLOOR) |
               note_if(below(in[CHANGE_KEEP], floor), HW_CHANGE_NOTE_UNDER_FLOOR);
    }
    if (below(in[CHANGE_GOAL], floor)) {
        return 0;
    }
    return note_if(low, HW_CHANGE_NOTE_BELOW_FLOOR) |
           note_if(ends_low, HW_CHANGE_NOTE_ENDS_BELOW_FLOOR);
}

static uint64_t level_notes(const struct change_rounds *change, const double in[])
{
    double exchanged = change->by_goal ? change->exchange_needed : change->exchanged;
    bool large =
        change->method == HW_CHANGE_BATCH && above_limit(100 * exchanged, HW_LIMIT_CHANGE_LARGE);
    bool missing = isnan(change->exchange_needed) || isnan(change->rounds_needed);
    return note_if(above(change->after, change->window.borne), HW_CHANGE_NOTE_ENDS_ABOVE_CEILING) |
           note_if(above(change->now, change->window.borne), HW_CHANGE_NOTE_ABOVE_CEILING) |
           note_if(large, HW_CHANGE_NOTE_CHANGE_LARGE) |
           note_if(!isnan(in[CHANGE_GOAL]) && missing, HW_CHANGE_NOTE_GOAL_UNREACHABLE);
}

static uint64_t dose_notes(const struct change_rounds *change, const double in[])
{
    bool product = !isnan(change->strength) || !isnan(change->share);
    bool plain_leaves_more = below(change->new_needed, 0);
    if (isnan(in[CHANGE_KEEP])) {
        return note_if(product, HW_CHANGE_NOTE_KEEP_UNSAID);
    }
    return note_if(!isnan(change->add), HW_CHANGE_NOTE_PRE_DOSE) |
           note_bit(HW_CHANGE_NOTE_TEST_LEVEL) |
           note_if(plain_leaves_more, HW_CHANGE_NOTE_ALREADY_ABOVE) |
           note_if(!plain_leaves_more && isnan(change->add), HW_CHANGE_NOTE_NEW_ENOUGH) |
           note_if(change->rounds > 1, HW_CHANGE_NOTE_LATER_ROUNDS) |
           note_if(above_limit(percent_of_new(change), HW_LIMIT_POUR_LARGE),
                   HW_CHANGE_NOTE_POUR_LARGE) |
           note_if(below_limit(change->liquid, HW_LIMIT_DRAW_LEAST), HW_CHANGE_NOTE_SMALL_LIQUID) |
           note_if(below_limit(change->mass, HW_LIMIT_WEIGH_LEAST), HW_CHANGE_NOTE_WEIGH_SMALL);
}

/* Of what is in the water, whether medicine goes in or not. A ceiling is missed only where it
 * does. */
static uint64_t kind_notes(const struct change_rounds *change)
{
    struct medicine medicine = change->medicine;
    medicine.level = change->highest;
    uint64_t notes = medicine_cautions(&medicine, note_of);
    return medicine.to_pour ? notes : notes & ~note_bit(HW_CHANGE_NOTE_CEILING_UNSAID);
}

uint64_t change_notes(const struct change_rounds *change, const double in[])
{
    uint64_t no_answer = refusals(change, in);
    if (no_answer != 0) {
        return no_answer;
    }
    return floor_notes(change, in) | level_notes(change, in) | dose_notes(change, in) |
           kind_notes(change);
}
