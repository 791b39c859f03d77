/* solve.c - a question asked backwards: looks for the value, rounds it, or says why there is
 * none. */
#include "cli/solve.h"

#include "cli/notes.h"
#include "cli/print.h"
#include "cli/reply.h"
#include "cli/stream.h"
#include "cli/wording.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { TEXT_DIGITS = 4, CELL_DIGITS = 6, MOST_DIGITS = 17 };

static const double slack = 1e-9; /* of the target: rounding of a number, not of an amount */
static const double close = 5e-3; /* of the target: what the printed value may miss it by */

/* --- Rounding --------------------------------------------------------------------------------- */

/* A solution to be rounded in a unit, to so many digits or more. */
struct rounding {
    const struct args *args;
    const struct hw_question *question;
    const struct hw_unit *kept, *shown; /* both NULL when there is none */
    double root, reach;                 /* of the result: how far it may be from the target */
};

/* The point at a value, as it is written; x is NaN when it is no value of the input. */
static struct hw_point written_point(const struct rounding *r, const char *text)
{
    const struct hw_input *input = &r->question->calc->inputs[r->question->solved];
    struct hw_question question = *r->question;
    struct hw_answer answer;
    double x = strtod(text, NULL);
    x = r->shown ? hw_unit_convert(x, r->shown, r->kept) : x;
    if (!(x >= input->lo && x <= input->hi)) {
        return (struct hw_point){x, (double)NAN, 0};
    }
    question.in[question.solved] = x;
    hw_question_answer(&question, &answer);
    return (struct hw_point){x, answer.out[r->args->wanted], answer.notes};
}

/* True when the result stays on its safe side there, and near the target. */
static bool serves(const struct rounding *r, const struct hw_point *p)
{
    double off = p->y - r->args->wanted_value;
    int safe = hw_solved_side(&r->question->calc->results[r->args->wanted]);
    return hw_point_answered(p) && safe * off >= -slack * fabs(r->args->wanted_value) &&
           fabs(off) <= r->reach;
}

/* True when `up` is better than `down`. Where the result has no safe side and just one of the two
 * has the cautions of the solution itself, it is that one: rounding is to bring none that the
 * solution does not have. */
static bool up_is_better(const struct rounding *r, const struct hw_point *down,
                         const struct hw_point *up)
{
    const struct hw_calc *calc = r->question->calc;
    struct hw_question question = *r->question;
    struct hw_answer exact;
    question.in[question.solved] = r->root;
    hw_question_answer(&question, &exact);
    bool down_as = down->notes == exact.notes;
    bool up_as = up->notes == exact.notes;
    if (hw_solved_side(&calc->results[r->args->wanted]) == 0 && down_as != up_as) {
        return up_as;
    }
    return hw_point_better(calc, r->args->wanted, r->args->wanted_value,
                           slack * fabs(r->args->wanted_value), up, down);
}

/* Writes a value rounded down (side -1) or up (1) as the format prints numbers: in text no digit
 * before the point is lost. */
static void write_side(const struct rounding *r, double value, int digits, int side,
                       char text[NUMBER_MAX])
{
    if (r->args->format == FORMAT_TEXT) {
        number_text(text, value, digits, side);
    } else {
        number_significant(text, value, digits, side);
        number_digits(text, strtod(text, NULL), digits);
    }
}

/* Writes the solution with as few digits as serve: rounded down or up, whichever is better for the
 * result. Returns the value that was written. */
static double round_solution(const struct rounding *r, int digits, char text[NUMBER_MAX])
{
    char number[2][NUMBER_MAX];
    double shown = r->shown ? hw_unit_convert(r->root, r->kept, r->shown) : r->root;
    for (; digits <= MOST_DIGITS; digits++) {
        write_side(r, shown, digits, -1, number[0]);
        write_side(r, shown, digits, 1, number[1]);
        struct hw_point down = written_point(r, number[0]);
        struct hw_point up = written_point(r, number[1]);
        bool better = !serves(r, &down) || (serves(r, &up) && up_is_better(r, &down, &up));
        const struct hw_point *best = better ? &up : &down;
        if (serves(r, best)) {
            (void)snprintf(text, NUMBER_MAX, "%s", number[better ? 1 : 0]);
            return best->x;
        }
    }
    number_exact(text, shown);
    return r->root;
}

