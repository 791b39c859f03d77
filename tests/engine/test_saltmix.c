/* test_saltmix.c - the calculation saltmix: salt, top-up or swap, labels, every note. */
#include "assert_close.h"
#include "holdwater/seawater.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

static const struct hw_calc *saltmix(void)
{
    return find_calc("saltmix");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(saltmix(), line, &question, &answer);
    return result_of(saltmix(), &answer, result);
}

static double density_of(double salinity, double temp)
{
    double density = 0;
    check(hw_seawater_density_at(temp, salinity, &density) >= 0);
    return density;
}

#define BATCH     "volume=75L;target=34"
#define HIGH      "volume=108L;salinity=36.2;target=34"
#define LABEL     BATCH ";label_mass=4kg;label_makes=106L;label_salinity=35"
#define LOWER(to) "volume=75L;salinity=34;target=" to ";why=mixed-too-strong"
#define RAISED    "volume=110L;salinity=33.5;"

/* Which of the three results an answer has: a bit for each. */
static unsigned which(const char *line)
{
    static const char *const names[] = {"salt", "top_up", "swap"};
    unsigned bits = 0;
    for (unsigned i = 0; i < 3; i++) {
        bits |= (unsigned)isfinite(ask_for(line, names[i])) << i;
    }
    return bits;
}

static void one_result_each(void **state)
{
    (void)state;
    assert_int_equal(which(BATCH), 1);
    assert_int_equal(which(BATCH ";why=evaporated"), 1);
    assert_int_equal(which(HIGH ";why=evaporated"), 2);
    assert_int_equal(which(HIGH ";why=mixed-too-strong"), 4);
    assert_int_equal(which(HIGH), 0);
    assert_int_equal(which(RAISED "target=33.5"), 1);
    assert_int_equal(which(RAISED "target=33.5;why=mixed-too-strong"), 1);
    assert_close(ask_for(RAISED "target=33.5", "salt"), 0, 0, 0);
    assert_close(ask_for("volume=110L;salinity=34;target=0;why=mixed-too-strong", "swap"), 110, 0,
                 0);
}

static void products(void **state)
{
    (void)state;
    double water = 75 * density_of(0, 25) / 1000;
    assert_close(ask_for(BATCH, "salt"), water * 34 / 0.966, 0, 1e-14);
    assert_close(ask_for(BATCH ";moisture=12%", "salt"), water * 34000 / (880 - 34), 0, 1e-14);
    double dry = 106 * density_of(35, 25) / 1000 * 35 / 4000;
    assert_close(ask_for(LABEL, "salt"), water * 34000 / (1000 * dry - 34), 0, 1e-14);
    /* a label that promises more than the product weighs counts as all salt */
    assert_close(ask_for(BATCH ";label_mass=3.6kg;label_makes=103L;label_salinity=35", "salt"),
                 ask_for(BATCH, "salt"), 0, 0);
    /* the share of a label follows the temperature that is given */
    check(ask_for(LABEL ";temp=15", "salt") < ask_for(LABEL ";temp=25", "salt"));
}

