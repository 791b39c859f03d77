/* holdwater/ammonia.h - how much of the total ammonia is free (un-ionised) NH3.
 *
 * Every model gives a constant pK; the free share is f = 1 / (1 + 10^(pK - pH)). A pK and a pH
 * must speak of the same scale: see ph.h.
 */
#ifndef HOLDWATER_AMMONIA_H
#define HOLDWATER_AMMONIA_H

#include "holdwater/ph.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

#define HW_AMMONIA_TEMP_MIN     0.0 /* degrees Celsius */
#define HW_AMMONIA_TEMP_MAX     40.0
#define HW_AMMONIA_SALINITY_MIN 0.0 /* g/kg */
#define HW_AMMONIA_SALINITY_MAX 45.0
#define HW_AMMONIA_PK_MIN       0.0
#define HW_AMMONIA_PK_MAX       20.0

enum hw_ammonia_model {
    HW_AMMONIA_KHOO1977 = 0, /* pure water of Emerson 1975 with the salt term of Khoo 1977 */
    HW_AMMONIA_EPA1989 = 1,  /* the form behind the salt-water criteria of the US EPA of 1989 */
    HW_AMMONIA_CLEGG1995 = 2 /* Clegg & Whitfield 1995, on a stated pH scale */
};

/* hw_ammonia_pk - the ionisation constant of ammonium.
 *
 * Given
 *   model     which constant
 *   scale     what the pH number will mean: khoo1977 and epa1989 take HW_PH_METER alone,
 *             clegg1995 the four others
 *   temp      degrees Celsius, HW_AMMONIA_TEMP_MIN to HW_AMMONIA_TEMP_MAX
 *   salinity  g/kg, HW_AMMONIA_SALINITY_MIN to HW_AMMONIA_SALINITY_MAX
 * Returned
 *   pk        the constant, on the scale given
 * Status
 *   HW_STATUS_OK
 *   HW_STATUS_STRETCHED: khoo1977 below 5 degrees with any salt, or above salinity 44.55; epa1989
 *     above salinity 40.9; clegg1995 above salinity 40, and with nbs-rigorous also where
 *     hw_ph_offset says so
 *   HW_STATUS_CHOICE: model or scale unknown, or the two do not go together
 *   HW_STATUS_RANGE
 * Notes
 *  1. khoo1977: pK = 0.09018 + 2729.92 / (t + 273.15) + (0.1552 - 0.0003142 t) I, with the ionic
 *     strength of hw_seawater_ionic_strength. Pairing the two papers is this library's choice: at
 *     salinity 0 it is Emerson's table, with no step above it. Pure water was measured at 0 to 50
 *     degrees, salt water at 5 to 40 degrees and salinity 20.31, 35.00 and 44.55; between 0 and
 *     20.31 the term is interpolated, linear in I.
 *  2. epa1989: pK = 9.245 + 0.116 I + 0.0324 (298 - T) + 0.0415 P / T, T = t + 273.15, P = 1 atm,
 *     I = 19.9273 S / (1000 - 1.005109 S). 298 is literal: 298.15 would raise pK by 0.00486, and
 *     the formula as commonly quoted does not say. Its limit I <= 0.85, salinity 40.9, is
 *     recalled, not read. Above 30 degrees its straight line in T overshoots: 13 % more NH3 than
 *     khoo1977 at 40 degrees in fresh water.
 *  3. khoo1977 and epa1989 take a meter's pH as read, as the published tables do. With a pH on
 *     the total scale they would give about a fifth too little NH3 in sea water: hence the check.
 *  4. clegg1995: equation 18 (total scale, per kg of water), brought to mol per kg of solution by
 *     -log10(1 - 0.001005 S), then from the total scale to the one asked by the difference of
 *     their hw_ph_offset. Fitted to salinity 40 and -2 to 40 degrees; stated to be better than
 *     5 % in K.
 *  5. khoo1977 and clegg1995 (free scale) agree within -3.7 to +0.6 % in the ratio NH3/NH4 over
 *     the whole range, and within 1 % at 15 to 30 degrees and salinity 20 to 40.
 *  6. Not modelled: hardness of fresh water (it lowers NH3 by 5 to 13 %; the safe side), salts
 *     that are not sea salt, pressure.
 * Source
 *   Emerson, Russo, Lund & Thurston 1975, J. Fish. Res. Board Can. 32:2379-2383. Khoo, Culberson &
 *   Bates 1977, J. Solution Chem. 6:281-290 (salt term as in its abstract). US EPA 1989,
 *   EPA 440/5-88-004 (formula as commonly quoted). Clegg & Whitfield 1995, Geochim. Cosmochim.
 *   Acta 59:2403-2421, equation 18.
 */
int hw_ammonia_pk(enum hw_ammonia_model model, enum hw_ph_scale scale, double temp, double salinity,
                  double *pk);

/* hw_ammonia_fraction - the share of total ammonia that is free.
 *
 * Given
 *   model, scale, temp, salinity   as hw_ammonia_pk
 *   ph        on the scale given, HW_PH_MIN to HW_PH_MAX
 * Returned
 *   fraction  moles of NH3 over moles of NH3 and NH4+, above 0 and below 1
 * Status
 *   As hw_ammonia_pk; HW_STATUS_RANGE also for ph
 * Notes
 *  1. The share is of moles, so also of nitrogen: fraction x (total as N) is free ammonia as N.
 *  2. A pH wrong by 0.1 moves the free ammonia by about a quarter; no choice of model matters as
 *     much.
 * Source
 *   As hw_ammonia_pk.
 */
int hw_ammonia_fraction(enum hw_ammonia_model model, enum hw_ph_scale scale, double ph, double temp,
                        double salinity, double *fraction);

/* hw_ammonia_fraction_at_pk - the same, for a constant already at hand.
 *
 * Given
 *   ph        HW_PH_MIN to HW_PH_MAX
 *   pk        on the scale of ph, HW_AMMONIA_PK_MIN to HW_AMMONIA_PK_MAX
 * Returned
 *   fraction  1 / (1 + 10^(pk - ph))
 * Status
 *   HW_STATUS_OK, HW_STATUS_RANGE
 * Notes
 *  1. hw_ammonia_fraction with the pk of hw_ammonia_pk gives the same bits.
 * Source
 *   The law of mass action.
 */
int hw_ammonia_fraction_at_pk(double ph, double pk, double *fraction);

/* hw_ammonia_ph_at - the pH at which a given share is free.
 *
 * Given
 *   fraction  the share, between 0 and 1
 *   pk        HW_AMMONIA_PK_MIN to HW_AMMONIA_PK_MAX
 * Returned
 *   ph        pk - log10(1 / fraction - 1), on the scale of pk; not limited to HW_PH_MIN and
 *             HW_PH_MAX
 * Status
 *   HW_STATUS_OK; HW_STATUS_NONE: fraction is exactly 0 or 1, which no pH reaches;
 *   HW_STATUS_RANGE: fraction below 0, above 1 or not finite, or pk out of its range
 * Notes
 *  1. Computed as pk + log10(fraction / (1 - fraction)), which loses nothing near 0 and 1.
 * Source
 *   The law of mass action.
 */
int hw_ammonia_ph_at(double fraction, double pk, double *ph);

#ifdef __cplusplus
}
#endif

#endif
