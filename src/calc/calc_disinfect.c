/* calc_disinfect.c - bleach into a stripped tank, and what takes it out again. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/chlorine.h"
#include "tables.h"

#include <math.h>

enum { VOLUME, TARGET, STRENGTH, STRENGTH_AS, DENSITY, MINUTES, RATIO, INPUTS };
enum { BLEACH, CONTACT, THIOSULFATE, RESULTS };

/* The words of strength_as follow enum hw_bleach_label. */
static const char *const strength_words[] = {"wv", "ww", "naocl-ww", NULL};

/* Below this many grams or millilitres household measures do not serve. */
static const double small = 1;

static const struct hw_input inputs[INPUTS] = {
    [VOLUME] = {.name = "volume",
                .unit = "L",
                .kind = HW_VOLUME,
                .unit_must = true,
                .lo = HW_CHLORINE_VOLUME_MIN,
                .hi = HW_CHLORINE_VOLUME_MAX,
                .help = "what the tank holds, filled up with the bleach in it; outside this doubt "
                        "the unit",
                .need = HW_REQUIRED,
                .when_input = -1},
    [TARGET] = {.name = "target",
                .unit = "mg/L",
                .kind = HW_CONCENTRATION,
                .lo = HW_CHLORINE_TARGET_MIN,
                .hi = HW_CHLORINE_LEVEL_MAX,
                .help = "available chlorine wanted; below 10 it disinfects clean water, no tank, "
                        "above 1000 it is gas to breathe and nothing gained",
                .need = HW_PRESET,
                .preset = 200,
                .when_input = -1},
    [STRENGTH] = {.name = "strength",
                  .unit = "%",
                  .kind = HW_SHARE,
                  .unit_must = true,
                  .lo = HW_CHLORINE_PERCENT_MIN,
                  .hi = HW_CHLORINE_PERCENT_MAX,
                  .help = "per cent on the bottle; below 1 it is a cleaner or spent, above 20 no "
                          "bleach is",
                  .need = HW_REQUIRED,
                  .when_input = -1},
    [STRENGTH_AS] = {.name = "strength_as",
                     .unit = "",
                     .kind = HW_CHOICE,
                     .lo = 0,
                     .hi = 2,
                     .words = strength_words,
                     .help = "what the per cent counts: g of available chlorine in 100 mL (wv), "
                             "chlorine by mass (ww), sodium hypochlorite by mass (naocl-ww)",
                     .need = HW_PRESET,
                     .preset = HW_BLEACH_WV,
                     .when_input = -1},
    [DENSITY] = {.name = "density",
                 .unit = "g/mL",
                 .kind = HW_DENSITY,
                 .unit_must = true,
                 .lo = HW_CHLORINE_DENSITY_MIN,
                 .hi = HW_CHLORINE_DENSITY_MAX,
                 .help = "of the bleach, from its data sheet or a full bottle weighed; a bleach of "
                         "12 % has 1.16, outside 1 to 1.3 none is",
                 .need = HW_REQUIRED,
                 .when_input = STRENGTH_AS,
                 .when_words = 1u << HW_BLEACH_WW | 1u << HW_BLEACH_NAOCL_WW},
    [MINUTES] = {.name = "minutes",
                 .unit = "min",
                 .kind = HW_TIME,
                 .lo = HW_CHLORINE_MINUTES_MIN,
                 .hi = HW_CHLORINE_MINUTES_MAX,
                 .help = "how long it stands at that level; after a day the level is a guess",
                 .need = HW_PRESET,
                 .preset = 30,
                 .when_input = -1},
    [RATIO] = {.name = "ratio",
               .unit = "",
               .kind = HW_NUMBER,
               .lo = HW_CHLORINE_RATIO_MIN,
               .hi = HW_CHLORINE_RATIO_MAX,
               .help = "mg of thiosulfate pentahydrate to a mg of chlorine; published ones run "
                       "from 0.56 to 7.4",
               .need = HW_PRESET,
               .preset = 7,
               .when_input = -1},
};

static const struct hw_result results[RESULTS] = {
    [BLEACH] = {.name = "bleach",
                .unit = "mL",
                .kind = HW_VOLUME,
                .digits = 3,
                .safe = 1,
                .help = "bleach to pour into the filled tank"},
    [CONTACT] = {.name = "contact",
                 .unit = "mg.min/L",
                 .kind = HW_CONTACT,
                 .digits = 4,
                 .safe = -1,
                 .help = "level times time, if the level holds"},
    [THIOSULFATE] = {.name = "thiosulfate",
                     .unit = "g",
                     .kind = HW_MASS,
                     .digits = 3,
                     .safe = 1,
                     .help = "sodium thiosulfate pentahydrate that takes all of it out"},
};

