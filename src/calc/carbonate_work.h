/* carbonate_work.h - the carbonate system as steps of a working. */
#ifndef HW_CARBONATE_WORK_H
#define HW_CARBONATE_WORK_H
#include "calc/steps.h"

/* A water as the steps need it: alkalinity in meq/L, total ammonia in mg N/L, degrees Celsius,
 * g/kg. */
struct carbonate_water {
    double alkalinity, tan, temp, salinity;
};

/* Dissolved carbon, mmol/L, of a meter's pH and the alkalinity. */
void step_carbon(const char *symbol, double carbon, double ph, const struct carbonate_water *water,
                 struct hw_steps *steps);

/* Carbon dioxide, uatm, that water of this dissolved carbon and pH is in balance with. */
void step_air(const char *symbol, double air, double ph, double carbon,
              const struct carbonate_water *water, struct hw_steps *steps);

/* The two steps of a pH that was found by trial: itself, and the proof of it, the alkalinity of
 * the water at this pH, which is the alkalinity that it has. */
struct carbonate_symbols {
    const char *ph, *proof;
};

/* Of water whose dissolved carbon, mmol/L, is known. */
void step_ph_closed(const struct carbonate_symbols *symbols, double ph, double carbon,
                    const struct carbonate_water *water, struct hw_steps *steps);

/* Of water in balance with air of so much carbon dioxide, uatm. */
void step_ph_in_air(const struct carbonate_symbols *symbols, double ph, double air,
                    const struct carbonate_water *water, struct hw_steps *steps);
#endif
