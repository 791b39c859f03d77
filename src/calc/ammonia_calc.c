/* ammonia_calc.c - how much of a total ammonia reading is free, and how far that is from a
 * limit. */
#include "calc/ammonia_notes.h"
#include "calc/ammonia_sample.h"
#include "calc/list.h"

#include <math.h>

static const char *const scale_words[] = {"meter", "nbs-rigorous", "total", "free", "sws", NULL};
static const char *const meter_models[] = {"khoo1977", "epa1989", NULL};
static const char *const other_models[] = {"clegg1995", NULL};
enum { AMMONIA_ON_METER = 1u << HW_PH_METER, AMMONIA_NOT_ON_METER = 0x1eu };
/* clang-format off */
static const struct hw_input inputs[AMMONIA_INPUTS] = {
    [AMMONIA_TAN] = {.name = "tan", .unit = "mg/L", .kind = HW_CONCENTRATION, .hi = 1000,
     .need = HW_OPTIONAL, .cell_must = true, .beyond = "check the unit",
     .help = "total ammonia as the kit reads it"},
    [AMMONIA_BASIS] = BASIS_INPUT,
    [AMMONIA_DILUTION] = {.name = "dilution", .unit = "", .kind = HW_NUMBER, .lo = 1, .hi = 1000,
     .need = HW_PRESET, .preset = 1, .beyond = "half sample and half pure water is 2",
     .help = "how many times the sample was diluted"},
    [AMMONIA_PH] = {.name = "ph", .unit = "", .kind = HW_PH, .lo = HW_PH_MIN, .hi = HW_PH_MAX,
     .beyond = "check the reading", .help = "pH of the tank water"},
    [AMMONIA_PH_SCALE] = {.name = "ph_scale", .unit = "", .kind = HW_CHOICE, .hi = 4,
     .words = scale_words, .need = HW_PRESET, .preset = HW_PH_METER,
     .help = "pH scale (meter: set in fresh-water buffers)"},
    [AMMONIA_TEMP] = {.name = "temp", .tank = "temp", .unit = "C", .kind = HW_TEMPERATURE,
     .lo = HW_AMMONIA_TEMP_MIN, .hi = HW_AMMONIA_TEMP_MAX,
     .beyond = "the formula is valid to here", .help = "water temperature"},
    [AMMONIA_SALINITY] = {.name = "salinity", .tank = "salinity", .unit = "g/kg",
     .kind = HW_SALINITY, .lo = HW_AMMONIA_SALINITY_MIN, .hi = HW_AMMONIA_SALINITY_MAX,
     .beyond = "the formula is valid to here", .help = "salinity of sea-salt water, 0 for fresh"},
    [AMMONIA_MODEL_METER] = {.name = "model", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = meter_models, .need = HW_PRESET, .preset = HW_AMMONIA_KHOO1977,
     .when_input = AMMONIA_PH_SCALE, .when_words = AMMONIA_ON_METER,
     .help = "ionisation constant for a meter's pH"},
    [AMMONIA_MODEL_OTHER] = {.name = "model", .unit = "", .kind = HW_CHOICE,
     .words = other_models, .need = HW_PRESET, .when_input = AMMONIA_PH_SCALE,
     .when_words = AMMONIA_NOT_ON_METER,
     .help = "ionisation constant for pH on the other scales"},
    [AMMONIA_MEDICINE] = {.name = "medicine", .unit = "", .kind = HW_SET, .hi = MEDICINE_ALL,
     .words = medicine_words, .need = HW_OPTIONAL, .help = "what is in the water"},
    [AMMONIA_LONG_LIMIT] = {.name = "long_limit", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.001, .hi = 100, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "your own limit of free ammonia for days"},
    [AMMONIA_SHORT_LIMIT] = {.name = "short_limit", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = 0.001, .hi = 100, .need = HW_OPTIONAL, .beyond = "check the unit",
     .help = "your own limit of free ammonia for an hour"},
    [AMMONIA_LIMIT_BASIS] = {.name = "limit_basis", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = basis_words, .need = HW_PRESET, .preset = HW_NITROGEN_N,
     .help = "what your own limits count"},
};

