/* test_dose.c - the calculation dose: amounts, steps, formalin, what was poured already, every
 * note. */
#include "assert_close.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *dose(void)
{
    return find_calc("dose");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(dose(), line, &question, &answer);
    return result_of(dose(), &answer, result);
}

static void by_label_and_by_strength(void **state)
{
    (void)state;
    static const char *const label =
        "volume=75L;kind=other;target=0.3;label_liquid=1mL;label_per=40L;label_raises=0.15";
    assert_close(ask_for(label, "liquid"), 3.75, 0, 1e-15);
    assert_close(ask_for(label, "active"), 22.5, 0, 1e-15);
    assert_close(ask_for(label, "level_after"), 0.3, 0, 1e-15);
    assert_close(ask_for("volume=75L;kind=other;target=0.3;strength=6mg/mL", "liquid"), 3.75, 0,
                 1e-15);
    /* A label that counts the salt says less of copper, by the share of copper in it. */
    static const char *const salt =
        "volume=75L;kind=copper-ionic;salinity=33;target=0.18;label_liquid=1mL;"
        "label_per=40L;label_raises=0.15;strength_as="
        "copper-sulfate-pentahydrate";
    assert_close(ask_for(salt, "liquid"), 0.18 * 75 / 6 * 249.677 / 63.546, 0, 1e-14);
}

#define COPPER       "volume=110L;kind=copper-ionic;salinity=33;"
#define CRYSTAL      COPPER "source=copper-sulfate-pentahydrate;"
#define IONIC        COPPER "strength=1mg/mL;"
#define FRESH        "volume=110L;kind=copper-ionic;strength=1mg/mL;"
#define AMINE_BARE   "volume=110L;kind=copper-amine;salinity=33;strength=2mg/mL;"
#define CHELATE_BARE "volume=110L;kind=copper-chelated;salinity=33;strength=8mg/mL;"
#define AMINE        AMINE_BARE "floor=0.4;ceiling=0.5;"
#define CHELATE      CHELATE_BARE "floor=1.5;ceiling=2;"
#define DYE          "volume=110L;kind=dye;biofilter=no;strength=1%wv;"
#define OTHER        "volume=110L;kind=other;strength=1%wv;"
#define WEAK         "volume=110L;kind=other;strength=0.1mg/mL;"
#define POWDER       "volume=110L;kind=other;source=powder;"
#define FORMAL       "volume=110L;kind=formalin;temp=20.5;formalin_basis="
#define COLD         "volume=110L;kind=formalin;temp=10;formalin_basis="
#define WARM         "volume=110L;kind=formalin;temp=25.5;formalin_basis="
#define LABEL        POWDER "label_per=80L;label_raises=2.5;"

static void solids(void **state)
{
    (void)state;
    /* 200 mg in a label's 400 mg; of a rise that counts the blue salt a quarter is copper. */
    assert_close(ask_for(LABEL "label_mass=0.4g;target=9", "step_mass"), 9 * 0.11 * 2, 0, 1e-14);
    assert_close(ask_for(LABEL "label_mass=0.4g;added=2g", "level_after"), 1000 / 110.0, 0, 1e-14);
    assert_close(ask_for(COPPER "source=powder;target=0.18;label_mass=0.4g;label_per=80L;"
                                "label_raises=0.2;strength_as=copper-sulfate-pentahydrate",
                         "mass"),
                 0.0198 * 25 * 249.677 / 63.546, 0, 1e-14);
    assert_close(ask_for(CRYSTAL "target=0.18", "mass"), 0.0198 * 249.677 / 63.546, 0, 1e-14);
    assert_close(ask_for(CRYSTAL "target=0.18;purity=98%", "mass"),
                 0.0198 / 0.98 * 249.677 / 63.546, 0, 1e-14);
    assert_close(ask_for(POWDER "target=50", "mass"), 5.5, 0, 1e-15);
    assert_close(ask_for(POWDER "target=50;purity=80%", "mass"), 6.875, 0, 1e-15);
    assert_close(ask_for(COPPER "source=powder;purity=39.8%;target=0.18", "mass"), 0.0198 / 0.398,
                 0, 1e-14);
    assert_close(ask_for(POWDER "added=5.5g", "level_after"), 50, 0, 1e-15);
    assert_close(ask_for(CRYSTAL "added=50mg", "active"), 50 * 63.546 / 249.677, 0, 1e-14);
}

static void steps_over_days(void **state)
{
    (void)state;
    static const char *const ramp = IONIC "target=0.18;steps=4;days=4d";
    assert_close(ask_for(ramp, "liquid"), 19.8, 0, 1e-14);
    assert_close(ask_for(ramp, "step_amount"), 4.95, 0, 1e-14);
    assert_close(ask_for(ramp, "step_every"), 24, 0, 0);
    assert_close(ask_for(ramp, "level_after"), 0.18, 0, 1e-14);
    assert_close(ask_for(IONIC "target=0.18", "step_amount"), 19.8, 0, 1e-14);
    assert_close(ask_for(IONIC "target=0.18;steps=6;days=36h", "step_every"), 6, 0, 1e-15);
    assert_close(ask_for(POWDER "target=50;steps=5;days=5", "step_mass"), 1.1, 0, 1e-15);
}

