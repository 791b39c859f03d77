/* volume_calc.c - how much water a tank holds, from its measures. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/volume.h"
#include "tables.h"

#include <math.h>

/* clang-format off */
enum {
    VOLUME_SHAPE, VOLUME_MEASURED, VOLUME_WALL, VOLUME_BOTTOM, VOLUME_LENGTH, VOLUME_WIDTH,
    VOLUME_DIAMETER, VOLUME_DEPTH, VOLUME_HEIGHT, VOLUME_BELOW_RIM, VOLUME_DISPLACED, VOLUME_EXTRA,
    VOLUME_INPUTS
};
/* clang-format on */
enum { VOLUME_NET, VOLUME_GROSS, VOLUME_RESULTS };
enum { VOLUME_UPRIGHT = 1 }; /* the group of depth and height */

static const char *const shape_words[] = {"box", "cylinder", NULL};
static const char *const measured_words[] = {"inside", "outside", NULL};
enum { VOLUME_BOX, VOLUME_CYLINDER };
enum { VOLUME_INSIDE, VOLUME_OUTSIDE };
enum {
    VOLUME_IF_BOX = 1u << VOLUME_BOX,
    VOLUME_IF_CYLINDER = 1u << VOLUME_CYLINDER,
    VOLUME_IF_OUTSIDE = 1u << VOLUME_OUTSIDE
};

/* clang-format off */
static const struct hw_input inputs[VOLUME_INPUTS] = {
    [VOLUME_SHAPE] = {.name = "shape", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = shape_words, .need = HW_PRESET, .preset = VOLUME_BOX,
     .help = "shape of the tank (a bucket: upright cylinder)"},
    [VOLUME_MEASURED] = {.name = "measured", .unit = "", .kind = HW_CHOICE, .hi = 1,
     .words = measured_words, .help = "where sides and height were measured"},
    [VOLUME_WALL] = {.name = "wall", .unit = "cm", .kind = HW_LENGTH, .lo = HW_VOLUME_WALL_MIN,
     .hi = HW_VOLUME_WALL_MAX, .when_input = VOLUME_MEASURED, .when_words = VOLUME_IF_OUTSIDE,
     .beyond = "no tank has thinner or thicker walls", .help = "thickness of one wall"},
    [VOLUME_BOTTOM] = {.name = "bottom", .unit = "cm", .kind = HW_LENGTH,
     .lo = HW_VOLUME_BOTTOM_MIN, .hi = HW_VOLUME_BOTTOM_MAX, .need = HW_OPTIONAL,
     .when_input = VOLUME_MEASURED, .when_words = VOLUME_IF_OUTSIDE, .beyond = "check the unit",
     .help = "thickness of the bottom, if measured from under it"},
    [VOLUME_LENGTH] = {.name = "length", .unit = "cm", .kind = HW_LENGTH,
     .lo = HW_VOLUME_SIDE_MIN, .hi = HW_VOLUME_SIDE_MAX, .when_input = VOLUME_SHAPE,
     .when_words = VOLUME_IF_BOX, .beyond = "check the unit", .help = "length of the box"},
    [VOLUME_WIDTH] = {.name = "width", .unit = "cm", .kind = HW_LENGTH, .lo = HW_VOLUME_SIDE_MIN,
     .hi = HW_VOLUME_SIDE_MAX, .when_input = VOLUME_SHAPE, .when_words = VOLUME_IF_BOX,
     .beyond = "check the unit", .help = "width of the box, front to back"},
    [VOLUME_DIAMETER] = {.name = "diameter", .unit = "cm", .kind = HW_LENGTH,
     .lo = HW_VOLUME_SIDE_MIN, .hi = HW_VOLUME_SIDE_MAX, .when_input = VOLUME_SHAPE,
     .when_words = VOLUME_IF_CYLINDER, .beyond = "check the unit",
     .help = "diameter, of a bucket half way up the water"},
    [VOLUME_DEPTH] = {.name = "depth", .unit = "cm", .kind = HW_LENGTH, .lo = HW_VOLUME_SIDE_MIN,
     .hi = HW_VOLUME_SIDE_MAX, .group = VOLUME_UPRIGHT, .beyond = "check the unit",
     .help = "depth of the water inside, not the tank's height"},
    [VOLUME_HEIGHT] = {.name = "height", .unit = "cm", .kind = HW_LENGTH,
     .lo = HW_VOLUME_SIDE_MIN, .hi = HW_VOLUME_SIDE_MAX, .group = VOLUME_UPRIGHT,
     .beyond = "check the unit", .help = "height of the tank up to its rim, with below_rim"},
    [VOLUME_BELOW_RIM] = {.name = "below_rim", .unit = "cm", .kind = HW_LENGTH,
     .lo = HW_VOLUME_BELOW_RIM_MIN, .hi = HW_VOLUME_BELOW_RIM_MAX, .when_input = VOLUME_HEIGHT,
     .when_words = HW_WHEN_GIVEN, .beyond = "0cm is water up to the rim",
     .help = "from the rim down to the water line, with height"},
    [VOLUME_DISPLACED] = {.name = "displaced", .unit = "L", .kind = HW_VOLUME,
     .lo = HW_VOLUME_PART_MIN, .hi = HW_VOLUME_PART_MAX, .need = HW_PRESET,
     .beyond = "check the unit", .help = "what rock, sand and gear take of it"},
    [VOLUME_EXTRA] = {.name = "extra", .unit = "L", .kind = HW_VOLUME, .lo = HW_VOLUME_PART_MIN,
     .hi = HW_VOLUME_PART_MAX, .need = HW_PRESET, .beyond = "check the unit",
     .help = "water in sump, canister filter and pipes"},
};
/* clang-format on */

