/* reference_public.c - the functions of the library, as the reference sheets call them. */
#include "reference.h"

#include <math.h>
#include <stddef.h>

#include "core/elementary.h"
#include "holdwater/holdwater.h"

/* ---------------------------------------------------------------- records of readings */

/* The line and its interval, and its value at the last reading. */
static int trend(const struct series *series, const double x[], double y[])
{
    double intercept = 0;
    (void)x;
    int status = hw_trend_slope(series->days, series->values, series->n, &y[0], &intercept);
    int other = hw_trend_interval(series->days, series->values, series->n, &y[1], &y[2]);
    double last = series->n > 0 ? series->days[series->n - 1] : 0;
    y[3] = intercept + y[0] * last;
    return status != other ? 99 : status;
}

static int trend_held(const struct series *series, const double x[], double y[])
{
    struct hw_trend_window window = {x[0], x[1], x[2]};
    struct hw_trend_run run;
    int status = hw_trend_held(series->days, series->values, series->n, &window, &run);
    y[0] = run.held;
    y[1] = run.longest;
    y[2] = status < 0 ? run.held : (double)run.from;
    y[3] = status < 0 ? run.held : (double)run.outside;
    y[4] = status < 0 ? run.held : (double)run.by;
    return status;
}

/* ---------------------------------------------------------------- ammonia, pH, nitrogen */

static int ammonia_pk(const int c[], const double x[], double y[])
{
    return hw_ammonia_pk((enum hw_ammonia_model)c[0], (enum hw_ph_scale)c[1], x[0], x[1], y);
}

static int ammonia_fraction(const int c[], const double x[], double y[])
{
    int status = hw_ammonia_fraction((enum hw_ammonia_model)c[0], (enum hw_ph_scale)c[1], x[0],
                                     x[1], x[2], y);
    y[1] = 100 * y[0];
    return status;
}

static int ph_offset(const int c[], const double x[], double y[])
{
    int status = hw_ph_offset((enum hw_ph_scale)c[0], x[0], x[1], y);
    y[1] = hw_exp10(-y[0]); /* H+ of the scale over free H+ */
    return status;
}

static int ph_convert(const int c[], const double x[], double y[])
{
    return hw_ph_convert(x[0], (enum hw_ph_scale)c[0], (enum hw_ph_scale)c[1], x[1], x[2], y);
}

static int nitrogen_to_n(const int c[], const double x[], double y[])
{
    return hw_nitrogen_to_n((enum hw_nitrogen_basis)c[0], x[0], y);
}

static int nitrogen_from_n(const int c[], const double x[], double y[])
{
    return hw_nitrogen_from_n((enum hw_nitrogen_basis)c[0], x[0], y);
}

/* From one basis to another by way of nitrogen. */
static int nitrogen_convert(const int c[], const double x[], double y[])
{
    double as_n = 0;
    hw_nitrogen_to_n((enum hw_nitrogen_basis)c[0], x[0], &as_n);
    return hw_nitrogen_from_n((enum hw_nitrogen_basis)c[1], as_n, y);
}

static int molar_mass(const int c[], const double x[], double y[])
{
    static const double masses[] = {HW_MOLAR_N, HW_MOLAR_NH3, HW_MOLAR_NH4};
    int known = c[0] >= 0 && c[0] <= 2;
    (void)x;
    y[0] = known ? masses[c[0]] : (double)NAN;
    return known ? HW_STATUS_OK : HW_STATUS_CHOICE;
}

static int nitrite_to_n(const int c[], const double x[], double y[])
{
    return hw_nitrite_to_n((enum hw_nitrite_basis)c[0], x[0], y);
}

static int nitrite_to_ion(const int c[], const double x[], double y[])
{
    return hw_nitrite_to_ion((enum hw_nitrite_basis)c[0], x[0], y);
}

static int criteria_epa2013(const int c[], const double x[], double y[])
{
    return hw_criteria_epa2013((enum hw_criteria_limit)c[0], x[0], x[1], y);
}

/* ---------------------------------------------------------------- salt water */

