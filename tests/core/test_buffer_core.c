/* test_buffer_core.c - what to weigh to raise alkalinity. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/buffer.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const enum hw_buffer_source sources[] = {HW_BUFFER_BICARBONATE, HW_BUFFER_CARBONATE};

static void by_hand(void **state)
{
    (void)state;
    double mass = 0;
    assert_status(hw_buffer_mass(HW_BUFFER_BICARBONATE, 100, 1.5, 2.5, &mass), HW_STATUS_OK);
    assert_close(mass, 8.4006, 0, 1e-14);
    assert_status(hw_buffer_mass(HW_BUFFER_CARBONATE, 100, 1.5, 2.5, &mass), HW_STATUS_OK);
    assert_close(mass, 5.2994, 0, 1e-14);
    for (int i = 0; i < 2; i++) {
        assert_status(hw_buffer_mass(sources[i], 100, 2.4, 2.4, &mass), HW_STATUS_OK);
        assert_close(mass, 0, 0, 0);
        assert_status(hw_buffer_mass(sources[i], 100, 2.4, nextafter(2.4, 0), &mass),
                      HW_STATUS_NONE);
        assert_no_answer(mass);
    }
}

/* Two steps weigh what one does, and the salts stand to one another as their masses for an
 * equivalent. */
static void parts_make_the_whole(void **state)
{
    (void)state;
    hw_random_start(20310415);
    for (int i = 0; i < 2000; i++) {
        double volume = hw_random_between(1, 1000);
        double low = hw_random_between(0, 3);
        double middle = low + hw_random_between(0, 3);
        double high = middle + hw_random_between(0.01, 3);
        double whole[2];
        for (int k = 0; k < 2; k++) {
            double a = 0;
            double b = 0;
            assert_status(hw_buffer_mass(sources[k], volume, low, high, &whole[k]), 0);
            assert_status(hw_buffer_mass(sources[k], volume, low, middle, &a), 0);
            assert_status(hw_buffer_mass(sources[k], volume, middle, high, &b), 0);
            assert_close(a + b, whole[k], 0, 1e-13);
        }
        assert_close(whole[1] / whole[0], 52.994 / 84.006, 0, 1e-14);
    }
}

static void refused(const double a[], int status)
{
    double mass = 1;
    assert_status(hw_buffer_mass((enum hw_buffer_source)(int)a[3], a[0], a[1], a[2], &mass),
                  status);
    assert_no_answer(mass);
}

static void ranges(void **state)
{
    (void)state;
    static const double good[] = {110, 1.5, 2.5, 0};
    static const double lo[] = {0.1, 0, 0};
    static const double hi[] = {1e5, 10, 10};
    double mass = 0;
    assert_status(hw_buffer_mass(HW_BUFFER_CARBONATE, 1e5, 0, 10, &mass), HW_STATUS_OK);
    check(isfinite(mass));
    assert_status(hw_buffer_mass(HW_BUFFER_CARBONATE, 0.1, 10, 10, &mass), HW_STATUS_OK);
    assert_status(hw_buffer_mass(HW_BUFFER_CARBONATE, 0.1, 0, 0, &mass), HW_STATUS_OK);
    for (int k = 0; k < 3; k++) {
        double a[4];
        memcpy(a, good, sizeof a);
        a[k] = nextafter(lo[k], -1);
        refused(a, HW_STATUS_RANGE);
        a[k] = nextafter(hi[k], 1e10);
        refused(a, HW_STATUS_RANGE);
        for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
            a[k] = not_numbers[i];
            refused(a, HW_STATUS_RANGE);
        }
        a[3] = 2;
        refused(a, HW_STATUS_CHOICE);
        a[3] = -1;
        refused(a, HW_STATUS_CHOICE);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(parts_make_the_whole),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
