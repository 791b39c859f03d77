/* saltmix_batch.h - one question of mixing as the core sees it; shared by the answer and its
 * working. */
#ifndef HW_SALTMIX_BATCH_H
#define HW_SALTMIX_BATCH_H
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/saltmix.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    SALTMIX_VOLUME, SALTMIX_SALINITY, SALTMIX_TARGET, SALTMIX_TEMP, SALTMIX_WHY, SALTMIX_MOISTURE,
    SALTMIX_LABEL_MASS, SALTMIX_LABEL_MAKES, SALTMIX_LABEL_SALINITY, SALTMIX_INPUTS
};
/* clang-format on */

enum { SALTMIX_EVAPORATED, SALTMIX_MIXED_TOO_STRONG }; /* words of `why` */

/* How a product is told: by moisture, by its label, or so that there is no answer. */
enum saltmix_product {
    SALTMIX_BY_MOISTURE,
    SALTMIX_BY_LABEL,
    SALTMIX_LABEL_IN_PART,
    SALTMIX_LABEL_AND_MOISTURE,
    SALTMIX_LABEL_UNLIKELY
};

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
