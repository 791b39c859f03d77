/* trend_text.h - what a record tells, for people: on one screen. */
#ifndef HW_TREND_TEXT_H
#define HW_TREND_TEXT_H
#include "cli/trend_answer.h"

enum { TREND_LINE = 200 };

/* What stands behind the word slope: the interval first. */
void trend_slope_words(const struct trend_answer *answer, char text[TREND_LINE]);

/* A value in the unit of the readings: "0.5 mg/L". */
void trend_value(const struct trend_answer *answer, double value, char text[TREND_LINE]);

/* One column of readings. */
void trend_text(const struct trend_answer *answer);

/* One line for each column of readings; now as for trend_now. */
void trend_text_tracks(const struct trend_record *record, double now);
#endif
