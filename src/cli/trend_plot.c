/* trend_plot.c - a record as a picture. The window is told by a shade, by lines and in words. */
#include "cli/trend_plot.h"

#include "cli/notes.h"
#include "cli/plot_notes.h"
#include "cli/plot_page.h"
#include "cli/print.h"
#include "cli/text_part.h"
#include "cli/trend_text.h"

#include "holdwater/holdwater.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { HEIGHT = 220, TICKS = 8, STEPS_UP = 5, LINE_BYTES = 1000 };

struct canvas {
    const struct trend_answer *answer;
    struct plot *plot;
    struct plot_scale x, y;
    size_t first; /* of the readings used */
    double
        day0; /* what day of the axis the first reading lies at: days from midnight of its date */
};

static double place_x(const struct canvas *canvas, double days)
{
    return plot_scale_place(&canvas->x, days + canvas->day0);
}

static double place_y(const struct canvas *canvas, double value)
{
    return plot_scale_place(&canvas->y, value);
}

/* --- Scales ----------------------------------------------------------------------------------- */

static void widen(double value, double *low, double *high)
{
    if (!isnan(value)) {
        *low = fmin(*low, value);
        *high = fmax(*high, value);
    }
}

/* Readings, line, limit and window are all in the picture. */
static void fit_y(struct canvas *canvas)
{
    const struct trend_answer *answer = canvas->answer;
    double low = answer->values[answer->n - 1];
    double high = low;
    for (size_t i = canvas->first; i < answer->n; i++) {
        widen(answer->values[i], &low, &high);
    }
    for (size_t i = 0; i < TREND_LEVELS; i++) {
        widen(answer->level[i], &low, &high);
    }
    widen(answer->intercept, &low, &high);
    widen(answer->intercept + answer->out[TREND_SLOPE] * answer->days[answer->n - 1], &low, &high);
    plot_scale_fit(&canvas->y, low > 0 && low < 0.6 * high ? 0 : low, high, STEPS_UP, true);
}

/* To the day of the limit, where there is one. */
static void fit_x(struct canvas *canvas)
{
    const struct trend_answer *answer = canvas->answer;
    const double size = canvas->plot->page.tick.size;
    double last = answer->days[answer->n - 1];
    double ahead = answer->out[TREND_DAYS_TO_LIMIT];
    double end = last + (isnan(ahead) ? 0 : ahead);
    canvas->x.from = canvas->plot->left + plot_scale_width(&canvas->y, size) + 8;
    canvas->x.to = canvas->plot->right - size;
    for (size_t most = TICKS; most >= 2; most--) {
        plot_scale_fit(&canvas->x, canvas->day0, canvas->day0 + end, most, false);
        if ((plot_scale_width(&canvas->x, size) + 8) * (double)most <
            canvas->x.to - canvas->x.from) {
            break;
        }
    }
}

/* --- The picture ------------------------------------------------------------------------------ */

/* From floor to ceiling, or to the edge where one of them is not given. */
static void draw_window(const struct canvas *canvas)
{
    const struct trend_answer *answer = canvas->answer;
    double floor = answer->level[TREND_FLOOR];
    double ceiling = answer->level[TREND_CEILING];
    double below = isnan(floor) ? canvas->y.from : place_y(canvas, floor);
    double above = isnan(ceiling) ? canvas->y.to : place_y(canvas, ceiling);
    if (trend_has_window(answer->record->ask)) {
        plot_shade(
            canvas->plot,
            &(struct plot_box){canvas->x.from, above, canvas->x.to - canvas->x.from, below - above},
            0.35);
    }
}

/* A line across with its name: the limit's at the left, the others at the right, that of the floor
 * below it where there is room, and that of a limit at the top, so that no two meet. */
static void draw_level(const struct canvas *canvas, size_t level)
{
    const struct trend_answer *answer = canvas->answer;
    struct plot_look look = canvas->plot->page.tick;
    char value[TREND_LINE];
    char label[2 * TREND_LINE];
    if (isnan(answer->level[level])) {
        return;
    }
    bool limit = level == TREND_LIMIT;
    double y = place_y(canvas, answer->level[level]);
    bool at_top = limit && y - look.size < canvas->y.to;
    bool below = at_top || (level == TREND_FLOOR && y + 2 * look.size < canvas->y.from);
    look.anchor = limit ? PLOT_LEFT : PLOT_RIGHT;
    trend_value(answer, answer->level[level], value);
    (void)snprintf(label, sizeof label, "%s %s", trend_level_names[level], value);
    plot_line(canvas->plot, (double[2]){canvas->x.from, y}, (double[2]){canvas->x.to, y},
              limit ? PLOT_HEAVY : PLOT_DASHED);
    plot_text(canvas->plot, limit ? canvas->x.from + 4 : canvas->x.to - 3,
              below ? y + look.size : y - 4, &look, label);
}

static void draw_line(const struct canvas *canvas, enum plot_curve curve)
{
    const struct trend_answer *answer = canvas->answer;
    double last = answer->days[answer->n - 1];
    if (isnan(answer->intercept)) {
        return;
    }
    plot_curve_begin(canvas->plot, curve, place_x(canvas, 0), place_y(canvas, answer->intercept));
    plot_curve_to(canvas->plot, place_x(canvas, last),
                  place_y(canvas, answer->intercept + answer->out[TREND_SLOPE] * last));
    plot_curve_end(canvas->plot);
}

