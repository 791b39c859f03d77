/* library_prototypes.h - every function of the library once more, in the order of the headers.
 *
 * test_library.c includes it, so that a change of a type does not compile, and reads it as text.
 * Whoever changes a function changes this list too, and the name of the function when its arguments
 * change their order or meaning: a stale call must not compile. */
/* clang-format off */
/* ahead.h */
int hw_ahead_vmax(double from, double to, double hours, double half, double *vmax);
int hw_ahead_settles(double rate, double vmax, double half, double *level);
int hw_ahead_carried(double level, double vmax, double half, double *rate);
int hw_ahead_meals(double rate, int meals, double *even, double *meal);
int hw_ahead_level(const struct hw_ahead_tank *tank, double start, double hours,
    struct hw_ahead_outlook *outlook);
int hw_ahead_reach(const struct hw_ahead_tank *tank, double start, double limit, double hours,
    double *hour);
/* ammonia.h */
int hw_ammonia_pk(enum hw_ammonia_model model, enum hw_ph_scale scale, double temp,
    double salinity, double *pk);
int hw_ammonia_fraction(enum hw_ammonia_model model, enum hw_ph_scale scale, double ph,
    double temp, double salinity, double *fraction);
int hw_ammonia_fraction_at_pk(double ph, double pk, double *fraction);
int hw_ammonia_ph_at(double fraction, double pk, double *ph);
/* bag.h */
int hw_bag_total(double biomass, double excretion, double hours, double water, double *total);
/* bath.h */
int hw_bath_dye(double volume, double strength, double level, double *dye);
int hw_bath_dye_at_rate(double volume, double rate, double *dye);
int hw_bath_level(double volume, double strength, double dye, double *level);
/* binder.h */
int hw_binder_ratio(enum hw_binder agent, double *ratio);
int hw_binder_powder(enum hw_binder agent, double nitrogen, double excess, double purity,
    double *mass);
int hw_binder_oxygen_taken(enum hw_binder agent, double mass, double purity, double volume,
    double *oxygen);
int hw_binder_by_label(double dose, double per, double binds, double volume, double total,
    double *amount);
/* bioload.h */
int hw_bioload_daily_feed(double biomass, double ration, double *feed);
int hw_bioload_from_feed(double feed, double protein, double factor, double *nitrogen);
int hw_bioload_from_dead(double dead, double protein, double *nitrogen);
int hw_bioload_starved(double biomass, double rate, double *nitrogen);
int hw_bioload_rise(double production, double volume, double *rise);
int hw_bioload_hours(double rise, double limit, double *hours);
int hw_bioload_change(double rise, double limit, double *exchanged);
/* blend.h */
int hw_blend_mix(double share, double temp, double salinity, double new_temp,
    double new_salinity, struct hw_blend *blend);
int hw_blend_level(const struct hw_blend *blend, double level, double fresh, double *mixed);
/* buffer.h */
int hw_buffer_mass(enum hw_buffer_source source, double volume, double alkalinity, double target,
    double *mass);
/* carbonate.h */
int hw_carbonate_constants(double temp, double salinity, struct hw_carbonate_constants *constants);
int hw_carbonate_water(double temp, double salinity, struct hw_carbonate_water *water);
int hw_carbonate_water_read(const struct hw_carbonate_water *water, double ph, double alkalinity,
                            double tan, double *carbon, double *air);
int hw_carbonate_water_ph(const struct hw_carbonate_water *water, double alkalinity, double carbon,
                          double tan, double *ph);
int hw_carbonate_water_ph_in_air(const struct hw_carbonate_water *water, double alkalinity,
                                 double air, double tan, double *ph);
int hw_carbonate_carbon(double ph, double alkalinity, double tan, double temp, double salinity,
    double *carbon);
int hw_carbonate_ph(double alkalinity, double carbon, double tan, double temp, double salinity,
    double *ph);
int hw_carbonate_ph_in_air(double alkalinity, double air, double tan, double temp,
    double salinity, double *ph);
