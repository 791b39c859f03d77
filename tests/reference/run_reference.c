/* run_reference.c - runs the rows of the reference sheets that speak of the core.
 *
 * Usage: run_reference [FOLDER], by default tests/reference. Every *.csv in it has the columns
 *
 *     function   a function of the core without its hw_, or a calculation of the program
 *     inputs     name=value, joined by ; with words for choices; temp68 is a temperature on IPTS-68
 *     result     the name of the result, or status
 *     expected   its value by the source
 *     abs, rel   tolerances; the wider of abs and rel x |expected| counts
 *     source     where the value comes from
 *     how        READ from the source, COMPUTED by an independent evaluation, or what else
 *
 * Rows of calculations are counted and left to the tests of the engine. All failing rows are told;
 * a row that cannot be understood fails too, and so does a sheet without rows. */
#ifndef _POSIX_C_SOURCE
#define _POSIX_C_SOURCE 200809L /* opendir */
#endif

#include <dirent.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "core/ammonia_kernel.h"
#include "core/carbonate_kernel.h"
#include "holdwater/holdwater.h"

enum { COLUMNS = 8, INPUTS_MAX = 12, RESULTS_MAX = 20, LINE_MAX_LENGTH = 4096, SHEETS_MAX = 200 };
enum column { FUNCTION, INPUTS, RESULT, EXPECTED, ABS, REL, SOURCE, HOW };

static const char header[] = "function,inputs,result,expected,abs,rel,source,how";

struct input {
    const char *name, *value;
    int used;
};

/* One row under evaluation: what goes in, and what came out. `trouble` tells what is wrong with the
 * row itself. */
struct row {
    struct input inputs[INPUTS_MAX];
    int input_count;
    int status;
    struct {
        const char *name;
        double value;
    } results[RESULTS_MAX];
    int result_count;
    const char *trouble;
};

/* ---------------------------------------------------------------- inputs and results */

static const char *word(struct row *row, const char *name)
{
    for (int i = 0; i < row->input_count; i++) {
        if (strcmp(row->inputs[i].name, name) == 0) {
            row->inputs[i].used = 1;
            return row->inputs[i].value;
        }
    }
    return NULL;
}

static double parsed(struct row *row, const char *text)
{
    char *end = NULL;
    double value = strtod(text, &end);
    if (end == text || *end != '\0') {
        row->trouble = "not a number";
    }
    return value;
}

static double number(struct row *row, const char *name)
{
    const char *text = word(row, name);
    if (text == NULL) {
        row->trouble = "an input is missing";
        return (double)NAN;
    }
    return parsed(row, text);
}

static double temperature(struct row *row)
{
    const char *text = word(row, "temp68");
    return text != NULL ? parsed(row, text) / 1.00024 : number(row, "temp");
}

static double new_temperature(struct row *row)
{
    const char *text = word(row, "new_temp68");
    return text != NULL ? parsed(row, text) / 1.00024 : number(row, "new_temp");
}

/* The place of a word among those a choice has, or, for refusals, a bare number. */
static int choice(struct row *row, const char *name, const char *const *words)
{
    const char *given = word(row, name);
    if (given == NULL) {
        row->trouble = "a choice is missing";
        return 0;
    }
    for (int i = 0; words[i] != NULL; i++) {
        if (strcmp(words[i], given) == 0) {
            return i;
        }
    }
    return (int)parsed(row, given);
}

static void put(struct row *row, const char *name, double value)
{
    row->results[row->result_count].name = name;
    row->results[row->result_count].value = value;
    row->result_count++;
}

static enum hw_ph_scale scale(struct row *row, const char *name)
{
    static const char *const words[] = {"meter", "nbs-rigorous", "total", "free", "sws", NULL};
    return (enum hw_ph_scale)choice(row, name, words);
}

static enum hw_ammonia_model model(struct row *row)
{
    static const char *const words[] = {"khoo1977", "epa1989", "clegg1995", NULL};
    return (enum hw_ammonia_model)choice(row, "model", words);
}

static enum hw_nitrogen_basis basis(struct row *row, const char *name)
{
    static const char *const words[] = {"n", "nh3", "nh4", NULL};
    return (enum hw_nitrogen_basis)choice(row, name, words);
}

/* ---------------------------------------------------------------- public functions */

static void ammonia_pk(struct row *row)
{
    double pk = 0;
    row->status = hw_ammonia_pk(model(row), scale(row, "scale"), temperature(row),
                                number(row, "salinity"), &pk);
    put(row, "pk", pk);
}

static void ammonia_fraction(struct row *row)
{
    double fraction = 0;
    row->status = hw_ammonia_fraction(model(row), scale(row, "scale"), number(row, "ph"),
                                      temperature(row), number(row, "salinity"), &fraction);
    put(row, "fraction", fraction);
    put(row, "percent", 100 * fraction);
}

static void ammonia_fraction_at_pk(struct row *row)
{
    double fraction = 0;
    row->status = hw_ammonia_fraction_at_pk(number(row, "ph"), number(row, "pk"), &fraction);
    put(row, "fraction", fraction);
}

static void ammonia_ph_at(struct row *row)
{
    double ph = 0;
    row->status = hw_ammonia_ph_at(number(row, "fraction"), number(row, "pk"), &ph);
    put(row, "ph", ph);
}

static void ph_offset(struct row *row)
{
    double offset = 0;
    row->status =
        hw_ph_offset(scale(row, "scale"), temperature(row), number(row, "salinity"), &offset);
    put(row, "offset", offset);
    put(row, "over_free", hw_exp10(-offset)); /* H+ of the scale over free H+ */
}

static void ph_convert(struct row *row)
{
    double converted = 0;
    row->status = hw_ph_convert(number(row, "ph"), scale(row, "from"), scale(row, "to"),
                                temperature(row), number(row, "salinity"), &converted);
    put(row, "converted", converted);
}

static void nitrogen_to_n(struct row *row)
{
    double as_n = 0;
    row->status = hw_nitrogen_to_n(basis(row, "basis"), number(row, "amount"), &as_n);
    put(row, "as_n", as_n);
}

static void nitrogen_from_n(struct row *row)
{
    double amount = 0;
    row->status = hw_nitrogen_from_n(basis(row, "basis"), number(row, "as_n"), &amount);
    put(row, "amount", amount);
}

/* From one basis to another by way of nitrogen. */
static void nitrogen_convert(struct row *row)
{
    double as_n = 0;
    double amount = 0;
    hw_nitrogen_to_n(basis(row, "from"), number(row, "amount"), &as_n);
    row->status = hw_nitrogen_from_n(basis(row, "to"), as_n, &amount);
    put(row, "amount", amount);
}

static void molar_mass(struct row *row)
{
    static const double masses[] = {HW_MOLAR_N, HW_MOLAR_NH3, HW_MOLAR_NH4};
    int of = (int)basis(row, "of");
    row->status = of >= 0 && of <= 2 ? HW_STATUS_OK : HW_STATUS_CHOICE;
    put(row, "grams", row->status == HW_STATUS_OK ? masses[of] : (double)NAN);
}

static void seawater_heat_capacity(struct row *row)
{
    double capacity = 0;
    row->status = hw_seawater_heat_capacity(number(row, "salinity"), temperature(row), &capacity);
    put(row, "capacity", capacity);
}

static void seawater_density(struct row *row)
{
    double density = 0;
    row->status = hw_seawater_density(number(row, "salinity"), temperature(row), &density);
    put(row, "density", density);
    put(row, "anomaly", density - 1000);
    put(row, "mg_n_per_l_of_umol_per_kg", HW_MOLAR_N * density / 1e6);
    put(row, "umol_per_kg_of_mg_n_per_l", 1e6 / (HW_MOLAR_N * density));
}

static void seawater_ionic_strength(struct row *row)
{
    double molal = 0;
    row->status = hw_seawater_ionic_strength(number(row, "salinity"), &molal);
    put(row, "molal", molal);
}

static void conductivity_ratio(struct row *row)
{
    double ratio = 0;
    row->status = hw_conductivity_ratio(number(row, "conductivity"), temperature(row), &ratio);
    put(row, "ratio", ratio);
}

