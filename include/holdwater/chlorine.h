/* holdwater/chlorine.h - chlorine put into a tank to disinfect it, and chlorine taken out of water.
 *
 * Chlorine is counted as available chlorine, Cl2: what a test shows in mg/L "as Cl2", whether it is
 * there as hypochlorite or as chloramine. Products are counted in g/L of it: 5 % of a bottle, as
 * the trade writes it, is 5 g in 100 mL, that is 50 g/L.
 */
#ifndef HOLDWATER_CHLORINE_H
#define HOLDWATER_CHLORINE_H

#include "holdwater/molar.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Range of a volume of water, L: a beaker to a small pool. */
#define HW_CHLORINE_VOLUME_MIN 0.1
#define HW_CHLORINE_VOLUME_MAX 1e5

/* Range of chlorine in water, mg/L as Cl2. */
#define HW_CHLORINE_LEVEL_MIN 0.0
#define HW_CHLORINE_LEVEL_MAX 1000.0

/* Least level that is meant to disinfect tanks, mg/L as Cl2. */
#define HW_CHLORINE_TARGET_MIN 10.0

/* Range of the per cent on a bottle of bleach. */
#define HW_CHLORINE_PERCENT_MIN 1.0
#define HW_CHLORINE_PERCENT_MAX 20.0

/* Range of the density of bleach, kg/L: 120 g/L of chlorine has 1.157 to 1.168. */
#define HW_CHLORINE_DENSITY_MIN 1.0
#define HW_CHLORINE_DENSITY_MAX 1.3

/* Range of the strength of bleach, g/L of available chlorine: what the two ranges above can
 * make. */
#define HW_CHLORINE_STRENGTH_MIN 9.0
#define HW_CHLORINE_STRENGTH_MAX 260.0

/* Range of a contact time, minutes: to one day. */
#define HW_CHLORINE_MINUTES_MIN 1.0
#define HW_CHLORINE_MINUTES_MAX 1440.0

/* Range of a ratio, mg of a neutralising agent to a mg of chlorine; published ones run from 0.56 to
 * 7.4. */
#define HW_CHLORINE_RATIO_MIN 0.5
#define HW_CHLORINE_RATIO_MAX 10.0

/* What the per cent on a bottle counts. */
enum hw_chlorine_label {
    HW_CHLORINE_LABEL_WV = 0,      /* g of available chlorine in 100 mL, the trade's per cent */
    HW_CHLORINE_LABEL_WW = 1,      /* per cent by mass of available chlorine */
    HW_CHLORINE_LABEL_NAOCL_WW = 2 /* per cent by mass of sodium hypochlorite */
};

/* What takes chlorine out. */
enum hw_chlorine_agent {
    HW_CHLORINE_THIOSULFATE_PENTAHYDRATE = 0, /* sodium thiosulfate, crystals with five waters */
    HW_CHLORINE_THIOSULFATE_ANHYDROUS = 1,    /* sodium thiosulfate without water */
    HW_CHLORINE_ASCORBIC_ACID = 2             /* not for chloramine */
};

/* hw_chlorine_bleach_strength - available chlorine in bleach, from its label.
 *
 * Given
 *   label          what the bottle counts
 *   label_percent  per cent, as on the bottle, HW_CHLORINE_PERCENT_MIN to
 *                  HW_CHLORINE_PERCENT_MAX
 *   density        kg/L, HW_CHLORINE_DENSITY_MIN to HW_CHLORINE_DENSITY_MAX; not looked at for
 *                  HW_CHLORINE_LABEL_WV
 * Returned
 *   strength       g/L of available chlorine
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE (label), HW_STATUS_RANGE
 * Notes
 *  1. w/v: 10 x label_percent. w/w: 10 x label_percent x density. NaOCl w/w: 10 x label_percent x
 *     density x 70.906 / 74.442.
 *  2. Not modelled: what the bottle lost since it was filled. Old bleach is weaker than its label.
 * Source
 *   White 1972, Handbook of Chlorination, as quoted in an industrial product profile: per cent
 *   NaOCl by mass = g/L of available chlorine x 1.05 / (10 x specific gravity); trade per cent =
 *   g/L / 10.
 */
int hw_chlorine_bleach_strength(enum hw_chlorine_label label, double label_percent, double density,
                                double *strength);

