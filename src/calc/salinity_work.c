/* salinity_work.c - the working of a salinity answer: the published formulas again, as text, with
 * the numbers of one row. What the core finds by trial is shown as the straight line between two
 * trial salinities close by, or as a ratio with the salinity that it gives. Where densities are
 * subtracted they are written with more digits. */
#include "calc/salinity_reading.h"

#include <math.h>

static double on_68(double temp)
{
    return 1.00024 * temp;
}

static double step_t68(const char *symbol, double temp, struct hw_steps *steps)
{
    hw_step(steps, symbol, on_68(temp), "C", "eos80", "1.00024 * %.10g", temp);
    return on_68(temp);
}

static double step_density(const char *symbol, double salinity, double temp, struct hw_steps *steps)
{
    double density = NAN;
    double t = on_68(temp);
    double s = salinity;
    hw_seawater_density_at(temp, salinity, &density);
    hw_step(steps, symbol, density, "kg/m3", "eos80",
            "999.842594 + 6.793952e-2*%.14g - 9.095290e-3*(%.14g)^2 + 1.001685e-4*(%.14g)^3"
            " - 1.120083e-6*(%.14g)^4 + 6.536332e-9*(%.14g)^5"
            " + (0.824493 - 4.0899e-3*%.10g + 7.6438e-5*(%.10g)^2 - 8.2467e-7*(%.10g)^3"
            " + 5.3875e-9*(%.10g)^4)*%.14g"
            " + (-5.72466e-3 + 1.0227e-4*%.10g - 1.6546e-6*(%.10g)^2)*%.14g^1.5"
            " + 4.8314e-4*%.14g^2",
            t, t, t, t, t, t, t, t, t, s, t, t, s, s);
    return density;
}

/* Two salinities around the one found, a unit of its fourth digit apart. */
static void step_between(const struct salinity_reading *r, double density, struct hw_steps *steps)
{
    double unit = fmax(1e-5, pow(10, floor(log10(r->found)) - 3));
    double high = ceil(r->found / unit) * unit;
    double low = high - unit;
    double dense_low = step_density("density_low", low, r->temp, steps);
    double dense_high = step_density("density_high", high, r->temp, steps);
    hw_step(steps, "found", r->found, "g/kg", "", "%.14g + (%.14g - %.14g)/(%.14g - %.14g)*%.10g",
            low, density, dense_low, dense_high, dense_low, unit);
}

static void work_gravity(const struct salinity_reading *r, struct hw_steps *steps)
{
    const struct hw_hydrometer *h = &r->hydrometer;
    double density = NAN;
    step_t68("water_t68", h->water_temp, steps);
    double water = step_density("water_density", 0, h->water_temp, steps);
    hw_hydrometer_density(h, r->corrected, r->temp, &density);
    hw_step(steps, "liquid_density", density, "kg/m3", "iso1768",
            "%.14g * %.14g / (1 + %.10g*(%.10g - %.10g))", r->corrected, water, h->expansion,
            r->temp, h->scale_temp);
    double t = step_t68("t68", r->temp, steps);
    if (r->found > 0) {
        step_between(r, density, steps);
        return;
    }
    double fresh = step_density("fresh_density", 0, r->temp, steps);
    hw_step(
        steps, "found", r->found, "g/kg", "eos80",
        "(%.14g - %.14g)/(0.824493 - 4.0899e-3*%.10g + 7.6438e-5*(%.10g)^2 - 8.2467e-7*(%.10g)^3"
        " + 5.3875e-9*(%.10g)^4)",
        density, fresh, t, t, t, t);
}

static double temperature_factor(double t68)
{
    return (t68 - 15) / (1 + 0.0162 * (t68 - 15));
}

/* What the extension to low salinity takes off. */
static double low_part(double ratio, double t68)
{
    double wide = 400 * ratio;
    double root = sqrt(100 * ratio);
    return 0.0080 / (1 + 1.5 * wide + wide * wide) +
           0.0005 * temperature_factor(t68) / (1 + root + root * root + root * root * root);
}

