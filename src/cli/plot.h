/* plot.h - pictures as SVG on stdout: shapes, words, scales with round ticks. Black on white, sizes
 * in the units of the picture, which is PLOT_WIDTH wide and as high as it needs to be.
 *
 * A picture is drawn twice by the same calls: first with `measuring` set, when nothing is printed
 * and `y` comes to be its height, then in earnest. */
#ifndef HW_PLOT_H
#define HW_PLOT_H
#include <stdbool.h>
#include <stddef.h>

/* On a screen of 360 pixels a unit is 0.9 of one, so words are 12 units high at least. */
enum { PLOT_WIDTH = 400, PLOT_MARGIN = 10 };

struct plot {
    bool measuring;
    double y;      /* where the next thing begins; things in a picture stand below one another */
    double height; /* of the whole, known once it was measured */
};

/* How words look. */
struct plot_look {
    double size;
    enum { PLOT_LEFT, PLOT_MIDDLE, PLOT_RIGHT } anchor;
    bool bold;
    bool white; /* on dark */
};

extern const struct plot_look plot_title, plot_heading, plot_words, plot_tick;

enum plot_stroke { PLOT_AXIS, PLOT_GRID, PLOT_DASHED, PLOT_BAR, PLOT_CURVE };

struct plot_box {
    double x, y, width, height;
};

/* The title and the description are for those who do not see the picture. */
void plot_begin(struct plot *plot, const char *title, const char *description);
void plot_end(const struct plot *plot);

/* About how wide words come out in a wide sans-serif. */
double plot_text_width(const char *text, double size);

/* Words on one line, their foot at y. */
void plot_text(const struct plot *plot, double x, double y, const struct plot_look *look,
               const char *text);

/* Words over the whole width but for `indent` at the left, from plot->y down, which is moved. */
void plot_wrapped(struct plot *plot, double indent, const struct plot_look *look, const char *text);

void plot_line(const struct plot *plot, const double from[2], const double to[2],
               enum plot_stroke stroke);
void plot_dot(const struct plot *plot, double x, double y);

/* A box in a grey from 0 (white) to 1 (darkest); words on it are black or white, as plot_is_dark
 * says. */
void plot_shade(const struct plot *plot, const struct plot_box *box, double grey);
bool plot_is_dark(double grey);

/* A box with slanting lines. */
void plot_hatch(const struct plot *plot, const struct plot_box *box);

/* A line through points: begun, led on, ended. */
void plot_curve_begin(const struct plot *plot, double x, double y);
void plot_curve_to(const struct plot *plot, double x, double y);
void plot_curve_end(const struct plot *plot);

/* From values to places, with ticks at round numbers. */
struct plot_scale {
    double lo, hi;   /* values at the ends; lo < hi */
    double from, to; /* places of the ends */
    double step;     /* from tick to tick: 1, 2 or 5 times a power of ten */
    int places;      /* decimals of a tick's label; negative: with an exponent */
};

/* A scale that shows lo to hi, with at most `most` steps (2 or more). `wide` moves the ends outward
 * to ticks. One value alone gets some room at both sides. */
void plot_scale_fit(struct plot_scale *scale, double lo, double hi, size_t most, bool wide);

double plot_scale_place(const struct plot_scale *scale, double value);

/* The widest of its labels. */
double plot_scale_width(const struct plot_scale *scale);

/* Both axes with their labels, and a grid. x runs from left to right, y from below to above. */
void plot_frame(const struct plot *plot, const struct plot_scale *x, const struct plot_scale *y);
#endif
