/* report_json.h - the answer as one JSON object (RFC 8259). */
#ifndef HW_REPORT_JSON_H
#define HW_REPORT_JSON_H
#include "cli/report.h"

/* One JSON object; on one line for FORMAT_JSONL. With a row its number, cells and problem come
 * first. */
void report_json(const struct report *report);

/* The same without the end of its last line, for lists. */
void report_json_object(const struct report *report);
#endif
