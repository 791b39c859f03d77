/* json.c - strings and numbers of JSON. */
#include "cli/json.h"

#include "cli/print.h"
#include "cli/stream.h"
#include "cli/utf8.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void json_flush(struct json_text *to)
{
    stream_write(to->text, to->n);
    to->n = 0;
}

void json_put(struct json_text *to, const char *text, size_t n)
{
    if (n > JSON_ROOM - to->n) {
        json_flush(to);
        to->sent = true;
    }
    if (n > JSON_ROOM) {
        stream_write(text, n);
        return;
    }
    memcpy(to->text + to->n, text, n);
    to->n += n;
}

/* How many bytes stand for themselves: ASCII, no control, neither quote nor backslash. */
static size_t plain_bytes(struct hw_text text)
{
    size_t n = 0;
    while (n < text.n && text.at[n] >= ' ' && (unsigned char)text.at[n] < 0x80 &&
           text.at[n] != '"' && text.at[n] != '\\') {
        n++;
    }
    return n;
}

/* Writes the first character. Returns its bytes. */
static size_t put_character(struct json_text *to, struct hw_text text)
{
    unsigned char c = (unsigned char)text.at[0];
    size_t length = utf8_length(text);
    if (length == 0) {
        json_word(to, "\\ufffd");
        return 1;
    }
    if (c == '"' || c == '\\') {
        json_word(to, "\\");
        json_put(to, text.at, 1);
    } else if (c < ' ') {
        char escape[sizeof "\\u0000"];
        (void)snprintf(escape, sizeof escape, "\\u%04x", c);
        json_word(to, escape);
    } else {
        json_put(to, text.at, length);
    }
    return length;
}

void json_bytes(struct json_text *to, struct hw_text text)
{
    json_word(to, "\"");
    for (;;) {
        size_t plain = plain_bytes(text);
        json_put(to, text.at, plain);
        text.at += plain;
        text.n -= plain;
        if (text.n == 0) {
            break;
        }
        size_t length = put_character(to, text);
        text.at += length;
        text.n -= length;
    }
    json_word(to, "\"");
}

void json_string(struct json_text *to, const char *text)
{
    json_bytes(to, (struct hw_text){text, strlen(text)});
}

void json_number(struct json_text *to, double value)
{
    char text[NUMBER_MAX];
    if (!isfinite(value)) {
        json_word(to, "null");
        return;
    }
    number_exact(text, value);
    json_word(to, text);
}
