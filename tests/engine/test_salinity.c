/* test_salinity.c - the salinity calculation: every instrument, every note, corrections, the
 * corners of the ranges and the working redone by awk. */
#include "ask.h"
#include "assert_close.h"
#include "holdwater/conductivity.h"
#include "holdwater/hydrometer.h"
#include "note_rows.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

static const struct hw_calc *salinity(void)
{
    return find_calc("salinity");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(salinity(), line, &question, &answer);
    return result_of(salinity(), &answer, result);
}

static double found(const char *line)
{
    return ask_for(line, "salinity");
}

/* Each reference means its two temperatures: a hydrometer read at its own shows what it should. */
static void references_mean_their_temperatures(void **state)
{
    (void)state;
    static const struct {
        const char *word;
        double scale, water;
    } references[] = {{"60F/60F", 140.0 / 9, 140.0 / 9},
                      {"20C/20C", 20, 20},
                      {"25C/25C", 25, 25},
                      {"15C/4C", 15, 4},
                      {"20C/4C", 20, 4}};
    for (size_t i = 0; i < sizeof references / sizeof references[0]; i++) {
        struct hw_hydrometer hydrometer = {references[i].scale, references[i].water, 0};
        double reading = NAN;
        char line[200];
        check(hw_hydrometer_reading(&hydrometer, 33.85, &reading) == 0);
        (void)snprintf(line, sizeof line, "of=sg;reading=%.17g;reference=%s;temp=%.17g", reading,
                       references[i].word, references[i].scale);
        assert_close(found(line), 33.85, 0, 1e-11);
    }
}

/* The other results are those of the salinity found, at the temperature given. */
static void what_else_is_told(void **state)
{
    (void)state;
    const char *line = "of=scale;reading=33.85;temp=26.4";
    double want = NAN;
    check(hw_seawater_density_at(26.4, 33.85, &want) == 0);
    assert_close(ask_for(line, "density"), want, 0, 0);
    check(hw_conductivity_at(26.4, 33.85, &want) == 0);
    assert_close(ask_for(line, "conductivity"), want, 0, 0);
    double water = NAN;
    check(hw_seawater_density_at(25, 33.85, &want) == 0 &&
          hw_seawater_density_at(25, 0, &water) == 0);
    assert_close(ask_for(line, "sg_25_25"), want / water, 0, 1e-15);
}

/* The range is that of the five references, each asked for by itself; glass and the corrections
 * hold for all of them. */
static void unknown_reference(void **state)
{
    (void)state;
    static const char *const words[] = {"60F/60F", "20C/20C", "25C/25C", "15C/4C", "20C/4C"};
    static const char *const readings[] = {
        "reading=1.0264;temp=25", "reading=1.0264;temp=10", "reading=1.0153;temp=77F;glass=no",
        "reading=1.0284;temp=22;zero=0.002", "reading=1.0003;temp=24"};
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        char line[200];
        double low = INFINITY;
        double high = -INFINITY;
        for (size_t k = 0; k < sizeof words / sizeof words[0]; k++) {
            (void)snprintf(line, sizeof line, "of=sg;%s;reference=%s", readings[i], words[k]);
            low = fmin(low, found(line));
            high = fmax(high, found(line));
        }
        (void)snprintf(line, sizeof line, "of=sg;%s;reference=unknown", readings[i]);
        assert_close(ask_for(line, "salinity_from"), low, 0, 0);
        assert_close(ask_for(line, "salinity_to"), high, 0, 0);
        check(high > low + 1);
        assert_no_answer(found(line));
    }
}

/* A true instrument with a brine scale shows 36.5 g/kg, or 37.4 g/L, in sea water of 35 g/kg; in
 * brine it shows what its label says. */
