/* sweep_view.h - what the table, the chart and the picture of a sweep have in common. */
#ifndef HW_SWEEP_VIEW_H
#define HW_SWEEP_VIEW_H
#include "cli/args.h"
#include "cli/notes.h"
#include "cli/print.h"
#include "engine/points.h"

enum { MARKS_MAX = NOTES_MAX + 1, AXIS_TEXT = 64, CAPTION_MAX = 2000 };

/* A swept input as it is shown: in the unit that it was written in. */
struct sweep_axis {
    const struct hw_input *input;
    const struct hw_sweep *sweep;
    const char *unit; /* "" when there is none */
    int places;       /* decimals of every value; negative: as many as each needs */
};

/* A question with one or two axes, and what is known of all its points. */
struct sweep_view {
    const struct args *args;
    const struct hw_question *question;
    struct hw_points points;
    size_t total, refused, withheld; /* points; those without an answer; of these, for safety */
    struct sweep_axis axis[HW_AXES];
    uint64_t ever, always; /* notes of some point, of every point */
    uint64_t possible;     /* notes that an end of the uncertain inputs raises at some point */
    size_t
        maybe[NOTES_MAX]; /* points at which only an end of the uncertain inputs raises the note */
    bool applies[HW_RESULTS];                 /* told, and a number at some point */
    size_t result[HW_RESULTS], n_results;     /* those that apply, in the order that was asked */
    size_t answered[HW_RESULTS];              /* points at which it is a number */
    double low[HW_RESULTS], high[HW_RESULTS]; /* over all points, in the unit that is shown */
    char letter[NOTES_MAX]; /* of notes that are raised at some points and not at others; else 0 */
    size_t told
        [NOTES_MAX]; /* the notes of some point in the order in which they are told: those with */
    size_t n_told;   /* letters, those raised everywhere, standing ones; the gravest first */
};

/* Goes over all points once. */
void sweep_view(struct sweep_view *view, const struct args *args,
                const struct hw_question *question);

/* Answers the points first to first + n - 1; n is at most HW_BLOCK. */
void sweep_load(struct sweep_view *view, size_t first, size_t n);

/* Makes sure that point k is loaded: with it those that follow, when it was not. */
void sweep_reach(struct sweep_view *view, size_t k);

/* Of point k, one that is loaded: its notes, whether it has no answer, a result in the unit that is
 * shown. */
uint64_t sweep_notes(const struct sweep_view *view, size_t k);
bool sweep_is_refused(const struct sweep_view *view, size_t k);
double sweep_value(const struct sweep_view *view, size_t result, size_t k);

/* A value of a result in the unit that is shown. */
double sweep_shown(const struct sweep_view *view, size_t result, double value);

/* A number of a result in the unit that is shown, as people read it. */
void sweep_number_text(const struct sweep_view *view, size_t result, double value,
                       char text[NUMBER_MAX]);

/* A result at point k as it stands in a cell: its number, "-" where it does not apply, "x" without
 * an answer. */
void sweep_cell(const struct sweep_view *view, size_t result, size_t k, char text[NUMBER_MAX]);

/* The letters of a point's notes. */
void sweep_marks(const struct sweep_view *view, size_t k, char text[MARKS_MAX]);

/* The unit in which a result is shown: the keeper's own, or the result's; "" when it has none. */
const char *sweep_unit(const struct sweep_view *view, size_t result);

/* The number k of an axis, as it is shown. */
void sweep_axis_text(const struct sweep_axis *axis, size_t k, char text[AXIS_TEXT]);

/* "NAME, UNIT", or NAME alone. */
void sweep_label(const char *name, const char *unit, char text[AXIS_TEXT]);

/* The inputs that are not swept, in one line: those that were given or are the tank's; those that
 * are assumed. */
void sweep_given(const struct sweep_view *view, char text[CAPTION_MAX]);
void sweep_assumed(const struct sweep_view *view, char text[CAPTION_MAX]);

/* The notes that have letters. */
uint64_t sweep_lettered(const struct sweep_view *view);

/* Where a note holds, behind its code: " (at every point)" or "". */
const char *sweep_where(const struct sweep_view *view, size_t note);

/* The same for a note that is possible at some points: " (by +-, at 2 of 9 points)". */
void sweep_maybe(const struct sweep_view *view, size_t note, char text[AXIS_TEXT]);

/* Which axis runs across and which down. */
void sweep_ways(const struct sweep_view *view, char text[CAPTION_MAX]);

/* What is swept, from where to where. */
void sweep_heading(const struct sweep_view *view, char text[CAPTION_MAX]);

/* How many of n columns stand side by side when `most` can (1 or more): the fewest blocks, of like
 * width. */
size_t sweep_fold(size_t n, size_t most);
#endif
