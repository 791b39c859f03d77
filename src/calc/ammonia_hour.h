/* ammonia_hour.h - water at a meter's pH against the published 1-hour limits, for calculations
 * beside ammonia. */
#ifndef HW_AMMONIA_HOUR_H
#define HW_AMMONIA_HOUR_H
#include <stdbool.h>

/* What ammonia would say of a total (mg/L as N) at a pH: the free share by khoo1977, and how many
 * times each 1-hour limit it is; 0 where one does not apply. */
struct ammonia_hour {
    double pk, fraction, free_n;
    double salt_ratio, fresh_ratio;
    bool fit_stretched, criteria_stretched;
};

struct ammonia_hour ammonia_hour(double total_n, double ph, double temp, double salinity);
#endif
