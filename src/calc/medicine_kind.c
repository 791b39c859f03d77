/* medicine_kind.c - floors, ceilings and withheld rules by the kind of medicine. */
#include "calc/medicine_kind.h"

#include "holdwater/formalin.h"

#include <math.h>

/* What each kind has; HW_LIMITS in place of a row of data/limits.tsv: none. A ceiling that is given
 * must lie below `below`; one above `known` is told. `asked`: the table has no ceiling, so that one
 * must be given. `loose`: copper that its water holds but weakly. */
static const struct kind {
    bool copper, loose, asked;
    enum hw_limit_key floor, ceiling, below, known;
} kinds[] = {
    [KIND_IONIC] = {true, true, false, HW_LIMIT_COPPER_IONIC_LOW, HW_LIMIT_COPPER_IONIC_HIGH,
                    HW_LIMIT_COPPER_IONIC_MOST, HW_LIMITS},
    [KIND_AMINE] = {true, true, true, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMIT_COPPER_AMINE_KNOWN},
    [KIND_CHELATED] = {true, false, true, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                       HW_LIMIT_COPPER_CHELATED_KNOWN},
    [KIND_DYE] = {false, false, false, HW_LIMITS, HW_LIMIT_DYE_MOST, HW_LIMITS, HW_LIMITS},
    [KIND_FORMALIN] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                       HW_LIMITS}, /* by temperature */
    [KIND_OTHER] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS},
    [KIND_UNSAID] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS},
};

static double row_or_none(enum hw_limit_key row)
{
    return row == HW_LIMITS ? (double)NAN : hw_limits[row].value;
}

/* Formalin has its ceiling by temperature, in mg of solution. */
static double usual_ceiling(const struct medicine *medicine)
{
    if (medicine->kind != KIND_FORMALIN) {
        return row_or_none(kinds[medicine->kind].ceiling);
    }
    bool warm = above_limit(medicine->temp, HW_LIMIT_FORMALIN_WARM_FROM);
    double formaldehyde = NAN;
    hw_formalin_to_formaldehyde(
        HW_FORMALIN_SOLUTION_MG,
        hw_limits[warm ? HW_LIMIT_FORMALIN_WARM : HW_LIMIT_FORMALIN_BATH].value, &formaldehyde);
    return formaldehyde;
}

/* Ionic copper alone may be brought above the table's ceiling, and only below its bound. */
static bool is_too_high(const struct medicine *medicine)
{
    double bound = row_or_none(kinds[medicine->kind].below);
    return !isnan(medicine->ceiling) && !isnan(bound) && !below(medicine->ceiling, bound);
}

struct medicine_window medicine_window(const struct medicine *medicine)
{
    struct medicine_window window = {medicine->floor, medicine->ceiling, usual_ceiling(medicine)};
    bool may_exceed = medicine->kind == KIND_IONIC && !is_too_high(medicine);
    if (isnan(window.ceiling) || !may_exceed) {
        window.ceiling = fmin(window.ceiling, window.usual); /* of a number and none, the number */
    }
    if (isnan(window.floor)) {
        double floor = row_or_none(kinds[medicine->kind].floor);
        window.floor = above(floor, window.ceiling) ? (double)NAN : floor;
    }
    return window;
}

static bool is_copper(const struct medicine *medicine)
{
    return kinds[medicine->kind].copper;
}

static uint64_t withheld(const struct medicine *medicine, const unsigned note_of[])
{
    struct medicine_window window = medicine_window(medicine);
    bool over = above(medicine->level, window.ceiling) && !is_too_high(medicine);
    bool dye = medicine->kind == KIND_DYE;
    bool formalin = medicine->kind == KIND_FORMALIN;
    bool over_dye = dye && above_limit(medicine->level, HW_LIMIT_DYE_MOST);
    return note_if(over && !formalin && !over_dye, note_of[MEDICINE_OVER_CEILING]) |
           note_if(over && formalin, note_of[MEDICINE_FORMALIN_OVER]) |
           note_if(over_dye, note_of[MEDICINE_DYE_OVER]) |
           note_if(is_too_high(medicine), note_of[MEDICINE_CEILING_TOO_HIGH]) |
           note_if(is_copper(medicine) &&
                       below_limit(medicine->salinity, HW_LIMIT_COPPER_FRESH_BELOW),
                   note_of[MEDICINE_COPPER_IN_FRESH]) |
           note_if(dye && medicine->biofilter, note_of[MEDICINE_DYE_BIOFILTER]);
}

uint64_t medicine_no_answer(const struct medicine *medicine, const unsigned note_of[])
{
    struct medicine_window window = medicine_window(medicine);
    uint64_t notes =
        note_if(above(window.floor, window.ceiling), note_of[MEDICINE_FLOOR_OVER_CEILING]);
    if (medicine->to_pour) {
        notes |= note_if(kinds[medicine->kind].asked && isnan(window.ceiling),
                         note_of[MEDICINE_CEILING_NEEDED]) |
                 withheld(medicine, note_of);
    }
    return notes;
}

static uint64_t ceiling_cautions(const struct medicine *medicine, const unsigned note_of[])
{
    struct medicine_window window = medicine_window(medicine);
    double known = row_or_none(kinds[medicine->kind].known);
    return note_if(above(medicine->ceiling, window.usual), note_of[MEDICINE_CEILING_OVER_USUAL]) |
           note_if(above(medicine->ceiling, known), note_of[MEDICINE_CEILING_OVER_KNOWN]) |
           note_if(isnan(window.ceiling), note_of[MEDICINE_CEILING_UNSAID]);
}

uint64_t medicine_cautions(const struct medicine *medicine, const unsigned note_of[])
{
    struct medicine_window window = medicine_window(medicine);
    double a_day = fmin(window.ceiling, window.usual) / hw_limits[HW_LIMIT_COPPER_RAMP_DAYS].value;
    bool ramp = kinds[medicine->kind].loose && above(medicine->rise_a_day, a_day);
    return ceiling_cautions(medicine, note_of) |
           note_if(is_copper(medicine) && below_limit(medicine->salinity, HW_LIMIT_COPPER_SALINITY),
                   note_of[MEDICINE_COPPER_BRACKISH]) |
           note_if(medicine->to_pour && ramp, note_of[MEDICINE_COPPER_RAMP]) |
           note_if(medicine->kind == KIND_DYE && above_limit(medicine->level, HW_LIMIT_DYE_FILTER),
                   note_of[MEDICINE_DYE_HIGH]);
}
