/* long_limit.c - the published limits for days, turned round into a total. */
#include "calc/long_limit.h"

#include "calc/shared.h"
#include "core/ammonia_kernel.h"
#include "holdwater/ammonia.h"
#include "holdwater/criteria.h"
#include "holdwater/ph.h"
#include "tables.h"

#include <math.h>

static void find_salt(struct long_limit *limit)
{
    double fraction = NAN;
    int status = hw_ammonia_pk(HW_AMMONIA_EPA1989, HW_PH_METER, limit->temp, limit->salinity,
                               &limit->pk_1989);
    hw_ammonia_fraction_at_pk(limit->ph, limit->pk_1989, &fraction);
    limit->salt_n = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[HW_LIMIT_SALT_LONG].value) / fraction;
    limit->stretched |= status > 0;
}

static void find_fresh(struct long_limit *limit)
{
    int status =
        hw_criteria_epa2013(HW_CRITERIA_EPA2013_CCC, limit->ph, limit->temp, &limit->fresh_n);
    limit->stretched |= status > 0;
}

struct long_limit long_limit(double ph, double temp, double salinity)
{
    double fresh_below = hw_limits[HW_LIMIT_FRESH_BELOW].value;
    double salt_from = hw_limits[HW_LIMIT_SALT_FROM].value;
    bool known = !isnan(ph) && !isnan(temp) && !isnan(salinity);
    struct long_limit limit = {
        .ph = ph,
        .temp = temp,
        .salinity = salinity,
        .salt = known && !below(salinity, fresh_below),
        .fresh = known && below(salinity, salt_from),
        .pk_1989 = NAN,
        .salt_n = NAN,
        .fresh_n = NAN,
    };
    double nearest = fmin(fabs(salinity - fresh_below), fabs(salinity - salt_from));
    limit.jump = known && below_limit(nearest, HW_LIMIT_CRITERIA_NEAR);
    if (limit.salt) {
        find_salt(&limit);
    }
    if (limit.fresh) {
        find_fresh(&limit);
    }
    limit.total_n = fmin(limit.salt_n, limit.fresh_n); /* of no number and a number, the number */
    return limit;
}

static double salt_ph(double total_n, double temp, double salinity)
{
    double limit = hw_limits[HW_LIMIT_SALT_LONG].value * (HW_MOLAR_N / HW_MOLAR_NH3);
    return total_n > limit ? hw_ph_of(limit / total_n, hw_epa1989_pk(temp, salinity)) : HUGE_VAL;
}

static double fresh_ph(double total_n, double temp)
{
    double most = NAN;
    double ph = NAN;
    hw_criteria_epa2013(HW_CRITERIA_EPA2013_CCC, HW_PH_MIN, temp, &most);
    if (total_n > most) {
        return -HUGE_VAL;
    }
    int reached = hw_criteria_epa2013_ccc_ph(total_n, temp, &ph);
    return reached < 0 ? HUGE_VAL : ph;
}

double long_limit_ph(double total_n, double temp, double salinity)
{
    bool salt = !below_limit(salinity, HW_LIMIT_FRESH_BELOW);
    bool fresh = below_limit(salinity, HW_LIMIT_SALT_FROM);
    double by_salt = salt ? salt_ph(total_n, temp, salinity) : HUGE_VAL;
    double by_fresh = fresh ? fresh_ph(total_n, temp) : HUGE_VAL;
    return by_salt < by_fresh ? by_salt : by_fresh;
}

void step_pk_1989(double temp, double salinity, const char *symbol, double pk,
                  struct hw_steps *steps)
{
    hw_step(steps, symbol, pk, "", "epa1989",
            "9.245 + 0.116*19.9273*%.10g/(1000 - 1.005109*%.10g) + 0.0324*(298 - (%.10g + 273.15))"
            " + 0.0415*1/(%.10g + 273.15)",
            salinity, salinity, temp, temp);
}

void step_criterion_30_day(double ph, double temp, const char *symbol, double criterion,
                           struct hw_steps *steps)
{
    hw_step(steps, symbol, criterion, "mg/L", "epa2013",
            "0.8876*(0.0278/(1 + 10^(7.688 - %.10g)) + 1.1994/(1 + 10^(%.10g - "
            "7.688)))*2.126*10^(0.028*(20 - %.10g))",
            ph, ph, temp > 7 ? temp : 7);
}

void long_limit_work(const struct long_limit *limit, const char *symbol, struct hw_steps *steps)
{
    if (limit->salt) {
        step_pk_1989(limit->temp, limit->salinity, "pk_1989", limit->pk_1989, steps);
        hw_step(steps, limit->fresh ? "limit_salt" : symbol, limit->salt_n, "mg/L", "epa1989",
                "%.10g * %.10g/%.10g * (1 + 10^(%.10g - %.10g))",
                hw_limits[HW_LIMIT_SALT_LONG].value, HW_MOLAR_N, HW_MOLAR_NH3, limit->pk_1989,
                limit->ph);
    }
    if (limit->fresh) {
        step_criterion_30_day(limit->ph, limit->temp, limit->salt ? "limit_fresh" : symbol,
                              limit->fresh_n, steps);
    }
    if (limit->salt && limit->fresh) {
        hw_step(steps, symbol, limit->total_n, "mg/L", "", "(%.10g < %.10g ? %.10g : %.10g)",
                limit->salt_n, limit->fresh_n, limit->salt_n, limit->fresh_n);
    }
}
