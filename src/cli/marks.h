/* marks.h - where cells end in a stretch of text. */
#ifndef HW_MARKS_H
#define HW_MARKS_H
#include <stddef.h>
#include <stdint.h>

enum { MARKS_MAX = 1 << 13 }; /* the longest stretch, in bytes */

/* Finds every separator, line feed, carriage return and quote of text[0..n), n at most MARKS_MAX,
 * in order. Returns how many there are. */
size_t marks_find(const char *text, size_t n, char separator, uint16_t at[MARKS_MAX]);
#endif
