/* test_volume_core.c - the water in a tank: measures, sums, and what an addition tells. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/volume.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

/* The US gallon is 231 cubic inches; 11 x 7 x 3 is 231. The gallon of 1706 was a cylinder 7 in wide
 * and 6 in deep. */
static void gallons(void **state)
{
    (void)state;
    double litres = 0;
    assert_status(hw_volume_box(11 * 2.54, 7 * 2.54, 3 * 2.54, &litres), HW_STATUS_OK);
    assert_close(litres, 3.785411784, 0, 1e-15);
    assert_status(hw_volume_cylinder(7 * 2.54, 6 * 2.54, &litres), HW_STATUS_OK);
    assert_close(litres, 230.907 * 0.016387064, 0.0005 * 0.016387064, 0);
}

static void walls(void **state)
{
    (void)state;
    double inside = 0;
    assert_status(hw_volume_inside(61.2, 0.6, &inside), HW_STATUS_OK);
    assert_close(inside, 60, 0, 1e-15);
    assert_status(hw_volume_inside(21, 10, &inside), HW_STATUS_OK);
    assert_close(inside, HW_VOLUME_SIDE_MIN, 0, 0);
    assert_status(hw_volume_inside(20.99, 10, &inside), HW_STATUS_NONE);
    assert_no_answer(inside);
    assert_status(hw_volume_inside(12, 6, &inside), HW_STATUS_NONE);
    assert_no_answer(inside);
}

/* From the rim down: what is left is the water. */
static void heights(void **state)
{
    (void)state;
    double depth = 0;
    assert_status(hw_volume_depth(41, 3.4, 0.6, &depth), HW_STATUS_OK);
    assert_close(depth, 37, 0, 1e-15);
    assert_status(hw_volume_depth(37, 0, 0, &depth), HW_STATUS_OK);
    assert_close(depth, 37, 0, 0);
    assert_status(hw_volume_depth(12, 1, 10, &depth), HW_STATUS_OK);
    assert_close(depth, HW_VOLUME_SIDE_MIN, 0, 0);
    assert_status(hw_volume_depth(12, 1.25, 10, &depth), HW_STATUS_NONE);
    assert_no_answer(depth);
    assert_status(hw_volume_depth(40, 43, 0.6, &depth), HW_STATUS_NONE);
    assert_no_answer(depth);
}

static void sums(void **state)
{
    (void)state;
    double net = 0;
    assert_status(hw_volume_net(77.7, 4.25, 3, &net), HW_STATUS_OK);
    assert_close(net, 76.45, 0, 1e-15);
    assert_status(hw_volume_net(77.7, 77.7, 0.01, &net), HW_STATUS_OK);
    assert_close(net, 0.01, 0, 1e-12);
    assert_status(hw_volume_net(77.75, 80, 2.25, &net), HW_STATUS_NONE);
    assert_no_answer(net);
    assert_status(hw_volume_net(77.7, 80, 2.3, &net), HW_STATUS_NONE); /* 3e-15 by rounding */
    assert_no_answer(net);
    assert_status(hw_volume_net(0, 0, 0, &net), HW_STATUS_NONE);
    assert_no_answer(net);
    assert_status(hw_volume_net(77.7, 81, 2.2, &net), HW_STATUS_NONE);
    assert_no_answer(net);
}

/* A cylinder fits into its box and holds pi/4 of it; depth adds up. */
static void shapes_agree(void **state)
{
    (void)state;
    hw_random_start(20310409);
    for (int i = 0; i < 1000; i++) {
        double side = hw_random_between(5, 900);
        double depth = hw_random_between(2, 400);
        double box = 0;
        double round = 0;
        double twice = 0;
        assert_status(hw_volume_box(side, side, depth, &box), 0);
        assert_status(hw_volume_cylinder(side, depth, &round), 0);
        assert_status(hw_volume_cylinder(side, 2 * depth, &twice), 0);
        assert_close(round / box, acos(-1.0) / 4, 0, 1e-14);
        assert_close(twice, 2 * round, 0, 1e-14);
    }
}

