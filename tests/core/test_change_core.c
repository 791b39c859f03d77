/* test_change_core.c - water changes: nothing is lost, and what is asked for is reached. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "assert_close.h"
#include "holdwater/change.h"

static const double not_numbers[] = {(double)NAN, (double)INFINITY, -(double)INFINITY};
static const enum hw_change_method methods[] = {HW_CHANGE_BATCH, HW_CHANGE_FLOW};
enum { TRIALS = 2000 };

static double level(enum hw_change_method method, double exchanged, int rounds, double now,
                    double fresh)
{
    double result = 0;
    assert_status(hw_change_level(method, exchanged, rounds, now, fresh, &result), HW_STATUS_OK);
    return result;
}

static double most(enum hw_change_method method)
{
    return method == HW_CHANGE_BATCH ? HW_CHANGE_EXCHANGED_MAX_BATCH : HW_CHANGE_EXCHANGED_MAX_FLOW;
}

static void worked_dilutions(void **state)
{
    (void)state;
    assert_close(level(HW_CHANGE_BATCH, 0.25, 1, 0.20, 0), 0.15, 1e-15, 0);
    assert_close(level(HW_CHANGE_BATCH, 0.25, 1, 0.18, 0), 0.135, 1e-15, 0);
    assert_close(level(HW_CHANGE_BATCH, 1, 3, 0.18, 0.11), 0.11, 0, 0);
    assert_close(level(HW_CHANGE_BATCH, 0.37, 9, 0.18, 0.18), 0.18, 0, 0);
    assert_close(level(HW_CHANGE_FLOW, 1, 1, 2.385, 0), 2.385 * 0.36787944117144233, 0, 1e-15);
    double kept = 0;
    assert_status(hw_change_kept(HW_CHANGE_BATCH, 0.385, &kept), HW_STATUS_OK);
    assert_close(kept, 0.615, 0, 1e-15);
    assert_status(hw_change_kept(HW_CHANGE_FLOW, 0.385, &kept), HW_STATUS_OK);
    assert_close(kept, 0.68045063620458764, 0, 1e-15);
}

/* What the tank holds after a batch is what stayed and what came in, to the milligram. */
static void batch_conserves_mass(void **state)
{
    (void)state;
    hw_random_start(20310501);
    for (int i = 0; i < TRIALS; i++) {
        double volume = hw_random_between(10, 200);
        double take = volume * hw_random_between(0.001, 1);
        double now = hw_random_between(0, 100);
        double fresh = hw_random_between(0, 100);
        double after = level(HW_CHANGE_BATCH, take / volume, 1, now, fresh);
        assert_close(volume * after, (volume - take) * now + take * fresh, 1e-10, 1e-13);
    }
}

/* In a flow what is in the tank is what was there, and came in, less what ran out: the level on the
 * way, summed by Simpson's rule. */
static void flow_conserves_mass(void **state)
{
    (void)state;
    enum { PARTS = 64 };
    hw_random_start(20310502);
    for (int i = 0; i < TRIALS / 20; i++) {
        double exchanged = hw_random_between(0.01, 2);
        double now = hw_random_between(0, 100);
        double fresh = hw_random_between(0, 100);
        double after = level(HW_CHANGE_FLOW, exchanged, 1, now, fresh);
        double sum = now + after;
        for (int k = 1; k < PARTS; k++) {
            sum += (k % 2 ? 4 : 2) * level(HW_CHANGE_FLOW, exchanged * k / PARTS, 1, now, fresh);
        }
        double out = sum * exchanged / PARTS / 3;
        assert_close(after, now + fresh * exchanged - out, 1e-6, 0);
    }
}

/* Several rounds are the same as one after the other, and the level never turns back. */
static void rounds_are_single_changes(void **state)
{
    (void)state;
    hw_random_start(20310503);
    for (int i = 0; i < TRIALS; i++) {
        enum hw_change_method method = methods[i % 2];
        double exchanged = most(method) * hw_random_between(0.001, 1);
        double now = hw_random_between(0, 10);
        double fresh = hw_random_between(0, 10);
        double step = now;
        for (int round = 1; round <= 7; round++) {
            double before = step;
            step = level(method, exchanged, 1, step, fresh);
            assert_close(level(method, exchanged, round, now, fresh), step, 1e-13, 1e-13);
            check(fabs(step - fresh) <= fabs(before - fresh) * (1 + 1e-15));
        }
    }
    /* A flow may be cut anywhere. */
    double first = level(HW_CHANGE_FLOW, 0.385, 1, 7.2, 0.31);
    assert_close(level(HW_CHANGE_FLOW, 0.77, 1, first, 0.31),
                 level(HW_CHANGE_FLOW, 1.155, 1, 7.2, 0.31), 0, 1e-14);
}

