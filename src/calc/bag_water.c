/* bag_water.c - the reckoning of the water of one bag, and its working. */
#include "calc/bag_water.h"

#include "calc/free_ammonia.h"
#include "calc/long_limit.h"

#include <math.h>

struct bag_water bag_water(const double in[])
{
    struct bag_water bag = {.total_n = NAN};
    if (isnan(in[BAG_TAN])) {
        hw_bag_total(in[BAG_BIOMASS], in[BAG_EXCRETION], in[BAG_HOURS], in[BAG_WATER],
                     &bag.total_n);
    } else {
        bag.total_n = nitrogen_to_n((enum hw_nitrogen_basis)in[BAG_BASIS], in[BAG_TAN]);
    }
    bag.shut = ammonia_hour(bag.total_n, in[BAG_PH_BAG], in[BAG_TEMP], in[BAG_SALINITY]);
    bag.open = ammonia_hour(bag.total_n, in[BAG_PH_OPEN], in[BAG_TEMP], in[BAG_SALINITY]);
    double highest = fmax(in[BAG_PH_OPEN], in[BAG_TANK_PH]); /* of a number and none the number */
    bag.worst = ammonia_hour(bag.total_n, highest, in[BAG_TEMP], in[BAG_SALINITY]);
    bag.long_n = long_limit(highest, in[BAG_TEMP], in[BAG_SALINITY]).total_n;
    bag.times_worse = bag.open.fraction / bag.shut.fraction;
    return bag;
}

static void step_gaps(const double in[], struct hw_steps *steps)
{
    if (!isnan(in[BAG_TANK_TEMP])) {
        hw_step(steps, "temp_gap", in[BAG_TANK_TEMP] - in[BAG_TEMP], "C", "", "%.10g - %.10g",
                in[BAG_TANK_TEMP], in[BAG_TEMP]);
    }
    if (!isnan(in[BAG_TANK_SALINITY])) {
        hw_step(steps, "salinity_gap", in[BAG_TANK_SALINITY] - in[BAG_SALINITY], "g/kg", "",
                "%.10g - %.10g", in[BAG_TANK_SALINITY], in[BAG_SALINITY]);
    }
    if (!isnan(in[BAG_TANK_PH])) {
        hw_step(steps, "ph_gap", in[BAG_TANK_PH] - in[BAG_PH_BAG], "", "", "%.10g - %.10g",
                in[BAG_TANK_PH], in[BAG_PH_BAG]);
    }
}

/* Free ammonia at a pH, with the total written out. */
static void step_free(const char *symbol, const struct ammonia_hour *at, double ph,
                      const double in[], struct hw_steps *steps)
{
    if (isnan(in[BAG_TAN])) {
        hw_step(steps, symbol, at->free_n, "mg/L", "",
                "%.10g/1000 * %.10g * %.10g / %.10g / (1 + 10^(%.10g - %.10g))", in[BAG_BIOMASS],
                in[BAG_EXCRETION], in[BAG_HOURS], in[BAG_WATER], at->pk, ph);
    } else {
        hw_step(steps, symbol, at->free_n, "mg/L", "",
                "%.10g * %.10g/%.10g / (1 + 10^(%.10g - %.10g))", in[BAG_TAN], HW_MOLAR_N,
                basis_molar((enum hw_nitrogen_basis)in[BAG_BASIS]), at->pk, ph);
    }
}

static void step_total(const struct bag_water *bag, const double in[], struct hw_steps *steps)
{
    if (isnan(in[BAG_TAN])) {
        hw_step(steps, "tan_bag", bag->total_n, "mg/L", "excretion-rates",
                "%.10g/1000 * %.10g * %.10g / %.10g", in[BAG_BIOMASS], in[BAG_EXCRETION],
                in[BAG_HOURS], in[BAG_WATER]);
    } else {
        hw_step(steps, "tan_bag", bag->total_n, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g",
                in[BAG_TAN], HW_MOLAR_N, basis_molar((enum hw_nitrogen_basis)in[BAG_BASIS]));
    }
}

void bag_work(const double in[], struct hw_steps *steps)
{
    struct bag_water bag = bag_water(in);
    step_gaps(in, steps);
    step_pk_khoo("pka", bag.open.pk, in[BAG_TEMP], in[BAG_SALINITY], steps);
    step_free("free_bag", &bag.shut, in[BAG_PH_BAG], in, steps);
    step_free("free_open", &bag.open, in[BAG_PH_OPEN], in, steps);
    hw_step(steps, "times_worse", bag.times_worse, "", "",
            "(1 + 10^(%.10g - %.10g)) / (1 + 10^(%.10g - %.10g))", bag.shut.pk, in[BAG_PH_BAG],
            bag.open.pk, in[BAG_PH_OPEN]);
    step_total(&bag, in, steps);
}
