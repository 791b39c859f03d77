/* json.c - strings and numbers of JSON. */
#include "cli/json.h"

#include "cli/print.h"
#include "cli/utf8.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

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
static size_t put_character(struct hw_text text)
{
    unsigned char c = (unsigned char)text.at[0];
    size_t length = utf8_length(text);
    if (length == 0) {
        (void)fputs("\\ufffd", stdout);
        return 1;
    }
    if (c == '"' || c == '\\') {
        (void)printf("\\%c", c);
    } else if (c < ' ') {
        (void)printf("\\u%04x", c);
    } else {
        (void)fwrite(text.at, 1, length, stdout);
    }
    return length;
}

void json_bytes(struct hw_text text)
{
    (void)putchar('"');
    while (text.n > 0) {
        size_t plain = plain_bytes(text);
        (void)fwrite(text.at, 1, plain, stdout);
        size_t length =
            plain < text.n ? put_character((struct hw_text){text.at + plain, text.n - plain}) : 0;
        text.at += plain + length;
        text.n -= plain + length;
    }
    (void)putchar('"');
}

void json_string(const char *text)
{
    json_bytes((struct hw_text){text, strlen(text)});
}

void json_number(double value)
{
    char text[NUMBER_MAX];
    if (!isfinite(value)) {
        (void)fputs("null", stdout);
        return;
    }
    number_exact(text, value);
    (void)fputs(text, stdout);
}
