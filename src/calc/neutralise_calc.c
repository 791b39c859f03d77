/* neutralise_calc.c - chlorine or chloramine out of tap water, and the ammonia that chloramine
 * leaves. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/chlorine.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    NEUTRALISE_VOLUME, NEUTRALISE_CHLORINE, NEUTRALISE_CHLORAMINE, NEUTRALISE_MEDICINE,
    NEUTRALISE_AGENT, NEUTRALISE_RATIO, NEUTRALISE_INPUTS
};
/* clang-format on */
enum { NEUTRALISE_AMOUNT, NEUTRALISE_AMMONIA_FREED, NEUTRALISE_RESULTS };

/* The words of agent follow enum hw_chlorine_agent. */
static const char *const agent_words[] = {"thiosulfate-pentahydrate", "thiosulfate-anhydrous",
                                          "ascorbic-acid", NULL};

/* clang-format off */
static const struct hw_input inputs[NEUTRALISE_INPUTS] = {
    [NEUTRALISE_VOLUME] = {.name = "volume", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_CHLORINE_VOLUME_MIN, .hi = HW_CHLORINE_VOLUME_MAX, .beyond = "check the unit",
     .help = "the water to be treated, not the tank it goes into"},
    [NEUTRALISE_CHLORINE] = {.name = "chlorine", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_CHLORINE_LEVEL_MIN, .hi = HW_CHLORINE_LEVEL_MAX,
     .beyond = "more is bleach, no water",
     .help = "total chlorine as Cl2, measured or by the supplier"},
    [NEUTRALISE_CHLORAMINE] = {.name = "chloramine", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = yes_no_words, .help = "does the supplier use chloramine (if unsure, yes)?"},
    [NEUTRALISE_MEDICINE] = {.name = "medicine", .unit = "", .kind = HW_SET, .lo = MEDICINE_NONE,
     .hi = MEDICINE_ALL, .words = medicine_words,
     .help = "what is in the tank the water goes into"},
    [NEUTRALISE_AGENT] = {.name = "agent", .unit = "", .kind = HW_CHOICE, .hi = 2,
     .words = agent_words, .need = HW_PRESET, .preset = HW_CHLORINE_THIOSULFATE_PENTAHYDRATE,
     .help = "what takes the chlorine out"},
    [NEUTRALISE_RATIO] = {.name = "ratio", .unit = "", .kind = HW_NUMBER,
     .lo = HW_CHLORINE_RATIO_MIN, .hi = HW_CHLORINE_RATIO_MAX, .need = HW_OPTIONAL,
     .beyond = "published ones run from 0.56 to 7.4",
     .help = "mg of agent to a mg of chlorine, if not the usual"},
};

static const struct hw_result results[NEUTRALISE_RESULTS] = {
    [NEUTRALISE_AMOUNT] = {.name = "amount", .unit = "g", .kind = HW_MASS, .digits = 3,
     .safe = 1, .help = "of the agent (--agent), to weigh"},
    [NEUTRALISE_AMMONIA_FREED] = {.name = "ammonia_freed", .unit = "mg/L",
     .kind = HW_CONCENTRATION, .digits = 3, .help = "ammonia that the chloramine leaves, as N"},
};
/* clang-format on */

static const char *const sources[] = {"te213",
                                      "chlorine-weights",
                                      "pipeline-guide",
                                      "iwa-dechlorination",
                                      "prawn-thiosulfate",
                                      "us4786434",
                                      "us4666610",
                                      "wac-chlorine",
                                      "ascorbic-claims",
                                      "copper-thiosulfate",
                                      "dye-chemistry",
                                      "kit-chemistry",
                                      "common-practice",
                                      "our-arithmetic",
                                      "label-and-law",
                                      NULL};

static double usual_ratio(const double in[])
{
    double ratio = (double)NAN;
    hw_chlorine_agent_ratio((enum hw_chlorine_agent)in[NEUTRALISE_AGENT], &ratio);
    return ratio;
}

static double ratio_of(const double in[])
{
    return isnan(in[NEUTRALISE_RATIO]) ? usual_ratio(in) : in[NEUTRALISE_RATIO];
}

static void reckon(const double in[], double out[])
{
    out[NEUTRALISE_AMMONIA_FREED] = 0;
    hw_chlorine_agent_mass(in[NEUTRALISE_VOLUME], in[NEUTRALISE_CHLORINE], ratio_of(in),
                           &out[NEUTRALISE_AMOUNT]);
    if ((int)in[NEUTRALISE_CHLORAMINE] == YES) {
        hw_chlorine_nitrogen_freed(in[NEUTRALISE_CHLORINE], &out[NEUTRALISE_AMMONIA_FREED]);
    }
}

static uint64_t medicine_notes(const double in[])
{
    unsigned medicine = (unsigned)in[NEUTRALISE_MEDICINE];
    return note_if((medicine & MEDICINE_COPPER) != 0, HW_NEUTRALISE_NOTE_REDUCER_COPPER) |
           note_if((medicine & MEDICINE_DYE) != 0, HW_NEUTRALISE_NOTE_REDUCER_DYE) |
           note_if((medicine & MEDICINE_BINDER) != 0, HW_NEUTRALISE_NOTE_BINDER_CHLORINE);
}

