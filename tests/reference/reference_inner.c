/* reference_inner.c - what stands behind the functions of the library, and several of them in a
 * row, as the reference sheets call them. */
#include "reference.h"

#include <math.h>
#include <stddef.h>

#include "core/ammonia_kernel.h"
#include "core/carbonate_kernel.h"
#include "holdwater/holdwater.h"

static double density_at(double temp, double salinity)
{
    double density = 0;
    hw_seawater_density_at(temp, salinity, &density);
    return density;
}

/* meq/L, mmol/L or mg N/L of umol/kg, and back. */
static double litre_of(double per_kg, double density)
{
    return per_kg * density * 1e-6;
}

static double kg_of(double per_litre, double density)
{
    return per_litre / density * 1e6;
}

static double meter_over_total(double temp, double salinity)
{
    double meter = 0;
    double total = 0;
    hw_ph_offset(HW_PH_METER, temp, salinity, &meter);
    hw_ph_offset(HW_PH_TOTAL, temp, salinity, &total);
    return meter - total;
}

/* ---------------------------------------------------------------- constants */

static int carbonate_constants(const double x[], double y[])
{
    const struct hw_powers of = hw_powers_of(x[0], x[1]);
    double meter = meter_over_total(x[0], x[1]);
    double sws =
        hw_offset_from_free(HW_PH_SWS, x[0], x[1]) - hw_offset_from_free(HW_PH_TOTAL, x[0], x[1]);
    y[0] = hw_carbonic_pk1(&of);
    y[1] = hw_carbonic_pk2(&of);
    y[2] = hw_ln_boric(&of);
    y[3] = hw_ln_water(&of);
    y[4] = y[3] + (148.9802 - 148.9652);
    y[5] = meter;
    y[6] = y[0] + meter;
    y[7] = y[0] + sws;
    y[8] = y[1] + sws;
    return HW_STATUS_OK;
}

static int carbon_dioxide(const double x[], double y[])
{
    double kelvin = hw_kelvin(x[0]);
    y[0] = hw_carbon_dioxide_solubility(kelvin, x[1]);
    y[1] = y[0] * 100;
    y[2] = log(y[0]);
    y[3] = hw_carbon_dioxide_fugacity(kelvin);
    y[4] = hw_total_boron(x[1]);
    return HW_STATUS_OK;
}

static int boron_to_chlorinity(const double x[], double y[])
{
    y[0] = hw_total_boron(x[0]) * 10.81 * 1000 * 1.80655 / x[0];
    return HW_STATUS_OK;
}

static int total_sulfate(const double x[], double y[])
{
    y[0] = hw_total_sulfate(x[0]);
    return HW_STATUS_OK;
}

static int total_fluoride(const double x[], double y[])
{
    y[0] = hw_total_fluoride(x[0]);
    return HW_STATUS_OK;
}

static int sulfate_constant(const double x[], double y[])
{
    const struct hw_powers of = hw_powers_of(x[0], x[1]);
    y[0] = hw_sulfate_constant(&of);
    y[1] = hw_log(y[0]);
    return HW_STATUS_OK;
}

static int fluoride_constant(const double x[], double y[])
{
    const struct hw_powers of = hw_powers_of(x[0], x[1]);
    y[0] = hw_fluoride_constant(&of);
    return HW_STATUS_OK;
}

static int activity_over_sws(const double x[], double y[])
{
    y[0] = hw_activity_over_sws(hw_kelvin(x[0]), x[1]);
    return HW_STATUS_OK;
}

static int debye_hueckel(const double x[], double y[])
{
    y[0] = hw_debye_hueckel(x[0]);
    return HW_STATUS_OK;
}

static int log10_phi(const double x[], double y[])
{
    const struct hw_powers of = hw_powers_of(x[0], x[1]);
    const struct hw_over_free over = hw_over_free_of(&of);
    y[0] = hw_log10_phi(&of, &over);
    return HW_STATUS_OK;
}

static int epa1989_ionic_strength(const double x[], double y[])
{
    y[0] = hw_epa1989_ionic_strength(x[0]);
    return HW_STATUS_OK;
}

