/* core_values.c - prints values of the core for the oracles to compare with.
 *
 * Usage: core_values SUBJECT [COUNT [SEED]]
 *
 * One line per point: a name, the inputs and the result, separated by commas; all numbers as
 * hexadecimal floats, so that nothing is lost on the way. Points are random, the same on every
 * machine, and include the ends of the ranges. */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/ammonia_kernel.h"
#include "holdwater/holdwater.h"

static uint64_t random_state;

/* The generator "splitmix64" of Steele, Lea & Flood 2014. */
static double unit_random(void)
{
    random_state += UINT64_C(0x9e3779b97f4a7c15);
    uint64_t z = random_state;
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    z ^= z >> 31;
    return (double)(z >> 11) * 0x1p-53;
}

/* One point in sixteen is an end of the range. */
static double between(double low, double high)
{
    double x = unit_random();
    if (x < 1.0 / 32) {
        return low;
    }
    return x < 2.0 / 32 ? high : low + (high - low) * unit_random();
}

static void constants(void)
{
    printf("N,%a\nH,%a\nNH3,%a\nNH4,%a\n", HW_MOLAR_N, HW_MOLAR_H, HW_MOLAR_NH3, HW_MOLAR_NH4);
    printf("NH4Cl,%a\n(NH4)2SO4,%a\n", HW_MOLAR_AMMONIUM_CHLORIDE, HW_MOLAR_AMMONIUM_SULFATE);
    printf("NH4OH,%a\nNO3,%a\nO2,%a\nCaCO3,%a\n", HW_MOLAR_NH4OH, HW_MOLAR_NITRATE, HW_MOLAR_OXYGEN,
           HW_MOLAR_CALCIUM_CARBONATE);
    printf("Cl2,%a\nNaOCl,%a\n", HW_MOLAR_CHLORINE, HW_MOLAR_HYPOCHLORITE);
    printf("Na2S2O3,%a\nNa2S2O3(H2O)5,%a\n", HW_MOLAR_THIOSULFATE,
           HW_MOLAR_THIOSULFATE_PENTAHYDRATE);
    printf("NO2,%a\n", HW_MOLAR_NITRITE);
    printf("NaHCO3,%a\nNa2CO3,%a\n", HW_MOLAR_SODIUM_BICARBONATE, HW_MOLAR_SODIUM_CARBONATE);
    printf("Cu,%a\nCuSO4+5H2O,%a\n", HW_MOLAR_COPPER, HW_MOLAR_COPPER_SULFATE_PENTAHYDRATE);
    printf("NaHOCH2SO3,%a\nNaHOCH2SO2,%a\n", HW_MOLAR_HYDROXYMETHANESULFONATE,
           HW_MOLAR_HYDROXYMETHANESULFINATE);
    printf("NaHOCH2SO2(H2O)2,%a\n", HW_MOLAR_HYDROXYMETHANESULFINATE_DIHYDRATE);
}

/* Method, exchanged, rounds, now, fresh, level; then the fresh water needed to end at that level;
 * then the exchange that reaches it at once. */
static void change(long count)
{
    static const char *const names[] = {"batch", "flow"};
    for (long i = 0; i < count; i++) {
        enum hw_change_method method = (enum hw_change_method)(i % 2);
        double most = i % 2 ? HW_CHANGE_EXCHANGED_MAX_FLOW : HW_CHANGE_EXCHANGED_MAX_BATCH;
        double exchanged = between(0.0001, most);
        int rounds = 1 + (int)between(0, 20);
        double now = between(0, 100);
        double fresh = between(0, 100);
        double level = 0;
        double needed = 0;
        double at_once = 0;
        hw_change_level(method, exchanged, rounds, now, fresh, &level);
        hw_change_fresh_needed(method, exchanged, now, level, &needed);
        hw_change_exchange_needed(method, now, fresh, level, &at_once);
        printf("%s,%a,%a,%a,%a,%a,%a,%a\n", names[method], exchanged, (double)rounds, now, fresh,
               level, needed, at_once);
    }
}

static void density(long count)
{
    for (long i = 0; i < count; i++) {
        double s = between(HW_SEAWATER_SALINITY_MIN, HW_SEAWATER_SALINITY_MAX);
        double t = between(HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX);
        double result = 0;
        hw_seawater_density_at(t, s, &result);
        printf("density,%a,%a,%a\n", s, t, result);
    }
}

/* Salinity, temperature and the oxygen that water holds at one atmosphere. */
static void oxygen(long count)
{
    for (long i = 0; i < count; i++) {
        double s = between(HW_OXYGEN_SALINITY_MIN, HW_OXYGEN_SALINITY_MAX);
        double t = between(HW_OXYGEN_TEMP_MIN, HW_OXYGEN_TEMP_MAX);
        double result = 0;
        hw_oxygen_saturation(t, s, 1, &result);
        printf("oxygen,%a,%a,%a\n", s, t, result);
    }
}

/* Volume, the lower and the higher salinity, temperature, share of dry salt; product to rise from
 * one to the other, water to top up and to swap for the way back. */
