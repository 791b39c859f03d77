/* test_emergency.c - the calculation emergency: situations, every act, and that no act is
 * one that another calculation withholds. */
#include "ask.h"
#include "assert_close.h"
#include "cli/notes.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *emergency(void)
{
    return find_calc("emergency");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(emergency(), line, &question, &answer);
    return result_of(emergency(), &answer, result);
}

#define TANK  ";volume=75L;temp=25;salinity=34"
#define FRESH ";new_ph=8.2;new_alkalinity=2.4meq/L"
#define DOSED ";now=0.18;keep=0.18;strength=1mg/mL"
#define SOUR  "tan=1.5;ph=7.2;medicine=none"
#define GOOD  "tan=1.5;ph=8.1;medicine=none"
#define KNOWN GOOD TANK FRESH ";alkalinity=2.3meq/L"
#define ACID  SOUR TANK FRESH ";alkalinity=0.7meq/L"
#define IDLE  "tan=0.2;ph=8.2;medicine=none" TANK FRESH ";alkalinity=2.4meq/L"
#define IONIC "tan=1.5;ph=8.1;medicine=copper-ionic" TANK FRESH ";alkalinity=2.3meq/L"
#define POND                                                                                       \
    ";volume=75L;temp=25;salinity=0g/kg;ph=7.1;alkalinity=1meq/L;new_ph=7.4;new_alkalinity=1meq/"  \
    "L"
#define STALE                                                                                      \
    "tan=3;ph=7.4;medicine=none;volume=75L;temp=25;salinity=0g/kg;alkalinity=1meq/L;new_ph=7.4;"   \
    "new_alkalinity=1meq/L"
#define AMINE "tan=1.5;ph=8.1;medicine=copper-amine" TANK FRESH ";alkalinity=2.3meq/L"

/* --- Situations ------------------------------------------------------------------------------- */

/* The acts in their order, as they are told. */
static const struct {
    const char *line, *acts;
} situations[] = {
    {"tan=1.5;ph=7;medicine=none" TANK,
     "act-air;act-measure-new;act-under;act-sour;act-binder-first"},
    {"tan=1.5;ph=7;medicine=none" TANK FRESH ";alkalinity=0.5meq/L",
     "act-air;act-under;act-change-sour;act-binder-first"},
    {"tan=1.5;ph=7.4;medicine=copper" TANK,
     "act-air;act-measure-new;act-under;act-sour;act-medicine;act-binder-copper"},
    {"tan=1.5;ph=7.4;medicine=copper" TANK FRESH ";alkalinity=1meq/L" DOSED,
     "act-air;act-under;act-change-sour;act-medicine-add;act-binder-copper"},
    {"tan=1.5;ph=7.7;medicine=dye" TANK, "act-air;act-measure-new;act-sour;act-dye;act-binder-dye"},
    {"tan=1.5;ph=7.7;medicine=dye" TANK FRESH ";alkalinity=1.6meq/L;at_hand=10L",
     "act-air;act-change;act-hand-air;act-dye;act-binder-dye"},
    {"tan=1.5;ph=7.9;medicine=none" TANK, "act-air;act-measure-new;act-between;act-binder-first"},
    {"tan=1.5;ph=8.1;medicine=copper-ionic" TANK,
     "act-air;act-measure-new;act-half;act-medicine;act-binder-copper"},
    {IONIC DOSED ";at_hand=40L",
     "act-air;act-change;act-hand-short;act-medicine-add;act-binder-copper"},
    {"tan=1.5;ph=8.4;medicine=none" TANK, "act-air;act-measure-new;act-half;act-binder"},
    {"tan=1.5;ph=8.4;medicine=none" TANK FRESH ";alkalinity=2.6meq/L",
     "act-air;act-change;act-binder"},
    {"tan=0;ph=8.1;medicine=none" TANK, "act-air;act-no-ammonia"},
    {"tan=0;ph=7.4;nitrite=1;medicine=copper-chelated" TANK,
     "act-air;act-no-ammonia-read;act-medicine;act-nitrite"},
    /* nitrite that kills, beside a trace of ammonia and beside much */
    {"tan=0;ph=8.1;nitrite=5;medicine=none" TANK, "act-air;act-no-ammonia-read;act-nitrite-deadly"},
    {"tan=0.1;ph=8.1;nitrite=5;medicine=none;alkalinity=2.3meq/L" TANK FRESH,
     "act-air;act-under;act-nitrite-deadly;act-binder"},
    {"tan=0.1;nitrite=5;medicine=none" POND, "act-air;act-under;act-nitrite-deadly;act-binder"},
    {"tan=0.1;nitrite=5;medicine=none;at_hand=40L" POND,
     "act-air;act-under;act-nitrite-deadly;act-binder"},
    {"tan=0.1;medicine=none;at_hand=40L" POND, "act-air;act-under;act-change;act-binder"},
    {IDLE ";nitrite=5", "act-air;act-under;act-nitrite-deadly"},
    {KNOWN ";nitrite=5", "act-air;act-nitrite-deadly;act-change;act-binder"},
    {ACID ";nitrite=5", "act-air;act-under;act-nitrite-both;act-binder-first"},
    {ACID ";nitrite=5;at_hand=20L",
     "act-air;act-under;act-nitrite-both;act-hand-worse;act-binder-first"},
    {SOUR TANK ";nitrite=5", "act-air;act-measure-new;act-under;act-nitrite-both;act-binder-first"},
    {GOOD TANK ";nitrite=5", "act-air;act-measure-new;act-nitrite-deadly;act-half;act-binder"},
    /* water that holds as much carbon dioxide as the tank: air frees more than a change does */
    {STALE ";at_hand=40L", "act-air;act-change;act-hand-air;act-binder-first"},
    {STALE, "act-air;act-change-sour;act-binder-first"},
    /* a level above what is to be kept, and above the ceiling */
    {IONIC ";now=0.3;keep=0.18;strength=1mg/mL",
     "act-air;act-change;act-over-ceiling;act-medicine-add;act-binder-copper"},
    {IONIC ";now=0.19;keep=0.04;ceiling=0.24;strength=1mg/mL",
     "act-air;act-change;act-medicine-over;act-binder-copper"},
    {IONIC ";now=180;keep=0.18;strength=1mg/mL",
     "act-air;act-change;act-level-slip;act-binder-copper"},
    /* several medicines, and levels that no single one has */
    {"tan=1.5;ph=8.1;medicine=copper-chelated,formalin;now=1;keep=1" TANK,
     "act-air;act-measure-new;act-half;act-formalin;act-medicine;act-several;act-binder-formalin"},
    {"tan=1.5;ph=8.1;medicine=copper-ionic,dye;now=1;keep=1" TANK,
     "act-air;act-measure-new;act-half;act-dye;act-medicine;act-several;act-binder-copper"},
    /* what a tired keeper knows at first */
    {"tan=1.5;ph=7.2;medicine=copper",
     "act-air;act-measure;act-sour;act-medicine;act-binder-copper"},
};

