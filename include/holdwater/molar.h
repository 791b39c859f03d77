/* holdwater/molar.h - molar masses, g/mol.
 *
 * Sums of the abridged standard atomic weights of IUPAC: H 1.008, C 12.011, N 14.007, O 15.999,
 * Na 22.990, S 32.06, Cl 35.45, Ca 40.078, Cu 63.546. The electron that an ion has more or less,
 * 0.0005, is not counted.
 */
#ifndef HOLDWATER_MOLAR_H
#define HOLDWATER_MOLAR_H

#define HW_MOLAR_N      14.007
#define HW_MOLAR_H      1.008
#define HW_MOLAR_COPPER 63.546

/* Ammonia and what it turns into. */
#define HW_MOLAR_NH3     17.031
#define HW_MOLAR_NH4     18.039
#define HW_MOLAR_NH4OH   35.046 /* NH3 and H2O, as labels count ammonia solution */
#define HW_MOLAR_NITRITE 46.005 /* NO2 */
#define HW_MOLAR_NITRATE 62.004 /* NO3 */

#define HW_MOLAR_OXYGEN 31.998 /* O2 */

/* Salts that are weighed. */
#define HW_MOLAR_AMMONIUM_CHLORIDE           53.489  /* NH4Cl */
#define HW_MOLAR_AMMONIUM_SULFATE            132.134 /* (NH4)2SO4, two nitrogens */
#define HW_MOLAR_CALCIUM_CARBONATE           100.086 /* CaCO3, two equivalents */
#define HW_MOLAR_SODIUM_BICARBONATE          84.006  /* NaHCO3, one equivalent */
#define HW_MOLAR_SODIUM_CARBONATE            105.988 /* Na2CO3 without water, two equivalents */
#define HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE 249.677 /* CuSO4 and five H2O */

/* What binds ammonia. */
#define HW_MOLAR_HYDROXYMETHANESULFONATE           134.081 /* HOCH2SO3Na */
#define HW_MOLAR_HYDROXYMETHANESULFINATE           118.082 /* HOCH2SO2Na */
#define HW_MOLAR_HYDROXYMETHANESULFINATE_DIHYDRATE 154.112 /* HOCH2SO2Na 2 H2O */

/* Chlorine and what takes it out, with Cl at 35.453: the standard weight from before it became an
 * interval, by which published ratios were reckoned. With 35.45 they would differ by 1 part in
 * 12 000. */
#define HW_MOLAR_CHLORINE                 70.906  /* Cl2 */
#define HW_MOLAR_HYPOCHLORITE             74.442  /* NaOCl */
#define HW_MOLAR_THIOSULFATE              158.108 /* Na2S2O3 */
#define HW_MOLAR_THIOSULFATE_PENTAHYDRATE 248.184 /* Na2S2O3 5 H2O */

#endif
