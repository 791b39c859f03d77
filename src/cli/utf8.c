/* utf8.c - tells the characters of UTF-8 from other bytes. */
#include "cli/utf8.h"

/* What the first byte says of the length; 0 for a byte that begins nothing. C0, C1 and F5 to FF
 * would begin only what is longer than needed or too large. */
static size_t announced(unsigned char c)
{
    if (c < 0x80) {
        return 1;
    }
    if (c < 0xC2 || c > 0xF4) {
        return 0;
    }
    return c < 0xE0 ? 2 : c < 0xF0 ? 3 : 4;
}

/* Longer than needed, a surrogate, or above U+10FFFF: the second byte tells. */
static bool is_barred(unsigned char first, unsigned char second)
{
    bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
    bool beyond = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
    return overlong || beyond;
}

size_t utf8_length(struct hw_text text)
{
    size_t length = text.n > 0 ? announced((unsigned char)text.at[0]) : 0;
    if (length == 0 || length > text.n) {
        return 0;
    }
    for (size_t i = 1; i < length; i++) {
        if (((unsigned char)text.at[i] & 0xC0u) != 0x80) {
            return 0;
        }
    }
    bool barred = length > 1 && is_barred((unsigned char)text.at[0], (unsigned char)text.at[1]);
    return barred ? 0 : length;
}
