/* json.c - strings and numbers of JSON. */
#include "cli/json.h"

#include "cli/print.h"
#include "cli/utf8.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void json_bytes(struct hw_text text)
{
    (void)putchar('"');
    while (text.n > 0) {
        unsigned char c = (unsigned char)text.at[0];
        size_t length = utf8_length(text);
        if (length == 0) {
            (void)fputs("\\ufffd", stdout);
            length = 1;
        } else if (c == '"' || c == '\\') {
            (void)printf("\\%c", c);
        } else if (c < ' ') {
            (void)printf("\\u%04x", c);
        } else {
            (void)fwrite(text.at, 1, length, stdout);
        }
        text.at += length;
        text.n -= length;
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
