/* guide.c - examples and the stages of the job: what the help shows and no table of a calculation can know. */
#include "cli/help.h"

#include <stddef.h>

const struct example examples[] = {
    {"salinity", "a hydrometer marked 25C/25C",
     "holdwater salinity --of sg --reading 1.0264 --reference 25C/25C --temp 25"},
    {"salinity", "a meter that compensates to 25 C by 1.9 per cent per degree",
     "holdwater salinity --of compensated --reading 51.8mS/cm --slope 1.9 --temp 77F"},
    {"salinity", "a refractometer with a brine scale that shows 1 in pure water",
     "holdwater salinity --of brine-gkg --reading 36 --zero 1g/kg --temp 24"},
    {"ammonia", "a reading of 0.6 mg/L in salt water: how much is free, how far from a limit?",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 77F --salinity 34 --medicine none"},
    {"ammonia", "a kit that counts NH4, with copper in the water",
     "holdwater ammonia --tan 0.8 --basis nh4 --ph 8.0 --temp 25 --salinity 32 --medicine "
     "copper-amine"},
    {"ammonia", "one number for a script",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 25 --salinity 34 --format value --only free"},
    {"ammonia", "pH from an instrument on the total scale, with the working",
     "holdwater ammonia --tan 0.6 --ph 8.03 --ph-scale total --temp 25 --salinity 34 --work"},
    {NULL, NULL, NULL},
};

static const char *const ready[] = {"salinity", NULL};
static const char *const watch[] = {"ammonia", NULL};

const struct stage stages[] = {
    {"ready", "how salt the water is, by the instrument at hand", ready},
    {"watch", "how much of a reading is free ammonia, and how far from a limit", watch},
    {NULL, NULL, NULL},
};