static void salinity_from_ratio(struct row *row)
{
    double salinity = 0;
    row->status = hw_salinity_from_ratio(number(row, "ratio"), temperature(row), &salinity);
    put(row, "salinity", salinity);
}

static void salinity_from_conductivity(struct row *row)
{
    double salinity = 0;
    row->status =
        hw_salinity_from_conductivity(number(row, "conductivity"), temperature(row), &salinity);
    put(row, "salinity", salinity);
}

static void conductivity(struct row *row)
{
    double result = 0;
    row->status = hw_conductivity(number(row, "salinity"), temperature(row), &result);
    put(row, "conductivity", result);
    put(row, "over_standard", result / HW_CONDUCTIVITY_STANDARD);
}

static void conductivity_uncompensated(struct row *row)
{
    double result = 0;
    row->status = hw_conductivity_uncompensated(number(row, "at_25"), number(row, "slope"),
                                                temperature(row), &result);
    put(row, "conductivity", result);
}

static struct hw_hydrometer hydrometer(struct row *row)
{
    struct hw_hydrometer instrument = {number(row, "scale_temp"), number(row, "water_temp"), 0};
    return instrument;
}

static void hydrometer_reading(struct row *row)
{
    double reading = 0;
    struct hw_hydrometer instrument = hydrometer(row);
    row->status = hw_hydrometer_reading(&instrument, number(row, "salinity"), &reading);
    put(row, "reading", reading);
}

/* From the reading to the density, and on to the salinity. */
static void hydrometer_salinity(struct row *row)
{
    double density = 0;
    double salinity = (double)NAN;
    struct hw_hydrometer instrument = hydrometer(row);
    instrument.expansion = number(row, "expansion");
    row->status =
        hw_hydrometer_density(&instrument, number(row, "reading"), temperature(row), &density);
    if (row->status >= 0) {
        row->status = hw_salinity_from_density(density, temperature(row), &salinity);
    }
    put(row, "salinity", salinity);
}

static void salinity_from_density(struct row *row)
{
    double salinity = 0;
    row->status = hw_salinity_from_density(number(row, "density"), temperature(row), &salinity);
    put(row, "salinity", salinity);
}

static void refraction_index(struct row *row)
{
    double index = 0;
    row->status = hw_refraction_index(number(row, "salinity"), temperature(row), &index);
    put(row, "index", index);
}

static void salinity_from_refraction(struct row *row)
{
    double salinity = 0;
    row->status = hw_salinity_from_refraction(number(row, "index"), temperature(row), &salinity);
    put(row, "salinity", salinity);
}

static void salinity_from_brine(struct row *row)
{
    static const char *const words[] = {"gkg", "gL", NULL};
    double salinity = 0;
    row->status = hw_salinity_from_brine((enum hw_brine_scale)choice(row, "scale", words),
                                         number(row, "reading"), &salinity);
    put(row, "salinity", salinity);
}

static void epa2013_criterion(struct row *row)
{
    static const char *const words[] = {"ccc", "cmc-present", "cmc-absent", NULL};
    double tan_n = 0;
    row->status = hw_epa2013_criterion((enum hw_epa2013)choice(row, "which", words),
                                       number(row, "ph"), temperature(row), &tan_n);
    put(row, "tan_n", tan_n);
}

static void epa2013_ccc_ph(struct row *row)
{
    double ph = 0;
    row->status = hw_epa2013_ccc_ph(number(row, "tan_n"), temperature(row), &ph);
    put(row, "ph", ph);
}

static enum hw_nitrite_basis nitrite_basis(struct row *row)
{
    static const char *const words[] = {"n", "ion", NULL};
    return (enum hw_nitrite_basis)choice(row, "basis", words);
}

static void nitrite_to_n(struct row *row)
{
    double as_n = 0;
    row->status = hw_nitrite_to_n(nitrite_basis(row), number(row, "amount"), &as_n);
    put(row, "as_n", as_n);
}

static void nitrite_to_ion(struct row *row)
{
    double as_ion = 0;
    row->status = hw_nitrite_to_ion(nitrite_basis(row), number(row, "amount"), &as_ion);
    put(row, "as_ion", as_ion);
}

static void seawater_chloride(struct row *row)
{
    double chloride = 0;
    row->status = hw_seawater_chloride(number(row, "salinity"), temperature(row), &chloride);
    put(row, "chloride", chloride);
}

static void nitrite_chloride_ratio(struct row *row)
{
    double ratio = 0;
    row->status = hw_nitrite_chloride_ratio(number(row, "chloride"), number(row, "as_n"), &ratio);
    put(row, "ratio", ratio);
}

static void ammonium_salt_mass(struct row *row)
{
    static const char *const words[] = {"chloride", "sulfate", NULL};
    double mass = 0;
    row->status = hw_ammonium_salt_mass((enum hw_ammonium_salt)choice(row, "salt", words),
                                        number(row, "purity"), number(row, "nitrogen"), &mass);
    put(row, "mass", mass);
    put(row, "mg", 1000 * mass);
}

static void ammonia_solution(struct row *row)
{
    double density = 0;
    double strength = 0;
    double percent = number(row, "percent");
    row->status = hw_ammonia_solution_density(percent, &density);
    hw_ammonia_solution_nitrogen(percent, &strength);
    put(row, "density", density);
    put(row, "molarity", strength / HW_MOLAR_N);
}

static void dose_active(struct row *row)
{
    double active = 0;
    row->status =
        hw_dose_active(number(row, "volume"), number(row, "now"), number(row, "target"), &active);
    put(row, "active", active);
}

static void dose_level(struct row *row)
{
    double level = 0;
    row->status =
        hw_dose_level(number(row, "volume"), number(row, "now"), number(row, "active"), &level);
    put(row, "level", level);
}

static void dose_liquid(struct row *row)
{
    double liquid = 0;
    row->status = hw_dose_liquid(number(row, "active"), number(row, "strength"), &liquid);
    put(row, "liquid", liquid);
}

static void dose_liquid_active(struct row *row)
{
    double active = 0;
    row->status = hw_dose_liquid_active(number(row, "liquid"), number(row, "strength"), &active);
    put(row, "active", active);
}

static void dose_solid(struct row *row)
{
    double mass = 0;
    row->status = hw_dose_solid(number(row, "active"), number(row, "share"), &mass);
    put(row, "mass", mass);
}

static void dose_solid_active(struct row *row)
{
    double active = 0;
    row->status = hw_dose_solid_active(number(row, "mass"), number(row, "share"), &active);
    put(row, "active", active);
}

static void dose_copper(struct row *row)
{
    double copper = 0;
    row->status = hw_dose_copper(number(row, "salt"), &copper);
    put(row, "copper", copper);
}

static void dose_step_level(struct row *row)
{
    double level = 0;
    row->status = hw_dose_step_level(number(row, "now"), number(row, "target"),
                                     (int)number(row, "steps"), (int)number(row, "step"), &level);
    put(row, "level", level);
}

static enum hw_formalin_basis formalin_basis(struct row *row)
{
    static const char *const words[] = {"solution-ul", "solution-mg", "formaldehyde-mg", NULL};
    return (enum hw_formalin_basis)choice(row, "basis", words);
}

static void formalin_to_formaldehyde(struct row *row)
{
    double formaldehyde = 0;
    row->status =
        hw_formalin_to_formaldehyde(formalin_basis(row), number(row, "level"), &formaldehyde);
    put(row, "formaldehyde", formaldehyde);
}

static void formalin_from_formaldehyde(struct row *row)
{
    double level = 0;
    row->status =
        hw_formalin_from_formaldehyde(formalin_basis(row), number(row, "formaldehyde"), &level);
    put(row, "level", level);
}

static void formalin_oxygen(struct row *row)
{
    double oxygen = 0;
    row->status = hw_formalin_oxygen(number(row, "solution"), &oxygen);
    put(row, "oxygen", oxygen);
}

static enum hw_stock_reagent stock_reagent(struct row *row)
{
    static const char *const words[] = {"ammonium-chloride", "ammonium-sulfate",
                                        "copper-sulfate-pentahydrate", NULL};
    return (enum hw_stock_reagent)choice(row, "reagent", words);
}

