/* sweep_view.c - what is known of all points of a sweep. */
#include "cli/sweep_view.h"

#include "cli/wording.h"
#include "engine/spread.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* --- Units ------------------------------------------------------------------------------------ */

/* The keeper's own unit for a result, or NULL. What is poured stays in mL. */
static const struct hw_unit *own_unit_of(const struct sweep_view *view, size_t result)
{
    const struct hw_result *this = &view->question->calc->results[result];
    bool poured = this->kind == HW_VOLUME && strcmp(this->unit, "mL") == 0;
    const struct hw_unit *own =
        poured ? NULL : own_unit(view->args->wanted_unit, view->question, this->kind);
    return own && hw_unit_of(this->kind, this->unit) ? own : NULL;
}

const char *sweep_unit(const struct sweep_view *view, size_t result)
{
    const struct hw_unit *own = own_unit_of(view, result);
    return own ? own->name : view->question->calc->results[result].unit;
}

double sweep_shown(const struct sweep_view *view, size_t result, double value)
{
    const struct hw_result *this = &view->question->calc->results[result];
    const struct hw_unit *own = own_unit_of(view, result);
    return own ? hw_unit_convert(value, hw_unit_of(this->kind, this->unit), own) : value;
}

void sweep_label(const char *name, const char *unit, char text[AXIS_TEXT])
{
    (void)snprintf(text, AXIS_TEXT, "%s%s%s", name, unit[0] == '\0' ? "" : ", ", unit);
}

/* --- Axes ------------------------------------------------------------------------------------- */

/* The decimals of a number as it would be typed; -1 when it is typed with an exponent. */
static int decimals_of(double number)
{
    char text[NUMBER_MAX];
    number_digits(text, number, 15);
    const char *point = strchr(text, '.');
    if (strchr(text, 'e')) {
        return -1;
    }
    return point ? (int)strlen(point + 1) : 0;
}

static void view_axis(struct sweep_view *view, size_t i)
{
    struct sweep_axis *axis = &view->axis[i];
    axis->input = &view->question->calc->inputs[view->question->axis[i].input];
    axis->sweep = &view->question->axis[i].sweep;
    axis->unit = axis->sweep->unit ? axis->sweep->unit->name : axis->input->unit;
    axis->places = 0;
    for (size_t k = 0; k < axis->sweep->n && axis->places >= 0; k++) {
        int places = decimals_of(hw_sweep_number(axis->sweep, k));
        axis->places = places < 0 || places > axis->places ? places : axis->places;
    }
}

void sweep_axis_text(const struct sweep_axis *axis, size_t k, char text[AXIS_TEXT])
{
    double number = hw_sweep_number(axis->sweep, k);
    if (axis->places < 0) {
        char exact[NUMBER_MAX];
        number_digits(exact, number, 15);
        (void)snprintf(text, AXIS_TEXT, "%.40s", exact);
    } else {
        (void)snprintf(text, AXIS_TEXT, "%.*f", axis->places, number);
    }
}

/* --- Points ----------------------------------------------------------------------------------- */

void sweep_load(struct sweep_view *view, size_t first, size_t n)
{
    hw_points_answer(&view->points, first, n);
}

void sweep_reach(struct sweep_view *view, size_t k)
{
    bool loaded = k >= view->points.first && k - view->points.first < view->points.held;
    if (!loaded) {
        sweep_load(view, k, view->total - k < HW_BLOCK ? view->total - k : HW_BLOCK);
    }
}

uint64_t sweep_notes(const struct sweep_view *view, size_t k)
{
    return view->points.batch.notes[k - view->points.first];
}

bool sweep_is_refused(const struct sweep_view *view, size_t k)
{
    return (sweep_notes(view, k) & hw_notes_grave(view->question->calc)) != 0;
}

double sweep_value(const struct sweep_view *view, size_t result, size_t k)
{
    return sweep_shown(view, result, view->points.batch.out[result][k - view->points.first]);
}

void sweep_number_text(const struct sweep_view *view, size_t result, double value,
                       char text[NUMBER_MAX])
{
    const struct hw_result *this = &view->question->calc->results[result];
    number_text(text, value, view->args->digits ? view->args->digits : this->digits, this->safe);
}