static const struct hw_result results[AMMONIA_RESULTS] = {
    [AMMONIA_FREE] = {.name = "free", .unit = "mg/L", .kind = HW_CONCENTRATION, .digits = 3,
     .sometimes = true, .help = "free (un-ionised) ammonia, as N"},
    [AMMONIA_LONG_RATIO] = {.name = "long_ratio", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .sometimes = true, .help = "times the limit for days: above 1 is over it"},
    [AMMONIA_SHORT_RATIO] = {.name = "short_ratio", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .sometimes = true, .help = "times the limit for one hour"},
    [AMMONIA_TAN_LONG] = {.name = "tan_long", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .safe = -1, .sometimes = true,
     .help = "total at the limit for days, in your basis"},
    [AMMONIA_PH_LONG] = {.name = "ph_long", .unit = "", .kind = HW_PH, .digits = 3, .safe = -1,
     .sometimes = true, .help = "pH where this total meets the limit for days"},
    [AMMONIA_FREE_PERCENT] = {.name = "free_percent", .unit = "", .kind = HW_NUMBER, .digits = 3,
     .help = "per cent of the total that is free"},
    [AMMONIA_FREE_NH3] = {.name = "free_nh3", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .digits = 3, .sometimes = true, .detail = true, .help = "free (un-ionised) ammonia, as NH3"},
    [AMMONIA_FREE_FOR_LIMIT] = {.name = "free_for_limit", .unit = "mg/L",
     .kind = HW_CONCENTRATION, .digits = 3, .sometimes = true, .detail = true,
     .help = "free ammonia as limits count it, as NH3"},
    [AMMONIA_PKA] = {.name = "pka", .unit = "", .kind = HW_NUMBER, .digits = 5, .detail = true,
     .help = "pK of ammonia on the scale given"},
};
/* clang-format on */