static void acts_in_order(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof situations / sizeof situations[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        char acts[CODES_MAX];
        ask(emergency(), situations[i].line, &question, &answer);
        notes_codes(emergency(), answer.notes, 0, acts);
        assert_string_equal(acts, situations[i].acts);
        check(answer.status == 0);
    }
}

/* --- Notes and numbers ------------------------------------------------------------------------ */

static const struct note_row rows[] = {
    {"act-air", SOUR, NULL},
    {"act-air", "tan=0;ph=8;medicine=none", NULL},
    {"act-measure", SOUR, SOUR TANK},
    {"act-measure", SOUR ";temp=25;salinity=34", ACID},
    {"act-measure", SOUR ";volume=75L;salinity=34", ACID},
    {"act-measure", SOUR ";volume=75L;temp=25", ACID},
    {"act-measure-new", SOUR TANK, ACID},
    {"act-measure-new", SOUR TANK FRESH, SOUR},
    {"act-measure-new", SOUR TANK ";new_ph=8.2;alkalinity=1meq/L",
     "tan=0;ph=7.2;medicine=none" TANK},
    {"act-readings", "tan=1.5;ph=9.5;medicine=none" TANK FRESH ";alkalinity=0.1meq/L", ACID},
    {"act-readings",
     "tan=1;ph=9.9;medicine=none;volume=75L;temp=25;salinity=34;new_ph=7;new_salinity=31;at_hand="
     "9L",
     "tan=1;ph=9.8;medicine=none;volume=75L;temp=25;salinity=34;new_ph=7;new_salinity=31;"
     "at_hand=9L"},
    {"act-readings", "tan=1.5;ph=9.5;medicine=none" TANK FRESH ";alkalinity=0.1meq/L;at_hand=20L",
     GOOD TANK},
    {"act-ask-again", IONIC ";now=0.18;keep=0.25", IONIC DOSED},
    {"act-ask-again", "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25" DOSED,
     "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25;now=0.18"},
    {"act-no-ammonia", "tan=0;ph=8;medicine=none", SOUR},
    {"act-no-ammonia", "tan=0;ph=8;medicine=none", "tan=0;ph=8;medicine=none;nitrite=0"},
    {"act-no-ammonia-read", "tan=0;ph=8;medicine=none;nitrite=0", "tan=0;ph=8;medicine=none"},
    {"act-no-ammonia-read", "tan=0;ph=8;medicine=none;nitrite=5", SOUR ";nitrite=5"},
    {"act-no-change", IDLE ";nitrite=2.9", IDLE ";nitrite=3"},
    {"act-no-change", IDLE, KNOWN},
    {"act-no-change", IDLE, ACID},
    {"act-under", ACID, KNOWN},
    {"act-under", ACID, SOUR},
    {"act-under", IDLE, "tan=0;ph=8;medicine=none" TANK},
    {"act-change", KNOWN, ACID},
    {"act-change", KNOWN, IDLE},
    {"act-change", KNOWN ";at_hand=20L",
     "tan=1.5;ph=7.9;medicine=none" TANK FRESH ";alkalinity=1meq/L;at_hand=5L"},
    {"act-change-sour", ACID, KNOWN},
    {"act-change-sour", ACID ";at_hand=75L", ACID ";at_hand=20L"},
    {"act-change-sour", STALE, STALE ";at_hand=40L"},
    {"act-change-sour", ACID, ACID ";at_hand=62L"},
    {"act-change-sour", ACID, ACID ";nitrite=3"},
    {"act-hand-air", STALE ";at_hand=40L", STALE},
    {"act-hand-air", STALE ";at_hand=40L", STALE ";at_hand=70L"},
    {"act-hand-air", STALE ";at_hand=40L", KNOWN ";at_hand=20L"},
    {"act-hand-short", KNOWN ";at_hand=20L", KNOWN},
    {"act-hand-short", KNOWN ";at_hand=20L", KNOWN ";at_hand=60L"},
    {"act-hand-worse", ACID ";at_hand=20L", ACID},
    {"act-hand-worse", SOUR TANK ";new_ph=8.2;at_hand=20L", SOUR TANK ";at_hand=20L"},
    {"act-hand-worse", GOOD TANK ";new_ph=8.4;at_hand=2L", GOOD TANK ";new_ph=8.2;at_hand=40L"},
    {"act-half", GOOD, GOOD TANK ";new_ph=8.4;at_hand=2L"},
    {"act-half", GOOD ";new_ph=8.4;at_hand=2L", KNOWN},
    {"act-half", GOOD, SOUR},
    {"act-between", "tan=1.5;ph=7.9;medicine=none", GOOD},
    {"act-between", "tan=1.5;ph=7.9;medicine=none", SOUR},
    {"act-sour", SOUR, GOOD},
    {"act-match", KNOWN ";new_temp=22", KNOWN},
    {"act-match", KNOWN ";new_temp=28", KNOWN ";new_temp=27"},
    {"act-match", KNOWN ";new_salinity=36", KNOWN ";new_salinity=35"},
    {"act-match", KNOWN ";new_salinity=28", IDLE ";new_salinity=28"},
    {"act-copper-fresh", "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25",
     "tan=1.5;ph=8.1;medicine=copper;salinity=1g/kg;temp=25"},
    {"act-copper-fresh", "tan=1.5;ph=8.1;medicine=copper-chelated,dye;salinity=0.4;temp=25",
     "tan=1.5;ph=8.1;medicine=dye;salinity=0.4;temp=25"},
    {"act-medicine-over", IONIC ";now=0.19;keep=0.04;ceiling=0.24",
     IONIC ";now=0.24;keep=0.18;strength=1mg/mL"},
    {"act-medicine-over", "tan=1.5;ph=8.1;medicine=other" TANK ";at_hand=20L;now=0;keep=0",
     "tan=1.5;ph=8.1;medicine=other" TANK ";at_hand=20L;now=0;keep=1"},
    {"act-over-ceiling", IONIC ";now=0.24;keep=0.18", IONIC DOSED},
    {"act-over-ceiling", IONIC ";now=0.24", IONIC ";now=0.24;ceiling=0.24"},
    {"act-over-ceiling", IONIC ";now=0.3;keep=0.25", IONIC ";now=0.18;keep=0.25"},
    {"act-over-ceiling", "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25;now=0.3",
     "tan=1.5;ph=8.1;medicine=copper,dye;now=0.3"},
    {"act-over-ceiling", "tan=1.5;ph=8.1;medicine=dye;now=21",
     "tan=1.5;ph=8.1;medicine=antibiotic;now=1000"},
    {"act-level-slip", IONIC ";now=1.6", IONIC ";now=1.4"},
    {"act-level-slip", "tan=1.5;ph=8.1;medicine=copper;now=8",
     "tan=1.5;ph=8.1;medicine=copper;now=7"},
    {"act-level-slip", "tan=1.5;ph=8.1;medicine=copper-chelated;now=8",
     "tan=1.5;ph=8.1;medicine=dye;now=8"},
    {"act-medicine-over", IONIC ";now=0.19;keep=0.04;ceiling=0.24", IONIC ";now=0.18;keep=0.17"},
    {"act-medicine-add", IONIC DOSED, IONIC ";now=0.18;keep=0.18"},
    {"act-medicine-add",
     "tan=0;nitrite=1;ph=8.1;medicine=antibiotic" TANK ";at_hand=20L;now=5;keep=5;strength=10mg/mL",
     IONIC ";now=0.18;strength=1mg/mL"},
    {"act-medicine-add",
     "tan=1.5;ph=8.1;medicine=other;volume=75L;at_hand=20L;now=5;keep=5;"
     "strength=10mg/mL",
     "tan=1.5;ph=8.1;medicine=copper;volume=75L;at_hand=20L" DOSED},
    {"act-medicine-add", AMINE ";now=0.4;keep=0.4;strength=1mg/mL;ceiling=0.5",
     "tan=1.5;ph=8.1;medicine=other;at_hand=20L;now=5;keep=5;strength=10mg/mL"},
    {"act-medicine-add",
     "tan=1.5;ph=8.1;medicine=copper-chelated,binder" TANK
     ";at_hand=200L;now=1;keep=1;strength=10mg/mL;ceiling=2",
     IONIC ";keep=0.18;strength=1mg/mL"},
    {"act-keep-now",
     "tan=1.5;ph=8.1;medicine=copper" TANK ";now=0.05;keep=0.18;strength=1mg/mL;at_hand=75L",
     IONIC DOSED},
    {"act-keep-now",
     "tan=1.5;ph=8.1;medicine=copper-chelated" TANK
     ";at_hand=60L;now=0.5;keep=1.6;ceiling=2;strength=10mg/mL",
     IONIC},
    {"act-ceiling", AMINE ";now=0.4;keep=0.4;strength=1mg/mL", AMINE},
    {"act-strength",
     "tan=1.5;ph=8.1;medicine=other" TANK ";at_hand=20L;now=500;keep=500;strength=1mg/mL",
     IONIC DOSED},
    {"act-formalin", "tan=1.5;ph=8.1;medicine=formalin", GOOD},
    {"act-dye", "tan=1.5;ph=8.1;medicine=dye", GOOD},
    {"act-dye", "tan=1.5;ph=8.1;medicine=dye;now=3;keep=3;strength=10mg/mL" TANK, GOOD},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=copper", GOOD},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=copper,antibiotic" TANK DOSED, IONIC DOSED},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=copper-chelated,formalin",
     "tan=1.5;ph=8.1;medicine=dye,formalin"},
    {"act-several", "tan=1.5;ph=8.1;medicine=copper,antibiotic" TANK DOSED,
     "tan=1.5;ph=8.1;medicine=copper,antibiotic" TANK},
    {"act-several", "tan=1.5;ph=8.1;medicine=dye,formalin;now=3", IONIC ";now=0.18"},
    {"act-several", "tan=1.5;ph=8.1;medicine=dye,formalin;keep=3",
     "tan=1.5;ph=8.1;medicine=dye;keep=3"},
    {"act-several", "tan=1.5;ph=8.1;medicine=dye,formalin;strength=3mg/mL",
     "tan=1.5;ph=8.1;medicine=binder,formalin;strength=3mg/mL"},
    {"medicine-none-level", GOOD DOSED, GOOD},
    {"medicine-none-level", GOOD ";ceiling=1", IONIC ";ceiling=0.2"},
    {"medicine-none-level", "tan=1.5;ph=8.1;medicine=binder;keep=0.18",
     "tan=1.5;ph=8.1;medicine=binder"},
    {"act-medicine", "tan=0;nitrite=1;ph=8.1;medicine=copper", "tan=0;ph=8.1;medicine=copper"},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=copper", "tan=1.5;ph=8.1;medicine=dye"},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=antibiotic", "tan=1.5;ph=8.1;medicine=formalin"},
    {"act-medicine", "tan=1.5;ph=8.1;medicine=other", "tan=1.5;ph=8.1;medicine=binder"},
    {"act-binder-copper", "tan=1.5;ph=8.1;medicine=copper,dye", GOOD},
    {"act-binder-copper", "tan=1.5;ph=8.1;medicine=copper-amine",
     "tan=1.5;ph=8.1;medicine=copper-chelated"},
    {"act-binder-dye", "tan=1.5;ph=8.1;medicine=dye,binder", GOOD},
    {"act-binder-oxygen", "tan=4.4;ph=8.1;medicine=none", "tan=4.3;ph=8.1;medicine=none"},
    {"act-binder-again", "tan=1.5;ph=8.1;medicine=binder,other", GOOD},
    {"act-binder-formalin", "tan=1.5;ph=8.1;medicine=formalin,other", GOOD},
    {"act-binder-label", "tan=1.5;ph=8.1;medicine=other", GOOD},
    {"act-binder-label", "tan=1.5;ph=8.1;medicine=copper-chelated", GOOD},
    {"act-binder", GOOD, SOUR},
    {"act-binder", GOOD, IDLE},
    {"act-binder-first", SOUR, GOOD},
    {"act-binder-first", SOUR, "tan=0;ph=7.2;medicine=none"},
    {"act-nitrite-deadly", "tan=0;ph=8.1;medicine=none;nitrite=3",
     "tan=0;ph=8.1;medicine=none;nitrite=2.9"},
    {"act-nitrite-deadly", GOOD ";nitrite=3", SOUR ";nitrite=3"},
    {"act-nitrite-deadly", "tan=0;ph=7.2;medicine=none;nitrite=3", GOOD ";nitrite=2.9"},
    {"act-nitrite-deadly", STALE ";nitrite=3", ACID ";nitrite=3"},
    {"act-nitrite-both", ACID ";nitrite=3", ACID ";nitrite=2.9"},
    {"act-nitrite-both", SOUR ";nitrite=3", GOOD ";nitrite=3"},
    /* half of it cannot be reckoned with */
    {"act-nitrite-both",
     "tan=1;ph=10;nitrite=5;medicine=none;volume=75L;temp=25;salinity=0g/kg;alkalinity=0.5meq/L;"
     "new_ph=10;new_alkalinity=3meq/L;new_salinity=5g/kg",
     "tan=1;ph=10;nitrite=5;medicine=none;volume=75L;temp=25;salinity=5g/kg;alkalinity=3meq/L;"
     "new_ph=8;new_alkalinity=3meq/L"},
    {"act-nitrite-both", "tan=0.1;ph=7.9;medicine=none;nitrite=3", KNOWN ";nitrite=3"},
    {"act-nitrite", "tan=0;ph=8.1;medicine=none;nitrite=2.9",
     "tan=0;ph=8.1;medicine=none;nitrite=0"},
    {"act-nitrite", "tan=0;ph=8.1;medicine=none;nitrite=2.9", "tan=0;ph=8.1;medicine=none"},
    {"act-nitrite-too", GOOD ";nitrite=0.1", "tan=0;ph=8.1;medicine=none;nitrite=0.1"},
    {"act-nitrite-too", GOOD ";nitrite=2.9", GOOD ";nitrite=3"},
    {"act-nitrite-too", GOOD ";nitrite=0.1", GOOD},
    {"act-again", KNOWN ";at_hand=60L;rise=0.4", KNOWN ";at_hand=60L;rise=0.1"},
    {"act-again", KNOWN ";rise=0.4", KNOWN ";at_hand=60L"},
    {"act-again", IDLE ";rise=1", KNOWN ";at_hand=40L;rise=0.4"},
    {"act-never", IONIC ";now=0.18;keep=0.3", NULL},
    {"act-kit", "tan=1.5;ph=8.1;medicine=dye", GOOD},
    {"act-kit-end", "tan=3;ph=8.1;medicine=none", "tan=2.9;ph=8.1;medicine=none"},
    {"act-test", IONIC ";now=0.18;keep=0.3", NULL},
    {"act-later", IONIC ";now=0.18;keep=0.3", NULL},
    {"act-numbers", SOUR, IONIC ";now=0.18;keep=0.3"},
    {"kit-basis", SOUR, IONIC ";now=0.18;keep=0.3"},
    {"pour-large",
     "tan=1.5;ph=8.1;medicine=other" TANK ";at_hand=20L;now=50;keep=50;strength=1mg/mL",
     IONIC DOSED},
    {"small-liquid", IONIC ";now=0.18;keep=0.18;strength=100mg/mL", IONIC DOSED},
    {"new-too-strong", IONIC ";now=0.15;keep=0.18;at_hand=20L", IONIC DOSED},
    {"keep-over-ceiling", IONIC ";now=0.18;keep=0.3", IONIC DOSED},
    {"keep-over-ceiling", "tan=1.5;ph=7.4;medicine=copper;now=0.18;keep=0.3", IONIC},
    {"dye-over", "tan=1.5;ph=8.1;medicine=dye;now=3;keep=21",
     "tan=1.5;ph=8.1;medicine=dye;now=3;keep=20"},
    {"ceiling-too-high", IONIC DOSED ";ceiling=0.3", IONIC DOSED ";ceiling=0.24"},
    {"ceiling-slip", AMINE ";now=0.4;keep=0.4;ceiling=50", AMINE ";now=0.4;keep=0.4;ceiling=0.5"},
    {"copper-in-fresh", "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25" DOSED,
     "tan=1.5;ph=8.1;medicine=copper;salinity=0.4;temp=25;now=0.18"},
    {"ask-vet", SOUR, NULL},
    {"ask-vet", IONIC ";now=0.18;keep=0.3", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(emergency(), rows, sizeof rows / sizeof rows[0]);
}