/* Puts the solution into the question: in full for json, else as it is printed. */
static void put_solution(const struct args *args, const struct hw_solution *solution,
                         struct hw_question *question, struct solved *solved)
{
    const struct hw_input *input = &question->calc->inputs[question->solved];
    bool json = args->format == FORMAT_JSON || args->format == FORMAT_JSONL;
    bool text = args->format == FORMAT_TEXT;
    bool whole = input->kind == HW_COUNT;
    double run = solution->most.y - solution->least.y;
    double reach = args->wanted_value != 0 ? close * fabs(args->wanted_value) : 1e-3 * run;
    struct rounding r = {.args = args,
                         .question = question,
                         .kept = hw_unit_of(input->kind, input->unit),
                         .root = solution->root[0].from,
                         .reach = text && !args->digits ? reach : (double)INFINITY};
    int digits = args->digits ? args->digits : text ? TEXT_DIGITS : CELL_DIGITS;
    char number[NUMBER_MAX];
    double value = r.root;
    solved->solution = solution;
    solved->own[0] = '\0';
    number_exact(number, value);
    if (!json && !whole) {
        value = round_solution(&r, digits, number);
    }
    (void)snprintf(solved->value, AMOUNT_MAX, "%s%s%s", number, input->unit[0] == '\0' ? "" : " ",
                   input->unit);
    r.shown = own_unit(args->wanted_unit, question, input->kind);
    if (r.shown && r.shown != r.kept) {
        (void)round_solution(&r, digits, number);
        (void)snprintf(solved->own, AMOUNT_MAX, "%s %s", number, r.shown->name);
    }
    question->in[question->solved] = value;
}

/* --- No solution ------------------------------------------------------------------------------ */

/* What runs from and to and never is the target, with as many digits as tell them apart. */
static void message_unreached(const struct args *args, const struct hw_input *input,
                              const struct hw_solution *solution)
{
    const struct hw_result *result = &args->calc->results[args->wanted];
    char lo[AMOUNT_MAX];
    char hi[AMOUNT_MAX];
    char least[AMOUNT_MAX];
    char most[AMOUNT_MAX];
    char target[AMOUNT_MAX];
    char wanted[TARGET_MAX];
    double y[] = {solution->least.y, solution->most.y};
    bool between = y[0] < args->wanted_value && args->wanted_value < y[1];
    int digits = 6;
    do {
        amount_text(y[0], digits, result->unit, least);
        amount_text(y[1], digits, result->unit, most);
        amount_text(args->wanted_value, digits, result->unit, target);
        digits++;
    } while (digits <= MOST_DIGITS && (strcmp(least, target) == 0 || strcmp(most, target) == 0));
    amount_text(y[0], digits - 1, "", least);
    target_text(result, args->wanted_value, args->wanted_unit, digits - 1, wanted);
    amount_text(input->lo, 12, "", lo);
    amount_text(input->hi, 12, input->unit, hi);
    complain("no solution for %s between %s and %s: %s runs from %s to %s%s%s%s", input->name, lo,
             hi, result->name, least, most, between ? ", and passes " : ", never ", wanted,
             between ? " only where there is no answer" : "");
}

static void message_jump(const struct args *args, const struct hw_input *input,
                         const struct hw_solution *solution)
{
    const struct hw_result *result = &args->calc->results[args->wanted];
    char target[TARGET_MAX];
    char at[AMOUNT_MAX];
    char from[AMOUNT_MAX];
    char to[AMOUNT_MAX];
    target_text(result, args->wanted_value, args->wanted_unit, 6, target);
    amount_text(solution->jump_to.x, 6, input->unit, at);
    amount_text(solution->jump_from.y, 6, "", from);
    amount_text(solution->jump_to.y, 6, result->unit, to);
    complain("no solution for %s: %s leaps over %s at %s %s, from %s to %s", input->name,
             result->name, target, input->name, at, from, to);
}

