/* suggest.c - edit distance over short words. */
#include "cli/suggest.h"

#include <stdio.h>
#include <string.h>

enum { WORD_MAX = 40, LONG_WORD = 6 };

static char fold(char c)
{
    if (c == '_') {
        return '-';
    }
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static size_t least(size_t a, size_t b)
{
    return b < a ? b : a;
}

/* Edit distance in which two neighbours that changed places count once; words longer than WORD_MAX
 * are far from everything. Three rows of the table are kept: this one, the one above and the one
 * above that. */
static size_t distance(const char *a, const char *b)
{
    size_t na = strlen(a);
    size_t nb = strlen(b);
    if (na > WORD_MAX || nb > WORD_MAX) {
        return WORD_MAX;
    }
    size_t table[3][WORD_MAX + 1];
    for (size_t j = 0; j <= nb; j++) {
        table[0][j] = j;
    }
    for (size_t i = 1; i <= na; i++) {
        size_t *row = table[i % 3];
        const size_t *above = table[(i + 2) % 3];
        row[0] = i;
        for (size_t j = 1; j <= nb; j++) {
            size_t same = fold(a[i - 1]) == fold(b[j - 1]) ? 0 : 1;
            row[j] = least(above[j - 1] + same, least(above[j], row[j - 1]) + 1);
            if (i > 1 && j > 1 && fold(a[i - 1]) == fold(b[j - 2]) &&
                fold(a[i - 2]) == fold(b[j - 1])) {
                row[j] = least(row[j], table[(i + 1) % 3][j - 2] + 1);
            }
        }
    }
    return table[na % 3][nb];
}

/* True when the shorter of the two, of at least three letters, begins the other. */
static int begin_alike(const char *name, const char *word)
{
    size_t n = strlen(word) < strlen(name) ? strlen(word) : strlen(name);
    if (n < 3) {
        return 0;
    }
    for (size_t i = 0; i < n; i++) {
        if (fold(name[i]) != fold(word[i])) {
            return 0;
        }
    }
    return 1;
}

void suggest_weigh(struct suggestions *suggestions, const char *name)
{
    size_t longer =
        strlen(name) > strlen(suggestions->word) ? strlen(name) : strlen(suggestions->word);
    size_t far = distance(suggestions->word, name);
    if (!(far <= 2 && far * 3 <= longer) && !begin_alike(name, suggestions->word)) {
        return;
    }
    for (size_t i = 0; i < suggestions->n; i++) {
        if (strcmp(suggestions->name[i], name) == 0) {
            return;
        }
    }
    size_t at = suggestions->n;
    while (at > 0 && suggestions->distance[at - 1] > far) {
        at--;
    }
    for (size_t i = SUGGEST_MAX - 1; i > at; i--) {
        suggestions->name[i] = suggestions->name[i - 1];
        suggestions->distance[i] = suggestions->distance[i - 1];
    }
    if (at < SUGGEST_MAX) {
        suggestions->name[at] = name;
        suggestions->distance[at] = far;
        suggestions->n += suggestions->n < SUGGEST_MAX ? 1 : 0;
    }
}

bool suggest_slip(const char *word, const char *name)
{
    size_t n = strlen(word);
    size_t other = strlen(name);
    bool alike = n >= LONG_WORD && other >= LONG_WORD && n <= other + 1 && other <= n + 1 &&
                 fold(word[0]) == fold(name[0]);
    return alike && distance(word, name) <= 1;
}

void suggest_text(const struct suggestions *suggestions, const char *prefix,
                  char text[SUGGEST_TEXT])
{
    size_t used = 0;
    text[0] = '\0';
    for (size_t i = 0; i < suggestions->n; i++) {
        int n = snprintf(text + used, SUGGEST_TEXT - used, "%s%s%s",
                         i == 0 ? "; did you mean " : " or ", prefix, suggestions->name[i]);
        used += (size_t)n < SUGGEST_TEXT - used ? (size_t)n : 0;
    }
    if (suggestions->n > 0) {
        (void)snprintf(text + used, SUGGEST_TEXT - used, "?");
    }
    for (char *c = text; prefix[0] == '-' && *c != '\0'; c++) {
        *c = *c == '_' ? '-' : *c;
    }
}