static void every_edge(void **state)
{
    (void)state;
    static const struct note_edge edges[] = {
        {"act-sour", BELOW, 7.8, "ph", NULL, SOUR},
        {"act-half", FROM, 8.0, "ph", NULL, GOOD},
        {"act-between", BELOW, 8.0, "ph", NULL, "tan=1.5;ph=7.9;medicine=none"},
        {"act-under", UP_TO, 1, "tan", "long_ratio", "tan=0.5;ph=8.1;medicine=none" TANK},
        {"act-match", ABOVE, 27, "new_temp", NULL, KNOWN ";new_temp=27"},
        {"act-match", BELOW, 24, "new_temp", NULL, KNOWN ";new_temp=24"},
        {"act-match", ABOVE, 35, "new_salinity", NULL, KNOWN ";new_salinity=35"},
        {"act-match", BELOW, 29, "new_salinity", NULL, KNOWN ";new_salinity=29"},
        {"act-copper-fresh", BELOW, 1, "salinity", NULL,
         "tan=1.5;ph=8.1;medicine=copper;salinity=1g/kg;temp=25"},
        {"act-nitrite-deadly", FROM, 3, "nitrite", NULL, "tan=0;ph=8;medicine=none;nitrite=3"},
        {"act-nitrite-both", FROM, 3, "nitrite", NULL, SOUR ";nitrite=3"},
        {"act-over-ceiling", ABOVE, 0.2, "now", NULL, IONIC ";now=0.2"},
        {"act-level-slip", ABOVE, 1.5, "now", NULL, IONIC ";now=1.5"},
        {"act-level-slip", ABOVE, 7.5, "now", NULL, "tan=1.5;ph=8.1;medicine=copper;now=7.5"},
        {"act-binder-oxygen", ABOVE, 5 / (0.5 * 31.998 / 14.007), "tan", NULL,
         "tan=4.4;ph=8.1;medicine=none"},
        {"act-again", BELOW, 24, "rise", "hours_again", KNOWN ";at_hand=60L;rise=0.15"},
        {"act-kit-end", FROM, 3, "tan", NULL, "tan=3;ph=8.1;medicine=none"},
    };
    check_edges(emergency(), edges, sizeof edges / sizeof edges[0]);
}

