/* json.h - strings and numbers of JSON (RFC 8259), gathered before they go to stdout. */
#ifndef HW_JSON_H
#define HW_JSON_H
#include "engine/value.h"

#include <string.h>

enum { JSON_ROOM = 1 << 15 };

/* Begins with n = 0. What does not fit goes to stdout, and then `sent` is true. */
struct json_text {
    size_t n;
    bool sent;
    char text[JSON_ROOM];
};

/* Bytes and words as they stand. */
void json_put(struct json_text *to, const char *text, size_t n);

static inline void json_word(struct json_text *to, const char *word)
{
    json_put(to, word, strlen(word)); /* which the compiler knows of a literal */
}

/* In quotes, as UTF-8: what is none becomes the replacement character. */
void json_bytes(struct json_text *to, struct hw_text text);
void json_string(struct json_text *to, const char *text);

/* In full; null for what is no finite number. */
void json_number(struct json_text *to, double value);

/* Sends all that was gathered to stdout. */
void json_flush(struct json_text *to);
#endif
