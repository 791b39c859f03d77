/* wording.h - what a value, a unit, a range or an option looks like to a keeper. */
#ifndef HW_WORDING_H
#define HW_WORDING_H
#include "engine/question.h"

enum {
    SHOWN_MAX = 64,
    OPTION_MAX = 40,
    ALLOWED_MAX = 400,
    WORDS_MAX = 400,
    AMOUNT_MAX = 400,
    TARGET_MAX = 2 * AMOUNT_MAX,
    PLACE_MAX = 120
};

/* Text of a keeper's as it can be shown: printable characters, '?' for every other byte, cut with
 * "..." when long. True when nothing was changed. */
bool show_text(struct hw_text text, char shown[SHOWN_MAX]);

/* An input's name as an option is written: without the hyphens before it, '-' for '_'. */
void option_name(const char *name, char option[OPTION_MAX]);

/* What an input takes: "0 to 40 C (units C, F, K)", "one of n, nh3, nh4". */
void allowed_text(const struct hw_input *input, char text[ALLOWED_MAX]);

/* The units of a kind: "C, F, K"; "" when it has none. */
void units_text(enum hw_kind kind, char text[ALLOWED_MAX]);

/* The words of a set, or the word of a choice, into text. */
void words_of(const struct hw_input *input, double value, char *text, size_t size);

/* A number with its unit. */
void amount_text(double value, int digits, const char *unit, char text[AMOUNT_MAX]);

/* Where an input lies: "above 100 %", "between 2 and 3 C". */
void place_text(const struct hw_input *input, double from, double to, char text[PLACE_MAX]);

/* What a result is to reach, in its unit, and in the unit that it was written in (or NULL). */
void target_text(const struct hw_result *result, double value, const struct hw_unit *written,
                 int digits, char text[TARGET_MAX]);

/* The unit of the keeper's own system for a kind: gallons, Fahrenheit, when one of them was written
 * in an input or in --for, whose unit (or NULL) is given; else NULL. */
const struct hw_unit *own_unit(const struct hw_unit *wanted_unit,
                               const struct hw_question *question, enum hw_kind kind);
#endif
