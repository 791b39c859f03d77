/* test_volume.c - the calculation volume: shapes, walls, sums, every note. */
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

static const struct hw_calc *volume(void)
{
    return find_calc("volume");
}

static double ask_for(const char *line, const char *result)
{
    struct hw_question question;
    struct hw_answer answer;
    ask(volume(), line, &question, &answer);
    return result_of(volume(), &answer, result);
}

static void walls_come_off_the_sides_alone(void **state)
{
    (void)state;
    assert_close(
        ask_for("measured=outside;wall=8mm;length=61.6cm;width=36.6cm;depth=37cm", "gross"),
        60.0 * 35 * 37 / 1000, 0, 1e-14);
    assert_close(ask_for("measured=inside;length=60cm;width=35cm;depth=37cm", "gross"),
                 60.0 * 35 * 37 / 1000, 0, 1e-14);
    double round = acos(-1.0) / 4 * 40 * 40 * 31 / 1000;
    assert_close(
        ask_for("shape=cylinder;measured=outside;wall=5mm;diameter=41cm;depth=31cm", "gross"),
        round, 0, 1e-14);
    assert_close(ask_for("shape=cylinder;measured=inside;diameter=40cm;depth=31cm", "gross"), round,
                 0, 1e-14);
}

static void sums(void **state)
{
    (void)state;
    static const char *const tank = "measured=inside;length=60cm;width=35cm;depth=37cm";
    char line[200];
    assert_close(ask_for(tank, "net"), ask_for(tank, "gross"), 0, 0);
    (void)snprintf(line, sizeof line, "%s;displaced=4.25L;extra=1gal", tank);
    assert_close(ask_for(line, "net"), 77.7 - 4.25 + 3.785411784, 0, 1e-14);
    assert_close(ask_for(line, "gross"), 77.7, 0, 1e-14);
}

#define SIDES "measured=inside;length=60cm;width=35cm"
#define OVER  "measured=outside;wall=6mm;length=61.2cm;width=36.2cm"

/* The height up to the rim, less the air above the water, less one bottom. */
static void height_and_rim(void **state)
{
    (void)state;
    assert_close(ask_for(SIDES ";height=40.4cm;below-rim=34mm", "gross"), 77.7, 0, 1e-14);
    assert_close(ask_for(SIDES ";height=37cm;below-rim=0cm", "gross"), 77.7, 0, 1e-14);
    assert_close(ask_for(OVER ";height=41.2cm;below-rim=3.4cm;bottom=8mm", "gross"), 77.7, 0,
                 1e-14);
    assert_close(ask_for(OVER ";height=41cm;below-rim=3.4cm", "gross"), 77.7, 0, 1e-14);
    assert_close(ask_for(OVER ";height=40.4cm;below-rim=3.4cm;bottom=0cm", "gross"), 77.7, 0,
                 1e-14);
    /* a depth that was taken from under the glass */
    assert_close(ask_for(OVER ";depth=37.8cm;bottom=8mm", "gross"), 77.7, 0, 1e-14);
    assert_close(ask_for(OVER ";depth=37cm", "gross"), 77.7, 0, 1e-14);
    double round = acos(-1.0) / 4 * 40 * 40 * 31 / 1000;
    assert_close(ask_for("shape=cylinder;measured=outside;wall=5mm;diameter=41cm;height=35cm;"
                         "below-rim=3.5cm",
                         "gross"),
                 round, 0, 1e-14);
}

