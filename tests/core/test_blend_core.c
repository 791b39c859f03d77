/* test_blend_core.c - two waters mixed: what is conserved, both ends, both orders. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/blend.h"
#include "holdwater/seawater.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};

struct water {
    double temp, salinity, alkalinity, carbon, tan;
};

static struct water random_water(void)
{
    struct water w;
    w.temp = hw_random_between(0, 40);
    w.salinity = hw_random_between(0, 45);
    w.alkalinity = hw_random_between(0.1, 6);
    w.tan = hw_random_between(0, 8);
    double ph = hw_random_between(5.5, 8);
    if (hw_carbonate_carbon(ph, w.alkalinity, w.tan, w.temp, w.salinity, &w.carbon) < 0) {
        w.carbon = w.alkalinity;
    }
    return w;
}

static double per_kg(double per_litre, double temp, double salinity)
{
    double density = 0;
    check(hw_seawater_density_at(temp, salinity, &density) >= 0);
    return per_litre / density;
}

static double heat_capacity(double temp, double salinity)
{
    double capacity = 0;
    check(hw_seawater_specific_heat(temp, salinity, &capacity) >= 0);
    return capacity;
}

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = 0;
    (void)hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

static void assert_no_level(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = 0;
    assert_status(hw_blend_level(blend, level, fresh, &mixed), HW_STATUS_RANGE);
    assert_no_answer(mixed);
}

static void assert_conserved(const struct hw_blend *blend, const struct water *a,
                             const struct water *b, double old_level, double new_level)
{
    double w = blend->mass_share;
    double mixed = per_kg(level_of(blend, old_level, new_level), blend->temp, blend->salinity);
    double wanted = (1 - w) * per_kg(old_level, a->temp, a->salinity) +
                    w * per_kg(new_level, b->temp, b->salinity);
    assert_close(mixed, wanted, 0, 1e-12);
}

/* Alkalinity, carbon and ammonia are conserved per kg; heat and salt, too; and either water may be
 * the old one. */
static void conserved(void **state)
{
    (void)state;
    hw_random_start(20310419);
    for (int i = 0; i < 4000; i++) {
        struct water a = random_water();
        struct water b = random_water();
        double share = hw_random_between(0, 1);
        struct hw_blend one;
        struct hw_blend other;
        check(hw_blend_mix(share, a.temp, a.salinity, b.temp, b.salinity, &one) >= 0);
        check(hw_blend_mix(1 - share, b.temp, b.salinity, a.temp, a.salinity, &other) >= 0);
        assert_conserved(&one, &a, &b, a.alkalinity, b.alkalinity);
        assert_conserved(&one, &a, &b, a.carbon, b.carbon);
        assert_conserved(&one, &a, &b, a.tan, b.tan);
        /* by volume: masses from litres and densities, not from the share that the function gave */
        double old_mass = (1 - share) / per_kg(1, a.temp, a.salinity);
        double new_mass = share / per_kg(1, b.temp, b.salinity);
        assert_close(one.mass_share, new_mass / (old_mass + new_mass), 0, 1e-12);
        assert_close(one.salinity * (old_mass + new_mass),
                     a.salinity * old_mass + b.salinity * new_mass, 0, 1e-12);
        double old_heat = old_mass * heat_capacity(a.temp, a.salinity);
        double new_heat = new_mass * heat_capacity(b.temp, b.salinity);
        assert_close(one.temp * (old_heat + new_heat), a.temp * old_heat + b.temp * new_heat, 0,
                     1e-12);
        assert_close(one.heat_share, new_heat / (old_heat + new_heat), 0, 1e-12);
        assert_close(one.temp, other.temp, 0, 1e-12);
        assert_close(one.salinity, other.salinity, 0, 1e-12);
        assert_close(level_of(&one, a.tan, b.tan), level_of(&other, b.tan, a.tan), 0, 1e-12);
        assert_close(one.mass_share, 1 - other.mass_share, 1e-12, 0);
    }
}

/* No new water, or nothing but, gives that water back; its pH with it. */
static void both_ends(void **state)
{
    (void)state;
    hw_random_start(20310420);
    for (int i = 0; i < 2000; i++) {
        struct water a = random_water();
        struct water b = random_water();
        for (int all = 0; all <= 1; all++) {
            struct water kept = all ? b : a;
            struct hw_blend blend;
            double before = 0;
            double after = 0;
            check(hw_blend_mix(all, a.temp, a.salinity, b.temp, b.salinity, &blend) >= 0);
            assert_close(blend.mass_share, all, 0, 0);
            assert_close(blend.heat_share, all, 0, 0);
            assert_close(blend.temp, kept.temp, 0, 0);
            assert_close(blend.salinity, kept.salinity, 0, 0);
            int status = hw_carbonate_ph(kept.alkalinity, kept.carbon, kept.tan, kept.temp,
                                         kept.salinity, &before);
            check(hw_carbonate_ph(level_of(&blend, a.alkalinity, b.alkalinity),
                                  level_of(&blend, a.carbon, b.carbon),
                                  level_of(&blend, a.tan, b.tan), blend.temp, blend.salinity,
                                  &after) == status);
            assert_close(after, before, 1e-9, 0);
        }
    }
}

/* Two waters that are alike in temperature and salinity stay so, to the last bit. */
static void alike(void **state)
{
    (void)state;
    hw_random_start(20310430);
    for (int i = 0; i < 2000; i++) {
        struct water a = random_water();
        struct hw_blend blend;
        double share = hw_random_between(0, 1);
        check(hw_blend_mix(share, a.temp, a.salinity, a.temp, a.salinity, &blend) >= 0);
        assert_close(blend.temp, a.temp, 0, 0);
        assert_close(blend.salinity, a.salinity, 0, 0);
    }
}