static void saltmix(long count)
{
    for (long i = 0; i < count; i++) {
        double volume = between(1, 1000);
        double low = between(0.5, 41);
        double high = low + between(0.01, 42 - low);
        double t = between(0, HW_SEAWATER_TEMP_MAX);
        double dry = between(0.6, HW_SALTMIX_DRY_MAX);
        double mass = 0;
        double top_up = 0;
        double swap = 0;
        hw_saltmix_raise(volume, t, low, high, dry, &mass);
        hw_saltmix_dilute(volume, t, high, low, &top_up);
        hw_saltmix_replace(volume, t, high, low, &swap);
        printf("saltmix,%a,%a,%a,%a,%a,%a,%a,%a\n", volume, low, high, t, dry, mass, top_up, swap);
    }
}

/* Share, temperature and salinity of the old and of the new water, at most 10 degrees apart; those
 * of the mixture. */
static void blend(long count)
{
    for (long i = 0; i < count; i++) {
        double share = between(0, 1);
        double t = between(0, 40);
        double s = between(0, 42);
        double new_t = between(t > 10 ? t - 10 : 0, t < 30 ? t + 10 : 40);
        double new_s = between(0, 42);
        struct hw_blend mix;
        hw_blend_mix(share, t, s, new_t, new_s, &mix);
        printf("blend,%a,%a,%a,%a,%a,%a,%a\n", share, t, s, new_t, new_s, mix.temp, mix.salinity);
    }
}

/* Conductivity to salinity and back: temperature, the argument, the result. Half of the points are
 * below salinity 2. */
static void conductivity(long count)
{
    for (long i = 0; i < count; i++) {
        double t = between(HW_CONDUCTIVITY_TEMP_MIN, HW_CONDUCTIVITY_TEMP_MAX);
        double s = i % 2 ? between(0.0, 45.0) : between(0.0, 2.5);
        double c = 0;
        double back = 0;
        hw_conductivity_at(t, s, &c);
        hw_conductivity_salinity(c, t, &back);
        printf("conductivity,%a,%a,%a\n", t, s, c);
        printf("salinity,%a,%a,%a\n", t, c, back);
    }
}

/* Temperature, density and the salinity found; temperature, salinity, index and the salinity
 * found. */
static void instruments(long count)
{
    for (long i = 0; i < count; i++) {
        double t = between(HW_SEAWATER_TEMP_MIN, HW_SEAWATER_TEMP_MAX);
        double s = between(0.0, 45.0);
        double value = 0;
        double found = 0;
        hw_seawater_density_at(t, s, &value);
        hw_seawater_salinity_by_density(value, t, &found);
        printf("from-density,%a,%a,%a\n", t, value, found);
        hw_refraction_index_at(t, s, &value);
        hw_refraction_salinity(value, t, &found);
        printf("refraction,%a,%a,%a,%a\n", t, s, value, found);
    }
}

/* Model-scale, pH, temperature, salinity, pK, fraction. */
static void ammonia(long count)
{
    static const struct {
        const char *name;
        enum hw_ammonia_model model;
        enum hw_ph_scale scale;
    } pairs[] = {
        {"khoo1977-meter", HW_AMMONIA_KHOO1977, HW_PH_METER},
        {"epa1989-meter", HW_AMMONIA_EPA1989, HW_PH_METER},
        {"clegg1995-nbs", HW_AMMONIA_CLEGG1995, HW_PH_NBS_RIGOROUS},
        {"clegg1995-total", HW_AMMONIA_CLEGG1995, HW_PH_TOTAL},
        {"clegg1995-free", HW_AMMONIA_CLEGG1995, HW_PH_FREE},
        {"clegg1995-sws", HW_AMMONIA_CLEGG1995, HW_PH_SWS},
    };
    for (long i = 0; i < count; i++) {
        size_t k = (size_t)i % (sizeof pairs / sizeof *pairs);
        double ph = between(HW_PH_MIN, HW_PH_MAX);
        double t = between(HW_AMMONIA_TEMP_MIN, HW_AMMONIA_TEMP_MAX);
        double s = between(HW_AMMONIA_SALINITY_MIN, HW_AMMONIA_SALINITY_MAX);
        double pk = 0;
        double fraction = 0;
        hw_ammonia_pk(pairs[k].model, pairs[k].scale, t, s, &pk);
        hw_ammonia_fraction(pairs[k].model, pairs[k].scale, ph, t, s, &fraction);
        printf("%s,%a,%a,%a,%a,%a\n", pairs[k].name, ph, t, s, pk, fraction);
    }
}

/* Scale, temperature, salinity, offset. */
static void offsets(long count)
{
    static const char *const names[] = {"meter", "nbs", "total", "free", "sws"};
    for (long i = 0; i < count; i++) {
        enum hw_ph_scale scale = (enum hw_ph_scale)(i % 5);
        double t = between(HW_PH_TEMP_MIN, HW_PH_TEMP_MAX);
        double s = between(HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX);
        double offset = 0;
        hw_ph_offset(scale, t, s, &offset);
        printf("%s,%a,%a,%a\n", names[scale], t, s, offset);
    }
}

