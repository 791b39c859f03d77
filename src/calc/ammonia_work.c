/* ammonia_work.c - the working of an ammonia answer: the published formulas again, as text, with
 * the numbers of one row. The values come from the core, and a test evaluates each expression, so
 * the two cannot drift apart. */
#include "calc/ammonia_sample.h"
#include "calc/long_limit.h"

#include <math.h>

static void step_total(const struct ammonia_sample *s, const double in[], struct hw_steps *steps)
{
    hw_step(steps, "total_as_n", s->total_n, "mg/L", "iupac-weights", "%.10g * %.10g * %.10g/%.10g",
            in[AMMONIA_TAN], in[AMMONIA_DILUTION], HW_MOLAR_N, basis_molar(s->basis));
}

static double step_ionic_strength(const struct ammonia_sample *s, struct hw_steps *steps)
{
    double ionic = NAN;
    hw_seawater_ionic_strength(s->salinity, &ionic);
    hw_step(steps, "ionic_strength", ionic, "mol/kg", "khoo1977",
            "19.924*%.10g/(1000 - 1.005*%.10g)", s->salinity, s->salinity);
    return ionic;
}

static void step_pk_khoo(const struct ammonia_sample *s, struct hw_steps *steps)
{
    double ionic = step_ionic_strength(s, steps);
    hw_step(steps, "pka", s->pk, "", "khoo1977",
            "0.09018 + 2729.92/(%.10g + 273.15) + (0.1552 - 0.0003142*%.10g)*%.10g", s->temp,
            s->temp, ionic);
}

static double step_pk_clegg_total(const struct ammonia_sample *s, struct hw_steps *steps)
{
    double t = s->temp + 273.15;
    double sal = s->salinity;
    double pk = NAN;
    hw_ammonia_pk(HW_AMMONIA_CLEGG1995, HW_PH_TOTAL, s->temp, sal, &pk);
    hw_step(
        steps, "pk_total", pk, "", "clegg1995",
        "9.244605 - 2729.33*(1/298.15 - 1/%.10g) + (0.04203362 - 11.24742/%.10g)*%.10g^0.25"
        " + (-13.6416 + 1.176949*%.10g^0.5 - 0.02860785*%.10g + 545.4834/%.10g)*%.10g^0.5"
        " + (-0.1462507 + 0.0090226468*%.10g^0.5 - 0.0001471361*%.10g + 10.5425/%.10g)*%.10g^1.5"
        " + (0.004669309 - 0.0001691742*%.10g^0.5 - 0.5677934/%.10g)*%.10g^2"
        " + (-2.354039e-5 + 0.009698623/%.10g)*%.10g^2.5 - log(1 - 0.001005*%.10g)/log(10)",
        t, t, sal, t, t, t, sal, t, t, t, sal, t, t, sal, t, sal, sal);
    return pk;
}

/* The scales against the free scale. The ratios are what the core's offsets were made of. */
struct offsets {
    double total, sws, meter;
};

static void step_nbs(const struct ammonia_sample *s, double ionic, const struct offsets *offsets,
                     struct hw_steps *steps)
{
    double t = s->temp + 273.15;
    double sal = s->salinity;
    double c = s->temp;
    double w = (sal - 3) / 6;
    if (sal >= 9) {
        hw_step(steps, "nbs_minus_free", offsets->meter, "", "takahashi1982",
                "%.10g - log(1.2948 - 0.002036*%.10g + (0.0004607 - "
                "0.000001475*%.10g)*%.10g^2)/log(10)",
                offsets->sws, t, t, sal);
    } else if (sal <= 3) {
        hw_step(
            steps, "nbs_minus_free", offsets->meter, "", "davies",
            "1.8246e6/((87.740 - 0.40008*%.10g + 9.398e-4*%.10g^2 - 1.410e-6*%.10g^3)*%.10g)^1.5"
            "*(%.10g^0.5/(1 + %.10g^0.5) - 0.3*%.10g)",
            c, c, c, t, ionic, ionic, ionic);
    } else {
        hw_step(
            steps, "nbs_minus_free", offsets->meter, "", "davies",
            "%.10g^2*(3 - 2*%.10g)"
            "*(%.10g - log(1.2948 - 0.002036*%.10g + (0.0004607 - "
            "0.000001475*%.10g)*%.10g^2)/log(10))"
            " + (1 - %.10g^2*(3 - 2*%.10g))"
            "*1.8246e6/((87.740 - 0.40008*%.10g + 9.398e-4*%.10g^2 - 1.410e-6*%.10g^3)*%.10g)^1.5"
            "*(%.10g^0.5/(1 + %.10g^0.5) - 0.3*%.10g)",
            w, w, offsets->sws, t, t, sal, w, w, c, c, c, t, ionic, ionic, ionic);
    }
}