/* Too large a volume makes every dose too strong: rounded down. */
/* clang-format off */
static const struct hw_result results[VOLUME_RESULTS] = {
    [VOLUME_NET] = {.name = "net", .unit = "L", .kind = HW_VOLUME, .digits = 4, .safe = -1,
     .help = "the water to dose for"},
    [VOLUME_GROSS] = {.name = "gross", .unit = "L", .kind = HW_VOLUME, .digits = 4, .safe = -1,
     .help = "the tank alone to this depth, empty"},
};
/* clang-format on */

static const char *const sources[] = {"our-arithmetic", NULL};

/* A measure between the walls; NaN when they leave nothing. */
static double between_walls(const double in[], int measure)
{
    if ((int)in[VOLUME_MEASURED] == VOLUME_INSIDE) {
        return in[measure];
    }
    double inside = NAN;
    hw_volume_inside(in[measure], in[VOLUME_WALL], &inside);
    return inside;
}

static bool by_height(const double in[])
{
    return isnan(in[VOLUME_DEPTH]);
}

/* True when a height was taken from under a bottom that was not told. */
static bool bottom_as_wall(const double in[])
{
    return by_height(in) && (int)in[VOLUME_MEASURED] == VOLUME_OUTSIDE && isnan(in[VOLUME_BOTTOM]);
}

/* What to take off a height or depth for the bottom. */
static double bottom_of(const double in[])
{
    double told = isnan(in[VOLUME_BOTTOM]) ? 0 : in[VOLUME_BOTTOM];
    return bottom_as_wall(in) ? in[VOLUME_WALL] : told;
}

/* The depth of the water; NaN when nothing is left. */
static double depth_of(const double in[])
{
    double depth = NAN;
    hw_volume_depth(by_height(in) ? in[VOLUME_HEIGHT] : in[VOLUME_DEPTH],
                    by_height(in) ? in[VOLUME_BELOW_RIM] : 0, bottom_of(in), &depth);
    return depth;
}

/* A measure that is NaN makes the answer so. */
static double gross_of(const double in[])
{
    double gross = NAN;
    if ((int)in[VOLUME_SHAPE] == VOLUME_BOX) {
        hw_volume_box(between_walls(in, VOLUME_LENGTH), between_walls(in, VOLUME_WIDTH),
                      depth_of(in), &gross);
    } else {
        hw_volume_cylinder(between_walls(in, VOLUME_DIAMETER), depth_of(in), &gross);
    }
    return gross;
}

static double net_of(const double in[], double gross)
{
    double net = NAN;
    hw_volume_net(gross, in[VOLUME_DISPLACED], in[VOLUME_EXTRA], &net);
    return net;
}

