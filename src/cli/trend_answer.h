/* trend_answer.h - what a record of readings tells. */
#ifndef HW_TREND_ANSWER_H
#define HW_TREND_ANSWER_H
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

extern const char *const trend_results[TREND_RESULTS];

/* Works all of it out. False with a message when --limit, --floor, --ceiling or --when do not go
 * with the readings. */
bool trend_answer(const struct trend_record *record, struct trend_answer *answer);

/* The moment that ages are told at, in seconds as those of the readings, NaN when there is no
 * clock. False with a message when --when does not go with them. */
bool trend_now(const struct trend_record *record, double *now);

/* A moment, in seconds, as days after day 0. */
double trend_day(const struct trend_answer *answer, long long seconds);

bool trend_has_window(const struct trend_ask *ask);

/* A moment that is so many days after day 0, written as the times of the file are. */
void trend_moment(const struct trend_answer *answer, double days, bool date_alone,
                  char text[WHEN_MAX]);
#endif