static struct offsets step_offsets(const struct ammonia_sample *s, struct hw_steps *steps)
{
    struct offsets offsets = {NAN, NAN, NAN};
    hw_ph_offset(HW_PH_TOTAL, s->temp, s->salinity, &offsets.total);
    hw_ph_offset(HW_PH_SWS, s->temp, s->salinity, &offsets.sws);
    hw_ph_offset(HW_PH_METER, s->temp, s->salinity, &offsets.meter);
    double t = s->temp + 273.15;
    double ionic = step_ionic_strength(s, steps);
    double sulfate = pow(10, -offsets.total) - 1;
    double fluoride = pow(10, -offsets.sws) - pow(10, -offsets.total);
    hw_step(steps, "sulfate_ratio", sulfate, "", "dickson1990",
            "0.14/96.062*%.10g/1.80655/((1 - 0.001005*%.10g)*exp(-4276.1/%.10g + 141.328 - "
            "23.093*log(%.10g)"
            " + (-13856/%.10g + 324.57 - 47.986*log(%.10g))*%.10g^0.5"
            " + (35474/%.10g - 771.54 + 114.723*log(%.10g))*%.10g - 2698/%.10g*%.10g^1.5 + "
            "1776/%.10g*%.10g^2))",
            s->salinity, s->salinity, t, t, t, t, ionic, t, t, ionic, t, ionic, t, ionic);
    hw_step(steps, "fluoride_ratio", fluoride, "", "dickson1979",
            "0.000067/18.998*%.10g/1.80655/((1 - 0.001005*%.10g)*exp(1590.2/%.10g - 12.641 + "
            "1.525*%.10g^0.5))",
            s->salinity, s->salinity, t, ionic);
    hw_step(steps, "total_minus_free", offsets.total, "", "", "-log(1 + %.10g)/log(10)", sulfate);
    hw_step(steps, "sws_minus_free", offsets.sws, "", "", "-log(1 + %.10g + %.10g)/log(10)",
            sulfate, fluoride);
    step_nbs(s, ionic, &offsets, steps);
    return offsets;
}

static void step_pk_clegg(const struct ammonia_sample *s, struct hw_steps *steps)
{
    double total = step_pk_clegg_total(s, steps);
    struct offsets offsets = step_offsets(s, steps);
    const double by_scale[] = {offsets.meter, offsets.meter, offsets.total, 0, offsets.sws};
    hw_step(steps, "pka", s->pk, "", "", "%.10g + (%.10g) - (%.10g)", total, by_scale[s->scale],
            offsets.total);
    hw_step(steps, "ph_meter", s->ph_meter, "", "", "%.10g - (%.10g) + (%.10g)", s->ph,
            by_scale[s->scale], offsets.meter);
}

static void step_against_own(const struct ammonia_sample *s, const double in[], const char *symbol,
                             double limit, struct hw_steps *steps)
{
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)in[AMMONIA_LIMIT_BASIS];
    double ratio =
        ammonia_against_free(s->total_n, nitrogen_to_n(basis, limit), s->fraction, s->pk, false)
            .ratio;
    hw_step(steps, symbol, ratio, "", "", "%.10g * %.10g / (%.10g * %.10g/%.10g)", s->fraction,
            s->total_n, limit, HW_MOLAR_N, basis_molar(basis));
}

/* A ratio to a published limit; between the steps of salinity both kinds are written down and the
 * greater is taken. */
static double step_against_salt(const struct ammonia_sample *s, const char *symbol,
                                const struct ammonia_limits *limits, struct hw_steps *steps)
{
    double ratio = ammonia_against_salt(s, limits->salt, false).ratio;
    hw_step(steps, symbol, ratio, "", "epa1989", "%.10g / %.10g", s->free_1989,
            hw_limits[limits->salt].value);
    return ratio;
}

static double step_against_fresh(const struct ammonia_sample *s, const char *symbol,
                                 const struct ammonia_limits *limits, struct hw_steps *steps)
{
    struct ammonia_sample copy = *s;
    double criterion = ammonia_against_fresh(&copy, limits->fresh).total_n;
    double ph = s->ph_meter;
    if (limits->fresh == HW_CRITERIA_EPA2013_CCC) {
        step_criterion_30_day(ph, s->temp, "criterion_30_day", criterion, steps);
    } else {
        hw_step(steps, "criterion_1_hour", criterion, "mg/L", "epa2013",
                "(0.275/(1 + 10^(7.204 - %.10g)) + 39.0/(1 + 10^(%.10g - 7.204))"
                " < 0.7249*(0.0114/(1 + 10^(7.204 - %.10g)) + 1.6181/(1 + 10^(%.10g - "
                "7.204)))*23.12*10^(0.036*(20 - %.10g))"
                " ? 0.275/(1 + 10^(7.204 - %.10g)) + 39.0/(1 + 10^(%.10g - 7.204))"
                " : 0.7249*(0.0114/(1 + 10^(7.204 - %.10g)) + 1.6181/(1 + 10^(%.10g - "
                "7.204)))*23.12*10^(0.036*(20 - %.10g)))",
                ph, ph, ph, ph, s->temp, ph, ph, ph, ph, s->temp);
    }
    hw_step(steps, symbol, s->total_n / criterion, "", "epa2013", "%.10g / %.10g", s->total_n,
            criterion);
    return s->total_n / criterion;
}