static int seawater_density_at(const double x[], double y[])
{
    int status = hw_seawater_density_at(x[0], x[1], y);
    y[1] = y[0] - 1000;
    y[2] = HW_MOLAR_N * y[0] / 1e6;
    y[3] = 1e6 / (HW_MOLAR_N * y[0]);
    return status;
}

static int conductivity_at(const double x[], double y[])
{
    int status = hw_conductivity_at(x[0], x[1], y);
    y[1] = y[0] / HW_CONDUCTIVITY_STANDARD;
    return status;
}

static int hydrometer_reading(const double x[], double y[])
{
    struct hw_hydrometer instrument = {x[0], x[1], 0};
    return hw_hydrometer_reading(&instrument, x[2], y);
}

/* From the reading to the density, and on to the salinity. */
static int hydrometer_salinity(const double x[], double y[])
{
    struct hw_hydrometer instrument = {x[0], x[1], x[2]};
    double density = 0;
    int status = hw_hydrometer_density(&instrument, x[3], x[4], &density);
    y[0] = (double)NAN;
    return status < 0 ? status : hw_seawater_salinity_by_density(density, x[4], y);
}

static int refraction_brine_reading(const int c[], const double x[], double y[])
{
    return hw_refraction_brine_reading((enum hw_refraction_brine)c[0], x[0], y);
}

static int refraction_salinity_by_brine(const int c[], const double x[], double y[])
{
    return hw_refraction_salinity_by_brine((enum hw_refraction_brine)c[0], x[0], y);
}

/* Also for a kilogram of water, as tables give it. */
static int saltmix_raise(const double x[], double y[])
{
    double density = 0;
    int status = hw_saltmix_raise(x[0], x[1], x[2], x[3], x[4], y);
    hw_seawater_density_at(x[1], x[2], &density);
    y[1] = y[0] / (x[0] * density / 1000);
    return status;
}

/* Also as kilograms of fresh water. */
static int saltmix_dilute(const double x[], double y[])
{
    double density = 0;
    int status = hw_saltmix_dilute(x[0], x[1], x[2], x[3], y);
    hw_seawater_density_at(x[1], 0, &density);
    y[1] = y[0] * density / 1000;
    return status;
}

static int oxygen_pressure(const double x[], double y[])
{
    int status = hw_oxygen_pressure(x[0], y);
    y[1] = 1013.25 * y[0];
    return status;
}

/* Also per volume and per mass of water; O2 is 31.9988 g/mol in the fit that those rows are of. */
static int oxygen_saturation(const double x[], double y[])
{
    double density = 0;
    int status = hw_oxygen_saturation(x[0], x[1], x[2], y);
    hw_seawater_density_at(x[0], x[1], &density);
    y[1] = y[0] / 31.9988;
    y[2] = y[0] / 31.9988 * 1e6 / density;
    return status;
}

/* ---------------------------------------------------------------- filters and medicines */

static int challenge_salt_mass(const int c[], const double x[], double y[])
{
    int status = hw_challenge_salt_mass((enum hw_challenge_salt)c[0], x[0], x[1], y);
    y[1] = 1000 * y[0];
    return status;
}

static int challenge_solution(const double x[], double y[])
{
    double strength = 0;
    int status = hw_challenge_solution_density(x[0], y);
    hw_challenge_solution_nitrogen(x[0], &strength);
    y[1] = strength / HW_MOLAR_N;
    return status;
}

static int challenge_nitrified(const int c[], const double x[], double y[])
{
    int status = hw_challenge_nitrified((enum hw_challenge_source)c[0], x[0], &y[0], &y[1], &y[2]);
    y[3] = y[2] / (HW_MOLAR_CALCIUM_CARBONATE / 2);
    return status;
}

static int verdict_rate(const double x[], double y[])
{
    return hw_verdict_rate(x[0], x[1], x[2], x[3], &y[0], &y[1]);
}

static int verdict_feed_carried(const double x[], double y[])
{
    return hw_verdict_feed_carried(x[0], x[1], x[2], x[3], &y[0], &y[1]);
}

static int ahead_vmax(const double x[], double y[])
{
    int status = hw_ahead_vmax(x[0], x[1], x[2], x[3], &y[0]);
    y[1] = y[0] * 24 * 110;
    return status;
}

