/* holdwater/carbonate.h - the carbonate system: pH from alkalinity and dissolved carbon, and back.
 *
 * pH is the number of a meter calibrated in fresh-water buffers. Inside, everything is reckoned on
 * the total hydrogen ion scale, in mol per kg of solution.
 */
#ifndef HOLDWATER_CARBONATE_H
#define HOLDWATER_CARBONATE_H

#include "holdwater/ammonia.h"
#include "holdwater/ph.h"
#include "holdwater/status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Alkalinity, meq/L. Dissolved carbon: carbon dioxide, bicarbonate and carbonate together, mmol/L.
 * Carbon dioxide of the air, uatm. Total ammonia, mg N/L. Temperature, degrees Celsius. pH
 * and salinity: as in ph.h */
#define HW_CARBONATE_ALKALINITY_MIN 0.0
#define HW_CARBONATE_ALKALINITY_MAX 20.0
#define HW_CARBONATE_CARBON_MIN     0.0
#define HW_CARBONATE_CARBON_MAX     1000.0
#define HW_CARBONATE_AIR_MIN        100.0
#define HW_CARBONATE_AIR_MAX        10000.0
#define HW_CARBONATE_TAN_MIN        0.0
#define HW_CARBONATE_TAN_MAX        210.0 /* a mixture of two waters with 200 included */
#define HW_CARBONATE_TEMP_MIN       0.0
#define HW_CARBONATE_TEMP_MAX       40.0

/* The constants of one water, on the total scale in mol per kg of solution. */
struct hw_carbonate_constants {
    double pk1, pk2;         /* of carbonic acid */
    double pkb, pkw, pkn;    /* of boric acid, of water, of ammonium */
    double boron;            /* total, mol/kg */
    double per_atmosphere;   /* carbon dioxide, mol/kg, in balance with one atmosphere of it */
    double density;          /* kg/L */
    double meter_over_total; /* a meter's pH minus pH on the total scale */
};

/* hw_carbonate_constants - the constants that the other functions use.
 *
 * Given
 *   temp        degrees Celsius, HW_CARBONATE_TEMP_MIN to HW_CARBONATE_TEMP_MAX
 *   salinity    g/kg, HW_PH_SALINITY_MIN to HW_PH_SALINITY_MAX
 * Returned
 *   constants   all parts; each NaN without an answer
 * Status
 *   As hw_ph_offset of the meter; HW_STATUS_RANGE
 * Notes
 *  1. Below 5 g/kg KB lies outside its fit and the pairing of ions is sea salt's still: pH by them
 *     is good to 0.1 there. No status tells; a caller should.
 * Source
 *   K1, K2: Waters, Millero & Woosley 2014, total scale. KB: Dickson 1990. Boron: Uppstrom 1974.
 *   KW: Millero 1995 as in the Guide of 2007. KN: Clegg & Whitfield 1995. Carbon dioxide: Weiss
 *   1974. Density: hw_seawater_density_at. Scale: hw_ph_offset.
 */
int hw_carbonate_constants(double temp, double salinity, struct hw_carbonate_constants *constants);

/* One water made ready for several questions: what depends on its temperature and salinity alone,
 * on the total scale in mol per kg of solution. hw_carbonate_water fills it; then it is only
 * read. */
struct hw_carbonate_water {
    int status;              /* of hw_carbonate_water; below 0 nothing asked of it has an answer */
    double temp, salinity;   /* as given */
    double density;          /* kg/m3 */
    double meter_over_total; /* a meter's pH minus pH on the total scale */
    double k1, k2;           /* of carbonic acid */
    double kb, kw, kn;       /* of boric acid, of water, of ammonium */
    double boron;            /* total, mol/kg */
    double per_atmosphere;   /* carbon dioxide, mol/kg, in balance with one atmosphere of it */
};

/* hw_carbonate_water - makes a water ready for the three functions that follow.
 *
 * Given
 *   temp        degrees Celsius, HW_CARBONATE_TEMP_MIN to HW_CARBONATE_TEMP_MAX
 *   salinity    g/kg, HW_PH_SALINITY_MIN to HW_PH_SALINITY_MAX
 * Returned
 *   water       all parts; without an answer each NaN but the status
 * Status
 *   As hw_ph_offset of the meter; HW_STATUS_RANGE. It is kept in the water
 * Notes
 *  1. Most of the work of a question is here: ask of one water as often as needed.
 * Source
 *   As hw_carbonate_constants.
 */
int hw_carbonate_water(double temp, double salinity, struct hw_carbonate_water *water);

/* hw_carbonate_water_read - dissolved carbon of water whose pH and alkalinity were measured, and
 * the air that it would be in balance with.
 *
 * Given
 *   water       of hw_carbonate_water
 *   ph, alkalinity, tan   as hw_carbonate_carbon
 * Returned
 *   carbon      as hw_carbonate_carbon
 *   air         as hw_carbonate_air
 * Status
 *   As hw_carbonate_carbon; HW_STATUS_RANGE also where the water has no answer
 * Notes
 *  1. To the last bit what hw_carbonate_carbon and hw_carbonate_air say.
 * Source
 *   As hw_carbonate_carbon.
 */
int hw_carbonate_water_read(const struct hw_carbonate_water *water, double ph, double alkalinity,
                            double tan, double *carbon, double *air);