static void what_the_standard_is(void **state)
{
    (void)state;
    assert_close(found("of=brine-gkg;reading=33.5;temp=25;standard-is=sea-water;standard=35;"
                       "standard-reads=36.5"),
                 33.5 * 35 / 36.5, 0, 1e-14);
    assert_close(found("of=brine-gkg;reading=33.5;temp=25;standard-is=brine;standard=35;"
                       "standard-reads=36.5"),
                 33.5 * 35 / 36.5 * 0.959, 0, 1e-14);
    assert_close(found("of=brine-gL;reading=33.5;temp=25;standard-is=sea-water;standard=35;"
                       "standard-reads=37.1"),
                 33.5 * 35 / 37.1, 0, 1e-14);
    assert_close(found("of=brine-gL;reading=33.5;temp=25;standard-is=brine;standard=35g/L;"
                       "standard-reads=37.1"),
                 33.5 * 35 / 37.1 * 0.937, 0, 1e-14);
    /* the instrument in its own standard shows the standard */
    assert_close(found("of=brine-gkg;reading=37;temp=25;zero=0.8;standard-is=sea-water;standard=35;"
                       "standard-reads=36.2"),
                 35, 0, 1e-14);
}

/* Zero comes off first, then the standard's ratio; on each scale. */
static void zero_and_standard(void **state)
{
    (void)state;
    assert_close(found("of=scale;reading=35;temp=25;zero=2"), 33, 0, 0);
    assert_close(found("of=scale;reading=35;temp=25;standard=35;standard_reads=37"), 35.0 * 35 / 37,
                 0, 1e-15);
    assert_close(found("of=scale;reading=35;temp=25;zero=-2;standard=35;standard_reads=37"), 35, 0,
                 1e-15);
    assert_close(found("of=brine-gL;reading=37.4g/L;temp=25;zero=0.4;standard_is=brine;standard=36;"
                       "standard_reads=37"),
                 37.0 * 36 / 37 * 0.937, 0, 1e-14);
    assert_close(found("of=sg;reading=1.0284;reference=25C/25C;temp=25;zero=0.002"),
                 found("of=sg;reading=1.0264;reference=25C/25C;temp=25"), 1e-9, 0);
    assert_close(
        found("of=refraction;reading=1.3390;temp=20;standard=1.3394;standard_reads=1.3390"),
        found("of=refraction;reading=1.3394;temp=20"), 1e-9, 0);
    assert_close(
        found("of=conductivity;reading=50;temp=25;standard=12.88;standard_reads=12880uS/cm"),
        found("of=conductivity;reading=50000uS/cm;temp=25"), 0, 1e-14);
    assert_close(found("of=conductivity;reading=0.5;temp=25;zero=1"), 0, 0, 0);
}

/* Not glass, no correction; a compensated meter at 25 degrees needs no slope. */
static void glass_and_slope(void **state)
{
    (void)state;
    check(found("of=sg;reading=1.0264;reference=60F/60F;temp=25;glass=no") -
              found("of=sg;reading=1.0264;reference=60F/60F;temp=25") >
          0.3);
    assert_close(found("of=compensated;reading=53;temp=25;slope=2.2"),
                 found("of=conductivity;reading=53;temp=25"), 0, 0);
    double seen = NAN;
    check(hw_conductivity_at(18.2, 33.85, &seen) == 0);
    char line[200];
    (void)snprintf(line, sizeof line, "of=compensated;reading=%.17g;temp=18.2;slope=1.9%%/C",
                   seen / (1 + 0.019 * (18.2 - 25)));
    assert_close(found(line), 33.85, 0, 1e-12);
}

