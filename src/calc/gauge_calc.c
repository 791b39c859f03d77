/* gauge_calc.c - how much water a tank holds, from a known addition and the rise it made. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/volume.h"
#include "tables.h"

#include <math.h>

enum { GAUGE_ADDED, GAUGE_REAGENT, GAUGE_RISE, GAUGE_RISE_ALKALINITY, GAUGE_INPUTS };
enum { GAUGE_NET, GAUGE_RESULTS };

static const char *const reagent_words[] = {"tracer", "sodium-bicarbonate", NULL};
enum { GAUGE_TRACER, GAUGE_BICARBONATE };

/* clang-format off */
static const struct hw_input inputs[GAUGE_INPUTS] = {
    [GAUGE_ADDED] = {.name = "added", .unit = "mg", .kind = HW_MASS, .lo = HW_VOLUME_ADDED_MIN,
     .hi = HW_VOLUME_ADDED_MAX, .help = "mass added: of a tracer counted as the test counts it; "
     "outside 0.1 mg to a tonne look at the unit"},
    [GAUGE_REAGENT] = {.name = "reagent", .unit = "", .kind = HW_CHOICE, .hi = GAUGE_BICARBONATE,
     .words = reagent_words, .need = HW_PRESET, .preset = GAUGE_TRACER,
     .help = "what was weighed: a "
     "tracer that the test reads in mg/L, or sodium bicarbonate, read as alkalinity"},
    [GAUGE_RISE] = {.name = "rise", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .unit_must = true, .lo = HW_VOLUME_RISE_MIN, .hi = HW_VOLUME_RISE_MAX,
     .when_input = GAUGE_REAGENT, .when_words = 1u << GAUGE_TRACER,
     .help = "reading after less reading before, of the same substance (alkalinity "
     "needs --reagent sodium-bicarbonate); less no test shows, more is no tank"},
    [GAUGE_RISE_ALKALINITY] = {.name = "rise", .unit = "meq/L", .kind = HW_ALKALINITY,
     .unit_must = true, .lo = HW_VOLUME_ALKALINITY_MIN, .hi = HW_VOLUME_ALKALINITY_MAX,
     .when_input = GAUGE_REAGENT, .when_words = 1u << GAUGE_BICARBONATE, .help = "alkalinity after "
     "less alkalinity before; less no test shows, more falls out"},
};
/* clang-format on */

/* Too large a volume makes every dose too strong: rounded down. */
/* clang-format off */
static const struct hw_result results[GAUGE_RESULTS] = {
    [GAUGE_NET] = {.name = "net", .unit = "L", .kind = HW_VOLUME, .digits = 3, .safe = -1,
     .help = "the water that the addition was spread through"},
};
/* clang-format on */

static const char *const sources[] = {"our-arithmetic", "tracer-chemistry", "common-practice",
                                      "iupac-weights", NULL};

static bool is_bicarbonate(const double in[])
{
    return (int)in[GAUGE_REAGENT] == GAUGE_BICARBONATE;
}

static double net_of(const double in[])
{
    double net = NAN;
    if (is_bicarbonate(in)) {
        hw_volume_gauge_bicarbonate(in[GAUGE_ADDED], in[GAUGE_RISE_ALKALINITY], &net);
    } else {
        hw_volume_gauge(in[GAUGE_ADDED], in[GAUGE_RISE], &net);
    }
    return net;
}

static uint64_t notes_of(const double in[], double net)
{
    return note_if(is_bicarbonate(in), HW_GAUGE_NOTE_BAKING_SODA) |
           note_if(is_bicarbonate(in), HW_GAUGE_NOTE_GAUGE_BEFORE_FISH) |
           note_if(!is_bicarbonate(in), HW_GAUGE_NOTE_SAME_SUBSTANCE) |
           note_if(below_limit(net, HW_LIMIT_VOLUME_LOW) || above_limit(net, HW_LIMIT_VOLUME_HIGH),
                   HW_GAUGE_NOTE_VOLUME_UNLIKELY);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    out[GAUGE_NET] = net_of(in);
    *notes |= notes_of(in, out[GAUGE_NET]);
}

static void work(const double in[], struct hw_steps *steps)
{
    if (is_bicarbonate(in)) {
        hw_step(steps, "net", net_of(in), "L", "iupac-weights", "%.10g / %.10g / %.10g",
                in[GAUGE_ADDED], HW_MOLAR_SODIUM_BICARBONATE, in[GAUGE_RISE_ALKALINITY]);
    } else {
        hw_step(steps, "net", net_of(in), "L", "", "%.10g/%.10g", in[GAUGE_ADDED], in[GAUGE_RISE]);
    }
}

/* clang-format off */
const struct hw_calc hw_calc_gauge = {
    .name = "gauge",
    .purpose = "how much water a tank holds, from a known addition and its measured rise",
    .inputs = inputs, .n_inputs = GAUGE_INPUTS, .results = results, .n_results = GAUGE_RESULTS,
    .notes = hw_gauge_notes, .n_notes = HW_GAUGE_NOTES, .sources = sources, .answer = answer,
    .work = work,
};
/* clang-format on */