/* Beyond the last reading the line is dashed. */
static void draw_ahead(const struct canvas *canvas)
{
    const struct trend_answer *answer = canvas->answer;
    double last = answer->days[answer->n - 1];
    double days = answer->out[TREND_DAYS_TO_LIMIT];
    double limit = answer->level[TREND_LIMIT];
    if (!isnan(days)) {
        double end = answer->intercept + answer->out[TREND_SLOPE] * last;
        plot_line(canvas->plot, (double[2]){place_x(canvas, last), place_y(canvas, end)},
                  (double[2]){place_x(canvas, last + days), place_y(canvas, limit)}, PLOT_DASHED);
    }
}

static void draw_canvas(const struct canvas *canvas)
{
    const struct trend_answer *answer = canvas->answer;
    draw_window(canvas);
    plot_frame(canvas->plot, &canvas->x, &canvas->y);
    for (size_t i = 0; i < TREND_LEVELS; i++) {
        draw_level(canvas, i);
    }
    draw_line(canvas, PLOT_BED);
    draw_line(canvas, PLOT_BLACK);
    draw_ahead(canvas);
    for (size_t i = canvas->first; i < answer->n; i++) {
        plot_dot(canvas->plot, place_x(canvas, answer->days[i]),
                 place_y(canvas, answer->values[i]));
    }
}

/* Day 0 of the axis is the midnight before the first reading. */
static double from_midnight(const struct trend_answer *answer)
{
    long long wall = answer->origin + 60LL * answer->record->newest.offset;
    long long rest = ((wall % 86400) + 86400) % 86400;
    return (double)rest / 86400;
}

static void draw_panel(const struct trend_answer *answer, struct plot *plot)
{
    struct canvas canvas = {.answer = answer,
                            .plot = plot,
                            .first = answer->n - answer->used,
                            .day0 = from_midnight(answer)};
    struct plot_look axis_name = plot->page.tick;
    const double size = plot->page.tick.size;
    char date[WHEN_MAX];
    char label[2 * WHEN_MAX];
    axis_name.bold = true;
    fit_y(&canvas);
    fit_x(&canvas);
    canvas.y.to = plot->y + size;
    canvas.y.from = canvas.y.to + HEIGHT;
    draw_canvas(&canvas);
    plot->y = canvas.y.from + size * 3;
    trend_moment(answer, 0, true, date);
    (void)snprintf(label, sizeof label, "days; 0 is the start of %s", date);
    plot_text(plot, (canvas.x.from + canvas.x.to) / 2, plot->y, &axis_name, label);
    plot->y += size;
}

/* --- The document ----------------------------------------------------------------------------- */

static void draw_notes(const struct trend_answer *answer, struct plot *plot)
{
    const uint64_t raised = answer->notes & notes_between(&trend_caption, HW_CAUTION, HW_WITHHELD);
    char line[LINE_BYTES];
    for (size_t bit = 0; notes_next(&trend_caption, raised, &bit); bit++) {
        const struct hw_note *note = hw_note_at(&trend_caption, bit);
        (void)snprintf(line, sizeof line, "%s %s: %s", text_heading(note->effect), note->code,
                       answer->record->ask->full || !note->brief ? note->text : note->brief);
        plot_wrapped(plot, 0, &plot->page.words, line);
        plot->y += 3;
    }
    size_t used = (size_t)snprintf(line, sizeof line, "mind:");
    for (size_t list = HW_LIST_MIND; list <= HW_LIST_LAST; list++) {
        for (size_t bit = 0; notes_next_on(&trend_caption, answer->notes, (enum hw_list)list, &bit);
             bit++) {
            used += (size_t)snprintf(line + used, sizeof line - used, " %s",
                                     hw_note_at(&trend_caption, bit)->brief);
        }
    }
    plot_wrapped(plot, 0, &plot->page.note, line);
}

static void draw(const struct trend_answer *answer, struct plot *plot)
{
    const struct trend_ask *ask = answer->record->ask;
    char tank[SHOWN_MAX] = "";
    char slope[TREND_LINE];
    char title[2 * SHOWN_MAX + 40];
    char words[2 * TREND_LINE];
    if (ask->tank) {
        (void)show_text((struct hw_text){ask->tank, strlen(ask->tank)}, tank);
    }
    (void)snprintf(title, sizeof title, "trend of %s%s%s", answer->record->track[0].name,
                   ask->tank ? " in " : "", tank);
    trend_slope_words(answer, slope);
    (void)snprintf(words, sizeof words, "slope: %s; %zu readings", slope, answer->used);
    plot_begin(plot, title, words);
    plot_wrapped(plot, 0, &plot->page.title, title);
    plot_wrapped(plot, 0, &plot->page.heading, words);
    draw_panel(answer, plot);
    plot_wrapped(plot, 0, &plot->page.note,
                 "Dots: readings. Line: their slope, dashed where it only goes on. Grey: floor to "
                 "ceiling. Heavy: the limit.");
    plot->y += 6;
    draw_notes(answer, plot);
    plot_sources(&trend_caption, plot);
    plot->y += plot->page.margin;
    plot_end(plot);
}

void trend_plot(const struct trend_answer *answer)
{
    struct plot plot = {.measuring = true};
    plot_page_phone(&plot);
    draw(answer, &plot);
    plot.height = ceil(plot.y);
    plot.measuring = false;
    draw(answer, &plot);
}
