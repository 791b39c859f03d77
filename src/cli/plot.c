/* plot.c - draws with SVG 1.1: no scripts, no fonts or files from elsewhere, no colours. */
#include "cli/plot.h"

#include "cli/print.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

enum { LABEL_MAX = 48 };

/* --- The document ----------------------------------------------------------------------------- */

/* Words as XML takes them: what is not printable ASCII is shown as '?'. */
static void put_escaped(const char *text, size_t n)
{
    for (size_t i = 0; i < n; i++) {
        switch (text[i]) {
        case '&':
            (void)fputs("&amp;", stdout);
            break;
        case '<':
            (void)fputs("&lt;", stdout);
            break;
        case '>':
            (void)fputs("&gt;", stdout);
            break;
        default:
            (void)putchar(text[i] >= ' ' && text[i] <= '~' ? text[i] : '?');
            break;
        }
    }
}

/* How large it is: on paper in millimetres. */
static void put_size(const struct plot_page *page, double height)
{
    if (page->mm > 0) {
        (void)printf(" width=\"%.0fmm\" height=\"%.0fmm\"", page->width * page->mm,
                     height * page->mm);
    }
    (void)printf(" viewBox=\"0 0 %.7g %.7g\"", page->width, height);
}

void plot_begin(struct plot *plot, const char *title, const char *description)
{
    plot->y = plot->left = plot->page.margin;
    plot->right = plot->page.width - plot->page.margin;
    if (plot->measuring) {
        return;
    }
    (void)fputs("<svg xmlns=\"http://www.w3.org/2000/svg\"", stdout);
    put_size(&plot->page, plot->height);
    (void)fputs(" role=\"img\" aria-labelledby=\"title description\" font-family=\"sans-serif\">\n"
                "<title id=\"title\">",
                stdout);
    put_escaped(title, strlen(title));
    (void)fputs("</title>\n<desc id=\"description\">", stdout);
    put_escaped(description, strlen(description));
    (void)printf("</desc>\n"
                 "<defs><pattern id=\"hatch\" width=\"6\" height=\"6\""
                 " patternUnits=\"userSpaceOnUse\">"
                 "<path d=\"M-1,1l2,-2M0,6l6,-6M5,7l2,-2\" stroke=\"#555\" fill=\"none\"/>"
                 "</pattern></defs>\n"
                 "<rect width=\"%.7g\" height=\"%.7g\" fill=\"#fff\"/>\n",
                 plot->page.width, plot->height);
}

void plot_end(const struct plot *plot)
{
    if (!plot->measuring) {
        (void)puts("</svg>");
    }
}

/* --- Words ------------------------------------------------------------------------------------ */

/* A character of a wide sans-serif, as a part of its size; rather too wide than too narrow. */
static double character_width(char c)
{
    if (strchr("ijlI.,:;|!' /", c)) {
        return 0.34;
    }
    if (strchr("frt()[]-", c)) {
        return 0.42;
    }
    if (strchr("mwMW%@", c)) {
        return 1;
    }
    return c >= 'A' && c <= 'Z' ? 0.75 : 0.64;
}

double plot_text_width(const char *text, double size)
{
    double width = 0;
    for (; *text != '\0'; text++) {
        width += character_width(*text) * size;
    }
    return width;
}

static void put_text(double x, double y, const struct plot_look *look, const char *text, size_t n)
{
    static const char *const anchors[] = {"", " text-anchor=\"middle\"", " text-anchor=\"end\""};
    (void)printf("<text x=\"%.1f\" y=\"%.1f\" font-size=\"%g\"%s%s>", x, y, look->size,
                 anchors[look->anchor], look->bold ? " font-weight=\"bold\"" : "");
    put_escaped(text, n);
    (void)puts("</text>");
}

void plot_text(const struct plot *plot, double x, double y, const struct plot_look *look,
               const char *text)
{
    if (!plot->measuring) {
        put_text(x, y, look, text, strlen(text));
    }
}

/* The bytes of text that go on one line: whole words, one at least. */
static size_t fitting(const char *text, double size, double room)
{
    size_t best = strcspn(text, " ");
    double width = 0;
    for (size_t i = 0; text[i] != '\0'; i++) {
        width += character_width(text[i]) * size;
        bool end = text[i + 1] == ' ' || text[i + 1] == '\0';
        if (end && width <= room) {
            best = i + 1;
        }
        if (width > room) {
            break;
        }
    }
    return best;
}

void plot_wrapped(struct plot *plot, double indent, const struct plot_look *look, const char *text)
{
    double room = plot->right - plot->left - indent;
    double size = look->bold ? look->size * 1.1 : look->size; /* bold letters are wider */
    while (*text != '\0') {
        size_t n = fitting(text, size, room);
        plot->y += look->size * 1.25;
        if (!plot->measuring) {
            put_text(plot->left + indent, plot->y - look->size * 0.25, look, text, n);
        }
        text += n;
        text += strspn(text, " ");
    }
}

/* --- Shapes ----------------------------------------------------------------------------------- */

void plot_line(const struct plot *plot, const double from[2], const double to[2],
               enum plot_stroke stroke)
{
    static const char *const looks[] = {
        [PLOT_AXIS] = "#000\" stroke-width=\"1",
        [PLOT_GRID] = "#ccc\" stroke-width=\"1",
        [PLOT_DASHED] = "#333\" stroke-width=\"1\" stroke-dasharray=\"5 3",
        [PLOT_BAR] = "#000\" stroke-width=\"5",
        [PLOT_HEAVY] =
            "#000\" stroke-width=\"2.8\" stroke-linecap=\"square\" shape-rendering=\"crispEdges",
    };
    if (!plot->measuring) {
        (void)printf("<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\"/>\n",
                     from[0], from[1], to[0], to[1], looks[stroke]);
    }
}