static const struct note_row notes[] = {
    {"no-depth-left", SIDES ";height=40cm;below-rim=39.5cm", SIDES ";height=40cm;below-rim=39cm"},
    {"no-depth-left", OVER ";height=4cm;below-rim=2.5cm", OVER ";height=4.2cm;below-rim=2.5cm"},
    {"no-depth-left", OVER ";depth=1.5cm;bottom=6mm", OVER ";depth=1.7cm;bottom=6mm"},
    {"no-depth-left", SIDES ";height=40cm;below-rim=43cm", SIDES ";height=40cm;below-rim=4cm"},
    {"bottom-as-wall", OVER ";height=40cm;below-rim=3cm",
     OVER ";height=40cm;below-rim=3cm;bottom=8mm"},
    {"bottom-as-wall", OVER ";height=40cm;below-rim=3cm", SIDES ";height=40cm;below-rim=3cm"},
    {"bottom-as-wall", OVER ";height=40cm;below-rim=3cm", OVER ";depth=37cm"},
    {"walls-leave-nothing", "measured=outside;wall=9cm;length=60cm;width=18.9cm;depth=30cm",
     "measured=outside;wall=9cm;length=60cm;width=19cm;depth=30cm"},
    {"walls-leave-nothing", "measured=outside;wall=9cm;length=18.9cm;width=60cm;depth=30cm",
     "measured=outside;wall=9cm;length=60cm;width=60cm;depth=30cm"},
    {"walls-leave-nothing", "shape=cylinder;measured=outside;wall=9cm;diameter=18cm;depth=30cm",
     "shape=cylinder;measured=outside;wall=8cm;diameter=18cm;depth=30cm"},
    {"nothing-left", "measured=inside;length=60cm;width=35cm;depth=37cm;displaced=80L;extra=2.3L",
     "measured=inside;length=60cm;width=35cm;depth=37cm;displaced=80L;extra=2.4L"},
    {"nothing-left", "measured=inside;length=60cm;width=35cm;depth=37cm;displaced=1000000L",
     "measured=inside;length=10m;width=10m;depth=10m;displaced=999999L"},
    {"outside-measured", "measured=outside;wall=6mm;length=60cm;width=35cm;depth=37cm",
     "measured=inside;length=60cm;width=35cm;depth=37cm"},
    {"volume-unlikely", "measured=inside;length=10cm;width=10cm;depth=9.9cm",
     "measured=inside;length=10cm;width=10cm;depth=10cm"},
    {"volume-unlikely", "measured=inside;length=5m;width=2m;depth=2.01m",
     "measured=inside;length=5m;width=2m;depth=2m"},
    {"wall-thick", "measured=outside;wall=26mm;length=60cm;width=35cm;depth=37cm",
     "measured=outside;wall=25mm;length=60cm;width=35cm;depth=37cm"},
    {"wall-thick", "measured=outside;wall=6cm;length=60cm;width=35cm;depth=37cm",
     SIDES ";depth=37cm"},
    {"extra-large", SIDES ";depth=37cm;extra=78L", SIDES ";depth=37cm;extra=77L"},
    {"extra-large", SIDES ";depth=37cm;extra=78L;displaced=30L", SIDES ";depth=37cm"},
    {"fill-depth", "measured=inside;length=60cm;width=35cm;depth=37cm", NULL},
    {"displacement", "measured=inside;length=60cm;width=35cm;depth=37cm", NULL},
    {"nominal-volume", "measured=inside;length=60cm;width=35cm;depth=37cm", NULL},
    {"ask-vet", "shape=cylinder;measured=inside;diameter=40cm;depth=31cm", NULL},
};

static void every_note(void **state)
{
    (void)state;
    check_notes(volume(), notes, sizeof notes / sizeof notes[0]);
}

/* Where each note that hangs on a number begins and ends. */
static const struct note_edge edges[] = {
    {"volume-unlikely", BELOW, 1, "depth", "net",
     "measured=inside;length=10cm;width=10cm;depth=10cm"},
    {"volume-unlikely", ABOVE, 20000, "depth", "net",
     "measured=inside;length=5m;width=2m;depth=2m"},
    {"wall-thick", ABOVE, 2.5, "wall", NULL,
     "measured=outside;wall=2.5cm;length=60cm;width=35cm;depth=37cm"},
    {"extra-large", ABOVE, 77.7, "extra", NULL, SIDES ";depth=37cm;extra=77.7L"},
    {"walls-leave-nothing", BELOW, 19, "width", NULL,
     "measured=outside;wall=9cm;length=60cm;width=19cm;depth=30cm"},
    {"walls-leave-nothing", BELOW, 19, "diameter", NULL,
     "shape=cylinder;measured=outside;wall=9cm;diameter=19cm;depth=30cm"},
};

static void every_edge(void **state)
{
    (void)state;
    check_edges(volume(), edges, sizeof edges / sizeof edges[0]);
}

