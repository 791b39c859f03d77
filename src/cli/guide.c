/* guide.c - examples and the stages of the job: what the help shows and no table of a calculation can know. */
#include "cli/help.h"

#include <stddef.h>

const struct example examples[] = {
    {"volume", "a tank measured inside, filled to 37 cm, with rock that displaces 4 L",
     "holdwater volume --measured inside --length 60cm --width 35cm --depth 37cm --displaced 4L"},
    {"volume", "a tank measured over its 6 mm glass, with 3 L more in a canister filter",
     "holdwater volume --measured outside --wall 6mm --length 24in --width 14in --depth 37cm "
     "--extra 3L"},
    {"volume", "a round tub",
     "holdwater volume --shape cylinder --measured inside --diameter 60cm --depth 40cm"},
    {"gauge", "9 g of sodium bicarbonate raised the alkalinity by 4.1 dKH, 122.8 mg/L of it",
     "holdwater gauge --added 9g --rise 122.8mg/L"},
    {"gauge", "one number for a script: 150 mg of nitrogen, and a rise of 2 mg/L as N",
     "holdwater gauge --added 150mg --rise 2 --format value"},
    {"ammonia", "a reading of 0.6 mg/L in salt water: how much is free, how far from a limit?",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 77F --salinity 34 --medicine none"},
    {"ammonia", "a kit that counts NH4, with copper in the water",
     "holdwater ammonia --tan 0.8 --basis nh4 --ph 8.0 --temp 25 --salinity 32 --medicine "
     "copper-amine"},
    {"ammonia", "one number for a script",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 25 --salinity 34 --format value --only free"},
    {"ammonia", "pH from an instrument on the total scale, with the working",
     "holdwater ammonia --tan 0.6 --ph 8.03 --ph-scale total --temp 25 --salinity 34 --work"},
    {"bath", "6 mg/L in the 12 L dip bucket, from a stock of 1 % w/v",
     "holdwater bath --volume 12L --strength 1%wv --target 6mg/L"},
    {"bath", "the same, held against the water that the fish comes from",
     "holdwater bath --volume 12L --strength 1%wv --target 6mg/L --temp 25 --source-temp 23.5 "
     "--salinity 34 --source-salinity 33 --ph 8.1 --source-ph 7.6"},
    {"bath", "what a dosing rate on a label comes to",
     "holdwater bath --volume 12L --strength 10mg/mL --rate 0.5mL/L --minutes 20"},
    {NULL, NULL, NULL},
};

static const char *const ready[] = {"volume", "gauge", NULL};
static const char *const watch[] = {"ammonia", NULL};
static const char *const rescue[] = {"bath", NULL};

const struct stage stages[] = {
    {"ready", "how much water the tank really holds", ready},
    {"watch", "how much of a reading is free ammonia, and how far from a limit", watch},
    {"rescue", "a dye bath for a burned fish", rescue},
    {NULL, NULL, NULL},
};
