/* disinfect_calc.c - bleach into a stripped tank, and what takes it out again. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/chlorine.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    DISINFECT_VOLUME, DISINFECT_TARGET, DISINFECT_STRENGTH, DISINFECT_STRENGTH_AS,
    DISINFECT_DENSITY, DISINFECT_MINUTES, DISINFECT_RATIO, DISINFECT_INPUTS
};
/* clang-format on */
enum { DISINFECT_BLEACH, DISINFECT_CONTACT, DISINFECT_THIOSULFATE, DISINFECT_RESULTS };

/* The words of strength_as follow enum hw_chlorine_label. */
static const char *const strength_words[] = {"wv", "ww", "naocl-ww", NULL};

/* clang-format off */
static const struct hw_input inputs[DISINFECT_INPUTS] = {
    [DISINFECT_VOLUME] = {.name = "volume", .tank = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_CHLORINE_VOLUME_MIN, .hi = HW_CHLORINE_VOLUME_MAX, .beyond = "check the unit",
     .help = "what the full tank holds, the bleach counted in"},
    [DISINFECT_TARGET] = {.name = "target", .aim = true, .unit = "mg/L",
     .kind = HW_CONCENTRATION, .lo = HW_CHLORINE_TARGET_MIN, .hi = HW_CHLORINE_LEVEL_MAX,
     .need = HW_PRESET, .preset = 200,
     .beyond = "less disinfects no tank, more only gives gas to breathe",
     .help = "available chlorine wanted"},
    [DISINFECT_STRENGTH] = {.name = "strength", .unit = "%", .kind = HW_SHARE, .unit_must = true,
     .lo = HW_CHLORINE_PERCENT_MIN, .hi = HW_CHLORINE_PERCENT_MAX,
     .beyond = "less is a cleaner or spent, no bleach has more",
     .help = "per cent on the bottle"},
    [DISINFECT_STRENGTH_AS] = {.name = "strength_as", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = strength_words, .need = HW_PRESET, .preset = HW_CHLORINE_LABEL_WV,
     .help = "what it counts, chlorine (wv, ww) or hypochlorite"},
    [DISINFECT_DENSITY] = {.name = "density", .unit = "g/mL", .kind = HW_DENSITY,
     .lo = HW_CHLORINE_DENSITY_MIN, .hi = HW_CHLORINE_DENSITY_MAX,
     .when_input = DISINFECT_STRENGTH_AS, .when_words = 1u << HW_CHLORINE_LABEL_WW | 1u <<
     HW_CHLORINE_LABEL_NAOCL_WW, .beyond = "no bleach is outside this, one of 12 % has 1.16",
     .help = "density of the bleach, by data sheet or weighing"},
    [DISINFECT_MINUTES] = {.name = "minutes", .unit = "min", .kind = HW_TIME,
     .lo = HW_CHLORINE_MINUTES_MIN, .hi = HW_CHLORINE_MINUTES_MAX, .need = HW_PRESET,
     .preset = 30, .beyond = "after a day the level is a guess",
     .help = "how long it stands at that level"},
    [DISINFECT_RATIO] = {.name = "ratio", .unit = "", .kind = HW_NUMBER,
     .lo = HW_CHLORINE_RATIO_MIN, .hi = HW_CHLORINE_RATIO_MAX, .need = HW_PRESET, .preset = 7,
     .beyond = "published ones run from 0.56 to 7.4",
     .help = "mg of thiosulfate pentahydrate to a mg of chlorine"},
};

static const struct hw_result results[DISINFECT_RESULTS] = {
    [DISINFECT_BLEACH] = {.name = "bleach", .unit = "mL", .kind = HW_VOLUME, .digits = 3,
     .safe = 1, .pour = true, .help = "into the filled tank"},
    [DISINFECT_CONTACT] = {.name = "contact", .unit = "mg.min/L", .kind = HW_CONTACT,
     .digits = 4, .safe = -1, .help = "level times time, if the level holds"},
    [DISINFECT_THIOSULFATE] = {.name = "thiosulfate", .unit = "g", .kind = HW_MASS, .digits = 3,
     .safe = 1, .help = "pentahydrate at the end, to clear the bleach"},
};
/* clang-format on */

static const char *const sources[] = {"piper1982",        "white1972",        "te213",
                                      "chlorine-weights", "bleach-chemistry", "bleach-mixing",
                                      "boyd-chlorine",    "sea-oxidants",     "common-practice",
                                      "our-arithmetic",   "label-and-law",    NULL};

