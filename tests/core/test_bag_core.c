/* test_bag_core.c - the ammonia that fish give off in a shut bag. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/bag.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

/* Mass, rate, hours and water such that their ends in turn still make a bag. */
static const double good[4] = {0.05, 1.5, 12, 1e4};
static const double lo[4] = {HW_BAG_BIOMASS_MIN, HW_BAG_EXCRETION_MIN, HW_BAG_HOURS_MIN,
                             HW_BAG_WATER_MIN};
static const double hi[4] = {HW_BAG_BIOMASS_MAX, HW_BAG_EXCRETION_MAX, HW_BAG_HOURS_MAX,
                             HW_BAG_WATER_MAX};

static int call(const double a[4], double *total)
{
    *total = 1;
    return hw_bag_total(a[0], a[1], a[2], a[3], total);
}

static void by_hand(void **state)
{
    (void)state;
    double total = 0;
    assert_status(hw_bag_total(40, 10, 30, 1.5, &total), HW_STATUS_OK);
    assert_close(total, 8, 0, 1e-15);
    assert_status(hw_bag_total(12, 2.3, 18, 0.8, &total), HW_STATUS_OK);
    assert_close(total, 0.621, 0, 1e-15);
}

static void in(const double a[4])
{
    double total = 0;
    assert_status(call(a, &total), HW_STATUS_OK);
    check(total > 0 && total <= HW_BAG_TOTAL_MAX);
}

static void out(const double a[4])
{
    double total = 0;
    assert_status(call(a, &total), HW_STATUS_RANGE);
    assert_no_answer(total);
}

/* Each argument in turn: both ends are in, the next number beyond is out, and so is what is no
 * number. */
static void ranges(void **state)
{
    (void)state;
    for (int k = 0; k < 4; k++) {
        double a[4];
        memcpy(a, good, sizeof a);
        a[k] = lo[k];
        in(a);
        a[k] = hi[k];
        in(a);
        a[k] = nextafter(lo[k], -1);
        out(a);
        a[k] = nextafter(hi[k], 1e9);
        out(a);
        for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
            a[k] = not_numbers[i];
            out(a);
        }
    }
}

static void no_bag(void **state)
{
    (void)state;
    double total = 0;
    assert_status(hw_bag_total(1e5, 100, 1, 10, &total), HW_STATUS_OK);
    assert_close(total, 1000, 0, 1e-15);
    assert_status(hw_bag_total(1e5, 100, 1.001, 10, &total), HW_STATUS_NONE);
    assert_no_answer(total);
    assert_status(hw_bag_total(1e5, 100, 168, 0.01, &total), HW_STATUS_NONE);
    assert_no_answer(total);
}

/* Twice the fish, the rate or the time is twice the ammonia; twice the water is half. */
static void proportions(void **state)
{
    (void)state;
    hw_random_start(20310604);
    for (int i = 0; i < 2000; i++) {
        double a[4] = {hw_random_between(0.01, 200), hw_random_between(0.1, 16),
                       hw_random_between(0.1, 48), hw_random_between(5, 60)};
        double once = 0;
        assert_status(call(a, &once), HW_STATUS_OK);
        for (int k = 0; k < 4; k++) {
            double total = 0;
            a[k] *= 2;
            assert_status(call(a, &total), HW_STATUS_OK);
            assert_close(total, k < 3 ? 2 * once : once / 2, 0, 1e-15);
            a[k] /= 2;
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(ranges),
        cmocka_unit_test(no_bag),
        cmocka_unit_test(proportions),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
