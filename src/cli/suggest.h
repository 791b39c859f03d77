/* suggest.h - the names closest to a word that is none of them. */
#ifndef HW_SUGGEST_H
#define HW_SUGGEST_H
#include <stdbool.h>
#include <stddef.h>

enum { SUGGEST_MAX = 3, SUGGEST_TEXT = 160 };

/* Up to three candidates at an edit distance of at most 2 and at most a third of the longer word,
 * or of which one begins the other. */
struct suggestions {
    const char *word; /* what was written, without leading hyphens; '_' and '-' are equal */
    const char *name[SUGGEST_MAX];
    size_t distance[SUGGEST_MAX];
    size_t n;
};

/* Weighs one candidate. */
void suggest_weigh(struct suggestions *suggestions, const char *name);

/* True for a word of six letters or more that is the name but for one slip, not in its first
 * letter. */
bool suggest_slip(const char *word, const char *name);

/* "; did you mean PREFIXa, PREFIXb?" or "" into text. */
void suggest_text(const struct suggestions *suggestions, const char *prefix,
                  char text[SUGGEST_TEXT]);
#endif
