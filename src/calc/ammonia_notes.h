/* ammonia_notes.h - which notes an ammonia reading raises; shared by `answer` and `block`, which
 * ask it of every row. Conditions are joined without branches, so that a loop over rows can become
 * vectors. */
#ifndef HW_AMMONIA_NOTES_H
#define HW_AMMONIA_NOTES_H
#include "calc/ammonia_sample.h"
#include "core/ammonia_kernel.h"

#include <assert.h>

/* Notes as a sum of powers of two, as a double: numbers that every machine's vectors can choose and
 * add, and exact, as no two are the same. */
static_assert(HW_AMMONIA_NOTES <= 52, "a double holds every sum of them");

static inline double note_where(bool condition, unsigned note)
{
    return condition ? (double)note_bit(note) : 0.0;
}

/* The same as bits: below 2^52 they are the low ones of the sum with 2^52. */
static inline uint64_t notes_in(double sum)
{
    return hw_bits_of(sum + 0x1p52) & (UINT64_MAX >> 12);
}

/* By the medicines in the water, or because nobody says. */
static inline uint64_t medicine_notes(double medicine)
{
    if (isnan(medicine)) {
        return note_bit(HW_AMMONIA_NOTE_MEDICINE_UNSAID) |
               note_bit(HW_AMMONIA_NOTE_BOUND_BY_BINDER);
    }
    uint64_t set = (uint64_t)medicine;
    return note_if(set & MEDICINE_COPPER, HW_AMMONIA_NOTE_TEST_COPPER) |
           note_if(set & MEDICINE_DYE, HW_AMMONIA_NOTE_TEST_DYE) |
           note_if(set & MEDICINE_FORMALIN, HW_AMMONIA_NOTE_TEST_FORMALIN) |
           note_if(set & MEDICINE_ANTIBIOTIC, HW_AMMONIA_NOTE_TEST_ANTIBIOTIC) |
           note_if(set & MEDICINE_BINDER, HW_AMMONIA_NOTE_TEST_BINDER) |
           note_if(set & MEDICINE_OTHER, HW_AMMONIA_NOTE_TEST_OTHER) |
           note_if(!(set & MEDICINE_BINDER), HW_AMMONIA_NOTE_BOUND_BY_BINDER);
}

/* How a reading stands to the figures that notes hang on: by above_limit and below_limit. */
struct ammonia_stands {
    bool act;     /* the total, to what calls for action today */
    bool at_end;  /* what was read, to the end of the kit's card */
    bool sour;    /* the pH on a meter's scale, to that of a sour tank */
    bool at_jump; /* the salinity, to where other limits begin */
};

/* How far a salinity is from where other limits begin. */
static inline double from_jump(double salinity)
{
    double to_fresh = fabs(salinity - hw_limits[HW_LIMIT_FRESH_BELOW].value);
    double to_salt = fabs(salinity - hw_limits[HW_LIMIT_SALT_FROM].value);
    return to_fresh < to_salt ? to_fresh : to_salt;
}

/* What ratios are to, where they are to the published limits, by which of them apply. */
static inline double published_notes(const struct ammonia_stands *stands, bool salt, bool fresh)
{
    return note_where(salt, HW_AMMONIA_NOTE_RATIO_SALT) +
           note_where(fresh, HW_AMMONIA_NOTE_RATIO_FRESH) +
           note_where(salt && fresh, HW_AMMONIA_NOTE_RATIO_STRICTER) +
           note_where(stands->at_jump, HW_AMMONIA_NOTE_CRITERIA_JUMP);
}

/* By the reading, as it was written and in the tank, and by where the formulas were fitted. */
static inline double reading_notes(const struct ammonia_sample *s, double tan,
                                   const struct ammonia_stands *stands)
{
    bool any = s->total_n > 0;
    bool calm = !stands->act;
    bool read = !isnan(tan);
    /* below that pH any total above a limit for days is above what to act on today, too */
    bool sour = stands->act & stands->sour;
    return note_where(!read, HW_AMMONIA_NOTE_TAN_UNSAID) +
           note_where(read & stands->at_end, HW_AMMONIA_NOTE_KIT_END) +
           note_where(sour, HW_AMMONIA_NOTE_SOUR_TANK) +
           note_where(stands->act, HW_AMMONIA_NOTE_ACT_TODAY) +
           note_where(any & calm, HW_AMMONIA_NOTE_ANY_AMMONIA) +
           note_where(s->fit_stretched, HW_AMMONIA_NOTE_FIT_STRETCHED) +
           note_where(s->criteria_stretched, HW_AMMONIA_NOTE_CRITERIA_STRETCHED);
}
#endif