static void fresh_needed_ends_at_keep(void **state)
{
    (void)state;
    hw_random_start(20310504);
    double fresh = 0;
    for (int i = 0; i < TRIALS; i++) {
        enum hw_change_method method = methods[i % 2];
        double exchanged = most(method) * hw_random_between(0.01, 1);
        double now = hw_random_between(0, 10);
        double keep = hw_random_between(0, 10);
        assert_status(hw_change_fresh_needed(method, exchanged, now, keep, &fresh), HW_STATUS_OK);
        if (fresh >= 0) {
            assert_close(level(method, exchanged, 1, now, fresh), keep, 1e-11, 0);
        } else {
            check(level(method, exchanged, 1, now, 0) > keep);
        }
        assert_status(hw_change_fresh_needed(method, exchanged, now, now, &fresh), HW_STATUS_OK);
        assert_close(fresh, now, 0, 0);
    }
    /* (keep - now (1 - s)) / s, by hand: (0.2 - 0.12 * 0.6) / 0.4. */
    assert_status(hw_change_fresh_needed(HW_CHANGE_BATCH, 0.4, 0.12, 0.2, &fresh), HW_STATUS_OK);
    assert_close(fresh, 0.32, 1e-15, 0);
}

static void goals_are_reached(void **state)
{
    (void)state;
    hw_random_start(20310505);
    for (int i = 0; i < TRIALS; i++) {
        enum hw_change_method method = methods[i % 2];
        double now = hw_random_between(0, 10);
        double fresh = hw_random_between(0, 10);
        double goal = now + (fresh - now) * hw_random_between(0.01, 0.99);
        double exchanged = 0;
        double rounds = 0;
        assert_status(hw_change_exchange_needed(method, now, fresh, goal, &exchanged), 0);
        assert_close(level(method, exchanged, 1, now, fresh), goal, 1e-12, 0);
        double each = hw_random_between(0.05, 0.9);
        assert_status(hw_change_rounds_needed(method, each, now, fresh, goal, &rounds), 0);
        check(rounds == floor(rounds) && rounds >= 1);
        double reached = level(method, each, (int)rounds, now, fresh);
        check(fabs(reached - fresh) <= fabs(goal - fresh) * (1 + 1e-5));
        if (rounds > 1) {
            double before = level(method, each, (int)rounds - 1, now, fresh);
            check(fabs(before - fresh) > fabs(goal - fresh));
        }
    }
}

static double rounds_of(enum hw_change_method method, double exchanged, double now, double goal)
{
    double rounds = 0;
    assert_status(hw_change_rounds_needed(method, exchanged, now, 0, goal, &rounds), HW_STATUS_OK);
    return rounds;
}

/* Goals that a whole number of rounds meets exactly are not overshot for a rounding error. */
static void exact_goals(void **state)
{
    (void)state;
    for (int n = 1; n <= 40; n++) {
        assert_close(rounds_of(HW_CHANGE_BATCH, 0.3, 1.7, 1.7 * pow(0.7, n)), n, 0, 0);
        assert_close(rounds_of(HW_CHANGE_FLOW, 0.3, 1.7, 1.7 * exp(-0.3 * n)), n, 0, 0);
    }
    assert_close(rounds_of(HW_CHANGE_BATCH, 0.5, 0.2, 0.01), 5, 0, 0);
    assert_close(rounds_of(HW_CHANGE_BATCH, 1, 0.2, 0), 1, 0, 0);
    assert_close(rounds_of(HW_CHANGE_BATCH, 1, 0.2, 0.1), 1, 0, 0);
    assert_close(rounds_of(HW_CHANGE_BATCH, 0.25, 0.2, 0.2), 0, 0, 0);
    double exchanged = 1;
    assert_status(hw_change_exchange_needed(HW_CHANGE_FLOW, 0.2, 0.2, 0.2, &exchanged), 0);
    assert_close(exchanged, 0, 0, 0);
    assert_status(hw_change_exchange_needed(HW_CHANGE_BATCH, 0.2, 0.01, 0.01, &exchanged), 0);
    assert_close(exchanged, 1, 0, 0);
}

