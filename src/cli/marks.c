/* marks.c - finds the bytes that end cells, 64 at a time. */
#include "cli/marks.h"

#include "engine/eight.h"

enum { STRIDE = 64 };

/* The high bit of every byte of a word that is not the one that `eight` repeats. The sum carries
 * into the high bit of its own byte alone. */
static uint64_t differ(uint64_t word, uint64_t eight)
{
    uint64_t other = word ^ eight;
    return ((other & HW_EIGHT(0x7f)) + HW_EIGHT(0x7f)) | other;
}

/* One bit for each byte that is a mark. Bytes of 0 or 1 become bits by a product, which has byte i
 * of a word at bit 56 + i, and nothing of the other bytes from there on. */
static uint64_t marks_of(const char text[STRIDE], char separator)
{
    const uint64_t separators = HW_EIGHT((unsigned char)separator);
    uint64_t marks = 0;
    for (size_t i = 0; i < STRIDE / 8; i++) {
        uint64_t word = hw_eight_load(text + 8 * i);
        uint64_t none = differ(word, separators) & differ(word, HW_EIGHT('\n')) &
                        differ(word, HW_EIGHT('\r')) & differ(word, HW_EIGHT('"'));
        uint64_t hits = (~none & HW_EIGHT(0x80)) >> 7;
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
