/* medicine_kind.c - floors, ceilings and withheld rules by the kind of medicine. */
#include "calc/medicine_kind.h"

#include "holdwater/formalin.h"

#include <math.h>

/* What each kind has; HW_LIMITS in place of a row of data/limits.tsv: none. A ceiling that is given
 * must lie below `below`; one above `known` is told, and one above `slip` is none. `stay`: the most
 * that is left in the water, where the ceiling is that of a short time. `asked`: the table has no
 * ceiling, so that one must be given. `loose`: copper that its water holds but weakly. */
static const struct kind {
    bool copper, loose, asked;
    enum hw_limit_key floor, ceiling, below, known, slip, stay;
} kinds[] = {
    [KIND_IONIC] = {true, true, false, HW_LIMIT_COPPER_IONIC_LOW, HW_LIMIT_COPPER_IONIC_HIGH,
                    HW_LIMIT_COPPER_IONIC_MOST, HW_LIMITS, HW_LIMITS, HW_LIMITS},
    [KIND_AMINE] = {true, true, true, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMIT_COPPER_AMINE_KNOWN,
                    HW_LIMIT_COPPER_AMINE_SLIP, HW_LIMITS},
    [KIND_CHELATED] = {true, false, true, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                       HW_LIMIT_COPPER_CHELATED_KNOWN, HW_LIMIT_COPPER_CHELATED_SLIP, HW_LIMITS},
    [KIND_DYE] = {false, false, false, HW_LIMITS, HW_LIMIT_DYE_MOST, HW_LIMITS, HW_LIMITS,
                  HW_LIMITS, HW_LIMIT_DYE_FILTER},
    [KIND_FORMALIN] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                       HW_LIMITS}, /* by temperature, in mg of solution */
    [KIND_OTHER] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                    HW_LIMITS},
    [KIND_UNSAID] = {false, false, false, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS, HW_LIMITS,
                     HW_LIMITS},
};

static double row_or_none(enum hw_limit_key row)
{
    return row == HW_LIMITS ? (double)NAN : hw_limits[row].value;
}

/* Of a row in mg of formalin solution. */
static double formaldehyde_of(enum hw_limit_key row)
{
    double formaldehyde = NAN;
    hw_formalin_to_formaldehyde(HW_FORMALIN_SOLUTION_MG, hw_limits[row].value, &formaldehyde);
    return formaldehyde;
}

/* Formalin has its ceiling by temperature. */
static double usual_ceiling(const struct medicine *medicine)
{
    if (medicine->kind != KIND_FORMALIN) {
        return row_or_none(kinds[medicine->kind].ceiling);
    }
    bool warm = above_limit(medicine->temp, HW_LIMIT_FORMALIN_WARM_FROM);
    return formaldehyde_of(warm ? HW_LIMIT_FORMALIN_WARM : HW_LIMIT_FORMALIN_BATH);
}

/* Ionic copper alone may be brought above the table's ceiling, and only below its bound. */
static bool is_too_high(const struct medicine *medicine)
{
    double bound = row_or_none(kinds[medicine->kind].below);
    return !isnan(medicine->ceiling) && !isnan(bound) && !below(medicine->ceiling, bound);
}

/* So far above what is known that it is more likely a thousandfold slip of the unit. */
static bool is_slip(const struct medicine *medicine)
{
    return above(medicine->ceiling, row_or_none(kinds[medicine->kind].slip));
}

static bool is_copper(const struct medicine *medicine)
{
    return kinds[medicine->kind].copper;
}

static bool is_in_fresh(const struct medicine *medicine)
{
    return is_copper(medicine) && below_limit(medicine->salinity, HW_LIMIT_COPPER_FRESH_BELOW);
}

/* A ceiling of formalin is that of an hour; of copper in fresh water alkalinity decides, which is
 * not asked for. */
static double may_stay(const struct medicine *medicine, double borne)
{
    if (is_in_fresh(medicine)) {
        return (double)NAN;
    }
    return fmin(borne, medicine->kind == KIND_FORMALIN ? formaldehyde_of(HW_LIMIT_FORMALIN_STAY)
                                                       : row_or_none(kinds[medicine->kind].stay));
}

struct medicine_window medicine_window(const struct medicine *medicine)
{
    struct medicine_window window = {
        .floor = medicine->floor, .ceiling = medicine->ceiling, .usual = usual_ceiling(medicine)};
    bool may_exceed = medicine->kind == KIND_IONIC && !is_too_high(medicine);
    if (isnan(window.ceiling) || !may_exceed) {
        window.ceiling = fmin(window.ceiling, window.usual); /* of a number and none, the number */
    }
    if (is_in_fresh(medicine)) {
        window.floor = NAN; /* nobody is sent on to more of it there */
    } else if (isnan(window.floor)) {
        double floor = row_or_none(kinds[medicine->kind].floor);
        window.floor = above(floor, window.ceiling) ? (double)NAN : floor;
    }
    bool sound = !isnan(window.ceiling) && !is_slip(medicine);
    window.borne = sound ? window.ceiling : row_or_none(kinds[medicine->kind].known);
    window.stay = may_stay(medicine, window.borne);
    return window;
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
           note_if(is_slip(medicine), note_of[MEDICINE_CEILING_SLIP]) |
           note_if(is_in_fresh(medicine), note_of[MEDICINE_COPPER_IN_FRESH]) |
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

static uint64_t copper_cautions(const struct medicine *medicine, const unsigned note_of[])
{
    struct medicine_window window = medicine_window(medicine);
    double a_day = fmin(window.ceiling, window.usual) / hw_limits[HW_LIMIT_COPPER_RAMP_DAYS].value;
    bool ramp = medicine->to_pour && above(medicine->rise_a_day, a_day);
    bool loose = kinds[medicine->kind].loose;
    bool fresh = is_in_fresh(medicine);
    return note_if(fresh && medicine->level > 0, note_of[MEDICINE_COPPER_FRESH_NOW]) |
           note_if(!fresh && below_limit(medicine->salinity, HW_LIMIT_COPPER_SALINITY),
                   note_of[MEDICINE_COPPER_BRACKISH]) |
           note_if(ramp && loose, note_of[MEDICINE_COPPER_RAMP]) |
           note_if(ramp && !loose, note_of[MEDICINE_CHELATED_RAMP]);
}

uint64_t medicine_cautions(const struct medicine *medicine, const unsigned note_of[])
{
    bool dye = medicine->kind == KIND_DYE;
    uint64_t notes = ceiling_cautions(medicine, note_of);
    if (is_copper(medicine)) {
        notes |= copper_cautions(medicine, note_of);
    }
    return notes |
           note_if(dye && medicine->biofilter && medicine->level > 0,
                   note_of[MEDICINE_DYE_IN_FILTER]) |
           note_if(dye && above_limit(medicine->level, HW_LIMIT_DYE_FILTER),
                   note_of[MEDICINE_DYE_HIGH]);
}
