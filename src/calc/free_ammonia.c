/* free_ammonia.c - free ammonia of a total at a meter's pH. */
#include "calc/free_ammonia.h"

#include "calc/shared.h"
#include "holdwater/ammonia.h"

#include <math.h>

double free_at(double ph, double pk, double tan)
{
    double fraction = NAN;
    hw_ammonia_fraction_at_pk(ph, pk, &fraction);
    return fraction * tan;
}

bool free_rises(double before, double after)
{
    return above(after, before * (1 + hw_limits[HW_LIMIT_FREE_RISE].value / 100));
}

void step_free_at(const char *symbol, double value, double tan, double pk, double ph,
                  struct hw_steps *steps)
{
    hw_step(steps, symbol, value, "mg/L", "khoo1977", "%.10g / (1 + 10^(%.10g - %.10g))", tan, pk,
            ph);
}

void step_pk_khoo(const char *symbol, double pk, double temp, double salinity,
                  struct hw_steps *steps)
{
    hw_step(steps, symbol, pk, "", "khoo1977",
            "0.09018 + 2729.92/(%.10g + 273.15)"
            " + (0.1552 - 0.0003142*%.10g) * 19.924*%.10g/(1000 - 1.005*%.10g)",
            temp, temp, salinity, salinity);
}