/* Equation 18 as it stands, per kg of water, on the total or the free scale. */
static double clegg1995_pk(int scale, double temp, double salinity)
{
    double pk = hw_clegg1995_molal_pk(temp, salinity);
    return scale == HW_PH_FREE ? pk - hw_offset_from_free(HW_PH_TOTAL, temp, salinity) : pk;
}

static int clegg1995_molal(const int c[], const double x[], double y[])
{
    y[0] = clegg1995_pk(c[0], x[0], x[1]);
    return HW_STATUS_OK;
}

static int clegg1995_molal_fraction(const int c[], const double x[], double y[])
{
    y[0] = hw_fraction_of(x[0], clegg1995_pk(c[0], x[1], x[2]));
    return HW_STATUS_OK;
}

/* How far `got` is from high + low, in units in the last place of high. The true value is given in
 * two parts, as one double cannot hold it. Inputs: x, high, low. */
static int ulps(double got, const double x[], double y[])
{
    double unit = nextafter(fabs(x[1]), HUGE_VAL) - fabs(x[1]);
    y[0] = ((got - x[1]) - x[2]) / unit;
    return HW_STATUS_OK;
}

static int exp10_error(const double x[], double y[])
{
    return ulps(hw_exp10(x[0]), x, y);
}

static int exp_error(const double x[], double y[])
{
    return ulps(hw_exp(x[0]), x, y);
}

static int log_error(const double x[], double y[])
{
    return ulps(hw_log(x[0]), x, y);
}

static int log10_error(const double x[], double y[])
{
    return ulps(hw_log10(x[0]), x, y);
}

/* ---------------------------------------------------------------- several functions in a row */

static int carbonate_carbon(const double x[], double y[])
{
    int status = hw_carbonate_carbon(x[0], x[1], x[2], x[3], x[4], y);
    y[1] = kg_of(y[0], density_at(x[3], x[4]));
    return status;
}

/* Dissolved carbon by a pH and the alkalinity of the same water before a dose. */
static int carbonate_ph_after(const double x[], double y[])
{
    double carbon = 0;
    hw_carbonate_carbon(x[0], x[1], x[4], x[5], x[6], &carbon);
    return hw_carbonate_ph(x[3], carbon + x[2], x[4], x[5], x[6], y);
}

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = 0;
    (void)hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

static int blend_of(const double x[], struct hw_blend *blend)
{
    return hw_blend_mix(x[0], x[1], x[2], x[3], x[4], blend);
}

static int blend_mix(const double x[], double y[])
{
    struct hw_blend blend;
    int status = blend_of(x, &blend);
    y[0] = blend.mass_share;
    y[1] = blend.temp;
    y[2] = blend.salinity;
    return status;
}

/* What the mixture holds, per litre and in 1e-6 of it per kg. */
static int blend_level(const double x[], double y[])
{
    struct hw_blend blend;
    int status = blend_of(x, &blend);
    y[0] = level_of(&blend, x[5], x[6]);
    y[1] = kg_of(y[0], density_at(blend.temp, blend.salinity));
    return status;
}

/* Dissolved carbon of the mixture, from the two readings. */
static int blend_carbon(const double x[], double y[])
{
    struct hw_blend blend;
    double carbon = 0;
    double fresh = 0;
    int status = blend_of(x, &blend);
    hw_carbonate_carbon(x[5], x[6], x[7], x[1], x[2], &carbon);
    hw_carbonate_carbon(x[8], x[9], 0, x[3], x[4], &fresh);
    y[0] = kg_of(level_of(&blend, carbon, fresh), density_at(blend.temp, blend.salinity));
    return status;
}

/* ---------------------------------------------------------------- the carbonate system by mass

 * Alkalinity, carbon and total ammonia of these rows are in umol/kg: the notes that they come from
 * take a litre's mass at a temperature of IPTS-68 without saying so, and by the kilogram that does
 * not matter. */

struct kg_water {
    double temp, salinity, density;
    double alkalinity, tan, ph; /* by the litre, as the functions want it */
};