/* The three meanings of a level are one level, whichever it was asked for in. */
static void formalin_in_three_bases(void **state)
{
    (void)state;
    static const char *const lines[] = {FORMAL "solution-ul;target=150ppm",
                                        FORMAL "solution-mg;target=162",
                                        FORMAL "formaldehyde-mg;target=55.5mg/L"};
    for (size_t i = 0; i < 3; i++) {
        assert_close(ask_for(lines[i], "liquid"), 16.5, 0, 1e-14);
        assert_close(ask_for(lines[i], "active"), 55.5 * 110, 0, 1e-14);
        assert_close(ask_for(lines[i], "solution_ul"), 150, 0, 1e-14);
        assert_close(ask_for(lines[i], "solution_mg"), 162, 0, 1e-14);
        assert_close(ask_for(lines[i], "formaldehyde"), 55.5, 0, 1e-14);
        assert_close(ask_for(lines[i], "oxygen_used"), 32.4, 0, 1e-14);
        check(isnan(ask_for(lines[i], "level_after")));
    }
    assert_close(ask_for(FORMAL "solution-ul;target=150;strength=40%wv", "liquid"),
                 16.5 * 370 / 400, 0, 1e-14);
    assert_close(ask_for(FORMAL "solution-ul;now=25;target=150", "liquid"), 13.75, 0, 1e-14);
    assert_close(ask_for(FORMAL "solution-mg;now=27;target=162", "liquid"), 13.75, 0, 1e-14);
    /* Back to the 25 mg/L of solution that may stay, whatever the ceiling of an hour is; or to a
     * ceiling below that. */
    assert_close(ask_for(FORMAL "solution-ul;now=200;added=11mL;ceiling=200", "share_back"),
                 100 * (1 - 25 / 1.08 / 300), 0, 1e-13);
    assert_close(ask_for(FORMAL "solution-mg;now=270;added=1mL;ceiling=900", "share_back"),
                 100 * (1 - 25 / (270 + 1080.0 / 110)), 0, 1e-12);
    assert_close(ask_for(WARM "solution-mg;now=270;added=1mL;ceiling=12", "share_back"),
                 100 * (1 - 12 / (270 + 1080.0 / 110)), 0, 1e-12);
}

/* Twice at random: what is dosed for a target and then told as poured gives the target; what is in
 * the water before and what is added is in it after. */
static void dosed_then_poured(void **state)
{
    (void)state;
    static const struct {
        const char *kind;
        double ceiling;
    } kinds[] = {{"copper-amine;salinity=33", 1.4},
                 {"copper-chelated;salinity=33", 7.4},
                 {"dye;biofilter=no", 9},
                 {"other", 9}};
    hw_random_start(20310306);
    for (int i = 0; i < 2000; i++) {
        char line[400];
        char back[300];
        double volume = hw_random_between(5, 900);
        double ceiling = kinds[i % 4].ceiling;
        double now = hw_random_between(0, 0.2) * ceiling;
        double target = now + hw_random_between(0.001, 0.45) * ceiling;
        double strength = hw_random_between(2, 200);
        bool powder = i % 3 == 0;
        int used = snprintf(back, sizeof back, "volume=%.17gL;kind=%s;now=%.17g;ceiling=%.17g;",
                            volume, kinds[i % 4].kind, now, ceiling);
        used += powder ? snprintf(back + used, sizeof back - (size_t)used,
                                  "source=powder;purity=%.17g%%;", strength / 3)
                       : snprintf(back + used, sizeof back - (size_t)used, "strength=%.17gmg/mL;",
                                  strength);
        (void)snprintf(line, sizeof line, "%starget=%.17g", back, target);
        double poured = ask_for(line, powder ? "mass" : "liquid");
        double active = ask_for(line, "active");
        (void)snprintf(back + used, sizeof back - (size_t)used, "added=%.17g%s", poured,
                       powder ? "g" : "mL");
        assert_close(ask_for(back, "level_after"), target, 0, 1e-13);
        assert_close(ask_for(back, "active"), active, 0, 1e-13);
        assert_close(now * volume + active, target * volume, 0, 1e-13);
    }
}

/* The share that is told brings the level to the ceiling and no further. */
static void the_way_back(void **state)
{
    (void)state;
    hw_random_start(20310307);
    for (int i = 0; i < 500; i++) {
        char line[300];
        double volume = hw_random_between(5, 900);
        double ceiling = hw_random_between(0.1, 2);
        double poured = volume * ceiling * hw_random_between(1.01, 5);
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;kind=other;strength=1mg/mL;ceiling=%.17g;added=%.17gmL",
                       volume, ceiling, poured);
        double kept = 1 - ask_for(line, "share_back") / 100;
        assert_close(ask_for(line, "level_after") * kept, ceiling, 0, 1e-13);
    }
}