static const struct note_row notes[] = {
    {"above-fit", "volume=75L;salinity=42.1;target=42.1", "volume=75L;salinity=41;target=42"},
    {"above-fit", "volume=75L;salinity=0;target=43", "volume=75L;salinity=0;target=41"},
    {"above-fit", "volume=75L;salinity=43;target=34;why=evaporated", HIGH ";why=evaporated"},
    {"above-fit", "volume=75L;salinity=43;target=34;why=mixed-too-strong",
     HIGH ";why=mixed-too-strong"},
    {"above-fit", BATCH ";label_mass=5kg;label_makes=106L;label_salinity=43", LABEL},
    {"why-unsaid", HIGH, HIGH ";why=evaporated"},
    {"why-unsaid", HIGH, BATCH},
    {"top-up-to-nothing", "volume=75L;salinity=3;target=0;why=evaporated",
     "volume=75L;salinity=3;target=0;why=mixed-too-strong"},
    {"top-up-to-nothing", "volume=75L;salinity=3;target=0;why=evaporated",
     "volume=75L;salinity=3;target=0.1;why=evaporated"},
    {"top-up-to-nothing", "volume=75L;salinity=3;target=0;why=evaporated", "volume=75L;target=0"},
    {"label-part", BATCH ";label_mass=4kg", LABEL},
    {"label-part", BATCH ";label_makes=106L", BATCH},
    {"label-part", BATCH ";label_salinity=35", LABEL ";moisture=1%"},
    {"label-part", BATCH ";label_mass=4kg;label_makes=106L", LABEL},
    {"label-part", HIGH ";why=evaporated;label_mass=4kg;label_salinity=35", HIGH ";why=evaporated"},
    {"label-and-moisture", LABEL ";moisture=1%", LABEL},
    {"label-and-moisture", LABEL ";moisture=1%", BATCH ";moisture=1%"},
    {"label-unlikely", BATCH ";label_mass=4lb;label_makes=106L;label_salinity=35", LABEL},
    {"label-unlikely", BATCH ";label_mass=4kg;label_makes=28L;label_salinity=35", LABEL},
    {"nothing-to-mix", RAISED "target=33.5", RAISED "target=33.6"},
    {"label-generous", BATCH ";label_mass=3.6kg;label_makes=103L;label_salinity=35", LABEL},
    {"label-wet", BATCH ";label_mass=4.5kg;label_makes=106L;label_salinity=35", LABEL},
    {"label-wet", BATCH ";label_mass=4.5kg;label_makes=106L;label_salinity=35",
     BATCH ";moisture=20%"},
    {"salt-step-down", "volume=108L;salinity=36.2;target=31.1;why=mixed-too-strong",
     "volume=108L;salinity=36.2;target=31.2;why=mixed-too-strong"},
    {"copper-lowered", LOWER("24.9"), LOWER("25")},
    {"copper-lowered", "volume=75L;salinity=26;target=24;why=evaporated", "volume=75L;target=24"},
    {"nitrite-lowered", LOWER("19.9"), LOWER("20")},
    {"nitrite-lowered", "volume=75L;salinity=21;target=19;why=evaporated", "volume=75L;target=19"},
    {"salt-step-up", RAISED "target=34.6", RAISED "target=34.5"},
    {"salt-step-up", "volume=110L;salinity=0.3;target=34", BATCH},
    {"weigh-small", "volume=2L;salinity=33.5;target=33.9", RAISED "target=33.9"},
    {"weigh-small", "volume=2L;salinity=33.5;target=33.9", RAISED "target=33.5"},
    {"top-up-keeps", HIGH ";why=evaporated", HIGH ";why=mixed-too-strong"},
    {"top-up-large", "volume=75L;salinity=42;target=34;why=evaporated", HIGH ";why=evaporated"},
    {"top-up-large", "volume=75L;salinity=42;target=34;why=evaporated",
     "volume=75L;salinity=42;target=34;why=mixed-too-strong"},
    {"swap-thins", HIGH ";why=mixed-too-strong", HIGH ";why=evaporated"},
    {"no-dry-salt", BATCH, HIGH ";why=evaporated"},
    {"salt-in-steps", LABEL, RAISED "target=33.5"},
    {"salt-counted-dry", BATCH, LABEL},
    {"salt-counted-dry", BATCH, BATCH ";moisture=5%"},
    {"water-before-salt", BATCH, HIGH ";why=mixed-too-strong"},
    {"lower-slowly", HIGH ";why=evaporated", BATCH},
    {"fresh-treated", HIGH ";why=mixed-too-strong", RAISED "target=33.5"},
    {"fresh-treated", BATCH, HIGH},
    {"ask-vet", BATCH, NULL},
    {"ask-vet", HIGH, NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(saltmix(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"above-fit", ABOVE, 42, "target", NULL, "volume=75L;salinity=30;target=42"},
    {"above-fit", ABOVE, 42, "salinity", NULL, "volume=75L;salinity=42;target=34;why=evaporated"},
    {"above-fit", ABOVE, 42, "label_salinity", NULL,
     BATCH ";label_mass=5kg;label_makes=106L;label_salinity=42"},
    {"salt-step-down", BELOW, 31, "target", NULL,
     "volume=75L;salinity=36;target=31;why=evaporated"},
    {"copper-lowered", BELOW, 25, "target", NULL, LOWER("25")},
    {"nitrite-lowered", BELOW, 20, "target", NULL, LOWER("20")},
    {"salt-step-up", ABOVE, 34.5, "target", NULL, RAISED "target=34.5"},
    {"weigh-small", BELOW, 1, "volume", "salt", "volume=3L;salinity=33.5;target=33.9"},
    {"top-up-large", ABOVE, 20, "salinity", "top_up",
     "volume=100L;salinity=41;target=34;why=evaporated"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(saltmix(), edges, sizeof edges / sizeof edges[0]);
}

/* The label makes 106 L of 35 g/kg of its product: so many grams of sea salt. */
static void by_the_label(void **state)
{
    (void)state;
    double salt = 106 * density_of(35, 25) / 1000 * 35;
    const struct note_edge at[] = {

        {"label-unlikely", BELOW, salt / 1.05, "label_mass", NULL, LABEL},
        {"label-generous", BELOW, salt, "label_mass", NULL, LABEL},
        {"label-wet", ABOVE, salt / 0.85, "label_mass", NULL, LABEL},
        {"label-unlikely", ABOVE, salt / 0.5, "label_mass", NULL, LABEL},
    };
    check_edges(saltmix(), at, sizeof at / sizeof at[0]);
}

static void workings(void **state)
{
    (void)state;
    check_working(saltmix(), LABEL ";temp=-2");
    check_working(saltmix(), RAISED "target=45;moisture=50%;temp=104F");
    check_working(saltmix(), "volume=75L;salinity=45;target=0;why=mixed-too-strong");
}

/* Up by salt, and back down by a top-up or a swap: each leaves the salinity it says, by masses of
 * salt and water. */
static void salt_balance(void **state)
{
    (void)state;
    hw_random_start(20310404);
    for (int i = 0; i < 600; i++) {
        char line[160];
        double volume = hw_random_between(2, 400);
        double low = hw_random_between(2, 33);
        double high = low + hw_random_between(0.1, 8);
        double temp = hw_random_between(5, 35);
        double water = volume * density_of(low, temp);
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;salinity=%.17gg/kg;target=%.17gg/kg;temp=%.17g", volume, low,
                       high, temp);
        double salt = 1000 * ask_for(line, "salt");
        assert_close((water * low + salt) / (water + salt / 1000), high, 0, 1e-12);

        double fresh = density_of(0, temp);
        water = volume * density_of(high, temp);
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;salinity=%.17gg/kg;target=%.17gg/kg;temp=%.17g;"
                       "why=evaporated",
                       volume, high, low, temp);
        assert_close(water * high / (water + ask_for(line, "top_up") * fresh), low, 0, 1e-12);
        (void)snprintf(line, sizeof line,
                       "volume=%.17gL;salinity=%.17gg/kg;target=%.17gg/kg;temp=%.17g;"
                       "why=mixed-too-strong",
                       volume, high, low, temp);
        double swap = ask_for(line, "swap");
        double left = (volume - swap) * density_of(high, temp);
        assert_close(left * high / (left + swap * fresh), low, 0, 1e-12);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_result_each), cmocka_unit_test(products),
        cmocka_unit_test(every_note),      cmocka_unit_test(every_edge),
        cmocka_unit_test(by_the_label),    cmocka_unit_test(workings),
        cmocka_unit_test(salt_balance),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
