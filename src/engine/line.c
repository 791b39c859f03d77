/* line.c - points of a calculation along one of its inputs. */
#include "engine/line.h"

#include <math.h>

void hw_line_lay(const struct hw_question *question, size_t result, struct hw_line *line)
{
    line->moving = question->solved;
    line->input = &question->calc->inputs[question->solved];
    line->result = result;
    hw_batch_fill(&line->batch, question, HW_BLOCK);
    for (size_t k = 0; k < question->calc->n_results; k++) {
        line->batch.unwanted[k] = k != result;
    }
}

void hw_line_look(struct hw_line *line, const double x[], size_t n, struct hw_point point[])
{
    for (size_t row = 0; row < n; row++) {
        line->batch.in[line->moving][row] = x[row];
    }
    hw_batch_run(&line->batch, n);
    for (size_t row = 0; row < n; row++) {
        point[row] =
            (struct hw_point){x[row], line->batch.out[line->result][row], line->batch.notes[row]};
    }
}

bool hw_point_answered(const struct hw_point *point)
{
    return isfinite(point->y);
}

size_t hw_line_between(const struct hw_line *line, double a, double b, double x[HW_LINE_PARTS - 1])
{
    bool whole = line->input->kind == HW_COUNT;
    double last = a;
    size_t n = 0;
    for (int k = 1; k < HW_LINE_PARTS; k++) {
        double next = a + (b - a) * (k / (double)HW_LINE_PARTS);
        next = whole ? floor(next) : hw_value_off_zero(next);
        bool inside = a < b ? next > last && next < b : next < last && next > b;
        if (inside) {
            x[n++] = last = next;
        }
    }
    return n;
}

enum { STEPS = 4096 };

void hw_line_start(const struct hw_line *line, struct hw_line_walk *walk)
{
    double lo = line->input->lo;
    double hi = line->input->hi;
    double first = lo > 0 ? lo : hi * 1e-9;
    bool decades = lo >= 0 && hi > 100 * first;
    *walk = (struct hw_line_walk){.lo = lo,
                                  .hi = hi,
                                  .whole = line->input->kind == HW_COUNT,
                                  .evens = decades ? STEPS / 2 : STEPS,
                                  .factor = hi / first,
                                  .next = decades ? first : hi};
    /* The root of order STEPS / 2, by square roots alone: the same bits on every machine. */
    for (int order = 1; order < STEPS / 2; order *= 2) {
        walk->factor = sqrt(walk->factor);
    }
}

bool hw_line_next(struct hw_line_walk *walk, double *x)
{
    while (walk->even <= walk->evens) {
        bool end = walk->even == walk->evens;
        double even =
            end ? walk->hi
                : walk->lo + (walk->hi - walk->lo) * ((double)walk->even / (double)walk->evens);
        bool by_factor = walk->next < even;
        double next = by_factor ? walk->next : even;
        if (by_factor) {
            walk->next *= walk->factor;
        } else {
            walk->even++;
        }
        next = walk->whole ? floor(next + 0.5) : hw_value_off_zero(next);
        /* what lies next to the last one, or to the end, shows nothing new */
        double room = end && !by_factor ? 0 : 1e-6 * fabs(next);
        bool onto_end = by_factor && walk->hi - next <= room;
        if (!walk->started || (next - walk->last > room && !onto_end)) {
            walk->started = true;
            *x = walk->last = next;
            return true;
        }
    }
    return false;
}