/* Each number is the one that the calculation named tells, and is absent without what it needs. */
static void numbers_of_others(void **state)
{
    (void)state;
    struct hw_question question;
    struct hw_answer answer;
    static const char *const all[] = {"long_ratio",    "share_needed", "water_needed",
                                      "at_hand_ratio", "add_liquid",   "binder_allowed",
                                      "hours_again"};
    for (size_t i = 0; i < sizeof all / sizeof all[0]; i++) {
        check(isfinite(ask_for(IONIC DOSED ";at_hand=60L;rise=0.4", all[i])));
        assert_no_answer(ask_for("tan=1.5;ph=8.1;medicine=other", all[i]));
    }
    check(isfinite(ask_for(GOOD ";temp=25;salinity=34;alkalinity=2.3meq/L" FRESH, "share_needed")));
    assert_no_answer(
        ask_for(GOOD ";temp=25;salinity=34;alkalinity=2.3meq/L" FRESH, "water_needed"));
    ask(find_calc("blend"),
        "volume=75L;tan=1.5;ph=8.1;alkalinity=2.3meq/L;temp=25;salinity=34;new_ph=8.2;"
        "new_alkalinity=2.4meq/L;new_temp=25;new_salinity=34",
        &question, &answer);
    assert_close(ask_for(KNOWN, "share_needed"), result_of(question.calc, &answer, "share_needed"),
                 0, 0);
    assert_close(ask_for(KNOWN, "water_needed"), result_of(question.calc, &answer, "water_needed"),
                 0, 0);
    ask(find_calc("ammonia"), "tan=1.5;ph=8.1;temp=25;salinity=34", &question, &answer);
    assert_close(ask_for(KNOWN, "long_ratio"), result_of(question.calc, &answer, "long_ratio"), 0,
                 1e-12);
    ask(find_calc("change"),
        "volume=75L;take=20L;now=0.18;keep=0.17;kind=copper-ionic;salinity=34;strength=1mg/mL",
        &question, &answer);
    assert_close(ask_for(IONIC ";now=0.18;keep=0.17;strength=1mg/mL;at_hand=20L", "add_liquid"),
                 result_of(question.calc, &answer, "add_liquid"), 0, 0);
    /* more than the tank holds changes all of it */
    assert_close(ask_for(KNOWN ";at_hand=100L", "at_hand_ratio"), 0, 0, 0);
    /* what is left of the change that is needed, or of none, to the limit; in the kit's basis */
    assert_close(ask_for(KNOWN ";rise=0.4", "hours_again"), 0, 0, 0);
    double limit = total_at("long_ratio", "ph=8.2;temp=25;salinity=34");
    assert_close(ask_for("tan=0.2;ph=8.2;medicine=none;rise=0.1" TANK, "hours_again"),
                 (limit - 0.2) / 0.1 * 24, 0, 1e-12);
    assert_close(ask_for("tan=0.2;basis=nh3;ph=8.2;medicine=none;rise=0.1" TANK, "hours_again"),
                 (limit * 17.031 / 14.007 - 0.2) / 0.1 * 24, 0, 1e-12);
    assert_no_answer(ask_for(GOOD TANK ";rise=0.1", "hours_again"));
    assert_close(ask_for("tan=1.5;ph=8;medicine=copper-chelated", "binder_allowed"), 1, 0, 0);
    assert_close(ask_for("tan=1.5;ph=8;medicine=dye", "binder_allowed"), 0, 0, 0);
    assert_no_answer(ask_for("tan=1.5;ph=8;medicine=other", "binder_allowed"));
}