static void stock_strength(struct row *row)
{
    double strength = 0;
    row->status = hw_stock_strength(number(row, "raises"), number(row, "into"), number(row, "per"),
                                    &strength);
    put(row, "strength", strength);
}

static void stock_mass(struct row *row)
{
    double mass = 0;
    row->status =
        hw_stock_mass(stock_reagent(row), number(row, "strength"), number(row, "make"), &mass);
    put(row, "mass", mass);
}

static void stock_solubility(struct row *row)
{
    double solubility = 0;
    row->status = hw_stock_solubility(stock_reagent(row), &solubility);
    put(row, "solubility", solubility);
}

static void nitrification(struct row *row)
{
    static const char *const words[] = {"ammonium", "ammonia", NULL};
    double nitrate = 0;
    double oxygen = 0;
    double alkalinity = 0;
    row->status = hw_nitrification((enum hw_nitrified)choice(row, "from", words),
                                   number(row, "nitrogen"), &nitrate, &oxygen, &alkalinity);
    put(row, "nitrate", nitrate);
    put(row, "oxygen", oxygen);
    put(row, "alkalinity", alkalinity);
    put(row, "meq", alkalinity / (HW_MOLAR_CALCIUM_CARBONATE / 2));
}

static enum hw_change_method method(struct row *row)
{
    static const char *const words[] = {"batch", "flow", NULL};
    return (enum hw_change_method)choice(row, "method", words);
}

static void change_level(struct row *row)
{
    double level = 0;
    row->status = hw_change_level(method(row), number(row, "exchanged"), (int)number(row, "rounds"),
                                  number(row, "now"), number(row, "fresh"), &level);
    put(row, "level", level);
}

static void change_fresh_needed(struct row *row)
{
    double fresh = 0;
    row->status = hw_change_fresh_needed(method(row), number(row, "exchanged"), number(row, "now"),
                                         number(row, "keep"), &fresh);
    put(row, "fresh", fresh);
}

static void change_exchange_needed(struct row *row)
{
    double exchanged = 0;
    row->status = hw_change_exchange_needed(method(row), number(row, "now"), number(row, "fresh"),
                                            number(row, "goal"), &exchanged);
    put(row, "exchanged", exchanged);
}

static void change_rounds_needed(struct row *row)
{
    double rounds = 0;
    row->status = hw_change_rounds_needed(method(row), number(row, "exchanged"), number(row, "now"),
                                          number(row, "fresh"), number(row, "goal"), &rounds);
    put(row, "rounds", rounds);
}

static void volume_inside(struct row *row)
{
    double inside = 0;
    row->status = hw_volume_inside(number(row, "outside"), number(row, "wall"), &inside);
    put(row, "inside", inside);
}

static void volume_box(struct row *row)
{
    double gross = 0;
    row->status =
        hw_volume_box(number(row, "length"), number(row, "width"), number(row, "depth"), &gross);
    put(row, "gross", gross);
}

static void volume_cylinder(struct row *row)
{
    double gross = 0;
    row->status = hw_volume_cylinder(number(row, "diameter"), number(row, "depth"), &gross);
    put(row, "gross", gross);
}

static void volume_net(struct row *row)
{
    double net = 0;
    row->status =
        hw_volume_net(number(row, "gross"), number(row, "displaced"), number(row, "extra"), &net);
    put(row, "net", net);
}

static void volume_gauge(struct row *row)
{
    double net = 0;
    row->status = hw_volume_gauge(number(row, "added"), number(row, "rise"), &net);
    put(row, "net", net);
}

static void bath_dye(struct row *row)
{
    double dye = 0;
    row->status =
        hw_bath_dye(number(row, "volume"), number(row, "strength"), number(row, "level"), &dye);
    put(row, "dye", dye);
}

static void bath_dye_at_rate(struct row *row)
{
    double dye = 0;
    row->status = hw_bath_dye_at_rate(number(row, "volume"), number(row, "rate"), &dye);
    put(row, "dye", dye);
}

static void bath_level(struct row *row)
{
    double level = 0;
    row->status =
        hw_bath_level(number(row, "volume"), number(row, "strength"), number(row, "dye"), &level);
    put(row, "level", level);
}

static void bleach_strength(struct row *row)
{
    static const char *const words[] = {"wv", "ww", "naocl-ww", NULL};
    double strength = 0;
    row->status = hw_bleach_strength((enum hw_bleach_label)choice(row, "label", words),
                                     number(row, "percent"), number(row, "density"), &strength);
    put(row, "strength", strength);
}

static void bleach_amount(struct row *row)
{
    double bleach = 0;
    row->status = hw_bleach_amount(number(row, "volume"), number(row, "target"),
                                   number(row, "strength"), &bleach);
    put(row, "bleach", bleach);
}

static void chlorine_contact(struct row *row)
{
    double contact = 0;
    row->status = hw_chlorine_contact(number(row, "level"), number(row, "minutes"), &contact);
    put(row, "contact", contact);
}

static void dechlorinator_ratio(struct row *row)
{
    static const char *const words[] = {"thiosulfate-pentahydrate", "thiosulfate-anhydrous",
                                        "ascorbic-acid", NULL};
    double ratio = 0;
    row->status =
        hw_dechlorinator_ratio((enum hw_dechlorinator)choice(row, "agent", words), &ratio);
    put(row, "ratio", ratio);
}

static void dechlorinator_mass(struct row *row)
{
    double mass = 0;
    row->status = hw_dechlorinator_mass(number(row, "volume"), number(row, "chlorine"),
                                        number(row, "ratio"), &mass);
    put(row, "mass", mass);
}

static void chloramine_nitrogen(struct row *row)
{
    double nitrogen = 0;
    row->status = hw_chloramine_nitrogen(number(row, "chlorine"), &nitrogen);
    put(row, "nitrogen", nitrogen);
}

static void verdict_rate(struct row *row)
{
    double rate = 0;
    double capacity = 0;
    row->status = hw_verdict_rate(number(row, "start"), number(row, "left"), number(row, "hours"),
                                  number(row, "volume"), &rate, &capacity);
    put(row, "rate", rate);
    put(row, "capacity", capacity);
}

static void verdict_feed(struct row *row)
{
    double feed = 0;
    double working_feed = 0;
    row->status =
        hw_verdict_feed(number(row, "capacity"), number(row, "protein"), number(row, "working"),
                        number(row, "colder"), &feed, &working_feed);
    put(row, "feed", feed);
    put(row, "working_feed", working_feed);
}

static void verdict_hours(struct row *row)
{
    double hours = 0;
    row->status =
        hw_verdict_hours(number(row, "tan"), number(row, "nitrite"), number(row, "half_tan"),
                         number(row, "half_nitrite"), number(row, "rate"), &hours);
    put(row, "hours", hours);
}

static enum hw_binder binder(struct row *row)
{
    static const char *const words[] = {"sulfonate", "sulfinate", "sulfinate-dihydrate", NULL};
    return (enum hw_binder)choice(row, "agent", words);
}

static void binder_ratio(struct row *row)
{
    double ratio = 0;
    row->status = hw_binder_ratio(binder(row), &ratio);
    put(row, "ratio", ratio);
}

static void binder_mass(struct row *row)
{
    double mass = 0;
    row->status = hw_binder_mass(binder(row), number(row, "nitrogen"), number(row, "excess"),
                                 number(row, "purity"), &mass);
    put(row, "mass", mass);
}

static void binder_oxygen(struct row *row)
{
    double oxygen = 0;
    row->status = hw_binder_oxygen(binder(row), number(row, "mass"), number(row, "purity"),
                                   number(row, "volume"), &oxygen);
    put(row, "oxygen", oxygen);
}

static void binder_by_label(struct row *row)
{
    double amount = 0;
    row->status = hw_binder_by_label(number(row, "dose"), number(row, "per"), number(row, "binds"),
                                     number(row, "volume"), number(row, "total"), &amount);
    put(row, "amount", amount);
}

