/* holdwater/challenge.h - ammonia to prove a filter: what to weigh or pour, and what it costs the
 * water when bacteria have turned it into nitrate.
 *
 * All amounts of ammonia are counted as nitrogen; nitrogen.h converts from and to a kit's basis.
 */
#ifndef HOLDWATER_CHALLENGE_H
#define HOLDWATER_CHALLENGE_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Nitrogen, mg or mg/L. */
#define HW_CHALLENGE_NITROGEN_MIN 0.0
#define HW_CHALLENGE_NITROGEN_MAX 1e9

/* Purity of a salt, a share of its mass. */
#define HW_CHALLENGE_PURITY_SHARE_MIN 0.1
#define HW_CHALLENGE_PURITY_SHARE_MAX 1.0

/* Ammonia solution, per cent by mass as NH3: the ends of the table of densities. */
#define HW_CHALLENGE_NH3_PERCENT_MIN 0.5
#define HW_CHALLENGE_NH3_PERCENT_MAX 30.0

enum hw_challenge_salt { HW_CHALLENGE_AMMONIUM_CHLORIDE = 0, HW_CHALLENGE_AMMONIUM_SULFATE = 1 };

/* What the nitrogen came into the water as. */
enum hw_challenge_source {
    HW_CHALLENGE_FROM_AMMONIUM = 0, /* an ammonium salt, or ammonia that fish and food give off */
    HW_CHALLENGE_FROM_AMMONIA = 1   /* ammonia solution, counted from before it was poured */
};

/* hw_challenge_salt_mass - the mass of an ammonium salt that holds an amount of nitrogen.
 *
 * Given
 *   salt      which
 *   purity    share by mass, HW_CHALLENGE_PURITY_SHARE_MIN to HW_CHALLENGE_PURITY_SHARE_MAX
 *   nitrogen  mg, HW_CHALLENGE_NITROGEN_MIN to HW_CHALLENGE_NITROGEN_MAX
 * Returned
 *   mass      g of the salt as weighed
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (salt), HW_STATUS_RANGE
 * Notes
 *  1. mass = nitrogen x M / (n 14.007) / purity / 1000, n being the nitrogens in a formula:
 *     1 in ammonium chloride, 2 in ammonium sulfate.
 *  2. Both salts are anhydrous. Moisture counts as impurity: not modelled otherwise.
 * Source
 *   IUPAC, abridged standard atomic weights.
 */
int hw_challenge_salt_mass(enum hw_challenge_salt salt, double purity, double nitrogen,
                           double *mass);

/* hw_challenge_solution_density - density of ammonia in water at 20 degrees Celsius.
 *
 * Given
 *   nh3_percent  per cent by mass, as labels count it, HW_CHALLENGE_NH3_PERCENT_MIN to
 *                HW_CHALLENGE_NH3_PERCENT_MAX
 * Returned
 *   density      kg/L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. Linear between the eleven points of the table, exact at them. From the second differences of
 *     the table the straight lines err by 0.0002 at most.
 *  2. Not modelled: temperatures other than 20 degrees, and what else a household bottle may hold.
 * Source
 *   CRC Handbook of Chemistry and Physics, 102nd edition 2021, "Concentrative properties of aqueous
 *   solutions: density, refractive index, freezing point depression, and viscosity", ammonia.
 */
int hw_challenge_solution_density(double nh3_percent, double *density);

/* hw_challenge_solution_nitrogen - nitrogen in a litre of ammonia solution at 20 degrees Celsius.
 *
 * Given
 *   nh3_percent  per cent by mass, as labels count it, HW_CHALLENGE_NH3_PERCENT_MIN to
 *                HW_CHALLENGE_NH3_PERCENT_MAX
 * Returned
 *   strength     g of nitrogen in a litre
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. strength = 10 x nh3_percent x density x 14.007 / 17.031.
 *  2. A label that counts NH4OH speaks of the same bottle: per cent NH3 = per cent NH4OH x
 *     HW_MOLAR_NH3 / HW_MOLAR_NH4OH, so that 56.6 % NH4OH is 27.5 % NH3.
 *  3. A bottle that was opened loses ammonia: not modelled.
 * Source
 *   As hw_challenge_solution_density; IUPAC, abridged standard atomic weights.
 */
int hw_challenge_solution_nitrogen(double nh3_percent, double *strength);

/* hw_challenge_nitrified - what it takes and leaves to turn ammonia into nitrate.
 *
 * Given
 *   from        what the nitrogen came as
 *   nitrogen    mg/L, HW_CHALLENGE_NITROGEN_MIN to HW_CHALLENGE_NITROGEN_MAX
 * Returned
 *   nitrate     mg/L of the ion NO3 that are formed
 *   oxygen      mg/L of O2 that are used
 *   alkalinity  mg/L, as CaCO3, that are used
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (from), HW_STATUS_RANGE
 * Notes
 *  1. NH4+ + 2 O2 -> NO3- + 2 H+ + H2O: two O2 and two equivalents of alkalinity to a nitrogen.
 *     Ammonia solution brings one equivalent with it, so that one is used in all.
 *  2. Per mg of nitrogen: 4.427 mg NO3, 4.569 mg O2, 7.145 mg CaCO3 (3.573 for ammonia solution).
 *  3. Not modelled: the nitrogen that bacteria build into themselves (with it 4.18 mg O2 and 7.05
 *     mg CaCO3, recalled), and loss of nitrate.
 * Source
 *   Stoichiometry; IUPAC, abridged standard atomic weights.
 */
int hw_challenge_nitrified(enum hw_challenge_source from, double nitrogen, double *nitrate,
                           double *oxygen, double *alkalinity);

#ifdef __cplusplus
}
#endif

#endif
