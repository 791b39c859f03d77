/* product_label.h - what the dose on a label says of a product. */
#ifndef HW_PRODUCT_LABEL_H
#define HW_PRODUCT_LABEL_H
#include "holdwater/dose.h"
#include "holdwater/stock.h"

#include <stdbool.h>

/* mg in a mL of a product, and the share of a powder; outside there is no such product. */
#define PRODUCT_MIN       1e-3
#define PRODUCT_MAX       HW_DOSE_STRENGTH_MAX
#define PRODUCT_SHARE_MIN 1e-4

/* A label as it was given: so much liquid (mL) or powder (g), never both, into so much water (L)
 * raises it by so much (mg/L). NaN: not given. */
struct product_label {
    double liquid, mass, per, raises;
};

/* How many of its four figures were given. */
int product_label_given(const struct product_label *label);

/* One amount, the water and the rise: three figures, and a product by them. */
bool product_label_whole(const struct product_label *label);

/* mg in a mL of the liquid, the share of the powder; NaN when that part was not given. */
double product_label_strength(const struct product_label *label);
double product_label_share(const struct product_label *label);

/* The label makes a product that there cannot be. */
bool product_label_unlikely(const struct product_label *label);
#endif