static void bag_total(struct row *row)
{
    double total = 0;
    row->status = hw_bag_total(number(row, "biomass"), number(row, "excretion"),
                               number(row, "hours"), number(row, "water"), &total);
    put(row, "total", total);
}

static void oxygen_pressure(struct row *row)
{
    double pressure = 0;
    row->status = hw_oxygen_pressure(number(row, "altitude"), &pressure);
    put(row, "pressure", pressure);
    put(row, "hpa", 1013.25 * pressure);
}

static void oxygen_pressure_share(struct row *row)
{
    double share = 0;
    row->status = hw_oxygen_pressure_share(temperature(row), number(row, "pressure"), &share);
    put(row, "share", share);
}

/* Also per volume and per mass of water; O2 is 31.9988 g/mol in the fit that those rows are of. */
static void oxygen_saturation(struct row *row)
{
    double saturation = 0;
    double density = 0;
    row->status = hw_oxygen_saturation(temperature(row), number(row, "salinity"),
                                       number(row, "pressure"), &saturation);
    hw_seawater_density(number(row, "salinity"), temperature(row), &density);
    put(row, "saturation", saturation);
    put(row, "mol_per_m3", saturation / 31.9988);
    put(row, "umol_per_kg", saturation / 31.9988 * 1e6 / density);
}

static void oxygen_hours(struct row *row)
{
    double hours = 0;
    row->status =
        hw_oxygen_hours(number(row, "oxygen"), number(row, "floor"), number(row, "volume"),
                        number(row, "biomass"), number(row, "uptake"), &hours);
    put(row, "hours", hours);
}

/* Also for a kilogram of water, as tables give it. */
static void saltmix_add(struct row *row)
{
    double mass = 0;
    double density = 0;
    double volume = number(row, "volume");
    row->status = hw_saltmix_add(volume, number(row, "salinity"), number(row, "target"),
                                 temperature(row), number(row, "dry"), &mass);
    hw_seawater_density(number(row, "salinity"), temperature(row), &density);
    put(row, "mass", mass);
    put(row, "mass_per_kg", mass / (volume * density / 1000));
}

/* Also as kilograms of fresh water. */
static void saltmix_top_up(struct row *row)
{
    double litres = 0;
    double density = 0;
    row->status = hw_saltmix_top_up(number(row, "volume"), number(row, "salinity"),
                                    number(row, "target"), temperature(row), &litres);
    hw_seawater_density(0, temperature(row), &density);
    put(row, "litres", litres);
    put(row, "kg", litres * density / 1000);
}

static void saltmix_swap(struct row *row)
{
    double litres = 0;
    row->status = hw_saltmix_swap(number(row, "volume"), number(row, "salinity"),
                                  number(row, "target"), temperature(row), &litres);
    put(row, "litres", litres);
}

static void saltmix_label(struct row *row)
{
    double dry = 0;
    row->status = hw_saltmix_label(number(row, "mass"), number(row, "makes"),
                                   number(row, "salinity"), temperature(row), &dry);
    put(row, "dry", dry);
}

static void buffer_mass(struct row *row)
{
    static const char *const words[] = {"sodium-bicarbonate", "sodium-carbonate", NULL};
    double mass = 0;
    row->status =
        hw_buffer_mass((enum hw_buffer_source)choice(row, "source", words), number(row, "volume"),
                       number(row, "alkalinity"), number(row, "target"), &mass);
    put(row, "mass", mass);
}

/* mmol/L to umol/kg. */
static double per_kg(struct row *row, double per_litre)
{
    double density = 0;
    hw_seawater_density(number(row, "salinity"), temperature(row), &density);
    return per_litre / density * 1e6;
}

static void carbonate_carbon(struct row *row)
{
    double carbon = 0;
    row->status =
        hw_carbonate_carbon(number(row, "ph"), number(row, "alkalinity"), number(row, "tan"),
                            temperature(row), number(row, "salinity"), &carbon);
    put(row, "carbon", carbon);
    put(row, "umol_per_kg", per_kg(row, carbon));
}

/* Dissolved carbon by itself, or by a pH and the alkalinity of the same water before a dose. */
static void carbonate_ph(struct row *row)
{
    double ph = 0;
    double carbon = 0;
    if (word(row, "carbon") != NULL) {
        carbon = number(row, "carbon");
    } else {
        hw_carbonate_carbon(number(row, "ph_before"), number(row, "alkalinity_before"),
                            number(row, "tan"), temperature(row), number(row, "salinity"), &carbon);
        carbon += number(row, "carbon_added");
    }
    row->status = hw_carbonate_ph(number(row, "alkalinity"), carbon, number(row, "tan"),
                                  temperature(row), number(row, "salinity"), &ph);
    put(row, "ph", ph);
}

static void carbonate_air(struct row *row)
{
    double air = 0;
    row->status = hw_carbonate_air(number(row, "ph"), number(row, "alkalinity"), number(row, "tan"),
                                   temperature(row), number(row, "salinity"), &air);
    put(row, "air", air);
}

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = 0;
    (void)hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

static int blend_of(struct row *row, struct hw_blend *blend)
{
    return hw_blend_mix(number(row, "share"), temperature(row), number(row, "salinity"),
                        new_temperature(row), number(row, "new_salinity"), blend);
}

static void blend_mix(struct row *row)
{
    struct hw_blend blend;
    row->status = blend_of(row, &blend);
    put(row, "mass_share", blend.mass_share);
    put(row, "temp", blend.temp);
    put(row, "salinity", blend.salinity);
}

/* What the mixture holds, per litre and in 1e-6 of it per kg. */
static void blend_level(struct row *row)
{
    struct hw_blend blend;
    double density = 0;
    row->status = blend_of(row, &blend);
    double level = level_of(&blend, number(row, "level"), number(row, "fresh"));
    hw_seawater_density(blend.salinity, blend.temp, &density);
    put(row, "level", level);
    put(row, "micro_per_kg", level / density * 1e6);
}

/* Dissolved carbon of the mixture, from the two readings. */
static void blend_carbon(struct row *row)
{
    struct hw_blend blend;
    double density = 0;
    double carbon = 0;
    double fresh = 0;
    row->status = blend_of(row, &blend);
    hw_carbonate_carbon(number(row, "ph"), number(row, "alkalinity"), number(row, "tan"),
                        temperature(row), number(row, "salinity"), &carbon);
    hw_carbonate_carbon(number(row, "new_ph"), number(row, "new_alkalinity"), 0,
                        number(row, "new_temp"), number(row, "new_salinity"), &fresh);
    hw_seawater_density(blend.salinity, blend.temp, &density);
    put(row, "umol_per_kg", level_of(&blend, carbon, fresh) / density * 1e6);
}

static void carbonate_ph_in_air(struct row *row)
{
    double ph = 0;
    row->status =
        hw_carbonate_ph_in_air(number(row, "alkalinity"), number(row, "air"), number(row, "tan"),
                               temperature(row), number(row, "salinity"), &ph);
    put(row, "ph", ph);
}

static enum hw_course_redose redose(struct row *row)
{
    static const char *const words[] = {"full", "replace", NULL};
    return (enum hw_course_redose)choice(row, "redose", words);
}

static void course_level(struct row *row)
{
    double before = 0;
    double after = 0;
    row->status = hw_course_level(redose(row), number(row, "first"), number(row, "exchanged"),
                                  (int)number(row, "dose"), &before, &after);
    put(row, "before", before);
    put(row, "after", after);
}

static void course_ceiling(struct row *row)
{
    double ceiling = 0;
    row->status =
        hw_course_ceiling(redose(row), number(row, "first"), number(row, "exchanged"), &ceiling);
    put(row, "ceiling", ceiling);
}

static void course_dose_over(struct row *row)
{
    double dose = 0;
    row->status = hw_course_dose_over(redose(row), number(row, "first"), number(row, "exchanged"),
                                      number(row, "limit"), &dose);
    put(row, "dose", dose);
}

static void course_amounts(struct row *row)
{
    double again = 0;
    double total = 0;
    row->status = hw_course_amounts(redose(row), number(row, "dye"), number(row, "exchanged"),
                                    (int)number(row, "doses"), &again, &total);
    put(row, "again", again);
    put(row, "total", total);
}

