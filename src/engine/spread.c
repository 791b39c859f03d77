/* spread.c - moves each uncertain input to both ends, and adds up what that does. */
#include "engine/spread.h"

#include <math.h>

/* Questions that differ from the settled one in some inputs. */
struct points {
    size_t n;
    struct hw_batch batch;
};

/* The two ends of one input. */
struct ends {
    size_t input;
    double half;
    bool outside
        [2]; /* the end lies outside the range, and the point stands on the range's end instead */
};

enum { UP, DOWN };

/* The points at both ends of every uncertain input; those of ends[i] are 2 i and 2 i + 1. */
static size_t place_ends(const struct hw_question *question, struct points *points,
                         struct ends ends[HW_INPUTS])
{
    size_t n = 0;
    for (size_t i = 0; i < question->calc->n_inputs; i++) {
        const struct hw_input *input = &question->calc->inputs[i];
        if (!(question->half[i] > 0)) {
            continue;
        }
        double up = hw_value_off_zero(question->in[i] + question->half[i]);
        double down = hw_value_off_zero(question->in[i] - question->half[i]);
        ends[n] = (struct ends){i, question->half[i], {up > input->hi, down < input->lo}};
        points->batch.in[i][points->n++] = ends[n].outside[UP] ? input->hi : up;
        points->batch.in[i][points->n++] = ends[n].outside[DOWN] ? input->lo : down;
        n++;
    }
    return n;
}

/* What one input does to one result: what it adds at most and takes away at most, and towards which
 * of its ends it adds; which side cannot be told because an end lies outside. */
struct effect {
    double gain, loss;
    int end; /* where the gain is */
    bool no_gain, no_loss;
};

/* An end outside the range is not evaluated, but on which side it would count can be seen: at the
 * end of the range, or, where the middle stands there itself, at the other end. */
static void leave_end(double seen, double opposite, struct effect *effect)
{
    double way = seen != 0 ? seen : -opposite;
    effect->no_gain = effect->no_gain || way > 0;
    effect->no_loss = effect->no_loss || way < 0;
}

/* What an end changes; rounding of the middle is no change. */
static double changed(double there, double middle)
{
    double change = there - middle;
    return fabs(change) > 1e-12 * fabs(middle) ? change : 0;
}

static struct effect effect_of(const struct ends *ends, double up, double down, double middle)
{
    struct effect effect = {0, 0, UP, false, false};
    double change[2] = {changed(up, middle), changed(down, middle)};
    for (int end = UP; end <= DOWN; end++) {
        if (ends->outside[end]) {
            leave_end(change[end], change[1 - end], &effect);
            continue;
        }
        if (change[end] > effect.gain) {
            effect.gain = change[end];
            effect.end = end;
        } else if (-change[end] > effect.loss) {
            effect.loss = -change[end];
            effect.end = effect.gain > 0 ? effect.end : 1 - end;
        }
    }
    return effect;
}

/* A question moved to where a result is about as high, or as low, as the spread says. */
static void place_extreme(const struct ends ends[], size_t n, const struct effect effects[],
                          bool high, struct points *points)
{
    double square = 0;
    for (size_t k = 0; k < n; k++) {
        double part = high ? effects[k].gain : effects[k].loss;
        square += part * part;
    }
    if (!(square > 0)) {
        return;
    }
    size_t point = points->n++;
    for (size_t k = 0; k < n; k++) {
        double part = (high ? effects[k].gain : effects[k].loss) / sqrt(square);
        bool upwards = (effects[k].end == UP) == high;
        double *in = &points->batch.in[ends[k].input][point];
        *in = hw_value_off_zero(*in + (upwards ? 1 : -1) * part * ends[k].half);
    }
}

/* sqrt(a^2 + b^2) without overflow; that of libm differs in the last bit from one to the next. */
static double root_of_squares(double a, double b)
{
    double large = fmax(fabs(a), fabs(b));
    double small = fmin(fabs(a), fabs(b));
    return large > 0 ? large * sqrt(1 + (small / large) * (small / large)) : 0;
}

/* Low, high and shares of one result. */
static void add_up(const struct ends ends[], size_t n, const struct effect effects[], double middle,
                   struct hw_spread *spread, size_t result)
{
    double gain = 0;
    double loss = 0;
    bool no_gain = false;
    bool no_loss = false;
    for (size_t k = 0; k < n; k++) {
        gain = root_of_squares(gain, effects[k].gain);
        loss = root_of_squares(loss, effects[k].loss);
        no_gain = no_gain || effects[k].no_gain;
        no_loss = no_loss || effects[k].no_loss;
    }
    spread->high[result] = no_gain ? (double)NAN : middle + gain;
    spread->low[result] = no_loss ? (double)NAN : middle - loss;
    double variance = gain * gain + loss * loss;
    if (no_gain || no_loss || !(variance > 0)) {
        return;
    }
    for (size_t k = 0; k < n; k++) {
        double part = effects[k].gain * effects[k].gain + effects[k].loss * effects[k].loss;
        spread->share[result][ends[k].input] = part / variance;
    }
}

static bool all_there(const struct points *points, size_t n, size_t result)
{
    for (size_t k = 0; k < 2 * n; k++) {
        if (isnan(points->batch.out[result][k])) {
            return false;
        }
    }
    return true;
}

/* A low or a high at which there would be no answer is not told. */
static void leave_unanswered(const struct points *extremes, const size_t at[2], size_t result,
                             struct hw_spread *spread)
{
    bool no_high = at[0] < extremes->n && isnan(extremes->batch.out[result][at[0]]);
    bool no_low = at[1] < extremes->n && isnan(extremes->batch.out[result][at[1]]);
    spread->high[result] = no_high ? (double)NAN : spread->high[result];
    spread->low[result] = no_low ? (double)NAN : spread->low[result];
}

