/* trend_csv.h - what a record tells, as CSV. */
#ifndef HW_TREND_CSV_H
#define HW_TREND_CSV_H
#include "cli/trend_answer.h"

/* A header and one record. */
void trend_csv(const struct trend_answer *answer);

/* A header and a record for each column of readings. */
void trend_csv_tracks(const struct trend_record *record, double now);
#endif