/* The ends of every range, with and without walls, are answered. */
static void corners_are_answered(void **state)
{
    (void)state;
    for (unsigned corner = 0; corner < 16; corner++) {
        char line[200];
        const char *depth = corner & 1 ? "1000cm" : "1cm";
        const char *side = corner & 2 ? "1000cm" : "1cm";
        const char *other = corner & 4 ? "1000cm" : "1cm";
        const char *extra = corner & 8 ? "1000000L" : "0L";
        (void)snprintf(line, sizeof line, "measured=inside;length=%s;width=%s;depth=%s;extra=%s",
                       side, other, depth, extra);
        check(isfinite(ask_for(line, "net")));
        (void)snprintf(line, sizeof line,
                       "shape=cylinder;measured=inside;diameter=%s;depth=%s;extra=%s", side, depth,
                       extra);
        check(isfinite(ask_for(line, "net")));
        (void)snprintf(
            line, sizeof line, "measured=outside;wall=%s;length=1000cm;width=%s;depth=%s;extra=%s",
            corner & 2 ? "0.05cm" : "10cm", corner & 4 ? "1000cm" : "21cm", depth, extra);
        check(isfinite(ask_for(line, "net")));
        (void)snprintf(line, sizeof line, SIDES ";height=%s;below-rim=%s",
                       corner & 1 ? "1000cm" : "1cm", corner & 3 ? "0cm" : "0mm");
        check(isfinite(ask_for(line, "net")));
    }
}

static enum hw_problem problem_of(const char *line, const char *input)
{
    struct hw_question question;
    size_t which = 0;
    enum hw_problem problem = ask_settle(volume(), line, &question, &which);
    assert_string_equal(volume()->inputs[which].name, input);
    return problem;
}

static void what_is_asked_for_hangs_on_the_choices(void **state)
{
    (void)state;
    assert_int_equal(problem_of("length=60cm;width=35cm;depth=37cm", "measured"),
                     HW_PROBLEM_MISSING);
    assert_int_equal(problem_of("measured=outside;length=60cm;width=35cm;depth=37cm", "wall"),
                     HW_PROBLEM_MISSING);
    assert_int_equal(
        problem_of("measured=inside;wall=6mm;length=60cm;width=35cm;depth=37cm", "wall"),
        HW_PROBLEM_OUT_OF_PLACE);
    assert_int_equal(problem_of("measured=inside;length=60cm;depth=37cm", "width"),
                     HW_PROBLEM_MISSING);
    assert_int_equal(problem_of("measured=inside;width=35cm;depth=37cm", "length"),
                     HW_PROBLEM_MISSING);
    assert_int_equal(problem_of("shape=cylinder;measured=inside;depth=37cm", "diameter"),
                     HW_PROBLEM_MISSING);
    assert_int_equal(
        problem_of("measured=inside;length=60cm;width=35cm;diameter=35cm;depth=37cm", "diameter"),
        HW_PROBLEM_OUT_OF_PLACE);
    assert_int_equal(problem_of(SIDES, "depth"), HW_PROBLEM_NONE_OF_GROUP);
    assert_int_equal(problem_of(SIDES ";height=40cm", "below_rim"), HW_PROBLEM_MISSING);
    assert_int_equal(problem_of(SIDES ";depth=37cm;below-rim=3cm", "below_rim"),
                     HW_PROBLEM_OUT_OF_PLACE);
    assert_int_equal(problem_of(SIDES ";depth=37cm;height=40cm;below-rim=3cm", "depth"),
                     HW_PROBLEM_MANY_OF_GROUP);
    assert_int_equal(problem_of(SIDES ";height=40cm;below-rim=3cm;bottom=6mm", "bottom"),
                     HW_PROBLEM_OUT_OF_PLACE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(walls_come_off_the_sides_alone),
        cmocka_unit_test(sums),
        cmocka_unit_test(height_and_rim),
        cmocka_unit_test(every_note),
        cmocka_unit_test(every_edge),
        cmocka_unit_test(corners_are_answered),
        cmocka_unit_test(what_is_asked_for_hangs_on_the_choices),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
