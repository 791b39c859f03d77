/* blend_work.c - the working of a change of water. */
#include "calc/blend_states.h"
#include "calc/carbonate_work.h"
#include "calc/free_ammonia.h"
#include "calc/long_limit.h"
#include "holdwater/seawater.h"

#include <math.h>
#include <string.h>

static void step_level(const char *symbol, double value, const char *unit,
                       const struct blend_states *s, double old_level, double new_level,
                       struct hw_steps *steps)
{
    hw_step(steps, symbol, value, unit, "conservation", "%.10g * %.10g + %.10g * %.10g", old_level,
            s->blend.per_old, new_level, s->blend.per_new);
}

/* The carbon of both waters, and of the mixture; the carbon dioxide of the tank. */
static void step_carbons(const struct blend_states *s, const double in[], struct hw_steps *steps)
{
    const struct carbonate_water tank = {in[BLEND_ALKALINITY], s->tan_before, in[BLEND_TEMP],
                                         in[BLEND_SALINITY]};
    const struct carbonate_water fresh = {in[BLEND_NEW_ALKALINITY], s->tan_new, in[BLEND_NEW_TEMP],
                                          in[BLEND_NEW_SALINITY]};
    step_carbon("carbon_before", s->carbon_before, in[BLEND_PH], &tank, steps);
    step_carbon("carbon_new", s->carbon_new, in[BLEND_NEW_PH], &fresh, steps);
    step_level("carbon", s->carbon, "mmol/L", s, s->carbon_before, s->carbon_new, steps);
    step_level("alkalinity_after", s->alkalinity, "meq/L", s, in[BLEND_ALKALINITY],
               in[BLEND_NEW_ALKALINITY], steps);
    step_air("tank_co2", s->tank_air, in[BLEND_PH], s->carbon_before, &tank, steps);
}

static void step_states(const struct blend_states *s, const double in[], struct hw_steps *steps)
{
    static const struct carbonate_symbols ph[BLEND_STATES] = {
        {"ph_after", "alkalinity_at_ph_after"},
        {"ph_same_co2", "alkalinity_at_ph_same_co2"},
        {"ph_aired", "alkalinity_at_ph_aired"},
    };
    static const char *const free[BLEND_STATES] = {"free_after", "free_same_co2", "free_aired"};
    const struct carbonate_water mixture = {s->alkalinity, s->tan_after, s->blend.temp,
                                            s->blend.salinity};
    const double air[BLEND_STATES] = {
        [BLEND_SAME_CO2] = s->tank_air, [BLEND_AIRED] = in[BLEND_AIR_CO2]};
    for (int i = 0; i < BLEND_STATES; i++) {
        if (isnan(s->free[i])) {
            continue;
        }
        if (i == BLEND_MIXED) {
            step_ph_closed(&ph[i], s->ph[i], s->carbon, &mixture, steps);
        } else {
            step_ph_in_air(&ph[i], s->ph[i], air[i], &mixture, steps);
        }
        step_free_at(free[i], s->free[i], s->tan_after, s->pk_after, s->ph[i], steps);
    }
}

static void step_heat(const struct hw_blend *b, const double in[], struct hw_steps *steps)
{
    double w = b->mass_share;
    double tank = 0;
    double fresh = 0;
    hw_seawater_specific_heat(in[BLEND_TEMP], in[BLEND_SALINITY], &tank);
    hw_seawater_specific_heat(in[BLEND_NEW_TEMP], in[BLEND_NEW_SALINITY], &fresh);
    hw_step(steps, "heat_tank", tank, "J/(kg K)", "unesco44-heat", "%.15g", tank);
    hw_step(steps, "heat_new", fresh, "J/(kg K)", "unesco44-heat", "%.15g", fresh);
    hw_step(steps, "heat_share", b->heat_share, "", "conservation",
            "%.15g * %.15g / ((1 - %.15g) * %.15g + %.15g * %.15g)", w, fresh, w, tank, w, fresh);
    hw_step(steps, "temp_after", b->temp, "C", "conservation",
            "(1 - %.15g) * %.10g + %.15g * %.10g", b->heat_share, in[BLEND_TEMP], b->heat_share,
            in[BLEND_NEW_TEMP]);
}

/* The change that is needed, found by trying shares, and the proof of it: the largest of the ratios
 * that it is judged by, which is 1 where a limit decides. Both are largest at the higher pH. */