/* hw_chlorine_bleach_amount - the bleach that makes a level of chlorine.
 *
 * Given
 *   volume    water with the bleach in it, L, HW_CHLORINE_VOLUME_MIN to HW_CHLORINE_VOLUME_MAX
 *   target    mg/L as Cl2, HW_CHLORINE_TARGET_MIN to HW_CHLORINE_LEVEL_MAX
 *   strength  of the bleach, g/L, HW_CHLORINE_STRENGTH_MIN to HW_CHLORINE_STRENGTH_MAX
 * Returned
 *   bleach    mL
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. bleach = target x volume / strength.
 *  2. Not modelled: what dirt, glue, wood and light use up. Clean first and measure.
 * Source
 *   Conservation of mass.
 */
int hw_chlorine_bleach_amount(double volume, double target, double strength, double *bleach);

/* hw_chlorine_contact - level times time.
 *
 * Given
 *   level     mg/L as Cl2, HW_CHLORINE_LEVEL_MIN to HW_CHLORINE_LEVEL_MAX
 *   minutes   HW_CHLORINE_MINUTES_MIN to HW_CHLORINE_MINUTES_MAX
 * Returned
 *   contact   mg min/L
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. contact = level x minutes. 200 mg/L for 30 to 60 minutes is 6000 to 12000.
 *  2. Not modelled: the fall of the level meanwhile, pH (hypochlorous acid is about a hundred times
 *     as strong as hypochlorite), temperature. Equal products are not equal effects.
 * Source
 *   Definition.
 */
int hw_chlorine_contact(double level, double minutes, double *contact);

/* hw_chlorine_agent_ratio - mg of an agent to a mg of chlorine, when nothing else is known.
 *
 * Given
 *   agent     which
 * Returned
 *   ratio     mg per mg of Cl2
 * Status
 *   HW_STATUS_OK, HW_STATUS_CHOICE
 * Notes
 *  1. Pentahydrate 7.0; anhydrous the same thiosulfate, 7.0 x 158.108 / 248.184 = 4.459; ascorbic
 *     acid 2.5.
 *  2. Two thiosulfate to one Cl2, to tetrathionate, takes 7.000: the most of the three possible
 *     reactions. Down to sulfate 0.875 would do, at a pH and after a time that nobody promises.
 *  3. Sources disagree whether ascorbic acid works on monochloramine: a study of 2011 found it
 *     ineffective, water works and dialysis count on it.
 * Source
 *   Support note TE213 of a water-analysis laboratory, 2017 (7.0); guide to the disinfection of
 *   pipelines, table 7-2 (2.5).
 */
int hw_chlorine_agent_ratio(enum hw_chlorine_agent agent, double *ratio);

/* hw_chlorine_agent_mass - the agent that takes the chlorine out of water.
 *
 * Given
 *   volume    water, L, HW_CHLORINE_VOLUME_MIN to HW_CHLORINE_VOLUME_MAX
 *   chlorine  mg/L as Cl2, HW_CHLORINE_LEVEL_MIN to HW_CHLORINE_LEVEL_MAX
 *   ratio     mg of agent per mg of Cl2, HW_CHLORINE_RATIO_MIN to HW_CHLORINE_RATIO_MAX
 * Returned
 *   mass      g
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. mass = volume x chlorine x ratio / 1000.
 *  2. Not modelled: the time it takes, the purity of the powder, the change of pH.
 * Source
 *   Conservation of mass.
 */
int hw_chlorine_agent_mass(double volume, double chlorine, double ratio, double *mass);

/* hw_chlorine_nitrogen_freed - ammonia that is freed when chloramine is taken apart.
 *
 * Given
 *   chlorine  bound in monochloramine, mg/L as Cl2, HW_CHLORINE_LEVEL_MIN to HW_CHLORINE_LEVEL_MAX
 * Returned
 *   nitrogen  mg/L of total ammonia, as N
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. nitrogen = chlorine x 14.007 / 70.906: one nitrogen to one Cl2, 0.1975 mg per mg.
 *  2. Not modelled: free ammonia that the supplier's water holds besides; a reading of free
 *     chlorine, which is no chloramine and frees none.
 * Source
 *   Stoichiometry of NH2Cl.
 */
int hw_chlorine_nitrogen_freed(double chlorine, double *nitrogen);

#ifdef __cplusplus
}
#endif

#endif
