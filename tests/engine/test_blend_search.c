/* test_blend_search.c - the search for the change that is needed against one that is slower and
 * plainer: where a limit jumps every hundredth of the water is tried, else every tenth, then halves
 * are taken; and each number is asked of the core anew. */
#include "assert_close.h"
#include "calc/blend_needed.h"
#include "calc/long_limit.h"
#include "calc/shared.h"
#include "holdwater/ammonia.h"
#include "holdwater/blend.h"
#include "holdwater/carbonate.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static double level_of(const struct hw_blend *blend, double level, double fresh)
{
    double mixed = NAN;
    hw_blend_level(blend, level, fresh, &mixed);
    return mixed;
}

/* --- The plain search ------------------------------------------------------------------------- */

static double ph_allowed(double allowed, const struct hw_blend *blend, double tan)
{
    double pk = NAN;
    double reached = NAN;
    double ph = fmin(HW_PH_MAX, long_limit_ph(tan, blend->temp, blend->salinity));
    if (allowed < tan) {
        hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, blend->temp, blend->salinity, &pk);
        hw_ammonia_ph_at(allowed / tan, pk, &reached);
        ph = allowed > 0 ? fmin(ph, reached) : HW_PH_MIN;
    }
    return fmax(HW_PH_MIN, ph);
}

/* Above 0 where a share does not do it: ln of the larger of the two ratios. */
static double excess(const struct blend_waters *w, double share)
{
    struct hw_blend b;
    double most = NAN;
    double air = NAN;
    hw_blend_mix(share, w->tank.ready->temp, w->tank.ready->salinity, w->fresh.ready->temp,
                 w->fresh.ready->salinity, &b);
    double tan = level_of(&b, w->tank.tan, w->fresh.tan);
    double alkalinity = level_of(&b, w->tank.alkalinity, w->fresh.alkalinity);
    double carbon = level_of(&b, w->tank.carbon, w->fresh.carbon);
    double ph = ph_allowed(w->free_allowed, &b, tan);
    if (!(tan > 0) || hw_carbonate_air(ph, alkalinity, tan, b.temp, b.salinity, &air) < 0) {
        return -1;
    }
    hw_carbonate_carbon(ph, alkalinity, tan, b.temp, b.salinity, &most);
    return fmax(log(most / carbon), log(air / w->air));
}

static bool fails(const struct blend_waters *w, double share)
{
    return excess(w, share) > 0;
}

static bool jumps(const struct blend_waters *w, enum hw_limit_key limit)
{
    return below_limit(w->tank.ready->salinity, limit) !=
           below_limit(w->fresh.ready->salinity, limit);
}

static double plain_needed(const struct blend_waters *w)
{
    int steps = jumps(w, HW_LIMIT_FRESH_BELOW) || jumps(w, HW_LIMIT_SALT_FROM) ? 100 : 10;
    if (fails(w, 1)) {
        return (double)NAN;
    }
    for (int i = steps - 1; i >= 0; i--) {
        double bad = (double)i / steps;
        double good = (double)(i + 1) / steps;
        if (!fails(w, bad)) {
            continue;
        }
        for (int k = 0; k < 50; k++) {
            double middle = bad + (good - bad) / 2;
            bad = fails(w, middle) ? middle : bad;
            good = bad == middle ? good : middle;
        }
        return good;
    }
    return 0;
}

/* --- Random waters ---------------------------------------------------------------------------- */

/* Salinities apart as in keeping: alike, or anything from fresh water to the sea. */
static struct blend_waters any_waters(int i, struct hw_carbonate_water *tank,
                                      struct hw_carbonate_water *fresh)
{
    double salt = i % 2 ? hw_random_between(0, 36) : hw_random_between(25, 38);
    double temp = hw_random_between(10, 32);
    double ph = hw_random_between(6.5, 8.5);
    double pk = NAN;
    double free = NAN;
    double air = NAN;
    struct blend_waters w = {
        .tank = {tank, hw_random_between(0.4, 4), NAN, exp(hw_random_between(-3.5, 3))},
        .fresh = {fresh, hw_random_between(0.8, 4), NAN, i % 5 ? 0 : hw_random_between(0, 0.3)},
        .air = hw_random_between(400, 1200),
    };
    hw_carbonate_water(temp, salt, tank);
    hw_carbonate_water(i % 3 ? temp : hw_random_between(10, 32),
                       i % 4 ? salt : hw_random_between(0, 36), fresh);
    hw_carbonate_water_read(tank, ph, w.tank.alkalinity, w.tank.tan, &w.tank.carbon, &air);
    hw_carbonate_water_read(fresh, hw_random_between(7.5, 8.4), w.fresh.alkalinity, w.fresh.tan,
                            &w.fresh.carbon, &air);
    hw_ammonia_pk(HW_AMMONIA_KHOO1977, HW_PH_METER, temp, salt, &pk);
    hw_ammonia_fraction_at_pk(ph, pk, &free);
    w.free_allowed = 1.05 * free * w.tank.tan;
    return w;
}

static void as_the_plain_search(void **state)
{
    (void)state;
    enum { WATERS = 12000 };
    int found = 0;
    int none = 0;
    int nothing = 0;
    int at_a_jump = 0;
    int flats = 0;
    hw_random_start(20310418);
    for (int i = 0; i < WATERS; i++) {
        struct hw_carbonate_water tank;
        struct hw_carbonate_water fresh;
        struct blend_waters w = any_waters(i, &tank, &fresh);
        struct hw_carbonate_water mixed = {.temp = NAN};
        bool settled = false;
        if (isnan(w.tank.carbon) || isnan(w.fresh.carbon)) {
            continue;
        }
        double want = plain_needed(&w);
        double got = blend_needed(&w, &settled, &mixed);
        if (isnan(want)) {
            check(isnan(got) && !settled);
            none++;
            continue;
        }
        /* A flat border is found as well as one can tell: within 1e-12 of what is allowed. */
        bool flat = fabs(got - want) < 1e-9 && fabs(excess(&w, got)) < 1e-12;
        assert_close(got, want, flat ? 1e-9 : 1e-12, 0);
        flats += flat && fabs(got - want) > 1e-12;
        check(settled == !fails(&w, 0));
        check(!fails(&w, got) && (got == 0 || fails(&w, fmax(got - 1e-9, 0))));
        found += got > 0;
        nothing += got == 0;
        at_a_jump += got > 0 && (jumps(&w, HW_LIMIT_FRESH_BELOW) || jumps(&w, HW_LIMIT_SALT_FROM));
    }
    check(found > WATERS / 2 && none > 10 && nothing > WATERS / 100 && at_a_jump > 500);
    check(flats < WATERS / 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(as_the_plain_search)};
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