static void step_low_part(const char *symbol, double ratio, double t, struct hw_steps *steps)
{
    hw_step(steps, symbol, low_part(ratio, t), "g/kg", "hill1986",
            "0.0080/(1 + 1.5*(400*%.14g) + (400*%.14g)^2)"
            " + 0.0005*(%.14g - 15)/(1 + 0.0162*(%.14g - 15))"
            "/(1 + (100*%.14g)^0.5 + 100*%.14g + (100*%.14g)^1.5)",
            ratio, ratio, t, t, ratio, ratio, ratio);
}

static void step_pss78(const char *symbol, double ratio, double temp, struct hw_steps *steps)
{
    double salinity = NAN;
    double t = on_68(temp);
    double r = ratio;
    hw_conductivity_salinity_by_ratio(ratio, temp, &salinity);
    hw_step(steps, symbol, salinity, "g/kg", "pss78",
            "0.0080 - 0.1692*%.14g^0.5 + 25.3851*%.14g + 14.0941*%.14g^1.5 - 7.0261*%.14g^2"
            " + 2.7081*%.14g^2.5 + (%.14g - 15)/(1 + 0.0162*(%.14g - 15))"
            "*(0.0005 - 0.0056*%.14g^0.5 - 0.0066*%.14g - 0.0375*%.14g^1.5 + 0.0636*%.14g^2"
            " - 0.0144*%.14g^2.5)",
            r, r, r, r, r, t, t, r, r, r, r, r);
}

/* The salinity that a ratio gives, by the published scale from 2 up, by its extension below. */
static void step_salinity_of(const char *symbol, double ratio, double salinity, double temp,
                             struct hw_steps *steps)
{
    if (salinity >= HW_CONDUCTIVITY_LOW) {
        step_pss78(symbol, ratio, temp, steps);
        return;
    }
    double plain = NAN;
    double at_2 = NAN;
    double ratio_at_2 = NAN;
    double t = on_68(temp);
    hw_conductivity_at(temp, HW_CONDUCTIVITY_LOW, &at_2);
    hw_conductivity_ratio(at_2, temp, &ratio_at_2);
    hw_conductivity_salinity_by_ratio(ratio, temp, &plain);
    step_pss78("pss78_at_2", ratio_at_2, temp, steps);
    step_low_part("low_part_at_2", ratio_at_2, t, steps);
    step_pss78("pss78", ratio, temp, steps);
    step_low_part("low_part", ratio, t, steps);
    hw_step(steps, symbol, salinity, "g/kg", "hill1986", "2/(2 - %.14g) * (%.14g - %.14g)",
            low_part(ratio_at_2, t), plain, low_part(ratio, t));
}

static double step_ratio(const char *symbol, double conductivity, double temp,
                         struct hw_steps *steps)
{
    double ratio = NAN;
    double t = on_68(temp);
    hw_conductivity_ratio(conductivity, temp, &ratio);
    hw_step(
        steps, symbol, ratio, "", "pss78",
        "%.14g/(42.914*(0.6766097 + 2.00564e-2*%.14g + 1.104259e-4*(%.14g)^2 - 6.9698e-7*(%.14g)^3"
        " + 1.0031e-9*(%.14g)^4))",
        conductivity, t, t, t, t);
    return ratio;
}

static void work_conductivity(const struct salinity_reading *r, struct hw_steps *steps)
{
    double value = fabs(r->corrected);
    double seen = salinity_conductivity_seen(r, value);
    if (r->of == SALINITY_OF_COMPENSATED) {
        hw_step(steps, "seen", seen, "mS/cm", "meter-manuals",
                "%.14g * (1 + %.10g/100*(%.10g - 25))", value, r->slope, r->temp);
    }
    step_t68("t68", r->temp, steps);
    double ratio = step_ratio("ratio", seen, r->temp, steps);
    if (r->corrected < 0) {
        step_salinity_of("found_above_zero", ratio, -r->found, r->temp, steps);
        hw_step(steps, "found", r->found, "g/kg", "", "-(%.14g)", -r->found);
        return;
    }
    step_salinity_of("found", ratio, r->found, r->temp, steps);
}

static void work_refraction(const struct salinity_reading *r, struct hw_steps *steps)
{
    double t = r->temp;
    hw_step(steps, "found", r->found, "g/kg", "quan-fry1995",
            "(%.14g - (1.31405 - 2.02e-6*(%.10g)^2 + (15.868 - 0.00423*%.10g)/589.3 - 4382/589.3^2"
            " + 1.1455e6/589.3^3))/(1.779e-4 - 1.05e-6*%.10g + 1.6e-8*(%.10g)^2 + 0.01155/589.3)",
            r->corrected, t, t, t, t);
}

