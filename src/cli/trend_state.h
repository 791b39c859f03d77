/* trend_state.h - what is known of a record while it is worked out, and after. */
#ifndef HW_TREND_STATE_H
#define HW_TREND_STATE_H
#include "cli/trend_record.h"

/* The results, in the order of the help and of machine formats. */
enum {
    TREND_SLOPE,
    TREND_SLOPE_LOW,
    TREND_SLOPE_HIGH,
    TREND_LAST_READING,
    TREND_AGE,
    TREND_DAYS_TO_LIMIT,
    TREND_HELD,
    TREND_RESULTS
};

enum { TREND_UNIT = 32 };

/* All that is known of a level: the readings, and cells that are none. */
struct trend_cells {
    double days[HW_TREND_READINGS_MAX], values[HW_TREND_READINGS_MAX];
    size_t n;
    bool mark_last; /* the last of them is no reading */
};

struct trend_answer {
    const struct trend_record *record;
    double out[TREND_RESULTS]; /* NaN: cannot be told */
    char unit[TREND_RESULTS][TREND_UNIT];
    double level[TREND_LEVELS]; /* in the unit of the readings; NaN: not given */
    double now;                 /* seconds as those of the readings; NaN without a clock */
    uint64_t notes;             /* of trend_caption */

    /* The readings that are kept, in days since the first of those used; those used are the last
     * `used` of them. */
    double days[HW_TREND_READINGS_MAX], values[HW_TREND_READINGS_MAX];
    size_t n, used;
    long long origin;         /* the seconds of day 0 */
    double intercept;         /* of the line at day 0; NaN: none */
    struct trend_cells cells; /* where a window was given */
    struct hw_trend_run run;  /* of those cells */
};

/* A moment, in seconds, as days after day 0. */
static inline double trend_day(const struct trend_answer *answer, long long seconds)
{
    return (double)(seconds - answer->origin) / 86400.0;
}
#endif
