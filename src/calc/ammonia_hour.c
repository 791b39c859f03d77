/* ammonia_hour.c - one sample as ammonia sees it, against the limits for an hour alone. */
#include "calc/ammonia_hour.h"

#include "calc/ammonia_sample.h"

struct ammonia_hour ammonia_hour(double total_n, double ph, double temp, double salinity)
{
    const double in[AMMONIA_INPUTS] = {
        [AMMONIA_TAN] = total_n,          [AMMONIA_BASIS] = HW_NITROGEN_N,
        [AMMONIA_DILUTION] = 1,           [AMMONIA_PH] = ph,
        [AMMONIA_PH_SCALE] = HW_PH_METER, [AMMONIA_TEMP] = temp,
        [AMMONIA_SALINITY] = salinity,    [AMMONIA_MODEL_METER] = HW_AMMONIA_KHOO1977,
    };
    struct ammonia_sample s = ammonia_sample(in);
    struct ammonia_hour hour = {
        .pk = s.pk, .fraction = s.fraction, .free_n = s.free_n, .fit_stretched = s.fit_stretched};
    if (ammonia_salt_applies(&s)) {
        hour.salt_ratio = ammonia_against_salt(&s, ammonia_short_limits.salt, false).ratio;
    }
    if (ammonia_fresh_applies(&s)) {
        hour.fresh_ratio = ammonia_against_fresh(&s, ammonia_short_limits.fresh).ratio;
    }
    hour.criteria_stretched = s.criteria_stretched;
    return hour;
}
