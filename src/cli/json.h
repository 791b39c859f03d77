/* json.h - strings and numbers of JSON (RFC 8259) on stdout. */
#ifndef HW_JSON_H
#define HW_JSON_H
#include "engine/value.h"

/* In quotes, as UTF-8: what is none becomes the replacement character. */
void json_bytes(struct hw_text text);
void json_string(const char *text);

/* In full; null for what is no finite number. */
void json_number(double value);
#endif
