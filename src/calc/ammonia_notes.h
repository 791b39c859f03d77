/* ammonia_notes.h - which notes an ammonia reading raises; shared by `answer` and `block`, which
 * ask it of every row. */
#ifndef HW_AMMONIA_NOTES_H
#define HW_AMMONIA_NOTES_H
#include "calc/ammonia_sample.h"

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

/* What ratios are to, where they are to the published limits, by which of them apply. */
static inline uint64_t published_notes(double salinity, bool salt, bool fresh)
{
    double to_fresh = fabs(salinity - hw_limits[HW_LIMIT_FRESH_BELOW].value);
    double to_salt = fabs(salinity - hw_limits[HW_LIMIT_SALT_FROM].value);
    double nearest = to_fresh < to_salt ? to_fresh : to_salt;
    return note_if(salt, HW_AMMONIA_NOTE_RATIO_SALT) | note_if(fresh, HW_AMMONIA_NOTE_RATIO_FRESH) |
           note_if(salt && fresh, HW_AMMONIA_NOTE_RATIO_STRICTER) |
           note_if(below_limit(nearest, HW_LIMIT_CRITERIA_NEAR), HW_AMMONIA_NOTE_CRITERIA_JUMP);
}

/* By the reading, as it was written and in the tank, and by where the formulas were fitted. */
static inline uint64_t reading_notes(const struct ammonia_sample *s, double tan)
{
    bool act = above_limit(s->total_n, HW_LIMIT_ACT_TODAY);
    bool any = s->total_n > 0;
    bool read = !isnan(tan);
    /* below that pH any total above a limit for days is above what to act on today, too */
    bool sour = act && below_limit(s->ph_meter, HW_LIMIT_SOUR_BELOW);
    return note_if(!read, HW_AMMONIA_NOTE_TAN_UNSAID) |
           note_if(read && !below_limit(tan, HW_LIMIT_KIT_END), HW_AMMONIA_NOTE_KIT_END) |
           note_if(sour, HW_AMMONIA_NOTE_SOUR_TANK) | note_if(act, HW_AMMONIA_NOTE_ACT_TODAY) |
           note_if(any && !act, HW_AMMONIA_NOTE_ANY_AMMONIA) |
           note_if(s->fit_stretched, HW_AMMONIA_NOTE_FIT_STRETCHED) |
           note_if(s->criteria_stretched, HW_AMMONIA_NOTE_CRITERIA_STRETCHED);
}
#endif
