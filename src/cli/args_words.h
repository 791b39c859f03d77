/* args_words.h - what stands after the general options. Each says on stderr what is wrong, and then
 * returns false. */
#ifndef HW_ARGS_WORDS_H
#define HW_ARGS_WORDS_H
#include "engine/question.h"

/* The message for a word that an option does not take. Always false. */
bool option_wrong(const char *option, struct hw_text text, const char *allowed);

/* The number of a word in a list, or -1 with a message that names them all. */
int option_word(const char *option, const char *const *words, struct hw_text text);

/* The message for a result that does not exist. Always false. */
bool option_no_result(const char *option, const struct hw_calc *calc, struct hw_text text);

/* 1 to 17. */
bool option_digits(struct hw_text text, int *value);

/* comma, semicolon or tab, into a separator that is 0 as long as none was named. */
bool option_separator(struct hw_text text, char *separator);

/* point or comma. */
bool option_decimal(struct hw_text text, bool *comma);

/* What stands before =when in a --map: one column, or DATE+TIME; `text` is all of it. */
bool option_when_map(struct hw_text text, struct hw_text column, struct hw_text *when,
                     struct hw_text *time);

/* What stands before =tank in a --map. */
bool option_tank_map(struct hw_text text, struct hw_text column, struct hw_text *tank);

/* ISO 8601: a date, perhaps with a time. */
bool option_when(const char *word);

/* False with a message for a remark that is longer than a cell or has more than one line. */
bool option_note(const char *word);

/* The name of an input: the first entry of that name. */
bool option_solve(const struct hw_calc *calc, struct hw_text text, size_t *input);

/* RESULT=VALUE; the value comes in the result's unit, and with the unit that was written, or
 * NULL. */
bool option_for(const struct hw_calc *calc, struct hw_text text, size_t *result, double *value,
                const struct hw_unit **unit);
#endif