static void message_flat(const struct args *args, const struct hw_input *input,
                         const struct hw_solution *solution)
{
    const struct hw_result *result = &args->calc->results[args->wanted];
    char value[AMOUNT_MAX];
    amount_text(solution->least.y, 6, result->unit, value);
    complain("flat: %s is %s whatever %s is", result->name, value, input->name);
}

/* Where there is no answer, and why. */
static void message_gap(const struct args *args, const struct hw_input *input,
                        const struct hw_gap *gap)
{
    char place[PLACE_MAX];
    place_text(input, gap->from, gap->to, place);
    if (gap->notes == 0) {
        complain("%s does not apply for %s %s", args->calc->results[args->wanted].name, input->name,
                 place);
    }
    for (size_t bit = 0; notes_next(args->calc, gap->notes, &bit); bit++) {
        const struct hw_note *note = hw_note_at(args->calc, bit);
        complain("no answer for %s %s: %s: %s", input->name, place, note->code, note->text);
    }
}

static int message_no_solution(const struct args *args, const struct hw_input *input,
                               const struct hw_solution *solution)
{
    int status = EXIT_UNANSWERED;
    switch (solution->end) {
    case HW_END_JUMPED:
        message_jump(args, input, solution);
        break;
    case HW_END_FLAT:
        message_flat(args, input, solution);
        break;
    case HW_END_ABSENT:
        complain("%s does not apply here, whatever %s is", args->calc->results[args->wanted].name,
                 input->name);
        break;
    default:
        message_unreached(args, input, solution);
        break;
    }
    for (size_t i = 0; i < solution->n_gaps; i++) {
        if (solution->end != HW_END_ABSENT || solution->gap[i].notes != 0) {
            message_gap(args, input, &solution->gap[i]);
        }
        status = solution->gap[i].status == -2 ? EXIT_WITHHELD : status;
    }
    return status;
}

/* --- Answers ---------------------------------------------------------------------------------- */

/* No answer whatever the input is: the ordinary reply says why, and shows no value for it. */
static int reply_barred(const struct args *args, struct hw_question *question,
                        const struct solved *solved)
{
    struct hw_answer answer;
    for (size_t i = 0; i < question->calc->n_results; i++) {
        answer.out[i] = (double)NAN;
    }
    answer.notes = solved->solution->notes;
    answer.status = hw_notes_status(question->calc, answer.notes);
    question->from[question->solved] = HW_ABSENT;
    return reply_with(args, question, &answer, solved);
}

/* What text and json show themselves. */
static void message_several(const struct hw_input *input, const struct solved *solved)
{
    const struct hw_solution *solution = solved->solution;
    char more[ALLOWED_MAX] = "";
    char value[AMOUNT_MAX];
    for (size_t i = 1; i < solution->n_roots; i++) {
        size_t used = strlen(more);
        amount_text(solution->root[i].from, 6, "", value);
        (void)snprintf(more + used, sizeof more - used, "%s%.30s", i == 1 ? "" : ", ", value);
    }
    complain("%s has %s%zu solutions: %s is the smallest, then %s", input->name,
             solution->more_roots ? "more than " : "", solution->n_roots, solved->value, more);
}

int solve_run(const struct args *args, struct hw_question *question)
{
    const struct hw_input *input = &question->calc->inputs[question->solved];
    struct hw_solution solution;
    struct hw_answer answer;
    struct solved solved = {.solution = &solution};
    hw_solve(question, args->wanted, args->wanted_value, &solution);
    if (solution.end == HW_END_BARRED) {
        return reply_barred(args, question, &solved);
    }
    if (solution.end != HW_END_FOUND) {
        return message_no_solution(args, input, &solution);
    }
    put_solution(args, &solution, question, &solved);
    hw_question_answer(question, &answer);
    int status = reply_with(args, question, &answer, &solved);
    bool told =
        args->format == FORMAT_TEXT || args->format == FORMAT_JSON || args->format == FORMAT_JSONL;
    if (solution.n_roots > 1 && !told) {
        message_several(input, &solved);
    }
    return status;
}
