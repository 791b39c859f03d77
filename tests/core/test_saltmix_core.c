/* test_saltmix_core.c - water made saltier or less salty. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/saltmix.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

static double density_of(double salinity, double temp)
{
    double density = 0;
    check(hw_seawater_density_at(temp, salinity, &density) >= 0);
    return density;
}

/* Salt and water of the product and of the water before are those of the water after. */
static void salt_is_conserved(void **state)
{
    (void)state;
    hw_random_start(20310402);
    for (int i = 0; i < 5000; i++) {
        double volume = hw_random_between(0.5, 2000);
        double temp = hw_random_between(0, 35);
        double low = hw_random_between(0, 38);
        double high = low + hw_random_between(0.01, 4);
        double dry = hw_random_between(0.6, 1);
        double mass = 0;
        assert_status(hw_saltmix_raise(volume, temp, low, high, dry, &mass), 0);
        double water = volume * density_of(low, temp);
        assert_close((water * low / 1000 + mass * dry) / (water + mass) * 1000, high, 0, 1e-12);

        double top_up = 0;
        assert_status(hw_saltmix_dilute(volume, temp, high, low, &top_up), 0);
        double salt = volume * density_of(high, temp) * high;
        double after = volume * density_of(high, temp) + top_up * density_of(0, temp);
        assert_close(salt / after, low, 0, 1e-12);

        double swap = 0;
        assert_status(hw_saltmix_replace(volume, temp, high, low, &swap), 0);
        salt = (volume - swap) * density_of(high, temp) * high;
        after = (volume - swap) * density_of(high, temp) + swap * density_of(0, temp);
        assert_close(salt / after, low, 0, 1e-12);
        check(swap > 0 && swap < volume && swap < top_up);
    }
}

/* What a label says of a product is what that product makes: the mass of the finished water less
 * the product is the water it was dissolved in. */
static void label_and_way_back(void **state)
{
    (void)state;
    hw_random_start(20310403);
    for (int i = 0; i < 2000; i++) {
        double makes = hw_random_between(5, 900);
        double salinity = hw_random_between(20, 41);
        double temp = hw_random_between(5, 35);
        double dry = hw_random_between(0.6, 1);
        double finished = makes * density_of(salinity, temp);
        double mass = finished * salinity / 1000 / dry;
        double found = 0;
        double again = 0;
        assert_status(hw_saltmix_dry(mass, makes, temp, salinity, &found), 0);
        assert_close(found, dry, 0, 1e-14);
        double before = (finished - mass) / density_of(0, temp);
        assert_status(hw_saltmix_raise(before, temp, 0, salinity, fmin(found, 1), &again), 0);
        assert_close(again, mass, 0, 1e-12);
    }
}

static void ends(void **state)
{
    (void)state;
    double x = 1;
    assert_status(hw_saltmix_raise(110, 25, 33.5, 33.5, 1, &x), 0);
    assert_close(x, 0, 0, 0);
    assert_status(hw_saltmix_dilute(110, 25, 33.5, 33.5, &x), 0);
    assert_close(x, 0, 0, 0);
    assert_status(hw_saltmix_dilute(110, 25, 0, 0, &x), 0);
    assert_close(x, 0, 0, 0);
    assert_status(hw_saltmix_replace(110, 25, 0, 0, &x), 0);
    assert_close(x, 0, 0, 0);
    assert_status(hw_saltmix_replace(110, 25, 33.5, 0, &x), 0);
    assert_close(x, 110, 0, 0);
    assert_status(hw_saltmix_dilute(110, 25, 33.5, 0, &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_saltmix_raise(110, 25, 33.5, nextafter(33.5, 0), 1, &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_saltmix_dilute(110, 25, 33.5, nextafter(33.5, 40), &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_saltmix_replace(110, 25, 33.5, nextafter(33.5, 40), &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_saltmix_raise(110, 25, 42.5, 44, 1, &x), HW_STATUS_STRETCHED);
    assert_status(hw_saltmix_dilute(110, 25, 42.5, 35, &x), HW_STATUS_STRETCHED);
    assert_status(hw_saltmix_replace(110, 25, 42.5, 35, &x), HW_STATUS_STRETCHED);
    assert_status(hw_saltmix_dry(4700, 100, 25, 43, &x), HW_STATUS_STRETCHED);
    assert_status(hw_saltmix_dry(8000, 100, 25, 35, &x), HW_STATUS_NONE);
    assert_no_answer(x);
    assert_status(hw_saltmix_dry(3400, 100, 25, 35, &x), HW_STATUS_NONE);
    assert_no_answer(x);
}

static int call(int which, const double a[], double *result)
{
    *result = 1;
    switch (which) {
    case 0:
        return hw_saltmix_raise(a[0], a[3], a[1], a[2], a[4], result);
    case 1:
        return hw_saltmix_dilute(a[0], a[3], a[1], a[2], result);
    case 2:
        return hw_saltmix_replace(a[0], a[3], a[1], a[2], result);
    default:
        return hw_saltmix_dry(a[0], a[1], a[3], a[2], result);
    }
}

/* Statuses at the ends where they are not 0: a target at the wrong side, a label that cannot be. */
static const struct {
    int arguments;
    double good[5], lo[5], hi[5];
    int lo_status[5], hi_status[5];
} functions[] = {
    {5, {100, 30, 35, 25, 0.9}, {0.1, 0, 0, -2, 0.5}, {1e5, 45, 45, 40, 1}, {0, 0, -3}, {0, -3, 0}},
    {4, {100, 35, 30, 25}, {0.1, 0, 0, -2}, {1e5, 45, 45, 40}, {0, -3, -3}, {0, 1, -3}},
    {4, {100, 35, 30, 25}, {0.1, 0, 0, -2}, {1e5, 45, 45, 40}, {0, -3, 0}, {0, 1, -3}},
    {4, {4000, 100, 35, 25}, {1, 0.1, 0, -2}, {1e6, 1e5, 45, 40}, {-3, -3, -3}, {-3, -3, -3}},
};

static void refused(int f, const double a[])
{
    double result = 0;
    assert_status(call(f, a, &result), HW_STATUS_RANGE);
    assert_no_answer(result);
}

static void ranges(void **state)
{
    (void)state;
    for (int f = 0; f < 4; f++) {
        for (int k = 0; k < functions[f].arguments; k++) {
            double a[5];
            double result = 0;
            memcpy(a, functions[f].good, sizeof a);
            assert_status(call(f, a, &result), HW_STATUS_OK);
            a[k] = functions[f].lo[k];
            assert_status(call(f, a, &result), functions[f].lo_status[k]);
            a[k] = functions[f].hi[k];
            assert_status(call(f, a, &result), functions[f].hi_status[k]);
            a[k] = nextafter(functions[f].lo[k], -1e3);
            refused(f, a);
            a[k] = nextafter(functions[f].hi[k], 1e10);
            refused(f, a);
            for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
                a[k] = not_numbers[i];
                refused(f, a);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(salt_is_conserved),
        cmocka_unit_test(label_and_way_back),
        cmocka_unit_test(ends),
        cmocka_unit_test(ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
