/* by_hand.c - what help and lists tell of the commands that are written by hand. */
#include "cli/by_hand.h"

#include "cli/trend_ask.h"
#include "tables.h"

#include <string.h>

const char *const calendar_formats[] = {"text", "csv", "tsv", "ics", "plan", NULL};

const struct general_option calendar_options[] = {
    [CALENDAR_PLAN] = {.name = "plan",
                       .value = "NAME|FILE",
                       .help = "copper, dye or watch, or a file of your own: tab-separated or CSV",
                       .takes = TAKES_PLAN},
    [CALENDAR_FROM] = {.name = "from",
                       .value = "DATE",
                       .help = "day 0, when the fish arrive: 2031-04-01"},
    [CALENDAR_TANK] = {.name = "tank",
                       .value = "NAME",
                       .help = "stands in each entry; two tanks, two sets of entries"},
    [CALENDAR_ADDED] = {.name = "added",
                        .value = "DATE",
                        .help =
                            "a fish came into this water: the count begins anew; may be repeated",
                        .repeats = true},
    [CALENDAR_FORMAT] =
        {.name = "format",
         .value = "WORD",
         .help = "text (if not given), csv, tsv, ics (for a phone), or plan: the plan as a"
                 " table to change and give back",
         .takes = TAKES_WORD,
         .words = calendar_formats},
    [CALENDAR_WHEN] = {.name = "when",
                       .value = "TIME",
                       .help = "text marks what is past and due; in ics the time of the entries"},
    [CALENDAR_FULL] =
        {.name = "full",
         .help = "the source of each act, published durations of parasites, all that notes"
                 " say"},
    [CALENDAR_TANKS] = {.name = "tanks",
                        .value = "FILE",
                        .help = "the tanks file, which must have the tank",
                        .takes = TAKES_FILE},
    [CALENDAR_HELP] = {.name = "help", .help = "this page"},
    [CALENDAR_OPTIONS] = {.name = NULL},
};

static const char *const sources[] = {
    "common-practice",   "filter-kept",       "copper-ramp",      "copper-held",
    "fluke-bath",        "quarantine-length", "release-together", "cheung1979",
    "yoshinaga2001",     "cyst-copy",         "cyst-longest",     "fa164",
    "society-durations", "velvet-review",     "ernst2005",        "fluke-eggs",
    "slime-page",        "our-arithmetic",    "label-and-law",    NULL};

const struct hw_calc calendar_caption = {
    .name = "calendar",
    .purpose = "the days of a plan, with what to do on each",
    .notes = hw_calendar_notes,
    .n_notes = HW_CALENDAR_NOTES,
    .sources = sources,
};

const struct by_hand by_hand[] = {
    {&calendar_caption, calendar_options, NULL},
    {&trend_caption, trend_options,
     "results: slope, slope_low and slope_high a day, last, age d, days_to_limit d,\n"
     "  held d. The interval holds the true slope in about 95 of 100 such records.\n"
     "times: columns when, datetime, date or time, as 2031-03-05T08:15+00:00"},
    {NULL, NULL, NULL},
};

const struct by_hand *by_hand_find(const char *name)
{
    for (size_t i = 0; by_hand[i].caption; i++) {
        if (strcmp(by_hand[i].caption->name, name) == 0) {
            return &by_hand[i];
        }
    }
    return NULL;
}
