/* salinity_reading.h - one reading of salinity as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_SALINITY_READING_H
#define HW_SALINITY_READING_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/conductivity.h"
#include "holdwater/hydrometer.h"
#include "holdwater/refraction.h"
#include "holdwater/seawater.h"
#include "tables.h"

/* The inputs, in the order of the table. reading, zero, standard and standard_reads are on the
 * scale of the instrument: each stands once for each kind of scale, and at most one entry of a name
 * is given. */
/* clang-format off */
enum {
    SALINITY_OF, SALINITY_READING_SG, SALINITY_READING_MS, SALINITY_READING_INDEX,
    SALINITY_READING_GKG, SALINITY_READING_GL, SALINITY_TEMP, SALINITY_REFERENCE, SALINITY_GLASS,
    SALINITY_SLOPE, SALINITY_ZERO_BARE, SALINITY_ZERO_MS, SALINITY_ZERO_GKG, SALINITY_ZERO_GL,
    SALINITY_STANDARD_IS_GKG, SALINITY_STANDARD_IS_GL, SALINITY_STANDARD_SG, SALINITY_STANDARD_MS,
    SALINITY_STANDARD_INDEX, SALINITY_STANDARD_SCALE, SALINITY_STANDARD_GKG, SALINITY_STANDARD_GL,
    SALINITY_STANDARD_GL_SEA, SALINITY_READS_SG, SALINITY_READS_MS, SALINITY_READS_INDEX,
    SALINITY_READS_GKG, SALINITY_READS_GL, SALINITY_INPUTS
};
/* clang-format on */

/* The words of `of`. */
enum salinity_of {
    SALINITY_OF_SG,
    SALINITY_OF_CONDUCTIVITY,
    SALINITY_OF_COMPENSATED,
    SALINITY_OF_REFRACTION,
    SALINITY_OF_SCALE,
    SALINITY_OF_BRINE_GKG,
    SALINITY_OF_BRINE_GL
};

enum { SALINITY_SEA_WATER, SALINITY_BRINE }; /* words of `standard_is` */

/* The words of `reference`: so many pairs of temperatures, then the one that tells none. */
enum { SALINITY_REFERENCES = 5, SALINITY_UNKNOWN = SALINITY_REFERENCES };

/* One row, and what the core says of it. */
struct salinity_reading {
    enum salinity_of of;
    double temp;
    double reading, zero, standard, reads; /* standard and reads are NaN when not given */
    double standard_is;                    /* a word; NaN when not given */
    double standard_true; /* what a true instrument of this scale shows in the standard */
    double corrected;     /* the reading after zero and standard */
    struct hw_hydrometer hydrometer; /* for sg */
    double slope;                    /* for compensated */
    double found;                    /* the salinity found, may be a little below 0; NaN: none */
    double salinity;                 /* the same, not below 0 */
    double density, gravity, conductivity;
    bool above; /* when none was found: the reading is too high, not too low */
};

/* Not for a reference that is not known. */
struct salinity_reading salinity_reading(const double in[]);

/* The same reading by a reference of a hydrometer, 0 to SALINITY_REFERENCES - 1, whatever was
 * said of it. */
struct salinity_reading salinity_reading_by(const double in[], size_t reference);

/* True when the reference of a hydrometer is not known: there is a reading by each. */
bool salinity_reference_unknown(const double in[]);

/* A reading of unknown reference: by which it is the lowest, by which the highest. Where one of
 * them gives no salinity, the range is that one alone. */
struct salinity_range {
    size_t low, high;
};

struct salinity_range salinity_range(const double in[]);

/* What a conductivity meter saw, if it was one. */
double salinity_conductivity_seen(const struct salinity_reading *r, double value);

/* The salinity behind a value on the instrument's scale, which may be another than the reading;
 * NaN: none. */
double salinity_behind(const struct salinity_reading *r, double value);

/* Writes the working; the same names and numbers as the answer. */
void salinity_work(const double in[], struct hw_steps *steps);
#endif
