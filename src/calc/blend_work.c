/* blend_work.c - the working of a change of water. */
#include "calc/blend_states.h"
#include "holdwater/seawater.h"

#include <math.h>

static void step_level(const char *symbol, double value, const char *unit,
                       const struct blend_states *s, double old_level, double new_level,
                       struct hw_steps *steps)
{
    hw_step(steps, symbol, value, unit, "conservation", "%.10g * %.10g + %.10g * %.10g", old_level,
            s->blend.per_old, new_level, s->blend.per_new);
}

static void step_free(const char *symbol, double value, double tan, double pk, double ph,
                      struct hw_steps *steps)
{
    hw_step(steps, symbol, value, "mg/L", "khoo1977", "%.10g / (1 + 10^(%.10g - %.10g))", tan, pk,
            ph);
}

static void step_states(const struct blend_states *s, const double in[], struct hw_steps *steps)
{
    static const char *const ph_names[STATES] = {"ph_after", "ph_same_co2", "ph_aired"};
    static const char *const free_names[STATES] = {"free_after", "free_same_co2", "free_aired"};
    hw_step(steps, "carbon_before", s->carbon_before, "mmol/L", "carbonate-set", "%.10g",
            s->carbon_before);
    hw_step(steps, "carbon_fresh", s->carbon_fresh, "mmol/L", "carbonate-set", "%.10g",
            s->carbon_fresh);
    step_level("carbon", s->carbon, "mmol/L", s, s->carbon_before, s->carbon_fresh, steps);
    step_level("alkalinity_after", s->alkalinity, "meq/L", s, in[ALKALINITY], in[FRESH_ALKALINITY],
               steps);
    hw_step(steps, "tank_co2", s->tank_air, "uatm", "carbonate-set", "%.10g", s->tank_air);
    for (int i = 0; i < STATES; i++) {
        if (!isnan(s->free[i])) {
            hw_step(steps, ph_names[i], s->ph[i], "", "carbonate-set", "%.10g", s->ph[i]);
            step_free(free_names[i], s->free[i], s->tan_after, s->pk_after, s->ph[i], steps);
        }
    }
}

static void step_heat(const struct hw_blend *b, const double in[], struct hw_steps *steps)
{
    double w = b->mass_share;
    double tank = 0;
    double fresh = 0;
    hw_seawater_heat_capacity(in[SALINITY], in[TEMP], &tank);
    hw_seawater_heat_capacity(in[FRESH_SALINITY], in[FRESH_TEMP], &fresh);
    hw_step(steps, "heat_tank", tank, "J/(kg K)", "unesco44-heat", "%.15g", tank);
    hw_step(steps, "heat_fresh", fresh, "J/(kg K)", "unesco44-heat", "%.15g", fresh);
    hw_step(steps, "heat_share", b->heat_share, "", "conservation",
            "%.15g * %.15g / ((1 - %.15g) * %.15g + %.15g * %.15g)", w, fresh, w, tank, w, fresh);
    hw_step(steps, "temp_after", b->temp, "C", "conservation",
            "(1 - %.15g) * %.10g + %.15g * %.10g", b->heat_share, in[TEMP], b->heat_share,
            in[FRESH_TEMP]);
}

void blend_work(const double in[], struct hw_steps *steps)
{
    struct blend_states s = blend_states(in);
    const struct hw_blend *b = &s.blend;
    hw_step(steps, "pk_before", s.pk_before, "", "khoo1977", "%.10g", s.pk_before);
    hw_step(steps, "pk_after", s.pk_after, "", "khoo1977", "%.10g", s.pk_after);
    step_free("free_before", s.free_before, s.tan_before, s.pk_before, in[PH], steps);
    step_level("tan_after", s.tan_after, "mg/L", &s, s.tan_before, s.tan_fresh, steps);
    if (s.carbonate) {
        step_states(&s, in, steps);
    } else {
        hw_step(steps, "ph_worst", s.ph_worst, "", "our-arithmetic", "%.10g", s.ph_worst);
        step_free("free_worst", s.free_worst, s.tan_after, s.pk_after, s.ph_worst, steps);
    }
    hw_step(steps, "salinity_after", b->salinity, "g/kg", "conservation",
            "(1 - %.15g) * %.10g + %.15g * %.10g", b->mass_share, in[SALINITY], b->mass_share,
            in[FRESH_SALINITY]);
    hw_step(steps, "salinity_step", b->salinity - in[SALINITY], "g/kg", "", "%.15g - %.15g",
            b->salinity, in[SALINITY]);
    hw_step(steps, "temp_step", b->temp - in[TEMP], "C", "", "%.15g - %.15g", b->temp, in[TEMP]);
    step_heat(b, in, steps);
}
