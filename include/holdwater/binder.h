/* holdwater/binder.h - what binds ammonia in water for a day or two: how much of it, and the oxygen
 * that it takes.
 *
 * One mole of an agent binds one mole of ammonia, so one of nitrogen. What a product holds its
 * label seldom says: hw_binder_by_label goes by the label's own dose.
 */
#ifndef HOLDWATER_BINDER_H
#define HOLDWATER_BINDER_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of a volume of water, L: a beaker to a small pool. */
#define HW_BINDER_VOLUME_MIN 0.1
#define HW_BINDER_VOLUME_MAX 1e5

/* Range of total ammonia in water, mg/L. */
#define HW_BINDER_TOTAL_MIN 0.0
#define HW_BINDER_TOTAL_MAX 100.0

/* Range of an amount of nitrogen, mg: what the two ranges above can make. */
#define HW_BINDER_NITROGEN_MIN 0.0
#define HW_BINDER_NITROGEN_MAX 1e7

/* Range of an excess, moles of agent to a mole of nitrogen; a patent asks
 * for four at least against ammonia. */
#define HW_BINDER_EXCESS_MIN 1.0
#define HW_BINDER_EXCESS_MAX 4.0

/* Range of the share of a powder that is the agent, by mass. */
#define HW_BINDER_PURITY_SHARE_MIN 0.1
#define HW_BINDER_PURITY_SHARE_MAX 1.0

/* Range of a mass of powder, g: what the ranges above can ask for. */
#define HW_BINDER_MASS_MIN 0.0
#define HW_BINDER_MASS_MAX 5e6

/* Ranges of a label: its dose in g or mL, the water that the dose is for in L, the ammonia that it
 * binds there in mg/L. */
#define HW_BINDER_DOSE_MIN  0.001
#define HW_BINDER_DOSE_MAX  1e5
#define HW_BINDER_PER_MIN   0.01
#define HW_BINDER_PER_MAX   1e5
#define HW_BINDER_BINDS_MIN 0.01
#define HW_BINDER_BINDS_MAX 100.0

/* What binds. All are the sodium salts. */
enum hw_binder {
    HW_BINDER_SULFONATE = 0,          /* hydroxymethanesulfonate */
    HW_BINDER_SULFINATE = 1,          /* hydroxymethanesulfinate without water */
    HW_BINDER_SULFINATE_DIHYDRATE = 2 /* the same with two waters, as the crystals have */
};

/* hw_binder_ratio - mg of an agent that binds a mg of nitrogen, one mole to one.
 *
 * Given
 *   agent     which
 * Returned
 *   ratio     mg per mg of ammonia as N
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE
 * Notes
 *  1. ratio = molar mass / 14.007: 9.572, 8.430 and 11.002.
 *  2. Not modelled: that the binding comes to an equilibrium, so that one to one leaves some
 *     ammonia unbound; how much was found in no source. A patent asks for
 *     at least four moles to one.
 * Source
 *   HOCH2SO3- + NH3 -> H2NCH2SO3- + H2O: US patent 4,666,610. The sulfinates are taken to bind
 *   alike (US patent 4,786,434 names their adducts).
 */
int hw_binder_ratio(enum hw_binder agent, double *ratio);

/* hw_binder_powder - the powder that binds an amount of ammonia.
 *
 * Given
 *   agent     which
 *   nitrogen  mg of ammonia as N, HW_BINDER_NITROGEN_MIN to HW_BINDER_NITROGEN_MAX
 *   excess    moles of agent to a mole of nitrogen, HW_BINDER_EXCESS_MIN to HW_BINDER_EXCESS_MAX
 *   purity    share of the powder that is the agent, HW_BINDER_PURITY_SHARE_MIN to
 *             HW_BINDER_PURITY_SHARE_MAX
 * Returned
 *   mass      g of powder
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (agent), HW_STATUS_RANGE
 * Notes
 *  1. mass = nitrogen x ratio x excess / purity / 1000, with the ratio of hw_binder_ratio.
 *  2. Not modelled: as hw_binder_ratio; what the powder lost to air and damp.
 * Source
 *   As hw_binder_ratio.
 */
int hw_binder_powder(enum hw_binder agent, double nitrogen, double excess, double purity,
                     double *mass);

/* hw_binder_oxygen_taken - the oxygen that an agent takes out of the water at most.
 *
 * Given
 *   agent     which
 *   mass      g of powder, HW_BINDER_MASS_MIN to HW_BINDER_MASS_MAX
 *   purity    share of the powder that is the agent, HW_BINDER_PURITY_SHARE_MIN to
 *             HW_BINDER_PURITY_SHARE_MAX
 *   volume    of water, L, HW_BINDER_VOLUME_MIN to HW_BINDER_VOLUME_MAX
 * Returned
 *   oxygen    mg/L
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (agent), HW_STATUS_RANGE
 * Notes
 *  1. All sulfur is taken to sulfate: half a mole of O2 to a mole of sulfonate, S(IV), one to a
 *     mole of sulfinate, S(II); 0.119 mg of O2 per mg of sulfonate, 0.271 per mg of anhydrous
 *     sulfinate.
 *  2. Not modelled: how fast it goes, and how much of the agent ends otherwise; what bacteria take
 *     for its carbon.
 * Source
 *   Stoichiometry.
 */
int hw_binder_oxygen_taken(enum hw_binder agent, double mass, double purity, double volume,
                           double *oxygen);

/* hw_binder_by_label - the product that binds what is in the water, by its label.
 *
 * Given
 *   dose      of the label, g or mL, HW_BINDER_DOSE_MIN to HW_BINDER_DOSE_MAX
 *   per       water that this dose is for, L, HW_BINDER_PER_MIN to HW_BINDER_PER_MAX
 *   binds     total ammonia that it binds there, mg/L, HW_BINDER_BINDS_MIN to HW_BINDER_BINDS_MAX
 *   volume    water to treat, L, HW_BINDER_VOLUME_MIN to HW_BINDER_VOLUME_MAX
 *   total     total ammonia in it, mg/L counted as binds is, HW_BINDER_TOTAL_MIN to
 *             HW_BINDER_TOTAL_MAX
 * Returned
 *   amount    g or mL, as dose
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. amount = dose x (volume / per) x (total / binds).
 *  2. Not modelled: whether the label allows more than its one dose. Where total is above binds,
 *     ask it.
 * Source
 *   Proportion.
 */
int hw_binder_by_label(double dose, double per, double binds, double volume, double total,
                       double *amount);

#ifdef __cplusplus
}
#endif

#endif
