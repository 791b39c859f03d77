/* guide.c - examples and the stages of the job: what the help shows and no table of a calculation
 * can know. */
#include "cli/help.h"

#include "tables.h"

#include <stddef.h>

const struct example examples[] = {
    {"volume", "a tank measured inside, filled to 37 cm, with rock that displaces 4 L",
     "holdwater volume --measured inside --length 60cm --width 35cm --depth 37cm --displaced 4L"},
    {"volume", "a tank measured over its 6 mm glass, with 3 L more in a canister filter",
     "holdwater volume --measured outside --wall 6mm --length 24in --width 14in --depth 37cm "
     "--extra 3L"},
    {"volume", "height and water line from the rim, measured over 6 mm glass and an 8 mm bottom",
     "holdwater volume --measured outside --wall 6mm --bottom 8mm --length 61.2cm --width 36.2cm "
     "--height 41.2cm --below-rim 3.4cm"},
    {"volume", "a round tub",
     "holdwater volume --shape cylinder --measured inside --diameter 60cm --depth 40cm"},
    {"gauge", "9 g of sodium bicarbonate raised the alkalinity by 4.1 dKH",
     "holdwater gauge --added 9g --reagent sodium-bicarbonate --rise 4.1dKH"},
    {"gauge", "one number for a script: 150 mg of nitrogen, and a rise of 2 mg/L as N",
     "holdwater gauge --added 150mg --rise 2mg/L --format value"},
    {"salinity", "a hydrometer marked 25C/25C",
     "holdwater salinity --of sg --reading 1.0264 --reference 25C/25C --temp 25"},
    {"salinity", "a meter that compensates to 25 C by 1.9 per cent per degree",
     "holdwater salinity --of compensated --reading 51.8mS/cm --slope 1.9 --temp 77F"},
    {"salinity", "a refractometer with a brine scale that shows 1 in pure water",
     "holdwater salinity --of brine-gkg --reading 36 --zero 1g/kg --temp 24"},
    {"salinity", "a brine scale that shows 36.5 in a sea-water standard of 35 g/kg",
     "holdwater salinity --of brine-gkg --reading 33.5 --standard-is sea-water --standard 35 "
     "--standard-reads 36.5 --temp 24"},
    {"salinity", "a hydrometer that has lost its leaflet",
     "holdwater salinity --of sg --reading 1.0264 --reference unknown --temp 25"},
    {"saltmix", "salt for 25 L of fresh water, to 34 g/kg",
     "holdwater saltmix --volume 25L --target 34"},
    {"saltmix", "a bag whose label says: 4 kg make 28 US gallons of 35 g/kg",
     "holdwater saltmix --volume 20gal --target 34 --label-mass 4kg --label-makes 28gal "
     "--label-salinity 35"},
    {"saltmix", "birch stands at 36.2 because water evaporated: back to 34",
     "holdwater saltmix --volume 108L --salinity 36.2 --target 34 --why evaporated"},
    {"saltmix", "a batch that was mixed too strong",
     "holdwater saltmix --volume 60L --salinity 36 --target 34 --why mixed-too-strong"},
    {"neutralise", "25 L of new water with 1.2 mg/L of chlorine, for a tank without medicine",
     "holdwater neutralise --volume 25L --chlorine 1.2 --chloramine no --medicine none"},
    {"neutralise",
     "chloramine in the supply, copper in the tank: what to weigh, what ammonia comes",
     "holdwater neutralise --volume 20gal --chlorine 2.5 --chloramine yes --medicine copper-ionic"},
    {"neutralise", "anhydrous thiosulfate for a cleaned tank after bleach, with the working",
     "holdwater neutralise --volume 75L --chlorine 200 --chloramine no --medicine none --agent "
     "thiosulfate-anhydrous --work"},
    {"bioload", "4 g a day of 45 % protein in birch, whose filter cleared 220 mg a day",
     "holdwater bioload --volume 110L --feed 4g/d --protein 45% --capacity 220mg/d --ph 8.1 --temp "
     "25 --salinity 34"},
    {"bioload", "60 g of fish in a tank of 20 US gallons without a filter, the working",
     "holdwater bioload --volume 20gal --biomass 60g --ration 1.5% --protein 12% --ph 8.0 --temp "
     "77F --salinity 33 --work"},
    {"bioload", "ammonia rose by 0.4 mg/L in a day without a filter: how much water each day?",
     "holdwater bioload --volume 75L --rise 0.4 --ph 8.1 --temp 25 --salinity 34"},
    {"bioload", "a dead fish of 18 g, found in the morning; a limit of your own",
     "holdwater bioload --volume 190L --feed 3g/d --protein 45% --dead 18g --limit 0.5"},
    {"ammonia", "a reading of 0.6 mg/L in salt water: how much is free, how far from a limit?",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 77F --salinity 34 --medicine none"},
    {"ammonia", "a kit that counts NH4, with copper in the water",
     "holdwater ammonia --tan 0.8 --basis nh4 --ph 8.0 --temp 25 --salinity 32 --medicine "
     "copper-amine"},
    {"ammonia", "one number for a script",
     "holdwater ammonia --tan 0.6 --ph 8.15 --temp 25 --salinity 34 --format value --only free"},
    {"ammonia", "pH from an instrument on the total scale, with the working",
     "holdwater ammonia --tan 0.6 --ph 8.03 --ph-scale total --temp 25 --salinity 34 --work"},
    {"ammonia", "how sure is it, and which reading should be taken again?",
     "holdwater ammonia --tan 0.6+-0.1 --ph 8.15+-0.1 --temp 25+-0.5 --salinity 34 --only "
     "free,long_ratio"},
    {"ammonia", "backwards: how far may the pH rise?",
     "holdwater ammonia --tan 0.6 --temp 25 --salinity 34 --solve ph --for long_ratio=1"},
    {"ammonia", "no reading yet: what total does this water allow, by a kit that counts NH4?",
     "holdwater ammonia --basis nh4 --ph 8.15 --temp 25 --salinity 34 --medicine none"},
    {"ammonia", "a wall chart of that reading: pH across, temperature down",
     "holdwater ammonia --tan 0.6 --ph 7.8:8.6:0.1 --temp 22:28:1 --salinity 34 --only free"},
    {"nitrite", "a kit that counts the ion shows 0.5 mg/L in salt water",
     "holdwater nitrite --nitrite 0.5 --basis ion --salinity 34"},
    {"nitrite", "0.25 mg/L as N in fresh water, with the working",
     "holdwater nitrite --nitrite 0.25 --salinity 0.3 --work"},
    {"oxygen", "how much oxygen can sea water of 34 g/kg hold at 26 C?",
     "holdwater oxygen --temp 26 --salinity 34"},
    {"oxygen", "the power is off: birch reads 6.1 mg/L, with 240 g of fish in it, of 30 g each",
     "holdwater oxygen --temp 78F --salinity 33 --oxygen-now 6.1 --volume 110L --biomass 240g "
     "--fish-mass 30g"},
    {"oxygen", "a bag of 3 L in a room at 2000 ft, with the working",
     "holdwater oxygen --temp 24 --salinity 34 --altitude 2000ft --oxygen-now 5.9 --volume 3L "
     "--biomass 45g --floor 3 --work"},
    {"challenge", "ammonium chloride to bring 20 US gallons to 2 mg/L, no fish in the water",
     "holdwater challenge --volume 20gal --fish no"},
    {"challenge", "10 % household ammonia for a tank of 110 L, with what it costs the water",
     "holdwater challenge --volume 110L --fish no --reagent ammonia-solution --strength 10% --ph "
     "8.1 "
     "--temp 25 --salinity 34 --alkalinity 2.6meq/L"},
    {"challenge", "a bottle labelled 56.6 % NH4OH, a kit that counts NH3, the working",
     "holdwater challenge --volume 75L --fish no --basis nh3 --reagent ammonia-solution --strength "
     "56.6% --strength-as nh4oh --work"},
    {"concentrate", "5 mL are to raise 110 L by 0.5 mg/L as N: a quarter of a litre of stock",
     "holdwater concentrate --reagent ammonium-chloride --raises 0.5 --per 5mL --into 110L --make "
     "250mL"},
    {"concentrate", "10 mL are to raise 75 L by 0.05 mg/L of copper, with the working",
     "holdwater concentrate --reagent copper-sulfate-pentahydrate --raises 0.05 --per 10mL --into "
     "75L "
     "--make 1L --work"},
    {"verdict", "birch was brought to 2 mg/L and read 24 hours later: has the filter passed?",
     "holdwater verdict --volume 110L --start-tan 2 --tan 0 --nitrite 0.1 --hours 24 "
     "--nitrate-rise "
     "10"},
    {"verdict", "not yet: nitrite is left; the fish will be kept at 23 C",
     "holdwater verdict --volume 75L --start-tan 2 --tan 0 --nitrite 0.5 --hours 24 --temp 26 "
     "--stock-temp 23"},
    {"verdict", "kits that count NH4 and NO2, food with 40 % protein, the working",
     "holdwater verdict --volume 190L --start-tan 2.5 --basis nh4 --tan 0.1 --nitrite 0.05 "
     "--nitrite-basis ion --hours 22 --protein 40% --work"},
    {"dose", "a product whose label raises 40 L by 0.15 mg/L with 1 mL",
     "holdwater dose --volume 75L --kind other --target 0.3 --label-liquid 1mL --label-per 40L "
     "--label-raises 0.15"},
    {"dose", "ionic copper from a stock of 1 mg/mL, brought up in four days; the level of each",
     "holdwater dose --volume 110L --kind copper-ionic --salinity 33 --target 0.18 --strength "
     "1mg/mL --steps 4 "
     "--days 4"},
    {"dose", "the same with crystals, 0.06 mg/L are in already",
     "holdwater dose --volume 110L --kind copper-ionic --salinity 33 --now 0.06 --target 0.12 "
     "--source "
     "copper-sulfate-pentahydrate --purity 98%"},
    {"dose", "a bath of formalin: its ppm means three things, so the basis is asked for",
     "holdwater dose --volume 75L --kind formalin --temp 25 --formalin-basis solution-mg --target "
     "150"},
    {"dose", "30 mL were poured by mistake: where is the level, and what brings it back?",
     "holdwater dose --volume 110L --kind copper-ionic --salinity 33 --added 30mL --strength "
     "1mg/mL"},
    {"change", "a quarter of 110 L at 0.18 mg/L: what is lost, and what must the new water hold?",
     "holdwater change --volume 110L --share 25% --now 0.18 --keep 0.18 --kind copper-ionic "
     "--salinity 33 --strength 1mg/mL"},
    {"change", "three changes of 20 L against nitrate of 80 mg/L; how many until 20?",
     "holdwater change --volume 75L --take 20L --times 3 --now 80 --new 5 --goal 20"},
    {"change", "how much of the water must go for nitrate of 80 mg/L to come to 20?",
     "holdwater change --volume 75L --now 80 --new 5 --goal 20"},
    {"change", "new water dripping in while the tank overflows",
     "holdwater change --volume 190L --take 95L --method flow --now 0.6 --goal 0.2"},
    {"emergency", "fish gasp, the kit reads 1.5 mg/L, pH 7.2, copper is in the water",
     "holdwater emergency --tan 1.5 --ph 7.2 --medicine copper"},
    {"emergency", "alder, of good pH: how much to change, and what goes into the new water",
     "holdwater emergency --tan 1.5 --ph 8.1 --medicine copper-ionic --volume 75L --temp 25 "
     "--salinity 34 --alkalinity 2.3meq/L --new-ph 8.2 --new-alkalinity 2.4meq/L --now 0.18 "
     "--keep 0.18 --strength 1mg/mL"},
    {"emergency", "there are 40 L of new water, and ammonia rises by 0.4 mg/L in a day",
     "holdwater emergency --tan 0.8 --ph 8.1 --medicine none --volume 75L --temp 25 "
     "--salinity 34 --alkalinity 2.3meq/L --new-ph 8.2 --new-alkalinity 2.4meq/L --at-hand 40L "
     "--rise 0.4"},
    {"binder", "alder at 0.8 mg/L; the label: 5 mL for 40 L bind 1 mg/L",
     "holdwater binder --volume 75L --tan 0.8 --medicine none --agent label --label-liquid 5mL "
     "--label-per 40L --label-binds 1"},
    {"binder", "a powder: 2 g for 20 US gallons bind 0.8 mg/L of ammonia; a kit that counts NH3",
     "holdwater binder --volume 110L --tan 0.6 --basis nh3 --medicine antibiotic --agent label "
     "--label-mass 2g --label-per 20gal --label-binds 0.8"},
    {"binder", "a powder of known content, at four times, with the working",
     "holdwater binder --volume 190L --tan 0.5 --medicine none --agent hydroxymethanesulfonate "
     "--strength 95% --excess 4 --work"},
    {"binder", "with ionic copper in the water there is no dose",
     "holdwater binder --volume 75L --tan 1.2 --agent hydroxymethanesulfonate --medicine "
     "copper-ionic"},
    {"ahead", "birch gets 2 g a day; its filter cleared 2 mg/L in a day: and tomorrow?",
     "holdwater ahead --volume 110L --tan 0.1 --feed 2g/d --protein 45% --meals 2 --cleared-from 2 "
     "--cleared-to 0 --cleared-in 24h --hours 24 --ph 8.1 --temp 25 --salinity 34"},
    {"ahead", "no filter, your own reading of the rise, half changed each day: the curve",
     "holdwater ahead --volume 75L --tan 0.2 --rise 0.42 --share 50% --limit 0.5 --hours 0:72:3"},
    {"ahead", "what daily change keeps it below 0.5 mg/L?",
     "holdwater ahead --volume 75L --tan 0.2 --rise 0.25 --hours 5d --solve share --for "
     "peak=0.5mg/L"},
    {"ahead", "a medicine left 40 % of the filter: how much food for 0.5 mg/L?",
     "holdwater ahead --volume 110L --tan 0.1 --protein 45% --cleared-from 2 --cleared-to 0 "
     "--cleared-in 24h --left 40% --hours 5d --solve feed --for peak=0.5mg/L"},
    {"blend", "alder reads 1.5 mg/L at pH 8.1: how much must be changed at once?",
     "holdwater blend --volume 75L --tan 1.5 --ph 8.1 --alkalinity 2.3meq/L --temp 25 "
     "--salinity 34 --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25 --new-salinity 34"},
    {"blend", "a sour tank and fresh sea water: does a quarter help, or is it worse?",
     "holdwater blend --volume 110L --share 25% --tan 2 --ph 7.4 --alkalinity 1meq/L --temp 25 "
     "--salinity 34 --new-ph 8.2 --new-alkalinity 2.4meq/L --new-temp 25 --new-salinity 34"},
    {"blend", "alkalinity not known: the worst that 30 L of new water can do at once",
     "holdwater blend --volume 75L --take 30L --tan 0.8 --ph 7.8 --temp 78F --salinity 33 "
     "--new-ph 8.2 --new-temp 76F --new-salinity 35"},
    {"buffer", "bicarbonate to bring 110 L from 1.6 to 2.1 meq/L",
     "holdwater buffer --volume 110L --alkalinity 1.6meq/L --target 2.1meq/L"},
    {"buffer", "the same in dKH, with what it does to pH and ammonia",
     "holdwater buffer --volume 75L --alkalinity 4.5dKH --target 5.5dKH --ph 7.6 --temp 78F "
     "--salinity 33 --tan 0.5"},
    {"bath", "6 mg/L in the 12 L dip bucket, from a stock of 1 % w/v",
     "holdwater bath --volume 12L --strength 1%wv --target 6mg/L"},
    {"bath", "the same, held against the water that the fish comes from",
     "holdwater bath --volume 12L --strength 1%wv --target 6mg/L --temp 25 --source-temp 23.5 "
     "--salinity 34 --source-salinity 33 --ph 8.1 --source-ph 7.6"},
    {"bath", "what a dosing rate on a label comes to",
     "holdwater bath --volume 12L --strength 10mg/mL --rate 0.5mL/L --minutes 20"},
    {"bag", "the kit reads 6 mg/L in the bag; what will opening it do?",
     "holdwater bag --tan 6 --ph-bag 6.9 --ph-open 8.1 --temp 23 --salinity 31"},
    {"bag", "not tested: 35 g of fish, 26 hours, 2.5 L; held against the tank cedar, the working",
     "holdwater bag --biomass 35g --hours 26 --water 2.5L --ph-bag 6.8 --ph-open 8.2 --temp 74F "
     "--salinity 31 --tank-temp 25 --tank-salinity 34 --tank-ph 8.2 --work"},
    {"bag", "one number for a script",
     "holdwater bag --tan 6 --ph-bag 6.9 --ph-open 8.1 --temp 23 --salinity 31 --format value "
     "--only "
     "times_worse"},
    {"course", "3 mg/L in alder, which has no filter: four doses of a stock of 1 % w/v",
     "holdwater course --volume 75L --biofilter no --strength 1%wv --target 3mg/L --doses 4"},
    {"course", "the same, but each further dose puts back only what the change took; the working",
     "holdwater course --volume 75L --biofilter no --strength 1%wv --target 3mg/L --doses 4 "
     "--redose replace --work"},
    {"course", "a rate on a label for ten days, a third changed before each further dose",
     "holdwater course --volume 20gal --biofilter no --strength 10mg/mL --rate 0.8mL/gal --share "
     "33% --days 10"},
    {"disinfect", "household bleach of 5 % for the drained and cleaned tank of 75 L",
     "holdwater disinfect --volume 75L --strength 5%"},
    {"disinfect", "a label that counts sodium hypochlorite by mass; an hour, with the working",
     "holdwater disinfect --volume 20gal --strength 12.5% --strength-as naocl-ww --density "
     "1.16g/mL --minutes 60 --work"},
    {"calendar", "the fish of birch arrive on 1 April and get copper: what is done when?",
     "holdwater calendar --plan copper --from 2031-04-01 --tank birch"},
    {"calendar", "a fish came into the same water on the 11th: the count begins anew for all",
     "holdwater calendar --plan watch --from 2031-04-01 --tank birch --added 2031-04-11"},
    {"calendar", "the plan as a table to change, and the changed one for a phone",
     "holdwater calendar --plan copper --format plan >my-plan.tsv"},
    {"calendar", "which then goes to the phone as a file",
     "holdwater calendar --plan my-plan.tsv --from 2031-04-01 --tank birch --format ics "
     ">birch.ics"},
    {"trend", "is total ammonia of birch creeping, and on what day does it meet 0.5?",
     "holdwater trend --rows readings.csv --tank birch --of tan --limit 0.5"},
    {"trend", "for how many unbroken days was a medicine held in its window?",
     "holdwater trend --rows levels.csv --tank birch --of copper --floor 0.15 --ceiling 0.2"},
    {"trend", "free ammonia out of a logbook (--log FILE writes one), as a picture",
     "holdwater trend --rows sea-room.csv --tank birch --of ammonia.free --format svg"},
    {"trend", "what is in a file: each column of readings in a line",
     "holdwater trend --rows readings.csv --tank birch"},
    {NULL, NULL, NULL},
};

static const char *const ready[] = {"volume", "gauge", "salinity", "saltmix", "neutralise", NULL};
static const char *const prove[] = {"challenge", "concentrate", "verdict",
                                    "bioload",   "calendar",    NULL};
static const char *const watch[] = {"ammonia", "nitrite", "oxygen", NULL};
static const char *const treat[] = {"dose", "change", "blend", "buffer", NULL};
static const char *const emergency[] = {"emergency", "binder", "ahead", NULL};
static const char *const rescue[] = {"bath", "course", "bag", NULL};
static const char *const close[] = {"disinfect", "calendar", NULL};
static const char *const record[] = {"trend", NULL};

const struct stage stages[] = {
    {"emergency", emergency}, {"ready", ready},   {"prove", prove},
    {"watch", watch},         {"treat", treat},   {"rescue", rescue},
    {"close", close},         {"record", record}, {NULL, NULL},
};

/* For who asks without a reading: seven acts in order, each in a line. */
static const char *const emergency_card[] = {
    "1. Air and heater on, lid off. Food, dead fish and dirt out. Feed nothing.",
    "2. Test and ask again with --tan, --ph and --medicine (copper, dye, none ...).",
    "3. pH " HW_FIGURE_GOOD_FROM " or more: change half or more, matched, with the medicine in it.",
    "4. Below " HW_FIGURE_SOUR_BELOW
    " no small change: move the fish, or bind first. Between: blend.",
    "5. Binder: not with ionic or amine copper, not with dye. It lets go in a day.",
    "6. No acid, no soda, no salt, no clean filter, no air into a shut bag.",
    "7. Then: bath for burns, verdict and bioload for the cause, a veterinarian.",
    NULL,
};

const struct card cards[] = {{"emergency", emergency_card}, {NULL, NULL}};
