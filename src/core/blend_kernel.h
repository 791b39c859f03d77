/* blend_kernel.h - the body behind hw_blend_mix, for many shares of the same two waters. Arguments
 * are in range; nothing is checked here. */
#ifndef HOLDWATER_BLEND_KERNEL_H
#define HOLDWATER_BLEND_KERNEL_H

#include "core/seawater_kernel.h"
#include "holdwater/blend.h"

/* Two waters: what does not hang on the share. */
struct hw_blend_pair {
    double temp, salinity, density, heat; /* heat: its specific capacity */
    double new_temp, new_salinity, new_density, new_heat;
};

static inline struct hw_blend_pair hw_blend_pair_of(double temp, double salinity, double new_temp,
                                                    double new_salinity)
{
    struct hw_blend_pair pair = {
        temp,
        salinity,
        hw_density_at_68(hw_temp_68(temp), salinity),
        hw_specific_heat_68(hw_temp_68(temp), salinity),
        new_temp,
        new_salinity,
        hw_density_at_68(hw_temp_68(new_temp), new_salinity),
        hw_specific_heat_68(hw_temp_68(new_temp), new_salinity),
    };
    return pair;
}

/* (1 - share) a + share b, without rounding where a is b, and at both ends. */
static inline double hw_blend_mean(double a, double b, double share)
{
    return share < 0.5 ? a + share * (b - a) : b - (1.0 - share) * (b - a);
}

/* A level of the mixture, by those of the two waters. */
static inline double hw_blend_level_of(const struct hw_blend *blend, double level, double fresh)
{
    return level * blend->per_old + fresh * blend->per_new;
}

static inline void hw_blend_mixed(const struct hw_blend_pair *of, double share,
                                  struct hw_blend *blend)
{
    double w = share * of->new_density / hw_blend_mean(of->density, of->new_density, share);
    double old_heat = (1.0 - w) * of->heat;
    double new_heat = w * of->new_heat;
    blend->mass_share = w;
    blend->heat_share = new_heat / (old_heat + new_heat);
    blend->temp = hw_blend_mean(of->temp, of->new_temp, blend->heat_share);
    blend->salinity = hw_blend_mean(of->salinity, of->new_salinity, w);
    double density = hw_density_at_68(hw_temp_68(blend->temp), blend->salinity);
    blend->per_old = (1.0 - w) * density / of->density;
    blend->per_new = w * density / of->new_density;
}

#endif