/* With the same temperature and salinity the pH of the mixture lies between the two. */
static void between(void **state)
{
    (void)state;
    hw_random_start(20310421);
    for (int i = 0; i < 2000; i++) {
        struct water a = random_water();
        struct hw_blend blend;
        double ph[3] = {hw_random_between(6.5, 7.8), hw_random_between(7.2, 8.4), 0};
        double alkalinity[2] = {hw_random_between(1, 6), hw_random_between(1, 6)};
        double carbon[2] = {0, 0};
        for (int k = 0; k < 2; k++) {
            check(hw_carbonate_carbon(ph[k], alkalinity[k], 0, a.temp, a.salinity, &carbon[k]) >=
                  0);
        }
        double share = hw_random_between(0, 1);
        check(hw_blend_mix(share, a.temp, a.salinity, a.temp, a.salinity, &blend) >= 0);
        check(hw_carbonate_ph(level_of(&blend, alkalinity[0], alkalinity[1]),
                              level_of(&blend, carbon[0], carbon[1]), 0, blend.temp, blend.salinity,
                              &ph[2]) >= 0);
        check(ph[2] > fmin(ph[0], ph[1]) - 1e-9 && ph[2] < fmax(ph[0], ph[1]) + 1e-9);
    }
}

static void air_and_back(void **state)
{
    (void)state;
    double air = 0;
    double ph = 0;
    hw_random_start(20310422);
    for (int i = 0; i < 2000; i++) {
        struct water a = random_water();
        double wanted = hw_random_between(7, 8.2);
        check(hw_carbonate_air(wanted, a.alkalinity + 1, a.tan, a.temp, a.salinity, &air) >= 0);
        if (air >= HW_CARBONATE_AIR_MIN && air <= HW_CARBONATE_AIR_MAX) {
            hw_carbonate_ph_in_air(a.alkalinity + 1, air, a.tan, a.temp, a.salinity, &ph);
            assert_close(ph, wanted, 1e-9, 0);
        }
    }
    assert_status(hw_carbonate_air(9.5, 0.1, 0, 25, 34, &air), HW_STATUS_NONE);
    assert_no_answer(air);
    assert_status(hw_carbonate_air(8, 2.4, 0, 25, 12, &air), HW_STATUS_STRETCHED);
    check(air > 100);
    static const double right[5] = {8, 2.4, 0, 25, 34};
    static const double ends[5][2] = {{HW_PH_MIN, HW_PH_MAX},
                                      {HW_CARBONATE_ALKALINITY_MIN, HW_CARBONATE_ALKALINITY_MAX},
                                      {HW_CARBONATE_TAN_MIN, HW_CARBONATE_TAN_MAX},
                                      {HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX},
                                      {HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX}};
    for (int i = 0; i < 5; i++) {
        double wrong[5] = {nextafter(ends[i][0], -1e9), nextafter(ends[i][1], 1e9), not_numbers[0],
                           not_numbers[1], not_numbers[2]};
        for (int k = 0; k < 5; k++) {
            double x[5] = {right[0], right[1], right[2], right[3], right[4]};
            x[i] = wrong[k];
            assert_status(hw_carbonate_air(x[0], x[1], x[2], x[3], x[4], &air), HW_STATUS_RANGE);
            assert_no_answer(air);
        }
    }
}

static void ranges(void **state)
{
    (void)state;
    static const double right[5] = {0.25, 25, 34, 22, 35};
    static const double ends[5][2] = {{HW_BLEND_SHARE_MIN, HW_BLEND_SHARE_MAX},
                                      {HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX},
                                      {HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX},
                                      {HW_CARBONATE_TEMP_MIN, HW_CARBONATE_TEMP_MAX},
                                      {HW_PH_SALINITY_MIN, HW_PH_SALINITY_MAX}};
    struct hw_blend blend;
    for (int i = 0; i < 5; i++) {
        double values[7] = {ends[i][0],
                            ends[i][1],
                            nextafter(ends[i][0], -1e9),
                            nextafter(ends[i][1], 1e9),
                            not_numbers[0],
                            not_numbers[1],
                            not_numbers[2]};
        for (int k = 0; k < 7; k++) {
            double x[5] = {right[0], right[1], right[2], right[3], right[4]};
            x[i] = values[k];
            int status = hw_blend_mix(x[0], x[1], x[2], x[3], x[4], &blend);
            if (k < 2) {
                check(status >= 0 && isfinite(blend.temp) && isfinite(blend.per_old));
            } else {
                assert_status(status, HW_STATUS_RANGE);
                assert_no_answer(blend.mass_share);
                assert_no_answer(blend.temp);
                assert_no_answer(blend.salinity);
                assert_no_level(&blend, 1, 1);
            }
        }
    }
    assert_status(hw_blend_mix(0.2, 25, 42, 25, 42, &blend), HW_STATUS_OK);
    assert_status(hw_blend_mix(0.2, 25, 42.5, 25, 42, &blend), HW_STATUS_STRETCHED);
    assert_status(hw_blend_mix(0.2, 25, 42, 25, 42.5, &blend), HW_STATUS_STRETCHED);
    for (size_t i = 0; i < sizeof not_numbers / sizeof *not_numbers; i++) {
        assert_no_level(&blend, not_numbers[i], 1);
        assert_no_level(&blend, 1, not_numbers[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(conserved), cmocka_unit_test(both_ends),    cmocka_unit_test(alike),
        cmocka_unit_test(between),   cmocka_unit_test(air_and_back), cmocka_unit_test(ranges),
    };
    int failed = cmocka_run_group_tests(tests, NULL, NULL);
    return hw_report_checks(failed);
}
