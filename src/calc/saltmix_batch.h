/* saltmix_batch.h - one question of mixing as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_SALTMIX_BATCH_H
#define HW_SALTMIX_BATCH_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/saltmix.h"

/* The inputs, in the order of the table. */
enum {
    VOLUME,
    SALINITY,
    TARGET,
    TEMP,
    WHY,
    MOISTURE,
    LABEL_MASS,
    LABEL_MAKES,
    LABEL_SALINITY,
    INPUTS
};

enum { EVAPORATED, MIXED_TOO_STRONG }; /* words of `why` */

/* How a product is told: by moisture, by its label, or so that there is no answer. */
enum saltmix_product { BY_MOISTURE, BY_LABEL, LABEL_IN_PART, LABEL_AND_MOISTURE, LABEL_UNLIKELY };

/* One row; NaN where a result does not apply. */
struct saltmix_batch {
    enum saltmix_product product;
    double label_dry; /* salt in the product by its label, up to 1.05 */
    double dry;       /* the same as it is used, by label or moisture */
    double salt, top_up, swap;
    bool stretched; /* a density was used outside its fit */
};

struct saltmix_batch saltmix_batch(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void saltmix_work(const double in[], struct hw_steps *steps);
#endif