static void step_limit(const struct ammonia_sample *s, const double in[], const char *symbol,
                       const struct ammonia_limits *limits, struct hw_steps *steps)
{
    if (!isnan(in[limits->own])) {
        step_against_own(s, in, symbol, in[limits->own], steps);
        return;
    }
    bool salt = ammonia_salt_applies(s);
    bool fresh = ammonia_fresh_applies(s);
    double by_salt = 0;
    double by_fresh = 0;
    if (salt) {
        by_salt = step_against_salt(s, fresh ? "ratio_salt" : symbol, limits, steps);
    }
    if (fresh) {
        by_fresh = step_against_fresh(s, salt ? "ratio_fresh" : symbol, limits, steps);
    }
    if (salt && fresh) {
        hw_step(steps, symbol, by_salt > by_fresh ? by_salt : by_fresh, "", "",
                "(%.10g > %.10g ? %.10g : %.10g)", by_salt, by_fresh, by_salt, by_fresh);
    }
}

static void step_reading(const struct ammonia_sample *s, const double in[], struct hw_steps *steps)
{
    if (!isnan(s->free_1989)) {
        step_pk_1989(s->temp, s->salinity, "pk_1989", s->pk_1989, steps);
        hw_step(steps, "free_for_limit", s->free_1989, "mg/L", "epa1989",
                "%.10g / (1 + 10^(%.10g - %.10g)) * %.10g/%.10g", s->total_n, s->pk_1989,
                s->ph_meter, HW_MOLAR_NH3, HW_MOLAR_N);
    }
    step_limit(s, in, "long_ratio", &ammonia_long_limits, steps);
    step_limit(s, in, "short_ratio", &ammonia_short_limits, steps);
    hw_step(steps, "free_nh3", nitrogen_from_n(HW_NITROGEN_NH3, s->free_n), "mg/L", "iupac-weights",
            "%.10g * %.10g * %.10g/%.10g", s->fraction, s->total_n, HW_MOLAR_NH3, HW_MOLAR_N);
    hw_step(steps, "free", s->free_n, "mg/L", "", "%.10g * %.10g", s->fraction, s->total_n);
}

/* Without a reading the total that reaches the limit for days is what is told first, where there is
 * one: a high limit in sour water is reached by none. */
static void step_tan_long(const struct ammonia_sample *s, const double in[], struct hw_steps *steps)
{
    double own = in[AMMONIA_LONG_LIMIT];
    struct long_limit published = {.total_n = NAN};
    double limit_n = NAN;
    if (!isnan(own)) {
        limit_n = nitrogen_to_n((enum hw_nitrogen_basis)in[AMMONIA_LIMIT_BASIS], own) / s->fraction;
    } else if (s->meter_in_range) {
        published = long_limit(s->ph_meter, s->temp, s->salinity);
        limit_n = published.total_n;
    }
    double tan_long = nitrogen_from_n(s->basis, limit_n);
    if (isnan(tan_long)) {
        return;
    }
    if (isnan(own)) {
        long_limit_work(&published, "limit_used", steps);
    } else {
        hw_step(steps, "limit_used", limit_n, "mg/L", "", "%.10g * %.10g/%.10g / %.10g", own,
                HW_MOLAR_N, basis_molar((enum hw_nitrogen_basis)in[AMMONIA_LIMIT_BASIS]),
                s->fraction);
    }
    hw_step(steps, "tan_long", tan_long, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g", limit_n,
            basis_molar(s->basis), HW_MOLAR_N);
}

void ammonia_work(const double in[], struct hw_steps *steps)
{
    struct ammonia_sample s = ammonia_sample(in);
    bool read = !isnan(in[AMMONIA_TAN]);
    if (read) {
        step_total(&s, in, steps);
    }
    if (s.model == HW_AMMONIA_KHOO1977) {
        step_pk_khoo(&s, steps);
    } else if (s.model == HW_AMMONIA_EPA1989) {
        step_pk_1989(s.temp, s.salinity, "pka", s.pk, steps);
    } else {
        step_pk_clegg(&s, steps);
    }
    hw_step(steps, "free_percent", 100 * s.fraction, "", "", "100 / (1 + 10^(%.10g - %.10g))", s.pk,
            s.ph);
    if (read) {
        step_reading(&s, in, steps);
    } else {
        step_tan_long(&s, in, steps);
    }
}