static int ahead_meals(const double x[], double y[])
{
    return hw_ahead_meals(x[0], (int)x[1], &y[0], &y[1]);
}

static struct hw_ahead_tank ahead_tank(const double x[])
{
    struct hw_ahead_tank tank = {x[0], x[1], (int)x[2], x[3], x[4], x[5], x[6], x[7]};
    return tank;
}

static int ahead_level(const double x[], double y[])
{
    struct hw_ahead_tank tank = ahead_tank(x);
    struct hw_ahead_outlook outlook;
    int status = hw_ahead_level(&tank, x[8], x[9], &outlook);
    y[0] = outlook.then;
    y[1] = outlook.peak;
    y[2] = outlook.peak_hour;
    return status;
}

static int ahead_reach(const double x[], double y[])
{
    struct hw_ahead_tank tank = ahead_tank(x);
    return hw_ahead_reach(&tank, x[8], x[9], x[10], y);
}

static int stock_mass(const int c[], const double x[], double y[])
{
    return hw_stock_mass((enum hw_stock_reagent)c[0], x[0], x[1], y);
}

static int stock_solubility(const int c[], const double x[], double y[])
{
    (void)x;
    return hw_stock_solubility((enum hw_stock_reagent)c[0], y);
}

static int binder_ratio(const int c[], const double x[], double y[])
{
    (void)x;
    return hw_binder_ratio((enum hw_binder)c[0], y);
}

static int binder_powder(const int c[], const double x[], double y[])
{
    return hw_binder_powder((enum hw_binder)c[0], x[0], x[1], x[2], y);
}

static int binder_oxygen_taken(const int c[], const double x[], double y[])
{
    return hw_binder_oxygen_taken((enum hw_binder)c[0], x[0], x[1], x[2], y);
}

static int formalin_to_formaldehyde(const int c[], const double x[], double y[])
{
    return hw_formalin_to_formaldehyde((enum hw_formalin_basis)c[0], x[0], y);
}

static int formalin_from_formaldehyde(const int c[], const double x[], double y[])
{
    return hw_formalin_from_formaldehyde((enum hw_formalin_basis)c[0], x[0], y);
}

static int dose_step_level(const double x[], double y[])
{
    return hw_dose_step_level(x[0], x[1], (int)x[2], (int)x[3], y);
}

static int chlorine_bleach_strength(const int c[], const double x[], double y[])
{
    return hw_chlorine_bleach_strength((enum hw_chlorine_label)c[0], x[0], x[1], y);
}

static int chlorine_agent_ratio(const int c[], const double x[], double y[])
{
    (void)x;
    return hw_chlorine_agent_ratio((enum hw_chlorine_agent)c[0], y);
}

/* ---------------------------------------------------------------- changes of water */

static int buffer_mass(const int c[], const double x[], double y[])
{
    return hw_buffer_mass((enum hw_buffer_source)c[0], x[0], x[1], x[2], y);
}

static int change_level(const int c[], const double x[], double y[])
{
    return hw_change_level((enum hw_change_method)c[0], x[0], (int)x[1], x[2], x[3], y);
}

static int change_fresh_needed(const int c[], const double x[], double y[])
{
    return hw_change_fresh_needed((enum hw_change_method)c[0], x[0], x[1], x[2], y);
}

static int change_exchange_needed(const int c[], const double x[], double y[])
{
    return hw_change_exchange_needed((enum hw_change_method)c[0], x[0], x[1], x[2], y);
}

static int change_rounds_needed(const int c[], const double x[], double y[])
{
    return hw_change_rounds_needed((enum hw_change_method)c[0], x[0], x[1], x[2], x[3], y);
}

static int course_level(const int c[], const double x[], double y[])
{
    return hw_course_level((enum hw_course_redose)c[0], x[0], x[1], (int)x[2], &y[0], &y[1]);
}

static int course_ceiling(const int c[], const double x[], double y[])
{
    return hw_course_ceiling((enum hw_course_redose)c[0], x[0], x[1], y);
}