/* Criterion, pH, temperature, mg N/L; and for the chronic one, the pH found back. */
static void criteria(long count)
{
    static const char *const names[] = {"ccc", "cmc-present", "cmc-absent"};
    for (long i = 0; i < count; i++) {
        enum hw_criteria_limit which = (enum hw_criteria_limit)(i % 3);
        double ph = between(HW_CRITERIA_EPA2013_PH_MIN, HW_CRITERIA_EPA2013_PH_MAX);
        double t = between(HW_CRITERIA_EPA2013_TEMP_MIN, HW_CRITERIA_EPA2013_TEMP_MAX);
        double tan_n = 0;
        hw_criteria_epa2013(which, ph, t, &tan_n);
        printf("%s,%a,%a,%a\n", names[which], ph, t, tan_n);
        if (which == HW_CRITERIA_EPA2013_CCC) {
            hw_criteria_epa2013_ccc_ph(tan_n, t, &ph);
            printf("ccc-ph,%a,%a,%a\n", tan_n, t, ph);
        }
    }
}

static double any_positive(long i)
{
    switch (i % 3) {
    case 0:
        return hw_exp(between(-HW_EXP_LIMIT, HW_EXP_LIMIT));
    case 1:
        return between(0.5, 2);
    default:
        return 1 + (unit_random() - 0.5) * hw_exp10(between(-15, 0));
    }
}

static void elementary(long count)
{
    for (long i = 0; i < count; i++) {
        double x = between(-20, 20);
        printf("exp10,%a,%a\n", x, hw_exp10(x));
        printf("exp,%a,%a\n", x, hw_exp(x));
        x = between(-HW_EXP10_LIMIT, HW_EXP10_LIMIT);
        printf("exp10-far,%a,%a\n", x, hw_exp10(x));
        x = between(-HW_EXP_LIMIT, HW_EXP_LIMIT);
        printf("exp-far,%a,%a\n", x, hw_exp(x));
        x = any_positive(i);
        printf("log,%a,%a\n", x, hw_log(x));
        printf("log10,%a,%a\n", x, hw_log10(x));
    }
}

/* A record: how many readings, the days, the values; then slope, intercept, low, high. Some have
 * readings at one time, some the steps of a kit, every 97th is as long as a record can be. */
static void trend(long count)
{
    static double days[HW_TREND_READINGS_MAX];
    static double values[HW_TREND_READINGS_MAX];
    for (long i = 0; i < count; i++) {
        size_t n = i % 97 == 96 ? HW_TREND_READINGS_MAX : 2 + (size_t)(40 * unit_random());
        double whole = unit_random();
        double step = unit_random() < 0.5 ? 0.25 : 0;
        for (size_t k = 0; k < n; k++) {
            double day = 30 * unit_random();
            days[k] = whole < 0.3 ? (double)(long)day : day;
            values[k] = 0.02 * day + unit_random();
            values[k] = step > 0 ? step * (double)(long)(values[k] / step) : values[k];
        }
        double out[4];
        if (hw_trend_slope(days, values, n, &out[0], &out[1]) != HW_STATUS_OK ||
            hw_trend_interval(days, values, n, &out[2], &out[3]) != HW_STATUS_OK) {
            continue; /* all at one time */
        }
        printf("trend,%a", (double)n);
        for (size_t k = 0; k < n; k++) {
            printf(",%a,%a", days[k], values[k]);
        }
        printf(",%a,%a,%a,%a\n", out[0], out[1], out[2], out[3]);
    }
}

int main(int argc, char **argv)
{
    const char *subject = argc > 1 ? argv[1] : "";
    long count = argc > 2 ? strtol(argv[2], NULL, 10) : 6000;
    random_state = argc > 3 ? strtoul(argv[3], NULL, 10) : 20310426;
    if (strcmp(subject, "constants") == 0) {
        constants();
    } else if (strcmp(subject, "density") == 0) {
        density(count);
    } else if (strcmp(subject, "oxygen") == 0) {
        oxygen(count);
    } else if (strcmp(subject, "saltmix") == 0) {
        saltmix(count);
    } else if (strcmp(subject, "blend") == 0) {
        blend(count);
    } else if (strcmp(subject, "conductivity") == 0) {
        conductivity(count);
    } else if (strcmp(subject, "instruments") == 0) {
        instruments(count);
    } else if (strcmp(subject, "ammonia") == 0) {
        ammonia(count);
    } else if (strcmp(subject, "offsets") == 0) {
        offsets(count);
    } else if (strcmp(subject, "criteria") == 0) {
        criteria(count);
    } else if (strcmp(subject, "change") == 0) {
        change(count);
    } else if (strcmp(subject, "elementary") == 0) {
        elementary(count);
    } else if (strcmp(subject, "trend") == 0) {
        trend(count);
    } else {
        fprintf(stderr, "usage: core_values SUBJECT [COUNT [SEED]]\n");
        return 2;
    }
    return 0;
}
