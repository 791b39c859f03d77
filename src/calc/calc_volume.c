/* calc_volume.c - how much water a tank holds, from its measures. */
#include "calc/list.h"
#include "calc/shared.h"
#include "calc/steps.h"
#include "holdwater/volume.h"
#include "tables.h"

#include <math.h>

enum { SHAPE, MEASURED, WALL, LENGTH, WIDTH, DIAMETER, DEPTH, DISPLACED, EXTRA, INPUTS };
enum { NET, GROSS, RESULTS };

static const char *const shape_words[] = {"box", "cylinder", NULL};
static const char *const measured_words[] = {"inside", "outside", NULL};
enum { BOX, CYLINDER };
enum { INSIDE, OUTSIDE };
enum { IF_BOX = 1u << BOX, IF_CYLINDER = 1u << CYLINDER, IF_OUTSIDE = 1u << OUTSIDE };

static const struct hw_input inputs[INPUTS] = {
    [SHAPE] = {.name = "shape",
               .unit = "",
               .kind = HW_CHOICE,
               .lo = 0,
               .hi = 1,
               .words = shape_words,
               .help = "box, or upright cylinder (of a bucket: measured half way up the water)",
               .need = HW_PRESET,
               .preset = BOX,
               .when_input = -1},
    [MEASURED] = {.name = "measured",
                  .unit = "",
                  .kind = HW_CHOICE,
                  .lo = 0,
                  .hi = 1,
                  .words = measured_words,
                  .help = "where length, width or diameter were taken: between the walls or over "
                          "them",
                  .need = HW_REQUIRED,
                  .when_input = -1},
    [WALL] = {.name = "wall",
              .unit = "cm",
              .kind = HW_LENGTH,
              .unit_must = true,
              .lo = HW_VOLUME_WALL_MIN,
              .hi = HW_VOLUME_WALL_MAX,
              .help = "thickness of one wall; no tank has a thinner or a thicker one",
              .need = HW_REQUIRED,
              .when_input = MEASURED,
              .when_words = IF_OUTSIDE},
    [LENGTH] = {.name = "length",
                .unit = "cm",
                .kind = HW_LENGTH,
                .unit_must = true,
                .lo = HW_VOLUME_SIDE_MIN,
                .hi = HW_VOLUME_SIDE_MAX,
                .help = "length of the box; over 10 m look at the unit",
                .need = HW_REQUIRED,
                .when_input = SHAPE,
                .when_words = IF_BOX},
    [WIDTH] = {.name = "width",
               .unit = "cm",
               .kind = HW_LENGTH,
               .unit_must = true,
               .lo = HW_VOLUME_SIDE_MIN,
               .hi = HW_VOLUME_SIDE_MAX,
               .help = "width of the box, front to back; over 10 m look at the unit",
               .need = HW_REQUIRED,
               .when_input = SHAPE,
               .when_words = IF_BOX},
    [DIAMETER] = {.name = "diameter",
                  .unit = "cm",
                  .kind = HW_LENGTH,
                  .unit_must = true,
                  .lo = HW_VOLUME_SIDE_MIN,
                  .hi = HW_VOLUME_SIDE_MAX,
                  .help = "diameter of the cylinder; over 10 m look at the unit",
                  .need = HW_REQUIRED,
                  .when_input = SHAPE,
                  .when_words = IF_CYLINDER},
    [DEPTH] = {.name = "depth",
               .unit = "cm",
               .kind = HW_LENGTH,
               .unit_must = true,
               .lo = HW_VOLUME_SIDE_MIN,
               .hi = HW_VOLUME_SIDE_MAX,
               .help = "depth of the water, inside, not the height of the tank; over 10 m look at "
                       "the unit",
               .need = HW_REQUIRED,
               .when_input = -1},
    [DISPLACED] = {.name = "displaced",
                   .unit = "L",
                   .kind = HW_VOLUME,
                   .unit_must = true,
                   .lo = HW_VOLUME_PART_MIN,
                   .hi = HW_VOLUME_PART_MAX,
                   .help = "what rock, sand and gear take of it; no box above holds more",
                   .need = HW_PRESET,
                   .preset = 0,
                   .when_input = -1},
    [EXTRA] = {.name = "extra",
               .unit = "L",
               .kind = HW_VOLUME,
               .unit_must = true,
               .lo = HW_VOLUME_PART_MIN,
               .hi = HW_VOLUME_PART_MAX,
               .help = "water beside the tank that runs through it: sump, canister filter, pipes; "
                       "no more than the largest box",
               .need = HW_PRESET,
               .preset = 0,
               .when_input = -1},
};

