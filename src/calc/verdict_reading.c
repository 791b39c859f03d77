/* verdict_reading.c - the reckoning of one reading after a challenge, and its working. */
#include "calc/verdict_reading.h"

#include <math.h>

static double nitrite_to_n(const double in[], double amount)
{
    double as_n = amount;
    if ((int)in[VERDICT_NITRITE_BASIS] == VERDICT_NITRITE_AS_ION) {
        hw_nitrite_to_n(HW_NITRITE_ION, amount, &as_n);
    }
    return as_n;
}

static void count_as_n(struct verdict_reading *r, const double in[])
{
    enum hw_nitrogen_basis basis = (enum hw_nitrogen_basis)in[VERDICT_BASIS];
    double half = in[VERDICT_KIT_STEP] / 2;
    r->start_tan = nitrogen_to_n(basis, in[VERDICT_START_TAN]);
    r->start_nitrite = nitrite_to_n(in, in[VERDICT_START_NITRITE]);
    r->tan = nitrogen_to_n(basis, in[VERDICT_TAN]);
    r->nitrite = nitrite_to_n(in, in[VERDICT_NITRITE]);
    r->half_tan = nitrogen_to_n(basis, half);
    r->half_nitrite = nitrite_to_n(in, half);
    r->tan_clear = !above(in[VERDICT_TAN], half);
    r->nitrite_clear = !above(in[VERDICT_NITRITE], half);
    r->coarse = above_limit(fmax(r->half_tan, r->half_nitrite), HW_LIMIT_KIT_COARSE);
}

static double carried_least(const struct verdict_reading *r)
{
    struct proven_filter least = proven_least(&r->filter, r->limit);
    return proven_carried(&least, r->limit);
}

/* The food at which ammonia rests at the limit: by the ammonia alone, half a step of the kit left
 * at the least, and no faster in colder water than working_feed is. */
static void find_feed_for_limit(struct verdict_reading *r, const double in[])
{
    bool stocked = !isnan(in[VERDICT_STOCK_TEMP]);
    const struct proven_filter challenge = {
        .from = r->start_tan,
        .to = fmax(r->tan, r->half_tan),
        .hours = in[VERDICT_HOURS],
        .half = in[VERDICT_HALF],
        .left = pow(HW_VERDICT_THETA, -r->colder),
    };
    r->filter = proven_filter(&challenge);
    r->published = long_limit(in[VERDICT_PH], in[stocked ? VERDICT_STOCK_TEMP : VERDICT_TEMP],
                              in[VERDICT_SALINITY]);
    r->limit = isnan(in[VERDICT_LIMIT]) ? r->published.total_n : in[VERDICT_LIMIT];
    if (r->passed) {
        r->feed_for_limit = carried_least(r) * 24 * in[VERDICT_VOLUME] /
                            (in[VERDICT_PROTEIN] / 100 * HW_VERDICT_NITROGEN_OF_PROTEIN);
    }
}

struct verdict_reading verdict_reading(const double in[])
{
    struct verdict_reading r = {.rate = NAN,
                                .capacity = NAN,
                                .feed = NAN,
                                .working_feed = NAN,
                                .hours_to_clear = NAN,
                                .feed_for_limit = NAN,
                                .nitrate = NAN};
    count_as_n(&r, in);
    double start = r.start_tan + r.start_nitrite;
    double left = r.tan + r.nitrite;
    r.cleared = start - left;
    r.colder = fmax(in[VERDICT_TEMP] - in[VERDICT_STOCK_TEMP],
                    0); /* of 0 and no number fmax takes the 0 */
    double half = in[VERDICT_KIT_STEP] / 2;
    r.readable = above(in[VERDICT_START_TAN], half) || above(in[VERDICT_START_NITRITE], half);
    r.moved = r.readable && above(r.cleared, 0);
    if (r.moved) {
        double oxygen = NAN;
        double alkalinity = NAN;
        hw_verdict_rate(start, left, in[VERDICT_HOURS], in[VERDICT_VOLUME], &r.rate, &r.capacity);
        r.turned = fmin(r.cleared, fmax(r.start_tan - r.tan, 0));
        hw_verdict_hours(r.tan, r.nitrite, r.half_tan, r.half_nitrite, r.rate, &r.hours_to_clear);
        hw_challenge_nitrified(HW_CHALLENGE_FROM_AMMONIUM, r.cleared, &r.nitrate, &oxygen,
                               &alkalinity);
    }
    r.passed =
        r.moved && r.tan_clear && r.nitrite_clear && !above(in[VERDICT_HOURS], in[VERDICT_WITHIN]);
    if (r.passed) {
        hw_verdict_feed_carried(r.capacity * r.turned / r.cleared, in[VERDICT_PROTEIN] / 100,
                                in[VERDICT_WORKING_SHARE] / 100, r.colder, &r.feed,
                                &r.working_feed);
    }
    find_feed_for_limit(&r, in);
    return r;
}

static void step_as_n(const char *symbol, double value, double amount, double molar,
                      struct hw_steps *steps)
{
    hw_step(steps, symbol, value, "mg/L", "iupac-weights", "%.10g * %.10g/%.10g", amount,
            HW_MOLAR_N, molar);
}