/* The notes that leave no answer. */
static uint64_t refusals(const double in[], double gross, double net)
{
    double depth = depth_of(in);
    return note_if(isnan(depth), HW_VOLUME_NOTE_NO_DEPTH_LEFT) |
           note_if(!isnan(depth) && isnan(gross), HW_VOLUME_NOTE_WALLS_LEAVE_NOTHING) |
           note_if(!isnan(gross) && isnan(net), HW_VOLUME_NOTE_NOTHING_LEFT);
}

static uint64_t notes_of(const double in[], double gross, double net)
{
    return note_if(above_limit(in[VOLUME_WALL], HW_LIMIT_WALL_THICK), HW_VOLUME_NOTE_WALL_THICK) |
           note_if(above(in[VOLUME_EXTRA], gross), HW_VOLUME_NOTE_EXTRA_LARGE) |
           note_if((int)in[VOLUME_MEASURED] == VOLUME_OUTSIDE, HW_VOLUME_NOTE_OUTSIDE_MEASURED) |
           note_if(bottom_as_wall(in), HW_VOLUME_NOTE_BOTTOM_AS_WALL) |
           note_if(below_limit(net, HW_LIMIT_VOLUME_LOW) || above_limit(net, HW_LIMIT_VOLUME_HIGH),
                   HW_VOLUME_NOTE_VOLUME_UNLIKELY);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    out[VOLUME_GROSS] = gross_of(in);
    out[VOLUME_NET] = net_of(in, out[VOLUME_GROSS]);
    *notes |= refusals(in, out[VOLUME_GROSS], out[VOLUME_NET]);
    if (*notes == 0) {
        *notes |= notes_of(in, out[VOLUME_GROSS], out[VOLUME_NET]);
    }
}

static double step_inside(const double in[], int measure, const char *symbol,
                          struct hw_steps *steps)
{
    double inside = between_walls(in, measure);
    if ((int)in[VOLUME_MEASURED] == VOLUME_OUTSIDE) {
        hw_step(steps, symbol, inside, "cm", "", "%.10g - 2*%.10g", in[measure], in[VOLUME_WALL]);
    }
    return inside;
}

static double step_depth(const double in[], struct hw_steps *steps)
{
    double depth = depth_of(in);
    double bottom = bottom_of(in);
    if (by_height(in)) {
        hw_step(steps, "water_depth", depth, "cm", "", "%.10g - %.10g - %.10g", in[VOLUME_HEIGHT],
                in[VOLUME_BELOW_RIM], bottom);
    } else if (bottom > 0) {
        hw_step(steps, "water_depth", depth, "cm", "", "%.10g - %.10g", in[VOLUME_DEPTH], bottom);
    }
    return depth;
}

static void work(const double in[], struct hw_steps *steps)
{
    double gross = gross_of(in);
    double depth = step_depth(in, steps);
    if ((int)in[VOLUME_SHAPE] == VOLUME_BOX) {
        double length = step_inside(in, VOLUME_LENGTH, "inside_length", steps);
        double width = step_inside(in, VOLUME_WIDTH, "inside_width", steps);
        hw_step(steps, "gross", gross, "L", "", "%.10g*%.10g*%.10g/1000", length, width, depth);
    } else {
        double diameter = step_inside(in, VOLUME_DIAMETER, "inside_diameter", steps);
        hw_step(steps, "gross", gross, "L", "", "3.14159265359/4*%.10g^2*%.10g/1000", diameter,
                depth);
    }
    hw_step(steps, "net", net_of(in, gross), "L", "", "%.10g - %.10g + %.10g", gross,
            in[VOLUME_DISPLACED], in[VOLUME_EXTRA]);
}

/* clang-format off */
const struct hw_calc hw_calc_volume = {
    .name = "volume", .purpose = "how much water a tank holds, from its measures", .inputs = inputs,
    .n_inputs = VOLUME_INPUTS, .results = results, .n_results = VOLUME_RESULTS,
    .notes = hw_volume_notes, .n_notes = HW_VOLUME_NOTES, .sources = sources, .answer = answer,
    .work = work,
};
/* clang-format on */
