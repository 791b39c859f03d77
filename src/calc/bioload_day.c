/* bioload_day.c - the reckoning of a day's load, and its working. */
#include "calc/bioload_day.h"

#include "holdwater/challenge.h"
#include "tables.h"

#include <math.h>

static void find_fed(const double in[], struct bioload_day *day)
{
    if (isnan(in[BIOLOAD_BIOMASS])) {
        day->feed = in[BIOLOAD_FEED];
    } else {
        double per_hour = hw_limits[HW_LIMIT_STARVED_FISH].value;
        hw_bioload_daily_feed(in[BIOLOAD_BIOMASS], in[BIOLOAD_RATION] / 100, &day->feed);
        hw_bioload_starved(in[BIOLOAD_BIOMASS], per_hour, &day->starved);
    }
    hw_bioload_from_feed(day->feed, in[BIOLOAD_PROTEIN] / 100, in[BIOLOAD_FACTOR], &day->fed);
}

/* A protein that is not given leaves what is dead with the least. */
static double dead_protein(const double in[])
{
    return isnan(in[BIOLOAD_PROTEIN]) ? HW_BIOLOAD_DEAD_PROTEIN_SHARE : in[BIOLOAD_PROTEIN] / 100;
}

static enum hw_nitrogen_basis basis_of(const double in[])
{
    return (enum hw_nitrogen_basis)in[BIOLOAD_BASIS];
}

static void find_nitrogen(const double in[], struct bioload_day *day)
{
    if (day->by_rise) {
        day->rise_n = nitrogen_to_n(basis_of(in), in[BIOLOAD_RISE]);
        day->fed = day->rise_n * in[BIOLOAD_VOLUME];
    } else {
        find_fed(in, day);
    }
    hw_bioload_from_dead(in[BIOLOAD_DEAD], dead_protein(in), &day->dead);
    day->production = day->fed + day->dead;
}

/* A filter that shows less than half a step of the kit may have left as much. */
static void find_filter(const double in[], struct bioload_day *day)
{
    double half_step = in[BIOLOAD_KIT_STEP] / 2;
    double left_over = in[BIOLOAD_CLEARED_TO] < half_step ? half_step : in[BIOLOAD_CLEARED_TO];
    const struct proven_filter challenge = {
        .from = nitrogen_to_n(basis_of(in), in[BIOLOAD_CLEARED_FROM]),
        .to = nitrogen_to_n(basis_of(in), left_over),
        .hours = in[BIOLOAD_CLEARED_IN],
        .half = in[BIOLOAD_HALF],
        .left = in[BIOLOAD_LEFT] / 100,
    };
    day->filter = proven_filter(&challenge);
    day->rest = proven_rest(&day->filter, day->rise / 24);
    double carried = proven_carried(&day->filter, day->limit);
    day->feed_for_limit =
        carried * 24 * in[BIOLOAD_VOLUME] / (1000 * in[BIOLOAD_PROTEIN] / 100 * in[BIOLOAD_FACTOR]);
}

/* What turning it all into nitrate takes. */
static void find_alkalinity(struct bioload_day *day)
{
    double nitrate = NAN;
    double oxygen = NAN;
    double as_carbonate = NAN;
    hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIUM, day->rise, &nitrate, &oxygen, &as_carbonate);
    day->alkalinity = as_carbonate / (HW_MOLAR_CALCIUM_CARBONATE / 2);
}

struct bioload_day bioload_day(const double in[])
{
    struct bioload_day day = {
        .by_rise = !isnan(in[BIOLOAD_RISE]),
        .feed = NAN,
        .rise_n = NAN,
        .starved = NAN,
        .hours = NAN,
        .exchanged = NAN,
    };
    find_nitrogen(in, &day);
    hw_bioload_rise(day.production, in[BIOLOAD_VOLUME], &day.rise);
    find_alkalinity(&day);
    day.left = in[BIOLOAD_CAPACITY] * in[BIOLOAD_LEFT] / 100;
    day.share = day.left > 0 ? 100 * day.production / day.left : (double)NAN;
    day.published = long_limit(in[BIOLOAD_PH], in[BIOLOAD_TEMP], in[BIOLOAD_SALINITY]);
    day.limit = isnan(in[BIOLOAD_LIMIT]) ? day.published.total_n : in[BIOLOAD_LIMIT];
    hw_bioload_hours(day.rise, day.limit, &day.hours);
    hw_bioload_change(day.rise, day.limit, &day.exchanged);
    find_filter(in, &day);
    return day;
}

