/* ammonia_sample.c - the reckoning of one ammonia reading. */
#include "calc/ammonia_sample.h"

#include <math.h>

const struct ammonia_limits ammonia_long_limits = {AMMONIA_LONG_LIMIT,
                                                   HW_LIMIT_SALT_LONG,
                                                   HW_CRITERIA_EPA2013_CCC,
                                                   HW_AMMONIA_NOTE_OVER_LONG_OWN,
                                                   HW_AMMONIA_NOTE_OVER_LONG_SALT,
                                                   HW_AMMONIA_NOTE_OVER_LONG_FRESH};
const struct ammonia_limits ammonia_short_limits = {AMMONIA_SHORT_LIMIT,
                                                    HW_LIMIT_SALT_SHORT,
                                                    HW_CRITERIA_EPA2013_CMC_PRESENT,
                                                    HW_AMMONIA_NOTE_OVER_SHORT_OWN,
                                                    HW_AMMONIA_NOTE_OVER_SHORT_SALT,
                                                    HW_AMMONIA_NOTE_OVER_SHORT_FRESH};

bool ammonia_salt_applies(const struct ammonia_sample *s)
{
    return s->meter_in_range && !below_limit(s->salinity, HW_LIMIT_FRESH_BELOW);
}

bool ammonia_fresh_applies(const struct ammonia_sample *s)
{
    return s->meter_in_range && below_limit(s->salinity, HW_LIMIT_SALT_FROM);
}

/* The salt-water limits count by their own constant, from the lower step of salinity up. */
static void count_for_salt_limits(struct ammonia_sample *s)
{
    s->pk_1989 = s->fraction_1989 = s->free_1989 = NAN;
    if (!ammonia_salt_applies(s)) {
        return;
    }
    int status = hw_ammonia_pk(HW_AMMONIA_EPA1989, HW_PH_METER, s->temp, s->salinity, &s->pk_1989);
    s->criteria_stretched = status > 0;
    hw_ammonia_fraction_at_pk(s->ph_meter, s->pk_1989, &s->fraction_1989);
    s->free_1989 = nitrogen_from_n(HW_NITROGEN_NH3, s->fraction_1989 * s->total_n);
}

static void bring_to_meter(struct ammonia_sample *s)
{
    s->ph_meter = s->ph;
    s->from_meter = 0;
    if (s->scale != HW_PH_METER) {
        double given = NAN;
        double meter = NAN;
        hw_ph_offset(s->scale, s->temp, s->salinity, &given);
        hw_ph_offset(HW_PH_METER, s->temp, s->salinity, &meter);
        s->from_meter = given - meter;
        s->ph_meter = s->ph - s->from_meter;
    }
    s->meter_in_range = s->ph_meter <= HW_PH_MAX; /* a meter never shows less than another scale */
}

struct ammonia_sample ammonia_sample(const double in[])
{
    struct ammonia_sample s = {
        .ph = in[AMMONIA_PH],
        .temp = in[AMMONIA_TEMP],
        .salinity = in[AMMONIA_SALINITY],
        .basis = (enum hw_nitrogen_basis)in[AMMONIA_BASIS],
        .scale = (enum hw_ph_scale)in[AMMONIA_PH_SCALE],
        .model = isnan(in[AMMONIA_MODEL_METER]) ? HW_AMMONIA_CLEGG1995
                                                : (enum hw_ammonia_model)in[AMMONIA_MODEL_METER],
    };
    s.total_n = nitrogen_to_n(s.basis, in[AMMONIA_TAN] * in[AMMONIA_DILUTION]);
    s.fit_stretched = hw_ammonia_pk(s.model, s.scale, s.temp, s.salinity, &s.pk) > 0;
    hw_ammonia_fraction_at_pk(s.ph, s.pk, &s.fraction);
    s.free_n = s.fraction * s.total_n;
    bring_to_meter(&s);
    count_for_salt_limits(&s);
    return s;
}

struct ammonia_standing ammonia_against_free(double total_n, double limit_n, double fraction,
                                             double pk, bool find_ph)
{
    struct ammonia_standing standing = {fraction * total_n / limit_n, limit_n / fraction, NAN};
    if (find_ph && total_n > limit_n) {
        hw_ammonia_ph_at(limit_n / total_n, pk, &standing.ph);
    }
    return standing;
}

struct ammonia_standing ammonia_against_salt(const struct ammonia_sample *s,
                                             enum hw_limit_key limit, bool find_ph)
{
    double limit_n = nitrogen_to_n(HW_NITROGEN_NH3, hw_limits[limit].value);
    struct ammonia_standing standing =
        ammonia_against_free(s->total_n, limit_n, s->fraction_1989, s->pk_1989, find_ph);
    standing.ph += s->from_meter;
    return standing;
}

struct ammonia_standing ammonia_against_fresh(struct ammonia_sample *s,
                                              enum hw_criteria_limit criterion)
{
    double limit_n = NAN;
    int status = hw_criteria_epa2013(criterion, s->ph_meter, s->temp, &limit_n);
    s->criteria_stretched = s->criteria_stretched || status > 0;
    struct ammonia_standing standing = {s->total_n / limit_n, limit_n, NAN};
    if (criterion == HW_CRITERIA_EPA2013_CCC) {
        int reached = hw_criteria_epa2013_ccc_ph(s->total_n, s->temp, &standing.ph);
        if (reached < 0 && above(standing.ratio, 1)) {
            standing.ph = -HUGE_VAL; /* over it at every pH: stricter than any pH */
        }
        standing.ph += s->from_meter;
    }
    return standing;
}
