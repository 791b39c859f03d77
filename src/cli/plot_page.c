/* plot_page.c - a telephone, and A4 either way up. */
#include "cli/plot_page.h"

/* On a screen of 360 pixels a unit is 0.9 of one, so words are 12 units high at least. */
static const struct plot_page phone = {
    .width = 400,
    .margin = 10,
    .title = {17, PLOT_LEFT, true},
    .heading = {14, PLOT_LEFT, true},
    .words = {12.5, PLOT_LEFT, false},
    .tick = {12, PLOT_MIDDLE, false},
    .note = {12, PLOT_LEFT, false},
};

/* 210 mm x 297 mm (ISO 216). A unit is a point, 1/72 inch, so sizes of words are as in print. */
static const double mm = 25.4 / 72;
static const double a4_short = 210 * 72 / 25.4;
static const double a4_long = 297 * 72 / 25.4;
static const double a4_margin = 10 * 72 / 25.4; /* most printers leave 5 mm blank */

/* On a wall large words are welcome, notes are small. The last row is for what would not fit one
 * page otherwise. */
static const struct {
    double title, heading, words, tick, note;
} sizes[] = {
    {15, 13, 11, 14, 9},
    {14, 12, 10, 11.5, 9},
    [PLOT_PLAIN] = {12, 10.5, PLOT_LEAST, PLOT_LEAST, 9},
    [PLOT_SMALL] = {12, 10.5, PLOT_LEAST, PLOT_LEAST, 7},
};

enum { GAP = 20, HIGHEST = 320, STEP = 20, PHONE = 170 };

void plot_page_phone(struct plot *plot)
{
    plot->page = phone;
    plot->columns = 1;
    plot->tight = 0;
}

void plot_page_a4(struct plot *plot, const struct plot_way *way)
{
    plot->page = (struct plot_page){
        .width = way->lying ? a4_long : a4_short,
        .height = way->lying ? a4_short : a4_long,
        .mm = mm,
        .margin = a4_margin,
        .title = {sizes[way->size].title, PLOT_LEFT, true},
        .heading = {sizes[way->size].heading, PLOT_LEFT, true},
        .words = {sizes[way->size].words, PLOT_LEFT, false},
        .tick = {sizes[way->size].tick, PLOT_MIDDLE, false},
        .note = {sizes[way->size].note, PLOT_LEFT, false},
    };
    plot->columns = way->columns;
    plot->tight = way->tight;
}

bool plot_way_next(struct plot_way *way, const struct plot_way *most)
{
    if (!way->lying && most->lying) {
        way->lying = true;
        return true;
    }
    way->lying = false;
    if (way->columns < most->columns) {
        way->columns++;
        return true;
    }
    way->columns = 1;
    if (way->tight < most->tight) {
        way->tight++;
        return true;
    }
    way->tight = 0;
    way->size++;
    return way->size <= most->size;
}

double plot_column_width(const struct plot *plot)
{
    double room = plot->page.width - 2 * plot->page.margin;
    return (room - GAP * (double)(plot->columns - 1)) / (double)plot->columns;
}

double plot_column_left(const struct plot *plot, size_t i)
{
    return plot->page.margin + (double)i * (plot_column_width(plot) + GAP);
}

double plot_panel_height(const struct plot *plot)
{
    return plot->page.mm > 0 ? HIGHEST - STEP * (double)plot->tight : PHONE;
}