static void an_addition(void **state)
{
    (void)state;
    double net = 0;
    assert_status(hw_volume_gauge(78.584, 0.78584, &net), HW_STATUS_OK);
    assert_close(net, 100, 0, 1e-14);
    assert_status(hw_volume_gauge(HW_VOLUME_ADDED_MAX, HW_VOLUME_RISE_MIN, &net), HW_STATUS_OK);
    assert_close(net, 1e11, 0, 1e-14);
    assert_status(hw_volume_gauge(HW_VOLUME_ADDED_MIN, HW_VOLUME_RISE_MAX, &net), HW_STATUS_OK);
    assert_close(net, 1e-6, 0, 1e-14);
    /* 84.006 g of sodium bicarbonate are one mole, and one equivalent. */
    assert_status(hw_volume_gauge_bicarbonate(84006, 1, &net), HW_STATUS_OK);
    assert_close(net, 1000, 0, 1e-14);
}

/* Calls function `which` with arguments a, b and c, of which it takes as many as it has. */
static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_volume_inside(a[0], a[1], result);
    case 1:
        return hw_volume_box(a[0], a[1], a[2], result);
    case 2:
        return hw_volume_cylinder(a[0], a[1], result);
    case 3:
        return hw_volume_net(a[0], a[1], a[2], result);
    case 4:
        return hw_volume_gauge(a[0], a[1], result);
    case 5:
        return hw_volume_gauge_bicarbonate(a[0], a[1], result);
    default:
        return hw_volume_depth(a[0], a[1], a[2], result);
    }
}

static const struct {
    int arguments;
    double good[3], lo[3], hi[3];
} functions[] = {
    {2,
     {612, 6, 0},
     {HW_VOLUME_SIDE_MIN, HW_VOLUME_WALL_MIN, 0},
     {HW_VOLUME_SIDE_MAX, HW_VOLUME_WALL_MAX, 0}},
    {3,
     {60, 35, 37},
     {HW_VOLUME_SIDE_MIN, HW_VOLUME_SIDE_MIN, HW_VOLUME_SIDE_MIN},
     {HW_VOLUME_SIDE_MAX, HW_VOLUME_SIDE_MAX, HW_VOLUME_SIDE_MAX}},
    {2,
     {60, 35, 0},
     {HW_VOLUME_SIDE_MIN, HW_VOLUME_SIDE_MIN, 0},
     {HW_VOLUME_SIDE_MAX, HW_VOLUME_SIDE_MAX, 0}},
    {3,
     {900, 0.5, 1.5},
     {HW_VOLUME_PART_MIN, HW_VOLUME_PART_MIN, HW_VOLUME_PART_MIN},
     {HW_VOLUME_PART_MAX, HW_VOLUME_PART_MAX, HW_VOLUME_PART_MAX}},
    {2,
     {9000, 122.8, 0},
     {HW_VOLUME_ADDED_MIN, HW_VOLUME_RISE_MIN, 0},
     {HW_VOLUME_ADDED_MAX, HW_VOLUME_RISE_MAX, 0}},
    {2,
     {9000, 1.46, 0},
     {HW_VOLUME_ADDED_MIN, HW_VOLUME_ALKALINITY_MIN, 0},
     {HW_VOLUME_ADDED_MAX, HW_VOLUME_ALKALINITY_MAX, 0}},
    {3,
     {41, 3.4, 0.6},
     {HW_VOLUME_SIDE_MIN, HW_VOLUME_BELOW_RIM_MIN, HW_VOLUME_BOTTOM_MIN},
     {HW_VOLUME_SIDE_MAX, HW_VOLUME_BELOW_RIM_MAX, HW_VOLUME_BOTTOM_MAX}},
};

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 7; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[3];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            check(call(f, a, &result) == HW_STATUS_OK && isfinite(result));
            a[k] = functions[f].lo[k];
            check(call(f, a, &result) != HW_STATUS_RANGE);
            a[k] = functions[f].hi[k];
            check(call(f, a, &result) != HW_STATUS_RANGE);
            a[k] = nextafter(functions[f].lo[k], -1);
            assert_status(call(f, a, &result), HW_STATUS_RANGE);
            assert_no_answer(result);
            a[k] = nextafter(functions[f].hi[k], 1e12);
            assert_status(call(f, a, &result), HW_STATUS_RANGE);
            assert_no_answer(result);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                assert_status(call(f, a, &result), HW_STATUS_RANGE);
                assert_no_answer(result);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gallons), cmocka_unit_test(walls),        cmocka_unit_test(heights),
        cmocka_unit_test(sums),    cmocka_unit_test(shapes_agree), cmocka_unit_test(an_addition),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
