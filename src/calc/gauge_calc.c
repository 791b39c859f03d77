/* gauge_calc.c - how much water a tank holds, from a known addition and the rise it made. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/volume.h"
#include "tables.h"

#include <math.h>

enum { GAUGE_ADDED, GAUGE_RISE, GAUGE_INPUTS };
enum { GAUGE_NET, GAUGE_RESULTS };

/* clang-format off */
static const struct hw_input inputs[GAUGE_INPUTS] = {
    [GAUGE_ADDED] = {.name = "added", .unit = "mg", .kind = HW_MASS, .lo = HW_VOLUME_ADDED_MIN,
     .hi = HW_VOLUME_ADDED_MAX, .help = "mass added, counted as the test counts it; outside 0.1 mg "
     "to a tonne look at the unit"},
    [GAUGE_RISE] = {.name = "rise", .unit = "mg/L", .kind = HW_CONCENTRATION,
     .lo = HW_VOLUME_RISE_MIN, .hi = HW_VOLUME_RISE_MAX, .help = "reading after less reading "
     "before, of the same substance; less no test shows, more is no tank"},
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
                                      NULL};

static double net_of(const double in[])
{
    double net = NAN;
    hw_volume_gauge(in[GAUGE_ADDED], in[GAUGE_RISE], &net);
    return net;
}

static uint64_t notes_of(double net)
{
    return note_if(below_limit(net, HW_LIMIT_VOLUME_LOW) || above_limit(net, HW_LIMIT_VOLUME_HIGH),
                   HW_GAUGE_NOTE_VOLUME_UNLIKELY);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    out[GAUGE_NET] = net_of(in);
    *notes |= notes_of(out[GAUGE_NET]);
}

static void work(const double in[], struct hw_steps *steps)
{
    hw_step(steps, "net", net_of(in), "L", "", "%.10g/%.10g", in[GAUGE_ADDED], in[GAUGE_RISE]);
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