/* Each note raised once, and once not. */
static const struct note_row notes[] = {
    {"standard-alone", "of=scale;reading=35;temp=25;standard=35",
     "of=scale;reading=35;temp=25;standard=35;standard_reads=35"},
    {"standard-alone", "of=scale;reading=35;temp=25;standard_reads=35",
     "of=scale;reading=35;temp=25"},
    {"standard-alone", "of=brine-gkg;reading=35;temp=25;standard_is=brine",
     "of=brine-gkg;reading=35;temp=25;standard_is=brine;standard=35;standard_reads=35"},
    {"standard-alone", "of=brine-gL;reading=35;temp=25;standard_is=sea-water",
     "of=brine-gL;reading=35;temp=25;standard_is=sea-water;standard=35;standard_reads=37"},
    {"reference-unknown", "of=sg;reading=1.0264;reference=unknown;temp=25",
     "of=sg;reading=1.0264;reference=60F/60F;temp=25"},
    {"below-fresh", "of=sg;reading=0.9972;reference=unknown;temp=25",
     "of=sg;reading=0.9972;reference=20C/4C;temp=25"},
    {"too-salty", "of=sg;reading=1.0315;reference=unknown;temp=25",
     "of=sg;reading=1.0315;reference=25C/25C;temp=25"},
    {"counted-as-fresh", "of=sg;reading=0.9999;reference=unknown;temp=25",
     "of=sg;reading=1.0002;reference=unknown;temp=25"},
    {"above-fit", "of=sg;reading=1.0290;reference=unknown;temp=25",
     "of=sg;reading=1.0264;reference=unknown;temp=25"},
    {"below-fresh", "of=scale;reading=-0.51;temp=25", "of=scale;reading=-0.5;temp=25"},
    {"below-fresh", "of=sg;reading=0.98;reference=20C/20C;temp=25",
     "of=sg;reading=1.06;reference=20C/20C;temp=25"},
    {"below-fresh", "of=refraction;reading=1.32;temp=25", "of=refraction;reading=1.36;temp=25"},
    {"below-fresh", "of=conductivity;reading=0;zero=5;temp=25",
     "of=conductivity;reading=100;temp=25"},
    {"too-salty", "of=scale;reading=45.1;temp=25", "of=scale;reading=45;temp=25"},
    {"too-salty", "of=sg;reading=1.06;reference=20C/20C;temp=25",
     "of=sg;reading=0.98;reference=20C/20C;temp=25"},
    {"too-salty", "of=compensated;reading=100;temp=25;standard=100;standard_reads=0.05",
     "of=compensated;reading=50;temp=25"},
    {"too-salty", "of=brine-gkg;reading=60;temp=25", "of=brine-gkg;reading=-5;temp=25"},
    {"too-salty", "of=brine-gL;reading=60;temp=25", "of=brine-gL;reading=-5;temp=25"},
    {"counted-as-fresh", "of=scale;reading=-0.5;temp=25", "of=scale;reading=0;temp=25"},
    {"counted-as-fresh", "of=sg;reading=0.9999;reference=25C/25C;temp=25",
     "of=sg;reading=1;reference=25C/25C;temp=25"},
    {"counted-as-fresh", "of=conductivity;reading=0.0005;temp=25",
     "of=conductivity;reading=0.005;temp=25"},
    {"counted-as-fresh", "of=conductivity;reading=0;temp=25;zero=0.2",
     "of=conductivity;reading=0;temp=25"},
    {"above-fit", "of=scale;reading=42.1;temp=25", "of=scale;reading=42;temp=25"},
    {"warm-conductivity", "of=scale;reading=35;temp=35.1", "of=scale;reading=35;temp=35"},
    {"index-stretched", "of=refraction;reading=1.338;temp=31", "of=scale;reading=35;temp=31"},
    {"index-stretched", "of=refraction;reading=1.3397;temp=20",
     "of=refraction;reading=1.3394;temp=20"},
    {"index-stretched", "of=refraction;reading=1.339;temp=-1",
     "of=refraction;reading=1.339;temp=0"},
    {"zero-and-standard", "of=scale;reading=35;temp=25;zero=1.1;standard=35;standard_reads=35",
     "of=scale;reading=35;temp=25;zero=0;standard=35;standard_reads=35"},
    {"zero-and-standard", "of=scale;reading=35;temp=25;zero=2;standard=35;standard_reads=36",
     "of=scale;reading=35;temp=25;zero=2"},
    {"large-correction", "of=scale;reading=35;temp=25;zero=2.1",
     "of=scale;reading=35;temp=25;zero=2"},
    {"large-correction", "of=scale;reading=46;temp=25;zero=1.5",
     "of=scale;reading=44;temp=25;zero=1.5"},
    {"maybe-compensated", "of=conductivity;reading=50;temp=23.9",
     "of=conductivity;reading=50;temp=24"},
    {"maybe-compensated", "of=conductivity;reading=50;temp=26.1",
     "of=compensated;reading=50;temp=26.1"},
    {"slope-matters", "of=compensated;reading=50;temp=21.9", "of=compensated;reading=50;temp=22"},
    {"slope-matters", "of=compensated;reading=50;temp=28.1",
     "of=conductivity;reading=50;temp=28.1"},
    {"fresh-ions", "of=conductivity;reading=3.7;temp=25", "of=conductivity;reading=3.9;temp=25"},
    {"fresh-ions", "of=compensated;reading=0.4;temp=25", "of=scale;reading=1.5g/kg;temp=25"},
    {"hydrometer-rough", "of=sg;reading=1.0264;reference=20C/4C;temp=25",
     "of=scale;reading=35;temp=25"},
    {"taken-as-glass", "of=sg;reading=1.0264;reference=20C/4C;temp=25",
     "of=sg;reading=1.0264;reference=20C/4C;temp=25;glass=no"},
    {"not-glass", "of=sg;reading=1.0264;reference=15C/4C;temp=25;glass=no",
     "of=sg;reading=1.0264;reference=15C/4C;temp=25"},
    {"linear-only", "of=compensated;reading=50;temp=25", "of=conductivity;reading=50;temp=25"},
    {"index-rough", "of=refraction;reading=1.339;temp=20", "of=scale;reading=35;temp=25"},
    {"scale-taken", "of=scale;reading=35;temp=25", "of=brine-gkg;reading=35;temp=25"},
    {"brine-factor", "of=brine-gkg;reading=35;temp=25", "of=scale;reading=35;temp=25"},
    {"brine-factor", "of=brine-gL;reading=35;temp=25", "of=refraction;reading=1.339;temp=20"},
    {"read-as-at-20", "of=scale;reading=35;temp=25", "of=refraction;reading=1.339;temp=20"},
    {"read-as-at-20", "of=brine-gL;reading=35;temp=25", "of=conductivity;reading=50;temp=25"},
    {"sea-salt-only", "of=scale;reading=35;temp=25", NULL},
    {"ask-vet", "of=scale;reading=35;temp=25", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(salinity(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"too-salty", ABOVE, 45, "reading", NULL, "of=scale;reading=45;temp=25"},
    {"below-fresh", BELOW, -0.5, "reading", NULL, "of=scale;reading=-0.5g/kg;temp=25"},
    {"counted-as-fresh", BELOW, 0, "reading", NULL, "of=scale;reading=0;temp=25"},
    {"above-fit", ABOVE, 42, "reading", NULL, "of=scale;reading=42;temp=25"},
    {"above-fit", ABOVE, 42, "reading", "salinity", "of=conductivity;reading=62;temp=25"},
    {"warm-conductivity", ABOVE, 35, "temp", NULL, "of=scale;reading=35;temp=35"},
    {"index-stretched", ABOVE, 30, "temp", NULL, "of=refraction;reading=1.338;temp=30"},
    {"index-stretched", BELOW, 0, "temp", NULL, "of=refraction;reading=1.338;temp=0"},
    {"index-stretched", ABOVE, 35, "reading", "salinity", "of=refraction;reading=1.3394;temp=20"},
    {"large-correction", ABOVE, 2, "zero", NULL, "of=scale;reading=35;temp=25;zero=2"},
    {"maybe-compensated", BELOW, 24, "temp", NULL, "of=conductivity;reading=50;temp=24"},
    {"maybe-compensated", ABOVE, 26, "temp", NULL, "of=conductivity;reading=50;temp=26"},
    {"slope-matters", BELOW, 22, "temp", NULL, "of=compensated;reading=50;temp=22"},
    {"slope-matters", ABOVE, 28, "temp", NULL, "of=compensated;reading=50;temp=28"},
    {"fresh-ions", BELOW, 2, "reading", "salinity", "of=conductivity;reading=3.8;temp=25"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(salinity(), edges, sizeof edges / sizeof edges[0]);
}

/* Every answer has every result, a refusal none. */
static void whole_or_nothing(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof notes / sizeof notes[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(salinity(), notes[i].raised, &question, &answer);
        bool range = noted(salinity(), &answer, "reference-unknown");
        for (size_t k = 0; k < salinity()->n_results; k++) {
            bool of_range = strncmp(salinity()->results[k].name, "salinity_", 9) == 0;
            bool there = answer.status >= 0 && range == of_range;
            check(there ? isfinite(answer.out[k]) : isnan(answer.out[k]));
        }
    }
}

/* A reading has no meaning without what belongs to it, and takes nothing that does not. */
static void what_goes_together(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        enum hw_problem problem;
    } wrong[] = {
        {"of=sg;reading=1.0264;temp=25", HW_PROBLEM_MISSING},
        {"of=sg;reference=25C/25C;temp=25", HW_PROBLEM_MISSING},
        {"of=scale;reading=35", HW_PROBLEM_MISSING},
        {"of=scale;reading=35;temp=25;reference=25C/25C", HW_PROBLEM_OUT_OF_PLACE},
        {"of=scale;reading=35;temp=25;glass=no", HW_PROBLEM_OUT_OF_PLACE},
        {"of=conductivity;reading=53;temp=28;slope=2", HW_PROBLEM_OUT_OF_PLACE},
        {"of=scale;reading=1.0264;temp=25", HW_PROBLEM_GRAVITY},
        {"of=scale;reading=53mS/cm;temp=25", HW_PROBLEM_WRONG_KIND},
        {"of=conductivity;reading=35ppt;temp=25", HW_PROBLEM_WRONG_KIND},
        {"of=conductivity;reading=53000;temp=25", HW_PROBLEM_OUT_OF_RANGE},
        {"of=sg;reading=35;reference=25C/25C;temp=25", HW_PROBLEM_OUT_OF_RANGE},
        {"of=sg;reading=1.0264g/kg;reference=25C/25C;temp=25", HW_PROBLEM_UNIT_UNWANTED},
        {"of=sg;reading=1.0264;reference=25C/25C;temp=25;zero=1.002", HW_PROBLEM_OUT_OF_RANGE},
        {"of=sg;reading=1.0264;reference=25/25;temp=25", HW_PROBLEM_UNKNOWN_WORD},
        {"of=brine-gkg;reading=36;temp=25;standard=35;standard-reads=36.5",
         HW_PROBLEM_OUT_OF_PLACE},
        {"of=brine-gL;reading=36;temp=25;standard=35;standard-reads=36.5", HW_PROBLEM_OUT_OF_PLACE},
        {"of=brine-gL;reading=36;temp=25;standard-is=brine;standard=35ppt;standard-reads=36.5",
         HW_PROBLEM_WRONG_KIND},
        {"of=scale;reading=36;temp=25;standard-is=brine;standard=35;standard-reads=36.5",
         HW_PROBLEM_OUT_OF_PLACE},
    };
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        struct hw_question question;
        size_t which = 0;
        enum hw_problem problem = ask_settle(salinity(), wrong[i].line, &question, &which);
        if (problem != wrong[i].problem) {
            fail_msg("%s: %s", wrong[i].line, hw_problem_code(problem));
        }
    }
}

/* Everything a sea-water instrument can read is answered, at both ends of the temperatures. */
static void corners_are_answered(void **state)
{
    (void)state;
    static const char *const readings[] = {"of=sg;reference=25C/25C;reading=1.006",
                                           "of=sg;reference=60F/60F;reading=1.025",
                                           "of=conductivity;reading=0",
                                           "of=conductivity;reading=28",
                                           "of=compensated;reading=0;slope=3",
                                           "of=compensated;reading=60;slope=2",
                                           "of=refraction;reading=1.336",
                                           "of=scale;reading=-0.5",
                                           "of=scale;reading=45",
                                           "of=brine-gkg;reading=46.9",
                                           "of=brine-gL;reading=48",
                                           "of=brine-gL;reading=-0.5"};
    static const char *const temps[] = {"-2", "40"};
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        for (size_t k = 0; k < 2; k++) {
            char line[200];
            (void)snprintf(line, sizeof line, "%s;temp=%s", readings[i], temps[k]);
            double s = found(line);
            if (!(s >= 0 && s <= 45)) {
                fail_msg("%s: %.17g", line, s);
            }
        }
    }
}

