/* report_json.h - the answer as one JSON object (RFC 8259). */
#ifndef HW_REPORT_JSON_H
#define HW_REPORT_JSON_H
#include "cli/json.h"
#include "cli/report.h"

/* One JSON object; on one line for FORMAT_JSONL. With a row its number, cells and problem come
 * first. */
void report_json(const struct report *report);

/* The same without the end of its last line, for lists. */
void report_json_object(const struct report *report);

enum { JSON_RESTS = 8, JSON_RESTS_SHIFT = 61 };

/* What ends the objects of rows with these notes. */
struct json_rest {
    bool known;
    uint64_t notes, possible;
    struct json_text text;
};

/* The objects of the rows of one run, in static storage: begins as zero. */
struct json_rows {
    struct json_text out;
    struct json_rest rest[JSON_RESTS];
};

/* report_json into that room; json_flush sends what is left there. */
void report_json_row(const struct report *report, struct json_rows *rows);
#endif
