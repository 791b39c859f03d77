/* shared.h - what several calculations have in common: word lists, notes as bits, core calls in
 * expressions. */
#ifndef HW_SHARED_H
#define HW_SHARED_H
#include "calc/calc.h"
#include "holdwater/nitrogen.h"
#include "tables.h"

#include <math.h>

/* Words of inputs; the value of a word is its place. basis_words follow enum hw_nitrogen_basis. */
extern const char *const basis_words[];    /* n nh3 nh4 */
extern const char *const yes_no_words[];   /* yes no */
extern const char *const medicine_words[]; /* a set; none first */

enum { YES, NO };

/* The input `basis` of a total ammonia, the same in every table that has it without a condition. */
#define BASIS_INPUT                                                                                \
    {                                                                                              \
        .name = "basis", .unit = "", .kind = HW_CHOICE, .hi = HW_NITROGEN_NH4,                     \
        .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,                          \
        .help = "what the kit counts (its leaflet says)"                                           \
    }

/* The bits of a medicine set. Copper of a kind that is not known is treated as ionic. */
enum {
    MEDICINE_NONE = 1u << 0,
    MEDICINE_COPPER_UNKNOWN = 1u << 1,
    MEDICINE_COPPER_IONIC = 1u << 2,
    MEDICINE_COPPER_AMINE = 1u << 3,
    MEDICINE_COPPER_CHELATED = 1u << 4,
    MEDICINE_DYE = 1u << 5,
    MEDICINE_FORMALIN = 1u << 6,
    MEDICINE_ANTIBIOTIC = 1u << 7,
    MEDICINE_BINDER = 1u << 8,
    MEDICINE_OTHER = 1u << 9,
    MEDICINE_ALL = (1u << 10) - 1,
    /* Copper that is not held firmly enough for a reducing agent beside it; and all copper. */
    MEDICINE_COPPER_LOOSE = MEDICINE_COPPER_UNKNOWN | MEDICINE_COPPER_IONIC | MEDICINE_COPPER_AMINE,
    MEDICINE_COPPER = MEDICINE_COPPER_LOOSE | MEDICINE_COPPER_CHELATED
};

/* In a table of a calculation's notes: it has none for this, and note_if leaves it out. */
enum { NO_NOTE = HW_NOTES };

/* The bit of a note, and the same under a condition. */
static inline uint64_t note_bit(unsigned note)
{
    return UINT64_C(1) << note;
}

static inline uint64_t note_if(bool condition, unsigned note)
{
    /* without a branch: what a row of a file raises is hard to foretell */
    return (uint64_t)(condition & (note != NO_NOTE)) << note;
}

/* Above a limit: by more than the noise of reckoning, which is a billionth of the limit, and no
 * less than a billionth of its unit. A difference of readings, a change of units and the core's
 * iterations are wrong by less than a thousandth of that; no instrument tells so little apart. At
 * the limit is not above it. NaN is neither above nor below. What the core has no answer for, by
 * its _MIN and _MAX, is compared exactly, as the core does. */
static inline bool above(double value, double limit)
{
    double size = fabs(limit);
    return value > limit + 1e-9 * (size > 1 ? size : 1);
}

static inline bool below(double value, double limit)
{
    return above(limit, value);
}

/* The same against a row of data/limits.tsv. */
static inline bool above_limit(double value, enum hw_limit_key limit)
{
    return above(value, hw_limits[limit].value);
}

static inline bool below_limit(double value, enum hw_limit_key limit)
{
    return below(value, hw_limits[limit].value);
}

/* The value at which below_limit turns: what lies under it is below. */
static inline double just_below_limit(enum hw_limit_key limit)
{
    double value = hw_limits[limit].value;
    return value - 1e-9 * fmax(1, fabs(value));
}

/* What is poured (mL) or weighed (g) as a per cent of the water (L) that it goes into; of liquid
 * and powder the one that is not NaN. */
static inline double poured_percent(double liquid, double mass, double water)
{
    return fmax(liquid, mass) / (10 * water);
}

/* The core's conversions of a total in a basis as expressions; NaN outside the core's range. */
double nitrogen_to_n(enum hw_nitrogen_basis basis, double amount);
double nitrogen_from_n(enum hw_nitrogen_basis basis, double as_n);

/* Grams per mole of what a basis counts, for workings. */
double basis_molar(enum hw_nitrogen_basis basis);
#endif
