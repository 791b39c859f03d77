/* trend_answer.h - what a record of readings tells. */
#ifndef HW_TREND_ANSWER_H
#define HW_TREND_ANSWER_H
#include "cli/trend_state.h"

extern const char *const trend_results[TREND_RESULTS];

/* Works all of it out. False with a message when --limit, --floor, --ceiling or --when do not go
 * with the readings. */
bool trend_answer(const struct trend_record *record, struct trend_answer *answer);

/* The moment that ages are told at, in seconds as those of the readings, NaN when there is no
 * clock. False with a message when --when does not go with them. */
bool trend_now(const struct trend_record *record, double *now);

bool trend_has_window(const struct trend_ask *ask);

/* A moment that is so many days after day 0, written as the times of the file are. */
void trend_moment(const struct trend_answer *answer, double days, bool date_alone,
                  char text[WHEN_MAX]);
#endif
