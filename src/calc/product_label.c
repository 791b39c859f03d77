/* product_label.c - the strength of a product by the dose on its label. */
#include "calc/product_label.h"

#include <math.h>

int product_label_given(const struct product_label *label)
{
    return !isnan(label->liquid) + !isnan(label->mass) + !isnan(label->per) + !isnan(label->raises);
}

bool product_label_whole(const struct product_label *label)
{
    return product_label_given(label) == 3;
}

double product_label_strength(const struct product_label *label)
{
    double strength = NAN;
    hw_stock_strength(label->raises, label->per, label->liquid, &strength);
    return strength;
}

double product_label_share(const struct product_label *label)
{
    double share = NAN;
    hw_dose_label_share(label->raises, label->per, label->mass, &share);
    return share;
}

bool product_label_unlikely(const struct product_label *label)
{
    double strength = product_label_strength(label);
    double share = product_label_share(label);
    return strength < PRODUCT_MIN || strength > PRODUCT_MAX || share < PRODUCT_SHARE_MIN ||
           share > HW_DOSE_ACTIVE_SHARE_MAX;
}