static const char *const sources[] = {"emerson1975",
                                      "khoo1977",
                                      "clegg1995",
                                      "dickson1990",
                                      "dickson1979",
                                      "takahashi1982",
                                      "davies",
                                      "malmberg1956",
                                      "epa1989",
                                      "epa2013",
                                      "iupac-weights",
                                      "kit-chemistry",
                                      "formalin-ammonia",
                                      "common-practice",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static double smaller(double a, double b)
{
    return isnan(a) || b < a ? b : a;
}

/* Where both kinds of limit apply the stricter holds. A standing that does not apply is all NaN. */
static struct ammonia_standing stricter(struct ammonia_standing a, struct ammonia_standing b)
{
    struct ammonia_standing strict = {-smaller(-a.ratio, -b.ratio), smaller(a.total_n, b.total_n),
                                      smaller(a.ph, b.ph)};
    return strict;
}

/* How a sample stands to the published limits of an averaging time; NaN for one that does not
 * apply. */
struct published {
    struct ammonia_standing salt, fresh;
};

static struct published published_of(struct ammonia_sample *s, const struct ammonia_limits *limits)
{
    struct published p = {{NAN, NAN, NAN}, {NAN, NAN, NAN}};
    if (ammonia_salt_applies(s)) {
        p.salt = ammonia_against_salt(s, limits->salt, limits == &ammonia_long_limits);
    }
    if (ammonia_fresh_applies(s)) {
        p.fresh = ammonia_against_fresh(s, limits->fresh);
    }
    return p;
}

/* The alarms, which no limit of anybody's own silences. */
static uint64_t alarm_notes(const struct published *p, const struct ammonia_limits *limits)
{
    return note_if(above(p->salt.ratio, 1), limits->over_salt) |
           note_if(above(p->fresh.ratio, 1), limits->over_fresh);
}

/* A limit given as N that has the number of a published limit as NH3. */
static bool looks_like_nh3(const double in[], int limit)
{
    return (enum hw_nitrogen_basis)in[AMMONIA_LIMIT_BASIS] == HW_NITROGEN_N &&
           (in[limit] == hw_limits[HW_LIMIT_SALT_LONG].value ||
            in[limit] == hw_limits[HW_LIMIT_SALT_SHORT].value);
}

/* A limit of one's own (as N, and the total that reaches it) that lets pass what a published one
 * does not. The salt-water limits are free ammonia, too: number against number, whatever the
 * constant. */
static bool laxer(const struct ammonia_sample *s, const struct ammonia_limits *limits,
                  const struct published *p, double limit_n, double total_n)
{
    double as_nh3 = nitrogen_from_n(HW_NITROGEN_NH3, limit_n);
    return (ammonia_salt_applies(s) && above_limit(as_nh3, limits->salt)) ||
           above(total_n, p->fresh.total_n);
}

static struct ammonia_standing against_own(const struct ammonia_sample *s, const double in[],
                                           const struct ammonia_limits *limits, uint64_t *notes)
{
    bool days = limits == &ammonia_long_limits;
    struct ammonia_sample untold = *s; /* no result is stretched by a limit that makes none */
    struct published p = published_of(&untold, limits);
    double limit_n =
        nitrogen_to_n((enum hw_nitrogen_basis)in[AMMONIA_LIMIT_BASIS], in[limits->own]);
    struct ammonia_standing standing =
        ammonia_against_free(s->total_n, limit_n, s->fraction, s->pk, days);
    *notes |= alarm_notes(&p, limits) | note_if(above(standing.ratio, 1), limits->over_own) |
              note_if(laxer(s, limits, &p, limit_n, standing.total_n),
                      HW_AMMONIA_NOTE_LIMIT_OVER_PUBLISHED) |
              note_bit(days ? HW_AMMONIA_NOTE_RATIO_OWN_LONG : HW_AMMONIA_NOTE_RATIO_OWN_SHORT) |
              note_if(looks_like_nh3(in, limits->own), HW_AMMONIA_NOTE_LIMIT_LOOKS_NH3);
    return standing;
}

static struct ammonia_stands stands_of(const struct ammonia_sample *s, double tan)
{
    return (struct ammonia_stands){
        .act = above_limit(s->total_n, HW_LIMIT_ACT_TODAY),
        .at_end = !below_limit(tan, HW_LIMIT_KIT_END),
        .sour = below_limit(s->ph_meter, HW_LIMIT_SOUR_BELOW),
        .at_jump = below_limit(from_jump(s->salinity), HW_LIMIT_CRITERIA_NEAR),
    };
}

static struct ammonia_standing against(struct ammonia_sample *s, const double in[],
                                       const struct ammonia_limits *limits, uint64_t *notes)
{
    if (!isnan(in[limits->own])) {
        return against_own(s, in, limits, notes);
    }
    struct published p = published_of(s, limits);
    *notes |= alarm_notes(&p, limits);
    const struct ammonia_stands stands = stands_of(s, in[AMMONIA_TAN]);
    *notes |=
        s->meter_in_range
            ? notes_in(published_notes(&stands, ammonia_salt_applies(s), ammonia_fresh_applies(s)))
            : note_bit(HW_AMMONIA_NOTE_CRITERIA_NO_PH);
    return stricter(p.salt, p.fresh);
}

void ammonia_answer(const double in[], double out[], uint64_t *notes)
{
    struct ammonia_sample s = ammonia_sample(in);
    struct ammonia_standing days = against(&s, in, &ammonia_long_limits, notes);
    struct ammonia_standing hour = against(&s, in, &ammonia_short_limits, notes);
    const struct ammonia_stands stands = stands_of(&s, in[AMMONIA_TAN]);
    *notes |= medicine_notes(in[AMMONIA_MEDICINE]) |
              notes_in(reading_notes(&s, in[AMMONIA_TAN], &stands));
    out[AMMONIA_FREE] = s.free_n;
    out[AMMONIA_LONG_RATIO] = days.ratio;
    out[AMMONIA_SHORT_RATIO] = hour.ratio;
    out[AMMONIA_TAN_LONG] = nitrogen_from_n(s.basis, days.total_n);
    out[AMMONIA_PH_LONG] = in_ph_range(days.ph);
    out[AMMONIA_FREE_PERCENT] = 100 * s.fraction;
    out[AMMONIA_FREE_NH3] = nitrogen_from_n(HW_NITROGEN_NH3, s.free_n);
    out[AMMONIA_FREE_FOR_LIMIT] = s.free_1989;
    out[AMMONIA_PKA] = s.pk;
}

/* clang-format off */
const struct hw_calc hw_calc_ammonia = {
    .name = "ammonia",
    .purpose = "how much of a total ammonia is free, and how far from a limit",
    .inputs = inputs, .n_inputs = AMMONIA_INPUTS, .results = results, .n_results = AMMONIA_RESULTS,
    .notes = hw_ammonia_notes, .n_notes = HW_AMMONIA_NOTES, .sources = sources,
    .answer = ammonia_answer, .block = ammonia_block, .work = ammonia_work,
};
/* clang-format on */