static void step_readings(const struct verdict_reading *r, const double in[],
                          struct hw_steps *steps)
{
    double tan = basis_molar((enum hw_nitrogen_basis)in[VERDICT_BASIS]);
    double nitrite =
        (int)in[VERDICT_NITRITE_BASIS] == VERDICT_NITRITE_AS_ION ? HW_MOLAR_NITRITE : HW_MOLAR_N;
    step_as_n("start_tan_as_n", r->start_tan, in[VERDICT_START_TAN], tan, steps);
    step_as_n("start_nitrite_as_n", r->start_nitrite, in[VERDICT_START_NITRITE], nitrite, steps);
    step_as_n("tan_as_n", r->tan, in[VERDICT_TAN], tan, steps);
    step_as_n("nitrite_as_n", r->nitrite, in[VERDICT_NITRITE], nitrite, steps);
    if (!isnan(r->hours_to_clear)) {
        step_as_n("half_tan_as_n", r->half_tan, in[VERDICT_KIT_STEP] / 2, tan, steps);
        step_as_n("half_nitrite_as_n", r->half_nitrite, in[VERDICT_KIT_STEP] / 2, nitrite, steps);
    }
    hw_step(steps, "cleared", r->cleared, "mg/L", "conservation", "%.10g + %.10g - %.10g - %.10g",
            r->start_tan, r->start_nitrite, r->tan, r->nitrite);
}

static void step_carried(const struct verdict_reading *r, const double in[], struct hw_steps *steps)
{
    if (below(r->turned, r->cleared)) {
        hw_step(steps, "turned", r->turned, "mg/L", "conservation",
                "(%.10g > %.10g) * (%.10g - %.10g)", r->start_tan, r->tan, r->start_tan, r->tan);
        hw_step(steps, "feed", r->feed, "g/d", "feed-nitrogen",
                "%.10g * %.10g/%.10g / (%.10g/100 * %.10g)", r->capacity, r->turned, r->cleared,
                in[VERDICT_PROTEIN], HW_VERDICT_NITROGEN_OF_PROTEIN);
    } else {
        hw_step(steps, "feed", r->feed, "g/d", "feed-nitrogen", "%.10g / (%.10g/100 * %.10g)",
                r->capacity, in[VERDICT_PROTEIN], HW_VERDICT_NITROGEN_OF_PROTEIN);
    }
    if (r->colder > 0) {
        hw_step(steps, "working_feed", r->working_feed, "g/d", "theta",
                "%.10g * %.10g/100 * %.10g^(%.10g - %.10g)", r->feed, in[VERDICT_WORKING_SHARE],
                HW_VERDICT_THETA, in[VERDICT_STOCK_TEMP], in[VERDICT_TEMP]);
    } else {
        hw_step(steps, "working_feed", r->working_feed, "g/d", "half-saturation",
                "%.10g * %.10g/100", r->feed, in[VERDICT_WORKING_SHARE]);
    }
}

static void step_limit(const struct verdict_reading *r, const double in[], struct hw_steps *steps)
{
    if (isnan(r->feed_for_limit)) {
        return;
    }
    if (isnan(in[VERDICT_LIMIT])) {
        long_limit_work(&r->published, "limit_used", steps);
    } else {
        hw_step(steps, "limit_used", r->limit, "mg/L", "", "%.10g", in[VERDICT_LIMIT]);
    }
    struct proven_filter least = proven_least(&r->filter, r->limit);
    step_vmax(&least, steps);
    hw_step(steps, "feed_for_limit", r->feed_for_limit, "g/d", "saturating-filter",
            "%.10g * %.10g / (%.10g + %.10g) * 24 * %.10g / (%.10g/100 * %.10g)", least.vmax,
            r->limit, least.half, r->limit, in[VERDICT_VOLUME], in[VERDICT_PROTEIN],
            HW_VERDICT_NITROGEN_OF_PROTEIN);
}

/* What is above half a step, of ammonia and of nitrite; nothing where a reading is below it. */
static void step_hours(const struct verdict_reading *r, struct hw_steps *steps)
{
    double tan = fmax(r->tan - r->half_tan, 0);
    double nitrite = fmax(r->nitrite - r->half_nitrite, 0);
    if (!isnan(r->hours_to_clear)) {
        hw_step(steps, "hours_to_clear", r->hours_to_clear, "h", "", "(%.10g + %.10g) / %.10g * 24",
                tan, nitrite, r->rate);
    }
}

void verdict_work(const double in[], struct hw_steps *steps)
{
    struct verdict_reading r = verdict_reading(in);
    double half = in[VERDICT_KIT_STEP] / 2;
    step_readings(&r, in, steps);
    hw_step(steps, "rate", r.rate, "mg/L/d", "", "%.10g / %.10g * 24", r.cleared,
            in[VERDICT_HOURS]);
    hw_step(steps, "capacity", r.capacity, "mg/d", "", "%.10g * %.10g", r.rate, in[VERDICT_VOLUME]);
    if (r.passed) {
        step_carried(&r, in, steps);
    }
    step_limit(&r, in, steps);
    step_hours(&r, steps);
    if (!isnan(in[VERDICT_NITRATE_RISE])) {
        hw_step(steps, "nitrate_expected", r.nitrate, "mg/L", "nitrification",
                "%.10g * %.10g/%.10g", r.cleared, HW_MOLAR_NITRATE, HW_MOLAR_N);
    }
    hw_step(steps, "passed", r.passed, "", "common-practice",
            "(%.10g <= %.10g) * (%.10g <= %.10g) * (%.10g <= %.10g)", in[VERDICT_TAN], half,
            in[VERDICT_NITRITE], half, in[VERDICT_HOURS], in[VERDICT_WITHIN]);
}
