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

/* 210 mm x 297 mm (ISO 216); a unit is a point, 1/72 inch, so sizes of words are as in print. */
static const struct plot_page a4 = {
    .width = 210 / 25.4 * 72,
    .height = 297 / 25.4 * 72,
    .mm = 25.4 / 72,
    .margin = 10 / 25.4 * 72, /* most printers leave 5 mm blank */
    .title = {12, PLOT_LEFT, true},
    .heading = {10.5, PLOT_LEFT, true},
    .words = {9, PLOT_LEFT, false},
    .tick = {9, PLOT_MIDDLE, false},
    .note = {9, PLOT_LEFT, false},
};

/* Sizes of words, in parts of those of the page: on a wall large ones are welcome. The last one is
 * for what else would not fit one page, with small notes. */
static const double sizes[] = {1.6, 1.3, 1, 1};

enum { SIZES = sizeof sizes / sizeof sizes[0], SMALL_NOTE = 7, GAP = 20, HIGHEST = 320, STEP = 20, PHONE_PANEL = 170 };

void plot_page_phone(struct plot *plot)
{
    plot->page = phone;
    plot->columns = 1;
    plot->tight = 0;
}

/* A page with words of that size. */
static void set_words(struct plot_page *page, size_t size)
{
    *page = a4;
    page->title.size *= sizes[size];
    page->heading.size *= sizes[size];
    page->words.size *= sizes[size];
    page->tick.size *= sizes[size];
    page->note.size = size + 1 < SIZES ? a4.note.size * sizes[size] : SMALL_NOTE;
}

bool plot_page_a4(struct plot *plot, const struct plot_choice *choice, size_t i)
{
    bool lying = i % 2 == 1;
    size_t levels = (size_t)choice->levels;
    size_t rest = i / 2 / choice->columns;
    if (rest / levels >= SIZES) {
        return false;
    }
    set_words(&plot->page, rest / levels);
    if (lying) {
        plot->page.width = a4.height;
        plot->page.height = a4.width;
    }
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
    return plot->page.mm > 0 ? HIGHEST - STEP * plot->tight : PHONE_PANEL;
}
