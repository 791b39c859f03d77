/* change.c - water changes, by the conservation of mass. */
#include "holdwater/change.h"

#include "core/no_answer.h"

static int is_method(enum hw_change_method method)
{
    return method == HW_CHANGE_BATCH || method == HW_CHANGE_FLOW;
}

static int exchange_in_range(enum hw_change_method method, double exchanged)
{
    double most =
        method == HW_CHANGE_BATCH ? HW_CHANGE_EXCHANGED_MAX_BATCH : HW_CHANGE_EXCHANGED_MAX_FLOW;
    return exchanged >= HW_CHANGE_EXCHANGED_MIN && exchanged <= most;
}

static int level_in_range(double level)
{
    return level >= HW_CHANGE_LEVEL_MIN && level <= HW_CHANGE_LEVEL_MAX;
}

/* The share of old water left, and the share replaced: 1 - kept without the loss of digits. */
static double share_kept(enum hw_change_method method, double exchanged)
{
    return method == HW_CHANGE_BATCH ? 1.0 - exchanged : exp(-exchanged);
}

static double share_replaced(enum hw_change_method method, double exchanged)
{
    return method == HW_CHANGE_BATCH ? exchanged : -expm1(-exchanged);
}

static int checked(enum hw_change_method method, double exchanged)
{
    if (!is_method(method)) {
        return HW_STATUS_CHOICE;
    }
    return exchange_in_range(method, exchanged) ? HW_STATUS_OK : HW_STATUS_RANGE;
}

int hw_change_kept(enum hw_change_method method, double exchanged, double *kept)
{
    int status = checked(method, exchanged);
    *kept = status == HW_STATUS_OK ? share_kept(method, exchanged) : HW_NO_ANSWER;
    return status;
}

int hw_change_level(enum hw_change_method method, double exchanged, int rounds, double now,
                    double fresh, double *level)
{
    int status = checked(method, exchanged);
    *level = HW_NO_ANSWER;
    if (status != HW_STATUS_OK) {
        return status;
    }
    if (!(rounds >= HW_CHANGE_ROUNDS_MIN && rounds <= HW_CHANGE_ROUNDS_MAX && level_in_range(now) &&
          level_in_range(fresh))) {
        return HW_STATUS_RANGE;
    }
    *level = fresh + (now - fresh) * pow(share_kept(method, exchanged), rounds);
    return HW_STATUS_OK;
}

int hw_change_fresh_needed(enum hw_change_method method, double exchanged, double now, double keep,
                           double *fresh)
{
    int status = checked(method, exchanged);
    *fresh = HW_NO_ANSWER;
    if (status != HW_STATUS_OK) {
        return status;
    }
    if (!(level_in_range(now) && level_in_range(keep))) {
        return HW_STATUS_RANGE;
    }
    *fresh = now + (keep - now) / share_replaced(method, exchanged);
    return HW_STATUS_OK;
}

static int levels_in_range(double now, double fresh, double goal)
{
    return level_in_range(now) && level_in_range(fresh) && level_in_range(goal);
}

static int between(double goal, double now, double fresh)
{
    return (goal <= now && goal >= fresh) || (goal >= now && goal <= fresh);
}

int hw_change_exchange_needed(enum hw_change_method method, double now, double fresh, double goal,
                              double *exchanged)
{
    *exchanged = HW_NO_ANSWER;
    if (!is_method(method)) {
        return HW_STATUS_CHOICE;
    }
    if (!levels_in_range(now, fresh, goal)) {
        return HW_STATUS_RANGE;
    }
    if (goal == now) {
        *exchanged = 0.0;
        return HW_STATUS_OK;
    }
    if (!between(goal, now, fresh) || (method == HW_CHANGE_FLOW && goal == fresh)) {
        return HW_STATUS_NONE;
    }
    double replaced = (now - goal) / (now - fresh);
    *exchanged = method == HW_CHANGE_BATCH ? replaced : log((now - fresh) / (goal - fresh));
    return HW_STATUS_OK;
}

int hw_change_rounds_needed(enum hw_change_method method, double exchanged, double now,
                            double fresh, double goal, double *rounds)
{
    int status = checked(method, exchanged);
    *rounds = HW_NO_ANSWER;
    if (status != HW_STATUS_OK) {
        return status;
    }
    if (!levels_in_range(now, fresh, goal)) {
        return HW_STATUS_RANGE;
    }
    if (goal == now) {
        *rounds = 0.0;
        return HW_STATUS_OK;
    }
    double kept = share_kept(method, exchanged);
    if (!between(goal, now, fresh) || (goal == fresh && kept > 0.0)) {
        return HW_STATUS_NONE;
    }
    if (kept == 0.0) {
        *rounds = 1.0;
        return HW_STATUS_OK;
    }
    double per_round = method == HW_CHANGE_BATCH ? log1p(-exchanged) : -exchanged;
    double exact = log((goal - fresh) / (now - fresh)) / per_round;
    *rounds = fmax(1.0, ceil(exact - 1e-6));
    return HW_STATUS_OK;
}