static uint64_t notes_of(const struct points *points)
{
    uint64_t notes = 0;
    for (size_t k = 0; k < points->n; k++) {
        notes |= points->batch.notes[k];
    }
    return notes;
}

/* --- What is poured as it stands -------------------------------------------------------------- */

/* The amount of this answer, or n_results. */
static size_t amount_of(const struct hw_calc *calc, const struct hw_answer *answer)
{
    size_t i = 0;
    while (i < calc->n_results && !(calc->results[i].pour && !isnan(answer->out[i]))) {
        i++;
    }
    return i;
}

/* Moves the aim at each end to what the amount of the middle makes there: amounts are in proportion
 * to it. An end of the aim itself, and one without an amount, keeps it. */
static void aim_at_what_is_poured(const struct points *at_ends, const struct ends ends[],
                                  const struct hw_question *question, size_t aim, size_t amount,
                                  double poured, struct points *made)
{
    const struct hw_input *input = &question->calc->inputs[aim];
    struct hw_batch *batch = &made->batch;
    double wanted = question->in[aim];
    made->n = at_ends->n;
    for (size_t k = 0; k < made->n; k++) {
        batch->in[aim][k] *= 0.999;
    }
    hw_batch_run(batch, made->n);
    for (size_t k = 0; k < made->n; k++) {
        double there = at_ends->batch.out[amount][k];
        double slope = (there - batch->out[amount][k]) / (0.001 * wanted);
        double met = wanted + (poured - there) / slope;
        bool usable = ends[k / 2].input != aim && met >= input->lo && met <= input->hi;
        batch->in[aim][k] = usable ? met : at_ends->batch.in[aim][k];
    }
    hw_batch_run(batch, made->n);
}

/* The notes that what is poured, as it stands, raises at an end: another volume of water, or
 * another level in it, than was thought. */
static uint64_t notes_of_poured(const struct hw_question *question, const struct hw_answer *answer,
                                const struct points *at_ends, const struct ends ends[])
{
    struct points made;
    size_t aim = hw_question_aim(question);
    size_t amount = amount_of(question->calc, answer);
    if (aim == question->calc->n_inputs || amount == question->calc->n_results) {
        return 0;
    }
    made.batch = at_ends->batch;
    aim_at_what_is_poured(at_ends, ends, question, aim, amount, answer->out[amount], &made);
    return notes_of(&made);
}

static uint64_t standing_notes(const struct hw_calc *calc)
{
    uint64_t standing = 0;
    for (size_t i = 0; i < calc->n_notes; i++) {
        standing |= calc->notes[i].effect == HW_STANDING ? UINT64_C(1) << i : 0;
    }
    return standing;
}

static void leave_untold(struct hw_spread *spread)
{
    spread->possible = spread->outside = 0;
    for (size_t k = 0; k < HW_RESULTS; k++) {
        spread->low[k] = spread->high[k] = NAN;
        for (size_t i = 0; i < HW_INPUTS; i++) {
            spread->share[k][i] = NAN;
        }
    }
}

void hw_question_spread(const struct hw_question *question, const struct hw_answer *answer,
                        struct hw_spread *spread)
{
    struct points at_ends;
    struct points extremes;
    struct ends ends[HW_INPUTS] = {{0, 0, {false, false}}};
    struct effect effects[HW_INPUTS];
    size_t at[HW_RESULTS][2]; /* the points of a result's high and its low */
    const size_t nowhere = HW_BLOCK;
    leave_untold(spread);
    at_ends.n = extremes.n = 0;
    hw_batch_fill(&at_ends.batch, question, 2 * question->calc->n_inputs);
    hw_batch_fill(&extremes.batch, question, 2 * question->calc->n_results);
    size_t n = place_ends(question, &at_ends, ends);
    for (size_t i = 0; i < n; i++) {
        bool outside = ends[i].outside[UP] || ends[i].outside[DOWN];
        spread->outside |= outside ? UINT64_C(1) << ends[i].input : 0;
    }
    if (answer->status < 0) {
        return;
    }
    hw_batch_run(&at_ends.batch, at_ends.n);
    for (size_t result = 0; result < question->calc->n_results; result++) {
        double middle = answer->out[result];
        at[result][0] = at[result][1] = nowhere;
        if (isnan(middle) || !all_there(&at_ends, n, result)) {
            continue;
        }
        for (size_t i = 0; i < n; i++) {
            effects[i] = effect_of(&ends[i], at_ends.batch.out[result][2 * i],
                                   at_ends.batch.out[result][2 * i + 1], middle);
        }
        add_up(ends, n, effects, middle, spread, result);
        for (int side = 0; side < 2; side++) {
            size_t next = extremes.n;
            place_extreme(ends, n, effects, side == 0, &extremes);
            at[result][side] = extremes.n > next ? next : nowhere;
        }
    }
    hw_batch_run(&extremes.batch, extremes.n);
    for (size_t result = 0; result < question->calc->n_results; result++) {
        leave_unanswered(&extremes, at[result], result, spread);
    }
    uint64_t poured = notes_of_poured(question, answer, &at_ends, ends);
    uint64_t somewhere = answer->notes | notes_of(&at_ends) | notes_of(&extremes) | poured;
    spread->possible =
        hw_notes_told(question->calc, somewhere) & ~answer->notes & ~standing_notes(question->calc);
}
