/* eight.h - eight bytes as a word, the first in its lowest byte on any machine. */
#ifndef HW_EIGHT_H
#define HW_EIGHT_H
#include <stdint.h>
#include <string.h>

/* Eight times the same byte. */
#define HW_EIGHT(byte) (UINT64_C(0x0101010101010101) * (byte))

static inline uint64_t hw_eight_load(const void *from)
{
    uint64_t word = 0;
#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__
    memcpy(&word, from, sizeof word);
#else
    const unsigned char *byte = from;
    for (int i = 0; i < 8; i++) {
        word |= (uint64_t)byte[i] << 8 * i;
    }
#endif
    return word;
}

static inline void hw_eight_store(char *to, uint64_t word)
{
#if defined(__BYTE_ORDER__) && __BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__
    memcpy(to, &word, sizeof word);
#else
    for (int i = 0; i < 8; i++) {
        to[i] = (char)(word >> 8 * i & 0xff);
    }
#endif
}
#endif