static void step_corrected(const struct salinity_reading *r, struct hw_steps *steps)
{
    if (isnan(r->standard)) {
        hw_step(steps, "corrected", r->corrected, "", "", "%.10g - (%.10g)", r->reading, r->zero);
        return;
    }
    if (r->standard_is == SALINITY_SEA_WATER) {
        hw_step(steps, "standard_true", r->standard_true, "", "brine-table", "%.10g / %.10g",
                r->standard,
                r->of == SALINITY_OF_BRINE_GKG ? HW_REFRACTION_BRINE_GKG_FACTOR
                                               : HW_REFRACTION_BRINE_GL_FACTOR);
    }
    hw_step(steps, "corrected", r->corrected, "", "", "(%.10g - (%.10g)) * %.14g / %.10g",
            r->reading, r->zero, r->standard_true, r->reads);
}

static void step_found(const struct salinity_reading *r, struct hw_steps *steps)
{
    switch (r->of) {
    case SALINITY_OF_SG:
        work_gravity(r, steps);
        break;
    case SALINITY_OF_CONDUCTIVITY:
    case SALINITY_OF_COMPENSATED:
        work_conductivity(r, steps);
        break;
    case SALINITY_OF_REFRACTION:
        work_refraction(r, steps);
        break;
    case SALINITY_OF_SCALE:
        hw_step(steps, "found", r->found, "g/kg", "", "%.14g", r->corrected);
        break;
    case SALINITY_OF_BRINE_GKG:
    case SALINITY_OF_BRINE_GL:
    default:
        hw_step(steps, "found", r->found, "g/kg", "brine-table", "%.10g * %.14g",
                r->of == SALINITY_OF_BRINE_GKG ? HW_REFRACTION_BRINE_GKG_FACTOR
                                               : HW_REFRACTION_BRINE_GL_FACTOR,
                r->corrected);
        break;
    }
}

static void step_salinity(const char *symbol, const struct salinity_reading *r,
                          struct hw_steps *steps)
{
    hw_step(steps, symbol, r->salinity, "g/kg", "", "(%.14g > 0 ? %.14g : 0)", r->found, r->found);
}

/* The other results, from the salinity. */
static void step_rest(const struct salinity_reading *r, struct hw_steps *steps)
{
    double ratio = NAN;
    double t = on_68(r->temp);
    step_density("density", r->salinity, r->temp, steps);
    double at_25 = step_density("density_at_25", r->salinity, 25, steps);
    double water_at_25 = step_density("water_at_25", 0, 25, steps);
    hw_step(steps, "sg_25_25", r->gravity, "", "eos80", "%.10g / %.10g", at_25, water_at_25);
    hw_conductivity_ratio(r->conductivity, r->temp, &ratio);
    if (r->salinity > 0) {
        step_salinity_of("salinity_of_ratio", ratio, r->salinity, r->temp, steps);
    }
    hw_step(steps, "conductivity", r->conductivity, "mS/cm", "pss78",
            "42.914*(0.6766097 + 2.00564e-2*%.14g + 1.104259e-4*(%.14g)^2 - 6.9698e-7*(%.14g)^3"
            " + 1.0031e-9*(%.14g)^4)*%.14g",
            t, t, t, t, ratio);
}

/* The range of a hydrometer without its reference: the highest, then the lowest. */
static void work_range(const double in[], struct hw_steps *steps)
{
    struct salinity_range range = salinity_range(in);
    struct salinity_reading high = salinity_reading_by(in, range.high);
    struct salinity_reading low = salinity_reading_by(in, range.low);
    step_corrected(&high, steps);
    step_found(&high, steps);
    step_salinity("salinity_to", &high, steps);
    step_found(&low, steps);
    step_salinity("salinity_from", &low, steps);
}

void salinity_work(const double in[], struct hw_steps *steps)
{
    if (salinity_reference_unknown(in)) {
        work_range(in, steps);
        return;
    }
    struct salinity_reading r = salinity_reading(in);
    step_corrected(&r, steps);
    step_found(&r, steps);
    step_rest(&r, steps);
    step_salinity("salinity", &r, steps);
}
