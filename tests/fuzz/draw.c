/* draw.c - bytes of a fuzzer made into questions. */
#include "draw.h"

#include <math.h>
#include <string.h>

unsigned draw_byte(struct draw *draw)
{
    if (draw->n == 0) {
        return 0;
    }
    draw->n--;
    return *draw->at++;
}

const struct hw_calc *draw_calc(struct draw *draw)
{
    size_t calculations = 0;
    while (hw_calcs[calculations]) {
        calculations++;
    }
    return hw_calcs[draw_byte(draw) % calculations];
}

/* From 0 to 1, both among them. */
static double share(struct draw *draw)
{
    unsigned high = draw_byte(draw);
    return (double)(high * 256 + draw_byte(draw)) / 65535.0;
}

/* The least number above zero that is in range. */
static double least_of(const struct hw_input *input)
{
    double least = input->kind == HW_COUNT ? 1 : HW_VALUE_LEAST;
    return input->lo > least ? input->lo : least;
}

static double eight_bytes(struct draw *draw)
{
    double x = 0;
    unsigned char bytes[sizeof x];
    for (size_t i = 0; i < sizeof x; i++) {
        bytes[i] = (unsigned char)draw_byte(draw);
    }
    memcpy(&x, bytes, sizeof x);
    return x;
}

/* As large between the least and the highest as the share says, by its powers of ten. */
static double by_powers(const struct hw_input *input, double where)
{
    double least = least_of(input);
    return input->hi > least ? least * pow(input->hi / least, where) : input->hi;
}

static double draw_number(struct draw *draw, const struct hw_input *input)
{
    double x = 0;
    switch (draw_byte(draw) % 8) {
    case 0:
        x = input->lo;
        break;
    case 1:
        x = input->hi;
        break;
    case 2:
        x = least_of(input);
        break;
    case 3:
        x = input->need == HW_PRESET ? input->preset : input->lo;
        break;
    case 4:
        x = by_powers(input, share(draw));
        break;
    case 5:
        x = eight_bytes(draw);
        break;
    default:
        x = input->lo + (input->hi - input->lo) * share(draw);
    }
    x = input->kind == HW_COUNT ? floor(x) : hw_value_off_zero(x);
    return x >= input->lo && x <= input->hi ? x : input->hi;
}

/* A word's number; of a set bits, the first, "none", alone. */
static double draw_words(struct draw *draw, const struct hw_input *input)
{
    unsigned words = (unsigned)hw_words_count(input->words);
    if (input->kind != HW_SET) {
        return draw_byte(draw) % words;
    }
    unsigned bits = (draw_byte(draw) * 256 + draw_byte(draw)) % (1u << words);
    return bits > 1 ? bits & ~1u : 1;
}

double draw_value(struct draw *draw, const struct hw_input *input)
{
    return input->words ? draw_words(draw, input) : draw_number(draw, input);
}

/* Leaves one input of a group, of those that have a value. */
static void thin_group(struct draw *draw, const struct hw_calc *calc, int group, double in[])
{
    unsigned there = 0;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        there += calc->inputs[i].group == group && !isnan(in[i]) ? 1 : 0;
    }
    unsigned kept = there > 1 ? draw_byte(draw) % there : 0;
    for (size_t i = 0; i < calc->n_inputs; i++) {
        if (calc->inputs[i].group == group && !isnan(in[i])) {
            in[i] = kept-- == 0 ? in[i] : NAN;
        }
    }
}

/* Conditions once more, where one that they hang on fell out of its group. */
static void settle_conditions(struct draw *draw, const struct hw_calc *calc, double in[])
{
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        bool wanted = hw_input_wanted(calc, i, in);
        if (!wanted) {
            in[i] = NAN;
        } else if (isnan(in[i]) && input->need != HW_OPTIONAL && input->group == 0) {
            in[i] = draw_value(draw, input);
        }
    }
}

void draw_question(struct draw *draw, const struct hw_calc *calc, double in[HW_INPUTS])
{
    int groups = 0;
    for (size_t i = 0; i < HW_INPUTS; i++) {
        in[i] = NAN;
    }
    for (size_t i = 0; i < calc->n_inputs; i++) {
        const struct hw_input *input = &calc->inputs[i];
        groups = input->group > groups ? input->group : groups;
        bool left_out = input->need == HW_OPTIONAL && draw_byte(draw) % 3 == 0;
        if (hw_input_wanted(calc, i, in) && !left_out) {
            in[i] = draw_value(draw, input);
        }
    }
    for (int group = 1; group <= groups; group++) {
        thin_group(draw, calc, group, in);
    }
    settle_conditions(draw, calc, in);
}
