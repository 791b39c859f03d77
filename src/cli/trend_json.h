/* trend_json.h - what a record tells, as one JSON object. */
#ifndef HW_TREND_JSON_H
#define HW_TREND_JSON_H
#include "cli/trend_answer.h"

void trend_json(const struct trend_answer *answer);
void trend_json_tracks(const struct trend_record *record, double now);
#endif