static void step_needed(const struct blend_states *s, const double in[], struct hw_steps *steps)
{
    double ask[BLEND_INPUTS];
    memcpy(ask, in, sizeof ask);
    ask[BLEND_TAKE] = NAN;
    ask[BLEND_SHARE] = NAN;
    struct blend_states at = blend_states(ask);
    double ph = fmax(at.ph[BLEND_MIXED], at.ph[BLEND_AIRED]);
    double free = free_at(ph, at.pk_after, at.tan_after);
    struct long_limit limit = long_limit(ph, at.blend.temp, at.blend.salinity);
    double allowed = s->free_allowed;
    step_level("tan_at_needed", at.tan_after, "mg/L", &at, s->tan_before, s->tan_new, steps);
    hw_step(steps, "ph_at_needed", ph, "", "carbonate-set", "(%.15g > %.15g ? %.15g : %.15g)",
            at.ph[BLEND_MIXED], at.ph[BLEND_AIRED], at.ph[BLEND_MIXED], at.ph[BLEND_AIRED]);
    step_free_at("free_at_needed", free, at.tan_after, at.pk_after, ph, steps);
    long_limit_work(&limit, "limit_at_needed", steps);
    hw_step(steps, "free_allowed", allowed, "mg/L", "our-arithmetic", "%.10g * (1 + %.10g/100)",
            s->free_before, hw_limits[HW_LIMIT_BLEND_RISE].value);
    hw_step(steps, "worst_ratio", fmax(at.tan_after / limit.total_n, free / allowed), "", "",
            "(%.15g/%.15g > %.15g/%.15g ? %.15g/%.15g : %.15g/%.15g)", at.tan_after, limit.total_n,
            free, allowed, at.tan_after, limit.total_n, free, allowed);
    hw_step(steps, "water_needed", s->needed * in[BLEND_VOLUME], "L", "", "%.15g * %.10g",
            s->needed, in[BLEND_VOLUME]);
    hw_step(steps, "share_needed", 100 * s->needed, "%", "", "100 * %.15g", s->needed);
}

/* The mixture, and what is in it. */
static void step_mixture(const struct blend_states *s, const double in[], struct hw_steps *steps)
{
    const struct hw_blend *b = &s->blend;
    step_pk_khoo("pk_after", s->pk_after, b->temp, b->salinity, steps);
    step_level("tan_after_n", s->tan_after, "mg/L", s, s->tan_before, s->tan_new, steps);
    if (s->carbonate) {
        step_carbons(s, in, steps);
        step_states(s, in, steps);
    } else {
        hw_step(steps, "ph_worst", s->ph_worst, "", "our-arithmetic",
                "(%.10g > %.10g ? %.10g : %.10g) + %.10g", in[BLEND_PH], in[BLEND_NEW_PH],
                in[BLEND_PH], in[BLEND_NEW_PH], s->ph_worst - fmax(in[BLEND_PH], in[BLEND_NEW_PH]));
        step_free_at("free_worst", s->free_worst, s->tan_after, s->pk_after, s->ph_worst, steps);
    }
    hw_step(steps, "salinity_after", b->salinity, "g/kg", "conservation",
            "(1 - %.15g) * %.10g + %.15g * %.10g", b->mass_share, in[BLEND_SALINITY], b->mass_share,
            in[BLEND_NEW_SALINITY]);
    hw_step(steps, "salinity_step", b->salinity - in[BLEND_SALINITY], "g/kg", "", "%.15g - %.15g",
            b->salinity, in[BLEND_SALINITY]);
    hw_step(steps, "temp_step", b->temp - in[BLEND_TEMP], "C", "", "%.15g - %.15g", b->temp,
            in[BLEND_TEMP]);
    step_heat(b, in, steps);
    hw_step(steps, "tan_after", s->tan_after_basis, "mg/L", "iupac-weights", "%.15g * %.10g/%.10g",
            s->tan_after, basis_molar((enum hw_nitrogen_basis)in[BLEND_BASIS]), HW_MOLAR_N);
}

void blend_work(const double in[], struct hw_steps *steps)
{
    struct blend_states s = blend_states(in);
    step_pk_khoo("pk_before", s.pk_before, in[BLEND_TEMP], in[BLEND_SALINITY], steps);
    step_free_at("free_before", s.free_before, s.tan_before, s.pk_before, in[BLEND_PH], steps);
    if (!isnan(s.share)) {
        step_mixture(&s, in, steps);
    }
    if (!s.sought) {
        blend_look_for_needed(&s, in, true);
    }
    if (s.need == BLEND_NEED_FOUND) {
        step_needed(&s, in, steps);
    }
}
