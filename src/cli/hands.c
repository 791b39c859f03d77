/* hands.c - the commands that are written by hand. */
#include "cli/hands.h"

#include "cli/trend_ask.h"

#include <string.h>

const struct hw_calc *const hands[] = {&trend_caption, NULL};

const struct hw_calc *hand_find(const char *name)
{
    for (size_t i = 0; hands[i]; i++) {
        if (strcmp(hands[i]->name, name) == 0) {
            return hands[i];
        }
    }
    return NULL;
}