int hw_carbonate_air(double ph, double alkalinity, double tan, double temp, double salinity,
    double *air);
/* challenge.h */
int hw_challenge_salt_mass(enum hw_challenge_salt salt, double purity, double nitrogen,
    double *mass);
int hw_challenge_solution_density(double nh3_percent, double *density);
int hw_challenge_solution_nitrogen(double nh3_percent, double *strength);
int hw_challenge_nitrified(enum hw_challenge_source from, double nitrogen, double *nitrate,
    double *oxygen, double *alkalinity);
/* change.h */
int hw_change_kept(enum hw_change_method method, double exchanged, double *kept);
int hw_change_level(enum hw_change_method method, double exchanged, int rounds, double now,
    double fresh, double *level);
int hw_change_fresh_needed(enum hw_change_method method, double exchanged, double now,
    double keep, double *fresh);
int hw_change_exchange_needed(enum hw_change_method method, double now, double fresh,
    double goal, double *exchanged);
int hw_change_rounds_needed(enum hw_change_method method, double exchanged, double now,
    double fresh, double goal, double *rounds);
/* chlorine.h */
int hw_chlorine_bleach_strength(enum hw_chlorine_label label, double label_percent,
    double density, double *strength);
int hw_chlorine_bleach_amount(double volume, double target, double strength, double *bleach);
int hw_chlorine_contact(double level, double minutes, double *contact);
int hw_chlorine_agent_ratio(enum hw_chlorine_agent agent, double *ratio);
int hw_chlorine_agent_mass(double volume, double chlorine, double ratio, double *mass);
int hw_chlorine_nitrogen_freed(double chlorine, double *nitrogen);
/* conductivity.h */
int hw_conductivity_ratio(double conductivity, double temp, double *ratio);
int hw_conductivity_salinity_by_ratio(double ratio, double temp, double *salinity);
int hw_conductivity_salinity(double conductivity, double temp, double *salinity);
int hw_conductivity_at(double temp, double salinity, double *conductivity);
int hw_conductivity_raw(double at_25, double per_degree, double temp, double *conductivity);
/* course.h */
int hw_course_level(enum hw_course_redose redose, double first, double exchanged, int dose,
    double *before, double *after);
int hw_course_ceiling(enum hw_course_redose redose, double first, double exchanged,
    double *ceiling);
int hw_course_dose_over(enum hw_course_redose redose, double first, double exchanged,
    double limit, double *dose);
int hw_course_amounts(enum hw_course_redose redose, double dye, double exchanged, int doses,
    double *again, double *total);
int hw_course_water(double volume, double exchanged, int doses, double *water);
/* criteria.h */
int hw_criteria_epa2013(enum hw_criteria_limit which, double ph, double temp, double *tan_n);
int hw_criteria_epa2013_ccc_ph(double tan_n, double temp, double *ph);
/* dose.h */
int hw_dose_active(double volume, double now, double target, double *active);
int hw_dose_level(double volume, double now, double active, double *level);
int hw_dose_liquid(double active, double strength, double *liquid);
int hw_dose_liquid_active(double liquid, double strength, double *active);
int hw_dose_powder(double active, double share, double *mass);
int hw_dose_powder_active(double mass, double share, double *active);
int hw_dose_label_share(double raises, double per, double mass, double *share);
int hw_dose_copper(double salt, double *copper);
int hw_dose_step_level(double now, double target, int steps, int step, double *level);
/* formalin.h */
int hw_formalin_to_formaldehyde(enum hw_formalin_basis basis, double level, double *formaldehyde);
int hw_formalin_from_formaldehyde(enum hw_formalin_basis basis, double formaldehyde, double *level);
int hw_formalin_oxygen(double solution, double *oxygen);
/* hydrometer.h */
int hw_hydrometer_density(const struct hw_hydrometer *hydrometer, double reading, double temp,
    double *density);