static const struct note_row notes[] = {
    {"strength-or-label", COPPER "target=0.18", IONIC "target=0.18"},
    {"strength-or-label", IONIC "target=0.18;label_liquid=1mL;label_per=40L;label_raises=0.15",
     COPPER "target=0.18;label_liquid=1mL;label_per=40L;label_raises=0.15"},
    {"strength-or-label", IONIC "target=0.18;label_per=40L",
     FORMAL "solution-ul;target=20;label_per=40L"},
    {"strength-or-label", COPPER "target=0.18;label_per=40L;label_raises=0.15",
     CRYSTAL "target=0.18"},
    {"strength-or-label", COPPER "target=0.18;label_liquid=1mL;label_per=40L", IONIC "added=9mL"},
    {"strength-or-label", COPPER "target=0.18;label_liquid=1mL;label_raises=0.15",
     FORMAL "solution-ul;target=20"},
    {"dose-unlikely", COPPER "target=0.18;label_liquid=1mL;label_per=40L;label_raises=26",
     COPPER "target=0.18;label_liquid=1mL;label_per=40L;label_raises=25"},
    {"dose-unlikely", COPPER "target=0.18;label_liquid=1L;label_per=9L;label_raises=0.1",
     COPPER "target=0.18;label_liquid=1L;label_per=10L;label_raises=0.1"},
    {"dose-unlikely", POWDER "added=1101g", POWDER "added=1100g"},
    {"dose-unlikely", LABEL "label_mass=0.199g;target=9", LABEL "label_mass=0.201g;target=9"},
    {"dose-unlikely", LABEL "label_mass=2001g;target=9", LABEL "label_mass=1999g;target=9"},
    {"strength-or-label", LABEL "target=9", LABEL "label_mass=0.4g;target=9"},
    {"strength-or-label", LABEL "label_mass=0.4g;target=9;purity=90%",
     POWDER "target=9;purity=90%"},
    {"copper-form", COPPER "source=powder;target=0.18",
     COPPER "source=powder;target=0.18;label_mass=0.4g;label_per=80L;label_raises=0.2"},
    {"copper-form",
     COPPER "source=powder;purity=20%;target=0.18;strength_as="
            "copper-sulfate-pentahydrate",
     COPPER "source=powder;target=0.18;label_mass=0.4g;label_per=80L;label_raises=0.2;strength_as="
            "copper-sulfate-pentahydrate"},
    {"target-not-above", IONIC "now=0.18;target=0.17", IONIC "now=0.16;target=0.17"},
    {"target-not-above", IONIC "now=0.17;target=0.17", IONIC "now=0.17;added=1mL"},
    {"target-not-above", FORMAL "solution-ul;now=26;target=25",
     FORMAL "solution-ul;now=24;target=25"},
    {"floor-over-ceiling", IONIC "target=0.18;floor=0.21", IONIC "target=0.18;floor=0.2"},
    {"floor-over-ceiling", AMINE "target=0.45;floor=0.51", AMINE "target=0.45"},
    {"floor-over-ceiling", OTHER "target=4;floor=5.1;ceiling=5", IONIC "target=0.1;ceiling=0.12"},
    {"copper-form",
     "volume=110L;kind=copper-amine;salinity=33;floor=0.4;ceiling=0.5;target=0.45;source="
     "copper-sulfate-pentahydrate",
     CRYSTAL "target=0.18"},
    {"copper-form", "volume=110L;kind=dye;biofilter=no;target=2;source=copper-sulfate-pentahydrate",
     "volume=110L;kind=dye;biofilter=no;target=2;source=powder"},
    {"copper-form", COPPER "source=powder;target=0.18",
     COPPER "source=powder;target=0.18;purity=39.8%"},
    {"copper-form", CRYSTAL "target=0.18;strength_as=copper-sulfate-pentahydrate",
     IONIC "target=0.18;strength_as=copper-sulfate-pentahydrate"},
    {"formalin-as-liquid", FORMAL "solution-ul;target=20;source=powder",
     FORMAL "solution-ul;target=20"},
    {"formalin-as-liquid", FORMAL "solution-ul;target=20;label_per=40L",
     "volume=110L;kind=dye;biofilter=no;target=2;source=powder"},
    {"steps-without-use", FORMAL "solution-ul;target=250;steps=3;days=3",
     FORMAL "solution-ul;target=20;steps=3;days=3"},
    {"steps-without-use", FORMAL "solution-mg;target=26;steps=2;days=1",
     FORMAL "solution-mg;target=26;steps=2"},
    {"steps-without-use", IONIC "target=0.18;days=4", IONIC "target=0.18;steps=4;days=4"},
    {"steps-without-use", IONIC "added=15mL;steps=4", IONIC "added=15mL"},
    {"steps-without-use", IONIC "added=15mL;days=4", IONIC "target=0.18;steps=4"},
    {"over-ceiling", IONIC "target=0.201", IONIC "target=0.2"},
    {"over-ceiling", IONIC "target=0.2;ceiling=0.19", IONIC "target=0.24;ceiling=0.249"},
    {"ceiling-too-high", IONIC "target=0.18;ceiling=0.25", IONIC "target=0.18;ceiling=0.249"},
    {"ceiling-too-high", IONIC "target=0.18;ceiling=0.25", IONIC "added=15mL;ceiling=0.25"},
    {"ceiling-too-high", IONIC "target=0.18;ceiling=0.3", AMINE "target=0.45"},
    {"ceiling-needed", AMINE_BARE "target=0.45", AMINE_BARE "target=0.45;ceiling=0.5"},
    {"ceiling-needed", AMINE_BARE "target=0.45;floor=0.4", AMINE_BARE "added=20mL"},
    {"ceiling-needed", "volume=110L;kind=copper-chelated;salinity=33;strength=8mg/mL;target=1.8",
     OTHER "target=4"},
    {"copper-in-fresh", FRESH "salinity=0.99g/kg;target=0.18", FRESH "salinity=1g/kg;target=0.18"},
    {"copper-in-fresh", FRESH "salinity=0;target=0.18", FRESH "salinity=0;added=9mL"},
    {"copper-in-fresh",
     "volume=110L;kind=copper-chelated;salinity=0.5;strength=8mg/mL;ceiling=2;target=1.8",
     CHELATE "target=1.8"},
    {"dye-biofilter", "volume=110L;kind=dye;biofilter=yes;strength=1%wv;target=3", DYE "target=3"},
    {"dye-biofilter", "volume=110L;kind=dye;biofilter=yes;strength=1%wv;target=3",
     "volume=110L;kind=dye;biofilter=yes;strength=1%wv;added=3mL"},
    {"dye-over", DYE "target=20.1", DYE "target=20"},
    {"dye-over", DYE "target=25;ceiling=30", DYE "added=300mL"},
    {"over-ceiling", AMINE "target=0.51", AMINE "target=0.5"},
    {"over-ceiling", CHELATE "target=2.1", CHELATE "target=2"},
    {"over-ceiling", OTHER "target=8.1;ceiling=8", OTHER "target=8.1"},
    {"over-ceiling", DYE "target=4.1;ceiling=4", DYE "target=4.1"},
    {"formalin-over", FORMAL "solution-ul;target=231.5", FORMAL "solution-ul;target=231.4"},
    {"formalin-over", FORMAL "solution-mg;target=250.1", FORMAL "solution-mg;target=250"},
    {"formalin-over", FORMAL "formaldehyde-mg;target=85.7", FORMAL "formaldehyde-mg;target=85.6"},
    {"formalin-over", WARM "solution-ul;target=138.9", WARM "solution-ul;target=138.8"},
    {"formalin-over", WARM "solution-mg;target=150.1", WARM "solution-mg;target=150"},
    {"formalin-over", WARM "formaldehyde-mg;target=51.4", WARM "formaldehyde-mg;target=51.3"},
    {"formalin-over", "volume=110L;kind=formalin;temp=21.1;formalin_basis=solution-mg;target=160",
     "volume=110L;kind=formalin;temp=21;formalin_basis=solution-mg;target=160"},
    {"formalin-over", FORMAL "solution-ul;target=170;ceiling=160",
     FORMAL "solution-mg;target=160;ceiling=160"},
    {"formalin-over", FORMAL "solution-mg;target=2000;ceiling=2000",
     FORMAL "solution-mg;added=300mL"},
    {"over-ceiling", IONIC "target=0.25", IONIC "added=50mL"},
    {"under-floor", IONIC "target=0.149", IONIC "target=0.15"},
    {"under-floor", IONIC "target=0.16;floor=0.17", IONIC "target=0.1;ceiling=0.12"},
    {"under-floor", AMINE "target=0.39", AMINE "target=0.4"},
    {"under-floor", FRESH "salinity=2;added=9mL", FRESH "salinity=0.9;added=9mL"},
    {"under-floor", IONIC "added=16mL", IONIC "added=16.5mL"},
    {"under-floor", OTHER "target=3;floor=3.1", OTHER "target=3"},
    {"floor-not-yet", CHELATE "target=1.8;steps=4;days=4", IONIC "target=0.18;steps=4;days=4"},
    {"floor-not-yet", OTHER "target=4;floor=3;steps=2", OTHER "target=4;floor=2;steps=2"},
    {"floor-not-yet", OTHER "target=4;floor=4;steps=2", OTHER "target=4;floor=4.1;steps=2"},
    {"floor-on-the-way", IONIC "target=0.18;steps=4;days=4", IONIC "target=0.18"},
    {"floor-on-the-way", AMINE "target=0.45;now=0.2;steps=2;days=1",
     AMINE "target=0.45;now=0.35;steps=2;days=1"},
    {"floor-on-the-way", IONIC "target=0.15;steps=2", IONIC "target=0.14;steps=2"},
    {"copper-ramp", IONIC "target=0.18", IONIC "target=0.18;steps=4;days=4"},
    {"copper-ramp", IONIC "now=0.1;target=0.167", IONIC "now=0.1;target=0.166"},
    {"copper-ramp", IONIC "target=0.18;steps=4", IONIC "target=0.18;steps=3;days=3"},
    {"copper-ramp", IONIC "target=0.18;steps=4;days=2", IONIC "target=0.18;steps=12;days=3"},
    {"copper-ramp", IONIC "target=0.18;steps=3;days=1h", IONIC "target=0.18;steps=3;days=30"},
    {"copper-ramp", AMINE "target=0.45", AMINE "now=0.35;target=0.45"},
    {"copper-ramp", IONIC "target=0.18", CHELATE "target=1.8"},
    {"copper-ramp", IONIC "now=0.15;target=0.22;ceiling=0.24",
     IONIC "now=0.18;target=0.24;ceiling=0.24"},
    {"copper-brackish", FRESH "salinity=24.9;target=0.18", FRESH "salinity=25;target=0.18"},
    {"copper-brackish", FRESH "salinity=1g/kg;added=9mL", FRESH "salinity=0;added=9mL"},
    {"copper-brackish", FRESH "salinity=1g/kg;added=9mL", OTHER "target=3"},
    {"copper-fresh-now", FRESH "salinity=0.9;added=9mL", FRESH "salinity=1g/kg;added=9mL"},
    {"copper-fresh-now", "volume=110L;kind=copper-chelated;salinity=0.5;strength=8mg/mL;added=9mL",
     OTHER "added=9mL"},
    {"ceiling-slip", AMINE_BARE "target=0.45;ceiling=1.6", AMINE_BARE "target=0.45;ceiling=1.5"},
    {"ceiling-slip", AMINE_BARE "target=450;ceiling=500", AMINE_BARE "added=9mL;ceiling=500"},
    {"ceiling-slip", CHELATE_BARE "target=2;ceiling=7.6", CHELATE_BARE "target=2;ceiling=7.5"},
    {"ceiling-slip", CHELATE_BARE "target=2;ceiling=7.6", OTHER "target=2;ceiling=7.6"},
    {"copper-ramp-chelated", CHELATE "target=1.8", CHELATE "target=1.8;steps=4;days=4"},
    {"copper-ramp-chelated", CHELATE "target=1.8", AMINE "target=0.45"},
    {"copper-ramp-chelated", CHELATE "target=1.8", CHELATE "added=25mL"},
    {"dye-in-filter", "volume=110L;kind=dye;biofilter=yes;strength=1%wv;added=3mL",
     DYE "added=3mL"},
    {"ceiling-over-usual", IONIC "target=0.18;ceiling=0.21", IONIC "target=0.18;ceiling=0.2"},
    {"ceiling-over-usual", IONIC "target=0.18;ceiling=0.24", CHELATE "target=1.8"},
    {"ceiling-over-usual", IONIC "added=15mL;ceiling=2", IONIC "added=15mL"},
    {"ceiling-over-usual", FORMAL "solution-ul;target=20;ceiling=232",
     FORMAL "solution-ul;target=20;ceiling=231"},
    {"ceiling-over-usual", FORMAL "formaldehyde-mg;target=20;ceiling=86", DYE "target=3;ceiling=9"},
    {"ceiling-over-usual", DYE "target=3;ceiling=20.1", DYE "target=3;ceiling=20"},
    {"ceiling-over-known", AMINE_BARE "target=0.45;ceiling=0.51", AMINE "target=0.45"},
    {"ceiling-over-known", CHELATE_BARE "target=2;ceiling=2.6",
     CHELATE_BARE "target=2;ceiling=2.5"},
    {"ceiling-over-known", AMINE_BARE "added=9mL;ceiling=0.6", OTHER "target=3;ceiling=9"},
    {"copper-ramp", IONIC "target=0.18", IONIC "added=20mL"},
    {"dye-level-high", DYE "target=5.1", DYE "target=5"},
    {"dye-level-high", DYE "added=56mL", OTHER "target=50"},
    {"formalin-oxygen", FORMAL "solution-ul;target=5", OTHER "target=5"},
    {"formalin-bath-only", FORMAL "solution-mg;target=25.1", FORMAL "solution-mg;target=25"},
    {"formalin-bath-only", FORMAL "solution-ul;target=23.2", FORMAL "solution-ul;target=23.1"},
    {"formalin-young", FORMAL "solution-mg;target=10.1", FORMAL "solution-mg;target=10"},
    {"formalin-young", FORMAL "solution-mg;target=25", FORMAL "solution-mg;target=25.1"},
    {"formalin-young", FORMAL "solution-mg;target=25", OTHER "target=25"},
    {"formalin-stops-filter", FORMAL "formaldehyde-mg;target=37",
     FORMAL "formaldehyde-mg;target=36.9"},
    {"formalin-stops-filter", FORMAL "solution-ul;target=100", OTHER "target=100"},
    {"formalin-trout", FORMAL "solution-mg;target=167", FORMAL "solution-mg;target=166"},
    {"formalin-trout", FORMAL "solution-mg;added=17.1mL", COLD "solution-mg;target=170"},
    {"formalin-strength", FORMAL "solution-mg;target=20;strength=29%wv",
     FORMAL "solution-mg;target=20;strength=30%wv"},
    {"formalin-strength", FORMAL "solution-mg;target=20;strength=46%wv",
     FORMAL "solution-mg;target=20;strength=45%wv"},
    {"formalin-strength", FORMAL "solution-mg;target=20;strength=37mg/mL",
     FORMAL "solution-mg;target=20"},
    {"formalin-as-other", "volume=110L;kind=other;strength=37%wv;target=25",
     "volume=110L;kind=other;strength=29%wv;target=25"},
    {"formalin-as-other",
     "volume=110L;kind=other;label_liquid=1mL;label_per=40L;label_raises=9;target=25",
     "volume=110L;kind=other;label_liquid=1mL;label_per=40L;label_raises=7;target=25"},
    {"formalin-as-other", "volume=110L;kind=other;strength=37%wv;added=3mL",
     POWDER "target=50;purity=40%"},
    {"formalin-as-other", "volume=110L;kind=other;strength=37%wv;added=3mL",
     "volume=110L;kind=copper-chelated;salinity=33;strength=40%wv;ceiling=2;target=1.8"},
    {"formalin-slows-filter", FORMAL "formaldehyde-mg;target=9.25",
     FORMAL "formaldehyde-mg;target=9.24"},
    {"formalin-slows-filter", FORMAL "formaldehyde-mg;target=36.9",
     FORMAL "formaldehyde-mg;target=37"},
    {"pour-too-large", WEAK "target=10.1", WEAK "target=10"},
    {"pour-too-large", WEAK "target=10.1", WEAK "added=12L"},
    {"pour-too-large", POWDER "target=50;purity=0.04%", POWDER "target=50;purity=0.06%"},
    {"pour-large", WEAK "target=1.1", WEAK "target=1"},
    {"pour-large", WEAK "added=1.2L", WEAK "added=1.1L"},
    {"pour-large", POWDER "target=50;purity=0.4%", POWDER "target=50;purity=0.6%"},
    {"pour-large", POWDER "added=1.2kg;purity=10%", POWDER "added=1kg;purity=10%"},
    {"small-liquid", OTHER "target=0.09", OTHER "target=0.1"},
    {"small-liquid", OTHER "target=0.2;steps=3", OTHER "target=0.3;steps=3"},
    {"small-liquid", OTHER "target=0.09", OTHER "added=0.5mL"},
    {"weigh-small", POWDER "target=9", POWDER "target=10"},
    {"weigh-small", POWDER "target=20;steps=3", POWDER "added=0.5g"},
    {"added-over", IONIC "added=23mL", IONIC "added=22mL"},
    {"added-over", AMINE_BARE "added=28mL", AMINE_BARE "added=27mL"},
    {"added-over", AMINE_BARE "added=45mL;ceiling=0.8", AMINE_BARE "added=43mL;ceiling=0.8"},
    {"added-over", AMINE_BARE "added=28mL;ceiling=500", AMINE_BARE "added=27mL;ceiling=500"},
    {"added-over", CHELATE_BARE "added=35mL", CHELATE_BARE "added=34mL"},
    {"added-over", IONIC "added=23mL", FRESH "salinity=0.9;added=23mL"},
    {"added-to-stay", FORMAL "solution-mg;added=2.6mL", FORMAL "solution-mg;added=2.5mL"},
    {"added-to-stay", FORMAL "solution-mg;added=1.2mL;ceiling=11",
     FORMAL "solution-mg;added=1.1mL;ceiling=11"},
    {"added-to-stay", FORMAL "solution-mg;added=25mL", FORMAL "solution-mg;added=26mL"},
    {"added-to-stay", DYE "added=56mL", DYE "added=55mL"},
    {"added-to-stay", DYE "added=34mL;ceiling=3", DYE "added=33mL;ceiling=3"},
    {"added-deadly", FORMAL "solution-ul;added=26mL", FORMAL "solution-ul;added=25mL"},
    {"added-deadly", WARM "solution-ul;added=16mL", WARM "solution-ul;added=15mL"},
    {"added-deadly", DYE "added=221mL", DYE "added=219mL"},
    {"added-deadly", DYE "added=221mL", OTHER "added=221mL;ceiling=2"},
    {"added-over", OTHER "added=23mL;ceiling=2", OTHER "added=23mL"},
    {"evaporation", IONIC "target=0.18", COPPER "target=0.18"},
    {"copper-kit", CHELATE "target=1.8", OTHER "target=3"},
    {"copper-sensitive", AMINE "target=0.45", OTHER "target=3"},
    {"copper-filter", CHELATE "target=1.8", DYE "target=3"},
    {"antibiotic-filter", OTHER "target=3", DYE "target=3"},
    {"stock-invertebrates", IONIC "target=0.18", DYE "target=3"},
    {"copper-reducers-out", IONIC "target=0.18", CHELATE "target=1.8"},
    {"copper-reducers-out", AMINE "target=0.45", DYE "target=3"},
    {"stock-hydrate", CRYSTAL "target=0.18", IONIC "target=0.18"},
    {"stock-hydrate", IONIC "target=0.18;strength_as=copper-sulfate-pentahydrate", DYE "target=3"},
    {"formalin-37", FORMAL "solution-ul;target=20", FORMAL "solution-ul;target=20;strength=40%wv"},
    {"formalin-care", FORMAL "solution-ul;target=20", DYE "target=3"},
    {"formalin-gloves", FORMAL "solution-ul;target=20", DYE "target=3"},
    {"dose-how", DYE "target=3", DYE "added=30mL"},
    {"ceiling-unsaid", OTHER "target=3", OTHER "target=3;ceiling=4"},
    {"ceiling-unsaid", OTHER "added=3mL", FORMAL "solution-ul;target=20"},
    {"ceiling-unsaid", AMINE_BARE "added=20mL", IONIC "target=0.18"},
    {"ceiling-unsaid", CHELATE_BARE "added=20mL", DYE "target=3"},
    {"dye-form", DYE "target=3", OTHER "target=3"},
    {"dye-tank", DYE "target=3", OTHER "target=3"},
    {"dye-handlers", DYE "target=3", OTHER "target=3"},
    {"ask-vet", DYE "target=3", NULL},
    {"ask-vet", IONIC "target=0.3", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(dose(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"dose-unlikely", ABOVE, 25, "label_raises", NULL,
     COPPER "target=0.18;label_liquid=1mL;label_per=40L;label_raises=25"},
    {"dose-unlikely", BELOW, 10, "label_per", NULL,
     COPPER "target=0.18;label_liquid=1L;label_per=10L;label_raises=0.1"},
    {"dose-unlikely", ABOVE, 1100, "added", NULL, POWDER "added=1100g"},
    {"dose-unlikely", BELOW, 0.2, "label_mass", NULL, LABEL "label_mass=0.2g;target=9"},
    {"target-not-above", UP_TO, 0.17, "target", NULL, IONIC "now=0.17;target=0.17"},
    {"floor-over-ceiling", ABOVE, 0.2, "floor", NULL, IONIC "target=0.18;floor=0.2"},
    {"floor-over-ceiling", BELOW, 0.17, "ceiling", NULL,
     IONIC "target=0.16;floor=0.17;ceiling=0.17"},
    {"over-ceiling", ABOVE, 0.2, "target", NULL, IONIC "target=0.2"},
    {"over-ceiling", ABOVE, 0.5, "target", NULL, AMINE "target=0.5"},
    {"dye-over", ABOVE, 20, "target", NULL, DYE "target=20"},
    {"formalin-over", ABOVE, 250 / 1.08, "target", NULL, FORMAL "solution-ul;target=231"},
    {"formalin-over", ABOVE, 250, "target", NULL, FORMAL "solution-mg;target=250"},
    {"formalin-over", ABOVE, 92.5 / 1.08, "target", NULL, FORMAL "formaldehyde-mg;target=85"},
    {"formalin-over", ABOVE, 150 / 1.08, "target", NULL, WARM "solution-ul;target=138"},
    {"formalin-over", ABOVE, 150, "target", NULL, WARM "solution-mg;target=150"},
    {"formalin-over", ABOVE, 55.5 / 1.08, "target", NULL, WARM "formaldehyde-mg;target=51"},
    {"formalin-over", ABOVE, 21, "temp", NULL, FORMAL "solution-mg;target=160"},
    {"ceiling-too-high", FROM, 0.25, "ceiling", NULL, IONIC "target=0.18;ceiling=0.25"},
    {"copper-in-fresh", BELOW, 1, "salinity", NULL, IONIC "target=0.18"},
    {"copper-brackish", BELOW, 25, "salinity", NULL, IONIC "target=0.18"},
    {"ceiling-over-known", ABOVE, 0.5, "ceiling", NULL, AMINE "target=0.45"},
    {"ceiling-over-known", ABOVE, 2.5, "ceiling", NULL, CHELATE_BARE "target=2;ceiling=2.5"},
    {"formalin-young", ABOVE, 10, "target", NULL, FORMAL "solution-mg;target=10"},
    {"formalin-trout", FROM, 167, "target", NULL, FORMAL "solution-mg;target=167"},
    {"formalin-trout", ABOVE, 10, "temp", NULL, COLD "solution-mg;target=170"},
    {"formalin-strength", BELOW, 300, "strength", NULL,
     FORMAL "solution-mg;target=20;strength=30%wv"},
    {"formalin-strength", ABOVE, 450, "strength", NULL,
     FORMAL "solution-mg;target=20;strength=45%wv"},
    {"formalin-as-other", FROM, 300, "strength", NULL,
     "volume=110L;kind=other;strength=30%wv;target=25"},
    {"formalin-stops-filter", FROM, 37, "target", NULL, FORMAL "formaldehyde-mg;target=37"},
    {"formalin-slows-filter", FROM, 9.25, "target", NULL, FORMAL "formaldehyde-mg;target=9.25"},
    {"under-floor", BELOW, 0.15, "target", NULL, IONIC "target=0.15"},
    {"under-floor", BELOW, 0.15, "added", "level_after", IONIC "added=16mL"},
    {"under-floor", BELOW, 0.15, "target", NULL, IONIC "target=0.15;ceiling=0.15"},
    {"floor-on-the-way", FROM, 0.15, "target", NULL, IONIC "target=0.15;steps=2"},
    {"floor-on-the-way", BELOW, 0.35, "now", NULL, AMINE "target=0.45;now=0.35;steps=2;days=1"},
    {"floor-not-yet", BELOW, 1.2, "now", NULL, CHELATE "target=1.8;now=1.2;steps=2;days=1"},
    {"copper-ramp", ABOVE, 0.2 / 3, "target", NULL, IONIC "target=0.06"},
    {"copper-ramp", ABOVE, 0.5 / 3, "target", NULL, AMINE "target=0.2"},
    {"ceiling-over-usual", ABOVE, 0.2, "ceiling", NULL, IONIC "target=0.18;ceiling=0.2"},
    {"ceiling-over-usual", ABOVE, 250, "ceiling", NULL, FORMAL "solution-mg;target=20;ceiling=250"},
    {"ceiling-over-usual", ABOVE, 20, "ceiling", NULL, DYE "target=3;ceiling=20"},
    {"dye-level-high", ABOVE, 5, "target", NULL, DYE "target=5"},
    {"dye-level-high", ABOVE, 5, "added", "level_after", DYE "added=55mL"},
    {"formalin-bath-only", ABOVE, 25, "target", NULL, FORMAL "solution-mg;target=25"},
    {"formalin-bath-only", ABOVE, 25, "target", "solution_mg", FORMAL "solution-ul;target=23"},
    {"steps-without-use", ABOVE, 25, "target", NULL, FORMAL "solution-mg;target=25;steps=3;days=3"},
    {"pour-too-large", ABOVE, 10, "target", NULL, WEAK "target=10"},
    {"pour-large", ABOVE, 1, "target", NULL, WEAK "target=1"},
    {"small-liquid", BELOW, 1, "volume", "liquid", OTHER "target=0.1"},
    {"small-liquid", BELOW, 1, "volume", "step_amount", OTHER "target=0.3;steps=3"},
    {"weigh-small", BELOW, 1, "volume", "mass", POWDER "target=10"},
    {"weigh-small", BELOW, 1, "volume", "step_mass", POWDER "target=30;steps=3"},
    {"added-over", ABOVE, 0.2, "added", "level_after", IONIC "added=22mL"},
    {"added-over", ABOVE, 0.5, "added", "level_after", AMINE_BARE "added=27mL"},
    {"added-over", ABOVE, 2.5, "added", "level_after", CHELATE_BARE "added=34mL"},
    {"added-to-stay", ABOVE, 25, "added", "solution_mg", FORMAL "solution-ul;added=2.5mL"},
    {"added-to-stay", ABOVE, 5, "added", "level_after", DYE "added=55mL"},
    {"added-deadly", ABOVE, 250, "added", "solution_mg", FORMAL "solution-ul;added=27mL"},
    {"added-deadly", ABOVE, 150, "added", "solution_mg", WARM "solution-ul;added=16mL"},
    {"added-deadly", ABOVE, 20, "added", "level_after", DYE "added=220mL"},
    {"ceiling-slip", ABOVE, 1.5, "ceiling", NULL, AMINE "target=0.45"},
    {"ceiling-slip", ABOVE, 7.5, "ceiling", NULL, CHELATE "target=1.8"},
    {"copper-fresh-now", BELOW, 1, "salinity", NULL, FRESH "salinity=1g/kg;added=9mL"},
    {"copper-ramp-chelated", ABOVE, 2.0 / 3, "target", NULL, CHELATE "target=0.7"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(dose(), edges, sizeof edges / sizeof edges[0]);
}

/* Each result that may be absent, present and absent. */
static const struct {
    const char *result, *present, *absent;
} sometimes[] = {
    {"liquid", IONIC "target=0.18", CRYSTAL "target=0.18"},
    {"liquid", IONIC "target=0.18", IONIC "added=20mL"},
    {"mass", CRYSTAL "target=0.18", IONIC "target=0.18"},
    {"mass", POWDER "target=5", POWDER "added=5g"},
    {"step_amount", IONIC "target=0.18;steps=2", IONIC "added=20mL"},
    {"step_amount", FORMAL "solution-ul;target=20", POWDER "target=5;steps=2"},
    {"step_mass", POWDER "target=5;steps=2", POWDER "added=5g"},
    {"step_mass", POWDER "target=5", IONIC "target=0.18;steps=2"},
    {"step_every", IONIC "target=0.18;steps=2;days=1", IONIC "target=0.18"},
    {"step_every", IONIC "target=0.18;steps=2;days=1", IONIC "target=0.18;steps=2"},
    {"level_after", IONIC "target=0.18", FORMAL "solution-ul;target=20"},
    {"solution_ul", FORMAL "solution-mg;target=20", IONIC "target=0.18"},
    {"solution_mg", FORMAL "solution-ul;target=20", IONIC "target=0.18"},
    {"formaldehyde", FORMAL "solution-ul;added=3mL", IONIC "target=0.18"},
    {"oxygen_used", FORMAL "solution-ul;target=20", IONIC "target=0.18"},
    {"share_back", IONIC "added=30mL", IONIC "added=20mL"},
    {"share_back", OTHER "added=30mL;ceiling=1", OTHER "added=30mL"},
    {"share_back", AMINE_BARE "added=30mL", FRESH "salinity=0.9;added=30mL"},
};

static void absent_results(void **state)
{
    (void)state;
    keep_workings();
    for (size_t i = 0; i < sizeof sometimes / sizeof sometimes[0]; i++) {
        check(isfinite(ask_for(sometimes[i].present, sometimes[i].result)));
        check(isnan(ask_for(sometimes[i].absent, sometimes[i].result)));
        check_working(dose(), sometimes[i].present);
        check_working(dose(), sometimes[i].absent);
    }
    redo_workings();
}

/* More steps than are written, and what the notes' questions do not ask. */
static void working_of_many_steps(void **state)
{
    (void)state;
    keep_workings();
    check_working(dose(), IONIC "target=0.18;steps=12;days=3");
    check_working(dose(), IONIC "target=0.18;steps=13;days=3");
    check_working(dose(), IONIC "target=0.18;steps=30;days=3");
    check_working(dose(), FORMAL "formaldehyde-mg;now=3;target=9;steps=30");
    check_working(dose(), FORMAL "solution-ul;now=3;added=30mL;strength=40%wv");
    check_working(dose(), FORMAL "solution-mg;now=30;added=30mL");
    check_working(dose(), POWDER "added=300mg;now=0.02;ceiling=0.5");
    check_working(dose(), LABEL "label_mass=0.4g;target=9;steps=3");
    check_working(dose(), COPPER "source=powder;target=0.18;label_mass=0.4g;label_per=80L;"
                                 "label_raises=0.2;strength_as=copper-sulfate-pentahydrate");
    check_working(dose(), CRYSTAL "added=300mg;now=0.02;purity=97%");
    check_working(dose(), COPPER "target=0.18;label_liquid=1mL;label_per=40L;label_raises=0.15;"
                                 "strength_as=copper-sulfate-pentahydrate");
    redo_workings();
}

static void questions_that_are_wrong(void **state)
{
    (void)state;
    struct hw_question question;
    size_t which = 0;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"kind=other;target=3;strength=1%wv", HW_PROBLEM_MISSING},
        {"volume=75L;target=3;strength=1%wv", HW_PROBLEM_MISSING},
        {"volume=75L;kind=formalin;temp=20;target=3", HW_PROBLEM_MISSING},
        {"volume=75L;kind=formalin;formalin_basis=solution-mg;target=3", HW_PROBLEM_MISSING},
        {"volume=75L;kind=copper-ionic;target=0.18;strength=1%wv", HW_PROBLEM_MISSING},
        {"volume=75L;kind=copper-amine;target=3;strength=1%wv;ceiling=4", HW_PROBLEM_MISSING},
        {"volume=75L;kind=copper-chelated;target=3;strength=1%wv;ceiling=4", HW_PROBLEM_MISSING},
        {"volume=75L;kind=dye;target=3;strength=1%wv", HW_PROBLEM_MISSING},
        {DYE "salinity=33;target=3", HW_PROBLEM_OUT_OF_PLACE},
        {OTHER "biofilter=no;target=3", HW_PROBLEM_OUT_OF_PLACE},
        {OTHER "temp=25;target=3", HW_PROBLEM_OUT_OF_PLACE},
        {OTHER "label_mass=1g;target=3", HW_PROBLEM_OUT_OF_PLACE},
        {POWDER "label_liquid=1mL;target=3", HW_PROBLEM_OUT_OF_PLACE},
        {OTHER "now=1", HW_PROBLEM_NONE_OF_GROUP},
        {OTHER "target=2;added=3mL", HW_PROBLEM_MANY_OF_GROUP},
        {OTHER "target=2;formalin_basis=solution-ul", HW_PROBLEM_OUT_OF_PLACE},
        {FORMAL "solution-ul;target=25;floor=15", HW_PROBLEM_OUT_OF_PLACE},
        {FORMAL "solution-ul;target=25mg/L", HW_PROBLEM_WRONG_KIND},
        {FORMAL "solution-ul;target=25;now=3mg/L", HW_PROBLEM_WRONG_KIND},
        {FORMAL "solution-ul;target=25;ceiling=30mg/L", HW_PROBLEM_WRONG_KIND},
        {FORMAL "solution-mg;target=25uL/L", HW_PROBLEM_WRONG_KIND},
        {FORMAL "formaldehyde-mg;target=25uL/L", HW_PROBLEM_WRONG_KIND},
        {OTHER "target=25uL/L", HW_PROBLEM_WRONG_KIND},
        {DYE "target=2;strength_as=as-is", HW_PROBLEM_OUT_OF_PLACE},
        {DYE "target=2;purity=90%", HW_PROBLEM_OUT_OF_PLACE},
        {CRYSTAL "target=0.18;strength=1mg/mL", HW_PROBLEM_OUT_OF_PLACE},
        {CRYSTAL "target=0.18;label_per=40L", HW_PROBLEM_OUT_OF_PLACE},
        {CRYSTAL "added=3mL", HW_PROBLEM_WRONG_KIND},
        {IONIC "added=3g", HW_PROBLEM_WRONG_KIND},
        {IONIC "added=3", HW_PROBLEM_NEEDS_UNIT},
        {COPPER "target=0.18;strength=1", HW_PROBLEM_NEEDS_UNIT},
        {COPPER "target=0.18;label_liquid=1", HW_PROBLEM_NEEDS_UNIT},
        {COPPER "target=0.18;label_liquid=3drops", HW_PROBLEM_HOUSE_MEASURE},
        {POWDER "added=1tsp", HW_PROBLEM_HOUSE_MEASURE},
        {IONIC "target=0.18;steps=0", HW_PROBLEM_OUT_OF_RANGE},
        {IONIC "target=0.18;steps=2.5", HW_PROBLEM_NOT_WHOLE},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        enum hw_problem got = ask_settle(dose(), wrong[i].line, &question, &which);
        if (got != wrong[i].problem) {
            fail_msg("%s: %s, not %s", wrong[i].line, hw_problem_code(got),
                     hw_problem_code(wrong[i].problem));
        }
    }
}

static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 64; corner++) {
        char line[300];
        bool solid = (corner & 1) != 0;
        const char *weak_most = solid ? "9" : "0.09"; /* more of it is no dose */
        (void)snprintf(line, sizeof line, "volume=%s;kind=other;%s;now=%s;target=%s;steps=%s",
                       corner & 2 ? "1e5L" : "0.1L",
                       solid ? (corner & 4 ? "source=powder;purity=0.01%" : "source=powder")
                             : (corner & 4 ? "strength=0.001mg/mL" : "strength=1000mg/mL"),
                       corner & 8 ? "0.00005" : "0",
                       corner & 16 ? (corner & 4 ? weak_most : "1e4") : "1e-4",
                       corner & 32 ? "30" : "1");
        check(isfinite(ask_for(line, solid ? "mass" : "liquid")));
        check(isfinite(ask_for(line, "level_after")));
    }
    check(isfinite(ask_for("volume=1e5L;kind=other;strength=0.001mg/mL;added=0.001mL", "active")));
    check(isfinite(ask_for("volume=1e5L;kind=other;strength=1000mg/mL;added=1000L", "active")));
    check(isfinite(ask_for("volume=1e5L;kind=other;source=powder;added=1000kg", "active")));
    check(isfinite(ask_for(FORMAL "solution-ul;now=1e4;added=1mL", "oxygen_used")));
    check(isfinite(ask_for(FORMAL "formaldehyde-mg;now=9e3;added=1mL", "solution_mg")));
    check(isfinite(ask_for(FORMAL "solution-mg;target=1e-4;ceiling=1e-4", "oxygen_used")));
    check(isfinite(ask_for(CRYSTAL "target=0.2;purity=0.01%", "mass")));
    check(isfinite(ask_for(COPPER "strength=0.01mg/mL;target=0.2;strength_as="
                                  "copper-sulfate-pentahydrate",
                           "liquid")));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_label_and_by_strength),
        cmocka_unit_test(solids),
        cmocka_unit_test(steps_over_days),
        cmocka_unit_test(formalin_in_three_bases),
        cmocka_unit_test(dosed_then_poured),
        cmocka_unit_test(the_way_back),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(absent_results),
        cmocka_unit_test(working_of_many_steps),
        cmocka_unit_test(questions_that_are_wrong),
        cmocka_unit_test(corners_are_answered),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