void sweep_cell(const struct sweep_view *view, size_t result, size_t k, char text[NUMBER_MAX])
{
    double value = sweep_value(view, result, k);
    if (isnan(value)) {
        (void)snprintf(text, NUMBER_MAX, "%s", sweep_is_refused(view, k) ? "x" : "-");
    } else {
        sweep_number_text(view, result, value, text);
    }
}

void sweep_marks(const struct sweep_view *view, size_t k, char text[MARKS_MAX])
{
    size_t n = 0;
    for (size_t i = 0; i < view->n_told; i++) {
        size_t note = view->told[i];
        if (notes_have(sweep_notes(view, k), note) && view->letter[note] != '\0') {
            text[n++] = view->letter[note];
        }
    }
    text[n] = '\0';
}

uint64_t sweep_lettered(const struct sweep_view *view)
{
    uint64_t notes = 0;
    for (size_t i = 0; i < view->n_told; i++) {
        size_t note = view->told[i];
        notes |= view->letter[note] != '\0' ? UINT64_C(1) << note : 0;
    }
    return notes;
}

const char *sweep_where(const struct sweep_view *view, size_t note)
{
    bool raised = hw_note_at(view->question->calc, note)->effect > HW_STANDING;
    return raised && view->letter[note] == '\0' && view->total > 1 ? " (at every point)" : "";
}

void sweep_maybe(const struct sweep_view *view, size_t note, char text[AXIS_TEXT])
{
    (void)snprintf(text, AXIS_TEXT, " (by +-, at %zu of %zu points)", view->maybe[note],
                   view->total);
}

size_t sweep_fold(size_t n, size_t most)
{
    size_t blocks = 1;
    while ((n + blocks - 1) / blocks > most) {
        blocks++;
    }
    return (n + blocks - 1) / blocks;
}

/* --- All of them ------------------------------------------------------------------------------ */

/* Counts the notes that the ends of uncertain inputs raise, and the middle does not. */
static void view_ends(struct sweep_view *view, size_t k)
{
    struct hw_question question;
    struct hw_answer answer;
    struct hw_spread spread;
    hw_points_take(&view->points, k, &question, &answer);
    hw_question_spread(&question, &answer, &spread);
    view->possible |= spread.possible;
    for (size_t bit = 0; notes_next(question.calc, spread.possible, &bit); bit++) {
        view->maybe[bit]++;
    }
}

static void view_point(struct sweep_view *view, size_t k)
{
    uint64_t notes = sweep_notes(view, k);
    view->ever |= notes;
    view->always &= notes;
    int status = hw_notes_status(view->question->calc, notes);
    view->refused += status < 0 ? 1 : 0;
    view->withheld += status == -2 ? 1 : 0;
    for (size_t i = 0; i < view->question->calc->n_results; i++) {
        double value = sweep_value(view, i, k);
        if (args_tell(view->args, i) && !isnan(value)) {
            view->low[i] = view->applies[i] ? fmin(view->low[i], value) : value;
            view->high[i] = view->applies[i] ? fmax(view->high[i], value) : value;
            view->applies[i] = true;
            view->answered[i]++;
        }
    }
}

/* What a mark can be: no digit, as it stands beside numbers. */
static const char letters[NOTES_MAX + 1] =
    "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ#$&*@!?~^=<>";

/* The notes of some point, the gravest first. */
static void tell_notes(struct sweep_view *view, uint64_t notes, bool lettered)
{
    size_t bits[NOTES_MAX];
    size_t n = notes_gravest_first(view->question->calc, notes, bits);
    for (size_t i = 0; i < n; i++) {
        view->letter[bits[i]] = lettered ? letters[view->n_told] : '\0';
        view->told[view->n_told++] = bits[i];
    }
}

/* Letters tell notes of some points from notes of all; a standing one needs none. */
static void tell_all_notes(struct sweep_view *view)
{
    uint64_t raised = notes_between(view->question->calc, HW_CAUTION, HW_WITHHELD);
    uint64_t parted = view->ever & ~view->always & raised;
    tell_notes(view, parted, true);
    tell_notes(view, view->ever & ~parted, false);
}

