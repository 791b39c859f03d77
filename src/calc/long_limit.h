/* long_limit.h - the total ammonia that reaches the published limit for days in some water; its
 * formulas as steps. */
#ifndef HW_LONG_LIMIT_H
#define HW_LONG_LIMIT_H
#include "calc/steps.h"

/* What the limits say of water of this pH (by a meter), temperature and salinity. */
struct long_limit {
    double ph, temp, salinity;
    bool salt, fresh; /* which apply; between the two steps of salinity both do */
    bool jump;        /* within 1 g/kg of one of these steps */
    bool stretched;   /* outside what a limit was fitted to */
    double pk_1989;   /* NaN where the salt-water limit does not apply */
    double salt_n,
        fresh_n;    /* total ammonia, mg N/L, that reaches each; NaN where it does not apply */
    double total_n; /* the stricter; NaN when the pH, temperature or salinity is NaN */
};

struct long_limit long_limit(double ph, double temp, double salinity);

/* The highest pH at which so much total ammonia, mg/L as N and above 0, is within the limits of
 * such water; not limited to the pH of any water, and infinite where no pH or every pH is. */
double long_limit_ph(double total_n, double temp, double salinity);

/* Writes down how the limit was found; the last step is named `symbol`. */
void long_limit_work(const struct long_limit *limit, const char *symbol, struct hw_steps *steps);

/* The formulas alone, as steps: the constant behind the salt-water limits, and the fresh-water
 * criterion for days. */
void step_pk_1989(double temp, double salinity, const char *symbol, double pk,
                  struct hw_steps *steps);
void step_criterion_30_day(double ph, double temp, const char *symbol, double criterion,
                           struct hw_steps *steps);
#endif
