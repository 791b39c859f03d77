/* medicine_kind.h - what is known of a kind of medicine: its floor and ceiling, and the water in
 * which it is withheld. Each rule stands here once, for all calculations that bring a medicine to a
 * level. */
#ifndef HW_MEDICINE_KIND_H
#define HW_MEDICINE_KIND_H
#include "calc/shared.h"

#include <stdbool.h>

/* clang-format off */
enum medicine_kind {
    KIND_IONIC, KIND_AMINE, KIND_CHELATED, KIND_DYE, KIND_FORMALIN, KIND_OTHER,
    KIND_UNSAID /* not given: nothing is known but what the keeper says */
};
/* clang-format on */

enum { KINDS_OF_COPPER = 1u << KIND_IONIC | 1u << KIND_AMINE | 1u << KIND_CHELATED };

/* One medicine as it was asked for; levels in mg/L of what is active, of formalin formaldehyde.
 * NaN: not given. */
struct medicine {
    enum medicine_kind kind;
    bool to_pour;          /* false: it is in the water already, and nothing can be withheld */
    bool biofilter;        /* shares the water */
    double floor, ceiling; /* as given */
    double salinity, temp; /* g/kg, C */
    double level;          /* the highest that the water comes to, or is at */
    double rise_a_day;     /* mg/L */
};

/* What holds for it: what was given, within what the table allows, else the table's; NaN where
 * neither knows. */
struct medicine_window {
    double floor, ceiling;
    double usual; /* the ceiling of the table alone */
    double borne; /* the ceiling, or without a sound one what is known of that copper */
    double stay;  /* what may be left in the water: none is known of copper in fresh water */
};

struct medicine_window medicine_window(const struct medicine *medicine);

/* What is said of a medicine. Each calculation has a table of its own notes in this order. */
enum medicine_note {
    MEDICINE_CEILING_NEEDED, /* refused */
    MEDICINE_FLOOR_OVER_CEILING,
    MEDICINE_OVER_CEILING, /* withheld */
    MEDICINE_FORMALIN_OVER,
    MEDICINE_CEILING_TOO_HIGH,
    MEDICINE_CEILING_SLIP,
    MEDICINE_COPPER_IN_FRESH,
    MEDICINE_DYE_BIOFILTER,
    MEDICINE_DYE_OVER,
    MEDICINE_CEILING_OVER_USUAL, /* raised */
    MEDICINE_CEILING_OVER_KNOWN,
    MEDICINE_CEILING_UNSAID,
    MEDICINE_COPPER_FRESH_NOW, /* it is in there already */
    MEDICINE_COPPER_BRACKISH,
    MEDICINE_COPPER_RAMP,
    MEDICINE_CHELATED_RAMP,
    MEDICINE_DYE_IN_FILTER, /* already, too */
    MEDICINE_DYE_HIGH,
    MEDICINE_NOTES
};

/* The notes that leave no answer, and the others, as bits: note_of[] holds the calculation's own
 * note for each, NO_NOTE where the calculation cannot come to it. */
uint64_t medicine_no_answer(const struct medicine *medicine, const unsigned note_of[]);
uint64_t medicine_cautions(const struct medicine *medicine, const unsigned note_of[]);
#endif