static void step_fed(const struct bioload_day *day, const double in[], struct hw_steps *steps)
{
    if (!isnan(in[BIOLOAD_BIOMASS])) {
        hw_step(steps, "fed_a_day", day->feed, "g/d", "", "%.10g * %.10g / 100",
                in[BIOLOAD_BIOMASS], in[BIOLOAD_RATION]);
    }
    hw_step(steps, "nitrogen_fed", day->fed, "mg/d",
            in[BIOLOAD_FACTOR] == HW_BIOLOAD_FACTOR ? "feed-nitrogen" : "",
            "1000 * %.10g * %.10g / 100 * %.10g", day->feed, in[BIOLOAD_PROTEIN],
            in[BIOLOAD_FACTOR]);
}

static void step_nitrogen(const struct bioload_day *day, const double in[], struct hw_steps *steps)
{
    if (day->by_rise) {
        hw_step(steps, "rise_as_n", day->rise_n, "mg/L/d", "iupac-weights", "%.10g * %.10g/%.10g",
                in[BIOLOAD_RISE], HW_MOLAR_N, basis_molar(basis_of(in)));
        hw_step(steps, "nitrogen_read", day->fed, "mg/d", "conservation", "%.10g * %.10g",
                day->rise_n, in[BIOLOAD_VOLUME]);
    } else {
        step_fed(day, in, steps);
    }
    if (in[BIOLOAD_DEAD] > 0) {
        double protein = 100 * dead_protein(in);
        hw_step(steps, "nitrogen_dead", day->dead, "mg/d", "protein-nitrogen",
                "1000 * %.10g * (%.10g > %.10g ? %.10g : %.10g) / 100 * %.10g", in[BIOLOAD_DEAD],
                protein, 100 * HW_BIOLOAD_DEAD_PROTEIN_SHARE, protein,
                100 * HW_BIOLOAD_DEAD_PROTEIN_SHARE, HW_BIOLOAD_WHOLE);
    }
}

static void step_filter(const struct bioload_day *day, const double in[], struct hw_steps *steps)
{
    if (isnan(in[BIOLOAD_CLEARED_FROM])) {
        return;
    }
    double molar = basis_molar(basis_of(in));
    double half_step = in[BIOLOAD_KIT_STEP] / 2;
    hw_step(steps, "cleared_from_as_n", day->filter.from, "mg/L", "iupac-weights",
            "%.10g * %.10g/%.10g", in[BIOLOAD_CLEARED_FROM], HW_MOLAR_N, molar);
    hw_step(steps, "cleared_to_as_n", day->filter.to, "mg/L", "iupac-weights",
            "%.10g * %.10g/%.10g", fmax(in[BIOLOAD_CLEARED_TO], half_step), HW_MOLAR_N, molar);
    step_vmax(&day->filter, steps);
    step_rest(&day->filter, day->rise, steps);
}

static void step_limit(const struct bioload_day *day, const double in[], struct hw_steps *steps)
{
    if (isnan(day->limit)) {
        return;
    }
    if (isnan(in[BIOLOAD_LIMIT])) {
        long_limit_work(&day->published, "limit_used", steps);
    } else {
        hw_step(steps, "limit_used", day->limit, "mg/L", "", "%.10g", in[BIOLOAD_LIMIT]);
    }
    if (!isnan(day->feed_for_limit)) {
        hw_step(steps, "feed_for_limit", day->feed_for_limit, "g/d", "saturating-filter",
                "%.10g * %.10g / (%.10g + %.10g) * 24 * %.10g / (1000 * %.10g/100 * %.10g)",
                day->filter.vmax, day->limit, day->filter.half, day->limit, in[BIOLOAD_VOLUME],
                in[BIOLOAD_PROTEIN], in[BIOLOAD_FACTOR]);
    }
    if (!isnan(day->hours)) {
        hw_step(steps, "hours_to_limit", day->hours, "h", "conservation", "24 * %.10g / %.10g",
                day->limit, day->rise);
    }
    if (!isnan(day->exchanged)) {
        hw_step(steps, "share_a_day", 100 * day->exchanged, "%", "conservation",
                "100 * %.10g / %.10g", day->rise, day->limit);
    }
}

void bioload_work(const double in[], struct hw_steps *steps)
{
    struct bioload_day day = bioload_day(in);
    step_nitrogen(&day, in, steps);
    hw_step(steps, "rise_per_day", day.rise, "mg/L/d", "", "(%.10g + %.10g) / %.10g", day.fed,
            day.dead, in[BIOLOAD_VOLUME]);
    if (!isnan(day.share)) {
        hw_step(steps, "load_share", day.share, "%", "",
                "100 * (%.10g + %.10g) / (%.10g * %.10g/100)", day.fed, day.dead,
                in[BIOLOAD_CAPACITY], in[BIOLOAD_LEFT]);
    }
    step_filter(&day, in, steps);
    step_limit(&day, in, steps);
    hw_step(steps, "alkalinity_used", day.alkalinity, "meq/L/d", "nitrification",
            "2 * %.10g / %.10g", day.rise, HW_MOLAR_N);
    hw_step(steps, "production", day.production, "mg/d", "", "%.10g + %.10g", day.fed, day.dead);
}