static uint64_t agent_notes(const double in[])
{
    bool ascorbic = (int)in[NEUTRALISE_AGENT] == HW_CHLORINE_ASCORBIC_ACID;
    double level = in[NEUTRALISE_CHLORINE] * ratio_of(in);
    /* The larvae were killed at the limit itself: not only above it. */
    bool harms = !ascorbic && !below_limit(level, HW_LIMIT_THIOSULFATE_HARM);
    return note_if(!ascorbic, HW_NEUTRALISE_NOTE_THIOSULFATE_SLOW) |
           note_if(!ascorbic, HW_NEUTRALISE_NOTE_HYDRATE_MATTERS) |
           note_if(harms, HW_NEUTRALISE_NOTE_THIOSULFATE_OVER) |
           note_if(below(in[NEUTRALISE_RATIO], usual_ratio(in)), HW_NEUTRALISE_NOTE_RATIO_LOW);
}

static uint64_t water_notes(const double in[], const double out[])
{
    return note_if(in[NEUTRALISE_CHLORINE] == 0, HW_NEUTRALISE_NOTE_NO_CHLORINE) |
           note_if(above_limit(in[NEUTRALISE_CHLORINE], HW_LIMIT_TAP_CHLORINE),
                   HW_NEUTRALISE_NOTE_NOT_TAP_WATER) |
           note_if(out[NEUTRALISE_AMMONIA_FREED] > 0, HW_NEUTRALISE_NOTE_AMMONIA_COMES) |
           note_if(out[NEUTRALISE_AMOUNT] > 0 &&
                       below_limit(out[NEUTRALISE_AMOUNT], HW_LIMIT_WEIGH_LEAST),
                   HW_NEUTRALISE_NOTE_WEIGH_SMALL);
}

/* Less than the reaction that needs least takes: the chlorine would stay. */
static bool is_too_little(const double in[])
{
    static const enum hw_limit_key least[] = {
        HW_LIMIT_THIOSULFATE_LEAST, HW_LIMIT_THIOSULFATE_LEAST_ANHYDROUS, HW_LIMIT_ASCORBIC_LEAST};
    return below_limit(in[NEUTRALISE_RATIO], least[(int)in[NEUTRALISE_AGENT]]);
}

static uint64_t notes_of(const double in[], const double out[])
{
    if ((int)in[NEUTRALISE_AGENT] == HW_CHLORINE_ASCORBIC_ACID &&
        (int)in[NEUTRALISE_CHLORAMINE] == YES) {
        return note_bit(HW_NEUTRALISE_NOTE_ASCORBIC_CHLORAMINE);
    }
    if (is_too_little(in)) {
        return note_bit(HW_NEUTRALISE_NOTE_RATIO_TOO_LOW);
    }
    return medicine_notes(in) | agent_notes(in) | water_notes(in, out);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    reckon(in, out);
    *notes |= notes_of(in, out);
}

static void step_ratio(const double in[], struct hw_steps *steps)
{
    double usual = usual_ratio(in);
    int agent = (int)in[NEUTRALISE_AGENT];
    if (!isnan(in[NEUTRALISE_RATIO])) {
        return;
    }
    if (agent == HW_CHLORINE_THIOSULFATE_ANHYDROUS) {
        hw_step(steps, "usual_ratio", usual, "", "te213", "7.0 * %.10g/%.10g", HW_MOLAR_THIOSULFATE,
                HW_MOLAR_THIOSULFATE_PENTAHYDRATE);
    } else {
        hw_step(steps, "usual_ratio", usual, "",
                agent == HW_CHLORINE_ASCORBIC_ACID ? "pipeline-guide" : "te213", "%.10g", usual);
    }
}

static void work(const double in[], struct hw_steps *steps)
{
    double out[NEUTRALISE_RESULTS];
    reckon(in, out);
    if ((int)in[NEUTRALISE_CHLORAMINE] == YES) {
        hw_step(steps, "ammonia_freed", out[NEUTRALISE_AMMONIA_FREED], "mg/L", "chlorine-weights",
                "%.10g * %.10g/%.10g", in[NEUTRALISE_CHLORINE], HW_MOLAR_N, HW_MOLAR_CHLORINE);
    }
    step_ratio(in, steps);
    hw_step(steps, "amount", out[NEUTRALISE_AMOUNT], "g", "", "%.10g * %.10g * %.10g / 1000",
            in[NEUTRALISE_VOLUME], in[NEUTRALISE_CHLORINE], ratio_of(in));
}

/* clang-format off */
const struct hw_calc hw_calc_neutralise = {
    .name = "neutralise",
    .purpose = "what takes chlorine out of tap water, and the ammonia it leaves",
    .inputs = inputs, .n_inputs = NEUTRALISE_INPUTS, .results = results,
    .n_results = NEUTRALISE_RESULTS, .notes = hw_neutralise_notes, .n_notes = HW_NEUTRALISE_NOTES,
    .sources = sources, .answer = answer, .work = work,
};
/* clang-format on */
