/* challenge_dose.h - one challenge dose as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_CHALLENGE_DOSE_H
#define HW_CHALLENGE_DOSE_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/ammonia.h"
#include "holdwater/buffer.h"
#include "holdwater/carbonate.h"
#include "holdwater/challenge.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    CHALLENGE_VOLUME, CHALLENGE_FISH, CHALLENGE_TARGET, CHALLENGE_BASIS, CHALLENGE_NOW,
    CHALLENGE_REAGENT, CHALLENGE_STRENGTH, CHALLENGE_STRENGTH_AS, CHALLENGE_CONCENTRATE_STRENGTH,
    CHALLENGE_PURITY, CHALLENGE_PH, CHALLENGE_TEMP, CHALLENGE_SALINITY, CHALLENGE_ALKALINITY,
    CHALLENGE_INPUTS
};
/* clang-format on */

/* The words of `reagent`; the first two are enum hw_challenge_salt. */
enum {
    CHALLENGE_CHLORIDE = HW_CHALLENGE_AMMONIUM_CHLORIDE,
    CHALLENGE_SULFATE = HW_CHALLENGE_AMMONIUM_SULFATE,
    CHALLENGE_SOLUTION,
    CHALLENGE_CONCENTRATE
};
enum { CHALLENGE_AS_NH3, CHALLENGE_AS_NH4OH };

/* One row, and what the core says of it. Nitrogen is what everything is counted in. */
struct challenge_dose {
    int reagent;
    enum hw_nitrogen_basis basis;
    enum hw_challenge_source dose_as;
    double now_n, dose_n, total_n;       /* mg/L: in the water, added, both */
    double nitrogen;                     /* mg to be added */
    double nh3_percent, density;         /* of ammonia solution; else NaN */
    double strength_n;                   /* g/L of a liquid; NaN for a salt */
    double mass, liquid;                 /* g or mL; the other is NaN */
    double reading[HW_NITROGEN_NH4 + 1]; /* of kits of each basis, once it is mixed */
    double nitrate, oxygen, alkalinity;
    bool sample;             /* pH, temperature and salinity are given */
    bool carbonate;          /* and the alkalinity, so that the pH after the dose is sought ... */
    bool readings_odd;       /* ... but it does not go with the pH: as if it were not given */
    double carbon;           /* dissolved, mmol/L; NaN unless it is */
    double alkalinity_after; /* right after the dose, meq/L; the same */
    double ph_after;         /* the same; NaN also outside HW_PH_MIN to HW_PH_MAX */
    double ph_peak;          /* that free_peak is at: ph_after, or the pH given */
    double pk, free_peak;    /* NaN without `sample`, and when ph_after lies outside */
    bool fit_stretched;
};

struct challenge_dose challenge_dose(const double in[]);

/* Equivalents of alkalinity that a mole of the dose's nitrogen uses. */
double challenge_equivalents(const struct challenge_dose *dose);

/* Equivalents of alkalinity that it brings. */
double challenge_brings(const struct challenge_dose *dose);

/* Writes the working; the same names and numbers as the answer. */
void challenge_work(const double in[], struct hw_steps *steps);
#endif