void sweep_view(struct sweep_view *view, const struct args *args,
                const struct hw_question *question)
{
    memset(view, 0, sizeof *view);
    view->args = args;
    view->question = question;
    view->always = UINT64_MAX;
    view->total = hw_points_count(question);
    hw_points_begin(&view->points, question);
    for (size_t i = 0; i < question->n_axes; i++) {
        view_axis(view, i);
    }
    for (size_t k = 0; k < view->total; k++) {
        sweep_reach(view, k);
        view_point(view, k);
        if (hw_question_uncertain(question)) {
            view_ends(view, k);
        }
    }
    for (size_t at = 0; at < question->calc->n_results; at++) {
        if (view->applies[args->order[at]]) {
            view->result[view->n_results++] = args->order[at];
        }
    }
    tell_all_notes(view);
}

/* --- Words ------------------------------------------------------------------------------------ */

static void add(char text[CAPTION_MAX], const char *more)
{
    size_t used = strlen(text);
    (void)snprintf(text + used, CAPTION_MAX - used, "%s", more);
}

static void add_input(const struct hw_question *question, size_t i, char text[CAPTION_MAX])
{
    const struct hw_input *input = &question->calc->inputs[i];
    const struct hw_unit *kept = hw_unit_of(input->kind, input->unit);
    const struct hw_unit *written = question->unit[i] && kept ? question->unit[i] : kept;
    char value[WORDS_MAX];
    if (input->words) {
        words_of(input, question->in[i], value, sizeof value);
    } else {
        char number[NUMBER_MAX];
        char half[NUMBER_MAX] = "";
        double x = question->in[i];
        double h = question->half[i];
        number_digits(number, written ? hw_unit_convert(x, kept, written) : x, 6);
        if (h > 0) {
            number_digits(half, written ? hw_unit_convert_step(h, kept, written) : h, 6);
        }
        (void)snprintf(value, sizeof value, "%.40s%s%.40s%s%s", number, h > 0 ? "+-" : "", half,
                       written ? " " : "", written ? written->name : "");
    }
    add(text, text[0] == '\0' ? "" : ", ");
    add(text, input->name);
    add(text, " ");
    add(text, value);
}

/* Those that came from there, behind what stands in text. */
static void add_inputs(const struct sweep_view *view, bool preset, char text[CAPTION_MAX])
{
    for (size_t i = 0; i < view->question->calc->n_inputs; i++) {
        enum hw_from from = view->question->from[i];
        if (from != HW_ABSENT && from != HW_SWEPT && (from == HW_FROM_PRESET) == preset) {
            add_input(view->question, i, text);
        }
    }
}

void sweep_given(const struct sweep_view *view, char text[CAPTION_MAX])
{
    text[0] = '\0';
    if (view->args->tank) {
        add(text, "tank ");
        add(text, view->args->tank);
    }
    add_inputs(view, false, text);
}

void sweep_assumed(const struct sweep_view *view, char text[CAPTION_MAX])
{
    text[0] = '\0';
    add_inputs(view, true, text);
}

void sweep_heading(const struct sweep_view *view, char text[CAPTION_MAX])
{
    text[0] = '\0';
    add(text, view->question->calc->name);
    for (size_t i = 0; i < view->question->n_axes; i++) {
        const struct sweep_axis *axis = &view->axis[i];
        char end[NUMBER_MAX];
        add(text, i == 0 ? ": " : ", ");
        add(text, axis->input->name);
        number_digits(end, hw_sweep_number(axis->sweep, 0), 15);
        add(text, " from ");
        add(text, end);
        number_digits(end, hw_sweep_number(axis->sweep, axis->sweep->n - 1), 15);
        add(text, " to ");
        add(text, end);
        add(text, axis->unit[0] == '\0' ? "" : " ");
        add(text, axis->unit);
        add(text, view->question->n_axes == 1 ? "" : i == 0 ? " across" : " down");
    }
}

void sweep_ways(const struct sweep_view *view, char text[CAPTION_MAX])
{
    char label[HW_AXES][AXIS_TEXT];
    for (size_t i = 0; i < HW_AXES; i++) {
        sweep_label(view->axis[i].input->name, view->axis[i].unit, label[i]);
    }
    (void)snprintf(text, CAPTION_MAX, "across: %s; down: %s", label[0], label[1]);
}
