/* blend_states.c - the reckoning of one change of water. */
#include "calc/blend_states.h"

#include "calc/ammonia_hour.h"
#include "calc/free_ammonia.h"
#include "calc/long_limit.h"
#include "tables.h"

#include <math.h>

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = NAN;
    hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

/* What both waters hold before they are mixed. */
static void find_waters(struct blend_states *s, const double in[])
{
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)in[BLEND_BASIS];
    s->tan_before = nitrogen_to_n(basis, in[BLEND_TAN]);
    s->tan_new = nitrogen_to_n(basis, in[BLEND_NEW_TAN]);
    int status = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, in[BLEND_TEMP], in[BLEND_SALINITY],
                               &s->pk_before);
    s->stretched = status > 0;
    s->free_before = free_at(in[BLEND_PH], s->pk_before, s->tan_before);
    s->free_allowed = s->free_before * (1 + hw_limits[HW_LIMIT_BLEND_RISE].value / 100);
}

static void find_mixture(struct blend_states *s, const double in[])
{
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)in[BLEND_BASIS];
    int status = hw_blend_mix(s->share, in[BLEND_TEMP], in[BLEND_SALINITY], in[BLEND_NEW_TEMP],
                              in[BLEND_NEW_SALINITY], &s->blend);
    s->above_fit = status > 0;
    s->tan_after = level_of(&s->blend, s->tan_before, s->tan_new);
    s->tan_after_basis = nitrogen_from_n(basis, s->tan_after);
    int after = hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, s->blend.temp, s->blend.salinity,
                              &s->pk_after);
    s->stretched = s->stretched || after > 0;
}

/* Without the alkalinities: the higher pH, and more where the salinities differ. */
static void find_worst(struct blend_states *s, const double in[])
{
    bool apart =
        above_limit(fabs(in[BLEND_SALINITY] - in[BLEND_NEW_SALINITY]), HW_LIMIT_BLEND_APART);
    double more = apart ? hw_limits[HW_LIMIT_BLEND_PH_MORE].value : 0;
    s->ph_worst = fmax(in[BLEND_PH], in[BLEND_NEW_PH]) + more;
    s->free_worst = free_at(s->ph_worst, s->pk_after, s->tan_after);
}

static struct blend_waters both_waters(const struct blend_states *s, const double in[])
{
    return (struct blend_waters){
        .tank = {&s->tank_water, in[BLEND_ALKALINITY], s->carbon_before, s->tan_before},
        .fresh = {&s->new_water, in[BLEND_NEW_ALKALINITY], s->carbon_new, s->tan_new},
        .free_allowed = s->free_allowed,
        .air = in[BLEND_AIR_CO2],
    };
}

static bool has_ammonia(const struct blend_states *s)
{
    return s->tan_before > 0 || s->tan_new > 0;
}

void blend_look_for_needed(struct blend_states *s, const double in[], bool share)
{
    if (!(s->carbonate && s->refusal == BLEND_ANSWERED && has_ammonia(s))) {
        return;
    }
    struct blend_waters waters = both_waters(s, in);
    bool found = false;
    if (share) {
        s->needed = blend_needed(&waters, &s->settled, &s->needed_water);
        found = !isnan(s->needed);
    } else {
        found = blend_is_possible(&waters);
    }
    s->need = found ? BLEND_NEED_FOUND : BLEND_NEED_NONE;
}

/* Dissolved carbon of the two readings, and the carbon dioxide of the tank. */
static void find_carbon(struct blend_states *s, const double in[])
{
    double new_air = NAN;
    hw_carbonate_water(in[BLEND_TEMP], in[BLEND_SALINITY], &s->tank_water);
    hw_carbonate_water(in[BLEND_NEW_TEMP], in[BLEND_NEW_SALINITY], &s->new_water);
    int tank = hw_carbonate_water_read(&s->tank_water, in[BLEND_PH], in[BLEND_ALKALINITY],
                                       s->tan_before, &s->carbon_before, &s->tank_air);
    int fresh = hw_carbonate_water_read(&s->new_water, in[BLEND_NEW_PH], in[BLEND_NEW_ALKALINITY],
                                        s->tan_new, &s->carbon_new, &new_air);
    s->stretched = s->stretched || tank > 0 || fresh > 0;
    if (tank < 0 || fresh < 0) {
        s->refusal = BLEND_PH_NOT_ALKALINITY;
        return;
    }
    s->co2_odd = !(s->tank_air >= HW_CARBONATE_AIR_MIN && s->tank_air <= HW_CARBONATE_AIR_MAX);
}

