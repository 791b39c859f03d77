/* stock.c - stock solutions from weighed reagents. */
#include "holdwater/stock.h"

#include "core/no_answer.h"
#include "holdwater/molar.h"

/* Grams of reagent to a gram of what it is counted as, and what dissolves; 0 for one that does not
 * exist. */
struct reagent {
    double per_gram, solubility;
};

static struct reagent reagent_of(enum hw_stock_reagent reagent)
{
    struct reagent found = {0.0, 0.0};
    switch (reagent) {
    case HW_STOCK_AMMONIUM_CHLORIDE:
        found.per_gram = HW_MOLAR_AMMONIUM_CHLORIDE / HW_MOLAR_N;
        found.solubility = HW_STOCK_AMMONIUM_CHLORIDE_SOLUBILITY;
        break;
    case HW_STOCK_AMMONIUM_SULFATE:
        found.per_gram = HW_MOLAR_AMMONIUM_SULFATE / (2.0 * HW_MOLAR_N);
        found.solubility = HW_STOCK_AMMONIUM_SULFATE_SOLUBILITY;
        break;
    case HW_STOCK_COPPER_SULFATE:
        found.per_gram = HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE / HW_MOLAR_COPPER;
        found.solubility = HW_STOCK_COPPER_SULFATE_SOLUBILITY;
        break;
    }
    return found;
}

int hw_stock_strength(double raises, double into, double per, double *strength)
{
    *strength = HW_NO_ANSWER;
    if (!(raises >= HW_STOCK_RAISES_MIN && raises <= HW_STOCK_RAISES_MAX &&
          into >= HW_STOCK_INTO_MIN && into <= HW_STOCK_INTO_MAX && per >= HW_STOCK_PER_MIN &&
          per <= HW_STOCK_PER_MAX)) {
        return HW_STATUS_RANGE;
    }
    *strength = raises * into / per;
    return HW_STATUS_OK;
}

int hw_stock_mass(enum hw_stock_reagent reagent, double strength, double make, double *mass)
{
    struct reagent found = reagent_of(reagent);
    *mass = HW_NO_ANSWER;
    if (found.per_gram == 0.0) {
        return HW_STATUS_CHOICE;
    }
    if (!(strength >= HW_STOCK_STRENGTH_MIN && strength <= HW_STOCK_STRENGTH_MAX &&
          make >= HW_STOCK_MAKE_MIN && make <= HW_STOCK_MAKE_MAX)) {
        return HW_STATUS_RANGE;
    }
    *mass = strength * (make / 1000.0) * found.per_gram;
    return HW_STATUS_OK;
}

int hw_stock_solubility(enum hw_stock_reagent reagent, double *solubility)
{
    struct reagent found = reagent_of(reagent);
    *solubility = found.solubility > 0.0 ? found.solubility : HW_NO_ANSWER;
    return found.solubility > 0.0 ? HW_STATUS_OK : HW_STATUS_CHOICE;
}