void plot_dot(const struct plot *plot, double x, double y)
{
    if (!plot->measuring) {
        (void)printf("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\"/>\n", x, y,
                     plot->page.tick.size / 4);
    }
}

/* Black words have a contrast of 9 to 1 at least, and a heavy line stands out on every shade. */
static int level_of(double grey)
{
    return (int)lround(255 - 85 * fmin(fmax(grey, 0), 1));
}

void plot_shade(const struct plot *plot, const struct plot_box *box, double grey)
{
    int level = level_of(grey);
    if (!plot->measuring) {
        (void)printf("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\""
                     " fill=\"#%02x%02x%02x\" stroke=\"#888\"/>\n",
                     box->x, box->y, box->width, box->height, (unsigned)level, (unsigned)level,
                     (unsigned)level);
    }
}

void plot_hatch(const struct plot *plot, const struct plot_box *box)
{
    if (!plot->measuring) {
        (void)printf("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\""
                     " fill=\"url(#hatch)\" stroke=\"#888\"/>\n",
                     box->x, box->y, box->width, box->height);
    }
}

void plot_curve_begin(const struct plot *plot, enum plot_curve curve, double x, double y)
{
    static const char *const looks[] = {
        [PLOT_BED] = "#fff\" stroke-width=\"4",
        [PLOT_BLACK] = "#000\" stroke-width=\"1.6",
    };
    if (!plot->measuring) {
        (void)printf("<polyline fill=\"none\" stroke=\"%s\" points=\"%.1f,%.1f", looks[curve], x,
                     y);
    }
}

void plot_curve_to(const struct plot *plot, double x, double y)
{
    if (!plot->measuring) {
        (void)printf(" %.1f,%.1f", x, y);
    }
}

void plot_curve_end(const struct plot *plot)
{
    if (!plot->measuring) {
        (void)puts("\"/>");
    }
}

/* --- Scales ----------------------------------------------------------------------------------- */

/* One value alone, or some that differ by rounding: room at both sides. */
static void part_ends(double *lo, double *hi)
{
    double size = fmax(fabs(*lo), fabs(*hi));
    if (!(*hi - *lo > 1e-9 * size)) {
        double room = size > 0 ? size * 0.1 : 1;
        *lo -= room;
        *hi += room;
    }
}

/* The smallest of 1, 2 and 5 times a power of ten that is not below x. */
static double round_step(double x)
{
    double ten = pow(10, floor(log10(x)));
    double digit = x / ten;
    return (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10) * ten;
}

void plot_scale_fit(struct plot_scale *scale, double lo, double hi, size_t most, bool wide)
{
    part_ends(&lo, &hi);
    scale->step = round_step((hi - lo) / (double)most * (1 - 1e-9));
    if (wide) {
        lo = floor(lo / scale->step + 1e-9) * scale->step;
        hi = ceil(hi / scale->step - 1e-9) * scale->step;
    }
    scale->lo = lo;
    scale->hi = hi;
    double size = fmax(fabs(lo), fabs(hi));
    int places = (int)fmax(0, -floor(log10(scale->step) + 1e-9));
    scale->places = size < 1e6 && places <= 6 ? places : -1;
}

double plot_scale_place(const struct plot_scale *scale, double value)
{
    return scale->from + (value - scale->lo) / (scale->hi - scale->lo) * (scale->to - scale->from);
}

/* The tick number i, counted from 0. False when there are no more. */
static bool scale_tick(const struct plot_scale *scale, size_t i, double *value,
                       char label[LABEL_MAX])
{
    double number = ceil(scale->lo / scale->step - 1e-9) + (double)i;
    *value = number * scale->step + 0.0;
    if (number * scale->step > scale->hi + 1e-9 * scale->step) {
        return false;
    }
    if (scale->places >= 0) {
        (void)snprintf(label, LABEL_MAX, "%.*f", scale->places, *value);
    } else {
        char exact[NUMBER_MAX];
        number_digits(exact, *value, 9);
        (void)snprintf(label, LABEL_MAX, "%.30s", exact);
    }
    return true;
}

double plot_scale_width(const struct plot_scale *scale, double size)
{
    double widest = 0;
    double value = 0;
    char label[LABEL_MAX];
    for (size_t i = 0; scale_tick(scale, i, &value, label); i++) {
        widest = fmax(widest, plot_text_width(label, size));
    }
    return widest;
}

void plot_frame(const struct plot *plot, const struct plot_scale *x, const struct plot_scale *y)
{
    struct plot_look right = plot->page.tick;
    char label[LABEL_MAX];
    double value = 0;
    right.anchor = PLOT_RIGHT;
    for (size_t i = 0; scale_tick(y, i, &value, label); i++) {
        double at = plot_scale_place(y, value);
        plot_line(plot, (double[2]){x->from, at}, (double[2]){x->to, at}, PLOT_GRID);
        plot_text(plot, x->from - 5, at + plot->page.tick.size * 0.35, &right, label);
    }
    for (size_t i = 0; scale_tick(x, i, &value, label); i++) {
        double at = plot_scale_place(x, value);
        plot_line(plot, (double[2]){at, y->from}, (double[2]){at, y->from + 4}, PLOT_AXIS);
        plot_text(plot, at, y->from + 6 + plot->page.tick.size, &plot->page.tick, label);
    }
    plot_line(plot, (double[2]){x->from, y->from}, (double[2]){x->to, y->from}, PLOT_AXIS);
    plot_line(plot, (double[2]){x->from, y->from}, (double[2]){x->from, y->to}, PLOT_AXIS);
}