static void working_can_be_redone(void **state)
{
    (void)state;
    keep_workings();
    static const char *const more[] = {
        "of=sg;reading=1.0253;reference=60F/60F;temp=77F;zero=0.0004",
        "of=sg;reading=1.0253;reference=unknown;temp=77F;zero=0.0004",
        "of=brine-gkg;reading=37;temp=25;standard-is=sea-water;standard=35;standard-reads=36.2",
        "of=sg;reading=1.0003;reference=15C/4C;temp=9.4;standard=1.0264;standard_reads=1.0259",
        "of=sg;reading=1.0002;reference=25C/25C;temp=25;glass=no",
        "of=sg;reading=1.00000001;reference=25C/25C;temp=25",
        "of=sg;reading=1.0331;reference=60F/60F;temp=15.5",
        "of=compensated;reading=49.6;temp=18.2;slope=1.9",
        "of=compensated;reading=2.385;temp=28.2;slope=2.1",
        "of=conductivity;reading=1.413;temp=23.85",
        "of=conductivity;reading=0;temp=23.85",
        "of=refraction;reading=1.3385;temp=26.4",
        "of=brine-gL;reading=36;temp=24;zero=0.7",
        "of=sg;reading=1.0264;reference=15C/4C;temp=-1.7",
        "of=sg;reading=0.9999;reference=20C/20C;temp=-1.7;glass=no",
        "of=conductivity;reading=1.85;temp=-1.7",
        "of=compensated;reading=52;temp=-1.7",
    };
    for (size_t i = 0; i < sizeof more / sizeof more[0]; i++) {
        check_working(salinity(), more[i]);
    }
    for (size_t i = 0; i < sizeof notes / sizeof notes[0]; i++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(salinity(), notes[i].raised, &question, &answer);
        if (answer.status >= 0) {
            check_working(salinity(), notes[i].raised);
        }
    }
    redo_workings();
}

