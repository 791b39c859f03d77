/* free_ammonia.h - free ammonia of a total at a meter's pH, and how it is written down. */
#ifndef HW_FREE_AMMONIA_H
#define HW_FREE_AMMONIA_H
#include "calc/steps.h"

#include <stdbool.h>

/* Free ammonia of a total at a pH, in the unit of the total; NaN outside the core's range. */
double free_at(double ph, double pk, double tan);

/* Free ammonia goes up by more than readings could tell of nothing. */
bool free_rises(double before, double after);

/* Free ammonia as a step, mg/L. */
void step_free_at(const char *symbol, double value, double tan, double pk, double ph,
                  struct hw_steps *steps);

/* The constant of khoo1977 as a step. */
void step_pk_khoo(const char *symbol, double pk, double temp, double salinity,
                  struct hw_steps *steps);
#endif
