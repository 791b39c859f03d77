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
    {12, 10.5, PLOT_LEAST, PLOT_LEAST, 9},
    {12, 10.5, PLOT_LEAST, PLOT_LEAST, 7},
};

enum { SIZES = sizeof sizes / sizeof sizes[0], GAP = 20, HIGHEST = 320, STEP = 20, PHONE = 170 };

void plot_page_phone(struct plot *plot)
{
    plot->page = phone;
    plot->columns = 1;
    plot->tight = 0;
}

static void set_a4(struct plot_page *page, bool lying, size_t size)
{
    *page = (struct plot_page){
        .width = lying ? a4_long : a4_short,
        .height = lying ? a4_short : a4_long,
        .mm = mm,
        .margin = a4_margin,
        .title = {sizes[size].title, PLOT_LEFT, true},
        .heading = {sizes[size].heading, PLOT_LEFT, true},
        .words = {sizes[size].words, PLOT_LEFT, false},
        .tick = {sizes[size].tick, PLOT_MIDDLE, false},
        .note = {sizes[size].note, PLOT_LEFT, false},
    };
}

bool plot_page_a4(struct plot *plot, const struct plot_choice *choice, size_t i)
{
    size_t levels = (size_t)choice->levels;
    size_t rest = i / 2 / choice->columns;
    if (rest / levels >= SIZES) {
        return false;
    }
    set_a4(&plot->page, i % 2 == 1, rest / levels);
    plot->columns = i / 2 % choice->columns + 1;
    plot->tight = (int)(rest % levels);
    return true;
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
    return plot->page.mm > 0 ? HIGHEST - STEP * plot->tight : PHONE;
}