static struct kg_water water_of(double temp, double salinity, double alkalinity, double tan)
{
    struct kg_water w = {temp, salinity, density_at(temp, salinity), 0, 0, 0};
    w.alkalinity = litre_of(alkalinity, w.density);
    w.tan = litre_of(tan, w.density) * HW_MOLAR_N;
    return w;
}

static double free_kg(double ph, double temp, double salinity, double tan_kg)
{
    double fraction = 0;
    hw_ammonia_fraction(HW_AMMONIA_KHOO1977, HW_PH_METER, ph, temp, salinity, &fraction);
    return fraction * tan_kg;
}

/* From a pH to carbon and carbon dioxide, and back to the pH. */
static int carbonate_kg(const double x[], double y[])
{
    struct kg_water w = water_of(x[0], x[1], x[2], x[3]);
    double carbon = 0;
    int status = hw_carbonate_carbon(x[4], w.alkalinity, w.tan, w.temp, w.salinity, &carbon);
    hw_carbonate_air(x[4], w.alkalinity, w.tan, w.temp, w.salinity, &y[1]);
    hw_carbonate_ph(w.alkalinity, carbon, w.tan, w.temp, w.salinity, &y[2]);
    y[0] = kg_of(carbon, w.density);
    return status;
}

/* From carbon to pH; carbon dioxide by the carbon dioxide that water of that pH holds. */
static int carbonate_ph_kg(const double x[], double y[])
{
    struct kg_water w = water_of(x[0], x[1], x[2], x[3]);
    double kelvin = hw_kelvin(w.temp);
    double carbon = 0;
    double air = 0;
    struct hw_carbonate_water water;
    (void)hw_carbonate_water(w.temp, w.salinity, &water);
    int status =
        hw_carbonate_water_ph(&water, w.alkalinity, litre_of(x[4], w.density), w.tan, &w.ph);
    (void)hw_carbonate_water_read(&water, w.ph, w.alkalinity, w.tan, &carbon, &air);
    y[0] = w.ph;
    y[1] = w.ph - meter_over_total(w.temp, w.salinity);
    y[2] = air * hw_carbon_dioxide_fugacity(kelvin);
    y[3] =
        air * hw_carbon_dioxide_solubility(kelvin, w.salinity) * hw_carbon_dioxide_fugacity(kelvin);
    return status;
}

static int carbonate_air_kg(const double x[], double y[])
{
    struct kg_water w = water_of(x[0], x[1], x[2], 0);
    double carbon = 0;
    int status = hw_carbonate_ph_in_air(w.alkalinity, x[3], 0, w.temp, w.salinity, &w.ph);
    hw_carbonate_carbon(w.ph, w.alkalinity, 0, w.temp, w.salinity, &carbon);
    y[0] = w.ph;
    y[1] = w.ph - meter_over_total(w.temp, w.salinity);
    y[2] = kg_of(carbon, w.density);
    return status;
}

/* Something added to water: 420 uatm outside. */
static int carbonate_dose_kg(const double x[], double y[])
{
    struct kg_water w = water_of(x[0], x[1], x[2], x[3]);
    struct kg_water more = water_of(x[0], x[1], x[5], x[3] + x[7]);
    double alkalinity = w.alkalinity + more.alkalinity;
    double carbon = 0;
    hw_carbonate_carbon(x[4], w.alkalinity, w.tan, w.temp, w.salinity, &carbon);
    int status = hw_carbonate_ph(alkalinity, carbon + litre_of(x[6], w.density), more.tan, w.temp,
                                 w.salinity, &y[2]);
    hw_carbonate_ph_in_air(alkalinity, 420, more.tan, w.temp, w.salinity, &y[3]);
    y[0] = kg_of(carbon, w.density);
    y[1] = kg_of(alkalinity, w.density);
    y[4] = free_kg(x[4], w.temp, w.salinity, x[3]);
    y[5] = free_kg(y[2], w.temp, w.salinity, x[3] + x[7]);
    y[6] = free_kg(y[3], w.temp, w.salinity, x[3] + x[7]);
    return status;
}

