/* salinity_reading.c - the reckoning of one reading of salinity. */
#include "calc/salinity_reading.h"

#include <math.h>

/* The two temperatures of each reference, in the order of its words. */
static const struct {
    double scale, water;
} references[SALINITY_REFERENCES] = {
    {(60.0 - 32.0) * 5.0 / 9.0, (60.0 - 32.0) * 5.0 / 9.0}, {20, 20}, {25, 25}, {15, 4}, {20, 4}};

/* What each kind of instrument shows in fresh water, about. */
static const double in_fresh_water[] = {
    [SALINITY_OF_SG] = 1,          [SALINITY_OF_CONDUCTIVITY] = 0,
    [SALINITY_OF_COMPENSATED] = 0, [SALINITY_OF_REFRACTION] = 1.333,
    [SALINITY_OF_SCALE] = 0,       [SALINITY_OF_BRINE_GKG] = 0,
    [SALINITY_OF_BRINE_GL] = 0};

/* The one of several entries of a name that is given, or NaN. */
static double given(const double in[], int first, int last)
{
    double value = NAN;
    for (int i = first; i <= last; i++) {
        value = isnan(in[i]) ? value : in[i];
    }
    return value;
}

static struct hw_hydrometer hydrometer_of(const double in[], size_t reference)
{
    double expansion = in[SALINITY_GLASS] == YES ? HW_HYDROMETER_GLASS : 0;
    return (struct hw_hydrometer){references[reference].scale, references[reference].water,
                                  expansion};
}

double salinity_conductivity_seen(const struct salinity_reading *r, double value)
{
    double seen = value;
    if (r->of == SALINITY_OF_COMPENSATED) {
        hw_conductivity_raw(value, r->slope / 100, r->temp, &seen);
    }
    return seen;
}

/* Below zero, where a zero error was taken off, salinity is counted as far below as it would be
 * above. */
static double behind_conductivity(const struct salinity_reading *r, double value)
{
    double salinity = NAN;
    double seen = salinity_conductivity_seen(r, fabs(value));
    hw_conductivity_salinity(seen, r->temp, &salinity);
    return value < 0 ? -salinity : salinity;
}

static double behind_gravity(const struct salinity_reading *r, double value)
{
    double density = NAN;
    double salinity = NAN;
    hw_hydrometer_density(&r->hydrometer, value, r->temp, &density);
    hw_seawater_salinity_by_density(density, r->temp, &salinity);
    return salinity;
}

double salinity_behind(const struct salinity_reading *r, double value)
{
    double salinity = value;
    switch (r->of) {
    case SALINITY_OF_SG:
        salinity = behind_gravity(r, value);
        break;
    case SALINITY_OF_CONDUCTIVITY:
    case SALINITY_OF_COMPENSATED:
        salinity = behind_conductivity(r, value);
        break;
    case SALINITY_OF_REFRACTION:
        hw_refraction_salinity(value, r->temp, &salinity);
        break;
    case SALINITY_OF_SCALE:
        break;
    case SALINITY_OF_BRINE_GKG:
        hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GKG, value, &salinity);
        break;
    case SALINITY_OF_BRINE_GL:
    default:
        hw_refraction_salinity_by_brine(HW_REFRACTION_BRINE_GL, value, &salinity);
        break;
    }
    bool answered =
        salinity >= HW_SEAWATER_SALINITY_READ_MIN && salinity <= HW_SEAWATER_SALINITY_MAX;
    return answered ? salinity : (double)NAN;
}

static void find_results(struct salinity_reading *r)
{
    static const struct hw_hydrometer at_25 = {25, 25, 0};
    r->salinity = r->found < 0 ? 0 : r->found;
    hw_seawater_density_at(r->temp, r->salinity, &r->density);
    hw_hydrometer_reading(&at_25, r->salinity, &r->gravity);
    hw_conductivity_at(r->temp, r->salinity, &r->conductivity);
}

/* What a true instrument shows in the standard: on a brine scale sea water reads high. */
static double standard_true(const struct salinity_reading *r)
{
    double shown = r->standard;
    if (r->standard_is == SALINITY_SEA_WATER) {
        hw_refraction_brine_reading(r->of == SALINITY_OF_BRINE_GKG ? HW_REFRACTION_BRINE_GKG
                                                                   : HW_REFRACTION_BRINE_GL,
                                    r->standard, &shown);
    }
    return shown;
}

bool salinity_reference_unknown(const double in[])
{
    return in[SALINITY_REFERENCE] == SALINITY_UNKNOWN;
}

struct salinity_range salinity_range(const double in[])
{
    struct salinity_range range = {0, 0};
    double low = INFINITY;
    double high = -INFINITY;
    for (size_t i = 0; i < SALINITY_REFERENCES; i++) {
        double found = salinity_reading_by(in, i).found;
        if (isnan(found)) {
            return (struct salinity_range){i, i};
        }
        range.low = found < low ? i : range.low;
        range.high = found > high ? i : range.high;
        low = fmin(low, found);
        high = fmax(high, found);
    }
    return range;
}

struct salinity_reading salinity_reading(const double in[])
{
    double reference = in[SALINITY_REFERENCE];
    return salinity_reading_by(in, isnan(reference) ? 0 : (size_t)reference);
}

struct salinity_reading salinity_reading_by(const double in[], size_t reference)
{
    struct salinity_reading r = {
        .of = (enum salinity_of)in[SALINITY_OF],
        .temp = in[SALINITY_TEMP],
        .reading = given(in, SALINITY_READING_SG, SALINITY_READING_GL),
        .zero = given(in, SALINITY_ZERO_BARE, SALINITY_ZERO_GL),
        .standard = given(in, SALINITY_STANDARD_SG, SALINITY_STANDARD_GL_SEA),
        .standard_is = given(in, SALINITY_STANDARD_IS_GKG, SALINITY_STANDARD_IS_GL),
        .reads = given(in, SALINITY_READS_SG, SALINITY_READS_GL),
        .hydrometer = hydrometer_of(in, reference),
        .slope = in[SALINITY_SLOPE],
    };
    r.standard_true = standard_true(&r);
    r.corrected = r.reading - r.zero;
    if (!isnan(r.standard) && !isnan(r.reads)) {
        r.corrected = r.corrected * r.standard_true / r.reads;
    }
    r.found = salinity_behind(&r, r.corrected);
    r.above = r.corrected > in_fresh_water[r.of];
    find_results(&r);
    return r;
}