static void course_water(struct row *row)
{
    double water = 0;
    row->status = hw_course_water(number(row, "volume"), number(row, "exchanged"),
                                  (int)number(row, "doses"), &water);
    put(row, "water", water);
}

static void bioload_feed(struct row *row)
{
    double feed = 0;
    row->status = hw_bioload_feed(number(row, "biomass"), number(row, "ration"), &feed);
    put(row, "feed", feed);
}

static void bioload_fed(struct row *row)
{
    double nitrogen = 0;
    row->status = hw_bioload_fed(number(row, "feed"), number(row, "protein"), number(row, "factor"),
                                 &nitrogen);
    put(row, "nitrogen", nitrogen);
}

static void bioload_dead(struct row *row)
{
    double nitrogen = 0;
    row->status = hw_bioload_dead(number(row, "dead"), number(row, "protein"), &nitrogen);
    put(row, "nitrogen", nitrogen);
}

static void bioload_starved(struct row *row)
{
    double nitrogen = 0;
    row->status = hw_bioload_starved(number(row, "biomass"), number(row, "rate"), &nitrogen);
    put(row, "nitrogen", nitrogen);
}

static void bioload_rise(struct row *row)
{
    double rise = 0;
    row->status = hw_bioload_rise(number(row, "production"), number(row, "volume"), &rise);
    put(row, "rise", rise);
}

static void bioload_hours(struct row *row)
{
    double hours = 0;
    row->status = hw_bioload_hours(number(row, "rise"), number(row, "limit"), &hours);
    put(row, "hours", hours);
}

static void bioload_change(struct row *row)
{
    double exchanged = 0;
    row->status = hw_bioload_change(number(row, "rise"), number(row, "limit"), &exchanged);
    put(row, "exchanged", exchanged);
}

/* ---------------------------------------------------------------- what stands behind them */

static double meter_over_total(struct row *row)
{
    double meter = 0;
    double total = 0;
    hw_ph_offset(HW_PH_METER, temperature(row), number(row, "salinity"), &meter);
    hw_ph_offset(HW_PH_TOTAL, temperature(row), number(row, "salinity"), &total);
    return meter - total;
}

static void carbonate_constants(struct row *row)
{
    double kelvin = hw_kelvin(temperature(row));
    double salinity = number(row, "salinity");
    put(row, "pk1", hw_carbonic_pk1(kelvin, salinity));
    put(row, "pk2", hw_carbonic_pk2(kelvin, salinity));
    put(row, "ln_kb", hw_ln_boric(kelvin, salinity));
    put(row, "ln_kw", hw_ln_water(kelvin, salinity));
    put(row, "ln_kw_sws", hw_ln_water(kelvin, salinity) + (148.9802 - 148.9652));
    put(row, "meter_over_total", meter_over_total(row));
    put(row, "pk1_meter", hw_carbonic_pk1(kelvin, salinity) + meter_over_total(row));
    double sws = hw_offset_from_free(HW_PH_SWS, temperature(row), salinity) -
                 hw_offset_from_free(HW_PH_TOTAL, temperature(row), salinity);
    put(row, "pk1_sws", hw_carbonic_pk1(kelvin, salinity) + sws);
    put(row, "pk2_sws", hw_carbonic_pk2(kelvin, salinity) + sws);
}

static void carbon_dioxide(struct row *row)
{
    double kelvin = hw_kelvin(temperature(row));
    double salinity = number(row, "salinity");
    put(row, "k0", hw_carbon_dioxide_solubility(kelvin, salinity));
    put(row, "k0_hundredths", hw_carbon_dioxide_solubility(kelvin, salinity) * 100);
    put(row, "ln_k0", log(hw_carbon_dioxide_solubility(kelvin, salinity)));
    put(row, "fugacity", hw_carbon_dioxide_fugacity(kelvin));
    put(row, "boron", hw_total_boron(salinity));
}

static void boron_to_chlorinity(struct row *row)
{
    double salinity = number(row, "salinity");
    put(row, "mg_per_kg", hw_total_boron(salinity) * 10.81 * 1000 * 1.80655 / salinity);
}

/* ---------------------------------------------------------------- the carbonate system by mass

 * Alkalinity, carbon and total ammonia of these rows are in umol/kg: the notes that they come from
 * take a litre's mass at a temperature of IPTS-68 without saying so, and by the kilogram that does
 * not matter. */

struct kg_water {
    double ph, alkalinity, tan, temp, salinity; /* by the litre, as the functions want it */
    double density;
};

static double density_at(double temp, double salinity)
{
    double density = 0;
    hw_seawater_density(salinity, temp, &density);
    return density;
}

/* meq/L, mmol/L or mg N/L of umol/kg. */
static double litre_of(double per_kg, double density)
{
    return per_kg * density * 1e-6;
}

static double kg_of(double per_litre, double density)
{
    return per_litre / density * 1e6;
}

/* Ammonia is left out where a row names none. */
static double tan_of(struct row *row, const char *name, double density)
{
    return word(row, name) == NULL ? 0 : litre_of(number(row, name), density) * HW_MOLAR_N;
}

static struct kg_water water_of(struct row *row)
{
    struct kg_water w = {.temp = temperature(row), .salinity = number(row, "salinity")};
    w.density = density_at(w.temp, w.salinity);
    w.alkalinity = litre_of(number(row, "alkalinity"), w.density);
    w.tan = tan_of(row, "tan", w.density);
    return w;
}

static double free_kg(double ph, double temp, double salinity, double tan_kg)
{
    double fraction = 0;
    hw_ammonia_fraction(HW_AMMONIA_KHOO1977, HW_PH_METER, ph, temp, salinity, &fraction);
    return fraction * tan_kg;
}

static double dioxide_kg(double air, double temp, double salinity)
{
    double kelvin = hw_kelvin(temp);
    return air * hw_carbon_dioxide_solubility(kelvin, salinity) *
           hw_carbon_dioxide_fugacity(kelvin);
}

/* From a pH to carbon and carbon dioxide, and back to the pH. */
static void carbonate_kg(struct row *row)
{
    struct kg_water w = water_of(row);
    double carbon = 0;
    double air = 0;
    double back = 0;
    w.ph = number(row, "ph");
    row->status = hw_carbonate_carbon(w.ph, w.alkalinity, w.tan, w.temp, w.salinity, &carbon);
    hw_carbonate_air(w.ph, w.alkalinity, w.tan, w.temp, w.salinity, &air);
    hw_carbonate_ph(w.alkalinity, carbon, w.tan, w.temp, w.salinity, &back);
    put(row, "carbon", kg_of(carbon, w.density));
    put(row, "air", air);
    put(row, "ph_back", back);
}

/* From carbon to pH; carbon dioxide by the carbon dioxide that water of that pH holds. */
static void carbonate_ph_kg(struct row *row)
{
    struct kg_water w = water_of(row);
    double air = 0;
    row->status = hw_carbonate_ph(w.alkalinity, litre_of(number(row, "carbon"), w.density), w.tan,
                                  w.temp, w.salinity, &w.ph);
    hw_carbonate_air(w.ph, w.alkalinity, w.tan, w.temp, w.salinity, &air);
    put(row, "ph", w.ph);
    put(row, "ph_total", w.ph - meter_over_total(row));
    put(row, "fugacity", air * hw_carbon_dioxide_fugacity(hw_kelvin(w.temp)));
    put(row, "dioxide", dioxide_kg(air, w.temp, w.salinity));
}

static void carbonate_air_kg(struct row *row)
{
    struct kg_water w = water_of(row);
    double carbon = 0;
    row->status =
        hw_carbonate_ph_in_air(w.alkalinity, number(row, "air"), w.tan, w.temp, w.salinity, &w.ph);
    hw_carbonate_carbon(w.ph, w.alkalinity, w.tan, w.temp, w.salinity, &carbon);
    put(row, "ph", w.ph);
    put(row, "ph_total", w.ph - meter_over_total(row));
    put(row, "carbon", kg_of(carbon, w.density));
}

