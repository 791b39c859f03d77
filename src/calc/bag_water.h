/* bag_water.h - the water of one bag, shut and opened; shared by the answer and its working. */
#ifndef HW_BAG_WATER_H
#define HW_BAG_WATER_H
#include "calc/ammonia_hour.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/ammonia.h"
#include "holdwater/bag.h"

/* The inputs, in the order of the table. */
/* clang-format off */
enum {
    BAG_TAN, BAG_BIOMASS, BAG_BASIS, BAG_HOURS, BAG_WATER, BAG_EXCRETION, BAG_PH_BAG, BAG_PH_OPEN,
    BAG_TEMP, BAG_SALINITY, BAG_TANK_TEMP, BAG_TANK_SALINITY, BAG_TANK_PH, BAG_INPUTS
};
/* clang-format on */

/* One bag: its total in mg/L as N, NaN when that is not known, and the same water at both pH
 * values; `worst` is at the tank's pH where that is told and higher than in the open. */
struct bag_water {
    double total_n;
    struct ammonia_hour shut, open, worst;
    double times_worse;
    double long_n; /* the total that reaches the limit for days at the pH of `worst` */
};

struct bag_water bag_water(const double in[]);

/* Writes the working; the same names and numbers as the answer. */
void bag_work(const double in[], struct hw_steps *steps);
#endif