static const char *const sources[] = {"piper1982",
                                      "white1972",
                                      "te213",
                                      "chlorine-weights",
                                      "bleach-chemistry",
                                      "boyd-chlorine",
                                      "sea-oxidants",
                                      "common-practice",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static double strength_of(const double in[])
{
    double strength = (double)NAN;
    hw_bleach_strength((enum hw_bleach_label)in[STRENGTH_AS], in[STRENGTH], in[DENSITY], &strength);
    return strength;
}

static void reckon(const double in[], double out[])
{
    hw_bleach_amount(in[VOLUME], in[TARGET], strength_of(in), &out[BLEACH]);
    hw_chlorine_contact(in[TARGET], in[MINUTES], &out[CONTACT]);
    hw_dechlorinator_mass(in[VOLUME], in[TARGET], in[RATIO], &out[THIOSULFATE]);
}

static const uint64_t always =
    UINT64_C(1) << HW_DISINFECT_NOTE_DRAIN_FIRST | UINT64_C(1) << HW_DISINFECT_NOTE_CONTACT_WHOLE |
    UINT64_C(1) << HW_DISINFECT_NOTE_TEST_STRONG |
    UINT64_C(1) << HW_DISINFECT_NOTE_NEUTRALISE_RINSE | UINT64_C(1) << HW_DISINFECT_NOTE_NEVER_MIX |
    UINT64_C(1) << HW_DISINFECT_NOTE_BLEACH_CARE | UINT64_C(1) << HW_DISINFECT_NOTE_BLEACH_OLD |
    UINT64_C(1) << HW_DISINFECT_NOTE_BLEACH_PLAIN | UINT64_C(1) << HW_DISINFECT_NOTE_POROUS_OUT |
    UINT64_C(1) << HW_DISINFECT_NOTE_FRESH_FILL | UINT64_C(1) << HW_DISINFECT_NOTE_BLEACH_WASTE |
    UINT64_C(1) << HW_DISINFECT_NOTE_ASK_VET;

static uint64_t notes_of(const double in[], const double out[])
{
    bool by_mass = (int)in[STRENGTH_AS] != HW_BLEACH_WV;
    return always |
           note_if(out[CONTACT] < hw_limits[HW_LIMIT_DISINFECT_CONTACT].value,
                   HW_DISINFECT_NOTE_CONTACT_SHORT) |
           note_if(in[TARGET] < hw_limits[HW_LIMIT_DISINFECT_LEVEL].value,
                   HW_DISINFECT_NOTE_TARGET_LOW) |
           note_if(in[RATIO] < hw_limits[HW_LIMIT_THIOSULFATE_RATIO].value,
                   HW_DISINFECT_NOTE_RATIO_LOW) |
           note_if(out[BLEACH] < small, HW_DISINFECT_NOTE_SMALL_LIQUID) |
           note_if(out[THIOSULFATE] < small, HW_DISINFECT_NOTE_WEIGH_SMALL) |
           note_if(by_mass, HW_DISINFECT_NOTE_PERCENT_BY_MASS) |
           note_if(!by_mass, HW_DISINFECT_NOTE_PERCENT_BY_VOLUME);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    reckon(in, out);
    *notes |= notes_of(in, out);
}

static void step_strength(const double in[], struct hw_steps *steps)
{
    double strength = strength_of(in);
    int label = (int)in[STRENGTH_AS];
    if (label == HW_BLEACH_WV) {
        hw_step(steps, "available", strength, "g/L", "white1972", "10 * %.10g", in[STRENGTH]);
    } else if (label == HW_BLEACH_WW) {
        hw_step(steps, "available", strength, "g/L", "white1972", "10 * %.10g * %.10g",
                in[STRENGTH], in[DENSITY]);
    } else {
        hw_step(steps, "available", strength, "g/L", "white1972",
                "10 * %.10g * %.10g * %.10g/%.10g", in[STRENGTH], in[DENSITY], HW_MOLAR_CHLORINE,
                HW_MOLAR_HYPOCHLORITE);
    }
}

static void work(const double in[], struct hw_steps *steps)
{
    double out[RESULTS];
    reckon(in, out);
    hw_step(steps, "contact", out[CONTACT], "mg.min/L", "", "%.10g * %.10g", in[TARGET],
            in[MINUTES]);
    hw_step(steps, "thiosulfate", out[THIOSULFATE], "g", "te213", "%.10g * %.10g * %.10g / 1000",
            in[VOLUME], in[TARGET], in[RATIO]);
    step_strength(in, steps);
    hw_step(steps, "bleach", out[BLEACH], "mL", "", "%.10g * %.10g / %.10g", in[TARGET], in[VOLUME],
            strength_of(in));
}

const struct hw_calc hw_calc_disinfect = {
    .name = "disinfect",
    .purpose = "bleach for a stripped tank, how long, and what takes the chlorine out again",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_disinfect_notes,
    .n_notes = HW_DISINFECT_NOTES,
    .sources = sources,
    .answer = answer,
    .work = work,
};