/* Something added to water: 420 uatm outside. */
static void carbonate_dose_kg(struct row *row)
{
    struct kg_water w = water_of(row);
    double tan_kg = number(row, "tan");
    double before = number(row, "ph");
    double carbon = 0;
    double closed = 0;
    double aired = 0;
    hw_carbonate_carbon(before, w.alkalinity, w.tan, w.temp, w.salinity, &carbon);
    double after_kg = tan_kg + number(row, "tan_added");
    double alkalinity = w.alkalinity + litre_of(number(row, "alkalinity_added"), w.density);
    double tan = litre_of(after_kg, w.density) * HW_MOLAR_N;
    row->status =
        hw_carbonate_ph(alkalinity, carbon + litre_of(number(row, "carbon_added"), w.density), tan,
                        w.temp, w.salinity, &closed);
    hw_carbonate_ph_in_air(alkalinity, 420, tan, w.temp, w.salinity, &aired);
    put(row, "carbon_before", kg_of(carbon, w.density));
    put(row, "alkalinity", kg_of(alkalinity, w.density));
    put(row, "ph", closed);
    put(row, "ph_air", aired);
    put(row, "free_before", free_kg(before, w.temp, w.salinity, tan_kg));
    put(row, "free", free_kg(closed, w.temp, w.salinity, after_kg));
    put(row, "free_air", free_kg(aired, w.temp, w.salinity, after_kg));
}

