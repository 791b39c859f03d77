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

/* Writes down the marks among bytes that stand `from` bytes into the text. */
static inline uint16_t *put_marks(uint16_t *to, uint64_t marks, size_t from)
{
    for (; marks != 0; marks &= marks - 1) {
        *to++ = (uint16_t)(from + (size_t)__builtin_ctzll(marks));
    }
    return to;
}

size_t marks_find(const char *text, size_t n, char separator, uint16_t at[MARKS_MAX])
{
    uint16_t *to = at;
    size_t from = 0;
    for (; n - from >= STRIDE; from += STRIDE) {
        to = put_marks(to, marks_of(text + from, separator), from);
    }
    char rest[STRIDE] = {0};
    memcpy(rest, text + from, n - from);
    to = put_marks(to, marks_of(rest, separator), from);
    return (size_t)(to - at);
}