/* As an act says; and absent where there is nothing to bind. */
static void binder_as_the_acts_say(void **state)
{
    (void)state;
    assert_close(ask_for("tan=1;ph=8.1;medicine=binder", "binder_allowed"), 0, 0, 0);
    assert_close(ask_for("tan=1;ph=8.1;medicine=binder,other", "binder_allowed"), 0, 0, 0);
    assert_close(
        ask_for("tan=1;ph=8.1;medicine=formalin,antibiotic,copper-chelated", "binder_allowed"), 0,
        0, 0);
    assert_no_answer(ask_for("tan=0;ph=8.1;medicine=none;nitrite=5", "binder_allowed"));
    assert_close(ask_for("tan=0;ph=8.1;medicine=copper;nitrite=5", "binder_allowed"), 0, 0, 0);
}

/* The amount is for the water that goes in: no more than is at hand, no more than is needed, and at
 * least half where nitrite can kill. */
static void amount_for_the_water_that_goes_in(void **state)
{
    (void)state;
    double needed = ask_for(IONIC, "water_needed");
    assert_close(ask_for(IONIC DOSED ";at_hand=100L", "add_liquid"), 0.18 * needed, 0, 1e-12);
    assert_close(ask_for(IONIC DOSED ";at_hand=40L", "add_liquid"), 0.18 * 40, 0, 1e-12);
    assert_close(ask_for(IONIC DOSED, "add_liquid"), 0.18 * needed, 0, 1e-12);
    const char *unknown = "tan=0.8;ph=8.1;medicine=copper-ionic" TANK DOSED ";at_hand=100L";
    assert_close(ask_for(unknown, "add_liquid"), 0.18 * 75, 0, 1e-12);
    const char *trace = "tan=0.1;ph=8.1;medicine=copper-ionic;alkalinity=2.3meq/L" TANK FRESH DOSED;
    char line[300];
    (void)snprintf(line, sizeof line, "%s;nitrite=5", trace);
    check(ask_for(trace, "water_needed") < 37.5);
    assert_close(ask_for(line, "add_liquid"), 0.18 * 37.5, 0, 1e-12);
    assert_close(ask_for("tan=0;nitrite=5;ph=8.1;medicine=copper-ionic" TANK DOSED, "add_liquid"),
                 0.18 * 37.5, 0, 1e-12);
    /* above the level to keep, and not so far that plain water would do */
    assert_close(ask_for(IONIC ";now=0.3;keep=0.18;strength=1mg/mL;at_hand=50L", "add_liquid"),
                 0.18 * 75 - 0.3 * 25, 0, 1e-12);
    assert_no_answer(ask_for(IONIC ";now=1.6;keep=0.18;strength=1mg/mL", "add_liquid"));
}