/* hw_carbonate_water_ph - pH by alkalinity and dissolved carbon.
 *
 * Given
 *   water       of hw_carbonate_water
 *   alkalinity, carbon, tan   as hw_carbonate_ph
 * Returned
 *   ph          as hw_carbonate_ph
 * Status
 *   As hw_carbonate_ph; HW_STATUS_RANGE also where the water has no answer
 * Notes
 *  1. To the last bit what hw_carbonate_ph says.
 * Source
 *   As hw_carbonate_carbon.
 */
int hw_carbonate_water_ph(const struct hw_carbonate_water *water, double alkalinity, double carbon,
                          double tan, double *ph);

/* hw_carbonate_water_ph_in_air - pH in balance with air.
 *
 * Given
 *   water       of hw_carbonate_water
 *   alkalinity, air, tan   as hw_carbonate_ph_in_air
 * Returned
 *   ph          as hw_carbonate_ph_in_air
 * Status
 *   As hw_carbonate_ph_in_air; HW_STATUS_RANGE also where the water has no answer
 * Notes
 *  1. To the last bit what hw_carbonate_ph_in_air says.
 * Source
 *   As hw_carbonate_ph_in_air.
 */
int hw_carbonate_water_ph_in_air(const struct hw_carbonate_water *water, double alkalinity,
                                 double air, double tan, double *ph);

/* hw_carbonate_carbon - dissolved carbon of water whose pH and alkalinity were measured.
 *
 * Given
 *   ph          of a meter, HW_PH_MIN to HW_PH_MAX
 *   alkalinity  total, meq/L, HW_CARBONATE_ALKALINITY_MIN to HW_CARBONATE_ALKALINITY_MAX
 *   tan         total ammonia, mg N/L, HW_CARBONATE_TAN_MIN to HW_CARBONATE_TAN_MAX
 *   temp        degrees Celsius, HW_CARBONATE_TEMP_MIN to HW_CARBONATE_TEMP_MAX
 *   salinity    g/kg, HW_PH_SALINITY_MIN to HW_PH_SALINITY_MAX
 * Returned
 *   carbon      mmol/L
 * Status
 *   As hw_ph_offset of the meter; HW_STATUS_NONE: borate, hydroxide and ammonia alone have more
 *   alkalinity than that at this pH; HW_STATUS_RANGE
 * Notes
 *  1. carbon = (TA - Anc) / c, with Anc = BT KB/(KB + h) + KW/h - h + N KN/(KN + h) and
 *     c = (K1 h + 2 K1 K2) / (h^2 + K1 h + K1 K2).
 *  2. Not modelled: phosphate (above 5 mg/L it moves pH in air by 0.02), silicate, fluoride, salts
 *     that are no sea salt.
 * Source
 *   Constants: hw_carbonate_constants.
 */
int hw_carbonate_carbon(double ph, double alkalinity, double tan, double temp, double salinity,
                        double *carbon);

/* hw_carbonate_ph - pH of water by its alkalinity and dissolved carbon.
 *
 * Given
 *   alkalinity, tan, temp, salinity   as hw_carbonate_carbon
 *   carbon      mmol/L, HW_CARBONATE_CARBON_MIN to HW_CARBONATE_CARBON_MAX
 * Returned
 *   ph          as a meter would show it; it may lie outside HW_PH_MIN and HW_PH_MAX
 * Status
 *   As hw_carbonate_carbon; HW_STATUS_NONE: outside 3 to 12 on the total scale
 * Notes
 *  1. The pH at which Anc + carbon c = TA, by Newton's steps within 3 to 12.
 * Source
 *   As hw_carbonate_carbon.
 */
int hw_carbonate_ph(double alkalinity, double carbon, double tan, double temp, double salinity,
                    double *ph);

/* hw_carbonate_ph_in_air - pH of water in balance with air.
 *
 * Given
 *   alkalinity, tan, temp, salinity   as hw_carbonate_carbon
 *   air         carbon dioxide, uatm, HW_CARBONATE_AIR_MIN to HW_CARBONATE_AIR_MAX
 * Returned
 *   ph          as a meter would show it
 * Status
 *   As hw_ph_offset of the meter; HW_STATUS_RANGE
 * Notes
 *  1. The pH at which Anc + K0 f air K1/h (1 + 2 K2/h) = TA, by the same steps.
 *  2. Hours with strong air; a closed room holds 800 to 1200 uatm and keeps pH 0.25 to 0.4 lower.
 * Source
 *   Constants: hw_carbonate_constants.
 */
int hw_carbonate_ph_in_air(double alkalinity, double air, double tan, double temp, double salinity,
                           double *ph);

/* hw_carbonate_air - the carbon dioxide of air that water would be in balance with.
 *
 * Given
 *   ph          of a meter, HW_PH_MIN to HW_PH_MAX
 *   alkalinity, tan, temp, salinity   as hw_carbonate_carbon
 * Returned
 *   air         uatm; it may lie outside HW_CARBONATE_AIR_MIN and HW_CARBONATE_AIR_MAX
 * Status
 *   As hw_carbonate_carbon
 * Notes
 *  1. air = carbon h^2 / (h^2 + K1 h + K1 K2) / (K0 f).
 * Source
 *   As hw_carbonate_ph_in_air.
 */
int hw_carbonate_air(double ph, double alkalinity, double tan, double temp, double salinity,
                     double *air);

#ifdef __cplusplus
}
#endif

#endif