/* Mixes by mass: the share of the volume that makes this share of the mass is sought. */
static int mix_masses(double share, const struct kg_water *a, const struct kg_water *b,
                      struct hw_blend *mix)
{
    double volume = (1 - share) / a->density;
    double new_volume = share / b->density;
    return hw_blend_mix(new_volume / (volume + new_volume), a->temp, a->salinity, b->temp,
                        b->salinity, mix);
}

static int blend_masses(const double x[], double y[])
{
    struct kg_water a = water_of(x[1], x[2], 0, 0);
    struct kg_water b = water_of(x[4], x[5], 0, 0);
    struct hw_blend mix;
    int status = mix_masses(x[3] / (x[0] + x[3]), &a, &b, &mix);
    y[0] = mix.temp;
    y[1] = mix.salinity;
    return status;
}

/* The mixture as it would be if a kilogram of either water took up the same heat, which the notes
 * on the carbonate system assume: their pH and ammonia hold at that temperature. */
static void assume_one_heat_capacity(struct hw_blend *mix, double temp, double new_temp)
{
    double density = density_at(mix->temp, mix->salinity);
    mix->temp = (1 - mix->mass_share) * temp + mix->mass_share * new_temp;
    double assumed = density_at(mix->temp, mix->salinity);
    mix->per_old *= assumed / density;
    mix->per_new *= assumed / density;
}

/* Two waters mixed by mass; the new one holds no ammonia. The temperature is as hw_blend_mix gives
 * it, the rest at the temperature that the rows assume. */
static int carbonate_blend_kg(const double x[], double y[])
{
    struct kg_water a = water_of(x[0], x[1], x[2], x[3]);
    struct kg_water b = water_of(x[5], x[6], x[7], 0);
    struct hw_blend mix;
    double carbon[2];
    double air = 0;
    double ph[3];
    hw_carbonate_carbon(x[4], a.alkalinity, a.tan, a.temp, a.salinity, &carbon[0]);
    hw_carbonate_carbon(x[8], b.alkalinity, 0, b.temp, b.salinity, &carbon[1]);
    hw_carbonate_air(x[4], a.alkalinity, a.tan, a.temp, a.salinity, &air);
    int status = mix_masses(x[9], &a, &b, &mix);
    y[0] = mix.temp;
    assume_one_heat_capacity(&mix, a.temp, b.temp);
    double density = density_at(mix.temp, mix.salinity);
    double alkalinity = level_of(&mix, a.alkalinity, b.alkalinity);
    double mixed_carbon = level_of(&mix, carbon[0], carbon[1]);
    double tan = level_of(&mix, a.tan, 0);
    hw_carbonate_ph(alkalinity, mixed_carbon, tan, mix.temp, mix.salinity, &ph[0]);
    hw_carbonate_ph_in_air(alkalinity, x[10], tan, mix.temp, mix.salinity, &ph[1]);
    hw_carbonate_ph_in_air(alkalinity, air, tan, mix.temp, mix.salinity, &ph[2]);
    double tan_kg = kg_of(tan, density) / HW_MOLAR_N;
    double before = free_kg(x[4], a.temp, a.salinity, x[3]);
    y[1] = mix.salinity;
    y[2] = kg_of(alkalinity, density);
    y[3] = kg_of(carbon[0], a.density);
    y[4] = kg_of(carbon[1], b.density);
    y[5] = kg_of(mixed_carbon, density);
    y[6] = tan_kg;
    y[7] = air;
    y[8] = before;
    y[9] = tan_kg / x[3];
    y[10] = free_kg(fmax(x[4], x[8]), mix.temp, mix.salinity, tan_kg) / before;
    for (int i = 0; i < 3; i++) {
        double free = free_kg(ph[i], mix.temp, mix.salinity, tan_kg);
        y[11 + i] = ph[i];
        y[14 + i] = free;
        y[17 + i] = free / before;
    }
    return status;
}