/* --- No act that another rule withholds ------------------------------------------------------- */

enum { LINE = 1600, QUESTIONS = 3000 };

static const char *const medicines[] = {
    "none",         "copper",           "copper-ionic",
    "copper-amine", "copper-chelated",  "dye",
    "formalin",     "antibiotic",       "binder",
    "other",        "copper-ionic,dye", "copper-chelated,binder"};
static const char *const kinds[] = {"",
                                    "copper-ionic",
                                    "copper-ionic",
                                    "copper-amine",
                                    "copper-chelated",
                                    "dye",
                                    "",
                                    "other",
                                    "",
                                    "other",
                                    "",
                                    "copper-chelated"};

/* A part of a question, as it is written for every calculation. */
struct part {
    char text[100];
};

static struct part part_of(const char *name, double lo, double hi, const char *unit, double chance)
{
    struct part part = {""};
    double value = hw_random_between(lo, hi);
    if (hw_random_between(0, 1) < chance) {
        (void)snprintf(part.text, sizeof part.text, ";%s=%.6f%s", name, value, unit);
    }
    return part;
}

/* Asks another calculation; false where it does not take the question. */
static bool ask_other(const char *name, const char *line, struct hw_answer *answer)
{
    struct hw_question question;
    size_t which = 0;
    if (ask_settle(find_calc(name), line, &question, &which) != HW_FINE) {
        return false;
    }
    hw_question_answer(&question, answer);
    return true;
}

static double other_result(const char *name, const struct hw_answer *answer, const char *result)
{
    return result_of(find_calc(name), answer, result);
}

static bool told(const struct hw_answer *answer, const char *code)
{
    return noted(emergency(), answer, code);
}

/* The medicine: `change` gives the same, `dose` does not withhold it, and a dye is never told. */
static size_t hold_medicine(const struct hw_answer *answer, const char *line, const char *kind,
                            const char *dose)
{
    struct hw_answer other;
    double add = result_of(emergency(), answer, "add_liquid");
    check(!told(answer, "act-medicine-add") || !isnan(add));
    if (told(answer, "act-medicine-over") && ask_other("change", line, &other)) {
        check(isnan(add) && !(other_result("change", &other, "new_needed") > 1e-9));
    }
    if (isnan(add)) {
        return 0;
    }
    check(kind[0] != '\0' && strcmp(kind, "dye") != 0);
    check(ask_other("change", line, &other) && other.status >= 0);
    assert_close(other_result("change", &other, "add_liquid"), add, 0, 1e-9);
    check(ask_other("dose", dose, &other) && other.status != -2);
    return 1;
}

/* The binder: it is not allowed where the mildest agent is withheld or an act says no binder, and
 * only there. */