/* The new water of a mixture; it holds no ammonia. */
static struct kg_water new_water_of(struct row *row)
{
    struct kg_water w = {.ph = number(row, "new_ph"),
                         .temp = number(row, "new_temp"),
                         .salinity = number(row, "new_salinity")};
    w.density = density_at(w.temp, w.salinity);
    w.alkalinity = litre_of(number(row, "new_alkalinity"), w.density);
    return w;
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

static void blend_masses(struct row *row)
{
    struct kg_water a = {.temp = temperature(row), .salinity = number(row, "salinity")};
    struct kg_water b = {.temp = new_temperature(row), .salinity = number(row, "new_salinity")};
    struct hw_blend mix;
    double mass = number(row, "mass");
    double new_mass = number(row, "new_mass");
    a.density = density_at(a.temp, a.salinity);
    b.density = density_at(b.temp, b.salinity);
    row->status = mix_masses(new_mass / (mass + new_mass), &a, &b, &mix);
    put(row, "temp", mix.temp);
    put(row, "salinity", mix.salinity);
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

/* Two waters mixed by mass. The temperature is as hw_blend_mix gives it, the rest at the
 * temperature that the rows assume. */
static void carbonate_blend_kg(struct row *row)
{
    struct kg_water a = water_of(row);
    struct kg_water b = new_water_of(row);
    struct hw_blend mix;
    double share = number(row, "mass_share");
    double carbon[2] = {0, 0};
    double air = 0;
    double ph[3] = {0, 0, 0};
    a.ph = number(row, "ph");
    hw_carbonate_carbon(a.ph, a.alkalinity, a.tan, a.temp, a.salinity, &carbon[0]);
    hw_carbonate_carbon(b.ph, b.alkalinity, 0, b.temp, b.salinity, &carbon[1]);
    hw_carbonate_air(a.ph, a.alkalinity, a.tan, a.temp, a.salinity, &air);
    row->status = mix_masses(share, &a, &b, &mix);
    put(row, "temp", mix.temp);
    assume_one_heat_capacity(&mix, a.temp, b.temp);
    double density = density_at(mix.temp, mix.salinity);
    double alkalinity = level_of(&mix, a.alkalinity, b.alkalinity);
    double mixed_carbon = level_of(&mix, carbon[0], carbon[1]);
    double tan = level_of(&mix, a.tan, 0);
    hw_carbonate_ph(alkalinity, mixed_carbon, tan, mix.temp, mix.salinity, &ph[0]);
    hw_carbonate_ph_in_air(alkalinity, number(row, "air"), tan, mix.temp, mix.salinity, &ph[1]);
    hw_carbonate_ph_in_air(alkalinity, air, tan, mix.temp, mix.salinity, &ph[2]);
    double tan_kg = kg_of(tan, density) / HW_MOLAR_N;
    double before = free_kg(a.ph, a.temp, a.salinity, number(row, "tan"));
    put(row, "salinity", mix.salinity);
    put(row, "alkalinity", kg_of(alkalinity, density));
    put(row, "carbon_tank", kg_of(carbon[0], a.density));
    put(row, "carbon_new", kg_of(carbon[1], b.density));
    put(row, "carbon", kg_of(mixed_carbon, density));
    put(row, "tan", tan_kg);
    put(row, "air_tank", air);
    put(row, "ph", ph[0]);
    put(row, "ph_air", ph[1]);
    put(row, "ph_same", ph[2]);
    put(row, "free_before", before);
    put(row, "free", free_kg(ph[0], mix.temp, mix.salinity, tan_kg));
    put(row, "free_air", free_kg(ph[1], mix.temp, mix.salinity, tan_kg));
    put(row, "ratio", free_kg(ph[0], mix.temp, mix.salinity, tan_kg) / before);
    put(row, "ratio_air", free_kg(ph[1], mix.temp, mix.salinity, tan_kg) / before);
    put(row, "ratio_same", free_kg(ph[2], mix.temp, mix.salinity, tan_kg) / before);
    put(row, "ratio_total", tan_kg / number(row, "tan"));
    put(row, "ratio_bound", free_kg(fmax(a.ph, b.ph), mix.temp, mix.salinity, tan_kg) / before);
}

static void total_sulfate(struct row *row)
{
    put(row, "mol_per_kg", hw_total_sulfate(number(row, "salinity")));
}

static void total_fluoride(struct row *row)
{
    put(row, "mol_per_kg", hw_total_fluoride(number(row, "salinity")));
}

static void sulfate_constant(struct row *row)
{
    double k = hw_sulfate_constant(hw_kelvin(temperature(row)), number(row, "salinity"));
    put(row, "k", k);
    put(row, "ln_k", hw_log(k));
}

static void fluoride_constant(struct row *row)
{
    put(row, "k", hw_fluoride_constant(hw_kelvin(temperature(row)), number(row, "salinity")));
}

static void activity_over_sws(struct row *row)
{
    put(row, "ratio", hw_activity_over_sws(hw_kelvin(temperature(row)), number(row, "salinity")));
}

static void debye_hueckel(struct row *row)
{
    put(row, "a", hw_debye_hueckel(temperature(row)));
}

static void log10_phi(struct row *row)
{
    put(row, "log10_phi", hw_log10_phi(temperature(row), number(row, "salinity")));
}

static void epa1989_ionic_strength(struct row *row)
{
    put(row, "molal", hw_epa1989_ionic_strength(number(row, "salinity")));
}

/* Equation 18 as it stands, per kg of water, on the total or the free scale. */
static void clegg1995_molal(struct row *row)
{
    double temp = temperature(row);
    double salinity = number(row, "salinity");
    double pk = hw_clegg1995_molal_pk(temp, salinity);
    if (scale(row, "scale") == HW_PH_FREE) {
        pk -= hw_offset_from_free(HW_PH_TOTAL, temp, salinity);
    }
    put(row, "pk", pk);
    if (word(row, "ph") != NULL) {
        put(row, "fraction", hw_fraction_of(number(row, "ph"), pk));
    }
}

/* ---------------------------------------------------------------- elementary functions */

/* How far `got` is from high + low, in units in the last place of high. The true value is given in
 * two parts, as one double cannot hold it. */
static void put_ulp(struct row *row, double got)
{
    double high = number(row, "high");
    double low = number(row, "low");
    double unit = nextafter(fabs(high), HUGE_VAL) - fabs(high);
    put(row, "ulp", ((got - high) - low) / unit);
}

static void exp10_error(struct row *row)
{
    put_ulp(row, hw_exp10(number(row, "x")));
}

static void exp_error(struct row *row)
{
    put_ulp(row, hw_exp(number(row, "x")));
}

static void log_error(struct row *row)
{
    put_ulp(row, hw_log(number(row, "x")));
}

static void log10_error(struct row *row)
{
    put_ulp(row, hw_log10(number(row, "x")));
}

static const struct function {
    const char *name;
    void (*run)(struct row *row);
} functions[] = {
    {"ammonia_pk", ammonia_pk},
    {"ammonia_fraction", ammonia_fraction},
    {"ammonia_fraction_at_pk", ammonia_fraction_at_pk},
    {"ammonia_ph_at", ammonia_ph_at},
    {"ph_offset", ph_offset},
    {"ph_convert", ph_convert},
    {"nitrogen_to_n", nitrogen_to_n},
    {"nitrogen_from_n", nitrogen_from_n},
    {"nitrogen_convert", nitrogen_convert},
    {"molar_mass", molar_mass},
    {"seawater_density", seawater_density},
    {"seawater_heat_capacity", seawater_heat_capacity},
    {"seawater_ionic_strength", seawater_ionic_strength},
    {"conductivity_ratio", conductivity_ratio},
    {"salinity_from_ratio", salinity_from_ratio},
    {"salinity_from_conductivity", salinity_from_conductivity},
    {"conductivity", conductivity},
    {"conductivity_uncompensated", conductivity_uncompensated},
    {"hydrometer_reading", hydrometer_reading},
    {"hydrometer_salinity", hydrometer_salinity},
    {"salinity_from_density", salinity_from_density},
    {"refraction_index", refraction_index},
    {"salinity_from_refraction", salinity_from_refraction},
    {"salinity_from_brine", salinity_from_brine},
    {"epa2013_criterion", epa2013_criterion},
    {"epa2013_ccc_ph", epa2013_ccc_ph},
    {"ammonium_salt_mass", ammonium_salt_mass},
    {"ammonia_solution", ammonia_solution},
    {"nitrification", nitrification},
    {"stock_strength", stock_strength},
    {"stock_mass", stock_mass},
    {"stock_solubility", stock_solubility},
    {"nitrite_to_n", nitrite_to_n},
    {"nitrite_to_ion", nitrite_to_ion},
    {"seawater_chloride", seawater_chloride},
    {"nitrite_chloride_ratio", nitrite_chloride_ratio},
    {"change_level", change_level},
    {"change_fresh_needed", change_fresh_needed},
    {"change_exchange_needed", change_exchange_needed},
    {"change_rounds_needed", change_rounds_needed},
    {"volume_inside", volume_inside},
    {"volume_box", volume_box},
    {"volume_cylinder", volume_cylinder},
    {"volume_net", volume_net},
    {"volume_gauge", volume_gauge},
    {"dose_active", dose_active},
    {"dose_level", dose_level},
    {"dose_liquid", dose_liquid},
    {"dose_liquid_active", dose_liquid_active},
    {"dose_solid", dose_solid},
    {"dose_solid_active", dose_solid_active},
    {"dose_copper", dose_copper},
    {"dose_step_level", dose_step_level},
    {"formalin_to_formaldehyde", formalin_to_formaldehyde},
    {"formalin_from_formaldehyde", formalin_from_formaldehyde},
    {"formalin_oxygen", formalin_oxygen},
    {"bath_dye", bath_dye},
    {"bath_dye_at_rate", bath_dye_at_rate},
    {"bath_level", bath_level},
    {"bioload_feed", bioload_feed},
    {"bioload_fed", bioload_fed},
    {"bioload_dead", bioload_dead},
    {"bioload_starved", bioload_starved},
    {"bioload_rise", bioload_rise},
    {"bioload_hours", bioload_hours},
    {"bioload_change", bioload_change},
    {"course_level", course_level},
    {"course_ceiling", course_ceiling},
    {"course_dose_over", course_dose_over},
    {"course_amounts", course_amounts},
    {"course_water", course_water},
    {"bleach_strength", bleach_strength},
    {"bleach_amount", bleach_amount},
    {"chlorine_contact", chlorine_contact},
    {"dechlorinator_ratio", dechlorinator_ratio},
    {"dechlorinator_mass", dechlorinator_mass},
    {"chloramine_nitrogen", chloramine_nitrogen},
    {"verdict_rate", verdict_rate},
    {"verdict_feed", verdict_feed},
    {"verdict_hours", verdict_hours},
    {"binder_ratio", binder_ratio},
    {"binder_mass", binder_mass},
    {"binder_oxygen", binder_oxygen},
    {"binder_by_label", binder_by_label},
    {"bag_total", bag_total},
    {"oxygen_pressure", oxygen_pressure},
    {"oxygen_pressure_share", oxygen_pressure_share},
    {"oxygen_saturation", oxygen_saturation},
    {"oxygen_hours", oxygen_hours},
    {"saltmix_add", saltmix_add},
    {"saltmix_top_up", saltmix_top_up},
    {"saltmix_swap", saltmix_swap},
    {"saltmix_label", saltmix_label},
    {"buffer_mass", buffer_mass},
    {"carbonate_carbon", carbonate_carbon},
    {"carbonate_ph", carbonate_ph},
    {"carbonate_ph_in_air", carbonate_ph_in_air},
    {"carbonate_air", carbonate_air},
    {"blend_mix", blend_mix},
    {"blend_masses", blend_masses},
    {"blend_level", blend_level},
    {"blend_carbon", blend_carbon},
    {"carbonate_constants", carbonate_constants},
    {"boron_to_chlorinity", boron_to_chlorinity},
    {"carbonate_kg", carbonate_kg},
    {"carbonate_ph_kg", carbonate_ph_kg},
    {"carbonate_air_kg", carbonate_air_kg},
    {"carbonate_dose_kg", carbonate_dose_kg},
    {"carbonate_blend_kg", carbonate_blend_kg},
    {"carbon_dioxide", carbon_dioxide},
    {"total_sulfate", total_sulfate},
    {"total_fluoride", total_fluoride},
    {"sulfate_constant", sulfate_constant},
    {"fluoride_constant", fluoride_constant},
    {"activity_over_sws", activity_over_sws},
    {"debye_hueckel", debye_hueckel},
    {"log10_phi", log10_phi},
    {"epa1989_ionic_strength", epa1989_ionic_strength},
    {"clegg1995_molal", clegg1995_molal},
    {"exp10", exp10_error},
    {"exp", exp_error},
    {"log", log_error},
    {"log10", log10_error},
};

/* The program's calculations, whose rows other tests run. */
static const char *const calculations[] = {
    "ammonia",  "bag",       "bath",    "binder",      "bioload", "blend",     "buffer",
    "calendar", "challenge", "change",  "concentrate", "course",  "disinfect", "dose",
    "forecast", "gauge",     "logbook", "neutralise",  "nitrite", "oxygen",    "salinity",
    "saltmix",  "triage",    "verdict", "volume",
};

static const struct function *function_named(const char *name)
{
    for (size_t i = 0; i < sizeof functions / sizeof *functions; i++) {
        if (strcmp(functions[i].name, name) == 0) {
            return &functions[i];
        }
    }
    return NULL;
}

static int is_calculation(const char *name)
{
    for (size_t i = 0; i < sizeof calculations / sizeof *calculations; i++) {
        if (strcmp(calculations[i], name) == 0) {
            return 1;
        }
    }
    return 0;
}

/* ---------------------------------------------------------------- reading a sheet */

/* Cuts a record into its fields in place, taking quotes away; the number of fields, or -1 for
 * quotes that do not close or stand in the wrong place. */
static int split_record(char *line, char *fields[], int most)
{
    int count = 0;
    char *from = line;
    for (;;) {
        if (count == most) {
            return -1;
        }
        char *to = from;
        fields[count++] = from;
        if (*from == '"') {
            for (from++; *from != '\0' && (*from != '"' || from[1] == '"'); from++) {
                if (*from == '"') {
                    from++;
                }
                *to++ = *from;
            }
            if (*from++ != '"') {
                return -1;
            }
        } else {
            while (*from != '\0' && *from != ',') {
                *to++ = *from++;
            }
        }
        char stop = *from;
        if (stop != '\0' && stop != ',') {
            return -1;
        }
        from++;
        *to = '\0';
        if (stop == '\0') {
            return count;
        }
    }
}

/* Cuts name=value;name=value in place. */
static void split_inputs(struct row *row, char *text)
{
    while (text != NULL && *text != '\0') {
        char *next = strchr(text, ';');
        if (next != NULL) {
            *next++ = '\0';
        }
        char *equals = strchr(text, '=');
        if (equals == NULL || equals == text || row->input_count == INPUTS_MAX) {
            row->trouble = "inputs cannot be read";
            return;
        }
        *equals = '\0';
        if (word(row, text) != NULL) {
            row->trouble = "an input is named twice";
        }
        struct input input = {text, equals + 1, 0};
        row->inputs[row->input_count++] = input;
        text = next;
    }
    for (int i = 0; i < row->input_count; i++) {
        row->inputs[i].used = 0;
    }
}

struct tally {
    int ran, left, failed;
};

static void tell(struct tally *tally, const char *sheet, int line, const char *what)
{
    tally->failed++;
    print_error("%s:%d: %s\n", sheet, line, what);
}

/* The value of the result asked for; with `trouble` when the function has none of that name. */
static double result_named(struct row *row, const char *name)
{
    if (strcmp(name, "status") == 0) {
        return row->status;
    }
    for (int i = 0; i < row->result_count; i++) {
        if (strcmp(row->results[i].name, name) == 0) {
            return row->results[i].value;
        }
    }
    row->trouble = "no such result";
    return (double)NAN;
}

static void run_row(struct tally *tally, const char *sheet, int line, char *fields[])
{
    const struct function *function = function_named(fields[FUNCTION]);
    struct row row = {.status = HW_STATUS_OK};
    if (*fields[SOURCE] == '\0' || *fields[HOW] == '\0') {
        tell(tally, sheet, line, "source or how is empty");
        return;
    }
    double expected = parsed(&row, fields[EXPECTED]);
    double absolute = parsed(&row, fields[ABS]);
    double relative = parsed(&row, fields[REL]);
    split_inputs(&row, fields[INPUTS]);
    if (function == NULL) {
        if (row.trouble != NULL || !is_calculation(fields[FUNCTION])) {
            tell(tally, sheet, line, row.trouble != NULL ? row.trouble : "unknown function");
        }
        tally->left++;
        return;
    }
    tally->ran++;
    if (row.trouble == NULL) {
        function->run(&row);
    }
    double got = row.trouble == NULL ? result_named(&row, fields[RESULT]) : (double)NAN;
    for (int i = 0; i < row.input_count && row.trouble == NULL; i++) {
        if (!row.inputs[i].used) {
            row.trouble = "an input the function does not have";
        }
    }
    for (int i = 0; i < row.result_count && row.trouble == NULL; i++) {
        if (row.status < 0 ? !isnan(row.results[i].value) : !isfinite(row.results[i].value)) {
            row.trouble = "status and result do not go together";
        }
    }
    if (row.trouble != NULL) {
        tell(tally, sheet, line, row.trouble);
    } else if (!hw_is_close(got, expected, absolute, relative)) {
        tell(tally, sheet, line, "differs");
        print_error("    %s %s is %.17g, not %.17g (off by %.3g; allowed %.3g, or %.3g of it)\n",
                    fields[FUNCTION], fields[RESULT], got, expected, got - expected, absolute,
                    relative);
    }
}

static void run_sheet(struct tally *all, const char *folder, const char *name)
{
    char path[LINE_MAX_LENGTH];
    char line[LINE_MAX_LENGTH];
    struct tally tally = {0, 0, 0};
    int number_of_line = 0;
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *sheet = fopen(path, "r");
    if (sheet == NULL) {
        tell(all, path, 0, "cannot be opened");
        return;
    }
    while (fgets(line, sizeof line, sheet) != NULL) {
        char *fields[COLUMNS + 1];
        size_t length = strcspn(line, "\r\n");
        number_of_line++;
        if (line[length] == '\0' && !feof(sheet)) {
            tell(&tally, name, number_of_line, "the line is too long");
            break;
        }
        line[length] = '\0';
        if (number_of_line == 1) {
            if (strcmp(line, header) != 0) {
                tell(&tally, name, 1, "not the header of a reference sheet");
                break;
            }
        } else if (split_record(line, fields, COLUMNS + 1) != COLUMNS) {
            tell(&tally, name, number_of_line, "not a row of eight fields");
        } else {
            run_row(&tally, name, number_of_line, fields);
        }
    }
    fclose(sheet);
    if (tally.ran + tally.left == 0) {
        tell(&tally, name, number_of_line, "no rows");
    }
    printf("%-32s %5d rows, %d of calculations left to the engine, %d failed\n", name, tally.ran,
           tally.left, tally.failed);
    all->ran += tally.ran;
    all->left += tally.left;
    all->failed += tally.failed;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static const char *folder = "tests/reference";

static void every_row_agrees(void **state)
{
    static char names[SHEETS_MAX][256];
    char *sorted[SHEETS_MAX];
    size_t count = 0;
    struct tally all = {0, 0, 0};
    (void)state;
    DIR *directory = opendir(folder);
    if (directory == NULL) {
        fail_msg("cannot open the folder %s", folder);
        return;
    }
    for (struct dirent *entry = readdir(directory); entry != NULL; entry = readdir(directory)) {
        size_t length = strlen(entry->d_name);
        if (length > 4 && strcmp(entry->d_name + length - 4, ".csv") == 0) {
            if (count == SHEETS_MAX || length >= sizeof names[0]) {
                fail_msg("too many sheets, or too long a name");
            }
            memcpy(names[count], entry->d_name, length + 1);
            sorted[count] = names[count];
            count++;
        }
    }
    closedir(directory);
    qsort(sorted, count, sizeof *sorted, by_name);
    for (size_t i = 0; i < count; i++) {
        run_sheet(&all, folder, sorted[i]);
    }
    if (all.failed != 0 || all.ran == 0) {
        fail_msg("%d of %d rows failed", all.failed, all.ran);
    }
    printf("%d checks passed\n", all.ran);
}

/* ---------------------------------------------------------------- the runner itself */

static void records_are_cut_as_csv(void **state)
{
    char *fields[COLUMNS + 1];
    char plain[] = "a,b,,d";
    char quoted[] = "\"a,b\",\"c \"\"d\"\"\",\"\"";
    char open_quote[] = "a,\"b";
    char after_quote[] = "\"a\"b,c";
    char many[] = "1,2,3,4,5,6,7,8,9,10";
    (void)state;
    assert_int_equal(split_record(plain, fields, COLUMNS + 1), 4);
    assert_string_equal(fields[2], "");
    assert_string_equal(fields[3], "d");
    assert_int_equal(split_record(quoted, fields, COLUMNS + 1), 3);
    assert_string_equal(fields[0], "a,b");
    assert_string_equal(fields[1], "c \"d\"");
    assert_string_equal(fields[2], "");
    assert_int_equal(split_record(open_quote, fields, COLUMNS + 1), -1);
    assert_int_equal(split_record(after_quote, fields, COLUMNS + 1), -1);
    assert_int_equal(split_record(many, fields, COLUMNS + 1), -1);
}

static void comparison_is_strict(void **state)
{
    (void)state;
    assert_false(hw_is_close((double)NAN, 1, 1, 1));
    assert_false(hw_is_close(1, (double)NAN, 1, 1));
    assert_false(hw_is_close((double)INFINITY, (double)INFINITY, 1, 1));
    assert_false(hw_is_close(1, 1, (double)NAN, 1));
    assert_false(hw_is_close(35.16504, 35.165041, 1e-12, 0));
    assert_true(hw_is_close(35.16504, 35.165041, 1e-6 + 1e-9, 0));
    assert_true(hw_is_close(101, 100, 0, 0.01));
    assert_false(hw_is_close(101.1, 100, 0, 0.01));
}

int main(int argc, char **argv)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(records_are_cut_as_csv),
        cmocka_unit_test(comparison_is_strict),
        cmocka_unit_test(every_row_agrees),
    };
    if (argc > 1) {
        folder = argv[1];
    }
    return cmocka_run_group_tests(tests, NULL, NULL);
}