static void find_states(struct blend_states *s, const double in[])
{
    const struct hw_blend *b = &s->blend;
    s->alkalinity = level_of(b, in[BLEND_ALKALINITY], in[BLEND_NEW_ALKALINITY]);
    s->carbon = level_of(b, s->carbon_before, s->carbon_new);
    struct blend_waters waters = both_waters(s, in);
    struct hw_carbonate_water made;
    const struct hw_carbonate_water *water =
        blend_is_water(b, &s->needed_water) ? &s->needed_water : blend_ready(&waters, b, &made);
    int status =
        hw_carbonate_water_ph(water, s->alkalinity, s->carbon, s->tan_after, &s->ph[BLEND_MIXED]);
    s->stretched = s->stretched || status > 0;
    hw_carbonate_water_ph_in_air(water, s->alkalinity, in[BLEND_AIR_CO2], s->tan_after,
                                 &s->ph[BLEND_AIRED]);
    hw_carbonate_water_ph_in_air(water, s->alkalinity, s->tank_air, s->tan_after,
                                 &s->ph[BLEND_SAME_CO2]);
    const bool left_out[BLEND_STATES] = {[BLEND_SAME_CO2] = s->co2_odd};
    for (int i = 0; i < BLEND_STATES; i++) {
        s->free[i] = free_at(s->ph[i], s->pk_after, s->tan_after);
        if (isnan(s->free[i]) && !left_out[i]) {
            s->refusal = BLEND_OUTSIDE_PH;
        }
    }
    s->enough = has_ammonia(s) && (s->sought || blend_does_it(&waters, b, water));
}

/* The tank as it is, where a change of some size was asked about, and the mixture at the highest pH
 * that it may have. */
static void find_limits(struct blend_states *s, const double in[])
{
    double ph = s->ph_worst;
    for (int i = 0; i < BLEND_STATES; i++) {
        ph = fmax(ph, s->ph[i]);
    }
    struct long_limit before = long_limit(in[BLEND_PH], in[BLEND_TEMP], in[BLEND_SALINITY]);
    struct long_limit after = long_limit(ph, s->blend.temp, s->blend.salinity);
    double tan_before = s->sought ? (double)NAN : s->tan_before;
    s->over_salt = above(tan_before, before.salt_n) || above(s->tan_after, after.salt_n);
    s->over_fresh = above(tan_before, before.fresh_n) || above(s->tan_after, after.fresh_n);
    s->limit_after = after.total_n;
    struct ammonia_hour hour = ammonia_hour(s->tan_after, ph, s->blend.temp, s->blend.salinity);
    s->hour_salt = above(hour.salt_ratio, 1);
    s->hour_fresh = above(hour.fresh_ratio, 1);
}

/* The states of the mixture, or without the alkalinities the worst. */
static void find_after(struct blend_states *s, const double in[])
{
    find_mixture(s, in);
    if (s->carbonate) {
        find_states(s, in);
    } else {
        find_worst(s, in);
        s->refusal = isnan(s->free_worst) ? BLEND_OUTSIDE_PH : BLEND_ANSWERED;
    }
    find_limits(s, in);
}

struct blend_states blend_before(const double in[])
{
    static const struct hw_blend none = {NAN, NAN, NAN, NAN, NAN, NAN};
    struct blend_states s = {
        .carbonate = !isnan(in[BLEND_ALKALINITY]) && !isnan(in[BLEND_NEW_ALKALINITY]),
        .needed = NAN,
        .blend = none,
        .tan_after = NAN,
        .tan_after_basis = NAN,
        .pk_after = NAN,
        .needed_water.temp = NAN,
        .carbon_before = NAN,
        .carbon_new = NAN,
        .carbon = NAN,
        .alkalinity = NAN,
        .tank_air = NAN,
        .ph = {NAN, NAN, NAN},
        .free = {NAN, NAN, NAN},
        .ph_worst = NAN,
        .free_worst = NAN,
        .limit_after = NAN,
    };
    find_waters(&s, in);
    if (s.carbonate) {
        find_carbon(&s, in);
    }
    return s;
}

void blend_change(struct blend_states *s, const double in[], double share)
{
    s->sought = isnan(share);
    if (s->sought) {
        blend_look_for_needed(s, in, true);
    }
    s->share = s->sought ? s->needed : share;
    if (s->share > 1) {
        s->refusal = BLEND_OVER_VOLUME;
    } else if (s->sought && s->need == BLEND_NEED_UNKNOWN && s->refusal == BLEND_ANSWERED) {
        s->refusal = BLEND_NO_SHARE;
    } else if (s->refusal == BLEND_ANSWERED && !isnan(s->share)) {
        find_after(s, in);
    }
}

struct blend_states blend_states(const double in[])
{
    struct blend_states s = blend_before(in);
    double share =
        isnan(in[BLEND_SHARE]) ? in[BLEND_TAKE] / in[BLEND_VOLUME] : in[BLEND_SHARE] / 100;
    blend_change(&s, in, share);
    return s;
}

double blend_highest_free(const struct blend_states *s)
{
    double settled = fmax(s->free[BLEND_SAME_CO2], s->free[BLEND_AIRED]);
    return fmax(fmax(s->free[BLEND_MIXED], settled), s->free_worst);
}