static void hold_binder(const struct hw_answer *answer, const char *line, double allowed)
{
    struct hw_answer other;
    bool spoiled = told(answer, "act-binder-again") || told(answer, "act-binder-formalin");
    bool no_act = spoiled || told(answer, "act-binder-copper") || told(answer, "act-binder-dye") ||
                  told(answer, "act-binder-oxygen");
    check(ask_other("binder", line, &other));
    check(!no_act || allowed == 0 || answer->status < 0);
    check(allowed != 0 || other.status == -2 || strstr(line, "binder;") ||
          strstr(line, "formalin"));
    check(!(allowed > 0) || other.status >= 0);
    bool bind = told(answer, "act-binder") || told(answer, "act-binder-first") ||
                told(answer, "act-binder-label");
    check(!bind || other.status >= 0);
}

/* The highest free ammonia after a change of this share, a hundredth of a per cent for none; and
 * whether the total is then under the limit for days, by ammonia. */
static double highest_after(const char *waters, double share, bool *under)
{
    struct hw_answer other;
    char line[LINE + 200];
    (void)snprintf(line, sizeof line, "%s;share=%.12f%%", waters, share);
    *under = false;
    if (!ask_other("blend", line, &other) || other.status < 0 ||
        isnan(other_result("blend", &other, "ph_aired"))) {
        return (double)NAN;
    }
    double ph = fmax(other_result("blend", &other, "ph_after"),
                     fmax(other_result("blend", &other, "ph_aired"),
                          other_result("blend", &other, "ph_same_co2")));
    double highest = fmax(other_result("blend", &other, "free_after"),
                          fmax(other_result("blend", &other, "free_aired"),
                               other_result("blend", &other, "free_same_co2")));
    (void)snprintf(line, sizeof line, "tan=%.12f;ph=%.12f;temp=%.12f;salinity=%.12fg/kg",
                   other_result("blend", &other, "tan_after"), ph,
                   other_result("blend", &other, "temp_after"),
                   other_result("blend", &other, "salinity_after"));
    check(ask_other("ammonia", line, &other));
    *under = other_result("ammonia", &other, "long_ratio") <= 1;
    return highest;
}

/* Nitrite that can kill: half is ordered or the fish are moved, and never is half forbidden where
 * it leaves ammonia under the limit. */
static size_t hold_nitrite(const struct hw_answer *answer, const char *waters, double nitrite)
{
    bool under = false;
    (void)highest_after(waters, 50, &under);
    bool forbids = told(answer, "act-change-sour") || told(answer, "act-nitrite-both") ||
                   told(answer, "act-binder-first");
    bool deadly = told(answer, "act-nitrite-deadly");
    check((deadly || told(answer, "act-nitrite-both")) == (nitrite >= 3));
    check(!(deadly && told(answer, "act-nitrite-both")));
    check(!under || !forbids);
    bool nothing = told(answer, "act-no-change") || told(answer, "act-sour") ||
                   told(answer, "act-between") || told(answer, "act-change-sour");
    check(nitrite < 3 || !nothing);
    return deadly && under ? 1 : 0;
}

/* The water at hand: what is told to beat air does, and what is forbidden does not. */
static size_t hold_hand(const struct hw_answer *answer, const char *waters, double at_hand)
{
    bool under = false;
    double share = at_hand / 75 * 100;
    double none = highest_after(waters, 0.01, &under);
    double after = highest_after(waters, share, &under);
    bool air = told(answer, "act-hand-air");
    check(!air || after <= none * (1 + 1e-3));
    check(!told(answer, "act-hand-worse") || isnan(after) ||
          (after >= none * (1 - 1e-3) && !under));
    return air ? 1 : 0;
}

/* The change: never one that `blend` says frees more, or does not do it. */
static size_t hold_change(const struct hw_answer *answer, const char *waters, const char *at_hand,
                          double ph)
{
    struct hw_answer other;
    char line[LINE + 200];
    bool known = ask_other("blend", waters, &other) && other.status >= 0;
    double share = known ? other_result("blend", &other, "share_needed") : (double)NAN;
    bool change = told(answer, "act-change") || told(answer, "act-change-sour");
    bool some = told(answer, "act-half") || told(answer, "act-between") || told(answer, "act-sour");
    check(!told(answer, "act-half") || ph >= 8);
    check(!(some && change) && !(told(answer, "act-hand-short") && told(answer, "act-hand-worse")));
    check(!change || !isnan(share));
    check(isnan(share) || answer->status < 0 ||
          result_of(emergency(), answer, "share_needed") == share);
    if (change && share < 100) {
        (void)snprintf(line, sizeof line, "%s;share=%.12f%%", waters, fmin(share + 1e-6, 100));
        check(ask_other("blend", line, &other) && other.status >= 0);
        check(!noted(find_calc("blend"), &other, "blend-no-help"));
        check(!noted(find_calc("blend"), &other, "blend-short"));
        check(!noted(find_calc("blend"), &other, "blend-frees"));
    }
    if (told(answer, "act-hand-short")) {
        (void)snprintf(line, sizeof line, "%s%s", waters, at_hand);
        check(ask_other("blend", line, &other) && other.status >= 0);
        check(!noted(find_calc("blend"), &other, "blend-no-help"));
        check(!noted(find_calc("blend"), &other, "blend-frees"));
    }
    return change ? 1 : 0;
}

struct counts {
    size_t withheld, added, changed, worse, deadly, air;
};

/* One random question, as each calculation is asked it. */
struct situation {
    size_t m;
    double ph, nitrite, water;
    bool known_salinity;
    char emergency[LINE], change[LINE], dose[LINE], waters[LINE], binder[LINE];
    char at_hand[60];
};

/* No more than is at hand, nor than is needed, which is half of the tank against nitrite. */
static double water_that_goes_in(const struct situation *s)
{
    struct hw_answer other;
    bool known = ask_other("blend", s->waters, &other) && other.status >= 0;
    double needed = known ? other_result("blend", &other, "water_needed") : (double)NAN;
    needed = needed > 0 ? needed : (double)NAN;
    return fmin(s->water, s->nitrite >= 3 ? fmax(needed, 37.5) : needed);
}