static void goals_out_of_reach(void **state)
{
    (void)state;
    static const struct {
        enum hw_change_method method;
        double now, fresh, goal;
        int once, often;
    } cases[] = {
        {HW_CHANGE_BATCH, 0.2, 0, 0.3, HW_STATUS_NONE, HW_STATUS_NONE},
        {HW_CHANGE_BATCH, 0.2, 0.1, 0.05, HW_STATUS_NONE, HW_STATUS_NONE},
        {HW_CHANGE_BATCH, 0.2, 0.5, 0.1, HW_STATUS_NONE, HW_STATUS_NONE},
        {HW_CHANGE_FLOW, 0.2, 0.5, 0.6, HW_STATUS_NONE, HW_STATUS_NONE},
        {HW_CHANGE_FLOW, 0.2, 0.2, 0.3, HW_STATUS_NONE, HW_STATUS_NONE},
        {HW_CHANGE_BATCH, 0.2, 0.1, 0.1, HW_STATUS_OK, HW_STATUS_NONE},
        {HW_CHANGE_FLOW, 0.2, 0.1, 0.1, HW_STATUS_NONE, HW_STATUS_NONE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        double once = 1;
        double often = 1;
        assert_status(hw_change_exchange_needed(cases[i].method, cases[i].now, cases[i].fresh,
                                                cases[i].goal, &once),
                      cases[i].once);
        assert_status(hw_change_rounds_needed(cases[i].method, 0.25, cases[i].now, cases[i].fresh,
                                              cases[i].goal, &often),
                      cases[i].often);
        check(isnan(once) == (cases[i].once < 0));
        assert_no_answer(often);
    }
}

/* Every function with these arguments; NaN stands for "not this one". */
static void refused(enum hw_change_method method, double exchanged, int rounds, double a, double b,
                    double c, int status)
{
    double out = 1;
    bool of_levels = exchanged == 0.25 && rounds == 3;
    if (rounds == 3 && a == 0.1 && b == 0.1 && c == 0.1) {
        assert_status(hw_change_kept(method, exchanged, &out), status);
        assert_no_answer(out);
    }
    if (c == 0.1) {
        assert_status(hw_change_level(method, exchanged, rounds, a, b, &out), status);
        assert_no_answer(out);
    }
    if (c == 0.1 && rounds == 3) {
        out = 1;
        assert_status(hw_change_fresh_needed(method, exchanged, a, b, &out), status);
        assert_no_answer(out);
    }
    if (of_levels) {
        out = 1;
        assert_status(hw_change_exchange_needed(method, a, b, c, &out), status);
        assert_no_answer(out);
    }
    if (rounds == 3) {
        out = 1;
        assert_status(hw_change_rounds_needed(method, exchanged, a, b, c, &out), status);
        assert_no_answer(out);
    }
}

static void refusals(void **state)
{
    (void)state;
    for (int i = 0; i < 2; i++) {
        enum hw_change_method m = methods[i];
        const double bad_exchange[] = {nextafter(HW_CHANGE_EXCHANGED_MIN, 0),
                                       nextafter(most(m), 99), not_numbers[0], not_numbers[1],
                                       not_numbers[2]};
        const double bad_level[] = {nextafter(HW_CHANGE_LEVEL_MIN, -1),
                                    nextafter(HW_CHANGE_LEVEL_MAX, 1e9), not_numbers[0],
                                    not_numbers[1], not_numbers[2]};
        for (size_t k = 0; k < 5; k++) {
            refused(m, bad_exchange[k], 3, 0.1, 0.1, 0.1, HW_STATUS_RANGE);
            refused(m, 0.25, 3, bad_level[k], 0.1, 0.1, HW_STATUS_RANGE);
            refused(m, 0.25, 3, 0.1, bad_level[k], 0.1, HW_STATUS_RANGE);
            refused(m, 0.25, 3, 0.1, 0.1, bad_level[k], HW_STATUS_RANGE);
        }
        refused(m, 0.25, HW_CHANGE_ROUNDS_MIN - 1, 0.1, 0.1, 0.1, HW_STATUS_RANGE);
        refused(m, 0.25, HW_CHANGE_ROUNDS_MAX + 1, 0.1, 0.1, 0.1, HW_STATUS_RANGE);
    }
    refused((enum hw_change_method)2, 0.25, 3, 0.1, 0.1, 0.1, HW_STATUS_CHOICE);
    refused((enum hw_change_method) - 1, 0.25, 3, 0.1, 0.1, 0.1, HW_STATUS_CHOICE);
}

static void ends_of_the_ranges(void **state)
{
    (void)state;
    for (int i = 0; i < 2; i++) {
        double fresh = 0;
        double least = HW_CHANGE_EXCHANGED_MIN;
        check(level(methods[i], least, HW_CHANGE_ROUNDS_MAX, HW_CHANGE_LEVEL_MAX, 0) > 9.99e5);
        check(level(methods[i], most(methods[i]), HW_CHANGE_ROUNDS_MAX, 0, HW_CHANGE_LEVEL_MAX) >
              9.99e5);
        assert_status(hw_change_fresh_needed(methods[i], least, 0, HW_CHANGE_LEVEL_MAX, &fresh), 0);
        assert_close(fresh, HW_CHANGE_LEVEL_MAX / least, 0, 1e-8);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(worked_dilutions),
        cmocka_unit_test(batch_conserves_mass),
        cmocka_unit_test(flow_conserves_mass),
        cmocka_unit_test(rounds_are_single_changes),
        cmocka_unit_test(fresh_needed_ends_at_keep),
        cmocka_unit_test(goals_are_reached),
        cmocka_unit_test(exact_goals),
        cmocka_unit_test(goals_out_of_reach),
        cmocka_unit_test(refusals),
        cmocka_unit_test(ends_of_the_ranges),
    };
    return hw_report_checks(cmocka_run_group_tests(tests, NULL, NULL));
}
