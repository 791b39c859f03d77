/* column_name.h - what a column is called, and which input a name means. */
#ifndef HW_COLUMN_NAME_H
#define HW_COLUMN_NAME_H
#include "engine/question.h"

enum { COLUMN_NAME_MAX = 96 };

/* Writes a name as a column is called: NAME, or NAME_UNIT with the unit spelt for a header. A part
 * of it, such as "_low", goes between; "" for none. */
void column_name(const char *name, const char *part, const char *unit, char text[COLUMN_NAME_MAX]);

/* The input that a column of that name feeds, and the unit that the name carries: temp_F, Temp (F),
 * temp [degC], TAN mg/L. False when it is none: case does not count, '-', '_' and a blank are
 * equal. */
bool column_match(const struct hw_calc *calc, struct hw_text name, size_t *input,
                  const struct hw_unit **unit);

/* The unit of any kind that a name ends with, or NULL; *n is the length of the name before it, of
 * the whole where there is none: temp_F, TAN (mg/L). */
const struct hw_unit *column_unit(struct hw_text name, size_t *n);

/* True when a column of that name tells the word, perhaps in a unit of the kind, which is returned
 * then, else NULL. */
bool column_tells(const char *word, enum hw_kind kind, struct hw_text name,
                  const struct hw_unit **unit);

/* The last word of a name, not its first, that is a unit of the kind, or NULL: of 'Water temp (F)'
 * the degree Fahrenheit. */
const struct hw_unit *column_unit_within(enum hw_kind kind, struct hw_text name);

/* True when text[0..n) is the word, case and what stands between its parts aside. */
bool column_folds_to(const char *word, const char *text, size_t n);
#endif