/* The medicine, as emergency, change and dose are asked about it. */
static void write_medicine(struct situation *s, const struct part *salinity)
{
    size_t m = s->m;
    double most = m == 3 || m == 4 || m == 11 ? 2 : m == 5 ? 25 : 0.3;
    double level = hw_random_between(0, hw_random_between(0, 1) < 0.9 ? most : 3 * most);
    double keep = hw_random_between(0, 1) < 0.6 ? level : hw_random_between(0, most);
    struct part ceiling = part_of("ceiling", 0, 2 * most, "", 0.5);
    const char *copper = strncmp(kinds[m], "copper", 6) == 0 ? salinity->text : "";
    double in = water_that_goes_in(s);
    size_t end = strlen(s->emergency);
    if (strcmp(medicines[m], "none") != 0 && strcmp(medicines[m], "binder") != 0) {
        (void)snprintf(s->emergency + end, sizeof s->emergency - end,
                       ";now=%.6f;keep=%.6f;strength=1mg/mL%s", level, keep, ceiling.text);
    }
    (void)snprintf(s->change, sizeof s->change,
                   "volume=75L;take=%.15gL;now=%.6f;kind=%s%s;keep=%.6f;strength=1mg/mL%s", in,
                   level, kinds[m], copper, keep, ceiling.text);
    (void)snprintf(s->dose, sizeof s->dose, "volume=%.15gL;kind=%s;target=%.6f;strength=1mg/mL%s%s",
                   in, kinds[m], keep, copper, ceiling.text);
}

static void write_situation(struct situation *s)
{
    s->m = (size_t)hw_random_between(0, sizeof medicines / sizeof medicines[0]);
    double tan =
        hw_random_between(0, 1) < 0.3 ? hw_random_between(0.02, 0.3) : hw_random_between(0.05, 5);
    s->ph = hw_random_between(6.8, 8.5);
    s->water = hw_random_between(5, 75);
    s->nitrite = hw_random_between(0, 1) < 0.4 ? hw_random_between(2, 8) : 0;
    struct part temp = part_of("temp", 18, 30, "", 0.9);
    struct part salinity = part_of("salinity", 0, 36, "g/kg", 0.9);
    struct part alkalinity = part_of("alkalinity", 0.6, 3, "meq/L", 0.8);
    struct part new_ph = part_of("new_ph", 7.2, 8.4, "", 0.8);
    struct part new_alkalinity = part_of("new_alkalinity", 0.8, 3, "meq/L", 0.8);
    s->known_salinity = salinity.text[0] != '\0';
    (void)snprintf(s->at_hand, sizeof s->at_hand, ";take=%.6fL", s->water);
    (void)snprintf(s->emergency, sizeof s->emergency,
                   "tan=%.6f;ph=%.6f;medicine=%s;volume=75L%s%s%s%s%s;at_hand=%.15gL;nitrite=%.6f",
                   tan, s->ph, medicines[s->m], temp.text, salinity.text, alkalinity.text,
                   new_ph.text, new_alkalinity.text, s->water, s->nitrite);
    (void)snprintf(s->waters, sizeof s->waters,
                   "volume=75L;tan=%.6f;ph=%.6f%s%s%s%s%s;new_%s;new_%s", tan, s->ph, temp.text,
                   salinity.text, alkalinity.text, new_ph.text, new_alkalinity.text,
                   temp.text[0] ? temp.text + 1 : "temp=1",
                   salinity.text[0] ? salinity.text + 1 : "salinity=1g/kg");
    (void)snprintf(s->binder, sizeof s->binder,
                   "volume=75L;tan=%.6f;medicine=%s;agent=hydroxymethanesulfonate", tan,
                   medicines[s->m]);
    write_medicine(s, &salinity);
}

static void one_random_question(struct counts *counts)
{
    struct situation s = {0};
    struct hw_answer answer;
    struct hw_answer other;
    write_situation(&s);
    const char *kind = kinds[s.m];
    check(ask_other("emergency", s.emergency, &answer));
    counts->added += hold_medicine(&answer, s.change, kind, s.dose);
    counts->withheld += answer.status == -2 ? 1 : 0;
    counts->changed += hold_change(&answer, s.waters, s.at_hand, s.ph);
    counts->worse += told(&answer, "act-hand-worse") ? 1 : 0;
    counts->deadly += hold_nitrite(&answer, s.waters, s.nitrite);
    counts->air += hold_hand(&answer, s.waters, s.water);
    hold_binder(&answer, s.binder, result_of(emergency(), &answer, "binder_allowed"));
    if (kind[0] != '\0' && strcmp(kind, "dye") != 0) {
        bool known = strncmp(kind, "copper", 6) != 0 || s.known_salinity;
        check(!known || (ask_other("change", s.change, &other) &&
                         (other.status == -2) == (answer.status == -2)));
    }
}

static void no_act_that_another_rule_withholds(void **state)
{
    (void)state;
    struct counts counts = {0, 0, 0, 0, 0, 0};
    hw_random_start(20310308);
    for (int i = 0; i < QUESTIONS; i++) {
        one_random_question(&counts);
    }
    (void)printf("%zu withheld, %zu amounts, %zu changes told, %zu with too little water\n",
                 counts.withheld, counts.added, counts.changed, counts.worse);
    (void)printf("%zu with deadly nitrite, %zu better than air alone\n", counts.deadly, counts.air);
    assert_true(counts.withheld > 200 && counts.added > 100 && counts.changed > 200 &&
                counts.worse > 100 && counts.deadly > 100 && counts.air > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(acts_in_order),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(numbers_of_others),
        cmocka_unit_test(binder_as_the_acts_say),
        cmocka_unit_test(amount_for_the_water_that_goes_in),
        cmocka_unit_test(no_act_that_another_rule_withholds),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