static int course_dose_over(const int c[], const double x[], double y[])
{
    return hw_course_dose_over((enum hw_course_redose)c[0], x[0], x[1], x[2], y);
}

static int course_amounts(const int c[], const double x[], double y[])
{
    return hw_course_amounts((enum hw_course_redose)c[0], x[0], x[1], (int)x[2], &y[0], &y[1]);
}

static int course_water(const double x[], double y[])
{
    return hw_course_water(x[0], x[1], (int)x[2], y);
}

static int carbonate_water_read(const double x[], double y[])
{
    struct hw_carbonate_water water;
    (void)hw_carbonate_water(x[3], x[4], &water);
    return hw_carbonate_water_read(&water, x[0], x[1], x[2], &y[0], &y[1]);
}

static int carbonate_water_ph(const double x[], double y[])
{
    struct hw_carbonate_water water;
    (void)hw_carbonate_water(x[3], x[4], &water);
    return hw_carbonate_water_ph(&water, x[0], x[1], x[2], y);
}

static int carbonate_water_ph_in_air(const double x[], double y[])
{
    struct hw_carbonate_water water;
    (void)hw_carbonate_water(x[3], x[4], &water);
    return hw_carbonate_water_ph_in_air(&water, x[0], x[1], x[2], y);
}

/* ---------------------------------------------------------------- the table */

static const char models[] = "khoo1977 epa1989 clegg1995";
static const char scales[] = "meter nbs-rigorous total free sws";
static const char bases[] = "n nh3 nh4";
static const char formalins[] = "solution-ul solution-mg formaldehyde-mg";
static const char reagents[] = "ammonium-chloride ammonium-sulfate copper-sulfate-pentahydrate";
static const char binders[] = "sulfonate sulfinate sulfinate-dihydrate";
static const char agents[] = "thiosulfate-pentahydrate thiosulfate-anhydrous ascorbic-acid";

