/* marks.c - finds the bytes that end cells, 64 at a time. */
#include "cli/marks.h"

#include "engine/eight.h"

enum { STRIDE = 64 };

static unsigned char lesser(unsigned char a, unsigned char b)
{
    return a < b ? a : b;
}

/* One bit for each byte that is a mark. First a byte of 0 or 1 for each, in a loop that compilers
 * turn into vectors; written with ==, they would make tests of bits with a branch out of it. Then
 * a product makes them bits: it has byte i of a word at bit 56 + i, and nothing of the other bytes
 * from there on. */
static uint64_t marks_of(const char text[STRIDE], char separator)
{
    unsigned char is_mark[STRIDE];
    for (size_t i = 0; i < STRIDE; i++) {
        unsigned char c = (unsigned char)text[i];
        unsigned char ends = lesser(c ^ (unsigned char)separator, c ^ '\n');
        unsigned char others = lesser(c ^ '\r', c ^ '"');
        is_mark[i] = lesser(ends, others) == 0;
    }
    uint64_t marks = 0;
    for (size_t i = 0; i < STRIDE / 8; i++) {
        uint64_t hits = hw_eight_load(is_mark + 8 * i);
        marks |= (hits * UINT64_C(0x0102040810204080) >> 56) << 8 * i;
    }
    return marks;
}

size_t marks_find(const char *text, size_t n, char separator, uint16_t at[MARKS_MAX])
{
    size_t found = 0;
    for (size_t from = 0; from < n; from += STRIDE) {
        char rest[STRIDE] = {0};
        const char *here = text + from;
        if (n - from < STRIDE) {
            memcpy(rest, here, n - from);
            here = rest;
        }
        for (uint64_t marks = marks_of(here, separator); marks != 0; marks &= marks - 1) {
            at[found++] = (uint16_t)(from + (size_t)__builtin_ctzll(marks));
        }
    }
    return found;
}