/* A block of rows gives the bits of the one-off; salinity rises with each reading. */
static void rows_and_one_off(void **state)
{
    (void)state;
    static const struct {
        const char *line;
        double lo, hi;
    } kinds[] = {
        {"of=sg;reading=1.02;reference=20C/4C;temp=25", 1.0, 1.027},
        {"of=conductivity;reading=40;temp=25", 0.01, 65},
        {"of=compensated;reading=40;temp=21.4;slope=1.9", 0.01, 65},
        {"of=refraction;reading=1.335;temp=25", 1.3326, 1.3405},
        {"of=scale;reading=30;temp=25", 0, 45},
        {"of=brine-gkg;reading=30;temp=25", 0, 46},
        {"of=brine-gL;reading=30;temp=25", 0, 48},
    };
    static double in[HW_INPUTS][HW_BLOCK];
    static double out[HW_RESULTS][HW_BLOCK];
    static uint64_t bits[HW_BLOCK];
    const double *in_at[HW_INPUTS];
    double *out_at[HW_RESULTS];
    const struct hw_calc *calc = salinity();
    for (size_t kind = 0; kind < sizeof kinds / sizeof kinds[0]; kind++) {
        struct hw_question question;
        struct hw_answer answer;
        ask(calc, kinds[kind].line, &question, &answer);
        size_t reading = 0;
        for (size_t i = 0; i < calc->n_inputs; i++) {
            bool this = strcmp(calc->inputs[i].name, "reading") == 0 && !isnan(question.in[i]);
            reading = this ? i : reading;
            in_at[i] = in[i];
            for (size_t row = 0; row < HW_BLOCK; row++) {
                double step = (kinds[kind].hi - kinds[kind].lo) / HW_BLOCK;
                in[i][row] = this ? kinds[kind].lo + step * (double)row : question.in[i];
            }
        }
        for (size_t k = 0; k < calc->n_results; k++) {
            out_at[k] = out[k];
        }
        memset(bits, 0, sizeof bits);
        struct hw_block block = {HW_BLOCK, in_at, out_at, bits};
        hw_block_run(calc, &block);
        for (size_t row = 0; row < HW_BLOCK; row++) {
            question.in[reading] = in[reading][row];
            hw_question_answer(&question, &answer);
            assert_int_equal(answer.notes, bits[row]);
            assert_memory_equal(&answer.out[0], &out[0][row], sizeof(double));
            assert_memory_equal(&answer.out[3], &out[3][row], sizeof(double));
            check(row == 0 || out[0][row] > out[0][row - 1] || out[0][row] == 0);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(references_mean_their_temperatures),
        cmocka_unit_test(what_else_is_told),
        cmocka_unit_test(unknown_reference),
        cmocka_unit_test(what_the_standard_is),
        cmocka_unit_test(zero_and_standard),
        cmocka_unit_test(glass_and_slope),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(whole_or_nothing),
        cmocka_unit_test(what_goes_together),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(working_can_be_redone),
        cmocka_unit_test(rows_and_one_off),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