int hw_hydrometer_reading(const struct hw_hydrometer *hydrometer, double salinity, double *reading);
/* nitrite.h */
int hw_nitrite_to_n(enum hw_nitrite_basis basis, double amount, double *as_n);
int hw_nitrite_to_ion(enum hw_nitrite_basis basis, double amount, double *as_ion);
int hw_nitrite_chloride_ratio(double chloride, double as_n, double *ratio);
/* nitrogen.h */
int hw_nitrogen_to_n(enum hw_nitrogen_basis basis, double amount, double *as_n);
int hw_nitrogen_from_n(enum hw_nitrogen_basis basis, double as_n, double *amount);
/* oxygen.h */
int hw_oxygen_pressure(double altitude, double *pressure);
int hw_oxygen_pressure_share(double temp, double pressure, double *share);
int hw_oxygen_saturation(double temp, double salinity, double pressure, double *saturation);
int hw_oxygen_uptake(double fish, double *uptake);
int hw_oxygen_hours(double oxygen, double floor, double volume, double biomass, double uptake,
    double *hours);
/* ph.h */
int hw_ph_offset(enum hw_ph_scale scale, double temp, double salinity, double *offset);
int hw_ph_convert(double ph, enum hw_ph_scale from, enum hw_ph_scale to, double temp,
    double salinity, double *converted);
/* refraction.h */
int hw_refraction_brine_reading(enum hw_refraction_brine scale, double salinity, double *reading);
int hw_refraction_index_at(double temp, double salinity, double *index);
int hw_refraction_salinity(double index, double temp, double *salinity);
int hw_refraction_salinity_by_brine(enum hw_refraction_brine scale, double reading,
    double *salinity);
/* saltmix.h */
int hw_saltmix_raise(double volume, double temp, double salinity, double target, double dry,
    double *mass);
int hw_saltmix_dilute(double volume, double temp, double salinity, double target, double *litres);
int hw_saltmix_replace(double volume, double temp, double salinity, double target, double *litres);
int hw_saltmix_dry(double mass, double makes, double temp, double salinity, double *dry);
/* seawater.h */
int hw_seawater_density_at(double temp, double salinity, double *density);
int hw_seawater_salinity_by_density(double density, double temp, double *salinity);
int hw_seawater_specific_heat(double temp, double salinity, double *capacity);
int hw_seawater_ionic_strength(double salinity, double *molal);
int hw_seawater_chloride_at(double temp, double salinity, double *chloride);
/* status.h */
const char *hw_status_text(int status);
/* stock.h */
int hw_stock_strength(double raises, double into, double per, double *strength);
int hw_stock_mass(enum hw_stock_reagent reagent, double strength, double make, double *mass);
int hw_stock_solubility(enum hw_stock_reagent reagent, double *solubility);
/* trend.h */
int hw_trend_slope(const double *days, const double *values, size_t n, double *slope,
    double *intercept);
int hw_trend_interval(const double *days, const double *values, size_t n, double *low,
    double *high);
int hw_trend_days_to(double level, double slope, double limit, double *days);
int hw_trend_held(const double *days, const double *values, size_t n,
    const struct hw_trend_window *window, struct hw_trend_run *run);
/* verdict.h */
int hw_verdict_rate(double start, double left, double hours, double volume, double *rate,
    double *capacity);
int hw_verdict_feed_carried(double capacity, double protein, double working, double colder,
    double *feed, double *working_feed);
int hw_verdict_hours(double tan, double nitrite, double half_tan, double half_nitrite,
    double rate, double *hours);
/* volume.h */
int hw_volume_inside(double outside, double wall, double *inside);
int hw_volume_depth(double height, double below_rim, double bottom, double *depth);
int hw_volume_box(double length, double width, double depth, double *gross);
int hw_volume_cylinder(double diameter, double depth, double *gross);
int hw_volume_net(double gross, double displaced, double extra, double *net);
int hw_volume_gauge(double added, double rise, double *net);
int hw_volume_gauge_bicarbonate(double added, double rise, double *net);
/* clang-format on */
