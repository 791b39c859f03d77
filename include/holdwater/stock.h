/* holdwater/stock.h - a stock solution to be mixed from a weighed reagent, so that a syringe doses
 * what no scale can.
 */
#ifndef HOLDWATER_STOCK_H
#define HOLDWATER_STOCK_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Grams of reagent, as weighed, that a litre of solution holds at most at 20 degrees. */
#define HW_STOCK_AMMONIUM_CHLORIDE_SOLUBILITY 291.0
#define HW_STOCK_AMMONIUM_SULFATE_SOLUBILITY  535.0
#define HW_STOCK_COPPER_SULFATE_SOLUBILITY    319.0

/* By how much one dose raises the water, mg/L. */
#define HW_STOCK_RAISES_MIN 0.001
#define HW_STOCK_RAISES_MAX 1000.0

/* Water that is dosed, L; one dose and the stock that is made, mL. */
#define HW_STOCK_INTO_MIN 0.1
#define HW_STOCK_INTO_MAX 1e5
#define HW_STOCK_PER_MIN  0.1
#define HW_STOCK_PER_MAX  1000.0
#define HW_STOCK_MAKE_MIN 10.0
#define HW_STOCK_MAKE_MAX 1e5

/* Strength of a stock, g/L. */
#define HW_STOCK_STRENGTH_MIN 0.0
#define HW_STOCK_STRENGTH_MAX 1e9

enum hw_stock_reagent {
    HW_STOCK_AMMONIUM_CHLORIDE = 0, /* NH4Cl, counted as nitrogen */
    HW_STOCK_AMMONIUM_SULFATE = 1,  /* (NH4)2SO4, counted as nitrogen */
    HW_STOCK_COPPER_SULFATE = 2     /* CuSO4 and five H2O, the blue crystals; counted as copper */
};

/* hw_stock_strength - how strong a stock must be for a dose of it to raise water as wanted.
 *
 * Given
 *   raises    rise by one dose, mg/L, HW_STOCK_RAISES_MIN to HW_STOCK_RAISES_MAX
 *   into      water that is dosed, L, HW_STOCK_INTO_MIN to HW_STOCK_INTO_MAX
 *   per       one dose, mL, HW_STOCK_PER_MIN to HW_STOCK_PER_MAX
 * Returned
 *   strength  g/L of what raises counts
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. strength = raises x into / per: mg in mL, which is g in L.
 *  2. The volume of the dose itself is not added to the water: in 75 L a millilitre is 0.001 %.
 * Source
 *   Arithmetic.
 */
int hw_stock_strength(double raises, double into, double per, double *strength);

/* hw_stock_mass - what to weigh for a stock.
 *
 * Given
 *   reagent   which
 *   strength  g/L, as nitrogen or as copper, HW_STOCK_STRENGTH_MIN to HW_STOCK_STRENGTH_MAX
 *   make      finished stock, mL, HW_STOCK_MAKE_MIN to HW_STOCK_MAKE_MAX
 * Returned
 *   mass      g of the reagent
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (reagent), HW_STATUS_RANGE
 * Notes
 *  1. mass = strength x make / 1000 x M / (n 14.007), or / 63.546 for copper.
 *  2. Pure reagent, and for copper the pentahydrate. Neither impurities nor solubility are looked
 *     at here: compare mass / make with hw_stock_solubility.
 * Source
 *   IUPAC, abridged standard atomic weights.
 */
int hw_stock_mass(enum hw_stock_reagent reagent, double strength, double make, double *mass);

/* hw_stock_solubility - what a litre of stock holds at most at 20 degrees Celsius.
 *
 * Given
 *   reagent     which
 * Returned
 *   solubility  g of the reagent, as weighed, in a litre of saturated solution
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE
 * Notes
 *  1. Ammonium chloride: 37.2 g in 100 g of water (read), so 27.1 % by mass, times 1.075 kg/L
 *     (read). Ammonium sulfate: 75.4 g in 100 g of water (recalled), so 43.0 %, times 1.245 kg/L.
 *     Copper sulfate: 20.7 g of the anhydrous salt in 100 g of water (read), so 17.1 %, which is
 *     26.8 % of the pentahydrate, times 1.195 kg/L; an encyclopaedia has 201 g/L of the anhydrous
 *     salt, 314 g/L of the pentahydrate. The density of the sulfate is from the straight line
 *     through the last two points of a table at 20 degrees, that of copper sulfate from between its
 *     points at 10 and 18 %. All three are rounded down.
 *  2. Colder less dissolves: at 0 degrees ammonium chloride 29.4 g in 100 g of water, four fifths.
 *     Not modelled.
 * Source
 *   Perry's Chemical Engineers' Handbook, table 2-122 (ammonium chloride); chemical tables (copper
 *   sulfate); CRC Handbook of Chemistry and Physics (ammonium sulfate, recalled); its 102nd
 *   edition, concentrative properties of aqueous solutions (densities).
 */
int hw_stock_solubility(enum hw_stock_reagent reagent, double *solubility);

#ifdef __cplusplus
}
#endif

#endif