/* clang-format off */
const struct function reference_inner[] = {
    {"carbonate_constants", .in = "temp salinity",
     .out = "pk1 pk2 ln_kb ln_kw ln_kw_sws meter_over_total pk1_meter pk1_sws pk2_sws",
     .call = carbonate_constants},
    {"carbon_dioxide", .in = "temp salinity", .out = "k0 k0_hundredths ln_k0 fugacity boron",
     .call = carbon_dioxide},
    {"boron_to_chlorinity", .in = "salinity", .out = "mg_per_kg", .call = boron_to_chlorinity},
    {"total_sulfate", .in = "salinity", .out = "mol_per_kg", .call = total_sulfate},
    {"total_fluoride", .in = "salinity", .out = "mol_per_kg", .call = total_fluoride},
    {"sulfate_constant", .in = "temp salinity", .out = "k ln_k", .call = sulfate_constant},
    {"fluoride_constant", .in = "temp salinity", .out = "k", .call = fluoride_constant},
    {"activity_over_sws", .in = "temp salinity", .out = "ratio", .call = activity_over_sws},
    {"debye_hueckel", .in = "temp", .out = "a", .call = debye_hueckel},
    {"log10_phi", .in = "temp salinity", .out = "log10_phi", .call = log10_phi},
    {"epa1989_ionic_strength", .in = "salinity", .out = "molal", .call = epa1989_ionic_strength},
    {"clegg1995_molal", {{"scale", "meter nbs-rigorous total free sws"}}, "temp salinity", "pk",
     .chosen = clegg1995_molal},
    {"clegg1995_molal_fraction", {{"scale", "meter nbs-rigorous total free sws"}},
     "ph temp salinity", "fraction", .chosen = clegg1995_molal_fraction},
    {"exp10", .in = "x high low", .out = "ulp", .call = exp10_error},
    {"exp", .in = "x high low", .out = "ulp", .call = exp_error},
    {"log", .in = "x high low", .out = "ulp", .call = log_error},
    {"log10", .in = "x high low", .out = "ulp", .call = log10_error},
    {"carbonate_carbon", .in = "ph alkalinity tan temp salinity", .out = "carbon umol_per_kg",
     .call = carbonate_carbon},
    {"carbonate_ph_after",
     .in = "ph_before alkalinity_before carbon_added alkalinity tan temp salinity", .out = "ph",
     .call = carbonate_ph_after},
    {"blend_mix", .in = "share temp salinity new_temp new_salinity",
     .out = "mass_share temp salinity", .call = blend_mix},
    {"blend_level", .in = "share temp salinity new_temp new_salinity level fresh",
     .out = "level micro_per_kg", .call = blend_level},
    {"blend_carbon",
     .in = "share temp salinity new_temp new_salinity ph alkalinity tan new_ph new_alkalinity",
     .out = "umol_per_kg", .call = blend_carbon},
    {"carbonate_kg", .in = "temp salinity alkalinity tan ph", .out = "carbon air ph_back",
     .call = carbonate_kg},
    {"carbonate_ph_kg", .in = "temp salinity alkalinity tan carbon",
     .out = "ph ph_total fugacity dioxide", .call = carbonate_ph_kg},
    {"carbonate_air_kg", .in = "temp salinity alkalinity air", .out = "ph ph_total carbon",
     .call = carbonate_air_kg},
    {"carbonate_dose_kg",
     .in = "temp salinity alkalinity tan ph alkalinity_added carbon_added tan_added",
     .out = "carbon_before alkalinity ph ph_air free_before free free_air",
     .call = carbonate_dose_kg},
    {"blend_masses", .in = "mass temp salinity new_mass new_temp new_salinity",
     .out = "temp salinity", .call = blend_masses},
    {"carbonate_blend_kg",
     .in = "temp salinity alkalinity tan ph new_temp new_salinity new_alkalinity new_ph"
           " mass_share air",
     .out = "temp salinity alkalinity carbon_tank carbon_new carbon tan air_tank free_before"
            " ratio_total ratio_bound ph ph_air ph_same free free_air free_same ratio ratio_air"
            " ratio_same",
     .call = carbonate_blend_kg},
    {NULL, .in = NULL},
};
/* clang-format on */