/* Too large a volume makes every dose too strong: rounded down. */
static const struct hw_result results[RESULTS] = {
    [NET] = {.name = "net",
             .unit = "L",
             .kind = HW_VOLUME,
             .digits = 4,
             .safe = -1,
             .help = "the water to dose for"},
    [GROSS] = {.name = "gross",
               .unit = "L",
               .kind = HW_VOLUME,
               .digits = 4,
               .safe = -1,
               .help = "the tank alone to this depth, with nothing in it"},
};

static const char *const sources[] = {"our-arithmetic", NULL};

/* A measure between the walls; NaN when they leave nothing. */
static double between_walls(const double in[], int measure)
{
    if ((int)in[MEASURED] == INSIDE) {
        return in[measure];
    }
    double inside = NAN;
    hw_volume_inside(in[measure], in[WALL], &inside);
    return inside;
}

/* A measure that is NaN makes the answer so. */
static double gross_of(const double in[])
{
    double gross = NAN;
    if ((int)in[SHAPE] == BOX) {
        hw_volume_box(between_walls(in, LENGTH), between_walls(in, WIDTH), in[DEPTH], &gross);
    } else {
        hw_volume_cylinder(between_walls(in, DIAMETER), in[DEPTH], &gross);
    }
    return gross;
}

static double net_of(const double in[], double gross)
{
    double net = NAN;
    hw_volume_net(gross, in[DISPLACED], in[EXTRA], &net);
    return net;
}

static uint64_t notes_of(const double in[], double gross, double net)
{
    return note_bit(HW_VOLUME_NOTE_FILL_DEPTH) | note_bit(HW_VOLUME_NOTE_DISPLACEMENT) |
           note_bit(HW_VOLUME_NOTE_NOMINAL_VOLUME) | note_bit(HW_VOLUME_NOTE_ASK_VET) |
           note_if(isnan(gross), HW_VOLUME_NOTE_WALLS_LEAVE_NOTHING) |
           note_if(!isnan(gross) && isnan(net), HW_VOLUME_NOTE_NOTHING_LEFT) |
           note_if((int)in[MEASURED] == OUTSIDE, HW_VOLUME_NOTE_OUTSIDE_MEASURED) |
           note_if(net < hw_limits[HW_LIMIT_VOLUME_LOW].value ||
                       net > hw_limits[HW_LIMIT_VOLUME_HIGH].value,
                   HW_VOLUME_NOTE_VOLUME_UNLIKELY);
}

static void answer(const double in[], double out[], uint64_t *notes)
{
    out[GROSS] = gross_of(in);
    out[NET] = net_of(in, out[GROSS]);
    *notes |= notes_of(in, out[GROSS], out[NET]);
}

static double step_inside(const double in[], int measure, const char *symbol,
                          struct hw_steps *steps)
{
    double inside = between_walls(in, measure);
    if ((int)in[MEASURED] == OUTSIDE) {
        hw_step(steps, symbol, inside, "cm", "", "%.10g - 2*%.10g", in[measure], in[WALL]);
    }
    return inside;
}

static void work(const double in[], struct hw_steps *steps)
{
    double gross = gross_of(in);
    if ((int)in[SHAPE] == BOX) {
        double length = step_inside(in, LENGTH, "inside_length", steps);
        double width = step_inside(in, WIDTH, "inside_width", steps);
        hw_step(steps, "gross", gross, "L", "", "%.10g*%.10g*%.10g/1000", length, width, in[DEPTH]);
    } else {
        double diameter = step_inside(in, DIAMETER, "inside_diameter", steps);
        hw_step(steps, "gross", gross, "L", "", "3.14159265359/4*%.10g^2*%.10g/1000", diameter,
                in[DEPTH]);
    }
    hw_step(steps, "net", net_of(in, gross), "L", "", "%.10g - %.10g + %.10g", gross, in[DISPLACED],
            in[EXTRA]);
}

const struct hw_calc hw_calc_volume = {
    .name = "volume",
    .purpose = "how much water a tank holds, from its measures",
    .inputs = inputs,
    .n_inputs = INPUTS,
    .results = results,
    .n_results = RESULTS,
    .notes = hw_volume_notes,
    .n_notes = HW_VOLUME_NOTES,
    .sources = sources,
    .answer = answer,
    .work = work,
};