static double strength_of(const double in[])
{
    double strength = (double)NAN;
    hw_chlorine_bleach_strength((enum hw_chlorine_label)in[DISINFECT_STRENGTH_AS],
                                in[DISINFECT_STRENGTH], in[DISINFECT_DENSITY], &strength);
    return strength;
}

static void reckon(const double in[], double out[])
{
    hw_chlorine_bleach_amount(in[DISINFECT_VOLUME], in[DISINFECT_TARGET], strength_of(in),
                              &out[DISINFECT_BLEACH]);
    hw_chlorine_contact(in[DISINFECT_TARGET], in[DISINFECT_MINUTES], &out[DISINFECT_CONTACT]);
    hw_chlorine_agent_mass(in[DISINFECT_VOLUME], in[DISINFECT_TARGET], in[DISINFECT_RATIO],
                           &out[DISINFECT_THIOSULFATE]);
}

static uint64_t notes_of(const double in[], const double out[])
{
    bool by_mass = (int)in[DISINFECT_STRENGTH_AS] != HW_CHLORINE_LABEL_WV;
    if (below_limit(in[DISINFECT_RATIO], HW_LIMIT_THIOSULFATE_LEAST)) {
        return note_bit(HW_DISINFECT_NOTE_RATIO_TOO_LOW);
    }
    return note_if(below_limit(out[DISINFECT_CONTACT], HW_LIMIT_DISINFECT_CONTACT),
                   HW_DISINFECT_NOTE_CONTACT_SHORT) |
           note_if(below_limit(in[DISINFECT_TARGET], HW_LIMIT_DISINFECT_LEVEL),
                   HW_DISINFECT_NOTE_TARGET_LOW) |
           note_if(below_limit(in[DISINFECT_RATIO], HW_LIMIT_THIOSULFATE_RATIO),
                   HW_DISINFECT_NOTE_RATIO_LOW) |
           note_if(below_limit(out[DISINFECT_BLEACH], HW_LIMIT_DRAW_LEAST),
                   HW_DISINFECT_NOTE_SMALL_LIQUID) |
           note_if(below_limit(out[DISINFECT_THIOSULFATE], HW_LIMIT_WEIGH_LEAST),
                   HW_DISINFECT_NOTE_WEIGH_SMALL) |
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
    int label = (int)in[DISINFECT_STRENGTH_AS];
    if (label == HW_CHLORINE_LABEL_WV) {
        hw_step(steps, "available", strength, "g/L", "white1972", "10 * %.10g",
                in[DISINFECT_STRENGTH]);
    } else if (label == HW_CHLORINE_LABEL_WW) {
        hw_step(steps, "available", strength, "g/L", "white1972", "10 * %.10g * %.10g",
                in[DISINFECT_STRENGTH], in[DISINFECT_DENSITY]);
    } else {
        hw_step(steps, "available", strength, "g/L", "white1972",
                "10 * %.10g * %.10g * %.10g/%.10g", in[DISINFECT_STRENGTH], in[DISINFECT_DENSITY],
                HW_MOLAR_CHLORINE, HW_MOLAR_HYPOCHLORITE);
    }
}

static void work(const double in[], struct hw_steps *steps)
{
    double out[DISINFECT_RESULTS];
    reckon(in, out);
    hw_step(steps, "contact", out[DISINFECT_CONTACT], "mg.min/L", "", "%.10g * %.10g",
            in[DISINFECT_TARGET], in[DISINFECT_MINUTES]);
    hw_step(steps, "thiosulfate", out[DISINFECT_THIOSULFATE], "g", "te213",
            "%.10g * %.10g * %.10g / 1000", in[DISINFECT_VOLUME], in[DISINFECT_TARGET],
            in[DISINFECT_RATIO]);
    step_strength(in, steps);
    hw_step(steps, "bleach", out[DISINFECT_BLEACH], "mL", "", "%.10g * %.10g / %.10g",
            in[DISINFECT_TARGET], in[DISINFECT_VOLUME], strength_of(in));
}

/* clang-format off */
const struct hw_calc hw_calc_disinfect = {
    .name = "disinfect",
    .purpose = "bleach for a stripped tank, how long, and what takes it out again",
    .inputs = inputs, .n_inputs = DISINFECT_INPUTS, .results = results,
    .n_results = DISINFECT_RESULTS, .notes = hw_disinfect_notes, .n_notes = HW_DISINFECT_NOTES,
    .sources = sources, .answer = answer, .work = work,
};
/* clang-format on */