/* clang-format off */
const struct function reference_public[] = {
    {"ammonia_pk", {{"model", models}, {"scale", scales}}, "temp salinity", "pk",
     .chosen = ammonia_pk},
    {"ammonia_fraction", {{"model", models}, {"scale", scales}}, "ph temp salinity",
     "fraction percent", .chosen = ammonia_fraction},
    {"ammonia_fraction_at_pk", .in = "ph pk", .out = "fraction", .of2 = hw_ammonia_fraction_at_pk},
    {"ammonia_ph_at", .in = "fraction pk", .out = "ph", .of2 = hw_ammonia_ph_at},
    {"ph_offset", {{"scale", scales}}, "temp salinity", "offset over_free", .chosen = ph_offset},
    {"ph_convert", {{"from", scales}, {"to", scales}}, "ph temp salinity", "converted",
     .chosen = ph_convert},
    {"nitrogen_to_n", {{"basis", bases}}, "amount", "as_n", .chosen = nitrogen_to_n},
    {"nitrogen_from_n", {{"basis", bases}}, "as_n", "amount", .chosen = nitrogen_from_n},
    {"nitrogen_convert", {{"from", bases}, {"to", bases}}, "amount", "amount",
     .chosen = nitrogen_convert},
    {"molar_mass", {{"of", bases}}, "", "grams", .chosen = molar_mass},
    {"nitrite_to_n", {{"basis", "n ion"}}, "amount", "as_n", .chosen = nitrite_to_n},
    {"nitrite_to_ion", {{"basis", "n ion"}}, "amount", "as_ion", .chosen = nitrite_to_ion},
    {"nitrite_chloride_ratio", .in = "chloride as_n", .out = "ratio",
     .of2 = hw_nitrite_chloride_ratio},
    {"criteria_epa2013", {{"which", "ccc cmc-present cmc-absent"}}, "ph temp", "tan_n",
     .chosen = criteria_epa2013},
    {"criteria_epa2013_ccc_ph", .in = "tan_n temp", .out = "ph",
     .of2 = hw_criteria_epa2013_ccc_ph},

    {"seawater_density_at", .in = "temp salinity",
     .out = "density anomaly mg_n_per_l_of_umol_per_kg umol_per_kg_of_mg_n_per_l",
     .call = seawater_density_at},
    {"seawater_specific_heat", .in = "temp salinity", .out = "capacity",
     .of2 = hw_seawater_specific_heat},
    {"seawater_ionic_strength", .in = "salinity", .out = "molal",
     .of1 = hw_seawater_ionic_strength},
    {"seawater_chloride_at", .in = "temp salinity", .out = "chloride",
     .of2 = hw_seawater_chloride_at},
    {"seawater_salinity_by_density", .in = "density temp", .out = "salinity",
     .of2 = hw_seawater_salinity_by_density},
    {"conductivity_ratio", .in = "conductivity temp", .out = "ratio", .of2 = hw_conductivity_ratio},
    {"conductivity_salinity_by_ratio", .in = "ratio temp", .out = "salinity",
     .of2 = hw_conductivity_salinity_by_ratio},
    {"conductivity_salinity", .in = "conductivity temp", .out = "salinity",
     .of2 = hw_conductivity_salinity},
    {"conductivity_at", .in = "temp salinity", .out = "conductivity over_standard",
     .call = conductivity_at},
    {"conductivity_raw", .in = "at_25 per_degree temp", .out = "conductivity",
     .of3 = hw_conductivity_raw},
    {"hydrometer_reading", .in = "scale_temp water_temp salinity", .out = "reading",
     .call = hydrometer_reading},
    {"hydrometer_salinity", .in = "scale_temp water_temp expansion reading temp",
     .out = "salinity", .call = hydrometer_salinity},
    {"refraction_index_at", .in = "temp salinity", .out = "index", .of2 = hw_refraction_index_at},
    {"refraction_salinity", .in = "index temp", .out = "salinity", .of2 = hw_refraction_salinity},
    {"refraction_salinity_by_brine", {{"scale", "gkg gL"}}, "reading", "salinity",
     .chosen = refraction_salinity_by_brine},
    {"refraction_brine_reading", {{"scale", "gkg gL"}}, "salinity", "reading",
     .chosen = refraction_brine_reading},
    {"saltmix_raise", .in = "volume temp salinity target dry", .out = "mass mass_per_kg",
     .call = saltmix_raise},
    {"saltmix_dilute", .in = "volume temp salinity target", .out = "litres kg",
     .call = saltmix_dilute},
    {"saltmix_replace", .in = "volume temp salinity target", .out = "litres",
     .of4 = hw_saltmix_replace},
    {"saltmix_dry", .in = "mass makes temp salinity", .out = "dry", .of4 = hw_saltmix_dry},
    {"oxygen_pressure", .in = "altitude", .out = "pressure hpa", .call = oxygen_pressure},
    {"oxygen_pressure_share", .in = "temp pressure", .out = "share",
     .of2 = hw_oxygen_pressure_share},
    {"oxygen_saturation", .in = "temp salinity pressure",
     .out = "saturation mol_per_m3 umol_per_kg", .call = oxygen_saturation},
    {"oxygen_uptake", .in = "fish", .out = "uptake", .of1 = hw_oxygen_uptake},
    {"oxygen_hours", .in = "oxygen floor volume biomass uptake", .out = "hours",
     .of5 = hw_oxygen_hours},

    {"challenge_salt_mass", {{"salt", "chloride sulfate"}}, "purity nitrogen", "mass mg",
     .chosen = challenge_salt_mass},
    {"challenge_solution", .in = "nh3_percent", .out = "density molarity",
     .call = challenge_solution},
    {"challenge_nitrified", {{"from", "ammonium ammonia"}}, "nitrogen",
     "nitrate oxygen alkalinity meq", .chosen = challenge_nitrified},
    {"verdict_rate", .in = "start left hours volume", .out = "rate capacity",
     .call = verdict_rate},
    {"verdict_feed_carried", .in = "capacity protein working colder", .out = "feed working_feed",
     .call = verdict_feed_carried},
    {"verdict_hours", .in = "tan nitrite half_tan half_nitrite rate", .out = "hours",
     .of5 = hw_verdict_hours},
    {"ahead_vmax", .in = "from to hours half", .out = "vmax mg_a_day_in_110L", .call = ahead_vmax},
    {"ahead_settles", .in = "rate vmax half", .out = "level", .of3 = hw_ahead_settles},
    {"ahead_carried", .in = "level vmax half", .out = "rate", .of3 = hw_ahead_carried},
    {"ahead_meals", .in = "rate meals", .out = "even meal", .call = ahead_meals},
    {"ahead_level", .in = "even meal meals vmax half share every fresh start hours",
     .out = "then peak peak_hour", .call = ahead_level},
    {"ahead_reach", .in = "even meal meals vmax half share every fresh start limit hours",
     .out = "hour", .call = ahead_reach},
    {"bioload_daily_feed", .in = "biomass ration", .out = "feed", .of2 = hw_bioload_daily_feed},
    {"bioload_from_feed", .in = "feed protein factor", .out = "nitrogen",
     .of3 = hw_bioload_from_feed},
    {"bioload_from_dead", .in = "dead protein", .out = "nitrogen", .of2 = hw_bioload_from_dead},
    {"bioload_starved", .in = "biomass rate", .out = "nitrogen", .of2 = hw_bioload_starved},
    {"bioload_rise", .in = "production volume", .out = "rise", .of2 = hw_bioload_rise},
    {"bioload_hours", .in = "rise limit", .out = "hours", .of2 = hw_bioload_hours},
    {"bioload_change", .in = "rise limit", .out = "exchanged", .of2 = hw_bioload_change},
    {"stock_strength", .in = "raises into per", .out = "strength", .of3 = hw_stock_strength},
    {"stock_mass", {{"reagent", reagents}}, "strength make", "mass", .chosen = stock_mass},
    {"stock_solubility", {{"reagent", reagents}}, "", "solubility", .chosen = stock_solubility},
    {"binder_ratio", {{"agent", binders}}, "", "ratio", .chosen = binder_ratio},
    {"binder_powder", {{"agent", binders}}, "nitrogen excess purity", "mass",
     .chosen = binder_powder},
    {"binder_oxygen_taken", {{"agent", binders}}, "mass purity volume", "oxygen",
     .chosen = binder_oxygen_taken},
    {"binder_by_label", .in = "dose per binds volume total", .out = "amount",
     .of5 = hw_binder_by_label},
    {"bag_total", .in = "biomass excretion hours water", .out = "total", .of4 = hw_bag_total},
    {"dose_active", .in = "volume now target", .out = "active", .of3 = hw_dose_active},
    {"dose_level", .in = "volume now active", .out = "level", .of3 = hw_dose_level},
    {"dose_liquid", .in = "active strength", .out = "liquid", .of2 = hw_dose_liquid},
    {"dose_liquid_active", .in = "liquid strength", .out = "active", .of2 = hw_dose_liquid_active},
    {"dose_powder", .in = "active share", .out = "mass", .of2 = hw_dose_powder},
    {"dose_powder_active", .in = "mass share", .out = "active", .of2 = hw_dose_powder_active},
    {"dose_label_share", .in = "raises per mass", .out = "share", .of3 = hw_dose_label_share},
    {"dose_copper", .in = "salt", .out = "copper", .of1 = hw_dose_copper},
    {"dose_step_level", .in = "now target steps step", .out = "level", .call = dose_step_level},
    {"formalin_to_formaldehyde", {{"basis", formalins}}, "level", "formaldehyde",
     .chosen = formalin_to_formaldehyde},
    {"formalin_from_formaldehyde", {{"basis", formalins}}, "formaldehyde", "level",
     .chosen = formalin_from_formaldehyde},
    {"formalin_oxygen", .in = "solution", .out = "oxygen", .of1 = hw_formalin_oxygen},
    {"bath_dye", .in = "volume strength level", .out = "dye", .of3 = hw_bath_dye},
    {"bath_dye_at_rate", .in = "volume rate", .out = "dye", .of2 = hw_bath_dye_at_rate},
    {"bath_level", .in = "volume strength dye", .out = "level", .of3 = hw_bath_level},
    {"chlorine_bleach_strength", {{"label", "wv ww naocl-ww"}}, "label_percent density",
     "strength", .chosen = chlorine_bleach_strength},
    {"chlorine_bleach_amount", .in = "volume target strength", .out = "bleach",
     .of3 = hw_chlorine_bleach_amount},
    {"chlorine_contact", .in = "level minutes", .out = "contact", .of2 = hw_chlorine_contact},
    {"chlorine_agent_ratio", {{"agent", agents}}, "", "ratio", .chosen = chlorine_agent_ratio},
    {"chlorine_agent_mass", .in = "volume chlorine ratio", .out = "mass",
     .of3 = hw_chlorine_agent_mass},
    {"chlorine_nitrogen_freed", .in = "chlorine", .out = "nitrogen",
     .of1 = hw_chlorine_nitrogen_freed},

    {"volume_inside", .in = "outside wall", .out = "inside", .of2 = hw_volume_inside},
    {"volume_box", .in = "length width depth", .out = "gross", .of3 = hw_volume_box},
    {"volume_cylinder", .in = "diameter depth", .out = "gross", .of2 = hw_volume_cylinder},
    {"volume_net", .in = "gross displaced extra", .out = "net", .of3 = hw_volume_net},
    {"volume_gauge", .in = "added rise", .out = "net", .of2 = hw_volume_gauge},
    {"volume_gauge_bicarbonate", .in = "added rise", .out = "net",
     .of2 = hw_volume_gauge_bicarbonate},
    {"volume_depth", .in = "height below_rim bottom", .out = "depth", .of3 = hw_volume_depth},
    {"buffer_mass", {{"source", "sodium-bicarbonate sodium-carbonate"}},
     "volume alkalinity target", "mass", .chosen = buffer_mass},
    {"change_level", {{"method", "batch flow"}}, "exchanged rounds now fresh", "level",
     .chosen = change_level},
    {"change_fresh_needed", {{"method", "batch flow"}}, "exchanged now keep", "fresh",
     .chosen = change_fresh_needed},
    {"change_exchange_needed", {{"method", "batch flow"}}, "now fresh goal", "exchanged",
     .chosen = change_exchange_needed},
    {"change_rounds_needed", {{"method", "batch flow"}}, "exchanged now fresh goal", "rounds",
     .chosen = change_rounds_needed},
    {"course_level", {{"redose", "full replace"}}, "first exchanged dose", "before after",
     .chosen = course_level},
    {"course_ceiling", {{"redose", "full replace"}}, "first exchanged", "ceiling",
     .chosen = course_ceiling},
    {"course_dose_over", {{"redose", "full replace"}}, "first exchanged limit", "dose",
     .chosen = course_dose_over},
    {"course_amounts", {{"redose", "full replace"}}, "dye exchanged doses", "again total",
     .chosen = course_amounts},
    {"course_water", .in = "volume exchanged doses", .out = "water", .call = course_water},

    {"carbonate_ph", .in = "alkalinity carbon tan temp salinity", .out = "ph",
     .of5 = hw_carbonate_ph},
    {"carbonate_ph_in_air", .in = "alkalinity air tan temp salinity", .out = "ph",
     .of5 = hw_carbonate_ph_in_air},
    {"carbonate_air", .in = "ph alkalinity tan temp salinity", .out = "air",
     .of5 = hw_carbonate_air},
    {"carbonate_water_read", .in = "ph alkalinity tan temp salinity", .out = "carbon air",
     .call = carbonate_water_read},
    {"carbonate_water_ph", .in = "alkalinity carbon tan temp salinity", .out = "ph",
     .call = carbonate_water_ph},
    {"carbonate_water_ph_in_air", .in = "alkalinity air tan temp salinity", .out = "ph",
     .call = carbonate_water_ph_in_air},

    {"trend", .in = "", .out = "slope low high at_last", .series = trend},
    {"trend_days_to", .in = "level slope limit", .out = "days", .of3 = hw_trend_days_to},
    {"trend_held", .in = "floor ceiling gap", .out = "held longest from outside by",
     .series = trend_held},
    {NULL, .in = NULL},
};
/* clang-format on */
