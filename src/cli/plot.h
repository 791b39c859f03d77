/* plot.h - pictures as SVG on stdout: shapes, words, scales with round ticks. Black on white, sizes
 * in the units of the page.
 *
 * A picture is drawn twice at least by the same calls: first with `measuring` set, when nothing is
 * printed and `y` comes to be its height, then in earnest. */
#ifndef HW_PLOT_H
#define HW_PLOT_H
#include <stdbool.h>
#include <stddef.h>

/* How words look. */
struct plot_look {
    double size;
    enum { PLOT_LEFT, PLOT_MIDDLE, PLOT_RIGHT } anchor;
    bool bold;
};

/* What a picture is drawn on: how large it is, and its words. */
struct plot_page {
    double width, height; /* height 0: as high as the picture comes out */
    double mm;            /* of a unit, on paper; 0: a picture as wide as it is shown */
    double margin;
    struct plot_look title, heading, words, tick, note;
};

struct plot {
    struct plot_page page;
    bool measuring;
    double left, right; /* what things stand between */
    double y;       /* where the next thing begins; things in a picture stand below one another */
    double height;  /* of the whole, known once it was measured */
    size_t columns; /* how many plots stand side by side */
    size_t tight;   /* 0: plots and cells are roomy; they get smaller from level to level */
    bool folded;    /* columns of cells did not all go side by side */
};

/* PLOT_HEAVY is where a caution begins. */
enum plot_stroke { PLOT_AXIS, PLOT_GRID, PLOT_DASHED, PLOT_BAR, PLOT_HEAVY };

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

/* Words from left to right but for `indent` at the left, from plot->y down, which is moved. */
void plot_wrapped(struct plot *plot, double indent, const struct plot_look *look, const char *text);

void plot_line(const struct plot *plot, const double from[2], const double to[2],
               enum plot_stroke stroke);
void plot_dot(const struct plot *plot, double x, double y);

/* A box in a grey from 0 (white) to 1 (darkest), on which black words can still be read. */
void plot_shade(const struct plot *plot, const struct plot_box *box, double grey);

/* A box with slanting lines. */
void plot_hatch(const struct plot *plot, const struct plot_box *box);

/* A line through points: begun, led on, ended. The white bed is drawn first, so that the black
 * curve can be seen where it crosses heavy lines. */
enum plot_curve { PLOT_BED, PLOT_BLACK };
void plot_curve_begin(const struct plot *plot, enum plot_curve curve, double x, double y);
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

/* The widest of its labels, at that size. */
double plot_scale_width(const struct plot_scale *scale, double size);

/* Both axes with their labels, and a grid. x runs from left to right, y from below to above. */
void plot_frame(const struct plot *plot, const struct plot_scale *x, const struct plot_scale *y);
#endif
